//! Invented visits to the Halden Street Bakery, told entry by entry.

use std::cell::Cell;

use coldsump::quantity::{Kind, Length, Unit, Value};
use coldsump::record::paperwork::{Card, Drawn, Item, Shape, Shows};
use coldsump::record::{
    About, Body, Chance, Clock, DeviceId, Entry, EntryId, FileId, LeavingItem, LeavingState, Log,
    Machine, MachineId, MachineState, Moment, Pen, Site, SiteId, Summary, TestId, Visit, VisitId,
    Way, What, When, demo,
};
use coldsump::refill::MarkKind;
use coldsump::trace::{Answer, Check, Manner, Mode, Stage};
use uom::si::length::inch;

/// 2026-11-24 08:12:00, five hours west of Greenwich.
pub const START_MS: i64 = 1_795_525_920_000;

/// A clock that stands until it is moved, and chance that is none.
#[derive(Debug)]
pub struct Fixed {
    pub now: Cell<Moment>,
    chance: u8,
}

impl Fixed {
    pub fn at(ms: i64) -> Self {
        let now = Moment {
            ms,
            offset_min: -300,
            run: 7,
            run_ms: (ms - START_MS) as f64,
        };
        Self {
            now: Cell::new(now),
            chance: 0,
        }
    }

    /// The same clock with another phone's chance.
    pub fn with_chance(self, chance: u8) -> Self {
        Self { chance, ..self }
    }

    /// Both clocks of the phone move on.
    pub fn wait(&self, seconds: f64) {
        let mut now = self.now.get();
        now.ms += (seconds * 1000.0) as i64;
        now.run_ms += seconds * 1000.0;
        self.now.set(now);
    }
}

impl Clock for Fixed {
    fn now(&self) -> Moment {
        self.now.get()
    }
}

impl Chance for Fixed {
    fn ten_bytes(&self) -> [u8; 10] {
        [self.chance; 10]
    }
}

/// An id written out, so that a test can name it.
fn named<T>(parse: impl Fn(&str) -> Option<T>, last: u8) -> T {
    parse(&format!("019ab000-0000-7000-8000-0000000000{last:02x}")).expect("a UUID")
}

/// A visit being written down.
#[derive(Debug)]
pub struct Story {
    pub clock: Fixed,
    pub pen: Pen,
    pub site_id: SiteId,
    pub visit_id: VisitId,
    pub test: TestId,
    pub report: FileId,
    pub photo: FileId,
    pub site: Site,
    pub entries: Vec<Entry>,
}

impl Story {
    /// The site described and the visit opened.
    pub fn opened() -> Self {
        let mut number = 0x10;
        let site = demo::bakery(|| {
            number += 1;
            named(MachineId::parse, number)
        });
        let mut story = Self {
            clock: Fixed::at(START_MS),
            pen: Pen::new(named(DeviceId::parse, 1), None),
            site_id: named(SiteId::parse, 2),
            visit_id: named(VisitId::parse, 3),
            test: named(TestId::parse, 4),
            report: named(FileId::parse, 5),
            photo: named(FileId::parse, 6),
            site,
            entries: Vec::new(),
        };
        let described = Body::described(story.site.clone());
        let about = About::Site(story.site_id);
        story.push(about, described);
        let site = story.site_id;
        story.say(Body::VisitOpened {
            site,
            complaint: "Three blast chillers out, product warming".into(),
        });
        story
    }

    fn push(&mut self, about: About, body: Body) -> EntryId {
        let entry = self.pen.write(about, body, &self.clock, &self.clock);
        self.entries.push(entry);
        self.entries[self.entries.len() - 1].id
    }

    /// Something happens on the visit, half a minute later.
    pub fn say(&mut self, body: Body) -> EntryId {
        self.clock.wait(30.0);
        self.push(About::Visit(self.visit_id), body)
    }

    pub fn machine(&self, n: usize) -> &Machine {
        &self.site.machines[n]
    }

    pub fn read_on(
        &mut self,
        when: When,
        what: What,
        machine: Option<MachineId>,
        number: f64,
        unit: Unit,
    ) -> EntryId {
        let value = Value {
            kind: what.kind(),
            si: unit.to_si(number),
        };
        self.say(Body::ReadingTaken {
            what,
            machine,
            when,
            value,
            typed: number.to_string(),
            unit,
        })
    }

    pub fn read(&mut self, when: When, what: What, number: f64, unit: Unit) -> EntryId {
        self.read_on(when, what, None, number, unit)
    }

    pub fn see(&mut self, when: When, n: usize, state: MachineState) -> EntryId {
        let machine = self.machine(n).id;
        self.say(Body::MachineSeen {
            machine,
            when,
            state,
        })
    }

    pub fn answer(&mut self, check: Check, answer: Answer, stage: Stage) -> EntryId {
        assert!(check.answers().contains(&answer), "{check:?}: {answer:?}");
        self.say(Body::CheckAnswered {
            check,
            answer,
            stage,
            value: None,
        })
    }

