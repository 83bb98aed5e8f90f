//! The cheapest set of changes against the CP-SAT solver of OR-Tools: the table that `tests/reference/picks.py` made.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::moves::pick::{Choice, PickSearch};
use kerbstead_tests::picks::{Case, cases};

/// Source: CP-SAT of OR-Tools, each proven to be the least, or that there is none.
#[test]
fn the_cheapest_set_costs_what_the_solver_proved() {
    let cases = cases();
    assert!(cases.len() >= 40 && cases.iter().filter(|case| case.cost.is_none()).count() >= 4);
    for Case { name, choice, cost } in cases {
        let picked = PickSearch::new(&choice).end();
        assert!(picked.is_proven, "{name}: {picked:?}");
        assert_eq!(picked.chosen.is_some().then_some(picked.cost), cost, "{name}: {picked:?}");
        assert_eq!(picked.bound, picked.cost, "{name}");
        if let Some(chosen) = picked.chosen {
            assert_good(&choice, &chosen, picked.cost);
        }
    }
}

/// The set costs what is said, reaches every limit, has one of each group at most, and is not refused.
fn assert_good(choice: &Choice, chosen: &[usize], cost: u64) {
    assert_eq!(chosen.iter().map(|at| choice.costs[*at]).sum::<u64>(), cost);
    for (row, need) in choice.effects.iter().zip(&choice.needs) {
        assert!(chosen.iter().map(|at| row[*at]).sum::<i64>() >= *need);
    }
    for group in &choice.groups {
        assert!(chosen.iter().filter(|at| group.contains(at)).count() <= 1);
    }
    assert!(choice.refused.iter().all(|refused| refused != chosen));
}
