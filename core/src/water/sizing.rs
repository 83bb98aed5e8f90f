//! How far apart stops may be, what a vessel lacks, and how few stops do.
//!
//! What makes these exact is that more is never worse: a stop more, or more room, leaves at least as much water and room on
//! every later day. Each answer says what it rests on, and all are tested against trying everything.
//!
//! ```
//! use kerbstead_core::water::course::Vessel;
//! use kerbstead_core::water::sizing::{fewest_stops, least_extra, longest_interval};
//! use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
//! let stop = Day { wants: Use::new(7.0, 5.0, 0.0), refill: true, empty_grey: true, ..Day::default() };
//! let setup = Setup { fresh: vec![Tank::full(30.0)], grey: vec![Tank::empty(16.0)], toilet: None, days: vec![stop; 12] };
//! // 30 l last four days of 7 l, 16 l have room for three of 5 l: a stop every fourth day.
//! let interval = longest_interval(&setup);
//! assert_eq!((interval.days, interval.limit), (Some(4), Some(Vessel::Grey)));
//! assert_eq!(fewest_stops(&setup), Some(vec![3, 7, 11])); // from 0, as late as can be
//! let far = Setup { days: vec![Day { refill: false, ..stop }; 6], ..setup };
//! assert_eq!(least_extra(&far).fresh_ml, 12_000); // 42 l are used
//! ```

use super::constants::SIZE_STEP_ML;
use super::course::{Level, Rooms, Vessel, opened, step};
use super::tanks::{Day, Setup, Use};

/// How far apart stops may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Interval {
    /// Days from one stop to the next: 1 is a stop on each. With stops no further apart all holds, wherever they are; with one day
    /// more there are stops with which it does not. None if a single stop is enough, wherever it is.
    pub days: Option<usize>,
    /// The day, from 0, on which the first stop is at the latest, with what is on board at first. None if none is needed.
    pub first_by_day: Option<usize>,
    /// What would fall short after the worst stop; where several would, the first of the order of [`Vessel`].
    pub limit: Option<Vessel>,
    /// After a stop on this day it does.
    pub worst_stop: Option<usize>,
}

/// How far apart stops at which one can fill and empty everything may be, if they can be on any day of a route. Its own marks of
/// taps and drains do not count.
///
/// Days without a stop hold if what all of them ask for fits. Fewer days in a row ask for no more, so after a stop on each day
/// the number of days that hold is found by going on until it is too much, and the least of these numbers holds everywhere.
pub fn longest_interval(setup: &Setup) -> Interval {
    let (rooms, opening) = opened(setup);
    let asks: Vec<Use> = setup.days.iter().map(Day::asks).collect();
    let mut interval = Interval { days: None, first_by_day: None, limit: None, worst_stop: None };
    interval.first_by_day = first_too_much(&rooms, opening, &asks).map(|(days, _)| days);
    let mut sum = Asked::default();
    let mut end = 0;
    for stop in 0..asks.len() {
        // The days after the stop up to `end`, which is the first that does not hold.
        end = end.max(stop + 1);
        while let Some(ask) = asks.get(end)
            && let after = sum.with(ask)
            && after.too_much(&rooms, NOTHING_TAKEN).is_none()
        {
            (sum, end) = (after, end + 1);
        }
        let Some(ask) = asks.get(end) else { break };
        if interval.days.is_none_or(|days| end - stop < days) {
            interval.days = Some(end - stop);
            interval.limit = sum.with(ask).too_much(&rooms, NOTHING_TAKEN);
            interval.worst_stop = Some(stop);
        }
        if let Some(next) = asks.get(stop + 1).filter(|_| end > stop + 1) {
            sum = sum.without(next);
        }
    }
    interval
}

/// What some days ask for together.
#[derive(Clone, Copy, Default)]
struct Asked(Level);

/// What is taken just after a stop: nothing.
const NOTHING_TAKEN: Level = Level { fresh: 0, grey: 0, toilet: 0 };

impl Asked {
    fn with(self, ask: &Use) -> Self {
        let Level { fresh, grey, toilet } = self.0;
        Self(Level { fresh: fresh + ask.fresh_ml, grey: grey + ask.grey_ml, toilet: toilet + ask.toilet })
    }

    fn without(self, ask: &Use) -> Self {
        let Level { fresh, grey, toilet } = self.0;
        Self(Level { fresh: fresh - ask.fresh_ml, grey: grey - ask.grey_ml, toilet: toilet - ask.toilet })
    }

    /// What does not fit beside what is taken already: of the cans what has gone from them, of the others what is in them.
    fn too_much(self, rooms: &Rooms, taken: Level) -> Option<Vessel> {
        let Level { fresh, grey, toilet } = self.0;
        let holds = rooms.holds;
        match () {
            () if fresh + taken.fresh > holds.fresh => Some(Vessel::Fresh),
            () if rooms.has_grey && grey + taken.grey > holds.grey => Some(Vessel::Grey),
            () if rooms.has_toilet && toilet + taken.toilet > holds.toilet => Some(Vessel::Toilet),
            () => None,
        }
    }
}

