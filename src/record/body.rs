//! What can happen: the bodies of entries.

use crate::quantity::named::by_name;
use serde::{Deserialize, Serialize};

use super::id::{EntryId, FileId, MachineId, SiteId, TestId};
use super::moment::Moment;
use super::paperwork::{Drawn, Item, Shows, Spot};
use super::site::Site;
use crate::quantity::{Kind, Unit, Value};
use crate::refill::{MarkKind, Setup};
use crate::trace::{Answer, Check, Manner, Mode, Stage};

/// What happened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", rename_all_fields = "kebab-case")]
#[allow(clippy::large_enum_variant)] // the set-up of a test; there are few
pub enum Body {
    /// The site was described, or described anew: the latest counts.
    SiteDescribed {
        /// The whole description; boxed, as it is larger than all else.
        site: Box<Site>,
    },
    /// A visit was opened.
    VisitOpened {
        /// Where.
        site: SiteId,
        /// What the customer said.
        complaint: String,
    },
    /// A reading was taken; a later one of the same thing corrects it.
    ReadingTaken {
        /// What was read.
        what: What,
        /// On which machine, when it is a machine's.
        machine: Option<MachineId>,
        /// As found, or as left.
        when: When,
        /// The value, in SI.
        value: Value,
        /// As it was typed.
        typed: String,
        /// The unit typed or assumed.
        unit: Unit,
    },
    /// A machine's state was noted.
    MachineSeen {
        /// Which machine.
        machine: MachineId,
        /// As found, or as left.
        when: When,
        /// Running, or stopped and how.
        state: MachineState,
    },
    /// A check of the trace was answered.
    CheckAnswered {
        /// Which check.
        check: Check,
        /// What it showed.
        answer: Answer,
        /// Before or after anyone touched anything.
        stage: Stage,
        /// The number read, where the check has a field for one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        value: Option<Value>,
    },
    /// Something was put right during the trace.
    Corrected {
        /// Which fault was dealt with.
        mode: Mode,
    },
    /// A refill test was begun.
    TestBegun {
        /// Its name.
        test: TestId,
        /// Basin, need and limits at that time.
        setup: Setup,
    },
    /// A mark was made in a refill test.
    Marked {
        /// Which test.
        test: TestId,
        /// What was seen.
        mark: MarkKind,
        /// A level as it was typed, in the basin's own scale.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        typed: Option<String>,
    },
    /// A mark was moved: it was tapped late. The tap stays as it was.
    MarkMoved {
        /// In which test.
        test: TestId,
        /// Which mark.
        mark: EntryId,
        /// By so many seconds from the tap, negative to earlier; zero puts it
        /// back.
        by_s: f64,
    },
    /// A reading of the loop while it recovers: each stands by itself, at its
    /// time.
    LoopRead {
        /// What was read.
        what: What,
        /// On which machine, when it is a machine's.
        machine: Option<MachineId>,
        /// The value, in SI.
        value: Value,
        /// As it was typed.
        typed: String,
    },
    /// The page watches a running test again after it did not.
    TestResumed {
        /// Which test.
        test: TestId,
        /// When it watched last.
        last: Moment,
        /// Whether the page was out of sight meanwhile.
        slept: bool,
    },
    /// The cause was named and what was done about it.
    CauseNamed {
        /// Which fault.
        mode: Mode,
        /// Steady or intermittent.
        manner: Manner,
        /// How we know.
        proof: String,
        /// What was done.
        work: String,
    },
    /// An item of the leaving round was answered.
    LeavingAnswered {
        /// Which item.
        item: LeavingItem,
        /// So, not so, or not applicable.
        state: LeavingState,
    },
    /// A note.
    NoteWritten {
        /// Its text.
        text: String,
    },
    /// A report was made and kept.
    ReportMade {
        /// The file kept beside the log.
        file: FileId,
        /// Its file name.
        name: String,
        /// Its size in bytes.
        bytes: u32,
        /// SHA-256 of those bytes in hexadecimal: what was made can be told
        /// from anything else for good. Empty in the first entries.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        sha256: String,
        /// What it corrects in the issue before it; empty for the first.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        corrects: String,
    },
    /// The report was handed to a means of sending. This does not say that it
    /// arrived.
    ReportHandedOver {
        /// Which report.
        file: FileId,
        /// How.
        way: Way,
    },
    /// The person said that the report has reached the customer.
    ReportConfirmed {
        /// Which report.
        file: FileId,
    },
    /// Work, a part, time or advice was written down, or who does the visit.
    LineWritten {
        /// Which of these.
        item: Item,
        /// In words.
        text: String,
        /// How many, or how long.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        amount: Option<Value>,
        /// By which day, `2026-12-08`; empty for none.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        by: String,
    },
    /// A photo was taken and kept.
    PhotoTaken {
        /// The kept JPEG.
        file: FileId,
        /// What it shows.
        shows: Shows,
        /// In words.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        caption: String,
        /// Width and height in pixels.
        size: (u16, u16),
    },
    /// Something was drawn on a photo.
    PhotoDrawn {
        /// On which.
        file: FileId,
        /// What.
        drawn: Drawn,
    },
    /// The customer signed on the glass.
    Signed {
        /// Whose signature, in letters.
        name: String,
        /// The strokes of the pen.
        strokes: Vec<Vec<Spot>>,
    },
    /// The visit was closed.
    VisitClosed,
    /// An earlier entry was taken back.
    Withdrawn {
        /// Which.
        entry: EntryId,
    },
}

