//! Receipts in a plan: what they count as, and that nothing counts twice. The sums are our own, worked out by hand.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::date;
use kerbstead_core::assess;
use kerbstead_core::money::{
    FlowGroup, Receipt, ReceiptLine, Report, are_booked, book, bookings, newest_first, paid_against_plan, take_out,
};
use kerbstead_core::papers::to_buy;
use kerbstead_core::plan::{Document, Edit, Group, List, Money, Plan, Wrong};
use kerbstead_core::share::{Parcel, Scope};
use kerbstead_tests::generate::file_plans;
use kerbstead_tests::worked::money;
use proptest::prelude::*;
use serde_json::{Value, json};

/// Boards for 60 and a lamp for 14, both needed on 10 March; 500 of cash on the first, and the van leaves on the 20th.
fn plan_with(more: &Value) -> Plan {
    let mut file = json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
        "purse": { "opening_cash": "500" },
        "kit": [
            { "id": 1, "name": "Boards", "group": "structure", "unit_price": "60", "needed_on": "2027-03-10" },
            { "id": 2, "name": "Lamp", "group": "power", "unit_price": "14", "needed_on": "2027-03-10" },
        ],
        "stays": [{ "id": 3, "nights": 5 }],
    });
    for (name, value) in more.as_object().unwrap() {
        file[name] = value.clone();
    }
    Document::from_value(file).unwrap().plan
}

fn with_receipts(receipts: &Value, lines: &Value) -> Plan {
    plan_with(&json!({ "receipts": receipts, "receipt_lines": lines }))
}

/// On the fifth of March.
fn asked(plan: &Plan) -> Report {
    assess(plan, date(2027, 3, 5)).money
}

fn flows(report: &Report) -> Vec<String> {
    let line = |flow: &kerbstead_core::money::Flow| format!("{} {:?} {}", flow.on, flow.state, flow.amount);
    report.flows.iter().map(line).collect()
}

/// Cash in the evening of the last day.
fn left(report: &Report) -> Money {
    report.days.last().unwrap().closing
}

#[test]
fn what_a_receipt_says_was_paid_counts_instead_of_the_planned_price() {
    let plan = with_receipts(
        &json!([{ "id": 10, "on": "2027-03-04", "place": "Yard", "total": "70" }]),
        &json!([{ "id": 11, "receipt": 10, "item": 1, "amount": "66.50" }]),
    );
    let report = asked(&plan);
    assert_eq!(flows(&report), ["2027-03-04 Confirmed -66.50", "2027-03-04 Confirmed -3.50", "2027-03-10 Planned -14"]);
    let groups: Vec<_> = report.groups.iter().map(|it| (it.group, it.foreseen, it.settled, it.open)).collect();
    let zero = Money::ZERO;
    assert_eq!(
        groups,
        [
            (FlowGroup::Kit(Group::Power), money("-14"), zero, money("-14")),
            (FlowGroup::Kit(Group::Structure), money("-66.50"), money("-66.50"), zero),
            (FlowGroup::Receipts, money("-3.50"), money("-3.50"), zero),
        ]
    );
    assert_eq!(report.still_to_pay, money("14"));
    assert_eq!(left(&report), money("416"));
    assert_eq!(to_buy(&plan).iter().map(|line| line.name.as_str()).collect::<Vec<_>>(), ["Lamp"]);
    let Parcel::Plan { file, .. } = Parcel::of(&Document::new(&plan).write(&plan), Scope::Shopping, false) else {
        unreachable!("a plan gives a plan")
    };
    assert_eq!(file["kit"].as_array().unwrap().len(), 1);
}

/// Each with what is left of 500 once the lamp is paid too, and the flows of the boards.
#[test]
fn an_item_with_a_receipt_and_an_answer_does_not_count_twice() {
    let receipts = json!([{ "id": 10, "on": "2027-03-04" }]);
    let cases = [
        // Said to be paid, no amount said: the receipt knows it.
        (json!({ "happened": true }), false, "426", "-60"),
        // Said to be 60 in all: that is the receipt.
        (json!({ "happened": true, "amount": "60" }), false, "426", "-60"),
        // Said to be 80 in all: 20 were paid without a receipt, on the day that was said.
        (json!({ "happened": true, "amount": "80", "on": "2027-03-05" }), false, "406", "-60 -20"),
        // Said to be less than the receipt, or not at all: the receipt was paid all the same.
        (json!({ "happened": true, "amount": "40" }), false, "426", "-60"),
        (json!({ "happened": false }), false, "426", "-60"),
        // The receipt is for a part. 60 were planned, so nothing is left to pay.
        (Value::Null, true, "426", "-60"),
    ];
    for (paid, more_follows, left_over, amounts) in cases {
        let lines = json!([{ "id": 11, "receipt": 10, "item": 1, "amount": "60", "more_follows": more_follows }]);
        let mut plan = with_receipts(&receipts, &lines);
        Edit::set("kit/1/paid", paid.clone()).apply(&mut plan).unwrap();
        let report = asked(&plan);
        let of_boards = report.flows.iter().filter(|flow| flow.source == 1).map(|flow| flow.amount.to_string());
        assert_eq!(of_boards.collect::<Vec<_>>().join(" "), amounts, "{paid}");
        assert_eq!(left(&report), money(left_over), "{paid}");
        let settled: Money = report.groups.iter().map(|group| group.settled).sum();
        assert_eq!(settled, money(left_over) - money("500") + money("14"), "{paid}");
    }
}

