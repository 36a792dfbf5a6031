//! The refill test's clock when the phone's clock is moved, when the phone
//! sleeps or dies, and marks that are moved and taken back.

use coldsump::record::{Body, Entry, EntryId, Moment, Test, Visit, Why};
use coldsump::refill::{MarkKind, Verdict, judge};
use coldsump::trace::{Answer, Check, Stage};
use uom::si::volume_rate::gallon_per_minute;

use crate::story::Story;

/// What happens to the phone's clocks in mid-test.
type Trouble = fn(&mut Story);

fn change(story: &mut Story, change: impl Fn(&mut Moment)) {
    let mut now = story.clock.now.get();
    change(&mut now);
    story.clock.now.set(now);
}

/// A passing test with the trouble after the fourth level of the fill.
fn test_with(trouble: Trouble) -> Test {
    let mut story = Story::opened();
    story.begin_test();
    story.level(20.0, 3.0);
    story.mark(10.0, MarkKind::DrawdownBegan);
    story.level(180.0, 4.6);
    story.level(180.0, 6.2);
    story.mark(30.0, MarkKind::CallSeen);
    story.mark(5.0, MarkKind::WaterSeen);
    story.mark(20.0, MarkKind::DrawdownEnded);
    for (n, inches) in [6.4, 6.02, 5.61, 5.2, 4.83, 4.39, 4.01, 3.62, 3.2]
        .into_iter()
        .enumerate()
    {
        if n == 4 {
            trouble(&mut story);
        }
        story.level(60.0, inches);
    }
    story.mark(25.0, MarkKind::ShutOff);
    for inches in [3.05, 3.06, 3.1] {
        story.level(100.0, inches);
    }
    story.mark(10.0, MarkKind::Stopped);
    story.visit().tests.remove(0)
}

fn resumed(story: &mut Story, last: Moment, slept: bool) {
    let test = story.test;
    story.clock.wait(-30.0);
    story.say(Body::TestResumed { test, last, slept });
}

fn times(test: &Test) -> Vec<f64> {
    test.timed()
        .iter()
        .map(|m| (m.at_s * 10.0).round() / 10.0)
        .collect()
}

fn flow(test: &Test) -> f64 {
    let outcome = judge(&test.setup, &test.timed());
    assert_eq!(outcome.verdict, Verdict::Pass, "{:?}", outcome.findings);
    outcome.fill_gross.unwrap().value.get::<gallon_per_minute>()
}

#[test]
fn a_clock_set_back_an_hour_or_on_a_day_changes_no_time_and_is_shown() {
    let plain = test_with(|_| {});
    assert_eq!(plain.clock_jump_s(), None);
    for (trouble, seconds) in [
        ((|s| change(s, |m| m.ms -= 3_600_000)) as Trouble, -3600.0),
        (|s| change(s, |m| m.ms += 86_400_000), 86_400.0),
        (|s| change(s, |m| m.ms += 7_000), 7.0),
    ] {
        let test = test_with(trouble);
        assert_eq!(times(&test), times(&plain), "moved by {seconds}");
        assert_eq!(flow(&test), flow(&plain));
        assert!((test.clock_jump_s().unwrap() - seconds).abs() < 1.0);
        assert_eq!(test.gaps.len(), 1);
        assert!(matches!(test.gaps[0].why, Why::ClockMoved(_)));
    }
}

#[test]
fn to_and_from_summer_time_nothing_happens() {
    let plain = test_with(|_| {});
    // The wall shows another hour, the time since 1970 runs on.
    let forth: Trouble = |s| change(s, |m| m.offset_min += 60);
    let back: Trouble = |s| change(s, |m| m.offset_min -= 60);
    for test in [test_with(forth), test_with(back)] {
        assert_eq!(times(&test), times(&plain));
        assert_eq!((test.gaps.len(), test.clock_jump_s()), (0, None));
    }
}

#[test]
fn a_sleep_is_a_gap_and_the_test_goes_on_by_the_wall() {
    // Ten minutes locked; the steady clock stood still meanwhile.
    let test = test_with(|story| {
        let last = story.clock.now.get();
        change(story, |m| m.ms += 600_000);
        resumed(story, last, true);
    });
    let plain = times(&test_with(|_| {}));
    let slept = times(&test);
    assert_eq!(slept[..11], plain[..11]);
    assert!((slept[12] - plain[12] - 600.0).abs() < 0.01);
    assert_eq!(test.clock_jump_s(), None);
    let gap = test.gaps[0];
    assert_eq!(gap.why, Why::Away);
    assert!((gap.to_s - gap.from_s - 600.0).abs() < 0.01);
}

#[test]
fn a_killed_browser_is_a_gap_and_a_clock_set_back_meanwhile_is_not_known() {
    let five = test_with(|story| {
        let last = story.clock.now.get();
        change(story, |m| {
            (m.ms, m.run, m.run_ms) = (m.ms + 300_000, 8, 900.0)
        });
        resumed(story, last, false);
    });
    assert_eq!(five.gaps[0].why, Why::Restarted);
    assert!((five.gaps[0].to_s - five.gaps[0].from_s - 300.0).abs() < 0.01);
    let back = test_with(|story| {
        let last = story.clock.now.get();
        change(story, |m| {
            (m.ms, m.run, m.run_ms) = (m.ms - 3_600_000, 8, 900.0)
        });
        resumed(story, last, false);
    });
    assert_eq!(back.gaps[0].why, Why::NotKnown);
    assert!(back.clock_jump_s().is_some());
    // Still in order, none before the one it followed.
    let tapped: Vec<f64> = back.marks.iter().map(|m| m.tapped_s).collect();
    assert!(tapped.is_sorted());
}

