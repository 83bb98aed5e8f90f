//! New ids for new entries, where two sides gave the same id to different things.

use serde_json::Value;

use super::Clash;
use crate::plan::{Id, List, Path, rename_entry};

/// An entry that was given another id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Renaming {
    /// The list it stands in.
    pub list: List,
    /// The id it had.
    pub from: Id,
    /// The id it has.
    pub to: Id,
}

/// Gives entries that are new in `document` other ids than those that are new in `other` and are not the same, and than
/// those of other lists that `other` changed: they stay, although their id was free here.
pub fn give_new_ids(base: &Value, other: &Value, document: &mut Value) -> Vec<Renaming> {
    let known = ids(base);
    let is_changed = |(list, id): &(List, u64)| entry(other, *list, *id) != entry(base, *list, *id);
    let theirs: Vec<(List, u64)> = ids(other).into_iter().filter(is_changed).collect();
    let mut own = ids(document);
    let mut free = theirs.iter().chain(&known).chain(&own).map(|(_, id)| *id).max().unwrap_or(0);
    own.retain(|new| !known.contains(new));
    let mut renamings = Vec::new();
    for (list, id) in own {
        let is_taken = theirs
            .iter()
            .any(|(of, taken)| *taken == id && (*of != list || entry(other, list, id) != entry(document, list, id)));
        free = free.saturating_add(1);
        // Beyond the last id there is none to give; then the two entries are merged as if they were one.
        if let (true, Ok(from), Ok(to)) = (is_taken, Id::try_from(id), Id::try_from(free)) {
            rename(document, Renaming { list, from, to });
            renamings.push(Renaming { list, from, to });
        }
    }
    renamings
}

/// Takes entries out of `document` that `other` took out to give their ids to entries of other lists, and tells of those
/// that were changed in it. No id can be of two entries.
pub fn give_way(base: &Value, other: &Value, document: &mut Value, clashes: &mut Vec<Clash>) {
    let known = ids(base);
    for (of, id) in ids(other).into_iter().filter(|new| !known.contains(new)) {
        for (list, _) in known.iter().filter(|(list, known)| *known == id && *list != of) {
            let Some(earlier) = entry(document, *list, id).cloned() else { continue };
            if let Some(entries) = document.get_mut(list.name()).and_then(Value::as_array_mut) {
                entries.retain(|entry| id_of(entry) != Some(id));
            }
            if entry(base, *list, id) != Some(&earlier) {
                let path = Path::section(list.name()).child(&id.to_string());
                clashes.push(Clash { path, later: Value::Null, earlier });
            }
        }
    }
}

fn rename(document: &mut Value, Renaming { list, from, to }: Renaming) {
    for of in List::ALL {
        for entry in document.get_mut(of.name()).and_then(Value::as_array_mut).into_iter().flatten() {
            rename_entry(entry, *of, list, from, to);
        }
    }
    for guess in document.get_mut("guesses").and_then(Value::as_array_mut).into_iter().flatten() {
        if let Some(path) = guess.as_str() {
            *guess = Path::from(path).renamed(list, from, to).as_str().into();
        }
    }
}

fn entries(document: &Value, list: List) -> &[Value] {
    document.get(list.name()).and_then(Value::as_array).map_or(&[], Vec::as_slice)
}

fn id_of(entry: &Value) -> Option<u64> {
    entry.get("id").and_then(Value::as_u64)
}

fn entry(document: &Value, list: List, id: u64) -> Option<&Value> {
    entries(document, list).iter().find(|entry| id_of(entry) == Some(id))
}

fn ids(document: &Value) -> Vec<(List, u64)> {
    let of = |list: &List| entries(document, *list).iter().filter_map(id_of).map(|id| (*list, id)).collect::<Vec<_>>();
    List::ALL.iter().flat_map(of).collect()
}
