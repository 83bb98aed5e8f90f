//! Every change to a plan is a value with an inverse.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{Id, Path, Plan, field};

mod lists;
mod plain;
mod renamed;
mod section;

pub use lists::List;
pub(crate) use renamed::rename_entry;
#[cfg(test)]
pub(super) use section::put;

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

    /// Several changes as one.
    pub fn all(edits: impl IntoIterator<Item = Self>) -> Self {
        Self::All { edits: edits.into_iter().collect() }
    }

    /// Changes the plan and returns the change that takes this one back.
    ///
    /// # Errors
    /// When a field or entry is not there or a value is not of its kind; the plan is then unchanged.
    pub fn apply(self, plan: &mut Plan) -> Result<Self, NotPossible> {
        match self {
            Self::Set { path, value } => set(plan, path, value),
            Self::Insert { list, at, entry } => insert(plan, list, at, &entry),
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

fn insert(plan: &mut Plan, list: List, at: usize, entry: &Value) -> Result<Edit, NotPossible> {
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
