//! How much of a plan travels, and what that leaves out.

use serde_json::{Map, Value};

use super::concerns::{Concerns, fields_told};
use crate::plan::field::{self, Field, SECTIONS, Section};
use crate::plan::{Id, Item, Kind, Obtain, Outcome, Path, Plain};

/// How much of a plan is shared.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Scope {
    /// All of it.
    #[default]
    Whole,
    /// The kit.
    Kit,
    /// What is still to be bought.
    Shopping,
    /// What is to be borrowed, and from whom.
    Borrowing,
    /// What concerns one who helps, see [`Parcel::for_helper`](super::Parcel::for_helper).
    Helper,
}

impl Scope {
    /// All of them, each at its number.
    pub const ALL: [Self; 5] = [Self::Whole, Self::Kit, Self::Shopping, Self::Borrowing, Self::Helper];
}

/// Sections that are about nothing but money.
const MONEY_SECTIONS: [&str; 11] = [
    "purse",
    "belongings",
    "incomes",
    "costs",
    "purchase",
    "loans",
    "selling",
    "trial",
    "builds",
    "receipts",
    "receipt_lines",
];

/// What a shopping list tells of a thing.
const SHOPPING: &[&str] = &[
    "name",
    "group",
    "need",
    "obtain",
    "quantity",
    "unit_price",
    "tax_percent",
    "discount_percent",
    "delivery",
    "needed_on",
    "mass_kg",
    "length_mm",
    "width_mm",
    "height_mm",
    "note",
];

/// What a list of things to borrow tells of each.
const BORROWING: &[&str] =
    &["name", "group", "obtain", "quantity", "needed_on", "lender", "length_mm", "width_mm", "height_mm", "note"];

/// What a parcel of a plan tells, and what not.
#[derive(Clone, Copy)]
pub(super) struct Tells {
    pub(super) scope: Scope,
    pub(super) with_money: bool,
}

impl Tells {
    /// Whether everything is told, also what this version does not know.
    pub(super) fn all(self) -> bool {
        self.scope == Scope::Whole && self.with_money
    }

    /// Whether anything of a section is told.
    pub(super) fn section(self, section: &Section) -> bool {
        match self.scope {
            Scope::Whole => self.with_money || !MONEY_SECTIONS.contains(&section.name),
            Scope::Kit | Scope::Shopping | Scope::Borrowing => matches!(section.name, "" | "kit"),
            Scope::Helper => !fields_told(section.name).is_empty(),
        }
    }

    /// Whether a field of a section that is told is told itself.
    pub(super) fn field(self, section: &Section, field: &Field) -> bool {
        let is_money = matches!(field.kind, Kind::Money { .. } | Kind::Rate);
        let is_told = match (section.name, self.scope) {
            ("kit", Scope::Shopping) => SHOPPING.contains(&field.name),
            ("kit", Scope::Borrowing) => BORROWING.contains(&field.name),
            (section, Scope::Helper) => fields_told(section).contains(&field.name),
            // Belongings go with the money, and so does what is used of them.
            ("task_needs", _) => self.with_money || field.name != "at_home",
            _ => true,
        };
        is_told && (self.with_money || !is_money && !field.name.starts_with("sale/"))
    }

    /// Whether the field at a path is told.
    pub(super) fn path(self, path: &Path) -> bool {
        let section = Section::named(path.split_first().0).or(SECTIONS.first());
        let section = section.filter(|section| self.section(section));
        section.zip(field::at(path)).is_some_and(|(section, field)| self.field(section, field))
    }

    /// Whether an entry is in the part of the plan that is told.
    fn entry(self, section: &Section, entry: &Value, bought: &[u64]) -> bool {
        if section.name != "kit" {
            return true;
        }
        let item = |name: &str| entry.get(name);
        let obtain = item("obtain").map_or(Some(Item::default().obtain), Obtain::from_plain);
        let is_paid = item("paid").and_then(Outcome::from_plain).is_some_and(|paid| paid.happened)
            || item("id").and_then(Value::as_u64).is_some_and(|id| bought.contains(&id));
        match self.scope {
            Scope::Whole | Scope::Kit | Scope::Helper => true,
            Scope::Shopping => obtain.is_some_and(Obtain::is_paid) && !is_paid,
            Scope::Borrowing => obtain == Some(Obtain::Borrowed),
        }
    }

    /// What is told of a plan's file, to one who helps where that is the scope: what the table of fields knows, less what
    /// does not travel.
    pub(super) fn part(self, file: &Value, helper: Option<Id>) -> Value {
        let mut part = Map::new();
        let (bought, concerns) = (bought(file), Concerns::of(file, helper));
        let is_told = |section: &Section, entry: &Value| match self.scope {
            Scope::Helper => concerns.tells(section.name, entry),
            _ => self.entry(section, entry, &bought),
        };
        for name in ["schema_version", "guesses"].into_iter().filter(|_| self.scope == Scope::Whole) {
            part.extend(file.get(name).map(|value| (name.to_owned(), value.clone())));
        }
        for section in SECTIONS.iter().filter(|section| self.section(section)) {
            if section.name.is_empty() {
                part.append(&mut self.copied(file, section));
            } else if let Some(Value::Array(entries)) = file.get(section.name) {
                let entries = entries.iter().filter(|entry| is_told(section, entry));
                let entries = entries.map(|entry| Value::Object(self.copied(entry, section))).collect();
                part.insert(section.name.to_owned(), Value::Array(entries));
            } else if let Some(whole) = file.get(section.name) {
                part.insert(section.name.to_owned(), Value::Object(self.copied(whole, section)));
            } else if section.is_list && !self.all() {
                // That it is empty is told too: whoever does not know the list says nothing of it.
                part.insert(section.name.to_owned(), Value::Array(Vec::new()));
            }
        }
        if let Some(guesses) = part.get_mut("guesses").and_then(Value::as_array_mut) {
            guesses.retain(|guess| guess.as_str().is_some_and(|path| self.path(&path.into())));
        }
        Value::Object(part)
    }

    /// The fields of an entry that are told.
    fn copied(self, entry: &Value, section: &Section) -> Map<String, Value> {
        let mut copy = Map::new();
        copy.extend(entry.get("id").filter(|_| section.is_list).map(|id| ("id".to_owned(), id.clone())));
        for field in section.fields.iter().filter(|field| self.field(section, field)) {
            let mut names = field.name.split('/');
            let value = names.try_fold(entry, |value, name| value.get(name));
            if let Some(value) = value {
                put(&mut copy, field.name, value);
            }
        }
        copy
    }
}

/// The items for all of which there is a receipt.
fn bought(file: &Value) -> Vec<u64> {
    let lines = file.get("receipt_lines").and_then(Value::as_array).into_iter().flatten();
    let is_all = |line: &&Value| line.get("more_follows").and_then(Value::as_bool) != Some(true);
    lines.filter(is_all).filter_map(|line| line.get("item")?.as_u64()).collect()
}

fn put(object: &mut Map<String, Value>, name: &str, value: &Value) {
    let Some((first, rest)) = name.split_once('/') else {
        object.insert(name.to_owned(), value.clone());
        return;
    };
    let inner = object.entry(first).or_insert_with(|| Value::Object(Map::new()));
    if let Value::Object(inner) = inner {
        put(inner, rest, value);
    }
}
