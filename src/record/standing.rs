//! Which entries stand: those that no standing entry takes back.

use super::body::Body;
use super::entry::Entry;
use super::id::EntryId;
use super::table::Table;

/// Entries taken back. Taking back a taking-back restores the first, whatever
/// the order of the ids: another phone's clock may run behind. A withdrawal
/// counts only for an entry about the same thing.
pub(super) fn withdrawn(entries: &Table<EntryId, &Entry>) -> Table<EntryId, ()> {
    let target = |entry: &Entry| match &entry.body {
        Body::Withdrawn { entry: target } => entries
            .get(target)
            .filter(|t| t.about == entry.about)
            .map(|t| t.id),
        _ => None,
    };
    let mut undecided: Table<EntryId, usize> = Table::new();
    for entry in entries.values() {
        if let Some(id) = target(entry) {
            *undecided.or_insert(id, 0) += 1;
        }
    }
    // From the entries nobody took back down to what they took back. Entries
    // that take each other back in a ring are never reached, and stand.
    let mut ready: Vec<&Entry> = entries
        .values()
        .copied()
        .filter(|e| !undecided.contains_key(&e.id))
        .collect();
    let mut gone = Table::new();
    while let Some(entry) = ready.pop() {
        let Some(id) = target(entry) else { continue };
        if !gone.contains_key(&entry.id) {
            gone.insert(id, ());
        }
        if let Some(left) = undecided.get_mut(&id) {
            *left -= 1;
            if *left == 0 {
                ready.extend(entries.get(&id));
            }
        }
    }
    gone
}