    /// A mark some seconds after the entry before it.
    pub fn mark(&mut self, after_s: f64, mark: MarkKind) -> EntryId {
        self.clock.wait(after_s - 30.0);
        let test = self.test;
        self.say(Body::Marked {
            test,
            mark,
            typed: None,
        })
    }

    pub fn level(&mut self, after_s: f64, inches: f64) -> EntryId {
        let below_overflow = Length::new::<inch>(inches);
        self.mark(after_s, MarkKind::Level { below_overflow })
    }

    pub fn leave(&mut self, item: LeavingItem, state: LeavingState) -> EntryId {
        self.say(Body::LeavingAnswered { item, state })
    }

    pub fn note(&mut self, text: &str) -> EntryId {
        self.say(Body::NoteWritten { text: text.into() })
    }

    /// The readings of a hot morning: the loop still circulates, three
    /// machines are out, the basin stands half an inch over the pump inlet.
    pub fn as_found(&mut self) {
        use When::AsFound;
        for n in 0..3 {
            self.see(AsFound, n, MachineState::Running);
            self.see(AsFound, n + 3, MachineState::HighHead);
            let (low, high) = (self.machine(n).id, self.machine(n + 3).id);
            let head = [142.0, 145.0, 139.0][n];
            self.read_on(AsFound, What::HeadPressure, Some(low), head, Unit::Psig);
            let head = [268.0, 271.0, 266.0][n];
            self.read_on(AsFound, What::HeadPressure, Some(high), head, Unit::Psig);
        }
        self.read(AsFound, What::EnteringWater, 88.0, Unit::Fahrenheit);
        self.read(AsFound, What::LeavingWater, 98.0, Unit::Fahrenheit);
        self.read(AsFound, What::DryBulb, 95.0, Unit::Fahrenheit);
        self.read(AsFound, What::Humidity, 47.0, Unit::Percent);
        self.read(AsFound, What::BasinLevel, 11.5, Unit::Inch);
        self.read(AsFound, What::ControlVoltage, 24.6, Unit::Volt);
    }

    /// Everything works while it is tested.
    pub fn all_works(&mut self) {
        use Answer as A;
        use Check as K;
        use Stage::{AsFound, Testing};
        for (check, answer, stage) in [
            (K::MachinesOut, A::ThreeOrMore, AsFound),
            (K::BasinOnArrival, A::BasinLow, AsFound),
            (K::CallAsFound, A::Satisfied, AsFound),
            (K::ControlVoltage, A::VoltageGood, AsFound),
            (K::MainsPressure, A::MainsGood, AsFound),
            (K::HandValves, A::AllOpen, AsFound),
            (K::ProbeDried, A::Calls, Testing),
            (K::CoilPull, A::Pulls, Testing),
            (K::FlowOnCall, A::FullFlow, Testing),
            (K::ProbeFilm, A::HolderFilmed, Testing),
        ] {
            self.answer(check, answer, stage);
        }
    }

    pub fn begin_test(&mut self) {
        let setup = coldsump::record::refill_setup(&self.site, &self.visit()).expect("a basin");
        let test = self.test;
        self.say(Body::TestBegun { test, setup });
    }

    /// A refill test: drawn down past the call, filled by about 15 gpm, held.
    pub fn passing_test(&mut self) {
        self.filled_test(&[3.05, 3.06, 3.1]);
    }

    /// The same, with these levels read after the shut-off, inches below the
    /// overflow.
    pub fn filled_test(&mut self, after: &[f64]) {
        self.begin_test();
        self.level(20.0, 3.0);
        self.mark(10.0, MarkKind::DrawdownBegan);
        self.level(180.0, 4.6);
        self.level(180.0, 6.2);
        self.mark(30.0, MarkKind::CallSeen);
        self.mark(5.0, MarkKind::WaterSeen);
        self.mark(20.0, MarkKind::DrawdownEnded);
        for inches in [6.4, 6.02, 5.61, 5.2, 4.83, 4.39, 4.01, 3.62, 3.2] {
            self.level(60.0, inches);
        }
        self.mark(25.0, MarkKind::ShutOff);
        for inches in after {
            self.level(100.0, *inches);
        }
        self.mark(10.0, MarkKind::Stopped);
    }

    /// Drawn down well below the call level, and nothing calls.
    pub fn failing_test(&mut self) {
        self.begin_test();
        self.level(20.0, 3.0);
        self.mark(10.0, MarkKind::DrawdownBegan);
        for inches in [5.0, 7.0, 8.0] {
            self.level(150.0, inches);
        }
        self.mark(10.0, MarkKind::DrawdownEnded);
        self.level(240.0, 8.1);
        self.mark(60.0, MarkKind::Stopped);
    }

    pub fn name_cause(&mut self) {
        self.say(Body::CauseNamed {
            mode: Mode::SensorFalseFull,
            manner: Manner::Intermittent,
            proof: "Control showed satisfied over the low basin. Wiped dry, it called at once; \
                    film across the holder again, it stopped."
                .into(),
            work: "Cleaned holder and electrodes, dried and sealed the cap, reset three machines."
                .into(),
            also: Vec::new(),
        });
    }

