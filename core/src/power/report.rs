//! What the power comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::constants::{MOST_RESERVE_HOURS, TIGHT_HOURS};
use super::findings::Finding;
use super::input::{DayKind, Input, StoreInput, TooStrong};
use super::step::{Course, StoreCourse};
use crate::assessment::{Caution, Margin, Moment, Standing, Verdict};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Id, Path, Plan, Quantity, add_days, days_between};
use crate::run::Timeline;

/// The power balance of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on.
    pub standing: Standing<Finding>,
    /// The first day of the hourly series.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub from: Option<Date>,
    /// Store by store, in the order of the kit.
    pub stores: Vec<StoreReport>,
}

/// One store along the road.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StoreReport {
    /// The item it is.
    pub item: Id,
    /// Energy it holds when full.
    pub usable_wh: f64,
    /// Charge at the end of each hour from the first hour on the road.
    pub charge_wh: Vec<f64>,
    /// The least charge from the day asked on.
    pub lowest_wh: f64,
    /// When it is lowest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lowest_at: Option<Moment>,
    /// Hours it would last from its lowest moment at its average draw, with nothing coming in.
    pub reserve_hours: f64,
    /// When it is first empty with something wanting to run.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_short: Option<Moment>,
    /// Hours in which something wanted more than there was.
    pub short_hours: f64,
    /// Energy put in along the road, at the cells.
    pub put_in_wh: f64,
    /// Energy taken out along the road, at the cells.
    pub taken_out_wh: f64,
    /// Energy missing from the day asked on, at the cells.
    pub unserved_wh: f64,
    /// Average draw along the road if everything is served, at the cells.
    pub average_w: f64,
}

/// Judges the course of the stores from `as_of` on.
pub fn report(plan: &Plan, as_of: Date, timeline: &Timeline, input: &Input, course: &Course) -> Report {
    let from = timeline.road().next().map(|day| day.date);
    let missing = missing(plan, as_of, timeline, input);
    let span = from.map(|from| Span::new(from, as_of));
    let stores: Vec<StoreReport> = match span {
        Some(span) => {
            input.stores.iter().zip(&course.stores).map(|(store, course)| store_report(store, course, span)).collect()
        }
        None => Vec::new(),
    };
    let mut standing =
        if missing.is_empty() { judge(plan, timeline, input, &stores) } else { Standing::unknown(missing) };
    if !input.stores.is_empty() {
        standing.cautions.extend([
            Caution::StoreHeatAndFrost,
            Caution::ChargingUnattended,
            Caution::ExtensionLeads,
            Caution::EngineWhileParked,
        ]);
    }
    Report { standing, from, stores }
}

/// What is not known yet: the road, or that any day of it is still ahead.
fn missing(plan: &Plan, as_of: Date, timeline: &Timeline, input: &Input) -> Vec<Path> {
    if !input.has_draws {
        return Vec::new();
    }
    crate::run::missing_road(plan, as_of, timeline)
}

/// Where the hours of the road lie in time.
#[derive(Clone, Copy)]
struct Span {
    from: Date,
    first_hour: usize,
}

impl Span {
    fn new(from: Date, as_of: Date) -> Self {
        let days = usize::try_from(days_between(from, as_of)).unwrap_or(0);
        Self { from, first_hour: days * 24 }
    }

    fn moment(self, hour: usize, into_h: f64) -> Moment {
        let on = i32::try_from(hour / 24).ok().and_then(|days| add_days(self.from, days));
        Moment::hours_into(on.unwrap_or(self.from), (hour % 24) as f64 + into_h)
    }
}

fn store_report(store: &StoreInput, course: &StoreCourse, span: Span) -> StoreReport {
    let ahead = course.hours.iter().enumerate().skip(span.first_hour);
    let lowest = ahead.clone().min_by(|a, b| a.1.charge_wh.total_cmp(&b.1.charge_wh));
    let first_short = ahead.clone().find_map(|(hour, flow)| Some(span.moment(hour, flow.empty_after_h?)));
    let needed = total(course.hours.iter().map(|flow| flow.taken_out_wh + flow.unserved_wh));
    let average_w = needed / course.hours.len().max(1) as f64;
    let lowest_wh = lowest.map_or(0.0, |(_, flow)| flow.charge_wh);
    StoreReport {
        item: store.item,
        usable_wh: store.store.usable_wh,
        charge_wh: course.hours.iter().map(|flow| flow.charge_wh).collect(),
        lowest_wh,
        lowest_at: lowest.map(|(hour, _)| span.moment(hour, 1.0)),
        reserve_hours: reserve_hours(lowest_wh, average_w),
        first_short,
        short_hours: total(ahead.clone().filter_map(|(_, flow)| Some(1.0 - flow.empty_after_h?))),
        put_in_wh: total(course.hours.iter().map(|flow| flow.put_in_wh)),
        taken_out_wh: total(course.hours.iter().map(|flow| flow.taken_out_wh)),
        unserved_wh: total(ahead.map(|(_, flow)| flow.unserved_wh)),
        average_w,
    }
}

/// The sum in order. The standard sum of nothing is a zero with a minus sign, which nobody should read.
fn total(values: impl Iterator<Item = f64>) -> f64 {
    values.fold(0.0, |sum, value| sum + value)
}

