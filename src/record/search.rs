//! A search that forgives spelling: letters missing, doubled, swapped or wrong,
//! accents left out, half a word typed.

/// The most words of a query that count.
const MOST_WORDS: usize = 6;

/// No word of the text is like the word asked for.
const NOWHERE: u8 = u8::MAX;

/// What was typed, word by word.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Query(Vec<String>);

/// How far each word of a query is from a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Costs([u8; MOST_WORDS]);

impl Costs {
    /// The same, a little further: found in a place that matters less.
    pub fn further(self) -> Self {
        Self(self.0.map(|c| c.saturating_add(1)))
    }

    /// Word by word the nearer of two.
    pub fn or(self, other: Self) -> Self {
        let mut both = self.0;
        for (mine, other) in both.iter_mut().zip(other.0) {
            *mine = (*mine).min(other);
        }
        Self(both)
    }
}

impl Query {
    /// Reads a query; words after the sixth are passed over.
    pub fn new(text: &str) -> Self {
        Self(
            words(&fold(text))
                .take(MOST_WORDS)
                .map(String::from)
                .collect(),
        )
    }

    /// Whether nothing is asked.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How far each word is from the nearest word of a text.
    pub fn costs(&self, text: &str) -> Costs {
        let folded = fold(text);
        let mut costs = Costs([NOWHERE; MOST_WORDS]);
        let mut before = "";
        for word in words(&folded) {
            for (asked, cost) in self.0.iter().zip(&mut costs.0) {
                *cost = (*cost).min(far(asked, word));
                // Written as one word, typed as one, kept as two.
                if *cost > 2 && asked.len() > word.len() && asked.len() >= 6 && !before.is_empty() {
                    let joined = format!("{before}{word}");
                    *cost = (*cost).min(far(asked, &joined).saturating_add(1));
                }
            }
            before = word;
        }
        costs
    }

    /// The sum, lower for a better match; `None` while a word is found in none
    /// of the texts.
    pub fn score(&self, texts: &[Costs]) -> Option<u32> {
        let mut sum = 0;
        for place in 0..self.0.len() {
            let least = texts.iter().map(|t| t.0[place]).min()?;
            if least == NOWHERE {
                return None;
            }
            sum += u32::from(least);
        }
        Some(sum)
    }
}

/// Lower case without accents.
fn fold(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            'à'..='å' | 'À'..='Å' => out.push('a'),
            'ç' | 'Ç' => out.push('c'),
            'è'..='ë' | 'È'..='Ë' => out.push('e'),
            'ì'..='ï' | 'Ì'..='Ï' => out.push('i'),
            'ñ' | 'Ñ' => out.push('n'),
            'ò'..='ö' | 'Ò'..='Ö' | 'ø' | 'Ø' => out.push('o'),
            'ù'..='ü' | 'Ù'..='Ü' => out.push('u'),
            'ý' | 'ÿ' | 'Ý' => out.push('y'),
            'æ' | 'Æ' => out.push_str("ae"),
            'ß' => out.push_str("ss"),
            '\'' | '’' => {}
            c => out.push(c.to_ascii_lowercase()),
        }
    }
    out
}

fn words(folded: &str) -> impl Iterator<Item = &str> {
    // Dates keep their hyphens; other marks part words.
    let within = |c: char| !c.is_ascii() || c.is_ascii_alphanumeric() || c == '-';
    folded
        .split(move |c| !within(c))
        .filter(|word| !word.is_empty())
}

/// How far the word asked for is from a word: 0 the same, 1 its beginning, 2
/// within it, more for each letter that is wrong.
fn far(asked: &str, word: &str) -> u8 {
    if word == asked {
        return 0;
    }
    if word.starts_with(asked) {
        return 1;
    }
    if asked.len() >= 3 && word.contains(asked) {
        return 2;
    }
    let slips = match asked.len() {
        0..=3 => return NOWHERE,
        4..=5 => 1,
        6..=9 => 2,
        _ => 3,
    };
    // A wrong digit is another number.
    if asked.bytes().any(|b| b.is_ascii_digit()) {
        return NOWHERE;
    }
    match distance(asked.as_bytes(), word.as_bytes(), slips) {
        Some(wrong) => 2 + 3 * wrong,
        None => NOWHERE,
    }
}

