//! Phones that write without signal and take in each other's backups, in any
//! order, end with the same log.

use coldsump::quantity::{Unit, Value};
use coldsump::record::bytes::sha256;
use coldsump::record::paperwork::{Drawn, Item, Shape, Shows};
use coldsump::record::{
    About, Body, DeviceId, Entry, FileId, LeavingItem, LeavingState, Log, MachineId, MachineState,
    Pen, What, When,
};
use coldsump::store::KeptFile;
use coldsump::store::backup::{FileCopy, Sifted, sift};
use proptest::prelude::*;

use crate::story::{Fixed, START_MS, Story};

/// A phone with its own name, clock and log.
struct Phone {
    pen: Pen,
    clock: Fixed,
    log: Log,
}

/// Numbers that look like chance and are the same on every run (xorshift;
/// Marsaglia, "Xorshift RNGs", J. Stat. Softw. 8, 2003).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) % sides
    }
}

impl Phone {
    fn new(n: u8, first: &Story, dice: &mut Dice) -> Self {
        let device = DeviceId::parse(&format!("019ab000-0000-7000-8000-0000000001{n:02x}"));
        let device = device.expect("a UUID");
        // Clocks that are up to half an hour apart.
        let clock = Fixed::at(START_MS + 60_000 * dice.roll(60) as i64);
        Phone {
            pen: Pen::new(device, None),
            clock: clock.with_chance(n),
            log: first.log(),
        }
    }

    fn write(&mut self, about: About, dice: &mut Dice) {
        self.clock.wait(dice.roll(90) as f64);
        let any = |dice: &mut Dice, log: &Log| {
            let n = dice.roll(log.len() as u64) as usize;
            log.held().nth(n).map(|e| e.id).expect("one entry at least")
        };
        let file = FileId::parse("019ab000-0000-7000-8000-0000000000f1").expect("a UUID");
        let machine = MachineId::parse("019ab000-0000-7000-8000-000000000011").expect("a UUID");
        let body = match dice.roll(9) {
            0 | 1 => Body::Withdrawn {
                entry: any(dice, &self.log),
            },
            2 => Body::MachineSeen {
                machine,
                when: When::AsLeft,
                state: [MachineState::Running, MachineState::HighHead][dice.roll(2) as usize],
            },
            3 => Body::LeavingAnswered {
                item: LeavingItem::ALL[dice.roll(9) as usize],
                state: LeavingState::So,
            },
            4 => Body::LineWritten {
                item: Item::ADVICE[dice.roll(4) as usize],
                text: dice.roll(1000).to_string(),
                amount: None,
                by: String::new(),
            },
            5 => Body::PhotoTaken {
                file,
                shows: Shows::Plant,
                caption: String::new(),
                size: (64, 48),
            },
            6 => Body::PhotoDrawn {
                file,
                drawn: Drawn {
                    shape: Shape::Circle,
                    from: (dice.roll(10_000) as u16, 0),
                    to: (10_000, 10_000),
                },
            },
            7 => Body::NoteWritten {
                text: dice.roll(1000).to_string(),
            },
            _ => Body::ReadingTaken {
                what: What::DryBulb,
                machine: None,
                when: When::AsFound,
                value: Value {
                    kind: What::DryBulb.kind(),
                    si: 290.0 + dice.roll(100) as f64 / 7.0,
                },
                typed: String::new(),
                unit: Unit::Fahrenheit,
            },
        };
        let entry = self.pen.write(about, body, &self.clock, &self.clock);
        self.log.add(entry);
    }

    /// Takes in a backup of another phone's log, as the app does.
    fn take_in(&mut self, from: &Log) -> Sifted {
        let sifted = sift(&self.log, from.held().cloned().collect());
        sifted.new.iter().for_each(|e| self.log.add(e.clone()));
        sifted
    }
}

