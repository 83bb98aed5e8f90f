//! How long the cheapest set of changes takes: `cargo bench -p kerbstead-tests --bench picks`.

use divan::{Bencher, black_box};
use kerbstead_core::moves::pick::PickSearch;
use kerbstead_tests::picks::{Case, cases};

fn main() {
    divan::main();
}

fn named(beginning: &str) -> Vec<Case> {
    cases().into_iter().filter(|case| case.name.starts_with(beginning)).collect()
}

#[divan::bench(args = ["40 by 6,", "40 by 6 with groups", "30 by 6, refused", "64 by 12", "64 by 40", "40 by 80"])]
fn all_of_a_kind_to_the_proof(bencher: Bencher, kind: &str) {
    let cases = named(kind);
    bencher.bench(|| cases.iter().map(|case| PickSearch::new(black_box(&case.choice)).end().cost).sum::<u64>());
}

/// What one step takes, where many are needed.
#[divan::bench]
fn the_first_step_of_64_by_12(bencher: Bencher) {
    let cases = named("64 by 12");
    bencher.with_inputs(|| PickSearch::new(&cases[1].choice)).bench_values(|mut search| {
        search.step();
        search
    });
}
