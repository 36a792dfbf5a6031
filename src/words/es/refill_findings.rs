//! What a refill test found, in Spanish.

use uom::si::ratio::ratio;

use super::refill::missing;
use crate::quantity::Length;
use crate::refill::{Cover, Estimate, Finding, FlowRange, LevelEstimate};
use crate::words::refill::Format;

pub(in crate::words) fn finding(finding: &Finding, format: &Format<'_>) -> String {
    use Finding::*;
    let level = |l: Length| (format.level)(l);
    let minutes = |s: f64| (format.minutes)(s / 60.0);
    match finding {
        NothingYet => "Nada anotado todavía.".into(),
        CalledByItself { level: Some(at) } => {
            format!("El control pidió solo, {}.", below(at, format))
        }
        CalledByItself { level: None } => "El control pidió solo.".into(),
        CallNotNoted => "Corrió el agua, pero nadie vio que el control pidiera.".into(),
        WaterBeforeCall { lead_s } => {
            format!(
                "El agua corrió {} antes de que el control pidiera.",
                minutes(*lead_s)
            )
        }
        WaterFromTheStart => {
            "El agua corría antes de bajar la pileta, así que esto no muestra llamada.".into()
        }
        NeverCalled { lowest } => {
            format!(
                "Se bajó hasta {} bajo el rebosadero y no pidió agua.",
                level(*lowest)
            )
        }
        NotDownToCall {
            lowest: Some(lowest),
        } => format!(
            "Aún no pide. La lectura más baja, {} bajo el rebosadero, no lo decide.",
            level(*lowest)
        ),
        NotDownToCall { lowest: None } => "Aún no pide, y no se leyó ningún nivel.".into(),
        CallLevelOff { set, found } => format!(
            "Pidió {}; está ajustado para pedir a {}.",
            below(found, format),
            level(*set)
        ),
        WaterCame { after: Ok(after_s) } if *after_s > 0.0 => {
            format!("El agua llegó {} después de pedir.", minutes(*after_s))
        }
        WaterCame { .. } => "Llegó el agua.".into(),
        WaterLate { after_s } => {
            format!("El agua tardó: {} después de pedir.", minutes(*after_s))
        }
        CalledNoWater { waited_s } => {
            format!("Pidió y no llegó agua en {}.", minutes(*waited_s))
        }
        WaterNotYet { waited_s } => {
            format!("Pide; aún sin agua después de {}.", minutes(*waited_s))
        }
        WaterByReadings => {
            "Nadie marcó el agua; las lecturas muestran que el nivel da vuelta y sube.".into()
        }
        FlowChanged { share, .. } => format!(
            "El caudal cambió mientras llenaba: a {} de lo que era antes.",
            percent(share.get::<ratio>())
        ),
        FillBelowValve { gross, valve } => format!(
            "Esta válvula pasa {} con esta presión de la red; el llenado da {}. Vea colador, \
             válvulas manuales y presión.",
            range(valve, format),
            flow(gross, format)
        ),
        FillBelowEarlier { gross, earlier } => format!(
            "Más lento que en la prueba anterior aquí: {} ahora, {} entonces.",
            flow(gross, format),
            range(earlier, format)
        ),
        FillAsEarlier { earlier } => format!(
            "No más lento que la prueba anterior aquí, que dio {}.",
            range(earlier, format)
        ),
        ShutOffByReadings { level: at } => match at {
            Some(at) => format!(
                "Nadie marcó el paro; las lecturas se sostienen {}.",
                below(at, format)
            ),
            None => "Nadie marcó el paro; las lecturas muestran que el nivel se sostuvo.".into(),
        },
        ShutOffMarkOff { by_s } => format!(
            "El paro se marcó {} {} de lo que muestran las lecturas.",
            minutes(by_s.abs()),
            if *by_s > 0.0 { "después" } else { "antes" }
        ),
        StoppedShort { set, found } => format!(
            "Paró {}, muy antes de los {} a que está ajustado: algo le dijo lleno demasiado pronto.",
            below(found, format),
            level(*set)
        ),
        CalledLate { set, found } => format!(
            "Pidió {}, muy por debajo de los {} a que está ajustado.",
            below(found, format),
            level(*set)
        ),
        Chatter {
            times: 1,
            soonest_s,
        } => format!(
            "El llenado volvió a abrir {} después de parar, con el drenaje cerrado.",
            minutes(*soonest_s)
        ),
        Chatter { times, soonest_s } => format!(
            "El llenado volvió a abrir {times} veces con el drenaje cerrado, una de ellas {} después \
             de parar.",
            minutes(*soonest_s)
        ),
        WaterNotNoted => "La pileta se llenó, pero no se anotó cuándo corrió el agua.".into(),
        FillCovers(cover) => covers("El llenado cubre", cover, format),
        FillMarginal(cover) => covers("El llenado apenas cubre", cover, format),
        FillBelowNeed(cover) => format!(
            "El llenado es poco: {}, cuando más {} de los {} que hacen falta.",
            flow(&cover.gross, format),
            percent(cover.ratio_high.get::<ratio>()),
            (format.flow)(cover.need)
        ),
        FillUncertain(cover) => format!(
            "No se puede decir si el llenado cubre los {} que hacen falta: {}.",
            (format.flow)(cover.need),
            flow(&cover.gross, format)
        ),
        FillBelowDesign(cover) => format!(
            "En el día de diseño hacen falta {}; el llenado da cuando más {} de eso.",
            (format.flow)(cover.need),
            percent(cover.ratio_high.get::<ratio>())
        ),
        FillNearDesign(cover) => format!(
            "En el día de diseño hacen falta {}; el llenado da entre {} y {} de eso.",
            (format.flow)(cover.need),
            percent(cover.ratio_low.get::<ratio>()),
            percent(cover.ratio_high.get::<ratio>())
        ),
        FillNotMeasured(reason) => format!("Llenado sin medir. {}", missing(*reason)),
        NeedNotKnown => "No se conoce la reposición que hace falta hoy.".into(),
        DrainNotClosed => {
            "No se anotó el cierre del drenaje: el llenado puede ser más de lo medido.".into()
        }
        ShutOffByItself { level: Some(at) } => {
            format!("El llenado paró solo, {}.", below(at, format))
        }
        ShutOffByItself { level: None } => "El llenado paró solo.".into(),
        NoShutOff { level: at } => format!(
            "El llenado siguió más allá del nivel de paro, hasta {} bajo el rebosadero.",
            level(*at)
        ),
        ShutOffNotSeen => "No se vio que el llenado parara solo.".into(),
        StopLevelOff { set, found } => format!(
            "Paró {}; está ajustado para parar a {}.",
            below(found, format),
            level(*set)
        ),
        PastOverflow { level: at } if *at < Length::default() => {
            format!("La pileta rebosó: {} sobre el borde.", level(-*at))
        }
        PastOverflow { .. } => "La pileta se llenó hasta el rebosadero.".into(),
        FoundAtOverflow { .. } => "Antes de la prueba la pileta estaba en el rebosadero.".into(),
        FreeboardNotShown => {
            "Las lecturas no muestran que parara por debajo del rebosadero.".into()
        }
        AfterDrip { flow: drip } => {
            format!(
                "Siguió entrando agua después de parar el llenado: {}.",
                flow(drip, format)
            )
        }
        ValvePasses { flow: drip } => format!(
            "La válvula de llenado no cierra: siguieron entrando {} después de parar, más de lo que la \
             planta gasta. La pileta va a rebosar.",
            flow(drip, format)
        ),
        Sag { flow: sag } => format!(
            "El nivel bajó después de parar el llenado, más de lo que explican las pérdidas: {}.",
            flow(sag, format)
        ),
        Held { most, told: true } => format!(
            "El nivel se sostuvo después: una fuga de {} o más se habría visto.",
            (format.flow)(*most)
        ),
        Held { most, told: false } => format!(
            "El nivel se sostuvo hasta donde dicen las lecturas; en ellas cabe una fuga de hasta {}.",
            (format.flow)(*most)
        ),
        DrawnSlowly { flow: out, drain } => format!(
            "Bajó más despacio que por un drenaje abierto de este diámetro: {}, no {}. ¿Estaba el \
             drenaje a medio abrir o tapado, o entraba agua?",
            flow(out, format),
            range(drain, format)
        ),
        TightnessNotWatched => {
            "Nadie vigiló si el nivel se sostuvo después de parar el llenado.".into()
        }
        LowLimitReached { lowest } => format!(
            "El nivel llegó al límite de succión de la bomba: {} bajo el rebosadero.",
            level(*lowest)
        ),
        ReadingsLeftOut { count: 1 } => {
            "Una lectura quedaba lejos de las demás y se dejó fuera.".into()
        }
        ReadingsLeftOut { count } => {
            format!("{count} lecturas quedaban lejos de las demás y se dejaron fuera.")
        }
        MarksLeftOut { count: 1 } => "Una entrada no tiene hora o nivel utilizable.".into(),
        MarksLeftOut { count } => {
            format!("{count} entradas no tienen hora o nivel utilizable.")
        }
        OneCycleOnly => {
            "Visto una vez. Una falla que va y viene aún puede esconderse: hágala otra vez.".into()
        }
        Cycles { run, passed } => format!("Pasaron {passed} de {run} llenados."),
    }
}

