//! What the water balance takes: the tanks together, and a day's uses.

use crate::plan::{Per, Plan, Reading, TankKind};

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

impl Input {
    /// The water side of the plan.
    pub fn new(plan: &Plan) -> Self {
        let mut input = Self::default();
        for item in plan.carried() {
            if let Some(tank) = item.tank {
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
            if let Some(water) = item.water {
                input.add_use(sound(water.litres_per_day.likely()), water.to_grey_percent);
            }
        }
        for water_use in &plan.water_uses {
            let persons = if water_use.per == Per::Person { f64::from(plan.people) } else { 1.0 };
            input.add_use(sound(water_use.litres_per_day.likely()) * persons, water_use.to_grey_percent);
        }
        input
    }

    fn add_use(&mut self, litres: f64, to_grey_percent: f64) {
        self.use_l_per_day += litres;
        self.grey_l_per_day += litres * sound(to_grey_percent).min(100.0) / 100.0;
        self.has_uses = true;
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
