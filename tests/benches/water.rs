//! How long cans, tanks and toilets take: `cargo bench -p kerbstead-tests --bench water`. A route of 365 days is to take at most
//! 0.1 ms.

use divan::{Bencher, black_box};
use kerbstead_core::draws::Chance;
use kerbstead_core::energy::spread::Spread;
use kerbstead_core::water::cans::fresh_by_can_ml;
use kerbstead_core::water::chance::{Unsure, lasting};
use kerbstead_core::water::course::run;
use kerbstead_core::water::sizing::{fewest_stops, least_extra, longest_interval};
use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};

fn main() {
    divan::main();
}

/// A year for two, in which one day of so many has each of tap, drain and a place to empty the toilet.
fn year(one_in: u32) -> Setup {
    let mut chance = Chance::new(3);
    let days = (0..365).map(|_| Day {
        wants: Use::new(8.0 + 8.0 * chance.share(), 6.0 + 2.0 * chance.share(), 2.0),
        refill: chance.below(one_in) == 0,
        empty_grey: chance.below(one_in) == 0,
        empty_toilet: chance.below(one_in) == 0,
        public_toilet: chance.below(4) == 0,
        away: false,
    });
    Setup {
        fresh: vec![Tank::full(40.0), Tank::full(20.0), Tank::full(20.0)],
        grey: vec![Tank::empty(40.0), Tank::empty(20.0)],
        toilet: Some(Tank::empty(14.0)),
        days: days.collect(),
    }
}

#[divan::bench]
fn a_year(bencher: Bencher) {
    let setup = year(3);
    bencher.bench_local(|| run(black_box(&setup)).holds());
}

#[divan::bench]
fn a_year_by_can(bencher: Bencher) {
    let setup = year(3);
    let course = run(&setup);
    bencher.bench_local(|| fresh_by_can_ml(black_box(&setup), &course).len());
}

#[divan::bench]
fn the_longest_interval(bencher: Bencher) {
    let setup = year(3);
    bencher.bench_local(|| longest_interval(black_box(&setup)));
}

#[divan::bench]
fn the_least_extra(bencher: Bencher) {
    let setup = year(3);
    bencher.bench_local(|| least_extra(black_box(&setup)));
}

#[divan::bench(args = [1, 2, 3])]
fn the_fewest_stops(bencher: Bencher, one_in: u32) {
    let mut setup = year(one_in);
    // So large that there is something to choose from.
    setup.fresh.push(Tank::full(40.0 * f64::from(one_in)));
    setup.grey.push(Tank::empty(40.0 * f64::from(one_in)));
    setup.toilet = Some(Tank::empty(20.0 * f64::from(one_in)));
    assert!(fewest_stops(&setup).is_some());
    bencher.bench_local(|| fewest_stops(black_box(&setup)).is_some());
}

#[divan::bench]
fn ten_thousand_years_by_chance(bencher: Bencher) {
    let mut setup = year(1);
    setup.fresh.push(Tank::full(100.0));
    let spread = || Spread::Triangle { low: 0.7, likely: 1.0, high: 1.6 };
    let unsure = Unsure { habits: spread(), day: spread(), toilet: spread() };
    bencher.bench_local(|| lasting(black_box(&setup), &unsure, 1, 10_000).share());
}
