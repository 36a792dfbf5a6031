//! Views without their types. Every distinct type of a view or of a tap costs
//! its own copy of the drawing code, which a phone has to download; with one
//! type for all there is one copy.

use leptos::ev::MouseEvent;
use leptos::prelude::*;

/// A piece of markup, as [`view!`] writes it, of the one type [`AnyView`].
macro_rules! markup {
    ($($tokens:tt)*) => {
        ::leptos::prelude::IntoAny::into_any(::leptos::prelude::view! { $($tokens)* })
    };
}
pub(crate) use markup;

/// What a tap does.
pub fn tap(does: impl FnMut(MouseEvent) + 'static) -> Box<dyn FnMut(MouseEvent)> {
    Box::new(does)
}

/// A button that is in or out: one of a choice.
pub fn choice(
    test: impl Into<String>,
    label: impl Into<String>,
    chosen: impl Fn() -> bool + Send + Sync + 'static,
    choose: impl Fn() + 'static,
) -> AnyView {
    button(
        test.into(),
        label.into(),
        Box::new(chosen),
        tap(move |_| choose()),
    )
}

fn button(
    test: String,
    label: String,
    chosen: Box<dyn Fn() -> bool + Send + Sync>,
    choose: Box<dyn FnMut(MouseEvent)>,
) -> AnyView {
    markup! {
        <button
            type="button"
            data-test=test
            aria-pressed=move || chosen().to_string()
            on:click=choose
        >
            {label}
        </button>
    }
}