/// Letters to insert, leave out, change or swap with a neighbour until `asked`
/// begins `word`; `None` when more than `most` (optimal string alignment).
fn distance(asked: &[u8], word: &[u8], most: u8) -> Option<u8> {
    const LONG: usize = 32;
    if asked.len() > LONG || word.len() + usize::from(most) < asked.len() {
        return None;
    }
    // Beyond this the rest of the word is only what comes after its beginning.
    let width = word.len().min(asked.len() + usize::from(most));
    let mut rows = [[0u8; LONG + 4]; 3];
    for (j, cell) in rows[0].iter_mut().enumerate() {
        *cell = j as u8;
    }
    for i in 1..=asked.len() {
        let (now, one, two) = (i % 3, (i + 2) % 3, (i + 1) % 3);
        rows[now][0] = i as u8;
        let mut least = rows[now][0];
        for j in 1..=width {
            let same = asked[i - 1] == word[j - 1];
            let mut cell = rows[one][j - 1] + u8::from(!same);
            cell = cell.min(rows[one][j] + 1).min(rows[now][j - 1] + 1);
            if i > 1 && j > 1 && asked[i - 1] == word[j - 2] && asked[i - 2] == word[j - 1] {
                cell = cell.min(rows[two][j - 2] + 1);
            }
            rows[now][j] = cell;
            least = least.min(cell);
        }
        if least > most {
            return None;
        }
    }
    let last = &rows[asked.len() % 3][..=width];
    last.iter().copied().min().filter(|d| *d <= most)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn score(asked: &str, text: &str) -> Option<u32> {
        let query = Query::new(asked);
        query.score(&[query.costs(text)])
    }

    #[test]
    fn spelling_is_forgiven() {
        let text = "Halden Street Bakery, 14 Halden Street";
        for asked in [
            "halden",
            "Haldn",
            "haledn",
            "hallden",
            "bakry",
            "bakrey",
            "BAKERY",
            "stret",
            "halden bakery",
            "bakery halden",
            "haldenstreet",
            "bak",
            "14",
        ] {
            assert!(score(asked, text).is_some(), "{asked}");
        }
        assert!(score("wilson", text).is_none());
        assert!(score("halden wilson", text).is_none());
        assert!(score("15", text).is_none(), "another number");
        assert!(score("brewery", text).is_none());
    }

    #[test]
    fn accents_and_marks_do_not_matter() {
        assert!(score("cafe munchen", "Café München").is_some());
        assert!(score("obriens", "O'Brien's Cold Store").is_some());
        assert!(score("2026-03", "2026-03-14 noise").is_some());
    }

    #[test]
    fn the_nearer_comes_first() {
        let better = |a, b| score("bakery", a) < score("bakery", b);
        assert!(better("Old Bakery", "Bakeryworks"));
        assert!(better("Bakeryworks", "Bakrey"));
        assert_eq!(score("", "anything"), Some(0));
    }

    #[test]
    fn words_may_lie_in_different_texts() {
        let query = Query::new("halden foam");
        let site = query.costs("Halden Street Bakery");
        let complaint = query.costs("foam on the basin");
        assert_eq!(query.score(&[site]), None);
        assert!(query.score(&[site, complaint]).is_some());
    }

    #[test]
    fn a_name_comes_before_a_place() {
        let query = Query::new("birch bakery");
        let named = query
            .costs("Birch Bakery")
            .or(query.costs("2 Alder Lane").further());
        let placed = query
            .costs("Alder Bakery")
            .or(query.costs("2 Birch Lane").further());
        assert!(query.score(&[named]) < query.score(&[placed]));
        let nowhere = query.costs("Printworks").further();
        assert_eq!(query.score(&[nowhere]), None);
    }

    proptest! {
        #[test]
        fn one_slip_in_a_word_is_found(
            word in "[a-z]{6,14}", at in any::<prop::sample::Index>(), letter in 0u8..26, how in 0u8..4,
        ) {
            let mut typed: Vec<char> = word.chars().collect();
            let i = at.index(typed.len() - 1);
            match how {
                0 => drop(typed.remove(i)),
                1 => typed.insert(i, char::from(b'a' + letter)),
                2 => typed[i] = char::from(b'a' + letter),
                _ => typed.swap(i, i + 1),
            }
            let typed: String = typed.into_iter().collect();
            prop_assert!(score(&typed, &format!("The {word} works")).is_some(), "{}", typed);
        }

        #[test]
        fn nothing_typed_panics(asked in "\\PC{0,60}", text in "\\PC{0,60}") {
            let _ = score(&asked, &text);
            prop_assert!(text.trim().is_empty() || score(&text, &text).is_some());
        }
    }
}
