//! The program by keys alone, as someone does who cannot see or touch: to a
//! thing by Tab, and each stop on the way must show where the focus is.

use std::cell::Cell;

use serde_json::Value;
use thirtyfour::prelude::*;

use crate::phone::Phone;
use crate::wait::until;

/// More stops than any screen has.
const MOST: usize = 250;

/// Fingers on a keyboard at this phone.
#[derive(Debug)]
pub struct Keys<'a> {
    phone: &'a Phone,
    pressed: Cell<usize>,
}

/// Where the focus is, seen from what is wanted.
struct Stop {
    /// 0 is there, 1 before it, -1 behind it.
    way: i64,
    /// What has it, in words.
    name: String,
    /// Whether a ring is drawn round it.
    ringed: bool,
    /// Whether its middle is on the screen and not covered.
    seen: bool,
    /// Whether nothing has it.
    lost: bool,
}

impl<'a> Keys<'a> {
    /// Keys for this phone; nothing has been pressed yet.
    pub fn of(phone: &'a Phone) -> Self {
        Self {
            phone,
            pressed: Cell::new(0),
        }
    }

    /// How many keys were pressed; a text counts as its letters.
    pub fn pressed(&self) -> usize {
        self.pressed.get()
    }

    async fn send(&self, keys: &str) {
        self.pressed.set(self.pressed.get() + keys.chars().count());
        let chain = self.phone.driver().action_chain().send_keys(keys);
        chain.perform().await.expect("the keys are pressed");
    }

    async fn tab_back(&self) {
        self.pressed.set(self.pressed.get() + 1);
        let chain = self.phone.driver().action_chain();
        let chain = chain.key_down(Key::Shift).send_keys(Key::Tab);
        let chain = chain.key_up(Key::Shift);
        chain.perform().await.expect("the keys are pressed");
    }

    /// Goes to what has this `data-test`, or is the summary of it, by Tab.
    ///
    /// # Panics
    /// When it cannot be reached, when the focus was lost before, or when a
    /// stop on the way does not show that it has the focus.
    pub async fn to(&self, name: &str) {
        self.phone.find(name).await;
        let first = until(
            &format!("the focus is somewhere, before {name}"),
            async || {
                let stop = self.stop(name).await?;
                (!stop.lost || self.pressed.get() == 0).then_some(stop)
            },
        )
        .await;
        let (mut way, mut turns) = (first.way, 0);
        for _ in 0..MOST {
            if way == 0 {
                return;
            }
            match way {
                1 => self.send(&Key::Tab.value().to_string()).await,
                _ => self.tab_back().await,
            }
            let stop = until(name, async || self.stop(name).await).await;
            assert!(stop.lost || stop.ringed, "no ring round {}", stop.name);
            assert!(
                stop.lost || stop.seen,
                "{} is covered or outside",
                stop.name
            );
            turns += usize::from(stop.way == -way);
            assert!(
                turns < 2,
                "{name} cannot be reached by Tab; it was passed at {}",
                stop.name
            );
            way = stop.way;
        }
        panic!("{name} is more than {MOST} stops away");
    }

    async fn stop(&self, name: &str) -> Option<Stop> {
        let script = format!("const wanted = '{name}'; {STOP}");
        let found = self.phone.js(&script).await;
        Some(Stop {
            way: found.get("way")?.as_i64()?,
            name: found["name"].to_string(),
            ringed: found["ringed"] == Value::Bool(true),
            seen: found["seen"] == Value::Bool(true),
            lost: found["lost"] == Value::Bool(true),
        })
    }

    /// Goes there and presses Enter.
    ///
    /// # Panics
    /// As [`Keys::to`].
    pub async fn enter(&self, name: &str) {
        self.to(name).await;
        self.send(&Key::Enter.value().to_string()).await;
    }

    /// Goes there and presses the space bar.
    ///
    /// # Panics
    /// As [`Keys::to`].
    pub async fn space(&self, name: &str) {
        self.to(name).await;
        self.send(" ").await;
    }

    /// Goes to a list and types the letters its choice begins with.
    ///
    /// # Panics
    /// As [`Keys::to`].
    pub async fn pick(&self, name: &str, letters: &str) {
        self.to(name).await;
        self.send(letters).await;
    }

    /// Goes to a field and types over what it holds.
    ///
    /// # Panics
    /// As [`Keys::to`].
    pub async fn write(&self, name: &str, text: &str) {
        self.to(name).await;
        let chain = self.phone.driver().action_chain();
        let chain = chain.key_down(Key::Control).send_keys("a");
        let chain = chain.key_up(Key::Control);
        chain.perform().await.expect("the keys are pressed");
        self.send(text).await;
    }
}

const STOP: &str = "
    let target = document.querySelector(`[data-test=\"${wanted}\"]`);
    if (target?.tagName === 'DETAILS') target = target.querySelector('summary');
    const here = document.activeElement;
    if (!target || !here) return null;
    const lost = here === document.body;
    const way = here === target ? 0
      : lost || here.compareDocumentPosition(target) & Node.DOCUMENT_POSITION_FOLLOWING ? 1 : -1;
    const look = getComputedStyle(here);
    const box = here.getBoundingClientRect();
    const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
    return {
      way, lost,
      name: `${here.tagName} ${here.dataset.test ?? ''} ${here.textContent.slice(0, 40)}`,
      ringed: look.outlineStyle !== 'none' && parseFloat(look.outlineWidth) >= 2,
      seen: Boolean(top) && here.contains(top),
    };";
