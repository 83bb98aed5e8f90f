//! How long cans, tanks and toilets take: `cargo bench -p kerbstead-tests --bench water`. A route of 365 days is to take at most
//! 0.1 ms.

use divan::{Bencher, black_box};
use jiff::civil::{Date, date};
use kerbstead_core::draws::Chance;
use kerbstead_core::energy::spread::Spread;
use kerbstead_core::plan::{Item, Mode, Plan, Stay, Toilet, Treated, WaterStop, WaterUse, demo_plan};
use kerbstead_core::run::Timeline;
use kerbstead_core::water::cans::fresh_by_can_ml;
use kerbstead_core::water::chance::{Unsure, lasting};
use kerbstead_core::water::course::run;
use kerbstead_core::water::sizing::{fewest_stops, least_extra, longest_interval};
use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
use kerbstead_core::water::{Course, Frost, Input, report};

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

/// The example with its stays again and again for a year, with stops, a toilet and heat-bound drinking.
fn year_of_plan() -> Plan {
    let mut plan = demo_plan();
    plan.calendar.mode = Mode::Stays;
    while plan.stays.iter().map(|stay| stay.nights).sum::<u32>() < 365 {
        plan.stays.push(Stay { id: plan.next_id(), nights: 7, ..Stay::default() });
    }
    let toilet = Toilet { waste_l: Some(20.0), ..Toilet::default() };
    plan.kit.push(Item { id: plan.next_id(), toilet: Some(toilet), filters_l: Some(900.0), ..Item::default() });
    plan.water_uses.push(WaterUse {
        id: plan.next_id(),
        litres_per_day: 2.0.into(),
        is_drunk: true,
        treated: Some(Treated::Filtered),
        ..WaterUse::default()
    });
    let stop = WaterStop { every_days: Some(3), refills: true, empties: true, in_use: true, ..WaterStop::default() };
    plan.water_stops.push(WaterStop { id: plan.next_id(), ..stop });
    plan
}

/// The water side of a plan for a year: its input, its run and its report.
#[divan::bench]
fn a_plan_of_a_year(bencher: Bencher) {
    const AS_OF: Date = date(2027, 3, 1);
    let plan = year_of_plan();
    let timeline = Timeline::new(&plan, AS_OF);
    bencher.bench_local(|| {
        let supply = Input::new(black_box(&plan));
        let (mut level, mut course) = (supply.opening(), Course::default());
        for day in timeline.road() {
            level = course.step(level, &supply, day, Some(27.0));
        }
        report(&plan, AS_OF, &timeline, &supply, course, &Frost::default())
    });
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
