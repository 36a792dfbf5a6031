//! The real parts of a makeup control circuit.

use uom::si::capacitance::farad;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::ohm;
use uom::si::frequency::hertz;
use uom::si::length::meter;
use uom::si::power::watt;
use uom::si::ratio::ratio;

use super::complex::Complex;
use super::fault::Fault;
use super::point::Point;
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{
    Capacitance, ElectricCurrent, ElectricPotential, ElectricalResistance, Frequency, Length,
    Power, Ratio,
};

/// What feeds the circuit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply {
    /// Voltage between hot and return, RMS, 5 to 300 V.
    pub voltage: ElectricPotential,
    /// 16 to 400 Hz.
    pub frequency: Frequency,
    /// Impedance of the transformer or the line, taken as a resistance; up to 100 ohm.
    pub impedance: ElectricalResistance,
    /// A control transformer's secondary: when dead it still is a winding,
    /// where a tripped breaker leaves the wire open.
    pub transformer: bool,
}

/// Control wire of copper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wire {
    /// 18 AWG.
    Awg18,
    /// 16 AWG.
    Awg16,
    /// 14 AWG.
    Awg14,
    /// 0.75 mm2.
    Mm075,
    /// 1.0 mm2.
    Mm100,
    /// 1.5 mm2.
    Mm150,
    /// 2.5 mm2.
    Mm250,
}

impl Wire {
    /// Every size.
    pub const ALL: [Wire; 7] = [
        Wire::Awg18,
        Wire::Awg16,
        Wire::Awg14,
        Wire::Mm075,
        Wire::Mm100,
        Wire::Mm150,
        Wire::Mm250,
    ];

    /// Ohm per metre of one conductor at 20 C. AWG 18 as in US wire tables
    /// (6.385 ohm per 1000 ft); the other AWG sizes and the IEC 60228 maxima
    /// from memory.
    pub(super) fn ohm_per_meter(self) -> f64 {
        match self {
            Wire::Awg18 => 6.385 / 304.8,
            Wire::Awg16 => 4.016 / 304.8,
            Wire::Awg14 => 2.525 / 304.8,
            Wire::Mm075 => 24.5e-3,
            Wire::Mm100 => 18.1e-3,
            Wire::Mm150 => 12.1e-3,
            Wire::Mm250 => 7.41e-3,
        }
    }

    /// Resistance of the way out and back over `run`, copper at 20 C.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the run is outside 0 to 2,000 m.
    pub fn loop_resistance(self, run: Length) -> Result<ElectricalResistance, Error> {
        let run = within(Quantity::WireLength, run.get::<meter>(), 0.0, 2000.0)?;
        Ok(ElectricalResistance::new::<ohm>(
            2.0 * run * self.ohm_per_meter(),
        ))
    }
}

/// The cable between panel, relay and valve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cable {
    /// Size of each conductor.
    pub wire: Wire,
    /// Panel to relay, one way, 0 to 2,000 m.
    pub to_relay: Length,
    /// Relay to coil, one way, 0 to 2,000 m.
    pub to_coil: Length,
    /// Stray capacitance of a metre of conductor to the live neighbour, up to 10 nF.
    pub stray_live: Capacitance,
    /// The same to the return, up to 10 nF.
    pub stray_return: Capacitance,
    /// What the live neighbour in the same cable or conduit carries, 0 to
    /// 300 V; it stays live when this circuit's supply is lost.
    pub neighbour: ElectricPotential,
}

/// The fill valve's AC coil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coil {
    /// Rated voltage, 5 to 300 V.
    pub rated: ElectricPotential,
    /// Holding volt-amperes, written as watts; 0.5 to 2,000.
    pub apparent_power: Power,
    /// Power factor while holding, 0.01 to 1.
    pub power_factor: Ratio,
    /// Inrush over holding current, 1 to 20.
    pub inrush: Ratio,
    /// Power factor of the inrush, 0.01 to 1.
    pub inrush_power_factor: Ratio,
}

impl Coil {
    /// A coil of which the nameplate gives volts and holding VA. Inrush five
    /// times the holding current (fluid-power design data sheet 30, 1990);
    /// power factors 0.4 holding and 0.8 at inrush from memory.
    pub fn nameplate(rated: ElectricPotential, apparent_power: Power) -> Self {
        let part = Ratio::new::<ratio>;
        Self {
            rated,
            apparent_power,
            power_factor: part(0.4),
            inrush: part(5.0),
            inrush_power_factor: part(0.8),
        }
    }

    /// Current while holding at rated voltage: VA / V.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the coil is outside its stated ranges.
    pub fn holding_current(&self) -> Result<ElectricCurrent, Error> {
        self.check()?;
        let current = self.apparent_power.get::<watt>() / self.rated.get::<volt>();
        Ok(ElectricCurrent::new::<ampere>(current))
    }

    /// Resistance of the winding as an ohmmeter finds it: the resistance of the
    /// inrush, where iron takes little. Good to a factor of two when the power
    /// factor is a guess.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the coil is outside its stated ranges.
    pub fn winding(&self) -> Result<ElectricalResistance, Error> {
        self.check()?;
        Ok(ElectricalResistance::new::<ohm>(self.impedance(false).re))
    }

