//! The basin: its shape, its depth, and the marks on its wall. Drawn to scale
//! as it is typed.

use crate::app::view::prelude::*;

use super::basin_table::{Rows, TableFields};
use super::{Fact, Form, also, frame};
use crate::app::ledger::ledger;
use crate::app::parts::choice::choice;
use crate::app::parts::field::{QuantityField, Typing};
use crate::app::parts::section::section;
use crate::app::prefs::prefs;
use crate::physics::basin::{Basin, Plan};
use crate::quantity::{Bounds, Kind, Length, Unit, Value};
use crate::record::{Site, SiteId, Tower};
use crate::words::Phrase as P;

/// A shape that can be typed in.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    Rectangular,
    Round,
    Sloped,
    Surfaces,
    Volumes,
}

const SHAPES: [(Shape, P, &str); 5] = [
    (Shape::Rectangular, P::Rectangular, "rectangular"),
    (Shape::Round, P::Round, "round"),
    (Shape::Sloped, P::SlopedFloor, "sloped"),
    (Shape::Surfaces, P::SurfaceTable, "surfaces"),
    (Shape::Volumes, P::VolumeTable, "volumes"),
];

fn shape_of(plan: &Plan) -> Shape {
    match plan {
        Plan::Rectangular { .. } => Shape::Rectangular,
        Plan::Round { .. } => Shape::Round,
        Plan::SlopedFloor { .. } => Shape::Sloped,
        Plan::LevelArea { .. } => Shape::Surfaces,
        Plan::LevelVolume { .. } => Shape::Volumes,
    }
}

/// Everything being typed.
#[derive(Clone, Copy)]
struct Fields {
    shape: RwSignal<Shape>,
    length: Fact,
    width: Fact,
    depth: Fact,
    shallow: Fact,
    rows: Rows,
    stop: Fact,
    call: Fact,
    inlet: Fact,
    tried: RwSignal<bool>,
}

impl Fields {
    fn new(id: SiteId, tower: &Tower) -> Self {
        let plan = tower.basin.map(|b| b.plan);
        let (length, width, fall) = match plan {
            Some(Plan::Rectangular { length, width }) => (Some(length), Some(width), None),
            Some(Plan::Round { diameter }) => (Some(diameter), None, None),
            Some(Plan::SlopedFloor {
                length,
                width,
                fall,
            }) => (Some(length), Some(width), Some(fall)),
            _ => (None, None, None),
        };
        let depth = tower.basin.map(|b| b.depth);
        let shallow = fall.zip(depth).map(|(fall, deep)| deep - fall);
        let fact = |name: &str, kind, bounds, known: Option<Length>| {
            let known = known.map(|l| match kind {
                Kind::Level => Value::level(l),
                _ => Value::length(l),
            });
            Fact::new(format!("site {id} {name}"), kind, bounds, known)
        };
        let side = Bounds::of(0.5, 100.0, Unit::Foot);
        let deep = Bounds::of(1.0, 144.0, Unit::Inch);
        let mark = Bounds::of(0.0, 144.0, Unit::Inch);
        let level = |name, bounds, known| fact(name, Kind::Level, bounds, known);
        let drafted = ledger().text(&shape_key(id));
        let drafted = SHAPES
            .iter()
            .find(|(.., name)| Some(*name) == drafted.as_deref())
            .map(|(shape, ..)| *shape);
        let shape = drafted.unwrap_or(plan.as_ref().map_or(Shape::Rectangular, shape_of));
        Self {
            shape: RwSignal::new(shape),
            length: fact("length", Kind::Length, side, length),
            width: fact("width", Kind::Length, side, width),
            depth: level("depth", deep, depth),
            shallow: level("shallow", mark, shallow),
            rows: Rows::new(id, plan.as_ref()),
            stop: level("stop", mark, tower.stop_level),
            call: level("call", mark, tower.call_level),
            inlet: level("inlet", mark, tower.inlet_level),
            tried: RwSignal::new(false),
        }
    }

