//! The work until the day of leaving: tasks, what each needs, who helps when, and with which tools.
//!
//! What a task needs stands in a list of its own that names the task, as the lines of a receipt name the receipt: so each
//! need has a path like any other entry, and is merged, compared and taken back like one.

use jiff::civil::Date;

use super::record::{record, words};
use super::{Estimate, Id, Money};

/// A piece of work.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
#[allow(clippy::struct_excessive_bools)] // a task has these or not, each by itself
pub struct Task {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// Hours of work while all the hands it needs are there. A task without hours takes no time and is still to be done.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub hours: Option<Estimate<f64>>,
    /// Who it takes.
    pub hands: Hands,
    /// Whether it is done in one go: begun only when it can be finished without a pause.
    pub in_one_go: bool,
    /// Whether it can be done before the van is there.
    pub without_van: bool,
    /// Whether it needs daylight.
    pub daylight: bool,
    /// Whether it needs a dry day.
    pub dry: bool,
    /// Hours after the work in which nobody is needed and nothing that follows can begin.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub wait_hours: Option<Estimate<f64>>,
    /// What is waited for.
    pub wait: Wait,
    /// It does not begin before that day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub not_before: Option<Date>,
    /// Hours that were spent on it so far.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub spent_hours: Option<f64>,
    /// The day it was finished.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub done_on: Option<Date>,
    /// Whether the plan goes without it. It stays on the list.
    pub left_out: bool,
    /// Whether it can be done later, on the road.
    pub can_wait: bool,
    /// The item of the kit it is done for.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub for_item: Option<Id>,
    /// Anything else worth remembering.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "String::is_empty"))]
    pub note: String,
}

record!(Task {
    id, name, hours, hands, in_one_go, without_van, daylight, dry, wait_hours, wait, not_before, spent_hours, done_on, left_out,
    can_wait, for_item, note,
} unless empty { note });

/// Who a task takes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Hands {
    /// One person.
    #[default]
    One,
    /// Two.
    Two,
    /// Two, one of whom has done it before.
    Skilled,
}

words!(Hands { One = "one", Two = "two", Skilled = "skilled" });

/// What is waited for after a task.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum Wait {
    #[default]
    Curing,
    Drying,
    Delivery,
    Other,
}

words!(Wait { Curing = "curing", Drying = "drying", Delivery = "delivery", Other = "other" });

/// Something a task needs: another task to be done before, a tool or a place, a thing of the kit, a thing at home. An
/// entry that names several needs all of them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct TaskNeed {
    /// Unique in the plan.
    pub id: Id,
    /// The task. A need whose task is not there counts nowhere.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub task: Option<Id>,
    /// The task that must be done before, with its wait.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub after: Option<Id>,
    /// The tool or place that it needs while it is worked on.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub tool: Option<Id>,
    /// The item of the kit that must be there when it begins.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub thing: Option<Id>,
    /// The thing at home that it uses, so that it cannot be sold before.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub at_home: Option<Id>,
}

record!(TaskNeed { id, task, after, tool, thing, at_home });

/// A tool, of which there is one, or a place to work at, where any number of tasks can be done.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Tool {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// A tool, or a place.
    pub tool_kind: ToolKind,
    /// How it is there.
    pub tool_source: ToolSource,
    /// Who lends or hires it out.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "String::is_empty"))]
    pub lender: String,
    /// The first day it is there; without it, from the first day on.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub there_from: Option<Date>,
    /// The last day it is there; without it, to the end.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub there_until: Option<Date>,
    /// On which days of the week.
    pub on_days: ToolDays,
    /// What a day on which it is used costs, when it is hired.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub price_per_day: Option<Money>,
}

record!(Tool { id, name, tool_kind, tool_source, lender, there_from, there_until, on_days, price_per_day } unless empty { lender });

/// A tool, or a place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum ToolKind {
    /// One task at a time can have it.
    #[default]
    Tool,
    /// A garage, a yard with mains: every task there can have it at once.
    Place,
}

