//! What the trace thinks now, shared by the parts of its screen, and what may
//! be done to it. Each part of the thinking is done once for each change, and
//! only when something on the screen asks for it.

use std::cell::RefCell;
use std::sync::Arc;

use gloo_timers::callback::Timeout;

use crate::app::view::prelude::*;

use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::parts::field::to_heading;
use crate::record::{Body, EntryId, Site, Visit, case, plant};
use crate::trace::{
    Advice, Answer, Belief, Case, Check, Evidence, Mode, Place, Plant, Reason, Stage, Tracer,
};

/// Milliseconds of rest before each answer is thought of.
const AHEAD_MS: u32 = 120;

thread_local! {
    /// The first thought, made ready on the screen before.
    static READY: RefCell<Option<Arc<Thought>>> = const { RefCell::new(None) };
}

/// What follows from all that is known of a call.
pub struct Thought {
    /// The posterior.
    pub tracer: Tracer,
    /// The posterior as suspects.
    pub belief: Belief,
    /// What to do next from where the mechanic stands.
    pub advice: Advice,
    at: Place,
}

impl Thought {
    fn new(plant: &Plant, case: &Case, at: Place) -> Self {
        let tracer = Tracer::new(plant, case);
        Self {
            belief: tracer.belief(),
            advice: tracer.advise(at),
            tracer,
            at,
        }
    }

    fn is_of(&self, plant: &Plant, case: &Case, at: Place) -> bool {
        self.at == at && self.tracer.case == *case && self.tracer.plant == *plant
    }
}

/// Thinks of this visit once the screen it is called on has come to rest, so
/// that the trace opens with it.
pub fn prepare(job: Job) {
    Timeout::new(2 * AHEAD_MS, move || {
        // Neither is there when the screen was left meanwhile.
        let visit = job.visit.try_get_untracked().flatten();
        let site = job.site.try_get_untracked().flatten();
        if let Some((visit, site)) = visit.zip(site) {
            let (plant, case, at) = (plant(&site), case(&site, &visit), start(job));
            let thought = Arc::new(Thought::new(&plant, &case, at));
            READY.set(Some(thought));
        }
    })
    .forget();
}

/// Where the mechanic was last, or where calls begin.
fn start(job: Job) -> Place {
    let kept = ledger().text(&at_key(job)).unwrap_or_default();
    let known = |p: &Place| format!("{p:?}") == kept;
    let place = Place::ALL.into_iter().find(known);
    place.unwrap_or(Place::MachineRoom)
}

/// A visit, its site, and what follows from them.
pub struct Facts {
    /// The visit.
    pub visit: Visit,
    /// Its site.
    pub site: Site,
    thought: Arc<Thought>,
}

impl std::ops::Deref for Facts {
    type Target = Thought;
    fn deref(&self) -> &Thought {
        &self.thought
    }
}

/// The facts, shared; other facts are never equal.
#[derive(Clone)]
pub struct Known(Arc<Facts>);

impl PartialEq for Known {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

impl std::ops::Deref for Known {
    type Target = Facts;
    fn deref(&self) -> &Facts {
        &self.0
    }
}

impl Facts {
    /// The modes put right so far.
    pub fn corrected(&self) -> Vec<Mode> {
        self.visit.corrections.iter().map(|c| c.mode).collect()
    }

    /// What to put right now.
    pub fn ripe(&self) -> Option<Mode> {
        self.advice.ripe
    }

    /// Whether what was put right is proven as far as it can be, and nothing
    /// else is likely.
    pub fn closes(&self) -> bool {
        self.advice.closes
    }

