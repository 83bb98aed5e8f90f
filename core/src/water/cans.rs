//! What is in each can and each tank in the evenings of a route, for what asks where the weight is.
//!
//! ```
//! use kerbstead_core::water::cans::fresh_by_can_ml;
//! use kerbstead_core::water::course::run;
//! use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
//! let day = Day { wants: Use::new(7.0, 0.0, 0.0), ..Day::default() };
//! let fresh = vec![Tank::full(10.0), Tank::full(20.0)];
//! let setup = Setup { fresh, days: vec![day; 3], ..Setup::default() };
//! let evenings = fresh_by_can_ml(&setup, &run(&setup));
//! assert_eq!(evenings, [[3_000, 20_000], [0, 16_000], [0, 9_000]]);
//! ```

use super::course::{Course, DayOf};
use super::tanks::{Day, Setup, Tank};

/// Fresh water in each can, in ml, evening by evening: the first can is emptied first, and a tap fills all.
pub fn fresh_by_can_ml(setup: &Setup, course: &Course) -> Vec<Vec<u64>> {
    evenings(&setup.fresh, setup, course, |levels, tanks, day, went| {
        if day.refill {
            return levels.iter_mut().zip(tanks).for_each(|(level, tank)| *level = tank.capacity_ml);
        }
        let mut wanted_ml = went.used_ml;
        for level in levels {
            let taken_ml = wanted_ml.min(*level);
            (*level, wanted_ml) = (*level - taken_ml, wanted_ml - taken_ml);
        }
    })
}

/// Used water in each tank, in ml, evening by evening: the first tank fills first, and all are emptied together.
pub fn grey_by_tank_ml(setup: &Setup, course: &Course) -> Vec<Vec<u64>> {
    evenings(&setup.grey, setup, course, |levels, tanks, day, went| {
        if day.empty_grey {
            return levels.fill(0);
        }
        let mut comes_ml = went.grey_added_ml;
        for (level, tank) in levels.iter_mut().zip(tanks) {
            let put_ml = comes_ml.min(tank.capacity_ml - *level);
            (*level, comes_ml) = (*level + put_ml, comes_ml - put_ml);
        }
    })
}

fn evenings(
    tanks: &[Tank],
    setup: &Setup,
    course: &Course,
    turn: fn(&mut [u64], &[Tank], &Day, &DayOf),
) -> Vec<Vec<u64>> {
    let tanks: Vec<Tank> = tanks.iter().map(|tank| tank.sound()).collect();
    let mut levels: Vec<u64> = tanks.iter().map(|tank| tank.opening_ml).collect();
    let mut evenings = Vec::with_capacity(course.days.len());
    for (day, went) in setup.days.iter().zip(&course.days) {
        turn(&mut levels, &tanks, day, went);
        evenings.push(levels.clone());
    }
    evenings
}
