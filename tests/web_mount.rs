//! In a browser: the program mounts itself on an empty page.
#![cfg(target_arch = "wasm32")]

use leptos::prelude::document;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn the_program_mounts() {
    let find = || {
        document()
            .query_selector("[data-test=\"app\"]")
            .expect("a valid selector")
    };
    assert!(find().is_none());
    coldsump::app::start();
    assert!(find().is_some());
}
