//! What the water comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::answers::{First, Lacks, Spacing, ahead, first, lacks, spacing};
use super::constants::{DENSITY_KG_PER_L, MOST_DAYS, TIGHT_DAYS};
use super::findings::Finding;
use super::frost::{self, Frost};
use super::input::Input;
use super::step::{Course, WaterDay};
use super::treated::Treatment;
use super::ways::Toilets;
use super::working::working;
use crate::assessment::{Caution, Margin, Moment, Standing, Verdict};
use crate::plan::{Path, Plan};
use crate::run::{Timeline, missing_road};

/// The water balance of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on.
    pub standing: Standing<Finding>,
    /// Litres by day, on the road.
    pub days: Vec<WaterDay>,
    /// What all fresh cans hold.
    pub fresh_capacity_l: f64,
    /// What all grey tanks hold.
    pub grey_capacity_l: f64,
    /// For how many person-days the toilets of the kit have room.
    pub toilet_capacity_days: f64,
    /// Fresh water used on an average day in temperate air.
    pub use_l_per_day: f64,
    /// The most that fresh and used water and what is in toilets weigh on any day.
    pub heaviest_kg: f64,
    /// The evening with the least water from the day asked on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lowest: Option<WaterDay>,
    /// What falls short first, if anything does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first: Option<First>,
    /// How far apart stops may be.
    pub spacing: Spacing,
    /// What is lacking.
    pub lacks: Lacks,
    /// Water made fit to drink.
    pub treatment: Treatment,
    /// Ways of having a toilet.
    pub toilets: Toilets,
}

/// Mass of water on board. Source: density by IAPWS-95, 20 °C.
pub fn mass_kg(litres: f64) -> f64 {
    litres * DENSITY_KG_PER_L
}

/// Judges the course of the water from `as_of` on, with the frost on its days.
pub fn report(plan: &Plan, as_of: Date, timeline: &Timeline, input: &Input, course: Course, frost: &Frost) -> Report {
    let from = course.days.partition_point(|day| day.on < as_of);
    let days = &course.days[from..];
    let lowest = days.iter().copied().min_by(|a, b| a.fresh_l.total_cmp(&b.fresh_l));
    let missing = if input.has_uses { missing_road(plan, as_of, timeline) } else { vec![Path::section("water_uses")] };
    let treatment = Treatment::new(plan, input, &course, from);
    let toilets = Toilets::new(plan, input, days, &course.places[from..]);
    let mut standing = match lowest {
        Some(lowest) if missing.is_empty() => {
            let mut findings = findings(input, days, lowest);
            treatment.findings(&mut findings);
            toilet_findings(days, &toilets, &mut findings);
            frost::findings(plan, frost, &course.days, from, &mut findings);
            let working = working(plan, input, &course, from, lowest, &treatment);
            Standing { working, ..judge(input, days, lowest, findings) }
        }
        _ => Standing::unknown(missing),
    };
    standing.cautions = cautions(plan, input);
    let (question, begins) = ahead(input, &course, from);
    let heaviest_l = |day: &WaterDay| {
        let aboard = day.most_aboard();
        aboard.fresh_l + aboard.grey_l + aboard.toilet_l
    };
    Report {
        standing,
        lowest,
        fresh_capacity_l: input.fresh_capacity_l,
        grey_capacity_l: input.grey_capacity_l,
        toilet_capacity_days: input.toilet_person_days,
        use_l_per_day: input.use_l_per_day,
        heaviest_kg: mass_kg(course.days.iter().map(heaviest_l).fold(0.0, f64::max)),
        first: first(days),
        spacing: spacing(&question, course.days.get(begins..).unwrap_or_default()),
        lacks: lacks(&question),
        treatment,
        toilets,
        days: course.days,
    }
}

fn judge(input: &Input, ahead: &[WaterDay], lowest: WaterDay, findings: Vec<Finding>) -> Standing<Finding> {
    let short = || ahead.iter().filter(|day| is_missing(day.missing_l));
    let over = ahead.iter().filter(|day| is_missing(day.grey_over_l) || is_missing(day.toilet_over_days));
    let first_short = short().chain(over).map(|day| day.on).min();
    let short_days = short().count();
    let margin = if short_days > 0 { -(short_days as f64) } else { days_left(lowest.fresh_l, input.use_l_per_day) };
    Standing {
        verdict: Verdict::by_worst(&findings),
        margin: Some(Margin::Days(margin)),
        first_short: first_short.map(Moment::day),
        missing: Vec::new(),
        findings,
        cautions: Vec::new(),
        working: Vec::new(),
    }
}

fn cautions(plan: &Plan, input: &Input) -> Vec<Caution> {
    let has_filter = plan.carried().any(|item| item.filters_l.is_some());
    let is_treated = has_filter || plan.water_uses.iter().any(|water_use| water_use.treated.is_some());
    [
        (Caution::WaterQuality, input.fresh_capacity_l > 0.0),
        (Caution::WaterTreated, is_treated),
        (Caution::GreyWaterRules, input.grey_l_per_day > 0.0),
        (Caution::ToiletWaste, input.toilet_person_days > 0.0),
    ]
    .into_iter()
    .filter_map(|(caution, applies)| applies.then_some(caution))
    .collect()
}

/// Less than a millilitre is nothing.
pub(crate) fn is_missing(litres: f64) -> bool {
    litres > 0.001
}

/// Days of supply at a steady use.
pub(super) fn days_left(litres: f64, litres_per_day: f64) -> f64 {
    if litres_per_day > 0.0 { (litres / litres_per_day).min(MOST_DAYS) } else { MOST_DAYS }
}

fn findings(input: &Input, ahead: &[WaterDay], lowest: WaterDay) -> Vec<Finding> {
    let mut findings = Vec::new();
    let short: Vec<&WaterDay> = ahead.iter().filter(|day| is_missing(day.missing_l)).collect();
    let days = days_left(lowest.fresh_l, input.use_l_per_day);
    if let Some(first) = short.first() {
        let missing_l = short.iter().map(|day| day.missing_l).sum();
        findings.push(Finding::RunsOut { on: first.on, short_days: short.len(), missing_l });
    } else if days < TIGHT_DAYS && input.fresh_capacity_l > 0.0 {
        findings.push(Finding::CloseToEmpty { on: lowest.on, left_l: lowest.fresh_l, days });
    }
    if input.fresh_capacity_l <= 0.0 && input.use_l_per_day > 0.0 {
        findings.push(Finding::NoFreshTank { litres_per_day: input.use_l_per_day });
    }
    if input.grey_capacity_l <= 0.0 && input.grey_l_per_day > 0.0 {
        findings.push(Finding::NoGreyTank { litres_per_day: input.grey_l_per_day });
    }
    if let Some(first) = ahead.iter().find(|day| is_missing(day.grey_over_l)) {
        let over_l = ahead.iter().map(|day| day.grey_over_l).sum();
        findings.push(Finding::GreyFull { on: first.on, over_l });
    }
    findings
}

fn toilet_findings(ahead: &[WaterDay], toilets: &Toilets, findings: &mut Vec<Finding>) {
    let mut full = ahead.iter().filter(|day| is_missing(day.toilet_over_days));
    if let Some(first) = full.next() {
        findings.push(Finding::ToiletFull { on: first.on, full_days: 1 + full.count() });
    }
    if let Some(without) = toilets.without.filter(|_| toilets.own == 0) {
        let days = toilets.days - toilets.public_days;
        findings.push(Finding::NoToilet { from: without.from, in_a_row: without.days, days });
    }
}
