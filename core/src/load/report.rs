//! What the load comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::findings::Finding;
use super::input::{Input, sound};
use super::step::LoadDay;
use super::tying::{Tying, tyings};
use super::{fastening, judging};
use crate::assessment::{Caution, Standing};
use crate::plan::{Fastened, Id, Path, Plan};
use crate::run::Timeline;
use crate::space::Placed;
use crate::water::{self, WaterDay};

/// The load of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on. Its margin is what is to spare under the limit on the worst day, after what is to
    /// be kept free; where an axle bears too much, it is the worst of both.
    pub standing: Standing<Finding>,
    /// Every day on the road from the day asked on; without a road, one day with all tanks full. None while the mass of
    /// the empty van is not known.
    pub days: Vec<LoadDay>,
    /// The first of the days on which it weighs most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worst: Option<LoadDay>,
    /// What may still come aboard on that day, after what is to be kept free.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spare_kg: Option<f64>,
    /// What the mass of that day is made of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub parts: Option<Parts>,
    /// What each axle bears at the most, where it can be worked out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub axles: Option<Axles>,
    /// What the sides bear where they differ most, where it can be worked out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sides: Option<Sides>,
    /// What each way of building leaves, of those whose mass is known.
    pub builds: Vec<BuildLoad>,
    /// What it takes to keep each heavy thing in its place.
    pub tying: Vec<Tying>,
    /// Items whose mass is not stated.
    pub unknown_mass: usize,
    /// What of the kit has no place, and is counted in the middle of the floor.
    pub unplaced_kg: f64,
}

/// What a mass is made of.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Parts {
    /// The van without people and fuel.
    pub empty_kg: f64,
    /// Everybody who travels.
    pub people_kg: f64,
    /// A full fuel tank; nothing when it is not known what the tank holds.
    pub fuel_kg: f64,
    /// The kit without water.
    pub things_kg: f64,
    /// Fresh and used water.
    pub water_kg: f64,
    /// All of it, if everything of the kit is as light as it can be.
    pub lowest_kg: f64,
    /// All of it, if everything of the kit is as heavy as it can be.
    pub highest_kg: f64,
}

/// What the axles bear.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Axles {
    /// The front one.
    pub front: Axle,
    /// The rear one.
    pub rear: Axle,
    /// What of the whole the front one bears at the least, in percent.
    pub front_least_percent: f64,
}

/// One axle on the day when it bears most.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Axle {
    /// That day, if there is one.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub on: Option<Date>,
    /// What it bears.
    pub most_kg: f64,
    /// What it may bear, where that is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit_kg: Option<f64>,
    /// What is to spare.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spare_kg: Option<f64>,
}

/// What the sides bear on the day when they differ most.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Sides {
    /// The left wheels.
    pub left_kg: f64,
    /// The right wheels.
    pub right_kg: f64,
    /// By how much they differ, in percent of the whole.
    pub percent: f64,
}

/// What a way of building leaves.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BuildLoad {
    /// The way of building.
    pub build: Id,
    /// What it is called.
    pub name: String,
    /// How much more than what is planned now is in the van with it.
    pub mass_kg: f64,
    /// What may still come aboard then, on the worst day.
    pub spare_kg: f64,
}

/// Judges the load from `as_of` on.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::{Plan, Vehicle};
/// use kerbstead_core::assess;
/// let vehicle = Vehicle { empty_mass_kg: Some(1_985.0), gross_limit_kg: Some(2_800.0), ..Vehicle::default() };
/// let plan = Plan { vehicle, people: 2, ..Plan::default() };
/// // Two people of 75 kg, and nothing else yet.
/// assert_eq!(assess(&plan, date(2027, 2, 1)).load.spare_kg, Some(665.0));
/// ```
pub fn report(
    plan: &Plan,
    as_of: Date,
    timeline: &Timeline,
    placed: &Placed,
    supply: &water::Input,
    water: &[WaterDay],
) -> Report {
    let input = Input::new(plan, placed);
    let missing = missing(plan);
    let days = if stated(plan.vehicle.empty_mass_kg).is_none() {
        Vec::new()
    } else {
        days(&input, as_of, timeline, supply, water)
    };
    let worst = most(&days, |day| Some(day.total_kg)).map(|(day, _)| *day);
    let gross_kg = stated(plan.vehicle.gross_limit_kg);
    let spare_kg = worst.zip(gross_kg).map(|(worst, gross)| gross - worst.total_kg - sound(plan.vehicle.luggage_kg()));
    let tying = tyings(plan, placed);
    let mut report = Report {
        standing: Standing::unknown(missing),
        parts: worst.map(|worst| parts(&input, &worst)),
        axles: axles(plan, &days),
        sides: sides(&days),
        builds: spare_kg.map_or_else(Vec::new, |spare_kg| builds(plan, spare_kg)),
        unknown_mass: input.unknown_mass,
        unplaced_kg: input.unplaced_kg,
        days,
        worst,
        spare_kg,
        tying,
    };
    let fastening = fastening::findings(plan, placed, &report.tying);
    report.standing = judging::standing(plan, &input, &report, fastening);
    report.standing.cautions = cautions(plan, placed);
    report
}

