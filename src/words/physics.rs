//! How we know a figure, and what went wrong when there is none.

use super::{Words, tongue};
use crate::physics::basis::Figure;

impl Words {
    /// The formula behind a figure, its symbols explained.
    pub fn formula(self, figure: Figure) -> &'static str {
        tongue!(self, physics::formula(figure))
    }

    /// Where the formula comes from, the range it is good for, and how far off
    /// it may be.
    pub fn source(self, figure: Figure) -> &'static str {
        tongue!(self, physics::source(figure))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::basis::{
        ChemistryFigure, CircuitFigure, ElectrodeFigure, HeadFigure, LoopHeatFigure, PipingFigure,
        TowerFigure,
    };
    use crate::physics::tower::{Settle, Shape};
    use crate::words::Tongue;
    use crate::working::Say;
    use std::collections::HashSet;

    #[test]
    fn every_figure_has_its_own_formula_and_a_source_with_a_range_or_doubt() {
        for tongue in Tongue::ALL {
            formulas_and_sources(Words(tongue));
        }
    }

    fn formulas_and_sources(words: Words) {
        let (lead, good) = match words.0 {
            Tongue::English => ("Source: ", "Good"),
            Tongue::Spanish => ("Fuente: ", "Vale"),
        };
        let mut all = Figure::ALL.to_vec();
        all.extend(CircuitFigure::ALL.map(Figure::Circuit));
        all.extend(ChemistryFigure::ALL.map(Figure::Chemistry));
        all.extend(HeadFigure::ALL.map(Figure::Head));
        all.extend(ElectrodeFigure::ALL.map(Figure::Electrode));
        all.extend(TowerFigure::ALL.map(Figure::Tower));
        all.extend(PipingFigure::ALL.map(Figure::Piping));
        all.extend(LoopHeatFigure::ALL.map(Figure::LoopHeat));
        let formulas: HashSet<_> = all.iter().map(|f| words.formula(*f)).collect();
        assert_eq!(formulas.len(), all.len());
        for figure in all {
            let formula = words.formula(figure);
            assert!(
                formula.contains('='),
                "{figure:?} has no equation: {formula}"
            );
            let source = words.source(figure);
            assert!(source.starts_with(lead), "{figure:?}: {source}");
            assert!(
                source.contains(good),
                "{figure:?} says not how good: {source}"
            );
            assert!(
                source.ends_with('.') && formula.ends_with('.'),
                "{figure:?}"
            );
        }
    }

    #[test]
    fn every_shape_has_a_name_and_says_where_to_look() {
        for tongue in Tongue::ALL {
            shapes(Words(tongue));
        }
    }

    fn shapes(words: Words) {
        let (fan, lock_out) = match words.0 {
            Tongue::English => ("fan", "Lock out"),
            Tongue::Spanish => ("ventilador", "Bloquee y etiquete"),
        };
        let names: HashSet<_> = Shape::ALL.map(|s| words.say(Say::Shape(s)).0).into();
        let lines: HashSet<_> = Shape::ALL.map(|s| words.say(Say::Shape(s)).1).into();
        assert_eq!(
            (names.len(), lines.len()),
            (Shape::ALL.len(), Shape::ALL.len())
        );
        assert!(lines.iter().all(|line| line.ends_with('.')));
        // A hand near the fan needs the caution beside it.
        let air = words.say(Say::Shape(Shape::WeakAir)).1;
        assert!(air.contains(fan) && air.contains(lock_out), "{air}");
        let asked: HashSet<_> = [
            Settle::WaterFlow,
            Settle::Heat,
            Settle::InletWetBulb,
            Settle::Thermometers,
        ]
        .map(|s| words.say(Say::Settle(s)).0)
        .into();
        assert_eq!(asked.len(), 4);
    }
}
