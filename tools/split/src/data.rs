//! What the memory begins with, and which of it the first screen does not say.
//!
//! A text that is taken out reads as zeros until the rest is in. The page looks for
//! zeros in whatever it is given to show before that (`public/boot.js`).

use std::collections::HashMap;

/// Less than this is not worth a segment of its own.
const WORTH: usize = 48;

/// Bytes, and where in the memory they go.
pub type Piece<'a> = (u32, &'a [u8]);

/// Takes the texts out of the pieces: what stays, and what goes.
pub fn taken_out<'a>(pieces: &[Piece<'a>], texts: &[&[u8]]) -> (Vec<Piece<'a>>, Vec<Piece<'a>>) {
    let (mut stay, mut go) = (Vec::new(), Vec::new());
    for (at, bytes) in pieces {
        let mut from = 0;
        for (begin, end) in places(bytes, texts) {
            if end - begin < WORTH {
                continue;
            }
            if from < begin {
                stay.push((at + from as u32, &bytes[from..begin]));
            }
            go.push((at + begin as u32, &bytes[begin..end]));
            from = end;
        }
        if from < bytes.len() {
            stay.push((at + from as u32, &bytes[from..]));
        }
    }
    (stay, go)
}

/// Where the texts stand, as runs in order that do not touch.
fn places(bytes: &[u8], texts: &[&[u8]]) -> Vec<(usize, usize)> {
    let mut by_head: HashMap<&[u8], Vec<&[u8]>> = HashMap::new();
    for text in texts {
        if let Some(head) = text.get(..4) {
            by_head.entry(head).or_default().push(text);
        }
    }
    let mut runs: Vec<(usize, usize)> = Vec::new();
    for (begin, head) in bytes.windows(4).enumerate() {
        let found = by_head.get(head).into_iter().flatten();
        let longest = found
            .filter(|text| bytes[begin..].starts_with(text))
            .map(|text| text.len())
            .max();
        let Some(longest) = longest else { continue };
        let end = begin + longest;
        match runs.last_mut() {
            Some((_, last)) if begin <= *last => *last = end.max(*last),
            _ => runs.push((begin, end)),
        }
    }
    runs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_go_and_all_else_stays_where_it_was() {
        let one = [b'a'; 50];
        let mut bytes = b"before".to_vec();
        bytes.extend(one);
        bytes.extend(b"between");
        bytes.extend(b"a short one");
        let texts: [&[u8]; 2] = [&one, b"a short one"];
        let (stay, go) = taken_out(&[(100, &bytes)], &texts);
        assert_eq!(go, [(106, &one[..])]);
        assert_eq!(
            stay,
            [(100, &b"before"[..]), (156, &b"betweena short one"[..])]
        );
    }

    #[test]
    fn texts_that_follow_each_other_go_together() {
        let (a, b) = ([b'a'; 30], [b'b'; 30]);
        let bytes = [a, b].concat();
        let (stay, go) = taken_out(&[(8, &bytes)], &[&a, &b]);
        assert_eq!(go, [(8, &bytes[..])]);
        assert!(stay.is_empty());
    }
}
