//! What differs between two plans: all of it taken gives the other plan, none of it changes nothing.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::plan::{DifferenceKind, Item, NotPossible, Plan, Stay, demo_plan, differences};
use kerbstead_core::share::{Answer, Help, Mark};
use kerbstead_tests::generate::{edits, file_plans};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn all_differences_taken_give_the_other_plan(
        here in file_plans(), changes in prop::collection::vec(edits(), 1..12), other in file_plans(), is_other in prop::bool::weighted(0.3),
    ) {
        let mut there = here.clone();
        for change in changes {
            let _ = change.of(&there).apply(&mut there);
        }
        if is_other {
            there = Plan { schema_version: here.schema_version, ..other };
        }
        prop_assert_eq!(differences(&here, &here).len(), 0);
        let found = differences(&here, &there);
        let mut now = here.clone();
        let mut undos = Vec::new();
        for difference in &found {
            undos.push(difference.edit.clone().apply(&mut now).unwrap());
        }
        prop_assert_eq!(differences(&now, &there), vec![]);
        prop_assert_eq!(&now, &there);
        for undo in undos.into_iter().rev() {
            undo.apply(&mut now).unwrap();
        }
        prop_assert_eq!(now, here);
    }

    #[test]
    fn each_difference_can_be_taken_alone_and_taken_back(
        here in file_plans(), changes in prop::collection::vec(edits(), 1..12),
    ) {
        let mut there = here.clone();
        for change in changes {
            let _ = change.of(&there).apply(&mut there);
        }
        for difference in differences(&here, &there) {
            let mut now = here.clone();
            let undo = match difference.edit.clone().apply(&mut now) {
                // An entry of another list has the id until its removal is taken.
                Err(NotPossible::IdTaken { .. }) if difference.kind == DifferenceKind::Added => continue,
                undo => undo.unwrap(),
            };
            let left = differences(&now, &there);
            prop_assert!(!left.iter().any(|left| left.path == difference.path && left.kind == difference.kind && left.kind != DifferenceKind::Reordered));
            undo.apply(&mut now).unwrap();
            prop_assert_eq!(now, here.clone());
        }
    }
}

#[test]
fn entries_in_another_order_are_one_difference_beside_those_added() {
    let plan = |ids: &[u32]| Plan {
        stays: ids.iter().map(|id| Stay { id: *id, ..Stay::default() }).collect(),
        ..Plan::default()
    };
    for there in [[2, 9, 3, 1], [3, 2, 9, 1], [9, 3, 2, 1], [1, 3, 9, 2]] {
        let (mut here, there) = (plan(&[1, 2, 3, 4]), plan(&there));
        let found = differences(&here, &there);
        let kinds: Vec<DifferenceKind> = found.iter().map(|difference| difference.kind).collect();
        assert_eq!(kinds, [DifferenceKind::Removed, DifferenceKind::Reordered, DifferenceKind::Added]);
        for difference in found {
            difference.edit.apply(&mut here).unwrap();
        }
        assert_eq!(here, there);
    }
}

#[test]
fn what_a_friend_offers_is_a_difference_a_field() {
    let plan = demo_plan();
    let drill = plan.kit.iter().find(|item| item.name == "Electric hob").unwrap();
    let mark =
        |item: &Item, help, says: &str| Mark { id: item.id, name: item.name.clone(), help, says: says.to_owned() };
    let gone = Item { id: 7_000, name: "A thing of the past".to_owned(), ..Item::default() };
    let answer = Answer {
        from: "Runa".to_owned(),
        title: plan.title.clone(),
        marks: vec![
            mark(drill, Help::Lend, "Until May"),
            mark(&plan.kit[0], Help::Do, "On Saturday"),
            mark(&gone, Help::Lend, ""),
        ],
    };
    let found = differences(&plan, &answer.applied(&plan));
    let paths: Vec<&str> = found.iter().map(|difference| difference.path.as_str()).collect();
    let path = |item: &Item, field: &str| format!("kit/{}/{field}", item.id);
    assert_eq!(paths, [path(&plan.kit[0], "note"), path(drill, "obtain"), path(drill, "lender"), path(drill, "note")]);
    assert_eq!(found[3].there, "More than the store gives: left at home.\nRuna: Until May");
    assert_eq!(answer.of_nothing(&plan).len(), 1);
}
