//! The frame of every screen: way back, title, body, one action in the
//! thumb's reach, and what the person must know wherever they are.

use crate::app::view::prelude::*;
use gloo_timers::callback::Timeout;

use super::fault::NotSaved;
use super::field::to_heading;
use super::icon::{Draw, Icon};
use super::waterline::Waterline;
use crate::app::ledger::ledger;
use crate::app::prefs::prefs;
use crate::app::route::{self, Route};
use crate::app::signals::Outside;
use crate::quantity::Length;
use crate::record::{Tower, VisitId};
use crate::words::Phrase as P;

/// What the edge shows on a visit's screens.
#[derive(Clone)]
pub struct Edge {
    /// The visit.
    pub visit: VisitId,
    /// Its tower.
    pub tower: Tower,
    /// The last known level.
    pub level: Option<Length>,
}

/// A screen.
#[component]
pub fn Screen(
    /// Its title.
    #[prop(into)]
    title: String,
    /// Under the title.
    #[prop(optional, into)]
    sub: Option<View>,
    /// The way back: where, and its name.
    #[prop(optional, into)]
    back: Option<(Route, String)>,
    /// The waterline.
    #[prop(optional, into)]
    edge: Option<Signal<Option<Edge>>>,
    /// Name of the screen, for tests.
    name: &'static str,
    /// The action bar.
    #[prop(optional, into)]
    act: Option<View>,
    /// The body.
    children: Children,
) -> View {
    let with_rail = edge.is_some();
    let window_title = format!("{title} · Coldsump");
    let moved = route::just_moved();
    // With the frame: the heading is not on the page before it. The title can wait.
    request_animation_frame(move || {
        if moved {
            to_heading("h1");
        }
        Timeout::new(0, move || document().set_title(&window_title)).forget();
    });
    markup! {
        <div class="screen" class:with-rail=with_rail data-test=format!("screen-{name}")>
            <Banners name />
            <header>
                {edge
                    .map(|edge| move || {
                        edge.get()
                            .map(|Edge { visit, tower, level }| {
                                markup! { <Waterline visit tower level /> }
                            })
                    })}
                {back
                    .map(|(route, label)| {
                        markup! {
                            <a class="back" href=route.href() data-test="back">
                                <Draw icon=Icon::Back />
                                {label}
                            </a>
                        }
                    })}
                <h1>{title}</h1>
                {sub.map(|sub| markup! { <p class="sub">{sub}</p> })}
            </header>
            <main>{children()}</main>
            {act.map(|act| markup! { <footer class="act">{act}</footer> })}
        </div>
    }
}

/// What must be known on any screen: a save that failed, a report that can
/// go out, a new version that waits.
#[component]
fn Banners(name: &'static str) -> View {
    let words = prefs().words;
    let ledger = ledger();
    let outside: Outside = expect_context();
    markup! {
        <div class="banners">
        <div aria-live="assertive">
            {move || {
                ledger
                    .trouble()
                    .map(|(fault, waiting)| {
                        markup! { <NotSaved fault waiting /> }
                    })
            }}
        </div>
        <div aria-live="polite">
            {move || {
                let waiting = ledger.summary().with(|all| all.waiting_reports().len());
                (waiting > 0 && name != "outbox" && outside.signal_is_back.get())
                    .then(|| {
                        markup! {
                            <div class="banner" data-test="signal-back">
                                <span>{words.reports_can_go(waiting)}</span>
                                <a
                                    class="button"
                                    href=Route::Outbox.href()
                                    on:click=tap(move |_| outside.signal_is_back.set(false))
                                >
                                    {words.phrase(P::OpenOutbox)}
                                </a>
                            </div>
                        }
                    })
            }}
            {move || {
                // Where work begins, and where photos are taken.
                (outside.room_low.get() && matches!(name, "home" | "papers"))
                    .then(|| {
                        markup! {
                            <div class="banner" data-test="room-low">
                                <span>{words.phrase(P::RoomLow)}</span>
                                <a class="button" href=Route::Settings.href()>
                                    {words.phrase(P::Backup)}
                                </a>
                            </div>
                        }
                    })
            }}
            {move || {
                outside
                    .update_waits
                    .get()
                    .then(|| {
                        markup! {
                            <div class="banner" data-test="update-waits">
                                <span>{words.phrase(P::UpdateWaits)}</span>
                                {move || match ledger.summary().with(|all| all.test_running()) {
                                    true => {
                                        markup! { <span>{words.phrase(P::UpdateAfterTest)}</span> }
                                    }
                                    false => {
                                        markup! {
                                            <button on:click=tap(move |_| outside.take_update())>
                                                {words.phrase(P::UpdateNow)}
                                            </button>
                                        }
                                    }
                                }}
                            </div>
                        }
                    })
            }}
        </div>
        </div>
    }
}

/// What stands where something is being read; shown only when it takes long
/// (style/app.css).
pub fn opening() -> View {
    let opening = prefs().words.phrase(P::Opening);
    markup! {
        <div class="boot late">
            <div class="filling"></div>
            <p role="status">{opening}</p>
        </div>
    }
}
