//! The run: the calendar walked once, all balances along it.
//!
//! Balances never call each other. Each offers a pure step (state and day or hour in, new state out), and they meet
//! here: what one does to another in time is coupled through [`State`], an hour late.

mod calendar;
mod dated;

use jiff::civil::Date;

pub use calendar::{Day, MOST_DAYS, Phase, Timeline};
pub(crate) use dated::dated_with;
pub use dated::{Dated, dated, for_days};

use crate::energy::run::{Course, Walk};
use crate::order;
use crate::plan::civil::day_key;
use crate::plan::{Mode, Path, Plan, Reading};
use crate::{money, power, water};

/// What the walk carries from hour to hour.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Cash in hand.
    pub cash: crate::plan::Money,
    /// Energy in each store, in the order of the kit.
    pub charge_wh: Vec<f64>,
    /// Fresh and used water on board.
    pub tanks: water::Level,
}

/// What each balance took, and what it went through.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Cash by day.
    pub money: money::Course,
    /// Stores and draws.
    pub electrics: power::Input,
    /// Charge by hour.
    pub power: Course,
    /// Tanks and uses.
    pub supply: water::Input,
    /// Litres by day.
    pub water: water::Course,
}

/// What keeps the road from being run: days at home without end, no day of leaving, no route, or no day of it still
/// ahead.
pub(crate) fn missing_road(plan: &Plan, as_of: Date, timeline: &Timeline) -> Vec<Path> {
    let calendar = |field| vec![Path::section("calendar").child(field)];
    if timeline.is_cut_at_home() {
        return calendar("starts_on");
    }
    if plan.calendar.leaves_on.is_none() {
        return calendar("leaves_on");
    }
    if timeline.road().next().is_some() && as_of <= timeline.ends_on() {
        return Vec::new();
    }
    match plan.calendar.mode {
        Mode::Stays => vec![Path::section("stays")],
        Mode::Week if plan.week.is_empty() => vec![Path::section("week")],
        Mode::Week => calendar("ends_on"),
    }
}

/// Walks the timeline. Days at home move money only; on the road everything moves. Readings counted up to `as_of`
/// replace what was computed for their moment.
pub fn walk(plan: &Plan, as_of: Date, timeline: &Timeline) -> Run {
    let road: Vec<&Day> = timeline.road().collect();
    let electrics = power::Input::new(plan, &road);
    let walked = walk_with(plan, as_of, timeline, Some(&electrics));
    let Walked { money, supply, water, power } = walked;
    Run { money, electrics, power: power.unwrap_or_default(), supply, water }
}

/// What a walk went through.
pub(crate) struct Walked {
    /// Cash by day.
    pub money: money::Course,
    /// Tanks and uses.
    pub supply: water::Input,
    /// Litres by day.
    pub water: water::Course,
    /// Charge by hour, if it was wanted.
    pub power: Option<Course>,
}

/// The same with the electric side as it is given, or without it where its course is known already: nothing else
/// depends on it yet.
pub(crate) fn walk_with(plan: &Plan, as_of: Date, timeline: &Timeline, electrics: Option<&power::Input>) -> Walked {
    let flows = money::Input::new(plan, as_of, timeline);
    let mut charge = electrics.map(|electrics| (Walk::new(&electrics.setup), electrics));
    let supply = water::Input::new(plan);
    let charge_wh = charge.as_ref().map(|(charge, _)| charge.opening_wh()).unwrap_or_default();
    let mut state = State { cash: flows.opening, charge_wh, tanks: supply.opening() };
    let mut cash = money::Course::new(flows, timeline.days.len());
    let mut litres = water::Course::default();
    let readings = usable_readings(plan, as_of);
    for day in &timeline.days {
        let today = readings_on(&readings, day.date);
        count(&mut state, today, Half::BeforeNoon, &supply);
        state.cash = cash.step(state.cash, day);
        if day.phase == Phase::Road {
            state.tanks = litres.step(state.tanks, &supply, day, high_c(day));
            if let Some((charge, electrics)) = &mut charge {
                walk_hours(&mut state, charge, electrics, today);
            }
        }
        count(&mut state, today, Half::FromNoon, &supply);
        cash.correct(state.cash);
    }
    Walked { money: cash, supply, water: litres, power: charge.map(|(charge, _)| charge.end()) }
}

fn walk_hours(state: &mut State, course: &mut Walk, electrics: &power::Input, today: &[&Reading]) {
    for hour in 0..24 {
        for reading in today.iter().filter(|reading| reading.hour == hour) {
            electrics.correct(&mut state.charge_wh, &course.full_wh(), reading);
        }
        course.step(&mut state.charge_wh);
    }
}

/// How warm the air gets on a day of the road, in °C, for what is drunk. Nothing tells it yet: temperate air is taken.
pub(crate) fn high_c(_: &Day) -> Option<f64> {
    None
}

/// Water on board in the morning of a day, as the likely run and the counts until then have it; and the counts of the
/// evening of that day.
pub(crate) fn tanks_on<'a>(
    plan: &'a Plan,
    on: Date,
    timeline: &Timeline,
    supply: &water::Input,
) -> (water::Level, Vec<&'a Reading>) {
    let readings = usable_readings(plan, on);
    let (mut level, mut litres) = (supply.opening(), water::Course::default());
    for day in &timeline.days {
        let today = readings_on(&readings, day.date);
        let of_half =
            |half: Half| today.iter().filter(move |reading| (reading.hour < 12) == (half == Half::BeforeNoon));
        level = of_half(Half::BeforeNoon).fold(level, |level, reading| supply.counted(level, reading));
        if day.date >= on {
            return (level, of_half(Half::FromNoon).filter(|_| day.date == on).copied().collect());
        }
        if day.phase == Phase::Road {
            level = litres.step(level, supply, day, high_c(day));
        }
        level = of_half(Half::FromNoon).fold(level, |level, reading| supply.counted(level, reading));
    }
    (level, Vec::new())
}

/// The half of the day a count of cash or water belongs to.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Half {
    BeforeNoon,
    FromNoon,
}

fn count(state: &mut State, today: &[&Reading], half: Half, supply: &water::Input) {
    for reading in today.iter().filter(|reading| (reading.hour < 12) == (half == Half::BeforeNoon)) {
        state.cash = reading.cash.unwrap_or(state.cash);
        state.tanks = supply.counted(state.tanks, reading);
    }
}

/// Readings up to the day, by date and hour; those without a date count nowhere.
pub(crate) fn usable_readings(plan: &Plan, as_of: Date) -> Vec<&Reading> {
    let readings: Vec<&Reading> =
        plan.readings.iter().filter(|reading| reading.on.is_some_and(|on| on <= as_of)).collect();
    order::by_key(&readings, |reading| reading.on.map_or(0, day_key) << 32 | u64::from(reading.hour))
}

fn readings_on<'a, 'b>(readings: &'b [&'a Reading], date: Date) -> &'b [&'a Reading] {
    let from = readings.partition_point(|reading| reading.on < Some(date));
    let to = readings.partition_point(|reading| reading.on <= Some(date));
    &readings[from..to]
}
