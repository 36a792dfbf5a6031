//! A plant so small that the best walk can be worked out by dynamic
//! programming over everything that can be answered, and the planner's
//! expected minutes worked out exactly beside it.

use std::collections::HashMap;

use coldsump::trace::{Answer, Case, Check, Evidence, Goal, Mode, Place, Plant, Stage, Tracer};

/// Minutes of stripping everything and coming back for it, where the checks left no cause proven.
const STRIP: f64 = 240.0;

/// A cause this probable ends the search here: with so few checks the
/// full proof is often out of reach, and the end would drown the walk.
const SETTLED: f64 = 0.9;

/// How often a check may be done.
const TAKES: usize = 2;

/// The same, as the planner is told.
const GOAL: Goal = Goal {
    sure: SETTLED,
    shown: false,
    takes: TAKES,
};

/// Modes and checks of one small plant, and what is known when it begins.
struct Small {
    name: &'static str,
    modes: &'static [Mode],
    checks: &'static [Check],
    known: &'static [(Check, Answer)],
}

/// All six were looked at while the planner was made.
const SMALL: [Small; 6] = [
    Small {
        name: "fill circuit, called, no water",
        modes: &[
            Mode::FuseBlown,
            Mode::RelayContactOpen,
            Mode::CoilOpen,
            Mode::ValveStuck,
            Mode::HandValveShut,
        ],
        checks: &[
            Check::FuseCheck,
            Check::ContactDrop,
            Check::CoilPull,
            Check::CoilResistance,
            Check::HandValves,
        ],
        known: &[
            (Check::CallAsFound, Answer::Calls),
            (Check::FlowOnCall, Answer::NoFlow),
        ],
    },
    Small {
        name: "says full over a low basin",
        modes: &[
            Mode::ProbeFilm,
            Mode::ProbeFoam,
            Mode::ProbeCableShort,
            Mode::HolderMoisture,
            Mode::ControllerStuckFull,
        ],
        checks: &[
            Check::FoamLook,
            Check::HolderCap,
            Check::ProbeFilm,
            Check::WiresOffHolder,
            Check::Substitution,
        ],
        known: &[
            (Check::BasinOnArrival, Answer::BasinLow),
            (Check::CallAsFound, Answer::Satisfied),
        ],
    },
    Small {
        name: "all high over a full basin",
        modes: &[
            Mode::FanStopped,
            Mode::BeltOff,
            Mode::FillFouled,
            Mode::PumpStrainer,
            Mode::PumpStopped,
        ],
        checks: &[
            Check::FanRuns,
            Check::BeltLook,
            Check::FillLook,
            Check::PumpCurrent,
            Check::PumpStrainerDrop,
        ],
        known: &[
            (Check::BasinOnArrival, Answer::BasinNormal),
            (Check::MachinesOut, Answer::ThreeOrMore),
        ],
    },
    Small {
        name: "one machine on a sound loop",
        modes: &[
            Mode::CondenserFouled,
            Mode::RegulatingValve,
            Mode::NonCondensables,
            Mode::BranchStrainer,
            Mode::BranchValve,
        ],
        checks: &[
            Check::CondenserOverWater,
            Check::RegulatingByHand,
            Check::BranchValves,
            Check::BranchStrainer,
            Check::StandingPressure,
        ],
        known: &[
            (Check::MachinesOut, Answer::OneMachine),
            (Check::BasinOnArrival, Answer::BasinNormal),
        ],
    },
    Small {
        name: "called, weak flow",
        modes: &[
            Mode::StrainerBlocked,
            Mode::ReducingValve,
            Mode::MainsLow,
            Mode::BackflowStuck,
            Mode::PilotBlocked,
        ],
        checks: &[
            Check::StrainerBlowOff,
            Check::PressureAtValve,
            Check::PressureAfterReducer,
            Check::MainsPressure,
            Check::BackflowLook,
        ],
        known: &[
            (Check::CallAsFound, Answer::Calls),
            (Check::FlowOnCall, Answer::WeakFlow),
        ],
    },
    Small {
        name: "fills, and the water goes",
        modes: &[
            Mode::BleedStuckOpen,
            Mode::BasinLeak,
            Mode::DrainAjar,
            Mode::OverflowLow,
            Mode::DrainsBack,
        ],
        checks: &[
            Check::BleedLook,
            Check::LevelHold,
            Check::DrainLook,
            Check::OverflowLook,
            Check::PumpStopRise,
        ],
        known: &[
            (Check::BasinOnArrival, Answer::BasinLow),
            (Check::FlowOnCall, Answer::FullFlow),
        ],
    },
];

/// What is known, whatever the order, and where one stands.
type State = (Vec<[usize; 3]>, usize);

/// Whether a check may be done, or done again.
fn again(evidence: &[Evidence], check: Check) -> bool {
    evidence.iter().filter(|e| e.check == check).count() < TAKES
}

/// Expected minutes from here to a proven cause.
struct Best<'a> {
    plant: &'a Plant,
    small: &'a Small,
    /// Follow the planner instead of trying everything.
    follow: bool,
    seen: HashMap<State, f64>,
}

