//! The report as a document, then as PDF and plain text.
