//! Every language says what English says. That no phrase is missing the
//! compiler sees to; here the sources of the two folders are laid side by side,
//! literal by literal, under the same names: the same blanks to fill, the same
//! numbers, the same end of the sentence, and nothing left in English.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// A string in the source and what stands before it: the names written with a
/// capital since the last one, which are the patterns of a `match`.
#[derive(Debug, PartialEq)]
struct Said {
    names: Vec<String>,
    text: String,
}

/// What each function of a source file says, tests left out. Tables of
/// phrases count as the function `phrase`.
fn said(source: &str) -> BTreeMap<String, Vec<Said>> {
    let source = source.split("#[cfg(test)]").next().unwrap_or_default();
    // A space or hyphen that does not break is one.
    let source = source.replace("\\u{a0}", " ").replace("\\u{2011}", "-");
    let mut functions: BTreeMap<String, Vec<Said>> = BTreeMap::new();
    let (mut function, mut names) = (String::from("phrase"), Vec::new());
    let mut word = String::new();
    let mut last_word = String::new();
    let mut chars = source.chars().peekable();
    while let Some(c) = chars.next() {
        if c.is_alphanumeric() || c == '_' {
            word.push(c);
            continue;
        }
        if !word.is_empty() {
            if last_word == "fn" {
                function = word.clone();
                names.clear();
            } else if word.starts_with(|c: char| c.is_uppercase()) && !word.ends_with("Phrase") {
                names.push(word.clone());
            }
            last_word = std::mem::take(&mut word);
        }
        match c {
            '/' if chars.peek() == Some(&'/') => while chars.next_if(|c| *c != '\n').is_some() {},
            // A character, or the mark of a lifetime.
            '\'' => {
                let ahead: Vec<char> = chars.clone().take(3).collect();
                let length = if ahead.first() == Some(&'\\') { 3 } else { 2 };
                if ahead.get(length - 1) == Some(&'\'') {
                    chars.by_ref().take(length).for_each(drop);
                }
            }
            '"' => {
                let mut text = String::new();
                while let Some(c) = chars.next().filter(|c| *c != '"') {
                    match (c, chars.peek()) {
                        ('\\', Some('\n')) => {
                            while chars.next_if(|c| c.is_whitespace()).is_some() {}
                        }
                        ('\\', Some(_)) => text.extend(chars.next()),
                        _ => text.push(c),
                    }
                }
                functions.entry(function.clone()).or_default().push(Said {
                    names: std::mem::take(&mut names),
                    text,
                });
            }
            _ => {}
        }
    }
    functions
}

/// The blanks of a format string, in the order of the alphabet.
fn blanks(text: &str) -> Vec<&str> {
    let mut found: Vec<&str> = text
        .split('{')
        .skip(1)
        .filter_map(|rest| rest.split_once('}').map(|(name, _)| name))
        .collect();
    found.sort_unstable();
    found
}

/// The numbers written in figures, in order of size as text; a sentence may
/// name them in another order.
fn numbers(text: &str) -> Vec<String> {
    let mut found: Vec<String> = text
        .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','))
        .map(|n| n.trim_matches(['.', ',']).to_owned())
        .filter(|n| !n.is_empty())
        .collect();
    found.sort_unstable();
    found
}

/// How a text ends: sentence, question, lead or label.
fn end(text: &str) -> char {
    let last = text.trim_end().chars().last().unwrap_or(' ');
    if ".?!:;,".contains(last) { last } else { ' ' }
}

/// What may read the same in both languages: names, designations, and what is
/// only blanks and units.
const SAME: &[&str] = &[
    "A4",
    "Chillers",
    "Coldsump",
    "KaV/L",
    "No",
    "Rectangular",
    "SI: °C, kPa, L/s",
    "Volts",
    "pH",
];

/// Whether nothing in a text is a word of English: blanks, signs and units.
fn wordless(text: &str) -> bool {
    let mut bare = String::new();
    let mut depth = 0;
    for c in text.chars() {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ if depth == 0 => bare.push(c),
            _ => {}
        }
    }
    bare.split(|c: char| !c.is_alphabetic())
        .all(|word| word.is_empty() || ["A", "SHA", "V", "min", "mm", "s"].contains(&word))
}

/// Functions that only English has, as all languages use them.
const SHARED: &[(&str, &str)] = &[
    ("quantity.rs", "as_typed"),
    ("quantity.rs", "example"),
    ("quantity.rs", "listed"),
];

