//! The refill test: marks, fit, verdict.
//!
//! The tester draws the basin down, waits for the level control to call for
//! water, notes the water at the valve, reads the level while it fills and
//! notes the shut-off. This room turns those [`Mark`]s into figures with a
//! 95 % interval and a [`Verdict`] that carries its reasons. It knows no
//! clock: every time comes with its mark.

mod chart;
mod cycle;
mod drawdown;
mod even;
mod finding;
mod fit;
mod judge;
mod line;
mod mark;
mod measure;
mod phase;
mod plan;
mod reasons;
mod scale;
mod seen;
mod setup;
mod ticks;
mod turns;

pub use chart::{Figure, FigureLine, Limit, LinePart, MarkAt, Point, figure};
pub use drawdown::{DrainBasis, DrawTime, drain_flow};
pub use finding::{Cover, Finding, NextReading, Verdict, Weight};
pub use fit::{Estimate, LevelEstimate, Missing, RateFit};
pub use judge::{Outcome, judge};
pub use mark::{ExpectedMark, Mark, MarkKind};
pub use measure::Delays;
pub use phase::{Phase, allowed, drain_open, expected, phase};
pub use plan::{Caution, DrawBasis, Plan, cautions, plan, valve_range};
pub use scale::{Scale, ScaleKind};
pub use seen::{Rise, Span};
pub use setup::{FlowRange, Setup};
pub use ticks::{Tick, TickUnit, round_ticks, time_ticks};

#[cfg(test)]
mod sim;
#[cfg(test)]
mod tests;
