//! What the counts say of the plan's numbers, and the corrections that follow.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::calibration::{Posterior, Prior, calibrate};
use super::constants::{
    COOLING_SD, ENERGY_NOISE, EXTRA_KM_SD, KM_NOISE, LEAST_CHANGE, LEAST_STRETCHES, MONEY_NOISE, NOISE_WEIGHT,
    PRIOR_SD, TOLD_PERCENT, WATER_NOISE,
};
use super::corrections;
use super::stretches::{Evidence, Gap, Road, Stores};
use crate::explain::Figure;
use crate::moves::constants::USUAL_DAY;
use crate::plan::record::{record, words};
use crate::plan::{Edit, Id, Money, Plan, Quantity};
use crate::power::Skies;
use crate::run::{Timeline, dated, walk_days};
use crate::{money, water};

/// A number of the plan that the road corrects.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum What {
    /// Litres a day, of everybody.
    #[default]
    Water,
    /// What a day on the road costs.
    Spending,
    /// What cools takes a day, at the cells of a store.
    Cooling,
    /// What all else takes a day, at the cells of a store.
    OtherDraws,
    /// What the van drives a day besides its way.
    Driving,
}

words!(What {
    Water = "water", Spending = "spending", Cooling = "cooling", OtherDraws = "other_draws", Driving = "driving",
});

/// What was learned of one number.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Learned {
    /// Which.
    pub what: What,
    /// The store it is of; 0 where it is of none.
    pub store: Id,
    /// What the plan says, a day.
    pub planned: f64,
    /// What the counts say, together with what was thought before, a day.
    pub mean: f64,
    /// It is more than this nine times in ten.
    pub low: f64,
    /// It is less than this nine times in ten.
    pub high: f64,
    /// How many stretches between counts it rests on.
    pub used: u32,
    /// Stretches that differ so much from all others that they were left out.
    pub outliers: Vec<Span>,
    /// Stretches that say nothing.
    pub gaps: Vec<Gap>,
    /// Whether the counts contradict the plan: it was hardly to be expected.
    pub contradicts: bool,
    /// The change that corrects the plan; none where it is right, or too little was counted.
    pub correction: Option<Edit>,
}

record!(Learned { what, store, planned, mean, low, high, used, outliers, gaps, contradicts, correction });

/// From one day to another.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Span {
    /// The first.
    pub from: Date,
    /// The last.
    pub to: Date,
}

record!(Span { from, to });

impl Learned {
    /// What it is measured in.
    pub const fn quantity(&self) -> Option<Quantity> {
        match self.what {
            What::Water => Some(Quantity::VolumeL),
            What::Spending => None,
            What::Cooling | What::OtherDraws => Some(Quantity::EnergyWh),
            What::Driving => Some(Quantity::DistanceKm),
        }
    }
}

/// What the counts up to a day say of a plan: each number of which at least one stretch is known, or a gap.
pub fn learned(plan: &Plan, as_of: Date) -> Vec<Learned> {
    if plan.readings.len() < 2 {
        return Vec::new();
    }
    let moved = dated(plan, as_of);
    let timeline = Timeline::new(&moved.plan, as_of);
    let road = Road::new(&moved.plan, as_of, &timeline);
    let mut all = vec![of_water(plan, &road), of_spending(plan, as_of, &timeline, &road)];
    if plan.carried().any(|item| item.store.is_some()) {
        let stores = road.stores(&Skies::over(&moved.plan, road.days()));
        for item in plan.carried().filter(|item| item.store.is_some()) {
            all.extend(of_store(plan, item.id, &road, &stores).into_iter().flatten());
        }
    }
    all.push(of_driving(plan, &road));
    all.retain(|one| one.used > 0 || !one.gaps.is_empty());
    all
}

fn of_water(plan: &Plan, road: &Road) -> Learned {
    let planned = water::Input::new(plan).use_l_per_day;
    let evidence = road.water();
    let prior = Prior {
        means: vec![1.0],
        sds: vec![corrections::water_spread(plan).max(PRIOR_SD)],
        noise_sd: planned * WATER_NOISE,
        noise_weight: NOISE_WEIGHT,
    };
    let mut learned = one(What::Water, 0, &evidence, &prior, planned);
    learned.correction = worth_it(&learned).then(|| corrections::of_water(plan, &learned)).flatten();
    learned
}

