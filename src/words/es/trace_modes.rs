//! Spanish: fault modes, parts of the plant, places.

use crate::trace::{Branch, Group, Manner, Mode, Place};

pub(crate) fn name(mode: Mode) -> &'static str {
    use Mode as M;
    match mode {
        M::CondenserFouled => "Condensador sucio",
        M::RegulatingValve => "Válvula reguladora no abre",
        M::NonCondensables => "Aire en el condensador",
        M::Overcharge => "Exceso de refrigerante",
        M::PressureControl => "Presostato de alta dispara antes",
        M::BranchStrainer => "Colador del equipo tapado",
        M::BranchValve => "Válvula manual del equipo cerrada",
        M::MachineOverload => "Equipo sobrecargado",
        M::ConditionsBeyondDesign => "Día que rebasa a la torre",
        M::PumpStopped => "Bomba de condensación parada",
        M::PumpBackwards => "Bomba de condensación al revés",
        M::PumpWorn => "Bomba de condensación gastada",
        M::PumpStrainer => "Colador de la bomba tapado",
        M::AirBound => "Aire en el circuito de agua",
        M::LoopValve => "Válvula del circuito estrangulada",
        M::SuctionScreen => "Malla de salida de la pileta tapada",
        M::FanStopped => "Ventilador de la torre parado",
        M::FanBackwards => "Ventilador de la torre al revés",
        M::BeltOff => "Banda patinando o suelta",
        M::FanControl => "Ventilador frenado por su control",
        M::FillFouled => "Relleno con sarro o sucio",
        M::AirInlet => "Entrada de aire tapada",
        M::Recirculation => "Torre respira su propio aire",
        M::NozzlesBlocked => "Espreas tapadas",
        M::CellUneven => "Una celda corta de agua",
        M::TowerBypass => "Bypass de la torre pasando",
        M::ProbeFilm => "Película en la sonda",
        M::ProbeFoam => "Espuma en la sonda",
        M::ProbeCableShort => "Cable de la sonda en corto",
        M::HolderMoisture => "Humedad en la tapa de la sonda",
        M::ControllerStuckFull => "Control de nivel trabado en lleno",
        M::StillWell => "Tubo tranquilizador tapado",
        M::FloatJammedUp => "Flotador atorado arriba",
        M::TransmitterHigh => "Transmisor de nivel lee de más",
        M::CallSetLow => "Nivel de llamada muy bajo",
        M::ReferenceLost => "Electrodo de referencia perdido",
        M::FloatSunk => "Flotador con agua adentro",
        M::SupplyLost => "Alimentación del control cortada",
        M::FuseBlown => "Fusible de control fundido",
        M::TransformerFailed => "Transformador de control dañado",
        M::DisconnectOff => "Desconectador del control abierto",
        M::ControllerDead => "Control de nivel muerto",
        M::RelayContactOpen => "Contacto del relevador quemado",
        M::RelayContactWelded => "Contacto del relevador pegado",
        M::WiringHighResistance => "Falso contacto hacia la solenoide",
        M::WiringOpen => "Cable a la solenoide roto",
        M::CoilOpen => "Bobina de la solenoide abierta",
        M::CoilWeak => "Bobina de la solenoide débil",
        M::ValveStuck => "Válvula solenoide trabada cerrada",
        M::PilotBlocked => "Piloto de la solenoide tapado",
        M::DiaphragmTorn => "Diafragma de la solenoide roto",
        M::ValveBackwards => "Válvula solenoide al revés",
        M::LowDifferential => "Falta presión para abrir la válvula",
        M::ValvePassing => "Válvula solenoide pasando",
        M::HandValveShut => "Válvula manual de reposición cerrada",
        M::StrainerBlocked => "Colador de reposición tapado",
        M::BackflowStuck => "Preventor de reflujo trabado",
        M::ReducingValve => "Reductora de presión baja",
        M::MainsLow => "Presión de la red baja",
        M::LineFrozen => "Línea de reposición congelada",
        M::BleedStuckOpen => "Purga trabada abierta",
        M::BleedOverset => "Purga abierta de más",
        M::BasinLeak => "Fuga en pileta o tubería",
        M::OverflowLow => "Rebosadero muy bajo",
        M::DrainAjar => "Drenaje de la pileta mal cerrado",
        M::DrainsBack => "El agua del circuito se regresa",
        M::MachineFault => "Falla propia de un equipo",
        M::TowerAirSide => "Torre corta de aire",
        M::WaterFlowLow => "Poco caudal de condensación",
        M::ControlPowerLost => "Control de llenado sin energía",
        M::SensorFalseFull => "Sensor dice lleno sin estarlo",
        M::BleedOrLeak => "La pileta pierde agua",
    }
}

