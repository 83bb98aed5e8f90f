//! What lies between two counts of one thing: what was used, and what the plan expected.
//!
//! Only stretches in which nothing unknown came in can be learned from. The others are gaps, each with its reason.

use jiff::civil::Date;

use super::calibration::Stretch;
use super::constants::{FULL_SHARE, LEAST_HOURS, MOST_GAP_DAYS};
use crate::energy::run::{Course, HourOf, run};
use crate::money::{self, FlowGroup};
use crate::plan::record::{record, words};
use crate::plan::{Id, Money, Plan, Reading, Works, days_between};
use crate::power::{self, Skies};
use crate::run::{Day, Timeline, usable_readings, walk_with};
use crate::water;

/// Why a stretch between two counts says nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Why {
    /// There was a tap on the way, or more is there than before.
    #[default]
    Refilled,
    /// There was a socket on the way, or more is there than before.
    Charged,
    /// The store was full or empty on the way: what more came, or was wanted, nobody knows.
    FullOrEmpty,
    /// Too much time lies between them.
    TooLong,
    /// Hardly any time lies between them.
    TooShort,
    /// It was not on the road.
    AtHome,
    /// The distance goes back.
    Backwards,
}

words!(Why {
    Refilled = "refilled", Charged = "charged", FullOrEmpty = "full_or_empty", TooLong = "too_long",
    TooShort = "too_short", AtHome = "at_home", Backwards = "backwards",
});

/// A stretch that says nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Gap {
    /// The day of the first count.
    pub from: Date,
    /// The day of the second.
    pub to: Date,
    /// Why.
    pub why: Why,
}

record!(Gap { from, to, why });

/// All stretches of one thing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Evidence {
    /// What can be learned from.
    pub stretches: Vec<Stretch>,
    /// From which day to which, stretch by stretch.
    pub spans: Vec<(Date, Date)>,
    /// What cannot.
    pub gaps: Vec<Gap>,
}

impl Evidence {
    fn add(&mut self, span: (Date, Date), found: Result<Stretch, Why>) {
        match found {
            Ok(stretch) => {
                self.stretches.push(stretch);
                self.spans.push(span);
            }
            Err(why) => self.gaps.push(Gap { from: span.0, to: span.1, why }),
        }
    }
}

/// A count of one thing.
#[derive(Clone, Copy, Debug)]
struct Count {
    on: Date,
    hour: u32,
    value: f64,
}

impl Count {
    /// Days from this count to a later one.
    fn days_to(&self, later: &Self) -> f64 {
        f64::from(days_between(self.on, later.on)) + (f64::from(later.hour) - f64::from(self.hour)) / 24.0
    }
}

/// The road up to a day, with what was counted on it.
pub struct Road<'a> {
    plan: &'a Plan,
    as_of: Date,
    timeline: &'a Timeline<'a>,
    days: Vec<&'a Day<'a>>,
    readings: Vec<&'a Reading>,
}

impl<'a> Road<'a> {
    /// Of a plan whose work has given its days.
    pub fn new(plan: &'a Plan, as_of: Date, timeline: &'a Timeline<'a>) -> Self {
        let days: Vec<&Day> = timeline.road().collect();
        let readings = usable_readings(plan, as_of);
        Self { plan, as_of, timeline, days, readings }
    }

    /// What was counted of a thing, in the order of time; of several at one time, the last.
    fn counts(&self, value: impl Fn(&Reading) -> Option<f64>) -> Vec<Count> {
        let mut counts: Vec<Count> = Vec::new();
        for reading in &self.readings {
            let (Some(on), Some(value)) = (reading.on, value(reading).filter(|value| value.is_finite())) else {
                continue;
            };
            let count = Count { on, hour: reading.hour.min(23), value };
            match counts.last_mut().filter(|last| (last.on, last.hour) == (count.on, count.hour)) {
                Some(last) => *last = count,
                None => counts.push(count),
            }
        }
        counts
    }