fn flow(estimate: &Estimate, format: &Format<'_>) -> String {
    let show = format.flow;
    let (value, low, high) = (
        show(estimate.value),
        show(estimate.low),
        show(estimate.high),
    );
    format!("{value} (entre {low} y {high})")
}

/// "a 9 in bajo el rebosadero, 1/4 in más o menos".
fn below(at: &LevelEstimate, format: &Format<'_>) -> String {
    let half = (at.high - at.low) / 2.0;
    let (value, half) = ((format.level)(at.value), (format.level)(half));
    format!("a {value} bajo el rebosadero, {half} más o menos")
}

fn range(range: &FlowRange, format: &Format<'_>) -> String {
    let show = format.flow;
    format!("de {} a {}", show(range.low), show(range.high))
}

fn percent(share: f64) -> String {
    format!("{:.0}%", share * 100.0)
}

fn covers(lead: &str, cover: &Cover, format: &Format<'_>) -> String {
    format!(
        "{lead} lo que hace falta {}, {}: {}, {}.",
        match cover.design {
            true => "en el día de diseño",
            false => "hoy",
        },
        (format.flow)(cover.need),
        flow(&cover.gross, format),
        at_least(cover.ratio_low.get::<ratio>())
    )
}

/// How much of what is needed, as one says it.
fn at_least(share: f64) -> String {
    match share {
        s if s >= 10.0 => "más de diez veces eso".into(),
        s if s >= 2.0 => format!("al menos {s:.1} veces eso"),
        s => format!("al menos {} de eso", percent(s)),
    }
}
