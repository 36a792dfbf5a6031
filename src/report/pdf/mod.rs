//! The document as a PDF file (ISO 32000-1:2008, version 1.7).
//!
//! Text is real text: fonts embedded, each glyph mapped back to its
//! character, parts of the document tagged in reading order. Characters the
//! fonts lack are shown as the font's box. There is no shaping: scripts that
//! join letters or run from right to left come out as boxes, in the order
//! typed.

mod basin;
mod blocks;
mod face;
mod figure;
mod file;
mod head;
mod lines;
mod out;
mod pages;
mod paint;
mod pictures;
mod strip;
mod style;
mod table;
mod tags;

use std::fmt;

use super::doc::Doc;
use blocks::Typesetter;
use face::Faces;

/// The bytes of the TrueType font. Bold is drawn from it with a heavier
/// outline: a second font would be a twentieth of what a phone downloads.
#[derive(Clone, Copy, Debug)]
pub struct Fonts<'a> {
    /// The font.
    pub regular: &'a [u8],
}

/// When the document was made: local time and its offset from UTC.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DocDate {
    /// Year, 0 to 9999.
    pub year: u16,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day, 1 to 31.
    pub day: u8,
    /// Hour, 0 to 23.
    pub hour: u8,
    /// Minute, 0 to 59.
    pub minute: u8,
    /// Second, 0 to 59.
    pub second: u8,
    /// Offset from UTC in minutes, east positive, -1439 to 1439. -59 to -1 is
    /// refused: the file format cannot write it and no place keeps it.
    pub offset_minutes: i16,
}

impl DocDate {
    fn is_valid(&self) -> bool {
        self.year <= 9999
            && (1..=12).contains(&self.month)
            && (1..=31).contains(&self.day)
            && self.hour < 24
            && self.minute < 60
            && self.second < 60
            && self.offset_minutes.unsigned_abs() < 24 * 60
            && !(-59..0).contains(&self.offset_minutes)
    }
}

/// Why no PDF was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PdfError {
    /// The font could not be read.
    Font,
    /// The font holds no TrueType outlines.
    NotTrueType,
    /// A part of the date is out of its range.
    Date(DocDate),
}

impl fmt::Display for PdfError {
    /// For logs; what the user reads is chosen from the variant.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self:?}")
    }
}

impl std::error::Error for PdfError {}

/// Writes the document as a PDF file. The same arguments give the same bytes.
///
/// # Errors
/// - [`PdfError::Font`]: `regular` is not a TrueType font that can be read.
/// - [`PdfError::NotTrueType`]: it has no `glyf` table.
/// - [`PdfError::Date`]: a part of `created` is out of the range stated there.
pub fn to_pdf(doc: &Doc, fonts: Fonts<'_>, created: DocDate) -> Result<Vec<u8>, PdfError> {
    if !created.is_valid() {
        return Err(PdfError::Date(created));
    }
    let faces = Faces::parse(fonts)?;
    let frame = style::Frame::new(doc.page);
    let mut setter = Typesetter {
        faces: &faces,
        frame,
        tags: tags::Tags::new(),
        strips: Vec::new(),
        images: Vec::new(),
        depth: 0,
    };
    setter.document(doc);
    let Typesetter {
        mut tags,
        strips,
        images,
        ..
    } = setter;
    let mut laid = pages::paginate(strips, &frame);
    file::add_footers(&mut laid, &doc.footer, &faces, &frame);
    let streams: Vec<Vec<u8>> = laid
        .iter()
        .enumerate()
        .map(|(number, page)| paint::content(page, number, &frame, &mut tags))
        .collect();
    Ok(file::write(
        doc, fonts, &faces, &frame, &tags, &streams, &images, created,
    ))
}

#[cfg(test)]
mod tests;
