//! The verdict on the load.

use super::constants::{CLOSE_PERCENT, FRONT_LEAST_PERCENT, SIDES_DIFFER_PERCENT};
use super::findings::Finding;
use super::input::{Input, sound};
use super::report::{Axle, Report, stated};
use super::step::LoadDay;
use crate::assessment::{Margin, Moment, Standing, Verdict};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Plan, Quantity};
use crate::space::shape_of;

/// The standing of a report whose numbers are there. What was said of fastening stands also where masses are missing.
pub(super) fn standing(plan: &Plan, input: &Input, report: &Report, fastening: Vec<Finding>) -> Standing<Finding> {
    let mut findings = Vec::new();
    let known = report.worst.zip(report.spare_kg).zip(stated(plan.vehicle.gross_limit_kg));
    if let Some(((worst, spare_kg), gross_kg)) = known {
        findings.extend(of_gross(plan, report, &worst, spare_kg, gross_kg));
    }
    findings.extend(of_axles(report));
    findings.extend(fastening);
    findings.extend(notes(plan, input));
    let Some(((worst, spare_kg), gross_kg)) = known else {
        return Standing { findings, ..Standing::unknown(report.standing.missing.clone()) };
    };
    let verdict = Verdict::by_worst(&findings);
    Standing {
        verdict,
        margin: Some(Margin::Mass(margin_kg(report, spare_kg))),
        first_short: first_short(plan, report, gross_kg),
        missing: Vec::new(),
        findings,
        cautions: Vec::new(),
        working: working(plan, report, &worst, spare_kg, gross_kg),
    }
}

/// What is to spare under the limit; where an axle bears too much, no more than it lacks.
fn margin_kg(report: &Report, spare_kg: f64) -> f64 {
    let axles = report.axles.iter().flat_map(|axles| [axles.front, axles.rear]);
    axles.filter_map(|axle| axle.spare_kg).filter(|spare| *spare < 0.0).fold(spare_kg, f64::min)
}

/// The first day on which the van weighs too much, or an axle bears too much.
fn first_short(plan: &Plan, report: &Report, gross_kg: f64) -> Option<Moment> {
    let most_kg = gross_kg - sound(plan.vehicle.luggage_kg());
    let limits = report.axles.map(|axles| (axles.front.limit_kg, axles.rear.limit_kg));
    let (front, rear) = limits.unwrap_or_default();
    let is_over = |kg: Option<f64>, limit: Option<f64>| kg.zip(limit).is_some_and(|(kg, limit)| kg > limit);
    let is_short =
        |day: &&LoadDay| day.total_kg > most_kg || is_over(day.front_kg, front) || is_over(day.rear_kg, rear);
    report.days.iter().find(is_short)?.on.map(Moment::day)
}

fn of_gross(plan: &Plan, report: &Report, worst: &LoadDay, spare_kg: f64, gross_kg: f64) -> Option<Finding> {
    let over_kg = worst.total_kg - gross_kg;
    let highest_over = report.parts.map(|parts| (parts.highest_kg, parts.highest_kg - gross_kg));
    if over_kg > 0.0 {
        Some(Finding::OverGross { on: worst.on, by_kg: over_kg, gross_kg })
    } else if spare_kg < 0.0 {
        Some(Finding::LuggageOver { by_kg: -spare_kg, luggage_kg: sound(plan.vehicle.luggage_kg()) })
    } else if spare_kg < gross_kg * CLOSE_PERCENT / 100.0 {
        Some(Finding::CloseToGross { spare_kg, gross_kg })
    } else {
        let over = highest_over.filter(|(_, by_kg)| *by_kg > 0.0);
        over.map(|(high_kg, by_kg)| Finding::HighestMass { high_kg, by_kg })
    }
}

