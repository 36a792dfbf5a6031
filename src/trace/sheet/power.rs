//! Checks along the fill control's electrics. In the series circuit supply -
//! contact - joints - coil, voltage disappears just behind the open; a joint
//! of 20 ohm before a 24 V, 10 VA coil leaves it 74 % (57.6 of 77.6 ohm),
//! below pull-in.

use super::{Sheet, three, two};
use crate::trace::check::Check as K;
use crate::trace::mode::Mode::{self, *};

/// The control has no power.
pub(super) const DEAD: &[Mode] = &[SupplyLost, FuseBlown, TransformerFailed, DisconnectOff];

pub(super) const SHEETS: &[Sheet] = &[
    Sheet::new(
        K::ControlVoltage,
        &[three(970, 20), three(10, 140)],
        &[(1, 0, DEAD)],
    ),
    Sheet::new(
        K::DisconnectLook,
        &[two(990), two(20)],
        &[(1, 1, &[DisconnectOff])],
    ),
    Sheet::new(
        K::PanelSupply,
        &[two(980), two(20)],
        &[(1, 0, &[SupplyLost, DisconnectOff])],
    ),
    Sheet::new(
        K::TransformerOutput,
        &[three(970, 20), three(20, 230), three(10, 30)],
        &[
            (1, 0, &[TransformerFailed]),
            (2, 0, &[SupplyLost, DisconnectOff]),
        ],
    ),
    Sheet::new(
        K::FuseCheck,
        &[two(985), two(800), two(20)],
        &[(2, 2, &[FuseBlown]), (1, 0, &[TransformerFailed])],
    ),
    // Watched at the output contact.
    Sheet::new(
        K::Substitution,
        &[two(970), two(150), two(50), two(20)],
        &[
            (1, 0, &[RelayContactOpen, RelayContactWelded]),
            (2, 0, &[ControllerStuckFull, ControllerDead]),
            (3, 0, DEAD),
        ],
    ),
    Sheet::new(
        K::RelayTap,
        &[two(940), two(300), two(120)],
        &[(2, 1, &[RelayContactOpen])],
    ),
    // One failure in ten is enough: what comes and goes mostly shows.
    Sheet::new(
        K::CycleCall,
        &[two(960), two(450), two(40)],
        &[
            (
                2,
                1,
                &[
                    RelayContactOpen,
                    WiringHighResistance,
                    WiringOpen,
                    CoilOpen,
                    CoilWeak,
                    ValveStuck,
                    PilotBlocked,
                    ControllerDead,
                    ControllerStuckFull,
                ],
            ),
            (2, 0, &[DiaphragmTorn, ValveBackwards, LowDifferential]),
            (2, 0, super::fill::SHUT),
            (2, 0, DEAD),
        ],
    ),
    Sheet::new(
        K::ContactDrop,
        &[two(960), two(70)],
        &[(1, 0, &[RelayContactOpen, ControllerDead])],
    ),
    Sheet::new(
        K::OutputVoltage,
        &[two(970), two(850), two(30)],
        &[
            (1, 0, super::level::FALSE_FULL),
            (1, 0, &[FloatJammedUp]),
            (2, 0, &[RelayContactOpen, ControllerDead]),
            (2, 0, DEAD),
        ],
    ),
    Sheet::new(
        K::Joints,
        &[two(930), two(450), two(200)],
        &[(2, 2, &[WiringHighResistance]), (2, 1, &[WiringOpen])],
    ),
    Sheet::new(
        K::CoilVoltage,
        &[
            three(960, 30),
            three(850, 30),
            three(100, 850),
            three(20, 60),
        ],
        &[
            (1, 0, super::level::FALSE_FULL),
            (1, 0, &[FloatJammedUp]),
            (2, 0, &[WiringHighResistance]),
            (3, 0, &[WiringOpen, RelayContactOpen, ControllerDead]),
            (3, 0, DEAD),
        ],
    ),
    Sheet::new(
        K::CoilCurrent,
        &[
            three(960, 30),
            three(850, 30),
            three(150, 780),
            three(10, 40),
        ],
        &[
            (1, 0, super::level::FALSE_FULL),
            (1, 0, &[FloatJammedUp]),
            (2, 0, &[WiringHighResistance, CoilWeak]),
            (
                3,
                0,
                &[CoilOpen, WiringOpen, RelayContactOpen, ControllerDead],
            ),
            (3, 0, DEAD),
        ],
    ),
    Sheet::new(
        K::CoilResistance,
        &[
            three(970, 20),
            three(500, 50),
            three(300, 100),
            three(850, 130),
            three(20, 960),
        ],
        &[(2, 1, &[CoilWeak]), (4, 3, &[CoilOpen])],
    ),
    // A blade held at the nut is hard to misread.
    Sheet::new(
        K::CoilPull,
        &[two(990), two(850), two(250), two(20)],
        &[
            (1, 0, super::level::FALSE_FULL),
            (1, 0, &[FloatJammedUp]),
            (2, 0, &[WiringHighResistance, CoilWeak]),
            (
                3,
                0,
                &[CoilOpen, WiringOpen, RelayContactOpen, ControllerDead],
            ),
            (3, 0, DEAD),
        ],
    ),
];
