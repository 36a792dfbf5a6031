//! The native runner of the trace's thinking: prints, a line for each answer, what
//! follows from it, for the wasm in the page to be held against.

use coldsump_bench::pace::{paths, step};

fn main() {
    for path in paths() {
        for n in 1..=path.len() {
            let [first, next] = step(&path[..n]);
            println!("{first} {next}");
        }
    }
}
