//! Name, address, way in, whom to ask for.

use crate::app::view::prelude::*;

use super::{Form, also, frame};
use crate::app::parts::field::TextField;
use crate::app::prefs::prefs;
use crate::record::{Site, SiteId};
use crate::words::Phrase as P;

/// The form.
pub fn form(id: SiteId, site: Site) -> View {
    let words = prefs().words;
    let tried = RwSignal::new(false);
    let name = RwSignal::new(site.name);
    let place = RwSignal::new(site.place);
    let access = RwSignal::new(site.access);
    let contacts = RwSignal::new(site.contacts);
    let key = move |which: &str| format!("site {id} {which}");
    let keys = move || ["name", "place", "access", "contacts"].map(key).to_vec();
    let text = |of: RwSignal<String>| of.get_untracked().trim().to_owned();
    let change = move |site: &mut Site| {
        site.name = text(name);
        site.place = text(place);
        site.access = text(access);
        site.contacts = text(contacts);
        (!site.name.is_empty()).then_some(())
    };
    let nameless =
        also(move || (tried.get() && name.with(|n| n.trim().is_empty())).then_some(P::NameNeeded));
    let form = Form {
        id,
        title: P::PartWho,
        tried,
        fields: Box::new(Vec::new),
        texts: Box::new(keys),
        change: Box::new(change),
    };
    let body = markup! {
        <div class="fields">
            <TextField key=key("name") text=name label=words.phrase(P::SiteName)
                refusal=nameless test="site-name" />
            <TextField key=key("place") text=place label=words.phrase(P::SitePlace)
                test="site-place" />
            <TextField key=key("access") text=access label=words.phrase(P::SiteAccess)
                long=true test="site-access" />
            <TextField key=key("contacts") text=contacts label=words.phrase(P::SiteContacts)
                long=true test="site-contacts" />
        </div>
    };
    frame(form, body)
}
