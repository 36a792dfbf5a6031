//! Handing a file to the phone: share sheet, mail draft, download.

use js_sys::{Array, Object, Reflect, Uint8Array};
use leptos::prelude::document;
use wasm_bindgen::JsCast;
use web_sys::{Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, Url};

use super::ports::{call, call_wait, get, window};
use crate::report::mail::cut;
use crate::store::KeptFile;

/// How handing over went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sent {
    /// The phone took it.
    Yes,
    /// The person closed the sheet.
    ThoughtBetter,
    /// The phone refused.
    Refused,
}

fn parts(file: &KeptFile) -> Array {
    Array::of1(&Uint8Array::from(file.bytes.as_slice()))
}

fn share_data(file: &KeptFile) -> Option<Object> {
    let kind = FilePropertyBag::new();
    kind.set_type(&file.media_type);
    let file = File::new_with_u8_array_sequence_and_options(&parts(file), &file.name, &kind);
    let data = Object::new();
    // Files only: a text beside them makes some phones drop the file.
    Reflect::set(&data, &"files".into(), &Array::of1(file.ok()?.as_ref())).ok()?;
    Some(data)
}

/// Whether the share sheet here takes files.
pub fn can_share(file: &KeptFile) -> bool {
    let asked = || {
        let data = Array::of1(&share_data(file)?.into());
        call(&window().navigator(), "canShare", &data)?.as_bool()
    };
    asked().unwrap_or(false)
}

/// Opens the share sheet with the file.
pub async fn share(file: &KeptFile) -> Sent {
    let Some(data) = share_data(file) else {
        return Sent::Refused;
    };
    let data = Array::of1(&data.into());
    match call_wait(&window().navigator(), "share", &data).await {
        Some(Ok(_)) => Sent::Yes,
        Some(Err(error)) => match get(&error, "name").and_then(|n| n.as_string()).as_deref() {
            Some("AbortError") => Sent::ThoughtBetter,
            _ => Sent::Refused,
        },
        None => Sent::Refused,
    }
}

/// Longest body of a mail link, percent-encoded.
const LONGEST_LINK: usize = 1_700;

/// Opens a mail draft with the customer's page as text, as much of it as a
/// link can carry, ending in `more` when it was cut.
pub fn mail(subject: &str, body: &str, more: &str) {
    let encode = |text: &str| String::from(js_sys::encode_uri_component(text));
    let whole = cut(body, LONGEST_LINK);
    let body = match whole.len() == body.len() {
        true => body.to_owned(),
        false => format!("{whole}\n{more}"),
    };
    let draft = format!("mailto:?subject={}&body={}", encode(subject), encode(&body));
    let _ = window().location().set_href(&draft);
}

/// Saves the file through a download link; false when the browser refused.
pub fn save(file: &KeptFile) -> bool {
    let saved = || {
        let kind = BlobPropertyBag::new();
        kind.set_type(&file.media_type);
        let blob = Blob::new_with_u8_array_sequence_and_options(&parts(file), &kind).ok()?;
        let url = Url::create_object_url_with_blob(&blob).ok()?;
        let link: HtmlAnchorElement = document().create_element("a").ok()?.dyn_into().ok()?;
        link.set_href(&url);
        link.set_download(&file.name);
        link.click();
        Some(())
    };
    saved().is_some()
}
