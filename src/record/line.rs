//! A line of the summary: one site or one visit in a few words. Worked out from
//! the entries about it and kept beside them, so that a list of thousands opens
//! at once; it can be thrown away and made again.

use super::body::{Body, Way};
use super::entry::{About, Entry};
use super::id::{FileId, SiteId, VisitId};
use super::log::Log;
use super::moment::Moment;
use super::visit::Visit;
use crate::refill::MarkKind;

/// The form of a line as written. A store that holds another form, or none,
/// makes its summary again: change this whenever a line says something new.
pub const LINE_FORM: &str = "1";

/// One site in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteLine {
    /// The site.
    pub id: SiteId,
    /// What the customer calls it.
    pub name: String,
    /// Where it is.
    pub place: String,
    /// How many machines stand there.
    pub machines: usize,
    /// Whether it is the invented one.
    pub demo: bool,
}

/// One visit in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct VisitLine {
    /// The visit.
    pub id: VisitId,
    /// Its site.
    pub site: SiteId,
    /// When it was opened.
    pub opened: Moment,
    /// The complaint.
    pub complaint: String,
    /// Whether it was closed.
    pub closed: bool,
    /// Whether it is open and a refill test on it runs.
    pub testing: bool,
    /// Reports of which nobody has said that they arrived, oldest first.
    pub outbox: Vec<Outgoing>,
}

/// A report on its way out.
#[derive(Clone, Debug, PartialEq)]
pub struct Outgoing {
    /// The visit it reports.
    pub visit: VisitId,
    /// The kept file.
    pub file: FileId,
    /// Which issue of the visit's report it is, from 1.
    pub issue: usize,
    /// Its file name.
    pub name: String,
    /// SHA-256 of its bytes; empty in the first entries.
    pub sha256: String,
    /// When it was made.
    pub made: Moment,
    /// By what means it was last handed over.
    pub handed: Option<(Way, Moment)>,
}

/// A line of the summary.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    /// Of a site.
    Site(SiteLine),
    /// Of a visit.
    Visit(VisitLine),
}

/// Wall-clock time only: a line is no place to see a moved clock.
fn plain(at: Moment) -> Moment {
    Moment {
        run: 0,
        run_ms: 0.0,
        ..at
    }
}

impl Line {
    /// The line of one thing, from all entries about it; `None` when they
    /// describe no site and open no visit.
    pub fn of(about: About, entries: impl IntoIterator<Item = Entry>) -> Option<Self> {
        let mut log = Log::default();
        entries.into_iter().for_each(|entry| log.add(entry));
        match about {
            About::Site(id) => log.site(id).map(|site| {
                Line::Site(SiteLine {
                    id,
                    name: clean(&site.name),
                    place: clean(&site.place),
                    machines: site.machines.len(),
                    demo: site.demo,
                })
            }),
            About::Visit(id) => log.visit(id).map(|visit| Line::Visit(of_visit(&visit))),
        }
    }

    /// What it is about.
    pub fn about(&self) -> About {
        match self {
            Line::Site(site) => About::Site(site.id),
            Line::Visit(visit) => About::Visit(visit.id),
        }
    }

    /// Whether a line can change by such an entry. Making a whole summary
    /// again reads past all others.
    pub fn bears_on(body: &Body) -> bool {
        match body {
            Body::SiteDescribed { .. }
            | Body::VisitOpened { .. }
            | Body::VisitClosed
            | Body::TestBegun { .. }
            | Body::Marked { .. }
            | Body::TestResumed { .. }
            | Body::ReportMade { .. }
            | Body::ReportHandedOver { .. }
            | Body::ReportConfirmed { .. }
            | Body::Withdrawn { .. } => true,
            Body::ReadingTaken { .. }
            | Body::MarkMoved { .. }
            | Body::LoopRead { .. }
            | Body::MachineSeen { .. }
            | Body::CheckAnswered { .. }
            | Body::Corrected { .. }
            | Body::CauseNamed { .. }
            | Body::LeavingAnswered { .. }
            | Body::NoteWritten { .. }
            | Body::LineWritten { .. }
            | Body::PhotoTaken { .. }
            | Body::PhotoDrawn { .. }
            | Body::Signed { .. } => false,
        }
    }

