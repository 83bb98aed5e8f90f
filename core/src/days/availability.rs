//! Who, which tools and which places are there, slot by slot.

use jiff::civil::Date;

use super::constants::{BEGINS_HOUR, LIGHT_FROM_HOUR, LIGHT_UNTIL_HOUR, SLOTS_PER_HOUR};
use super::input::{HANDS, SKILLED, SLOTS_PER_DAY, sound};
use crate::plan::{Helper, OtherDay, Plan, Tool, ToolDays, ToolKind, ToolSource, add_days, weekday};

/// The days for which work is planned.
pub struct Span {
    /// The first.
    pub begins_on: Date,
    /// How many.
    pub days: usize,
}

impl Span {
    fn date(&self, day: usize) -> Date {
        add_days(self.begins_on, i32::try_from(day).unwrap_or(0)).unwrap_or(Date::MAX)
    }

    /// The hours of somebody, day by day, as slots of the day.
    pub fn hours_of(&self, plan: &Plan, helper: &Helper) -> Vec<(usize, usize)> {
        let others: Vec<&OtherDay> =
            plan.other_days.iter().filter(|day| day.helper.is_none_or(|id| id == helper.id)).collect();
        (0..self.days).map(|day| hours_on(helper, &others, self.date(day))).collect()
    }

    /// How many hands, skilled hands and tools are there, slot by slot.
    pub fn resources(&self, plan: &Plan, hours_by_helper: &[Vec<(usize, usize)>]) -> Vec<Vec<u16>> {
        let slots = self.days * SLOTS_PER_DAY;
        let mut resources = vec![vec![0; slots], vec![0; slots]];
        for (helper, hours) in plan.helpers.iter().zip(hours_by_helper) {
            for (day, (from, to)) in hours.iter().enumerate() {
                let slots = day * SLOTS_PER_DAY + from..day * SLOTS_PER_DAY + to;
                for (resource, more) in [(HANDS, 1), (SKILLED, u16::from(helper.is_skilled))] {
                    for there in resources[resource].get_mut(slots.clone()).unwrap_or_default() {
                        *there += more;
                    }
                }
            }
        }
        for tool in plan.tools.iter().filter(|tool| tool.tool_kind == ToolKind::Tool) {
            resources.push(self.each_day(|date| u16::from(is_there(tool, date))));
        }
        resources
    }

    pub fn calendars(&self, plan: &Plan) -> Vec<Vec<bool>> {
        let light_from = slot_of_hour(plan.building.light_from_hour.unwrap_or(LIGHT_FROM_HOUR));
        let light_until = slot_of_hour(plan.building.light_until_hour.unwrap_or(LIGHT_UNTIL_HOUR));
        let is_light = |slot: usize| (light_from..light_until).contains(&(slot % SLOTS_PER_DAY));
        let slots = self.days * SLOTS_PER_DAY;
        let mut calendars = vec![(0..slots).map(is_light).collect(), vec![true; slots]];
        for place in plan.tools.iter().filter(|tool| tool.tool_kind == ToolKind::Place) {
            calendars.push(self.each_day(|date| is_there(place, date)));
        }
        calendars
    }

    fn each_day<T: Clone>(&self, of_day: impl Fn(Date) -> T) -> Vec<T> {
        (0..self.days).flat_map(|day| vec![of_day(self.date(day)); SLOTS_PER_DAY]).collect()
    }
}

/// Whether a tool or a place is there on a day.
fn is_there(tool: &Tool, date: Date) -> bool {
    let is_weekend = weekday(date) >= 5;
    let is_its_day = match tool.on_days {
        ToolDays::Every => true,
        ToolDays::Workdays => !is_weekend,
        ToolDays::Weekends => is_weekend,
    };
    tool.tool_source != ToolSource::Missing
        && is_its_day
        && tool.there_from.is_none_or(|from| from <= date)
        && tool.there_until.is_none_or(|until| date <= until)
}

/// The hours of somebody on a day, as slots of the day: from and to. Of several entries for the same day the last counts.
fn hours_on(helper: &Helper, others: &[&OtherDay], date: Date) -> (usize, usize) {
    let is_theirs =
        |day: &&&OtherDay| day.first_day.is_some_and(|first| first <= date && date <= day.last_day.unwrap_or(first));
    let is_weekend = weekday(date) >= 5;
    let usual_from =
        if is_weekend { helper.weekend_from_hour } else { helper.workday_from_hour }.unwrap_or(BEGINS_HOUR);
    let (from_hour, hours) = match others.iter().rev().find(is_theirs) {
        Some(day) => (day.from_hour.unwrap_or(usual_from), day.hours_then),
        None if helper.comes_from.is_some_and(|from| date < from)
            || helper.comes_until.is_some_and(|until| until < date) =>
        {
            return (0, 0);
        }
        None => {
            let hours = match weekday(date) {
                5 => helper.saturday_hours,
                6 => helper.sunday_hours,
                _ => helper.workday_hours,
            };
            (usual_from, hours)
        }
    };
    let from = slot_of_hour(from_hour);
    let to = slot_of_hour(from_hour.max(0.0) + hours.map_or(0.0, sound));
    (from, to.max(from))
}

/// The slot of the day in which an hour of the day lies.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within a day
fn slot_of_hour(hour: f64) -> usize {
    (sound(hour).min(24.0) * f64::from(SLOTS_PER_HOUR)).round() as usize
}
