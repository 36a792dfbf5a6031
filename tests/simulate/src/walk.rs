//! Walking a call: to its first proven cause, or on until all is put right.

use coldsump::trace::{Case, Check, Correction, Evidence, Flat, Mode, Place, Plant, Tracer};

use crate::planner::Planner;
use crate::scene::Scene;

/// A walk is given up after this many checks.
const MOST: usize = 70;

/// How a walk to the first proven cause ended.
pub struct Walk {
    /// Minutes of checks, of opening things, and of walking.
    pub minutes: f64,
    /// How many checks.
    pub checks: usize,
    /// The likeliest cause at the end, and its probability.
    pub named: Option<(Mode, f64)>,
    /// Whether it was proven.
    pub proven: bool,
    /// Those that the trace names as one of which it must be, where no check
    /// tells them apart.
    pub one_of: Vec<Mode>,
}

/// Walks a call to a proven cause, or until the planner has nothing left.
pub fn walk(plant: &Plant, scene: &mut Scene, planner: Planner) -> Walk {
    let mut evidence: Vec<Evidence> = Vec::new();
    let (mut at, mut minutes) = (Place::MachineRoom, 0.0);
    loop {
        let tracer = Tracer::new(plant, &Case::of(&evidence));
        let proven = tracer.proven();
        let next = match proven {
            None if evidence.len() < MOST => planner.next(&tracer, at),
            _ => None,
        };
        let Some(check) = next else {
            let first = tracer.belief().suspects.first().copied();
            let one_of = match planner {
                Planner::Ours if proven.is_none() => tracer.advise(at).one_of,
                _ => Vec::new(),
            };
            return Walk {
                minutes,
                checks: evidence.len(),
                named: first.map(|s| (s.mode, s.probability)),
                proven: proven.is_some(),
                one_of,
            };
        };
        minutes += tracer.minutes(check) + at.walk_minutes(check.place());
        at = check.place();
        let stage = tracer.stage(check);
        evidence.push(Evidence::said(check, scene.answer(check, stage), stage));
    }
}

/// Whether what the walk named first is truly there, and whether one of those
/// is that it named together.
pub fn right(flat: &Flat, scene: &Scene, walk: &Walk) -> (bool, bool) {
    let is = |m: Mode| scene.truth.iter().any(|(at, _)| flat.modes[*at].mode == m);
    let first = walk.named.is_some_and(|(m, _)| is(m));
    (first, first || walk.one_of.iter().any(|m| is(*m)))
}

/// A walk in a line.
pub fn told(flat: &Flat, scene: &Scene, walk: &Walk) -> String {
    let truth = scene
        .truth
        .iter()
        .map(|(at, comes)| (flat.modes[*at].mode, *comes));
    let truth: Vec<_> = truth.collect();
    let Walk {
        minutes,
        checks,
        named,
        proven,
        one_of,
    } = walk;
    format!(
        "truly {truth:?}, named {named:?}, one of {one_of:?}, proven {proven}, {minutes} min, {checks} checks"
    )
}

/// How a walk ended that went on after the first repair.
pub struct Ended {
    /// Minutes until the first cause was put right, without mending.
    pub first: f64,
    /// Minutes until the trace closed or had nothing left, without mending.
    pub minutes: f64,
    /// How many checks.
    pub checks: usize,
    /// Whether all that was truly wrong was named.
    pub named: bool,
    /// How much of what was put right was sound.
    pub in_vain: usize,
    /// Whether all was well when the trace closed.
    pub sound: bool,
    /// Whether the trace said that it may be closed.
    pub closed: bool,
    /// The walk in a line.
    pub told: String,
}

/// Walks a call until the trace closes or has nothing left: what is proven, or
/// nearly certain with nothing left to prove it by, is put right at once.
pub fn through(plant: &Plant, flat: &Flat, mut scene: Scene) -> Ended {
    let mut case = Case::default();
    let (mut at, mut minutes, mut first) = (Place::MachineRoom, 0.0, None);
    loop {
        let tracer = Tracer::new(plant, &case);
        let advice = tracer.advise(at);
        let next = advice.best.filter(|s| {
            case.evidence.len() < MOST
                && (s.check != Check::RefillTest || !case.corrections.is_empty())
        });
        if let Some(mode) = advice.ripe.filter(|_| case.corrections.len() < 6) {
            first.get_or_insert(minutes);
            let after = case.evidence.len();
            case.corrections.push(Correction { mode, after });
            scene.correct(mode);
            continue;
        }
        let Some(next) = next.filter(|_| !advice.closes) else {
            let likely = tracer
                .belief()
                .suspects
                .into_iter()
                .filter(|s| s.probability >= 0.5);
            let mut named: Vec<Mode> = likely.map(|s| s.mode).collect();
            named.extend(case.corrections.iter().map(|c| c.mode));
            let truth: Vec<Mode> = scene.truth.iter().map(|t| flat.modes[t.0].mode).collect();
            let vain = case.corrections.iter().filter(|c| !truth.contains(&c.mode));
            let each = case
                .evidence
                .iter()
                .map(|e| format!("{:?}:{:?}", e.check, e.answer));
            let mut each: Vec<String> = each.collect();
            for c in case.corrections.iter().rev() {
                each.insert(c.after, format!("*{:?}*", c.mode));
            }
            let truth_of: Vec<_> = scene
                .truth
                .iter()
                .map(|t| (flat.modes[t.0].mode, t.1))
                .collect();
            let told = format!(
                "truly {truth_of:?}, named {named:?}, closed {}, sound {}, left {:.3}, top {:?} {minutes} min: {}",
                advice.closes,
                scene.is_sound(),
                tracer.left(),
                tracer
                    .belief()
                    .suspects
                    .iter()
                    .take(3)
                    .map(|s| (s.mode, (s.probability * 100.0).round()))
                    .collect::<Vec<_>>(),
                each.join(" ")
            );
            return Ended {
                told,
                closed: advice.closes,
                first: first.unwrap_or(minutes),
                minutes,
                checks: case.evidence.len(),
                named: truth.iter().all(|m| named.contains(m)),
                in_vain: vain.count(),
                sound: scene.is_sound(),
            };
        };
        minutes += next.minutes + next.walk_minutes;
        at = next.check.place();
        let stage = tracer.stage(next.check);
        let answer = scene.answer(next.check, stage);
        case.evidence
            .push(Evidence::said(next.check, answer, stage));
    }
}
