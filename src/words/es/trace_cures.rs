//! Spanish: how to correct, how to prove, which parts.

use crate::trace::{Mode, Part};

pub(crate) fn cure(mode: Mode) -> &'static str {
    use Mode as M;
    match mode {
        M::CondenserFouled => "Cepille o desincruste los tubos; pregunte por qué se hizo sarro.",
        M::RegulatingValve => "Enjuáguela, ajústela a la alta deseada, o cámbiela.",
        M::NonCondensables => {
            "Purgue o recupere, haga vacío, pese la carga. Trabajo de técnico certificado."
        }
        M::Overcharge => "Recupere hasta la carga de la placa. Trabajo de técnico certificado.",
        M::PressureControl => "Compare su ajuste con la placa; cámbielo si se corre.",
        M::BranchStrainer | M::StrainerBlocked => {
            "Aísle, limpie o cambie la malla, enjuague, y anote qué basura era."
        }
        M::BranchValve | M::HandValveShut | M::LoopValve => {
            "Ábrala por completo, averigüe quién la cerró y por qué, y etiquétela."
        }
        M::MachineOverload => "Quite carga, y diga al dueño cuánto puede llevar el equipo.",
        M::ConditionsBeyondDesign => {
            "Quite la carga que pueda y diga al dueño cuánto puede la torre en un día así."
        }
        M::PumpStopped => "Bloquee y etiquete. Halle por qué se disparó antes de arrancarla.",
        M::PumpBackwards | M::FanBackwards => {
            "Bloquee y etiquete. Cambie dos fases; anote quién la cableó al último."
        }
        M::PumpWorn => {
            "Bloquee y etiquete. Cople, impulsor o anillo de desgaste; o la bomba entera."
        }
        M::PumpStrainer => "Aísle y límpielo; vea qué manda la torre hacia abajo.",
        M::AirBound => "Ventee los puntos altos y halle por dónde entra aire.",
        M::SuctionScreen => "Bomba parada. Despeje malla e igualador desde fuera de la pileta.",
        M::FanStopped => {
            "Bloquee y etiquete. Motor, sobrecarga, arrancador o variador: halle por qué paró."
        }
        M::BeltOff => "Bloquee y etiquete. Alinee las poleas y ponga un juego igual de bandas.",
        M::FanControl => "Corrija el ajuste o el sensor; revise los límites del variador.",
        M::FillFouled => "Programe una limpieza con el tratador de agua, o relleno nuevo.",
        M::AirInlet => "Ventilador parado. Despeje persianas y eliminadores.",
        M::Recirculation => "Quite lo que regresa el aire, o suba la descarga.",
        M::NozzlesBlocked => "Bomba y ventilador parados. Limpie o cambie las espreas.",
        M::CellUneven => "Balancee las celdas con sus válvulas; despeje el igualador.",
        M::TowerBypass => "Libere o repare la válvula de bypass y su actuador.",
        M::ProbeFilm => {
            "Limpie o cambie varillas y portaelectrodos, baje la sensibilidad, atienda la lama."
        }
        M::ProbeFoam => {
            "Atienda la espuma con el tratador de agua; proteja la sonda; sensibilidad abajo."
        }
        M::ProbeCableShort => "Cambie cable o terminales, y selle la entrada.",
        M::HolderMoisture => "Seque la tapa, cambie su sello, y ponga la entrada hacia abajo.",
        M::ControllerStuckFull | M::ControllerDead => {
            "Cambie el control de nivel; ajuste su sensibilidad."
        }
        M::StillWell => "Sóplelo y límpielo; póngale malla al pie.",
        M::FloatJammedUp => "Despéjelo o enderécelo; dele espacio.",
        M::TransmitterHigh => "Límpielo, ventéelo y ajústelo contra la cinta; o cámbielo.",
        M::CallSetLow => "Ponga el nivel de llamada sobre la succión de la bomba, con holgura.",
        M::ReferenceLost => {
            "Reponga varilla y cable; en una pileta de plástico, póngale varilla propia."
        }
        M::FloatSunk => "Cambie el flotador.",
        M::SupplyLost | M::ControlPowerLost => {
            "Halle por qué se fue la alimentación antes de restablecerla."
        }
        M::FuseBlown => "Primero halle el corto; luego el mismo fusible, no mayor.",
        M::TransformerFailed => {
            "Busque un corto en lo que alimenta; cámbielo por uno de igual capacidad."
        }
        M::DisconnectOff => "Averigüe quién lo abrió y por qué; ciérrelo solo con eso resuelto.",
        M::RelayContactOpen | M::RelayContactWelded => {
            "Cambie el relevador. Revise qué ha estado conmutando su contacto."
        }
        M::WiringHighResistance => "Rehaga las uniones; mida otra vez la caída con carga.",
        M::WiringOpen => "Halle el corte y cambie el tramo; protéjalo de lo que lo rompió.",
        M::CoilOpen | M::CoilWeak => {
            "Cambie la bobina por una del mismo voltaje. Nunca la energice fuera de su vástago."
        }
        M::ValveStuck => "Aísle y drene. Límpiela, ponga diafragma y asiento, o cámbiela.",
        M::PilotBlocked => "Aísle y drene. Limpie el orificio piloto; limpie también el colador.",
        M::DiaphragmTorn => "Aísle y drene. Ponga el kit de diafragma.",
        M::ValveBackwards => "Aísle y drene. Voltéela.",
        M::LowDifferential => "Suba la presión, o ponga una válvula que no la necesite para abrir.",
        M::ValvePassing => "Aísle y drene. Limpie o cambie el asiento.",
        M::BackflowStuck => "Dele servicio, con probador certificado donde el código lo pida.",
        M::ReducingValve => "Ajústela, límpiela o cámbiela.",
        M::MainsLow => "Pregunte al edificio, luego a la compañía de agua. Mientras, llene a mano.",
        M::LineFrozen => "Deshiélela despacio, sin flama; póngale cable calefactor y aislante.",
        M::BleedStuckOpen => "Limpie o cambie la válvula de purga.",
        M::BleedOverset => "Corrija el ajuste con el tratador de agua; limpie su sonda.",
        M::BasinLeak => "Repárela; mientras tanto manténgala llena y vigilada.",
        M::OverflowLow => "Ponga el rebosadero por encima del nivel de paro.",
        M::DrainAjar => "Ciérrelo y póngale tapón o candado.",
        M::DrainsBack => "Repare la válvula check, o baje el nivel de paro.",
        M::MachineFault => "Trabaje en este equipo: condensador, válvula reguladora, carga y aire.",
        M::TowerAirSide => {
            "Bloquee el ventilador. Corrija banda, variador, giro o motor; limpie el relleno."
        }
        M::WaterFlowLow => "Limpie el colador de la bomba, ventee el aire, revise válvulas y giro.",
        M::SensorFalseFull => "Limpie, seque o cambie lo que sensa el nivel; revise su control.",
        M::BleedOrLeak => "Cierre o repare lo que corre: purga, drenaje, flotador, sello o tubo.",
    }
}

