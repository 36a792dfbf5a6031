//! Before the test: how far to draw down, what it costs, how long it takes.

use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume::cubic_meter;
use uom::si::volume_rate::cubic_meter_per_second;

use super::drawdown::{DrawTime, draw_time};
use super::fit::{Missing, surface};
use super::reasons::MARGIN;
use super::setup::{FlowRange, Setup};
use crate::physics::Error;
use crate::physics::basin::Basin;
use crate::physics::piping::Liquid;
use crate::physics::piping::valve::{FlowCoefficient, Service};
use crate::quantity::{
    GaugePressure, Length, Pressure, Ratio, ThermodynamicTemperature, Volume, VolumeRate,
};

/// How far past the call level to draw, in metres (1 in): far enough that a
/// reading shows the level below it. Common practice, no source.
const PAST_CALL_M: f64 = 0.0254;

/// What the draw-down depth rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrawBasis {
    /// An inch below the call level.
    PastCallLevel,
    /// The call level lies so low that the pump inlet's limit ends the draw.
    LowLimitFirst,
    /// The call level is not known: down to the pump inlet's limit.
    LowLimit,
    /// Neither is known: half the basin's depth.
    HalfDepth,
}

/// Flow of a valve from its Cv and the mains pressure is good to this part: the
/// pressure as read, the Cv as printed. Common practice, no source.
const VALVE_DOUBT: f64 = 0.15;

/// What a fill valve of this flow coefficient passes from the mains to the open
/// basin, with what Cv and gauge leave open (+/-15 %).
///
/// # Errors
/// As [`Service::flow`]: mains pressure above the atmosphere's and below 10 MPa,
/// Kv 0.0001 to 10,000 m3/h.
pub fn valve_range(
    valve: FlowCoefficient,
    mains: GaugePressure,
    atmosphere: Pressure,
) -> Result<FlowRange, Error> {
    let cold = ThermodynamicTemperature::new::<degree_celsius>(15.0);
    let service = Service {
        inlet: mains.absolute(atmosphere),
        outlet: atmosphere,
        recovery: Ratio::new::<ratio>(0.9),
        liquid: Liquid::water(cold)?,
    };
    let flow = service.flow(valve)?.flow;
    Ok(FlowRange {
        low: flow * (1.0 - VALVE_DOUBT),
        high: flow * (1.0 + VALVE_DOUBT),
    })
}

/// The plan of a refill test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plan {
    /// Level to draw down to, below the overflow lip.
    pub draw_down_to: Length,
    /// Why that level.
    pub basis: DrawBasis,
    /// Water let go, from the stop level (the lip, if that is not known).
    pub volume_spent: Volume,
    /// How long the drawdown takes with the drain open. `None` when there is
    /// nothing to draw.
    pub draw: Option<DrawTime>,
    /// Minutes until the running losses alone draw it down, drain left shut.
    /// `None` with no losses.
    pub minutes_without_drain: Option<f64>,
    /// Net flow to expect while it fills: what the valve passes, or what it gave
    /// in the earlier test, less the running losses. `None` where neither is
    /// known.
    pub expected: Option<FlowRange>,
    /// Shortest and longest minutes to fill it again at that flow. `None` if it
    /// is not known or does not exceed the losses.
    pub fill_minutes: Option<(f64, f64)>,
    /// Minutes the losses alone take from there to the pump inlet's limit, the
    /// drain shut and no water coming. `None` without losses or limit.
    pub minutes_to_limit: Option<f64>,
    /// Minutes the fill may take at most and still cover the need with the
    /// margin. `None` without a need, or when even a pass does not raise the
    /// level against the losses.
    pub longest_passing_minutes: Option<f64>,
    /// How long to watch the level after the shut-off, as a share of the time the
    /// fill took, so that a valve passing a tenth of the fill is seen 39 times in
    /// 40: half an inch of
    /// rise by such a leak tells it. `None` with nothing to fill.
    pub watch_share: Option<f64>,
}

