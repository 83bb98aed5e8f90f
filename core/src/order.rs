//! Order: sorting by a number, and what is in a row. Everything sorted here goes by one, so that the code that sorts is in the bundle once.

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

/// Where some in a row are so: each from a position until before another.
///
/// ```
/// use kerbstead_core::order::in_a_row;
/// assert_eq!(in_a_row([true, true, false, true].into_iter()), [(0, 2), (3, 4)]);
/// ```
pub fn in_a_row(are: impl Iterator<Item = bool>) -> Vec<(usize, usize)> {
    let mut rows: Vec<(usize, usize)> = Vec::new();
    for (at, _) in are.enumerate().filter(|(_, is_so)| *is_so) {
        match rows.last_mut().filter(|(_, until)| *until == at) {
            Some((_, until)) => *until = at + 1,
            None => rows.push((at, at + 1)),
        }
    }
    rows
}
