//! How to put the app on the phone at hand; out of sight once it is there.

use crate::app::view::prelude::*;
use leptos::web_sys::Event;

use crate::app::ports::window;
use crate::app::prefs::prefs;
use crate::words::Phrase as P;

/// Title, the way for this phone, and the button where the browser offers one.
pub fn install() -> View {
    let words = prefs().words;
    let navigator = window().navigator();
    let agent = navigator.user_agent().unwrap_or_default();
    let is = |name: &str| agent.contains(name);
    // An iPad calls itself a Macintosh, but is touched.
    let touched = navigator.max_touch_points() > 1;
    let way = if is("iPhone") || is("iPad") || (is("Macintosh") && touched) {
        P::InstallApple
    } else if is("Android") {
        P::InstallAndroid
    } else {
        P::InstallDesk
    };
    // `public/boot.js` holds the browser's offer.
    let ask = |_| {
        if let Ok(event) = Event::new("coldsump-install") {
            let _ = window().dispatch_event(&event);
        }
    };
    markup! {
        <section class="install" data-test="install">
            <h2>{words.phrase(P::InstallTitle)}</h2>
            <p>{words.phrase(way)}</p>
            <button type="button" data-test="install-now" on:click=tap(ask)>
                {words.phrase(P::InstallNow)}
            </button>
        </section>
    }
}
