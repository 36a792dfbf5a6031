//! Corrections, checks taken again, and what a refill test says to the trace.

use coldsump::record::{Body, case};
use coldsump::trace::{Answer, Check, Mode, Stage, Tracer};

use crate::story::Story;

fn tracer(story: &Story) -> Tracer {
    let visit = story.visit();
    let site = story.log().site(visit.site).expect("a site");
    Tracer::new(&coldsump::record::plant(&site), &case(&site, &visit))
}

#[test]
fn a_check_taken_again_stands_beside_the_first() {
    let mut story = Story::opened();
    story.answer(Check::CoilPull, Answer::NoPull, Stage::Testing);
    let second = story.answer(Check::CoilPull, Answer::Pulls, Stage::Testing);
    let answers = |story: &Story| -> Vec<Answer> {
        let visit = story.visit();
        visit.answers.iter().map(|a| a.evidence.answer).collect()
    };
    assert_eq!(answers(&story), [Answer::NoPull, Answer::Pulls]);
    story.say(Body::Withdrawn { entry: second });
    assert_eq!(answers(&story), [Answer::NoPull]);
}

#[test]
fn a_correction_keeps_its_place_and_can_be_taken_back() {
    let mut story = Story::opened();
    let first = story.answer(Check::CallAsFound, Answer::Calls, Stage::AsFound);
    story.answer(Check::CoilPull, Answer::NoPull, Stage::Testing);
    let mode = Mode::CoilOpen;
    let entry = story.say(Body::Corrected { mode });
    story.answer(Check::CoilPull, Answer::Pulls, Stage::Corrected);
    let visit = story.visit();
    assert_eq!(
        (visit.corrections[0].mode, visit.corrections[0].after),
        (mode, 2)
    );
    assert_eq!(visit.corrected[0].0, entry);
    // What came before it may be taken back: it comes after one less.
    story.say(Body::Withdrawn { entry: first });
    assert_eq!(story.visit().corrections[0].after, 1);
    story.say(Body::Withdrawn { entry });
    let visit = story.visit();
    assert!(visit.corrections.is_empty() && visit.corrected.is_empty());
}

/// A refill test that was run to its end is evidence, once, and only of what
/// was so when it was run.
#[test]
fn a_refill_test_speaks_to_the_trace() {
    let mut story = Story::opened();
    story.as_found();
    let none = |t: &Tracer| format!("{t:?}").matches("RefillTest").count();
    assert_eq!(none(&tracer(&story)), 0);
    story.begin_test();
    assert_eq!(none(&tracer(&story)), 0, "not run to its end");
    let mut passed = Story::opened();
    passed.as_found();
    passed.passing_test();
    let said = format!("{:?}", tracer(&passed));
    assert!(
        said.contains("RefillTest") && said.contains("Refilled"),
        "{said}"
    );
    // Said in words as well, it counts once.
    passed.answer(Check::RefillTest, Answer::Refilled, Stage::Testing);
    assert_eq!(none(&tracer(&passed)), 1);
    // After a correction, the test before it says nothing of what remains.
    let mut corrected = Story::opened();
    corrected.as_found();
    corrected.passing_test();
    let mode = Mode::ProbeFilm;
    corrected.say(Body::Corrected { mode });
    assert_eq!(none(&tracer(&corrected)), 0);
    let mut proven = Story::opened();
    proven.as_found();
    proven.say(Body::Corrected { mode });
    proven.passing_test();
    assert_eq!(none(&tracer(&proven)), 1);
    let mut failed = Story::opened();
    failed.as_found();
    failed.failing_test();
    let said = format!("{:?}", tracer(&failed));
    assert!(
        said.contains("RefilledSlowly") || said.contains("DidNotRefill"),
        "{said}"
    );
}