impl Body {
    /// A site was described.
    pub fn described(site: Site) -> Self {
        Body::SiteDescribed {
            site: Box::new(site),
        }
    }
}

/// What a reading is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum What {
    /// A machine's head pressure.
    HeadPressure,
    /// Water entering the condensers, which is water leaving the tower.
    EnteringWater,
    /// Water leaving the condensers, which is water onto the tower.
    LeavingWater,
    /// Outdoor dry bulb.
    DryBulb,
    /// Outdoor relative humidity.
    Humidity,
    /// Outdoor wet bulb, measured.
    WetBulb,
    /// Basin level, below the overflow lip.
    BasinLevel,
    /// Voltage at the level control's supply terminals.
    ControlVoltage,
    /// Condenser water flow, when there is a meter.
    WaterFlow,
    /// Conductivity of the basin's water.
    Conductivity,
    /// Water in the whole loop, as the person knows it.
    LoopVolume,
}
by_name!(What: HeadPressure EnteringWater LeavingWater DryBulb Humidity WetBulb BasinLevel ControlVoltage WaterFlow Conductivity LoopVolume);

impl What {
    /// The quantity it is.
    pub fn kind(self) -> Kind {
        match self {
            What::HeadPressure => Kind::GaugePressure,
            What::EnteringWater | What::LeavingWater | What::DryBulb | What::WetBulb => {
                Kind::Temperature
            }
            What::Humidity => Kind::Humidity,
            What::BasinLevel => Kind::Level,
            What::ControlVoltage => Kind::Voltage,
            What::WaterFlow => Kind::Flow,
            What::Conductivity => Kind::Conductivity,
            What::LoopVolume => Kind::Volume,
        }
    }
}

/// When a reading belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum When {
    /// Before anything was changed.
    AsFound,
    /// After the work.
    AsLeft,
}
by_name!(When: AsFound AsLeft);

/// A machine's state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MachineState {
    /// Running.
    Running,
    /// Stopped on high head pressure.
    HighHead,
    /// Stopped for another reason.
    Stopped,
}
by_name!(MachineState: Running HighHead Stopped);

/// What must be so before driving off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LeavingItem {
    /// The fill bypass is shut.
    BypassShut,
    /// The fill bypass carries a tag that says how it stands.
    BypassTagged,
    /// Hand valves stand as they were found.
    HandValves,
    /// The basin drain is shut.
    DrainShut,
    /// The probe is back in place and its cap is dry and tight.
    ProbeBack,
    /// Covers and guards are on.
    CoversOn,
    /// Every lockout of ours is off.
    LockoutOff,
    /// Machines are reset and running.
    MachinesRunning,
    /// Alarms that were silenced or bypassed are back in service.
    AlarmsRestored,
    /// The customer's water treatment has been told.
    TreatmentTold,
    /// The customer has been told.
    CustomerTold,
}
by_name!(LeavingItem: BypassShut BypassTagged HandValves DrainShut ProbeBack CoversOn LockoutOff MachinesRunning AlarmsRestored TreatmentTold CustomerTold);

impl LeavingItem {
    /// All of them, in the order a person walks out.
    pub const ALL: [LeavingItem; 11] = [
        LeavingItem::BypassShut,
        LeavingItem::BypassTagged,
        LeavingItem::HandValves,
        LeavingItem::DrainShut,
        LeavingItem::ProbeBack,
        LeavingItem::CoversOn,
        LeavingItem::LockoutOff,
        LeavingItem::MachinesRunning,
        LeavingItem::AlarmsRestored,
        LeavingItem::TreatmentTold,
        LeavingItem::CustomerTold,
    ];
}

/// How an item of the leaving round stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeavingState {
    /// It is so.
    So,
    /// It is not so; printed on the report.
    NotSo,
    /// There is no such thing here.
    NoneHere,
}
by_name!(LeavingState: So NotSo NoneHere);

/// By what means a report left the outbox.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// The share sheet.
    Shared,
    /// A mail draft.
    Mailed,
    /// Saved on the phone.
    Saved,
    /// A mail file was made, with the report in it.
    MailFile,
}
by_name!(Way: Shared Mailed Saved MailFile);
