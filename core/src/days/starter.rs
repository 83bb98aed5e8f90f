//! Tasks of a simple build without fixed wiring, and those that a thing of the kit implies.
//!
//! Hours are common practice, no source: a range wide enough for somebody who does it for the first time. The person
//! corrects them. Names are sentences of the catalogue, `task-KEY` and `tool-KEY`.

use crate::plan::{
    Edit, Estimate, Group, Hands, Id, Item, List, Obtain, Plain, Plan, Task, TaskNeed, Tool, ToolSource, Wait,
};

/// A usual task.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TaskStarter {
    /// Its name in the catalogue, after `task-`.
    pub key: &'static str,
    /// Hours: low, likely, high.
    pub hours: [f64; 3],
    /// Who it takes.
    pub hands: Hands,
    /// Whether it needs daylight, and a dry day.
    pub outdoors: (bool, bool),
    /// Hours of curing or drying after it.
    pub wait: Option<(Wait, f64)>,
    /// Whether it can be done before the van is there.
    pub without_van: bool,
    /// Whether it can be done later, on the road.
    pub can_wait: bool,
    /// The tasks before it, by their keys.
    pub after: &'static [&'static str],
    /// The tools it needs, by their keys.
    pub tools: &'static [&'static str],
}

const ONE: TaskStarter = TaskStarter {
    key: "",
    hours: [0.0; 3],
    hands: Hands::One,
    outdoors: (false, false),
    wait: None,
    without_van: false,
    can_wait: false,
    after: &[],
    tools: &[],
};

/// The tasks of a simple build, in the order in which they are usually done.
pub const TASK_STARTERS: &[TaskStarter] = &[
    TaskStarter { key: "clean", hours: [1.5, 3.0, 5.0], ..ONE },
    TaskStarter { key: "measure", hours: [1.0, 1.5, 3.0], after: &["clean"], tools: &["tape"], ..ONE },
    TaskStarter {
        key: "seal",
        hours: [1.0, 2.0, 5.0],
        outdoors: (true, true),
        wait: Some((Wait::Curing, 24.0)),
        after: &["clean"],
        ..ONE
    },
    TaskStarter {
        key: "floor",
        hours: [2.0, 4.0, 7.0],
        hands: Hands::Two,
        after: &["measure", "seal"],
        tools: &["saw"],
        ..ONE
    },
    TaskStarter {
        key: "bed-cut",
        hours: [2.0, 4.0, 8.0],
        outdoors: (true, false),
        after: &["measure"],
        tools: &["saw", "drill"],
        ..ONE
    },
    TaskStarter {
        key: "bed-fit",
        hours: [1.0, 2.0, 4.0],
        hands: Hands::Two,
        after: &["bed-cut", "floor"],
        tools: &["drill"],
        ..ONE
    },
    TaskStarter {
        key: "shelves",
        hours: [2.0, 4.0, 8.0],
        can_wait: true,
        after: &["floor"],
        tools: &["saw", "drill"],
        ..ONE
    },
    TaskStarter { key: "covers", hours: [2.0, 4.0, 7.0], after: &["measure"], ..ONE },
    TaskStarter { key: "store", hours: [0.5, 1.0, 2.0], without_van: true, ..ONE },
    TaskStarter {
        key: "fasten",
        hours: [1.0, 2.0, 4.0],
        hands: Hands::Two,
        after: &["bed-fit"],
        tools: &["drill"],
        ..ONE
    },
    TaskStarter { key: "alarms", hours: [0.3, 0.5, 1.0], after: &["bed-fit"], ..ONE },
    TaskStarter {
        key: "trial-night",
        hours: [0.5, 1.0, 1.5],
        wait: Some((Wait::Other, 12.0)),
        after: &["fasten", "covers", "alarms"],
        ..ONE
    },
    TaskStarter { key: "pack", hours: [3.0, 6.0, 10.0], after: &["trial-night"], ..ONE },
    TaskStarter { key: "flat", hours: [4.0, 7.0, 12.0], without_van: true, after: &["pack"], ..ONE },
];

/// The tools that the usual tasks need, by their keys.
pub const TOOL_STARTERS: &[&str] = &["tape", "saw", "drill"];

/// A task that a thing of the kit implies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Implied {
    /// Its name in the catalogue; `$name` in it is the thing's.
    pub key: &'static str,
    hours: [f64; 3],
    hands: Hands,
    daylight: bool,
}

