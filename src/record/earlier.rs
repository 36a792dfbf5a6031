//! What a site's own earlier refill tests say.

use super::id::SiteId;
use super::log::Log;
use super::test::Test;
use crate::quantity::sort_by;
use crate::refill::{FlowRange, judge};

/// The ended tests of a site, newest first.
pub fn earlier_tests(log: &Log, site: SiteId) -> Vec<Test> {
    let mut tests: Vec<Test> = log
        .visits()
        .into_iter()
        .filter(|line| line.site == site)
        .filter_map(|line| log.visit(line.id))
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
