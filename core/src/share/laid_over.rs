//! What comes back from a friend, laid over the plan here: so that only what it tells can differ.

use serde_json::{Map, Value};

use super::scope::Tells;
use super::{Parcel, Scope};
use crate::plan::field::{SECTIONS, Section};
use crate::plan::{Document, Id, List, Path, Plain, Plan};

impl Parcel {
    /// The plan as it would be with all that the parcel says, and as it is in all that the parcel does not tell of. Take
    /// over what you want of it by [`differences`](crate::plan::differences).
    ///
    /// What a whole plan or a kit does not have any more is gone; what is not on a shopping list or among the things to
    /// borrow stays as it is. A new entry whose id has another meaning here gets a free one.
    ///
    /// ```
    /// use kerbstead_core::plan::{Document, demo_plan, differences};
    /// use kerbstead_core::share::{Parcel, Scope};
    /// let (here, mut there) = (demo_plan(), demo_plan());
    /// there.kit[0].note = "Ask Runa".into();
    /// let parcel = Parcel::of(&Document::new(&there).write(&there), Scope::Kit, false);
    /// let found = differences(&here, &parcel.laid_over(&here));
    /// assert_eq!((found.len(), found[0].path.last()), (1, "note"));
    /// ```
    pub fn laid_over(&self, plan: &Plan) -> Plan {
        let (scope, with_money, file) = match self {
            Self::Answer(answer) => return answer.applied(plan),
            Self::Plan { scope, with_money, file } => (*scope, *with_money, file),
        };
        let Ok(opened) = Document::from_value(file.clone()) else { return plan.clone() };
        let tells = Tells { scope, with_money };
        if tells.all() {
            return opened.plan;
        }
        let (mut now, mut told) = (plan.to_plain(), opened.plan.to_plain());
        if let Value::Object(told) = &mut told {
            // A plan leaves out what is empty; the file says whether that was told.
            for (name, _) in fields(file).iter().filter(|(_, value)| value.as_array().is_some_and(Vec::is_empty)) {
                told.entry(name).or_insert(Value::Array(Vec::new()));
            }
        }
        let there = fields(&told);
        if let Value::Object(now) = &mut now {
            for section in SECTIONS.iter().filter(|section| tells.section(section)) {
                lay_section(tells, section, plan, now, there);
            }
        }
        // Written by this version, so that it can read it.
        let mut now = Plan::from_plain(&now).unwrap_or_else(|| plan.clone());
        now.guesses.retain(|path| scope != Scope::Whole || !tells.path(path));
        now.guesses.extend(opened.plan.guesses);
        // An entry that is gone takes its guesses along.
        let is_gone = |path: &&Path| has_entry(plan, path) && !has_entry(&now, path);
        now.guesses = now.guesses.iter().filter(|path| !is_gone(path)).cloned().collect();
        now
    }
}

/// Whether the entry that a path leads into is there; a path into no list leads into none.
fn has_entry(plan: &Plan, path: &Path) -> bool {
    let (section, rest) = path.split_first();
    let id = rest.split('/').next().and_then(|id| id.parse::<Id>().ok());
    List::named(section).zip(id).is_none_or(|(list, id)| list.ids(plan).contains(&id))
}

fn lay_section(tells: Tells, section: &Section, plan: &Plan, now: &mut Map<String, Value>, there: &Map<String, Value>) {
    if section.name.is_empty() {
        return lay_fields(tells, section, now, there);
    }
    let Some(there) = there.get(section.name) else { return };
    let empty = if section.is_list { Value::Array(Vec::new()) } else { Value::Object(Map::new()) };
    let now = now.entry(section.name).or_insert(empty);
    match (List::named(section.name), now, there) {
        (Some(list), Value::Array(now), Value::Array(there)) => lay_entries(tells, (section, list), plan, now, there),
        (None, Value::Object(now), Value::Object(there)) => lay_fields(tells, section, now, there),
        _ => {}
    }
}

fn lay_entries(tells: Tells, (section, list): (&Section, List), plan: &Plan, now: &mut Vec<Value>, there: &[Value]) {
    let (own, mut free) = (list.ids(plan), plan.next_id());
    let mut laid = Vec::new();
    for entry in there {
        let id = id_of(entry);
        let before = now.iter().find(|entry| id_of(entry) == id);
        let mut entry_now = before.and_then(Value::as_object).cloned().unwrap_or_default();
        lay_fields(tells, section, &mut entry_now, fields(entry));
        let is_taken = !own.contains(&id) && List::ALL.iter().any(|list| list.ids(plan).contains(&id));
        entry_now.insert("id".to_owned(), if is_taken { free } else { id }.into());
        free += Id::from(is_taken);
        laid.push(Value::Object(entry_now));
    }
    if matches!(tells.scope, Scope::Whole | Scope::Kit) {
        *now = laid;
        return;
    }
    for entry in laid {
        match now.iter_mut().find(|before| id_of(before) == id_of(&entry)) {
            Some(before) => *before = entry,
            None => now.push(entry),
        }
    }
}

fn id_of(entry: &Value) -> Id {
    entry.get("id").and_then(Id::from_plain).unwrap_or_default()
}

fn fields(value: &Value) -> &Map<String, Value> {
    static NONE: std::sync::OnceLock<Map<String, Value>> = std::sync::OnceLock::new();
    value.as_object().unwrap_or_else(|| NONE.get_or_init(Map::new))
}

fn lay_fields(tells: Tells, section: &Section, now: &mut Map<String, Value>, there: &Map<String, Value>) {
    for field in section.fields.iter().filter(|field| tells.field(section, field)) {
        lay(now, there, field.name);
    }
}

/// Lays one field over. A part such as `draw` that is not there is gone with all its fields.
fn lay(now: &mut Map<String, Value>, there: &Map<String, Value>, name: &str) {
    let (first, rest) = name.split_once('/').unwrap_or((name, ""));
    match there.get(first) {
        None | Some(Value::Null) => drop(now.remove(first)),
        Some(Value::Object(there)) if !rest.is_empty() => {
            let now = now.entry(first).or_insert(Value::Null);
            if !now.is_object() {
                *now = Value::Object(Map::new());
            }
            if let Value::Object(now) = now {
                lay(now, there, rest);
            }
        }
        Some(value) => drop(now.insert(first.to_owned(), value.clone())),
    }
}
