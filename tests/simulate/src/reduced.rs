//! A plant so small that the best walk can be worked out by dynamic
//! programming over everything that can be answered, and the planner's
//! expected minutes worked out exactly beside it.

use std::collections::HashMap;

use coldsump::trace::{Answer, Case, Check, Evidence, Goal, Mode, Place, Plant, Stage, Tracer};

/// Minutes of stripping everything, where the checks left no cause proven.
const STRIP: f64 = 120.0;

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

impl Best<'_> {
    fn minutes(&mut self, evidence: &[Evidence], at: Place) -> f64 {
        let each = |e: &Evidence| [e.check as usize, e.answer as usize, e.stage as usize];
        let mut key: Vec<_> = evidence.iter().map(each).collect();
        key.sort();
        let key = (key, at as usize);
        if let Some(known) = self.seen.get(&key) {
            return *known;
        }
        let case = Case::of(evidence);
        let tracer = Tracer::over(self.plant, &case, self.small.modes, self.small.checks);
        let minutes = if tracer.belief().suspects[0].probability >= SETTLED {
            0.0
        } else if self.follow {
            let advice = tracer.advise_to(at, GOAL);
            let mut offered = advice
                .best
                .iter()
                .chain(&advice.runners_up)
                .map(|s| s.check);
            let next = offered.find(|c| again(evidence, *c));
            next.filter(|c| self.small.checks.contains(c))
                .map_or(STRIP, |check| self.after(&tracer, evidence, at, check))
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
    println!("checks prove none, {STRIP} more.\n");
    println!("| plant | modes | checks | best possible | the trace | over |");
    println!("|---|---|---|---|---|---|");
    let (mut of_best, mut of_ours) = (0.0, 0.0);
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
            best.minutes(&known, Place::MachineRoom)
        });
        of_best += best;
        of_ours += ours;
        println!(
            "| {} | {} | {} | {best:.1} | {ours:.1} | {:.1} % |",
            small.name,
            small.modes.len(),
            small.checks.len(),
            100.0 * (ours / best - 1.0),
        );
    }
    println!(
        "| all | | | {of_best:.1} | {of_ours:.1} | {:.1} % |",
        100.0 * (of_ours / of_best - 1.0)
    );
}

/// Where the planner's choices cost most.
pub fn regret(plant: &Plant, which: usize) {
    let small = &SMALL[which];
    let known: Vec<Evidence> = small
        .known
        .iter()
        .map(|(c, a)| Evidence::said(*c, *a, Stage::AsFound))
        .collect();
    let mut best = Best { plant, small, follow: false, seen: HashMap::new() };
    let all = best.minutes(&known, Place::MachineRoom);
    println!("best {all:.1}");
    let mut out: Vec<(f64, String)> = Vec::new();
    let mut open = vec![(1.0, known, Place::MachineRoom)];
    let mut sum = 0.0;
    while let Some((p, evidence, at)) = open.pop() {
        let case = Case::of(&evidence);
        let tracer = Tracer::over(plant, &case, small.modes, small.checks);
        let b = tracer.belief();
        if b.suspects[0].probability >= SETTLED { continue; }
        let advice = tracer.advise_to(at, GOAL);
        let offered: Vec<Check> = advice.best.iter().chain(&advice.runners_up).map(|s| s.check).collect();
        let next = offered.iter().copied().find(|c| again(&evidence, *c)).filter(|c| small.checks.contains(c));
        let v = best.minutes(&evidence, at);
        let q = next.map_or(STRIP, |c| best.after(&tracer, &evidence, at, c));
        let regret = p * (q - v);
        sum += regret;
        if regret > 0.01 {
            let mut qs: Vec<(f64, String)> = small.checks.iter().filter(|c| again(&evidence, **c)).map(|c| (best.after(&tracer, &evidence, at, *c), format!("{c:?}"))).collect();
            qs.sort_by(|a, b| a.0.total_cmp(&b.0));
            let bel: Vec<String> = b.suspects.iter().map(|s| format!("{:?} {:.2}", s.mode, s.probability)).collect();
            let ev: Vec<String> = evidence.iter().map(|e| format!("{:?}:{:?}", e.check, e.answer)).collect();
            let qs: Vec<String> = qs.iter().map(|(q, c)| format!("{c} {q:.1}")).collect();
            out.push((regret, format!("{regret:.3} p {p:.3} at {at:?} ours {next:?} {q:.1} best {v:.1} | {} | {} | {} | offered {offered:?}", qs.join(", "), bel.join(", "), ev.join(" "))));
        }
        let Some(check) = next else { continue };
        let stage = tracer.stage(check);
        for (answer, chance) in check.answers().iter().zip(tracer.chances(check)) {
            if chance < 1e-4 || p * chance < 1e-5 { continue; }
            let mut more = evidence.clone();
            more.push(Evidence::said(check, *answer, stage));
            open.push((p * chance, more, check.place()));
        }
    }
    out.sort_by(|a, b| b.0.total_cmp(&a.0));
    println!("regret {sum:.2}");
    for (_, l) in out.iter().take(14) { println!("{l}"); }
}
