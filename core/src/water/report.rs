//! What the water comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::constants::{DENSITY_KG_PER_L, MOST_DAYS, TIGHT_DAYS};
use super::findings::Finding;
use super::input::Input;
use super::step::{Course, WaterDay};
use crate::assessment::{Caution, Margin, Moment, Standing, Verdict};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Path, Plan, Quantity};
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
    /// Fresh water used a day.
    pub use_l_per_day: f64,
    /// The most that fresh and used water weigh on any day.
    pub heaviest_kg: f64,
    /// The evening with the least water from the day asked on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lowest: Option<WaterDay>,
}

/// Mass of water on board. Source: density by IAPWS-95, 20 °C.
pub fn mass_kg(litres: f64) -> f64 {
    litres * DENSITY_KG_PER_L
}

/// Judges the course of the water from `as_of` on.
pub fn report(plan: &Plan, as_of: Date, timeline: &Timeline, input: &Input, course: Course) -> Report {
    let ahead_from = course.days.partition_point(|day| day.on < as_of);
    let ahead = &course.days[ahead_from..];
    let lowest = ahead.iter().copied().min_by(|a, b| a.fresh_l.total_cmp(&b.fresh_l));
    let missing = if input.has_uses { missing_road(plan, as_of, timeline) } else { vec![Path::section("water_uses")] };
    let mut standing = match lowest {
        Some(lowest) if missing.is_empty() => judge(input, ahead, lowest),
        _ => Standing::unknown(missing),
    };
    if input.fresh_capacity_l > 0.0 {
        standing.cautions.push(Caution::WaterQuality);
    }
    if input.grey_l_per_day > 0.0 {
        standing.cautions.push(Caution::GreyWaterRules);
    }
    let heaviest_l = course.days.iter().map(|day| day.fresh_l.max(day.opening_l) + day.grey_l).fold(0.0, f64::max);
    Report {
        standing,
        lowest,
        fresh_capacity_l: input.fresh_capacity_l,
        grey_capacity_l: input.grey_capacity_l,
        use_l_per_day: input.use_l_per_day,
        heaviest_kg: mass_kg(heaviest_l),
        days: course.days,
    }
}

fn judge(input: &Input, ahead: &[WaterDay], lowest: WaterDay) -> Standing<Finding> {
    let short = || ahead.iter().filter(|day| is_missing(day.missing_l));
    let grey_over = || ahead.iter().filter(|day| input.grey_capacity_l > 0.0 && is_missing(day.grey_over_l));
    let findings = findings(input, ahead, lowest);
    let first_short = short().chain(grey_over()).map(|day| day.on).min();
    let short_days = short().count();
    let margin = if short_days > 0 { -(short_days as f64) } else { days_left(lowest.fresh_l, input.use_l_per_day) };
    let verdict = Verdict::by_worst(&findings);
    Standing {
        verdict,
        margin: Some(Margin::Days(margin)),
        first_short: first_short.map(Moment::day),
        missing: Vec::new(),
        findings,
        cautions: Vec::new(),
        working: working(input, lowest),
    }
}

/// Less than a millilitre is nothing.
pub(crate) fn is_missing(litres: f64) -> bool {
    litres > 0.001
}

/// Days of supply at a steady use.
fn days_left(litres: f64, litres_per_day: f64) -> f64 {
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
    if input.grey_capacity_l <= 0.0 {
        if input.grey_l_per_day > 0.0 {
            findings.push(Finding::NoGreyTank { litres_per_day: input.grey_l_per_day });
        }
        return findings;
    }
    if let Some(first) = ahead.iter().find(|day| is_missing(day.grey_over_l)) {
        let over_l = ahead.iter().map(|day| day.grey_over_l).sum();
        findings.push(Finding::GreyFull { on: first.on, over_l });
    }
    findings
}

fn working(input: &Input, lowest: WaterDay) -> Vec<Working> {
    let litres = |value| Figure::of(value, Quantity::VolumeL);
    vec![
        Working {
            formula: "working-water-days",
            figures: vec![
                ("left", litres(lowest.fresh_l)),
                ("use", litres(input.use_l_per_day)),
                ("days", Figure::of(days_left(lowest.fresh_l, input.use_l_per_day), Quantity::Days)),
                ("on", Figure::Date(lowest.on)),
            ],
            source: Source::Arithmetic,
        },
        Working {
            formula: "working-water-mass",
            figures: vec![
                ("capacity", litres(input.fresh_capacity_l)),
                ("mass", Figure::of(mass_kg(input.fresh_capacity_l), Quantity::MassKg)),
            ],
            source: Source::Published("IAPWS-95"),
        },
    ]
}
