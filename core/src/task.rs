//! Questions that take longer than a key should: worked out in short steps, so that whoever asks can show how far it is,
//! and stop when nobody wants to know any more.
//!
//! A question and its answer are plain values, so that they can be sent to where there is time for them.
//!
//! ```
//! use jiff::civil::date;
//! use kerbstead_core::plan::{Plain, demo_plan};
//! use kerbstead_core::task::{Question, Subject};
//! let (plan, as_of) = (demo_plan(), date(2027, 3, 10));
//! let question = Question { subject: Subject::Chances, plan, as_of, seed: 1, ..Question::default() };
//! let mut task = Question::from_plain(&question.to_plain()).unwrap().begin();
//! while task.step() < 1.0 {}
//! assert_eq!(task.answer()["paths"], 10_000);
//! ```

use jiff::civil::Date;
use serde_json::Value;

use crate::chances::WholeTask;
use crate::compare::CompareTask;
use crate::days::OutlookTask;
use crate::materials::CutsTask;
use crate::money::ProspectTask;
use crate::money::buying::BuyingTask;
use crate::moves::MovesTask;
use crate::plan::Plan;
use crate::plan::record::{record, words};
use crate::power;
use crate::space::ArrangeTask;
use crate::water;

/// The share of a tree that is done, looked at depth first, if both children of a node take as long: by how many children are
/// still to be looked at, from the root on down.
pub(crate) fn share_of_tree(children: impl Iterator<Item = usize>) -> f64 {
    let (mut part, mut left) = (1.0, 0.0);
    for count in children {
        part /= 2.0;
        left += part * count as f64;
    }
    1.0 - left
}

/// What is asked of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Question {
    /// What it is about.
    pub subject: Subject,
    /// The plan.
    pub plan: Plan,
    /// Others that it is held against, where it is.
    pub others: Vec<Plan>,
    /// The day on which it is asked.
    pub as_of: Date,
    /// What numbers by chance begin with: the same seed gives the same answer.
    pub seed: u32,
}

record!(Question { subject, plan, others, as_of, seed } unless empty { others });

/// What a question is about.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Subject {
    /// The chance that the money holds, and the reserve: a [`crate::money::Prospect`].
    #[default]
    Chances,
    /// What to buy when: a [`crate::money::buying::BuyingPlan`].
    Buying,
    /// When all is done, how likely, and what would save days: a [`crate::days::Outlook`].
    Days,
    /// How all could stand in the van: a [`crate::space::Arranged`].
    Arranging,
    /// How likely the water lasts, and the fewest stops: a [`crate::water::Outlook`].
    Water,
    /// How likely the stores last, sizes, stops, tonight: a [`crate::power::Outlook`].
    Power,
    /// What to change so that the plan holds: [`crate::moves::Moves`].
    Moves,
    /// The plan and the others side by side: [`crate::compare::Compared`].
    Compare,
    /// How boards and sheets are cut: a [`crate::materials::Cuts`].
    Materials,
    /// How likely all balances hold together, and what that hangs on: a [`crate::chances::Whole`].
    Whole,
}

words!(Subject {
    Chances = "chances", Buying = "buying", Days = "days", Arranging = "arranging", Water = "water", Power = "power", Moves = "moves",
    Compare = "compare", Materials = "materials", Whole = "whole",
});

/// An answer that is being worked out.
pub trait Task {
    /// Goes on for a few milliseconds at most, and gives the share that is done: 1 when all is.
    fn step(&mut self) -> f64;

    /// What can be shown already and was not told yet; nothing where an answer is of no use before its end.
    fn so_far(&mut self) -> Option<Value> {
        None
    }

    /// What came of it, once all is done.
    fn answer(&self) -> Value;
}

impl Question {
    /// Begins to work it out.
    pub fn begin(&self) -> Box<dyn Task> {
        match self.subject {
            Subject::Chances => Box::new(ProspectTask::new(&self.plan, self.as_of, self.seed)),
            Subject::Buying => Box::new(BuyingTask::new(&self.plan, self.as_of)),
            Subject::Power => Box::new(power::OutlookTask::new(&self.plan, self.as_of, self.seed)),
            Subject::Water => Box::new(water::OutlookTask::new(&self.plan, self.as_of, self.seed)),
            Subject::Compare => {
                let plans: Vec<Plan> = std::iter::once(&self.plan).chain(&self.others).cloned().collect();
                Box::new(CompareTask::new(&plans, self.as_of))
            }
            Subject::Moves => Box::new(MovesTask::new(&self.plan, self.as_of)),
            Subject::Whole => Box::new(WholeTask::new(&self.plan, self.as_of, self.seed)),
            Subject::Materials => Box::new(CutsTask::new(&self.plan)),
            Subject::Arranging => Box::new(ArrangeTask::new(&self.plan)),
            Subject::Days => Box::new(OutlookTask::new(&self.plan, self.as_of, self.seed)),
        }
    }
}
