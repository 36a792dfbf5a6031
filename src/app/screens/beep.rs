//! A short tone and a buzz when a mark is on disk, where the phone has them.

use gloo_timers::callback::Timeout;
use js_sys::{Array, Function, Reflect};
use std::cell::RefCell;
use wasm_bindgen::{JsCast, JsValue};

use crate::app::ports::{call, get, window};

thread_local! {
    static SOUND: RefCell<Option<JsValue>> = const { RefCell::new(None) };
}

/// Makes the sound ready once the screen has come to rest, if the person has
/// tapped on this page already; before that a phone refuses it.
pub fn prepare() {
    Timeout::new(400, || {
        let active = get(&window().navigator(), "userActivation");
        let tapped = active.and_then(|active| get(&active, "hasBeenActive"));
        if tapped.is_some_and(|tapped| tapped.is_truthy()) {
            made();
        }
    })
    .forget();
}

/// To be called in the tap itself: a phone lets a page sound only then.
pub fn ready() {
    if let Some(context) = made() {
        call(&context, "resume", &Array::new());
    }
}

/// The one sound context, made where it is not. It takes a slow phone a tenth
/// of a second.
fn made() -> Option<JsValue> {
    SOUND.with_borrow_mut(|sound| {
        *sound = sound.take().or_else(context);
        sound.clone()
    })
}

/// Sounds and buzzes, as far as the phone does.
pub fn beep() {
    let navigator = window().navigator();
    call(&navigator, "vibrate", &Array::of1(&40.into()));
    SOUND.with(|sound| sound.borrow().as_ref().and_then(tone));
}

fn context() -> Option<JsValue> {
    let make: Function = get(&window(), "AudioContext")?.dyn_into().ok()?;
    Reflect::construct(&make, &Array::new()).ok()
}

/// A tenth of a second at 880 Hz.
fn tone(context: &JsValue) -> Option<()> {
    let tone = call(context, "createOscillator", &Array::new())?;
    let now = get(context, "currentTime")?.as_f64()?;
    let pitch = get(&tone, "frequency")?;
    Reflect::set(&pitch, &"value".into(), &880.into()).ok()?;
    call(&tone, "connect", &Array::of1(&get(context, "destination")?));
    call(&tone, "start", &Array::new());
    call(&tone, "stop", &Array::of1(&(now + 0.1).into()));
    Some(())
}
