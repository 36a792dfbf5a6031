//! What is on the page: views, made by [`markup!`] from templates, and kept up
//! to date by the reactive graph. Nothing here is generic but the thin
//! conversions in `given`: a phone downloads the drawing code once.

mod given;
mod graph;
mod late;
mod slot;
mod standing;
mod template;

pub mod prelude;

pub use coldsump_markup::{component, markup};
pub use given::{Attr, Child, CollectView};
pub use late::{after_paint, soon};
pub use slot::{Slots, Value};
pub use standing::mount;

use std::borrow::Cow;

use leptos::prelude::untrack;
use web_sys::Event;

/// A text of the program or of a person.
pub type Text = Cow<'static, str>;

// Traits of our own where `dyn FnMut` would do: that one carries a second way to
// be called, for each closure there is, and nothing calls it.

/// What is drawn again each time that something it reads changes.
pub trait Draw {
    /// The view as it is now.
    fn draw(&mut self) -> View;
}

impl<F: FnMut() -> View> Draw for F {
    fn draw(&mut self) -> View {
        self()
    }
}

/// What a part holds between its tags.
pub type Children = Box<dyn FnOnce() -> View>;

/// A piece of a page, not drawn yet.
pub enum View {
    /// A text; an empty one keeps the place of what may come.
    Text(Text),
    /// An element and all in it.
    Element(Slots),
    /// Drawn by a closure.
    Live(Box<dyn Draw>),
    /// One after the other.
    Many(Vec<View>),
}

impl Default for View {
    fn default() -> Self {
        Self::Text(Text::Borrowed(""))
    }
}

/// Views side by side.
pub fn many(views: Box<[View]>) -> View {
    View::Many(views.into_vec())
}

impl From<&'static str> for View {
    fn from(text: &'static str) -> Self {
        Self::Text(Text::Borrowed(text))
    }
}

impl From<String> for View {
    fn from(text: String) -> Self {
        Self::Text(Text::Owned(text))
    }
}

impl<F: FnMut() -> View + 'static> From<F> for View {
    fn from(draw: F) -> Self {
        Self::Live(Box::new(draw))
    }
}

/// A view that is drawn again each time that something it reads changes.
pub fn live<M: 'static, R: Child<M> + 'static>(draw: impl FnMut() -> R + 'static) -> View {
    draw.view()
}

/// Runs the body of a part: what it reads is no reason to draw it again.
pub fn untracked(body: impl FnOnce() -> View) -> View {
    untrack(body)
}

/// What a tap does.
pub fn tap<F: FnMut(Event) + 'static>(does: F) -> F {
    does
}

/// Whether all that a part needs is given; asked when the program is compiled.
pub const fn complete(needs: &[&str], given: &[&str]) {
    let mut need = 0;
    while need < needs.len() {
        let mut at = 0;
        while at < given.len() && !same(needs[need], given[at]) {
            at += 1;
        }
        assert!(
            at < given.len(),
            "an argument that the part needs is missing"
        );
        need += 1;
    }
}

const fn same(a: &str, b: &str) -> bool {
    let (a, b) = (a.as_bytes(), b.as_bytes());
    let mut at = 0;
    while at < a.len() && at < b.len() && a[at] == b[at] {
        at += 1;
    }
    a.len() == b.len() && at == a.len()
}
