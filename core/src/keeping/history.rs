//! What can be taken back and made again.

use serde_json::Value;

use super::{Renaming, part};
use crate::plan::record::object;
use crate::plan::{Edit, NotPossible, Plain, Plan};

/// The most steps that can be taken back.
const MOST_STEPS: usize = 200;

/// How much of the steps is kept beside the plan, in characters or so: the newest that fit.
const MOST_KEPT: usize = 60_000;

/// The changes of a plan that can be taken back, and those taken back that can be made again.
///
/// ```
/// use kerbstead_core::keeping::History;
/// use kerbstead_core::plan::{Edit, Plan};
/// let (mut plan, mut history) = (Plan::default(), History::default());
/// history.change(&mut plan, Edit::set("title", "North"), false).unwrap();
/// assert!(history.undo(&mut plan) && plan.title.is_empty());
/// assert!(history.redo(&mut plan) && plan.title == "North");
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    /// How to take the last changes back, the newest last.
    undo: Vec<Edit>,
    /// How to make them again.
    redo: Vec<Edit>,
}

impl History {
    /// Changes the plan. When the change goes on with the one before, as the next letter of a word does, both are one
    /// step.
    ///
    /// # Errors
    /// When the change is not possible; then nothing is changed.
    pub fn change(&mut self, plan: &mut Plan, edit: Edit, goes_on: bool) -> Result<(), NotPossible> {
        let inverse = edit.apply(plan)?;
        if !goes_on || self.undo.is_empty() {
            self.done(inverse);
        }
        self.redo.clear();
        Ok(())
    }

    /// Notes a change that was made, by what takes it back.
    pub fn done(&mut self, inverse: Edit) {
        self.redo.clear();
        self.undo.push(inverse);
        if self.undo.len() > MOST_STEPS {
            self.undo.remove(0);
        }
    }

    /// Takes the last change back. Steps that are not possible any more, since somebody else changed the plan too, are
    /// passed over. False when there is none left.
    pub fn undo(&mut self, plan: &mut Plan) -> bool {
        shift(&mut self.undo, &mut self.redo, plan)
    }

    /// Makes the last change that was taken back again. False when there is none.
    pub fn redo(&mut self, plan: &mut Plan) -> bool {
        shift(&mut self.redo, &mut self.undo, plan)
    }

    /// Whether there is something to take back.
    pub fn can_undo(&self) -> bool {
        !self.undo.is_empty()
    }

    /// Whether there is something to make again.
    pub fn can_redo(&self) -> bool {
        !self.redo.is_empty()
    }

    /// The same history when some entries have been given other ids.
    #[must_use]
    pub fn renamed(self, renamings: &[Renaming]) -> Self {
        let rename = |edits: Vec<Edit>| -> Vec<Edit> {
            let rename_all = |edit| {
                renamings
                    .iter()
                    .fold(edit, |edit: Edit, renaming| edit.renamed(renaming.list, renaming.from, renaming.to))
            };
            edits.into_iter().map(rename_all).collect()
        };
        Self { undo: rename(self.undo), redo: rename(self.redo) }
    }
}

fn shift(from: &mut Vec<Edit>, to: &mut Vec<Edit>, plan: &mut Plan) -> bool {
    while let Some(edit) = from.pop() {
        if let Ok(inverse) = edit.apply(plan) {
            to.push(inverse);
            return true;
        }
    }
    false
}

impl Plain for History {
    fn to_plain(&self) -> Value {
        let mut left = MOST_KEPT;
        let mut newest = |edits: &[Edit]| {
            let mut kept: Vec<Value> = Vec::new();
            for edit in edits.iter().rev() {
                let edit = edit.to_plain();
                let Some(rest) = left.checked_sub(weight(&edit)) else { break };
                left = rest;
                kept.push(edit);
            }
            kept.reverse();
            Value::Array(kept)
        };
        object(vec![("undo", newest(&self.undo)), ("redo", newest(&self.redo))])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self { undo: part(value, "undo"), redo: part(value, "redo") };
        value.is_object()
    }
}

/// How long a value is as text, or so.
fn weight(value: &Value) -> usize {
    match value {
        Value::String(text) => text.len() + 3,
        Value::Array(entries) => entries.iter().map(weight).sum::<usize>() + 2,
        Value::Object(fields) => fields.iter().map(|(name, value)| name.len() + weight(value) + 4).sum::<usize>() + 2,
        _ => 6,
    }
}
