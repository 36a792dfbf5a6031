//! How the plant is built, one thumb's choice at a time. Each tap is kept at
//! once; what nobody chose stands as is usual.

use crate::app::view::prelude::*;

use crate::app::ledger::ledger;
use crate::app::parts::choice::choice;
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::Route;
use crate::quantity::ElectricPotential;
use crate::record::{About, Body, Site, SiteId, plant};
use crate::trace::{Bleed, Contact, FillValve, LevelControl, MachineKind, Plant};
use crate::words::Phrase as P;

/// One answer: its name, whether it stands, and what choosing it does.
type Answer = (P, fn(&Plant) -> bool, fn(&mut Site));

struct Question {
    name: P,
    /// Whether it is asked of such a plant.
    asked: fn(&Plant) -> bool,
    answers: &'static [Answer],
}

fn edit(site: &mut Site) -> &mut Plant {
    site.plant.get_or_insert_default()
}

fn volts(site: &mut Site, volts: f64) {
    site.control_voltage = Some(ElectricPotential::new::<uom::si::electric_potential::volt>(
        volts,
    ));
}

fn at(plant: &Plant, volts: f64) -> bool {
    (plant.control_voltage.value - volts).abs() < 0.5
}

fn always(_: &Plant) -> bool {
    true
}

macro_rules! one_of {
    ($field:ident: $($name:ident = $value:expr),+) => {
        &[$((P::$name, |p| p.$field == $value, |s| edit(s).$field = $value)),+]
    };
}

macro_rules! yes_no {
    ($field:ident) => {
        one_of!($field: AnswerYes = true, AnswerNo = false)
    };
}

macro_rules! how_many {
    ($field:ident) => {
        &[
            (P::One, |p| p.$field <= 1, |s| edit(s).$field = 1),
            (P::Two, |p| p.$field == 2, |s| edit(s).$field = 2),
            (P::Three, |p| p.$field == 3, |s| edit(s).$field = 3),
            (P::FourOrMore, |p| p.$field >= 4, |s| edit(s).$field = 4),
        ]
    };
}

const LOOP: &[Question] = &[
    Question {
        name: P::MachineKindAsked,
        asked: always,
        answers: one_of!(machine_kind: PackagedUnits = MachineKind::PackagedUnit,
            HeatPumps = MachineKind::HeatPump, Chillers = MachineKind::Chiller,
            CondensingUnits = MachineKind::CondensingUnit),
    },
    Question {
        name: P::RegulatingValves,
        asked: always,
        answers: yes_no!(regulating_valves),
    },
    Question {
        name: P::PumpsAsked,
        asked: always,
        answers: how_many!(pumps),
    },
    Question {
        name: P::StrainerAsked,
        asked: always,
        answers: yes_no!(pump_strainer),
    },
    Question {
        name: P::CellsAsked,
        asked: always,
        answers: how_many!(cells),
    },
    Question {
        name: P::SumpAsked,
        asked: always,
        answers: one_of!(remote_sump: RemoteSump = true, TowerBasin = false),
    },
    Question {
        name: P::TowerBypassAsked,
        asked: always,
        answers: yes_no!(tower_bypass),
    },
];

const CONTROL: &[Question] = &[
    Question {
        name: P::LevelControlAsked,
        asked: always,
        answers: one_of!(level_control: ElectrodeRelay = LevelControl::ElectrodeRelay,
            FloatValve = LevelControl::FloatValve, FloatSwitch = LevelControl::FloatSwitch,
            Transmitter = LevelControl::Transmitter),
    },
    Question {
        name: P::ControlNominal,
        asked: Plant::electric_fill,
        answers: &[
            (P::Volts24, |p| at(p, 24.0), |s| volts(s, 24.0)),
            (P::Volts120, |p| at(p, 120.0), |s| volts(s, 120.0)),
            (P::Volts230, |p| at(p, 230.0), |s| volts(s, 230.0)),
        ],
    },
    Question {
        name: P::FillValveAsked,
        asked: Plant::electric_fill,
        answers: one_of!(fill_valve: NormallyClosedValve = FillValve::NormallyClosed,
            NormallyOpenValve = FillValve::NormallyOpen),
    },
    Question {
        name: P::ContactAsked,
        asked: Plant::electric_fill,
        answers: one_of!(contact: ContactCloses = Contact::NormallyOpen,
            ContactOpens = Contact::NormallyClosed),
    },
    Question {
        name: P::FillBypassAsked,
        asked: always,
        answers: yes_no!(fill_bypass),
    },
    Question {
        name: P::BleedAsked,
        asked: always,
        answers: one_of!(bleed: BleedNone = Bleed::None, BleedManual = Bleed::Manual,
            BleedTimer = Bleed::Timer, BleedConductivity = Bleed::Conductivity),
    },
    Question {
        name: P::OverflowAsked,
        asked: always,
        answers: yes_no!(overflow),
    },
];

fn choose(id: SiteId, does: fn(&mut Site)) {
    let Some(mut site) = ledger().site(id).get_untracked() else {
        return;
    };
    let before = site.clone();
    does(&mut site);
    if site != before {
        ledger().write(About::Site(id), Body::described(site));
    }
}

fn ask(id: SiteId, question: &'static Question, now: Memo<Plant>) -> View {
    let words = prefs().words;
    let name = words.phrase(question.name);
    let answers = question
        .answers
        .iter()
        .map(|(label, is, does)| {
            let test = format!("{:?}-{label:?}", question.name);
            choice(
                test,
                words.phrase(*label),
                move || now.with(is),
                move || choose(id, *does),
            )
        })
        .collect_view();
    markup! {
        <div class="field" hidden=move || !now.with(|p| (question.asked)(p))>
            <span class="label">{name}</span>
            <div class="seg" role="group" aria-label=name>{answers}</div>
        </div>
    }
}

/// The form.
pub fn form(id: SiteId) -> View {
    let words = prefs().words;
    let site = ledger().site(id);
    let now = Memo::new(move |_| site.with(|s| s.as_ref().map(plant).unwrap_or_default()));
    let name = site.get_untracked().map(|s| s.name);
    let back = (Route::Site(id), name.unwrap_or_default());
    let list = move |questions: &'static [Question]| {
        let all = questions.iter().map(move |q| ask(id, q, now));
        markup! { <div class="fields">{all.collect_view()}</div> }
    };
    let act = markup! {
        <a class="button primary" href=Route::Site(id).href() data-test="part-done">
            {words.phrase(P::PartDone)}
        </a>
    };
    let (title, sub) = (words.phrase(P::PartPlant), words.phrase(P::PlantSub));
    markup! {
        <Screen title sub name="site-part" back act>
            <section>
                <h2>{words.phrase(P::TheLoop)}</h2>
                {list(LOOP)}
            </section>
            <section>
                <h2>{words.phrase(P::MakeupControl)}</h2>
                {list(CONTROL)}
            </section>
        </Screen>
    }
}
