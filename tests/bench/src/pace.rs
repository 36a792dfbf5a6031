//! What the trace thinks after each answer of twelve stored calls (`paths.txt`,
//! written by `coldsump-simulate paths`), as the app thinks it: the posterior, the
//! suspects and the next check.

use coldsump::trace::{Case, Evidence, Place, Plant, Tracer};
use serde::de::value::{Error, StrDeserializer};
use serde::de::{DeserializeOwned, IntoDeserializer};

fn named<T: DeserializeOwned>(word: &str) -> T {
    let word: StrDeserializer<'_, Error> = word.into_deserializer();
    T::deserialize(word).expect("a word of the trace")
}

/// The answers of each call, in order: a line has check, answer and stage.
///
/// # Panics
/// At a line that can't be read.
pub fn paths() -> Vec<Vec<Evidence>> {
    let line = |line: &str| {
        let words: Vec<&str> = line.split(' ').collect();
        Evidence::said(named(words[0]), named(words[1]), named(words[2]))
    };
    let path = |part: &str| part.trim().lines().map(line).collect();
    include_str!("../paths.txt")
        .trim()
        .split("\n\n")
        .map(path)
        .collect()
}

/// After these answers: how likely the first suspect is, and which check is next, by its
/// number (-1 for none).
pub fn step(evidence: &[Evidence]) -> [f64; 2] {
    let at = evidence
        .last()
        .map_or(Place::MachineRoom, |e| e.check.place());
    let tracer = Tracer::new(&Plant::default(), &Case::of(evidence));
    let first = tracer.belief().suspects[0].probability;
    let next = tracer.advise(at).best;
    [first, next.map_or(-1.0, |s| s.check as usize as f64)]
}
