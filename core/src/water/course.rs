//! A route through cans, tanks and toilet, day by day: what runs out, what has no room left, and which of them first.
//!
//! ```
//! use kerbstead_core::water::course::{Vessel, run};
//! use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
//! let day = Day { wants: Use::new(7.0, 5.0, 2.0), ..Day::default() };
//! let course = run(&Setup {
//!     fresh: vec![Tank::full(20.0), Tank::full(10.0)],
//!     grey: vec![Tank::empty(15.0)],
//!     toilet: Some(Tank::empty(7.0)),
//!     days: vec![day; 10],
//! });
//! // Grey and toilet have no room on day 3 (from 0), the cans last a day longer; the grey tank is 5 l short there.
//! let first = course.first.unwrap();
//! assert_eq!((first.vessel, first.day, first.days_before_next), (Vessel::Grey, 3, Some(0)));
//! assert_eq!((course.grey.unwrap().on_that_day_ml, course.fresh.unwrap().day), (5_000, 4));
//! ```

use super::tanks::{Day, Setup, Tank, Use};
use crate::plan::record::words;

/// What may run out, or have no room left. Where several do on the same day, they come in this order.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Vessel {
    /// Cans of fresh water.
    #[default]
    Fresh,
    /// Tanks of used water.
    Grey,
    /// The toilet.
    Toilet,
}

words!(Vessel { Fresh = "fresh", Grey = "grey", Toilet = "toilet" });

/// What is on board, all vessels of a kind together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Level {
    /// Fresh water, in ml.
    pub fresh: u64,
    /// Used water, in ml.
    pub grey: u64,
    /// What is in the toilet, in thousandths of a person-day.
    pub toilet: u64,
}

/// What they hold, and whether there are any.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Rooms {
    pub holds: Level,
    pub has_grey: bool,
    pub has_toilet: bool,
}

/// One day. What was there in the morning and what came is what went and what is there in the evening, exactly:
/// `before + filled = used + fresh`, `before + grey_added = grey_emptied + grey_over + grey`, and so for the toilet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct DayOf {
    /// Fresh water taken on, or used straight from a tap, in ml.
    pub filled_ml: u64,
    /// Fresh water used, in ml.
    pub used_ml: u64,
    /// Fresh water that was asked for and not there, in ml.
    pub missing_ml: u64,
    /// Fresh water in the evening, in ml.
    pub fresh_ml: u64,
    /// Used water that came, in ml: in the proportion of what was used to what was asked for, rounded down.
    pub grey_added_ml: u64,
    /// Used water poured away where that is possible, in ml.
    pub grey_emptied_ml: u64,
    /// Used water for which there was no room, in ml.
    pub grey_over_ml: u64,
    /// Used water in the evening, in ml.
    pub grey_ml: u64,
    /// What came into the toilet, in thousandths of a person-day.
    pub toilet_added: u64,
    /// What was emptied of it.
    pub toilet_emptied: u64,
    /// What it had no room for.
    pub toilet_over: u64,
    /// What is in it in the evening.
    pub toilet: u64,
}

/// How a vessel falls short.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Short {
    /// The first day, from 0.
    pub day: usize,
    /// What is missing or over on it, in ml or thousandths of a person-day.
    pub on_that_day_ml: u64,
    /// What is on all days.
    pub in_all_ml: u64,
    /// On how many days.
    pub days: usize,
}

/// What falls short first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct First {
    /// Which one.
    pub vessel: Vessel,
    /// The day, from 0: so many days hold.
    pub day: usize,
    /// How many days later the next of the others does; none if none does.
    pub days_before_next: Option<usize>,
}

/// The route as it went.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Course {
    /// Day by day.
    pub days: Vec<DayOf>,
    /// How fresh water falls short, if it does.
    pub fresh: Option<Short>,
    /// How the room for used water does.
    pub grey: Option<Short>,
    /// How the toilet does.
    pub toilet: Option<Short>,
    /// Which of them is first.
    pub first: Option<First>,
}

impl Course {
    /// Whether nothing falls short.
    pub fn holds(&self) -> bool {
        self.first.is_none()
    }
}

