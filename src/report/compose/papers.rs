//! Time, photos and the signature.

use super::Composer;
use crate::record::paperwork::{Item, Shows};
use crate::report::doc::{Block, Picture, Signature, Text};
use crate::words::ReportPhrase as P;

impl Composer<'_> {
    pub(super) fn time(&self) -> Vec<Block> {
        let mut items = Vec::new();
        for item in [Item::OnSite, Item::Travel] {
            for line in self.visit.paper.of(item) {
                let mut text = Text::default().bold(format!("{} ", self.words.report_item(item)));
                if let Some(amount) = line.amount {
                    text = text.plain(format!("{} ", self.amount(amount)));
                }
                items.push(text.plain(&line.text));
            }
        }
        if items.is_empty() {
            return vec![];
        }
        let numbered = false;
        vec![
            self.heading(P::TimeHeading),
            Block::List { numbered, items },
        ]
    }

    pub(super) fn photos(&self) -> Vec<Block> {
        let photos = &self.visit.paper.photos;
        if photos.is_empty() {
            return vec![];
        }
        let picture = |photo: &crate::record::paperwork::Photo| {
            let shows = match photo.shows {
                Shows::Plant => String::new(),
                Shows::Reading { what, machine } => self.reading_of(what, machine),
                Shows::Check { check } => self.words.trace_check(check).to_owned(),
            };
            let mut caption = Text::default().plain(format!("{} ", photo.at.clock()));
            if !shows.is_empty() {
                caption = caption.bold(format!("{shows}. "));
            }
            Picture {
                file: photo.file,
                jpeg: Vec::new(),
                missing: self.say(P::PhotoMissing),
                caption: caption.plain(&photo.caption),
                drawn: photo.drawn.iter().map(|(_, drawn)| *drawn).collect(),
            }
        };
        vec![
            self.heading(P::PhotosHeading),
            Block::Photos(photos.iter().map(picture).collect()),
        ]
    }

    pub(super) fn signature(&self) -> Vec<Block> {
        let Some(signed) = &self.visit.paper.signature else {
            return vec![];
        };
        let signature = Signature {
            summary: self.words.signature_of(&signed.name),
            caption: format!(
                "{} {}, {} {}",
                self.say(P::SignedBy),
                signed.name,
                signed.at.date(),
                signed.at.clock()
            ),
            strokes: signed.strokes.clone(),
        };
        vec![
            self.heading(P::SignatureHeading),
            Block::Signature(signature),
        ]
    }
}
