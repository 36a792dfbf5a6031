//! A site over time, on the bakery's invented visits.

use coldsump::quantity::{Unit, Value};
use coldsump::record::{
    DeviceId, History, LeavingItem, Log, Moment, Summary, Trend, VisitId, demo, since,
};
use coldsump::trace::Mode;

use crate::story::{Fixed, START_MS, Story};

fn earlier(story: &Story) -> Vec<coldsump::record::Entry> {
    let device = DeviceId::parse("019ab000-0000-7000-8000-000000000001").unwrap();
    let clock = Fixed::at(START_MS);
    let now: Moment = clock.now.get();
    demo::earlier(device, story.site_id, &story.site, now, &clock)
}

fn history(story: &Story) -> (History, Vec<VisitId>) {
    let entries = earlier(story);
    let mut log = Log::default();
    entries.iter().for_each(|e| log.add(e.clone()));
    let summary = Summary::of(&entries);
    let ids: Vec<VisitId> = summary.visits().iter().map(|v| v.id).collect();
    let visits: Vec<_> = ids.iter().map(|id| log.visit(*id).unwrap()).collect();
    (History::of(&story.site, &visits), ids)
}

fn numbers(history: &History, trend: Trend, unit: Unit) -> Vec<f64> {
    let number = |(_, v): (Moment, Value)| v.in_unit(unit).unwrap();
    history.points(trend).into_iter().map(number).collect()
}

#[test]
fn the_bakery_drifts_slowly() {
    let story = Story::opened();
    let (history, ids) = history(&story);
    assert_eq!((history.visits.len(), ids.len()), (3, 3));
    let rising = |v: &[f64]| v.len() == 3 && v.windows(2).all(|w| w[0] < w[1]);
    let approach = numbers(&history, Trend::Approach, Unit::FahrenheitDifference);
    assert!(rising(&approach) && approach[2] < 11.0, "{approach:?}");
    let water = numbers(
        &history,
        Trend::Conductivity,
        Unit::MicrosiemensPerCentimetre,
    );
    assert!(rising(&water), "{water:?}");
    let mut fill = numbers(&history, Trend::Fill, Unit::GallonPerMinute);
    fill.reverse();
    assert!(
        rising(&fill) && fill[0] > 12.0 && fill[2] < 18.0,
        "{fill:?}"
    );
    // Oldest first, all closed, none in the future.
    let opened: Vec<_> = history.visits.iter().map(|v| v.opened.ms).collect();
    assert!(opened.is_sorted() && opened[2] < START_MS);
    assert_eq!(history.visits[1].cause.unwrap().0, Mode::PumpStrainer);
    assert_eq!(history.visits[2].not_so, [LeavingItem::TreatmentTold]);
}

#[test]
fn the_probes_fouling_gives_a_cleaning_interval() {
    let story = Story::opened();
    let (history, _) = history(&story);
    let now = Fixed::at(START_MS).now.get();
    // Films on the first and the third visit; the first began the record.
    let fouling = history.fouling(now).unwrap();
    assert_eq!(fouling.fouls, 1);
    assert!((fouling.years - 352.0 / 365.25).abs() < 1e-6);
    let (short, days, long) = fouling.clean_after_days;
    assert!(short < days && days < long);
    assert!((30.0..60.0).contains(&days), "{days}");
}

#[test]
fn a_new_visit_begins_with_what_the_last_one_left() {
    let mut story = Story::opened();
    let entries = earlier(&story);
    let last = Summary::of(&entries).visits()[0].id;
    let mut log = Log::default();
    entries.into_iter().for_each(|e| log.add(e));
    let before = log.visit(last).unwrap();
    let fresh = since(&story.site, &before, &story.visit());
    assert_eq!((fresh.days, fresh.changed.len()), (81, 0));
    assert_eq!(fresh.before.cause.unwrap().0, Mode::ProbeFilm);
    story.as_found();
    let read = since(&story.site, &before, &story.visit());
    let trends: Vec<Trend> = read.changed.iter().map(|c| c.0).collect();
    assert_eq!(trends, [Trend::Approach, Trend::WetBulb]);
}
