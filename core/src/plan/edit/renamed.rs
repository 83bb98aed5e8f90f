//! Edits about an entry that was given another id.

use serde_json::Value;

use super::{Edit, List};
use crate::plan::field::Section;
use crate::plan::{Field, Id, Kind, Path};

impl Edit {
    /// The same change of a plan in which the entry `from` of the list has the id `to`.
    #[must_use]
    pub fn renamed(self, list: List, from: Id, to: Id) -> Self {
        let new_path = |path: Path| path.renamed(list, from, to);
        let new_id = |of: List, id: Id| if of == list && id == from { to } else { id };
        match self {
            Self::Set { path, mut value } => {
                for way in references_below(&path, list) {
                    rename_reference(&mut value, way, from, to);
                }
                Self::Set { path: new_path(path), value }
            }
            Self::Insert { list: of, at, mut entry } => {
                rename_entry(&mut entry, of, list, from, to);
                Self::Insert { list: of, at, entry }
            }
            Self::Remove { list: of, id } => Self::Remove { list: of, id: new_id(of, id) },
            Self::Move { list: of, id, to: at } => Self::Move { list: of, id: new_id(of, id), to: at },
            Self::Guess { paths, guessed } => Self::Guess { paths: paths.into_iter().map(new_path).collect(), guessed },
            Self::All { edits } => {
                Self::All { edits: edits.into_iter().map(|edit| edit.renamed(list, from, to)).collect() }
            }
        }
    }
}

/// Renames an entry of the list `of`, and what in it refers to another entry, when entry `from` of `list` becomes `to`.
pub fn rename_entry(entry: &mut Value, of: List, list: List, from: Id, to: Id) {
    if of == list && entry.get("id").and_then(Value::as_u64) == Some(u64::from(from)) {
        entry["id"] = to.into();
    }
    let Some(section) = Section::named(of.name()) else { return };
    for field in section.fields.iter().filter(|field| refers_to(field, list)) {
        rename_reference(entry, field.name, from, to);
    }
}

/// Whether a field refers to entries of a list.
fn refers_to(field: &Field, list: List) -> bool {
    match field.kind {
        Kind::Entry(to_list) => to_list == list,
        Kind::StoreItem => list == List::Kit,
        _ => false,
    }
}

/// The ways from a path to the fields below it that refer to a list: an empty one if it leads to such a field itself.
fn references_below(path: &Path, list: List) -> impl Iterator<Item = &'static str> {
    let (first, rest) = path.split_first();
    let section = Section::named(first);
    let name = match section {
        Some(section) if section.is_list => rest.split_once('/').map_or("", |(_, name)| name),
        _ => rest,
    };
    let fields = section.map_or(&[][..], |section| section.fields).iter().filter(move |field| refers_to(field, list));
    fields.filter_map(move |field| {
        let below = field.name.strip_prefix(name)?;
        if below.is_empty() { Some("") } else { below.strip_prefix('/') }
    })
}

/// Renames what refers to an entry: the part of the value at that way, or the value itself when the way is empty.
fn rename_reference(value: &mut Value, way: &str, from: Id, to: Id) {
    let mut names = way.split('/').filter(|name| !name.is_empty());
    let reference = names.try_fold(value, |value, name| value.get_mut(name));
    if let Some(reference) = reference
        && reference.as_u64() == Some(u64::from(from))
    {
        *reference = to.into();
    }
}
