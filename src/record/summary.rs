//! All lines together: what the lists of sites and visits, the outbox and the
//! search need, without the entries behind them.

use super::entry::{About, Entry};
use super::id::{SiteId, VisitId};
use super::line::{Line, Outgoing, SiteLine, VisitLine};
use super::table::Table;
use crate::quantity::sort_by;

/// Lines by what they are about.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Summary {
    sites: Table<SiteId, SiteLine>,
    /// Newest first.
    visits: Vec<VisitLine>,
}

/// What a write did to the summary: the thing, and its line now.
pub type Changed = (About, Option<Line>);

impl Summary {
    /// The lines of everything these entries are about.
    pub fn of<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> Self {
        let mut things: Table<About, Vec<Entry>> = Table::new();
        for entry in entries {
            things
                .or_insert(entry.about, Vec::new())
                .push(entry.clone());
        }
        let mut summary = Self::default();
        for (about, entries) in things.into_pairs() {
            summary.put((about, Line::of(about, entries)));
        }
        summary
    }

    /// Takes in what a write did.
    pub fn put(&mut self, (about, line): Changed) {
        match (about, line) {
            (_, Some(Line::Site(line))) => self.sites.insert(line.id, line),
            (_, Some(Line::Visit(line))) => {
                match self.visits.iter().position(|known| known.id == line.id) {
                    Some(at) if self.visits[at].opened == line.opened => self.visits[at] = line,
                    known => {
                        known.map(|at| self.visits.remove(at));
                        let newer = |v: &VisitLine| (v.opened.ms, v.id) > (line.opened.ms, line.id);
                        let at = self.visits.partition_point(newer);
                        self.visits.insert(at, line);
                    }
                }
            }
            (About::Site(id), None) => drop(self.sites.remove(&id)),
            (About::Visit(id), None) => self.visits.retain(|v| v.id != id),
        }
    }

    /// Takes in lines read from the store. Those known already stay: a write
    /// may have changed them since.
    pub fn add(&mut self, lines: Vec<Line>) {
        let mut known: Table<VisitId, ()> = Table::new();
        // Oldest first, so that nearly all are added at the end.
        let ids = self.visits.iter().rev().map(|v| v.id);
        ids.for_each(|id| known.insert(id, ()));
        for line in lines {
            match line {
                Line::Site(line) => drop(self.sites.or_insert(line.id, line)),
                Line::Visit(line) if known.contains_key(&line.id) => {}
                Line::Visit(line) => self.visits.push(line),
            }
        }
        sort_by(&mut self.visits, |a, b| {
            (b.opened.ms, b.id).cmp(&(a.opened.ms, a.id))
        });
    }

    /// Every visit, newest first.
    pub fn visits(&self) -> &[VisitLine] {
        &self.visits
    }

    /// One site.
    pub fn site(&self, id: SiteId) -> Option<&SiteLine> {
        self.sites.get(&id)
    }

    /// Every site, by name.
    pub fn sites(&self) -> Vec<&SiteLine> {
        let mut sites: Vec<&SiteLine> = self.sites.values().collect();
        sort_by(&mut sites, |a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
        sites
    }

    /// Whether there is no site.
    pub fn is_empty(&self) -> bool {
        self.sites.is_empty()
    }

    /// Reports of which nobody has said that they arrived, oldest first.
    pub fn outbox(&self) -> Vec<Outgoing> {
        let all = self.visits.iter().flat_map(|v| v.outbox.iter().cloned());
        let mut out: Vec<Outgoing> = all.collect();
        sort_by(&mut out, |a, b| {
            (a.made.ms, a.file).cmp(&(b.made.ms, b.file))
        });
        out
    }

    /// Reports of the outbox that were not handed to anything yet.
    pub fn waiting_reports(&self) -> Vec<Outgoing> {
        let mut out = self.outbox();
        out.retain(|o| o.handed.is_none());
        out
    }

    /// Whether any refill test on an open visit is begun and not ended.
    pub fn test_running(&self) -> bool {
        self.visits.iter().any(|v| v.testing)
    }
}
