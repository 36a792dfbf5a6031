//! Changes of a JSON document that leave it JSON: numbers at their ends, texts
//! that mean something somewhere else, parts doubled, dropped, exchanged.

use serde_json::{Value as Json, json};

/// A small generator of its own: the same seed gives the same change.
#[derive(Debug)]
pub struct Dice(pub u64);

impl Dice {
    /// A number below `most` (SplitMix64, Steele, Lea and Flood 2014).
    pub fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) % most.max(1) as u64) as usize
    }
}

/// Texts that mean something to a page, a spreadsheet, a mail or a script.
pub const TEXTS: &[&str] = &[
    "",
    "<img src=x onerror=alert(1)>",
    "\"><script>alert(1)</script>",
    "=HYPERLINK(\"http://x\")",
    "@SUM(1)",
    "a\r\nBcc: x@y\r\n\r\n",
    "\u{202e}fdp.exe\u{2066}",
    "👩‍🔧 مرحبا e\u{301}\u{301}\u{301}",
    "\u{0}\u{1f}\u{7f}\u{85}\u{2028}",
    "__proto__",
    "constructor",
    "(((\\)",
    "]]>&amp;<!--",
    "../../etc/passwd",
    "ffffffff-ffff-7fff-bfff-ffffffffffff",
    "00000000-0000-0000-0000-000000000000",
    "9999-99-99",
    "1' 4 1/2\"",
];

/// Numbers at the ends of what a field can hold.
fn number(dice: &mut Dice) -> Json {
    let all = [
        json!(0),
        json!(-1),
        json!(1),
        json!(0.5),
        json!(-0.0),
        json!(1e308),
        json!(-1e308),
        json!(5e-324),
        json!(1e-9),
        json!(1e9),
        json!(255),
        json!(65_535),
        json!(65_536),
        json!(i64::MAX),
        json!(i64::MIN),
        json!(u64::MAX),
        json!(253_402_300_800_000_i64),
        json!(273.15),
    ];
    all[dice.below(all.len())].clone()
}

/// The document changed in one to four places; `None` when it is no JSON.
pub fn json(data: &[u8], seed: u64) -> Option<Vec<u8>> {
    let mut document: Json = serde_json::from_slice(data).ok()?;
    let mut dice = Dice(seed);
    for _ in 0..=dice.below(4) {
        let at = dice.below(count(&document));
        let other = nth(&document, dice.below(count(&document))).cloned();
        change(nth_mut(&mut document, at)?, other, &mut dice);
    }
    serde_json::to_vec(&document).ok()
}

fn children(of: &Json) -> Box<dyn Iterator<Item = &Json> + '_> {
    match of {
        Json::Array(all) => Box::new(all.iter()),
        Json::Object(all) => Box::new(all.values()),
        _ => Box::new(std::iter::empty()),
    }
}

fn count(of: &Json) -> usize {
    1 + children(of).map(count).sum::<usize>()
}

fn nth(of: &Json, mut at: usize) -> Option<&Json> {
    if at == 0 {
        return Some(of);
    }
    at -= 1;
    for child in children(of) {
        let size = count(child);
        if at < size {
            return nth(child, at);
        }
        at -= size;
    }
    None
}

fn nth_mut(of: &mut Json, mut at: usize) -> Option<&mut Json> {
    if at == 0 {
        return Some(of);
    }
    at -= 1;
    let all: Box<dyn Iterator<Item = &mut Json>> = match of {
        Json::Array(all) => Box::new(all.iter_mut()),
        Json::Object(all) => Box::new(all.values_mut()),
        _ => return None,
    };
    for child in all {
        let size = count(child);
        if at < size {
            return nth_mut(child, at);
        }
        at -= size;
    }
    None
}

fn change(part: &mut Json, other: Option<Json>, dice: &mut Dice) {
    match (dice.below(8), part) {
        (0, part) => *part = other.unwrap_or(Json::Null),
        (_, part @ Json::Number(_)) => *part = number(dice),
        (_, Json::Bool(so)) => *so = !*so,
        (1..4, Json::String(text)) => *text = TEXTS[dice.below(TEXTS.len())].into(),
        (4, Json::String(text)) => *text = text.repeat(1 + dice.below(40)),
        (_, Json::String(text)) => {
            // One digit of an id, one letter of a word.
            let at = dice.below(text.len());
            let letter = char::from(b"0123456789abcdef-_ \"<"[dice.below(21)]);
            if text.is_char_boundary(at) && text.is_char_boundary(at + 1) && at < text.len() {
                text.replace_range(at..at + 1, &letter.to_string());
            }
        }
        (1, Json::Array(all)) if !all.is_empty() => drop(all.remove(dice.below(all.len()))),
        (2 | 3, Json::Array(all)) if !all.is_empty() => {
            let again = all[dice.below(all.len())].clone();
            all.insert(dice.below(all.len() + 1), again);
        }
        (_, Json::Array(all)) if all.len() > 1 => {
            let (a, b) = (dice.below(all.len()), dice.below(all.len()));
            all.swap(a, b);
        }
        (1, Json::Object(all)) => {
            if let Some(key) = all.keys().nth(dice.below(all.len())).cloned() {
                all.remove(&key);
            }
        }
        (2, Json::Object(all)) => {
            let name = TEXTS[dice.below(TEXTS.len())];
            all.insert(name.into(), other.unwrap_or(Json::Null));
        }
        _ => {}
    }
}
