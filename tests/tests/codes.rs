//! Links as QR codes, read by a decoder that is none of ours.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

use kerbstead_core::plan::{Plain, demo_plan};
use kerbstead_core::share::{
    Code, MOST_VERSION, Parcel, QUIET_MODULES, Scope, codes, found_in, joined, open, part_of, seal,
};

const BEFORE: &str = "https://calculators.example.org/kerbstead/#/open/";

/// The pixels of a module's side, as a phone of 360 CSS pixels shows them at the least.
const MODULE_PX: usize = 3;

/// What the decoder reads in a code as it is drawn.
fn read(code: &Code) -> String {
    let side = (code.side() + 2 * QUIET_MODULES) * MODULE_PX;
    let mut pixels = vec![255_u8; side * side];
    for (column, row, length) in code.stripes() {
        for y in 0..MODULE_PX {
            let from = ((row + QUIET_MODULES) * MODULE_PX + y) * side + (column + QUIET_MODULES) * MODULE_PX;
            pixels[from..from + length * MODULE_PX].fill(0);
        }
    }
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| pixels[y * side + x]);
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1);
    let (meta, text) = grids[0].decode().unwrap();
    // The correction levels as they are coded: 0 is M, 1 is L.
    assert!(meta.ecc_level <= 1, "{meta:?}");
    assert_eq!(meta.version.0, usize::from(code.version()));
    text
}

fn sealed(scope: Scope, with_money: bool) -> String {
    seal(&Parcel::of(&demo_plan().to_plain(), scope, with_money)).unwrap()
}

#[test]
fn every_part_of_the_demo_plan_is_read_from_its_codes() {
    for scope in Scope::ALL {
        for with_money in [true, false] {
            let text = sealed(scope, with_money);
            let drawn = codes(BEFORE, &text);
            let versions: Vec<u8> = drawn.iter().map(Code::version).collect();
            println!("{scope:?}, money {with_money}: {} characters, versions {versions:?}", text.len());
            assert!(!drawn.is_empty() && versions.iter().all(|version| *version <= MOST_VERSION));
            let links: Vec<String> = drawn.iter().map(read).collect();
            assert_eq!(links, drawn.iter().map(|code| code.link.clone()).collect::<Vec<_>>());
            let texts: Vec<&str> = links.iter().flat_map(|link| found_in(link)).collect();
            let parts: Vec<_> = texts.iter().filter_map(|text| part_of(text)).collect();
            let whole = if parts.is_empty() { texts[0].to_owned() } else { joined(&parts).unwrap() };
            assert_eq!(open(&whole), open(&text));
        }
    }
}

/// Whatever stands before the text, each code holds as much as is promised for its version.
#[test]
fn codes_of_long_addresses_stay_below_the_largest_version() {
    let text = sealed(Scope::Whole, true);
    for length in [0, 1, 40, 400] {
        let before = "x".repeat(length);
        let drawn = codes(&before, &text);
        assert!(drawn.len() > 1 && drawn.iter().all(|code| code.version() <= MOST_VERSION), "{length}");
        assert!(drawn.iter().all(|code| read(code) == code.link), "{length}");
    }
    assert!(codes(&"x".repeat(2_000), &text).is_empty());
    assert!(codes(BEFORE, "hello").is_empty());
}

#[test]
fn a_message_gives_its_texts_whatever_stands_around_them() {
    let text = sealed(Scope::Kit, false);
    let parts = codes(BEFORE, &sealed(Scope::Whole, true));
    let [one, two] = [0, 1].map(|at| parts[at].link.strip_prefix(BEFORE).unwrap());
    let cases = [
        (text.clone(), vec![text.as_str()]),
        (format!("  {BEFORE}{text}\n"), vec![&text]),
        (format!("Look (it is {BEFORE}{text}), and tell me!"), vec![&text]),
        (format!("https://example.org/?to={BEFORE}{text}&more=1"), vec![&text]),
        (format!("{}\n{}", parts[0].link, parts[1].link), vec![one, two]),
        (format!("{BEFORE}{}", &text[..40]), vec![&text[..40]]),
        ("nothing here".to_owned(), vec!["nothing here"]),
        (String::new(), vec![""]),
    ];
    for (message, wanted) in cases {
        assert_eq!(found_in(&message), wanted, "{message}");
    }
}
