//! The hours that are still ahead, for what is asked of them.

use jiff::civil::Date;

use super::constants::{USE_HIGH, USE_LOW};
use super::input::Input;
use crate::energy::chance::Uncertainty;
use crate::energy::run::Course;
use crate::energy::spread::Spread;
use crate::energy::stops::Place;
use crate::plan::{Id, Money, Plan, Reading, days_between};
use crate::run::{Day, Run, Timeline, walk};
use crate::sun::constants::NEXT_DAY;
use crate::sun::series::Month;

/// The power from some moment on.
pub(super) struct Ahead {
    /// Along the days from `from` on; its stores open with what is in them at that moment.
    pub input: Input,
    /// The first day.
    pub from: Date,
    /// The hour of it.
    pub from_hour: usize,
    /// Whether somebody read the stores then.
    pub is_read: bool,
    /// The days by date and stay.
    days: Vec<(Date, Option<Id>)>,
}

/// From the last reading on, or else from the first day ahead; and from the first whole day ahead.
pub(super) fn of_plan(plan: &Plan, as_of: Date) -> (Ahead, Ahead) {
    let dated = crate::run::dated(plan, as_of);
    let plan = &dated.plan;
    let timeline = Timeline::new(plan, as_of);
    let walked = walk(plan, as_of, &timeline);
    let road: Vec<&Day> = timeline.road().collect();
    let begins = road.first().map_or(as_of, |day| day.date);
    let reading = last_reading(plan, begins, as_of);
    let next_day = reading
        .filter(|(on, reading)| *on == as_of && reading.hour > 0)
        .map_or(as_of, |_| crate::plan::civil::day_after(as_of));
    let far = Ahead::new(plan, &road, &walked, next_day.max(begins), 0, false);
    let near = match reading {
        Some((on, reading)) => Ahead::new(plan, &road, &walked, on, usize::try_from(reading.hour).unwrap_or(0), true),
        None => Ahead::new(plan, &road, &walked, as_of.max(begins), 0, false),
    };
    (near, far)
}

/// The power of the whole road, from an hour of it on.
pub(crate) struct Rest {
    /// Along all days of the road; its stores open with what is in them at that hour.
    pub input: Input,
    /// The hour, counted from the beginning of the road.
    pub from_hour: usize,
    /// The days from that of the hour on, by date and stay.
    pub days: Vec<(Date, Option<Id>)>,
}

/// From the hour of the day's last reading on, or else from the first hour ahead. What hangs on the evening before is known,
/// since the days before are in it.
pub(crate) fn rest(plan: &Plan, as_of: Date, road: &[&Day], mut input: Input, course: &Course) -> Rest {
    let begins = road.first().map_or(as_of, |day| day.date);
    let reading = last_reading(plan, begins, as_of).filter(|(on, _)| *on == as_of);
    let hour = reading.and_then(|(_, reading)| usize::try_from(reading.hour).ok());
    let first = usize::try_from(days_between(begins, as_of)).unwrap_or(0).min(road.len());
    let from_hour = first * 24 + hour.unwrap_or(0);
    open_with(plan, &mut input, course, from_hour, hour.map(|hour| (as_of, hour)));
    Rest { input, from_hour, days: road.iter().skip(first).map(|day| (day.date, day.source)).collect() }
}

/// Lets stores open with what is in them before an hour of the road, or with what was read in that hour of a day.
fn open_with(plan: &Plan, input: &mut Input, course: &Course, hour: usize, read: Option<(Date, usize)>) {
    let boards = input.setup.stores.iter().enumerate();
    let mut charge_wh: Vec<f64> =
        boards.map(|(at, board)| charge_before(course, at, hour, &board.store, board.opening_state)).collect();
    let full_wh: Vec<f64> = input.setup.stores.iter().map(|board| board.store.usable_wh).collect();
    let is_of_the_hour = |reading: &&Reading| {
        read.is_some_and(|(on, hour)| reading.on == Some(on) && usize::try_from(reading.hour) == Ok(hour))
    };
    for reading in plan.readings.iter().filter(is_of_the_hour) {
        input.correct(&mut charge_wh, &full_wh, reading);
    }
    for (board, charge_wh) in input.setup.stores.iter_mut().zip(charge_wh) {
        if board.store.usable_wh > 0.0 {
            board.opening_state = charge_wh / board.store.usable_wh;
        }
    }
}

/// The last time somebody read a store on the road.
fn last_reading(plan: &Plan, begins: Date, as_of: Date) -> Option<(Date, &Reading)> {
    let read = plan.readings.iter().filter(|reading| reading.charge_percent.is_some());
    let read = read.filter_map(|reading| Some((reading.on.filter(|on| (begins..=as_of).contains(on))?, reading)));
    read.max_by_key(|(on, reading)| (*on, reading.hour))
}

impl Ahead {
    fn new(plan: &Plan, road: &[&Day], walked: &Run, from: Date, from_hour: usize, is_read: bool) -> Self {
        let begins = road.first().map_or(from, |day| day.date);
        let first = usize::try_from(days_between(begins, from)).unwrap_or(0).min(road.len());
        let days = road.get(first..).unwrap_or_default();
        let mut input = Input::new(plan, days);
        input.be_as_warm_as(&walked.hours.electrics, first * 24);
        open_with(plan, &mut input, &walked.hours.power, first * 24 + from_hour, is_read.then_some((from, from_hour)));
        Self { input, from, from_hour, is_read, days: days.iter().map(|day| (day.date, day.source)).collect() }
    }

