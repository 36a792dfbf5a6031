//! Text in a PDF.
#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| coldsump_fuzz::pdf::holds(data));
