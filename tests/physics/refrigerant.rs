//! Refrigerant saturation.

use coldsump::physics::refrigerant::Refrigerant::{self, *};
use coldsump::physics::{Error, Quantity};
use coldsump::quantity::{GaugePressure, Pressure};
use proptest::prelude::*;
use uom::si::pressure::{pascal, psi};

use crate::grid::{Accuracy, Grid};
use crate::{SEA, c, f, near, pa, to_c, to_f, within_part};

/// What a gauge at sea level reads.
fn psig(p: Pressure) -> f64 {
    GaugePressure::from_absolute(p, pa(SEA)).pascals() / 6894.757
}

/// A published R-410A service chart, psig against F.
#[test]
fn r410a_matches_a_service_chart() {
    for (t, want) in [
        (75.0, 218.0),
        (85.0, 255.0),
        (95.0, 295.0),
        (100.0, 318.0),
        (105.0, 341.0),
        (110.0, 365.0),
        (115.0, 391.0),
        (120.0, 418.0),
        (130.0, 477.0),
        (140.0, 541.0),
    ] {
        let got = psig(R410A.bubble_pressure(f(t)).unwrap());
        within_part(got, want, 0.006, &format!("R-410A at {t} F"));
    }
}

/// Computed with CoolProp 8.0.0: glide in kelvin at the 40 C bubble pressure.
#[test]
fn glide_matches_coolprop() {
    for (fluid, glide) in [
        (R407C, 4.9),
        (R448A, 5.0),
        (R449A, 4.7),
        (R454B, 1.5),
        (R404A, 0.34),
        (R410A, 0.12),
        (R507A, 0.04),
        (R513A, 0.0),
    ] {
        let p = fluid.bubble_pressure(c(40.0)).unwrap();
        let got = to_c(fluid.dew_temperature(p).unwrap()) - 40.0;
        near(
            got,
            glide,
            0.08,
            &format!("glide of {}", fluid.designation()),
        );
    }
}

/// Computed with CoolProp 8.0.0: psig at 105 F condensing, dew and bubble.
pub const HEAD_AT_105: [(Refrigerant, f64, f64); 14] = [
    (R22, 210.8, 210.8),
    (R134a, 135.0, 135.0),
    (R410A, 340.8, 341.9),
    (R407C, 212.1, 242.4),
    (R404A, 252.1, 254.2),
    (R454B, 313.5, 325.4),
    (R448A, 229.5, 262.1),
    (R449A, 228.4, 258.4),
    (R32, 349.6, 349.6),
    (R1234zeE, 98.2, 98.2),
    (R1233zdE, 17.2, 17.2),
    (R123, 8.1, 8.1),
    (R507A, 259.8, 259.8),
    (R513A, 142.2, 142.2),
];

#[test]
fn head_at_105_fahrenheit() {
    for (fluid, dew, bubble) in HEAD_AT_105 {
        let tolerance = |want: f64| 0.0015 * (want + 14.7) + 0.05;
        near(
            psig(fluid.dew_pressure(f(105.0)).unwrap()),
            dew,
            tolerance(dew),
            "dew",
        );
        near(
            psig(fluid.bubble_pressure(f(105.0)).unwrap()),
            bubble,
            tolerance(bubble),
            "bubble",
        );
    }
}

/// Computed with CoolProp 8.0.0: psig on the dew line at 120 and 135 F.
#[test]
fn head_at_120_and_135_fahrenheit() {
    for (fluid, at_120, at_135) in [
        (R22, 260.0, 316.7),
        (R134a, 171.2, 213.6),
        (R410A, 418.0, 508.0),
        (R407C, 266.0, 329.0),
        (R404A, 310.0, 377.0),
        (R507A, 319.0, 388.0),
        (R32, 429.0, 522.0),
        (R454B, 386.0, 469.0),
        (R513A, 179.0, 221.0),
        (R1234zeE, 126.0, 158.0),
        (R123, 15.1, 23.6),
        (R1233zdE, 26.5, 37.8),
        (R448A, 286.0, 352.0),
        (R449A, 284.0, 350.0),
    ] {
        for (t, want) in [(120.0, at_120), (135.0, at_135)] {
            let got = psig(fluid.dew_pressure(f(t)).unwrap());
            near(
                got,
                want,
                0.0015 * want + 0.6,
                &format!("{} at {t}", fluid.designation()),
            );
        }
    }
}

