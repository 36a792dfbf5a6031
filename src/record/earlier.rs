//! What a site's own earlier refill tests say.

use super::body::Body;
use super::entry::{About, Entry};
use super::id::SiteId;
use super::log::Log;
use super::test::Test;
use crate::quantity::sort_by;
use crate::refill::{FlowRange, judge};

/// The ended tests of a site, newest first, of the visits whose entries are
/// here.
pub fn earlier_tests(log: &Log, site: SiteId) -> Vec<Test> {
    let opens = |entry: &Entry| match (entry.about, &entry.body) {
        (About::Visit(id), Body::VisitOpened { site: there, .. }) if *there == site => Some(id),
        _ => None,
    };
    let mut tests: Vec<Test> = log
        .held()
        .filter_map(opens)
        .filter_map(|id| log.visit(id))
        .flat_map(|visit| visit.tests)
        .filter(Test::is_ended)
        .collect();
    sort_by(&mut tests, |a, b| b.begun.ms.cmp(&a.begun.ms));
    tests
}

/// The fill of the newest of them that measured it.
pub fn earlier_fill(tests: &[Test]) -> Option<FlowRange> {
    tests.iter().find_map(|test| {
        let gross = judge(&test.setup, &test.timed()).fill_gross.ok()?;
        Some(FlowRange {
            low: gross.low,
            high: gross.high,
        })
    })
}
