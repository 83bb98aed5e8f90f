//! Receipts whose lines do not come to their total. The sums are our own, worked out by hand, but for the properties.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::money::{
    Expected, Explanation as E, MOST_EXPLANATIONS, Receipt, ReceiptLine, Reckoning, Spot, paid_by_item, reckon,
};
use kerbstead_core::plan::Money;
use proptest::prelude::*;
use rust_decimal::Decimal;

fn money(text: &str) -> Money {
    text.parse().unwrap()
}

fn receipt(stated: &str, amounts: &[&str]) -> Receipt {
    let line = |amount: &&str| ReceiptLine { amount: money(amount), ..ReceiptLine::default() };
    Receipt { stated: Some(money(stated)), lines: amounts.iter().map(line).collect(), ..Receipt::default() }
}

/// Against a plan in which item 7 costs 31.49, and a sales tax of 8 % or of 20 %.
fn reckoned(receipt: &Receipt) -> Reckoning {
    reckon(receipt, &[Expected { item: 7, price: money("31.49") }], &[8.into(), 20.into()], 2)
}

#[test]
fn a_difference_is_told_to_the_cent_with_what_explains_it() {
    let swapped = |at, to: &str| E::DigitsSwapped { at, to: money(to) };
    let misplaced = |at, to: &str| E::MarkMisplaced { at, to: money(to) };
    let cases: [(&str, &[&str], &str, E); 17] = [
        ("43.99", &["12.50"], "31.49", E::ItemMissing { item: 7, amount: money("31.49") }),
        ("12.50", &["12.50", "3.99", "3.99"], "-7.98", E::LineMissing { amount: money("-7.98") }),
        ("16.49", &["12.50", "3.99", "3.99"], "-3.99", E::CountedTwice { line: 2, twin: 1 }),
        ("20.48", &["12.50", "3.99"], "3.99", E::ChargedTwice { line: 1 }),
        ("12.50", &["12.50", "3.99"], "-3.99", E::LineTooMany { line: 1 }),
        ("12.25", &["12.50", "0.25"], "-0.50", E::SignTurned { line: 1 }),
        ("45.70", &["12.70", "24"], "9.00", swapped(Spot::Line(0), "21.70")),
        ("12.05", &["12.50"], "-0.45", swapped(Spot::Total, "12.50")),
        ("7.50", &["8", "-0.05"], "-0.45", swapped(Spot::Line(1), "-0.50")),
        ("15.50", &["125", "3"], "-112.50", misplaced(Spot::Line(0), "12.50")),
        ("1550", &["12.50", "3"], "1534.50", misplaced(Spot::Total, "15.50")),
        // 8 % of 15.49 is 1.2392; 20 % of it 3.098; 20 % in 18.00 is 3.00.
        ("16.73", &["12.50", "2.99"], "1.24", E::TaxLeftOut { line: None, percent: 8.into() }),
        ("18.59", &["12.50", "2.99"], "3.10", E::TaxLeftOut { line: None, percent: 20.into() }),
        ("16.09", &["12.50", "2.99"], "0.60", E::TaxLeftOut { line: Some(1), percent: 20.into() }),
        ("15", &["12", "6"], "-3.00", E::TaxTooMuch { line: None, percent: 20.into() }),
        // 8 % of 0.06 three times is 0 each; of the sum 0.0144: a till that rounds the sum asks for a cent.
        ("0.19", &["0.06", "0.06", "0.06"], "0.01", E::TaxLeftOut { line: None, percent: 8.into() }),
        ("15.50", &["12.49", "2.99"], "0.02", E::Rounded { to: money("0.05") }),
    ];
    for (stated, amounts, difference, explanation) in cases {
        let reckoning = reckoned(&receipt(stated, amounts));
        assert_eq!(reckoning.difference, money(difference), "{stated} {amounts:?}");
        assert!(reckoning.explanations.contains(&explanation), "{stated} {amounts:?}: {reckoning:?}");
        assert!(matches!(reckoning.explanations.last(), Some(E::LineMissing { .. })));
    }
}

