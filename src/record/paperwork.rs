//! The paper side of a visit: work, parts, time and advice as written down,
//! photos, who did it, and who signed.

use crate::quantity::named::by_name;
use serde::{Deserialize, Serialize};

use super::body::{Body, What};
use super::entry::Entry;
use super::id::{EntryId, FileId, MachineId};
use super::moment::Moment;
use super::standing::withdrawn;
use super::table::Table;
use crate::quantity::Value;
use crate::trace::Check;

/// What a line of the paperwork says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Item {
    /// Something that was done.
    Work,
    /// A part or material that was used; its amount is how many.
    Part,
    /// Time on site; its amount is a duration.
    OnSite,
    /// Time on the road; its amount is a duration.
    Travel,
    /// Advice: before anyone relies on the plant.
    AdviseNow,
    /// Advice: within weeks.
    AdviseSoon,
    /// Advice: at the next planned stop.
    AdvisePlan,
    /// We come back: the line says what for, its date when.
    ComeBack,
    /// Who does the visit. Of this and the four below, the last line counts.
    Mechanic,
    /// The firm.
    Firm,
    /// Licence number.
    Licence,
    /// Telephone.
    Phone,
    /// The price of a cubic metre of water, sewer included, is the amount; the
    /// text is the sign of its money.
    WaterPrice,
}
by_name!(Item: Work Part OnSite Travel AdviseNow AdviseSoon AdvisePlan ComeBack Mechanic Firm Licence Phone WaterPrice);

impl Item {
    /// Advice and appointments, the most urgent first.
    pub const ADVICE: [Item; 4] = [
        Item::AdviseNow,
        Item::ComeBack,
        Item::AdviseSoon,
        Item::AdvisePlan,
    ];
}

/// Who does the visit, as printed on its report.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Card {
    /// The mechanic.
    pub name: String,
    /// The firm.
    pub firm: String,
    /// Licence number, where one is printed.
    pub licence: String,
    /// Telephone.
    pub phone: String,
    /// Sign of the money that `water_price` is in.
    pub currency: String,
    /// Price of a cubic metre of water, sewer included.
    pub water_price: Option<f64>,
}

impl Card {
    /// The card as lines of the paperwork.
    pub fn lines(&self) -> [(Item, &str, Option<f64>); 5] {
        [
            (Item::Mechanic, &self.name, None),
            (Item::Firm, &self.firm, None),
            (Item::Licence, &self.licence, None),
            (Item::Phone, &self.phone, None),
            (Item::WaterPrice, &self.currency, self.water_price),
        ]
    }

    /// Takes a line over; false when it is not one of a card.
    fn take(&mut self, item: Item, text: &str, amount: Option<Value>) -> bool {
        let field = match item {
            Item::Mechanic => &mut self.name,
            Item::Firm => &mut self.firm,
            Item::Licence => &mut self.licence,
            Item::Phone => &mut self.phone,
            Item::WaterPrice => {
                self.water_price = amount.map(|v| v.si);
                &mut self.currency
            }
            _ => return false,
        };
        text.clone_into(field);
        true
    }
}

/// What a photo shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", rename_all_fields = "kebab-case")]
pub enum Shows {
    /// The plant in general.
    Plant,
    /// Where a reading was taken.
    Reading {
        /// Of what.
        what: What,
        /// On which machine.
        machine: Option<MachineId>,
    },
    /// What a check found.
    Check {
        /// Which.
        check: Check,
    },
}

/// A place on a picture or a signature: ten-thousandths of its width from the
/// left and of its height from the top.
pub type Spot = (u16, u16);

/// What is drawn on a photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// A line with a head at its second end.
    Arrow,
    /// An ellipse in the box between its two ends.
    Circle,
}
by_name!(Shape: Arrow Circle);

/// A shape and its two ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Drawn {
    /// Which shape.
    pub shape: Shape,
    /// Where the finger came down.
    pub from: Spot,
    /// Where it was lifted.
    pub to: Spot,
}

/// A line of the paperwork that stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The entry that says so.
    pub entry: EntryId,
    /// When.
    pub at: Moment,
    /// What it says.
    pub item: Item,
    /// In words.
    pub text: String,
    /// How many, or how long.
    pub amount: Option<Value>,
    /// By which day, `2026-12-08`; empty for none.
    pub by: String,
}

/// A photo that stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Photo {
    /// The entry that says so.
    pub entry: EntryId,
    /// When it was kept.
    pub at: Moment,
    /// The kept JPEG.
    pub file: FileId,
    /// What it shows.
    pub shows: Shows,
    /// In words; may be empty.
    pub caption: String,
    /// Width and height in pixels.
    pub size: (u16, u16),
    /// What is drawn on it, each with its entry.
    pub drawn: Vec<(EntryId, Drawn)>,
}

/// A signature that stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Signature {
    /// When.
    pub at: Moment,
    /// Whose, in letters.
    pub name: String,
    /// The strokes of the pen.
    pub strokes: Vec<Vec<Spot>>,
}

/// The paperwork of a visit, folded.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Paperwork {
    /// Lines in order of time.
    pub lines: Vec<Line>,
    /// Photos in order of time.
    pub photos: Vec<Photo>,
    /// Who did the visit.
    pub card: Card,
    /// The signature, the last one given.
    pub signature: Option<Signature>,
}

impl Paperwork {
    /// The lines of one item.
    pub fn of(&self, item: Item) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(move |l| l.item == item)
    }

    /// Photos first, so that what is drawn on one never comes before it.
    pub(super) fn begin(&mut self, entry: &Entry) {
        if let Body::PhotoTaken {
            file,
            shows,
            caption,
            size,
        } = &entry.body
        {
            self.photos.push(Photo {
                entry: entry.id,
                at: entry.at,
                file: *file,
                shows: *shows,
                caption: caption.clone(),
                size: *size,
                drawn: Vec::new(),
            });
        }
    }

    pub(super) fn take(&mut self, entry: &Entry) {
        match &entry.body {
            Body::LineWritten {
                item,
                text,
                amount,
                by,
            } => {
                if self.card.take(*item, text, *amount) {
                    return;
                }
                self.lines.push(Line {
                    entry: entry.id,
                    at: entry.at,
                    item: *item,
                    text: text.clone(),
                    amount: *amount,
                    by: by.clone(),
                });
            }
            Body::PhotoDrawn { file, drawn } => {
                if let Some(photo) = self.photos.iter_mut().find(|p| p.file == *file) {
                    photo.drawn.push((entry.id, *drawn));
                }
            }
            Body::Signed { name, strokes } => {
                self.signature = Some(Signature {
                    at: entry.at,
                    name: name.clone(),
                    strokes: strokes.clone(),
                });
            }
            _ => {}
        }
    }
}

/// The files that standing entries speak of, each with the SHA-256 it was
/// kept under, where one was noted.
pub fn files<'a>(entries: impl Iterator<Item = &'a Entry>) -> Vec<(FileId, String)> {
    let mut all: Table<EntryId, &Entry> = Table::new();
    entries.for_each(|e| all.insert(e.id, e));
    let gone = withdrawn(&all);
    let named = |entry: &Entry| match &entry.body {
        Body::ReportMade { file, sha256, .. } => Some((*file, sha256.clone())),
        Body::PhotoTaken { file, .. } => Some((*file, String::new())),
        _ => None,
    };
    all.values()
        .filter(|e| !gone.contains_key(&e.id))
        .filter_map(|e| named(e))
        .collect()
}
