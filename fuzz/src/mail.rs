//! The mail file and the table: nothing typed becomes a header, a line or a
//! formula.

use coldsump::record::Moment;
use coldsump::record::bytes::from_base64;
use coldsump::report::csv::field;
use coldsump::report::mail::{Enclosed, cut, to_eml};

/// Header fields of the message, and of a part: no other may appear.
const OURS: &[&str] = &[
    "Date",
    "Subject",
    "X-Unsent",
    "MIME-Version",
    "Content-Type",
];
const OF_PART: &[&str] = &[
    "Content-Type",
    "Content-Transfer-Encoding",
    "Content-Disposition",
];

/// Eight bytes of time and two of offset; then, between bytes 0xff, subject,
/// text, file name, media type and the file.
///
/// # Panics
/// When a line is longer than 998 bytes or not ended by CR LF, a header is not
/// ours, or text and file do not come out as they went in.
pub fn holds(data: &[u8]) {
    if data.len() < 10 {
        return;
    }
    let (head, rest) = data.split_at(10);
    let mut ms = [0; 8];
    ms.copy_from_slice(&head[..8]);
    let at = Moment {
        ms: i64::from_le_bytes(ms),
        offset_min: i16::from_le_bytes([head[8], head[9]]),
        run: 0,
        run_ms: 0.0,
    };
    let mut parts = rest.splitn(5, |b| *b == 0xff);
    let mut next = || super::text(parts.next().unwrap_or_default());
    let (subject, text, name, media_type) = (next(), next(), next(), next());
    let bytes = parts.next().unwrap_or_default();
    message(
        &subject,
        &text,
        Enclosed {
            name: &name,
            media_type: &media_type,
            bytes,
        },
        &at,
    );
    for one in [&subject, &text, &name, &media_type] {
        cell(one);
        let most = usize::from(head[0]) * 8;
        let kept = cut(one, most);
        assert!(one.starts_with(kept));
        assert!(kept.len() == one.len() || kept.is_empty() || kept.ends_with('\n'));
    }
}

fn message(subject: &str, text: &str, file: Enclosed<'_>, at: &Moment) {
    let message = to_eml(subject, text, &[file], at);
    let message = String::from_utf8(message).expect("the message is ASCII");
    assert!(message.is_ascii());
    assert!(message.ends_with("\r\n"));
    for line in message.split("\r\n") {
        assert!(
            line.len() <= 998,
            "{} bytes in a line (RFC 5322, 2.1.1)",
            line.len()
        );
        assert!(!line.contains(['\r', '\n', '\0']), "{line:?}");
        assert!(
            !line.chars().any(|c| c.is_control() && c != '\t'),
            "{line:?}"
        );
    }
    let (head, body) = message.split_once("\r\n\r\n").expect("a head and a body");
    named(head, OURS);
    // The last: a subject may speak of one too.
    let boundary = head.rsplit_once("boundary=\"").expect("a boundary").1;
    let boundary = boundary.split('"').next().unwrap_or_default();
    let mark = format!("--{boundary}");
    let parts: Vec<&str> = body.split(mark.as_str()).collect();
    assert_eq!(parts.len(), 4, "nothing, text, file, end");
    assert_eq!((parts[0], parts[3]), ("", "--\r\n"));
    let open = |part: &str| {
        let (head, body) = part.split_once("\r\n\r\n").expect("a head and a body");
        named(head.trim_start(), OF_PART);
        from_base64(&body.replace("\r\n", "")).expect("base64")
    };
    let said = String::from_utf8(open(parts[1])).expect("UTF-8");
    assert_eq!(said, text.replace('\n', "\r\n"));
    assert_eq!(open(parts[2]), file.bytes);
}

/// Every field of a head is one of these, each once.
fn named(head: &str, allowed: &[&str]) {
    let mut seen = Vec::new();
    for line in head.split("\r\n") {
        if line.starts_with([' ', '\t']) {
            assert!(!line.trim().is_empty(), "a folded line of nothing");
            continue;
        }
        let (name, _) = line
            .split_once(':')
            .unwrap_or_else(|| panic!("no field: {line:?}"));
        assert!(allowed.contains(&name), "{name:?} is not ours");
        assert!(!seen.contains(&name), "{name:?} twice");
        seen.push(name);
    }
}

/// A field of the table is one field, and no formula.
fn cell(text: &str) {
    let written = field(text);
    let read = match written.strip_prefix('"') {
        Some(rest) => rest
            .strip_suffix('"')
            .expect("closed")
            .replace("\"\"", "\u{0}"),
        None => {
            assert!(!written.contains([',', '"', '\r', '\n']), "{written:?}");
            written.clone()
        }
    };
    assert!(!read.contains('"'), "{written:?}");
    let read = read.replace('\u{0}', "\"");
    let plain = text.replace('\u{0}', "\"");
    let formula = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];
    if read.starts_with(formula) {
        let digits = |c: char| c.is_ascii_digit() || "+-.eE".contains(c);
        assert!(
            read.chars().all(digits) && read.parse::<f64>().is_ok(),
            "{read:?}"
        );
    }
    assert!(
        read == plain || read.strip_prefix('\'') == Some(&plain),
        "{read:?}"
    );
}
