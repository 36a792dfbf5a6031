//! Pipe friction: the Darcy factor.

use uom::si::ratio::ratio;

use crate::physics::error::{Error, Quantity, within};
use crate::quantity::Ratio;

/// Reynolds number up to which flow is taken as laminar.
const LAMINAR: f64 = 2000.0;
/// Reynolds number from which flow is taken as turbulent.
const TURBULENT: f64 = 4000.0;

/// The Darcy friction factor f, in dp = f (L/D) rho V^2/2: 64/Re up to Re 2000,
/// Colebrook and White (1939) from 4000, and a straight line in Re between,
/// where nobody can say; there it is +/-30 %. `roughness` is of the wall over
/// the bore. Agrees with fluids 1.3.1 to six digits outside the stretch between.
///
/// # Errors
/// [`Error::OutOfRange`] when Re is outside 0.001 to 1e9 or the relative
/// roughness outside 0 to 0.1.
pub fn friction_factor(reynolds: Ratio, roughness: Ratio) -> Result<Ratio, Error> {
    let re = within(Quantity::Reynolds, reynolds.get::<ratio>(), 1e-3, 1e9)?;
    let rough = within(Quantity::Roughness, roughness.get::<ratio>(), 0.0, 0.1)?;
    Ok(Ratio::new::<ratio>(darcy(re, rough)))
}

/// The same in plain f64, for Re above zero.
pub(super) fn darcy(re: f64, rough: f64) -> f64 {
    if re <= LAMINAR {
        64.0 / re
    } else if re >= TURBULENT {
        colebrook(re, rough)
    } else {
        let low = 64.0 / LAMINAR;
        let high = colebrook(TURBULENT, rough);
        low + (high - low) * (re - LAMINAR) / (TURBULENT - LAMINAR)
    }
}

/// 1/sqrt(f) = -2 log10(e/3.7 + 2.51/(Re sqrt f)), by Newton from Haaland.
fn colebrook(re: f64, rough: f64) -> f64 {
    let (a, b) = (rough / 3.7, 2.51 / re);
    let mut x = -1.8 * (a.powf(1.11) + 6.9 / re).log10();
    for _ in 0..4 {
        let inside = a + b * x;
        let miss = x + 2.0 * inside.log10();
        x -= miss / (1.0 + 2.0 * b / (inside * std::f64::consts::LN_10));
    }
    1.0 / (x * x)
}
