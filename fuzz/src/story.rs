//! What the app works out from entries that came from elsewhere: fold, figures,
//! history, trace, report, mail, table, summary.

use coldsump::quantity::System;
use coldsump::record::paperwork::files;
use coldsump::record::{
    About, Entry, Figures, History, Line, Log, Query, Site, Visit, VisitId, case, known_input,
    outlook, plant, refill_setup, since,
};
use coldsump::refill::judge;
use coldsump::report::mail::short_text;
use coldsump::report::{DocDate, compose, to_csv, to_pdf, to_text};
use coldsump::store::backup::sift;
use coldsump::trace::Tracer;
use coldsump::words::{Tongue, Words};

use super::{pdf, reader};

/// At most so many visits of one input: a phone opens one at a time.
const VISITS: usize = 3;

/// A document as [`entries`](super::entries::entries) reads it, taken in and
/// looked at.
///
/// # Panics
/// When anything panics, a fold depends on the order of entries, a number shown
/// is no number, a summary line does not read back, or a report is not sound.
pub fn holds(data: &[u8]) {
    let read = super::entries::entries(data);
    let sifted = sift(&Log::default(), read).new;
    let mut log = Log::default();
    sifted.iter().cloned().for_each(|entry| log.add(entry));
    files(sifted.iter());
    let mut things: Vec<About> = sifted.iter().map(|e| e.about).collect();
    things.sort_unstable();
    things.dedup();
    for about in &things {
        let mine = sifted.iter().filter(|e| e.about == *about).cloned();
        if let Some(line) = Line::of(*about, mine) {
            assert_eq!(Line::read(&line.write()), Some(line));
        }
    }
    let visits = things.iter().filter_map(|about| match about {
        About::Visit(id) => Some(*id),
        About::Site(_) => None,
    });
    let visits: Vec<VisitId> = visits.take(VISITS).collect();
    let folded: Vec<Visit> = visits.iter().filter_map(|id| folds(&sifted, *id)).collect();
    for (n, visit) in folded.iter().enumerate() {
        let site = log.site(visit.site).unwrap_or_default();
        worked_out(&site, visit);
        let spoken = Tongue::ALL[n % 2];
        for system in [System::Us, System::Si] {
            told(&site, visit, system, Words(spoken));
        }
        for before in &folded[..n] {
            since(&site, before, visit);
        }
        let history = History::of(&site, &folded);
        history.fouling(visit.opened);
        Query::new(&visit.complaint).costs(&site.name);
    }
}

/// A visit is the same whatever the order of its entries.
fn folds(entries: &[Entry], id: VisitId) -> Option<Visit> {
    let forward = Visit::fold(id, entries);
    let backward = Visit::fold(id, entries.iter().rev());
    let twice = Visit::fold(id, entries.iter().chain(entries));
    let said = |visit: &Option<Visit>| format!("{visit:?}");
    assert_eq!(
        said(&forward),
        said(&backward),
        "the order of entries counts"
    );
    assert_eq!(said(&forward), said(&twice), "an entry counts twice");
    forward
}

fn worked_out(site: &Site, visit: &Visit) {
    let found = Figures::of(site, visit);
    assert!(found.known() < 1_000);
    drop(outlook(site, visit, 3_600.0));
    drop(refill_setup(site, visit));
    for test in &visit.tests {
        judge(&test.setup, &test.timed());
    }
    for ask in coldsump::working::Ask::ALL {
        known_input(site, visit, ask);
    }
    visit.last_level();
    let plant = plant(site);
    let belief = Tracer::new(&plant, &case(site, visit)).belief();
    for suspect in &belief.suspects {
        let p = suspect.probability;
        assert!((0.0..=1.0 + 1e-9).contains(&p), "{suspect:?}");
    }
}

fn told(site: &Site, visit: &Visit, system: System, words: Words) {
    let doc = compose(site, visit, system, words, "");
    let text = to_text(&doc, 72);
    let whole: Vec<&str> = text.split_whitespace().collect();
    for word in ["NaN", "inf", "-inf"] {
        // Someone's own words may be these.
        let own = format!("{site:?}{visit:?}").contains(word);
        assert!(own || !whole.contains(&word), "{text}");
    }
    short_text(&doc, 72);
    let table = to_csv(site, visit, system, words);
    assert!(table.ends_with("\r\n"));
    let (year, month, day, hour, minute, second) = visit.opened.local();
    let created = DocDate {
        year: u16::try_from(year).unwrap_or_default(),
        month,
        day,
        hour,
        minute,
        second,
        offset_minutes: -300,
    };
    let made = to_pdf(&doc, pdf::FONT, created).expect("any report can be set");
    reader::text(&made);
}
