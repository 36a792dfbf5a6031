//! The faces of the app: sizes of the window, lights, sizes of text.

use serde_json::{Value, json};

use crate::phone::Phone;

/// How the app is looked at.
#[derive(Debug, Clone, Copy)]
pub struct Face {
    /// Name, as in the pictures' names.
    pub name: &'static str,
    /// Width of the window, in CSS pixels.
    pub width: u32,
    /// Its height.
    pub height: u32,
    /// The light, as the settings name it.
    pub light: &'static str,
    /// Size of the text, in per cent.
    pub text: u32,
}

const fn face(name: &'static str, width: u32, height: u32, light: &'static str, text: u32) -> Face {
    Face {
        name,
        width,
        height,
        light,
        text,
    }
}

/// All of them; the first is how the walk itself goes on.
pub const FACES: [Face; 8] = [
    face("day", 390, 844, "day", 100),
    face("dark", 390, 844, "dark", 100),
    face("glare", 390, 844, "glare", 100),
    face("narrow", 320, 640, "day", 100),
    face("landscape", 844, 390, "day", 100),
    face("desktop", 1280, 800, "day", 100),
    face("desktop-dark", 1280, 800, "dark", 100),
    face("large", 390, 844, "day", 200),
];

/// Puts a face on the page. With `whole` the window is made as high as the
/// page, so that one picture shows all of it.
///
/// # Panics
/// When the browser does not answer.
pub async fn put_on(phone: &Phone, face: &Face, whole: bool) {
    size(phone, face, face.height).await;
    // As the browser's own setting does it: what is measured in rem follows.
    let text = 16 * face.text / 100;
    let sizes = json!({ "fontSizes": { "standard": text, "fixed": text } });
    phone.devtools("Page.setFontSizes", sizes).await;
    phone
        .js(&format!(
            "document.documentElement.dataset.light = '{}'",
            face.light
        ))
        .await;
    if whole {
        let height = phone
            .js("return document.documentElement.scrollHeight")
            .await;
        let height = height.as_u64().unwrap_or_default() as u32;
        size(phone, face, height.clamp(face.height, 12_000)).await;
    }
    phone.js(TWO_FRAMES).await;
}

/// Long enough for what was laid out to be painted, and for water to settle.
const TWO_FRAMES: &str = "
    for (const one of document.getAnimations()) {
        if (Number.isFinite(one.effect.getComputedTiming().endTime)) one.finish();
    }
    return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));";

async fn size(phone: &Phone, face: &Face, height: u32) {
    let (width, mobile) = (face.width, face.width < 1000);
    let scale = if mobile { 2 } else { 1 };
    let metrics: Value = json!({
        "width": width, "height": height, "deviceScaleFactor": scale, "mobile": mobile,
    });
    phone
        .devtools("Emulation.setDeviceMetricsOverride", metrics)
        .await;
}
