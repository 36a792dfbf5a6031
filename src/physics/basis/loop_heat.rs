//! The figures of a loop in trouble.

/// A calculated figure of the loop's heat.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LoopHeatFigure {
    /// Entering water at which a machine trips.
    TripWater,
    /// Time until a machine trips.
    TimeToTrip,
    /// Time a condenser without flow takes to warm.
    NoFlow,
    /// Condensing temperature with little flow.
    ReducedFlow,
    /// Entering water while the loop recovers.
    Recovery,
    /// Water flow from heat and range.
    FlowFromHeat,
    /// Wait and spacing of restarts.
    RestartSpacing,
}

impl LoopHeatFigure {
    /// Every figure here.
    pub const ALL: [LoopHeatFigure; 7] = [
        LoopHeatFigure::TripWater,
        LoopHeatFigure::TimeToTrip,
        LoopHeatFigure::NoFlow,
        LoopHeatFigure::ReducedFlow,
        LoopHeatFigure::Recovery,
        LoopHeatFigure::FlowFromHeat,
        LoopHeatFigure::RestartSpacing,
    ];
}
