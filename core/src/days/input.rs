//! What the schedule takes: the open tasks of a plan as work to be placed in half hours.

use jiff::civil::Date;

use super::availability::Span;
use super::constants::{DAYS_BEYOND, LEAST_LEFT_PERCENT, MOST_WORK_DAYS, SLOTS_PER_HOUR};
use super::schedule::{Activity, Schedule, Workload};
use crate::assessment::Moment;
use crate::order;
use crate::plan::{Estimate, Hands, Id, Item, Obtain, Plan, Task, ToolKind, add_days, days_between};

/// Slots of a day.
pub const SLOTS_PER_DAY: usize = 24 * SLOTS_PER_HOUR as usize;

/// The number of hands, then those that have done it before, then the tools: the resources in their order.
pub const HANDS: usize = 0;
pub const SKILLED: usize = 1;
const TOOLS_FROM: usize = 2;

/// Daylight, then dry weather, then the places: the calendars in their order. What the weather will be nobody knows, so
/// the likely run takes every day for dry; chances do not.
const LIGHT: usize = 0;
pub const DRY: usize = 1;
const PLACES_FROM: usize = 2;

/// The work of a plan, and what its parts are in the plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// The time, the hands, tools and calendars; without activities.
    pub time: Workload,
    /// What is to be done: first what must be done before leaving, then what can wait.
    pub activities: Vec<Activity>,
    /// How many of them must be done before leaving.
    pub musts: usize,
    /// Slots of the clock after each of them in which nothing that follows can begin.
    pub waits: Vec<u32>,
    /// The day on which slot 0 begins.
    pub begins_on: Date,
    /// The task of each activity, by its position in the plan.
    pub tasks: Vec<usize>,
    /// The hours that are left of each activity.
    pub hours: Vec<Estimate<f64>>,
    /// The tool of each resource from the third on.
    pub tools: Vec<Id>,
    /// The place of each calendar from the second on.
    pub places: Vec<Id>,
    /// Of each person the hours on each day, as slots of that day: from and to.
    pub hours_by_helper: Vec<Vec<(usize, usize)>>,
    /// The item whose coming holds a task up, by activity.
    pub awaited: Vec<Option<Id>>,
    /// Items that are needed and not part of the plan, by activity.
    pub left_out: Vec<Option<Id>>,
}

impl Input {
    /// The open tasks of a plan from `as_of` on; `paid` says of each item of the kit whether it is paid.
    pub fn new(plan: &Plan, as_of: Date, paid: &[bool]) -> Self {
        let begins_on = plan.calendar.starts_on.map_or(as_of, |starts_on| starts_on.max(as_of));
        let leaves_after = plan.calendar.leaves_on.map_or(0, |leaves_on| days_between(begins_on, leaves_on).max(0));
        let days = u32::try_from(leaves_after).unwrap_or(0).saturating_add(DAYS_BEYOND).min(MOST_WORK_DAYS) as usize;
        let span = Span { begins_on, days };
        let hours_by_helper: Vec<Vec<(usize, usize)>> =
            plan.helpers.iter().map(|helper| span.hours_of(plan, helper)).collect();
        let (tools, places) = (ids_of(plan, ToolKind::Tool), ids_of(plan, ToolKind::Place));
        let time = Workload {
            slots: days * SLOTS_PER_DAY,
            resources: span.resources(plan, &hours_by_helper),
            calendars: span.calendars(plan),
            activities: Vec::new(),
        };
        let mut input = Self {
            time,
            activities: Vec::new(),
            musts: 0,
            waits: Vec::new(),
            begins_on,
            tasks: Vec::new(),
            hours: Vec::new(),
            tools,
            places,
            hours_by_helper,
            awaited: Vec::new(),
            left_out: Vec::new(),
        };
        input.take_tasks(plan, as_of);
        input.take_needs(plan, as_of, paid);
        input
    }

