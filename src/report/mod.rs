//! The report as a document, then as PDF and plain text.
//!
//! [`doc::Doc`] says what the report holds, without saying how it looks;
//! [`pdf::to_pdf`] and [`text::to_text`] write it out. Neither reads a clock
//! or a file: the same document gives the same bytes.

pub mod chart;
pub mod doc;
pub mod pdf;
pub mod text;

#[cfg(test)]
mod demo;
