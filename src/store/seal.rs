//! Sealing by XChaCha20-Poly1305 (RFC 8439 with the longer nonce of
//! draft-irtf-cfrg-xchacha-03): what is sealed can't be read without the key, nor
//! changed, nor put in another's place, without its opening being refused.

use chacha20poly1305::aead::AeadInOut;
use chacha20poly1305::{KeyInit, XChaCha20Poly1305};

/// Bytes of a key.
pub const KEY: usize = 32;

/// Bytes of a nonce: so many that one drawn at random does not come twice.
pub const NONCE: usize = 24;

/// Bytes by which what is sealed is longer: nonce and tag.
pub const MORE: usize = NONCE + 16;

/// A key that seals and opens.
#[derive(Clone)]
pub struct Seal(XChaCha20Poly1305);

impl std::fmt::Debug for Seal {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Seal") // never the key
    }
}

impl Seal {
    /// Seals under this key.
    pub fn new(key: &[u8; KEY]) -> Self {
        Self(XChaCha20Poly1305::new(key.into()))
    }

    /// Seals bytes: the nonce, then the sealed text and its tag. `place` names
    /// where it is kept; it opens nowhere else. A nonce must never be used twice
    /// under one key. `None` above 256 GB.
    pub fn seal(&self, nonce: [u8; NONCE], place: &str, clear: &[u8]) -> Option<Vec<u8>> {
        let mut sealed = Vec::with_capacity(clear.len() + MORE);
        sealed.extend(nonce);
        sealed.extend(clear);
        let text = &mut sealed[NONCE..];
        let tag = self
            .0
            .encrypt_inout_detached(&nonce.into(), place.as_bytes(), text.into());
        sealed.extend(tag.ok()?);
        Some(sealed)
    }

    /// Opens what [`Seal::seal`] made; `None` when one bit of it, its place or
    /// the key is another.
    pub fn open(&self, place: &str, sealed: &[u8]) -> Option<Vec<u8>> {
        let (nonce, rest) = sealed.split_first_chunk::<NONCE>()?;
        let (text, tag) = rest.split_last_chunk::<16>()?;
        let mut clear = text.to_vec();
        let opened = self.0.decrypt_inout_detached(
            nonce.into(),
            place.as_bytes(),
            clear.as_mut_slice().into(),
            tag.into(),
        );
        opened.ok().map(|()| clear)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use chacha20poly1305::ChaCha20Poly1305;
    use proptest::prelude::*;

    const ADVICE: &[u8] =
        b"Ladies and Gentlemen of the class of '99: If I could offer you only one \
tip for the future, sunscreen would be it.";

    fn hex(text: &str) -> Vec<u8> {
        let digits: Vec<u8> = text
            .chars()
            .filter(|c| !c.is_whitespace())
            .map(|c| c.to_digit(16).expect("a digit") as u8)
            .collect();
        digits.chunks(2).map(|two| two[0] << 4 | two[1]).collect()
    }

    fn key() -> [u8; KEY] {
        std::array::from_fn(|n| 0x80 + n as u8)
    }

    /// The example of draft-irtf-cfrg-xchacha-03, appendix A.3.1. Its associated
    /// data is no text, so the library is asked as `seal` asks it.
    #[test]
    fn the_draft_s_example() {
        let nonce: [u8; NONCE] = std::array::from_fn(|n| 0x40 + n as u8);
        let data = hex("50515253c0c1c2c3c4c5c6c7");
        let mut text = ADVICE.to_vec();
        let tag = Seal::new(&key())
            .0
            .encrypt_inout_detached(&nonce.into(), &data, text.as_mut_slice().into())
            .expect("it is sealed");
        let sealed = "bd6d179d3e83d43b9576579493c0e939572a1700252bfaccbed2902c21396cbb
            731c7f1b0b4aa6440bf3a82f4eda7e39ae64c6708c54c216cb96b72e1213b4522f8c9ba40db5d945b11b69b9
            82c1bb9e3f3fac2bc369488f76b2383565d3fff921f9664c97637da9768812f615c68b13b52e";
        assert_eq!(text, hex(sealed));
        assert_eq!(tag.to_vec(), hex("c0875924c1c7987947deafd8780acf49"));
    }

    /// What lies under it: the example of RFC 8439, section 2.8.2.
    #[test]
    fn the_standard_s_example() {
        let nonce: [u8; 12] = hex("070000004041424344454647").try_into().expect("twelve");
        let data = hex("50515253c0c1c2c3c4c5c6c7");
        let mut text = ADVICE.to_vec();
        let tag = ChaCha20Poly1305::new(&key().into())
            .encrypt_inout_detached(&nonce.into(), &data, text.as_mut_slice().into())
            .expect("it is sealed");
        let sealed = "d31a8d34648e60db7b86afbc53ef7ec2a4aded51296e08fea9e2b5a736ee62d6
            3dbea45e8ca9671282fafb69da92728b1a71de0a9e060b2905d6a5b67ecd3b36
            92ddbd7f2d778b8c9803aee328091b58fab324e4fad675945585808b4831d7bc
            3ff4def08e4b7a9de576d26586cec64b6116";
        assert_eq!(text, hex(sealed));
        assert_eq!(tag.to_vec(), hex("1ae10b594f09e26a7e902ecbd0600691"));
    }

    proptest! {
        #[test]
        fn what_is_sealed_opens_in_its_place_alone(
            key: [u8; KEY],
            nonce: [u8; NONCE],
            place in ".{0,60}",
            other in ".{0,60}",
            clear: Vec<u8>,
        ) {
            let seal = Seal::new(&key);
            let sealed = seal.seal(nonce, &place, &clear).expect("sealed");
            prop_assert_eq!(sealed.len(), clear.len() + MORE);
            prop_assert_eq!(seal.open(&place, &sealed), Some(clear));
            if place != other {
                prop_assert_eq!(seal.open(&other, &sealed), None);
            }
        }

        #[test]
        fn one_bit_turned_and_it_does_not_open(
            key: [u8; KEY],
            nonce: [u8; NONCE],
            clear: Vec<u8>,
            at: prop::sample::Index,
        ) {
            let seal = Seal::new(&key);
            let mut sealed = seal.seal(nonce, "entries 1", &clear).expect("sealed");
            let bit = at.index(sealed.len() * 8);
            sealed[bit / 8] ^= 1 << (bit % 8);
            prop_assert_eq!(seal.open("entries 1", &sealed), None);
            sealed[bit / 8] ^= 1 << (bit % 8);
            prop_assert!(seal.open("entries 1", &sealed).is_some());
            sealed.pop();
            prop_assert_eq!(seal.open("entries 1", &sealed), None);
            let mut key = key;
            key[bit % KEY] ^= 1;
            sealed = seal.seal(nonce, "entries 1", &clear).expect("sealed");
            prop_assert_eq!(Seal::new(&key).open("entries 1", &sealed), None);
        }

        #[test]
        fn anything_else_is_refused(bytes: Vec<u8>) {
            prop_assert_eq!(Seal::new(&[7; KEY]).open("", &bytes), None);
        }
    }
}
