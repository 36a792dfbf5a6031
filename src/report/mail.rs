//! The report as a mail: a message file with the PDF in it, and a draft short
//! enough for a link.
//!
//! RFC 5322 for the message, RFC 2045 to 2047 and 2183 for its parts, RFC 2231
//! for a file name beyond ASCII.

use super::doc::{Block, Doc};
use super::text::with;
use crate::record::Moment;
use crate::record::bytes::{base64, sha256};

/// A file that goes with a mail.
#[derive(Clone, Copy, Debug)]
pub struct Enclosed<'a> {
    /// Its name.
    pub name: &'a str,
    /// Its media type.
    pub media_type: &'a str,
    /// Its bytes.
    pub bytes: &'a [u8],
}

/// A word of a header: as it is when it is short ASCII, else as encoded words
/// of at most 75 characters (RFC 2047, 2).
fn header(text: &str) -> String {
    let text: String = text.chars().filter(|c| !c.is_control()).collect();
    if text.len() <= 60 && text.is_ascii() && !text.contains("=?") {
        return text;
    }
    let mut words = Vec::new();
    let mut part = String::new();
    for ch in text.chars() {
        if part.len() + ch.len_utf8() > 42 {
            words.push(std::mem::take(&mut part));
        }
        part.push(ch);
    }
    words.push(part);
    let word = |w: &String| format!("=?UTF-8?B?{}?=", base64(w.as_bytes()));
    words.iter().map(word).collect::<Vec<_>>().join("\r\n ")
}

/// A parameter of a header: quoted, or percent-encoded beyond ASCII; of a long
/// text the end, where a file name has its kind. A header's line holds 998 bytes
/// (RFC 5322, 2.1.1), and one character may take twelve.
fn parameter(key: &str, text: &str) -> String {
    let text: Vec<char> = text.chars().filter(|c| !c.is_control()).collect();
    let text: String = text[text.len().saturating_sub(70)..].iter().collect();
    if text.is_ascii() {
        let quoted = text.replace('\\', "\\\\").replace('"', "\\\"");
        return format!("{key}=\"{quoted}\"");
    }
    let mut out = format!("{key}*=UTF-8''");
    for byte in text.bytes() {
        match byte.is_ascii_alphanumeric() || b"-._".contains(&byte) {
            true => out.push(char::from(byte)),
            false => out.push_str(&format!("%{byte:02X}")),
        }
    }
    out
}

/// A media type (RFC 2045, 5.1), or the one of any bytes: what an imported file
/// is said to be must not become a header.
fn media_type(text: &str) -> &str {
    let token = |c: u8| c.is_ascii_alphanumeric() || b"/.+-_".contains(&c);
    match text.len() < 80 && text.contains('/') && text.bytes().all(token) {
        true => text,
        false => "application/octet-stream",
    }
}

/// Base64 in lines of 76 (RFC 2045, 6.8).
fn lines(bytes: &[u8]) -> String {
    let coded = base64(bytes);
    let mut out = String::with_capacity(coded.len() + coded.len() / 38);
    let mut rest = coded.as_str();
    while !rest.is_empty() {
        let (line, more) = rest.split_at(rest.len().min(76));
        out.push_str(line);
        out.push_str("\r\n");
        rest = more;
    }
    out
}

const DAYS: [&str; 7] = ["Thu", "Fri", "Sat", "Sun", "Mon", "Tue", "Wed"];
const MONTHS: [&str; 12] = [
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
];

/// `Tue, 24 Nov 2026 09:30:00 -0500` (RFC 5322, 3.3).
fn date(at: &Moment) -> String {
    let (year, month, day, hour, minute, second) = at.local();
    let local_s = at.ms.div_euclid(1000) + i64::from(at.offset_min) * 60;
    let weekday = DAYS[local_s.div_euclid(86_400).rem_euclid(7) as usize];
    let month = MONTHS[usize::from(month - 1)];
    let sign = if at.offset_min < 0 { '-' } else { '+' };
    let ahead = at.offset_min.unsigned_abs();
    let (h, m) = (ahead / 60, ahead % 60);
    format!("{weekday}, {day} {month} {year} {hour:02}:{minute:02}:{second:02} {sign}{h:02}{m:02}")
}

/// The message as a file: the text, and what goes with it. It has neither
/// sender nor receiver: the person fills these in and sends it.
pub fn to_eml(subject: &str, text: &str, enclosed: &[Enclosed<'_>], at: &Moment) -> Vec<u8> {
    // A line of base64 never begins with a dash, so any boundary is safe.
    let boundary = format!("coldsump-{}", &sha256(text.as_bytes())[..32]);
    let mut out = format!(
        "Date: {}\r\nSubject: {}\r\nX-Unsent: 1\r\nMIME-Version: 1.0\r\n\
         Content-Type: multipart/mixed;\r\n boundary=\"{boundary}\"\r\n\r\n",
        date(at),
        header(subject)
    );
    let mut part = |kind: &str, more: &str, bytes: &[u8]| {
        out.push_str(&format!(
            "--{boundary}\r\nContent-Type: {kind}\r\n{more}\
             Content-Transfer-Encoding: base64\r\n\r\n{}",
            lines(bytes)
        ));
    };
    // Lines of a text end with CR LF before they are encoded (RFC 2046, 4.1.1).
    let text = text.replace('\n', "\r\n");
    part("text/plain; charset=utf-8", "", text.as_bytes());
    for file in enclosed {
        let name = parameter("filename", file.name);
        part(
            media_type(file.media_type),
            &format!("Content-Disposition: attachment;\r\n {name}\r\n"),
            file.bytes,
        );
    }
    out.push_str(&format!("--{boundary}--\r\n"));
    out.into_bytes()
}

/// The customer's page as plain text: all before the evidence.
pub fn short_text(doc: &Doc, width: usize) -> String {
    let end = doc.blocks.iter().position(|b| *b == Block::PageBreak);
    with(doc, &doc.blocks[..end.unwrap_or(doc.blocks.len())], width)
}

/// Whole lines of a text that take at most `most` bytes percent-encoded: some
/// mail programs drop a link that is longer than about 2,000 (common practice,
/// no source).
pub fn cut(text: &str, most: usize) -> &str {
    let mut used = 0;
    let mut end = 0;
    for (at, ch) in text.char_indices() {
        used += match ch.is_ascii_alphanumeric() {
            true => 1,
            false => 3 * ch.len_utf8(),
        };
        if used > most {
            return &text[..end];
        }
        if ch == '\n' {
            end = at + 1;
        }
    }
    text
}
