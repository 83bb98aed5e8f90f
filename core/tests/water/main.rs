//! Cans, tanks and toilets apart from a plan: published values, routes worked by hand, what must hold for any route, searches
//! against trying all, and strange numbers. What `scipy` has is in `tests/tests/water_reference.rs`.

#![allow(clippy::float_cmp, reason = "where values are compared exactly, they are exact")]
#![allow(clippy::unwrap_used, clippy::cast_possible_truncation, reason = "a test may fail, and its seeds are small")]

mod course;
mod needs;
mod published;
mod searches;
mod strange;
mod toilet;

use kerbstead_core::draws::Chance;
use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};

fn assert_near(value: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((value - expected).abs() <= tolerance, "{what}: {value} instead of {expected}");
}

/// A route by chance of so many days, in ml; small numbers, so that it holds now and then.
fn by_chance(seed: u64, days: usize) -> Setup {
    let mut chance = Chance::new(seed);
    let mut below = |count: u32| u64::from(chance.below(count));
    let often = 2 + below(4);
    let days = (0..days).map(|_| {
        let fresh_ml = below(60) * 100;
        Day {
            wants: Use { fresh_ml, grey_ml: below(fresh_ml as u32 + 1), toilet: below(3) * 1_000 },
            refill: below(often as u32) == 0,
            empty_grey: below(often as u32) == 0,
            empty_toilet: below(often as u32) == 0,
            public_toilet: below(4) == 0,
            away: below(8) == 0,
        }
    });
    let days: Vec<Day> = days.collect();
    let mut tank = |most: u32| {
        let capacity_ml = 500 + below(most);
        Tank { capacity_ml, opening_ml: below(capacity_ml as u32 + 1) }
    };
    let fresh = vec![tank(9_000), tank(6_000)];
    let grey = if seed.is_multiple_of(5) { vec![] } else { vec![tank(6_000), tank(6_000)] };
    let toilet = (!seed.is_multiple_of(4)).then(|| tank(9_000));
    Setup { fresh, grey, toilet, days }
}
