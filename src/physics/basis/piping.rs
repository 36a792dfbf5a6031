//! The figures of the fill line, the drain and the overflow.

/// A calculated figure of the water side of the basin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PipingFigure {
    /// Flow through a valve.
    ValveFlow,
    /// Flow the fill line brings.
    FillFlow,
    /// Cv of the valve a flow needs.
    CvNeeded,
    /// The same as Kv.
    KvNeeded,
    /// How far the strainer is blocked.
    StrainerBlockage,
    /// Pressure drop a servo valve needs.
    ServoDrop,
    /// Submergence of the pump suction.
    Submergence,
    /// Level from which the pump draws air.
    AirFrom,
    /// Water over the pump inlet.
    OverInlet,
    /// Time to drain.
    DrainTime,
    /// Time to refill.
    FillTime,
    /// Level at which drain and fill balance.
    SteadyLevel,
    /// Head over the overflow.
    OverflowHead,
    /// Water and money lost to a flow that never stops.
    RunningWater,
}

impl PipingFigure {
    /// Every figure here.
    pub const ALL: [PipingFigure; 14] = [
        PipingFigure::ValveFlow,
        PipingFigure::CvNeeded,
        PipingFigure::KvNeeded,
        PipingFigure::FillFlow,
        PipingFigure::StrainerBlockage,
        PipingFigure::ServoDrop,
        PipingFigure::Submergence,
        PipingFigure::AirFrom,
        PipingFigure::OverInlet,
        PipingFigure::DrainTime,
        PipingFigure::FillTime,
        PipingFigure::SteadyLevel,
        PipingFigure::OverflowHead,
        PipingFigure::RunningWater,
    ];
}
