//! The numbers of a visit against sources outside this program, and what the
//! trace makes of its readings.

use coldsump::quantity::{Length, Unit};
use coldsump::record::{
    Fact, Figures, Lack, Machine, MachineState, Need, Site, What, When, observed, plant,
    refill_setup,
};
use coldsump::trace::{Check, Manner, Mode, Place, advise, infer};
use uom::si::length::{foot, inch};
use uom::si::power::kilowatt;
use uom::si::temperature_interval::degree_fahrenheit as interval;
use uom::si::thermodynamic_temperature::degree_fahrenheit;
use uom::si::time::minute;
use uom::si::volume_rate::gallon_per_minute;

use crate::story::Story;

fn figures(story: &Story) -> Figures {
    Figures::of(&story.site, &story.visit())
}

fn near(ours: f64, want: f64, within: f64) {
    assert!((ours - want).abs() <= within, "{ours} against {want}");
}

#[test]
fn the_numbers_agree_with_published_ones() {
    let mut story = Story::opened();
    story.site.altitude = Some(Length::new::<foot>(0.0));
    story.as_found();
    let f = figures(&story);
    // 95 F, 47 %, sea level: PsychroLib 2.5.0.
    let wet = f.wet_bulb.unwrap().get::<degree_fahrenheit>();
    near(wet, 77.89, 0.05);
    near(f.approach.unwrap().get::<interval>(), 88.0 - 77.89, 0.05);
    near(f.range.unwrap().get::<interval>(), 10.0, 1e-6);
    // The trade's 500 factor: 180 gpm x 500 x 10 F = 900,000 Btu/h = 263.8 kW.
    near(f.heat.unwrap().get::<kilowatt>(), 263.76, 2.7);
    // About 1 % of the flow for 10 F: US DOE FEMP, Cooling Tower Management.
    let evaporation = f.evaporation.unwrap().rate().get::<gallon_per_minute>();
    near(evaporation, 1.8, 0.18);
    // Makeup = E x C / (C - 1) at four cycles, by hand.
    let makeup = f.water.unwrap().makeup.get::<gallon_per_minute>();
    near(makeup, evaporation * 4.0 / 3.0, 0.01);
    // 9 x 7 ft, 11 1/2 of 16 in down: 63 ft2 x 4.5/12 ft x 7.48052 gal/ft3.
    near(
        f.to_dry.unwrap().get::<minute>(),
        63.0 * 0.375 * 7.480_52 / makeup,
        0.1,
    );
    near(
        f.to_inlet.unwrap().get::<minute>(),
        63.0 * 0.5 / 12.0 * 7.480_52 / makeup,
        0.05,
    );
    assert!(f.flow_assumed);
}

#[test]
fn a_tower_at_its_design_point_gives_its_own_approach_back() {
    let mut story = Story::opened();
    story.read(When::AsFound, What::EnteringWater, 85.0, Unit::Fahrenheit);
    story.read(When::AsFound, What::LeavingWater, 95.0, Unit::Fahrenheit);
    story.read(When::AsFound, What::WetBulb, 78.0, Unit::Fahrenheit);
    let f = figures(&story);
    near(f.expected_approach.unwrap().get::<interval>(), 7.0, 0.1);
    near(f.approach.unwrap().get::<interval>(), 7.0, 0.001);
}

#[test]
fn altitude_lowers_the_wet_bulb() {
    // 90 F, 50 % at 5280 ft: 74.13 F, PsychroLib 2.5.0.
    let mut story = Story::opened();
    story.site.altitude = Some(Length::new::<foot>(5280.0));
    story.read(When::AsFound, What::DryBulb, 90.0, Unit::Fahrenheit);
    story.read(When::AsFound, What::Humidity, 50.0, Unit::Percent);
    near(
        figures(&story).wet_bulb.unwrap().get::<degree_fahrenheit>(),
        74.13,
        0.05,
    );
}

#[test]
fn what_is_missing_is_named() {
    let f = figures(&Story::opened());
    assert_eq!(f.known(), 0);
    assert_eq!(
        f.wet_bulb,
        Err(Lack::readings(&[What::DryBulb, What::Humidity]))
    );
    assert_eq!(
        f.range,
        Err(Lack::readings(&[What::EnteringWater, What::LeavingWater]))
    );
    let mut story = Story::opened();
    story.read(When::AsFound, What::EnteringWater, 98.0, Unit::Fahrenheit);
    story.read(When::AsFound, What::LeavingWater, 98.0, Unit::Fahrenheit);
    story.read(When::AsFound, What::WaterFlow, 90.0, Unit::GallonPerMinute);
    let f = figures(&story);
    assert_eq!(f.range, Err(Lack::NoRange));
    assert_eq!(f.heat, Err(Lack::NoRange));
    near(f.flow.unwrap().get::<gallon_per_minute>(), 90.0, 1e-4);
    assert!(!f.flow_assumed);
}