/// Computed with CoolProp 8.0.0: bubble psig as condenser water flow falls and
/// condensing rises from 105 F to 149.4 F.
#[test]
fn head_while_the_flow_falls() {
    for (t, r410a, r22, r134a) in [
        (105.0, 342.0, 211.0, 135.0),
        (108.9, 361.0, 223.0, 144.0),
        (116.4, 400.0, 248.0, 162.0),
        (131.2, 486.0, 302.0, 202.0),
        (149.4, 609.0, 379.0, 261.0),
    ] {
        for (fluid, want) in [(R410A, r410a), (R22, r22), (R134a, r134a)] {
            let got = psig(fluid.bubble_pressure(f(t)).unwrap());
            near(
                got,
                want,
                0.0015 * want + 0.8,
                &format!("{} at {t}", fluid.designation()),
            );
        }
    }
}

/// Computed with CoolProp 8.0.0: where a head-pressure cut-out sits.
#[test]
fn condensing_temperature_at_a_cutout() {
    for (fluid, cutout, fahrenheit) in [
        (R22, 275.0, 124.0),
        (R22, 325.0, 137.0),
        (R22, 350.0, 143.0),
        (R134a, 180.0, 123.0),
        (R134a, 200.0, 130.0),
        (R134a, 235.0, 142.0),
        (R410A, 500.0, 134.0),
        (R410A, 550.0, 141.0),
        (R410A, 600.0, 148.0),
        (R410A, 630.0, 152.0),
        (R404A, 375.0, 134.4),
        (R404A, 395.0, 139.0),
        (R507A, 395.0, 137.0),
        (R32, 550.0, 139.0),
        (R513A, 185.0, 122.0),
        (R513A, 200.0, 128.0),
        (R123, 8.0, 105.0),
        (R123, 12.0, 114.0),
        (R1233zdE, 20.0, 110.0),
        (R1233zdE, 25.0, 118.0),
        (R32, 600.0, 146.0),
        (R1234zeE, 150.0, 131.0),
        (R123, 15.0, 120.0),
    ] {
        let head = GaugePressure::from_pascals(cutout * 6894.757);
        let got = fluid.condensing(head, pa(SEA)).unwrap();
        near(
            to_f(got.mean),
            fahrenheit,
            0.6,
            &format!("{} at {cutout}", fluid.designation()),
        );
    }
}

#[test]
fn a_gauge_reads_more_at_altitude_for_the_same_condensing() {
    let p = R134a.dew_pressure(f(105.0)).unwrap();
    let low = GaugePressure::from_absolute(p, pa(SEA));
    let high = GaugePressure::from_absolute(p, pa(83_431.0));
    let more = Pressure::new::<pascal>(high.pascals() - low.pascals());
    near(more.get::<psi>(), 2.6, 0.05, "psi more at 1609 m");
    let at = |g, air| to_f(R134a.condensing(g, pa(air)).unwrap().mean);
    near(at(low, SEA), 105.0, 1e-6, "sea level");
    near(at(high, 83_431.0), 105.0, 1e-6, "1609 m");
}

#[test]
fn near_critical_is_refused_with_the_bounds() {
    let error = R410A.bubble_pressure(c(70.0)).unwrap_err();
    let Error::OutOfRange {
        quantity,
        value,
        low,
        high,
    } = error
    else {
        panic!("{error:?}")
    };
    assert_eq!(quantity, Quantity::SaturationTemperature);
    near(value, 343.15, 1e-9, "value");
    near(low, 273.15, 1e-9, "low");
    near(high, 342.15, 1e-9, "high");
    let error = R410A.bubble_temperature(pa(5e6)).unwrap_err();
    assert!(matches!(
        error,
        Error::OutOfRange {
            quantity: Quantity::SaturationPressure,
            ..
        }
    ));
}

