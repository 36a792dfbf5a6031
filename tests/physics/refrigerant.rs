//! Refrigerant saturation.

use coldsump::physics::refrigerant::Refrigerant::{self, *};
use coldsump::physics::{Error, Quantity};
use coldsump::quantity::{GaugePressure, Pressure};
use proptest::prelude::*;
use uom::si::pressure::{kilopascal, pascal, psi};

use Line::{Both, Bubble, Dew};

use crate::{SEA, c, f, near, pa, to_c, to_f, within_part};

#[derive(Clone, Copy, PartialEq)]
enum Line {
    Both,
    Bubble,
    Dew,
}

/// No value: CoolProp's flash did not converge there.
const NO: f64 = 0.0;

const CELSIUS: [f64; 13] = [
    0.0, 10.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0,
];

/// Saturation pressure, kPa absolute, computed with CoolProp 8.0.0.
#[rustfmt::skip]
const TABLE: [(Refrigerant, Line, [f64; 13]); 22] = [
    (R22, Both, [498.0, 680.9, 910.0, 1043.9, 1191.9, 1354.8, 1533.6, 1729.2, 1942.7, 2175.1, 2427.5, 2701.2, 2997.4]),
    (R123, Both, [32.6, 50.6, 75.6, 91.4, 109.6, 130.5, 154.5, 181.7, 212.5, 247.1, 285.9, 329.2, 377.2]),
    (R134a, Both, [292.8, 414.6, 571.7, 665.4, 770.2, 887.0, 1016.6, 1159.9, 1317.9, 1491.5, 1681.8, 1889.8, 2116.8]),
    (R404A, Bubble, [610.2, 827.1, 1097.2, 1254.6, 1428.3, 1619.5, 1829.4, 2059.3, 2310.6, 2585.1, 2884.9, 3212.5, NO]),
    (R404A, Dew, [600.3, 815.7, 1084.4, 1241.2, 1414.4, 1605.1, 1814.6, 2044.3, 2295.7, 2570.5, 2871.1, 3200.4, NO]),
    (R407C, Bubble, [567.9, 776.4, 1037.6, 1190.3, 1359.1, 1545.0, 1749.0, 1972.3, 2216.0, NO, 2769.2, 3081.4, 3418.9]),
    (R407C, Dew, [460.7, 644.9, 880.3, 1020.0, 1175.9, 1349.2, 1541.3, 1753.6, 1987.8, 2245.4, 2528.7, 2840.0, 3182.3]),
    (R410A, Bubble, [800.7, 1088.4, 1447.6, 1657.4, 1889.3, 2144.9, 2425.6, 2733.5, 3070.6, 3439.1, 3841.8, 4282.4, NO]),
    (R410A, Dew, [798.1, 1084.8, 1443.0, 1652.2, 1883.5, 2138.5, 2418.7, NO, 3062.8, 3431.3, 3834.4, 4276.0, NO]),
    (R507A, Bubble, [624.4, 846.0, 1121.8, 1282.6, 1460.0, 1655.3, 1869.6, 2104.4, 2361.2, NO, 2948.6, NO, NO]),
    (R507A, Dew, [624.0, 845.3, 1120.9, 1281.5, 1458.7, 1653.8, 1868.0, 2102.6, 2359.3, NO, 2946.7, 3282.9, NO]),
    (R32, Both, [813.1, 1106.9, 1474.6, 1689.6, 1927.5, 2189.8, 2478.3, 2794.8, 3141.2, 3519.9, 3933.2, 4384.3, 4876.8]),
    (R454B, Bubble, [767.4, 1042.1, 1384.6, 1584.3, 1804.8, 2047.5, 2313.6, 2604.8, 2922.7, 3269.0, 3645.6, NO, 4498.5]),
    (R454B, Dew, [732.4, 997.0, 1328.0, 1521.7, 1736.0, 1972.4, 2232.6, 2518.4, 2831.6, 3174.5, 3549.8, 3960.9, 4412.5]),
    (R513A, Bubble, [323.4, 451.1, 613.7, 709.8, 816.9, 935.6, 1066.7, 1211.2, 1369.8, 1543.5, 1733.2, 1940.1, 2165.2]),
    (R513A, Dew, [323.2, 450.9, 613.6, 709.8, 816.9, 935.6, 1066.7, 1211.1, 1369.6, 1543.2, 1732.9, 1939.6, 2164.6]),
    (R1234zeE, Both, [216.6, 308.4, 427.3, 498.5, 578.3, 667.4, 766.5, 876.1, 997.2, 1130.4, 1276.6, 1436.5, 1611.0]),
    (R1233zdE, Both, [48.5, 73.8, 108.7, 130.3, 155.3, 183.7, 216.1, 252.7, 293.9, 340.0, 391.5, 448.7, 512.0]),
    (R448A, Bubble, [623.3, 847.7, 1127.2, 1290.1, 1469.7, 1667.0, 1883.1, 2119.0, 2375.9, 2654.9, 2957.3, NO, NO]),
    (R448A, Dew, [510.6, 708.5, 959.8, 1108.3, 1273.6, 1457.0, 1659.9, 1883.9, 2130.6, 2402.1, 2700.6, 3029.1, 3391.6]),
    (R449A, Bubble, [614.9, 836.3, 1112.2, 1273.0, 1450.2, 1645.0, 1858.3, 2091.3, 2344.9, 2620.4, 2918.9, NO, 3589.7]),
    (R449A, Dew, [510.9, 707.9, 957.7, 1105.1, 1269.2, 1451.0, 1652.2, 1874.0, 2118.3, 2386.8, 2681.8, 3006.2, 3363.8]),
];

