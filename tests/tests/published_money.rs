//! Money against published and hand-worked values. The source of each stands beside it; "from memory" means that the
//! figure was recalled and not read again.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::money::price_parts;
use kerbstead_core::plan::{
    Calendar, Cost, CostPhase, Document, Income, Item, Money, Plan, Purse, Repeat, Stay, minor_digits,
};
use kerbstead_core::{Assessment, Verdict, assess};
use kerbstead_tests::worked::money;

/// Source: ISO 4217, list one (from memory; the four first agree with CLDR). CLDR's digits differ for some currencies
/// (it shows ISK 0 as ISO does, but also UGX 0 and IQD 0): ISO counts.
#[test]
fn currencies_have_the_digits_of_iso_4217() {
    let digits = [
        ("USD", 2),
        ("EUR", 2),
        ("JPY", 0),
        ("KWD", 3),
        ("GBP", 2),
        ("CHF", 2),
        ("CAD", 2),
        ("SEK", 2),
        ("PLN", 2),
        ("KRW", 0),
        ("ISK", 0),
        ("CLP", 0),
        ("VND", 0),
        ("XOF", 0),
        ("XAF", 0),
        ("UGX", 0),
        ("BHD", 3),
        ("IQD", 3),
        ("JOD", 3),
        ("LYD", 3),
        ("OMR", 3),
        ("TND", 3),
        ("CLF", 4),
        ("UYW", 4),
        ("HUF", 2),
        ("MXN", 2),
        ("TWD", 2),
    ];
    for (code, expected) in digits {
        assert_eq!(minor_digits(code), expected, "{code}");
    }
}

/// Source: the usual rule of US states: to the nearest cent, half a cent goes up (from memory, and computed in exact
/// decimals). The two first fail with half-even rounding or binary floats.
#[test]
fn half_a_cent_of_tax_goes_up() {
    for (net, percent, tax) in [
        ("0.75", "6", "0.05"),
        ("1.50", "7", "0.11"),
        ("19.99", "8.875", "1.77"),
        ("0.50", "7", "0.04"),     // 0.035
        ("2.50", "5", "0.13"),     // 0.125
        ("10.00", "8.25", "0.83"), // 0.825
        ("0.00", "19", "0.00"),
        ("33.33", "0", "0.00"),
    ] {
        let parts = price_parts(money(net), 1, percent.parse().unwrap(), false, 2);
        assert_eq!(
            (parts.net, parts.tax, parts.total),
            (money(net), money(tax), money(net) + money(tax)),
            "{net} {percent}"
        );
    }
}

/// Source: arithmetic. The tax is worked out on the line of several, not on each of them.
#[test]
fn tax_is_worked_out_on_the_line() {
    let line = price_parts(money("0.75"), 3, 6.into(), false, 2);
    assert_eq!((line.net, line.tax, line.total), (money("2.25"), money("0.14"), money("2.39"))); // 0.135, not 3 x 0.05
}

/// Source: arithmetic: contained tax = total - total / (1 + rate), half up at the currency's last digit.
#[test]
fn contained_tax_and_net_make_the_price() {
    for (total, percent, digits, net, tax) in [
        ("119.00", "19", 2, "100.00", "19.00"),
        ("25.00", "20", 2, "20.83", "4.17"),
        ("1100", "10", 0, "1000", "100"),
        ("999", "10", 0, "908", "91"), // 908.18
        ("10.000", "5", 3, "9.524", "0.476"),
    ] {
        let parts = price_parts(money(total), 1, percent.parse().unwrap(), true, digits);
        assert_eq!((parts.net, parts.tax, parts.total), (money(net), money(tax), money(total)), "{total} {percent}");
    }
}

/// A trip of a year from the first day, with nothing but what a test adds.
fn year_from(first: Date) -> Plan {
    Plan {
        calendar: Calendar { starts_on: Some(first), leaves_on: Some(first), ..Calendar::default() },
        purse: Purse { opening_cash: Some(Money::ZERO), ..Purse::default() },
        stays: vec![Stay { id: 900, nights: 366, ..Stay::default() }, Stay { id: 901, nights: 366, ..Stay::default() }],
        ..Plan::default()
    }
}

