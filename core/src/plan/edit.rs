//! Every change to a plan is a value with an inverse.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{Id, Path, Plan, field};

/// A change to a plan. The same type serves typing, undo and redo, the kept history, what a friend or another tab
/// changed, suggestions, and corrections from the road log.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::{Edit, Plan};
/// let mut plan = Plan::default();
/// let undo = Edit::set("calendar/leaves_on", date(2027, 3, 1).to_string()).apply(&mut plan).unwrap();
/// assert_eq!(plan.calendar.leaves_on, Some(date(2027, 3, 1)));
/// undo.apply(&mut plan).unwrap();
/// assert_eq!(plan.calendar.leaves_on, None);
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "do", rename_all = "snake_case")]
pub enum Edit {
    /// Gives a field a value, or leaves it unset with `null`. A guess so touched is a guess no longer.
    Set {
        /// The field.
        path: Path,
        /// Its new value, as it stands in the file.
        value: Value,
    },
    /// Puts an entry into a list.
    Insert {
        /// The list.
        list: List,
        /// Where: the position it will have.
        at: usize,
        /// The entry with its id, as it stands in the file.
        entry: Value,
    },
    /// Takes an entry out of its list.
    Remove {
        /// The list.
        list: List,
        /// The entry.
        id: Id,
    },
    /// Moves an entry within its list.
    Move {
        /// The list.
        list: List,
        /// The entry.
        id: Id,
        /// The position it will have.
        to: usize,
    },
    /// Marks paths as guesses, or as no longer guesses.
    Guess {
        /// The paths.
        paths: Vec<Path>,
        /// Whether they are guesses from now on.
        guessed: bool,
    },
    /// Several changes as one: all of them or none.
    All {
        /// The changes, in order.
        edits: Vec<Edit>,
    },
}

/// Why a change could not be made. The plan is then as it was.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum NotPossible {
    /// There is no such field.
    NoSuchField {
        /// The path asked for.
        path: Path,
    },
    /// There is no such entry; somebody else may have removed it.
    NoSuchEntry {
        /// The path asked for.
        path: Path,
    },
    /// There is an entry of that id already.
    IdTaken {
        /// The id.
        id: Id,
    },
    /// The value is not of the field's kind.
    WrongValue {
        /// The path.
        path: Path,
    },
}

impl Edit {
    /// Gives the field at `path` a value.
    pub fn set(path: impl Into<Path>, value: impl Into<Value>) -> Self {
        Self::Set { path: path.into(), value: value.into() }
    }

    /// Leaves the field at `path` unset.
    pub fn unset(path: impl Into<Path>) -> Self {
        Self::Set { path: path.into(), value: Value::Null }
    }

    /// Changes the plan and returns the change that takes this one back.
    ///
    /// # Errors
    /// When a field or entry is not there or a value is not of its kind; the plan is then unchanged.
    pub fn apply(self, plan: &mut Plan) -> Result<Self, NotPossible> {
        match self {
            Self::Set { path, value } => set(plan, path, value),
            Self::Insert { list, at, entry } => insert(plan, list, at, entry),
            Self::Remove { list, id } => remove(plan, list, id),
            Self::Move { list, id, to } => list.shift(plan, id, to),
            Self::Guess { paths, guessed } => Ok(guess(plan, paths, guessed)),
            Self::All { edits } => all(plan, edits),
        }
    }
}

fn all(plan: &mut Plan, edits: Vec<Edit>) -> Result<Edit, NotPossible> {
    let before = plan.clone();
    let mut inverses = Vec::with_capacity(edits.len());
    for edit in edits {
        match edit.apply(plan) {
            Ok(inverse) => inverses.push(inverse),
            Err(reason) => {
                *plan = before;
                return Err(reason);
            }
        }
    }
    inverses.reverse();
    Ok(Edit::All { edits: inverses })
}

fn set(plan: &mut Plan, path: Path, value: Value) -> Result<Edit, NotPossible> {
    if !field::is_known(&path) {
        return Err(NotPossible::NoSuchField { path });
    }
    let (at, before) = section::replace(plan, &path, value)?;
    let inverse = Edit::Set { path: at.clone(), value: before };
    Ok(with_guesses(plan, inverse, &path, &at))
}

fn remove(plan: &mut Plan, list: List, id: Id) -> Result<Edit, NotPossible> {
    let inverse = list.remove(plan, id)?;
    let path = Path::entry(list.name(), id);
    Ok(with_guesses(plan, inverse, &path, &path))
}

