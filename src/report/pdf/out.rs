//! The letters of a PDF file: numbers, strings, objects, the table of where
//! they stand (ISO 32000-1, 7.2 to 7.5).

/// A number with at most three decimals.
pub(super) fn number(out: &mut Vec<u8>, v: f32) {
    let n = (v * 1000.0).round() as i64;
    if n < 0 {
        out.push(b'-');
    }
    let n = n.unsigned_abs();
    out.extend((n / 1000).to_string().bytes());
    let mut rest = n % 1000;
    if rest > 0 {
        out.push(b'.');
        let mut unit = 100;
        while rest > 0 {
            out.push(b'0' + (rest / unit) as u8);
            rest %= unit;
            unit /= 10;
        }
    }
}

/// Numbers, each followed by a space.
pub(super) fn numbers(out: &mut Vec<u8>, all: &[f32]) {
    for v in all {
        number(out, *v);
        out.push(b' ');
    }
}

/// Numbers in an array.
pub(super) fn array(all: &[f32]) -> String {
    let mut out = vec![b'['];
    numbers(&mut out, all);
    out.push(b']');
    String::from_utf8(out).unwrap_or_default()
}

/// A string of bytes.
pub(super) fn bytes(out: &mut Vec<u8>, all: impl Iterator<Item = u8>) {
    out.push(b'(');
    for byte in all {
        match byte {
            b'(' | b')' | b'\\' => out.extend([b'\\', byte]),
            b'\r' => out.extend(b"\\r"),
            _ => out.push(byte),
        }
    }
    out.push(b')');
}

/// A text for a person (7.9.2.2): UTF-16 in hexadecimal.
pub(super) fn text(said: &str) -> String {
    let mut out = "<FEFF".to_owned();
    for unit in said.encode_utf16() {
        out += &format!("{unit:04X}");
    }
    out + ">"
}

/// A file that grows object by object.
pub(super) struct Out {
    bytes: Vec<u8>,
    /// Where each object begins, from number 1.
    places: Vec<usize>,
}

impl Out {
    /// The header. Four bytes beyond ASCII say that the file is binary.
    pub(super) fn new() -> Self {
        Out {
            bytes: b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n".to_vec(),
            places: Vec::new(),
        }
    }

    /// A number for an object that comes later.
    pub(super) fn name(&mut self) -> usize {
        self.places.push(0);
        self.places.len()
    }

    /// The object of a number.
    pub(super) fn object(&mut self, id: usize, body: &str) {
        self.begin(id);
        self.bytes.extend(body.bytes());
        self.bytes.extend(b"\nendobj\n");
    }

    /// A stream and the entries of its dictionary beside its length.
    pub(super) fn stream(&mut self, id: usize, entries: &str, data: &[u8]) {
        self.begin(id);
        let length = data.len();
        let head = format!("<</Length {length}{entries}>>\nstream\n");
        self.bytes.extend(head.bytes());
        self.bytes.extend(data);
        self.bytes.extend(b"\nendstream\nendobj\n");
    }

    fn begin(&mut self, id: usize) {
        self.places[id - 1] = self.bytes.len();
        self.bytes.extend(format!("{id} 0 obj\n").bytes());
    }

    /// The table of places, and the end.
    pub(super) fn finish(mut self, root: usize, info: usize) -> Vec<u8> {
        let (at, size) = (self.bytes.len(), self.places.len() + 1);
        let mut table = format!("xref\n0 {size}\n0000000000 65535 f\r\n");
        for place in &self.places {
            table += &format!("{place:010} 00000 n\r\n");
        }
        table += &format!(
            "trailer\n<</Size {size}/Root {root} 0 R/Info {info} 0 R>>\nstartxref\n{at}\n%%EOF\n"
        );
        self.bytes.extend(table.bytes());
        self.bytes
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_right() {
        let written = |v| {
            let mut out = Vec::new();
            number(&mut out, v);
            String::from_utf8(out).expect("ASCII")
        };
        for (v, want) in [
            (0.0, "0"),
            (-0.0001, "0"),
            (12.5, "12.5"),
            (-3.04, "-3.04"),
            (0.059, "0.059"),
            (841.89, "841.89"),
            (f32::NAN, "0"),
        ] {
            assert_eq!(written(v), want);
        }
        assert_eq!(text("é🥐"), "<FEFF00E9D83EDD50>");
    }
}