#[test]
fn what_does_not_explain_a_difference_is_not_said_to() {
    let only_missing = |stated: &str, amounts: &[&str]| {
        let reckoning = reckoned(&receipt(stated, amounts));
        assert_eq!(reckoning.explanations, [E::LineMissing { amount: reckoning.difference }], "{stated} {amounts:?}");
    };
    // Divisible by nine, but no digits side by side differ so.
    only_missing("21.54", &["12.50"]);
    // 10.50 is not written 01.50.
    only_missing("1.50", &["10.50"]);
    // A difference of nothing is of no line.
    only_missing("3.17", &["0", "0", "1"]);
    let item_is_there = Receipt {
        stated: Some(money("43.99")),
        lines: vec![ReceiptLine { amount: money("12.50"), item: Some(7), ..ReceiptLine::default() }],
        ..Receipt::default()
    };
    assert!(!reckoned(&item_is_there).explanations.iter().any(|it| matches!(it, E::ItemMissing { .. })));
}

#[test]
fn lines_that_come_to_their_total_need_no_explanation() {
    let rounded = receipt("0.02", &["0.005", "0.005"]);
    let without_total = Receipt { stated: None, ..receipt("0", &["3", "4"]) };
    let nothing = Receipt { stated: Some(Money::ZERO), ..Receipt::default() };
    for receipt in [receipt("15.49", &["12.50", "2.99"]), rounded, without_total, nothing] {
        let reckoning = reckoned(&receipt);
        assert_eq!((reckoning.difference, reckoning.explanations.len()), (Money::ZERO, 0), "{receipt:?}");
    }
}

/// Yen have no decimals, dinars three. Source: ISO 4217:2015, list one (from memory).
#[test]
fn the_minor_unit_of_the_currency_counts() {
    let found = |stated: &str, amount: &str, digits| reckon(&receipt(stated, &[amount]), &[], &[], digits).explanations;
    assert_eq!(found("1450", "1540", 0)[0], E::DigitsSwapped { at: Spot::Line(0), to: money("1450") });
    assert_eq!(found("1.025", "1.052", 3)[0], E::DigitsSwapped { at: Spot::Line(0), to: money("1.025") });
}

#[test]
fn sums_that_no_purse_holds_are_still_answered() {
    let most = Money::new(Decimal::MAX).to_string();
    for (stated, amounts) in [(most.as_str(), vec!["-1"]), ("0", vec![&most, &most]), ("-1000000001", vec!["1"])] {
        let reckoning = reckoned(&receipt(stated, &amounts));
        assert!(reckoning.explanations.len() <= MOST_EXPLANATIONS);
    }
    let same = vec!["1.00"; 5_000];
    assert_eq!(reckoned(&receipt("4999", &same)).explanations.len(), MOST_EXPLANATIONS);
}

#[test]
fn what_was_paid_stands_beside_what_was_planned() {
    let line = |amount: &str, item| ReceiptLine { amount: money(amount), item, ..ReceiptLine::default() };
    let first =
        Receipt { stated: Some(money("20")), lines: vec![line("12", Some(7)), line("6", None)], ..Receipt::default() };
    let second = Receipt { lines: vec![line("21", Some(7)), line("-1", Some(9))], ..Receipt::default() };
    let expected = [Expected { item: 8, price: money("5") }, Expected { item: 7, price: money("31.49") }];
    let paid = paid_by_item(&[first, second], &expected);
    let told: Vec<_> = paid.iter().map(|it| (it.item, it.paid, it.beyond_plan())).collect();
    assert_eq!(
        told,
        [
            (Some(8), Money::ZERO, Some(money("-5"))),
            (Some(7), money("33"), Some(money("1.51"))),
            (Some(9), money("-1"), None),
            // A line for no item, and 2 that the first receipt has beyond its lines.
            (None, money("8"), None),
        ]
    );
}

/// A receipt of up to three lines in cents, in which no two lines are the same.
fn lines() -> impl Strategy<Value = Vec<i64>> {
    prop::collection::btree_set(1_i64..200_000, 1..=3).prop_map(|set| set.into_iter().collect())
}

fn of_cents(cents: i64) -> Money {
    Money::new(Decimal::new(cents, 2))
}

