//! What the day of asking changes: what lies before it counts as it was answered or counted.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test stops at what it did not expect; exact values are meant"
)]

use jiff::civil::{Date, date};
use kerbstead_core::money::{Finding, FlowState};
use kerbstead_core::plan::{Money, Path, Plan};
use kerbstead_core::{Assessment, Verdict, assess};
use kerbstead_tests::generate::plan_of;
use kerbstead_tests::worked::money;
use serde_json::{Value, json};

/// A plan from 1 to 20 March, leaving on the 10th, with 500 in hand, and what a test adds.
fn plan(sections: &Value) -> Plan {
    let mut plan = json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-10" },
        "purse": { "opening_cash": "500" },
        "stays": [{ "id": 90, "nights": 11 }],
    });
    plan.as_object_mut().unwrap().extend(sections.as_object().unwrap().clone());
    plan_of(plan)
}

fn march(day: i8) -> Date {
    date(2027, 3, day)
}

fn closing(assessment: &Assessment, on: Date) -> Money {
    assessment.money.days.iter().find(|day| day.on == on).unwrap().closing
}

/// One belonging for 120 on the 5th, one purchase for 80 on the 6th, seen before and after, with each answer.
#[test]
fn what_lies_before_the_day_counts_as_it_was_answered() {
    use FlowState::{Confirmed, Planned, Unanswered};
    let no_answer = json!(null);
    let as_planned = json!({ "happened": true });
    let otherwise = json!({ "happened": true, "on": "2027-03-04", "amount": "70.50" });
    let not_at_all = json!({ "happened": false });
    let before = march(3);
    let after = march(9);
    // (seen on, answer to the sale, answer to the purchase) -> cash in the evening of the 4th, 5th and 6th, states
    for (as_of, sale, purchase, on_4, on_5, on_6, states) in [
        (before, &no_answer, &no_answer, "500", "620", "540", vec![Planned, Planned]),
        (after, &no_answer, &no_answer, "500", "500", "420", vec![Unanswered, Unanswered]),
        (after, &as_planned, &as_planned, "500", "620", "540", vec![Confirmed, Confirmed]),
        (after, &otherwise, &no_answer, "570.50", "570.50", "490.50", vec![Confirmed, Unanswered]),
        (after, &no_answer, &otherwise, "429.50", "429.50", "429.50", vec![Confirmed, Unanswered]),
        (after, &not_at_all, &not_at_all, "500", "500", "500", vec![]),
        (before, &not_at_all, &no_answer, "500", "500", "420", vec![Planned]),
        (march(5), &no_answer, &no_answer, "500", "620", "540", vec![Planned, Planned]),
        (march(6), &no_answer, &no_answer, "500", "500", "420", vec![Unanswered, Planned]),
    ] {
        let plan = plan(&json!({
            "belongings": [{ "id": 1, "name": "Bicycle", "price": "120", "on": "2027-03-05", "outcome": sale }],
            "kit": [{ "id": 2, "name": "Stove", "unit_price": "80", "needed_on": "2027-03-06", "paid": purchase }],
        }));
        let assessment = assess(&plan, as_of);
        let cash = [4, 5, 6].map(|day| closing(&assessment, march(day)));
        assert_eq!(cash, [money(on_4), money(on_5), money(on_6)], "{as_of} {sale} {purchase}");
        let found: Vec<FlowState> = assessment.money.flows.iter().map(|flow| flow.state).collect();
        assert_eq!(found, states, "{as_of} {sale} {purchase}");
    }
}

#[test]
fn unanswered_receipts_and_payments_are_asked_for() {
    let plan = plan(&json!({
        "belongings": [
            { "id": 1, "price": "120", "on": "2027-03-02" },
            { "id": 2, "price": "30", "on": "2027-03-05" },
            { "id": 3, "price": "7", "on": "2027-03-15" },
        ],
        "kit": [{ "id": 4, "unit_price": "80", "needed_on": "2027-03-06" }],
    }));
    let findings = assess(&plan, march(9)).money.standing.findings;
    assert!(findings.contains(&Finding::ReceiptsUnanswered { count: 2, amount: money("150") }), "{findings:?}");
    assert!(findings.contains(&Finding::PaymentsUnanswered { count: 1, amount: money("80") }), "{findings:?}");
    let findings = assess(&plan, march(1)).money.standing.findings;
    assert_eq!(findings, []);
}

#[test]
fn wages_count_up_to_the_day_they_were_received_until() {
    let plan = plan(&json!({
        "incomes": [{
            "id": 1, "amount": "100", "on": "2027-03-01", "repeat": "weekly", "received_until": "2027-03-09",
        }],
    }));
    let assessment = assess(&plan, march(16));
    let states: Vec<FlowState> = assessment.money.flows.iter().map(|flow| flow.state).collect();
    assert_eq!(states, [FlowState::Confirmed, FlowState::Confirmed, FlowState::Unanswered]);
    assert_eq!(closing(&assessment, march(20)), money("700"));
}

/// Cash counted before noon stands before the day's movements, from noon on after them.
#[test]
fn a_count_of_the_cash_replaces_what_was_computed() {
    for (hour, on_5, on_6) in [(8, "380", "380"), (11, "380", "380"), (12, "420", "300"), (20, "420", "300")] {
        let plan = plan(&json!({
            "kit": [{ "id": 1, "unit_price": "80", "needed_on": "2027-03-05" }],
            "readings": [{ "id": 2, "on": "2027-03-05", "hour": hour, "cash": if hour < 12 { "460" } else { "300" } }],
        }));
        let assessment = assess(&plan, march(5));
        assert_eq!(closing(&assessment, march(5)), money(on_5), "hour {hour}");
        assert_eq!(closing(&assessment, march(6)), money(on_6), "hour {hour}");
    }
}

