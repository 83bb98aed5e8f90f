//! Plans as links: small enough, read again as they were, and harmless whoever made them.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

#[path = "sharing/versions.rs"]
mod versions;

use std::fs;

use kerbstead_core::plan::{Document, Plain, Plan, demo_plan};
use kerbstead_core::share::{
    Answer, MOST_CHARS, Parcel, Part, Scope, Unreadable, Version, code_chars, joined, open, part_of, seal, split,
    text_of, told,
};
use kerbstead_tests::generate::{documents_of, file_plans, plan_values, seeded};
use kerbstead_tests::links::{Readers, as_told, in_order, mutated};
use serde_json::{Value, json};

const DATA: &str = "data/share";

/// What stands in a link before the text, at its longest: the route of the page that opens it.
const BEFORE: &str = "#/open/";

fn data(name: &str) -> String {
    fs::read_to_string(format!("{DATA}/{name}")).unwrap()
}

fn whole(file: &Value) -> Parcel {
    Parcel::of(file, Scope::Whole, true)
}

fn file_of(parcel: Parcel) -> Value {
    match parcel {
        Parcel::Plan { file, .. } => file,
        Parcel::Answer(answer) => panic!("an answer: {answer:?}"),
    }
}

#[test]
fn the_demo_plan_fits_in_two_thousand_characters() {
    let text = seal(&whole(&demo_plan().to_plain())).unwrap();
    println!("demo plan: {} characters, {} codes", text.len(), split(&text, code_chars(60)).len());
    assert!(BEFORE.len() + text.len() <= 2_000, "{}", text.len());
}

/// Five plans that were written down by hand, each of fifty items with all that is known of them: of other people,
/// countries, languages and trades than the plans that the encoder knows.
#[test]
fn ordinary_plans_of_fifty_items_fit_in_two_thousand_six_hundred_characters() {
    for number in 1..=5 {
        let opened = Document::open(&data(&format!("ordinary-{number}.json"))).unwrap();
        assert_eq!((opened.plan.kit.len(), opened.problems.len()), (50, 0), "{:?}", opened.problems);
        let text = seal(&whole(&opened.document.write(&opened.plan))).unwrap();
        println!("ordinary plan {number}: {} characters", text.len());
        assert!(BEFORE.len() + text.len() <= 2_600, "{number}: {}", text.len());
        assert_eq!(open(&text).map(file_of), Ok(as_told(&opened.document.write(&opened.plan))));
    }
}

/// Bit for bit: the text of a plan's file has every bit of its numbers.
#[test]
fn every_plan_comes_back_to_the_bit() {
    for plan in seeded(&file_plans(), 11, 120) {
        let file = plan.to_plain();
        let told = file_of(open(&seal(&whole(&file)).unwrap()).unwrap());
        assert_eq!(in_order(&told), in_order(&as_told(&file)));
        let opened = Document::from_value(told).unwrap();
        assert_eq!(in_order(&opened.plan.to_plain()), in_order(&file));
    }
}

#[test]
fn fields_of_later_versions_come_back() {
    for value in seeded(&plan_values(kerbstead_tests::generate::Taste::Extreme), 12, 60) {
        let file = documents_of(&value);
        let parcel = whole(&file);
        assert!(told(&parcel).iter().any(|told| told.key == "share-tells-unknown"));
        assert_eq!(in_order(&file_of(open(&seal(&parcel).unwrap()).unwrap())), in_order(&as_told(&file)));
    }
}

#[test]
fn values_of_every_form_come_back() {
    let odd = json!({
        "null": null, "no": false, "yes": true, "whole": 12, "least": i64::MIN, "most": u64::MAX, "minus": -7,
        "float": 0.1, "minus zero": -0.0, "tiny": 5e-324, "huge": f64::MAX, "third": 1.0 / 3.0, "long": 1_234.567_890_1,
        "amounts": ["12.50", "-0.05", "007", "1.", ".5", "-0", "999999999999999999999", "12"],
        "dates": ["2027-02-28", "2027-02-30", "-9999-01-01", "9999-12-31", "2027-02-28"],
        "texts": ["", "A", "é", "Ärger", "nul\0in it", "line\nbreak", "same", "same", "\u{1F690} van"],
        "guesses": ["kit/1/name", "kit/1/name"],
        "nested": [[[]], [{}], {"__proto__": {"constructor": 1}}],
        "": {"": ""},
    });
    assert_eq!(in_order(&file_of(open(&seal(&whole(&odd)).unwrap()).unwrap())), in_order(&odd));
}

