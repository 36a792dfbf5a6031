//! The font: which glyph stands for a character and how wide it is. Reads the
//! few tables of a TrueType font that this takes (ISO/IEC 14496-22).

use super::{Fonts, PdfError};

/// One of the two weights.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Weight {
    /// Running text.
    Regular,
    /// Emphasis, headings, numbers.
    Bold,
}

/// The glyph shown for a character the font lacks: the font's own box.
pub(super) const ABSENT: u16 = 0;

/// The font, its numbers read. Bold is drawn from the same outlines.
pub(super) struct Faces<'a> {
    /// A character map of format 4: its segments and what they point at.
    cmap: &'a [u8],
    hmtx: &'a [u8],
    /// Glyphs with a width of their own; those beyond share the last.
    widths: u16,
    /// How many glyphs it has.
    pub(super) glyphs: u16,
    units: u16,
    /// Left, foot, right and top of all glyphs; then ascender, descender and
    /// height of capitals: in thousandths of the type size.
    pub(super) extent: [f32; 7],
}

fn u16_at(data: &[u8], at: usize) -> Option<u16> {
    let pair = data.get(at..at.checked_add(2)?)?;
    Some(u16::from_be_bytes([pair[0], pair[1]]))
}

fn offset(data: &[u8], at: usize) -> Option<usize> {
    let (high, low) = (u16_at(data, at)?, u16_at(data, at + 2)?);
    Some(usize::from(high) << 16 | usize::from(low))
}

/// A table of the font by its tag.
fn table<'a>(font: &'a [u8], tag: &[u8; 4]) -> Option<&'a [u8]> {
    let count = usize::from(u16_at(font, 4)?);
    let records = font.get(12..12 + 16 * count)?;
    let record = records.chunks_exact(16).find(|r| r.starts_with(tag))?;
    let (from, length) = (offset(record, 8)?, offset(record, 12)?);
    font.get(from..from.checked_add(length)?)
}

/// The Unicode map of the basic plane.
fn unicode_map(cmap: &[u8]) -> Option<&[u8]> {
    let count = usize::from(u16_at(cmap, 2)?);
    (0..count).find_map(|i| {
        let record = cmap.get(4 + 8 * i..12 + 8 * i)?;
        let platform = (u16_at(record, 0)?, u16_at(record, 2)?);
        let map = cmap.get(offset(record, 4)?..)?;
        let fits = matches!(platform, (0, _) | (3, 1)) && u16_at(map, 0)? == 4;
        fits.then_some(map)
    })
}

impl<'a> Faces<'a> {
    /// Reads the font and checks that it holds TrueType outlines.
    pub(super) fn parse(fonts: Fonts<'a>) -> Result<Self, PdfError> {
        let font = fonts.regular;
        if !font.starts_with(&[0, 1, 0, 0]) {
            return Err(PdfError::Font);
        }
        if table(font, b"glyf").is_none() {
            return Err(PdfError::NotTrueType);
        }
        Self::read(font).ok_or(PdfError::Font)
    }

    fn read(font: &'a [u8]) -> Option<Self> {
        let (head, hhea) = (table(font, b"head")?, table(font, b"hhea")?);
        let units = u16_at(head, 18)?.max(1);
        let signed = |data, at| {
            let raw = u16_at(data, at)? as i16;
            Some(f32::from(raw) * 1000.0 / f32::from(units))
        };
        let ascender = signed(hhea, 4)?;
        // The height of capitals came with version 2 of its table.
        let capital = table(font, b"OS/2").filter(|os| u16_at(os, 0) >= Some(2));
        let capital = capital.and_then(|os| signed(os, 88)).unwrap_or(ascender);
        Some(Faces {
            cmap: unicode_map(table(font, b"cmap")?)?,
            hmtx: table(font, b"hmtx")?,
            widths: u16_at(hhea, 34)?,
            glyphs: u16_at(table(font, b"maxp")?, 4)?,
            units,
            extent: [
                signed(head, 36)?,
                signed(head, 38)?,
                signed(head, 40)?,
                signed(head, 42)?,
                ascender,
                signed(hhea, 6)?,
                capital,
            ],
        })
    }

    /// The glyph of segment `i` for a code within it.
    fn mapped(&self, i: usize, code: u16) -> Option<u16> {
        let row = usize::from(u16_at(self.cmap, 6)?);
        let at = |part: usize| 16 + part * row + 2 * i;
        let (start, delta) = (u16_at(self.cmap, at(1))?, u16_at(self.cmap, at(2))?);
        let range = usize::from(u16_at(self.cmap, at(3))?);
        let glyph = match range {
            0 => code.wrapping_add(delta),
            _ => match u16_at(self.cmap, at(3) + range + 2 * usize::from(code - start))? {
                0 => 0,
                glyph => glyph.wrapping_add(delta),
            },
        };
        (glyph != 0 && glyph < self.glyphs).then_some(glyph)
    }