#[test]
fn where_more_follows_the_rest_of_the_price_is_still_to_be_paid() {
    let lines = json!([
        { "id": 11, "receipt": 10, "item": 1, "amount": "25", "more_follows": true },
        { "id": 12, "receipt": 10, "item": 1, "amount": "10", "more_follows": true },
    ]);
    let mut plan = with_receipts(&json!([{ "id": 10, "on": "2027-03-04" }]), &lines);
    let report = asked(&plan);
    assert_eq!(
        flows(&report),
        ["2027-03-04 Confirmed -25", "2027-03-04 Confirmed -10", "2027-03-10 Planned -25", "2027-03-10 Planned -14"]
    );
    assert_eq!(report.still_to_pay, money("39"));
    assert_eq!(to_buy(&plan).len(), 2);
    // One line without the mark says that this was all.
    Edit::set("receipt_lines/12/more_follows", false).apply(&mut plan).unwrap();
    assert_eq!(asked(&plan).still_to_pay, money("14"));
}

#[test]
fn a_line_without_an_amount_is_what_the_total_leaves() {
    let plan = with_receipts(
        &json!([{ "id": 10, "on": "2027-03-04", "total": "43.20" }, { "id": 20 }]),
        &json!([
            { "id": 11, "receipt": 10, "item": 1 },
            { "id": 12, "receipt": 10, "amount": "3.20" },
            { "id": 13, "receipt": 10 },
            { "id": 21, "receipt": 20, "item": 2 },
        ]),
    );
    let all = bookings(&plan);
    let amounts: Vec<Vec<String>> =
        all.iter().map(|booking| booking.receipt.lines.iter().map(|line| line.amount.to_string()).collect()).collect();
    assert_eq!(amounts, [vec!["40.00", "3.20", "0"], vec!["0"]]);
    assert_eq!(flows(&asked(&plan)), ["2027-03-04 Confirmed -40.00", "2027-03-04 Confirmed -3.20"]);
}

/// A receipt without a day is of the first day, so that a count of the cash has it in it; one from before the first day
/// is in the opening cash; a line whose receipt is gone is not lost.
#[test]
fn receipts_without_a_day_or_a_place_in_the_plan_count_once() {
    let reading = json!([{ "id": 30, "on": "2027-03-04", "hour": 20, "cash": "300" }]);
    let mut plan = with_receipts(
        &json!([{ "id": 10, "total": "5" }, { "id": 20, "on": "2027-02-20", "total": "60" }]),
        &json!([
            { "id": 21, "receipt": 20, "item": 1 },
            { "id": 40, "receipt": 99, "amount": "7", "item": 98 },
        ]),
    );
    assert_eq!(flows(&asked(&plan)), ["2027-03-01 Confirmed -5", "2027-03-01 Confirmed -7", "2027-03-10 Planned -14"]);
    assert_eq!(left(&asked(&plan)), money("474"));
    plan.readings = Document::from_value(json!({ "readings": reading })).unwrap().plan.readings;
    assert_eq!(left(&asked(&plan)), money("286"));
    let wrong: Vec<_> = kerbstead_core::plan::validate(&plan);
    let told = wrong.iter().map(|problem| (problem.path.as_str(), problem.wrong.clone())).collect::<Vec<_>>();
    assert_eq!(
        told,
        [
            ("receipt_lines/40/receipt", Wrong::NoSuchEntry { id: 99 }),
            ("receipt_lines/40/item", Wrong::NoSuchEntry { id: 98 })
        ]
    );
}

#[test]
fn what_was_paid_stands_beside_the_plan_with_what_was_said_without_a_receipt() {
    let mut plan = with_receipts(
        &json!([{ "id": 10, "on": "2027-03-04", "total": "70" }]),
        &json!([{ "id": 11, "receipt": 10, "item": 1, "amount": "66.50" }]),
    );
    Edit::set("kit/2/paid", json!({ "happened": true })).apply(&mut plan).unwrap();
    let told: Vec<_> = paid_against_plan(&plan).iter().map(|it| (it.item, it.paid, it.beyond_plan())).collect();
    assert_eq!(
        told,
        [
            (Some(1), money("66.50"), Some(money("6.50"))),
            (Some(2), money("14"), Some(Money::ZERO)),
            (None, money("3.50"), None)
        ]
    );
    let settled: Money = asked(&plan).groups.iter().map(|group| group.settled).sum();
    assert_eq!(-settled, told.iter().map(|(_, paid, _)| *paid).sum());
}