    /// The store that has the least in it for what hangs on it: the one whose size matters.
    pub fn weakest(&self) -> usize {
        let course = crate::energy::run::run(&self.input.setup);
        let lowest = course.stores.iter().map(|store| {
            let reserve_h = store.reserve_h.get(store.lowest_hour).copied().unwrap_or(f64::MAX);
            let is_short = store.hours.iter().any(|hour| hour.short_wh > 0.0) || !store.floor_held;
            if is_short { -1.0 } else { reserve_h }
        });
        lowest.enumerate().min_by(|a, b| a.1.total_cmp(&b.1)).map_or(0, |(at, _)| at)
    }

    /// The next hour after the first in which a store can be charged from a socket or by driving.
    pub fn next_charge(&self) -> Option<usize> {
        let gives = |hour: &usize| {
            self.input.setup.hours.get(*hour).is_some_and(|given| given.mains_w > 0.0 || given.vehicle_w > 0.0)
        };
        (self.from_hour + 1..self.input.setup.hours.len()).find(gives)
    }

    /// So many runs take a few milliseconds.
    pub fn runs_at_once(&self) -> u32 {
        let hours = u32::try_from(self.input.setup.hours.len()).unwrap_or(u32::MAX);
        (40_000 / hours.max(1)).clamp(8, 200)
    }

    /// Where and when one could charge besides, with the id of the place.
    pub fn places(&self, plan: &Plan) -> Vec<(Id, Place)> {
        let digits = plan.minor_digits();
        let minor = |price: Option<Money>| {
            let units = price.and_then(|price| price.to_minor(digits));
            units.and_then(|units| u64::try_from(units).ok()).unwrap_or(0)
        };
        let mut places = Vec::new();
        for (number, (date, stay)) in self.days.iter().enumerate() {
            for place in plan.charging.iter().filter(|place| !place.in_use && place.is_there(*date, *stay)) {
                #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // hours of a day
                let (from, hours) = (
                    libm::ceil(place.from_hour().clamp(0.0, 23.0)) as usize,
                    libm::floor(place.hours().clamp(1.0, 24.0)) as usize,
                );
                places.push((
                    place.id,
                    Place {
                        from_hour: number * 24 + from,
                        most_hours: hours,
                        mains_w: place.gives_w.unwrap_or(super::given::NO_LIMIT_W),
                        price: minor(place.stop_price),
                        price_per_hour: minor(place.hour_price),
                    },
                ));
            }
        }
        places
    }
}

/// What was in a store before an hour of the road.
fn charge_before(
    course: &Course,
    at: usize,
    hour: usize,
    store: &crate::energy::store::Store,
    opening_state: f64,
) -> f64 {
    let hours = course.stores.get(at).map_or(&[][..], |store| &store.hours);
    match hour.checked_sub(1).and_then(|before| hours.get(before).or_else(|| hours.last())) {
        Some(before) => before.charge_wh,
        None => (store.usable_wh * opening_state).min(store.usable_wh),
    }
}

/// What is not certain about the days ahead.
pub(crate) fn uncertainty(plan: &Plan, input: &Input) -> Uncertainty {
    Uncertainty {
        cloud: clouds(&input.clearness),
        cloud_stays: NEXT_DAY,
        drive: driving(plan),
        scale: using(input),
        has_band: true,
    }
}

/// By which what driving brings may differ: as the hours of the stays or days of the week do, all together.
fn driving(plan: &Plan) -> Spread {
    let stays = plan.stays.iter().map(|stay| stay.drive_hours);
    let hours = stays.chain(plan.week.iter().map(|day| day.drive_hours)).flatten();
    let sums = hours
        .fold([0.0; 3], |[low, likely, high], hours| [low + hours.low(), likely + hours.likely(), high + hours.high()]);
    let [low, likely, high] = sums;
    if likely <= 0.0 || low >= high {
        return Spread::Fixed(1.0);
    }
    Spread::Triangle { low: low / likely, likely: 1.0, high: high / likely }
}

/// By which what is used may differ from the likely, over a whole run: the draws' ranges, which are independent, so that their
/// squares add up; never less than days differ anyway.
fn using(input: &Input) -> Spread {
    let likely_wh = |at: usize| input.setup.draws.get(at).map_or(0.0, |draw| draw.power_w * draw.usual_hours());
    let (mut sum, mut below, mut above) = (0.0, 0.0, 0.0);
    for (at, hanging) in input.draws.iter().enumerate() {
        let likely = likely_wh(at);
        let (low, high) = hanging.range;
        sum += likely;
        below += (likely * (1.0 - low)) * (likely * (1.0 - low));
        above += (likely * (high - 1.0)) * (likely * (high - 1.0));
    }
    if sum <= 0.0 {
        return Spread::Fixed(1.0);
    }
    let low = (1.0 - libm::sqrt(below) / sum).clamp(0.0, USE_LOW);
    let high = (1.0 + libm::sqrt(above) / sum).clamp(USE_HIGH, 100.0);
    Spread::Triangle { low, likely: 1.0, high }
}

/// So many days stand for all when their spread is drawn from. Common practice, no source.
const DAYS: usize = 60;

/// How the days of a month are spread around their mean; every day alike where nothing is known.
fn clouds(stretches: &[(usize, f64, f64)]) -> Spread {
    let days: usize = stretches.iter().map(|(days, ..)| days).sum();
    if days == 0 {
        return Spread::Fixed(1.0);
    }
    let mean = |of: fn(&(usize, f64, f64)) -> f64| {
        stretches.iter().map(|stretch| stretch.0 as f64 * of(stretch)).sum::<f64>() / days as f64
    };
    let (clearness, clearest) = (mean(|stretch| stretch.1), mean(|stretch| stretch.2));
    if clearness <= 0.0 {
        return Spread::Fixed(1.0);
    }
    let month = Month::new(clearness, clearest);
    Spread::Measured((0..DAYS).map(|day| month.day((day as f64 + 0.5) / DAYS as f64) / clearness).collect())
}