    fn evidence(&self, counts: &[Count], of: impl Fn(&Count, &Count, f64) -> Result<Stretch, Why>) -> Evidence {
        let mut evidence = Evidence::default();
        for pair in counts.windows(2) {
            let [first, second] = pair else { continue };
            let days = first.days_to(second);
            let found = match days {
                _ if self.place(first.on).is_none() || self.place(second.on).is_none() => Err(Why::AtHome),
                days if days * 24.0 < LEAST_HOURS => Err(Why::TooShort),
                days if days > MOST_GAP_DAYS => Err(Why::TooLong),
                days => of(first, second, days),
            };
            evidence.add((first.on, second.on), found);
        }
        evidence
    }

    /// The number of a day on the road.
    fn place(&self, on: Date) -> Option<usize> {
        let first = self.days.first()?.date;
        let at = usize::try_from(days_between(first, on)).ok()?;
        (first <= on && at < self.days.len()).then_some(at)
    }

    /// The days of the road from one to another, both counted.
    fn between(&self, from: Date, to: Date) -> &[&'a Day<'a>] {
        let (Some(from), Some(to)) = (self.place(from), self.place(to)) else { return &[] };
        self.days.get(from..=to).unwrap_or_default()
    }

    /// Fresh water, in litres beside what the plan uses in the time.
    pub fn water(&self) -> Evidence {
        let litres_a_day = water::Input::new(self.plan).use_l_per_day;
        let counts = self.counts(|reading| reading.fresh_l);
        self.evidence(&counts, |first, second, days| {
            // A tap fills the cans in the evening: it may have, if a night lies between.
            let nights = self.between(first.on, second.on).iter().filter(|day| day.date < second.on);
            let had_tap = nights.into_iter().any(|day| day.offer.is_some_and(|offer| offer.water));
            let observed = first.value - second.value;
            if had_tap || observed < 0.0 {
                return Err(Why::Refilled);
            }
            Ok(Stretch { observed, expected: vec![litres_a_day * days], known: 0.0, weight_days: days })
        })
    }

    /// Cash, beside what an average day on the road costs; what is planned apart from that, such as wages and purchases, is
    /// known. An estimate of a rate and no account: it is made in plain numbers.
    pub fn spending(&self, a_day: Money) -> Evidence {
        let flows = money::Input::new(self.plan, self.as_of, self.timeline).flows;
        let is_running = |group: FlowGroup| {
            matches!(
                group,
                FlowGroup::Costs | FlowGroup::Nights | FlowGroup::Charging | FlowGroup::Data | FlowGroup::Fuel
            )
        };
        let counts = self.counts(|reading| reading.cash.map(Money::to_plot));
        self.evidence(&counts, |first, second, days| {
            // A count before noon stands before the day's movements, one from noon on after them.
            let is_in = |on: Date| {
                (on > first.on || on == first.on && first.hour < 12)
                    && (on < second.on || on == second.on && second.hour >= 12)
            };
            let others = flows.iter().filter(|flow| flow.counts() && is_in(flow.on) && !is_running(flow.group));
            let others: Money = others.map(|flow| flow.amount).sum();
            let observed = first.value - second.value;
            Ok(Stretch {
                observed,
                expected: vec![a_day.to_plot() * days],
                known: -others.to_plot(),
                weight_days: days,
            })
        })
    }

    /// What the van drives besides the way of the plan, in km.
    pub fn driving(&self) -> Evidence {
        let counts = self.counts(|reading| reading.odometer_km);
        self.evidence(&counts, |first, second, days| {
            // The day's way is driven from the morning on.
            let is_in =
                |day: &&&Day| (day.date > first.on || first.hour < 12) && (day.date < second.on || second.hour >= 12);
            let planned_km: f64 = self.between(first.on, second.on).iter().filter(is_in).map(|day| day.drive_km).sum();
            let observed = second.value - first.value;
            if observed < 0.0 {
                return Err(Why::Backwards);
            }
            Ok(Stretch { observed, expected: vec![days], known: planned_km, weight_days: days })
        })
    }

    /// The stores along the road under these skies, as they are and without what cools.
    pub fn stores(&self, skies: &Skies) -> Stores {
        let electrics = power::Input::beneath(self.plan, &self.days, skies);
        let rest = power::Input::beneath(&without_cooling(self.plan), &self.days, skies);
        Stores { course: self.course(&electrics), rest_course: self.course(&rest), electrics, rest }
    }

