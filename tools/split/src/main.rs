//! Parts a built program in two, so that a phone has to take in only what the first
//! screen runs before it shows it.
//!
//!     coldsump-split watch IN OUT             a module that says what was called
//!     coldsump-split part IN LIST TEXTS FIRST REST
//!                                             the two parts; LIST names the functions
//!                                             that stay, TEXTS has what is not said at
//!                                             first, a zero after each

mod data;
mod module;
mod part;
mod shared;
#[cfg(test)]
mod tests;
mod watch;

use std::collections::HashSet;
use std::fmt;
use std::process::ExitCode;

/// What was wrong with a module or a file.
#[derive(Debug)]
pub struct Fault(String);

impl Fault {
    fn new(why: impl Into<String>) -> Self {
        Fault(why.into())
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl<E: std::error::Error> From<E> for Fault {
    fn from(fault: E) -> Self {
        Fault(fault.to_string())
    }
}

fn run(words: &[&str]) -> Result<String, Fault> {
    match *words {
        ["watch", from, to] => {
            std::fs::write(to, watch::watched(&std::fs::read(from)?)?)?;
            Ok(String::new())
        }
        ["part", from, list, texts, first, rest] => {
            let list = std::fs::read_to_string(list)?;
            let stays: HashSet<&str> = list.lines().collect();
            let texts = std::fs::read(texts)?;
            let texts: Vec<&[u8]> = texts.split(|byte| *byte == 0).collect();
            let wasm = std::fs::read(from)?;
            let parts = part::parted(&wasm, |name| stays.contains(name), &texts)?;
            for part in [&parts.first, &parts.rest] {
                wasmparser::Validator::new().validate_all(part)?;
            }
            std::fs::write(first, &parts.first)?;
            std::fs::write(rest, &parts.rest)?;
            Ok(format!(
                "split: {} + {} bytes, {} of them texts",
                parts.first.len(),
                parts.rest.len(),
                parts.moved
            ))
        }
        _ => Err(Fault::new(
            "usage: watch IN OUT | part IN LIST TEXTS FIRST REST",
        )),
    }
}

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match run(&words) {
        Ok(said) => {
            println!("{said}");
            ExitCode::SUCCESS
        }
        Err(fault) => {
            eprintln!("split: {fault}");
            ExitCode::FAILURE
        }
    }
}
