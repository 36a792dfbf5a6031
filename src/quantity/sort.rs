//! Sorting, written once for all types: the library's own stable sort is
//! compiled anew for every type and order, which a phone has to download.

use std::cmp::Ordering;

/// Sorts; equal items keep their order.
pub fn sort_by<T>(items: &mut Vec<T>, mut order: impl FnMut(&T, &T) -> Ordering) {
    let places = places(items.len(), &mut |a, b| order(&items[a], &items[b]));
    let mut taken: Vec<Option<T>> = items.drain(..).map(Some).collect();
    items.extend(places.into_iter().filter_map(|place| taken[place].take()));
}

/// The places of `count` items in sorted order.
fn places(count: usize, order: &mut dyn FnMut(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|a, b| order(*a, *b));
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_is_the_librarys_stable_sort(keys in proptest::collection::vec(0u8..20, 0..80)) {
            let mut ours: Vec<(u8, usize)> = keys.into_iter().zip(0..).collect();
            let mut theirs = ours.clone();
            sort_by(&mut ours, |a, b| b.0.cmp(&a.0));
            theirs.sort_by_key(|key| std::cmp::Reverse(key.0));
            prop_assert_eq!(ours, theirs);
        }
    }
}