fn days_of_flows(plan: &Plan, first: Date) -> Vec<String> {
    assess(plan, first).money.flows.iter().map(|flow| flow.on.to_string()).collect()
}

/// Source: Gregorian calendar, as python-dateutil 4.0.0 steps (computed): a day that a month lacks falls on its last,
/// and each step is counted from the first date, so that the 31st comes back.
#[test]
fn months_are_stepped_from_the_first_date() {
    for (first, repeat, expected) in [
        (date(2024, 1, 31), Repeat::Monthly, "2024-01-31 2024-02-29 2024-03-31 2024-04-30 2024-05-31"),
        (date(2023, 1, 31), Repeat::Monthly, "2023-01-31 2023-02-28 2023-03-31 2023-04-30 2023-05-31"),
        (date(2026, 8, 31), Repeat::Monthly, "2026-08-31 2026-09-30 2026-10-31 2026-11-30 2026-12-31"),
        (date(2023, 1, 30), Repeat::Monthly, "2023-01-30 2023-02-28 2023-03-30 2023-04-30 2023-05-30"),
        (date(2023, 11, 29), Repeat::Monthly, "2023-11-29 2023-12-29 2024-01-29 2024-02-29 2024-03-29"),
        (date(2024, 2, 29), Repeat::Yearly, "2024-02-29 2025-02-28"),
        (date(2024, 2, 26), Repeat::Weekly, "2024-02-26 2024-03-04 2024-03-11 2024-03-18 2024-03-25"),
        (date(2024, 12, 23), Repeat::Fortnightly, "2024-12-23 2025-01-06 2025-01-20 2025-02-03 2025-02-17"),
        (date(2024, 2, 29), Repeat::Once, "2024-02-29"),
    ] {
        let mut plan = year_from(first);
        let income = Income { id: 1, amount: Some(money("10").into()), on: Some(first), repeat, ..Income::default() };
        plan.incomes = vec![income];
        let expected: Vec<&str> = expected.split(' ').collect();
        assert_eq!(days_of_flows(&plan, first)[..expected.len()], expected, "{first} {repeat:?}");
    }
}

/// Source: as above. An income that began years ago falls on the same days as if every step had been listed.
#[test]
fn an_income_that_began_long_ago_keeps_its_days() {
    for (began, repeat, expected) in [
        (date(2019, 1, 31), Repeat::Monthly, "2024-01-31 2024-02-29 2024-03-31"),
        (date(2019, 1, 7), Repeat::Weekly, "2024-01-15 2024-01-22 2024-01-29"),
        (date(2019, 1, 7), Repeat::Fortnightly, "2024-01-15 2024-01-29 2024-02-12"),
        (date(2016, 2, 29), Repeat::Yearly, "2024-02-29 2025-02-28"),
    ] {
        let mut plan = year_from(date(2024, 1, 10));
        let income = Income { id: 1, amount: Some(money("10").into()), on: Some(began), repeat, ..Income::default() };
        plan.incomes = vec![income];
        let expected: Vec<&str> = expected.split(' ').collect();
        assert_eq!(days_of_flows(&plan, date(2024, 1, 10))[..expected.len()], expected, "{began} {repeat:?}");
    }
}

/// Source: Gregorian calendar (computed with python-dateutil 4.0.0).
#[test]
fn a_cost_of_the_last_of_the_month_is_due_on_the_last_day_of_every_month() {
    for (first, day, expected) in [
        (date(2024, 1, 31), 31, "2024-01-31 2024-02-29 2024-03-31 2024-04-30"),
        (date(2024, 2, 1), 31, "2024-02-29 2024-03-31 2024-04-30"),
        (date(2023, 1, 15), 30, "2023-01-30 2023-02-28 2023-03-30 2023-04-30"),
        (date(2023, 1, 15), 15, "2023-01-15 2023-02-15"),
        (date(2023, 1, 16), 15, "2023-02-15 2023-03-15"),
        (date(2023, 12, 2), 1, "2024-01-01 2024-02-01"),
    ] {
        let mut plan = year_from(first);
        let amount = Some(money("10").into());
        plan.costs = vec![Cost { id: 1, amount, day_of_month: Some(day), phase: CostPhase::Always, ..Cost::default() }];
        let expected: Vec<&str> = expected.split(' ').collect();
        assert_eq!(days_of_flows(&plan, first)[..expected.len()], expected, "{first} day {day}");
    }
}