/// Forgets the guesses at and below `path`. The inverse brings them back, with those that it makes forgotten itself:
/// it changes `undone`, which may be the whole part that was made for the field.
fn with_guesses(plan: &mut Plan, inverse: Edit, path: &Path, undone: &Path) -> Edit {
    let paths: Vec<Path> = plan.guesses.iter().filter(|guess| guess.is_within(undone)).cloned().collect();
    if paths.is_empty() {
        return inverse;
    }
    plan.guesses.retain(|guess| !guess.is_within(path));
    Edit::All { edits: vec![inverse, Edit::Guess { paths, guessed: true }] }
}

fn insert(plan: &mut Plan, list: List, at: usize, entry: Value) -> Result<Edit, NotPossible> {
    let id = entry.get("id").and_then(Value::as_u64).and_then(|id| Id::try_from(id).ok()).unwrap_or(0);
    if id == 0 || List::ALL.iter().any(|list| list.ids(plan).contains(&id)) {
        return Err(NotPossible::IdTaken { id });
    }
    list.insert(plan, at, entry)?;
    Ok(Edit::Remove { list, id })
}

fn guess(plan: &mut Plan, paths: Vec<Path>, guessed: bool) -> Edit {
    let changed: Vec<Path> = paths.into_iter().filter(|path| plan.guesses.contains(path) != guessed).collect();
    if guessed {
        plan.guesses.extend(changed.iter().cloned());
    } else {
        plan.guesses.retain(|guess| !changed.contains(guess));
    }
    Edit::Guess { paths: changed, guessed: !guessed }
}

/// The lists of a plan, and what every one of them can do.
mod lists {
    use serde::de::DeserializeOwned;

    use super::{Deserialize, Edit, Id, NotPossible, Path, Plan, Serialize, Value, section};

    /// An entry of a list of the plan.
    pub trait Entry: Serialize + DeserializeOwned {
        /// Its id.
        fn id(&self) -> Id;
    }

    macro_rules! lists {
        ($($variant:ident $field:ident $entry:ty, $doc:literal;)*) => {
            /// A list of the plan.
            #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
            #[serde(rename_all = "snake_case")]
            pub enum List {
                $(#[doc = $doc] $variant,)*
            }

            impl List {
                /// All lists.
                pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

                /// Its name in paths.
                pub const fn name(self) -> &'static str {
                    match self { $(Self::$variant => stringify!($field),)* }
                }

                /// The ids of its entries, in order.
                pub fn ids(self, plan: &Plan) -> Vec<Id> {
                    match self { $(Self::$variant => plan.$field.iter().map(Entry::id).collect(),)* }
                }

                pub(super) fn insert(self, plan: &mut Plan, at: usize, entry: Value) -> Result<(), NotPossible> {
                    match self { $(Self::$variant => put(&mut plan.$field, self, at, entry),)* }
                }

                pub(super) fn remove(self, plan: &mut Plan, id: Id) -> Result<Edit, NotPossible> {
                    match self { $(Self::$variant => take(&mut plan.$field, self, id),)* }
                }

                pub(super) fn shift(self, plan: &mut Plan, id: Id, to: usize) -> Result<Edit, NotPossible> {
                    match self { $(Self::$variant => shift(&mut plan.$field, self, id, to),)* }
                }

                /// One of its entries, as it stands in the file.
                pub fn entry(self, plan: &Plan, id: Id) -> Option<Value> {
                    match self { $(Self::$variant => {
                        let entry = plan.$field.iter().find(|entry| entry.id() == id)?;
                        serde_json::to_value(entry).ok()
                    })* }
                }

                pub(super) fn replace(
                    self, plan: &mut Plan, id: Id, path: &Path, field: &str, value: Value,
                ) -> Result<(Path, Value), NotPossible> {
                    match self { $(Self::$variant => {
                        let entry = plan.$field.iter_mut().find(|entry| entry.id() == id)
                            .ok_or_else(|| NotPossible::NoSuchEntry { path: path.clone() })?;
                        section::replace_in(entry, path, field, value)
                    })* }
                }
            }

            $(impl Entry for $entry { fn id(&self) -> Id { self.id } })*
        };
    }

    lists! {
        Kit kit crate::plan::Item, "The kit.";
        Belongings belongings crate::plan::Belonging, "Things at home to sell.";
        Incomes incomes crate::plan::Income, "Money that comes in.";
        Costs costs crate::plan::Cost, "Monthly costs.";
        Stays stays crate::plan::Stay, "The route as stays.";
        Week week crate::plan::WeekDay, "The route as a repeating week.";
        WaterUses water_uses crate::plan::WaterUse, "Uses of water.";
        Readings readings crate::plan::Reading, "What was counted.";
    }