/// Two or three phones write and exchange at random; in the end each takes in
/// the others in an order of its own.
fn interleave(seed: u64) {
    let mut dice = Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
    let first = Story::opened();
    let about = About::Visit(first.visit_id);
    let count = 2 + (seed % 2) as usize;
    let mut phones: Vec<Phone> = (0..count)
        .map(|n| Phone::new(n as u8, &first, &mut dice))
        .collect();
    for _ in 0..8 + dice.roll(16) {
        let one = dice.roll(count as u64) as usize;
        if dice.roll(4) == 0 {
            let other = phones[dice.roll(count as u64) as usize].log.clone();
            phones[one].take_in(&other);
        } else {
            phones[one].write(about, &mut dice);
        }
    }
    let all: Vec<Log> = phones.iter().map(|p| p.log.clone()).collect();
    for phone in &mut phones {
        let start = dice.roll(count as u64) as usize;
        for n in 0..count {
            let sifted = phone.take_in(&all[(start + n) % count]);
            assert_eq!(sifted.other, 0, "two entries of one name: seed {seed}");
        }
    }
    let last = phones.pop().expect("two at least");
    for phone in phones {
        assert_eq!(phone.log, last.log, "seed {seed}");
        assert_eq!(
            phone.log.visit(first.visit_id),
            last.log.visit(first.visit_id),
            "seed {seed}"
        );
    }
}

#[test]
fn ten_thousand_interleavings_end_equal() {
    (0..10_000).for_each(interleave);
}

fn log(entries: &[Entry]) -> Log {
    let mut log = Log::default();
    entries.iter().for_each(|e| log.add(e.clone()));
    log
}

fn taken_in(into: &Log, from: &Log) -> Log {
    let mut into = into.clone();
    let sifted = sift(&into, from.held().cloned().collect());
    sifted.new.into_iter().for_each(|e| into.add(e));
    into
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn taking_in_is_commutative_associative_idempotent(kept in prop::collection::vec(0u8..8, 200)) {
        let all = Story::whole().entries;
        let part = |bit: u8| -> Log {
            let mine = all.iter().zip(&kept).filter(|(_, k)| *k & bit != 0);
            log(&mine.map(|(e, _)| e.clone()).collect::<Vec<_>>())
        };
        let (a, b, c) = (part(1), part(2), part(4));
        prop_assert_eq!(taken_in(&a, &b), taken_in(&b, &a));
        prop_assert_eq!(taken_in(&taken_in(&a, &b), &c), taken_in(&a, &taken_in(&b, &c)));
        prop_assert_eq!(taken_in(&a, &a), a.clone());
        prop_assert_eq!(taken_in(&taken_in(&a, &b), &b), taken_in(&a, &b));
    }
}

#[test]
fn nothing_here_is_written_over() {
    let story = Story::whole();
    let mut forged = story.entries.clone();
    let changed = forged.len() - 2;
    forged[changed].body = Body::NoteWritten {
        text: "something else".into(),
    };
    let sifted = sift(&story.log(), forged);
    assert_eq!((sifted.new.len(), sifted.other), (0, 1));
    assert_eq!(sifted.known, story.entries.len() - 1);
    // The same name twice in one backup: the first is taken.
    let two = vec![story.entries[0].clone(), {
        let mut other = story.entries[1].clone();
        other.id = story.entries[0].id;
        other
    }];
    let sifted = sift(&Log::default(), two);
    assert_eq!((sifted.new.len(), sifted.other), (1, 1));
}

#[test]
fn a_file_that_was_tampered_with_is_not_taken_in() {
    let file = KeptFile {
        id: Story::opened().report,
        name: "r.pdf".into(),
        media_type: "application/pdf".into(),
        bytes: b"%PDF-1.7 and so on".to_vec(),
    };
    let copy = FileCopy::from(&file);
    assert_eq!(copy.sha256, sha256(&file.bytes));
    assert_eq!(copy.clone().open(), Some(file.clone()));
    let mut other = copy.clone();
    other.base64.replace_range(0..1, "K");
    assert_eq!(other.open(), None);
    let mut other = copy;
    other.base64.push('!');
    assert_eq!(other.open(), None);
}
