//! Changes to whatever plan there is.

use kerbstead_core::plan::field::{SECTIONS, Section};
use kerbstead_core::plan::{Edit, Id, Kind, List, Path, Plan};
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::{Value, json};

use super::{Taste, value};

/// What to change, still without the plan it is changed in.
#[derive(Clone, Debug)]
pub enum Change {
    /// Sets one of a section's fields, of one of its entries if it is a list.
    Set(usize, usize, Index, Value),
    /// Sets a path that is mostly not one.
    SetPath(String, Value),
    /// Inserts an entry with a new id, or with one that is taken.
    Insert(Index, usize, Value, bool),
    /// Removes an entry.
    Remove(Index, Index),
    /// Moves an entry.
    Move(Index, Index, usize),
    /// Marks some paths.
    Guess(Vec<String>, bool),
    /// Several at once.
    All(Vec<Self>),
}

/// Changes that are possible, and about one in four that is not.
pub fn edits() -> impl Strategy<Value = Change> {
    let one = prop_oneof![
        6 => set(),
        1 => (strange_path(), any_value()).prop_map(|(path, value)| Change::SetPath(path, value)),
        2 => (any::<Index>(), 0..9_usize, any_value(), prop::bool::weighted(0.9))
            .prop_map(|(list, at, name, is_new)| Change::Insert(list, at, name, is_new)),
        2 => (any::<Index>(), any::<Index>()).prop_map(|(list, entry)| Change::Remove(list, entry)),
        2 => (any::<Index>(), any::<Index>(), 0..9_usize).prop_map(|(list, entry, to)| Change::Move(list, entry, to)),
        1 => (prop::collection::vec(strange_path(), 0..4), any::<bool>())
            .prop_map(|(paths, guessed)| Change::Guess(paths, guessed)),
    ];
    let nested = one.boxed();
    let all = prop::collection::vec(nested.clone(), 0..5).prop_map(Change::All);
    prop_oneof![6 => nested, 1 => all.clone(), 1 => prop::collection::vec(all, 0..3).prop_map(Change::All)]
}

fn set() -> BoxedStrategy<Change> {
    let fields: Vec<(usize, usize)> = SECTIONS
        .iter()
        .enumerate()
        .flat_map(|(section, table)| (0..table.fields.len()).map(move |field| (section, field)))
        .collect();
    (prop::sample::select(fields), any::<Index>(), prop::bool::weighted(0.8))
        .prop_flat_map(|((section, field), entry, is_fitting)| {
            let kind: Kind = SECTIONS[section].fields[field].kind;
            let value = if is_fitting { value(kind, Taste::Extreme) } else { any_value().boxed() };
            value.prop_map(move |value| Change::Set(section, field, entry, value))
        })
        .boxed()
}

fn any_value() -> impl Strategy<Value = Value> {
    prop_oneof![
        4 => Just(Value::Null),
        1 => Just(json!("text")),
        1 => Just(json!(-3)),
        1 => Just(json!(1.5)),
        1 => Just(json!([])),
        1 => Just(json!([1, 2, 3])),
        1 => Just(json!({})),
        1 => Just(json!({ "power_w": "none" })),
        1 => Just(json!(false)),
    ]
}

fn strange_path() -> impl Strategy<Value = String> {
    prop_oneof![
        prop::sample::select(vec![
            "",
            "/",
            "//",
            "kit",
            "kit/",
            "kit/1",
            "kit/1/id",
            "kit/1/draw",
            "kit/2/draw/power_w",
            "kit/x/name",
            "kit/4294967295/name",
            "kit/1/sale/outcome",
            "kit/1/sale/outcome/on",
            "kit/1/draw/power_w/low",
            "kit/3/store",
            "stays/9/offers",
            "stays/9/offers/water",
            "schema_version",
            "guesses",
            "purse",
            "purse/floor/x",
            "calendar/leaves_on",
            "vehicle",
            "vehicle/size",
            "title",
            "title/x",
        ])
        .prop_map(str::to_owned),
        "[a-z0-9/_]{0,12}",
    ]
}

impl Change {
    /// The change in that plan.
    pub fn of(self, plan: &Plan) -> Edit {
        match self {
            Self::Set(section, field, entry, value) => {
                let section = &SECTIONS[section];
                Edit::set(place(section, plan, entry).child(section.fields[field].name), value)
            }
            Self::SetPath(path, value) => Edit::set(path.as_str(), value),
            Self::Insert(list, at, name, is_new) => {
                let list = List::ALL[list.index(List::ALL.len())];
                let id = if is_new { plan.next_id() } else { 1 };
                Edit::Insert { list, at, entry: json!({ "id": id, "name": name, "quantity": 3 }) }
            }
            Self::Remove(list, entry) => {
                let (list, id) = of_list(plan, list, entry);
                Edit::Remove { list, id }
            }
            Self::Move(list, entry, to) => {
                let (list, id) = of_list(plan, list, entry);
                Edit::Move { list, id, to }
            }
            Self::Guess(paths, guessed) => {
                Edit::Guess { paths: paths.iter().map(|path| Path::from(path.as_str())).collect(), guessed }
            }
            Self::All(changes) => Edit::All { edits: changes.into_iter().map(|change| change.of(plan)).collect() },
        }
    }
}

fn place(section: &Section, plan: &Plan, entry: Index) -> Path {
    match List::named(section.name) {
        Some(list) => Path::entry(section.name, id_in(plan, list, entry)),
        None => Path::section(section.name),
    }
}

fn of_list(plan: &Plan, list: Index, entry: Index) -> (List, Id) {
    let list = List::ALL[list.index(List::ALL.len())];
    (list, id_in(plan, list, entry))
}

/// One of the list's ids, or one that no entry has.
fn id_in(plan: &Plan, list: List, entry: Index) -> Id {
    let mut ids = list.ids(plan);
    if ids.is_empty() {
        ids.push(999);
    }
    ids[entry.index(ids.len())]
}
