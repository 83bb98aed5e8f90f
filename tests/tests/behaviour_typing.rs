//! What people type, where they live, and what becomes of it.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::date;
use kerbstead_core::assess;
use kerbstead_core::plan::{NumberMarks, Path, Wrong, field, typed_value};
use kerbstead_tests::generate::plan_of;
use serde_json::{Value, json};

const POINT: NumberMarks = NumberMarks { decimal: '.', group: ',' };
const COMMA: NumberMarks = NumberMarks { decimal: ',', group: '.' };
const SPACE: NumberMarks = NumberMarks { decimal: ',', group: '\u{202f}' };
const APOSTROPHE: NumberMarks = NumberMarks { decimal: '.', group: '\u{2019}' };

type IsRight = fn(&Wrong) -> bool;

fn typed(path: &str, text: &str, marks: NumberMarks, factor: f64) -> Result<Value, Wrong> {
    typed_value(field::at(&Path::from(path)).unwrap(), text, marks, factor)
}

#[test]
fn numbers_are_read_as_they_are_written_where_the_person_lives() {
    for (text, marks, expected) in [
        ("12.5", POINT, Some(12.5)),
        ("1,234.5", POINT, Some(1_234.5)),
        ("1,234", POINT, Some(1_234.0)),
        ("12,5", POINT, Some(12.5)),
        ("12,5", COMMA, Some(12.5)),
        ("1.234,5", COMMA, Some(1_234.5)),
        ("1.234", COMMA, Some(1_234.0)),
        ("1.5", COMMA, Some(1.5)),
        ("12.75", COMMA, Some(12.75)),
        // No number of thousands begins with a nought.
        ("0.125", COMMA, Some(0.125)),
        ("0,125", POINT, Some(0.125)),
        ("1\u{202f}234,5", SPACE, Some(1_234.5)),
        ("1 234,5", SPACE, Some(1_234.5)),
        ("1\u{2019}234.5", APOSTROPHE, Some(1_234.5)),
        ("1'234.5", APOSTROPHE, Some(1_234.5)),
        ("  7 ", POINT, Some(7.0)),
        ("+7", POINT, Some(7.0)),
        (".5", POINT, Some(0.5)),
        ("5.", POINT, Some(5.0)),
        ("1e3", POINT, None),
        ("NaN", POINT, None),
        ("inf", POINT, None),
        ("1.2.3", POINT, None),
        ("--5", POINT, None),
        ("5-", POINT, None),
        ("twelve", POINT, None),
        ("１２", POINT, None),
    ] {
        let read = typed("kit/1/mass_kg", text, marks, 1.0);
        assert_eq!(read.clone().ok().and_then(|value| value.as_f64()), expected, "{text:?} {marks:?}");
        assert!(read.is_ok() || matches!(read, Err(Wrong::NotANumber { .. })), "{text:?}: {read:?}");
    }
}

#[test]
fn what_is_typed_in_other_units_is_kept_in_the_plans() {
    // Source: NIST Handbook 44, appendix C (exact).
    for (path, text, factor, expected) in [
        ("kit/1/mass_kg", "10", 0.453_592_37, 4.535_923_7),
        ("kit/1/length_mm", "39.4", 25.4, 1_000.76),
        ("kit/1/tank/capacity_l", "5", 3.785_411_784, 18.927_058_92),
        ("stays/1/drive_km", "100", 1.609_344, 160.934_4),
    ] {
        let read = typed(path, text, POINT, factor).unwrap().as_f64().unwrap();
        assert!((read - expected).abs() <= expected * 1e-12, "{path} {text}: {read}");
    }
}