#[test]
fn names_are_written_as_on_a_nameplate() {
    for fluid in Refrigerant::ALL {
        let json = serde_json::to_string(&fluid).unwrap();
        assert_eq!(json, format!("\"{}\"", fluid.designation()));
        assert_eq!(serde_json::from_str::<Refrigerant>(&json).unwrap(), fluid);
    }
}

proptest! {
    #[test]
    fn pressure_and_temperature_are_inverse(i in 0..14usize, t in 0.0..=68.0f64) {
        let fluid = Refrigerant::ALL[i];
        let bubble = fluid.bubble_temperature(fluid.bubble_pressure(c(t)).unwrap()).unwrap();
        prop_assert!((to_c(bubble) - t).abs() < 1e-6);
        let dew = fluid.dew_temperature(fluid.dew_pressure(c(t)).unwrap()).unwrap();
        prop_assert!((to_c(dew) - t).abs() < 1e-6);
    }

    #[test]
    fn pressure_rises_with_temperature(i in 0..14usize, t in 0.0..67.9f64) {
        let fluid = Refrigerant::ALL[i];
        let next = c(t + 0.1);
        prop_assert!(fluid.bubble_pressure(next).unwrap() > fluid.bubble_pressure(c(t)).unwrap());
        prop_assert!(fluid.dew_pressure(next).unwrap() > fluid.dew_pressure(c(t)).unwrap());
    }

    #[test]
    fn the_dew_line_lies_under_the_bubble_line(i in 0..14usize, t in 0.0..=68.0f64) {
        let fluid = Refrigerant::ALL[i];
        let (dew, bubble) = (fluid.dew_pressure(c(t)).unwrap(), fluid.bubble_pressure(c(t)).unwrap());
        // Azeotropes touch: the fits cross there by less than their error.
        prop_assert!(dew <= bubble * 1.0002, "{dew:?} {bubble:?}");
    }

    #[test]
    fn the_pressure_for_a_condensing_temperature_gives_it_back(
        i in 0..14usize, t in 4.0..=66.0f64, air in 5e4..1.1e5f64,
    ) {
        let fluid = Refrigerant::ALL[i];
        let p = fluid.condensing_pressure(c(t)).unwrap();
        let head = GaugePressure::from_absolute(p, pa(air));
        let mean = fluid.condensing(head, pa(air)).unwrap().mean;
        prop_assert!((to_c(mean) - t).abs() < 1e-6, "{} for {t}", to_c(mean));
    }
}

/// Bubble and dew line at every kelvin, both ways.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/refrigerant.csv"));
    let of = |what, tolerance, unit| Accuracy::of(what, "CoolProp 8.0.0", tolerance, unit);
    let mut pressures = of("Refrigerant pressure, 14 fluids", 0.1, "%");
    let mut temperatures = of("Saturation temperature, 14 fluids", 0.03, "K");
    for row in grid.rows() {
        let fluid = Refrigerant::ALL
            .into_iter()
            .find(|f| f.designation() == row.word("refrigerant"))
            .unwrap_or_else(|| panic!("{}", row.said()));
        let (t, p) = (row.number("celsius"), row.number("pressure_pa"));
        let at_pressure = |line: &str, p| match line {
            "dew" => fluid.dew_temperature(p),
            _ => fluid.bubble_temperature(p),
        };
        let lines: &[&str] = match row.word("line") {
            "both" => &["bubble", "dew"],
            line => &[line],
        };
        for line in lines {
            let got = match *line {
                "dew" => fluid.dew_pressure(c(t)),
                _ => fluid.bubble_pressure(c(t)),
            };
            let got = got.unwrap_or_else(|e| panic!("{}: {e}", row.said()));
            pressures.point(got.get::<pascal>(), p, || row.said());
            // At an end the fit's own error may put the reference outside it.
            match at_pressure(line, pa(p)) {
                Ok(got) => temperatures.point(to_c(got), t, || row.said()),
                Err(e) => assert!(t == 0.0 || t >= 68.0, "{}: {e}", row.said()),
            }
        }
    }
    vec![pressures, temperatures]
}