    /// The standing answer of a check, the last if there are more.
    pub fn answer_of(&self, check: Check) -> Option<Evidence> {
        let answers = self.visit.answers.iter().rev();
        answers.map(|a| a.evidence).find(|e| e.check == check)
    }
}

/// The check on the card, and why it is the one.
#[derive(Clone, Copy)]
pub struct Shown {
    /// The check.
    pub check: Check,
    /// Why, when it is the suggested one.
    pub why: Option<Reason>,
    /// Minutes it takes there.
    pub minutes: f64,
    /// Minutes to walk there.
    pub walk: f64,
}

/// The thinking, as signals.
#[derive(Clone, Copy)]
pub struct Mind {
    /// The visit and its site.
    pub job: Job,
    /// What is known.
    pub known: Memo<Option<Known>>,
    /// What will follow from each answer of the card, thought of while the
    /// person does the check.
    ahead: StoredValue<Vec<Arc<Thought>>>,
    /// The same one frame later, for all that stands below the card: the next
    /// card is on the screen before the rest is drawn.
    pub seen: RwSignal<Option<Known>>,
    /// Where the mechanic stands.
    pub at: RwSignal<Place>,
    /// The check chosen over the suggested one.
    pub chosen: RwSignal<Option<Check>>,
    /// The stage said by hand for the next answer, as its place in
    /// [`Stage::ALL`]; the first says nothing.
    stage: RwSignal<usize>,
    /// The suspect whose reasons are open: one more than its place, or none.
    open: RwSignal<usize>,
    /// Whether the closing is open.
    pub closing: RwSignal<bool>,
}

fn at_key(job: Job) -> String {
    format!("at {}", job.id)
}

fn stage_key(job: Job) -> String {
    format!("stage {}", job.id)
}

impl Mind {
    /// The mind of a visit.
    pub fn of(job: Job) -> Self {
        let at = RwSignal::new(start(job));
        let kept = ledger().text(&stage_key(job));
        let stage = kept.and_then(|k| k.parse().ok()).unwrap_or(0);
        let ahead = StoredValue::new(Vec::<Arc<Thought>>::new());
        let known = Memo::new(move |_| {
            let (visit, site) = job.both()?;
            let (plant, case, at) = (plant(&site), case(&site, &visit), at.get());
            let thought = ahead.with_value(|ahead| {
                let same = ahead.iter().find(|t| t.is_of(&plant, &case, at));
                same.map(Arc::clone)
            });
            let ready = || READY.with_borrow(|ready| ready.clone());
            let thought = thought.or_else(|| ready().filter(|t| t.is_of(&plant, &case, at)));
            let thought = thought.unwrap_or_else(|| Arc::new(Thought::new(&plant, &case, at)));
            Some(Known(Arc::new(Facts {
                visit,
                site,
                thought,
            })))
        });
        Self {
            job,
            known,
            ahead,
            seen: RwSignal::new(None::<Known>),
            at,
            chosen: RwSignal::new(None::<Check>),
            stage: RwSignal::new(stage),
            open: RwSignal::new(0),
            closing: RwSignal::new(false),
        }
    }

    /// Lets [`Mind::seen`] follow once the frame is painted, and then thinks
    /// ahead. Tracks what is known and what is on the card.
    pub fn follow(self) {
        let known = self.known.get();
        let shown = self.shown();
        after_paint(move || {
            let seen = self.seen.try_get_untracked();
            if seen.is_some_and(|seen| seen != known) {
                self.seen.set(known.clone());
                self.ahead.update_value(Vec::clear);
            }
            if let Some((known, shown)) = known.zip(shown) {
                self.think_ahead(known, shown.check, 0);
            }
        });
    }

    /// Thinks of the next answer of the card, and then of the one after, each
    /// in a moment of its own: a tap never waits for more than one.
    fn think_ahead(self, known: Known, check: Check, n: usize) {
        Timeout::new(AHEAD_MS, move || {
            let now = self.known.try_get_untracked().flatten();
            let answers = check.answers();
            if now.as_ref() != Some(&known) {
                return;
            }
            let still = untrack(|| self.shown()).is_some_and(|s| s.check == check);
            if !still || n > answers.len() {
                return;
            }
            let answer = answers.get(n).copied().unwrap_or(Answer::CouldNot);
            let stage = untrack(|| self.stage_of(check));
            let mut case = known.tracer.case.clone();
            let said = Evidence::said(check, answer, stage);
            case.evidence.insert(known.visit.answers.len(), said);
            let thought = Thought::new(&known.tracer.plant, &case, check.place());
            self.ahead
                .update_value(|ahead| ahead.push(Arc::new(thought)));
            self.think_ahead(known, check, n + 1);
        })
        .forget();
    }

