//! The run: the calendar walked once, all balances along it.
//!
//! Balances never call each other. Each offers a pure step (state and day or hour in, new state out), and they meet
//! here: what one does to another in time is coupled through [`State`], an hour late.

mod calendar;
mod dated;
mod hourly;

use jiff::civil::Date;

pub(crate) use calendar::Span;
pub use calendar::{Day, MOST_DAYS, Phase, Timeline};
pub(crate) use dated::dated_with;
pub use dated::{Dated, dated, for_days};
pub use hourly::Gone;
pub(crate) use hourly::Hourly;

use crate::order;
use crate::plan::civil::day_key;
use crate::plan::{Mode, Path, Plan, Reading};
use crate::{money, power, water};
use hourly::Hours;

/// What the walk carries from hour to hour. Warmth, damp and air of the room go along in [`hourly`].
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
    /// Stores and room, hour by hour.
    pub hours: Gone,
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
    let hourly = Hourly::new(plan, &road, &power::Skies::over(plan, &road));
    let (Walked { money, supply, water }, gone) = walk_hourly(plan, as_of, timeline, hourly);
    Run { money, hours: gone, supply, water }
}

/// What a walk went through.
pub(crate) struct Walked {
    /// Cash by day.
    pub money: money::Course,
    /// Tanks and uses.
    pub supply: water::Input,
    /// Litres by day.
    pub water: water::Course,
}

/// The same through the hours as they are given.
pub(crate) fn walk_hourly(plan: &Plan, as_of: Date, timeline: &Timeline, hourly: Hourly) -> (Walked, Gone) {
    let mut hours = Hours::new(&hourly);
    let highs_c = hourly.warmth.highs_c();
    let walked = walk_days(plan, as_of, timeline, &highs_c, Some((&mut hours, &hourly)));
    let ended = hours.end();
    (walked, ended.of(hourly))
}

/// The same by days alone, where the course of the hours is known already: no day depends on them. The air gets so warm on
/// each day of the road, in °C; empty where that is not known.
pub(crate) fn walk_days(
    plan: &Plan,
    as_of: Date,
    timeline: &Timeline,
    highs_c: &[f64],
    mut hourly: Option<(&mut Hours, &Hourly)>,
) -> Walked {
    let flows = money::Input::new(plan, as_of, timeline);
    let supply = water::Input::new(plan);
    let charge_wh = hourly.as_ref().map(|(_, of)| of.opening_wh()).unwrap_or_default();
    let mut state = State { cash: flows.opening, charge_wh, tanks: supply.opening() };
    let mut cash = money::Course::new(flows, timeline.days.len());
    let mut litres = water::Course::default();
    let mut highs = highs_c.iter().copied();
    let readings = usable_readings(plan, as_of);
    for day in &timeline.days {
        let today = readings_on(&readings, day.date);
        count(&mut state, today, Half::BeforeNoon, &supply);
        state.cash = cash.step(state.cash, day);
        if day.phase == Phase::Road {
            state.tanks = litres.step(state.tanks, &supply, day, highs.next());
            if let Some((hours, of)) = &mut hourly {
                walk_hours(&mut state, hours, &of.electrics, today);
            }
        }
        count(&mut state, today, Half::FromNoon, &supply);
        cash.correct(state.cash);
    }
    Walked { money: cash, supply, water: litres }
}

fn walk_hours(state: &mut State, course: &mut Hours, electrics: &power::Input, today: &[&Reading]) {
    for hour in 0..24 {
        for reading in today.iter().filter(|reading| reading.hour == hour) {
            electrics.correct(&mut state.charge_wh, &course.full_wh(), reading);
        }
        course.step(&mut state.charge_wh);
    }
}

/// Water on board in the morning of a day, as the likely run and the counts until then have it; and the counts of the
/// evening of that day.
pub(crate) fn tanks_on<'a>(
    plan: &'a Plan,
    on: Date,
    timeline: &Timeline,
    supply: &water::Input,
    highs_c: &[f64],
) -> (water::Level, Vec<&'a Reading>) {
    let mut highs = highs_c.iter().copied();
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
            level = litres.step(level, supply, day, highs.next());
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
