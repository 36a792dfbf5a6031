//! Phrases of the water's chemistry.

use super::{Words, tongue};
use crate::physics::chemistry::cycles::{Against, Cause, Size};
use crate::physics::chemistry::guideline::{Finding, Item};
use crate::physics::chemistry::{Band, SkinBasis};
use crate::quantity::System;

impl Words {
    /// What an index says of the water.
    pub fn water_band(self, band: Band) -> &'static str {
        tongue!(self, chemistry::band(band))
    }

    /// Where the temperature of an index was taken, and what that means.
    pub fn water_skin(self, basis: SkinBasis) -> &'static str {
        tongue!(self, chemistry::skin(basis))
    }

    /// Name of something measured in the water.
    pub fn water_item(self, item: Item) -> &'static str {
        tongue!(self, chemistry::item(item))
    }

    /// A limit a water breaks, with its basis.
    pub fn water_finding(self, finding: &Finding, system: System) -> String {
        tongue!(self, chemistry::finding(finding, system))
    }

    /// What cycles were compared with.
    pub fn cycles_against(self, against: Against) -> &'static str {
        tongue!(self, chemistry::against(against))
    }

    /// How large a change of the cycles is.
    pub fn cycles_size(self, size: Size) -> &'static str {
        tongue!(self, chemistry::size(size))
    }

    /// What may be behind a change of the cycles and where to look.
    pub fn cycles_cause(self, cause: Cause) -> &'static str {
        tongue!(self, chemistry::cause(cause))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::chemistry::guideline::{Analysis, Metal};
    use crate::words::Tongue;
    use std::collections::HashSet;

    #[test]
    fn every_item_and_cause_has_words_of_its_own() {
        for tongue in Tongue::ALL {
            items_and_causes(Words(tongue));
        }
    }

    fn items_and_causes(words: Words) {
        let items: HashSet<_> = Item::ALL.map(|i| words.water_item(i)).into();
        assert_eq!(items.len(), Item::ALL.len());
        let causes: HashSet<_> = Cause::ALL.map(|c| words.cycles_cause(c)).into();
        assert_eq!(causes.len(), Cause::ALL.len());
        assert!(causes.iter().all(|c| c.ends_with('.')));
    }

    #[test]
    fn a_finding_says_value_limit_and_basis() {
        let water = Analysis {
            ph: Some(8.6),
            metal: Metal::NewGalvanized,
            ..Analysis::default()
        };
        let found = water.findings();
        let said = Words::default().water_finding(&found[0], System::Us);
        assert_eq!(
            said.replace('\u{a0}', " "),
            "pH 8.6 is above 7.8. A galvanizing association, against white rust. Your water \
             treater's limits govern."
        );
    }
}
