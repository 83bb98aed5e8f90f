//! Loans and rates against published and independently computed values. The source of each stands beside it.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::date;
use kerbstead_core::money::{
    RatedFlow, Terms, level_payment, months_to_pay_off, payoff, rate_per_period, schedule, total_interest,
    yearly_cost_percent,
};
use kerbstead_core::plan::Money;
use kerbstead_tests::worked::money;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde_json::Value;

fn terms(principal: &str, percent: &str, months: u32) -> Terms {
    Terms {
        principal: money(principal),
        yearly_percent: percent.parse().unwrap(),
        months,
        fees: Money::ZERO,
        drawn_on: date(2031, 1, 10),
        first_payment_on: date(2031, 2, 10),
        digits: 2,
    }
}

/// An advance, then payments from a first unit-period and fraction on.
fn regulation_z(advance: f64, first: (u32, f64), payments: &[(u32, f64)], periods_a_year: f64) -> f64 {
    let amounts = payments.iter().flat_map(|(count, amount)| std::iter::repeat_n(*amount, *count as usize));
    let mut flows = vec![RatedFlow { periods: 0, fraction: 0.0, amount: advance }];
    let later = (first.0..).zip(amounts);
    flows.extend(later.map(|(periods, amount)| RatedFlow { periods, fraction: first.1, amount: -amount }));
    rate_per_period(&flows).unwrap() * periods_a_year * 100.0
}

/// Source: 12 CFR 1026 (Regulation Z), Appendix J, the examples named; the law prints two decimals.
#[test]
fn the_worked_examples_of_regulation_z_come_out() {
    let found = [
        ("(c)(1)(i)", 9.69, regulation_z(5000.0, (1, 0.0), &[(24, 230.0)], 12.0)),
        ("(c)(1)(iii)", 10.34, regulation_z(5000.0, (0, 6.0 / 15.0), &[(24, 219.17)], 24.0)),
        ("(c)(2)(i)", 10.08, regulation_z(5000.0, (1, 0.0), &[(1, 250.0), (23, 230.0)], 12.0)),
        ("(c)(3)(ii)", 12.22, regulation_z(200.0, (0, 8.0 / 14.0), &[(19, 9.5), (1, 30.0)], 26.0)),
        ("(c)(5)(i)", 11.45, regulation_z(1000.0, (1, 0.0), &[(1, 1080.0)], 365.0 / 255.0)),
        // Computed with the same equation; the appendix's own quarterly example has a long first period.
        ("quarterly", 9.20, regulation_z(10_000.0, (1, 0.0), &[(40, 385.0)], 4.0)),
    ];
    for (example, expected, percent) in found {
        assert!((percent - expected).abs() <= 0.005, "{example}: {percent}");
    }
}

/// Source: the same appendix, (c)(1)(i), through the loan that the app knows: a level loan of 24 payments costs what
/// its rate says when nothing is paid for it, and more with a fee.
#[test]
fn a_loan_without_fees_costs_its_rate() {
    let mut terms = terms("5000", "9.69", 24);
    let payments = schedule(&terms);
    let plain = yearly_cost_percent(&terms, &payments).unwrap();
    assert!((plain - 9.69).abs() < 0.01, "{plain}");
    terms.fees = money("150");
    let with_fee = yearly_cost_percent(&terms, &payments).unwrap();
    assert!(with_fee > 12.0, "{with_fee}");
}

/// Source: the rule itself in decimal arithmetic (level payment and each month's interest rounded half up, the last
/// payment settles); the unrounded payment is numpy-financial's.
#[test]
fn a_schedule_to_the_cent_settles_exactly() {
    let cases = [
        (terms("1200", "9.99", 12), "105.49", "105.51", "65.90"),
        (terms("8650", "13.45", 36), "293.33", "293.39", "1909.94"),
    ];
    for (terms, payment, last, interest) in cases {
        let payments = schedule(&terms);
        assert_eq!(payments.first().unwrap().payment, money(payment));
        assert_eq!(payments.last().unwrap().payment, money(last));
        assert_eq!(total_interest(&payments), money(interest));
        let principal: Money = payments.iter().map(|payment| payment.principal).sum();
        assert_eq!((principal, payments.last().unwrap().balance), (terms.principal, Money::ZERO));
    }
}

