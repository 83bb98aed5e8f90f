//! How long it takes to place work in time: `cargo bench -p kerbstead-tests --bench days`.

use divan::{Bencher, black_box};
use kerbstead_core::days::schedule::{
    Durations, Runs, Search, Weather, Workload, critical_chain, first_schedule, slack_slots,
};
use kerbstead_tests::workloads::{SLOTS_PER_DAY, building};

fn main() {
    divan::main();
}

/// Sixty activities in thirty days, four people, eight tools.
fn sixty(seed: u64) -> Workload {
    building(60, 30, seed)
}

#[divan::bench(args = [1, 2, 3])]
fn first_schedule_of_sixty(bencher: Bencher, seed: u64) {
    let workload = sixty(seed);
    bencher.bench(|| first_schedule(black_box(&workload)));
}

#[divan::bench(args = [1, 2, 3], sample_count = 10)]
fn whole_search_of_sixty(bencher: Bencher, seed: u64) {
    let workload = sixty(seed);
    bencher.bench(|| {
        let mut search = Search::new(black_box(&workload));
        while search.step() < 1.0 {}
        search.best().finish
    });
}

#[divan::bench]
fn first_hundred_steps_of_a_search_of_sixty(bencher: Bencher) {
    let workload = sixty(2);
    bencher.bench(|| {
        let mut search = Search::new(black_box(&workload));
        (0..100).map(|_| search.step()).sum::<f64>()
    });
}

#[divan::bench]
fn thousand_runs_of_sixty(bencher: Bencher) {
    let workload = sixty(1);
    let schedule = first_schedule(&workload);
    let works = workload.activities.iter().map(|activity| f64::from(activity.work_slots));
    let durations: Vec<_> = works.map(|likely| Durations { low: likely * 0.75, likely, high: likely * 1.75 }).collect();
    let weather = Weather { calendars: vec![0], chances: vec![0.2], slots_per_day: SLOTS_PER_DAY };
    bencher.bench(|| {
        let mut runs = Runs::new(black_box(&workload), &schedule, &durations, weather.clone(), 1, 1_000);
        while runs.step() < 1.0 {}
        runs.chances()
    });
}

#[divan::bench]
fn chain_and_slack_of_sixty(bencher: Bencher) {
    let workload = sixty(1);
    let schedule = first_schedule(&workload);
    bencher.bench(|| (critical_chain(black_box(&workload), &schedule), slack_slots(&workload, &schedule)));
}

#[divan::bench(sample_count = 5)]
fn first_schedule_of_a_thousand_in_fourteen_months(bencher: Bencher) {
    let workload = building(1_000, 420, 1);
    bencher.bench(|| first_schedule(black_box(&workload)));
}
