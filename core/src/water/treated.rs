//! Water that is made fit to drink: what boiling it takes of the kit, and how far its filters go.

use jiff::civil::Date;
use serde::Serialize;

use super::boiling::{Boil, filter_lasts_days, filters_needed, rolling_boil_min};
use super::constants::FLAME_TO_POT;
use super::findings::Finding;
use super::input::Input;
use super::step::{Course, WaterDay};
use crate::energy::sound;
use crate::explain::{Figure, Source, Working};
use crate::plan::{Id, Plan, Quantity, Works};
use crate::power::constants::{HEAT_FROM_C, HEAT_PERCENT, STEEL_KJ_PER_KG_K, VESSEL_KG};

/// What making water fit to drink comes to.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Treatment {
    /// What is boiled, if anything is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub boiled: Option<Boiled>,
    /// What goes through a filter on an average day, in l.
    pub filtered_l: f64,
    /// Each filter of the kit.
    pub filters: Vec<Filter>,
    /// The day ahead on which the last of them is done, if it is.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub filters_done_on: Option<Date>,
}

/// A day's water to the boil, and boiled for as long as it must be.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Boiled {
    /// On an average day, in l.
    pub litres: f64,
    /// What that takes of what heats it, in Wh; without anything that does, what goes into the water.
    pub energy_wh: f64,
    /// How long it takes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// The item of the kit that does it: what heats by electricity, or else what burns.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub by: Option<Id>,
    /// What it draws or gives, in W.
    pub power_w: f64,
    /// Minutes of a rolling boil, by the altitude.
    pub rolling_min: f64,
}

/// A filter of the kit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Filter {
    /// The item.
    pub item: Id,
    /// How many days one of it lasts, if anything is filtered.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days: Option<f64>,
    /// How many of it the days ahead take, if all goes through them.
    pub needed: u32,
    /// How many there are.
    pub has: u32,
}

impl Treatment {
    /// That of a plan, on the days of its course from one on.
    pub(super) fn new(plan: &Plan, input: &Input, course: &Course, from: usize) -> Self {
        let (boiled_l, filtered_l) = (input.boiled.on(None).fresh_l, input.filtered.on(None).fresh_l);
        let days = course.days.get(from..).unwrap_or_default();
        let count = u32::try_from(days.len()).unwrap_or(u32::MAX);
        let filters: Vec<Filter> = plan
            .carried()
            .filter_map(|item| {
                let life_l = item.filters_l?;
                let needed = filters_needed(life_l, 0.0, filtered_l, count).unwrap_or(0);
                Some(Filter { item: item.id, days: filter_lasts_days(life_l, filtered_l), needed, has: item.kept() })
            })
            .collect();
        let filters_done_on = filters_done(plan, input, days, course.highs_c.get(from..).unwrap_or_default());
        Self { boiled: (boiled_l > 0.0).then(|| Boiled::new(plan, boiled_l)), filtered_l, filters, filters_done_on }
    }

    /// What there is to say.
    pub(super) fn findings(&self, findings: &mut Vec<Finding>) {
        if let Some(boiled) = self.boiled.filter(|boiled| boiled.by.is_none()) {
            findings.push(Finding::NothingBoils { litres_per_day: boiled.litres });
        }
        if self.filtered_l > 0.0 && self.filters.is_empty() {
            findings.push(Finding::NoFilter { litres_per_day: self.filtered_l });
        }
        if let Some(on) = self.filters_done_on.filter(|_| !self.filters.is_empty()) {
            findings.push(Finding::FiltersDone { on, litres_per_day: self.filtered_l });
        }
    }

    pub(super) fn working(&self, working: &mut Vec<Working>, plan: &Plan) {
        let litres = |value| Figure::of(value, Quantity::VolumeL);
        if let Some(boiled) = self.boiled.filter(|boiled| boiled.by.is_some()) {
            working.push(Working {
                formula: "working-water-boil",
                figures: vec![
                    ("litres", litres(boiled.litres)),
                    ("minutes", Figure::of(boiled.rolling_min, Quantity::Count)),
                    ("power", Figure::of(boiled.power_w, Quantity::PowerW)),
                    ("energy", Figure::of(boiled.energy_wh, Quantity::EnergyWh)),
                ],
                source: Source::Published("CDC, Making water safe in an emergency; Kell 1975"),
            });
        }
        if self.filtered_l > 0.0 && !self.filters.is_empty() {
            let life_l = filters_l(plan);
            working.push(Working {
                formula: "working-water-filters",
                figures: vec![
                    ("life", litres(life_l)),
                    ("litres", litres(self.filtered_l)),
                    ("days", Figure::of(filter_lasts_days(life_l, self.filtered_l).unwrap_or(0.0), Quantity::Days)),
                ],
                source: Source::Arithmetic,
            });
        }
    }
}

/// Litres that all filters of the kit are good for.
fn filters_l(plan: &Plan) -> f64 {
    plan.carried().filter_map(|item| Some(sound(item.filters_l?, 1e9) * f64::from(item.kept()))).sum()
}

/// The first day with more to filter than all filters are good for.
fn filters_done(plan: &Plan, input: &Input, days: &[WaterDay], highs_c: &[Option<f64>]) -> Option<Date> {
    let mut left_l = filters_l(plan);
    let day = days.iter().zip(highs_c).find(|(_, high_c)| {
        left_l -= input.filtered.on(**high_c).fresh_l;
        left_l < -1e-6
    });
    day.map(|(day, _)| day.on)
}

impl Boiled {
    fn new(plan: &Plan, litres: f64) -> Self {
        let altitude_m = plan.climate.altitude_m.unwrap_or(0.0);
        let cold = Boil { litres, from_c: HEAT_FROM_C, altitude_m, ..Boil::default() };
        let (by, boil) = heater(plan, cold).map_or((None, cold), |(id, boil)| (Some(id), boil));
        Self {
            litres,
            energy_wh: boil.energy_wh(),
            minutes: boil.hours().map(|hours| hours * 60.0),
            by,
            power_w: boil.power_w,
            rolling_min: rolling_boil_min(altitude_m),
        }
    }
}

/// What of the kit heats water, electric first, and the same water on it.
fn heater(plan: &Plan, cold: Boil) -> Option<(Id, Boil)> {
    let electric = plan.kept().find_map(|item| {
        let draw = item.draw.filter(|draw| draw.works == Some(Works::Heating))?;
        let power_w = sound(draw.power_w.likely(), 1e6);
        let boil = Boil {
            from_c: draw.heats_from_c.unwrap_or(cold.from_c),
            pot_kj_per_k: draw.vessel_kg.unwrap_or(VESSEL_KG) * STEEL_KJ_PER_KG_K,
            power_w,
            efficiency: draw.heat_percent.unwrap_or(HEAT_PERCENT) / 100.0,
            ..cold
        };
        (power_w > 0.0).then_some((item.id, boil))
    });
    electric.or_else(|| {
        plan.kept().find_map(|item| {
            // What vents outside warms the room and bears no pot.
            let burner = item.burner.filter(|burner| !burner.vents_out)?;
            let power_w = sound(burner.heat_w, 1e6);
            let boil = Boil { power_w, efficiency: FLAME_TO_POT, pot_kj_per_k: VESSEL_KG * STEEL_KJ_PER_KG_K, ..cold };
            (power_w > 0.0).then_some((item.id, boil))
        })
    })
}
