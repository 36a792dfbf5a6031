//! The native runner of the report: `report-bench FOLDER` writes `ours.pdf` and
//! `outline.tsv` there. For each line `NAME PASSES` on stdin it answers one
//! line: nanoseconds for all the passes, then the size of the PDF.

use std::hint::black_box;
use std::io::{self, BufRead, Write};
use std::time::Instant;

use coldsump_bench::report::{document, made, outline};

fn main() -> io::Result<()> {
    let folder = std::env::args().nth(1).expect("a folder");
    let doc = document();
    let pdf = made(&doc);
    std::fs::write(format!("{folder}/ours.pdf"), &pdf)?;
    std::fs::write(format!("{folder}/outline.tsv"), outline(&doc))?;
    for line in io::stdin().lock().lines() {
        let line = line?;
        let (_, passes) = line.split_once(' ').expect("a name and its passes");
        let passes: u32 = passes.parse().expect("how many passes");
        let begun = Instant::now();
        for _ in 0..passes {
            black_box(made(black_box(&doc)));
        }
        println!("{} {}", begun.elapsed().as_nanos(), pdf.len());
        io::stdout().flush()?;
    }
    Ok(())
}