    impl List {
        /// The list of that name.
        pub fn named(name: &str) -> Option<Self> {
            Self::ALL.iter().copied().find(|list| list.name() == name)
        }
    }

    fn put<T: Entry>(entries: &mut Vec<T>, list: List, at: usize, entry: Value) -> Result<(), NotPossible> {
        let path = Path::section(list.name());
        let entry = serde_json::from_value(entry).map_err(|_| NotPossible::WrongValue { path })?;
        entries.insert(at.min(entries.len()), entry);
        Ok(())
    }

    fn take<T: Entry>(entries: &mut Vec<T>, list: List, id: Id) -> Result<Edit, NotPossible> {
        let at = position(entries, list, id)?;
        let entry = serde_json::to_value(entries.remove(at)).unwrap_or(Value::Null);
        Ok(Edit::Insert { list, at, entry })
    }

    fn shift<T: Entry>(entries: &mut Vec<T>, list: List, id: Id, to: usize) -> Result<Edit, NotPossible> {
        let from = position(entries, list, id)?;
        let entry = entries.remove(from);
        entries.insert(to.min(entries.len()), entry);
        Ok(Edit::Move { list, id, to: from })
    }

    fn position<T: Entry>(entries: &[T], list: List, id: Id) -> Result<usize, NotPossible> {
        entries
            .iter()
            .position(|entry| entry.id() == id)
            .ok_or_else(|| NotPossible::NoSuchEntry { path: Path::entry(list.name(), id) })
    }
}

pub use lists::List;

/// Setting one field of a section or entry, by its name in the file.
mod section {
    use serde::Serialize;
    use serde::de::DeserializeOwned;
    use serde_json::{Map, Value};

    use super::{List, NotPossible, Path, Plan};

    /// Sets the field at `path` and returns what stood there, and where: a part such as `draw` that had to be made
    /// for the field is itself what the inverse takes away again.
    pub fn replace(plan: &mut Plan, path: &Path, value: Value) -> Result<(Path, Value), NotPossible> {
        let (first, rest) = path.split_first();
        match first {
            "calendar" => replace_in(&mut plan.calendar, path, rest, value),
            "vehicle" => replace_in(&mut plan.vehicle, path, rest, value),
            "purse" => replace_in(&mut plan.purse, path, rest, value),
            "title" => replace_in_value(&mut plan.title, Plan::default().title, path, value),
            "currency" => replace_in_value(&mut plan.currency, Plan::default().currency, path, value),
            "people" => replace_in_value(&mut plan.people, Plan::default().people, path, value),
            _ => {
                let list = List::named(first).ok_or_else(|| NotPossible::NoSuchField { path: path.clone() })?;
                let (id, field) = rest.split_once('/').unwrap_or((rest, ""));
                let id = id.parse().map_err(|_| NotPossible::NoSuchEntry { path: path.clone() })?;
                list.replace(plan, id, path, field, value)
            }
        }
    }

    fn replace_in_value<T: Serialize + DeserializeOwned>(
        target: &mut T,
        unset: T,
        path: &Path,
        value: Value,
    ) -> Result<(Path, Value), NotPossible> {
        let before = serde_json::to_value(&*target).unwrap_or(Value::Null);
        let wrong = |_| NotPossible::WrongValue { path: path.clone() };
        *target = if value.is_null() { unset } else { serde_json::from_value(value).map_err(wrong)? };
        Ok((path.clone(), before))
    }

    /// Sets `field` (nested names by `/`) of one entry, through its form in the file.
    pub fn replace_in<T: Serialize + DeserializeOwned>(
        entry: &mut T,
        path: &Path,
        field: &str,
        value: Value,
    ) -> Result<(Path, Value), NotPossible> {
        let no_field = || NotPossible::NoSuchField { path: path.clone() };
        let mut whole = serde_json::to_value(&*entry).map_err(|_| no_field())?;
        let before = put(whole.as_object_mut().ok_or_else(no_field)?, field, value).ok_or_else(no_field)?;
        *entry = serde_json::from_value(whole).map_err(|_| NotPossible::WrongValue { path: path.clone() })?;
        let base = &path.as_str()[..path.as_str().len() - field.len()];
        Ok((Path::from(base.trim_end_matches('/')).child(&before.0), before.1))
    }

    /// Sets a nested field and returns the name and the value of what stood there: of the field, or of the first
    /// part on the way to it that was not there. `None` when the name is empty or is the identity.
    fn put(object: &mut Map<String, Value>, field: &str, value: Value) -> Option<(String, Value)> {
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
}