/// Hours a charge lasts at a steady draw.
fn reserve_hours(charge_wh: f64, draw_w: f64) -> f64 {
    if draw_w > 0.0 { (charge_wh / draw_w).min(MOST_RESERVE_HOURS) } else { MOST_RESERVE_HOURS }
}

fn judge(plan: &Plan, timeline: &Timeline, input: &Input, stores: &[StoreReport]) -> Standing<Finding> {
    let name = |id: Id| plan.item(id).map_or_else(String::new, |item| item.name.clone());
    let mut findings: Vec<Finding> = stores.iter().filter_map(|store| of_store(store, name(store.item))).collect();
    findings.extend(input.stores.iter().flat_map(|store| &store.too_strong).map(above_limit));
    findings.extend(input.stores.iter().filter_map(|store| together(store, timeline, name(store.item))));
    if let Some(item) = input.without_store.first() {
        findings.push(Finding::NoStore { count: input.without_store.len(), item: *item, name: name(*item) });
    }
    if !input.has_draws {
        findings.push(Finding::NothingDraws);
    }
    let worst = stores.iter().min_by(|a, b| margin_hours(a).total_cmp(&margin_hours(b)));
    Standing {
        verdict: Verdict::by_worst(&findings),
        margin: worst.filter(|_| input.has_draws).map(|store| Margin::Hours(margin_hours(store))),
        first_short: stores.iter().filter_map(|store| store.first_short).min(),
        missing: Vec::new(),
        findings,
        cautions: Vec::new(),
        working: worst.map(|store| working(input, store)).unwrap_or_default(),
    }
}

/// Hours to spare, or, negative, hours without power.
fn margin_hours(store: &StoreReport) -> f64 {
    if store.first_short.is_some() { -store.short_hours } else { store.reserve_hours }
}

fn of_store(store: &StoreReport, name: String) -> Option<Finding> {
    let item = store.item;
    if let Some(at) = store.first_short {
        let (short_hours, missing_wh) = (store.short_hours, store.unserved_wh);
        return Some(Finding::RunsOut { item, name, at, short_hours, missing_wh });
    }
    let at = store.lowest_at.filter(|_| store.reserve_hours < TIGHT_HOURS)?;
    Some(Finding::CloseToEmpty { item, name, at, reserve_hours: store.reserve_hours })
}

fn above_limit(too_strong: &TooStrong) -> Finding {
    let TooStrong { item, name, needs_w, limit_w, at_start } = too_strong.clone();
    if at_start {
        Finding::AboveSurge { item, name, needs_w, limit_w }
    } else {
        Finding::AboveOutlet { item, name, needs_w, limit_w }
    }
}

/// The worst hour of the kinds of day the road really has, if all that may run in it runs at once.
fn together(store: &StoreInput, timeline: &Timeline, name: String) -> Option<Finding> {
    let mut kinds = [false; DayKind::COUNT];
    timeline.road().for_each(|day| kinds[DayKind::of(day).index()] = true);
    let profiles = store.profiles.iter().zip(kinds).filter(|(_, occurs)| *occurs);
    let limits = &store.store;
    let excess = profiles.flat_map(|(profile, _)| profile.hours.iter().zip(0_u32..)).flat_map(|(need, hour)| {
        [
            (need.ac_peak_w, limits.ac_continuous_w, hour),
            (need.ac_peak_w + need.surge_extra_w, limits.ac_surge_w, hour),
            (need.dc_peak_w, limits.dc_continuous_w, hour),
        ]
    });
    let (needs_w, limit_w, hour) = excess.max_by(|a, b| (a.0 - a.1).total_cmp(&(b.0 - b.1)))?;
    (needs_w > limit_w).then_some(Finding::TogetherAboveOutlet { item: store.item, name, hour, needs_w, limit_w })
}

fn working(input: &Input, store: &StoreReport) -> Vec<Working> {
    let energy = |value| Figure::of(value, Quantity::EnergyWh);
    let watts = |value| Figure::of(value, Quantity::PowerW);
    let margin = if store.first_short.is_some() {
        Working {
            formula: "working-power-short",
            figures: vec![
                ("short", Figure::of(store.short_hours, Quantity::Hours)),
                ("missing", energy(store.unserved_wh)),
                ("average", watts(store.average_w)),
            ],
            source: Source::Arithmetic,
        }
    } else {
        Working {
            formula: "working-power-reserve",
            figures: vec![
                ("lowest", energy(store.lowest_wh)),
                ("average", watts(store.average_w)),
                ("reserve", Figure::of(store.reserve_hours, Quantity::Hours)),
            ],
            source: Source::Arithmetic,
        }
    };
    let mut working = vec![
        margin,
        Working {
            formula: "working-power-energy",
            figures: vec![
                ("put_in", energy(store.put_in_wh)),
                ("taken_out", energy(store.taken_out_wh)),
                ("missing", energy(store.unserved_wh)),
            ],
            source: Source::Arithmetic,
        },
        Working {
            formula: "working-power-socket",
            figures: vec![("socket", watts(input.socket_w))],
            source: Source::CommonPractice,
        },
    ];
    if let Some(data) = input.stores.iter().find(|candidate| candidate.item == store.item) {
        working.push(Working {
            formula: "working-power-inverter",
            figures: vec![
                ("efficiency", Figure::of(data.store.inverter_efficiency_percent, Quantity::Percent)),
                ("idle", watts(data.store.inverter_idle_w)),
            ],
            source: Source::CommonPractice,
        });
    }
    working
}
