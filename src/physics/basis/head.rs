//! Figures of head pressure and the water behind it.

/// A calculated figure of head pressure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HeadFigure {
    /// Head to expect at this leaving water and a normal approach.
    Expected,
    /// Head with a part of the usual water flow.
    AtFlow,
}

impl HeadFigure {
    /// Every figure of this topic.
    pub const ALL: [HeadFigure; 2] = [HeadFigure::Expected, HeadFigure::AtFlow];
}