#[test]
fn what_cannot_be_used_is_refused_with_what_would_be_right() {
    use Wrong as W;
    let refused: [(&str, &str, IsRight); 12] = [
        ("kit/1/mass_kg", "-1", |wrong| matches!(wrong, W::OutOfRange { .. })),
        ("kit/1/mass_kg", "2001", |wrong| matches!(wrong, W::OutOfRange { .. })),
        ("kit/1/quantity", "0", |wrong| matches!(wrong, W::OutOfRange { .. })),
        ("kit/1/quantity", "1.5", |wrong| matches!(wrong, W::NotWhole { .. })),
        ("kit/1/unit_price", "-1", |wrong| matches!(wrong, W::NegativeMoney)),
        ("kit/1/unit_price", "1000000000.01", |wrong| matches!(wrong, W::TooMuchMoney { .. })),
        ("kit/1/unit_price", "dear", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("purse/tax_percent", "101", |wrong| matches!(wrong, W::OutOfRange { .. })),
        ("purse/tax_percent", "much", |wrong| matches!(wrong, W::NotARate)),
        ("calendar/leaves_on", "2027-02-29", |wrong| matches!(wrong, W::NotADate)),
        ("calendar/mode", "flying", |wrong| matches!(wrong, W::NotAChoice { .. })),
        ("currency", "euros", |wrong| matches!(wrong, W::NotACurrency)),
    ];
    for (path, text, is_right) in refused {
        let wrong = typed(path, text, POINT, 1.0).unwrap_err();
        assert!(is_right(&wrong), "{path} {text}: {wrong:?}");
    }
}

#[test]
fn amounts_are_kept_to_the_last_digit_typed() {
    for (text, expected) in [("12.50", "12.50"), ("0.1", "0.1"), ("1,000,000.01", "1000000.01"), ("7", "7")] {
        assert_eq!(typed("kit/1/unit_price", text, POINT, 1.0).unwrap(), expected);
    }
    assert_eq!(typed("purse/opening_cash", "\u{2212}12.5", POINT, 1.0).unwrap(), "-12.5");
    assert_eq!(typed("kit/1/unit_price", "", POINT, 1.0).unwrap(), Value::Null);
    assert_eq!(typed("currency", "eur", POINT, 1.0).unwrap(), "EUR");
}

/// A third of a yen is no yen, and no yen is never "-0".
#[test]
fn less_than_the_smallest_coin_is_nothing() {
    let plan = plan_of(json!({
        "currency": "JPY",
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-01" },
        "purse": { "opening_cash": "0" },
        "stays": [{ "id": 1, "nights": 3, "offers": { "price_per_night": "0.30" } }],
        "costs": [{ "id": 2, "amount": "0.20" }],
        "belongings": [{ "id": 3, "price": "0.40", "on": "2027-03-01" }],
    }));
    for as_of in [date(2027, 3, 1), date(2027, 3, 3)] {
        let text = serde_json::to_string(&assess(&plan, as_of)).unwrap();
        assert!(!text.contains("\"-0"), "{text}");
    }
}

/// The currencies are those of ISO 4217:2015, list one (from memory).
#[test]
fn bad_money_is_refused_at_its_field_with_what_would_be_right() {
    use kerbstead_core::words::{Plain, Units, Words};
    let words = Words::english(Plain, Units::Metric, "EUR");
    let thirty = "9".repeat(30);
    let with_cents = format!("{thirty}.99");
    for (path, text, said) in [
        ("kit/1/unit_price", "-5", "Not less than nothing."),
        ("kit/1/unit_price", "-0.01", "Not less than nothing."),
        ("kit/1/unit_price", "free", "An amount belongs here, such as 25.00 EUR."),
        ("kit/1/unit_price", thirty.as_str(), "At most 1000000000.00 EUR."),
        ("kit/1/unit_price", with_cents.as_str(), "At most 1000000000.00 EUR."),
        ("receipts/1/total", thirty.as_str(), "At most 1000000000.00 EUR."),
        ("receipt_lines/1/amount", "12 kg", "“kg” does not fit here: a number without a unit belongs here."),
        ("belongings/1/chance_percent", "101", "From 0 % to 100 %."),
        ("belongings/1/chance_percent", "-1", "From 0 % to 100 %."),
        ("belongings/1/chance_percent", thirty.as_str(), "From 0 % to 100 %."),
        ("currency", "euro", "The three letters of a currency in use belong here (ISO 4217), such as EUR."),
        ("currency", "EUX", "The three letters of a currency in use belong here (ISO 4217), such as EUR."),
        ("currency", "XXX", "The three letters of a currency in use belong here (ISO 4217), such as EUR."),
    ] {
        let wrong = typed(path, text, POINT, 1.0).unwrap_err();
        assert_eq!(words.wrong(&wrong), said, "{path}: {text}");
    }
    // Nothing typed is no price at all, which the money balance then tells of.
    assert_eq!(typed("kit/1/unit_price", "  ", POINT, 1.0), Ok(Value::Null));
    assert_eq!(typed("currency", "jpy", POINT, 1.0), Ok(json!("JPY")));
}

/// Dates are each right alone, so they are kept, and the later field says what is wrong.
#[test]
fn reversed_dates_are_told_at_the_second_of_them() {
    let file = json!({
        "calendar": { "starts_on": "2027-03-10", "leaves_on": "2027-03-01" },
        "costs": [{ "id": 1, "first_on": "2027-04-01", "last_on": "2027-03-01" }],
        "loans": [{ "id": 2, "drawn_on": "2027-04-01", "first_payment_on": "2027-03-01" }],
    });
    let opened = kerbstead_core::plan::Document::from_value(file).unwrap();
    let told: Vec<&str> = opened.problems.iter().map(|problem| problem.path.as_str()).collect();
    assert_eq!(told, ["calendar/leaves_on", "costs/1/last_on", "loans/2/first_payment_on"]);
    assert!(opened.problems.iter().all(|problem| matches!(problem.wrong, Wrong::DatesReversed { .. })));
    assert!(opened.plan.costs[0].last_on.is_some());
}

/// Minor units of ISO 4217:2015, list one (from memory); every currency that a region suggests is in use.
#[test]
fn each_currency_has_its_minor_units_and_is_known() {
    use kerbstead_core::plan::{is_currency, minor_digits};
    for (code, digits) in
        [("EUR", 2), ("JPY", 0), ("KRW", 0), ("VND", 0), ("KWD", 3), ("BHD", 3), ("TND", 3), ("CLF", 4)]
    {
        assert_eq!((minor_digits(code), is_currency(code)), (digits, true), "{code}");
    }
    for region in ["AU", "BR", "CA", "CH", "CL", "CZ", "DK", "GB", "HU", "IN", "IS", "JP", "KR", "KW", "MX", "NO", "NZ"]
    {
        assert!(is_currency(kerbstead_core::words::currency_of(region)), "{region}");
    }
    for unknown in ["", "EU", "eur", "EURO", "DEM", "XAU", "XXX", "XTS"] {
        assert!(!is_currency(unknown), "{unknown}");
    }
}
