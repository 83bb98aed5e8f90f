//! What concerns one who helps: what is still to be done, with what, by when, and their own hours. Nothing of the money,
//! of the hours of others, or of what they do not work on.

use serde_json::Value;

use crate::plan::Id;

/// Every field that is told, by its section.
const TOLD: &[(&str, &[&str])] = &[
    ("", &["title"]),
    ("calendar", &["starts_on", "leaves_on"]),
    ("building", &["arrives_on"]),
    ("kit", &["name"]),
    (
        "tasks",
        &[
            "name",
            "hours",
            "hands",
            "in_one_go",
            "without_van",
            "daylight",
            "dry",
            "wait_hours",
            "wait",
            "not_before",
            "can_wait",
            "note",
        ],
    ),
    ("task_needs", &["task", "after", "tool", "thing"]),
    ("tools", &["name", "tool_kind", "tool_source", "lender", "there_from", "there_until", "on_days"]),
    (
        "helpers",
        &[
            "name",
            "is_skilled",
            "workday_from_hour",
            "weekend_from_hour",
            "workday_hours",
            "saturday_hours",
            "sunday_hours",
            "comes_from",
            "comes_until",
        ],
    ),
    ("other_days", &["helper", "first_day", "last_day", "from_hour", "hours_then"]),
];

/// The fields of a section that are told; none of a section that is not.
pub(super) fn fields_told(section: &str) -> &'static [&'static str] {
    TOLD.iter().find(|(name, _)| *name == section).map_or(&[], |(_, fields)| fields)
}

/// Which entries of a plan's file concern one who helps.
pub(super) struct Concerns {
    helper: Option<u64>,
    tasks: Vec<u64>,
    tools: Vec<u64>,
    things: Vec<u64>,
}

impl Concerns {
    pub(super) fn of(file: &Value, helper: Option<Id>) -> Self {
        let entries = |list: &str| file.get(list).and_then(Value::as_array).into_iter().flatten();
        let tasks: Vec<u64> = entries("tasks").filter(|task| is_open(task)).filter_map(|task| id(task, "id")).collect();
        let needed = |what: &str| {
            let of_open =
                entries("task_needs").filter(|need| id(need, "task").is_some_and(|task| tasks.contains(&task)));
            of_open.filter_map(|need| id(need, what)).collect()
        };
        Self { helper: helper.map(u64::from), tools: needed("tool"), things: needed("thing"), tasks }
    }

    /// Whether an entry of a list is told: of days that are not as others, also those of everybody.
    pub(super) fn tells(&self, list: &str, entry: &Value) -> bool {
        let names = |ids: &[u64], field: &str| id(entry, field).is_some_and(|id| ids.contains(&id));
        match list {
            "tasks" => names(&self.tasks, "id"),
            "task_needs" => {
                names(&self.tasks, "task") && ["after", "tool", "thing"].iter().any(|what| id(entry, what).is_some())
            }
            "tools" => names(&self.tools, "id"),
            "kit" => names(&self.things, "id"),
            "helpers" => self.helper.is_some() && id(entry, "id") == self.helper,
            "other_days" => id(entry, "helper").is_none_or(|helper| Some(helper) == self.helper),
            _ => false,
        }
    }
}

fn id(entry: &Value, field: &str) -> Option<u64> {
    entry.get(field)?.as_u64()
}

fn is_open(task: &Value) -> bool {
    let is_left_out = task.get("left_out").and_then(Value::as_bool).unwrap_or(false);
    !is_left_out && task.get("done_on").is_none_or(Value::is_null)
}