    /// R + jX with the armature seated or not.
    pub(super) fn impedance(&self, seated: bool) -> Complex {
        let (part, factor) = if seated {
            (1.0, self.power_factor)
        } else {
            (self.inrush.get::<ratio>(), self.inrush_power_factor)
        };
        let (size, factor) = (self.holding_impedance() / part, factor.get::<ratio>());
        Complex::new(
            size * factor,
            size * (1.0 - factor * factor).max(0.0).sqrt(),
        )
    }

    /// |Z| while holding, ohm: V^2 / VA.
    pub(super) fn holding_impedance(&self) -> f64 {
        self.rated.get::<volt>().powi(2) / self.apparent_power.get::<watt>()
    }

    fn check(&self) -> Result<(), Error> {
        use Quantity::{ApparentPower, InrushRatio, PowerFactor, Voltage};
        for (quantity, value, low, high) in [
            (Voltage, self.rated.get::<volt>(), 5.0, 300.0),
            (ApparentPower, self.apparent_power.get::<watt>(), 0.5, 2e3),
            (PowerFactor, self.power_factor.get::<ratio>(), 0.01, 1.0),
            (InrushRatio, self.inrush.get::<ratio>(), 1.0, 20.0),
            (
                PowerFactor,
                self.inrush_power_factor.get::<ratio>(),
                0.01,
                1.0,
            ),
        ] {
            within(quantity, value, low, high)?;
        }
        Ok(())
    }
}

/// Which throw of the level relay the feed to the coil is wired to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Throw {
    /// Closed while the relay is pulled in.
    NormallyOpen,
    /// Closed while the relay is at rest or without power.
    NormallyClosed,
}

/// The whole makeup control circuit, from the supply to the coil and back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Circuit {
    /// What feeds it.
    pub supply: Supply,
    /// Fuse or breaker rating, 0.05 to 100 A.
    pub fuse: ElectricCurrent,
    /// Contacts in series between the disconnect and the level relay (hand
    /// switch, freeze or flow interlock), 0 to 3; closed when all is well.
    pub series_contacts: u8,
    /// The relay terminal that feeds the coil.
    pub throw: Throw,
    /// The wiring.
    pub cable: Cable,
    /// The fill valve's coil.
    pub coil: Coil,
}

impl Circuit {
    /// A circuit of this supply and coil with usual parts: 60 Hz, a source of
    /// 2 % of the coil's impedance, a fuse at about ten times the holding
    /// current, no other contacts, 18 AWG with 10 m to the relay and 10 m to
    /// the coil, 80 pF/m to a live neighbour of the same voltage and to the
    /// return. Common practice, no source; change what the site shows.
    pub fn usual(coil: Coil, transformer: bool) -> Self {
        let m = Length::new::<meter>;
        let stray = Capacitance::new::<farad>(80e-12);
        Self {
            supply: Supply {
                voltage: coil.rated,
                frequency: Frequency::new::<hertz>(60.0),
                impedance: ElectricalResistance::new::<ohm>(
                    (0.02 * coil.holding_impedance()).min(100.0),
                ),
                transformer,
            },
            fuse: ElectricCurrent::new::<ampere>(
                (10.0 * coil.apparent_power.get::<watt>() / coil.rated.get::<volt>()).max(0.05),
            ),
            series_contacts: 0,
            throw: Throw::NormallyOpen,
            cable: Cable {
                wire: Wire::Awg18,
                to_relay: m(10.0),
                to_coil: m(10.0),
                stray_live: stray,
                stray_return: stray,
                neighbour: coil.rated,
            },
            coil,
        }
    }

    /// Test points of this circuit, in order from the supply round to the return.
    pub fn points(&self) -> Vec<Point> {
        let missing = [Point::Series1, Point::Series2, Point::Series3]
            .into_iter()
            .skip(usize::from(self.series_contacts))
            .collect::<Vec<_>>();
        let mut points = Point::ALL.to_vec();
        points.retain(|p| !missing.contains(p));
        points
    }

    /// Every fault this circuit can have, each at its usual size, the sound
    /// circuit first.
    pub fn faults(&self) -> Vec<Fault> {
        Fault::usual(self)
    }

    /// Angular frequency, 1/s.
    pub(super) fn omega(&self) -> f64 {
        2.0 * std::f64::consts::PI * self.supply.frequency.get::<hertz>()
    }

    /// Whether every part is in its stated range.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] naming the first part that is not.
    pub fn check(&self) -> Result<(), Error> {
        use Quantity::{Capacitance, Current, Frequency, Resistance, Voltage, WireLength};
        let (supply, cable) = (&self.supply, &self.cable);
        for (quantity, value, low, high) in [
            (Voltage, supply.voltage.get::<volt>(), 5.0, 300.0),
            (Frequency, supply.frequency.get::<hertz>(), 16.0, 400.0),
            (Resistance, supply.impedance.get::<ohm>(), 0.0, 100.0),
            (Current, self.fuse.get::<ampere>(), 0.05, 100.0),
            (
                Quantity::SeriesContacts,
                f64::from(self.series_contacts),
                0.0,
                3.0,
            ),
            (WireLength, cable.to_relay.get::<meter>(), 0.0, 2000.0),
            (WireLength, cable.to_coil.get::<meter>(), 0.0, 2000.0),
            (Capacitance, cable.stray_live.get::<farad>(), 0.0, 1e-8),
            (Capacitance, cable.stray_return.get::<farad>(), 0.0, 1e-8),
            (Voltage, cable.neighbour.get::<volt>(), 0.0, 300.0),
        ] {
            within(quantity, value, low, high)?;
        }
        self.coil.check()
    }
}
