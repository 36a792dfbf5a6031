//! The least that Leptos puts on a page: what `./dev bench start` measures the
//! app's own start against.

fn main() {
    #[cfg(target_arch = "wasm32")]
    {
        use leptos::prelude::*;
        mount_to_body(|| view! { <p data-test="screen-home">"Hello"</p> });
    }
}
