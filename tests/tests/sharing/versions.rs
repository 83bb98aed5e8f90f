//! Links of every version: those that were kept are read, and what each version knows is as it was.

use kerbstead_core::plan::{Document, Plain, demo_plan};
use kerbstead_core::share::{
    MOST_CHARS, Parcel, Part, Unreadable, Version, joined, open, part_of, prime_parcels, seal_as, split,
};
use kerbstead_tests::links::{as_told, in_order, numbers, parcels_of_prime};
use serde_json::Value;

use super::{data, file_of, whole};

/// Links that were kept, of every version: each with the file that it tells, or of which it tells the second parcel.
#[test]
fn links_made_before_can_still_be_read() {
    for (links, mark, least) in [("links-1.txt", '1', 3), ("links-2.txt", '2', 5)] {
        let links = data(links);
        let mut pairs = links.lines();
        let mut count = 0;
        while let (Some(name), Some(text)) = (pairs.next(), pairs.next()) {
            assert!(text.starts_with(mark));
            let wanted: Value = serde_json::from_str(&data(name)).unwrap();
            let wanted = wanted.get(1).unwrap_or(&wanted);
            match open(text).unwrap_or_else(|why| panic!("{name}: {why:?}")) {
                Parcel::Plan { file, .. } => assert_eq!(file, as_told(wanted), "{name}"),
                Parcel::Answer(answer) => assert_eq!(as_told(&answer.to_plain()), as_told(wanted), "{name}"),
            }
            count += 1;
        }
        assert!(count >= least);
    }
}

/// Also on the way through codes, whole or in parts: a link of the first version stays one.
#[test]
fn codes_of_links_made_before_can_still_be_read() {
    for (links, marks) in [("links-1.txt", ['1', 'Q']), ("links-2.txt", ['2', '3'])] {
        for text in data(links).lines().filter(|line| line.starts_with(marks[0])) {
            let whole = split(text, MOST_CHARS);
            assert!(whole.len() == 1 && whole[0].starts_with(marks[1]));
            assert_eq!(open(&whole[0]), open(text));
            let parts: Vec<Part> = split(text, 60).iter().map(|part| part_of(part).unwrap()).collect();
            assert_eq!(joined(&parts).as_deref(), Ok(text));
        }
    }
}

/// Not a bit of what is told in the first version may change, or links that are out could not be read.
#[test]
fn the_first_version_tells_plans_as_it_always_did() {
    let links = data("links-1.txt");
    let named: Vec<&str> = links.lines().collect();
    for pair in named.chunks(2) {
        assert_eq!(seal_as(Version::First, &open(pair[1]).unwrap()).as_deref(), Ok(pair[1]), "{}", pair[0]);
    }
}

/// The numbers by which fields are told: adding a field must not change those there are.
#[test]
fn the_fields_have_the_numbers_they_always_had() {
    assert_eq!(numbers(Version::First), data("numbers-1.txt"));
    assert_eq!(numbers(Version::Second), [data("numbers-1.txt"), data("numbers-2.txt")].concat());
}

/// What is told first is read by the very code that reads links, so nothing that changes one link goes unnoticed. The
/// bytes are not made again to compare them: in which order new names are told follows the table of fields of its day.
#[test]
fn what_the_encoder_knows_is_what_its_files_say() {
    for (number, version) in (1..).zip(Version::ALL) {
        let parcels = parcels_of_prime(&data(&format!("prime-{number}.json")));
        let known = prime_parcels(version);
        assert_eq!(known.len(), parcels.len());
        for (known, parcel) in known.into_iter().zip(parcels) {
            match (known, parcel) {
                (Parcel::Answer(known), Parcel::Answer(parcel)) => assert_eq!(known, parcel),
                (known, parcel) => assert_eq!(in_order(&file_of(known)), in_order(&as_told(&file_of(parcel)))),
            }
        }
    }
}

/// The second version is there to make links shorter, also of plans that have little of what came later: as they are
/// written today, with all that is as it usually is.
#[test]
fn the_second_version_makes_no_link_longer() {
    let demo = demo_plan().to_plain();
    let file = |number| Document::open(&data(&format!("ordinary-{number}.json"))).unwrap().plan.to_plain();
    let ordinary = (1..=5).map(file);
    for file in std::iter::once(demo).chain(ordinary) {
        let [first, second] = Version::ALL.map(|version| seal_as(version, &whole(&file)).unwrap().len());
        println!("{first} characters, in the second version {second}");
        assert!(second <= first, "{first} {second}");
    }
}

/// A mark that is changed on the way is noticed: the version is in the check.
#[test]
fn a_link_is_not_read_as_one_of_another_version() {
    let parcel = whole(&demo_plan().to_plain());
    let [first, second] = Version::ALL.map(|version| seal_as(version, &parcel).unwrap());
    assert_eq!(open(&format!("2{}", &first[1..])), Err(Unreadable::Damaged));
    assert_eq!(open(&format!("1{}", &second[1..])), Err(Unreadable::Damaged));
}