    /// The days.
    pub fn days(&self) -> &[&'a Day<'a>] {
        &self.days
    }

    /// What a store gave: first to what cools, then to all else, in Wh at its cells.
    pub fn power(&self, stores: &Stores, store: Id) -> Option<Evidence> {
        let electrics = &stores.electrics;
        let at = stores.position(store)?;
        let usable_wh = electrics.setup.stores.get(at)?.store.usable_wh;
        let is_first = at == 0;
        let counts = self.counts(|reading| {
            let is_of_it = reading.store == Some(store) || (reading.store.is_none() && is_first);
            reading.charge_percent.filter(|_| is_of_it)
        });
        Some(self.evidence(&counts, |first, second, days| {
            let hour = |count: &Count| self.place(count.on).map_or(0, |day| day * 24 + count.hour as usize);
            let range = hour(first)..hour(second);
            let given = electrics.setup.hours.get(range.clone()).unwrap_or_default();
            let here = hours_of(&stores.course, at).get(range.clone()).unwrap_or_default();
            if given.iter().any(|hour| hour.mains_w > 0.0) || second.value > first.value {
                return Err(Why::Charged);
            }
            let is_full = |hour: &HourOf| hour.put_in_wh > 0.0 && hour.charge_wh >= usable_wh * FULL_SHARE;
            if here.iter().any(|hour| hour.short_wh > 0.0 || is_full(hour)) {
                return Err(Why::FullOrEmpty);
            }
            let sum = |hours: &[HourOf], of: fn(&HourOf) -> f64| -> f64 { hours.iter().map(of).sum() };
            let all = sum(here, |hour| hour.taken_out_wh);
            let without = hours_of(&stores.rest_course, at).get(range).unwrap_or_default();
            let rest = sum(without, |hour| hour.taken_out_wh).min(all);
            Ok(Stretch {
                observed: (first.value - second.value) / 100.0 * usable_wh,
                expected: vec![all - rest, rest],
                known: sum(here, |hour| hour.lost_wh) - sum(here, |hour| hour.put_in_wh),
                weight_days: days,
            })
        }))
    }

    fn course(&self, electrics: &power::Input) -> Course {
        walk_with(self.plan, self.as_of, self.timeline, Some(electrics)).power.unwrap_or_default()
    }
}

/// The stores along the road: their courses with what was counted, as they are and without what cools.
pub struct Stores {
    electrics: power::Input,
    course: Course,
    rest: power::Input,
    rest_course: Course,
}

impl Stores {
    fn position(&self, store: Id) -> Option<usize> {
        self.electrics.stores.iter().position(|known| *known == store)
    }

    /// What is wanted of a store each day, in Wh at its cells.
    pub fn wanted_by_day(&self, store: Id) -> Vec<f64> {
        let hours = self.position(store).map(|at| hours_of(&self.course, at)).unwrap_or_default();
        hours.chunks(24).map(wanted_wh).collect()
    }

    /// What the plan expects to be wanted of a store on an average day, whatever was counted: in all, and by all that does not
    /// cool.
    pub fn planned_a_day(&self, store: Id) -> Option<(f64, f64)> {
        let at = self.position(store)?;
        let a_day = |electrics: &power::Input| {
            let course = run(&electrics.setup);
            let hours = hours_of(&course, at);
            wanted_wh(hours) / (hours.len().max(1) as f64 / 24.0)
        };
        let all_wh = a_day(&self.electrics);
        Some((all_wh, a_day(&self.rest).min(all_wh)))
    }
}

fn hours_of(course: &Course, at: usize) -> &[HourOf] {
    course.stores.get(at).map_or(&[], |store| &store.hours)
}

fn wanted_wh(hours: &[HourOf]) -> f64 {
    hours.iter().map(|hour| hour.taken_out_wh + hour.short_wh).sum()
}

/// The plan without what cools.
fn without_cooling(plan: &Plan) -> Plan {
    let mut plan = plan.clone();
    for item in &mut plan.kit {
        item.draw = item.draw.filter(|draw| draw.works != Some(Works::Cooling));
    }
    plan
}
