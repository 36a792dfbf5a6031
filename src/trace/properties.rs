//! What must hold for any evidence at all.

use proptest::prelude::*;
use uom::si::electric_potential::volt;
use uom::si::length::meter;
use uom::si::temperature_interval::kelvin;

use super::*;
use crate::quantity::{ElectricPotential, GaugePressure, Length, TemperatureInterval};

fn any_evidence() -> impl Strategy<Value = Evidence> {
    let check = proptest::sample::select(Check::ALL.to_vec());
    (check, 0..5usize, any::<bool>()).prop_map(|(check, answer, testing)| Evidence {
        check,
        // One past the end is "could not", two past is an answer the check
        // cannot have.
        answer: match check.answers().get(answer) {
            Some(a) => *a,
            None if answer < 4 => Answer::CouldNot,
            None if check == Check::CoilPull => Answer::Foam,
            None => Answer::Pulls,
        },
        stage: if testing {
            Stage::Testing
        } else {
            Stage::AsFound
        },
    })
}

fn any_observed() -> impl Strategy<Value = Observed> {
    let number = || proptest::option::of(prop_oneof![4 => -50.0..400.0f64, 1 => any::<f64>()]);
    let machines = proptest::option::of(any::<u8>());
    (
        machines,
        number(),
        number(),
        number(),
        number(),
        number(),
        number(),
    )
        .prop_map(
            |(machines_out, range, approach, level, inlet, volts, head)| {
                let k = |v: f64| TemperatureInterval::new::<kelvin>(v);
                Observed {
                    machines_out,
                    head: head.map(GaugePressure::from_pascals),
                    head_usual: Some(GaugePressure::from_pascals(100.0)),
                    range: range.map(k),
                    design_range: Some(k(5.5)),
                    approach: approach.map(k),
                    predicted_approach: Some(k(4.0)),
                    basin_below_overflow: level.map(|v| Length::new::<meter>(v / 500.0)),
                    call_level: Some(Length::new::<meter>(0.1)),
                    pump_inlet: inlet.map(|v| GaugePressure::from_pascals(v * 100.0)),
                    control_voltage: volts.map(ElectricPotential::new::<volt>),
                    ..Observed::default()
                }
            },
        )
}

fn assert_sound(belief: &Belief) -> Result<(), TestCaseError> {
    prop_assert_eq!(belief.suspects.len(), Mode::ALL.len());
    for s in &belief.suspects {
        prop_assert!((0.0..=1.0).contains(&s.probability), "{:?}", s);
        prop_assert!(
            (s.steady + s.intermittent - s.probability).abs() < 1e-9,
            "{:?}",
            s
        );
        prop_assert!(
            s.mode.can_be_intermittent() || s.intermittent == 0.0,
            "{:?}",
            s
        );
    }
    // Up to two faults at once, and at least one unless nothing is wrong.
    let sum: f64 = belief.suspects.iter().map(|s| s.probability).sum();
    prop_assert!(
        sum + belief.nothing > 1.0 - 1e-9 && sum < 2.0 + 1e-9,
        "{}",
        sum
    );
    prop_assert!((0.0..=1.0).contains(&belief.nothing));
    prop_assert!(belief.entropy.is_finite() && belief.entropy >= 0.0);
    prop_assert!((0.0..=1.0 + 1e-9).contains(&belief.best.1));
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 32, failure_persistence: None, ..Default::default() })]

    #[test]
    fn belief_is_sound_and_blind_to_order(
        (evidence, shuffled) in proptest::collection::vec(any_evidence(), 0..14)
            .prop_flat_map(|v| (Just(v.clone()), Just(v).prop_shuffle())),
        observed in any_observed(),
    ) {
        let plant = Plant::default();
        let one = infer(&plant, &observed, &evidence);
        let two = infer(&plant, &observed, &shuffled);
        assert_sound(&one)?;
        for s in &one.suspects {
            let t = two.suspects.iter().find(|t| t.mode == s.mode).expect("listed");
            prop_assert!((s.probability - t.probability).abs() < 1e-9);
        }
        prop_assert!((one.entropy - two.entropy).abs() < 1e-6);
        for weight in why(&plant, &observed, &evidence, one.suspects[0].mode) {
            prop_assert!(weight.log10_odds.is_finite());
        }
    }

    #[test]
    fn advice_never_asks_twice_and_ends(
        picks in proptest::collection::vec(0..5usize, 25),
        observed in any_observed(),
        machines in any::<u8>(),
    ) {
        let plant = Plant { machines, ..Plant::default() };
        let mut evidence: Vec<Evidence> = Vec::new();
        let mut at = Place::MachineRoom;
        let mut picks = picks.into_iter();
        loop {
            let advice = advise(&plant, &observed, &evidence, at);
            for s in advice.best.iter().chain(&advice.runners_up) {
                prop_assert!(evidence.iter().all(|e| e.check != s.check), "{:?} again", s);
                prop_assert!(s.gain_bits.is_finite() && s.gain_bits >= 0.0);
                prop_assert_eq!(s.walk_minutes, at.walk_minutes(s.check.place()));
            }
            let Some(best) = advice.best else { break };
            let pick = picks.next().expect("more steps than checks");
            let answer = best.check.answers().get(pick).copied().unwrap_or(Answer::CouldNot);
            evidence.push(Evidence {
                check: best.check,
                answer,
                stage: best.check.stage_after(&evidence),
            });
            at = best.check.place();
        }
        assert_sound(&infer(&plant, &observed, &evidence))?;
    }
}

#[test]
fn an_absurd_count_does_not_kill_the_belief() {
    let plant = Plant {
        machines: 2,
        ..Plant::default()
    };
    let three = Evidence {
        check: Check::MachinesOut,
        answer: Answer::ThreeOrMore,
        stage: Stage::AsFound,
    };
    let belief = infer(&plant, &Observed::default(), &[three]);
    assert!(
        belief.suspects.iter().all(|s| s.probability > 0.0),
        "{belief:?}"
    );
    let many = Observed {
        machines_out: Some(255),
        machines_total: Some(255),
        ..Observed::default()
    };
    let belief = infer(&plant, &many, &[three]);
    assert!(
        belief.suspects.iter().all(|s| s.probability > 0.0),
        "{belief:?}"
    );
}

#[test]
fn could_not_and_repeats_change_nothing() {
    let (plant, observed) = (Plant::default(), Observed::default());
    let dark = Evidence {
        check: Check::CallAsFound,
        answer: Answer::Dark,
        stage: Stage::AsFound,
    };
    let once = infer(&plant, &observed, &[dark]);
    assert_eq!(once, infer(&plant, &observed, &[dark, dark]));
    let mut all = vec![dark];
    for check in Check::ALL {
        all.push(Evidence {
            check,
            answer: Answer::CouldNot,
            stage: Stage::Testing,
        });
    }
    assert_eq!(once, infer(&plant, &observed, &all));
}
