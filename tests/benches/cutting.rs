//! How long cutting boards and sheets takes: `cargo bench -p kerbstead-tests --bench cutting`.

use divan::{Bencher, black_box};
use kerbstead_core::materials::cutting::{Board, CutJob, CutSearch, Piece};
use kerbstead_core::materials::sheets::{Part, Sheet, SheetJob, SheetSearch};
use kerbstead_core::plan::Money;
use kerbstead_tests::cuts::{Case, cases};

fn main() {
    divan::main();
}

fn named(beginning: &str) -> Vec<Case> {
    cases().into_iter().filter(|case| case.name.starts_with(beginning)).collect()
}

fn cost(job: &CutJob) -> Option<Money> {
    CutSearch::new(black_box(job)).ok().map(|search| search.end().cost)
}

#[divan::bench(args = ["two lengths", "four lengths", "with scrap", "one length", "no kerf"])]
fn all_of_a_kind_to_the_proof(bencher: Bencher, kind: &str) {
    let cases = named(kind);
    bencher.bench(|| cases.iter().filter_map(|case| cost(&case.job)).sum::<Money>());
}

/// So many pieces of sixty lengths.
fn large(count: u32) -> CutJob {
    let piece = |at: u32| Piece { length_mm: f64::from(240 + (at * 739) % 1_760), count: count / 60 };
    let board =
        |length_mm: f64, cents: i64| Board { length_mm, price: Money::from_minor(cents, 2), ..Board::default() };
    CutJob {
        pieces: (0..60).map(piece).collect(),
        boards: vec![board(2_438.0, 389), board(3_658.0, 607)],
        kerf_mm: 3.0,
        ..CutJob::default()
    }
}

#[divan::bench(args = [600, 10_000])]
fn many_pieces_until_the_search_ends(bencher: Bencher, count: u32) {
    let job = large(count);
    bencher.bench(|| cost(&job));
}

/// What one step takes, where many are needed.
#[divan::bench]
fn the_first_step_of_ten_thousand_pieces(bencher: Bencher) {
    let job = large(10_000);
    bencher.with_inputs(|| CutSearch::new(&job).ok()).bench_values(|mut search| search.as_mut().map(CutSearch::step));
}

/// Rules and chances for so many parts of twenty sizes.
#[divan::bench(args = [40, 400])]
fn sheets_until_the_search_ends(bencher: Bencher, count: u32) {
    let part = |at: u32| Part {
        length_mm: f64::from(150 + (at * 367) % 700),
        width_mm: f64::from(100 + (at * 211) % 400),
        count: count / 20,
        keeps_grain: at.is_multiple_of(3),
    };
    let job = SheetJob {
        parts: (0..20).map(part).collect(),
        sheets: vec![Sheet { length_mm: 2_440.0, width_mm: 1_220.0, price: Money::whole(31), available: None }],
        kerf_mm: 3.0,
        trim_mm: 5.0,
    };
    bencher.bench(|| SheetSearch::new(black_box(&job)).ok().map(|search| search.end().cost));
}
