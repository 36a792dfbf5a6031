//! The trace as a whole.

mod brute;
mod scenarios;
mod sense;
mod walk;

use super::*;

fn said(check: Check, answer: Answer, stage: Stage) -> Evidence {
    assert!(
        check.answers().contains(&answer),
        "{check:?} cannot say {answer:?}"
    );
    Evidence::said(check, answer, stage)
}
