//! Which faults a reading fits, and whether a low-impedance meter would tell more.

use uom::si::ratio::ratio;

use super::fault::Fault;
use super::parts::Circuit;
use super::point::{Leads, Meter, Reading, State};
use super::read::read;
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{Ratio, sort_by};

/// How far a meter may be off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Accuracy {
    /// Part of the reading, 0 to 0.2.
    pub of_reading: Ratio,
    /// Part of the supply voltage, or of the holding current, that the last
    /// digits amount to, 0.0001 to 0.2.
    pub of_full: Ratio,
}

impl Default for Accuracy {
    /// 1.5 % of the reading and 1 % of the supply (common practice, no source).
    fn default() -> Self {
        Self {
            of_reading: Ratio::new::<ratio>(0.015),
            of_full: Ratio::new::<ratio>(0.01),
        }
    }
}

/// How far the circuit itself may be from what was entered: supply, wiring and
/// coil within 5 % (judgement; no source).
const CIRCUIT: f64 = 0.05;
/// An ohmmeter on a winding is taken within 20 % (service manuals accept 10 to
/// 30 % of nameplate), and half an ohm of lead.
const OHMS_PART: f64 = 0.2;
const LEAD: f64 = 0.5;
/// Share of readings that are simply wrong: leads swapped, number misread (judgement).
const MISREAD: f64 = 0.02;
/// A fault fits when the reading is within this many standard deviations.
const FITS: f64 = 3.0;
/// Low impedance is worth the switch when it tells apart this much more of the
/// pairs of faults that are left.
const WORTH: f64 = 0.05;

/// How one fault takes the reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// The fault, in the size that fits best.
    pub fault: Fault,
    /// What the meter would read then.
    pub expected: Reading,
    /// Natural log of the reading's likelihood, all sizes of the fault taken
    /// alike; only differences between faults mean something.
    pub log_likelihood: f64,
    /// Whether the reading is one this fault gives.
    pub fits: bool,
}

/// What a reading says.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// Every fault of the circuit, the best fit first.
    pub fits: Vec<Fit>,
    /// The same leads on a low-impedance range would part faults that this
    /// reading leaves together. Never for a meter that is one already.
    pub low_impedance_tells_more: bool,
}

/// What the meter would read under each fault of this circuit at its usual size.
///
/// # Errors
/// [`Error::OutOfRange`] as for [`read`].
pub fn expect(
    circuit: &Circuit,
    state: State,
    leads: Leads,
    meter: Meter,
) -> Result<Vec<(Fault, Reading)>, Error> {
    let one = |fault| Ok((fault, read(circuit, state, &[fault], leads, meter)?));
    circuit.faults().into_iter().map(one).collect()
}

/// Readings on a scale where the error is the same everywhere nearby.
struct Scale {
    part: f64,
    floor: f64,
    ohms: bool,
}

impl Scale {
    fn of(circuit: &Circuit, meter: Meter, accuracy: Accuracy) -> Result<Self, Error> {
        use uom::si::electric_current::ampere;
        use uom::si::electric_potential::volt;
        let part = accuracy.of_reading.get::<ratio>();
        let part = within(Quantity::MeterAccuracy, part, 0.0, 0.2)?;
        let digits = accuracy.of_full.get::<ratio>();
        let digits = within(Quantity::MeterAccuracy, digits, 1e-4, 0.2)?;
        let full = match meter {
            Meter::Clamp => circuit.coil.holding_current()?.get::<ampere>(),
            _ => circuit.supply.voltage.get::<volt>(),
        };
        Ok(Self {
            part: part.hypot(CIRCUIT),
            floor: digits * full,
            ohms: matches!(meter, Meter::Ohmmeter),
        })
    }

    /// Standard deviations between a reading and what was expected, and the deviation.
    fn off(&self, got: f64, want: f64) -> (f64, f64) {
        let (difference, deviation) = if self.ohms {
            (((got + LEAD) / (want + LEAD)).ln(), OHMS_PART)
        } else {
            (got - want, self.floor.hypot(self.part * want))
        };
        ((difference / deviation).abs(), deviation)
    }

    /// Likelihood of a reading; a misread one lies anywhere on the scale.
    fn likelihood(&self, got: f64, want: f64) -> f64 {
        let (off, deviation) = self.off(got, want);
        let anywhere = if self.ohms { 18.0 } else { 100.0 * self.floor };
        let width = deviation * (2.0 * std::f64::consts::PI).sqrt();
        (1.0 - MISREAD) * (-0.5 * off * off).exp() / width + MISREAD / anywhere
    }
}

/// Which faults of this circuit a reading fits.
///
/// Every fault counts alike beforehand; a fault that comes in sizes is the mean
/// over them. A reading of another kind than the meter gives fits as its number.
///
/// # Errors
/// [`Error::OutOfRange`] as for [`read`], when the accuracy is outside its
/// stated range, or when the reading is negative or not finite.
pub fn judge(
    circuit: &Circuit,
    state: State,
    leads: Leads,
    meter: Meter,
    reading: Reading,
    accuracy: Accuracy,
) -> Result<Judgement, Error> {
    let got = within(Quantity::MeterReading, reading.number(), 0.0, 1e12)?;
    let scale = Scale::of(circuit, meter, accuracy)?;
    let mut fits = Vec::new();
    for fault in circuit.faults() {
        let sizes = fault.sizes();
        let (mut sum, mut best, mut least) = (0.0, None, f64::INFINITY);
        for &size in &sizes {
            let expected = read(circuit, state, &[size], leads, meter)?;
            sum += scale.likelihood(got, expected.number());
            let (off, _) = scale.off(got, expected.number());
            if off < least || best.is_none() {
                (best, least) = (Some((size, expected)), off);
            }
        }
        if let Some((fault, expected)) = best {
            fits.push(Fit {
                fault,
                expected,
                log_likelihood: (sum / sizes.len() as f64).ln(),
                fits: least <= FITS,
            });
        }
    }
    sort_by(&mut fits, |a, b| {
        b.log_likelihood.total_cmp(&a.log_likelihood)
    });
    let low_impedance_tells_more = match meter {
        Meter::HighImpedance(_) => {
            let low = Meter::low_impedance();
            let mut now = Vec::new();
            let mut then = Vec::new();
            for fit in fits.iter().filter(|f| f.fits) {
                now.push(fit.expected.number());
                then.push(read(circuit, state, &[fit.fault], leads, low)?.number());
            }
            apart(&scale, &then) > apart(&scale, &now) + WORTH
        }
        _ => false,
    };
    Ok(Judgement {
        fits,
        low_impedance_tells_more,
    })
}

/// The part of all pairs that a reading tells apart.
fn apart(scale: &Scale, expected: &[f64]) -> f64 {
    let (mut parted, mut pairs) = (0.0, 0.0_f64);
    for (n, &a) in expected.iter().enumerate() {
        for &b in &expected[..n] {
            pairs += 1.0;
            let off = scale.off(a, b).0.min(scale.off(b, a).0);
            parted += f64::from(off > FITS);
        }
    }
    parted / pairs.max(1.0)
}
