//! What is kept beside a plan: nothing that a person did is lost.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::keeping::{
    Drafts, History, Kept, MOST_VERSIONS, Merged, Sheet, Side, Step, Version, Versions, merge, replayed,
};
use kerbstead_core::plan::{Difference, DifferenceKind, Document, Edit, List, Path, Plain, Plan, differences};
use kerbstead_tests::generate::{Change, edits, file_plans};
use proptest::prelude::*;
use serde_json::{Value, json};

fn changed(plan: &Plan, changes: Vec<Change>) -> Plan {
    let mut plan = plan.clone();
    for change in changes {
        let _ = change.of(&plan).apply(&mut plan);
    }
    plan
}

fn merged(base: &Value, later: &Value, earlier: &Value) -> Merged {
    let drafts = Drafts::default();
    let side = |document| Side { document, drafts: &drafts };
    merge(side(base), side(later), side(earlier))
}

fn some_edits() -> impl Strategy<Value = Vec<Change>> {
    prop::collection::vec(edits(), 0..10)
}

fn overlap(one: &Difference, other: &Difference) -> bool {
    let is_order = |difference: &Difference| difference.kind == DifferenceKind::Reordered;
    if is_order(one) || is_order(other) {
        return one.kind == other.kind && one.path == other.path;
    }
    one.path.is_within(&other.path) || other.path.is_within(&one.path)
}

