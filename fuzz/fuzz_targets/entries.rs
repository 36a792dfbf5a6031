//! Reading entries and backups.
#![no_main]

use libfuzzer_sys::{fuzz_mutator, fuzz_target, fuzzer_mutate};

fuzz_target!(|data: &[u8]| coldsump_fuzz::entries::holds(data));

// Half the time as JSON, so that what is changed still reads; else byte by byte.
fuzz_mutator!(|data: &mut [u8], size: usize, most: usize, seed: u32| {
    match coldsump_fuzz::mutate::json(&data[..size], u64::from(seed)) {
        Some(changed) if seed % 2 == 0 && changed.len() <= most => {
            data[..changed.len()].copy_from_slice(&changed);
            changed.len()
        }
        _ => fuzzer_mutate(data, size, most),
    }
});
