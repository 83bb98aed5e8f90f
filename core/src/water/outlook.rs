//! What takes longer than a key should: how likely the water lasts when uses are ranges, and the fewest stops that do.

use jiff::civil::Date;
use serde_json::Value;

use super::answers::ahead;
use super::cans::{fresh_by_can_ml, grey_by_tank_ml};
use super::chance::{Asking, Lasting};
use super::constants::{RUNS, RUNS_A_STEP};
use super::course::run;
use super::input::{Meter, Use, Wants, stop_at, toilet_factor, uses};
use super::sizing::fewest_stops;
use super::step::WaterDay;
use super::tanks::{Day as Place, Setup, Tank, Use as Asks};
use crate::draws::Chance;
use crate::energy::spread::{Sampler, Spread};
use crate::plan::record::record;
use crate::plan::{Estimate, Id, Plain, Plan, TankKind};
use crate::run::{Timeline, dated, walk};
use crate::task::Task;

/// How likely it lasts, and where one must stop.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outlook {
    /// How many runs there were; none without a day ahead or without uses.
    pub runs: u32,
    /// In how many of them nothing falls short.
    pub held: u32,
    /// In how many fresh water falls short first.
    pub fresh_first: u32,
    /// In how many the room for used water does.
    pub grey_first: u32,
    /// In how many the toilet does.
    pub toilet_first: u32,
    /// In half of the runs in which something falls short it does so by this day.
    pub likely_on: Option<Date>,
    /// The fewest stops.
    pub fewest: FewestStops,
    /// Each can and tank of the kit along the likely run: the first can is emptied first, the first tank fills first.
    pub cans: Vec<CanRun>,
}

record!(Outlook { runs, held, fresh_first, grey_first, toilet_first, likely_on, fewest, cans });

/// A can or a tank along the likely run.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CanRun {
    /// The item of the kit, all of its pieces together.
    pub item: Id,
    /// The first evening ahead in which it is empty, or as a tank for used water full; none if it never is.
    pub done_on: Option<Date>,
}

record!(CanRun { item, done_on });

/// The fewest stops, among what the stays offer and all stops of the plan, in use or not. Proven.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FewestStops {
    /// Whether any stops are enough; none may be needed.
    pub is_found: bool,
    /// On these days.
    pub days: Vec<StopDay>,
}

record!(FewestStops { is_found, days });

/// A day on which to stop.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StopDay {
    /// The day.
    pub on: Date,
    /// The stop of the plan that is there, or else the stay.
    pub place: Option<Id>,
}

record!(StopDay { on, place });

/// The uses of a plan by chance: each is drawn once a run, from the triangle over its range; and what a person leaves in the
/// toilet.
struct Drawn {
    uses: Vec<Use>,
    samplers: Vec<Sampler>,
    toilet: Sampler,
    highs_c: Vec<Option<f64>>,
    likely_person_days: f64,
    wants: Wants,
    person_days: f64,
    meter: Meter,
}

impl Asking for Drawn {
    fn begin(&mut self, chance: &mut Chance) {
        let litres: Vec<f64> = self.samplers.iter().map(|sampler| sampler.draw(chance)).collect();
        self.wants = Wants::of(&self.uses, &mut |at, _| litres.get(at).copied().unwrap_or(0.0));
        self.person_days = self.likely_person_days * self.toilet.draw(chance);
        self.meter = Meter::default();
    }

    fn on(&mut self, at: usize, day: &Place, _: &mut Chance) -> Asks {
        let high_c = self.highs_c.get(at).copied().flatten();
        let wants = self.meter.next(self.wants.on(high_c), self.person_days);
        Place { wants, ..*day }.asks()
    }
}

fn triangle(estimate: Estimate<f64>) -> Spread {
    Spread::Triangle { low: estimate.low(), likely: estimate.likely(), high: estimate.high() }
}

/// [`Outlook`] in steps.
pub struct OutlookTask {
    setup: Setup,
    drawn: Option<Drawn>,
    days: Vec<WaterDay>,
    seed: u64,
    lasting: Lasting,
    fewest: FewestStops,
    cans: Vec<CanRun>,
}

impl OutlookTask {
    /// Begins.
    pub fn new(plan: &Plan, as_of: Date, seed: u32) -> Self {
        let dated = dated(plan, as_of);
        let plan = &*dated.plan;
        let timeline = Timeline::new(plan, as_of);
        let walked = walk(plan, as_of, &timeline);
        let (supply, course) = (&walked.supply, &walked.water);
        let from = course.days.partition_point(|day| day.on < as_of);
        let (setup, from) = ahead(supply, course, from);
        let days = course.days.get(from..).unwrap_or_default().to_vec();
        let uses = uses(plan);
        let drawn = (!uses.is_empty() && !days.is_empty()).then(|| Drawn {
            samplers: uses.iter().map(|one| Sampler::new(&triangle(one.litres))).collect(),
            toilet: Sampler::new(&toilet_factor(plan).map_or(Spread::Fixed(1.0), |(_, factor)| triangle(factor))),
            highs_c: course.highs_c.get(from..).unwrap_or_default().to_vec(),
            likely_person_days: supply.person_days(),
            wants: Wants::default(),
            person_days: 0.0,
            meter: Meter::default(),
            uses,
        });
        let fewest = if drawn.is_some() { fewest(plan, &timeline, &setup, &days) } else { FewestStops::default() };
        let cans = cans(plan, &setup, &days);
        Self { lasting: Lasting::none(&setup), setup, drawn, days, seed: seed.into(), fewest, cans }
    }