/// The first day that no longer holds without any stop, and why.
fn first_too_much(rooms: &Rooms, opening: Level, asks: &[Use]) -> Option<(usize, Vessel)> {
    let taken = Level { fresh: rooms.holds.fresh - opening.fresh, ..opening };
    let mut sum = Asked::default();
    asks.iter().enumerate().find_map(|(day, ask)| {
        sum = sum.with(ask);
        Some((day, sum.too_much(rooms, taken)?))
    })
}

/// What a route's vessels lack.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Extra {
    /// A can more, full at first, in ml: whole tenths of a litre. It does, and with a tenth less it does not.
    pub fresh_ml: u64,
    /// Room for used water more, in ml, if the fresh water is all there.
    pub grey_ml: u64,
    /// Room in the toilet more, in thousandths of a person-day: whole tenths.
    pub toilet: u64,
}

/// The smallest can, grey tank and toilet more with which a route holds as its days have it (refill, empty); 0 of what lacks
/// nothing. Of a vessel that does not exist nothing is said, but of fresh cans.
///
/// From one filling to the next what is asked for must fit, and nothing else matters: the most of these sums is the answer.
pub fn least_extra(setup: &Setup) -> Extra {
    let (rooms, opening) = opened(setup);
    let mut lacks = Level::default();
    // What is used of fresh water since the cans were full, what is in the others.
    let (mut used, mut in_it) = (rooms.holds.fresh - opening.fresh, opening);
    for day in &setup.days {
        let ask = day.asks();
        used = if day.refill { 0 } else { used + ask.fresh_ml };
        in_it.grey = if day.empty_grey { 0 } else { in_it.grey + ask.grey_ml };
        in_it.toilet = if day.empty_toilet { 0 } else { in_it.toilet + ask.toilet };
        lacks.fresh = lacks.fresh.max(used.saturating_sub(rooms.holds.fresh));
        lacks.grey = lacks.grey.max(in_it.grey.saturating_sub(rooms.holds.grey));
        lacks.toilet = lacks.toilet.max(in_it.toilet.saturating_sub(rooms.holds.toilet));
    }
    let size = |lacks: u64| lacks.div_ceil(SIZE_STEP_ML) * SIZE_STEP_ML;
    Extra {
        fresh_ml: size(lacks.fresh),
        grey_ml: if rooms.has_grey { size(lacks.grey) } else { 0 },
        toilet: if rooms.has_toilet { size(lacks.toilet) } else { 0 },
    }
}

/// The days, from 0, of the fewest stops with which all holds, where a route's days say what can be done at each; none if even a
/// stop on each of them is not enough. Of equally few, those that come out of the search first: late ones.
///
/// Day by day, all that could be on board with so many stops is kept, but for what has neither fewer stops nor more of
/// anything than something else: more is never worse later on, so nothing better is lost, and the answer is exact. Little is
/// kept: whoever has the fewest stops can make the last filling, emptying and toilet stop of anybody else besides, so no way
/// with more than three stops beyond the fewest is ever worth it.
pub fn fewest_stops(setup: &Setup) -> Option<Vec<usize>> {
    let (rooms, opening) = opened(setup);
    let mut stops: Vec<(usize, usize)> = Vec::new();
    let mut ways = vec![Way { levels: opening, stops: 0, last: NO_STOP }];
    for (at, day) in setup.days.iter().enumerate() {
        let mut after: Vec<Way> = Vec::with_capacity(ways.len() * 2);
        let asks = day.asks();
        for way in &ways {
            let went = step(&rooms, way.levels, &day.driven_by(), asks);
            if went.holds() {
                keep(&mut after, Way { levels: went.evening(), ..*way });
            }
        }
        if day.may_stop() {
            for way in &ways {
                let went = step(&rooms, way.levels, day, asks);
                let stopped = Way { levels: went.evening(), stops: way.stops + 1, last: stops.len() };
                if went.holds() && keep(&mut after, stopped) {
                    stops.push((at, way.last));
                }
            }
        }
        ways = after;
    }
    let best = ways.iter().min_by_key(|way| way.stops)?;
    Some(days_back(&stops, best.last))
}

/// What is on board in an evening, and how it came about.
#[derive(Clone, Copy)]
struct Way {
    levels: Level,
    stops: u32,
    /// Position of its last stop among all that were tried.
    last: usize,
}

/// Before the first one.
const NO_STOP: usize = usize::MAX;

impl Way {
    /// Whether nothing of it is worse than of another one.
    fn is_no_worse(&self, other: &Self) -> bool {
        self.stops <= other.stops
            && self.levels.fresh >= other.levels.fresh
            && self.levels.grey <= other.levels.grey
            && self.levels.toilet <= other.levels.toilet
    }
}

/// Keeps a way unless another one is no worse, and drops what it makes needless.
fn keep(ways: &mut Vec<Way>, way: Way) -> bool {
    if ways.iter().any(|kept| kept.is_no_worse(&way)) {
        return false;
    }
    ways.retain(|kept| !way.is_no_worse(kept));
    ways.push(way);
    true
}

fn days_back(stops: &[(usize, usize)], last: usize) -> Vec<usize> {
    let mut days = Vec::new();
    let mut next = last;
    while let Some((day, before)) = stops.get(next) {
        days.push(*day);
        next = *before;
    }
    days.reverse();
    days
}
