//! Checks at the machines.

use super::{Sheet, three, two};
use crate::trace::check::Check as K;
use crate::trace::mode::Mode::*;

pub(super) const SHEETS: &[Sheet] = &[
    // How many are out follows from common or own cause: `heard::machines_out`
    // counts them. The rows stand for three machines or more on the loop.
    Sheet::new(
        K::MachinesOut,
        &[[995, 4, 1], [333, 333, 334]],
        &[(
            1,
            1,
            &[
                ConditionsBeyondDesign,
                PumpStopped,
                PumpBackwards,
                PumpWorn,
                PumpStrainer,
                AirBound,
                LoopValve,
                SuctionScreen,
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
                ProbeFilm,
                ProbeFoam,
                ProbeCableShort,
                HolderMoisture,
                ControllerStuckFull,
                StillWell,
                FloatJammedUp,
                TransmitterHigh,
                CallSetLow,
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
    ),
    Sheet::new(
        K::MachineOwn,
        &[two(60), two(350), two(850)],
        &[
            (2, 1, &[RegulatingValve, PressureControl, MachineOverload]),
            (
                2,
                2,
                &[
                    CondenserFouled,
                    NonCondensables,
                    Overcharge,
                    BranchStrainer,
                    BranchValve,
                ],
            ),
        ],
    ),
    Sheet::new(
        K::MachineRange,
        &[two(60), two(300), two(900)],
        &[
            (1, 0, &[MachineOverload]),
            (2, 0, &[RegulatingValve]),
            (2, 2, &[BranchStrainer, BranchValve]),
        ],
    ),
    Sheet::new(
        K::CondenserOverWater,
        &[two(930), two(550), two(90)],
        &[
            (1, 0, &[RegulatingValve, MachineOverload]),
            (1, 1, &[BranchStrainer]),
            (2, 2, &[CondenserFouled, NonCondensables, Overcharge]),
        ],
    ),
    Sheet::new(
        K::BranchValves,
        &[two(990), two(30)],
        &[(1, 1, &[BranchValve])],
    ),
    Sheet::new(
        K::BranchStrainer,
        &[two(950), two(60)],
        &[(1, 1, &[BranchStrainer])],
    ),
    Sheet::new(
        K::RegulatingByHand,
        &[two(920), two(550), two(90)],
        &[(2, 1, &[RegulatingValve])],
    ),
    Sheet::new(
        K::MachineLoad,
        &[two(930), two(550), two(90)],
        &[(2, 1, &[MachineOverload])],
    ),
    // A valve that sticks now and then moves in jerks or stops short.
    Sheet::new(
        K::RegulatingTravel,
        &[two(930), two(180)],
        &[(1, 1, &[RegulatingValve])],
    ),
    // The log and whoever was there tell of that hour, not of now.
    Sheet::new(
        K::TripHour,
        &[two(900), two(150)],
        &[(1, 1, &[ConditionsBeyondDesign, MachineOverload])],
    ),
    Sheet::new(
        K::CutOutTest,
        &[two(970), two(400), two(60)],
        &[(2, 1, &[PressureControl])],
    ),
    // It waits for the trip: what comes and goes is caught acting.
    Sheet::new(
        K::MachineRecorder,
        &[
            three(900, 40),
            three(450, 50),
            three(80, 60),
            three(100, 850),
        ],
        &[
            (1, 1, &[MachineOverload]),
            (2, 2, &[RegulatingValve, BranchStrainer, BranchValve]),
            (2, 2, super::loop_water::FLOW),
            (3, 3, &[PressureControl]),
        ],
    ),
    Sheet::new(
        K::LoadInRecord,
        &[two(940), two(500), two(70)],
        &[
            (1, 1, &[ConditionsBeyondDesign]),
            (2, 2, &[MachineOverload]),
        ],
    ),
    // The complaint itself, after a repair: whatever keeps a head up shows.
    Sheet::new(
        K::Restart,
        &[two(960), two(80)],
        &[
            (1, 0, &[RegulatingValve, PressureControl, MachineOverload]),
            (1, 0, &[ConditionsBeyondDesign]),
            (
                1,
                1,
                &[
                    CondenserFouled,
                    NonCondensables,
                    Overcharge,
                    BranchStrainer,
                    BranchValve,
                ],
            ),
            (1, 0, super::loop_water::FLOW),
            (1, 0, super::loop_water::TOWER),
        ],
    )
    .over_low(&[two(450), two(50)]),
    Sheet::new(
        K::ChargeLook,
        &[two(920), two(500), two(100)],
        &[(1, 1, &[NonCondensables]), (2, 2, &[Overcharge])],
    ),
    Sheet::new(
        K::StandingPressure,
        &[two(960), two(60)],
        &[(1, 1, &[NonCondensables])],
    ),
    Sheet::new(
        K::TubesLook,
        &[two(940), two(30)],
        &[(1, 1, &[CondenserFouled])],
    ),
];