#[test]
fn the_later_of_two_counts_wins_in_whatever_order_they_are_listed() {
    let readings = |first: &str, second: &str| {
        plan(&json!({ "readings": [
            { "id": 2, "on": first, "cash": "200" },
            { "id": 3, "on": second, "cash": "300" },
        ]}))
    };
    let last = |plan: &Plan| closing(&assess(plan, march(20)), march(20));
    assert_eq!(last(&readings("2027-03-04", "2027-03-06")), money("300"));
    assert_eq!(last(&readings("2027-03-06", "2027-03-04")), money("200"));
}

#[test]
fn a_count_after_the_day_of_asking_does_not_count_yet() {
    let plan = plan(&json!({ "readings": [{ "id": 2, "on": "2027-03-06", "hour": 8, "cash": "1" }] }));
    assert_eq!(closing(&assess(&plan, march(5)), march(20)), money("500"));
    assert_eq!(closing(&assess(&plan, march(6)), march(20)), money("1"));
}

#[test]
fn a_count_of_the_cash_stands_in_for_the_cash_at_the_start() {
    let mut plan = plan(&json!({ "readings": [{ "id": 2, "on": "2027-03-03", "cash": "250" }] }));
    plan.purse.opening_cash = None;
    let standing = assess(&plan, march(2)).money.standing;
    assert_eq!((standing.verdict, standing.missing), (Verdict::Unknown, vec![Path::from("purse/opening_cash")]));
    let assessment = assess(&plan, march(3));
    assert_eq!(assessment.money.standing.verdict, Verdict::Holds);
    assert_eq!(closing(&assessment, march(20)), money("250"));
}

#[test]
fn charge_and_water_counted_on_the_way_replace_what_was_computed() {
    let plan = plan(&json!({
        "kit": [
            { "id": 1, "store": { "usable_wh": 1000 } },
            { "id": 2, "draw": { "power_w": 10, "outlet": "dc" } },
            { "id": 3, "tank": { "capacity_l": 20 } },
            { "id": 4, "tank": { "holds": "grey", "capacity_l": 10 } },
            { "id": 5, "store": { "usable_wh": 300 } },
        ],
        "water_uses": [{ "id": 6, "litres_per_day": 1, "to_grey_percent": 50 }],
        "readings": [
            { "id": 7, "on": "2027-03-12", "hour": 6, "charge_percent": 90, "fresh_l": 9, "grey_l": 8 },
            { "id": 8, "on": "2027-03-12", "hour": 7, "store": 5, "charge_percent": 10 },
            { "id": 9, "on": "2027-03-13", "hour": 13, "fresh_l": 99, "grey_l": 99 },
        ],
    }));
    let assessment = assess(&plan, march(14));
    let charge = &assessment.power.stores[0].charge_wh;
    assert_eq!((charge[2 * 24 + 5], charge[2 * 24 + 6]), (1_000.0 - 54.0 * 10.0, 890.0));
    let second = &assessment.power.stores[1].charge_wh;
    assert_eq!((second[2 * 24 + 6], second[2 * 24 + 7]), (300.0, 30.0));
    let water: Vec<(f64, f64, f64)> =
        assessment.water.days.iter().map(|day| (day.opening_l, day.fresh_l, day.grey_l)).collect();
    assert_eq!(water[1..5], [(19.0, 18.0, 1.0), (9.0, 8.0, 8.5), (8.0, 7.0, 9.0), (20.0, 19.0, 10.0)]);
}

/// Only what is still ahead is judged: a shortage that is over is no shortage.
/// The verdicts on money, power and water; the days until leaving are over then.
fn on_the_road(plan: &Plan, day: Date) -> [Verdict; 3] {
    let [money, power, water, ..] = assess(plan, day).verdicts().map(|(_, verdict)| verdict);
    [money, power, water]
}

#[test]
fn a_shortage_that_is_over_is_not_judged() {
    let plan = plan(&json!({
        "kit": [
            { "id": 1, "store": { "usable_wh": 100 } },
            { "id": 2, "draw": { "power_w": 10, "outlet": "dc" } },
            { "id": 3, "tank": { "capacity_l": 2 } },
        ],
        "water_uses": [{ "id": 6, "litres_per_day": 1 }],
        "purse": { "opening_cash": "-5" },
        "readings": [{ "id": 7, "on": "2027-03-20", "cash": "50", "charge_percent": 100, "fresh_l": 2 }],
    }));
    let first = on_the_road(&plan, march(19));
    assert_eq!(first, [Verdict::FallsShort; 3]);
    let mut shorter = plan.clone();
    shorter.kit[0].store.as_mut().unwrap().usable_wh = 1_000.0;
    let last = on_the_road(&shorter, march(20));
    assert_eq!(last, [Verdict::Holds; 3]);
}

#[test]
fn a_plan_that_is_over_has_no_verdict() {
    let sections = json!({
        "kit": [{ "id": 1, "store": { "usable_wh": 100 } }, { "id": 2, "draw": { "power_w": 1 } }],
        "water_uses": [{ "id": 6, "litres_per_day": 1 }],
    });
    let plan = plan(&sections);
    let verdicts = |day| on_the_road(&plan, day);
    assert!(!verdicts(march(20)).contains(&Verdict::Unknown));
    assert_eq!(verdicts(march(21)), [Verdict::Unknown; 3]);
    assert_eq!(verdicts(date(2031, 1, 1)), [Verdict::Unknown; 3]);
}