    fn take_tasks(&mut self, plan: &Plan, as_of: Date) {
        let van_on = plan.building.arrives_on.or(plan.purchase.pay_on.filter(|_| plan.purchase.agreed_price.is_some()));
        let van_from = van_on.map_or(0, |day| self.slot_of(day));
        let must_be_done = must_be_done(plan);
        let of_kind = |is_must: bool| {
            let all = plan.tasks.iter().enumerate().zip(&must_be_done);
            all.filter(move |((_, task), must)| is_open(task) && **must == is_must).map(|(task, _)| task)
        };
        self.musts = of_kind(true).count();
        for (at, task) in of_kind(true).chain(of_kind(false)) {
            let hours = hours_left(task);
            let (hands, skilled) = match task.hands {
                Hands::One => (1, 0),
                Hands::Two => (2, 0),
                Hands::Skilled => (2, 1),
            };
            let mut demands = vec![(HANDS, hands)];
            if skilled > 0 {
                demands.push((SKILLED, skilled));
            }
            let from = task.not_before.map_or(0, |day| self.slot_of(day.max(as_of)));
            self.tasks.push(at);
            self.hours.push(hours);
            self.waits.push(slots_for(wait_hours(task)));
            self.awaited.push(None);
            self.left_out.push(None);
            let under_the_sky = [(task.daylight, LIGHT), (task.dry, DRY)].into_iter().filter(|(needs, _)| *needs);
            self.activities.push(Activity {
                work_slots: slots_for(hours.likely()),
                calendars: under_the_sky.map(|(_, calendar)| calendar).collect(),
                demands,
                earliest: if task.without_van { from } else { from.max(van_from) },
                in_one_go: task.in_one_go,
                after: Vec::new(),
            });
        }
    }

    fn take_needs(&mut self, plan: &Plan, as_of: Date, paid: &[bool]) {
        let of_tasks = order::sorted(self.tasks.iter().filter_map(|at| plan.tasks.get(*at)).map(|task| task.id.into()));
        let items = order::sorted(plan.kit.iter().map(|item| item.id.into()));
        let all_tasks = order::sorted(plan.tasks.iter().map(|task| task.id.into()));
        let at = |known: &[(u64, usize)], id: Id| order::find(known, id.into()).map(|found| known[found].1);
        for need in &plan.task_needs {
            let Some(activity) = need.task.and_then(|id| at(&of_tasks, id)) else { continue };
            if let Some(earlier) = need.after {
                let task = at(&all_tasks, earlier).and_then(|at| plan.tasks.get(at)).filter(|task| !task.left_out);
                let wait = task.map_or(0, |task| slots_for(wait_hours(task)));
                match (at(&of_tasks, earlier), task.and_then(|task| task.done_on)) {
                    (Some(before), _) => self.activities[activity].after.push((before, wait)),
                    // It is counted from the end of the day on which it was done.
                    (None, Some(done_on)) if wait > 0 => {
                        let from = self.slot_of(add_days(done_on, 1).unwrap_or(done_on)) + wait as usize;
                        self.not_before(activity, from);
                    }
                    _ => {}
                }
            }
            if let Some(id) = need.tool {
                self.take_tool(activity, id);
            }
            if let Some(found) = need.thing.and_then(|id| at(&items, id)) {
                let is_paid = paid.get(found).is_some_and(|paid| *paid);
                self.take_item(activity, &plan.kit[found], is_paid, as_of);
            }
        }
    }

    fn take_tool(&mut self, activity: usize, id: Id) {
        let activity = &mut self.activities[activity];
        if let Some(at) = self.tools.iter().position(|tool| *tool == id) {
            let demand = (TOOLS_FROM + at, 1);
            if !activity.demands.contains(&demand) {
                activity.demands.push(demand);
            }
        } else if let Some(at) = self.places.iter().position(|place| *place == id) {
            activity.calendars.push(PLACES_FROM + at);
        }
    }

    /// An item that is still to be bought is there after its delivery at the earliest.
    fn take_item(&mut self, activity: usize, item: &Item, is_paid: bool, as_of: Date) {
        let is_off = item.obtain.is_paid() && item.paid.is_some_and(|paid| !paid.happened);
        if item.obtain == Obtain::LeftOut || is_off {
            self.left_out[activity] = Some(item.id);
            return;
        }
        let Some(on) = arrives_on(item, is_paid, as_of) else { return };
        let from = self.slot_of(on);
        if from > self.activities[activity].earliest {
            self.awaited[activity] = Some(item.id);
            self.not_before(activity, from);
        }
    }

    fn not_before(&mut self, activity: usize, slot: usize) {
        let activity = &mut self.activities[activity];
        activity.earliest = activity.earliest.max(slot);
    }

    /// The first slot of a day; 0 for days before the first.
    pub fn slot_of(&self, day: Date) -> usize {
        usize::try_from(days_between(self.begins_on, day)).unwrap_or(0) * SLOTS_PER_DAY
    }

