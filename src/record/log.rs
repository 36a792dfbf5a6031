//! The log: every entry this phone holds, and what can be asked of it.

use super::body::{Body, Way};
use super::entry::{About, Entry};
use super::id::{EntryId, FileId, SiteId, VisitId};
use super::moment::Moment;
use super::site::Site;
use super::standing::withdrawn;
use super::table::Table;
use super::visit::Visit;
use crate::quantity::sort_by;

/// A set of entries. Adding the same entry twice changes nothing; two logs
/// merge by adding one to the other.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Log {
    entries: Table<EntryId, Entry>,
}

/// One line of the list of visits.
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

impl Log {
    /// Adds an entry; one already present stays as it is.
    pub fn add(&mut self, entry: Entry) {
        self.entries.or_insert(entry.id, entry);
    }

    /// An entry by its name.
    pub fn entry(&self, id: EntryId) -> Option<&Entry> {
        self.entries.get(&id)
    }

    /// The newest id in the log.
    pub fn last(&self) -> Option<EntryId> {
        self.entries.keys().next_back().copied()
    }

    /// How many entries it holds.
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether it holds none.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// All entries in order.
    pub fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values()
    }

    /// The entries that were not taken back, in order.
    fn standing(&self) -> Vec<&Entry> {
        let mut all: Table<EntryId, &Entry> = Table::new();
        self.entries.iter().for_each(|(id, e)| all.insert(*id, e));
        let gone = withdrawn(&all);
        let mut standing = all.into_values();
        standing.retain(|e| !gone.contains_key(&e.id));
        standing
    }

    /// A visit, folded; `None` when it was never opened.
    pub fn visit(&self, id: VisitId) -> Option<Visit> {
        Visit::fold(id, self.entries.values())
    }

    /// A site as last described; `None` when it never was.
    pub fn site(&self, id: SiteId) -> Option<Site> {
        self.standing()
            .into_iter()
            .rev()
            .filter(|e| e.about == About::Site(id))
            .find_map(|e| match &e.body {
                Body::SiteDescribed { site } => Some(site.clone()),
                _ => None,
            })
    }

    /// Every site with its latest description, by name.
    pub fn sites(&self) -> Vec<(SiteId, Site)> {
        let mut sites: Table<SiteId, Site> = Table::new();
        for entry in self.standing() {
            if let (About::Site(id), Body::SiteDescribed { site }) = (entry.about, &entry.body) {
                sites.insert(id, site.clone());
            }
        }
        let mut sites = sites.into_pairs();
        sort_by(&mut sites, |a, b| {
            a.1.name.cmp(&b.1.name).then(a.0.cmp(&b.0))
        });
        sites
    }

    /// Every visit in one line each, newest first.
    pub fn visits(&self) -> Vec<VisitLine> {
        let mut lines: Table<VisitId, VisitLine> = Table::new();
        let standing = self.standing();
        for entry in &standing {
            if let (About::Visit(id), Body::VisitOpened { site, complaint }) =
                (entry.about, &entry.body)
            {
                let line = VisitLine {
                    id,
                    site: *site,
                    opened: entry.at,
                    complaint: complaint.clone(),
                    closed: false,
                };
                lines.or_insert(id, line);
            }
        }
        for entry in &standing {
            if let (About::Visit(id), Body::VisitClosed) = (entry.about, &entry.body)
                && let Some(line) = lines.get_mut(&id)
            {
                line.closed = true;
            }
        }
        let mut lines = lines.into_values();
        sort_by(&mut lines, |a, b| {
            (b.opened.ms, b.id).cmp(&(a.opened.ms, a.id))
        });
        lines
    }

    /// Reports of which nobody has said that they arrived, oldest first.
    pub fn outbox(&self) -> Vec<Outgoing> {
        let mut out: Table<FileId, Outgoing> = Table::new();
        let mut issues: Table<VisitId, usize> = Table::new();
        let standing = self.standing();
        for entry in &standing {
            if let (
                About::Visit(visit),
                Body::ReportMade {
                    file, name, sha256, ..
                },
            ) = (entry.about, &entry.body)
            {
                let issue = issues.or_insert(visit, 0);
                *issue += 1;
                let going = Outgoing {
                    visit,
                    file: *file,
                    issue: *issue,
                    name: name.clone(),
                    sha256: sha256.clone(),
                    made: entry.at,
                    handed: None,
                };
                out.insert(*file, going);
            }
        }
        // Made first, whatever the phones' clocks said.
        for entry in &standing {
            match &entry.body {
                Body::ReportHandedOver { file, way } => {
                    if let Some(going) = out.get_mut(file) {
                        going.handed = Some((*way, entry.at));
                    }
                }
                Body::ReportConfirmed { file } => {
                    out.remove(file);
                }
                _ => {}
            }
        }
        let mut out = out.into_values();
        // An issue that a newer one replaced before anyone had it stays home.
        out.retain(|o| o.handed.is_some() || issues.get(&o.visit) == Some(&o.issue));
        sort_by(&mut out, |a, b| {
            (a.made.ms, a.file).cmp(&(b.made.ms, b.file))
        });
        out
    }

    /// Reports of the outbox that were not handed to anything yet.
    pub fn waiting_reports(&self) -> Vec<Outgoing> {
        self.outbox()
            .into_iter()
            .filter(|o| o.handed.is_none())
            .collect()
    }

    /// Whether any refill test on an open visit is begun and not ended.
    pub fn test_running(&self) -> bool {
        let open = self.visits().into_iter().filter(|line| !line.closed);
        open.filter_map(|line| self.visit(line.id))
            .any(|visit| visit.running_test().is_some())
    }
}
