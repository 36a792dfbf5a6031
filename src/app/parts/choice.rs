//! Buttons that are in or out: one of a choice.

use crate::app::view::prelude::*;

/// A button that is in while its choice stands.
pub fn choice(
    test: impl Into<String>,
    label: impl Into<String>,
    chosen: impl Fn() -> bool + 'static,
    choose: impl Fn() + 'static,
) -> View {
    button(
        test.into(),
        label.into(),
        Box::new(chosen),
        Box::new(choose),
    )
}

fn button(
    test: String,
    label: String,
    chosen: Box<dyn Fn() -> bool>,
    choose: Box<dyn Fn()>,
) -> View {
    markup! {
        <button
            type="button"
            data-test=test
            aria-pressed=move || chosen().to_string()
            on:click=tap(move |_| choose())
        >
            {label}
        </button>
    }
}
