//! Typed quantities.
#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| coldsump_fuzz::typed::holds(data));