    /// What must be done before leaving, and last of all, as something without work, that it is done and waited for.
    pub fn before_leaving(&self) -> Workload {
        let mut activities = self.activities.get(..self.musts).unwrap_or_default().to_vec();
        let after = self.waits.iter().take(self.musts).enumerate().map(|(at, wait)| (at, *wait)).collect();
        activities.push(Activity { after, ..Activity::default() });
        Workload { activities, ..self.time.clone() }
    }

    /// What can wait, beside what must be done: with the hands and tools that are left over.
    pub fn beside(&self, schedule: &Schedule) -> Workload {
        let mut workload = self.time.clone();
        for (activity, span) in schedule.spans.iter().enumerate().take(self.musts) {
            let Some(span) = span else { continue };
            for slot in self.worked(activity, span.start, span.end) {
                for (resource, wanted) in &self.activities[activity].demands {
                    if let Some(left) = workload.resources.get_mut(*resource).and_then(|slots| slots.get_mut(slot)) {
                        *left = left.saturating_sub(*wanted);
                    }
                }
            }
        }
        workload.activities = self.activities.get(self.musts..).unwrap_or_default().to_vec();
        for activity in &mut workload.activities {
            let mut later = Vec::new();
            for (before, wait) in &activity.after {
                if let Some(before) = before.checked_sub(self.musts) {
                    later.push((before, *wait));
                } else {
                    // What comes after something that is not placed has no time left.
                    let span = schedule.spans.get(*before).copied().flatten();
                    let ready = span.map_or(workload.slots, |span| span.end + *wait as usize);
                    activity.earliest = activity.earliest.max(ready);
                }
            }
            activity.after = later;
        }
        workload
    }

    /// Whether an activity could be worked on in a slot if nothing else were.
    pub fn is_open(&self, activity: usize, slot: usize) -> bool {
        let Some(activity) = self.activities.get(activity) else { return false };
        let is_there = |resource: usize, wanted: u16| {
            self.time.resources.get(resource).and_then(|slots| slots.get(slot)).is_some_and(|there| *there >= wanted)
        };
        let is_open = |calendar: usize| {
            self.time.calendars.get(calendar).and_then(|slots| slots.get(slot)).copied().unwrap_or(false)
        };
        activity.demands.iter().all(|(resource, wanted)| is_there(*resource, *wanted))
            && activity.calendars.iter().all(|calendar| is_open(*calendar))
    }

    /// The slots from `start` to before `end` in which an activity that was placed there is worked on.
    pub fn worked(&self, activity: usize, start: usize, end: usize) -> impl Iterator<Item = usize> {
        (start..end).filter(move |slot| self.is_open(activity, *slot))
    }

    /// Whether an activity needs a tool or a place.
    pub fn needs_tool(&self, activity: usize, id: Id) -> bool {
        let Some(activity) = self.activities.get(activity) else { return false };
        activity.demands.iter().any(|(resource, _)| self.tool_of(*resource) == Some(id))
            || activity.calendars.iter().any(|calendar| self.place_of(*calendar) == Some(id))
    }

    /// The tool that a resource stands for.
    pub fn tool_of(&self, resource: usize) -> Option<Id> {
        resource.checked_sub(TOOLS_FROM).and_then(|at| self.tools.get(at)).copied()
    }

    /// The place that a calendar stands for.
    pub fn place_of(&self, calendar: usize) -> Option<Id> {
        calendar.checked_sub(PLACES_FROM).and_then(|at| self.places.get(at)).copied()
    }

    /// How many hands an activity needs.
    pub fn hands_for(&self, activity: usize) -> u16 {
        let demands = self.activities.get(activity).map_or(&[][..], |activity| &activity.demands);
        demands.iter().find(|(resource, _)| *resource == HANDS).map_or(0, |(_, hands)| *hands)
    }

    /// The day a slot lies in.
    pub fn day_of(&self, slot: usize) -> Date {
        let days = i32::try_from(slot / SLOTS_PER_DAY).unwrap_or(i32::MAX);
        add_days(self.begins_on, days).unwrap_or(Date::MAX)
    }

    /// The moment at which a slot begins.
    pub fn moment(&self, slot: usize) -> Moment {
        Moment::hours_into(self.day_of(slot), (slot % SLOTS_PER_DAY) as f64 / f64::from(SLOTS_PER_HOUR))
    }

