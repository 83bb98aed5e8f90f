//! Reads a plan that was written down a line an entry.

use serde_json::{Map, Value, json};

use crate::plan::edit::put;
use crate::plan::field::{Field, Kind, Section};
use crate::plan::{Id, NumberMarks, Plain, Plan, typed_value};

/// The plan, with ids in the order of its entries. `year` is put before every day. `None` when a line is not understood.
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
            entry.insert(section.fields.first()?.name.to_owned(), name.into());
            put_fields(&mut entry, section, fields, year)?;
            let list = plan.entry(section.name).or_insert_with(|| json!([]));
            list.as_array_mut()?.push(entry.into());
        } else if section.name.is_empty() {
            put_fields(&mut plan, section, line, year)?;
        } else {
            let part = plan.entry(section.name).or_insert_with(|| json!({}));
            put_fields(part.as_object_mut()?, section, line, year)?;
        }
    }
    Plan::from_plain(&plan.into())
}

fn put_fields(object: &mut Map<String, Value>, section: &Section, fields: &str, year: &str) -> Option<()> {
    for field in fields.split("; ") {
        let (name, text) = field.split_once(' ')?;
        put(object, name, value(section.field(name)?, text, year)?)?;
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