#[test]
fn a_site_of_which_only_the_name_is_known_gives_what_it_can() {
    let needs = |facts: &[Fact]| Lack::Needs(facts.iter().map(|f| Need::Fact(*f)).collect());
    let mut story = Story::opened();
    story.as_found();
    let machines = std::mem::take(&mut story.site.machines);
    story.site = Site {
        name: "Somewhere".into(),
        machines: machines
            .into_iter()
            .map(|m| Machine {
                refrigerant: None,
                cut_out: None,
                ..m
            })
            .collect(),
        ..Site::default()
    };
    let f = figures(&story);
    // Air and water temperatures need no plate.
    assert!(f.sea_level_assumed && f.wet_bulb.is_ok());
    assert!(f.approach.is_ok() && f.range.is_ok());
    // The rest says which fact is missing.
    assert_eq!(f.heat, Err(needs(&[Fact::DesignFlow])));
    assert_eq!(f.water, Err(needs(&[Fact::DesignFlow])));
    let design = [Fact::DesignWetBulb, Fact::DesignIn, Fact::DesignOut];
    assert_eq!(f.expected_approach, Err(needs(&design)));
    assert_eq!(f.to_dry, Err(needs(&[Fact::Basin, Fact::DesignFlow])));
    let inlet = [Fact::Basin, Fact::InletLevel, Fact::DesignFlow];
    assert_eq!(f.to_inlet, Err(needs(&inlet)));
    assert_eq!(f.heads.len(), 6);
    for head in &f.heads {
        assert_eq!(head.condensing, Err(needs(&[Fact::Refrigerant])));
    }
    let visit = story.visit();
    assert_eq!(
        refill_setup(&story.site, &visit),
        Err(needs(&[Fact::Basin]))
    );
    // The trace still reasons from what was seen.
    let belief = infer(&plant(&story.site), &observed(&story.site, &visit), &[]);
    assert!(!belief.suspects.is_empty());
}

#[test]
fn a_level_over_the_lip_is_a_full_basin() {
    let mut story = Story::opened();
    story.as_found();
    let to_dry = |inches| {
        let mut story = Story::opened();
        story.as_found();
        story.read(When::AsFound, What::BasinLevel, inches, Unit::Inch);
        figures(&story).to_dry
    };
    assert_eq!(to_dry(-0.5), to_dry(0.0));
}

#[test]
fn low_on_arrival_and_sound_under_test_is_an_intermittent_false_full() {
    let mut story = Story::opened();
    story.as_found();
    story.all_works();
    let visit = story.visit();
    let (plant, seen) = (plant(&story.site), observed(&story.site, &visit));
    assert_eq!((seen.machines_out, seen.machines_total), (Some(3), Some(6)));
    let belief = infer(&plant, &seen, &visit.evidence());
    assert_eq!(belief.suspects[0].mode, Mode::ProbeFilm);
    assert_eq!(belief.suspects[0].manner(), Manner::Intermittent);
    let early = &visit.evidence()[..2];
    let next = advise(&plant, &seen, early, Place::Roof).best.unwrap();
    let sensible = [
        Check::CallAsFound,
        Check::FoamLook,
        Check::LevelNow,
        Check::ProbeDried,
    ];
    assert!(sensible.contains(&next.check), "{next:?}");
}

#[test]
fn with_machines_out_the_need_is_the_design_need() {
    let mut story = Story::opened();
    for n in 0..6 {
        story.see(When::AsFound, n, MachineState::HighHead);
    }
    story.read(When::AsFound, What::EnteringWater, 92.0, Unit::Fahrenheit);
    story.read(When::AsFound, What::LeavingWater, 92.0, Unit::Fahrenheit);
    let setup = refill_setup(&story.site, &story.visit()).unwrap();
    // Nothing is rejected, so nothing is needed today: the design day judges.
    near(setup.makeup_need.get::<gallon_per_minute>(), 0.0, 1e-9);
    assert!(setup.design_need.unwrap() > setup.makeup_need);
    near(
        setup.loss_while_testing.get::<gallon_per_minute>(),
        0.0,
        1e-9,
    );
    near(setup.call_level.unwrap().get::<inch>(), 6.0, 1e-9);
}
