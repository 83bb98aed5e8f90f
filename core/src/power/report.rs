//! What the power comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::constants::{LEAST_REFUSED_WH, MOST_RESERVE_HOURS, TIGHT_HOURS};
use super::findings::Finding;
use super::input::{Hanging, Input};
use super::working::working;
use crate::assessment::{Caution, Margin, Moment, Standing, Verdict};
use crate::energy::run::{Course, DrawCourse, HourOf, Limit, Sources, StoreCourse};
use crate::plan::{Id, PanelSetup, Path, Plan};
use crate::run::{Span, Timeline};

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
    /// Draw by draw, in the order of the kit.
    pub draws: Vec<DrawReport>,
    /// Panel by panel, in the order of the kit.
    pub panels: Vec<PanelReport>,
    /// What each hour of the route is like.
    pub hours: Vec<Hour>,
}

/// What an hour of the route is like.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[allow(clippy::struct_excessive_bools)] // an hour is these or not, each by itself
pub struct Hour {
    /// The sun is down.
    pub dark: bool,
    /// The van drives.
    pub driving: bool,
    /// A mains socket or a generator is there.
    pub mains: bool,
    /// Panels give something.
    pub sun: bool,
}

/// One store along the road.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StoreReport {
    /// The item it is.
    pub item: Id,
    /// Energy it holds when full.
    pub usable_wh: f64,
    /// What is to stay in it.
    pub floor_wh: f64,
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
    /// When it first holds less than is to stay in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub below_floor: Option<Moment>,
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
    /// What came from each source on an average day, at the sockets.
    pub from_sun_wh: f64,
    /// From the vehicle.
    pub from_vehicle_wh: f64,
    /// From sockets and generators.
    pub from_mains_wh: f64,
    /// What panels could have given on an average day and it did not take.
    pub unused_sun_wh: f64,
    /// What it loses by itself on an average day.
    pub lost_wh: f64,
    /// What its inverter and outlets lose on an average day.
    pub converted_wh: f64,
    /// Full cycles along the road.
    pub cycles: f64,
    /// Hours in which something was on offer and it was too cold or too hot to charge.
    pub refused_hours: u32,
}

/// One draw along the road.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DrawReport {
    /// The item.
    pub item: Id,
    /// What it takes on an average day, at the outlet.
    pub wh_per_day: f64,
    /// What it does not get along the road because the store is empty.
    pub without_energy_wh: f64,
    /// What it does not get because of an outlet's limit.
    pub without_outlet_wh: f64,
    /// When it is first not served.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_short: Option<Moment>,
}

/// One panel along the road.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PanelReport {
    /// The item.
    pub item: Id,
    /// What it could give on an average day.
    pub wh_per_day: f64,
}

/// Judges the course of the stores from `as_of` on.
pub fn report(plan: &Plan, as_of: Date, timeline: &Timeline, input: &Input, course: &Course) -> Report {
    let from = timeline.road().next().map(|day| day.date);
    let missing = missing(plan, as_of, timeline, input);
    let Some(span) = from.map(|from| Span::new(from, as_of)) else {
        let standing = standing(plan, missing, input, (&[], &[], &[]), Vec::new());
        return Report { standing, from, stores: vec![], draws: vec![], panels: vec![], hours: vec![] };
    };
    let stores: Vec<StoreReport> =
        (0..input.stores.len()).filter_map(|at| store_report(input, at, course, span)).collect();
    let days = (input.setup.hours.len() / 24).max(1) as f64;
    let draws: Vec<DrawReport> = draw_reports(input, course, days, span);
    let mut limited = limits(plan, input, course, span);
    limited.extend(refusals(plan, input, course, span));
    let panels = panel_reports(input, days);
    let standing = standing(plan, missing, input, (&stores, &draws, &panels), limited);
    Report { standing, from, stores, draws, panels, hours: hours(input) }
}

/// What the stores, the draws and the panels come to.
type Reports<'a> = (&'a [StoreReport], &'a [DrawReport], &'a [PanelReport]);

