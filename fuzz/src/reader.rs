//! A reader of our PDF files: as strict as it is small. It takes only what we
//! write (ISO 32000-1, 7.3 to 7.5, uncompressed) and stops at anything else.

use std::collections::BTreeMap;

/// An object: what stands before a stream, and the stream.
#[derive(Debug)]
pub struct Object {
    /// The object itself.
    pub body: Vec<u8>,
    /// Its stream, if it has one.
    pub stream: Option<Vec<u8>>,
}

fn find(data: &[u8], what: &[u8], from: usize) -> Option<usize> {
    let found = data
        .get(from..)?
        .windows(what.len())
        .position(|w| w == what)?;
    Some(from + found)
}

fn number_behind(text: &str, key: &str) -> usize {
    let (_, rest) = text
        .split_once(key)
        .unwrap_or_else(|| panic!("{key} not in {text}"));
    let digits: String = rest
        .trim_start()
        .chars()
        .take_while(char::is_ascii_digit)
        .collect();
    digits
        .parse()
        .unwrap_or_else(|_| panic!("no number behind {key}"))
}

/// Every object of a file, by its number.
///
/// # Panics
/// When the file is not as the standard and its own table say.
pub fn objects(pdf: &[u8]) -> BTreeMap<usize, Object> {
    assert!(pdf.starts_with(b"%PDF-1.7\n"));
    assert!(pdf.ends_with(b"%%EOF\n"));
    let tail = String::from_utf8_lossy(&pdf[pdf.len() - 64..]).into_owned();
    let table = number_behind(&tail, "startxref\n");
    assert!(pdf[table..].starts_with(b"xref\n0 "));
    let text = std::str::from_utf8(&pdf[table..]).expect("the table is ASCII");
    let size = number_behind(text, "xref\n0 ");
    let first = table + text.find("f\r\n").expect("the free entry") + 3;
    let mut all = BTreeMap::new();
    for number in 1..size {
        let row = &pdf[first + 20 * (number - 1)..][..20];
        let row = std::str::from_utf8(row).expect("ASCII");
        assert!(row.ends_with(" 00000 n\r\n"), "{row:?}");
        let at: usize = row[..10].parse().expect("a place");
        let head = format!("{number} 0 obj\n");
        assert!(
            pdf[at..].starts_with(head.as_bytes()),
            "object {number} is not at {at}"
        );
        all.insert(number, object(pdf, at + head.len()));
    }
    assert_eq!(number_behind(text, "/Size"), size);
    all
}

fn object(pdf: &[u8], from: usize) -> Object {
    let end = body(pdf, from);
    let body = pdf[from..end].to_vec();
    let rest = &pdf[end..];
    if rest.starts_with(b"\nendobj\n") {
        return Object { body, stream: None };
    }
    assert!(
        rest.starts_with(b"\nstream\n"),
        "object at {from} does not end"
    );
    let length = number_behind(&String::from_utf8_lossy(&body), "/Length");
    let begin = end + b"\nstream\n".len();
    let stream = pdf[begin..begin + length].to_vec();
    assert!(
        pdf[begin + length..].starts_with(b"\nendstream\nendobj\n"),
        "length of {from}"
    );
    Object {
        body,
        stream: Some(stream),
    }
}

/// Where the object ends that begins at `at`: brackets and strings close.
fn body(pdf: &[u8], from: usize) -> usize {
    let mut open = Vec::new();
    let mut at = from;
    loop {
        let here = &pdf[at..];
        match here[0] {
            b'(' => at = literal(pdf, at).1,
            b'<' if here[1] == b'<' => {
                open.push(b'>');
                at += 2;
            }
            b'<' => {
                let close = find(pdf, b">", at).expect("a string in hexadecimal closes");
                assert!(pdf[at + 1..close].iter().all(u8::is_ascii_hexdigit));
                assert!((close - at) % 2 == 1, "half a byte");
                at = close + 1;
            }
            b'>' => {
                assert_eq!((open.pop(), here[1]), (Some(b'>'), b'>'), "at {at}");
                at += 2;
            }
            b'[' => {
                open.push(b']');
                at += 1;
            }
            b']' => {
                assert_eq!(open.pop(), Some(b']'), "at {at}");
                at += 1;
            }
            byte => {
                assert!(
                    byte.is_ascii_graphic() || b" \n".contains(&byte),
                    "byte {byte} at {at}"
                );
                at += 1;
            }
        }
        let rest = &pdf[at..];
        if open.is_empty() && (rest.starts_with(b"\nendobj\n") || rest.starts_with(b"\nstream\n")) {
            return at;
        }
    }
}

