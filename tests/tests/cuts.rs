//! Boards cut to lengths against `HiGHS` over every pattern: the table that `tests/reference/cuts.py` made.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::materials::cutting::CutSearch;
use kerbstead_core::plan::Money;
use kerbstead_tests::cuts::{Case, cases};

/// Source: `HiGHS` in `SciPy`, all patterns, each proven to be the least.
#[test]
fn the_cheapest_boards_cost_what_the_solver_proved() {
    let cases = cases();
    assert!(cases.len() >= 45);
    for Case { name, job, cost } in cases {
        let plan = CutSearch::new(&job).unwrap().end();
        assert_eq!((plan.cost, plan.bound, plan.is_proven), (Money::whole(cost), Money::whole(cost), true), "{name}");
        let made = |piece: usize| -> u32 {
            let on = |cut: &kerbstead_core::materials::cutting::CutBoard| {
                cut.alike * u32::try_from(cut.pieces.iter().filter(|placed| placed.piece == piece).count()).unwrap()
            };
            plan.boards.iter().map(on).sum()
        };
        assert!(job.pieces.iter().enumerate().all(|(at, piece)| made(at) == piece.count), "{name}");
    }
}