#[test]
fn texts_are_of_letters_and_digits_that_links_carry() {
    let text = seal(&whole(&demo_plan().to_plain())).unwrap();
    assert!(text.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_'));
    let parts = split(&text, 400);
    assert!(parts.len() > 2);
    for part in &parts {
        assert!(part.len() <= 400 && part.bytes().all(|byte| byte.is_ascii_digit() || byte.is_ascii_uppercase()));
    }
    let whole = split(&text, MOST_CHARS);
    assert_eq!(whole.len(), 1);
    assert_eq!(open(&whole[0]), open(&text));
}

#[test]
fn parts_make_the_text_in_any_order_and_say_which_is_missing() {
    let text = seal(&whole(&demo_plan().to_plain())).unwrap();
    let mut parts: Vec<Part> = split(&text, 300).iter().map(|part| part_of(part).unwrap()).collect();
    parts.reverse();
    parts.push(parts[1].clone());
    assert_eq!(joined(&parts), Ok(text));
    let last = parts.len() - 1;
    parts.retain(|part| part.index != 0 && part.index != 2);
    assert_eq!(joined(&parts), Err(vec![0, 2]));
    assert_eq!(joined(&[]), Err(vec![]));
    assert!(last > 4);
}

#[test]
fn what_is_no_text_of_ours_says_why() {
    let text = seal(&whole(&demo_plan().to_plain())).unwrap();
    let cases = [
        (String::new(), Unreadable::NotALink),
        ("hello".to_owned(), Unreadable::NotALink),
        (format!("4{}", &text[1..]), Unreadable::Newer),
        (format!("0{}", &text[1..]), Unreadable::NotALink),
        (text[..text.len() - 1].to_owned(), Unreadable::Damaged),
        (text.replace('a', "b"), Unreadable::Damaged),
        (format!("{text}!"), Unreadable::Damaged),
        ("1".to_owned(), Unreadable::Damaged),
        ("2".to_owned(), Unreadable::Damaged),
        ("1".repeat(MOST_CHARS + 1), Unreadable::TooLong { most: MOST_CHARS }),
    ];
    for (text, why) in cases {
        assert_eq!(open(&text), Err(why), "{text}");
    }
    let part = split(&text, 300)[1].clone();
    assert!(part_of(&part).is_some());
    assert_eq!(part_of(&part.replace('A', "B")), None);
    assert_eq!(open(&part), Err(Unreadable::NotALink));
}

#[test]
fn a_plan_too_large_for_a_link_is_refused_when_it_is_made() {
    let mut plan = demo_plan();
    let kit = plan.kit.clone();
    for _ in 0..200 {
        plan.kit.extend(kit.iter().cloned());
    }
    assert_eq!(seal(&whole(&plan.to_plain())), Err(Unreadable::TooMuch));
}

/// Bytes that promise the most there is to promise: values without end, one in another without end, texts without end.
#[test]
fn bombs_are_refused() {
    let readers = Readers::default();
    for version in Version::ALL {
        let refused = (0..=255_u8).filter(|byte| {
            let bomb = vec![*byte; 23_000 + usize::from(*byte)];
            readers.open(version, &bomb).is_err()
        });
        // Nearly all go on until they are stopped; a few happen to make something small.
        assert!(refused.count() > 200);
    }
}

/// Without money, no amount and no name of one who pays is in the link.
#[test]
fn a_link_without_money_has_no_amounts() {
    let plan = demo_plan();
    for scope in Scope::ALL {
        let parcel = Parcel::of(&plan.to_plain(), scope, false);
        let tells = told(&parcel);
        assert!(!tells.iter().any(|told| told.key == "share-tells-amounts" || told.key == "share-tells-cash"));
        let file = file_of(parcel).to_string();
        assert!(!file.contains("price") && !file.contains("amount") && !file.contains("1185"), "{file}");
    }
    let with_money = Parcel::of(&plan.to_plain(), Scope::Shopping, true);
    assert!(told(&with_money).iter().any(|told| told.key == "share-tells-amounts"));
    assert!(!file_of(with_money).to_string().contains("1185"));
}

/// Whatever section of a plan travels, something is said of it before.
#[test]
fn everything_that_travels_is_told() {
    let plan = demo_plan();
    let tells = |file: &Value, scope| -> Vec<&str> {
        told(&Parcel::of(file, scope, true)).iter().map(|told| told.key).collect()
    };
    let all = plan.to_plain();
    for scope in Scope::ALL {
        let file = file_of(Parcel::of(&all, scope, true));
        for section in
            file.as_object().unwrap().keys().filter(|name| !["schema_version", "guesses"].contains(&name.as_str()))
        {
            let mut without = all.clone();
            without.as_object_mut().unwrap().remove(section);
            let section_is = &file[section];
            let is_empty = section_is.as_array().is_some_and(Vec::is_empty)
                || section_is.as_object().is_some_and(serde_json::Map::is_empty);
            let is_same = told(&Parcel::of(&without, scope, true)) == told(&Parcel::of(&all, scope, true));
            let is_beside_the_title = ["currency", "people"].contains(&section.as_str());
            assert!(is_empty || is_beside_the_title || !is_same, "{scope:?}: {section} is in {:?}", tells(&all, scope));
        }
    }
}

#[test]
fn parts_of_a_plan_hold_what_they_are_for() {
    let plan = demo_plan();
    let part = |scope| {
        let file = file_of(open(&seal(&Parcel::of(&plan.to_plain(), scope, false)).unwrap()).unwrap());
        Document::from_value(file).unwrap().plan
    };
    let names = |plan: &Plan| plan.kit.iter().map(|item| (item.id, item.name.clone())).collect::<Vec<_>>();
    assert_eq!(names(&part(Scope::Kit)), names(&plan));
    let bought = plan.kit.iter().filter(|item| item.obtain.is_paid()).count();
    assert_eq!(part(Scope::Shopping).kit.len(), bought);
    let borrowing = part(Scope::Borrowing);
    assert!(borrowing.kit.iter().all(|item| !item.lender.is_empty()));
    assert!(part(Scope::Kit).stays.is_empty());
    let places = |plan: &Plan| plan.stays.iter().map(|stay| (stay.place.clone(), stay.nights)).collect::<Vec<_>>();
    assert_eq!(places(&part(Scope::Whole)), places(&plan));
}

#[test]
fn an_answer_comes_back() {
    let answer = Answer::from_plain(&serde_json::from_str(&data("answer.json")).unwrap()).unwrap();
    let text = seal(&Parcel::Answer(answer.clone())).unwrap();
    println!("answer: {} characters", text.len());
    assert_eq!(open(&text), Ok(Parcel::Answer(answer)));
}

/// The corpus: texts that once were of interest. Each is read to some end.
#[test]
fn every_text_of_the_corpus_is_read_to_some_end() {
    let readers = Readers::default();
    for entry in fs::read_dir(format!("{DATA}/corpus")).unwrap() {
        let bytes = fs::read(entry.unwrap().path()).unwrap();
        let _ = open(&String::from_utf8_lossy(&bytes));
        for version in Version::ALL {
            let _ = readers.open(version, &bytes);
            let _ = open(&text_of(version, &bytes));
        }
        let _ = part_of(&String::from_utf8_lossy(&bytes));
    }
}

/// What comes out of bytes from strangers is a plan like any other, or a refusal: changed links, cut ones, and bytes
/// of no meaning, all with a check that is right. `cargo xtask fuzz` tries many more.
#[test]
fn bytes_from_strangers_do_no_harm() {
    let readers = Readers::default();
    let mut opened = 0;
    for (version, bytes) in mutated(1).take(400) {
        if let Ok(Parcel::Plan { file, .. }) = readers.open(version, &bytes) {
            opened += 1;
            if let Ok(document) = Document::from_value(file) {
                let again = document.document.write(&document.plan);
                assert!(seal(&whole(&again)).is_ok() || again.to_string().len() > 50_000);
            }
        }
    }
    assert!(opened > 40, "only {opened} of 400 were read");
}