    /// The moment at which work ends whose last slot is the one before: the evening, not the midnight after it.
    pub fn end_moment(&self, end: usize) -> Moment {
        if end > 0 && end.is_multiple_of(SLOTS_PER_DAY) {
            Moment::hours_into(self.day_of(end - 1), 24.0)
        } else {
            self.moment(end)
        }
    }
}

/// Whether a task is still to be done.
pub fn is_open(task: &Task) -> bool {
    !task.left_out && task.done_on.is_none()
}

/// Of each task of a plan whether it must be done before leaving: it is said to, or one that must comes after it.
fn must_be_done(plan: &Plan) -> Vec<bool> {
    let ids = order::sorted(plan.tasks.iter().map(|task| task.id.into()));
    let at = |id: Id| order::find(&ids, id.into()).map(|found| ids[found].1);
    let mut must: Vec<bool> = plan.tasks.iter().map(|task| !task.can_wait).collect();
    let mut before: Vec<Vec<usize>> = vec![Vec::new(); plan.tasks.len()];
    for need in &plan.task_needs {
        if let (Some(task), Some(earlier)) = (need.task.and_then(at), need.after.and_then(at)) {
            before[task].push(earlier);
        }
    }
    let mut open: Vec<usize> = (0..must.len()).filter(|at| must[*at]).collect();
    while let Some(task) = open.pop() {
        for earlier in &before[task] {
            if !must[*earlier] {
                must[*earlier] = true;
                open.push(*earlier);
            }
        }
    }
    must
}

/// The wait after a task, in hours.
pub fn wait_hours(task: &Task) -> f64 {
    task.wait_hours.map_or(0.0, |hours| sound(hours.likely()))
}

/// What is left of a task's hours: what was planned less what was spent, and never less than a small part of them.
///
/// ```
/// use kerbstead_core::days::hours_left;
/// use kerbstead_core::plan::{Estimate, Task};
/// let floor = Task { hours: Some(4.0.into()), spent_hours: Some(1.5), ..Task::default() };
/// assert_eq!(hours_left(&floor).likely(), 2.5);
/// let longer = Task { spent_hours: Some(6.0), ..floor };
/// assert_eq!(hours_left(&longer).likely(), 0.4);
/// ```
pub fn hours_left(task: &Task) -> Estimate<f64> {
    let Some(hours) = task.hours else { return Estimate::Plain(0.0) };
    let spent = task.spent_hours.map_or(0.0, sound);
    let least = sound(hours.likely()) * LEAST_LEFT_PERCENT / 100.0;
    let left = |hours: f64| (sound(hours) - spent).max(least);
    match hours {
        Estimate::Plain(hours) => Estimate::Plain(left(hours)),
        Estimate::Range { low, likely, high } => {
            Estimate::Range { low: left(low), likely: left(likely), high: left(high) }
        }
    }
}

/// When an item is there that is still to come; nothing when it is there already.
fn arrives_on(item: &Item, is_paid: bool, as_of: Date) -> Option<Date> {
    let days = i32::try_from(item.delivery_days.unwrap_or(0).min(MOST_WORK_DAYS)).unwrap_or(0);
    let bought_on = match item.paid.filter(|paid| paid.happened) {
        _ if !item.obtain.is_paid() => return None,
        Some(paid) => paid.on?,
        None if is_paid => return None,
        None => item.buy_on.map_or(as_of, |day| day.max(as_of)),
    };
    add_days(bought_on, days)
}

/// The slots that so many hours take, begun ones as whole.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // sound, and far below the limits
pub fn slots_for(hours: f64) -> u32 {
    /// What rounding leaves above a full slot is nothing.
    const BREATH: f64 = 1e-9;
    (sound(hours) * f64::from(SLOTS_PER_HOUR) - BREATH).ceil().max(0.0) as u32
}

/// A number of hours, or of percent, that can be worked with.
pub fn sound(hours: f64) -> f64 {
    // JavaScript's numbers lose the minus of a nothing on their way here, so it has none.
    if hours.is_finite() { hours.clamp(0.0, 10_000.0) + 0.0 } else { 0.0 }
}

fn ids_of(plan: &Plan, kind: ToolKind) -> Vec<Id> {
    plan.tools.iter().filter(|tool| tool.tool_kind == kind).map(|tool| tool.id).collect()
}