    fn outlook(&self) -> Outlook {
        let lasting = &self.lasting;
        let [fresh_first, grey_first, toilet_first] = lasting.short_first;
        let short = fresh_first + grey_first + toilet_first;
        let mut seen = 0;
        let half = lasting.first_short_on.iter().position(|runs| {
            seen += runs;
            seen * 2 >= short
        });
        Outlook {
            runs: lasting.runs,
            held: lasting.runs - short,
            fresh_first,
            grey_first,
            toilet_first,
            likely_on: half.filter(|_| short > 0).and_then(|day| Some(self.days.get(day)?.on)),
            fewest: self.fewest.clone(),
            cans: self.cans.clone(),
        }
    }
}

impl Task for OutlookTask {
    fn step(&mut self) -> f64 {
        let Some(drawn) = &mut self.drawn else { return 1.0 };
        let left = RUNS.saturating_sub(self.lasting.runs);
        self.lasting.run(&self.setup, drawn, self.seed, left.min(RUNS_A_STEP));
        f64::from(self.lasting.runs) / f64::from(RUNS)
    }

    fn answer(&self) -> Value {
        self.outlook().to_plain()
    }
}

/// When each can is empty, and each tank for used water full. What is in them at first is in the last cans and the first tanks.
fn cans(plan: &Plan, setup: &Setup, days: &[WaterDay]) -> Vec<CanRun> {
    let of = |holds: TankKind| -> Vec<(Id, Tank)> {
        let kept = plan.kept();
        let tanks = kept.filter_map(|item| Some((item, item.tank.filter(|tank| tank.holds == holds)?)));
        tanks.map(|(item, tank)| (item.id, Tank::empty(tank.capacity_l * f64::from(item.kept())))).collect()
    };
    let (mut fresh, mut grey) = (of(TankKind::Fresh), of(TankKind::Grey));
    let opening = |tanks: &[Tank]| tanks.iter().map(|tank| tank.opening_ml).sum();
    pour(fresh.iter_mut().rev().map(|(_, tank)| tank), opening(&setup.fresh));
    pour(grey.iter_mut().map(|(_, tank)| tank), opening(&setup.grey));
    let tanks = |of: &[(Id, Tank)]| of.iter().map(|(_, tank)| *tank).collect();
    let by_can = Setup { fresh: tanks(&fresh), grey: tanks(&grey), ..setup.clone() };
    let course = run(&by_can);
    let (fresh_ml, grey_ml) = (fresh_by_can_ml(&by_can, &course), grey_by_tank_ml(&by_can, &course));
    let first = |evenings: &[Vec<u64>], can: usize, done_ml: u64| {
        let day = evenings.iter().position(|cans| cans.get(can) == Some(&done_ml));
        day.and_then(|day| Some(days.get(day)?.on))
    };
    let fresh = fresh.iter().enumerate().map(|(at, (item, _))| (*item, first(&fresh_ml, at, 0)));
    let grey = grey.iter().enumerate().map(|(at, (item, tank))| (*item, first(&grey_ml, at, tank.capacity_ml)));
    fresh.chain(grey).map(|(item, done_on)| CanRun { item, done_on }).collect()
}

/// Pours so much into tanks, one after another.
fn pour<'a>(tanks: impl Iterator<Item = &'a mut Tank>, mut left_ml: u64) {
    for tank in tanks {
        tank.opening_ml = left_ml.min(tank.capacity_ml);
        left_ml -= tank.opening_ml;
    }
}

/// The fewest stops on the days ahead, with every stop of the plan where it may be.
fn fewest(plan: &Plan, timeline: &Timeline, setup: &Setup, days: &[WaterDay]) -> FewestStops {
    let stops: Vec<_> = plan.water_stops.iter().filter_map(|it| Some((it, plan.begins_on(it.stay)?))).collect();
    let mut all = setup.clone();
    let sources: Vec<Option<Id>> =
        days.iter().map(|day| timeline.index_of(day.on).and_then(|at| timeline.days.get(at)?.source)).collect();
    let there = |at: usize| {
        let (on, source) = (days.get(at).map(|day| day.on), sources.get(at).copied().flatten());
        stops.iter().filter(move |(stop, from)| on.is_some_and(|on| stop.is_there(on, source, *from)))
    };
    for (at, place) in all.days.iter_mut().enumerate() {
        there(at).for_each(|(stop, _)| stop_at(place, stop));
    }
    let Some(found) = fewest_stops(&all) else { return FewestStops::default() };
    let day = |at: &usize| {
        let stop = there(*at).map(|(stop, _)| stop.id).next();
        let on = days.get(*at)?.on;
        Some(StopDay { on, place: stop.or(sources.get(*at).copied().flatten()) })
    };
    FewestStops { is_found: true, days: found.iter().filter_map(day).collect() }
}