/// What a gauge at sea level reads.
fn psig(p: Pressure) -> f64 {
    GaugePressure::from_absolute(p, pa(SEA)).pascals() / 6894.757
}

#[test]
fn saturation_matches_the_coolprop_table() {
    let mut checked = 0;
    for (fluid, line, row) in TABLE {
        for (t, want) in CELSIUS.into_iter().zip(row).filter(|&(_, want)| want != NO) {
            let what = format!("{} at {t} C", fluid.designation());
            // The table is printed to 0.1 kPa, which is 0.15 % of the lowest value.
            let tolerance = 0.0015 * want + 0.05;
            let lines = [
                (line != Dew).then(|| fluid.bubble_pressure(c(t))),
                (line != Bubble).then(|| fluid.dew_pressure(c(t))),
            ];
            for got in lines.into_iter().flatten() {
                match got {
                    Ok(p) => near(p.get::<kilopascal>(), want, tolerance, &what),
                    // Past the end of this line's fit.
                    Err(_) => assert!(t >= 65.0, "{what} should be in range"),
                }
                checked += 1;
            }
        }
    }
    assert!(checked > 270, "only {checked} values checked");
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
#[test]
fn head_at_105_fahrenheit() {
    for (fluid, dew, bubble) in [
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
    ] {
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
        (R22, 350.0, 143.0),
        (R134a, 180.0, 123.0),
        (R410A, 600.0, 148.0),
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
    near(high, 339.15, 1e-9, "high");
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
    fn pressure_and_temperature_are_inverse(i in 0..14usize, t in 0.0..=64.0f64) {
        let fluid = Refrigerant::ALL[i];
        let bubble = fluid.bubble_temperature(fluid.bubble_pressure(c(t)).unwrap()).unwrap();
        prop_assert!((to_c(bubble) - t).abs() < 1e-6);
        let dew = fluid.dew_temperature(fluid.dew_pressure(c(t)).unwrap()).unwrap();
        prop_assert!((to_c(dew) - t).abs() < 1e-6);
    }

    #[test]
    fn pressure_rises_with_temperature(i in 0..14usize, t in 0.0..63.9f64) {
        let fluid = Refrigerant::ALL[i];
        let next = c(t + 0.1);
        prop_assert!(fluid.bubble_pressure(next).unwrap() > fluid.bubble_pressure(c(t)).unwrap());
        prop_assert!(fluid.dew_pressure(next).unwrap() > fluid.dew_pressure(c(t)).unwrap());
    }

    #[test]
    fn the_dew_line_lies_under_the_bubble_line(i in 0..14usize, t in 0.0..=64.0f64) {
        let fluid = Refrigerant::ALL[i];
        let (dew, bubble) = (fluid.dew_pressure(c(t)).unwrap(), fluid.bubble_pressure(c(t)).unwrap());
        // Azeotropes touch: the fits cross there by less than their error.
        prop_assert!(dew <= bubble * 1.001);
    }
}
