//! What must hold for every change of a plan, every file and everything that can be typed.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

use kerbstead_core::plan::field::{MOST_ENTRIES, SECTIONS};
use kerbstead_core::plan::{
    Document, Edit, Estimate, Field, Item, Kind, List, NumberMarks, Path, Plan, Problem, Quantity, Wrong, typed_value,
    validate,
};
use kerbstead_core::power::typical_year;
use kerbstead_tests::generate::{Taste, documents, documents_of, edits, file_plans, native_plans, plan_values};
use proptest::prelude::*;
use serde_json::{Value, json};

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_change_and_its_inverse_give_back_the_plan(
        plan in file_plans(), changes in prop::collection::vec(edits(), 1..6),
    ) {
        let mut now = plan.clone();
        let mut inverses = Vec::new();
        for change in changes {
            let before = now.clone();
            let edit = change.of(&now);
            if let Ok(inverse) = edit.clone().apply(&mut now) {
                check_redo(&edit, &inverse, &before, &now);
                inverses.push(inverse);
            } else {
                prop_assert_eq!(&now, &before, "an impossible change left a trace");
            }
        }
        for inverse in inverses.into_iter().rev() {
            inverse.apply(&mut now).unwrap();
        }
        prop_assert_eq!(now, plan);
    }

    #[test]
    fn a_change_comes_through_a_file(plan in file_plans(), change in edits()) {
        let edit = change.of(&plan);
        let text = serde_json::to_string(&edit).unwrap();
        prop_assert_eq!(serde_json::from_str::<Edit>(&text).unwrap(), edit);
    }

    #[test]
    fn a_plan_comes_through_its_file(plan in file_plans()) {
        let text = Document::new(&plan).write(&plan).to_string();
        let opened = Document::open(&text).unwrap();
        prop_assert_eq!(&opened.plan, &plan);
        prop_assert_eq!(opened.problems, validate(&plan));
        prop_assert_eq!(opened.document.write(&plan).to_string(), text);
    }

    #[test]
    fn what_is_unknown_survives_a_change(value in plan_values(Taste::Believable), change in edits()) {
        let raw = documents_of(&value);
        let Ok(opened) = Document::open(&raw.to_string()) else { panic!("unknown fields spoil nothing") };
        let mut plan = opened.plan;
        if change.of(&plan).apply(&mut plan).is_err() {
            return Ok(());
        }
        let written = opened.document.write(&plan);
        check_kept(&raw, &written, "");
        prop_assert_eq!(Document::open(&written.to_string()).unwrap().plan, plan);
    }

    #[test]
    fn a_broken_file_is_opened_and_written_without_loss(text in documents(), change in edits()) {
        let Ok(opened) = Document::open(&text) else { return Ok(()) };
        let mut plan = opened.plan.clone();
        let unchanged = opened.document.write(&plan);
        prop_assert_eq!(&Document::open(&unchanged.to_string()).unwrap().plan, &plan);
        // An entry beyond those that are counted is in the file, and not in the plan that is read from it; it moves up
        // when another is taken out.
        let has_beyond = |problem: &Problem| matches!(problem.wrong, Wrong::TooManyEntries { .. });
        if opened.problems.iter().any(has_beyond) {
            return Ok(());
        }
        let is_counted = |plan: &Plan| List::ALL.iter().all(|list| list.ids(plan).len() <= MOST_ENTRIES);
        if change.of(&plan).apply(&mut plan).is_ok() && is_counted(&plan) {
            let written = opened.document.write(&plan).to_string();
            prop_assert_eq!(Document::open(&written).unwrap().plan, plan);
        }
    }

    #[test]
    fn no_text_makes_opening_panic(text in ".{0,200}", bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        drop(Document::open(&text));
        drop(Document::open(&String::from_utf8_lossy(&bytes)));
    }

    #[test]
    fn no_change_of_a_few_letters_makes_opening_panic(
        text in documents(), places in prop::collection::vec((any::<prop::sample::Index>(), any::<char>()), 1..5),
    ) {
        let mut letters: Vec<char> = text.chars().take(5_000).collect();
        for (place, letter) in places.into_iter().filter(|_| !text.is_empty()) {
            let at = place.index(letters.len());
            letters[at] = letter;
        }
        drop(Document::open(&letters.into_iter().collect::<String>()));
    }

    #[test]
    fn every_json_value_in_every_place_is_opened_or_refused(value in plan_values(Taste::Extreme), other in json_values()) {
        drop(Document::open(&other.to_string()));
        for section in SECTIONS.iter().filter(|section| !section.name.is_empty()) {
            let mut document = value.clone();
            document[section.name] = if section.is_list { json!([other.clone(), {"id": 1, "draw": other, "offers": other}]) } else { other.clone() };
            prop_assert!(Document::open(&document.to_string()).is_ok(), "{} = {other}", section.name);
        }
        for field in SECTIONS.iter().find(|section| section.name == "kit").unwrap().fields {
            let (first, rest) = field.name.split_once('/').unwrap_or((field.name, ""));
            let item = if rest.is_empty() { json!({first: other}) } else { json!({first: {rest: other}}) };
            prop_assert!(Document::open(&json!({ "kit": [item] }).to_string()).is_ok(), "{} = {other}", field.name);
        }
    }

    #[test]
    fn validation_never_panics(plan in native_plans()) {
        drop(validate(&plan));
    }

    #[test]
    fn a_number_comes_through_a_file_to_the_last_bit(bits in any::<u64>(), likely in prop::num::f64::ANY) {
        let number = f64::from_bits(bits);
        prop_assume!(number.is_finite() && likely.is_finite());
        let mut plan = Plan::default();
        plan.vehicle.socket_volts = number;
        let mass_kg = Estimate::Range { low: number, likely, high: number };
        plan.kit.push(Item { id: 1, mass_kg: Some(mass_kg), ..Item::default() });
        let text = Document::new(&plan).write(&plan).to_string();
        let read = Document::open(&text).unwrap().plan;
        prop_assert_eq!(read.vehicle.socket_volts.to_bits(), number.to_bits());
        let read = read.kit[0].mass_kg.unwrap();
        prop_assert_eq!([read.low().to_bits(), read.likely().to_bits()], [number.to_bits(), likely.to_bits()]);
    }

    #[test]
    fn what_can_be_typed_can_be_set(text in typed_text(), marks in number_marks(), factor in factors()) {
        for section in SECTIONS {
            let place = if section.is_list { Path::entry(section.name, 1) } else { Path::section(section.name) };
            for field in section.fields {
                if let Ok(value) = typed_value(field, &text, marks, factor) {
                    check_typed(&place.child(field.name), field, &value);
                }
            }
        }
    }

    #[test]
    fn a_number_typed_as_it_is_shown_is_that_number(
        number in -1e9..1e9_f64, decimals in 0_usize..5, marks in number_marks(), grouped in any::<bool>(),
    ) {
        let shown = format!("{number:.decimals$}");
        // Exactly three decimals after a lone other mark are read as thousands; with the person's own mark they are not.
        let text = shown_with(&shown, marks, grouped);
        let field = Field {
            name: "any",
            kind: Kind::Number {
                quantity: Quantity::Count, min: -1e10, max: 1e10, example: 1.0, range: false,
            },
        };
        let read = typed_value(&field, &text, marks, 1.0).unwrap_or_else(|wrong| panic!("{text}: {wrong:?}"));
        prop_assert_eq!(read.as_f64().unwrap().to_string(), (shown.parse::<f64>().unwrap() + 0.0).to_string(), "{}", text);
    }
}

