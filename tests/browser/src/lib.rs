//! The release build in a real browser, as a phone holds it.
//!
//! A test starts a [`Server`] over `dist/` and opens a [`Phone`]: Chromium at
//! 390 x 844, or another [`Engine`], with a profile of its own, which survives
//! [`Phone::kill`] and [`Phone::reopen`]. Signal is lost by stopping the server.
//! Nothing waits by the clock: [`until`] asks again until the answer is there or
//! the limit is reached. What a test started ends with it, also when it panics.
//!
//! `./dev test browser` builds, then runs these tests.

mod build;
mod clock;
mod engine;
pub mod faces;
mod hands;
pub mod home;
mod keys;
mod kills;
mod logs;
pub mod looks;
pub mod marks;
mod phone;
mod processes;
mod server;
mod trace;
mod tree;
mod wait;
pub mod walk;

pub use build::{Build, project};
pub use clock::Clock;
pub use engine::Engine;
pub use hands::fixture;
pub use keys::Keys;
pub use kills::{Tally, kills};
pub use logs::Problem;
pub use phone::{Light, Phone};
pub use server::Server;
pub use thirtyfour;
pub use trace::{answer, choose, odds};
pub use tree::spoken;
pub use wait::{LIMIT, until, until_within};
