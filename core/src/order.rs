//! Sorting by a number. Everything sorted here goes by one, so that the code that sorts is in the bundle once.

/// The keys in ascending order, each with the position it had; equal ones stay in their order.
pub(crate) fn sorted(keys: impl Iterator<Item = u64>) -> Vec<(u64, usize)> {
    let mut keyed = Vec::new();
    for (at, key) in keys.enumerate() {
        keyed.push((key, at));
    }
    sort(&mut keyed);
    keyed
}

/// Apart from [`sorted`], whose iterators are of many types, so that there is one of it.
#[inline(never)]
fn sort(keyed: &mut [(u64, usize)]) {
    keyed.sort_unstable();
}

/// The position of a key among sorted ones.
pub(crate) fn find(sorted: &[(u64, usize)], key: u64) -> Option<usize> {
    let at = sorted.partition_point(|(known, _)| *known < key);
    sorted.get(at).filter(|(known, _)| *known == key).map(|_| at)
}

/// The items by their key, in ascending order; those of equal keys stay in their order.
///
/// ```
/// use kerbstead_core::order::by_key;
/// assert_eq!(by_key(&["pan", "kettle", "cup"], |name| name.len() as u64), ["pan", "cup", "kettle"]);
/// ```
pub fn by_key<T: Clone>(items: &[T], key: impl Fn(&T) -> u64) -> Vec<T> {
    sorted(items.iter().map(key)).into_iter().filter_map(|(_, at)| items.get(at).cloned()).collect()
}