    /// Whether such an entry, added to those that a line was made of, can change
    /// it. Of the marks only the last of a test does.
    pub fn moved_by(body: &Body) -> bool {
        let mid_test = match body {
            Body::Marked { mark, .. } => *mark != MarkKind::Stopped,
            Body::TestResumed { .. } => true,
            _ => false,
        };
        !mid_test && Self::bears_on(body)
    }

    /// The line as text.
    pub fn write(&self) -> String {
        let mut parts = Vec::new();
        match self {
            Line::Site(site) => {
                parts.push(site.id.to_string());
                parts.push(site.machines.to_string());
                parts.push(flag(site.demo));
                parts.push(site.name.clone());
                parts.push(site.place.clone());
            }
            Line::Visit(visit) => {
                parts.push(visit.id.to_string());
                parts.push(visit.site.to_string());
                push_moment(&mut parts, &visit.opened);
                parts.push(flag(visit.closed));
                parts.push(flag(visit.testing));
                parts.push(visit.complaint.clone());
                for out in &visit.outbox {
                    parts.push(out.file.to_string());
                    parts.push(out.issue.to_string());
                    parts.push(out.name.clone());
                    parts.push(out.sha256.clone());
                    push_moment(&mut parts, &out.made);
                    let (way, at) = match out.handed {
                        None => ("", out.made),
                        Some((Way::Shared, at)) => ("s", at),
                        Some((Way::Mailed, at)) => ("m", at),
                        Some((Way::MailFile, at)) => ("e", at),
                        Some((Way::Saved, at)) => ("f", at),
                    };
                    parts.push(way.to_owned());
                    push_moment(&mut parts, &at);
                }
            }
        }
        let kind = match self {
            Line::Site(_) => "s",
            Line::Visit(_) => "v",
        };
        format!("{kind}{BETWEEN}{}", parts.join(BETWEEN))
    }

    /// Reads a written line; `None` when it is none of this form.
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.split(BETWEEN);
        match parts.next()? {
            "s" => Some(Line::Site(SiteLine {
                id: SiteId::parse(parts.next()?)?,
                machines: parts.next()?.parse().ok()?,
                demo: parts.next()? == "1",
                name: parts.next()?.to_owned(),
                place: parts.next()?.to_owned(),
            })),
            "v" => {
                let id = VisitId::parse(parts.next()?)?;
                let mut line = VisitLine {
                    id,
                    site: SiteId::parse(parts.next()?)?,
                    opened: moment(parts.next()?, parts.next()?)?,
                    closed: parts.next()? == "1",
                    testing: parts.next()? == "1",
                    complaint: parts.next()?.to_owned(),
                    outbox: Vec::new(),
                };
                while let Some(file) = parts.next() {
                    let (file, issue) = (FileId::parse(file)?, parts.next()?.parse().ok()?);
                    let (name, sha256) = (parts.next()?.to_owned(), parts.next()?.to_owned());
                    let made = moment(parts.next()?, parts.next()?)?;
                    let way = parts.next()?;
                    let at = moment(parts.next()?, parts.next()?)?;
                    line.outbox.push(Outgoing {
                        visit: id,
                        file,
                        issue,
                        name,
                        sha256,
                        made,
                        handed: match way {
                            "s" => Some((Way::Shared, at)),
                            "m" => Some((Way::Mailed, at)),
                            "e" => Some((Way::MailFile, at)),
                            "f" => Some((Way::Saved, at)),
                            _ => None,
                        },
                    });
                }
                Some(Line::Visit(line))
            }
            _ => None,
        }
    }
}

/// Stands between the parts of a written line.
const BETWEEN: &str = "\u{1f}";

fn flag(on: bool) -> String {
    if on { "1" } else { "0" }.to_owned()
}

/// A text that can't be taken for two parts.
fn clean(text: &str) -> String {
    text.replace(BETWEEN, " ")
}

