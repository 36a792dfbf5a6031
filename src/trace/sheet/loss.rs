//! Checks on water that leaves.

use super::{Sheet, two};
use crate::trace::check::Check as K;
use crate::trace::mode::Mode::{self, *};

/// Water leaves, but for a bleed stuck open.
pub(super) const LOSS: &[Mode] = &[BleedOverset, BasinLeak, OverflowLow, DrainAjar, DrainsBack];
/// It fills for ever and runs over.
const OVER: &[Mode] = &[ReferenceLost, FloatSunk, RelayContactWelded, ValvePassing];

pub(super) const SHEETS: &[Sheet] = &[
    Sheet::new(
        K::WaterLoss,
        &[two(960), two(750), two(130)],
        &[(2, 1, LOSS), (2, 1, &[BleedStuckOpen]), (2, 0, OVER)],
    ),
    Sheet::new(
        K::BleedLook,
        &[two(960), two(800), two(350), two(60)],
        &[(3, 1, &[BleedStuckOpen]), (2, 0, &[BleedOverset])],
    ),
    Sheet::new(
        K::BleedSettings,
        &[two(940), two(80)],
        &[(1, 1, &[BleedOverset])],
    ),
    Sheet::new(
        K::OverflowLook,
        &[two(960), two(250), two(60)],
        &[(1, 0, OVER), (1, 0, &[DrainsBack]), (2, 2, &[OverflowLow])],
    ),
    Sheet::new(K::DrainLook, &[two(980), two(50)], &[(1, 1, &[DrainAjar])]),
    Sheet::new(
        K::LevelHold,
        &[two(960), two(800), two(100)],
        &[
            (2, 1, &[BleedStuckOpen, BasinLeak, DrainAjar]),
            (1, 0, &[BleedOverset]),
        ],
    ),
    Sheet::new(
        K::PumpStopRise,
        &[two(950), two(450), two(80)],
        &[(2, 1, &[DrainsBack])],
    ),
];
