//! What a visit already knows of the inputs of the workings.

use coldsump::quantity::{Unit, Value};
use coldsump::record::{KnownInput, What, When, known_input};
use coldsump::working::Ask;

use crate::story::Story;

/// The value of an input that the site gives, in SI.
fn value(story: &Story, ask: Ask) -> Option<Value> {
    match known_input(&story.site, &story.visit(), ask)? {
        KnownInput::Value(value) => Some(value),
        other => panic!("{ask:?} is {other:?}"),
    }
}

#[test]
fn the_site_gives_what_stands_in_it() {
    let story = Story::opened();
    let tower = &story.site.tower;
    for (ask, want) in [
        (Ask::InletDepth, tower.inlet_level.map(Value::level)),
        (Ask::SetCycles, Some(Value::number(tower.cycles))),
        (
            Ask::ControlVoltage,
            story.site.control_voltage.map(Value::voltage),
        ),
        (
            Ask::MachineHeat,
            story.site.machines[0].rejects.map(Value::heat),
        ),
        (Ask::Machines, Some(Value::number(6.0))),
    ] {
        assert_eq!(value(&story, ask), want, "{ask:?}");
        assert!(want.is_some(), "{ask:?}");
    }
    // 63 ft2 x 13 in and 3 min of 180 gpm, by hand.
    let loop_water = value(&story, Ask::LoopVolume).unwrap();
    assert!((loop_water.si - 3.98).abs() < 0.01, "{loop_water:?}");
}

#[test]
fn a_reading_is_given_as_it_was_typed() {
    let mut story = Story::opened();
    let microsiemens = Unit::MicrosiemensPerCentimetre;
    story.read(When::AsFound, What::Conductivity, 1480.0, microsiemens);
    for ask in [Ask::BasinConductivity, Ask::ProbeWater] {
        let known = known_input(&story.site, &story.visit(), ask);
        assert!(
            matches!(&known, Some(KnownInput::Typed(_, unit)) if *unit == microsiemens),
            "{ask:?}: {known:?}"
        );
    }
}

#[test]
fn an_unknown_stop_level_counts_the_basin_brimful() {
    let mut story = Story::opened();
    story.site.tower.stop_level = None;
    let brimful = value(&story, Ask::LoopVolume).unwrap();
    // 63 ft2 x 16 in and 3 min of 180 gpm, by hand.
    let basin = 63.0 * (16.0 / 12.0) * 0.028_316_85;
    assert!((brimful.si - (basin + 2.044)).abs() < 0.01, "{brimful:?}");
    story.site.tower.basin = None;
    assert_eq!(value(&story, Ask::LoopVolume), None);
}
