//! Writes the demo report: `cargo run --example report_demo -- OUT.pdf [a4]`.
//! With a name ending in `.txt`, plain text.

use std::error::Error;

use coldsump::report::{chart, doc, pdf, text};

#[path = "../src/report/demo.rs"]
mod demo;

fn main() -> Result<(), Box<dyn Error>> {
    let mut args = std::env::args().skip(1);
    let out = args
        .next()
        .ok_or("usage: report_demo OUT.pdf|OUT.txt [a4]")?;
    let page = match args.next().as_deref() {
        None => doc::PageSize::Letter,
        Some("a4") => doc::PageSize::A4,
        Some(other) => return Err(format!("unknown paper: {other}").into()),
    };
    let report = demo::bakery(page);
    let bytes = if out.ends_with(".txt") {
        text::to_text(&report, 78).into_bytes()
    } else {
        pdf::to_pdf(&report, demo::fonts(), demo::CREATED)?
    };
    std::fs::write(&out, bytes)?;
    Ok(())
}
