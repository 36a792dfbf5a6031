//! Checks on the basin's level and on what senses it. Film and damp of the
//! probe holder follow from electrode conductance: a film of a millimeter
//! across 40 mm reads some 10 kohm and a clean dry holder above 1 Mohm.

use super::{Sheet, three, two};
use crate::trace::check::Check as K;
use crate::trace::mode::Mode::{self, *};

/// Faults by which the sensing says full over a low basin.
pub(crate) const FALSE_FULL: &[Mode] = &[
    ProbeFilm,
    ProbeFoam,
    ProbeCableShort,
    HolderMoisture,
    ControllerStuckFull,
    StillWell,
    TransmitterHigh,
    CallSetLow,
];

pub(super) const SHEETS: &[Sheet] = &[
    Sheet::new(K::BasinOnArrival, &[two(10)], &[])
        .over_low(&[two(990)])
        .on_arrival(),
    // Over a basin that was low: still low while something drains it.
    Sheet::new(
        K::LevelNow,
        &[three(20, 30), three(40, 30)],
        &[(
            1,
            0,
            &[
                ProbeFilm,
                ProbeFoam,
                ProbeCableShort,
                HolderMoisture,
                ControllerStuckFull,
                StillWell,
                FloatJammedUp,
                TransmitterHigh,
                SupplyLost,
                FuseBlown,
                TransformerFailed,
                DisconnectOff,
                ControllerDead,
                RelayContactOpen,
                WiringHighResistance,
                WiringOpen,
                CoilOpen,
                CoilWeak,
                ValveStuck,
                PilotBlocked,
                DiaphragmTorn,
                ValveBackwards,
                LowDifferential,
                HandValveShut,
                StrainerBlocked,
                BackflowStuck,
                ReducingValve,
                MainsLow,
                LineFrozen,
                BleedStuckOpen,
                BleedOverset,
                BasinLeak,
                OverflowLow,
                DrainAjar,
                DrainsBack,
            ],
        )],
    )
    .over_low(&[three(100, 600), three(800, 130)])
    .on_arrival(),
    Sheet::new(
        K::CallAsFound,
        &[
            three(20, 970),
            three(10, 980),
            three(950, 40),
            three(20, 380),
            three(10, 40),
        ],
        &[
            (1, 0, FALSE_FULL),
            (1, 0, &[FloatJammedUp]),
            (2, 0, &[ReferenceLost, FloatSunk]),
            (3, 0, &[ControllerDead]),
            (4, 0, super::power::DEAD),
        ],
    )
    .over_low(&[
        three(980, 10),
        three(30, 960),
        three(980, 10),
        three(60, 340),
        three(10, 40),
    ]),
    // Wiping takes the film off, so a dried probe calls whether or not it
    // lied before; a shorted cable or a stuck control does not.
    Sheet::new(
        K::ProbeDried,
        &[two(970), two(900), two(80), two(10)],
        &[
            (1, 0, &[ProbeFilm, ProbeFoam, HolderMoisture, StillWell]),
            (
                2,
                0,
                &[ProbeCableShort, ControllerStuckFull, ControllerDead],
            ),
            (3, 0, super::power::DEAD),
        ],
    ),
    Sheet::new(
        K::WiresOffHolder,
        &[two(970), two(60), two(10)],
        &[
            (
                1,
                0,
                &[ProbeCableShort, ControllerStuckFull, ControllerDead],
            ),
            (2, 0, super::power::DEAD),
        ],
    ),
    Sheet::new(
        K::HolderCap,
        &[two(950), two(700), two(200), two(70)],
        &[(1, 1, &[ProbeFoam]), (3, 2, &[HolderMoisture])],
    ),
    // A film stays on the holder, drier or wetter, when it lets go.
    Sheet::new(
        K::ProbeFilm,
        &[two(940), two(750), two(350), two(90)],
        &[
            (1, 1, &[ProbeFoam]),
            (3, 2, &[ProbeFilm]),
            (2, 1, &[HolderMoisture]),
        ],
    ),
    // Damp at the terminals goes with the cloth, a film on the holder does not.
    Sheet::new(
        K::TerminalsDried,
        &[two(950), two(850), two(350), two(90)],
        &[(1, 1, &[ProbeFoam, HolderMoisture]), (3, 2, &[ProbeFilm])],
    ),
    Sheet::new(
        K::FoamLook,
        &[two(940), two(450), two(50)],
        &[(2, 1, &[ProbeFoam])],
    ),
    // Water that foams does so in a jar too.
    Sheet::new(K::FoamJar, &[two(920), two(120)], &[(1, 1, &[ProbeFoam])]),
    // A clean holder sheds the water within the minute, one with film keeps
    // it: this brings on what comes and goes.
    Sheet::new(
        K::HolderWetted,
        &[two(930), two(220), two(80), two(10)],
        &[
            (1, 1, &[ProbeFilm]),
            (
                2,
                0,
                &[ProbeCableShort, ControllerStuckFull, ControllerDead],
            ),
            (3, 0, super::power::DEAD),
        ],
    ),
    Sheet::new(
        K::FloatByHand,
        &[two(950), two(550), two(300), two(100)],
        &[(3, 1, &[FloatJammedUp]), (2, 2, &[FloatSunk, StillWell])],
    ),
    Sheet::new(
        K::FloatLook,
        &[
            three(940, 40),
            three(400, 560),
            three(100, 860),
            three(50, 50),
        ],
        &[(2, 1, &[FloatJammedUp]), (3, 3, &[FloatSunk])],
    ),
    Sheet::new(
        K::LevelSignal,
        &[two(960), two(650), two(50)],
        &[(2, 1, &[TransmitterHigh]), (2, 0, &[StillWell])],
    ),
    Sheet::new(
        K::StillWellLook,
        &[two(950), two(300), two(70)],
        &[(2, 1, &[StillWell])],
    ),
    Sheet::new(K::CallMark, &[two(950), two(50)], &[(1, 1, &[CallSetLow])]),
    // Treated water over its usual strength foams and films more; makeup that
    // runs to waste thins it.
    Sheet::new(
        K::Conductivity,
        &[three(850, 90), three(600, 350), three(300, 30)],
        &[
            (1, 1, &[ProbeFilm, ProbeFoam]),
            (2, 1, &[BleedStuckOpen]),
            (2, 0, super::loss::LOSS),
            (
                2,
                0,
                &[ReferenceLost, FloatSunk, RelayContactWelded, ValvePassing],
            ),
        ],
    )
    .over_low(&[three(550, 400), three(400, 570), three(300, 60)]),
];