/// How long to watch after the shut-off, with two readings at its beginning and
/// two at its end, as a share of the time of the fill from `call` to `stop`, for a
/// leak of a tenth of the fill to be told from none.
///
/// The slope through two pairs of readings `T` apart has the standard error
/// sd/T. Its 95 % interval is t(9) = 2.26 of that on either side (the spread known
/// beforehand counts as five readings); to lie wholly above nothing 39 times in 40
/// the leak must move the level 2.26 + 1.96 = 4.2 times sd. One reading of a tape
/// on a rippling surface has 3 mm, so half an inch. What the readings in fact
/// ruled out stands in the finding.
fn watch_share(basin: &Basin, call: Length, stop: Length) -> Option<f64> {
    let fill = basin.volume(stop) - basin.volume(call);
    let moved = basin.area_at(stop) * Length::new::<meter>(TOLD_M);
    let share = (moved / fill).get::<ratio>() / LEAK_SHARE;
    (fill > Volume::default() && share.is_finite()).then(|| share.max(0.5))
}

/// A leak that moves the level this far is told from none.
const TOLD_M: f64 = 0.0127;
/// The leak to be told, as a share of the fill.
pub(super) const LEAK_SHARE: f64 = 0.1;

/// Plans a refill test.
///
/// # Errors
/// [`Missing::NoBasin`] unless surface and depth are above zero.
pub fn plan(setup: &Setup) -> Result<Plan, Missing> {
    surface(&setup.basin)?;
    let depth = setup.basin.depth;
    let (draw_down_to, basis) = match (setup.call_level, setup.low_limit) {
        (Some(call), low) => {
            let target = call + Length::new::<meter>(PAST_CALL_M);
            match low.filter(|&low| low < target) {
                Some(low) => (low, DrawBasis::LowLimitFirst),
                None => (target, DrawBasis::PastCallLevel),
            }
        }
        (None, Some(low)) => (low, DrawBasis::LowLimit),
        (None, None) => (depth / 2.0, DrawBasis::HalfDepth),
    };
    let draw_down_to = draw_down_to.min(depth);
    let top = setup.stop_level.unwrap_or_default();
    let spent = setup.basin.volume(top) - setup.basin.volume(draw_down_to);
    let volume_spent = spent.max(Volume::default());
    let spent_m3 = volume_spent.get::<cubic_meter>();
    let loss = setup
        .loss_while_testing
        .get::<cubic_meter_per_second>()
        .max(0.0);
    let minutes = |m3_s: f64| (m3_s > 1e-12).then(|| spent_m3 / m3_s / 60.0);
    let need = setup
        .makeup_need
        .max(setup.design_need.unwrap_or_default())
        .get::<cubic_meter_per_second>();
    let lost = VolumeRate::new::<cubic_meter_per_second>(loss);
    let expected = setup.valve.or(setup.earlier).map(|r| FlowRange {
        low: r.low - lost,
        high: r.high - lost,
    });
    let take = |flow: VolumeRate| minutes(flow.get::<cubic_meter_per_second>());
    Ok(Plan {
        draw_down_to,
        basis,
        volume_spent,
        draw: draw_time(setup, top, draw_down_to),
        minutes_without_drain: minutes(loss),
        expected,
        fill_minutes: expected.and_then(|e| Some((take(e.high)?, take(e.low)?))),
        minutes_to_limit: setup.low_limit.and_then(|low| {
            let left = setup.basin.volume(draw_down_to) - setup.basin.volume(low);
            let left = left.get::<cubic_meter>().max(0.0);
            (loss > 1e-12).then(|| left / loss / 60.0)
        }),
        longest_passing_minutes: if need > 0.0 {
            minutes(MARGIN * need - loss)
        } else {
            None
        },
        watch_share: watch_share(&setup.basin, setup.call_level.unwrap_or(draw_down_to), top),
    })
}

/// What can hurt someone or the plant while a basin is drawn down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Caution {
    /// Machines on this loop lose water if the level falls below the pump inlet.
    PumpInlet,
    /// Splash and mist from tower water can carry Legionella.
    Aerosol,
    /// Treated water may need permission before it goes to a drain.
    Discharge,
    /// Fan and pump locked out before anyone reaches into the basin.
    Lockout,
    /// Control wiring near water: leave live work to those licensed for it.
    LivePower,
    /// A wet roof or ladder.
    Footing,
}

