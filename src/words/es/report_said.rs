//! The report's sentences that carry numbers or names, in Spanish.

use super::{app, said};
use crate::words::Phrase;

pub(in crate::words) fn count_of(n: usize, all: usize) -> String {
    format!("{n} de {all}")
}

pub(in crate::words) fn issue(n: usize, before: Option<(&str, &str)>) -> String {
    match before {
        None => n.to_string(),
        Some((made, "")) => format!("{n}, reemplaza la emisión {} del {made}", n - 1),
        Some((made, why)) => format!(
            "{n}, reemplaza la emisión {} del {made}. Corregido: {why}",
            n - 1
        ),
    }
}

pub(in crate::words) fn cost_of_no_makeup(
    makeup: &str,
    inlet: &str,
    dry: &str,
    out: usize,
) -> String {
    let then = match out {
        0 => "los equipos se disparan por alta presión".to_owned(),
        n => format!(
            "los equipos se disparan otra vez por alta presión: esta vez fueron {}",
            said::machines(n)
        ),
    };
    format!(
        "Si la reposición se corta otra vez, la pileta baja de llena a la succión de la bomba en \
         {inlet} y queda seca en {dry}, a {makeup}. Entonces {then}."
    )
}

pub(in crate::words) fn cost_of_open_fill(flow: &str, day: &str, money: &str) -> String {
    format!(
        "Un llenado dejado abierto a mano, o uno que se traba abierto, manda cerca de {flow} por el \
         rebosadero: {day} al día{money}."
    )
}

pub(in crate::words) fn cost_of_loss(flow: &str, day: &str, money: &str) -> String {
    format!("Cada {flow} que se va sin verse es {day} al día{money}.")
}

pub(in crate::words) fn cost_in_money(amount: &str) -> String {
    format!(", {amount} al día al precio local de agua y drenaje")
}

pub(in crate::words) fn signature_of(name: &str) -> String {
    format!("Firma de {name}, trazada en la pantalla")
}

pub(in crate::words) fn papers_summary(lines: usize, photos: usize) -> String {
    match (lines, photos) {
        (0, 0) => app::phrase(Phrase::PapersNotBegun).to_owned(),
        (1, 0) => "1 renglón".to_owned(),
        (_, 0) => format!("{lines} renglones"),
        (_, 1) => format!("{lines} renglones, 1 foto"),
        _ => format!("{lines} renglones, {photos} fotos"),
    }
}

pub(in crate::words) fn issue_line(n: usize, made: &str, kilobytes: u32, digest: &str) -> String {
    let digest = match digest {
        "" => String::new(),
        first => format!(", SHA-256 {first}…"),
    };
    format!("Emisión {n}, {made}, {kilobytes} kB{digest}")
}

pub(in crate::words) fn signed_by(name: &str, clock: &str) -> String {
    format!("Firmado por {name} {clock}")
}

pub(in crate::words) fn backup_saved(when: &str) -> String {
    format!("Guardado por última vez {when}.")
}

pub(in crate::words) fn backup_taken([new, known, files, refused, newer]: [usize; 5]) -> String {
    let mut said =
        format!("Entraron {new} entradas nuevas y {files} archivos; {known} ya estaban aquí.");
    if refused > 0 {
        said +=
            &format!(" {refused} no concuerdan con lo que hay aquí o están dañadas: no entraron.");
    }
    if newer > 0 {
        said +=
            &format!(" {newer} son de una versión más nueva: actualice la app y métalo otra vez.");
    }
    said
}
