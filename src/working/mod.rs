//! Workings: each calculation of the trade on its own, as data. What it asks
//! for, what it answers, and the picture that says more.
//!
//! A face draws any [`Working`] from [`Working::asks`] and [`Working::solve`];
//! nothing here knows how it looks. Names of inputs and answers are in `words`.

mod air;
mod ask;
mod basin;
mod circuit;
mod drain;
mod electrode;
mod fill;
mod given;
mod inlet;
mod low_flow;
mod overflow;
mod plot;
mod predict;
mod refrigerant;
mod say;
mod scale;
mod tower;
mod trip;
mod valve;
mod warm_up;
mod water;

pub use ask::{Answer, Ask, Choice};
pub use circuit::{METERS, POINTS};
pub use given::{Answered, Asks, Fault, Given, Row};
pub use plot::{Axis, Curve, Name as AxisName, Picture, Plot};
pub use say::{Say, Saying, Tone};

use crate::physics::basis::Figure;
use given::Draw;

/// A calculation that can be used on its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Working {
    /// The state of moist air.
    Air,
    /// Approach, range and what the tower should do today.
    Tower,
    /// What the tower would do at another wet bulb, heat, water and air.
    TowerIf,
    /// Evaporation, drift, blowdown, makeup.
    Water,
    /// How long the basin lasts with nothing coming in.
    Basin,
    /// Condensing temperature from head pressure and back.
    Head,
    /// How fast the loop warms without a tower.
    WarmUp,
    /// What a meter reads in the control circuit, and what that means.
    Circuit,
    /// Whether the level electrodes can be fooled.
    Electrode,
    /// What the fill line brings.
    Fill,
    /// What one valve passes, and the valve a flow needs.
    Valve,
    /// How much water must stand over the pump inlet.
    Inlet,
    /// A condenser with less water than usual.
    LowFlow,
    /// How long drawing down and refilling take.
    Drain,
    /// Whether the overflow holds, and what running water costs.
    Overflow,
    /// Scaling indices and limits of the water.
    Scale,
    /// When a machine trips.
    Trip,
    /// When to start the machines again.
    Restart,
}

/// What a working is made of.
struct Sheet {
    slug: &'static str,
    asks: &'static [Ask],
    rows: &'static [Row],
    draw: Draw,
    says: fn(&Given) -> Vec<Saying>,
    cautions: fn(&Given) -> Vec<Say>,
    shows: fn(&Given, Ask) -> bool,
}

impl Sheet {
    /// Nothing asked, answered, drawn or said; every field shown.
    const PLAIN: Sheet = Sheet {
        slug: "",
        asks: &[],
        rows: &[],
        draw: |_| None,
        says: |_| Vec::new(),
        cautions: |_| Vec::new(),
        shows: |_, _| true,
    };
}

impl Working {
    /// Every working, in the order a list shows them.
    pub const ALL: [Working; 18] = [
        Working::Head,
        Working::LowFlow,
        Working::Tower,
        Working::TowerIf,
        Working::Air,
        Working::Water,
        Working::Scale,
        Working::Basin,
        Working::Inlet,
        Working::Drain,
        Working::Fill,
        Working::Valve,
        Working::Overflow,
        Working::Circuit,
        Working::Electrode,
        Working::WarmUp,
        Working::Trip,
        Working::Restart,
    ];