/// Runs a route.
pub fn run(setup: &Setup) -> Course {
    let (rooms, mut levels) = opened(setup);
    let mut course = Course { days: Vec::with_capacity(setup.days.len()), ..Course::default() };
    for (at, day) in setup.days.iter().enumerate() {
        let went = step(&rooms, levels, day, day.asks());
        note(&mut course.fresh, at, went.missing_ml);
        note(&mut course.grey, at, went.grey_over_ml);
        note(&mut course.toilet, at, went.toilet_over);
        levels = went.evening();
        course.days.push(went);
    }
    course.first = first_of([course.fresh, course.grey, course.toilet]);
    course
}

impl DayOf {
    #[inline]
    pub(crate) fn evening(&self) -> Level {
        Level { fresh: self.fresh_ml, grey: self.grey_ml, toilet: self.toilet }
    }

    #[inline]
    pub(super) fn holds(&self) -> bool {
        self.missing_ml == 0 && self.grey_over_ml == 0 && self.toilet_over == 0
    }
}

/// All vessels of each kind together.
pub(super) fn opened(setup: &Setup) -> (Rooms, Level) {
    let sums = |tanks: &[Tank]| {
        tanks.iter().map(|tank| tank.sound()).fold((0, 0), |(holds, opening): (u64, u64), tank| {
            (holds.saturating_add(tank.capacity_ml), opening.saturating_add(tank.opening_ml))
        })
    };
    let (fresh, grey, toilet) = (sums(&setup.fresh), sums(&setup.grey), sums(setup.toilet.as_slice()));
    let rooms = Rooms {
        holds: Level { fresh: fresh.0, grey: grey.0, toilet: toilet.0 },
        has_grey: !setup.grey.is_empty(),
        has_toilet: setup.toilet.is_some(),
    };
    (rooms, Level { fresh: fresh.1, grey: grey.1, toilet: toilet.1 })
}

/// One day, of which so much is asked.
#[inline]
pub(crate) fn step(rooms: &Rooms, before: Level, day: &Day, asks: Use) -> DayOf {
    let used_ml = if day.refill { asks.fresh_ml } else { asks.fresh_ml.min(before.fresh) };
    let fresh_ml = if day.refill { rooms.holds.fresh } else { before.fresh - used_ml };
    let grey_ml = if used_ml == asks.fresh_ml { asks.grey_ml } else { asks.grey_ml * used_ml / asks.fresh_ml.max(1) };
    let grey = collect(rooms.has_grey, rooms.holds.grey, before.grey, grey_ml, day.empty_grey);
    let toilet = collect(rooms.has_toilet, rooms.holds.toilet, before.toilet, asks.toilet, day.empty_toilet);
    DayOf {
        filled_ml: fresh_ml + used_ml - before.fresh,
        used_ml,
        missing_ml: asks.fresh_ml - used_ml,
        fresh_ml,
        grey_added_ml: grey.added,
        grey_emptied_ml: grey.emptied,
        grey_over_ml: grey.over,
        grey_ml: grey.level,
        toilet_added: toilet.added,
        toilet_emptied: toilet.emptied,
        toilet_over: toilet.over,
        toilet: toilet.level,
    }
}

/// What a day does to a vessel that fills.
#[derive(Clone, Copy)]
struct Collected {
    added: u64,
    emptied: u64,
    over: u64,
    level: u64,
}

#[inline]
fn collect(is_kept: bool, holds: u64, before: u64, comes: u64, empties: bool) -> Collected {
    let added = if is_kept { comes } else { 0 };
    let all = before + added;
    if empties {
        return Collected { added, emptied: all, over: 0, level: 0 };
    }
    let level = all.min(holds);
    Collected { added, emptied: 0, over: all - level, level }
}

pub(super) fn note(short: &mut Option<Short>, day: usize, by_ml: u64) {
    if by_ml == 0 {
        return;
    }
    let short = short.get_or_insert(Short { day, on_that_day_ml: by_ml, in_all_ml: 0, days: 0 });
    short.in_all_ml = short.in_all_ml.saturating_add(by_ml);
    short.days += 1;
}

pub(super) fn first_of([fresh, grey, toilet]: [Option<Short>; 3]) -> Option<First> {
    let all = [(Vessel::Fresh, fresh), (Vessel::Grey, grey), (Vessel::Toilet, toilet)];
    let days = || all.iter().filter_map(|(vessel, short)| Some((short.as_ref()?.day, *vessel)));
    let (day, vessel) = days().min()?;
    let next = days().filter(|(_, other)| *other != vessel).min();
    Some(First { vessel, day, days_before_next: next.map(|(other, _)| other - day) })
}
