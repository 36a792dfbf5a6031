//! One part of a site, completed or corrected: each part is a form of its own,
//! and what is kept describes the whole site anew. What is not known stays
//! empty; nothing here is needed to open a visit.

mod basin;
mod basin_table;
mod machines;
mod plant;
mod tower;
mod who;

use std::rc::Rc;

use crate::app::view::prelude::*;

use super::visit_frame::NotFound;
use crate::app::ledger::ledger;
use crate::app::parts::field::{Typing, settle_text, to_field};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Part, Route, go};
use crate::quantity::{Bounds, Kind, Value, as_typed};
use crate::record::{About, Body, Site, SiteId};
use crate::words::Phrase as P;

/// A quantity of a site being typed: empty while nobody knows it.
#[derive(Clone, Copy)]
struct Fact {
    typing: Typing,
    known: Option<Value>,
    first: StoredValue<String>,
}

/// What a field holds: nothing, or a value; an error while it is refused.
type Held = Result<Option<Value>, ()>;

impl Fact {
    fn new(key: String, kind: Kind, bounds: Bounds, known: Option<Value>) -> Self {
        let system = prefs().system.get_untracked();
        let unit = system.unit_for(kind);
        let first = known.map_or(String::new(), |v| as_typed(v, unit, system));
        let initial = Some((first.clone(), unit));
        Self {
            typing: Typing::new(key, kind, bounds, initial),
            known,
            first: StoredValue::new(first),
        }
    }

    /// What is typed; a value nobody touched is not rounded to what was shown.
    fn held(self) -> Held {
        let untouched = self
            .first
            .with_value(|first| self.typing.text.with(|t| t == first));
        if self.typing.is_empty() {
            return Ok(None);
        }
        if untouched && self.known.is_some() {
            return Ok(self.known);
        }
        match self.typing.typed() {
            Some(typed) => Ok(Some(typed.value)),
            None => Err(()),
        }
    }

    fn is_empty(self) -> bool {
        self.typing.is_empty()
    }
}

/// A refusal that a field alone can't see, once keeping was tried.
fn also(why: impl Fn() -> Option<P> + 'static) -> Signal<Option<String>> {
    also_boxed(Box::new(why))
}

fn also_boxed(why: Box<dyn Fn() -> Option<P>>) -> Signal<Option<String>> {
    Signal::derive(move || why().map(|p| prefs().words.phrase(p).to_owned()))
}

/// Changes a site; answers nothing while something is refused.
type Change = Box<dyn Fn(&mut Site) -> Option<()>>;

/// A form under way.
struct Form {
    id: SiteId,
    title: P,
    /// Set when keeping was refused.
    tried: RwSignal<bool>,
    fields: Box<dyn Fn() -> Vec<Typing>>,
    /// Draft keys of its texts and choices.
    texts: Box<dyn Fn() -> Vec<String>>,
    change: Change,
}

/// The frame of a form: keeps the part, or says what is refused.
fn frame(form: Form, body: View) -> View {
    let words = prefs().words;
    let Form {
        id,
        tried,
        fields,
        texts,
        change,
        ..
    } = form;
    let change = Rc::new(change);
    let judge = change.clone();
    // Said until what was refused is mended, not until it is kept.
    let mended = move || {
        let site = ledger().site(id).get_untracked();
        !tried.get() || site.is_none_or(|mut site| judge(&mut site).is_some())
    };
    let save = move |_| {
        tried.set(true);
        let typings = fields();
        typings.iter().for_each(|t| t.show_refusal());
        // The newest description, whatever was changed meanwhile.
        let Some(mut site) = ledger().site(id).get_untracked() else {
            return;
        };
        if change(&mut site).is_none() {
            // Once the refusals are drawn, to the first of them.
            request_animation_frame(|| to_field(".field[data-state=refused] input"));
            return;
        }
        tried.set(false);
        let keys = texts();
        let body = Body::described(site);
        ledger().write_then(About::Site(id), vec![body], move || {
            typings.into_iter().for_each(Typing::settled);
            keys.iter().for_each(|key| settle_text(key));
            go(Route::Site(id));
        });
    };
    let title = words.phrase(form.title);
    let sub = words.phrase(P::PartSub);
    let name = ledger().site(id).get_untracked().map(|s| s.name);
    let back = (Route::Site(id), name.unwrap_or_default());
    let act = markup! {
        <p class="said no" role="alert" data-test="incomplete" hidden=mended>
            <Draw icon=Icon::Cross />
            <span>{words.phrase(P::SiteIncomplete)}</span>
        </p>
        <button class="primary" data-test="save-part" on:click=tap(save)>
            {words.phrase(P::SavePart)}
        </button>
    };
    markup! { <Screen title sub name="site-part" back act>{body}</Screen> }
}

/// The screen of one part of a site.
#[component]
pub fn SitePart(id: SiteId, part: Part) -> View {
    let Some(site) = ledger().site(id).get_untracked() else {
        return markup! { <NotFound /> };
    };
    match part {
        Part::Who => who::form(id, site),
        Part::Machines => machines::form(id, site),
        Part::Tower => tower::form(id, site),
        Part::Basin => basin::form(id, site),
        Part::Plant => plant::form(id),
    }
}
