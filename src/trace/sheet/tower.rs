//! Checks on the tower, air and water.

use super::{Sheet, three, two};
use crate::trace::check::Check as K;
use crate::trace::mode::Mode::*;

pub(super) const SHEETS: &[Sheet] = &[
    Sheet::new(
        K::ApproachToday,
        &[
            three(50, 880),
            three(70, 480),
            three(250, 700),
            three(880, 100),
        ],
        &[
            (1, 0, super::loop_water::FLOW),
            (2, 0, &[ConditionsBeyondDesign]),
            (3, 0, super::loop_water::TOWER),
        ],
    )
    .over_low(&[
        three(350, 400),
        three(300, 400),
        three(400, 400),
        three(800, 140),
    ]),
    Sheet::new(
        K::FanAndAir,
        &[two(960), two(800), two(400), two(80)],
        &[
            (1, 1, &[NozzlesBlocked]),
            (2, 1, &[FillFouled, AirInlet, Recirculation]),
            (3, 0, &[FanStopped, FanBackwards, FanControl]),
            (3, 1, &[BeltOff]),
        ],
    ),
    Sheet::new(
        K::FanRuns,
        &[
            three(960, 30),
            three(700, 250),
            three(250, 600),
            three(60, 840),
            three(10, 30),
        ],
        &[
            (2, 1, &[BeltOff]),
            (3, 1, &[FanControl]),
            (4, 0, &[FanStopped]),
        ],
    ),
    Sheet::new(
        K::FanRotation,
        &[two(985), two(40)],
        &[(1, 1, &[FanBackwards])],
    ),
    Sheet::new(
        K::BeltLook,
        &[two(950), two(250), two(40)],
        &[(2, 1, &[BeltOff])],
    ),
    Sheet::new(
        K::FanCommand,
        &[two(950), two(400), two(80)],
        &[(2, 1, &[FanControl])],
    ),
    Sheet::new(
        K::FillLook,
        &[two(930), two(550), two(80)],
        &[(1, 1, &[NozzlesBlocked]), (2, 2, &[FillFouled])],
    ),
    Sheet::new(K::InletLook, &[two(950), two(80)], &[(1, 1, &[AirInlet])]),
    Sheet::new(
        K::InletAir,
        &[two(940), two(450), two(90)],
        &[(2, 1, &[Recirculation])],
    ),
    Sheet::new(
        K::SprayLook,
        &[two(950), two(350), two(60)],
        &[
            (1, 0, super::loop_water::FLOW),
            (1, 1, &[CellUneven]),
            (2, 2, &[NozzlesBlocked]),
        ],
    )
    .over_low(&[two(450), two(300), two(60)]),
    Sheet::new(K::CellLook, &[two(960), two(70)], &[(1, 1, &[CellUneven])]),
    Sheet::new(
        K::WeatherAndLoad,
        &[two(80), two(500), two(930)],
        &[(2, 1, &[ConditionsBeyondDesign])],
    ),
    Sheet::new(
        K::FanInRecord,
        &[
            three(960, 30),
            three(550, 400),
            three(80, 120),
            three(20, 940),
        ],
        &[
            (1, 1, &[BeltOff]),
            (2, 2, &[FanControl]),
            (3, 3, &[FanStopped]),
        ],
    ),
];
