//! The font: which glyph stands for a character and how wide it is.

use ttf_parser::{Face, GlyphId};

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

/// The font, parsed.
pub(super) struct Faces<'a> {
    regular: Face<'a>,
}

impl<'a> Faces<'a> {
    /// Parses the font and checks that it holds TrueType outlines.
    pub(super) fn parse(fonts: Fonts<'a>) -> Result<Self, PdfError> {
        let regular = Face::parse(fonts.regular, 0).map_err(PdfError::Font)?;
        match regular.tables().glyf {
            Some(_) => Ok(Faces { regular }),
            None => Err(PdfError::NotTrueType),
        }
    }

    /// The parsed font; bold is drawn from the same outlines.
    pub(super) fn face(&self) -> &Face<'a> {
        &self.regular
    }

    /// The glyph for a character, [`ABSENT`] if the font lacks it, nothing if
    /// the character is not drawn at all.
    pub(super) fn glyph(&self, ch: char) -> Option<u16> {
        if is_undrawn(ch) {
            return None;
        }
        let face = self.face();
        let found = face
            .glyph_index(ch)
            .or_else(|| ch.is_whitespace().then(|| face.glyph_index(' ')).flatten());
        match found {
            Some(id) => Some(id.0),
            None if is_combining(ch) => None,
            None => Some(ABSENT),
        }
    }

    /// Width of a glyph as a share of the type size.
    pub(super) fn advance(&self, glyph: u16) -> f32 {
        let face = self.face();
        let units = f32::from(face.units_per_em().max(1));
        f32::from(face.glyph_hor_advance(GlyphId(glyph)).unwrap_or(0)) / units
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
