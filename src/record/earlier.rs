//! What a site's own earlier refill tests say.

use super::body::Body;
use super::entry::{About, Entry};
use super::id::SiteId;
use super::log::Log;
use super::test::Test;
use crate::quantity::{VolumeRate, sort_by};
use crate::refill::{Estimate, FlowRange, Setup, judge};

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

/// What is known from these tests, newest first, for the next one: what the fill
/// and the drain gave when they were last measured, and what was last typed of
/// valve, mains and drain.
pub fn with_earlier(setup: Setup, tests: &[Test]) -> Setup {
    let mut setup = setup;
    let range = |flow: Estimate| FlowRange {
        low: flow.low,
        high: flow.high,
    };
    for test in tests {
        let then = &test.setup;
        setup.valve_cv = setup.valve_cv.or(then.valve_cv);
        setup.mains = setup.mains.or(then.mains);
        setup.drain = setup.drain.or(then.drain);
        if setup.earlier.is_some() && setup.earlier_drain.is_some() {
            continue;
        }
        let outcome = judge(then, &test.timed());
        let fill = outcome.fill_gross.ok().map(range);
        setup.earlier = setup.earlier.or(fill);
        let drain = outcome.drawdown.ok().map(|fit| range(fit.flow));
        let drain = drain.filter(|d| d.low > VolumeRate::default());
        setup.earlier_drain = setup.earlier_drain.or(drain);
    }
    setup
}
