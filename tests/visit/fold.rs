//! Folding: the same set of entries gives the same visit.

use coldsump::quantity::Unit;
use coldsump::record::{
    Body, DeviceId, Entry, EntryId, LeavingItem, LeavingState, Log, Pen, Summary, Visit, What, When,
};
use coldsump::refill::{MarkKind, Verdict, judge};
use coldsump::trace::Mode;
use proptest::prelude::*;

use crate::story::{Fixed, START_MS, Story};

const FIXTURE: &str = include_str!("../fixtures/entries-v1.json");

fn log(entries: &[Entry]) -> Log {
    let mut log = Log::default();
    entries.iter().for_each(|e| log.add(e.clone()));
    log
}

fn merged(a: &Log, b: &Log) -> Log {
    let mut all = a.clone();
    b.held().for_each(|e| all.add(e.clone()));
    all
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn order_and_repetition_do_not_matter(
        mixed in Just(Story::whole().entries).prop_shuffle(),
        again in prop::collection::vec(any::<prop::sample::Index>(), 0..20),
    ) {
        let story = Story::whole();
        let more = again.iter().map(|i| i.get(&mixed).clone());
        let all: Vec<Entry> = mixed.iter().cloned().chain(more).collect();
        prop_assert_eq!(log(&all), story.log());
        prop_assert_eq!(Visit::fold(story.visit_id, &all), Some(story.visit()));
    }

    #[test]
    fn merging_logs_is_a_union(kept in prop::collection::vec(0u8..8, 200)) {
        let all = Story::whole().entries;
        let part = |bit: u8| -> Log {
            let mine = all.iter().zip(&kept).filter(|(_, k)| *k & bit != 0);
            log(&mine.map(|(e, _)| e.clone()).collect::<Vec<_>>())
        };
        let (a, b, c) = (part(1), part(2), part(4));
        prop_assert_eq!(merged(&a, &b), merged(&b, &a));
        prop_assert_eq!(merged(&a, &a), a.clone());
        prop_assert_eq!(merged(&merged(&a, &b), &c), merged(&a, &merged(&b, &c)));
    }

    #[test]
    fn ids_rise_even_when_the_clock_goes_back(steps in prop::collection::vec(-5_000i64..5_000, 1..60)) {
        let device = DeviceId::parse("019ab000-0000-7000-8000-000000000001").unwrap();
        let mut pen = Pen::new(device, None);
        let mut last: Option<EntryId> = None;
        let mut ms = START_MS;
        for step in steps {
            ms += step;
            let clock = Fixed::at(ms);
            let id: EntryId = pen.id(clock.now.get(), &clock);
            prop_assert!(last.is_none_or(|last| last < id));
            last = Some(id);
        }
        let old = Fixed::at(START_MS - 86_400_000);
        let next: EntryId = Pen::new(device, last).id(old.now.get(), &old);
        prop_assert!(last < Some(next), "a pen begun anew goes on after the log");
    }
}

#[test]
fn a_withdrawal_can_be_withdrawn_whatever_the_ids_say() {
    let mut story = Story::opened();
    let note = story.note("Ladder is loose");
    let first = story.say(Body::Withdrawn { entry: note });
    assert!(story.visit().notes.is_empty());
    let second = story.say(Body::Withdrawn { entry: first });
    assert_eq!(story.visit().notes.len(), 1);
    story.say(Body::Withdrawn { entry: second });
    assert!(story.visit().notes.is_empty());
    // The same from a phone whose clock runs behind: its id sorts first.
    let mut late = Story::opened();
    let behind: EntryId = late.pen.id(late.clock.now.get(), &late.clock);
    let note = late.note("Ladder is loose");
    let first = late.say(Body::Withdrawn { entry: note });
    late.say(Body::Withdrawn { entry: first });
    late.entries.last_mut().unwrap().id = behind;
    assert_eq!(late.visit().notes.len(), 1);
}

#[test]
fn a_later_reading_corrects_and_can_be_cleared() {
    let mut story = Story::opened();
    story.read(When::AsFound, What::DryBulb, 59.0, Unit::Fahrenheit);
    story.read(When::AsFound, What::DryBulb, 95.0, Unit::Fahrenheit);
    let visit = story.visit();
    let reading = visit.reading(When::AsFound, What::DryBulb).unwrap();
    assert_eq!((reading.typed.as_str(), reading.entries.len()), ("95", 2));
    for entry in reading.entries.clone() {
        story.say(Body::Withdrawn { entry });
    }
    assert_eq!(story.visit().reading(When::AsFound, What::DryBulb), None);
}

