//! The journal: what was done to a plan since it was last kept whole. A step is small, so it can be kept in the very
//! event that brings it, and nothing is lost when the page ends before the plan is kept.

use serde_json::Value;

use super::{Drafts, History, Kept, part};
use crate::plan::record::object;
use crate::plan::{Document, Edit, Path, Plain, Plan};

/// One thing that was done to a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Step {
    /// A change.
    Edit {
        /// The change.
        edit: Edit,
        /// Whether it is one step with the change before.
        goes_on: bool,
    },
    /// A text that its field cannot take yet.
    Draft {
        /// The field.
        path: Path,
        /// The text; none when there is no such text any more.
        text: Option<String>,
    },
    /// The last change was taken back.
    #[default]
    Undo,
    /// It was made again.
    Redo,
}

/// What was done to a plan since it was last kept whole.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Journal {
    /// The steps, in order.
    pub steps: Vec<Step>,
    /// How often a page has begun to do them again: if that breaks it, it must not break every page to come.
    pub tries: u32,
}

/// A plan as it is worked on.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The plan.
    pub plan: Plan,
    /// What is half typed.
    pub drafts: Drafts,
    /// What can be taken back.
    pub history: History,
}

impl Step {
    /// Does it. False when it is not possible, and nothing is changed.
    pub fn take(self, sheet: &mut Sheet) -> bool {
        match self {
            Self::Edit { edit, goes_on } => sheet.history.change(&mut sheet.plan, edit, goes_on).is_ok(),
            Self::Draft { path, text: Some(text) } => {
                sheet.drafts.insert(path, text);
                true
            }
            Self::Draft { path, text: None } => {
                sheet.drafts.remove(&path);
                true
            }
            Self::Undo => sheet.history.undo(&mut sheet.plan),
            Self::Redo => sheet.history.redo(&mut sheet.plan),
        }
    }
}

/// The plan that was kept, with what was done since.
///
/// ```
/// use kerbstead_core::keeping::{Kept, Step, replayed};
/// use kerbstead_core::plan::{Edit, Plan};
/// let kept = Kept::of(&Plan::default());
/// let steps = vec![Step::Edit { edit: Edit::set("title", "North"), goes_on: false }];
/// assert_eq!(replayed(kept, steps).document["title"], "North");
/// ```
pub fn replayed(kept: Kept, steps: Vec<Step>) -> Kept {
    let Ok(opened) = Document::from_value(kept.document.clone()) else { return kept };
    let mut sheet = Sheet { plan: opened.plan, drafts: kept.drafts, history: kept.history };
    for step in steps {
        step.take(&mut sheet);
    }
    let document = opened.document.write(&sheet.plan);
    Kept { document, drafts: sheet.drafts, history: sheet.history, ..kept }
}

impl Plain for Journal {
    fn to_plain(&self) -> Value {
        object(vec![("steps", self.steps.to_plain()), ("tries", self.tries.to_plain())])
    }

    fn read(&mut self, value: &Value) -> bool {
        self.tries = part(value, "tries");
        value.get("steps").is_some_and(|steps| self.steps.read(steps))
    }
}

impl Plain for Step {
    fn to_plain(&self) -> Value {
        match self {
            Self::Edit { edit, goes_on } => object(vec![("edit", edit.to_plain()), ("goes_on", goes_on.to_plain())]),
            Self::Draft { path, text } => object(vec![("draft", path.to_plain()), ("text", text.to_plain())]),
            Self::Undo => "undo".into(),
            Self::Redo => "redo".into(),
        }
    }

    fn read(&mut self, value: &Value) -> bool {
        let read = match value.as_str() {
            Some("undo") => Some(Self::Undo),
            Some("redo") => Some(Self::Redo),
            Some(_) => None,
            None => read_object(value),
        };
        read.map(|read| *self = read).is_some()
    }
}

fn read_object(value: &Value) -> Option<Step> {
    if let Some(path) = value.get("draft") {
        return Some(Step::Draft { path: Path::from_plain(path)?, text: part(value, "text") });
    }
    Some(Step::Edit { edit: Edit::from_plain(value.get("edit")?)?, goes_on: part(value, "goes_on") })
}
