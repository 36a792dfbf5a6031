//! Spanish: the control circuit, its faults, test points, meters and readings.

use crate::physics::circuit::{Caution, Fault, Meaning, Meter, Point};

pub(in crate::words) fn fault(fault: Fault) -> &'static str {
    match fault {
        Fault::None => "Nada está mal",
        Fault::SupplyLost => "Alimentación muerta",
        Fault::FuseBlown => "Fusible fundido",
        Fault::DisconnectOpen => "Desconectador abierto",
        Fault::SeriesOpen(1) => "Primer contacto en serie abierto",
        Fault::SeriesOpen(2) => "Segundo contacto en serie abierto",
        Fault::SeriesOpen(_) => "Tercer contacto en serie abierto",
        Fault::ContactStuckOpen => "Contacto del relevador trabado abierto",
        Fault::ContactWelded => "Contacto del relevador pegado",
        Fault::ContactResistance(_) => "Contacto del relevador quemado",
        Fault::CoilOpen => "Bobina abierta",
        Fault::CoilShorted(_) => "Bobina en corto",
        Fault::FeedBroken => "Cable de alimentación roto",
        Fault::FeedFloating(_) => "Cable de alimentación suelto en las dos puntas",
        Fault::FeedLoose(_) => "Terminal floja en la alimentación",
        Fault::ReturnBroken => "Cable de retorno roto",
        Fault::ReturnLoose(_) => "Terminal floja en el retorno",
        Fault::OutputLeakage(_) => "La salida de estado sólido fuga",
    }
}

pub(in crate::words) fn fault_line(fault: Fault) -> &'static str {
    match fault {
        Fault::None => "Cada parte hace su trabajo.",
        Fault::SupplyLost => {
            "Interruptor disparado o transformador sin primario. Nada recibe energía."
        }
        Fault::FuseBlown => {
            "Con voltaje hasta el fusible, sin voltaje después. Averigüe por qué antes de poner otro."
        }
        Fault::DisconnectOpen => {
            "Con voltaje hasta el desconectador, sin voltaje después. Pregunte quién lo abrió."
        }
        Fault::SeriesOpen(_) => {
            "Un interruptor o enclavamiento antes del relevador no deja llenar."
        }
        Fault::ContactStuckOpen => "El control pide, y el contacto no cierra.",
        Fault::ContactWelded => "La bobina sigue alimentada sin que pida. La pileta rebosa.",
        Fault::ContactResistance(_) => {
            "Volts completos sin carga, pocos con la bobina puesta. Zumba y no abre."
        }
        Fault::CoilOpen => "Volts completos en la bobina, y nada de corriente.",
        Fault::CoilShorted(_) => "Mucha corriente y jala poco. Puede llevarse el fusible.",
        Fault::FeedBroken => "Con voltaje en el relevador, sin voltaje en la bobina.",
        Fault::FeedFloating(_) => {
            "Un cable suelto junto a uno energizado. Un medidor común muestra volts que no hacen \
             trabajo."
        }
        Fault::FeedLoose(_) => {
            "Se pierden volts entre relevador y bobina en cuanto la bobina consume."
        }
        Fault::ReturnBroken => {
            "Las dos terminales de la bobina tienen voltaje al retorno, y nada entre ellas."
        }
        Fault::ReturnLoose(_) => {
            "El lado de retorno de la bobina queda por encima del retorno del tablero."
        }
        Fault::OutputLeakage(_) => {
            "Parece energizada estando apagada, y puede sostener una bobina chica. Póngale carga y \
             lea otra vez."
        }
    }
}

pub(in crate::words) fn point(point: Point) -> &'static str {
    match point {
        Point::SupplyHot => "Alimentación, lado vivo",
        Point::FuseOut => "Fusible, lado de carga",
        Point::DisconnectOut => "Desconectador, lado de carga",
        Point::Series1 => "Primer contacto en serie, lado de carga",
        Point::Series2 => "Segundo contacto en serie, lado de carga",
        Point::Series3 => "Tercer contacto en serie, lado de carga",
        Point::RelayCommon => "Relevador de nivel, COM",
        Point::RelayOut => "Relevador de nivel, terminal a la bobina",
        Point::RelayOther => "Relevador de nivel, terminal sin uso",
        Point::CoilFeed => "Bobina, lado de alimentación",
        Point::CoilReturn => "Bobina, lado de retorno",
        Point::SupplyReturn => "Alimentación, lado de retorno",
    }
}

