//! The lock: one key seals every record; the key itself is kept sealed by what a
//! passphrase comes to. A new passphrase seals that key anew and no record.
//!
//! Written in the store under [`LOCK`], as words between spaces:
//!
//! ```text
//! 1 NAME STATE ROUNDS SALT WRAPPED
//! ```
//!
//! The form; the lock's own name; on, closing or opening; rounds and salt of
//! PBKDF2-HMAC-SHA-256 (RFC 8018); the key, sealed. Salt and key in base64.

use super::seal::{KEY, NONCE, Seal};
use crate::record::bytes::{base64, from_base64};

/// Under this key a store keeps its lock, when it has one.
pub const LOCK: &str = "lock";

/// Rounds of PBKDF2-HMAC-SHA-256 for a new lock: OWASP's Password Storage Cheat
/// Sheet (2023).
pub const ROUNDS: u32 = 600_000;

/// The most rounds of a lock that comes from elsewhere: more would hold up a
/// phone for minutes.
const MOST_ROUNDS: u32 = 10_000_000;

/// The fewest characters of a passphrase: NIST SP 800-63B (2017), 5.1.1.2, which
/// also asks for no rule about which characters they are.
pub const SHORTEST: usize = 8;

/// Whether a passphrase is long enough, counted in characters.
pub fn long_enough(passphrase: &str) -> bool {
    passphrase.chars().count() >= SHORTEST
}

/// How far the records are sealed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LockState {
    /// All of them.
    On,
    /// They are being sealed; some are not yet.
    Closing,
    /// They are being opened for good; some still are sealed.
    Opening,
}

const STATES: [(LockState, &str); 3] = [
    (LockState::On, "on"),
    (LockState::Closing, "closing"),
    (LockState::Opening, "opening"),
];

/// A lock as kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lock {
    /// Its name: another lock has another.
    pub name: String,
    /// How far it is.
    pub state: LockState,
    /// Rounds of the passphrase's way to a key.
    pub rounds: u32,
    /// Salt of that way.
    pub salt: Vec<u8>,
    wrapped: Vec<u8>,
}

impl Lock {
    /// A lock over the records' key, closed by the passphrase's key.
    pub fn new(
        name: String,
        salt: Vec<u8>,
        nonce: [u8; NONCE],
        passphrase: &[u8; KEY],
        key: &[u8; KEY],
    ) -> Option<Self> {
        let mut lock = Self {
            name,
            state: LockState::Closing,
            rounds: ROUNDS,
            salt,
            wrapped: Vec::new(),
        };
        lock.wrapped = Seal::new(passphrase).seal(nonce, &lock.place(), key)?;
        Some(lock)
    }

    /// The same lock, so far.
    pub fn at(self, state: LockState) -> Self {
        Self { state, ..self }
    }

    /// What the sealed key is bound to: it opens in no other lock's place.
    fn place(&self) -> String {
        format!("lock {}", self.name)
    }

    /// The records' key; `None` when the passphrase's key is not the right one.
    pub fn open(&self, passphrase: &[u8; KEY]) -> Option<[u8; KEY]> {
        let key = Seal::new(passphrase).open(&self.place(), &self.wrapped)?;
        key.try_into().ok()
    }

    /// As kept.
    pub fn write(&self) -> String {
        let state = STATES.iter().find(|(state, _)| *state == self.state);
        let state = state.map_or("", |(_, name)| name);
        let (salt, wrapped) = (base64(&self.salt), base64(&self.wrapped));
        format!("1 {} {state} {} {salt} {wrapped}", self.name, self.rounds)
    }

    /// What [`Lock::write`] wrote; `None` for anything else, and for a number of
    /// rounds that no phone would finish.
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.split(' ');
        let mut next = || parts.next();
        if next()? != "1" {
            return None;
        }
        let name = next()?.to_owned();
        let state = next()?;
        let state = STATES.iter().find(|(_, name)| *name == state)?.0;
        let rounds = next()?.parse().ok()?;
        let salt = from_base64(next()?)?;
        let wrapped = from_base64(next()?)?;
        (1..=MOST_ROUNDS).contains(&rounds).then_some(Self {
            name,
            state,
            rounds,
            salt,
            wrapped,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn lock() -> Lock {
        Lock::new("a1".into(), vec![1; 16], [2; NONCE], &[3; KEY], &[4; KEY]).expect("a lock")
    }

    #[test]
    fn the_right_passphrase_gives_the_key_and_no_other_does() {
        let lock = lock();
        assert_eq!(lock.open(&[3; KEY]), Some([4; KEY]));
        assert_eq!(lock.open(&[5; KEY]), None);
        let renamed = Lock {
            name: "a2".into(),
            ..lock
        };
        assert_eq!(renamed.open(&[3; KEY]), None);
    }

    #[test]
    fn a_lock_is_read_as_it_was_written() {
        for (state, _) in STATES {
            let lock = Lock { state, ..lock() };
            assert_eq!(Lock::read(&lock.write()), Some(lock));
        }
    }

    /// The form is forever. This one was made elsewhere, by
    /// `tests/fixtures/lock.mjs`; the passphrase's key is from there too, and in
    /// `tests/web_lock.rs` the browser makes it.
    #[test]
    fn the_first_form_opens() {
        let text = include_str!("../../tests/fixtures/lock-v1.txt").trim();
        let kept = Lock::read(text).expect("it reads");
        let by = [
            0x3f, 0x55, 0xa2, 0xc0, 0xb8, 0xa8, 0xa7, 0x87, 0x40, 0xe2, 0xca, 0xdc, 0x1d, 0x07,
            0x9c, 0xda, 0xf2, 0xf9, 0xc2, 0xbf, 0x5e, 0xd8, 0x65, 0xf0, 0x84, 0x98, 0x61, 0x1d,
            0x96, 0x83, 0x54, 0x03,
        ];
        assert_eq!(kept.open(&by), Some([4; KEY]));
        assert_eq!(kept.write(), text);
    }

    #[test]
    fn a_lock_that_would_hold_up_the_phone_is_refused() {
        let text = lock().write();
        for rounds in ["0", "10000001", "99999999999", "-1", "x"] {
            assert_eq!(
                Lock::read(&text.replace("600000", rounds)),
                None,
                "{rounds}"
            );
        }
        assert_eq!(Lock::read(&text.replacen('1', "2", 1)), None);
    }

    /// Eight characters, whatever they are (NIST SP 800-63B, 5.1.1.2).
    #[test]
    fn a_passphrase_is_counted_in_characters() {
        assert!(long_enough("ñandúes!"));
        assert!(!long_enough("ñandúes"));
        assert!(long_enough("        "));
    }

    proptest! {
        #[test]
        fn no_text_breaks_the_reading(text in ".{0,200}") {
            let _ = Lock::read(&text);
            let _ = Lock::read(&format!("1 a on 1 {text}"));
        }
    }
}
