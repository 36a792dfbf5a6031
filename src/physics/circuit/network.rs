//! A small AC network solved in phasors: modified nodal analysis, Gaussian
//! elimination with scaled partial pivoting.
//!
//! Node 0 is the reference. Values are in ohm, siemens and volt RMS at one
//! frequency; a capacitor is its admittance, an inductor its impedance.

use super::complex::Complex;
use crate::physics::error::{Error, NoSolution, Quantity, within};

/// Most nodes, the reference included.
pub(super) const MOST_NODES: usize = 16;

/// Least impedance of an element, ohm: a shorter piece of wire is no element.
pub(super) const LEAST_IMPEDANCE: f64 = 1e-4;

/// A pivot this small beside its own row is rounding, not a connection.
const LEAST_PIVOT: f64 = 1e-15;

#[derive(Clone, Copy, Debug)]
enum Element {
    Admittance(usize, usize, Complex),
    Source(usize, usize, Complex),
}

/// Elements between numbered nodes.
#[derive(Clone, Debug, Default)]
pub(super) struct Network {
    elements: Vec<Element>,
}

/// Node voltages of a solved network.
#[derive(Clone, Debug)]
pub(super) struct Solution {
    elements: Vec<Element>,
    /// Node voltages, then the currents of the sources in their order.
    unknowns: Vec<Complex>,
}

impl Network {
    /// An impedance R + jX between two nodes; one below the least is the least.
    pub fn impedance(&mut self, from: usize, to: usize, z: Complex) {
        let size = z.abs();
        let z = if size < LEAST_IMPEDANCE {
            Complex::new(LEAST_IMPEDANCE, 0.0)
        } else {
            z
        };
        self.admittance(from, to, Complex::ONE / z);
    }

    /// A resistance between two nodes: a wire, a contact, a meter.
    pub fn resistance(&mut self, from: usize, to: usize, ohm: f64) {
        self.impedance(from, to, Complex::new(ohm, 0.0));
    }

    /// An admittance between two nodes: a capacitor is j omega C.
    pub fn admittance(&mut self, from: usize, to: usize, y: Complex) {
        self.elements.push(Element::Admittance(from, to, y));
    }

    /// An ideal source that holds `plus` at `volt` above `minus`.
    pub fn source(&mut self, plus: usize, minus: usize, volt: Complex) {
        self.elements.push(Element::Source(plus, minus, volt));
    }

    /// Voltages of every node.
    ///
    /// # Errors
    /// [`NoSolution::Floating`] when a node is tied to nothing or sources are
    /// tied against each other; out of range when there are over 16 nodes.
    pub fn solve(self) -> Result<Solution, Error> {
        let mut most = 0;
        let mut sources = 0;
        for e in &self.elements {
            let (Element::Admittance(a, b, _) | Element::Source(a, b, _)) = *e;
            most = most.max(a).max(b);
            sources += usize::from(matches!(e, Element::Source(..)));
        }
        within(
            Quantity::CircuitNodes,
            (most + 1) as f64,
            2.0,
            MOST_NODES as f64,
        )?;
        let size = most + sources;
        // Row and column n - 1 stand for node n; the reference has none.
        let mut rows = vec![vec![Complex::ZERO; size + 1]; size];
        let mut add = |row: usize, column: usize, y: Complex| {
            if row > 0 && column > 0 {
                let cell = &mut rows[row - 1][column - 1];
                *cell = *cell + y;
            }
        };
        let mut next = most + 1;
        for e in &self.elements {
            match *e {
                Element::Admittance(a, b, y) => {
                    add(a, a, y);
                    add(b, b, y);
                    add(a, b, -y);
                    add(b, a, -y);
                }
                Element::Source(a, b, volt) => {
                    for (node, sign) in [(a, Complex::ONE), (b, -Complex::ONE)] {
                        add(node, next, sign);
                        add(next, node, sign);
                    }
                    add(next, size + 1, volt);
                    next += 1;
                }
            }
        }
        Ok(Solution {
            unknowns: eliminate(rows)?,
            elements: self.elements,
        })
    }
}

/// Solves the augmented rows.
fn eliminate(mut rows: Vec<Vec<Complex>>) -> Result<Vec<Complex>, Error> {
    let floating = Error::NoSolution(NoSolution::Floating);
    let size = rows.len();
    for row in &mut rows {
        let most = row[..size].iter().fold(0.0, |m: f64, c| m.max(c.abs()));
        if !(most > 0.0 && most.is_finite()) {
            return Err(floating);
        }
        for cell in row {
            *cell = *cell / Complex::new(most, 0.0);
        }
    }
    for column in 0..size {
        let (mut best, mut most) = (column, 0.0);
        for (at, row) in rows.iter().enumerate().skip(column) {
            if row[column].abs() > most {
                (best, most) = (at, row[column].abs());
            }
        }
        if most < LEAST_PIVOT {
            return Err(floating);
        }
        rows.swap(column, best);
        let (done, left) = rows.split_at_mut(column + 1);
        let pivot = &done[column];
        for row in left {
            let part = row[column] / pivot[column];
            for at in column..=size {
                row[at] = row[at] - part * pivot[at];
            }
        }
    }
    let mut answer = vec![Complex::ZERO; size];
    for at in (0..size).rev() {
        let known = (at + 1..size).fold(Complex::ZERO, |sum, c| sum + rows[at][c] * answer[c]);
        answer[at] = (rows[at][size] - known) / rows[at][at];
        if !answer[at].abs().is_finite() {
            return Err(floating);
        }
    }
    Ok(answer)
}