/// What was taken from typing can be set, and nothing is wrong with it but what only other fields can tell.
fn check_typed(path: &Path, field: &Field, value: &Value) {
    let mut plan = Plan::default();
    if let Some(list) = List::named(path.split_first().0) {
        Edit::Insert { list, at: 0, entry: json!({ "id": 1 }) }.apply(&mut plan).unwrap();
    }
    let set = Edit::set(path.clone(), value.clone()).apply(&mut plan);
    assert!(set.is_ok(), "{path} = {value} was taken and cannot be set: {set:?}");
    let is_wrong_alone = check_alone(&plan).iter().any(|problem| problem.path == *path);
    if field.name == "mean_days" {
        // Nobody types a typical year: it comes from a file, and what else stands there is told.
        assert_eq!(is_wrong_alone, typical_year(&plan.years[0]).is_none(), "{path} = {value}");
        return;
    }
    assert!(matches!(field.kind, Kind::StoreItem | Kind::Entry(_)) || !is_wrong_alone, "{path} = {value}");
}

/// Problems of single fields: what one field is to another is not a matter of typing.
fn check_alone(plan: &Plan) -> Vec<Problem> {
    let across = |wrong: &Wrong| {
        matches!(
            wrong,
            Wrong::SurgeBelowContinuous { .. }
                | Wrong::StoreQuantity
                | Wrong::MoreThanThereAre { .. }
                | Wrong::OutlineFlat
                | Wrong::DoorPastWall
        )
    };
    validate(plan).into_iter().filter(|problem| !across(&problem.wrong)).collect()
}

