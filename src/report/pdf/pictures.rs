//! Photos with what is drawn on them, and the signature.

use super::blocks::{NOTE, Typesetter};
use super::strip::{Shape, Strip, joined};
use super::style::{CELL, INK, KEEP, PAPER, WATER, leading};
use super::tags::{NodeId, ROOT};
use crate::record::paperwork::{Drawn, Shape as Drawing, Spot};
use crate::report::doc::{Picture, Signature};

/// Space between two photos abreast.
const GAP: f32 = 14.0;
/// Tallest photo.
const TALLEST: f32 = 190.0;
/// A signature's field.
const FIELD: (f32, f32) = (210.0, 62.0);

/// A JPEG that a PDF can show as it is.
#[derive(Clone, Copy)]
pub(super) struct Jpeg<'a> {
    pub(super) bytes: &'a [u8],
    pub(super) width: u16,
    pub(super) height: u16,
    /// Grey, or red, green and blue.
    pub(super) grey: bool,
}

impl<'a> Jpeg<'a> {
    /// Reads the frame header (ITU-T T.81, B.2.2): baseline, extended or
    /// progressive, 8 bits, 1 or 3 components, as every phone writes them.
    /// `None` for anything else.
    pub(super) fn read(bytes: &'a [u8]) -> Option<Self> {
        let mut rest = bytes.strip_prefix(&[0xff, 0xd8])?;
        loop {
            let (&[mark, kind, high, low], after) = rest.split_first_chunk()?;
            let length = usize::from(u16::from_be_bytes([high, low]));
            let body = after.get(..length.checked_sub(2)?)?;
            if mark != 0xff {
                return None;
            }
            if (0xc0..=0xc2).contains(&kind) {
                let (&[8, h1, h0, w1, w0, count], _) = body.split_first_chunk()? else {
                    return None;
                };
                let (width, height) = (u16::from_be_bytes([w1, w0]), u16::from_be_bytes([h1, h0]));
                return (width > 0 && height > 0 && (count == 1 || count == 3)).then_some(Jpeg {
                    bytes,
                    width,
                    height,
                    grey: count == 1,
                });
            }
            rest = &after[length - 2..];
        }
    }
}

/// Where a photo stands.
#[derive(Clone, Copy)]
struct Place {
    x: f32,
    width: f32,
    height: f32,
}

impl Place {
    fn at(&self, (x, y): Spot) -> (f32, f32) {
        let part = |v: u16| f32::from(v.min(10_000)) / 10_000.0;
        (self.x + self.width * part(x), self.height * part(y))
    }
}

/// The lines of a shape on a photo.
fn outline(drawn: &Drawn, place: Place) -> Vec<Vec<(f32, f32)>> {
    let (from, to) = (place.at(drawn.from), place.at(drawn.to));
    match drawn.shape {
        Drawing::Arrow => {
            let (dx, dy) = (to.0 - from.0, to.1 - from.1);
            let length = (dx * dx + dy * dy).sqrt().max(0.1);
            let (dx, dy) = (9.0 * dx / length, 9.0 * dy / length);
            // A head of two strokes, 27 degrees off the shaft.
            let side = |s: f32| (to.0 - dx + s * dy * 0.5, to.1 - dy - s * dx * 0.5);
            vec![vec![from, to], vec![side(1.0), to, side(-1.0)]]
        }
        Drawing::Circle => {
            let (cx, cy) = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
            let (rx, ry) = ((from.0 - to.0) / 2.0, (from.1 - to.1) / 2.0);
            let turn = super::blocks::turned;
            let round = std::iter::successors(Some((1.0, 0.0)), |p| Some(turn(*p)));
            let points = round.take(33).map(|(c, s)| (cx + rx * c, cy + ry * s));
            vec![points.collect()]
        }
    }
}

impl<'a> Typesetter<'a> {
    fn stroke(strip: &mut Strip, node: NodeId, points: Vec<(f32, f32)>, width: f32, paper: bool) {
        let colour = match (paper, width > 1.5) {
            (true, _) => PAPER,
            (false, true) => WATER,
            (false, false) => INK,
        };
        strip.push(
            Some(node),
            Shape::Stroke {
                points,
                width,
                colour,
                dash: 0.0,
            },
        );
    }

