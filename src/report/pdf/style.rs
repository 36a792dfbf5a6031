//! The look on paper: colours, sizes, margins. All lengths in points (1/72 in).

use crate::report::chart::Ink;
use crate::report::doc::{PageSize, Tone};

/// A device RGB colour, 0 to 1 each.
pub(super) type Colour = [f32; 3];

/// White paper.
pub(super) const PAPER: Colour = [1.0, 1.0, 1.0];
/// Near-black ink.
pub(super) const INK: Colour = [0.09, 0.10, 0.11];
/// Ink for what is read second: labels, notes, heads of columns.
pub(super) const QUIET: Colour = [0.36, 0.38, 0.39];
/// Hairlines.
pub(super) const HAIR: Colour = [0.76, 0.78, 0.78];
/// Water, #0F6B75.
pub(super) const WATER: Colour = [0.059, 0.420, 0.459];
/// Water filled in behind its surface.
pub(super) const WATER_PALE: Colour = [0.855, 0.922, 0.925];
/// Iron red: act now, and nothing else.
pub(super) const IRON: Colour = [0.647, 0.176, 0.110];
/// Amber: not proven yet, and nothing else.
pub(super) const AMBER: Colour = [0.620, 0.375, 0.0];

/// Notes, labels, footers.
pub(super) const SMALL: f32 = 8.0;
/// Table cells and captions.
pub(super) const CELL: f32 = 9.0;
/// Running text.
pub(super) const BODY: f32 = 10.5;
/// Passage headings and words of state.
pub(super) const LEAD: f32 = 12.0;
/// Part headings.
pub(super) const HEAD: f32 = 18.0;
/// Title and key figures.
pub(super) const HERO: f32 = 28.0;

/// Thickness of a hairline.
pub(super) const HAIRLINE: f32 = 0.5;
/// Tallest piece that is kept in one; anything taller may be cut at a line.
pub(super) const KEEP: f32 = 220.0;

/// Distance between baselines for a type size.
pub(super) fn leading(size: f32) -> f32 {
    if size > HEAD {
        size * 1.16
    } else if size > LEAD {
        size * 1.25
    } else {
        size * 1.45
    }
}

/// Where things stand on a sheet. The page has two columns: a narrow one for
/// the waterline and signs of state, a wide one for everything read.
#[derive(Clone, Copy, Debug)]
pub(super) struct Frame {
    /// Width of the sheet.
    pub(super) page_width: f32,
    /// Height of the sheet.
    pub(super) page_height: f32,
    /// Left edge of the narrow column.
    pub(super) hang: f32,
    /// Left edge of the wide column.
    pub(super) left: f32,
    /// Right edge of the wide column.
    pub(super) right: f32,
    /// Top of the text area, measured from the top of the sheet.
    pub(super) top: f32,
    /// Foot of the text area, measured from the top of the sheet.
    pub(super) foot: f32,
}

impl Frame {
    /// The frame for a sheet.
    pub(super) fn new(page: PageSize) -> Self {
        let (page_width, page_height) = match page {
            PageSize::Letter => (612.0, 792.0),
            PageSize::A4 => (595.276, 841.89),
        };
        Frame {
            page_width,
            page_height,
            hang: 54.0,
            left: 112.0,
            right: page_width - 54.0,
            top: 54.0,
            foot: page_height - 58.0,
        }
    }

    /// Width of the wide column.
    pub(super) fn width(&self) -> f32 {
        self.right - self.left
    }
}

/// The colour of a state.
pub(super) fn tone_colour(tone: Tone) -> Colour {
    match tone {
        Tone::ActNow => IRON,
        Tone::NotProven => AMBER,
        Tone::Proven => WATER,
        Tone::Note => QUIET,
    }
}

/// The colour of a line in a figure.
pub(super) fn ink_colour(ink: Ink) -> Colour {
    match ink {
        Ink::Water => WATER,
        Ink::Plain => INK,
        Ink::Alarm => IRON,
        Ink::Unproven => AMBER,
    }
}