fn of_axles(report: &Report) -> Vec<Finding> {
    let mut findings = Vec::new();
    let over = |axle: &Axle| Some((axle.limit_kg?, -axle.spare_kg?)).filter(|(_, by_kg)| *by_kg > 0.0);
    if let Some(axles) = &report.axles {
        if let Some((limit_kg, by_kg)) = over(&axles.front) {
            findings.push(Finding::FrontOver { on: axles.front.on, by_kg, limit_kg });
        }
        if let Some((limit_kg, by_kg)) = over(&axles.rear) {
            findings.push(Finding::RearOver { on: axles.rear.on, by_kg, limit_kg });
        }
        if axles.front_least_percent < FRONT_LEAST_PERCENT {
            findings.push(Finding::FrontLight { percent: axles.front_least_percent });
        }
    }
    if let Some(sides) = report.sides.filter(|sides| sides.percent > SIDES_DIFFER_PERCENT) {
        findings.push(Finding::Uneven { left_kg: sides.left_kg, right_kg: sides.right_kg });
    }
    findings
}

/// What is worth knowing of the numbers that all of this rests on.
fn notes(plan: &Plan, input: &Input) -> Vec<Finding> {
    let vehicle = &plan.vehicle;
    let mut notes = Vec::new();
    if let Some(empty_kg) = stated(vehicle.empty_mass_kg) {
        if !vehicle.is_weighed {
            notes.push(Finding::NotWeighed { empty_kg });
        }
        if vehicle.tank_l.is_none() {
            notes.push(Finding::FuelUnknown { percent: sound(vehicle.weighed_fuel_percent()).min(100.0) });
        }
        if !input.missing_for_axles.is_empty() {
            notes.push(Finding::AxlesUnknown { missing: input.missing_for_axles.clone() });
        }
    }
    notes.extend(floor_beyond(plan).map(|by_mm| Finding::FloorBeyondVan { by_mm }));
    if input.unknown_mass > 0 {
        notes.push(Finding::MassUnknown { count: input.unknown_mass });
    }
    notes
}

/// How far the floor would reach beyond the end of the van, in millimetres: then one of these measures is wrong.
fn floor_beyond(plan: &Plan) -> Option<f64> {
    let vehicle = &plan.vehicle;
    let [(_, floor_mm), _] = shape_of(plan).floor_solid().bounds();
    let by_mm = vehicle.floor_from_axle_mm? + floor_mm - vehicle.wheelbase_mm? - vehicle.rear_overhang_mm?;
    (by_mm.is_finite() && by_mm > 0.0).then_some(by_mm)
}

fn working(plan: &Plan, report: &Report, worst: &LoadDay, spare_kg: f64, gross_kg: f64) -> Vec<Working> {
    let mass = |kg: f64| Figure::of(kg, Quantity::MassKg);
    let line = |formula, figures| Working { formula, figures, source: Source::Arithmetic };
    let mut working = Vec::new();
    if let Some(parts) = &report.parts {
        let figures = vec![
            ("empty", mass(parts.empty_kg)),
            ("people", mass(parts.people_kg)),
            ("fuel", mass(parts.fuel_kg)),
            ("things", mass(parts.things_kg)),
            ("water", mass(parts.water_kg)),
            ("total", mass(worst.total_kg)),
        ];
        working.push(line("working-load-total", figures));
    }
    let luggage_kg = sound(plan.vehicle.luggage_kg());
    let figures = vec![
        ("gross", mass(gross_kg)),
        ("total", mass(worst.total_kg)),
        ("luggage", mass(luggage_kg)),
        ("spare", mass(spare_kg)),
    ];
    working.push(line("working-load-spare", figures));
    if let Some(axles) = &report.axles {
        let figures = vec![("front", mass(axles.front.most_kg)), ("rear", mass(axles.rear.most_kg))];
        working.push(line("working-load-axles", figures));
    }
    if let Some(heaviest) = report.tying.iter().max_by(|one, other| one.mass_kg.total_cmp(&other.mass_kg)) {
        let figures = vec![
            ("name", Figure::Name(heaviest.name.clone())),
            ("mass", mass(heaviest.mass_kg)),
            ("force", Figure::of(heaviest.forward_n, Quantity::ForceN)),
        ];
        let source = Source::Published("49 CFR 393.102(a)(1)");
        working.push(Working { formula: "working-load-tying", figures, source });
    }
    working
}
