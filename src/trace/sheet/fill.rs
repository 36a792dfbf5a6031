//! Checks on the fill valve and the makeup line.

use super::{Sheet, three, two};
use crate::trace::check::Check as K;
use crate::trace::mode::Mode::{self, *};

/// The line gives little.
const WEAK: &[Mode] = &[MainsLow, ReducingValve, StrainerBlocked, BackflowStuck];
/// The line gives nothing.
pub(super) const SHUT: &[Mode] = &[HandValveShut, LineFrozen];
/// The valve is told to open and does not.
const VALVE: &[Mode] = &[
    ValveStuck,
    PilotBlocked,
    DiaphragmTorn,
    ValveBackwards,
    LowDifferential,
];
/// Nothing tells the valve to open.
const UNTOLD: &[Mode] = &[
    SupplyLost,
    FuseBlown,
    TransformerFailed,
    DisconnectOff,
    ControllerDead,
    RelayContactOpen,
    WiringOpen,
    CoilOpen,
];

pub(super) const SHEETS: &[Sheet] = &[
    Sheet::new(
        K::FlowOnCall,
        &[
            three(960, 30),
            three(850, 40),
            three(40, 560),
            three(40, 240),
            three(10, 90),
            three(10, 40),
        ],
        &[
            (1, 0, super::level::FALSE_FULL),
            (1, 0, &[FloatJammedUp]),
            (2, 0, WEAK),
            (3, 0, VALVE),
            (3, 0, &[WiringHighResistance, CoilWeak]),
            (4, 0, SHUT),
            (5, 0, UNTOLD),
        ],
    ),
    Sheet::new(
        K::FillStops,
        &[two(970), two(400), two(80)],
        &[
            (2, 1, &[ValvePassing]),
            (2, 0, &[RelayContactWelded, ReferenceLost, FloatSunk]),
        ],
    ),
    // A control that calls over a full basin lets go of a sound valve.
    Sheet::new(
        K::ToldToShut,
        &[two(970), two(400), two(60)],
        &[(2, 1, &[ValvePassing])],
    ),
    // The stem of a pilot valve, or the bypass around it.
    Sheet::new(
        K::ForceValve,
        &[
            three(960, 30),
            three(750, 130),
            three(40, 560),
            three(10, 90),
        ],
        &[(1, 0, VALVE), (2, 0, WEAK), (3, 0, SHUT)],
    ),
    Sheet::new(
        K::ValveArrow,
        &[two(990), two(20)],
        &[(1, 1, &[ValveBackwards])],
    ),
    Sheet::new(
        K::ValveStrip,
        &[
            three(920, 40),
            three(350, 150),
            three(150, 150),
            three(60, 880),
            three(40, 40),
            three(250, 80),
            three(80, 70),
        ],
        &[
            (2, 1, &[ValvePassing]),
            (3, 3, &[PilotBlocked]),
            (4, 4, &[DiaphragmTorn]),
            (6, 5, &[ValveStuck]),
        ],
    ),
    Sheet::new(
        K::DiaphragmLook,
        &[two(960), two(40)],
        &[(1, 1, &[DiaphragmTorn])],
    ),
    Sheet::new(
        K::Differential,
        &[two(940), two(450), two(80)],
        &[(2, 1, &[LowDifferential]), (1, 0, WEAK), (1, 0, SHUT)],
    ),
    Sheet::new(
        K::HandValves,
        &[two(990), two(30)],
        &[(1, 1, &[HandValveShut])],
    ),
    Sheet::new(
        K::StrainerBlowOff,
        &[two(950), two(200), two(60)],
        &[(2, 1, &[StrainerBlocked])],
    ),
    Sheet::new(
        K::PressureAtValve,
        &[two(960), two(280), two(70)],
        &[(1, 0, &[LowDifferential]), (2, 0, WEAK), (2, 0, SHUT)],
    ),
    Sheet::new(
        K::LineCold,
        &[two(970), two(500), two(60)],
        &[(2, 1, &[LineFrozen])],
    ),
    Sheet::new(
        K::PressureAfterReducer,
        &[two(965), two(60)],
        &[(1, 0, &[ReducingValve, MainsLow])],
    ),
    Sheet::new(
        K::BackflowLook,
        &[two(950), two(500), two(100)],
        &[(2, 1, &[BackflowStuck])],
    ),
    Sheet::new(
        K::MainsPressure,
        &[two(970), two(60)],
        &[(1, 0, &[MainsLow])],
    ),
    // It waits until it happens: what comes and goes is caught acting.
    Sheet::new(
        K::LevelRecorder,
        &[
            three(930, 40),
            three(250, 100),
            three(40, 920),
            three(40, 40),
        ],
        &[
            (1, 1, super::loss::LOSS),
            (1, 1, &[BleedStuckOpen]),
            (2, 2, super::level::FALSE_FULL),
            (3, 3, &[FloatJammedUp]),
            (3, 3, WEAK),
            (3, 3, SHUT),
            (3, 3, VALVE),
            (3, 3, UNTOLD),
            (3, 3, &[WiringHighResistance, CoilWeak]),
        ],
    ),
    Sheet::new(
        K::CoilInRecord,
        &[three(960, 30), three(100, 850), three(20, 40)],
        &[
            (1, 1, &[WiringHighResistance]),
            (2, 2, super::power::DEAD),
            (2, 2, &[ControllerDead, RelayContactOpen, WiringOpen]),
            (2, 2, super::level::FALSE_FULL),
        ],
    ),
    Sheet::new(
        K::RefillTest,
        &[
            three(950, 40),
            three(300, 600),
            three(50, 600),
            three(150, 100),
            three(30, 120),
        ],
        &[
            (1, 0, super::loss::LOSS),
            (1, 0, &[BleedStuckOpen]),
            (2, 0, WEAK),
            (3, 0, super::level::FALSE_FULL),
            (3, 0, &[FloatJammedUp]),
            (4, 0, UNTOLD),
            (4, 0, SHUT),
            (4, 0, VALVE),
            (4, 0, &[WiringHighResistance, CoilWeak]),
        ],
    ),
];