    /// The fields that this shape asks for beside its table.
    fn of_shape(self) -> Vec<Fact> {
        match self.shape.get() {
            Shape::Rectangular => vec![self.length, self.width, self.depth],
            Shape::Round => vec![self.length, self.depth],
            Shape::Sloped => vec![self.length, self.width, self.depth, self.shallow],
            Shape::Surfaces | Shape::Volumes => vec![self.depth],
        }
    }

    fn is_empty(self) -> bool {
        let of_shape = self.of_shape();
        let table = matches!(self.shape.get(), Shape::Surfaces | Shape::Volumes);
        of_shape.iter().all(|f| f.is_empty()) && (!table || self.rows.is_empty())
    }

    /// The basin; nothing within while nobody knows it. An error while it is
    /// half known: of half a shape nothing can be worked out.
    fn basin(self) -> Result<Option<Basin>, ()> {
        if self.is_empty() {
            return Ok(None);
        }
        let length = |fact: Fact| {
            fact.held()?
                .map(|v| Length::new::<uom::si::length::meter>(v.si))
                .ok_or(())
        };
        let depth = length(self.depth)?;
        let plan = match self.shape.get() {
            Shape::Rectangular => Plan::Rectangular {
                length: length(self.length)?,
                width: length(self.width)?,
            },
            Shape::Round => Plan::Round {
                diameter: length(self.length)?,
            },
            Shape::Sloped => {
                let shallow = length(self.shallow)?;
                if shallow > depth {
                    return Err(());
                }
                Plan::SlopedFloor {
                    length: length(self.length)?,
                    width: length(self.width)?,
                    fall: depth - shallow,
                }
            }
            Shape::Surfaces => Plan::LevelArea {
                table: self.rows.surfaces().ok_or(())?,
            },
            Shape::Volumes => Plan::LevelVolume {
                table: self.rows.volumes().ok_or(())?,
            },
        };
        Ok(Some(Basin { plan, depth }))
    }

    /// Why a field of the shape is refused, when it is.
    fn shape_fault(self, fact: Fact, is_shallow: bool) -> Option<P> {
        let missing = self.tried.get() && fact.is_empty() && !self.is_empty();
        let level = |f: Fact| Some(f.held().ok()??.si);
        let over = || is_shallow && level(self.shallow) > level(self.depth);
        match (missing, level(self.depth).is_some() && over()) {
            (true, _) => Some(P::NeededWithRest),
            (_, true) => Some(P::ShallowDeeper),
            _ => None,
        }
    }

    /// The marks must come in order from the lip down; one that is not known
    /// is passed over.
    fn mark_fault(self, upper: &[Fact], mark: Fact) -> Option<P> {
        let level = |f: &Fact| f.held().ok()?.map(|v| v.si);
        let low = level(&mark)?;
        if upper.iter().find_map(level).is_some_and(|high| low <= high) {
            return Some(P::LevelOrder);
        }
        (low > level(&self.depth)?).then_some(P::LevelBelowFloor)
    }

    fn marks(self) -> [(Fact, Vec<Fact>); 3] {
        let Self {
            stop, call, inlet, ..
        } = self;
        [
            (stop, vec![]),
            (call, vec![stop]),
            (inlet, vec![call, stop]),
        ]
    }

    fn change(self, site: &mut Site) -> Option<()> {
        let faults = self.marks();
        if faults
            .iter()
            .any(|(mark, upper)| self.mark_fault(upper, *mark).is_some())
        {
            return None;
        }
        let mark = |fact: Fact| Some(fact.held().ok()?.and_then(Value::as_level));
        let tower = &mut site.tower;
        tower.basin = self.basin().ok()?;
        tower.stop_level = mark(self.stop)?;
        tower.call_level = mark(self.call)?;
        tower.inlet_level = mark(self.inlet)?;
        Some(())
    }