fn compare(file: &str, english: &str, other: &str) -> Vec<String> {
    let (english, other) = (said(english), said(other));
    let mut wrong = Vec::new();
    for (function, ours) in &english {
        if SHARED.contains(&(file, function.as_str())) {
            continue;
        }
        let Some(theirs) = other.get(function) else {
            wrong.push(format!("{file}: {function} says nothing"));
            continue;
        };
        if ours.len() != theirs.len() {
            wrong.push(format!(
                "{file}: {function} says {} things, not {}",
                theirs.len(),
                ours.len()
            ));
        }
        for (a, b) in ours.iter().zip(theirs) {
            let mut fault = |what: &str| {
                wrong.push(format!(
                    "{file}: {function}: {what}:\n    {:?} {}\n    {:?} {}",
                    a.names, a.text, b.names, b.text
                ));
            };
            if a.names != b.names {
                fault("in another place");
                break;
            }
            if a.text.trim().is_empty() != b.text.trim().is_empty() {
                fault("empty in one");
            }
            if a.text == b.text && !wordless(&a.text) && !SAME.contains(&a.text.as_str()) {
                fault("still English");
            }
            if blanks(&a.text) != blanks(&b.text) {
                fault("other blanks");
            }
            if numbers(&a.text) != numbers(&b.text) {
                fault("other numbers");
            }
            if end(&a.text) != end(&b.text) {
                fault("ends otherwise");
            }
            if b.text.matches('?').count() != b.text.matches('¿').count()
                || b.text.matches('!').count() != b.text.matches('¡').count()
            {
                fault("opens no question");
            }
            if b.text
                .split(|c: char| !c.is_alphabetic())
                .any(|word| word.ends_with("cion") || word.ends_with("sion"))
            {
                fault("lacks an accent");
            }
        }
    }
    for function in other.keys().filter(|f| !english.contains_key(*f)) {
        wrong.push(format!("{file}: English has no {function}"));
    }
    wrong
}

fn folder(language: &str) -> BTreeMap<String, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("src/words")
        .join(language);
    fs::read_dir(&path)
        .expect("the language has a folder")
        .map(|entry| {
            let path = entry.expect("a file of the folder").path();
            let name = path
                .file_name()
                .expect("a name")
                .to_string_lossy()
                .into_owned();
            (name, fs::read_to_string(&path).expect("a text file"))
        })
        .collect()
}

#[test]
fn spanish_says_what_english_says() {
    let (english, spanish) = (folder("en"), folder("es"));
    let names = |of: &BTreeMap<String, String>| of.keys().cloned().collect::<Vec<_>>();
    assert_eq!(names(&english), names(&spanish));
    let wrong: Vec<String> = english
        .iter()
        .flat_map(|(file, text)| compare(file, text, &spanish[file]))
        .collect();
    assert!(
        wrong.is_empty(),
        "{} faults\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    let all: usize = english
        .values()
        .map(|t| said(t).values().map(Vec::len).sum::<usize>())
        .sum();
    assert!(all > 1000, "only {all} phrases were compared");
}

/// The comparison sees what it is for.
#[test]
fn each_kind_of_slip_is_seen() {
    let english = "fn f(x: X) -> S { match x { X::A => \"Wait {n} min of 15.\", X::B => \"b\" } }";
    let good = "fn f(x: X) -> S { match x { X::A => \"Espere {n} min de 15.\", X::B => \"v\" } }";
    assert_eq!(compare("f.rs", english, good), Vec::<String>::new());
    for (bad, what) in [
        (
            good.replace("Espere {n} min de 15.", "Wait {n} min of 15."),
            "still English",
        ),
        (good.replace("{n}", "n"), "other blanks"),
        (good.replace("15", "16"), "other numbers"),
        (good.replace("15.\"", "15\""), "ends otherwise"),
        (good.replace("\"v\"", "\"\""), "empty in one"),
        (good.replace("X::A", "X::C"), "in another place"),
        (good.replace("Espere", "¡Espere"), "opens no question"),
        (good.replace("Espere", "Atencion"), "lacks an accent"),
        (good.replace(", X::B => \"v\"", ""), "says 1 things"),
        (good.replace("fn f", "fn g"), "says nothing"),
    ] {
        let wrong = compare("f.rs", english, &bad);
        assert!(wrong.iter().any(|w| w.contains(what)), "{what}: {wrong:?}");
    }
}
