//! What a screen needs to draw: views and the reactive graph.

pub use super::{Children, CollectView, View, component, live, markup, tap};
pub use leptos::callback::{Callable, Callback};
pub use leptos::prelude::{
    Dispose, Get, GetUntracked, GetValue, Memo, RwSignal, Set, Signal, StoredValue, Track, Update,
    With, WithUntracked, WithValue, document, event_target_value, expect_context, on_cleanup,
    provide_context, request_animation_frame, untrack,
};