    fn typings(self) -> Vec<Typing> {
        let Self {
            length,
            width,
            depth,
            shallow,
            stop,
            call,
            inlet,
            ..
        } = self;
        let mut all = [length, width, depth, shallow, stop, call, inlet]
            .map(|f| f.typing)
            .to_vec();
        all.extend(self.rows.typings());
        all
    }
}

fn shape_key(id: SiteId) -> String {
    format!("draft site {id} shape")
}

/// The form.
pub fn form(id: SiteId, site: Site) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let fields = Fields::new(id, &site.tower);
    let shapes = SHAPES
        .map(|(shape, name, test)| {
            let choose = move || {
                fields.shape.set(shape);
                ledger().keep_text(&shape_key(id), test);
            };
            let chosen = move || fields.shape.get() == shape;
            choice(test, words.phrase(name), chosen, choose)
        })
        .into_iter()
        .collect_view();
    let side = move |fact: Fact, label: P, test: &'static str, shallow: bool| {
        let why = also(move || fields.shape_fault(fact, shallow));
        markup! { <QuantityField typing=fact.typing label=words.phrase(label) test also=why /> }
    };
    let shape_fields = move || match fields.shape.get() {
        Shape::Rectangular => markup! {
            <div class="two">
                {side(fields.length, P::InsideLength, "length", false)}
                {side(fields.width, P::InsideWidth, "width", false)}
            </div>
            {side(fields.depth, P::BasinDepth, "depth", false)}
        },
        Shape::Round => markup! {
            {side(fields.length, P::Diameter, "length", false)}
            {side(fields.depth, P::BasinDepth, "depth", false)}
        },
        Shape::Sloped => markup! {
            <div class="two">
                {side(fields.length, P::InsideLength, "length", false)}
                {side(fields.width, P::InsideWidth, "width", false)}
            </div>
            {side(fields.depth, P::DeepEnd, "depth", false)}
            {side(fields.shallow, P::ShallowEnd, "shallow", true)}
        },
        shape => markup! {
            {side(fields.depth, P::BasinDepth, "depth", false)}
            <TableFields rows=fields.rows volumes=shape == Shape::Volumes tried=fields.tried />
        },
    };
    let [stop, call, inlet] = fields.marks().map(|(mark, upper)| {
        let why = also(move || fields.mark_fault(&upper, mark));
        (mark.typing, why)
    });
    let drawing = move || {
        let basin = fields.basin().ok()??;
        let level = |f: Fact| f.held().ok()??.as_level();
        let mut marks = vec![(P::MarkOverflow, Length::default())];
        for (name, fact) in [
            (P::MarkStop, fields.stop),
            (P::MarkCall, fields.call),
            (P::MarkInlet, fields.inlet),
        ] {
            marks.extend(level(fact).map(|l| (name, l)));
        }
        marks.push((P::MarkFloor, basin.depth));
        Some(section(&basin, &marks, words, system))
    };
    let form = Form {
        id,
        title: P::PartBasin,
        tried: fields.tried,
        fields: Box::new(move || fields.typings()),
        texts: Box::new(move || vec![format!("site {id} shape"), fields.rows.key()]),
        change: Box::new(move |site| fields.change(site)),
    };
    let body = markup! {
        <section>
            <h2>{words.phrase(P::BasinShape)}</h2>
            <div class="seg" role="group" aria-label=words.phrase(P::BasinShape)>{shapes}</div>
            {shape_fields}
            <div>{drawing}</div>
        </section>
        <section>
            <h2>{words.phrase(P::BasinMarks)}</h2>
            <p class="sub small">{words.phrase(P::BasinHint)}</p>
            <QuantityField typing=stop.0 label=words.phrase(P::StopLevel) test="stop" also=stop.1 />
            <QuantityField typing=call.0 label=words.phrase(P::CallLevel) test="call" also=call.1 />
            <QuantityField typing=inlet.0 label=words.phrase(P::InletLevel) test="inlet"
                hint=words.phrase(P::InletHint) also=inlet.1 />
        </section>
    };
    frame(form, body)
}