/// Source: by hand. Half of a 30-day month after the first payment: half of that month's interest is added.
#[test]
fn settling_early_pays_the_days_since() {
    let terms = terms("1000", "12", 10);
    let payments = schedule(&Terms { first_payment_on: date(2031, 4, 1), drawn_on: date(2031, 3, 1), ..terms });
    let terms = Terms { first_payment_on: date(2031, 4, 1), drawn_on: date(2031, 3, 1), ..terms };
    let owed = payments.first().unwrap().balance;
    let half_month = owed.percent("0.5".parse().unwrap()).rounded(2);
    assert_eq!(payoff(&terms, &payments, date(2031, 4, 1)), owed);
    assert_eq!(payoff(&terms, &payments, date(2031, 4, 16)), owed + half_month);
    assert_eq!(payoff(&terms, &payments, date(2032, 6, 1)), Money::ZERO);
}

/// Source: the Gregorian calendar; a loan of the 31st is due on the last day of a short month, stepped from the first.
#[test]
fn payments_of_the_31st_fall_on_the_last_day() {
    let terms = Terms { first_payment_on: date(2028, 1, 31), ..terms("300", "5", 4) };
    let days: Vec<_> = schedule(&terms).iter().map(|payment| payment.on).collect();
    assert_eq!(days, [date(2028, 1, 31), date(2028, 2, 29), date(2028, 3, 31), date(2028, 4, 30)]);
}

/// Source: `tests/reference/loans.py`, numpy-financial 1.0.0.
#[test]
fn loans_and_rates_agree_with_numpy_financial() {
    let data: Value = serde_json::from_str(include_str!("../data/loans.json")).unwrap();
    let number = |case: &Value, name: &str| case[name].as_f64().unwrap();
    for case in data["loans"].as_array().unwrap() {
        let principal = Money::whole(case["principal"].as_i64().unwrap());
        let percent = Decimal::from_f64_retain(number(case, "yearly_percent")).unwrap().round_dp(6);
        let months = u32::try_from(case["months"].as_u64().unwrap()).unwrap();
        let payment = level_payment(principal, percent, months);
        assert_close(payment.decimal().to_f64().unwrap(), number(case, "payment"), case);
        let total = payment.times(months) - principal;
        assert_close(total.decimal().to_f64().unwrap(), number(case, "total_interest"), case);
        // Enough digits that rounding does not show.
        let terms = Terms { principal, yearly_percent: percent, months, digits: 12, ..terms("0", "0", 1) };
        let middle = usize::try_from(case["middle"].as_u64().unwrap()).unwrap();
        let payments = schedule(&terms);
        let row = payments.get(middle - 1).unwrap();
        assert_close(row.interest.decimal().to_f64().unwrap(), number(case, "middle_interest"), case);
        assert_close(row.principal.decimal().to_f64().unwrap(), number(case, "middle_principal"), case);
        assert_close(row.balance.decimal().to_f64().unwrap(), number(case, "middle_balance"), case);
    }
    for case in data["months_to_pay_off"].as_array().unwrap() {
        let months =
            months_to_pay_off(number(case, "principal"), number(case, "yearly_percent"), number(case, "payment"));
        assert_close(months.unwrap(), number(case, "months"), case);
    }
    for case in data["rates_of_return"].as_array().unwrap() {
        let amounts = case["flows"].as_array().unwrap().iter().map(|amount| amount.as_f64().unwrap());
        let flows: Vec<RatedFlow> =
            (0..).zip(amounts).map(|(periods, amount)| RatedFlow { periods, fraction: 0.0, amount }).collect();
        assert!((rate_per_period(&flows).unwrap() - number(case, "rate")).abs() < 1e-9, "{case}");
    }
}

/// A debt whose payment does not meet its interest is never paid off.
#[test]
fn a_payment_below_the_interest_pays_nothing_off() {
    assert_eq!(months_to_pay_off(1000.0, 24.0, 20.0), None);
    assert_eq!(months_to_pay_off(1000.0, 0.0, 250.0), Some(4.0));
}

fn assert_close(found: f64, expected: f64, case: &Value) {
    assert!((found - expected).abs() <= 1e-9 * expected.abs().max(1.0), "{found} is not {expected} in {case}");
}
