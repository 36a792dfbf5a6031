//! A basin's table: rows of level and surface, or level and water, from the
//! lip down. A row that does not go on downward is refused beside its field.

use crate::app::view::prelude::*;

use super::{Fact, also};
use crate::app::ledger::ledger;
use crate::app::parts::field::{QuantityField, Typing};
use crate::app::prefs::prefs;
use crate::physics::basin::{AreaTable, MOST_ROWS, Plan, VolumeTable};
use crate::quantity::{Area, Bounds, Kind, Length, Unit, Value, Volume};
use crate::record::SiteId;
use crate::words::Phrase as P;

#[derive(Clone, Copy)]
struct Row {
    level: Fact,
    surface: Fact,
    volume: Fact,
}

/// The rows being typed.
#[derive(Clone, Copy)]
pub struct Rows {
    id: SiteId,
    rows: RwSignal<Vec<Row>>,
}

impl Rows {
    /// The rows of the plan, if it has a table, and those of a draft.
    pub fn new(id: SiteId, plan: Option<&Plan>) -> Self {
        let mut known: Vec<(Value, Option<Value>, Option<Value>)> = Vec::new();
        match plan {
            Some(Plan::LevelArea { table }) => known
                .extend((table.rows()).map(|(l, a)| (Value::level(l), Some(Value::area(a)), None))),
            Some(Plan::LevelVolume { table }) => known.extend(
                (table.rows()).map(|(l, v)| (Value::level(l), None, Some(Value::volume(v)))),
            ),
            _ => {}
        }
        let drafted = ledger().text(&format!("draft site {id} rows"));
        let count = drafted.and_then(|n| n.parse().ok()).unwrap_or(0);
        let count: usize = known.len().max(count).clamp(2, MOST_ROWS);
        let rows = (0..count).map(|n| Self::row(id, n, known.get(n).copied()));
        Self {
            id,
            rows: RwSignal::new(rows.collect()),
        }
    }

    fn row(id: SiteId, n: usize, known: Option<(Value, Option<Value>, Option<Value>)>) -> Row {
        let fact = |name: &str, kind, bounds, known| {
            Fact::new(format!("site {id} row {name} {n}"), kind, bounds, known)
        };
        Row {
            level: fact(
                "level",
                Kind::Level,
                Bounds::of(0.0, 144.0, Unit::Inch),
                known.map(|k| k.0),
            ),
            surface: fact(
                "surface",
                Kind::Area,
                Bounds::of(0.0, 10_000.0, Unit::SquareFoot),
                known.and_then(|k| k.1),
            ),
            volume: fact(
                "volume",
                Kind::Volume,
                Bounds::of(0.0, 100_000.0, Unit::Gallon),
                known.and_then(|k| k.2),
            ),
        }
    }

    /// The draft key of their number.
    pub fn key(self) -> String {
        format!("site {} rows", self.id)
    }

    /// Every field.
    pub fn typings(self) -> Vec<Typing> {
        let rows = self.rows.get_untracked();
        (rows.iter())
            .flat_map(|r| [r.level, r.surface, r.volume])
            .map(|f| f.typing)
            .collect()
    }

    /// Whether nothing is typed.
    pub fn is_empty(self) -> bool {
        let rows = self.rows.get();
        let empty = |r: &Row| r.level.is_empty() && r.surface.is_empty() && r.volume.is_empty();
        rows.iter().all(empty)
    }

    fn add(self) {
        let n = self.rows.with_untracked(Vec::len);
        self.rows.update(|r| r.push(Self::row(self.id, n, None)));
        ledger().keep_text(&format!("draft {}", self.key()), &(n + 1).to_string());
    }