pub(in crate::words) fn meter(meter: Meter) -> &'static str {
    match meter {
        Meter::HighImpedance(_) => "Volts",
        Meter::LowImpedance(_) => "Volts, baja impedancia",
        Meter::Clamp => "Amperes de gancho",
        Meter::Ohmmeter => "Ohms, sin energía",
    }
}

pub(in crate::words) fn meaning(meaning: Meaning) -> &'static str {
    match meaning {
        Meaning::SamePoint => "Las dos puntas están en el mismo metal.",
        Meaning::ClosedOrDead => {
            "Cerrado entre las puntas, o aquí no hay energía: lea cada una al retorno."
        }
        Meaning::OpenBetween => "Abierto entre las puntas, y el resto del circuito completo.",
        Meaning::DropBetween => {
            "Se pierden volts entre las puntas: un mal contacto con carga, o dos partes abiertas."
        }
        Meaning::LiveHere => "Con voltaje hasta aquí. Siga hacia la bobina.",
        Meaning::DeadHere => "Aquí no hay volts. Lo abierto quedó atrás, hacia la alimentación.",
        Meaning::WeakHere => {
            "Ni vivo ni muerto: una caída antes de aquí, o un fantasma. Póngale carga."
        }
        Meaning::CoilFed => {
            "La bobina está alimentada. Si la válvula sigue cerrada, vea bobina y válvula."
        }
        Meaning::CoilLow => "Muy pocos volts para que la bobina jale. Halle dónde se pierden.",
        Meaning::CoilDead => "Nada entre la bobina. Lea cada lado al retorno.",
        Meaning::CoilHigh => {
            "Más de lo que la bobina aguanta mucho tiempo. Revise la alimentación."
        }
        Meaning::NoCurrent => "Sin corriente: abierto en algún punto, o no pide.",
        Meaning::SmallCurrent => "Menos que la de sostén: fuga, o volts perdidos en el camino.",
        Meaning::HoldingCurrent => {
            "Cerca de la corriente de sostén: la bobina está alimentada y asentada."
        }
        Meaning::HighCurrent => {
            "Muy por encima de la de sostén: la armadura no asentó, o hay espiras en corto."
        }
        Meaning::NoWayThrough => "No hay paso entre las puntas.",
        Meaning::ShortedThrough => "Casi nada de ohms entre las puntas.",
        Meaning::Winding => "Más o menos lo que debe dar el devanado de esta bobina.",
        Meaning::SomeOhms => {
            "Algunos ohms. Compare con la cifra del fabricante o con una pieza sana."
        }
    }
}

pub(in crate::words) fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::LiveParts => {
            "Partes energizadas. Solo personal calificado, con el equipo de protección que pide el \
             código local. Si se puede hacer sin energía, bloquee, etiquete y hágalo sin energía."
        }
        Caution::LiveDeadLive => {
            "Crea que no hay voltaje solo con vivo-muerto-vivo: compruebe el probador en una fuente \
             viva conocida, pruebe aquí, compruébelo otra vez."
        }
        Caution::ProveDead => {
            "Ohms solo en un circuito sin energía: bloquee, etiquete, compruebe ausencia de voltaje y \
             luego conecte. El lado de línea del desconectador sigue vivo."
        }
        Caution::LoadsCircuit => {
            "La baja impedancia toma corriente. Puede disparar una protección de falla a tierra o \
             mover una entrada electrónica. Lea solo lo necesario."
        }
        Caution::ClampNearLive => {
            "Abrir el tablero para alcanzar un conductor lo acerca a partes energizadas. Las mismas \
             reglas que con las puntas."
        }
        Caution::CoilOffStem => {
            "Nunca energice una bobina fuera de su vástago. Toma la corriente de arranque todo el \
             tiempo y se quema en minutos."
        }
        Caution::LiftLead => {
            "Suelte o ponga un cable solo con el circuito bloqueado, etiquetado y con ausencia de \
             voltaje comprobada. Aísle la punta."
        }
    }
}
