//! Compiles markup at build time: what is fixed becomes one string that
//! `app/view` reads, and only what is not fixed becomes code. A phone so
//! downloads each element as a few letters.

mod component;
mod markup;

use proc_macro::TokenStream;

/// Markup as a `View`. Elements are written as in HTML; an attribute or a child
/// in braces is any expression, and one that is a closure is kept up to date.
///
/// `class:x=`, `style:x=`, `prop:x=` and `on:x=` set one class, one style
/// property, one property of the element and what an event does;
/// `inner_html=` fills the element. A name with a capital letter is a part made
/// by [`macro@component`].
#[proc_macro]
pub fn markup(tokens: TokenStream) -> TokenStream {
    markup::compile(tokens.into()).into()
}

/// Makes a function that answers a `View` a part for [`markup!`]: a struct of
/// its arguments, set by name. It runs untracked.
///
/// An argument may be marked `#[prop(into)]` (converted), `#[prop(optional)]`
/// (may be left out; an `Option` is given as what it holds) or
/// `#[prop(optional_no_strip)]` (may be left out; an `Option` is given as one).
#[proc_macro_attribute]
pub fn component(_: TokenStream, item: TokenStream) -> TokenStream {
    component::expand(item.into())
        .unwrap_or_else(|error| error.to_compile_error())
        .into()
}