/// What must be known before there can be a verdict.
fn missing(plan: &Plan) -> Vec<Path> {
    let vehicle = &plan.vehicle;
    let needed = [("empty_mass_kg", vehicle.empty_mass_kg), ("gross_limit_kg", vehicle.gross_limit_kg)];
    let missing = needed.iter().filter(|(_, kg)| stated(*kg).is_none());
    missing.map(|(field, _)| Path::section("vehicle").child(field)).collect()
}

/// A mass that is stated and is one.
pub(crate) fn stated(kg: Option<f64>) -> Option<f64> {
    kg.map(sound).filter(|kg| *kg > 0.0)
}

/// The days on the road that are still ahead, each with the most water of its morning and its evening.
fn days(input: &Input, as_of: Date, timeline: &Timeline, supply: &water::Input, water: &[WaterDay]) -> Vec<LoadDay> {
    let ahead = water.iter().filter(|day| day.on >= as_of && day.on <= timeline.ends_on());
    let days: Vec<LoadDay> = ahead.map(|day| input.day(Some(day.on), day.most_aboard())).collect();
    if days.is_empty() { vec![input.day(None, supply.all_full())] } else { days }
}

/// The first day with the most of something, and how much that is.
fn most(days: &[LoadDay], of: fn(&LoadDay) -> Option<f64>) -> Option<(&LoadDay, f64)> {
    let mut most: Option<(&LoadDay, f64)> = None;
    for day in days {
        let Some(value) = of(day) else { continue };
        if most.is_none_or(|(_, before)| value > before) {
            most = Some((day, value));
        }
    }
    most
}

fn parts(input: &Input, worst: &LoadDay) -> Parts {
    let others_kg = input.empty.kg + input.people.kg + input.fuel.kg + worst.water_kg;
    Parts {
        empty_kg: input.empty.kg,
        people_kg: input.people.kg,
        fuel_kg: input.fuel.kg,
        things_kg: input.things.kg,
        water_kg: worst.water_kg,
        lowest_kg: others_kg + input.things_low_kg,
        highest_kg: others_kg + input.things_high_kg,
    }
}

fn axles(plan: &Plan, days: &[LoadDay]) -> Option<Axles> {
    let axle = |of: fn(&LoadDay) -> Option<f64>, limit: Option<f64>| {
        let (day, most_kg) = most(days, of)?;
        let limit_kg = stated(limit);
        Some(Axle { on: day.on, most_kg, limit_kg, spare_kg: limit_kg.map(|limit| limit - most_kg) })
    };
    Some(Axles {
        front: axle(|day| day.front_kg, plan.vehicle.front_limit_kg)?,
        rear: axle(|day| day.rear_kg, plan.vehicle.rear_limit_kg)?,
        front_least_percent: -most(days, |day| day.front_percent().map(|percent| -percent))?.1,
    })
}

fn sides(days: &[LoadDay]) -> Option<Sides> {
    let (day, percent) = most(days, LoadDay::sides_percent)?;
    Some(Sides { left_kg: day.left_kg?, right_kg: day.right_kg?, percent })
}

fn builds(plan: &Plan, spare_kg: f64) -> Vec<BuildLoad> {
    let known = plan.builds.iter().filter_map(|build| Some((build, sound(build.extra_kg?))));
    known
        .map(|(build, mass_kg)| BuildLoad {
            build: build.id,
            name: build.name.clone(),
            mass_kg,
            spare_kg: spare_kg - mass_kg,
        })
        .collect()
}

fn cautions(plan: &Plan, placed: &Placed) -> Vec<Caution> {
    let mut cautions = Vec::new();
    if plan.carried().next().is_some() {
        cautions.extend([Caution::Overloading, Caution::LooseCargo, Caution::BeltsAndAirbags]);
    }
    if placed.things.iter().any(|thing| thing.fastened == Fastened::Strips) {
        cautions.push(Caution::AdhesiveNearHeads);
    }
    cautions
}
