//! The report as a document, then as PDF and plain text.
//!
//! [`compose()`] turns a visit into a document; [`doc::Doc`] says what the report
//! holds, without saying how it looks; [`pdf::to_pdf`] and [`text::to_text`] write it out, [`mail`] puts it in a
//! message and [`csv`] writes the bare numbers. None reads a clock or a file:
//! the same document gives the same bytes.

pub mod chart;
mod compose;
pub mod csv;
pub mod doc;
pub mod mail;
pub mod pdf;
mod recovery_chart;
mod refill_chart;
pub mod text;

pub use chart::{Chart, Ink, Stroke};
pub use compose::compose;
pub use csv::to_csv;
pub use pdf::{DocDate, Fonts, PdfError, to_pdf};
pub use recovery_chart::recovery_chart;
pub use refill_chart::{refill_chart, refill_chart_in, refill_overlay};
pub use text::to_text;

#[cfg(test)]
mod demo;