    /// Photos two abreast, each with its caption.
    pub(super) fn photos(&mut self, pictures: &'a [Picture]) {
        let width = (self.frame.width() - GAP) / 2.0;
        for pair in pictures.chunks(2) {
            let mut columns = Vec::new();
            for (i, picture) in pair.iter().enumerate() {
                let x = self.frame.left + (width + GAP) * i as f32;
                columns.push(self.photo(picture, x, width));
            }
            let strips = Self::abreast(columns);
            self.flow(joined(strips, KEEP + 60.0), 10.0);
        }
    }

    fn photo(&mut self, picture: &'a Picture, x: f32, room: f32) -> Vec<Strip> {
        let node = self.tags.figure(ROOT, &picture.caption.to_plain());
        let caption = self.tags.add(ROOT, "P");
        let mut strips = Vec::new();
        match Jpeg::read(&picture.jpeg) {
            Some(jpeg) => {
                let shape = f32::from(jpeg.height) / f32::from(jpeg.width);
                let width = room.min(TALLEST / shape);
                let place = Place {
                    x,
                    width,
                    height: width * shape,
                };
                let mut strip = Strip::blank(place.height + 3.0);
                strip.push(
                    Some(node),
                    Shape::Image {
                        index: self.images.len(),
                        x,
                        y: 0.0,
                        width,
                        height: place.height,
                    },
                );
                self.images.push(jpeg);
                for drawn in &picture.drawn {
                    let lines = outline(drawn, place);
                    for (width, paper) in [(4.0, true), (2.0, false)] {
                        for line in &lines {
                            Self::stroke(&mut strip, node, line.clone(), width, paper);
                        }
                    }
                }
                strips.push(strip);
            }
            None => {
                strips.extend(self.text(node, &picture.missing.as_str().into(), NOTE, x, room));
            }
        }
        strips.extend(self.text(caption, &picture.caption, NOTE, x, room));
        strips
    }

    /// The strokes of the pen over a rule, and who signed.
    pub(super) fn signature(&mut self, signature: &Signature) {
        let node = self.tags.figure(ROOT, &signature.summary);
        let caption = self.tags.add(ROOT, "P");
        let (x, (width, height)) = (self.frame.left, FIELD);
        let place = Place { x, width, height };
        let mut strip = Strip::blank(height + 4.0);
        for stroke in &signature.strokes {
            let mut points: Vec<_> = stroke.iter().map(|spot| place.at(*spot)).collect();
            // A dot of the pen has no length: give it one.
            if let [(x, y)] = points[..] {
                points.push((x + 1.0, y));
            }
            Self::stroke(&mut strip, node, points, 1.1, false);
        }
        strip.hairline(x, x + width, height + 2.0);
        let mut strips = vec![strip];
        let said = signature.caption.as_str().into();
        strips.extend(self.text(caption, &said, NOTE, x, self.frame.width()));
        self.flow(joined(strips, KEEP), leading(CELL));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_jpeg_with_a_frame_is_one() {
        let head = [0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2];
        let frame = |kind, count| [0xff, kind, 0, 9, 8, 0, 48, 0, 64, count, 0];
        let whole = |kind, count| [&head[..], &frame(kind, count)].concat();
        let read = Jpeg::read(&whole(0xc0, 3)).map(|j| (j.width, j.height, j.grey));
        assert_eq!(read, Some((64, 48, false)));
        let bytes = whole(0xc2, 1);
        let read = Jpeg::read(&bytes).map(|j| (j.width, j.height, j.grey));
        assert_eq!(read, Some((64, 48, true)));
        for end in 0..bytes.len() {
            assert!(Jpeg::read(&bytes[..end]).is_none(), "{end}");
        }
        assert!(Jpeg::read(b"\x89PNG\r\n\x1a\n").is_none());
        assert!(Jpeg::read(&[0xff, 0xd8, 0xff, 0xe0, 0, 1, 0, 0]).is_none());
    }
}
