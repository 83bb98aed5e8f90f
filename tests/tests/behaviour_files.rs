//! Files: those of old that must open for ever, those of later versions, and broken ones.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::date;
use kerbstead_core::plan::{Document, Edit, Item, Plan, Wrong, validate};
use kerbstead_core::{Verdict, assess};
use serde_json::{Value, json};

/// A document of version 1. It is kept as it is for ever: whatever the model becomes, this must open.
const VERSION_1: &str = include_str!("../data/plan-v1.json");
/// A document of a version that does not exist yet, with fields, words and entries of its own.
const LATER_VERSION: &str = include_str!("../data/plan-v9-of-later.json");

#[test]
fn a_document_of_version_1_opens_without_a_problem() {
    let opened = Document::open(VERSION_1).unwrap();
    assert_eq!(opened.problems, []);
    assert_eq!(validate(&opened.plan), []);
    let plan = &opened.plan;
    assert_eq!((plan.title.as_str(), plan.currency.as_str(), plan.people), ("To the lakes and back", "EUR", 2));
    let lengths = [plan.kit.len(), plan.belongings.len(), plan.incomes.len(), plan.costs.len()];
    assert_eq!(lengths, [7, 2, 1, 2]);
    let lengths = [plan.stays.len(), plan.week.len(), plan.water_uses.len(), plan.readings.len()];
    assert_eq!(lengths, [3, 2, 2, 1]);
    assert_eq!(plan.guesses.len(), 2);
}

/// What it comes to stays as it was worked out when it was written; change these only with a reason.
#[test]
fn a_document_of_version_1_comes_to_what_it_always_came_to() {
    let plan = Document::open(VERSION_1).unwrap().plan;
    let assessment = assess(&plan, date(2027, 4, 20));
    let verdicts = assessment.verdicts().map(|(_, verdict)| verdict);
    let expected = [Verdict::Holds, Verdict::FallsShort, Verdict::Tight, Verdict::Unknown];
    assert_eq!(verdicts[..4], expected);
    // Worked by hand: 740.00 - 52.50 - 349.90 - 55 is the lowest; + 80 + 410 - 38 - 25 - 3 x 11 + 20 is the last.
    let closing: Vec<String> = assessment.money.days.iter().map(|day| day.closing.to_string()).collect();
    assert_eq!((closing.first().unwrap().as_str(), closing.last().unwrap().as_str()), ("740.00", "696.60"));
    let lowest = assessment.money.lowest.unwrap();
    assert_eq!((lowest.on, lowest.closing.to_string()), (date(2027, 4, 25), "282.60".to_owned()));
    // Two cans of 14.5 L, filled on the third evening, less four days of 2 x 2.5 + 2 L.
    let driest = assessment.water.lowest.unwrap();
    assert_eq!((driest.on, driest.fresh_l), (date(2027, 5, 7), 1.0));
}

#[test]
fn a_document_is_written_back_letter_for_letter_in_meaning() {
    for text in [VERSION_1, LATER_VERSION] {
        let opened = Document::open(text).unwrap();
        assert_eq!(opened.document.write(&opened.plan), serde_json::from_str::<Value>(text).unwrap());
    }
}

#[test]
fn a_document_of_a_later_version_opens_with_what_is_unknown_kept() {
    let opened = Document::open(LATER_VERSION).unwrap();
    let found: Vec<(&str, &Wrong)> =
        opened.problems.iter().map(|problem| (problem.path.as_str(), &problem.wrong)).collect();
    assert!(matches!(found[0], ("schema_version", Wrong::NewerVersion { found: 9, known: 1 })), "{found:?}");
    assert!(found.iter().any(|(path, wrong)| *path == "kit/1/obtain" && matches!(wrong, Wrong::NotAChoice { .. })));
    assert!(found.iter().any(|(path, wrong)| *path == "calendar/mode" && matches!(wrong, Wrong::NotAChoice { .. })));
    assert!(found.iter().any(|(path, wrong)| *path == "stays/#2" && **wrong == Wrong::NotAnEntry));
    assert_eq!(found.len(), 4, "{found:?}");

    let mut plan = opened.plan.clone();
    Edit::set("title", "Changed here").apply(&mut plan).unwrap();
    Edit::set("kit/1/mass_kg", 7.5).apply(&mut plan).unwrap();
    let id = plan.next_id();
    Edit::Insert { list: kerbstead_core::plan::List::Kit, at: 0, entry: json!({ "id": id, "name": "New" }) }
        .apply(&mut plan)
        .unwrap();
    let written = opened.document.write(&plan);
    let mut expected: Value = serde_json::from_str(LATER_VERSION).unwrap();
    expected["title"] = json!("Changed here");
    expected["kit"][0]["mass_kg"] = json!(7.5);
    let new = kerbstead_core::plan::List::Kit.entry(&plan, id).unwrap();
    expected["kit"].as_array_mut().unwrap().insert(0, new);
    assert_eq!(written, expected);
}

