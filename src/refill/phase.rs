//! Where the test stands, and which mark comes next.

use super::mark::{ExpectedMark, Mark, MarkKind, in_order};

/// Where the test stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Nothing done yet.
    NotBegun,
    /// The drain is open, no call seen yet.
    DrawingDown,
    /// The drain is closed, no call seen yet.
    WaitingForCall,
    /// The control calls, no water seen yet.
    WaitingForWater,
    /// Water is running.
    Filling,
    /// The fill stopped by itself; the level shows whether it holds.
    FillStopped,
    /// The tester ended the test.
    Stopped,
}

/// Where the test stands after these marks, in whatever order they arrive.
pub fn phase(marks: &[Mark]) -> Phase {
    in_order(marks)
        .iter()
        .fold(Phase::NotBegun, |now, mark| step(now, mark.kind))
}

fn step(now: Phase, kind: MarkKind) -> Phase {
    use Phase::*;
    match (now, kind) {
        (_, MarkKind::Stopped) | (Stopped, _) => Stopped,
        (_, MarkKind::ShutOff) => FillStopped,
        (_, MarkKind::WaterSeen) => Filling,
        (Filling, MarkKind::CallSeen) => Filling,
        (_, MarkKind::CallSeen) => WaitingForWater,
        (NotBegun | WaitingForCall | FillStopped, MarkKind::DrawdownBegan) => DrawingDown,
        (NotBegun | DrawingDown, MarkKind::DrawdownEnded) => WaitingForCall,
        (same, _) => same,
    }
}

/// Whether the drain stands open after these marks.
pub fn drain_open(marks: &[Mark]) -> bool {
    in_order(marks)
        .iter()
        .fold(false, |open, mark| match mark.kind {
            MarkKind::DrawdownBegan => true,
            MarkKind::DrawdownEnded => false,
            _ => open,
        })
}

/// The mark most likely to come next: the one big button. `None` once the
/// tester ended the test.
pub fn expected(marks: &[Mark]) -> Option<ExpectedMark> {
    Some(match phase(marks) {
        Phase::NotBegun => ExpectedMark::DrawdownBegan,
        Phase::DrawingDown | Phase::WaitingForCall => ExpectedMark::CallSeen,
        Phase::WaitingForWater => ExpectedMark::WaterSeen,
        Phase::Filling | Phase::FillStopped if drain_open(marks) => ExpectedMark::DrawdownEnded,
        Phase::Filling => ExpectedMark::ShutOff,
        Phase::FillStopped => ExpectedMark::Stopped,
        Phase::Stopped => return None,
    })
}

/// The other marks that make sense now, the expected one left out. A level
/// reading is welcome in every phase; marks in any other order are still
/// accepted by everything in this room.
pub fn allowed(marks: &[Mark]) -> Vec<ExpectedMark> {
    use ExpectedMark::*;
    let now = phase(marks);
    if now == Phase::Stopped {
        return Vec::new();
    }
    let waiting = matches!(
        now,
        Phase::NotBegun | Phase::DrawingDown | Phase::WaitingForCall
    );
    let open = drain_open(marks);
    let next = expected(marks);
    [
        (Level, true),
        (DrawdownBegan, !open),
        (DrawdownEnded, open),
        (CallSeen, waiting || now == Phase::FillStopped),
        (WaterSeen, now != Phase::Filling),
        (
            ShutOff,
            matches!(now, Phase::Filling | Phase::WaitingForWater),
        ),
        (Interrupted, now != Phase::NotBegun),
        (Stopped, now != Phase::NotBegun),
    ]
    .into_iter()
    .filter(|&(mark, sensible)| sensible && Some(mark) != next)
    .map(|(mark, _)| mark)
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marks(kinds: &[MarkKind]) -> Vec<Mark> {
        kinds
            .iter()
            .enumerate()
            .map(|(i, &kind)| Mark::new(i as f64 * 60.0, kind))
            .collect()
    }

    #[test]
    fn the_big_button_walks_the_test_through() {
        use MarkKind as K;
        let steps = [
            (
                K::DrawdownBegan,
                Phase::DrawingDown,
                Some(ExpectedMark::CallSeen),
            ),
            (
                K::CallSeen,
                Phase::WaitingForWater,
                Some(ExpectedMark::WaterSeen),
            ),
            (
                K::WaterSeen,
                Phase::Filling,
                Some(ExpectedMark::DrawdownEnded),
            ),
            (
                K::DrawdownEnded,
                Phase::Filling,
                Some(ExpectedMark::ShutOff),
            ),
            (K::ShutOff, Phase::FillStopped, Some(ExpectedMark::Stopped)),
            (K::Stopped, Phase::Stopped, None),
        ];
        let mut so_far = Vec::new();
        assert_eq!(expected(&[]), Some(ExpectedMark::DrawdownBegan));
        for (kind, then, next) in steps {
            so_far.push(kind);
            let now = marks(&so_far);
            assert_eq!(
                (phase(&now), expected(&now)),
                (then, next),
                "after {kind:?}"
            );
            assert!(next.is_none_or(|next| !allowed(&now).contains(&next)));
        }
        assert!(allowed(&marks(&so_far)).is_empty());
    }

    #[test]
    fn water_without_a_call_is_taken_as_filling() {
        let now = marks(&[
            MarkKind::DrawdownBegan,
            MarkKind::DrawdownEnded,
            MarkKind::WaterSeen,
        ]);
        assert_eq!(phase(&now), Phase::Filling);
        assert_eq!(expected(&now), Some(ExpectedMark::ShutOff));
    }

    #[test]
    fn an_interruption_leaves_the_phase_and_a_second_cycle_starts_over() {
        let mut kinds = vec![MarkKind::DrawdownBegan, MarkKind::Interrupted];
        assert_eq!(phase(&marks(&kinds)), Phase::DrawingDown);
        kinds.extend([
            MarkKind::DrawdownEnded,
            MarkKind::CallSeen,
            MarkKind::WaterSeen,
        ]);
        kinds.extend([MarkKind::ShutOff, MarkKind::DrawdownBegan]);
        assert_eq!(phase(&marks(&kinds)), Phase::DrawingDown);
    }
}