fn of_lines(stated: i64, lines: &[i64]) -> Receipt {
    let line = |cents: &i64| ReceiptLine { amount: of_cents(*cents), ..ReceiptLine::default() };
    Receipt { stated: Some(of_cents(stated)), lines: lines.iter().map(line).collect(), ..Receipt::default() }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 4_000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Digits are swapped in the text here, not by arithmetic.
    #[test]
    fn swapped_digits_are_found(lines in lines(), at in 0_usize..3, place in 0_usize..8) {
        let at = at % lines.len();
        let mut digits: Vec<u8> = format!("{:03}", lines[at]).into_bytes();
        let place = place % (digits.len() - 1);
        digits.swap(place, place + 1);
        let text = String::from_utf8(digits).unwrap();
        let is_written = text.len() == 3 || !text.starts_with('0');
        let mut typed = lines.clone();
        typed[at] = text.parse().unwrap();
        if is_written && typed[at] != lines[at] {
            let right = E::DigitsSwapped { at: Spot::Line(at), to: of_cents(lines[at]) };
            let found = reckoned(&of_lines(lines.iter().sum(), &typed)).explanations;
            prop_assert!(found.contains(&right), "{:?}", found);
        }
    }

    #[test]
    fn every_slip_is_found(lines in lines(), at in 0_usize..3, power in 1_u32..=3) {
        let at = at % lines.len();
        let (sum, power) = (lines.iter().sum::<i64>(), 10_i64.pow(power));
        let found = |stated, lines: &[i64]| reckoned(&of_lines(stated, lines)).explanations;
        let mut typed = lines.clone();
        typed[at] *= power;
        let back = E::MarkMisplaced { at: Spot::Line(at), to: of_cents(lines[at]) };
        prop_assert!(found(sum, &typed).contains(&back));
        typed[at] = lines[at];
        typed.push(lines[at]);
        let twin = E::CountedTwice { line: lines.len(), twin: at };
        prop_assert!(found(sum, &typed).contains(&twin));
        let charged = E::ChargedTwice { line: at };
        prop_assert!(found(sum + lines[at], &lines).contains(&charged));
    }

    #[test]
    fn each_explanation_does_away_with_the_difference(lines in lines(), stated in 1_i64..400_000) {
        let receipt = of_lines(stated, &lines);
        let reckoning = reckoned(&receipt);
        prop_assert_eq!(reckoning.sum + reckoning.difference, of_cents(stated));
        for explanation in reckoning.explanations {
            let mut mended = receipt.clone();
            match explanation {
                E::DigitsSwapped { at: Spot::Line(line), to } | E::MarkMisplaced { at: Spot::Line(line), to } => {
                    mended.lines[line].amount = to;
                }
                E::DigitsSwapped { at: Spot::Total, to } | E::MarkMisplaced { at: Spot::Total, to } => {
                    mended.stated = Some(to);
                }
                E::SignTurned { line } => mended.lines[line].amount = -mended.lines[line].amount,
                E::ChargedTwice { line } => mended.lines.push(mended.lines[line].clone()),
                E::LineTooMany { line } | E::CountedTwice { line, .. } => drop(mended.lines.remove(line)),
                E::ItemMissing { amount, .. } | E::LineMissing { amount } => {
                    mended.lines.push(ReceiptLine { amount, ..ReceiptLine::default() });
                }
                E::TaxLeftOut { .. } | E::TaxTooMuch { .. } | E::Rounded { .. } => continue,
            }
            prop_assert_eq!(reckoned(&mended).difference, Money::ZERO);
        }
    }
}

