//! Setting one field of a section or entry, by its name in the file.

use serde_json::{Map, Value};

use super::{List, NotPossible};
use crate::plan::{Id, Path, Plain, Plan};

/// Sets the field at `path` and returns what stood there, and where: a part such as `draw` that had to be made
/// for the field is itself what the inverse takes away again.
pub fn replace(plan: &mut Plan, path: &Path, value: Value) -> Result<(Path, Value), NotPossible> {
    let (first, rest) = path.split_first();
    match first {
        "calendar" => replace_part(&mut plan.calendar, path, rest, value),
        "vehicle" => replace_part(&mut plan.vehicle, path, rest, value),
        "purchase" => replace_part(&mut plan.purchase, path, rest, value),
        "selling" => replace_part(&mut plan.selling, path, rest, value),
        "building" => replace_part(&mut plan.building, path, rest, value),
        "climate" => replace_part(&mut plan.climate, path, rest, value),
        "shell" => replace_part(&mut plan.shell, path, rest, value),
        "work" => replace_part(&mut plan.work, path, rest, value),
        "cutting" => replace_part(&mut plan.cutting, path, rest, value),
        "room" => replace_part(&mut plan.room, path, rest, value),
        "trial" => replace_part(&mut plan.trial, path, rest, value),
        "purse" => replace_part(&mut plan.purse, path, rest, value),
        "title" => replace_value(&mut plan.title, Plan::default().title, path, &value),
        "currency" => replace_value(&mut plan.currency, Plan::default().currency, path, &value),
        "people" => replace_value(&mut plan.people, Plan::default().people, path, &value),
        _ => replace_in_list(plan, path, value),
    }
}

fn replace_in_list(plan: &mut Plan, path: &Path, value: Value) -> Result<(Path, Value), NotPossible> {
    let (first, rest) = path.split_first();
    let list = List::named(first).ok_or_else(|| NotPossible::NoSuchField { path: path.clone() })?;
    let (id, field) = rest.split_once('/').unwrap_or((rest, ""));
    let no_entry = || NotPossible::NoSuchEntry { path: path.clone() };
    let id: Id = id.parse().map_err(|_| no_entry())?;
    let whole = list.entry(plan, id).ok_or_else(no_entry)?;
    replace_in(whole, path, field, value, |whole| list.replace(plan, id, whole))
}

fn replace_value<T: Plain + Default>(
    target: &mut T,
    unset: T,
    path: &Path,
    value: &Value,
) -> Result<(Path, Value), NotPossible> {
    let before = target.to_plain();
    let wrong = || NotPossible::WrongValue { path: path.clone() };
    *target = if value.is_null() { unset } else { T::from_plain(value).ok_or_else(wrong)? };
    Ok((path.clone(), before))
}

fn replace_part<T: Plain + Default>(
    part: &mut T,
    path: &Path,
    field: &str,
    value: Value,
) -> Result<(Path, Value), NotPossible> {
    replace_in(part.to_plain(), path, field, value, |whole| T::from_plain(whole).map(|read| *part = read).is_some())
}

/// Sets `field` (nested names by `/`) of one entry, through its form in the file, and takes that over with `set`.
fn replace_in(
    mut whole: Value,
    path: &Path,
    field: &str,
    value: Value,
    set: impl FnOnce(&Value) -> bool,
) -> Result<(Path, Value), NotPossible> {
    let no_field = || NotPossible::NoSuchField { path: path.clone() };
    let before = put(whole.as_object_mut().ok_or_else(no_field)?, field, value).ok_or_else(no_field)?;
    if !set(&whole) {
        return Err(NotPossible::WrongValue { path: path.clone() });
    }
    let base = &path.as_str()[..path.as_str().len() - field.len()];
    Ok((Path::from(base.trim_end_matches('/')).child(&before.0), before.1))
}

/// Sets a nested field and returns the name and the value of what stood there: of the field, or of the first
/// part on the way to it that was not there. `None` when the name is empty or is the identity.
pub fn put(object: &mut Map<String, Value>, field: &str, value: Value) -> Option<(String, Value)> {
    let (name, rest) = field.split_once('/').unwrap_or((field, ""));
    if name.is_empty() || name == "id" {
        return None;
    }
    if rest.is_empty() {
        let before = if value.is_null() { object.remove(name) } else { object.insert(name.to_owned(), value) };
        return Some((name.to_owned(), before.unwrap_or(Value::Null)));
    }
    let was_there = object.get(name).is_some_and(Value::is_object);
    if !was_there {
        object.insert(name.to_owned(), Value::Object(Map::new()));
    }
    let (inner, before) = put(object.get_mut(name)?.as_object_mut()?, rest, value)?;
    Some(if was_there { (format!("{name}/{inner}"), before) } else { (name.to_owned(), Value::Null) })
}