impl Solution {
    /// Voltage of a node above the reference.
    pub fn voltage(&self, node: usize) -> Complex {
        match node {
            0 => Complex::ZERO,
            _ => self.unknowns[node - 1],
        }
    }

    /// Voltage between two nodes.
    pub fn between(&self, a: usize, b: usize) -> Complex {
        self.voltage(a) - self.voltage(b)
    }

    /// Current from `a` to `b` through the first element put between them,
    /// sources left aside; none where there is no such element.
    pub fn current(&self, a: usize, b: usize) -> Complex {
        self.elements
            .iter()
            .find_map(|e| match *e {
                Element::Admittance(from, to, y)
                    if (from, to) == (a, b) || (from, to) == (b, a) =>
                {
                    Some(y * self.between(a, b))
                }
                _ => None,
            })
            .unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const NODES: usize = 7;

    /// A chain that ties every node, with cross links and one to ground each.
    fn any_network() -> impl Strategy<Value = Vec<(usize, usize, Complex)>> {
        let z = || (0.1..1e5f64, -1e4..1e4f64).prop_map(|(r, x)| Complex::new(r, x));
        (
            proptest::collection::vec(z(), NODES - 1),
            proptest::collection::vec((0..NODES, 0..NODES, z()), 0..8),
        )
            .prop_map(|(chain, cross)| {
                let mut all: Vec<_> = (0..).zip(chain).map(|(n, z)| (n, n + 1, z)).collect();
                all.extend(cross.into_iter().filter(|(a, b, _)| a != b));
                all
            })
    }

    fn solve(links: &[(usize, usize, Complex)], sources: &[(usize, usize, f64)]) -> Solution {
        let mut network = Network::default();
        for &(a, b, z) in links {
            network.impedance(a, b, z);
        }
        for &(a, b, v) in sources {
            network.source(a, b, Complex::new(v, 0.0));
        }
        network.solve().expect("tied together")
    }

    proptest! {
        /// Kirchhoff: what flows into a node without a source flows out of it.
        #[test]
        fn currents_into_a_node_sum_to_zero(links in any_network(), volt in 1.0..300.0f64) {
            let s = solve(&links, &[(NODES - 1, 0, volt)]);
            for node in 1..NODES - 1 {
                let (mut sum, mut most) = (Complex::ZERO, 0.0_f64);
                for e in &s.elements {
                    let Element::Admittance(a, b, y) = *e else { continue };
                    let i = y * s.between(a, b);
                    if a == node {
                        sum = sum + i;
                    } else if b == node {
                        sum = sum - i;
                    } else {
                        continue;
                    }
                    most = most.max(i.abs());
                }
                prop_assert!(sum.abs() <= 1e-8 * most + 1e-12, "{} of {most} at {node}", sum.abs());
            }
        }

        /// A source here gives the same current there as one there gives here.
        #[test]
        fn the_network_is_reciprocal(links in any_network(), volt in 1.0..300.0f64) {
            // Two zero-volt sources serve as ammeters for each other.
            let there = solve(&links, &[(1, 0, volt), (NODES - 1, 0, 0.0)]);
            let here = solve(&links, &[(1, 0, 0.0), (NODES - 1, 0, volt)]);
            let (a, b) = (there.unknowns[NODES], here.unknowns[NODES - 1]);
            let most = there.unknowns[NODES - 1].abs().max(here.unknowns[NODES].abs());
            prop_assert!((a - b).abs() <= 1e-9 * most, "{a:?} {b:?}");
        }

        /// Two sources together give the sum of what each gives alone.
        #[test]
        fn sources_superpose(links in any_network(), v in 1.0..300.0f64, w in 1.0..300.0f64) {
            let both = solve(&links, &[(1, 0, v), (NODES - 1, 0, w)]);
            let one = solve(&links, &[(1, 0, v), (NODES - 1, 0, 0.0)]);
            let other = solve(&links, &[(1, 0, 0.0), (NODES - 1, 0, w)]);
            for node in 1..NODES {
                let off = both.voltage(node) - one.voltage(node) - other.voltage(node);
                prop_assert!(off.abs() <= 1e-9 * (v + w), "{off:?} at {node}");
            }
        }
    }

    #[test]
    fn what_is_tied_to_nothing_is_a_typed_error() {
        let floating = Error::NoSolution(NoSolution::Floating);
        let mut apart = Network::default();
        apart.source(1, 0, Complex::ONE);
        apart.resistance(2, 3, 10.0);
        apart.resistance(3, 4, 0.03);
        assert_eq!(apart.solve().unwrap_err(), floating);
        let mut against = Network::default();
        against.source(1, 0, Complex::ONE);
        against.source(1, 0, Complex::new(2.0, 0.0));
        assert_eq!(against.solve().unwrap_err(), floating);
        let mut unused = Network::default();
        unused.resistance(0, 2, 1.0);
        assert_eq!(unused.solve().unwrap_err(), floating);
        let mut large = Network::default();
        large.resistance(0, MOST_NODES, 1.0);
        assert!(matches!(
            large.solve().unwrap_err(),
            Error::OutOfRange {
                quantity: Quantity::CircuitNodes,
                ..
            }
        ));
    }

    /// Textbook: 3 + j4 ohm on 10 V carries 2 A and the resistor sees 6 V.
    #[test]
    fn a_series_circuit_divides_as_it_must() {
        let s = solve(
            &[
                (1, 2, Complex::new(0.0, 4.0)),
                (2, 0, Complex::new(3.0, 0.0)),
            ],
            &[(1, 0, 10.0)],
        );
        assert!((s.voltage(2).abs() - 6.0).abs() < 1e-12);
        assert!((s.current(2, 0).abs() - 2.0).abs() < 1e-12);
    }
}
