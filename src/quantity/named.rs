//! Plain choices on the wire: each is its own name in kebab case. One reader and
//! one writer serve them all, from the names that `Debug` knows anyway; a phone
//! would otherwise download the names and their comparison once more for each.

use std::fmt::{self, Debug, Write};

/// The name a choice is written by: `HighHead` is `high-head`.
pub(crate) fn written(choice: &dyn Debug) -> String {
    let mut kebab = Kebab(String::new());
    // Writing to a string does not fail.
    let _ = write!(kebab, "{choice:?}");
    kebab.0
}

struct Kebab(String);

impl Write for Kebab {
    fn write_str(&mut self, part: &str) -> fmt::Result {
        for c in part.chars() {
            if c.is_ascii_uppercase() && !self.0.is_empty() {
                self.0.push('-');
            }
            self.0.push(c.to_ascii_lowercase());
        }
        Ok(())
    }
}

/// The place of the choice that is written by this name, if it is one of them.
pub(crate) fn place(name: &str, of: &mut dyn Iterator<Item = &dyn Debug>) -> Option<usize> {
    for (place, choice) in of.enumerate() {
        let mut left = Left(name.as_bytes(), true);
        if write!(left, "{choice:?}").is_ok() && left.0.is_empty() {
            return Some(place);
        }
    }
    None
}

/// What is left to be said of a name; fails at the first letter that differs.
struct Left<'a>(&'a [u8], bool);

impl Write for Left<'_> {
    fn write_str(&mut self, part: &str) -> fmt::Result {
        for b in part.bytes() {
            if b.is_ascii_uppercase() && !self.1 {
                self.0 = self.0.strip_prefix(b"-").ok_or(fmt::Error)?;
            }
            self.1 = false;
            let (first, rest) = self.0.split_first().ok_or(fmt::Error)?;
            if *first != b.to_ascii_lowercase() {
                return Err(fmt::Error);
            }
            self.0 = rest;
        }
        Ok(())
    }
}

/// Reading and writing for an enum of plain choices, all of which are named.
macro_rules! by_name {
    ($kind:ident: $($name:ident)*) => {
        impl ::serde::Serialize for $kind {
            fn serialize<S: ::serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_str(&$crate::quantity::named::written(self))
            }
        }

        impl<'de> ::serde::Deserialize<'de> for $kind {
            fn deserialize<D: ::serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                const ALL: &[$kind] = &[$($kind::$name),*];
                // Fails to compile where a choice is forgotten.
                const _: fn($kind) = |one| match one { $($kind::$name => (),)* };
                // The error names them where no phone has to download it.
                #[cfg(target_arch = "wasm32")]
                const NAMES: &[&str] = &[];
                #[cfg(not(target_arch = "wasm32"))]
                const NAMES: &[&str] = &[$(stringify!($name)),*];
                let name = <String as ::serde::Deserialize>::deserialize(from)?;
                let mut all = ALL.iter().map(|one| one as &dyn ::std::fmt::Debug);
                $crate::quantity::named::place(&name, &mut all)
                    .and_then(|place| ALL.get(place).copied())
                    .ok_or_else(|| <D::Error as ::serde::de::Error>::unknown_variant(&name, NAMES))
            }
        }
    };
}
pub(crate) use by_name;

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Clone, Copy, Debug, PartialEq)]
    enum Ours {
        One,
        HighHead,
        HighHeadAgain,
        M12Gone,
    }
    by_name!(Ours: One HighHead HighHeadAgain M12Gone);

    #[derive(Debug, serde::Serialize)]
    #[serde(rename_all = "kebab-case")]
    enum Serdes {
        One,
        HighHead,
        HighHeadAgain,
        M12Gone,
    }

    #[test]
    fn the_names_are_those_of_serdes_kebab_case() {
        for (ours, serdes) in [
            (Ours::One, Serdes::One),
            (Ours::HighHead, Serdes::HighHead),
            (Ours::HighHeadAgain, Serdes::HighHeadAgain),
            (Ours::M12Gone, Serdes::M12Gone),
        ] {
            let text = serde_json::to_string(&serdes).unwrap();
            assert_eq!(serde_json::to_string(&ours).unwrap(), text);
            assert_eq!(serde_json::from_str::<Ours>(&text).unwrap(), ours);
        }
    }

    #[test]
    fn another_name_is_refused() {
        for text in [
            "\"high\"",
            "\"high-\"",
            "\"high-head-a\"",
            "\"highhead\"",
            "\"-one\"",
            "\"One\"",
            "\"\"",
            "1",
            "null",
        ] {
            assert!(serde_json::from_str::<Ours>(text).is_err(), "{text}");
        }
    }
}