/// The task that a thing of the kit implies; none for what is only put into the van.
///
/// ```
/// use kerbstead_core::days::implied;
/// use kerbstead_core::plan::{Item, Obtain};
/// let shelf = Item { obtain: Obtain::Made, ..Item::default() };
/// assert_eq!(implied(&shelf).unwrap().key, "task-of-made");
/// assert!(implied(&Item::default()).is_none());
/// ```
pub fn implied(item: &Item) -> Option<Implied> {
    /// What weighs as much is fastened by itself. Common practice, no source.
    const FASTENED_FROM_KG: f64 = 8.0;
    let of = |key, hours, hands, daylight| Some(Implied { key, hours, hands, daylight });
    match (item.obtain, item.group) {
        (Obtain::LeftOut, _) => None,
        (Obtain::Made, _) => of("task-of-made", [2.0, 4.0, 8.0], Hands::One, true),
        (_, Group::Vehicle) if item.obtain.is_paid() => of("task-of-vehicle", [1.5, 3.0, 6.0], Hands::Skilled, true),
        (_, Group::Safety) if item.obtain.is_paid() => of("task-of-safety", [0.3, 0.5, 1.0], Hands::One, false),
        _ if item.store.is_some() => of("task-of-store", [0.5, 1.0, 2.0], Hands::One, false),
        _ if item.mass_kg.is_some_and(|mass| mass.likely() >= FASTENED_FROM_KG) => {
            of("task-of-heavy", [0.5, 1.0, 2.0], Hands::Two, false)
        }
        _ => None,
    }
}

/// The change that adds the task that an item implies, under its name; the item must be there when it begins. None when
/// it implies none, or has one already.
pub fn add_implied(plan: &Plan, item: &Item, name: &str) -> Option<Edit> {
    let implied = implied(item).filter(|_| plan.tasks.iter().all(|task| task.for_item != Some(item.id)))?;
    let ids = plan.next_ids(2);
    let (task, need) = (ids.first().copied()?, ids.last().copied()?);
    let task = Task {
        id: task,
        name: name.to_owned(),
        hours: Some(range(implied.hours)),
        hands: implied.hands,
        daylight: implied.daylight,
        for_item: Some(item.id),
        ..Task::default()
    };
    let need = TaskNeed { id: need, task: Some(task.id), thing: Some(item.id), ..TaskNeed::default() };
    let at = plan.tasks.len();
    Some(Edit::All {
        edits: vec![
            Edit::Insert { list: List::Tasks, at, entry: task.to_plain() },
            Edit::Insert { list: List::TaskNeeds, at: plan.task_needs.len(), entry: need.to_plain() },
        ],
    })
}

/// The change that adds the tasks of a simple build with what they need. `name_of` gives the names of tasks
/// (`task-KEY`) and tools (`tool-KEY`). Tools that the plan has by that name are taken; others are added as ones that
/// nobody has yet.
pub fn add_starters(plan: &Plan, name_of: &dyn Fn(&str) -> String) -> Edit {
    let needs: usize = TASK_STARTERS.iter().map(|starter| starter.after.len() + starter.tools.len()).sum();
    let mut ids = plan.next_ids(TASK_STARTERS.len() + TOOL_STARTERS.len() + needs).into_iter();
    let mut edits = Vec::new();
    let mut tools: Vec<(&str, Id)> = Vec::new();
    for key in TOOL_STARTERS {
        let name = name_of(&["tool-", key].concat());
        let known = plan.tools.iter().find(|tool| tool.name == name).map(|tool| tool.id);
        let id = known.or_else(|| ids.next()).unwrap_or_default();
        tools.push((key, id));
        if known.is_none() {
            let tool = Tool { id, name, tool_source: ToolSource::Missing, ..Tool::default() };
            edits.push(Edit::Insert { list: List::Tools, at: usize::MAX, entry: tool.to_plain() });
        }
    }
    let tasks: Vec<(&str, Id)> =
        TASK_STARTERS.iter().map(|starter| (starter.key, ids.next().unwrap_or_default())).collect();
    for (starter, (_, id)) in TASK_STARTERS.iter().zip(&tasks) {
        let task = task_of(starter, *id, name_of(&["task-", starter.key].concat()));
        edits.push(Edit::Insert { list: List::Tasks, at: usize::MAX, entry: task.to_plain() });
    }
    let id_of = |known: &[(&str, Id)], key: &str| known.iter().find(|(of, _)| *of == key).map(|(_, id)| *id);
    for (starter, (_, task)) in TASK_STARTERS.iter().zip(&tasks) {
        let after = starter.after.iter().map(|key| (id_of(&tasks, key), None));
        let tools = starter.tools.iter().map(|key| (None, id_of(&tools, key)));
        for (after, tool) in after.chain(tools) {
            let id = ids.next().unwrap_or_default();
            let need = TaskNeed { id, task: Some(*task), after, tool, ..TaskNeed::default() };
            edits.push(Edit::Insert { list: List::TaskNeeds, at: usize::MAX, entry: need.to_plain() });
        }
    }
    Edit::All { edits }
}

fn task_of(starter: &TaskStarter, id: Id, name: String) -> Task {
    let (daylight, dry) = starter.outdoors;
    Task {
        id,
        name,
        hours: Some(range(starter.hours)),
        hands: starter.hands,
        daylight,
        dry,
        without_van: starter.without_van,
        can_wait: starter.can_wait,
        wait_hours: starter.wait.map(|(_, hours)| Estimate::Plain(hours)),
        wait: starter.wait.map(|(wait, _)| wait).unwrap_or_default(),
        ..Task::default()
    }
}

fn range([low, likely, high]: [f64; 3]) -> Estimate<f64> {
    Estimate::Range { low, likely, high }
}