/// Each by hand, with a line that has a name, one that is of an item, and one that has neither.
#[test]
fn everything_that_is_said_of_receipts_and_files_has_its_figures() {
    use kerbstead_core::papers::receipts::{Ask, Column, Meaning, Reason, Refused};
    use kerbstead_core::plan::{Item, Plan};
    use kerbstead_core::words::{Plain, Units, Words};
    let words = Words::english(Plain, Units::Metric, "EUR");
    let line = |name: &str, item| ReceiptLine { name: name.into(), amount: money("4"), item, ..ReceiptLine::default() };
    let lines = vec![line("Rope", None), line("", Some(7)), line("", None)];
    let receipt = Receipt { lines, ..Receipt::default() };
    let plan = Plan { kit: vec![Item { id: 7, name: "Lamp".into(), ..Item::default() }], ..Plan::default() };
    let (to, amount, percent) = (money("2.5"), money("3"), Decimal::from(8));
    for (explanation, said) in [
        (E::ItemMissing { item: 7, amount }, "“Lamp” is planned for just 3.00 EUR and is on no line."),
        (E::CountedTwice { line: 1, twin: 0 }, "“Lamp” may stand here twice."),
        (E::DigitsSwapped { at: Spot::Line(2), to }, "“#3” may be 2.50 EUR, with two digits swapped."),
        (E::DigitsSwapped { at: Spot::Total, to }, "The total may be 2.50 EUR, with two digits swapped."),
        (E::MarkMisplaced { at: Spot::Line(0), to }, "“Rope” may be 2.50 EUR, with the decimal mark elsewhere."),
        (E::MarkMisplaced { at: Spot::Total, to }, "The total may be 2.50 EUR, with the decimal mark elsewhere."),
        (E::TaxLeftOut { line: Some(0), percent }, "“Rope” may be without its tax of 8 %."),
        (E::TaxLeftOut { line: None, percent }, "The lines may be without the tax of 8 %."),
        (E::TaxTooMuch { line: Some(0), percent }, "“Rope” may have a tax of 8 % in it that the total has not."),
        (E::TaxTooMuch { line: None, percent }, "The lines may have a tax of 8 % in them that the total has not."),
        (E::SignTurned { line: 0 }, "“Rope” may be money that came back, or the other way round."),
        (E::ChargedTwice { line: 0 }, "“Rope” may have been charged once more than it stands here."),
        (E::LineTooMany { line: 0 }, "“Rope” may not belong here."),
        (E::Rounded { to }, "The total may be rounded to 2.50 EUR."),
        (E::LineMissing { amount }, "A line of 3.00 EUR may be missing."),
        (E::LineMissing { amount: -amount }, "A reduction of 3.00 EUR may be missing."),
    ] {
        assert_eq!(words.explanation(&explanation, &receipt, &plan).replace('\u{a0}', " "), said);
    }
    let columns = [Column { heading: "Price".into(), taken_for: Meaning::Amount }];
    for (reason, said) in [
        (Reason::AboveHeadings, "It stands above the headings."),
        (Reason::Cells { expected: 4, found: 2 }, "It has 2 cells, not 4."),
        (Reason::QuoteOpen, "A quote in it is never closed."),
        (Reason::NoAmount, "There is no amount in it."),
        (Reason::NotAnAmount { column: 0 }, "“Price” is no amount like the others."),
        (Reason::OtherCurrency { column: 0 }, "“Price” is of another currency than EUR."),
        (Reason::TooMuch { column: 4 }, "“#5” is more than a plan takes."),
        (Reason::NotADay { column: 0 }, "“Price” is no day like the others, or is empty."),
        (Reason::NotAnItem { column: 0 }, "“Price” is no number of a thing in the kit."),
        (Reason::Waits, "It waits for your answer above."),
    ] {
        assert_eq!(words.reason(&reason, &columns), said);
    }
    assert_eq!(words.ask(&Ask::DateOrder { example: "3/4".into() }), "“3/4”: which number is the day?");
    assert_eq!(words.ask(&Ask::DecimalMark { example: "1,5".into() }), "“1,5”: what stands before the decimals?");
    assert_eq!(words.ask(&Ask::AmountColumn), "Which column holds what was paid?");
    assert_eq!(words.refused(Refused::Empty), "Nothing is in it.");
    assert_eq!(words.refused(Refused::TooManyRows), "At most 20000 rows are read. Split it.");
    assert_eq!(words.refused(Refused::TooLong), "This is too long: at most 2000000 bytes are read. Split it.");
    assert!(Meaning::ALL.into_iter().all(|meaning| !words.meaning(meaning).starts_with("receipts-")));
}