    /// The check on the card.
    pub fn shown(self) -> Option<Shown> {
        let known = self.known.get()?;
        let best = known.advice.best;
        let check = self.chosen.get().or(best.map(|s| s.check))?;
        let best = best.filter(|s| s.check == check);
        Some(Shown {
            check,
            why: best.map(|s| s.why),
            minutes: best.map_or_else(|| known.tracer.minutes(check), |s| s.minutes),
            walk: self.at.get().walk_minutes(check.place()),
        })
    }

    /// Whether the reasons of this suspect are open.
    pub fn is_open(self, mode: Mode) -> bool {
        self.open.get() == mode as usize + 1
    }

    /// Opens them, or shuts them.
    pub fn turn(self, mode: Mode) {
        let mode = mode as usize + 1;
        self.open
            .update(|open| *open = if *open == mode { 0 } else { mode });
    }

    /// The least stage an answer of this check can belong to now.
    pub fn least_stage(self, check: Check) -> Stage {
        let known = self.known.get();
        known.map_or(Stage::AsFound, |k| k.tracer.stage(check))
    }

    /// The stage an answer of this check is kept with.
    pub fn stage_of(self, check: Check) -> Stage {
        let said = Stage::ALL.get(self.stage.get()).copied();
        said.unwrap_or(Stage::AsFound).max(self.least_stage(check))
    }

    /// Says by hand at what stage the next answer is had.
    pub fn say_stage(self, stage: Stage) {
        self.stage.set(stage as usize);
        ledger().keep_text(&stage_key(self.job), &(stage as usize).to_string());
    }

    /// The mechanic stands here now.
    pub fn go_to(self, place: Place) {
        self.at.set(place);
        ledger().keep_text(&at_key(self.job), &format!("{place:?}"));
    }

    /// Puts a check on the card.
    pub fn choose(self, check: Check) {
        self.chosen.set(Some(check));
        to_top();
    }

    /// Keeps an answer; the next card comes when it is on disk.
    pub fn keep(self, evidence: Evidence, done: Box<dyn FnOnce()>) {
        let Evidence {
            check,
            answer,
            stage,
            value,
        } = evidence;
        let body = Body::CheckAnswered {
            check,
            answer,
            stage,
            value,
        };
        let done = move || {
            done();
            if self.is_gone() {
                return;
            }
            self.chosen.set(None);
            if self.stage.get_untracked() > 0 {
                self.stage.set(0);
                ledger().keep_text(&stage_key(self.job), "");
            }
            if self.at.get_untracked() != check.place() {
                self.go_to(check.place());
            }
        };
        self.write(body, Box::new(done));
    }

    /// Keeps that a fault was put right.
    pub fn correct(self, mode: Mode) {
        let done = move || {
            self.chosen.set(None);
            self.open.set(0);
        };
        self.write(Body::Corrected { mode }, Box::new(done));
    }

    /// Opens the closing and goes there.
    pub fn close(self) {
        self.closing.set(true);
        request_animation_frame(|| to("[data-test=closing]"));
    }

    /// Takes an answer or a correction back.
    pub fn take_back(self, entry: EntryId) {
        ledger().withdraw(self.job.about(), entry);
        self.chosen.set(None);
    }

    fn write(self, body: Body, done: Box<dyn FnOnce()>) {
        ledger().write_then(self.job.about(), vec![body], move || {
            done();
            if !self.is_gone() {
                to_top();
            }
        });
    }

    /// Whether the screen was left meanwhile. Asks nothing of the thinking: it
    /// would think of the new answer at the old place.
    fn is_gone(self) -> bool {
        self.at.try_get_untracked().is_none()
    }
}

/// Brings the card into view.
pub fn to_top() {
    to("main");
}

/// Brings what a selector finds into view.
pub fn to(selector: &str) {
    if let Some(top) = document().query_selector(selector).ok().flatten() {
        top.scroll_into_view();
        to_heading(&format!("{selector} h2"));
    }
}