#[test]
fn a_receipt_is_taken_out_with_its_lines_and_comes_back_as_one() {
    let before = with_receipts(
        &json!([{ "id": 10, "on": "2027-03-04" }, { "id": 20, "on": "2027-03-04" }, { "id": 30 }]),
        &json!([
            { "id": 11, "receipt": 10, "amount": "1" },
            { "id": 21, "receipt": 20, "amount": "2" },
            { "id": 12, "receipt": 10, "amount": "3" },
            { "id": 40, "receipt": 99, "amount": "4" },
        ]),
    );
    let order: Vec<_> = newest_first(&bookings(&before)).iter().map(|booking| booking.id).collect();
    assert_eq!(order, [Some(20), Some(10), None, Some(30)]);
    let mut plan = before.clone();
    let undo = take_out(&plan, Some(10)).apply(&mut plan).unwrap();
    assert_eq!((List::Receipts.ids(&plan), List::ReceiptLines.ids(&plan)), (vec![20, 30], vec![21, 40]));
    let undo_lost = take_out(&plan, None).apply(&mut plan).unwrap();
    assert_eq!(List::ReceiptLines.ids(&plan), [21]);
    undo_lost.apply(&mut plan).unwrap();
    undo.apply(&mut plan).unwrap();
    assert_eq!(plan, before);
}

/// Two coffees of one day may both be right: of as many alike as the plan has, each is one of them.
#[test]
fn receipts_that_are_there_already_are_known_again() {
    let on = Some(date(2027, 3, 4));
    let coffee = Receipt { on, stated: Some(money("2.5")), ..Receipt::default() };
    let lines = vec![ReceiptLine { amount: money("2.50"), ..ReceiptLine::default() }];
    let same = Receipt { place: "Kiosk".into(), stated: None, lines, ..coffee.clone() };
    let other_day = Receipt { on: None, ..coffee.clone() };
    let mut plan = Plan::default();
    assert_eq!(are_booked(&plan, std::slice::from_ref(&coffee)), [false]);
    book(&plan, std::slice::from_ref(&coffee)).unwrap().apply(&mut plan).unwrap();
    assert_eq!(are_booked(&plan, &[same, coffee, other_day]), [true, false, false]);
}

#[test]
fn more_receipts_than_a_plan_holds_are_not_put_in() {
    let many = vec![Receipt::default(); 10_000];
    assert!(book(&Plan::default(), &many).is_some());
    assert!(book(&plan_with(&json!({ "receipts": [{ "id": 9 }] })), &many).is_none());
}

#[test]
fn receipts_are_money_and_do_not_travel_without_it() {
    let plan = with_receipts(&json!([{ "id": 10, "total": "70" }]), &json!([{ "id": 11, "receipt": 10, "item": 1 }]));
    let file = Document::new(&plan).write(&plan);
    for (scope, with_money, travels) in
        [(Scope::Whole, true, true), (Scope::Whole, false, false), (Scope::Kit, true, false)]
    {
        let Parcel::Plan { file, .. } = Parcel::of(&file, scope, with_money) else {
            unreachable!("a plan gives a plan")
        };
        assert_eq!((file.get("receipts").is_some(), file.get("receipt_lines").is_some()), (travels, travels));
    }
}

/// A plan without receipts is written as before there were any.
#[test]
fn no_receipts_take_no_room() {
    let written = Document::new(&Plan::default()).write(&Plan::default());
    assert!(written.get("receipts").is_none() && written.get("receipt_lines").is_none());
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// What is booked is there as it was, with every amount, and the flows of it are what left the purse.
    #[test]
    fn all_that_receipts_say_was_paid_is_in_the_flows(plan in file_plans()) {
        let as_of = date(2027, 3, 1);
        let assessment = assess(&plan, as_of);
        let digits = plan.minor_digits();
        let is_counted = |on: jiff::civil::Date| assessment.money.days.iter().any(|day| day.on == on);
        let first = assessment.money.days.first().map_or(as_of, |day| day.on);
        let is_sane = |amount: Money| amount.decimal().abs() < 1_000_000_000_000_i64.into();
        let all = bookings(&plan);
        prop_assume!(all.iter().all(|it| is_sane(it.receipt.paid()) && it.receipt.lines.iter().all(|it| is_sane(it.amount))));
        let counted = all.iter().filter(|booking| is_counted(booking.receipt.on.unwrap_or(first)));
        let paid: Money = counted
            .map(|booking| match booking.receipt.stated {
                Some(stated) => stated.rounded(digits),
                None => booking.receipt.lines.iter().map(|line| line.amount.rounded(digits)).sum(),
            })
            .sum();
        // The same plan without its receipts, and with every item that is on one given the outcome it had.
        let of_receipts: Money = assessment.money.flows.iter().filter(|flow| flow.group == FlowGroup::Receipts)
            .map(|flow| -flow.amount).sum();
        let of_items: Money = all.iter().filter(|booking| is_counted(booking.receipt.on.unwrap_or(first)))
            .flat_map(|booking| &booking.receipt.lines)
            .filter(|line| line.item.is_some_and(|id| plan.item(id).is_some()))
            .map(|line| line.amount.rounded(digits)).sum();
        prop_assert_eq!(of_receipts + of_items, paid);
    }
}
