//! The bakery's earlier visits, invented: over a year the approach creeps up,
//! the water thickens, the fill slackens, and the probe films over twice.

use uom::si::length::inch;

use super::body::{Body, LeavingItem, LeavingState, What, When};
use super::entry::{About, Entry, Pen};
use super::id::{DeviceId, SiteId, TestId, VisitId};
use super::moment::{Chance, Clock, Moment};
use super::reason::refill_setup;
use super::site::Site;
use super::visit::Visit;
use crate::quantity::{Length, Unit, Value};
use crate::refill::MarkKind;
use crate::trace::{Manner, Mode};

/// A clock that a told story moves on.
struct Told(std::cell::Cell<Moment>);

impl Clock for Told {
    fn now(&self) -> Moment {
        self.0.get()
    }
}

impl Told {
    fn wait(&self, seconds: f64) {
        let mut now = self.0.get();
        now.ms += (seconds * 1000.0) as i64;
        now.run_ms += seconds * 1000.0;
        self.0.set(now);
    }
}

struct Call {
    days_ago: i64,
    complaint: &'static str,
    /// Onto the tower, off it, wet bulb, in °F.
    water: [f64; 3],
    /// In µS/cm.
    conductivity: f64,
    /// How fast the basin rose in the refill test, in inches a minute.
    rise: f64,
    mode: Mode,
    manner: Manner,
    proof: &'static str,
    work: &'static str,
    not_so: LeavingItem,
}

const CALLS: [Call; 3] = [
    Call {
        days_ago: 352,
        complaint: "Blast chiller 2 out on high head, once last night",
        water: [92.4, 83.0, 75.4],
        conductivity: 910.0,
        rise: 0.412,
        mode: Mode::ProbeFilm,
        manner: Manner::Intermittent,
        proof: "Satisfied over a low basin; called once the holder was wiped.",
        work: "Holder and electrodes cleaned.",
        not_so: LeavingItem::BypassTagged,
    },
    Call {
        days_ago: 204,
        complaint: "Two chillers warm in the afternoon",
        water: [90.1, 81.9, 73.2],
        conductivity: 1180.0,
        rise: 0.384,
        mode: Mode::PumpStrainer,
        manner: Manner::Steady,
        proof: "Range wide, 9 psi over the strainer, 1 psi after.",
        work: "Strainer cleaned.",
        not_so: LeavingItem::AlarmsRestored,
    },
    Call {
        days_ago: 81,
        complaint: "All three blast chillers out at four in the morning",
        water: [94.6, 86.1, 76.0],
        conductivity: 1460.0,
        rise: 0.351,
        mode: Mode::ProbeFilm,
        manner: Manner::Intermittent,
        proof: "Film across the holder again, and foam after the biocide.",
        work: "Cleaned; water treatment asked to look at the foam.",
        not_so: LeavingItem::TreatmentTold,
    },
];

/// The entries of the earlier visits, as this phone would have written them
/// before `now`.
pub fn earlier(
    device: DeviceId,
    id: SiteId,
    site: &Site,
    now: Moment,
    chance: &impl Chance,
) -> Vec<Entry> {
    let mut entries = Vec::new();
    let mut pen = Pen::new(device, None);
    for call in &CALLS {
        let begun = Moment {
            ms: now.ms - call.days_ago * 86_400_000,
            run: now.run.wrapping_add(call.days_ago as u32),
            run_ms: 0.0,
            ..now
        };
        let clock = Told(std::cell::Cell::new(begun));
        let visit: VisitId = pen.id(begun, chance);
        let test: TestId = pen.id(begun, chance);
        let from = entries.len();
        let mut say = |after_s: f64, body: Body| {
            clock.wait(after_s);
            entries.push(pen.write(About::Visit(visit), body, &clock, chance));
        };
        say(
            0.0,
            Body::VisitOpened {
                site: id,
                complaint: call.complaint.into(),
            },
        );
        let [hot, cold, wet_bulb] = call.water;
        let fahrenheit = Unit::Fahrenheit;
        for (what, number, unit) in [
            (What::EnteringWater, cold, fahrenheit),
            (What::LeavingWater, hot, fahrenheit),
            (What::WetBulb, wet_bulb, fahrenheit),
            (What::DryBulb, wet_bulb + 13.0, fahrenheit),
            (
                What::Conductivity,
                call.conductivity,
                Unit::MicrosiemensPerCentimetre,
            ),
        ] {
            let value = Value {
                kind: what.kind(),
                si: unit.to_si(number),
            };
            let body = Body::ReadingTaken {
                what,
                machine: None,
                when: When::AsFound,
                value,
                typed: number.to_string(),
                unit,
            };
            say(40.0, body);
        }
        let level = |inches: f64| MarkKind::Level {
            below_overflow: Length::new::<inch>(inches),
        };
        let mut marks = vec![(20.0, level(3.0)), (5.0, MarkKind::DrawdownBegan)];
        marks.push((420.0, level(6.2)));
        marks.push((15.0, MarkKind::CallSeen));
        marks.push((6.0, MarkKind::WaterSeen));
        marks.push((5.0, MarkKind::DrawdownEnded));
        for step in 0..8 {
            // Read to a sixteenth of an inch, as from a tape.
            let at = 6.3 - call.rise * f64::from(step);
            marks.push((60.0, level((at * 16.0).round() / 16.0)));
        }
        marks.push((50.0, MarkKind::ShutOff));
        marks.push((60.0, level(3.05)));
        marks.push((10.0, MarkKind::Stopped));
        let told = |entries: &[Entry]| Visit::fold(visit, entries);
        let setup = told(&entries[from..]).and_then(|v| refill_setup(site, &v).ok());
        let mut say = |after_s: f64, body: Body| {
            clock.wait(after_s);
            entries.push(pen.write(About::Visit(visit), body, &clock, chance));
        };
        if let Some(setup) = setup {
            say(600.0, Body::TestBegun { test, setup });
            for (after_s, mark) in marks {
                say(
                    after_s,
                    Body::Marked {
                        test,
                        mark,
                        typed: None,
                    },
                );
            }
        }
        say(
            300.0,
            Body::CauseNamed {
                mode: call.mode,
                manner: call.manner,
                proof: call.proof.into(),
                work: call.work.into(),
                also: Vec::new(),
            },
        );
        for item in LeavingItem::ALL {
            let state = match item == call.not_so {
                true => LeavingState::NotSo,
                false => LeavingState::So,
            };
            say(5.0, Body::LeavingAnswered { item, state });
        }
        say(60.0, Body::VisitClosed);
    }
    entries
}
