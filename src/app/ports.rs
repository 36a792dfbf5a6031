//! The browser behind the domain's ports, clock and randomness, and its
//! methods that have no binding.

use js_sys::{Array, Function, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use crate::record::{Chance, Clock, Moment};

/// The browser's clock and randomness, named once per run of the page.
#[derive(Clone, Copy, Debug)]
pub struct Browser {
    run: u32,
}

impl Browser {
    /// Names this run of the page at random.
    pub fn new() -> Self {
        let mut run = [0; 4];
        fill(&mut run);
        Self {
            run: u32::from_le_bytes(run),
        }
    }
}

impl Clock for Browser {
    fn now(&self) -> Moment {
        let date = js_sys::Date::new_0();
        let steady = window().performance().map_or(0.0, |p| p.now());
        Moment {
            ms: js_sys::Date::now() as i64,
            offset_min: -date.get_timezone_offset() as i16,
            run: self.run,
            run_ms: steady,
        }
    }
}

impl Chance for Browser {
    fn ten_bytes(&self) -> [u8; 10] {
        let mut bytes = [0; 10];
        fill(&mut bytes);
        bytes
    }
}

fn fill(bytes: &mut [u8]) {
    // Without a source of randomness ids would still be ordered and, with the
    // time in them, unique on one phone.
    if let Ok(crypto) = window().crypto() {
        let _ = crypto.get_random_values_with_u8_array(bytes);
    }
}

/// The window this page runs in.
pub fn window() -> web_sys::Window {
    leptos::prelude::window()
}

/// What an object of the browser has under a name; nothing for what is undefined.
pub fn get(of: &JsValue, name: &str) -> Option<JsValue> {
    let found = Reflect::get(of, &name.into()).ok()?;
    (!found.is_undefined()).then_some(found)
}

/// What a method answers; nothing where there is none, or it throws.
pub fn call(of: &JsValue, name: &str, with: &Array) -> Option<JsValue> {
    let does: Function = get(of, name)?.dyn_into().ok()?;
    does.apply(of, with).ok()
}

/// The same, and waits for the promise it answers.
pub async fn call_wait(of: &JsValue, name: &str, with: &Array) -> Option<Result<JsValue, JsValue>> {
    let promise: Promise = call(of, name, with)?.dyn_into().ok()?;
    Some(JsFuture::from(promise).await)
}

/// Whether the browser believes there is a network.
pub fn online() -> bool {
    window().navigator().on_line()
}
