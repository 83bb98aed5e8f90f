//! What must hold for the changes that are suggested, whatever the plan.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::Date;
use kerbstead_core::moves::{Found, Move, Moves, MovesTask, tried};
use kerbstead_core::plan::{Edit, List, Need, Plan};
use kerbstead_core::task::Task;
use kerbstead_core::{Again, Outcome, assess};
use kerbstead_tests::generate::{Change, Taste, cases, days, edits, native_plans};
use proptest::prelude::*;

fn answered(plan: &Plan, as_of: Date) -> Moves {
    let mut task = MovesTask::new(plan, as_of);
    while task.step() < 1.0 {}
    task.moves()
}

fn with(plan: &Plan, edit: &Edit) -> Plan {
    let mut changed = plan.clone();
    edit.clone().apply(&mut changed).unwrap();
    changed
}

/// The items of the kit that an edit changes or takes out.
fn touched(edit: &Edit) -> Vec<u32> {
    match edit {
        Edit::Set { path, .. } => {
            let mut names = path.as_str().split('/');
            let is_kit = names.next() == Some(List::Kit.name());
            names.next().filter(|_| is_kit).and_then(|id| id.parse().ok()).into_iter().collect()
        }
        Edit::Remove { list: List::Kit, id } | Edit::Move { list: List::Kit, id, .. } => vec![*id],
        Edit::All { edits } => edits.iter().flat_map(touched).collect(),
        _ => Vec::new(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn assessed_again_a_changed_plan_is_what_it_is_assessed_as(
        (plan, as_of) in cases(), changes in proptest::collection::vec(edits(), 1..4)
    ) {
        let again = Again::new(&plan, as_of);
        prop_assert_eq!(again.before(), &Outcome::of(&assess(&plan, as_of)));
        let mut changed = plan.clone();
        for change in changes {
            let _ = Change::of(change, &changed.clone()).apply(&mut changed);
            prop_assert_eq!(again.outcome(&changed), Outcome::of(&assess(&changed, as_of)));
        }
    }

    #[test]
    fn what_a_change_does_is_what_the_changed_plan_is_assessed_as((plan, as_of) in cases()) {
        let again = Again::new(&plan, as_of);
        let found = Found::new(&plan, as_of, again.before());
        for candidate in found.candidates.iter().take(12) {
            let Some((_, outcome)) = tried(&again, &plan, candidate) else { continue };
            prop_assert_eq!(outcome, Outcome::of(&assess(&with(&plan, &candidate.edit), as_of)));
        }
    }

    #[test]
    fn a_must_is_never_touched_and_every_change_can_be_taken_back((plan, as_of) in cases()) {
        let again = Again::new(&plan, as_of);
        for candidate in Found::new(&plan, as_of, again.before()).candidates {
            for id in touched(&candidate.edit) {
                prop_assert!(plan.item(id).is_none_or(|item| item.need != Need::Must));
            }
            let mut changed = plan.clone();
            if let Ok(inverse) = candidate.edit.clone().apply(&mut changed) {
                inverse.apply(&mut changed).unwrap();
                prop_assert_eq!(&changed, &plan);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 40, ..ProptestConfig::default() })]

    #[test]
    fn a_set_that_is_found_holds_and_none_of_its_changes_alone_holds_for_less((plan, as_of) in cases()) {
        let moves = answered(&plan, as_of);
        let worth: Vec<f64> = moves.moves.iter().map(Move::worth).collect();
        prop_assert!(worth.windows(2).all(|pair| pair[0] >= pair[1]), "ranked by worth");
        let Some(set) = moves.set else { return Ok(()) };
        let after = assess(&with(&plan, &set.edit), as_of);
        if set.is_found {
            prop_assert!(Outcome::of(&after).holds());
            let alone = moves.moves.iter().filter(|one| Outcome::of(&assess(&with(&plan, &one.edit), as_of)).holds());
            for one in alone {
                prop_assert!(!set.is_proven || one.cost_days >= set.cost_days - 0.002, "{} for less", one.name);
            }
        } else {
            prop_assert!(!set.still_short.is_empty() || set.moves.is_empty());
        }
    }

    #[test]
    fn no_plan_makes_it_panic(plan in native_plans(), as_of in days(Taste::Extreme)) {
        let mut task = MovesTask::new(&plan, as_of);
        while task.step() < 1.0 {}
        let _ = task.answer();
    }
}