fn standing(
    plan: &Plan,
    missing: Vec<Path>,
    input: &Input,
    reports: Reports,
    limited: Vec<Finding>,
) -> Standing<Finding> {
    let mut standing =
        if missing.is_empty() { judge(plan, input, reports, limited) } else { Standing::unknown(missing) };
    if !input.stores.is_empty() {
        standing.cautions.extend([
            Caution::StoreHeatAndFrost,
            Caution::ChargingUnattended,
            Caution::ExtensionLeads,
            Caution::EngineWhileParked,
        ]);
    }
    let is_on_roof = |item: &crate::plan::Item| item.panel.is_some_and(|panel| panel.setup != Some(PanelSetup::Beside));
    if plan.carried().any(is_on_roof) {
        standing.cautions.push(Caution::PanelsOnRoofs);
    }
    if plan.charging.iter().any(|place| place.gives == crate::plan::Gives::Generator) {
        standing.cautions.push(Caution::GeneratorFumes);
    }
    standing
}

/// What is not known yet: the road, or that any day of it is still ahead.
fn missing(plan: &Plan, as_of: Date, timeline: &Timeline, input: &Input) -> Vec<Path> {
    if !input.has_draws {
        return Vec::new();
    }
    crate::run::missing_road(plan, as_of, timeline)
}

/// Hours into the hour at which the store was first empty with something wanting more than came in, that no other store gave.
fn empty_after_h(hour: &HourOf) -> Option<f64> {
    if hour.missing_wh() <= 0.0 {
        return None;
    }
    // Once it is empty, what comes in goes straight out, and the difference is missing.
    let missing_w = hour.taken_out_wh + hour.short_wh - hour.put_in_wh;
    Some((1.0 - hour.short_wh / missing_w.max(hour.short_wh)).clamp(0.0, 1.0))
}

fn store_report(input: &Input, at: usize, course: &Course, span: Span) -> Option<StoreReport> {
    let draws = &course.draws;
    let (item, board, course) = (*input.stores.get(at)?, input.setup.stores.get(at)?, course.stores.get(at)?);
    let ahead = || course.hours.iter().enumerate().skip(span.first_hour);
    let lowest = ahead().min_by(|a, b| a.1.charge_wh.total_cmp(&b.1.charge_wh));
    let first_short = ahead().find_map(|(hour, of)| Some(span.moment(hour, empty_after_h(of)?)));
    let usable_wh = board.store.usable_wh;
    let floor_wh = (usable_wh * board.floor_state).min(usable_wh);
    let below_floor = ahead().find(|(_, of)| of.charge_wh < floor_wh).map(|(hour, _)| span.moment(hour, 1.0));
    let days = (course.hours.len() / 24).max(1) as f64;
    let taken_out_wh = total(course.hours.iter().map(|hour| hour.taken_out_wh));
    let needed_wh = taken_out_wh + total(course.hours.iter().map(|hour| hour.short_wh));
    let lent_wh = total(course.hours.iter().map(|hour| hour.lent_wh));
    let average_w = needed_wh / course.hours.len().max(1) as f64;
    let lowest_wh = lowest.map_or(0.0, |(_, hour)| hour.charge_wh);
    let Sources { sun_wh, vehicle_wh, mains_wh } = course.sources;
    Some(StoreReport {
        item,
        usable_wh,
        floor_wh,
        charge_wh: course.hours.iter().map(|hour| hour.charge_wh).collect(),
        lowest_wh,
        lowest_at: lowest.map(|(hour, _)| span.moment(hour, 1.0)),
        reserve_hours: reserve_hours(lowest_wh, average_w),
        first_short,
        below_floor,
        short_hours: total(ahead().filter_map(|(_, hour)| Some(1.0 - empty_after_h(hour)?))),
        put_in_wh: total(course.hours.iter().map(|hour| hour.put_in_wh)),
        taken_out_wh,
        unserved_wh: total(ahead().map(|(_, hour)| hour.missing_wh())),
        average_w,
        from_sun_wh: sun_wh / days,
        from_vehicle_wh: vehicle_wh / days,
        from_mains_wh: mains_wh / days,
        unused_sun_wh: course.unused_sun_wh / days,
        lost_wh: total(course.hours.iter().map(|hour| hour.lost_wh)) / days,
        converted_wh: converted_wh(input, at, draws, needed_wh - lent_wh, days),
        cycles: course.cycles,
        refused_hours: refused_hours(input, at, course, span),
    })
}

