//! Bytes as text: SHA-256 in hexadecimal (FIPS 180-4), and base64 (RFC 4648).

/// The first `N` primes: FIPS 180-4 takes its constants from them.
const fn primes<const N: usize>() -> [u64; N] {
    let mut found = [0; N];
    let (mut n, mut count) = (2, 0);
    while count < N {
        let mut k = 2;
        while k * k <= n && n % k != 0 {
            k += 1;
        }
        if k * k > n {
            found[count] = n;
            count += 1;
        }
        n += 1;
    }
    found
}

/// The first 32 bits of the fractional part of the `root`th root of each of
/// the first `N` primes: the largest x with x^root <= p 2^(32 root).
const fn fractions<const N: usize>(root: u32) -> [u32; N] {
    let primes = primes::<N>();
    let mut words = [0; N];
    let mut i = 0;
    while i < N {
        let (mut x, mut bit) = (0u128, 1u128 << 38);
        let most = (primes[i] as u128) << (32 * root);
        while bit > 0 {
            let y = x | bit;
            let power = if root == 2 { y * y } else { y * y * y };
            if power <= most {
                x = y;
            }
            bit >>= 1;
        }
        words[i] = x as u32;
        i += 1;
    }
    words
}

const START: [u32; 8] = fractions(2);
const ROUND: [u32; 64] = fractions(3);

fn block(state: &mut [u32; 8], bytes: &[u8]) {
    let mut w = [0u32; 64];
    for (word, four) in w.iter_mut().zip(bytes.chunks_exact(4)) {
        *word = four.iter().fold(0, |n, b| n << 8 | u32::from(*b));
    }
    for i in 16..64 {
        let (a, b) = (w[i - 15], w[i - 2]);
        let low = a.rotate_right(7) ^ a.rotate_right(18) ^ (a >> 3);
        let high = b.rotate_right(17) ^ b.rotate_right(19) ^ (b >> 10);
        w[i] = w[i - 16]
            .wrapping_add(low)
            .wrapping_add(w[i - 7])
            .wrapping_add(high);
    }
    let mut s = *state;
    for i in 0..64 {
        let [a, b, c, _, e, f, g, h] = s;
        let turned = e.rotate_right(6) ^ e.rotate_right(11) ^ e.rotate_right(25);
        let first = h
            .wrapping_add(turned)
            .wrapping_add(e & f ^ !e & g)
            .wrapping_add(ROUND[i])
            .wrapping_add(w[i]);
        let turned = a.rotate_right(2) ^ a.rotate_right(13) ^ a.rotate_right(22);
        let second = turned.wrapping_add(a & b ^ a & c ^ b & c);
        s.rotate_right(1);
        s[4] = s[4].wrapping_add(first);
        s[0] = first.wrapping_add(second);
    }
    for (kept, new) in state.iter_mut().zip(s) {
        *kept = kept.wrapping_add(new);
    }
}

/// The SHA-256 of some bytes, as 64 hexadecimal digits.
pub fn sha256(bytes: &[u8]) -> String {
    let mut state = START;
    let whole = bytes.chunks_exact(64);
    let mut tail = whole.remainder().to_vec();
    whole.for_each(|part| block(&mut state, part));
    tail.push(0x80);
    while tail.len() % 64 != 56 {
        tail.push(0);
    }
    tail.extend((bytes.len() as u64 * 8).to_be_bytes());
    tail.chunks_exact(64)
        .for_each(|part| block(&mut state, part));
    let digits = state.iter().flat_map(|word| word.to_be_bytes());
    let digit = |n: u8| char::from_digit(n.into(), 16).unwrap_or('0');
    digits
        .flat_map(|b| [digit(b >> 4), digit(b & 15)])
        .collect()
}

const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/// Bytes in base64, padded, on one line.
pub fn base64(bytes: &[u8]) -> String {
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for part in bytes.chunks(3) {
        let mut n = 0u32;
        for i in 0..3 {
            n = n << 8 | u32::from(part.get(i).copied().unwrap_or(0));
        }
        for i in 0..4 {
            out.push(match i <= part.len() {
                true => char::from(LETTERS[(n >> (18 - 6 * i)) as usize & 63]),
                false => '=',
            });
        }
    }
    out
}

/// The bytes that [`base64`] wrote; `None` for anything it would not write.
pub fn from_base64(text: &str) -> Option<Vec<u8>> {
    let text = text.as_bytes();
    if !text.len().is_multiple_of(4) {
        return None;
    }
    let mut out = Vec::with_capacity(text.len() / 4 * 3);
    for (i, four) in text.chunks_exact(4).enumerate() {
        let last = (i + 1) * 4 == text.len();
        let pads = match four {
            [_, _, b'=', b'='] if last => 2,
            [_, _, _, b'='] if last => 1,
            _ => 0,
        };
        let mut n = 0u32;
        for letter in &four[..4 - pads] {
            let value = match letter {
                b'A'..=b'Z' => letter - b'A',
                b'a'..=b'z' => letter - b'a' + 26,
                b'0'..=b'9' => letter - b'0' + 52,
                b'+' => 62,
                b'/' => 63,
                _ => return None,
            };
            n = n << 6 | u32::from(value);
        }
        n <<= 6 * pads;
        // Bits beyond the last byte must be none.
        if n & ((1 << (8 * pads)) - 1) != 0 {
            return None;
        }
        out.extend(&n.to_be_bytes()[1..4 - pads]);
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// The examples of FIPS 180-2, appendix B, and of NIST's "SHA-256" sheet.
    #[test]
    fn published_digests() {
        for (text, digest) in [
            (
                "",
                "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
            ),
            (
                "abc",
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            ),
            (
                "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
            ),
        ] {
            assert_eq!(sha256(text.as_bytes()), digest);
        }
        assert_eq!(
            sha256(&[b'a'; 1_000_000]),
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"
        );
    }

    /// RFC 4648, section 10.
    #[test]
    fn published_base64() {
        let words = ["", "f", "fo", "foo", "foob", "fooba", "foobar"];
        let coded = [
            "", "Zg==", "Zm8=", "Zm9v", "Zm9vYg==", "Zm9vYmE=", "Zm9vYmFy",
        ];
        for (word, code) in words.into_iter().zip(coded) {
            assert_eq!(base64(word.as_bytes()), code);
            assert_eq!(from_base64(code).as_deref(), Some(word.as_bytes()));
        }
        for bad in ["Zg=", "Zh==", "Zm9=", "=m9v", "Zm 9v", "Zg==Zg=="] {
            assert_eq!(from_base64(bad), None, "{bad}");
        }
    }

    proptest! {
        #[test]
        fn base64_comes_back(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
            prop_assert_eq!(from_base64(&base64(&bytes)), Some(bytes));
        }
    }
}
