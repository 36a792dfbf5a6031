//! A site over time: what each visit showed, how often the probe fouled, and
//! what changed since last time.

use super::body::{LeavingItem, LeavingState, What, When};
use super::figures::Figures;
use super::fouling::{Fouling, fouling};
use super::id::VisitId;
use super::moment::Moment;
use super::site::Site;
use super::visit::Visit;
use crate::quantity::{Value, sort_by};
use crate::refill::judge;
use crate::trace::{Manner, Mode};

/// A figure that is followed over time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trend {
    /// Water leaving the tower over wet bulb.
    Approach,
    /// Outdoor wet bulb.
    WetBulb,
    /// Fill flow of the last refill test.
    Fill,
    /// Conductivity of the basin's water.
    Conductivity,
}

impl Trend {
    /// All of them.
    pub const ALL: [Trend; 4] = [
        Trend::Approach,
        Trend::WetBulb,
        Trend::Fill,
        Trend::Conductivity,
    ];
}

/// What one visit showed.
#[derive(Clone, Debug, PartialEq)]
pub struct Past {
    /// The visit.
    pub visit: VisitId,
    /// When it was opened.
    pub opened: Moment,
    /// The complaint.
    pub complaint: String,
    /// The cause as named.
    pub cause: Option<(Mode, Manner)>,
    /// Whether the probe was found fouled: named, or put right on the way.
    pub fouled: bool,
    /// The figures, in the order of [`Trend::ALL`]; as left where they were
    /// read then, else as found.
    pub figures: [Option<Value>; 4],
    /// Items of the leaving round that were not so.
    pub not_so: Vec<LeavingItem>,
}

/// Whether a fault is a probe or holder that fouled.
fn is_foul(mode: Mode) -> bool {
    matches!(
        mode,
        Mode::ProbeFilm | Mode::ProbeFoam | Mode::HolderMoisture | Mode::SensorFalseFull
    )
}

/// What a visit showed.
pub fn past(site: &Site, visit: &Visit) -> Past {
    let found = Figures::of(site, visit);
    let left = Figures::at(site, visit, When::AsLeft);
    let approach = left.approach.or(found.approach);
    let wet_bulb = left.wet_bulb.or(found.wet_bulb);
    let fill = visit
        .tests
        .last()
        .and_then(|t| judge(&t.setup, &t.timed()).fill_gross.ok());
    let read = |when| visit.reading(when, What::Conductivity).map(|r| r.value);
    let conductivity = read(When::AsLeft).or_else(|| read(When::AsFound));
    let cause = visit.cause.as_ref().map(|c| (c.mode, c.manner));
    let corrected = visit.corrections.iter().any(|c| is_foul(c.mode));
    Past {
        visit: visit.id,
        opened: visit.opened,
        complaint: visit.complaint.clone(),
        cause,
        fouled: corrected || cause.is_some_and(|(mode, _)| is_foul(mode)),
        figures: [
            approach.ok().map(Value::temperature_difference),
            wet_bulb.ok().map(Value::temperature),
            fill.map(|f| Value::flow(f.value)),
            conductivity,
        ],
        not_so: visit
            .leaving
            .iter()
            .filter(|(_, state)| **state == LeavingState::NotSo)
            .map(|(item, _)| *item)
            .collect(),
    }
}

/// A site's visits, oldest first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    /// What each showed.
    pub visits: Vec<Past>,
}

impl History {
    /// The history of visits to one site, in any order.
    pub fn of(site: &Site, visits: &[Visit]) -> Self {
        let mut visits: Vec<Past> = visits.iter().map(|v| past(site, v)).collect();
        sort_by(&mut visits, |a, b| {
            (a.opened.ms, a.visit).cmp(&(b.opened.ms, b.visit))
        });
        Self { visits }
    }

    /// The rate of fouling up to a moment, from visits that found a cause or
    /// put something right.
    pub fn fouling(&self, now: Moment) -> Option<Fouling> {
        let seen: Vec<_> = (self.visits.iter())
            .map(|v| (v.opened.ms, v.fouled))
            .collect();
        fouling(&seen, now.ms)
    }

    /// The points of a figure: when, in milliseconds, and how much.
    pub fn points(&self, trend: Trend) -> Vec<(Moment, Value)> {
        let place = Trend::ALL.iter().position(|t| *t == trend).unwrap_or(0);
        let point = |v: &Past| Some((v.opened, v.figures[place]?));
        self.visits.iter().filter_map(point).collect()
    }
}

/// What there is to know of the visit before, at the top of a new one.
#[derive(Clone, Debug, PartialEq)]
pub struct Since {
    /// The visit before.
    pub before: Past,
    /// Whole days since it.
    pub days: i64,
    /// Figures known both times: then and now.
    pub changed: Vec<(Trend, Value, Value)>,
}

/// What changed from the visit before to this one.
pub fn since(site: &Site, before: &Visit, now: &Visit) -> Since {
    let (then, today) = (past(site, before), past(site, now));
    let pairs = Trend::ALL.into_iter().zip(then.figures).zip(today.figures);
    Since {
        days: now
            .opened
            .ms
            .saturating_sub(before.opened.ms)
            .div_euclid(86_400_000),
        changed: pairs
            .filter_map(|((trend, then), now)| Some((trend, then?, now?)))
            .collect(),
        before: then,
    }
}