/// The bytes of the string that opens at `at`, and where it ends (7.3.4.2).
fn literal(data: &[u8], at: usize) -> (Vec<u8>, usize) {
    let mut depth = 0;
    let mut out = Vec::new();
    let mut i = at;
    loop {
        let byte = *data.get(i).expect("a string closes");
        i += 1;
        match byte {
            b'(' if depth == 0 => depth = 1,
            b'(' => panic!("a bracket that is not escaped"),
            b')' => return (out, i),
            b'\\' => {
                out.push(match data[i] {
                    b'r' => b'\r',
                    same @ (b'(' | b')' | b'\\') => same,
                    other => panic!("escape {other}"),
                });
                i += 1;
            }
            // A bare CR would be read as LF.
            b'\r' => panic!("a bare carriage return in a string"),
            _ => out.push(byte),
        }
    }
}

/// What a page draws: its operators in order, and the strings it shows.
fn page(content: &[u8]) -> Vec<Vec<u8>> {
    let mut shown = Vec::new();
    let (mut text, mut marked, mut saved, mut word) = (false, false, 0, Vec::new());
    let mut at = 0;
    while at < content.len() {
        let byte = content[at];
        if byte == b'(' {
            let (bytes, end) = literal(content, at);
            assert!(text, "a string outside of a text object");
            shown.push(bytes);
            at = end;
            continue;
        }
        at += 1;
        if !byte.is_ascii_whitespace() {
            assert!(byte.is_ascii_graphic(), "byte {byte} in a page");
            word.push(byte);
            continue;
        }
        match word.as_slice() {
            b"BT" => assert!(!std::mem::replace(&mut text, true)),
            b"ET" => assert!(std::mem::replace(&mut text, false)),
            b"BMC" => assert!(!std::mem::replace(&mut marked, true)),
            op if op.ends_with(b"BDC") => assert!(!std::mem::replace(&mut marked, true)),
            b"EMC" => assert!(std::mem::replace(&mut marked, false)),
            b"q" => saved += 1,
            b"Q" => saved -= 1,
            _ => {}
        }
        assert!((0..2).contains(&saved));
        word.clear();
    }
    assert!(!text && !marked && saved == 0, "a page ends in the middle");
    shown
}

/// The text of a file, page after page, as its own map of glyphs says.
///
/// # Panics
/// As [`objects`], and when a page does not close what it opens.
pub fn text(pdf: &[u8]) -> String {
    let all = objects(pdf);
    let body = |number: &usize| String::from_utf8_lossy(&all[number].body).into_owned();
    let stream = |number: usize| all[&number].stream.as_deref().expect("a stream");
    let font = all
        .keys()
        .map(body)
        .find(|b| b.contains("/Subtype/Type0"))
        .expect("a font");
    let map = characters(stream(number_behind(&font, "/ToUnicode")));
    let tree = all
        .keys()
        .map(body)
        .find(|b| b.contains("/Type/Pages"))
        .expect("pages");
    let (_, kids) = tree.split_once("/Kids[").expect("kids");
    let (kids, _) = kids.split_once(']').expect("kids");
    let kids: Vec<usize> = kids
        .split("0 R")
        .filter_map(|kid| kid.trim().parse().ok())
        .collect();
    assert_eq!(kids.len(), number_behind(&tree, "/Count"));
    for (number, one) in &all {
        if one.body.windows(14).any(|w| w == b"/Type/Metadata") {
            well_formed(stream(*number));
        }
    }
    let mut said = String::new();
    for kid in kids {
        for string in page(stream(number_behind(&body(&kid), "/Contents"))) {
            assert!(string.len() % 2 == 0, "half a glyph");
            for pair in string.chunks(2) {
                let glyph = u16::from_be_bytes([pair[0], pair[1]]);
                said.push(
                    *map.get(&glyph)
                        .unwrap_or_else(|| panic!("glyph {glyph} means nothing")),
                );
            }
        }
    }
    said
}

/// Nothing in the title ends or breaks the XML around it (XML 1.0, 2.2 and 2.4).
fn well_formed(xmp: &[u8]) {
    let xmp = std::str::from_utf8(xmp).expect("UTF-8");
    let (_, rest) = xmp.split_once("x-default\">").expect("a title");
    let (title, rest) = rest.split_once("</rdf:li>").expect("its end");
    assert!(rest.ends_with("<?xpacket end=\"r\"?>"));
    assert!(
        !title.contains(['<', '>', '\u{fffe}', '\u{ffff}']),
        "{title}"
    );
    assert!(!title.chars().any(char::is_control), "{title:?}");
    let named = ["amp;", "lt;", "gt;"];
    let mut after = title.split('&').skip(1);
    assert!(
        after.all(|rest| named.iter().any(|name| rest.starts_with(name))),
        "{title}"
    );
}

fn characters(map: &[u8]) -> BTreeMap<u16, char> {
    let map = std::str::from_utf8(map).expect("the map is ASCII");
    let pair = |line: &str| {
        let (glyph, ch) = line
            .strip_prefix('<')?
            .strip_suffix('>')?
            .split_once("><")?;
        let ch = u32::from_str_radix(ch, 16).ok().and_then(char::from_u32)?;
        Some((u16::from_str_radix(glyph, 16).ok()?, ch))
    };
    map.lines().filter_map(pair).collect()
}
