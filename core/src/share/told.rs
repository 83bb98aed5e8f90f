//! What a parcel tells whoever gets it.

use serde_json::Value;

use super::{Parcel, Scope};
use crate::explain::{Figure, Figures};
use crate::plan::field::{Field, SECTIONS};
use crate::plan::{Kind, Path, value_in};

/// Something a parcel tells, and of how many things.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Told {
    /// Its sentence in the catalogue.
    pub key: &'static str,
    /// How many there are.
    pub count: usize,
}

impl Told {
    /// The figures in its sentence.
    pub fn figures(self) -> Figures {
        vec![("count", Figure::count(self.count))]
    }
}

/// The lists about the inside of the van.
const ROOM_LISTS: [&str; 7] = ["corners", "built_ins", "doors", "wall_rows", "roof_rows", "placements", "distances"];

/// What a parcel tells, each only where there is any: the plan's name, things, names of people, notes, places, days, the
/// van, water, the work with its tools and helpers, and money. That there is no money in it is told too. Of an answer: who
/// answers, what is offered, what is said to it, and when they can help.
pub fn told(parcel: &Parcel) -> Vec<Told> {
    match parcel {
        Parcel::Plan { file, scope, with_money } => told_by_plan(file, *scope, *with_money),
        Parcel::Answer(answer) => {
            let said = answer.marks.iter().filter(|mark| !mark.says.is_empty()).count();
            some([
                ("share-tells-name", usize::from(!answer.from.is_empty())),
                ("share-tells-marks", answer.marks.len()),
                ("share-tells-said", said),
                ("share-tells-own-hours", usize::from(answer.helper.is_some())),
                ("share-tells-own-days", answer.other_days.len()),
                ("share-tells-lent", answer.tools.len()),
                ("share-tells-nothing-of-yours", 1),
            ])
        }
    }
}

/// What there is any of.
fn some<const N: usize>(found: [(&'static str, usize); N]) -> Vec<Told> {
    found.into_iter().filter(|(_, count)| *count > 0).map(|(key, count)| Told { key, count }).collect()
}

fn told_by_plan(file: &Value, scope: Scope, with_money: bool) -> Vec<Told> {
    let entries = |list: &str| file.get(list).and_then(Value::as_array).map_or(0, Vec::len);
    let is_any = |part: &str| file.get(part).and_then(Value::as_object).is_some_and(|part| !part.is_empty());
    let texts = |name: &str| count(file, &|field: &Field, value| field.name == name && value.as_str() != Some(""));
    let of_kind = |is: fn(&Kind) -> bool| count(file, &|field: &Field, _| is(&field.kind));
    let is_money = |kind: &Kind| matches!(kind, Kind::Money { .. });
    let dates = count(file, &|field: &Field, _| field.kind == Kind::Date);
    let (plan_key, things_key) = match scope {
        Scope::Helper => ("share-tells-title", "share-tells-thing-names"),
        _ => ("share-tells-plan", "share-tells-things"),
    };
    some([
        (plan_key, usize::from(file.get("title").is_some())),
        (things_key, entries("kit")),
        ("share-tells-tasks", entries("tasks")),
        ("share-tells-needs", entries("task_needs")),
        ("share-tells-tools", entries("tools")),
        ("share-tells-helpers", entries("helpers")),
        ("share-tells-other-days", entries("other_days")),
        ("share-tells-building", usize::from(is_any("building"))),
        ("share-tells-lenders", texts("lender")),
        ("share-tells-notes", texts("note")),
        ("share-tells-places", entries("stays")),
        ("share-tells-week", usize::from(entries("week") > 0)),
        ("share-tells-days", dates),
        ("share-tells-van", usize::from(file.get("vehicle").is_some())),
        ("share-tells-room", usize::from(is_any("room")) + ROOM_LISTS.iter().map(|list| entries(list)).sum::<usize>()),
        ("share-tells-latitudes", count(file, &|field: &Field, _| field.name.ends_with("latitude_deg"))),
        ("share-tells-charging", entries("charging")),
        ("share-tells-sleepers", entries("sleepers")),
        ("share-tells-water-uses", entries("water_uses")),
        ("share-tells-water-stops", entries("water_stops")),
        ("share-tells-shell", usize::from(is_any("shell")) + entries("layers")),
        ("share-tells-work", usize::from(is_any("work"))),
        ("share-tells-data", entries("data_uses") + entries("data_contracts")),
        ("share-tells-cuts", entries("stock") + entries("flaws") + entries("cuts") + usize::from(is_any("cutting"))),
        ("share-tells-coverings", entries("coverings") + entries("material_packs")),
        ("share-tells-readings", entries("readings")),
        ("share-tells-wishes", entries("wishes")),
        ("share-tells-sales", entries("belongings")),
        ("share-tells-incomes", entries("incomes")),
        ("share-tells-costs", entries("costs")),
        ("share-tells-purchase", usize::from(is_any("purchase"))),
        ("share-tells-loans", entries("loans")),
        ("share-tells-wish", usize::from(is_any("selling"))),
        ("share-tells-builds", entries("builds") + usize::from(is_any("trial"))),
        ("share-tells-receipts", entries("receipts")),
        ("share-tells-cash", usize::from(file.pointer("/purse/opening_cash").is_some())),
        ("share-tells-amounts", of_kind(is_money)),
        ("share-tells-unknown", unknown(file)),
        ("share-tells-no-money", usize::from(!with_money)),
        ("share-tells-nothing-else", usize::from(scope != Scope::Whole)),
    ])
}

/// How many fields of the file are as asked.
fn count(file: &Value, is: &dyn Fn(&Field, &Value) -> bool) -> usize {
    let mut found = 0;
    for section in SECTIONS {
        let whole = if section.name.is_empty() { Some(file) } else { file.get(section.name) };
        let entries: &[Value] = match whole {
            Some(Value::Array(entries)) => entries,
            Some(whole) => std::slice::from_ref(whole),
            None => &[],
        };
        for entry in entries {
            let is_so = |field: &&Field| value_in(entry, field.name).is_some_and(|value| is(field, value));
            found += section.fields.iter().filter(is_so).count();
        }
    }
    found
}

/// How many fields of the file this version does not know.
fn unknown(file: &Value) -> usize {
    let is_known = |path: &Path| crate::plan::field::is_known(path);
    let of_object = |value: &Value, path: &dyn Fn(&str) -> Path| {
        let names = value.as_object().into_iter().flat_map(|object| object.keys());
        names.filter(|name| *name != "id" && !is_known(&path(name))).count()
    };
    let own = ["schema_version", "guesses"];
    let top = file.as_object().into_iter().flatten();
    top.filter(|(name, _)| !own.contains(&name.as_str()))
        .map(|(name, value)| match (SECTIONS.iter().find(|section| section.name == name), value) {
            (Some(_), Value::Array(entries)) => {
                entries.iter().map(|entry| of_object(entry, &|field| Path::entry(name, 1).child(field))).sum()
            }
            (Some(_), value) => of_object(value, &|field| Path::section(name).child(field)),
            (None, _) => usize::from(!is_known(&Path::section(name))),
        })
        .sum()
}
