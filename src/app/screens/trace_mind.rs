//! What the trace thinks now, shared by the parts of its screen, and what may
//! be done to it. Each part of the thinking is done once for each change, and
//! only when something on the screen asks for it.

use std::sync::Arc;

use crate::app::view::prelude::*;

use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::prefs::prefs;
use crate::record::{Body, EntryId, Site, Visit, case, plant};
use crate::trace::{Advice, Belief, Check, Evidence, Mode, Place, Reason, Stage, Tracer};

/// A visit, its site, and the posterior over what is known of it.
pub struct Facts {
    /// The visit.
    pub visit: Visit,
    /// Its site.
    pub site: Site,
    /// The posterior.
    pub tracer: Tracer,
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

/// The check on the card, and why it is the one.
#[derive(Clone, Copy, PartialEq)]
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
    /// What is believed.
    pub belief: Memo<Option<Belief>>,
    /// What to do next.
    pub advice: Memo<Option<Advice>>,
    /// The check on the card.
    pub shown: Memo<Option<Shown>>,
    /// Where the mechanic stands.
    pub at: RwSignal<Place>,
    /// The check chosen over the suggested one.
    pub chosen: RwSignal<Option<Check>>,
    /// The stage said by hand, for the next answer.
    pub stage: RwSignal<Option<Stage>>,
    /// The suspect whose reasons are open.
    pub open: RwSignal<Option<Mode>>,
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
        let words = prefs().words;
        let kept = ledger().text(&at_key(job));
        let start = Place::ALL
            .into_iter()
            .find(|p| kept.as_deref() == Some(words.trace_place(*p)));
        let at = RwSignal::new(start.unwrap_or(Place::MachineRoom));
        let kept = ledger().text(&stage_key(job));
        let stage = Stage::ALL
            .into_iter()
            .find(|s| kept.as_deref() == Some(words.trace_stage(*s)));
        let chosen = RwSignal::new(None::<Check>);
        let known = Memo::new(move |_| {
            let (visit, site) = job.both()?;
            let tracer = Tracer::new(&plant(&site), &case(&site, &visit));
            Some(Known(Arc::new(Facts {
                visit,
                site,
                tracer,
            })))
        });
        let belief = Memo::new(move |_| known.get().map(|k| k.tracer.belief()));
        let advice = Memo::new(move |_| known.get().map(|k| k.tracer.advise(at.get())));
        let shown = Memo::new(move |_| {
            let best = advice.with(|a| a.as_ref().and_then(|a| a.best));
            let check = chosen.get().or(best.map(|s| s.check))?;
            let best = best.filter(|s| s.check == check);
            let minutes = match best {
                Some(s) => s.minutes,
                None => known.get()?.tracer.minutes(check),
            };
            Some(Shown {
                check,
                why: best.map(|s| s.why),
                minutes,
                walk: at.get().walk_minutes(check.place()),
            })
        });
        Self {
            job,
            known,
            belief,
            advice,
            shown,
            at,
            chosen,
            stage: RwSignal::new(stage),
            open: RwSignal::new(None),
        }
    }

    /// The modes put right so far.
    pub fn corrected(self) -> Vec<Mode> {
        let of = |v: &Visit| v.corrections.iter().map(|c| c.mode).collect();
        self.job.visit.with(|v| v.as_ref().map_or(Vec::new(), of))
    }

    /// The least stage an answer of this check belongs to now.
    pub fn stage_of(self, check: Check) -> Stage {
        let least = self.known.with(|k| k.as_ref().map(|k| k.tracer.stage(check)));
        let least = least.unwrap_or(Stage::AsFound);
        self.stage.get().map_or(least, |s| s.max(least))
    }

    /// Says by hand at what stage the next answer is had.
    pub fn say_stage(self, stage: Stage) {
        self.stage.set(Some(stage));
        ledger().keep_text(&stage_key(self.job), prefs().words.trace_stage(stage));
    }

    /// The mechanic stands here now.
    pub fn go_to(self, place: Place) {
        self.at.set(place);
        ledger().keep_text(&at_key(self.job), prefs().words.trace_place(place));
    }

    /// Puts a check on the card.
    pub fn choose(self, check: Check) {
        self.chosen.set(Some(check));
        to_top();
    }

    /// Keeps an answer; the next card comes when it is on disk.
    pub fn keep(self, evidence: Evidence, done: impl FnOnce() + 'static) {
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
        self.write(body, move || {
            self.chosen.set(None);
            if self.stage.get_untracked().is_some() {
                self.stage.set(None);
                ledger().keep_text(&stage_key(self.job), "");
            }
            if self.at.get_untracked() != check.place() {
                self.go_to(check.place());
            }
            done();
        });
    }

    /// Keeps that a fault was put right.
    pub fn correct(self, mode: Mode) {
        self.write(Body::Corrected { mode }, move || {
            self.chosen.set(None);
            self.open.set(None);
        });
    }

    /// Takes an answer or a correction back.
    pub fn take_back(self, entry: EntryId) {
        ledger().withdraw(self.job.about(), entry);
        self.chosen.set(None);
    }

    fn write(self, body: Body, done: impl FnOnce() + 'static) {
        ledger().write_then(self.job.about(), vec![body], move || {
            done();
            to_top();
        });
    }
}

/// Brings the card into view.
pub fn to_top() {
    if let Some(top) = document().query_selector("main").ok().flatten() {
        top.scroll_into_view();
    }
}
