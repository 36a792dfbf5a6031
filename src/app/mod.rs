//! The face: shell, screens, widgets.

use leptos::prelude::*;

/// Mounts the application on the page.
pub fn start() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(|| view! { <main data-test="app"></main> });
}