    pub fn as_left(&mut self) {
        use When::AsLeft;
        for n in 0..6 {
            self.see(AsLeft, n, MachineState::Running);
        }
        for (n, head) in [(3, 224.0), (4, 226.0), (5, 221.0)] {
            let id = self.machine(n).id;
            self.read_on(AsLeft, What::HeadPressure, Some(id), head, Unit::Psig);
        }
        self.read(AsLeft, What::EnteringWater, 85.2, Unit::Fahrenheit);
        self.read(AsLeft, What::LeavingWater, 95.0, Unit::Fahrenheit);
        self.read(AsLeft, What::BasinLevel, 3.1, Unit::Inch);
    }

    pub fn leaving_round(&mut self) {
        for item in LeavingItem::ALL {
            let state = match item {
                LeavingItem::TreatmentTold => LeavingState::NotSo,
                LeavingItem::LockoutOff => LeavingState::NoneHere,
                _ => LeavingState::So,
            };
            self.leave(item, state);
        }
    }

    /// A line of the paperwork.
    pub fn line(&mut self, item: Item, text: &str, amount: Option<Value>, by: &str) -> EntryId {
        self.say(Body::LineWritten {
            item,
            text: text.into(),
            amount,
            by: by.into(),
        })
    }

    /// Who did it, what it took, what comes next, a photo, and a signature.
    pub fn paperwork(&mut self) {
        let card = Card {
            name: "R. Tamm".into(),
            firm: "Northfield Refrigeration".into(),
            licence: "Lic. 40-1187".into(),
            phone: "555-0142".into(),
            currency: "$".into(),
            water_price: Some(3.17),
        };
        for (item, text, amount) in card.lines() {
            self.line(item, text, amount.map(Value::number), "");
        }
        assert_eq!(self.visit().paper.card, card);
        let minutes = |n: f64| {
            Some(Value {
                kind: Kind::Duration,
                si: 60.0 * n,
            })
        };
        let two = Some(Value::number(2.0));
        self.line(Item::Part, "Electrode rods", two, "");
        self.line(
            Item::Part,
            "Holder cap and seal",
            Some(Value::number(1.0)),
            "",
        );
        self.line(Item::OnSite, "", minutes(135.0), "");
        self.line(Item::Travel, "both ways", minutes(50.0), "");
        self.line(
            Item::AdviseSoon,
            "Have the water treater look at the foam: it came with the new biocide.",
            None,
            "2026-12-08",
        );
        self.line(
            Item::AdvisePlan,
            "A low-level alarm at the pump inlet, so that a dry basin is known before the machines stop.",
            None,
            "",
        );
        self.line(
            Item::ComeBack,
            "to run the refill test again with the pump on",
            None,
            "2026-12-01",
        );
        let photo = self.photo;
        self.say(Body::PhotoTaken {
            file: photo,
            shows: Shows::Check {
                check: Check::ProbeFilm,
            },
            caption: "Film across the holder before it was wiped.".into(),
            size: (64, 48),
        });
        for (shape, from, to) in [
            (Shape::Arrow, (1_000, 9_000), (4_000, 5_000)),
            (Shape::Circle, (4_000, 2_000), (8_000, 7_000)),
        ] {
            let drawn = Drawn { shape, from, to };
            self.say(Body::PhotoDrawn { file: photo, drawn });
        }
        self.say(Body::Signed {
            name: "Ida Halden".into(),
            strokes: vec![
                vec![(500, 7_000), (1_200, 2_000), (1_500, 8_000), (2_400, 3_000)],
                vec![
                    (2_800, 6_500),
                    (3_600, 4_000),
                    (4_200, 7_500),
                    (7_900, 4_800),
                ],
                vec![(5_000, 2_000)],
            ],
        });
    }

    pub fn send_report(&mut self) {
        let file = self.report;
        self.say(Body::ReportMade {
            file,
            name: "halden-street-bakery-2026-11-24.pdf".into(),
            bytes: 61_234,
            sha256: String::new(),
            corrects: String::new(),
        });
        for way in [Way::Saved, Way::Mailed, Way::Shared] {
            self.say(Body::ReportHandedOver { file, way });
        }
        self.say(Body::ReportConfirmed { file });
    }

    /// A whole visit, every kind of entry in it.
    pub fn whole() -> Self {
        let mut story = Self::opened();
        story.as_found();
        story.all_works();
        story.passing_test();
        story.name_cause();
        story.as_left();
        story.leaving_round();
        story.note("Foam on the basin since the new biocide, says the baker.");
        let slip = story.note("Wrong site");
        story.say(Body::Withdrawn { entry: slip });
        story.paperwork();
        story.send_report();
        story.say(Body::VisitClosed);
        story
    }

    pub fn log(&self) -> Log {
        let mut log = Log::default();
        self.entries.iter().for_each(|e| log.add(e.clone()));
        log
    }

    pub fn summary(&self) -> Summary {
        Summary::of(&self.entries)
    }

    pub fn visit(&self) -> Visit {
        self.log().visit(self.visit_id).expect("it was opened")
    }
}