pub(super) fn of_spending(plan: &Plan, as_of: Date, timeline: &Timeline, road: &Road) -> Learned {
    // Nothing of it hangs on the stores.
    let walked = walk_days(plan, as_of, timeline, &[], None).money;
    let a_day = money::report(plan, as_of, timeline, walked, &[]).road_cost_per_day;
    // Where nothing is planned, a usual day is what it is measured by.
    let is_planned = a_day > Money::ZERO;
    let unit = if is_planned { a_day } else { Money::whole(USUAL_DAY) };
    let evidence = road.spending(unit);
    let prior = Prior {
        means: vec![if is_planned { 1.0 } else { 0.0 }],
        sds: vec![if is_planned { PRIOR_SD } else { 1.0 }],
        noise_sd: unit.to_plot() * MONEY_NOISE,
        noise_weight: NOISE_WEIGHT,
    };
    let mut learned = Learned { planned: a_day.to_plot(), ..one(What::Spending, 0, &evidence, &prior, unit.to_plot()) };
    learned.correction = worth_it(&learned).then(|| corrections::of_spending(plan, &learned)).flatten();
    learned
}

fn of_driving(plan: &Plan, road: &Road) -> Learned {
    let prior = Prior { means: vec![0.0], sds: vec![EXTRA_KM_SD], noise_sd: KM_NOISE, noise_weight: NOISE_WEIGHT };
    let mut learned = one(What::Driving, 0, &road.driving(), &prior, 1.0);
    learned.planned = 0.0;
    let is_worth = learned.used as usize >= LEAST_STRETCHES && learned.low > 0.5;
    learned.correction = is_worth.then(|| corrections::of_driving(plan, &learned)).flatten();
    learned
}

fn of_store(plan: &Plan, store: Id, road: &Road, stores: &Stores) -> Option<[Learned; 2]> {
    let evidence = road.power(stores, store)?;
    let (all_wh, rest_wh) = stores.planned_a_day(store)?;
    let cooling_wh = all_wh - rest_wh;
    let prior = Prior {
        means: vec![1.0, 1.0],
        sds: vec![COOLING_SD, PRIOR_SD],
        noise_sd: all_wh * ENERGY_NOISE,
        noise_weight: NOISE_WEIGHT,
    };
    let posterior = calibrate(&evidence.stretches, &prior);
    let [mut cooling, mut rest] = [(What::Cooling, 0, cooling_wh), (What::OtherDraws, 1, rest_wh)]
        .map(|(what, at, planned)| told(what, store, &evidence, posterior.as_ref(), at, planned));
    if cooling_wh <= 0.0 {
        (cooling.used, cooling.gaps) = (0, Vec::new());
    }
    cooling.correction = worth_it(&cooling).then(|| corrections::of_cooling(plan, &cooling)).flatten();
    rest.correction = worth_it(&rest).then(|| corrections::of_draws(plan, &rest)).flatten();
    // Gaps are told once.
    if cooling_wh > 0.0 {
        (rest.gaps, rest.outliers) = (Vec::new(), Vec::new());
    }
    Some([cooling, rest])
}

fn one(what: What, store: Id, evidence: &Evidence, prior: &Prior, planned: f64) -> Learned {
    told(what, store, evidence, calibrate(&evidence.stretches, prior).as_ref(), 0, planned)
}

/// Puts one parameter of what was worked out into the plan's unit.
fn told(what: What, store: Id, evidence: &Evidence, posterior: Option<&Posterior>, at: usize, planned: f64) -> Learned {
    let gaps = evidence.gaps.clone();
    let nothing = Learned { what, store, planned, mean: planned, low: planned, high: planned, ..Learned::default() };
    let Some(posterior) = posterior else { return Learned { gaps, ..nothing } };
    let told = posterior.interval(at, TOLD_PERCENT);
    let (low, high) = told.map_or((1.0, 1.0), |interval| (interval.low, interval.high));
    let mean = posterior.means.get(at).copied().unwrap_or(1.0);
    let span = |at: &usize| evidence.spans.get(*at).map(|(from, to)| Span { from: *from, to: *to });
    let least = if what == What::Driving { f64::MIN } else { 0.0 };
    Learned {
        mean: (mean * planned).max(least),
        low: (low * planned).max(least),
        high: (high * planned).max(least),
        used: u32::try_from(posterior.used).unwrap_or(u32::MAX),
        outliers: posterior.outliers.iter().filter_map(span).collect(),
        contradicts: posterior.contradicts_prior(),
        gaps,
        ..nothing
    }
}

/// Whether enough was counted, and it differs enough from the plan.
fn worth_it(learned: &Learned) -> bool {
    let change = (learned.mean - learned.planned).abs();
    learned.used as usize >= LEAST_STRETCHES && learned.planned > 0.0 && change >= LEAST_CHANGE * learned.planned
}

/// An amount that was learned, to be shown; it is an estimate and no account.
pub fn told_money(amount: f64, plan: &Plan) -> Figure {
    Figure::Money(as_money(amount, plan).unwrap_or_default())
}

/// A plain number as money.
pub(super) fn as_money(amount: f64, plan: &Plan) -> Option<Money> {
    let decimal = Decimal::from_f64_retain(amount)?;
    Some(Money::new(decimal).rounded(plan.minor_digits()))
}