pub(crate) fn line(mode: Mode) -> &'static str {
    use Mode as M;
    match mode {
        M::CondenserFouled => "La alta queda muy por encima del agua que sale, y más con carga.",
        M::RegulatingValve => "A este equipo le llega poca agua y su rango es amplio.",
        M::NonCondensables => {
            "La alta queda sobre lo que da la temperatura del agua, aun con el equipo parado."
        }
        M::Overcharge => {
            "Alta presión con mucho subenfriamiento, peor desde que alguien agregó gas."
        }
        M::PressureControl => "Se dispara a una presión que no es alta.",
        M::BranchStrainer => "Rango amplio en este equipo, normal en sus vecinos.",
        M::BranchValve => "Quedó cerrada o estrangulada: rango amplio solo en este equipo.",
        M::MachineOverload => {
            "Producto caliente o una puerta abierta: todo lee alto, nada está roto."
        }
        M::ConditionsBeyondDesign => {
            "Bulbo húmedo o carga pasan de lo que la torre puede; puede no haber nada roto."
        }
        M::PumpStopped => "Sin caudal; los disparos se siguen en menos de un minuto.",
        M::PumpBackwards => "Trabaja, suena bien, da poco. Busque cableado reciente.",
        M::PumpWorn => "Poca presión y poca corriente, peor con los meses.",
        M::PumpStrainer => "Succión baja después del colador, rango amplio en todos los equipos.",
        M::AirBound => "Los manómetros oscilan, la bomba hace ruido, el caudal va y viene.",
        M::LoopValve => "Una válvula común quedó a medio cerrar: presión alta antes, poco caudal.",
        M::SuctionScreen => "Pileta llena y la bomba sin agua: hojas o sarro en la salida.",
        M::FanStopped => "Rango normal, agua muy por encima del bulbo húmedo.",
        M::FanBackwards => "El ventilador gira y llega poco aire; busque cableado reciente.",
        M::BeltOff => "El motor gira, el ventilador lento o quieto; polvo de hule en las poleas.",
        M::FanControl => "El termostato o el variador le pide muy poco al ventilador.",
        M::FillFouled => "Peor poco a poco en la temporada; sarro o lama en el relleno.",
        M::AirInlet => "Hojas, bolsas o sarro en persianas y eliminadores.",
        M::Recirculation => "El aire de descarga regresa; un muro nuevo, viento o un vecino.",
        M::NozzlesBlocked => "Franjas secas en el relleno; unas espreas rocían y otras no.",
        M::CellUneven => "Una celda rebosa, la otra lleva poca.",
        M::TowerBypass => "El agua caliente se brinca la torre y cae a la pileta.",
        M::ProbeFilm => {
            "Lama o sarro une las varillas: lleno con la pileta baja; se quita al limpiar o secar."
        }
        M::ProbeFoam => {
            "La espuma sube a las varillas: lleno con la bomba andando, bien con ella parada."
        }
        M::ProbeCableShort => "Cable o terminales en corto: lleno haga lo que haga el agua.",
        M::HolderMoisture => "Agua en la tapa une las terminales, peor después de lluvia o lavado.",
        M::ControllerStuckFull => "Dice lleno aun con la sonda seca o la resistencia abierta.",
        M::StillWell => "El agua del tubo tranquilizador ya no sigue a la pileta.",
        M::FloatJammedUp => "Lama, sarro o un brazo doblado sostiene el flotador arriba.",
        M::TransmitterHigh => {
            "Deriva, lodo o un venteo tapado: más en la pantalla que en la cinta."
        }
        M::CallSetLow => "Pide, pero por debajo de donde la bomba empieza a tomar aire.",
        M::ReferenceLost => "Nunca ve agua, así que llena sin parar y rebosa.",
        M::FloatSunk => "Un flotador pesado nunca sube: llena sin parar y rebosa.",
        M::SupplyLost => "El interruptor o la alimentación del edificio está fuera; nada enciende.",
        M::FuseBlown => "Entra alimentación, no sale nada; pregunte qué lo fundió.",
        M::TransformerFailed => "Entra voltaje, sale poco o nada.",
        M::DisconnectOff => "Alguien lo abrió y se fue.",
        M::ControllerDead => "Hay energía; las lámparas y la salida no hacen nada.",
        M::RelayContactOpen => "Pide y hace clic, pero el contacto no pasa nada.",
        M::RelayContactWelded => "El contacto nunca suelta.",
        M::WiringHighResistance => {
            "Una unión verde o floja: el voltaje se cae en cuanto la bobina jala."
        }
        M::WiringOpen => "Voltaje en la salida, nada en la bobina.",
        M::CoilOpen => "Voltaje correcto en la bobina, sin corriente, no jala.",
        M::CoilWeak => "Voltaje correcto, jala poco: espiras en corto o bobina equivocada.",
        M::ValveStuck => "La bobina jala, el cuerpo sigue cerrado; un golpecito puede soltarla.",
        M::PilotBlocked => "La bobina jala, la válvula zumba, poco o nada de caudal.",
        M::DiaphragmTorn => "La bobina jala, caudal débil o nulo; puede que tampoco cierre.",
        M::ValveBackwards => "La flecha apunta al revés; busque trabajo reciente.",
        M::LowDifferential => "Abre de noche, no cuando el edificio consume agua.",
        M::ValvePassing => "Basura bajo el asiento: corre agua sin que pida, y rebosa.",
        M::HandValveShut => "Una válvula de la línea de reposición quedó cerrada o a medias.",
        M::StrainerBlocked => "Llena despacio o nada; peor en la carga pico.",
        M::BackflowStuck => "Presión antes, poca después; el alivio puede gotear.",
        M::ReducingValve => "Presión de la calle bien, la de después de la reductora baja.",
        M::MainsLow => "Muy poca presión de la calle o del edificio para llenar.",
        M::LineFrozen => "El tubo exterior tiene hielo; nada de caudal hasta que se derrita.",
        M::BleedStuckOpen => "La purga corre sin que nadie la pida; conductividad baja.",
        M::BleedOverset => "La purga corre como se le dice, pero de más; conductividad baja.",
        M::BasinLeak => "El nivel baja con llenado y purga cerrados.",
        M::OverflowLow => "El agua se va por el rebosadero antes de que pare el llenado.",
        M::DrainAjar => "El drenaje no cerró del todo; un hilo de agua abajo.",
        M::DrainsBack => {
            "En cada paro el circuito se va por el rebosadero; en cada arranque le falta."
        }
        M::MachineFault => "Solo este equipo anda alto; no se acotó qué parte.",
        M::TowerAirSide => "Ventilador, banda, variador o relleno: al agua le falta aire.",
        M::WaterFlowLow => "Bomba, colador o aire: al circuito le falta agua.",
        M::ControlPowerLost => "Sin alimentación en el control de nivel, así que nunca pide agua.",
        M::SensorFalseFull => "El control toma por llena una pileta baja; no se acotó por qué.",
        M::BleedOrLeak => "Purga, drenaje, rebose o una fuga quita más de lo que entra.",
    }
}

