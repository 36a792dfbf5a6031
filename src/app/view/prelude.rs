//! What a screen needs to draw: views and the reactive graph.

pub use super::graph::{Memo, RwSignal, Signal, StoredValue};
pub use super::{Children, CollectView, View, after_paint, component, live, markup, soon, tap};
pub use leptos::callback::{Callable, Callback};
pub use leptos::prelude::{
    document, event_target_value, expect_context, on_cleanup, provide_context,
    request_animation_frame, untrack,
};