/// What lies between what the cells give and what draws take at their outlets, on an average day.
fn converted_wh(input: &Input, at: usize, draws: &[DrawCourse], needed_wh: f64, days: f64) -> f64 {
    let here = input.setup.draws.iter().zip(draws).filter(|(draw, _)| draw.store == at);
    let refused_wh =
        |draw: &DrawCourse| draw.by_limit_wh[Limit::Power as usize] + draw.by_limit_wh[Limit::Surge as usize];
    let at_outlets_wh: f64 = here.map(|(_, draw)| draw.wanted_wh - refused_wh(draw)).sum();
    (needed_wh - at_outlets_wh).max(0.0) / days
}

/// Hours in which something was on offer and the temperature let nothing in.
fn refused_hours(input: &Input, at: usize, course: &StoreCourse, span: Span) -> u32 {
    let Some(board) = input.setup.stores.get(at) else { return 0 };
    let is_refused = |(hour, _): &(usize, &HourOf)| {
        let Some(given) = input.setup.hours.get(*hour) else { return false };
        let sun_w = board.panel_w * board.sun_share.get(*hour).copied().unwrap_or(0.0);
        sun_w + given.vehicle_w + given.mains_w > 0.0 && board.store.charging.share_at(given.store_c) <= 0.0
    };
    u32::try_from(course.hours.iter().enumerate().skip(span.first_hour).filter(is_refused).count()).unwrap_or(u32::MAX)
}

fn draw_reports(input: &Input, course: &Course, days: f64, span: Span) -> Vec<DrawReport> {
    let of = |(hanging, unserved): (&Hanging, &DrawCourse)| {
        let [energy_wh, power_wh, surge_wh, input_wh] = unserved.by_limit_wh;
        let first = unserved.first_hour.iter().flatten().min();
        DrawReport {
            item: hanging.item,
            wh_per_day: unserved.wanted_wh / days,
            without_energy_wh: energy_wh + input_wh,
            without_outlet_wh: power_wh + surge_wh,
            first_short: first.map(|hour| span.moment(*hour, 0.0)),
        }
    };
    input.draws.iter().zip(&course.draws).map(of).collect()
}

fn panel_reports(input: &Input, days: f64) -> Vec<PanelReport> {
    let of = |((item, _), watts): (&(Id, usize), &Vec<f64>)| PanelReport {
        item: *item,
        wh_per_day: total(watts.iter().copied()) / days,
    };
    input.panels.iter().zip(&input.panel_w).map(of).collect()
}

fn hours(input: &Input) -> Vec<Hour> {
    let sun_w = |hour: usize| input.panel_w.iter().any(|watts| watts.get(hour).is_some_and(|watts| *watts > 0.0));
    let of = |(hour, given): (usize, &crate::energy::setup::Given)| Hour {
        dark: input.is_dark.get(hour).copied().unwrap_or(false),
        driving: given.vehicle_hour > 0.0,
        mains: given.mains_w > 0.0,
        sun: sun_w(hour),
    };
    input.setup.hours.iter().enumerate().map(of).collect()
}

/// The sum in order. The standard sum of nothing is a zero with a minus sign, which nobody should read.
fn total(values: impl Iterator<Item = f64>) -> f64 {
    values.fold(0.0, |sum, value| sum + value)
}

/// Hours a charge lasts at a steady draw.
fn reserve_hours(charge_wh: f64, draw_w: f64) -> f64 {
    if draw_w > 0.0 { (charge_wh / draw_w).min(MOST_RESERVE_HOURS) } else { MOST_RESERVE_HOURS }
}