/// Undoing and doing again leads to the same plan as doing.
fn check_redo(edit: &Edit, inverse: &Edit, before: &Plan, after: &Plan) {
    let mut plan = after.clone();
    let redo = inverse.clone().apply(&mut plan).unwrap_or_else(|reason| panic!("{edit:?} back: {reason:?}"));
    assert_eq!(&plan, before, "{edit:?}");
    redo.apply(&mut plan).unwrap_or_else(|reason| panic!("{edit:?} again: {reason:?}"));
    assert_eq!(&plan, after, "{edit:?}");
}

/// Every object that is still there still has what no version knows, and every unread entry is still there.
fn check_kept(raw: &Value, written: &Value, path: &str) {
    match (raw, written) {
        (Value::Object(raw), Value::Object(written)) => {
            assert_eq!(raw.get("since_later"), written.get("since_later"), "{path}");
            for (name, value) in raw {
                if let Some(written) = written.get(name) {
                    check_kept(value, written, &format!("{path}/{name}"));
                }
            }
        }
        (Value::Array(raw), Value::Array(written)) => {
            for entry in raw {
                let same = |other: &&Value| match entry.get("id") {
                    Some(id) => other.get("id") == Some(id),
                    None => *other == entry,
                };
                match written.iter().find(same) {
                    Some(found) => check_kept(entry, found, &format!("{path}/{}", entry["id"])),
                    None => assert!(entry.get("id").is_some() || path == "/guesses", "{path}: {entry} is gone"),
                }
            }
        }
        _ => {}
    }
}

fn json_values() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(|flag| json!(flag)),
        any::<i64>().prop_map(|number| json!(number)),
        prop::num::f64::NORMAL.prop_map(|number| json!(number)),
        "[0-9.eE+-]{0,32}".prop_map(|text| json!(text)),
        "[a-z_]{0,12}".prop_map(|text| json!(text)),
        prop::sample::select(vec!["2027-03-01", "2027-03-01T10:00:00", "20270301", "1_000", " 5 ", "1e3", "EUR", "ac"])
            .prop_map(|text| json!(text)),
    ];
    let names = || prop_oneof![Just("low"), Just("likely"), Just("high"), Just("id"), Just("amount"), Just("happened")];
    leaf.prop_recursive(3, 24, 6, move |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..5).prop_map(Value::Array),
            prop::collection::btree_map(names().prop_map(str::to_owned), inner, 0..5)
                .prop_map(|fields| Value::Object(fields.into_iter().collect())),
        ]
    })
}

fn typed_text() -> impl Strategy<Value = String> {
    prop_oneof![
        2 => "[-+−]?[0-9]{0,7}([., '][0-9]{0,4}){0,3}",
        1 => "[0-9]{20,70}",
        1 => ".{0,12}",
        1 => prop::sample::select(vec!["", " ", "-", ".", ",", "1e5", "true", "ac", "2027-03-01", "eur", "NaN", "inf", "１２"])
            .prop_map(str::to_owned),
    ]
}

fn number_marks() -> impl Strategy<Value = NumberMarks> {
    prop::sample::select(vec![('.', ','), (',', '.'), (',', '\u{a0}'), ('.', '\u{2019}'), (',', ' '), ('.', '\'')])
        .prop_map(|(decimal, group)| NumberMarks { decimal, group })
}

fn factors() -> impl Strategy<Value = f64> {
    prop::sample::select(vec![1.0, 25.4, 0.453_592_37, 3.785_411_784, 1.609_344, 0.0, f64::MAX, f64::NAN])
}

/// A plain number with the marks that people use where they live.
fn shown_with(plain: &str, marks: NumberMarks, is_grouped: bool) -> String {
    let (whole, decimals) = plain.split_once('.').unwrap_or((plain, ""));
    let digits = whole.trim_start_matches('-');
    let mut text = if whole.starts_with('-') { "\u{2212}".to_owned() } else { String::new() };
    for (position, digit) in digits.chars().enumerate() {
        if is_grouped && position > 0 && (digits.len() - position).is_multiple_of(3) {
            text.push(marks.group);
        }
        text.push(digit);
    }
    if decimals.is_empty() { text } else { format!("{text}{}{decimals}", marks.decimal) }
}
