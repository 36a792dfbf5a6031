//! In a browser: the program mounts itself on an empty page.
#![cfg(target_arch = "wasm32")]

use gloo_timers::future::TimeoutFuture;
use leptos::prelude::document;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// Asks again until the store is open and the screen is up, 10 s at most.
#[wasm_bindgen_test]
async fn the_program_mounts() {
    let find = || {
        document()
            .query_selector("[data-test=\"app\"]")
            .expect("a valid selector")
    };
    assert!(find().is_none());
    coldsump::app::start();
    for _ in 0..500 {
        if find().is_some() {
            return;
        }
        TimeoutFuture::new(20).await;
    }
    panic!("the program did not mount");
}