    /// First and last code of segment `i`; `None` beyond the last segment.
    fn segment(&self, i: usize) -> Option<(u16, u16)> {
        let row = usize::from(u16_at(self.cmap, 6)?);
        if 2 * i >= row {
            return None;
        }
        let (last, first) = (
            u16_at(self.cmap, 14 + 2 * i)?,
            u16_at(self.cmap, 16 + row + 2 * i)?,
        );
        Some((first, last))
    }

    fn lookup(&self, ch: char) -> Option<u16> {
        let code = u16::try_from(u32::from(ch)).ok()?;
        let mut i = 0;
        loop {
            let (first, last) = self.segment(i)?;
            if code <= last {
                return (code >= first).then(|| self.mapped(i, code)).flatten();
            }
            i += 1;
        }
    }

    /// The character each glyph stands for: the lowest, where several share
    /// one; none for a glyph without a character.
    pub(super) fn characters(&self) -> Vec<Option<char>> {
        let mut map = vec![None; usize::from(self.glyphs)];
        let mut i = 0;
        while let Some((first, last)) = self.segment(i) {
            for code in first..=last {
                if let (Some(glyph), Some(ch)) = (self.mapped(i, code), char::from_u32(code.into()))
                {
                    let kept = &mut map[usize::from(glyph)];
                    *kept = Some(kept.map_or(ch, |kept: char| kept.min(ch)));
                }
            }
            i += 1;
        }
        if let Some(first) = map.first_mut() {
            *first = Some(char::REPLACEMENT_CHARACTER);
        }
        map
    }

    /// The glyph for a character, [`ABSENT`] if the font lacks it, nothing if
    /// the character is not drawn at all.
    pub(super) fn glyph(&self, ch: char) -> Option<u16> {
        if is_undrawn(ch) {
            return None;
        }
        let found = self
            .lookup(ch)
            .or_else(|| ch.is_whitespace().then(|| self.lookup(' ')).flatten());
        match found {
            Some(id) => Some(id),
            None if is_combining(ch) => None,
            None => Some(ABSENT),
        }
    }

    /// Width of a glyph as a share of the type size.
    pub(super) fn advance(&self, glyph: u16) -> f32 {
        let own = glyph.min(self.widths.saturating_sub(1));
        let width = u16_at(self.hmtx, 4 * usize::from(own)).unwrap_or(0);
        f32::from(width) / f32::from(self.units)
    }
}

/// Control and format characters: they steer text and have no ink. Joiners,
/// direction marks, soft hyphen, variation selectors, tags.
fn is_undrawn(ch: char) -> bool {
    ch.is_control() && ch != '\t'
        || matches!(ch,
            '\u{AD}' | '\u{61C}' | '\u{180E}' | '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}'
            | '\u{2060}'..='\u{206F}' | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}'
            | '\u{E0000}'..='\u{E0FFF}')
}

/// Marks that sit on the letter before them. Where the font lacks the mark the
/// bare letter is shown, which reads better than a letter and a box.
fn is_combining(ch: char) -> bool {
    matches!(ch, '\u{300}'..='\u{36F}' | '\u{1AB0}'..='\u{1AFF}' | '\u{1DC0}'..='\u{1DFF}'
        | '\u{20D0}'..='\u{20FF}' | '\u{FE20}'..='\u{FE2F}')
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::report::demo::fonts;

    #[test]
    fn letters_have_their_glyphs_and_widths() {
        let faces = Faces::parse(fonts()).expect("the font reads");
        let map = faces.characters();
        for ch in ['A', 'z', '7', '°', 'ñ', '½', '–', '…'] {
            let glyph = faces.glyph(ch).expect("drawn");
            assert_ne!(glyph, ABSENT, "{ch}");
            assert_eq!(map[usize::from(glyph)], Some(ch));
            assert!((0.1..1.5).contains(&faces.advance(glyph)), "{ch}");
        }
        assert_eq!(faces.glyph('水'), Some(ABSENT));
        assert_eq!(faces.glyph('🥐'), Some(ABSENT));
    }

    proptest! {
        /// A font that was cut or changed anywhere gives an answer or a refusal.
        #[test]
        fn a_damaged_font_does_no_harm(cut in 0usize..25_360, at in 0usize..4_000, to in any::<u8>()) {
            let whole = fonts().regular;
            let mut bytes = whole[..cut.min(whole.len())].to_vec();
            if let Some(byte) = bytes.get_mut(at) {
                *byte = to;
            }
            if let Ok(faces) = Faces::parse(Fonts { regular: &bytes }) {
                faces.glyph('A').map(|g| faces.advance(g));
                faces.characters();
            }
        }
    }
}
