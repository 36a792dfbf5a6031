//! A log: a set of entries, and what can be asked of it. The app holds those of
//! the visits and sites that are open; the store holds all.

use super::body::Body;
use super::entry::{About, Entry};
use super::id::{EntryId, SiteId, VisitId};
use super::site::Site;
use super::standing::withdrawn;
use super::table::Table;
use super::visit::Visit;

/// A set of entries. Adding the same entry twice changes nothing; two logs
/// merge by adding one to the other.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Log {
    entries: Table<EntryId, Entry>,
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

    /// All entries in it, in order.
    pub fn held(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values()
    }

    /// The entries about one thing that were not taken back, in order.
    fn standing(&self, about: About) -> Vec<&Entry> {
        let mut all: Table<EntryId, &Entry> = Table::new();
        let mine = self.entries.iter().filter(|(_, e)| e.about == about);
        mine.for_each(|(id, e)| all.insert(*id, e));
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
        self.standing(About::Site(id))
            .into_iter()
            .rev()
            .find_map(|e| match &e.body {
                Body::SiteDescribed { site } => Some(Site::clone(site)),
                _ => None,
            })
    }
}
