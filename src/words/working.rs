//! What workings are called.

use super::{Words, tongue};
use crate::physics::basis::Figure;
use crate::quantity::System;
use crate::working::{Ask, Choice, Fault, Say, Working};

impl Words {
    /// A working's title, and the question it answers.
    pub fn working(self, working: Working) -> (&'static str, &'static str) {
        tongue!(self, working::working(working))
    }

    /// An input's name.
    pub fn ask(self, ask: Ask) -> &'static str {
        tongue!(self, working::ask(ask))
    }

    /// Where to read an input; empty when its name says it all.
    pub fn ask_hint(self, ask: Ask) -> &'static str {
        tongue!(self, working::ask_hint(ask))
    }

    /// One of a choice.
    pub fn option(self, choice: Choice, place: usize) -> &'static str {
        tongue!(self, working::option(choice, place))
    }

    /// What a working says beside its numbers, and a line more about it.
    pub fn say(self, say: Say) -> (&'static str, &'static str) {
        tongue!(self, working_found::say(say))
    }

    /// A figure's name.
    pub fn figure(self, figure: Figure) -> &'static str {
        tongue!(self, working_found::figure(figure))
    }

    /// Why a working has no answer.
    pub fn working_fault(self, fault: &Fault, system: System) -> String {
        tongue!(self, working_found::fault(fault, system))
    }
}