    /// Rows as SI pairs; empty rows are passed over, and nothing comes while
    /// one is half typed or refused.
    fn pairs(self, volumes: bool) -> Option<Vec<(f64, f64)>> {
        let mut pairs = Vec::new();
        for row in self.rows.get() {
            let other = if volumes { row.volume } else { row.surface };
            match (row.level.held().ok()?, other.held().ok()?) {
                (Some(level), Some(value)) => pairs.push((level.si, value.si)),
                (None, None) => {}
                _ => return None,
            }
        }
        Some(pairs)
    }

    /// The table of surfaces, when it is whole.
    pub fn surfaces(self) -> Option<AreaTable> {
        let pairs = self.pairs(false)?;
        let row = |(l, a)| {
            (
                Length::new::<uom::si::length::meter>(l),
                Area::new::<uom::si::area::square_meter>(a),
            )
        };
        AreaTable::new(&pairs.into_iter().map(row).collect::<Vec<_>>()).ok()
    }

    /// The table of water, when it is whole.
    pub fn volumes(self) -> Option<VolumeTable> {
        let pairs = self.pairs(true)?;
        let row = |(l, v)| {
            (
                Length::new::<uom::si::length::meter>(l),
                Volume::new::<uom::si::volume::cubic_meter>(v),
            )
        };
        VolumeTable::new(&pairs.into_iter().map(row).collect::<Vec<_>>()).ok()
    }

    /// Why the field of a row is refused, by the rows above it.
    fn fault(self, n: usize, volumes: bool, level: bool, tried: bool) -> Option<P> {
        let rows = self.rows.get();
        let row = rows.get(n)?;
        let other = |r: &Row| if volumes { r.volume } else { r.surface };
        let (here, beside) = match level {
            true => (row.level, other(row)),
            false => (other(row), row.level),
        };
        let whole = || rows.iter().filter(|r| !r.level.is_empty()).count() >= 2;
        if here.is_empty() {
            let half = !beside.is_empty() || (n < 2 && !whole());
            return (tried && half).then_some(P::RowNeeded);
        }
        let si = |f: Fact| Some(f.held().ok()??.si);
        let now = si(here)?;
        let pick = |r: &Row| si(if level { r.level } else { other(r) });
        let above = rows[..n].iter().rev().find_map(pick)?;
        match (level, volumes) {
            (true, true) => (now <= above).then_some(P::RowDeeper),
            (true, false) => (now < above).then_some(P::RowDeeper),
            (false, true) => (now >= above).then_some(P::RowLess),
            (false, false) => None,
        }
    }
}

/// The rows with their refusals, and a button for one more.
#[component]
pub fn TableFields(rows: Rows, volumes: bool, tried: RwSignal<bool>) -> View {
    let words = prefs().words;
    let full = move || rows.rows.with(Vec::len) >= MOST_ROWS;
    let (name, hint) = match volumes {
        true => (P::WaterHeld, P::VolumeTableHint),
        false => (P::WaterSurface, P::SurfaceTableHint),
    };
    let field = move |fact: Fact, n: usize, label: P, level: bool| {
        let why = also(move || rows.fault(n, volumes, level, tried.get()));
        let test = format!("row-{n}-{}", if level { "level" } else { "value" });
        markup! { <QuantityField typing=fact.typing label=words.phrase(label) test also=why /> }
    };
    let list = move || {
        let all = rows.rows.get().into_iter().enumerate();
        all.map(|(n, row)| {
            let other = if volumes { row.volume } else { row.surface };
            markup! {
                <div class="two">
                    {field(row.level, n, P::RowLevel, true)}
                    {field(other, n, name, false)}
                </div>
            }
        })
        .collect_view()
    };
    markup! {
        <div class="fields" data-test="basin-table">
            <p class="sub small">{words.phrase(hint)}</p>
            {list}
            <button type="button" data-test="add-row" disabled=full on:click=tap(move |_| rows.add())>
                {words.phrase(P::AddRow)}
            </button>
            {move || full().then(|| markup! { <p class="sub small">{words.phrase(P::RowsFull)}</p> })}
        </div>
    }
}