fn judge(plan: &Plan, input: &Input, (stores, draws, panels): Reports, limited: Vec<Finding>) -> Standing<Finding> {
    let name = |id: Id| name_of(plan, id);
    let mut findings: Vec<Finding> = stores.iter().filter_map(|store| of_store(store, name(store.item))).collect();
    findings.extend(limited);
    findings.extend(stores.iter().filter(|store| store.refused_hours > 0).map(|store| Finding::TooColdOrHot {
        item: store.item,
        name: name(store.item),
        hours: f64::from(store.refused_hours),
    }));
    if let Some(item) = input.without_store.first() {
        findings.push(Finding::NoStore { count: input.without_store.len(), item: *item, name: name(*item) });
    }
    if let Some((item, _)) = input.panels.first().filter(|_| input.is_place_unknown) {
        findings.push(Finding::NoPlaceForTheSun { item: *item, name: name(*item) });
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
        working: worst.map(|store| working(plan, input, store, draws, panels)).unwrap_or_default(),
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
    if let Some(at) = store.below_floor {
        return Some(Finding::BelowFloor { item, name, at, lowest_wh: store.lowest_wh });
    }
    let at = store.lowest_at.filter(|_| store.reserve_hours < TIGHT_HOURS)?;
    Some(Finding::CloseToEmpty { item, name, at, reserve_hours: store.reserve_hours })
}

/// Which limits keep which draws from being served, whatever the charge.
fn limits(plan: &Plan, input: &Input, course: &Course, span: Span) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (at, (hanging, unserved)) in input.draws.iter().zip(&course.draws).enumerate() {
        let Some(draw) = input.setup.draws.get(at) else { continue };
        // What only happened before the day asked is no use any more.
        if unserved.last_hour < Some(span.first_hour) {
            continue;
        }
        let Some(board) = input.setup.stores.get(draw.store) else { continue };
        let name = name_of(plan, hanging.item);
        let limits = board.store.limits(draw.outlet);
        let [_, power_wh, surge_wh, _] = unserved.by_limit_wh;
        let item = hanging.item;
        if hanging.one_w > limits.continuous_w {
            findings.push(Finding::AboveOutlet { item, name, needs_w: hanging.one_w, limit_w: limits.continuous_w });
        } else if hanging.start_w > limits.surge_w {
            findings.push(Finding::AboveSurge { item, name, needs_w: hanging.start_w, limit_w: limits.surge_w });
        } else if power_wh + surge_wh > 0.0 {
            let limit = if power_wh > 0.0 { Limit::Power } else { Limit::Surge };
            let hour = unserved.first_hour.get(limit as usize).copied().flatten().unwrap_or(0);
            let limit_w = if limit == Limit::Power { limits.continuous_w } else { limits.surge_w };
            let missing_wh = power_wh + surge_wh;
            let at = span.moment(hour, 0.0);
            findings.push(Finding::GivesWay { item, name, at, limit_w, missing_wh });
        }
    }
    findings
}

/// Stores of which the sockets refused what would have helped later.
fn refusals(plan: &Plan, input: &Input, course: &Course, span: Span) -> Vec<Finding> {
    let missing_wh = |at: usize| -> f64 {
        let is_ahead = |draw: &DrawCourse| draw.last_hour >= Some(span.first_hour);
        let here = input.setup.draws.iter().zip(&course.draws);
        let here = here.filter(|(draw, course)| draw.store == at && is_ahead(course));
        here.map(|(_, draw)| draw.by_limit_wh[Limit::Input as usize]).sum()
    };
    let stores = input.stores.iter().enumerate().map(|(at, item)| (*item, missing_wh(at)));
    let refused = stores.filter(|(_, missing_wh)| *missing_wh > LEAST_REFUSED_WH);
    refused.map(|(item, missing_wh)| Finding::InputLimits { item, name: name_of(plan, item), missing_wh }).collect()
}

fn name_of(plan: &Plan, item: Id) -> String {
    plan.item(item).map_or_else(String::new, |item| item.name.clone())
}