/// The cautions of a refill test, the most pressing first.
pub fn cautions() -> [Caution; 6] {
    use Caution::*;
    [Lockout, PumpInlet, Aerosol, Discharge, LivePower, Footing]
}

#[cfg(test)]
mod tests {
    use uom::si::pressure::pascal;
    use uom::si::volume_rate::gallon_per_minute;

    use super::*;
    use crate::refill::sim::setup;

    fn litres_per_second(v: f64) -> VolumeRate {
        VolumeRate::new::<cubic_meter_per_second>(v * 1e-3)
    }

    #[test]
    fn the_fill_time_is_volume_over_net_flow() {
        // Constant flow on a constant surface, by hand: 6 m2 from 0.30 to
        // 0.10 m below the lip is 1.2 m3; against a loss of 0.15 L/s a valve
        // of 0.30, 0.50, 1.83 L/s takes 133.3, 57.1, 11.9 min.
        let m = Length::new::<meter>;
        let base = Setup {
            call_level: Some(m(0.30 - PAST_CALL_M)),
            stop_level: Some(m(0.10)),
            low_limit: None,
            loss_while_testing: litres_per_second(0.15),
            ..setup()
        };
        for (valve, minutes) in [(0.30, 133.3), (0.50, 57.1), (1.83, 11.9)] {
            let (low, high) = (litres_per_second(valve), litres_per_second(2.0 * valve));
            let valve = Some(FlowRange { low, high });
            let plan = plan(&Setup { valve, ..base }).unwrap();
            assert!((plan.volume_spent.get::<cubic_meter>() - 1.2).abs() < 1e-9);
            let (shortest, longest) = plan.fill_minutes.unwrap();
            assert!((longest - minutes).abs() < 0.05 && shortest < longest);
        }
        let low = litres_per_second(0.1);
        let valve = Some(FlowRange { low, high: low });
        let weak = plan(&Setup { valve, ..base }).unwrap();
        assert_eq!(weak.fill_minutes, None);
    }

    #[test]
    fn the_watch_after_the_stop_tells_a_tenth() {
        // By hand: a tenth of a fill that rose 127 mm moves the level half an inch
        // in the time of that fill, of one that rose 63.5 mm in twice that.
        let m = Length::new::<meter>;
        let share = |rise| watch_share(&setup().basin, m(0.1 + rise), m(0.1));
        assert!((share(0.127).unwrap() - 1.0).abs() < 1e-9);
        assert!((share(0.0635).unwrap() - 2.0).abs() < 1e-9);
        assert_eq!(share(0.0), None);
    }

    #[test]
    fn a_valve_passes_by_its_coefficient_and_the_pressure() {
        // By the definition of Cv: 4 gpm at 1 psi, so at 25 psi 20 gpm.
        let psi = |p| GaugePressure::from_pascals(6_894.757 * p);
        let atmosphere = Pressure::new::<pascal>(101_325.0);
        let range = valve_range(FlowCoefficient::from_cv(4.0), psi(25.0), atmosphere).unwrap();
        let gpm = |v: VolumeRate| v.get::<gallon_per_minute>();
        assert!((gpm(range.low) - 17.0).abs() < 0.05 && (gpm(range.high) - 23.0).abs() < 0.05);
    }

    #[test]
    fn the_pump_inlet_ends_the_draw() {
        let m = Length::new::<meter>;
        let low = Setup {
            call_level: Some(m(0.24)),
            low_limit: Some(m(0.25)),
            ..setup()
        };
        let planned = plan(&low).unwrap();
        assert_eq!(
            (planned.draw_down_to, planned.basis),
            (m(0.25), DrawBasis::LowLimitFirst)
        );
        let blind = Setup {
            call_level: None,
            low_limit: None,
            ..setup()
        };
        assert_eq!(plan(&blind).unwrap().basis, DrawBasis::HalfDepth);
    }
}