pub(crate) fn manner(manner: Manner) -> &'static str {
    match manner {
        Manner::Steady => "todo el tiempo",
        Manner::Intermittent => "va y viene",
    }
}

pub(crate) fn place(place: Place) -> &'static str {
    match place {
        Place::Roof => "Azotea, en la torre",
        Place::MachineRoom => "Cuarto de máquinas",
        Place::Basement => "Cuarto de bombas",
        Place::Mains => "Toma de agua",
    }
}

pub(crate) fn group(group: Group) -> &'static str {
    match group {
        Group::Machine => "Un equipo",
        Group::Conditions => "Clima y carga",
        Group::CondenserWater => "Agua de condensación",
        Group::TowerAir => "Aire de la torre",
        Group::TowerWater => "Agua de la torre",
        Group::Sensing => "Sensado de nivel",
        Group::FillPower => "Energía del control de llenado",
        Group::FillValve => "Válvula solenoide",
        Group::MakeupLine => "Línea de reposición",
        Group::WaterLoss => "Agua que se va",
    }
}

pub(crate) fn branch(branch: Branch) -> &'static str {
    match branch {
        Branch::Machine => "Un equipo",
        Branch::Conditions => "Clima y carga",
        Branch::CondenserWater => "Agua de condensación",
        Branch::Tower => "Torre",
        Branch::MakeupChain => "Cadena de reposición",
        Branch::WaterLoss => "Agua que se va",
    }
}
