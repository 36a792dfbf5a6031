//! Checks on the condenser water loop: temperatures, pump, valves.

use super::{Sheet, three, two};
use crate::trace::check::Check as K;
use crate::trace::mode::Mode::{self, *};

/// Faults that starve the loop of water.
pub(crate) const FLOW: &[Mode] = &[
    PumpStopped,
    PumpBackwards,
    PumpWorn,
    PumpStrainer,
    AirBound,
    LoopValve,
    SuctionScreen,
];

/// Faults that keep the tower from cooling what flows over it, and a day that
/// is too much for it.
pub(super) const TOWER: &[Mode] = &[
    FanStopped,
    FanBackwards,
    BeltOff,
    FanControl,
    FillFouled,
    AirInlet,
    Recirculation,
    NozzlesBlocked,
    CellUneven,
    TowerBypass,
];

pub(super) const SHEETS: &[Sheet] = &[
    Sheet::new(
        K::EnteringWater,
        &[two(70), two(150), two(900)],
        &[
            (1, 0, FLOW),
            (2, 0, TOWER),
            (2, 1, &[ConditionsBeyondDesign]),
        ],
    )
    .over_low(&[two(400), two(400), two(920)]),
    Sheet::new(
        K::RangeWidth,
        &[two(60), two(300), two(850)],
        &[
            (1, 0, &[ConditionsBeyondDesign, NozzlesBlocked]),
            (2, 0, FLOW),
        ],
    )
    .over_low(&[two(700), two(700), two(850)]),
    Sheet::new(
        K::PumpPressure,
        &[
            three(930, 40),
            three(650, 100),
            three(100, 750),
            three(100, 150),
        ],
        &[
            (1, 1, &[LoopValve]),
            (2, 0, &[AirBound, SuctionScreen]),
            (3, 0, &[PumpStopped, PumpWorn]),
            (3, 3, &[PumpBackwards, PumpStrainer]),
        ],
    )
    .over_low(&[
        three(200, 600),
        three(200, 600),
        three(100, 750),
        three(100, 300),
    ]),
    Sheet::new(
        K::PumpCurrent,
        &[
            three(940, 50),
            three(400, 580),
            three(200, 770),
            three(20, 40),
        ],
        &[
            (1, 1, &[PumpStrainer, LoopValve, PumpBackwards]),
            (2, 0, &[AirBound, PumpWorn]),
            (3, 0, &[PumpStopped]),
        ],
    )
    .over_low(&[
        three(450, 530),
        three(300, 680),
        three(200, 770),
        three(20, 40),
    ]),
    // A flag stays down and a drive remembers, also when it runs again.
    Sheet::new(
        K::TripMemory,
        &[
            three(930, 40),
            three(600, 370),
            three(250, 720),
            three(250, 30),
        ],
        &[
            (1, 1, &[FanControl]),
            (2, 2, &[FanStopped]),
            (3, 3, &[PumpStopped]),
        ],
    ),
    Sheet::new(
        K::PumpRotation,
        &[two(985), two(40)],
        &[(1, 1, &[PumpBackwards])],
    ),
    Sheet::new(
        K::PumpStrainerDrop,
        &[two(950), two(300), two(70)],
        &[(2, 1, &[PumpStrainer])],
    ),
    // With nothing flowing a strainer or a valve costs no head.
    Sheet::new(
        K::ShutOffHead,
        &[two(950), two(450), two(70), two(20)],
        &[
            (1, 0, &[AirBound, SuctionScreen]),
            (2, 2, &[PumpWorn, PumpBackwards]),
            (3, 0, &[PumpStopped]),
        ],
    )
    .over_low(&[two(600), two(400), two(70), two(20)]),
    Sheet::new(K::LoopValves, &[two(980), two(50)], &[(1, 1, &[LoopValve])]),
    Sheet::new(
        K::VentAir,
        &[two(930), two(350), two(80)],
        &[(2, 1, &[AirBound])],
    )
    .over_low(&[two(450), two(300), two(80)]),
    // The pump also starves over a basin that ran low.
    Sheet::new(
        K::LoopRecorder,
        &[
            three(920, 40),
            three(250, 500),
            three(40, 900),
            three(60, 50),
        ],
        &[
            (1, 1, super::level::FALSE_FULL),
            (2, 2, FLOW),
            (3, 3, TOWER),
            (3, 3, &[ConditionsBeyondDesign]),
        ],
    ),
    Sheet::new(
        K::PumpInRecord,
        &[
            three(940, 50),
            three(350, 630),
            three(150, 820),
            three(20, 40),
        ],
        &[
            (1, 1, &[PumpStrainer, LoopValve, PumpBackwards]),
            (2, 2, &[AirBound, SuctionScreen, PumpWorn]),
            (3, 3, &[PumpStopped]),
        ],
    )
    .over_low(&[
        three(450, 530),
        three(300, 680),
        three(150, 820),
        three(20, 40),
    ]),
    Sheet::new(
        K::SuctionLook,
        &[two(950), two(250), two(80)],
        &[(2, 1, &[SuctionScreen])],
    )
    .over_low(&[two(500), two(250), two(80)]),
    Sheet::new(
        K::TowerBypassLook,
        &[two(960), two(350), two(60)],
        &[(2, 1, &[TowerBypass])],
    ),
];
