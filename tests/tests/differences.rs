//! What differs between two plans: all of it taken gives the other plan, none of it changes nothing.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::plan::{
    DifferenceKind, Income, Item, List, NotPossible, Plain, Plan, Stay, demo_plan, differences,
};
use kerbstead_core::share::{Answer, Help, Mark, Parcel, Scope};
use kerbstead_tests::generate::{edits, file_plans};
use proptest::prelude::*;
use serde_json::Value;

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

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// What comes back without money, or in part, differs from the plan here only in what it tells; and all of that it
    /// does.
    #[test]
    fn only_what_was_sent_can_differ(
        here in file_plans(), changes in prop::collection::vec(edits(), 1..12), scope in 0..5_usize, with_money in any::<bool>(),
    ) {
        let scope = Scope::ALL[scope];
        let mut there = here.clone();
        for change in changes {
            let _ = change.of(&there).apply(&mut there);
        }
        let told = |plan: &Plan| Parcel::of(&plan.to_plain(), scope, with_money);
        let laid = told(&there).laid_over(&here);
        let is_whole = scope == Scope::Whole && with_money;
        for difference in differences(&here, &laid) {
            let section = difference.path.split_first().0;
            let is_own_field = !here.to_plain()[section].is_object() && !here.to_plain()[section].is_array();
            let is_told = match scope {
                Scope::Whole => with_money || !["purse", "belongings", "incomes", "costs"].contains(&section),
                Scope::Helper => {
                    let of_work = ["tasks", "task_needs", "tools", "helpers", "other_days", "building", "calendar", "kit"];
                    of_work.contains(&section) || is_own_field
                }
                _ => section == "kit" || is_own_field,
            };
            prop_assert!(is_told, "{scope:?} {with_money}: {difference:?}");
            let is_money = difference.path.last().contains("price") || difference.path.last().contains("amount");
            prop_assert!(with_money || !is_money || is_whole, "{difference:?}");
        }
        let is_taken = |id: &u32| List::ALL.iter().filter(|list| list.ids(&here).contains(id) || list.ids(&there).contains(id)).count() > 1;
        let new_ids = List::ALL.iter().flat_map(|list| list.ids(&there)).collect::<Vec<_>>();
        if matches!(scope, Scope::Whole | Scope::Kit) && !new_ids.iter().any(is_taken) {
            prop_assert_eq!(without_guesses(told(&laid)), without_guesses(told(&there)));
        } else if !is_whole {
            let lost = List::ALL.iter().flat_map(|list| list.ids(&here)).filter(|id| !List::ALL.iter().any(|list| list.ids(&laid).contains(id)));
            prop_assert!(matches!(scope, Scope::Whole | Scope::Kit) || lost.count() == 0);
        }
    }
}

fn without_guesses(parcel: Parcel) -> Value {
    let Parcel::Plan { mut file, .. } = parcel else { return Value::Null };
    if let Some(file) = file.as_object_mut() {
        file.remove("guesses");
    }
    file
}

/// A friend who was sent no money adds a thing; its number is that of an income here, of which they know nothing.
#[test]
fn a_new_entry_whose_number_is_taken_gets_a_free_one() {
    let mut here = demo_plan();
    let id = here.next_id();
    here.incomes.push(Income { id, ..Income::default() });
    let mut there = demo_plan();
    there.kit.push(Item { id, name: "Rain barrel".to_owned(), ..Item::default() });
    let laid = Parcel::of(&there.to_plain(), Scope::Whole, false).laid_over(&here);
    let found = differences(&here, &laid);
    assert_eq!(found.len(), 1);
    found[0].edit.clone().apply(&mut here).unwrap();
    assert_eq!(here.kit.last().map(|item| (item.id, item.name.as_str())), Some((id + 1, "Rain barrel")));
    assert_eq!(here.incomes.last().map(|income| income.id), Some(id));
}

#[test]
fn what_is_not_on_a_shopping_list_stays() {
    let here = demo_plan();
    let mut there = here.clone();
    there.kit.retain(|item| item.obtain.is_paid());
    there.kit[0].note = "Seen at the market".to_owned();
    there.kit.truncate(2);
    let found = differences(&here, &Parcel::of(&there.to_plain(), Scope::Shopping, false).laid_over(&here));
    assert_eq!(found.iter().map(|found| found.path.last()).collect::<Vec<_>>(), ["note"]);
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
        ..Answer::default()
    };
    let found = differences(&plan, &answer.applied(&plan));
    let paths: Vec<&str> = found.iter().map(|difference| difference.path.as_str()).collect();
    let path = |item: &Item, field: &str| format!("kit/{}/{field}", item.id);
    assert_eq!(paths, [path(&plan.kit[0], "note"), path(drill, "obtain"), path(drill, "lender"), path(drill, "note")]);
    assert_eq!(found[3].there, "More than the store gives: left at home.\nRuna: Until May");
    assert_eq!(answer.of_nothing(&plan).len(), 1);
    // What was taken is taken.
    let taken = answer.applied(&plan);
    assert_eq!(answer.applied(&taken), taken);
}
