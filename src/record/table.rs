//! A map kept as a sorted list. For the handful of readings of a visit, and
//! for ids that arrive in order, it is as quick as a tree, and a tenth of a
//! tree's code for each kind of key: a phone has to download that.

/// A map in order of its keys.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table<K, V>(Vec<(K, V)>);

impl<K, V> Default for Table<K, V> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<K: Ord, V> Table<K, V> {
    /// An empty table.
    pub fn new() -> Self {
        Self::default()
    }

    fn place(&self, key: &K) -> Result<usize, usize> {
        // Most keys are newer than all before them.
        match self.0.last() {
            Some((last, _)) if last < key => Err(self.0.len()),
            _ => self.0.binary_search_by(|(known, _)| known.cmp(key)),
        }
    }

    /// The value of a key.
    pub fn get(&self, key: &K) -> Option<&V> {
        self.place(key).ok().map(|at| &self.0[at].1)
    }

    /// The value of a key, to change.
    pub fn get_mut(&mut self, key: &K) -> Option<&mut V> {
        self.place(key).ok().map(|at| &mut self.0[at].1)
    }

    /// Whether the key is there.
    pub fn contains_key(&self, key: &K) -> bool {
        self.place(key).is_ok()
    }

    /// Sets a key's value.
    pub fn insert(&mut self, key: K, value: V) {
        match self.place(&key) {
            Ok(at) => self.0[at].1 = value,
            Err(at) => self.0.insert(at, (key, value)),
        }
    }

    /// A key's value, set to this one if the key is new.
    pub fn or_insert(&mut self, key: K, value: V) -> &mut V {
        let at = match self.place(&key) {
            Ok(at) => at,
            Err(at) => {
                self.0.insert(at, (key, value));
                at
            }
        };
        &mut self.0[at].1
    }

    /// Takes a key out.
    pub fn remove(&mut self, key: &K) -> Option<V> {
        self.place(key).ok().map(|at| self.0.remove(at).1)
    }

    /// How many keys.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Keys and values in order.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (&K, &V)> {
        self.0.iter().map(|(key, value)| (key, value))
    }

    /// Keys in order.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &K> {
        self.0.iter().map(|(key, _)| key)
    }

    /// Values in order of their keys.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &V> {
        self.0.iter().map(|(_, value)| value)
    }

    /// The values in order of their keys, by themselves.
    pub fn into_values(self) -> Vec<V> {
        self.0.into_iter().map(|(_, value)| value).collect()
    }

    /// Keys with their values, by themselves.
    pub fn into_pairs(self) -> Vec<(K, V)> {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn it_does_what_a_tree_does(
            steps in proptest::collection::vec((0u8..3, 0u8..30, 0u16..1000), 0..120),
        ) {
            let (mut table, mut tree) = (Table::new(), BTreeMap::new());
            for (what, key, value) in steps {
                match what {
                    0 => {
                        table.insert(key, value);
                        tree.insert(key, value);
                    }
                    1 => prop_assert_eq!(table.remove(&key), tree.remove(&key)),
                    _ => {
                        let kept = *table.or_insert(key, value);
                        prop_assert_eq!(kept, *tree.entry(key).or_insert(value));
                    }
                }
                prop_assert_eq!(table.get(&key), tree.get(&key));
                prop_assert_eq!(table.len(), tree.len());
            }
            let pairs: Vec<_> = tree.into_iter().collect();
            prop_assert_eq!(table.into_pairs(), pairs);
        }
    }
}