pub(crate) fn proof(mode: Mode) -> &'static str {
    use Mode as M;
    match mode {
        M::ProbeFilm | M::ProbeFoam | M::HolderMoisture | M::SensorFalseFull => {
            "Dos llenados sin meter mano, y uno más con la bomba andando."
        }
        M::ReferenceLost | M::FloatSunk | M::RelayContactWelded | M::ValvePassing => {
            "El llenado para solo en su marca, dos veces."
        }
        M::ConditionsBeyondDesign | M::MachineOverload => {
            "La alta baja al quitar carga, y nada más lee mal."
        }
        _ => match mode.group().branch() {
            crate::trace::Branch::Machine => {
                "La alta sigue al agua que sale como en sus vecinos, media hora con carga."
            }
            crate::trace::Branch::Conditions | crate::trace::Branch::Tower => {
                "La aproximación vuelve a lo que debe ser hoy, a plena carga."
            }
            crate::trace::Branch::CondenserWater => {
                "Manómetros quietos y el rango de vuelta a lo normal."
            }
            crate::trace::Branch::MakeupChain => {
                "Caudal completo en cada llamada, y dos llenados sin meter mano."
            }
            crate::trace::Branch::WaterLoss => {
                "El nivel se sostiene con el llenado cerrado, menos lo que se evapora."
            }
        },
    }
}

pub(crate) fn part(part: Part) -> &'static str {
    match part {
        Part::RegulatingValve => "Válvula reguladora de agua",
        Part::FanBelt => "Banda del ventilador",
        Part::FanMotor => "Motor del ventilador",
        Part::PumpStrainerGasket => "Empaque del colador de la bomba",
        Part::AirVent => "Venteo de aire",
        Part::ControlFuse => "Fusible de control",
        Part::ControlTransformer => "Transformador de control",
        Part::Electrodes => "Varillas de electrodo",
        Part::ElectrodeHolder => "Portaelectrodos",
        Part::LevelRelay => "Relevador de nivel",
        Part::ValveCoil => "Bobina de la solenoide",
        Part::ValveKit => "Kit de diafragma y asiento",
        Part::FillValve => "Válvula solenoide de llenado",
        Part::HandValve => "Válvula manual",
        Part::StrainerScreen => "Malla del colador",
        Part::ReducingValve => "Reductora de presión",
        Part::BleedValve => "Válvula de purga",
        Part::PipeAndFittings => "Tubo y conexiones",
        Part::PressureControl => "Presostato de alta",
        Part::CondenserGaskets => "Empaques del condensador",
        Part::PumpParts => "Sello o cople de la bomba",
        Part::MotorControl => "Contactor, sobrecarga o variador",
        Part::SprayNozzles => "Espreas",
        Part::FillOrLouvers => "Relleno o persianas",
        Part::LevelController => "Control de nivel",
        Part::CableAndTerminals => "Cable y terminales",
        Part::Float => "Flotador",
        Part::Transmitter => "Transmisor de nivel",
        Part::HolderCap => "Tapa de la sonda y sello",
        Part::Antifoam => "Antiespumante, por el tratador de agua",
        Part::BackflowKit => "Kit del preventor de reflujo",
        Part::HeatTape => "Cable calefactor y aislante",
        Part::CheckValve => "Válvula check",
    }
}
