//! The lock's own screen, which `public/lock-face.js` fills, and the button that
//! locks at once.

use js_sys::Array;

use crate::app::view::prelude::*;

use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::Route;
use crate::store::{has_lock, lock_call};
use crate::words::Phrase as P;

/// The screen.
#[component]
pub fn LockScreen() -> View {
    let words = prefs().words;
    let title = words.phrase(P::Lock);
    let back = (Route::Settings, words.phrase(P::Settings).to_owned());
    request_animation_frame(|| {
        if let Some(host) = document().get_element_by_id("lock") {
            let _ = lock_call("screen", &Array::of1(&host));
        }
    });
    let act = markup! { <div id="lock-act" class="col"></div> };
    markup! {
        <Screen title name="lock" back act>
            <div id="lock" class="col"></div>
        </Screen>
    }
}

/// The button that locks at once, when there is a lock.
pub fn lock_now() -> Option<View> {
    let lock = |_| drop(lock_call("now", &Array::new()));
    has_lock().then(|| {
        markup! {
            <button type="button" data-test="lock-now" on:click=tap(lock)>
                {prefs().words.phrase(P::LockNow)}
            </button>
        }
    })
}