/// What a side changed and the other did not touch is in the merged plan.
fn is_in(merged: &Plan, difference: &Difference, side: &Plan) -> bool {
    match difference.kind {
        DifferenceKind::Changed | DifferenceKind::Added => {
            merged.value(&difference.path) == side.value(&difference.path)
        }
        DifferenceKind::Removed => merged.value(&difference.path).is_null(),
        DifferenceKind::Reordered | DifferenceKind::Guesses => true,
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_edit_of_either_side_is_lost_unless_both_changed_the_same_which_is_told(
        base in file_plans(), one in some_edits(), other in some_edits(),
    ) {
        let (later, earlier) = (changed(&base, one), changed(&base, other));
        let files = [&base, &later, &earlier].map(Plain::to_plain);
        let both = merged(&files[0], &files[1], &files[2]);
        let opened = Document::from_value(both.document.clone()).unwrap();
        // The earlier side as it is with the new ids that were needed.
        let mut earlier = earlier;
        for renaming in &both.renamings {
            let entry = renaming.list.entry(&earlier, renaming.from).unwrap();
            prop_assert!(!List::ALL.iter().any(|list| list.ids(&later).contains(&renaming.to)));
            prop_assert_eq!(renaming.list.entry(&base, renaming.from), None, "{}", entry);
            earlier = renamed(&earlier, renaming.list, renaming.from, renaming.to);
        }
        let (ours, theirs) = (differences(&base, &later), differences(&base, &earlier));
        for (own, others, side) in [(&ours, &theirs, &later), (&theirs, &ours, &earlier)] {
            for difference in own {
                if !others.iter().any(|other| overlap(difference, other)) {
                    prop_assert!(is_in(&opened.plan, difference, side), "lost: {:?}", difference);
                }
            }
        }
        for clash in &both.clashes {
            let touches = |found: &[Difference]| found.iter().any(|difference| {
                difference.path.is_within(&clash.path) || clash.path.is_within(&difference.path)
            });
            prop_assert!(touches(&ours) && touches(&theirs), "no clash: {:?}", clash);
        }
        // Where both changed the same field to something else, it is told and the later side's counts.
        for difference in ours.iter().filter(|difference| difference.kind == DifferenceKind::Changed) {
            let path = &difference.path;
            let same = theirs.iter().find(|other| other.path == *path && other.kind == DifferenceKind::Changed);
            let is_part = |value: &Value| value.is_object() && value.get("likely").is_none();
            let Some(same) = same.filter(|same| !is_part(&same.there) && !is_part(&difference.there)) else { continue };
            if same.there != difference.there {
                prop_assert!(both.clashes.iter().any(|clash| path.is_within(&clash.path)), "not told: {:?}", difference);
                if !difference.there.is_null() {
                    prop_assert_eq!(opened.plan.value(path), later.value(path));
                }
            }
        }
    }

    #[test]
    fn a_side_that_changed_nothing_leaves_the_other_as_it_is(base in file_plans(), changes in some_edits()) {
        let there = changed(&base, changes).to_plain();
        let base = base.to_plain();
        for [later, earlier] in [[&base, &there], [&there, &base], [&there, &there]] {
            let both = merged(&base, later, earlier);
            prop_assert_eq!(&both.document, &there);
            prop_assert_eq!(both.clashes, vec![]);
        }
    }

    #[test]
    fn what_was_merged_is_merged_again_to_the_same(
        base in file_plans(), one in some_edits(), other in some_edits(),
    ) {
        let files = [base.clone(), changed(&base, one), changed(&base, other)].map(|plan| plan.to_plain());
        let both = merged(&files[0], &files[1], &files[2]).document;
        let again = merged(&files[0], &both, &both);
        prop_assert_eq!(again.document, both);
    }

    #[test]
    fn edits_are_read_as_they_were_written(base in file_plans(), changes in some_edits()) {
        for change in changes {
            let edit = change.of(&base);
            prop_assert_eq!(Edit::from_plain(&edit.to_plain()), Some(edit.clone()));
            prop_assert_eq!(serde_json::to_value(&edit).unwrap(), edit.to_plain());
        }
    }

    #[test]
    fn a_journal_played_again_gives_what_was_on_the_screen(
        base in file_plans(), changes in some_edits(), turns in prop::collection::vec(0..4_u8, 0..8),
    ) {
        let kept = Kept::of(&base);
        let mut sheet = Sheet { plan: base.clone(), drafts: Drafts::default(), history: History::default() };
        let mut steps = Vec::new();
        let mut take = |step: Step, sheet: &mut Sheet| {
            steps.push(step.to_plain());
            step.take(sheet);
        };
        let mut turns = turns.into_iter().cycle();
        for change in changes {
            let turn = turns.next().unwrap_or(0);
            let edit = change.of(&sheet.plan);
            take(Step::Edit { edit, goes_on: turn == 1 }, &mut sheet);
            match turn {
                2 => take(Step::Undo, &mut sheet),
                3 => take(Step::Draft { path: Path::from("purse/floor"), text: Some("12 or".to_owned()) }, &mut sheet),
                _ => {}
            }
        }
        take(Step::Undo, &mut sheet);
        take(Step::Redo, &mut sheet);
        let steps = Vec::<Step>::from_plain(&Value::Array(steps)).unwrap();
        let played = replayed(kept, steps);
        let opened = Document::from_value(played.document.clone()).unwrap();
        prop_assert_eq!(opened.plan, sheet.plan);
        prop_assert_eq!(&played.drafts, &sheet.drafts);
        prop_assert_eq!(&played.history, &sheet.history);
        let read = Kept::from_plain(&played.to_plain()).unwrap();
        prop_assert_eq!(read.document, played.document);
        prop_assert_eq!(read.drafts, played.drafts);
    }
}

/// The plan with another id for an entry, made from its file.
fn renamed(plan: &Plan, list: List, from: u32, to: u32) -> Plan {
    let mut edit = Edit::All { edits: Vec::new() };
    for of in List::ALL {
        for (at, id) in of.ids(plan).into_iter().enumerate() {
            let insert = Edit::Insert { list: *of, at, entry: of.entry(plan, id).unwrap() };
            if let Edit::All { edits } = &mut edit {
                edits.push(insert);
            }
        }
    }
    let guesses = plan.guesses.iter().cloned().map(|path| path.renamed(list, from, to)).collect();
    let mut new = plan.clone();
    (new.kit, new.belongings, new.incomes, new.costs) = Default::default();
    (new.stays, new.week, new.water_uses, new.readings) = Default::default();
    edit.renamed(list, from, to).apply(&mut new).unwrap();
    new.guesses = guesses;
    new
}

#[test]
fn two_new_things_with_the_same_id_are_both_kept() {
    let base = json!({ "kit": [{ "id": 1, "name": "Store", "store": {} }] });
    let later = json!({ "kit": [
        { "id": 1, "name": "Store", "store": {} }, { "id": 2, "name": "Lamp", "draw": { "store": 1 } },
    ] });
    let earlier = json!({ "kit": [
        { "id": 1, "name": "Store", "store": {} }, { "id": 2, "name": "Second store", "store": {} },
        { "id": 3, "name": "Fan", "draw": { "store": 2 } },
    ], "guesses": ["kit/2/mass_kg"] });
    let both = merged(&base, &later, &earlier);
    let names: Vec<(u64, &str)> = both.document["kit"]
        .as_array()
        .unwrap()
        .iter()
        .map(|item| (item["id"].as_u64().unwrap(), item["name"].as_str().unwrap()))
        .collect();
    assert_eq!(names, [(1, "Store"), (4, "Second store"), (3, "Fan"), (2, "Lamp")]);
    assert_eq!(both.document["kit"][2]["draw"]["store"], 4);
    assert_eq!(both.document["guesses"], json!(["kit/4/mass_kg"]));
    assert_eq!(both.clashes, []);
}

#[test]
fn an_entry_that_one_side_took_out_and_the_other_changed_stays_and_is_told() {
    let base = json!({ "kit": [{ "id": 1, "name": "Pan" }] });
    let (without, changed) = (json!({ "kit": [] }), json!({ "kit": [{ "id": 1, "name": "Pot" }] }));
    for [later, earlier] in [[&without, &changed], [&changed, &without]] {
        let both = merged(&base, later, earlier);
        assert_eq!(both.document, changed);
        assert_eq!(both.clashes.len(), 1);
        assert_eq!(both.clashes[0].path.as_str(), "kit/1");
    }
}

#[test]
fn what_is_unknown_here_is_merged_too() {
    let base = json!({ "title": "North", "later_field": { "a": 1, "b": 2 } });
    let later = json!({ "title": "North", "later_field": { "a": 9, "b": 2 } });
    let earlier = json!({ "title": "South", "later_field": { "a": 1, "b": 8 } });
    let both = merged(&base, &later, &earlier);
    assert_eq!(both.document, json!({ "title": "South", "later_field": { "a": 9, "b": 8 } }));
}

#[test]
fn half_typed_text_is_merged_like_everything_else() {
    let document = json!({});
    let drafts = |texts: Value| Drafts::from_plain(&texts).unwrap();
    let (base, later, earlier) =
        (drafts(json!({ "a": "1" })), drafts(json!({ "a": "1", "b": "2" })), drafts(json!({ "c": "3" })));
    let side = |drafts| Side { document: &document, drafts };
    let both = merge(side(&base), side(&later), side(&earlier));
    assert_eq!(both.drafts, drafts(json!({ "b": "2", "c": "3" })));
}

const MINUTE: u64 = 60_000;

#[test]
fn ten_versions_of_a_month_reach_from_minutes_to_weeks() {
    let mut versions = Versions::default();
    let last = 30 * 24 * 60 * MINUTE;
    for at in (0..=last).step_by(5 * 60_000) {
        assert!(versions.are_due(at), "{at}");
        versions.add(Version { at, document: json!({ "at": at }) });
        assert!(versions.0.len() <= MOST_VERSIONS);
        assert!(!versions.are_due(at + 4 * MINUTE));
    }
    let ages: Vec<u64> = versions.0.iter().rev().map(|version| (last - version.at) / MINUTE).collect();
    assert_eq!(ages.len(), MOST_VERSIONS);
    let within = |from: u64, to: u64| ages.iter().any(|age| (from..=to).contains(age));
    assert!(within(0, 0) && within(5, 10) && within(20, 120), "{ages:?}");
    assert!(
        within(3 * 60, 24 * 60) && within(2 * 24 * 60, 8 * 24 * 60) && within(12 * 24 * 60, 30 * 24 * 60),
        "{ages:?}"
    );
}

#[test]
fn the_same_version_is_not_kept_twice() {
    let mut versions = Versions::default();
    for at in [0, 10 * MINUTE] {
        versions.add(Version { at, document: json!({ "title": "North" }) });
    }
    assert_eq!(versions.0.len(), 1);
}

#[test]
fn what_can_be_taken_back_is_kept_as_far_as_it_fits() {
    let (mut plan, mut history) = (Plan::default(), History::default());
    for number in 0..200 {
        history.change(&mut plan, Edit::set("title", format!("{number} {}", "x".repeat(100))), false).unwrap();
    }
    assert_eq!(History::from_plain(&history.to_plain()), Some(history.clone()));
    let long = "x".repeat(10_000);
    for number in 0..200 {
        let entry = json!({ "id": number + 1, "note": long });
        history.change(&mut plan, Edit::Insert { list: List::Kit, at: 0, entry }, false).unwrap();
        history.change(&mut plan, Edit::Remove { list: List::Kit, id: number + 1 }, false).unwrap();
    }
    let text = history.to_plain().to_string();
    assert!(text.len() < 70_000, "{}", text.len());
    let mut kept = History::from_plain(&history.to_plain()).unwrap();
    assert!(kept.undo(&mut plan) && plan.kit.len() == 1);
}

#[test]
fn a_step_back_that_is_not_possible_any_more_is_passed_over() {
    let (mut plan, mut history) = (Plan::default(), History::default());
    history.change(&mut plan, Edit::set("title", "North"), false).unwrap();
    history.change(&mut plan, Edit::Insert { list: List::Kit, at: 0, entry: json!({ "id": 1 }) }, false).unwrap();
    plan.kit.clear();
    assert!(history.undo(&mut plan));
    assert_eq!(plan.title, "");
}
