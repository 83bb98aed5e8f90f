//! What there is to say about the days.

use jiff::civil::Date;
use serde::Serialize;

use crate::assessment::{Moment, Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, List, Plan, Quantity};

/// Something wrong, close or worth knowing about the work until the day of leaving.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// Not all is done on the day of leaving.
    NotReady {
        /// When it would be.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        finish: Date,
        /// Days that are missing.
        days: f64,
        /// The task that ends last.
        last: String,
    },
    /// All is done, but with little to spare.
    CloseToLeaving {
        /// When it is.
        finish: Moment,
        /// Days to spare.
        days: f64,
        /// The task that ends last.
        last: String,
    },
    /// A task cannot be done.
    Blocked {
        /// The task.
        task: Id,
        /// What it is called.
        name: String,
        /// Why.
        block: Block,
        /// What that is about is called.
        what: String,
        /// Whether it could wait until the road.
        can_wait: bool,
    },
    /// What a task needs is to be paid on the day on which the money falls short.
    MoneyNotThere {
        /// The task.
        task: Id,
        /// What it is called.
        name: String,
        /// What is to be paid.
        item: String,
        /// The day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
    },
    /// The date hangs on something that is still to come.
    ItemAwaited {
        /// The task that waits for it.
        task: Id,
        /// What the task is called.
        name: String,
        /// What is to come.
        item: String,
        /// The day on which the task begins.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
    },
    /// Things at home for which nobody decided where they end.
    NoEnd {
        /// How many.
        count: usize,
        /// Days until the flat is left.
        days: i32,
    },
}

/// Why a task cannot be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Block {
    /// Nobody has the tool or the place.
    NobodyHas {
        /// The tool or place.
        tool: Id,
    },
    /// The tool or place is not there on any of the days ahead.
    ToolGone {
        /// The tool or place.
        tool: Id,
    },
    /// It needs something of the kit that is left out, or was not bought after all.
    ItemLeftOut {
        /// The item.
        item: Id,
    },
    /// There are never so many hands at once.
    TooFewHands {
        /// How many it needs.
        hands: u16,
    },
    /// Nobody who has done it before is there.
    NobodySkilled,
    /// What it needs is there, but never at the same time.
    NeverTogether,
    /// It does not end within the days that are planned for.
    TooLong,
    /// It waits for itself by way of others.
    Circle,
    /// It comes after a task that cannot be done.
    Behind {
        /// That task.
        task: Id,
    },
}

impl Block {
    /// The sentence's name in the catalogue; `$what` in it is what [`Block::names`] gives.
    pub const fn key(self) -> &'static str {
        match self {
            Self::NobodyHas { .. } => "days-block-nobody-has",
            Self::ToolGone { .. } => "days-block-tool-gone",
            Self::ItemLeftOut { .. } => "days-block-item-left-out",
            Self::TooFewHands { .. } => "days-block-too-few-hands",
            Self::NobodySkilled => "days-block-nobody-skilled",
            Self::NeverTogether => "days-block-never-together",
            Self::TooLong => "days-block-too-long",
            Self::Circle => "days-block-circle",
            Self::Behind { .. } => "days-block-behind",
        }
    }

    /// What it is about is called: the tool, the item, the task, or how many hands.
    pub fn names(self, plan: &Plan) -> String {
        match self {
            Self::NobodyHas { tool: id }
            | Self::ToolGone { tool: id }
            | Self::ItemLeftOut { item: id }
            | Self::Behind { task: id } => plan.name_of(id),
            _ => None,
        }
        .unwrap_or_default()
        .to_owned()
    }
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::NotReady { .. } => "days-not-ready",
            Self::CloseToLeaving { .. } => "days-close-to-leaving",
            Self::Blocked { block, .. } => block.key(),
            Self::MoneyNotThere { .. } => "days-money-not-there",
            Self::ItemAwaited { .. } => "days-item-awaited",
            Self::NoEnd { .. } => "days-no-end",
        }
    }

    fn figures(&self) -> Figures {
        let days = |value: f64| Figure::of(value, Quantity::Days);
        let name = |text: &str| Figure::Name(text.to_owned());
        match self {
            Self::NotReady { finish, days: missing, last } => {
                vec![("finish", Figure::Date(*finish)), ("days", days(*missing)), ("last", name(last))]
            }
            Self::CloseToLeaving { finish, days: spare, last } => {
                vec![("finish", Figure::Moment(*finish)), ("days", days(*spare)), ("last", name(last))]
            }
            Self::Blocked { name: task, what, .. } => vec![("name", name(task)), ("what", name(what))],
            Self::MoneyNotThere { name: task, item, on, .. } | Self::ItemAwaited { name: task, item, on, .. } => {
                vec![("name", name(task)), ("item", name(item)), ("on", Figure::Date(*on))]
            }
            Self::NoEnd { count, days: left } => {
                vec![("count", Figure::count(*count)), ("days", days(f64::from(*left)))]
            }
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::NotReady { .. } => "next-days-not-ready",
            Self::CloseToLeaving { .. } => "next-days-close-to-leaving",
            Self::Blocked { .. } => "next-days-blocked",
            Self::MoneyNotThere { .. } => "next-days-money-not-there",
            Self::ItemAwaited { .. } => "next-days-item-awaited",
            Self::NoEnd { .. } => "next-days-no-end",
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::Blocked { can_wait: true, .. } | Self::Blocked { block: Block::Behind { .. }, .. } => Severity::Note,
            Self::NotReady { .. } | Self::Blocked { .. } | Self::MoneyNotThere { .. } => Severity::Short,
            Self::CloseToLeaving { .. } => Severity::Close,
            Self::NoEnd { days, .. } if *days < super::constants::CLEARING_DAYS => Severity::Close,
            Self::ItemAwaited { .. } | Self::NoEnd { .. } => Severity::Note,
        }
    }

    fn list(&self) -> List {
        List::Tasks
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::Blocked { task, .. } | Self::MoneyNotThere { task, .. } | Self::ItemAwaited { task, .. } => {
                Some(*task)
            }
            _ => None,
        }
    }
}