fn push_moment(parts: &mut Vec<String>, at: &Moment) {
    parts.push(at.ms.to_string());
    parts.push(at.offset_min.to_string());
}

fn moment(ms: &str, offset_min: &str) -> Option<Moment> {
    Some(Moment {
        ms: ms.parse().ok()?,
        offset_min: offset_min.parse().ok()?,
        run: 0,
        run_ms: 0.0,
    })
}

fn of_visit(visit: &Visit) -> VisitLine {
    let issues = visit.reports.len();
    // An issue that a newer one replaced before anyone had it stays home.
    let waiting =
        visit.reports.iter().zip(1..).filter(|(r, issue)| {
            r.confirmed.is_none() && (*issue == issues || !r.handed.is_empty())
        });
    VisitLine {
        id: visit.id,
        site: visit.site,
        opened: plain(visit.opened),
        complaint: clean(&visit.complaint),
        closed: visit.closed.is_some(),
        testing: visit.closed.is_none() && visit.running_test().is_some(),
        outbox: waiting
            .map(|(r, issue)| Outgoing {
                visit: visit.id,
                file: r.file,
                issue,
                name: clean(&r.name),
                sha256: clean(&r.sha256),
                made: plain(r.at),
                handed: r.handed.last().map(|(way, at)| (*way, plain(*at))),
            })
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use uuid::Uuid;

    fn at(ms: i64) -> Moment {
        Moment {
            ms,
            offset_min: -300,
            run: 0,
            run_ms: 0.0,
        }
    }

    #[test]
    fn what_moves_no_line_leaves_it_as_it_was() {
        // The fixture holds every kind of body; each prefix of it is a store that
        // one more entry comes to.
        let all: Vec<Entry> =
            serde_json::from_str(include_str!("../../tests/fixtures/entries-v1.json")).unwrap();
        let mut still = 0;
        for n in 1..all.len() {
            let about = all[n].about;
            let line = |to: usize| {
                let mine = all[..to].iter().filter(|e| e.about == about);
                Line::of(about, mine.cloned())
            };
            if !Line::moved_by(&all[n].body) {
                assert_eq!(line(n), line(n + 1), "{:?}", all[n].body);
                still += 1;
            }
        }
        assert!(still > 20, "{still}");
    }

    proptest! {
        #[test]
        fn what_is_written_reads_back(
            id in any::<u128>(), site in any::<u128>(), ms in any::<i64>(),
            name in "[^\u{1f}]{0,40}", place in "\\PC{0,20}", machines in 0usize..500,
            closed in any::<bool>(), testing in any::<bool>(),
            out in prop::collection::vec((any::<u128>(), "[^\u{1f}]{0,20}", any::<i64>(), 0u8..5), 0..4),
        ) {
            let id = VisitId::from(Uuid::from_u128(id));
            let site = SiteId::from(Uuid::from_u128(site));
            let outbox = out.into_iter().map(|(file, name, ms, way)| Outgoing {
                visit: id,
                file: FileId::from(Uuid::from_u128(file)),
                issue: 1 + usize::from(way),
                sha256: name.to_lowercase(),
                name,
                made: at(ms),
                handed: [None, Some(Way::Shared), Some(Way::Mailed), Some(Way::Saved), Some(Way::MailFile)]
                    [usize::from(way)].map(|w| (w, at(ms ^ 1))),
            });
            let visit = Line::Visit(VisitLine {
                id, site, opened: at(ms), complaint: name.clone(), closed, testing,
                outbox: outbox.collect(),
            });
            prop_assert_eq!(Line::read(&visit.write()), Some(visit));
            let line = Line::Site(SiteLine { id: site, name, place, machines, demo: closed });
            prop_assert_eq!(Line::read(&line.write()), Some(line));
        }

        #[test]
        fn whatever_is_read_does_not_panic(text in "\\PC{0,80}") {
            let _ = Line::read(&text);
            let _ = Line::read(&text.replace(' ', "\u{1f}"));
        }
    }
}