#[test]
fn a_late_mark_moves_openly_and_moves_back() {
    let mut story = Story::opened();
    story.begin_test();
    story.mark(60.0, MarkKind::DrawdownBegan);
    let call = story.mark(200.0, MarkKind::CallSeen);
    let test = story.test;
    let moved = story.say(Body::MarkMoved {
        test,
        mark: call,
        by_s: -8.0,
    });
    let seen = |visit: &Visit| visit.tests[0].marks[1].clone();
    let mark = seen(&story.visit());
    assert_eq!((mark.tapped_s, mark.at_s()), (260.0, 252.0));
    assert_eq!(mark.moved, Some((-8.0, moved)));
    // Nonsense moves nothing; the last word counts; taking it back undoes it.
    for by_s in [f64::NAN, 9e9] {
        let mark = call;
        story.say(Body::MarkMoved { test, mark, by_s });
    }
    assert_eq!(seen(&story.visit()).at_s(), 252.0);
    let again = story.say(Body::MarkMoved {
        test,
        mark: call,
        by_s: -3.0,
    });
    assert_eq!(seen(&story.visit()).at_s(), 257.0);
    story.say(Body::Withdrawn { entry: again });
    assert_eq!(seen(&story.visit()).at_s(), 252.0);
    story.say(Body::Withdrawn { entry: moved });
    assert_eq!(seen(&story.visit()).moved, None);
}

#[test]
fn the_measured_result_is_evidence_of_the_trace() {
    let mut story = Story::opened();
    story.passing_test();
    let said = |story: &Story| {
        let evidence = story.visit().evidence();
        let of = |e: &&coldsump::trace::Evidence| e.check == Check::RefillTest;
        evidence.iter().find(of).map(|e| (e.answer, e.stage))
    };
    assert_eq!(said(&story), Some((Answer::Refilled, Stage::Testing)));
    // What a person answers at the same stage stands before it.
    let by_hand = story.answer(Check::RefillTest, Answer::RefilledSlowly, Stage::Testing);
    assert_eq!(said(&story), Some((Answer::RefilledSlowly, Stage::Testing)));
    story.say(Body::Withdrawn { entry: by_hand });
    assert_eq!(said(&story), Some((Answer::Refilled, Stage::Testing)));
}

/// A level that goes on rising after the shut-off tells the trace that the fill
/// does not stop, though it came in its time.
#[test]
fn a_fill_that_runs_on_is_evidence_of_the_trace() {
    let mut story = Story::opened();
    story.filled_test(&[2.9, 2.62, 2.31, 2.03, 1.74, 1.42]);
    let said = |story: &Story, check: Check| {
        let evidence = story.visit().evidence();
        evidence.iter().find(|e| e.check == check).map(|e| e.answer)
    };
    assert_eq!(said(&story, Check::FillStops), Some(Answer::RunsOn));
    let by_hand = story.answer(Check::FillStops, Answer::FillShuts, Stage::Testing);
    assert_eq!(said(&story, Check::FillStops), Some(Answer::FillShuts));
    story.say(Body::Withdrawn { entry: by_hand });
    assert_eq!(said(&story, Check::FillStops), Some(Answer::RunsOn));
}

/// The stored form of what version 1 gained since its fixture was made. Never
/// edit these.
#[test]
fn the_added_kinds_read_forever() {
    const ADDED: &str = r#"[
    {"id":"019ab000-0000-7000-8000-0000000000a1","device":"019ab000-0000-7000-8000-000000000001",
     "at":{"ms":1795525920000,"offset-min":-300,"run":7,"run-ms":0.0},
     "about":{"visit":"019ab000-0000-7000-8000-000000000003"},"v":1,
     "body":{"marked":{"test":"019ab000-0000-7000-8000-000000000004",
       "mark":{"level":{"below-overflow":0.127}},"typed":"5 in"}}},
    {"id":"019ab000-0000-7000-8000-0000000000a2","device":"019ab000-0000-7000-8000-000000000001",
     "at":{"ms":1795525920000,"offset-min":-300,"run":7,"run-ms":0.0},
     "about":{"visit":"019ab000-0000-7000-8000-000000000003"},"v":1,
     "body":{"mark-moved":{"test":"019ab000-0000-7000-8000-000000000004",
       "mark":"019ab000-0000-7000-8000-0000000000a1","by-s":-8.0}}},
    {"id":"019ab000-0000-7000-8000-0000000000a3","device":"019ab000-0000-7000-8000-000000000001",
     "at":{"ms":1795525920000,"offset-min":-300,"run":8,"run-ms":0.0},
     "about":{"visit":"019ab000-0000-7000-8000-000000000003"},"v":1,
     "body":{"test-resumed":{"test":"019ab000-0000-7000-8000-000000000004",
       "last":{"ms":1795525910000,"offset-min":-300,"run":7,"run-ms":5.0},"slept":true}}}]"#;
    let entries: Vec<Entry> = serde_json::from_str(ADDED).expect("version 1 reads");
    let again = serde_json::to_value(&entries).unwrap();
    assert_eq!(
        again,
        serde_json::from_str::<serde_json::Value>(ADDED).unwrap()
    );
    let first: EntryId = entries[0].id;
    assert!(matches!(entries[1].body, Body::MarkMoved { mark, .. } if mark == first));
}
