//! What a template does not say itself: the values, closures and children that
//! go into its slots.

use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, Event, HtmlElement};

use super::graph::Effect;
use super::standing::Standing;
use super::{Text, View};

/// Something an attribute says, once or always.
pub enum Value {
    /// Once. Nothing takes the attribute away.
    Fixed(Option<Text>),
    /// Each time that something it reads changes.
    Live(Box<dyn Say>),
}

/// What an attribute says, asked again each time that something it reads changes.
pub trait Say {
    /// As text; nothing when the attribute is not there.
    fn say(&mut self) -> Option<Text>;
}

/// What an event does.
trait Act {
    fn act(&mut self, event: Event);
}

impl<F: FnMut(Event)> Act for F {
    fn act(&mut self, event: Event) {
        self(event);
    }
}

/// An [`Act`], whatever it is.
pub(super) struct Doing(Box<dyn Act>);

/// What goes into one slot.
pub(super) enum Slot {
    Value(Value),
    Event(Doing),
    Child(View),
}

/// A template and what goes into its slots, in order.
pub struct Slots {
    pub(super) code: &'static str,
    pub(super) slots: Vec<Slot>,
}

impl Slots {
    /// A template, nothing filled in.
    pub fn of(code: &'static str) -> Self {
        let slots = Vec::new();
        Self { code, slots }
    }

    /// Fills the next slot with a value.
    pub fn value(&mut self, value: Value) {
        self.slots.push(Slot::Value(value));
    }

    /// Fills the next slot with what an event does.
    pub fn on(&mut self, does: impl FnMut(Event) + 'static) {
        self.event(Box::new(does));
    }

    fn event(&mut self, does: Box<dyn Act>) {
        self.slots.push(Slot::Event(Doing(does)));
    }

    /// Fills the next slot with a child.
    pub fn child(&mut self, view: View) {
        self.slots.push(Slot::Child(view));
    }

    /// The view, now that all slots are filled.
    pub fn view(self) -> View {
        View::Element(self)
    }
}

/// What the value in a slot is of its element.
#[derive(Clone)]
pub(super) struct Place {
    pub element: Element,
    pub op: u8,
    pub name: &'static str,
}

pub(super) const CLASS: u8 = 8;
pub(super) const STYLE: u8 = 9;
pub(super) const PROPERTY: u8 = 10;
pub(super) const CONTENT: u8 = 11;

impl Place {
    fn say(&self, text: Option<&str>) {
        let Self { element, op, name } = self;
        let said = text.unwrap_or_default();
        let _ = match *op {
            CLASS => {
                let on = text.is_some();
                element.class_list().toggle_with_force(name, on).map(drop)
            }
            STYLE => {
                let style = element.unchecked_ref::<HtmlElement>().style();
                style.set_property(name, said)
            }
            PROPERTY => js_sys::Reflect::set(element, &(*name).into(), &said.into()).map(drop),
            CONTENT => {
                element.set_inner_html(said);
                Ok(())
            }
            // The attribute of an option moves nothing once a person has chosen.
            _ if *name == "selected" => {
                js_sys::Reflect::set(element, &(*name).into(), &text.is_some().into()).map(drop)
            }
            _ => match text {
                Some(text) => element.set_attribute(name, text),
                None => element.remove_attribute(name),
            },
        };
    }
}

/// What stands in a slot, alive as long as it is held.
pub(super) enum Held {
    Fixed(Place, Option<Text>),
    Live(Place, #[allow(dead_code)] Effect),
    Event(Listener),
    Child(Standing),
}

impl Held {
    pub(super) fn new(place: Place, slot: Slot) -> Self {
        match slot {
            Slot::Value(Value::Fixed(text)) => {
                if text.is_some() {
                    place.say(text.as_deref());
                }
                Self::Fixed(place, text)
            }
            Slot::Value(Value::Live(mut read)) => {
                let at = place.clone();
                let effect = Effect::new(move |_| at.say(read.say().as_deref()));
                Self::Live(place, effect)
            }
            Slot::Event(does) => Self::Event(Listener::new(place, does)),
            Slot::Child(view) => {
                let mut child = Standing::new(view);
                child.put(&place.element, None);
                Self::Child(child)
            }
        }
    }

    /// What the same slot of the same template holds from now on.
    pub(super) fn change(&mut self, slot: Slot) {
        let place = match (&mut *self, slot) {
            (Self::Child(child), Slot::Child(view)) => return child.change(view),
            (Self::Fixed(place, was), Slot::Value(Value::Fixed(is))) => {
                if *was != is {
                    place.say(is.as_deref());
                    *was = is;
                }
                return;
            }
            (Self::Fixed(place, _) | Self::Live(place, _), slot) => (place.clone(), slot),
            (Self::Event(listener), slot) => (listener.place.clone(), slot),
            (Self::Child(_), _) => return,
        };
        *self = Self::new(place.0, place.1);
    }
}

/// A listener, taken off its element when it is dropped.
pub(super) struct Listener {
    place: Place,
    does: Closure<dyn FnMut(Event)>,
}

impl Listener {
    fn new(place: Place, Doing(mut does): Doing) -> Self {
        let does = Closure::<dyn FnMut(Event)>::new(move |event| does.act(event));
        let _ = (place.element)
            .add_event_listener_with_callback(place.name, does.as_ref().unchecked_ref());
        Self { place, does }
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let does: &JsValue = self.does.as_ref();
        let _ = (self.place.element)
            .remove_event_listener_with_callback(self.place.name, does.unchecked_ref());
    }
}
