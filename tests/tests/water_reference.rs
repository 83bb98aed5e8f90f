//! Water against independent code: what `tests/reference/water.py` made with iapws and `scipy`.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::energy::spread::Spread;
use kerbstead_core::water::chance::{Unsure, lasting};
use kerbstead_core::water::sizing::fewest_stops;
use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
use kerbstead_core::water::volume::{density_kg_per_l, lying_cylinder_l};
use serde_json::Value;

fn rows(name: &str) -> Vec<Value> {
    let table: Value = serde_json::from_str(include_str!("../data/water.json")).unwrap();
    table[name].as_array().unwrap().clone()
}

fn numbers(row: &Value) -> Vec<f64> {
    row.as_array().unwrap().iter().map(|number| number.as_f64().unwrap()).collect()
}

/// Source: IAPWS-95 at 101,325 Pa, by iapws 1.5.5.
#[test]
fn water_is_as_dense_as_iapws_says() {
    for row in rows("density") {
        let [celsius, density] = numbers(&row)[..] else { unreachable!("{row}") };
        assert!((density_kg_per_l(celsius) - density).abs() < 2e-5, "{row}");
    }
}

/// Source: integration of the circle's chords by `scipy`.
#[test]
fn a_lying_cylinder_holds_what_integration_says() {
    for row in rows("cylinders") {
        let [diameter_mm, length_mm, height_mm, litres] = numbers(&row)[..] else { unreachable!("{row}") };
        let found = lying_cylinder_l(diameter_mm, length_mm, height_mm);
        assert!((found - litres).abs() <= 1e-7 * litres.max(1e-3), "{found} {row}");
    }
}

/// Source: the distribution of a triangle by `scipy`. What so many usual days use lasts ten days if the habits'
/// factor is no more than a tenth of their number; 20,000 runs are off by 0.0035 at the most likely.
#[test]
fn runs_by_chance_last_as_often_as_the_triangle_says() {
    for row in rows("chances") {
        let [low, likely, high, days, share] = numbers(&row)[..] else { unreachable!("{row}") };
        let day = Day { wants: Use::new(10.0, 0.0, 0.0), ..Day::default() };
        let setup = Setup { fresh: vec![Tank::full(10.0 * days)], days: vec![day; 10], ..Setup::default() };
        let unsure = Unsure { habits: Spread::Triangle { low, likely, high }, ..Unsure::default() };
        let found = lasting(&setup, &unsure, 11, 20_000).share();
        assert!((found - share).abs() < 0.012, "{found} {row}");
    }
}

/// Source: an integer program for each route (a stop in every run of days that does not fit), solved exactly by `HiGHS`.
#[test]
fn as_few_stops_do_as_an_exact_solver_says() {
    for row in rows("routes") {
        let list =
            |name: &str| -> Vec<u64> { row[name].as_array().unwrap().iter().map(|n| n.as_u64().unwrap()).collect() };
        let (rooms, taken, offers) = (list("rooms"), list("taken"), list("offers"));
        let asks = row["asks"].as_array().unwrap().iter().map(numbers);
        let days = asks.zip(&offers).map(|(asks, offer)| Day {
            wants: Use::new(asks[0], asks[1], asks[2]),
            refill: offer & 1 > 0,
            empty_grey: offer & 2 > 0,
            empty_toilet: offer & 4 > 0,
            ..Day::default()
        });
        let setup = Setup {
            fresh: vec![Tank { capacity_ml: rooms[0] * 1_000, opening_ml: (rooms[0] - taken[0]) * 1_000 }],
            grey: vec![Tank { capacity_ml: rooms[1] * 1_000, opening_ml: taken[1] * 1_000 }],
            toilet: Some(Tank { capacity_ml: rooms[2] * 1_000, opening_ml: taken[2] * 1_000 }),
            days: days.collect(),
        };
        let found = fewest_stops(&setup);
        assert_eq!(found.map(|days| days.len() as u64), row["fewest"].as_u64(), "{row}");
    }
}