    fn sheet(self) -> &'static Sheet {
        match self {
            Working::Air => &air::SHEET,
            Working::Tower => &tower::SHEET,
            Working::TowerIf => &predict::SHEET,
            Working::Water => &water::SHEET,
            Working::Basin => &basin::SHEET,
            Working::Head => &refrigerant::SHEET,
            Working::WarmUp => &warm_up::SHEET,
            Working::Circuit => &circuit::SHEET,
            Working::Electrode => &electrode::SHEET,
            Working::Fill => &fill::SHEET,
            Working::Valve => &valve::SHEET,
            Working::Inlet => &inlet::SHEET,
            Working::LowFlow => &low_flow::SHEET,
            Working::Drain => &drain::SHEET,
            Working::Overflow => &overflow::SHEET,
            Working::Scale => &scale::SHEET,
            Working::Trip => &trip::SHEET,
            Working::Restart => &trip::RESTART,
        }
    }

    /// A stable name for addresses: small letters and hyphens.
    pub fn slug(self) -> &'static str {
        self.sheet().slug
    }

    /// The working of this name.
    pub fn named(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|w| w.slug() == slug)
    }

    /// What it asks for, in order.
    pub fn asks(self) -> &'static [Ask] {
        self.sheet().asks
    }

    /// Its answers, the one asked for most often first; where one can't be
    /// given, why.
    pub fn solve(self, given: &Given) -> Vec<(Figure, Answered)> {
        let rows = self.sheet().rows.iter();
        rows.map(|(figure, answer)| (*figure, answer(given)))
            .collect()
    }

    /// What it finds beside its numbers, in words.
    pub fn sayings(self, given: &Given) -> Vec<Saying> {
        (self.sheet().says)(given)
    }

    /// What can hurt at the step, to be shown before it.
    pub fn cautions(self, given: &Given) -> Vec<Say> {
        (self.sheet().cautions)(given)
    }

    /// Whether an input matters with what is given.
    pub fn shows(self, given: &Given, ask: Ask) -> bool {
        (self.sheet().shows)(given, ask)
    }

    /// Its picture, where one says more and there is enough to draw it.
    pub fn picture(self, given: &Given) -> Option<Picture> {
        (self.sheet().draw)(given)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Unit;
    use std::collections::HashSet;

    /// A middling answer to any input: a tower on a warm day.
    fn usual(ask: Ask) -> f64 {
        let f = |v| Unit::Fahrenheit.to_si(v);
        ask.preset().unwrap_or_else(|| match ask {
            Ask::DryBulb => f(88.0),
            Ask::Humidity => 0.55,
            Ask::WetBulb | Ask::InletWetBulb | Ask::AnyWetBulb => f(75.0),
            Ask::HotWater | Ask::LoopThen => f(95.0),
            Ask::ColdWater | Ask::LoopNow => f(85.0),
            Ask::CondenserLeaving => f(95.0),
            Ask::Flow | Ask::DesignFlow => Unit::GallonPerMinute.to_si(180.0),
            Ask::BasinConductivity | Ask::ProbeWater => 0.12,
            Ask::MakeupConductivity => 0.03,
            Ask::BasinLength => 3.0,
            Ask::BasinWidth => 2.0,
            Ask::FloorFall => 0.05,
            Ask::BasinDepth => 0.4,
            Ask::LevelNow => 0.1,
            Ask::LevelThen => 0.3,
            Ask::Loss => 1.5e-4,
            Ask::Head => Unit::Psig.to_si(340.0),
            Ask::CutOut => Unit::Psig.to_si(550.0),
            Ask::Heat => 250e3,
            Ask::LoopVolume => 3.0,
            Ask::ReadVolts => 24.0,
            Ask::ReadAmperes => 0.4,
            Ask::ReadOhms => 30.0,
            Ask::FilmThickness | Ask::ScaleThickness => 2e-4,
            Ask::FoamLiquid => 0.05,
            Ask::Ph => 8.2,
            Ask::SkinWater => f(105.0),
            Ask::Calcium => 0.4,
            Ask::Alkalinity => 0.2,
            Ask::Chloride => 0.1,
            Ask::Mains => 350e3,
            Ask::PipeLength => 30.0,
            Ask::FillMeasured => 1e-3,
            Ask::LevelFrom => 0.1,
            Ask::LevelTo => 0.2,
            Ask::DrainBore | Ask::OverflowBore => 0.05,
            Ask::FillRunning => 1e-4,
            Ask::RunningFlow => 2e-4,
            Ask::MachineHeat => 40e3,
            Ask::Machines => 6.0,
            Ask::TripWater => f(125.0),
            Ask::CondenserEntering => f(85.0),
            Ask::ValveBefore => 350e3,
            Ask::ValveBehind => 0.0,
            Ask::ValveCv => 11.0,
            Ask::FlowWanted => 1e-3,
            Ask::InletBore => 0.1,
            Ask::InletDepth => 0.35,
            other => panic!("no usual answer to {other:?}"),
        })
    }

    fn full(working: Working) -> Given {
        let mut given = Given::default();
        for &ask in working.asks() {
            given.set(ask, usual(ask));
        }
        given
    }

    #[test]
    fn every_working_answers_all_when_all_is_given() {
        use Fault::NoSafeSetting;
        for working in Working::ALL {
            let rows = working.solve(&full(working));
            assert!(!rows.is_empty());
            for (figure, value) in rows {
                if value == Err(NoSafeSetting) {
                    continue; // an answer too: no setting is safe
                }
                let value = value.unwrap_or_else(|e| panic!("{working:?} {figure:?}: {e:?}"));
                assert!(value.si.is_finite(), "{working:?} {figure:?}");
            }
        }
    }

    #[test]
    fn an_answer_missing_an_input_says_which_and_it_is_one_it_asks_for() {
        for working in Working::ALL {
            if working == Working::Circuit || working == Working::Electrode {
                continue; // nothing is missing there: everything has a preset
            }
            for (figure, value) in working.solve(&Given::default()) {
                let Err(Fault::Missing(asks)) = value else {
                    panic!("{working:?} answered {figure:?} from nothing")
                };
                assert!(asks.iter().count() > 0);
                assert!(asks.iter().all(|a| working.asks().contains(&a)), "{asks:?}");
            }
        }
    }

    #[test]
    fn an_input_left_out_takes_no_answer_with_it_that_does_not_need_it() {
        let mut given = full(Working::Tower);
        given = Working::Tower
            .asks()
            .iter()
            .filter(|a| !matches!(a, Ask::Flow))
            .fold(Given::default(), |mut rest, a| {
                rest.set(*a, given.si(*a).expect("set above"));
                rest
            });
        let rows = Working::Tower.solve(&given);
        let known = rows.iter().filter(|(_, value)| value.is_ok()).count();
        assert_eq!(known, rows.len() - 2, "only heat and tons need the flow");
    }

    #[test]
    fn names_are_their_own_and_come_back() {
        let slugs: HashSet<_> = Working::ALL.map(Working::slug).into();
        assert_eq!(slugs.len(), Working::ALL.len());
        for working in Working::ALL {
            assert_eq!(Working::named(working.slug()), Some(working));
            let figures = working.solve(&full(working));
            let distinct: HashSet<_> = figures.iter().map(|(figure, _)| *figure).collect();
            assert_eq!(distinct.len(), figures.len(), "{working:?} says one twice");
        }
        assert_eq!(Working::named("no such"), None);
    }

    #[test]
    fn presets_are_within_their_bounds() {
        for working in Working::ALL {
            for ask in working.asks() {
                match (ask.preset(), ask.answer()) {
                    (Some(si), Answer::Number(_, bounds)) => {
                        assert!(bounds.contains(si), "{ask:?}")
                    }
                    (Some(si), Answer::Choice(of)) => assert!((si as usize) < of.len()),
                    (None, _) => {}
                }
            }
        }
    }

    #[test]
    fn a_picture_stays_inside_its_axes_where_it_must() {
        for working in Working::ALL {
            let Some(Picture::Plot(plot)) = working.picture(&full(working)) else {
                continue;
            };
            let point = plot.point.expect("all was given");
            assert!((plot.x.low..=plot.x.high).contains(&point.0), "{working:?}");
            assert!((plot.y.low..=plot.y.high).contains(&point.1), "{working:?}");
            for curve in &plot.curves {
                assert!(curve.points.len() > 1, "{working:?}");
                assert!(
                    curve
                        .points
                        .iter()
                        .all(|p| p.0.is_finite() && p.1.is_finite())
                );
            }
        }
    }
}