/// Whether a cause is found as the search here counts it.
fn is_found(tracer: &Tracer) -> bool {
    tracer.belief().suspects[0].probability >= SETTLED
}

/// What the planner would do next.
fn choice(tracer: &Tracer, at: Place) -> Option<Check> {
    tracer.advise_to(at, GOAL).best.map(|s| s.check)
}

impl Best<'_> {
    fn tracer(&self, evidence: &[Evidence]) -> Tracer {
        let small = self.small;
        Tracer::over(self.plant, &Case::of(evidence), small.modes, small.checks)
    }

    /// How much of what the planner chooses, each weighed by how often it
    /// comes to that, is what the best walk would do, or no worse by more
    /// than three seconds.
    fn agrees(&mut self, known: &[Evidence], at: Place) -> f64 {
        let mut open = vec![(1.0, known.to_vec(), at)];
        let (mut same, mut all) = (0.0, 0.0);
        while let Some((p, evidence, at)) = open.pop() {
            let tracer = self.tracer(&evidence);
            if is_found(&tracer) {
                continue;
            }
            let next = choice(&tracer, at);
            let ours = next.map_or(STRIP, |c| self.after(&tracer, &evidence, at, c));
            all += p;
            same += p * f64::from(u8::from(ours <= self.minutes(&evidence, at) + 0.05));
            let Some(check) = next else { continue };
            let stage = tracer.stage(check);
            for (answer, chance) in check.answers().iter().zip(tracer.chances(check)) {
                if p * chance > 1e-4 {
                    let mut more = evidence.clone();
                    more.push(Evidence::said(check, *answer, stage));
                    open.push((p * chance, more, check.place()));
                }
            }
        }
        same / all
    }

    fn minutes(&mut self, evidence: &[Evidence], at: Place) -> f64 {
        let each = |e: &Evidence| [e.check as usize, e.answer as usize, e.stage as usize];
        let mut key: Vec<_> = evidence.iter().map(each).collect();
        key.sort();
        let key = (key, at as usize);
        if let Some(known) = self.seen.get(&key) {
            return *known;
        }
        let tracer = self.tracer(evidence);
        let minutes = if is_found(&tracer) {
            0.0
        } else if self.follow {
            choice(&tracer, at).map_or(STRIP, |check| self.after(&tracer, evidence, at, check))
        } else {
            let open = self.small.checks.iter();
            let open = open.filter(|c| again(evidence, **c));
            open.map(|check| self.after(&tracer, evidence, at, *check))
                .fold(STRIP, f64::min)
        };
        self.seen.insert(key, minutes);
        minutes
    }

    /// Minutes of this check and of what follows it, by what it may say.
    fn after(&mut self, tracer: &Tracer, evidence: &[Evidence], at: Place, check: Check) -> f64 {
        let mut minutes = tracer.minutes(check) + at.walk_minutes(check.place());
        let stage = tracer.stage(check);
        for (answer, chance) in check.answers().iter().zip(tracer.chances(check)) {
            // Hardly ever said; what follows would be looked for in vain.
            if chance < 1e-4 {
                continue;
            }
            let mut more = evidence.to_vec();
            more.push(Evidence::said(check, *answer, stage));
            minutes += chance * self.minutes(&more, check.place());
        }
        minutes
    }
}

/// Prints the planner's expected minutes beside the best there are; the best
/// takes long.
pub fn compare(plant: &Plant, best: bool) {
    println!(
        "Small plants: expected minutes to a proven cause, each check twice at most; where the"
    );
    println!(
        "checks prove none, {STRIP} more. The same choice: how often the trace's next check is"
    );
    println!("the best there is, or costs no more.\n");
    println!("| plant | modes | checks | best possible | the trace | over | the same choice |");
    println!("|---|---|---|---|---|---|---|");
    let (mut of_best, mut of_ours, mut same) = (0.0, 0.0, f64::NAN);
    for small in &SMALL {
        let known: Vec<Evidence> = small
            .known
            .iter()
            .map(|(c, a)| Evidence::said(*c, *a, Stage::AsFound))
            .collect();
        let [best, ours] = [false, true].map(|follow| {
            if !follow && !best {
                return f64::NAN;
            }
            let seen = HashMap::new();
            let mut best = Best {
                plant,
                small,
                follow,
                seen,
            };
            let minutes = best.minutes(&known, Place::MachineRoom);
            if !follow {
                same = best.agrees(&known, Place::MachineRoom);
            }
            minutes
        });
        of_best += best;
        of_ours += ours;
        println!(
            "| {} | {} | {} | {best:.1} | {ours:.1} | {:.1} % | {:.0} % |",
            small.name,
            small.modes.len(),
            small.checks.len(),
            100.0 * (ours / best - 1.0),
            100.0 * same,
        );
    }
    println!(
        "| all | | | {of_best:.1} | {of_ours:.1} | {:.1} % | |",
        100.0 * (of_ours / of_best - 1.0)
    );
}
