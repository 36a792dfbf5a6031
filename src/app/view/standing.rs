//! Views on the page: put there, changed in place where the new view is like
//! the old one, so that what has the focus keeps it, and taken away.

use std::cell::RefCell;
use std::mem;
use std::rc::Rc;

use any_spawner::Executor;
use leptos::prelude::{Owner, document};
use web_sys::Node;

use super::graph::Effect;
use super::template::Built;
use super::{Draw, Text, View};

/// A view that was drawn. Each has at least one node, which marks its place.
pub(super) enum Standing {
    Text(web_sys::Text, Text),
    Element(Built),
    Live(#[allow(dead_code)] Effect, Rc<RefCell<Standing>>),
    /// With an empty text behind the last.
    Many(Vec<Standing>, web_sys::Text),
}

fn text(text: Text) -> Standing {
    Standing::Text(document().create_text_node(&text), text)
}

/// Draws into what stands there, now and each time that something the closure
/// reads changes.
fn keep(mut draw: Box<dyn Draw>, held: &Rc<RefCell<Standing>>) -> Effect {
    let held = Rc::clone(held);
    Effect::new(move |_| {
        let view = draw.draw();
        held.borrow_mut().change(view);
    })
}

impl Standing {
    fn nothing() -> Self {
        text(Text::Borrowed(""))
    }

    /// Draws a view, on no page yet.
    pub(super) fn new(view: View) -> Self {
        match view {
            View::Text(said) => text(said),
            View::Element(slots) => match Built::new(slots) {
                Some(built) => Self::Element(built),
                None => Self::nothing(),
            },
            View::Live(draw) => {
                let held = Rc::new(RefCell::new(Self::nothing()));
                Self::Live(keep(draw, &held), held)
            }
            View::Many(views) => {
                let mut all = Vec::new();
                for view in views {
                    all.push(Self::new(view));
                }
                Self::Many(all, document().create_text_node(""))
            }
        }
    }

    /// Puts it into a node, before another of that node's.
    pub(super) fn put(&mut self, parent: &Node, before: Option<&Node>) {
        let node: &Node = match self {
            Self::Text(node, _) => node,
            Self::Element(built) => &built.root,
            Self::Live(_, held) => return held.borrow_mut().put(parent, before),
            Self::Many(all, end) => {
                for one in all {
                    one.put(parent, before);
                }
                end
            }
        };
        let _ = parent.insert_before(node, before);
    }

    fn first(&self) -> Node {
        match self {
            Self::Text(node, _) => node.clone().into(),
            Self::Element(built) => built.root.clone().into(),
            Self::Live(_, held) => held.borrow().first(),
            Self::Many(all, end) => match all.first() {
                Some(one) => one.first(),
                None => end.clone().into(),
            },
        }
    }

    /// Takes it off the page, and all that keeps it up to date with it.
    pub(super) fn take(self) {
        let node: Node = match self {
            Self::Text(node, _) => node.into(),
            Self::Element(built) => built.root.clone().into(),
            Self::Live(effect, held) => {
                drop(effect);
                return held.replace(Self::nothing()).take();
            }
            Self::Many(all, end) => {
                for one in all {
                    one.take();
                }
                end.into()
            }
        };
        if let Some(parent) = node.parent_node() {
            let _ = parent.remove_child(&node);
        }
    }

    /// Shows another view in its place.
    pub(super) fn change(&mut self, view: View) {
        match (&mut *self, view) {
            (Self::Element(built), View::Element(slots)) if built.is_of(&slots) => {
                built.fill(slots.slots);
            }
            (Self::Text(node, was), View::Text(is)) => {
                if *was != is {
                    node.set_data(&is);
                    *was = is;
                }
            }
            (Self::Live(effect, held), View::Live(draw)) => *effect = keep(draw, held),
            (Self::Many(all, end), View::Many(views)) => {
                let mut views = views.into_iter();
                let mut kept = 0;
                for (one, view) in all.iter_mut().zip(&mut views) {
                    one.change(view);
                    kept += 1;
                }
                while all.len() > kept {
                    if let Some(one) = all.pop() {
                        one.take();
                    }
                }
                let parent = end.parent_node();
                for view in views {
                    let mut one = Self::new(view);
                    if let Some(parent) = &parent {
                        one.put(parent, Some(end));
                    }
                    all.push(one);
                }
            }
            (_, view) => {
                let mut new = Self::new(view);
                let first = self.first();
                if let Some(parent) = first.parent_node() {
                    new.put(&parent, Some(&first));
                }
                mem::replace(self, new).take();
            }
        }
    }
}

/// Puts a view at the end of the page, for as long as the page is there.
pub fn mount(view: impl FnOnce() -> View) {
    let _ = Executor::init_wasm_bindgen();
    let owner = Owner::new();
    owner.with(|| {
        let mut standing = Standing::new(view());
        if let Some(body) = document().body() {
            standing.put(&body, None);
        }
        mem::forget(standing);
    });
    mem::forget(owner);
}
