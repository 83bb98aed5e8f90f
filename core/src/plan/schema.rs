//! The JSON Schema of plans, with the ranges of the table of fields in it.

use serde_json::{Value, json};

use super::Plan;
use super::field::{Field, Kind, SECTIONS, Section};

/// The JSON Schema (draft 2020-12) of a plan's file.
pub fn json_schema() -> Value {
    let mut schema = schemars::schema_for!(Plan).to_value();
    for section in SECTIONS {
        for field in section.fields {
            if let Some(target) = locate(&mut schema, section, field) {
                describe(target, &field.kind);
            }
        }
    }
    schema
}

/// The place of a field in the schema, through references to shared definitions.
fn locate<'a>(schema: &'a mut Value, section: &Section, field: &Field) -> Option<&'a mut Value> {
    let mut pointer = String::new();
    let names = section.name.split('/').chain(field.name.split('/')).filter(|name| !name.is_empty());
    for name in names {
        pointer += &format!("/properties/{name}");
        if name == section.name && section.is_list {
            pointer += "/items";
        }
        if let Some(definition) = definition(schema.pointer(&pointer)?) {
            definition.trim_start_matches('#').clone_into(&mut pointer);
        }
    }
    schema.pointer_mut(&pointer)
}

/// The shared definition a schema refers to, alone or as "this or nothing"; estimates are described where they are used.
fn definition(schema: &Value) -> Option<String> {
    let direct = schema.get("$ref");
    let optional = || schema.get("anyOf")?.as_array()?.iter().find_map(|choice| choice.get("$ref"));
    let name = direct.or_else(optional)?.as_str()?;
    let is_part = !name.contains("Estimate") && !name.contains("Money");
    is_part.then(|| name.to_owned())
}

fn describe(target: &mut Value, kind: &Kind) {
    let Some(target) = target.as_object_mut() else { return };
    match *kind {
        Kind::Text { max_chars } => drop(target.insert("maxLength".into(), json!(max_chars))),
        Kind::Number { min, max, example, range: false, .. } => {
            target.insert("minimum".into(), json!(min));
            target.insert("maximum".into(), json!(max));
            target.insert("examples".into(), json!([example]));
        }
        Kind::Number { min, max, example, .. } => {
            let note = format!("each from {min} to {max}");
            target.insert("$comment".into(), json!(note));
            target.insert("examples".into(), json!([example]));
        }
        Kind::Whole { min, max, example, .. } => {
            target.insert("minimum".into(), json!(min));
            target.insert("maximum".into(), json!(max));
            target.insert("examples".into(), json!([example]));
        }
        Kind::Money { example, .. } => drop(target.insert("examples".into(), json!([example.to_string()]))),
        Kind::Date => drop(target.insert("format".into(), json!("date"))),
        Kind::Currency => drop(target.insert("pattern".into(), json!("^[A-Z]{3}$"))),
        Kind::Rate | Kind::Flag | Kind::Choice(_) | Kind::StoreItem | Kind::Entry(_) => {}
    }
}
