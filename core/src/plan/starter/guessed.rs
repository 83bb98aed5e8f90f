//! Which values of a plan that this tool wrote are guesses: all that differ from an empty entry's, but not names and
//! headings, which are no values.

use serde_json::Value;

use crate::plan::field::{Field, Kind, SECTIONS, Section};
use crate::plan::{Belonging, Cost, Income, Item, Loan, Path, Plain, Plan, Reading, Stay, VanBuild, WaterUse, WeekDay};

/// Choices that are values all the same: money, power or the night hang on them.
const CHOICES: [&str; 4] = ["size", "obtain", "kind", "offers/night"];

/// Finds guesses by comparing with a plan whose lists have one empty entry each.
pub(in crate::plan) struct Guessed {
    empty: Value,
}

impl Guessed {
    pub(in crate::plan) fn new() -> Self {
        let empty = Plan {
            kit: vec![Item::default()],
            belongings: vec![Belonging::default()],
            incomes: vec![Income::default()],
            costs: vec![Cost::default()],
            stays: vec![Stay::default()],
            week: vec![WeekDay::default()],
            water_uses: vec![WaterUse::default()],
            readings: vec![Reading::default()],
            loans: vec![Loan::default()],
            builds: vec![VanBuild::default()],
            ..Plan::default()
        };
        Self { empty: empty.to_plain() }
    }

    /// The guesses of one item.
    pub(in crate::plan) fn in_item(&self, item: &Item) -> Vec<Path> {
        let value = item.to_plain();
        Section::named("kit").map_or_else(Vec::new, |section| self.in_entry(section, &value))
    }

    /// The guesses of a plan of which nobody has confirmed anything.
    pub(in crate::plan) fn in_plan(&self, plan: &Plan) -> Vec<Path> {
        let value = plan.to_plain();
        let whole = |section: &Section| {
            let part = if section.name.is_empty() { Some(&value) } else { value.get(section.name) };
            let paths = part.map(|part| self.differing(section, part, &Path::section(section.name)));
            paths.unwrap_or_default()
        };
        let entries = |section: &Section| {
            let list = value.get(section.name).and_then(Value::as_array).into_iter().flatten();
            list.flat_map(|entry| self.in_entry(section, entry)).collect()
        };
        SECTIONS.iter().flat_map(|section| if section.is_list { entries(section) } else { whole(section) }).collect()
    }

    fn in_entry(&self, section: &Section, entry: &Value) -> Vec<Path> {
        let id = entry.get("id").and_then(Value::as_u64).and_then(|id| id.try_into().ok()).unwrap_or(0);
        self.differing(section, entry, &Path::entry(section.name, id))
    }

    fn differing(&self, section: &Section, value: &Value, path: &Path) -> Vec<Path> {
        let pointer = match (section.name, section.is_list) {
            ("", _) => String::new(),
            (name, true) => format!("/{name}/0"),
            (name, false) => format!("/{name}"),
        };
        let empty = self.empty.pointer(&pointer);
        let differs = |field: &&Field| {
            let at = format!("/{}", field.name);
            let stated = value.pointer(&at);
            stated.is_some() && stated != empty.and_then(|empty| empty.pointer(&at))
        };
        section
            .fields
            .iter()
            .filter(|field| is_value(field))
            .filter(differs)
            .map(|field| path.child(field.name))
            .collect()
    }
}

fn is_value(field: &Field) -> bool {
    match field.kind {
        Kind::Text { .. } | Kind::Currency | Kind::StoreItem | Kind::Entry(_) => false,
        Kind::Choice(_) => CHOICES.contains(&field.name),
        _ => true,
    }
}
