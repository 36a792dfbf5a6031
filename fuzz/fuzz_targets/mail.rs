//! The mail file and the table.
#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| coldsump_fuzz::mail::holds(data));
