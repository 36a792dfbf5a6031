//! Stands in for the crate of this name, which Leptos brings for its server
//! functions. The app calls no server, but the real one exports classes to the
//! page, so that nothing removes them. Here a stream carries nothing.

use futures_core::Stream;
use wasm_bindgen::JsValue;

/// A stream that is always empty.
#[derive(Debug)]
pub struct ReadableStream(web_sys::ReadableStream);

impl ReadableStream {
    /// One that sends nothing of what it is given.
    ///
    /// # Panics
    /// Where the browser has no streams.
    pub fn from_stream<S>(_: S) -> Self
    where
        S: Stream<Item = Result<JsValue, JsValue>> + 'static,
    {
        Self(web_sys::ReadableStream::new().expect("the browser has streams"))
    }

    /// The browser's stream as it is.
    pub fn into_raw(self) -> web_sys::ReadableStream {
        self.0
    }

    /// Takes a stream of the browser.
    pub fn from_raw(raw: web_sys::ReadableStream) -> Self {
        Self(raw)
    }

    /// Ends at once.
    pub fn into_stream(self) -> impl Stream<Item = Result<JsValue, JsValue>> {
        futures_util::stream::empty()
    }
}
