//! The customer's page: what was wrong, how we know, what we did, what we
//! advise and what it costs to ignore.

use super::Composer;
use crate::physics::overflow::running_water;
use crate::physics::water::time_to_level;
use crate::quantity::{Unit, Value, VolumeRate, show};
use crate::record::paperwork::Item;
use crate::record::{Figures, LeavingState, MachineState, When};
use crate::refill::Outcome;
use crate::report::doc::{Block, KeyFigure, Text};
use crate::trace::Branch;
use crate::words::ReportPhrase as P;

impl Composer<'_> {
    /// How many machines were seen in a state, as found or as left, of how
    /// many looked at; `None` when none was looked at then.
    pub(super) fn machines(&self, when: When, state: MachineState) -> Option<(usize, usize)> {
        let seen = self.site.machines.iter();
        let seen = seen.filter_map(|m| self.visit.machines.get(&(when, m.id)));
        let seen: Vec<_> = seen.collect();
        let count = seen.iter().filter(|s| ***s == state).count();
        (!seen.is_empty()).then_some((count, seen.len()))
    }

    /// The numbers the customer came for: how it is now, and how it was.
    pub(super) fn key_figures(
        &self,
        found: &Figures,
        left: &Figures,
        outcome: Option<&Outcome>,
    ) -> Vec<KeyFigure> {
        let mut row = Vec::new();
        let was = |then: String| format!("{}: {then}", self.say(P::Found));
        let running = |when| self.machines(when, MachineState::Running);
        let of = |(n, all)| self.words.count_of(n, all);
        let figure = |label, found: Option<Value>, left: Option<Value>| {
            let shown = show(left.or(found)?, self.system);
            Some(KeyFigure {
                label: self.say(label),
                number: shown.number,
                unit: shown.unit.to_owned(),
                note: match (left, found) {
                    (Some(_), Some(found)) => was(self.amount(found)),
                    (Some(_), None) => String::new(),
                    (None, _) => self.say(P::Found),
                },
            })
        };
        if let Some(now) = running(When::AsLeft).or(running(When::AsFound)) {
            let before = running(When::AsFound).filter(|_| running(When::AsLeft).is_some());
            row.push(KeyFigure {
                label: self.say(P::MachinesOk),
                number: of(now),
                unit: String::new(),
                note: before.map_or(self.say(P::Found), |n| was(of(n))),
            });
        }
        let level = |f: &Figures| f.level.clone().ok().map(Value::level);
        row.extend(figure(P::Basin, level(found), level(left)));
        let approach = |f: &Figures| f.approach.clone().ok().map(Value::temperature_difference);
        row.extend(figure(P::Approach, approach(found), approach(left)));
        if let (Some(test), Some(Ok(fill))) = (
            self.visit.tests.last(),
            outcome.map(|o| o.fill_gross.as_ref()),
        ) {
            let shown = show(Value::flow(fill.value), self.system);
            let design = test.setup.design_need.unwrap_or_default();
            let need = test.setup.makeup_need.max(design);
            row.push(KeyFigure {
                label: self.say(P::FillFlow),
                number: shown.number,
                unit: shown.unit.to_owned(),
                note: match need > VolumeRate::default() {
                    true => format!(
                        "{}: {}",
                        self.say(P::Needed),
                        self.amount(Value::flow(need))
                    ),
                    false => String::new(),
                },
            });
        }
        row
    }

    /// What was wrong, how we know, what we did, which parts it took.
    pub(super) fn cause(&self) -> Vec<Block> {
        let mut blocks = Vec::new();
        let mut said = |label: P, text: String| {
            if !text.is_empty() {
                let label = format!("{}. ", self.say(label));
                blocks.push(Block::Paragraph(Text::default().bold(label).plain(text)));
            }
        };
        if let Some(cause) = &self.visit.cause {
            said(P::CauseHeading, {
                let modes = cause.modes();
                let lines = modes.iter().map(|m| self.words.trace_mode_line(*m));
                lines.collect::<Vec<_>>().join(" ")
            });
            said(P::HowWeKnow, cause.proof.clone());
        }
        let mut work: Vec<String> = self.visit.cause.iter().map(|c| c.work.clone()).collect();
        work.extend(self.visit.paper.of(Item::Work).map(|l| l.text.clone()));
        work.retain(|w| !w.is_empty());
        said(P::WorkDone, work.join(" "));
        let parts = self.visit.paper.of(Item::Part).map(|line| {
            // A count: 2, not 2.00.
            let many = line.amount.map(|n| format!("{} × ", n.si));
            format!("{}{}", many.unwrap_or_default(), line.text)
        });
        said(P::Parts, parts.collect::<Vec<_>>().join(", "));
        blocks
    }

    /// Advice, the most urgent first; what was not so on leaving is urgent.
    pub(super) fn advice(&self) -> Vec<Block> {
        let paper = &self.visit.paper;
        let mut items = Vec::new();
        for item in Item::ADVICE {
            for line in paper.of(item) {
                let mut head = self.words.report_item(item).to_owned();
                if !line.by.is_empty() {
                    head = match item {
                        Item::ComeBack => format!("{head} {}", line.by),
                        _ => format!("{head}, {} {}", self.say(P::By), line.by),
                    };
                }
                items.push(Text::default().bold(format!("{head}: ")).plain(&line.text));
            }
            if item == Item::AdviseNow {
                let open = self.visit.leaving.iter();
                let open = open.filter(|(_, state)| **state == LeavingState::NotSo);
                let open: Vec<_> = open
                    .map(|(item, _)| self.words.leaving_item(*item))
                    .collect();
                if !open.is_empty() {
                    items.push(
                        Text::default()
                            .bold(format!("{}: ", self.say(P::Now)))
                            .plain(format!(
                                "{} {}",
                                self.say(P::NotSoOnLeaving),
                                open.join("; ")
                            )),
                    );
                }
            }
        }
        if items.is_empty() {
            items.push(self.say(P::AdviceNone).into());
        }
        vec![
            self.heading(P::AdviceHeading),
            Block::List {
                numbered: false,
                items,
            },
        ]
    }

    /// Water and money: what happens if it is left, from this plant's numbers.
    pub(super) fn cost(&self, found: &Figures, outcome: Option<&Outcome>) -> Vec<Block> {
        let cause = self.visit.cause.as_ref();
        if cause.is_some_and(|c| !c.mode.lowers_basin()) {
            return vec![];
        }
        let tower = &self.site.tower;
        let mut items: Vec<Text> = Vec::new();
        let now = found.water.as_ref().ok().map(|w| w.makeup);
        let design = found.design_water.as_ref().ok().map(|w| w.makeup);
        let need = now.unwrap_or_default().max(design.unwrap_or_default());
        let fall = |to| {
            let time = time_to_level(&tower.basin?, tower.stop_level?, to?, need).ok()?;
            Some(self.amount(Value::duration(time)))
        };
        let floor = tower.basin.map(|basin| basin.depth);
        if let (Some(inlet), Some(dry)) = (fall(tower.inlet_level), fall(floor)) {
            let out = self.machines(When::AsFound, MachineState::HighHead);
            let makeup = self.amount(Value::flow(need));
            items.push(
                self.words
                    .cost_of_no_makeup(&makeup, &inlet, &dry, out.map_or(0, |o| o.0))
                    .into(),
            );
        }
        let fill = outcome.and_then(|o| o.fill_gross.as_ref().ok());
        if cause.is_some_and(|c| c.mode.group().branch() == Branch::WaterLoss) {
            let unit = self.system.unit_for(crate::quantity::Kind::Flow);
            let one = Value {
                kind: crate::quantity::Kind::Flow,
                si: unit.to_si(if unit == Unit::GallonPerMinute {
                    1.0
                } else {
                    0.1
                }),
            };
            if let Some((day, money)) = one.as_flow().map(|flow| self.water(flow)) {
                let flow = self.amount(one);
                items.push(self.words.cost_of_loss(&flow, &day, &money).into());
            }
        } else if let Some(over) = fill.map(|f| f.value - need).filter(|f| *f > need * 0.1) {
            let flow = self.amount(Value::flow(over));
            let (day, money) = self.water(over);
            items.push(self.words.cost_of_open_fill(&flow, &day, &money).into());
        }
        if items.is_empty() {
            return vec![];
        }
        vec![
            self.heading(P::CostHeading),
            Block::List {
                numbered: false,
                items,
            },
        ]
    }

    /// What a flow comes to in a day, to two digits, and its price in a day
    /// when the price is known.
    fn water(&self, flow: VolumeRate) -> (String, String) {
        let card = &self.visit.paper.card;
        let Ok(run) = running_water(flow, card.water_price.unwrap_or(0.0)) else {
            return Default::default();
        };
        let money = card.water_price.map(|_| {
            let a_day = Value::number(two_digits(run.cost_per_year / 365.0));
            let shown = show(a_day, self.system).number;
            let shown = shown.trim_end_matches(".00");
            self.words
                .cost_in_money(&format!("{}{shown}", card.currency))
        });
        let mut volume = Value::volume(run.per_day);
        let unit = self.system.unit_for(volume.kind);
        volume.si = unit.to_si(two_digits(volume.in_unit(unit).unwrap_or(0.0)));
        (self.amount(volume), money.unwrap_or_default())
    }
}

/// A number rounded to two digits: a guess must not look like a measurement.
fn two_digits(n: f64) -> f64 {
    let mut step = 1e-3;
    while n.abs() >= 100.0 * step {
        step *= 10.0;
    }
    (n / step).round() * step
}
