//! The store's twin in memory, for tests and for seeing what a screen does
//! without a browser.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use super::{KeptFile, Loaded, Store, StoreError};
use crate::record::{About, Changed, Entry, EntryId, FileId, Line, VisitId};

/// Keeps everything in memory; can be told to fail.
#[derive(Debug, Default)]
pub struct MemoryStore {
    entries: RefCell<BTreeMap<EntryId, Entry>>,
    files: RefCell<BTreeMap<FileId, KeptFile>>,
    texts: RefCell<BTreeMap<String, String>>,
    lines: RefCell<BTreeMap<About, Line>>,
    /// When set, every write fails with this.
    pub fault: RefCell<Option<StoreError>>,
}

impl MemoryStore {
    fn writable(&self) -> Result<(), StoreError> {
        self.fault.borrow().clone().map_or(Ok(()), Err)
    }

    /// The lines of what these entries are about, worked out anew.
    fn summed_up(&self, entries: &[Entry]) -> Vec<Changed> {
        let things: BTreeSet<About> = entries.iter().map(|e| e.about).collect();
        let all = self.entries.borrow();
        let mut lines = self.lines.borrow_mut();
        let mut changed = Vec::new();
        for about in things {
            let mine = all.values().filter(|e| e.about == about);
            let line = Line::of(about, mine.cloned());
            match &line {
                Some(line) => drop(lines.insert(about, line.clone())),
                None => drop(lines.remove(&about)),
            }
            changed.push((about, line));
        }
        changed
    }
}

fn loaded<'a>(entries: impl Iterator<Item = &'a Entry>) -> Loaded {
    let entries: Vec<Entry> = entries.cloned().collect();
    Loaded {
        last: entries.last().map(|e| e.id.to_string()),
        entries,
        unreadable: 0,
    }
}

impl Store for MemoryStore {
    async fn append(&self, entries: &[Entry]) -> Result<Vec<Changed>, StoreError> {
        self.writable()?;
        for entry in entries {
            self.entries
                .borrow_mut()
                .entry(entry.id)
                .or_insert_with(|| entry.clone());
        }
        Ok(self.summed_up(entries))
    }

    async fn entries(&self, after: Option<&str>, count: u32) -> Result<Loaded, StoreError> {
        let all = self.entries.borrow();
        let after = after.and_then(EntryId::parse);
        let late = all.values().filter(|e| after.is_none_or(|a| e.id > a));
        Ok(loaded(late.take(count as usize)))
    }

    async fn about(&self, about: About) -> Result<Loaded, StoreError> {
        let all = self.entries.borrow();
        Ok(loaded(all.values().filter(|e| e.about == about)))
    }

    async fn newest(&self) -> Result<Option<EntryId>, StoreError> {
        Ok(self.entries.borrow().keys().next_back().copied())
    }

    async fn site_lines(&self) -> Result<Vec<Line>, StoreError> {
        let lines = self.lines.borrow();
        let sites = lines.values().filter(|l| matches!(l, Line::Site(_)));
        Ok(sites.cloned().collect())
    }

    async fn visit_lines(
        &self,
        after: Option<VisitId>,
        count: u32,
    ) -> Result<Vec<Line>, StoreError> {
        let lines = self.lines.borrow();
        let older = lines.iter().rev().filter(|(about, _)| match about {
            About::Visit(id) => after.is_none_or(|a| *id < a),
            About::Site(_) => false,
        });
        Ok(older.take(count as usize).map(|(_, l)| l.clone()).collect())
    }

    async fn first_lines(&self, count: u32) -> Result<Vec<Line>, StoreError> {
        let mut first = self.visit_lines(None, count).await?;
        let sites = self.site_lines().await?;
        let of = |site: &Line, visits: &[Line]| {
            visits.iter().any(|v| match v {
                Line::Visit(visit) => About::Site(visit.site) == site.about(),
                Line::Site(_) => false,
            })
        };
        let none = first.is_empty();
        let mine: Vec<Line> = sites
            .into_iter()
            .filter(|site| none || of(site, &first))
            .take(count as usize)
            .collect();
        first.extend(mine);
        Ok(first)
    }

    async fn keep_lines(&self, lines: &[Line], first: bool) -> Result<(), StoreError> {
        self.writable()?;
        let mut kept = self.lines.borrow_mut();
        if first {
            kept.clear();
        }
        kept.extend(lines.iter().map(|l| (l.about(), l.clone())));
        Ok(())
    }

    async fn keep_file(
        &self,
        file: &KeptFile,
        entries: &[Entry],
    ) -> Result<Vec<Changed>, StoreError> {
        let changed = self.append(entries).await?;
        self.files.borrow_mut().insert(file.id, file.clone());
        Ok(changed)
    }

    async fn file(&self, id: FileId) -> Result<Option<KeptFile>, StoreError> {
        Ok(self.files.borrow().get(&id).cloned())
    }

    async fn keep_text(&self, key: &str, text: &str) -> Result<(), StoreError> {
        self.writable()?;
        self.texts
            .borrow_mut()
            .insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    async fn drop_text(&self, key: &str) -> Result<(), StoreError> {
        self.writable()?;
        self.texts.borrow_mut().remove(key);
        Ok(())
    }

    async fn texts(&self) -> Result<Vec<(String, String)>, StoreError> {
        Ok(self
            .texts
            .borrow()
            .iter()
            .map(|(k, v)| (k.clone(), v.clone()))
            .collect())
    }
}
