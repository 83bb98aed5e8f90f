//! What the water balance takes: the tanks together, and a day's uses.

use crate::plan::{Estimate, Id, Per, Plan, Reading, TankKind};

/// The water side of a plan.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Input {
    /// What all fresh cans hold.
    pub fresh_capacity_l: f64,
    /// What is in them on the day of leaving.
    pub fresh_opening_l: f64,
    /// What all grey tanks hold.
    pub grey_capacity_l: f64,
    /// What is in them on the day of leaving.
    pub grey_opening_l: f64,
    /// Fresh water used a day.
    pub use_l_per_day: f64,
    /// Of it, what ends as used water to be kept.
    pub grey_l_per_day: f64,
    /// Whether any use is stated.
    pub has_uses: bool,
}

/// Water on board.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Level {
    /// Fresh.
    pub fresh_l: f64,
    /// Used.
    pub grey_l: f64,
}

/// A use of fresh water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Use {
    /// The use, or the item that uses it.
    pub id: Id,
    /// Whether it is an item.
    pub is_item: bool,
    /// Litres a day, of each person or of all.
    pub litres: Estimate<f64>,
    /// How many persons use so much.
    pub persons: f64,
    /// What of it ends as used water, in percent.
    to_grey_percent: f64,
}

/// All uses of a plan: those of its items, then the others.
pub(crate) fn uses(plan: &Plan) -> Vec<Use> {
    let of_items = plan.carried().filter_map(|item| {
        let water = item.water?;
        let (litres, to_grey_percent) = (water.litres_per_day, water.to_grey_percent);
        Some(Use { id: item.id, is_item: true, litres, persons: 1.0, to_grey_percent })
    });
    let others = plan.water_uses.iter().map(|water_use| Use {
        id: water_use.id,
        is_item: false,
        litres: water_use.litres_per_day,
        persons: if water_use.per == Per::Person { f64::from(plan.people) } else { 1.0 },
        to_grey_percent: water_use.to_grey_percent,
    });
    of_items.chain(others).collect()
}

impl Input {
    /// The water side of the plan.
    pub fn new(plan: &Plan) -> Self {
        let mut input = Self::default();
        for item in plan.carried() {
            let Some(tank) = item.tank else { continue };
            let litres = sound(tank.capacity_l) * f64::from(item.kept());
            let filled = |usual: f64| {
                let percent = tank.opening_percent.map_or(usual, sound).min(100.0);
                (litres * percent / 100.0).min(litres)
            };
            match tank.holds {
                TankKind::Fresh => {
                    input.fresh_capacity_l += litres;
                    input.fresh_opening_l += filled(100.0);
                }
                TankKind::Grey => {
                    input.grey_capacity_l += litres;
                    input.grey_opening_l += filled(0.0);
                }
            }
        }
        let uses = uses(plan);
        input.has_uses = !uses.is_empty();
        input.using(&uses, &mut |_, one| one.litres.likely())
    }

    /// The same tanks when each use takes so many litres a day, of each person or of all: asked with its position.
    #[must_use]
    pub(crate) fn using(self, uses: &[Use], litres: &mut dyn FnMut(usize, &Use) -> f64) -> Self {
        let mut input = Self { use_l_per_day: 0.0, grey_l_per_day: 0.0, ..self };
        for (at, one) in uses.iter().enumerate() {
            let litres = sound(litres(at, one)) * one.persons;
            input.use_l_per_day += litres;
            input.grey_l_per_day += litres * sound(one.to_grey_percent).min(100.0) / 100.0;
        }
        input
    }

    /// What is on board on the day of leaving.
    pub fn opening(&self) -> Level {
        Level { fresh_l: self.fresh_opening_l, grey_l: self.grey_opening_l }
    }

    /// What is on board after a count.
    pub(crate) fn counted(&self, level: Level, reading: &Reading) -> Level {
        Level {
            fresh_l: reading.fresh_l.map_or(level.fresh_l, |counted| sound(counted).min(self.fresh_capacity_l)),
            grey_l: reading.grey_l.map_or(level.grey_l, |counted| sound(counted).min(self.grey_capacity_l)),
        }
    }
}

/// The most litres that are believed of anything.
const MOST_L: f64 = 1e6;

fn sound(litres: f64) -> f64 {
    // What is not a number, below zero or a zero with a minus sign becomes plain zero.
    if litres > 0.0 { litres.min(MOST_L) } else { 0.0 }
}