#[test]
fn marks_attach_to_their_own_test_and_a_test_runs_until_stopped() {
    let mut story = Story::opened();
    story.begin_test();
    story.mark(40.0, MarkKind::DrawdownBegan);
    let first = story.test;
    assert!(story.summary().test_running());
    story.mark(40.0, MarkKind::Stopped);
    assert!(!story.summary().test_running());
    story.test = "019ab000-0000-7000-8000-0000000000aa"
        .parse::<uuid::Uuid>()
        .unwrap()
        .into();
    story.begin_test();
    story.level(60.0, 4.0);
    let tests = story.visit().tests;
    assert_eq!((tests[0].id, tests[0].marks.len()), (first, 2));
    assert_eq!((tests[1].marks.len(), tests[1].timed()[0].at_s), (1, 60.0));
}

#[test]
fn the_summary_lists_visits_and_reports_that_stand() {
    let mut story = Story::opened();
    let opened = &story.summary().visits()[0].clone();
    assert_eq!((opened.closed, opened.site), (false, story.site_id));
    let closed = story.say(Body::VisitClosed);
    assert!(story.summary().visits()[0].closed);
    story.say(Body::Withdrawn { entry: closed });
    assert!(!story.summary().visits()[0].closed, "reopened");
    story.send_report();
    assert!(story.summary().outbox().is_empty(), "confirmed");
    let confirmed = story.entries.last().unwrap().id;
    story.say(Body::Withdrawn { entry: confirmed });
    assert_eq!(story.summary().outbox().len(), 1, "not confirmed after all");
    assert!(
        story.summary().waiting_reports().is_empty(),
        "but handed over"
    );
    assert_eq!(story.summary().sites()[0].name, "Halden Street Bakery");
}

/// The stored form of version 1. Entries are never rewritten, so this file
/// must read for as long as the product lives. Never edit it.
#[test]
fn version_1_entries_read_forever() {
    let entries: Vec<Entry> = serde_json::from_str(FIXTURE).expect("version 1 reads");
    let again = serde_json::to_value(&entries).unwrap();
    let mut kinds: Vec<String> = again
        .as_array()
        .unwrap()
        .iter()
        .map(|e| match &e["body"] {
            serde_json::Value::String(name) => name.clone(),
            body => body.as_object().unwrap().keys().next().unwrap().clone(),
        })
        .collect();
    kinds.sort();
    kinds.dedup();
    assert_eq!(kinds.len(), 15, "every kind of body: {kinds:?}");
    let log = log(&entries);
    let summary = Summary::of(&entries);
    let line = &summary.visits()[0];
    let visit = log.visit(line.id).unwrap();
    assert_eq!(line.complaint, "Three blast chillers out, product warming");
    assert_eq!((visit.readings.len(), visit.machines.len()), (18, 12));
    let level = visit.reading(When::AsLeft, What::BasinLevel).unwrap();
    assert!((level.value.in_unit(Unit::Inch).unwrap() - 3.1).abs() < 1e-9);
    let test = &visit.tests[0];
    assert_eq!(judge(&test.setup, &test.timed()).verdict, Verdict::Pass);
    assert_eq!(visit.cause.as_ref().unwrap().mode, Mode::SensorFalseFull);
    assert_eq!(log.site(visit.site).unwrap().machines.len(), 6);
    assert_eq!(
        visit.leaving.get(&LeavingItem::TreatmentTold),
        Some(&LeavingState::NotSo)
    );
    assert_eq!((visit.answers.len(), visit.notes.len()), (10, 1));
    assert!(visit.closed.is_some() && visit.reports[0].confirmed.is_some());
}

/// A site described before facts could be unknown reads as known, and is
/// written as it was.
#[test]
fn a_site_of_version_1_is_written_as_it_was() {
    let stored: Vec<serde_json::Value> = serde_json::from_str(FIXTURE).unwrap();
    let old = &stored[0]["body"]["site-described"]["site"];
    let site: coldsump::record::Site = serde_json::from_value(old.clone()).unwrap();
    let tower = &site.tower;
    assert!(site.altitude.is_some() && site.control_voltage.is_some());
    assert!(tower.basin.is_some() && tower.design_flow.is_some() && tower.inlet_level.is_some());
    assert!(site.machines.iter().all(|m| m.refrigerant.is_some()));
    assert_eq!(&serde_json::to_value(&site).unwrap(), old);
}