/// Worked by hand, line by line.
///
/// | day | in | out | cash | what |
/// |---|---|---|---|---|
/// | 27 Feb | | 214.20 | 285.80 | a store: 180.00 and 19 % tax = 214.20 |
/// | 28 Feb | 120.00 | | 405.80 | a sale |
/// | 1 Mar | | 53.50 | 352.30 | leaving: 2 crates at 4.20 and 19 % (1.60) = 10.00; insurance 31.50; a night 12.00 |
/// | 2 Mar | | 12.00 | 340.30 | a night |
/// | 3 Mar | | 12.00 | 328.30 | a night |
/// | 4 Mar | 60.00 | | 388.30 | wages, a free place |
/// | 5 Mar | | | 388.30 | |
#[test]
fn a_cash_table_worked_by_hand_comes_out_line_by_line() {
    let plan = Document::open(
        r#"{
            "calendar": { "starts_on": "2027-02-27", "leaves_on": "2027-03-01" },
            "purse": { "opening_cash": "500", "floor": "300", "tax_percent": "19", "prices_include_tax": false },
            "kit": [
                { "id": 1, "name": "Store", "obtain": "bought", "unit_price": "180", "needed_on": "2027-02-27" },
                { "id": 2, "name": "Crates", "obtain": "made", "quantity": 2, "unit_price": "4.20" },
                { "id": 3, "name": "Blanket", "obtain": "borrowed", "unit_price": "99" }
            ],
            "belongings": [{ "id": 4, "price": "120", "on": "2027-02-28" }],
            "incomes": [{ "id": 5, "amount": "60", "on": "2027-03-04", "repeat": "weekly" }],
            "costs": [{ "id": 6, "amount": "31.50" }, { "id": 7, "amount": "400", "phase": "home", "day_of_month": 1 }],
            "stays": [
                { "id": 8, "nights": 3, "offers": { "price_per_night": "12", "night": "allowed" } },
                { "id": 9, "nights": 2, "offers": { "night": "allowed" } }
            ]
        }"#,
    )
    .unwrap()
    .plan;
    let Assessment { money: report, .. } = assess(&plan, date(2027, 2, 27));
    let table: Vec<String> =
        report.days.iter().map(|day| format!("{} {} {} {}", day.on, day.inflow, day.outflow, day.closing)).collect();
    assert_eq!(
        table,
        [
            "2027-02-27 0 214.20 285.80",
            "2027-02-28 120 0 405.80",
            "2027-03-01 0 53.50 352.30",
            "2027-03-02 0 12 340.30",
            "2027-03-03 0 12 328.30",
            "2027-03-04 60 0 388.30",
            "2027-03-05 0 0 388.30",
        ]
    );
    assert_eq!(report.standing.verdict, Verdict::FallsShort);
    assert_eq!(report.lowest.unwrap().on, date(2027, 2, 27));
    assert_eq!(report.still_to_pay, money("224.20"));
    assert_eq!(report.road_cost_per_day, money("13.50")); // (31.50 + 36.00) / 5
}

/// Source: exact decimal arithmetic: ten times ten cents is one, which binary floats miss.
#[test]
fn ten_times_ten_cents_is_one() {
    let mut plan = year_from(date(2027, 1, 1));
    plan.kit = (1..=10).map(|id| Item { id, unit_price: Some(money("0.10").into()), ..Item::default() }).collect();
    plan.purse.opening_cash = Some(money("1"));
    let report = assess(&plan, date(2027, 1, 1)).money;
    assert_eq!(report.days[0].closing, Money::ZERO);
    assert_eq!(report.standing.first_short, None);
}
