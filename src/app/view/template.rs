//! Reads the templates that `markup!` writes (`markup/src/markup.rs` says how).

use leptos::prelude::document;
use web_sys::{Element, Node};

use super::slot::{Held, Place, Slot, Slots};

const HTML: &str = "http://www.w3.org/1999/xhtml";
const SVG: &str = "http://www.w3.org/2000/svg";

/// An element on the page and what is in its slots.
pub(super) struct Built {
    code: &'static str,
    pub(super) root: Element,
    held: Vec<Held>,
}

/// The next instruction, its name, and the rest.
fn step(code: &'static str) -> Option<(u8, &'static str, &'static str)> {
    let op = *code.as_bytes().first()?;
    let rest = code.get(1..)?;
    let end = rest.bytes().position(|b| b < b' ').unwrap_or(rest.len());
    Some((op, rest.get(..end)?, rest.get(end..)?))
}

impl Built {
    /// Builds a template; nothing, when the document makes no element of it.
    pub(super) fn new(of: Slots) -> Option<Self> {
        let mut slots = of.slots.into_iter();
        let mut open: Vec<Element> = Vec::new();
        let mut held = Vec::new();
        let mut fixed = "";
        let mut rest = of.code;
        while let Some((op, name, after)) = step(rest) {
            rest = after;
            if op <= 2 {
                let space = if op == 2 { SVG } else { HTML };
                let element = document().create_element_ns(Some(space), name).ok()?;
                if let Some(parent) = open.last() {
                    let _ = parent.append_child(&element);
                }
                open.push(element);
                continue;
            }
            let element = open.last()?.clone();
            match op {
                3 if open.len() > 1 => {
                    open.pop();
                }
                3 => {}
                4 => fixed = name,
                5 => {
                    let _ = element.set_attribute(fixed, name);
                }
                6 => {
                    let text: Node = document().create_text_node(name).into();
                    let _ = element.append_child(&text);
                }
                _ => held.push(Held::new(Place { element, op, name }, slots.next()?)),
            }
        }
        Some(Self {
            code: of.code,
            root: open.pop()?,
            held,
        })
    }

    /// Whether it was built from this template.
    pub(super) fn is_of(&self, slots: &Slots) -> bool {
        self.code == slots.code
    }

    /// Fills the slots anew.
    pub(super) fn fill(&mut self, slots: Vec<Slot>) {
        for (held, slot) in self.held.iter_mut().zip(slots) {
            held.change(slot);
        }
    }
}
