//! Reads a plan that was written down a line an entry.

use serde_json::{Map, Value, json};

use crate::plan::edit::put;
use crate::plan::field::{Field, Kind, Section};
use crate::plan::{Id, NumberMarks, Plain, Plan, typed_value};

/// The plan, with ids in the order of its entries, which refer to earlier ones by name. `year` is put before every day. `None` when a line is not understood.
pub(super) fn plan(text: &str, year: &str) -> Option<Plan> {
    let mut section = Section::named("")?;
    let mut plan = Map::new();
    let mut ids = 1 as Id..;
    for line in text.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        if let Some(name) = line.strip_prefix('[') {
            section = Section::named(name.strip_suffix(']')?)?;
        } else if section.is_list {
            let (name, fields) = line.split_once(": ")?;
            let mut entry = Map::new();
            entry.insert("id".to_owned(), ids.next()?.into());
            let first = section.fields.first()?;
            entry.insert(first.name.to_owned(), reference(first, name, &plan).unwrap_or_else(|| name.into()));
            put_fields(&mut entry, section, fields, &plan, year)?;
            let list = plan.entry(section.name).or_insert_with(|| json!([]));
            list.as_array_mut()?.push(entry.into());
        } else if section.name.is_empty() {
            let mut own = Map::new();
            put_fields(&mut own, section, line, &plan, year)?;
            plan.append(&mut own);
        } else {
            let mut part = Map::new();
            put_fields(&mut part, section, line, &plan, year)?;
            let known = plan.entry(section.name).or_insert_with(|| json!({}));
            known.as_object_mut()?.append(&mut part);
        }
    }
    Plan::from_plain(&plan.into())
}

/// The id of the entry that a field refers to by its name.
fn reference(field: &Field, name: &str, plan: &Map<String, Value>) -> Option<Value> {
    let Kind::Entry(list) = field.kind else { return None };
    let entries = plan.get(list.name())?.as_array()?;
    entries.iter().find(|entry| entry["name"] == name)?.get("id").cloned()
}

fn put_fields(
    object: &mut Map<String, Value>,
    section: &Section,
    fields: &str,
    plan: &Map<String, Value>,
    year: &str,
) -> Option<()> {
    for field in fields.split("; ") {
        let (name, text) = field.split_once(' ')?;
        let field = section.field(name)?;
        put(object, name, reference(field, text, plan).or_else(|| value(field, text, year))?)?;
    }
    Some(())
}

fn value(field: &Field, text: &str, year: &str) -> Option<Value> {
    let read = |text: &str| typed_value(field, text, NumberMarks::default(), 1.0).ok();
    match field.kind {
        Kind::Date => read(&format!("{year}{text}")),
        Kind::Number { range: true, .. } | Kind::Money { range: true, .. } if text.contains(" / ") => {
            let mut parts = text.split(" / ").map(read);
            Some(json!({ "low": parts.next()??, "likely": parts.next()??, "high": parts.next()?? }))
        }
        _ => read(text),
    }
}