#[test]
fn an_unknown_word_is_replaced_when_the_field_is_set() {
    let opened = Document::open(LATER_VERSION).unwrap();
    let mut plan = opened.plan.clone();
    Edit::set("kit/1/obtain", "borrowed").apply(&mut plan).unwrap();
    assert_eq!(opened.document.write(&plan)["kit"][0]["obtain"], "borrowed");
}

#[test]
fn ids_are_given_where_they_lack_and_never_twice() {
    for ids in [
        vec![json!(null), json!(null)],
        vec![json!(3), json!(3)],
        vec![json!(u32::MAX), json!(null), json!(u32::MAX)],
        vec![json!(0), json!(1)],
        vec![json!("one"), json!(1)],
        vec![json!(u32::MAX), json!(1), json!(2), json!(null)],
    ] {
        let kit: Vec<Value> = ids.iter().map(|id| if id.is_null() { json!({}) } else { json!({ "id": id }) }).collect();
        let mut plan = Document::open(&json!({ "kit": kit, "costs": [{}] }).to_string()).unwrap().plan;
        let mut found: Vec<u32> =
            plan.kit.iter().map(|item| item.id).chain(plan.costs.iter().map(|cost| cost.id)).collect();
        found.push(plan.next_id());
        found.sort_unstable();
        found.dedup();
        assert_eq!(found.len(), ids.len() + 2, "{ids:?}");
        assert!(!found.contains(&0), "{ids:?}");
        plan.kit.clear();
    }
}

/// Ten thousand entries are as many as are read; saving them must not take long enough to notice.
#[test]
fn a_plan_with_as_many_entries_as_are_read_can_be_written() {
    let plan = Plan { kit: (1..=10_000).map(|id| Item { id, ..Item::default() }).collect(), ..Plan::default() };
    let opened = Document::open(&Document::new(&plan).write(&plan).to_string()).unwrap();
    let mut changed = opened.plan.clone();
    Edit::set("kit/9999/name", "the last but one").apply(&mut changed).unwrap();
    let written = opened.document.write(&changed);
    assert_eq!(written["kit"][9_998]["name"], "the last but one");
}

/// Found by chance: the part is taken away again as a whole, and with it went guesses that the change had left alone.
#[test]
fn taking_back_a_part_made_for_a_field_brings_back_all_guesses_in_it() {
    let mut plan = Plan { kit: vec![Item { id: 1, ..Item::default() }], ..Plan::default() };
    plan.guesses.insert("kit/1/draw/power_w".into());
    let before = plan.clone();
    let undo = Edit::set("kit/1/draw/surge_w", 18.0).apply(&mut plan).unwrap();
    assert_eq!(plan.guesses, before.guesses);
    undo.apply(&mut plan).unwrap();
    assert_eq!(plan, before);
}

/// Found by chance: the plan offers an id that an entry beyond those counted has already; the new entry must keep it.
#[test]
fn a_new_entry_keeps_its_id_beside_entries_that_are_not_counted() {
    let costs: Vec<Value> = (1..=10_001).map(|id| json!({ "id": id })).collect();
    let opened = Document::open(&json!({ "costs": costs }).to_string()).unwrap();
    let mut plan = opened.plan;
    let id = plan.next_id();
    let entry = json!({ "id": id, "place": "Last of all" });
    Edit::Insert { list: kerbstead_core::plan::List::Stays, at: 0, entry }.apply(&mut plan).unwrap();
    let written = opened.document.write(&plan);
    assert_eq!(written["costs"].as_array().unwrap().len(), 10_001);
    assert_eq!(Document::open(&written.to_string()).unwrap().plan, plan);
}

#[test]
fn a_text_field_that_is_emptied_is_empty() {
    let mut plan = Plan { title: "North".into(), people: 3, currency: "JPY".into(), ..Plan::default() };
    let before = plan.clone();
    let undo = Edit::All { edits: ["title", "people", "currency"].map(Edit::unset).to_vec() }.apply(&mut plan).unwrap();
    assert_eq!(plan, Plan::default());
    undo.apply(&mut plan).unwrap();
    assert_eq!(plan, before);
}