words!(ToolKind { Tool = "tool", Place = "place" });

/// How a tool is there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum ToolSource {
    #[default]
    Owned,
    Borrowed,
    Hired,
    /// Nobody has it yet.
    Missing,
}

words!(ToolSource { Owned = "owned", Borrowed = "borrowed", Hired = "hired", Missing = "missing" });

/// The days of the week on which a tool is there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum ToolDays {
    /// All.
    #[default]
    Every,
    /// Monday to Friday.
    Workdays,
    /// Saturday and Sunday.
    Weekends,
}

words!(ToolDays { Every = "every", Workdays = "workdays", Weekends = "weekends" });

/// Somebody who works on the van: the person themself, or who helps.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Helper {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls them.
    pub name: String,
    /// Whether they have done such work before.
    pub is_skilled: bool,
    /// The hour at which they begin from Monday to Friday; without it,
    /// [`BEGINS_HOUR`](crate::days::constants::BEGINS_HOUR).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub workday_from_hour: Option<f64>,
    /// The hour at which they begin on Saturdays and Sundays; without it,
    /// [`BEGINS_HOUR`](crate::days::constants::BEGINS_HOUR).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub weekend_from_hour: Option<f64>,
    /// Hours on a day from Monday to Friday; without it, none.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub workday_hours: Option<f64>,
    /// Hours on a Saturday; without it, none.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub saturday_hours: Option<f64>,
    /// Hours on a Sunday; without it, none.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub sunday_hours: Option<f64>,
    /// The first day they can; without it, from the first day on.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub comes_from: Option<Date>,
    /// The last day they can; without it, to the end.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub comes_until: Option<Date>,
}

record!(Helper {
    id,
    name,
    is_skilled,
    workday_from_hour,
    weekend_from_hour,
    workday_hours,
    saturday_hours,
    sunday_hours,
    comes_from,
    comes_until,
});

/// Days on which it is not as on others: days off, or an evening that somebody promised.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct OtherDay {
    /// Unique in the plan.
    pub id: Id,
    /// Whose; without it, everybody's.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub helper: Option<Id>,
    /// The first of them.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub first_day: Option<Date>,
    /// The last; without it, the first is the only one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub last_day: Option<Date>,
    /// The hour of the day they begin then; without it, as always.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub from_hour: Option<f64>,
    /// Hours on each of these days; without it, none: a day off.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub hours_then: Option<f64>,
}

record!(OtherDay { id, helper, first_day, last_day, from_hour, hours_then });

/// When and under what sky the van is built.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Building {
    /// The first day on which the van is there to be worked on; without it, the day it is paid, or the first day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub arrives_on: Option<Date>,
    /// The hour from which it is light; without it, [`LIGHT_FROM_HOUR`](crate::days::constants::LIGHT_FROM_HOUR).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub light_from_hour: Option<f64>,
    /// The hour until which it is light; without it, [`LIGHT_UNTIL_HOUR`](crate::days::constants::LIGHT_UNTIL_HOUR).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub light_until_hour: Option<f64>,
    /// The chance that a day is dry, in percent; without it, [`DRY_PERCENT`](crate::days::constants::DRY_PERCENT).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub dry_percent: Option<f64>,
    /// What each day longer at home costs; without it, the costs at home spread over the month.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub day_longer: Option<Money>,
    /// How much longer an hour of work takes on the road, in percent of the hours at home; without it,
    /// [`ROAD_EXTRA_PERCENT`](crate::days::constants::ROAD_EXTRA_PERCENT).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub road_extra_percent: Option<f64>,
    /// What a day of such work costs on the road: a pitch with a socket, a bench at a workshop.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub road_day: Option<Money>,
}

record!(Building {
    arrives_on,
    light_from_hour,
    light_until_hour,
    dry_percent,
    day_longer,
    road_extra_percent,
    road_day
});
