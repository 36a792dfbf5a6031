//! What a screen reader is told: the accessibility tree, as lines of text.

use serde_json::{Value, json};

use crate::phone::Phone;

/// What is told besides role and name.
const STATES: [&str; 6] = [
    "level", "pressed", "expanded", "disabled", "invalid", "live",
];

/// The tree of the page in Chromium: a line for each thing that is told, its
/// role, its name in quotes, its states; deeper is further in.
///
/// # Panics
/// When the browser does not answer, as another engine.
pub async fn spoken(phone: &Phone) -> String {
    phone.painted().await;
    phone.devtools("Accessibility.enable", json!({})).await;
    let tree = phone
        .devtools("Accessibility.getFullAXTree", json!({}))
        .await;
    let nodes = tree["nodes"].as_array().expect("nodes");
    let mut lines = String::new();
    if let Some(root) = nodes.first() {
        write(nodes, root, 0, &mut lines);
    }
    lines
}

fn write(nodes: &[Value], node: &Value, depth: usize, lines: &mut String) {
    let role = node["role"]["value"].as_str().unwrap_or_default();
    // The words of a thing stand in its name or in the text below it.
    let told = node["ignored"] != Value::Bool(true)
        && !["none", "generic", "InlineTextBox", "LineBreak"].contains(&role);
    if told {
        let name = node["name"]["value"].as_str().unwrap_or_default();
        lines.push_str(&"  ".repeat(depth));
        lines.push_str(role);
        if !name.trim().is_empty() {
            lines.push_str(&format!(" \"{}\"", name.trim()));
        }
        for state in node["properties"].as_array().into_iter().flatten() {
            let key = state["name"].as_str().unwrap_or_default();
            let value = &state["value"]["value"];
            let usual = [json!(false), json!("false")].contains(value);
            if STATES.contains(&key) && (!usual || key == "expanded" || key == "pressed") {
                lines.push_str(&format!(" {key}={}", value.to_string().trim_matches('"')));
            }
        }
        lines.push('\n');
    }
    if role == "image" {
        return; // what is in it is drawn, and said in its name and table
    }
    // A name that says all of its text is not said twice.
    let whole = told && ["button", "link", "heading", "LabelText", "StaticText"].contains(&role);
    for child in node["childIds"].as_array().into_iter().flatten() {
        if let Some(child) = nodes.iter().find(|one| one["nodeId"] == *child) {
            let text = child["role"]["value"] == "StaticText";
            if !(whole && text) {
                write(nodes, child, depth + usize::from(told), lines);
            }
        }
    }
}
