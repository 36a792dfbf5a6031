//! Both languages over everything that has a name: none silent where the other
//! speaks, none left in English, labels that still fit a button.

use super::*;
use crate::physics::basis::{
    ChemistryFigure, CircuitFigure, ElectrodeFigure, Figure, HeadFigure, LoopHeatFigure,
    PipingFigure, TowerFigure,
};
use crate::physics::chemistry::cycles::Cause;
use crate::physics::chemistry::guideline::Item;
use crate::physics::circuit::{Meaning, Point};
use crate::physics::electrode::Condition;
use crate::physics::tower::Shape;
use crate::record::LeavingItem;
use crate::trace::{Answer, Check, Group, Mode, Place, Reading, Stage};
use crate::working::{Ask, Say, Working};

/// The same in both: names, designations, and words the trade shares.
const SAME: &[&str] = &[
    "1",
    "2",
    "3",
    "24 V",
    "120 V",
    "230 V",
    "A4",
    "Chillers",
    "Coldsump",
    "KaV/L",
    "No",
    "Rectangular",
    "SI: °C, kPa, L/s",
    "pH",
];

fn check(what: &str, english: &str, spanish: &str) {
    assert_eq!(
        english.is_empty(),
        spanish.is_empty(),
        "{what}: {english:?}, {spanish:?}"
    );
    let same = english.is_empty() || SAME.contains(&english);
    assert!(english != spanish || same, "{what}: {english} in both");
    assert_eq!(
        english.ends_with('.'),
        spanish.ends_with('.'),
        "{what}: {english:?}, {spanish:?}"
    );
    // Spanish runs longer; a label twice as long wants other words.
    let (en, es) = (english.chars().count(), spanish.chars().count());
    assert!(
        es <= 16 + en + en / 2,
        "{what}: {spanish} is long for {english}"
    );
}

fn walk<T: Copy + std::fmt::Debug, S: AsRef<str>>(all: &[T], say: impl Fn(Words, T) -> S) {
    for one in all {
        let said = Tongue::ALL.map(|tongue| say(Words(tongue), *one));
        check(&format!("{one:?}"), said[0].as_ref(), said[1].as_ref());
    }
}

#[test]
fn phrases_and_readings() {
    walk(Phrase::ALL, Words::phrase);
    walk(ReportPhrase::ALL, Words::report_phrase);
    walk(&LeavingItem::ALL, Words::leaving_item);
    walk(&Working::ALL, |w, x| w.working(x).0);
    walk(&Working::ALL, |w, x| w.working(x).1);
    walk(&Ask::ALL, Words::ask);
    walk(&Ask::ALL, Words::ask_hint);
}

#[test]
fn the_trace() {
    let modes: Vec<Mode> = Mode::ALL.into_iter().chain(Mode::GENERAL).collect();
    walk(&modes, Words::trace_mode);
    walk(&modes, Words::trace_mode_line);
    walk(&modes, Words::trace_cure);
    walk(&modes, Words::trace_cure_proof);
    walk(&Check::ALL, Words::trace_check);
    walk(&Check::ALL, Words::trace_check_how);
    walk(&Check::ALL, Words::trace_check_healthy);
    let answers: Vec<Answer> = Check::ALL
        .iter()
        .flat_map(|check| check.answers())
        .copied()
        .collect();
    walk(&answers, Words::trace_answer);
    walk(&Group::ALL, Words::trace_group);
    walk(&Place::ALL, Words::trace_place);
    walk(&Reading::ALL, Words::trace_reading);
    walk(&Stage::ALL, Words::trace_stage);
}

#[test]
fn the_physics() {
    let mut figures = Figure::ALL.to_vec();
    figures.extend(CircuitFigure::ALL.map(Figure::Circuit));
    figures.extend(ChemistryFigure::ALL.map(Figure::Chemistry));
    figures.extend(HeadFigure::ALL.map(Figure::Head));
    figures.extend(ElectrodeFigure::ALL.map(Figure::Electrode));
    figures.extend(TowerFigure::ALL.map(Figure::Tower));
    figures.extend(PipingFigure::ALL.map(Figure::Piping));
    figures.extend(LoopHeatFigure::ALL.map(Figure::LoopHeat));
    walk(&figures, Words::figure);
    walk(&figures, Words::formula);
    walk(&figures, Words::source);
    walk(&Point::ALL, Words::circuit_point);
    walk(&Meaning::ALL, Words::circuit_meaning);
    let mut sayings: Vec<Say> = Shape::ALL.map(Say::Shape).into();
    sayings.extend(Item::ALL.map(|item| Say::Limit(item, true)));
    sayings.extend(Cause::ALL.map(Say::Cycles));
    sayings.extend(Condition::ALL.map(|c| Say::Electrode(c, true, true)));
    walk(&sayings, |w, x| w.say(x).0);
    walk(&sayings, |w, x| w.say(x).1);
}

#[test]
fn a_language_is_found_by_its_tag() {
    assert_eq!(Tongue::of_tag("es-MX"), Some(Tongue::Spanish));
    assert_eq!(Tongue::of_tag("es_419"), Some(Tongue::Spanish));
    assert_eq!(Tongue::of_tag("EN-us"), Some(Tongue::English));
    assert_eq!(Tongue::of_tag("est"), None);
    assert_eq!(Tongue::of_tag(""), None);
    for tongue in Tongue::ALL {
        assert_eq!(Tongue::of_tag(tongue.tag()), Some(tongue));
    }
}
