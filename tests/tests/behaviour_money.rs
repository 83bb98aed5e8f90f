//! The van, loans and all that money does beyond single purchases, against tables worked by hand.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::money::{FlowGroup, FlowState, Report, answer};
use kerbstead_core::plan::{Document, Money, Plan, Problem, Wrong};
use kerbstead_core::{Say, assess};
use kerbstead_tests::worked::{money, plan};
use serde_json::{Value, json};

fn problems(file: &Value) -> Vec<Problem> {
    Document::open(&file.to_string()).unwrap().problems
}

fn asked(file: &Value, as_of: Date) -> Report {
    assess(&plan(file), as_of).money
}

/// The flows of one group, a line each.
fn lines(report: &Report, group: FlowGroup) -> Vec<String> {
    let of_group = report.flows.iter().filter(|flow| flow.group == group);
    of_group.map(|flow| format!("{} {}", flow.on, flow.amount)).collect()
}

fn findings(report: &Report) -> Vec<&'static str> {
    report.standing.findings.iter().map(Say::key).collect()
}

/// A van for 4,200 with a deposit, a present car, fees and registration, and a loan that comes when it is paid.
fn van_with_loan() -> Value {
    json!({
        "calendar": { "starts_on": "2027-02-15", "leaves_on": "2027-03-15" },
        "purse": { "opening_cash": "4000" },
        "vehicle": {
            "resale": "3600", "resale_falls": "45",
        },
        "purchase": {
            "agreed_price": "4200", "pay_on": "2027-03-10", "deposit": "300", "deposit_on": "2027-02-20",
            "part_exchange": "600", "seller_fees": "80", "registration": "60", "registration_on": "2027-03-12",
        },
        "loans": [{ "id": 7, "name": "Bank", "amount": "1200", "yearly_percent": "9.99", "months": 12, "fees": "30" }],
        "stays": [{ "id": 1, "nights": 60 }],
    })
}

/// Worked by hand. The rest of the price is 4,200 - 300 deposit - 600 for the car + 80 fees = 3,380. The payments of the
/// loan are those of the worked schedule of `loan.rs`.
#[test]
fn the_van_is_paid_in_its_parts_and_the_loan_comes_with_it() {
    let report = asked(&van_with_loan(), date(2027, 2, 15));
    assert_eq!(lines(&report, FlowGroup::Vehicle), ["2027-02-20 -300", "2027-03-10 -3380", "2027-03-12 -60"]);
    assert_eq!(lines(&report, FlowGroup::Loans), ["2027-03-10 1170", "2027-04-10 -105.49", "2027-05-10 -105.49"]);
    let evening = |on: Date| report.days.iter().find(|day| day.on == on).unwrap().closing;
    assert_eq!(evening(date(2027, 3, 10)), money("1490")); // 4,000 - 300 - 3,380 + 1,170
    assert_eq!(evening(date(2027, 5, 10)), money("1219.02"));
    let loan = &report.loans[0];
    assert_eq!((loan.payment, loan.payments.len()), (money("105.49"), 12));
    assert_eq!(loan.interest, money("65.90")); // 11 x 105.49 + 105.51 - 1,200
    assert_eq!(loan.ends_on, date(2028, 3, 10));
}

/// Worked by hand: before the loan comes nothing is owed; on 15 April a payment is made and 5 of 30 days have passed.
#[test]
fn what_is_owed_stands_beside_what_the_van_would_bring() {
    let report = asked(&van_with_loan(), date(2027, 2, 15));
    let table: Vec<String> = report.owed.iter().map(|day| format!("{} {} {}", day.on, day.owed, day.resale)).collect();
    // 1,200 + 9.99 - 105.49 = 1,104.50; a month of interest on it is 9.19, of which 5/30 is 1.53.
    assert_eq!(table[..3], ["2027-02-15 0 3600", "2027-03-15 1201.61 3600", "2027-04-15 1106.03 3555"]);
    assert!(!findings(&report).contains(&"money-owes-more"));
    let mut poorer = van_with_loan();
    poorer["vehicle"]["resale"] = json!("1200");
    let report = asked(&poorer, date(2027, 2, 15));
    let finding = report.standing.findings.iter().find(|finding| finding.key() == "money-owes-more").unwrap();
    assert_eq!(serde_json::to_value(finding).unwrap()["on"], "2027-03-15");
}

/// Worked by hand: 1,200 at 1 % a month in 12 parts of 106.62. After two payments 1,009.81 is left (12.00 and 11.05 of
/// interest); 15 of the 31 days to the next one have passed on 16 March, so 15/31 of 10.10 = 4.89 comes on top.
#[test]
fn paying_all_the_rest_at_once_settles_the_loan_and_saves_interest() {
    let file = json!({
        "calendar": { "starts_on": "2027-01-01", "leaves_on": "2027-01-01" },
        "purse": { "opening_cash": "0" },
        "loans": [{
            "id": 1, "amount": "1200", "yearly_percent": "12", "months": 12, "drawn_on": "2027-01-01",
            "paid_off_on": "2027-03-16",
        }],
        "stays": [{ "id": 2, "nights": 200 }],
    });
    let report = asked(&file, date(2027, 1, 1));
    assert_eq!(
        lines(&report, FlowGroup::Loans),
        ["2027-01-01 1200", "2027-02-01 -106.62", "2027-03-01 -106.62", "2027-03-16 -1014.70"]
    );
    let loan = &report.loans[0];
    assert_eq!((loan.interest, loan.ends_on), (money("27.94"), date(2027, 3, 16)));
    // The whole schedule has 79.42 of interest: 11 x 106.62 + 106.60 - 1,200.
    assert_eq!(loan.interest + loan.interest_saved, money("79.42"));
}

/// A loan of a friend: without interest, to the cent, and its last part takes what rounding left.
#[test]
fn a_loan_without_interest_is_paid_in_equal_parts() {
    let file = json!({
        "calendar": { "starts_on": "2027-01-31", "leaves_on": "2027-01-31" },
        "loans": [{ "id": 1, "name": "Cousin", "amount": "100", "months": 3, "drawn_on": "2027-01-31" }],
        "stays": [{ "id": 2, "nights": 120 }],
    });
    let report = asked(&file, date(2027, 1, 31));
    assert_eq!(
        lines(&report, FlowGroup::Loans),
        ["2027-01-31 100", "2027-02-28 -33.33", "2027-03-31 -33.33", "2027-04-30 -33.34"]
    );
    assert_eq!(report.loans[0].yearly_cost_percent.map(|percent| (percent * 1e6).round()), Some(0.0));
}

#[test]
fn a_loan_whose_day_has_passed_is_asked_for_and_not_counted_until_it_came() {
    let mut plan = plan(&van_with_loan());
    let as_of = date(2027, 3, 20);
    let open = |plan: &Plan| {
        let flows = assess(plan, as_of).money.flows;
        flows.into_iter().filter(|flow| flow.state == FlowState::Unanswered).collect::<Vec<_>>()
    };
    let asked = open(&plan);
    let of = |group: FlowGroup| asked.iter().find(|flow| flow.group == group).unwrap();
    assert_eq!(asked.len(), 2);
    assert!(!of(FlowGroup::Loans).counts() && of(FlowGroup::Vehicle).counts());
    for (group, happened) in [(FlowGroup::Loans, false), (FlowGroup::Vehicle, true)] {
        answer(&plan, of(group), happened).unwrap().apply(&mut plan).unwrap();
    }
    assert_eq!(open(&plan), []);
    assert_eq!(lines(&assess(&plan, as_of).money, FlowGroup::Loans), [""; 0]);
}

#[test]
fn a_van_that_is_not_bought_after_all_costs_the_deposit_that_was_paid() {
    let mut file = van_with_loan();
    file["purchase"]["paid"] = json!({ "happened": false });
    assert_eq!(lines(&asked(&file, date(2027, 2, 19)), FlowGroup::Vehicle), [""; 0]);
    assert_eq!(lines(&asked(&file, date(2027, 2, 21)), FlowGroup::Vehicle), ["2027-02-20 -300"]);
}

#[test]
fn a_part_is_no_more_than_its_whole_and_dates_stand_in_their_order() {
    let file = json!({
        "purchase": {
            "agreed_price": "300", "deposit": "300.01", "pay_on": "2027-03-01", "deposit_on": "2027-03-02",
        },
        "loans": [
            { "id": 1, "amount": "10", "fees": "11", "drawn_on": "2027-03-01", "first_payment_on": "2027-02-01" },
            { "id": 2, "amount": "-5", "yearly_percent": "101", "months": 601 },
        ],
    });
    let found = problems(&file);
    let paths: Vec<&str> = found.iter().map(|problem| problem.path.as_str()).collect();
    let expected = [
        "loans/2/amount",
        "loans/2/yearly_percent",
        "loans/2/months",
        "purchase/pay_on",
        "loans/1/first_payment_on",
        "purchase/deposit",
        "loans/1/fees",
    ];
    assert_eq!(paths, expected);
    assert_eq!(found[5].wrong, Wrong::MoreThanWhole { whole: money("300") });
    assert_eq!(found[0].wrong, Wrong::NegativeMoney);
}

/// The days of each cost and what is paid on them, worked by hand from the calendar of 2027.
#[test]
fn costs_are_due_on_their_days_in_their_part_of_the_plan() {
    for (cost, expected) in [
        (json!({ "amount": "400", "phase": "home" }), "02-01 400"),
        (json!({ "amount": "400", "phase": "home", "last_on": "2027-03-31" }), "02-01 400, 03-01 400"),
        (json!({ "amount": "90", "every": "quarter", "first_on": "2027-02-10" }), "02-10 90"),
        (json!({ "amount": "60", "every": "year", "phase": "always", "day_of_month": 20 }), "01-20 60"),
        (json!({ "amount": "60", "every": "year", "phase": "always", "day_of_month": 3 }), "02-03 60"),
        (json!({ "amount": "30", "every": "half_year" }), "03-01 30"),
        (json!({ "amount": "45", "every": "once" }), "03-01 45"),
        (json!({ "amount": "8", "every": "week", "last_on": "2027-03-20" }), "03-01 8, 03-08 8, 03-15 8"),
        (json!({ "amount": "1", "first_on": "2027-01-31" }), "01-31 1, 02-28 1, 03-31 1"),
        (json!({ "amount": "1", "every": "quarter", "first_on": "2020-11-30" }), "02-28 1"),
        (json!({ "amount": "1", "every": "year", "first_on": "2024-02-29" }), "02-28 1"),
        (json!({ "amount": "3.50", "every": "hundred_km" }), "03-01 5.25, 03-21 2.96"),
    ] {
        let mut cost = cost;
        cost["id"] = json!(1);
        let file = json!({
            "calendar": { "starts_on": "2027-01-15", "leaves_on": "2027-03-01" },
            "costs": [cost],
            "stays": [{ "id": 2, "nights": 20, "drive_km": 150 }, { "id": 3, "nights": 20, "drive_km": 84.5 }],
        });
        let report = asked(&file, date(2027, 1, 15));
        let costs = lines(&report, FlowGroup::Costs).join(", ").replace("2027-", "").replace('-', "=");
        assert_eq!(costs.replace(" =", " ").replace('=', "-"), expected, "{cost}");
    }
}

/// Worked by hand: 9 L for 100 km at 1.85 are 16.65 for 100 km: 24.975 for 150 km and 14.06925 for 84.5 km.
#[test]
fn fuel_is_paid_on_the_days_of_driving() {
    let file = json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-01" },
        "vehicle": { "fuel_l_per_100_km": 9, "fuel_price_per_l": "1.85" },
        "stays": [{ "id": 2, "nights": 20, "drive_km": 150 }, { "id": 3, "nights": 20, "drive_km": 84.5 }],
    });
    let report = asked(&file, date(2027, 3, 1));
    assert_eq!(lines(&report, FlowGroup::Fuel), ["2027-03-01 -24.98", "2027-03-21 -14.07"]);
    assert_eq!(report.road_cost_per_day, money("0.98")); // 39.05 / 40
}

#[test]
fn what_is_paid_twice_while_moving_out_is_told() {
    let file = |last_on: &str, first_on: &str| {
        json!({
            "calendar": { "starts_on": "2027-01-15", "leaves_on": "2027-03-01" },
            "costs": [
                { "id": 1, "amount": "400", "phase": "home", "last_on": last_on },
                { "id": 2, "amount": "52", "first_on": first_on },
            ],
            "stays": [{ "id": 3, "nights": 60 }],
        })
    };
    let report = asked(&file("2027-04-30", "2027-02-10"), date(2027, 1, 15));
    let finding = report.standing.findings.iter().find(|finding| finding.key() == "money-overlap").unwrap();
    let finding = serde_json::to_value(finding).unwrap();
    assert_eq!((&finding["home"], &finding["road"]), (&json!("800"), &json!("52")));
    assert!(!findings(&asked(&file("2027-02-28", "2027-03-01"), date(2027, 1, 15))).contains(&"money-overlap"));
}

/// Worked by hand, with 30.436875 days in a month. 200 km in 40 days are 152.184375 km a month.
///
/// | line | at home | on the road |
/// |---|---|---|
/// | rent | 500 | |
/// | 120 a year | 10 | 10 |
/// | insurance | | 52 |
/// | 7 a week | | 30.44 |
/// | 10 for 100 km | | 15.22 |
/// | 40 nights at 3 | | 91.31 |
/// | | 510 | 198.97 |
#[test]
fn a_month_at_home_stands_beside_one_on_the_road() {
    let file = |price: &str| {
        json!({
            "calendar": { "starts_on": "2027-02-01", "leaves_on": "2027-03-01" },
            "purse": { "opening_cash": "3000" },
            "kit": [{ "id": 9, "name": "Bed", "unit_price": price }],
            "costs": [
                { "id": 1, "amount": "500", "phase": "home" },
                { "id": 2, "amount": "120", "every": "year", "phase": "always" },
                { "id": 3, "amount": "52" },
                { "id": 4, "amount": "7", "every": "week" },
                { "id": 5, "amount": "10", "every": "hundred_km" },
                { "id": 6, "amount": "77", "every": "once" },
            ],
            "stays": [{ "id": 7, "nights": 40, "drive_km": 200, "offers": { "price_per_night": "3" } }],
        })
    };
    let month = |price| asked(&file(price), date(2027, 2, 1)).month.unwrap();
    let dear = month("600");
    let table: Vec<String> = dear.lines.iter().map(|line| format!("{} {}", line.home, line.road)).collect();
    assert_eq!(table, ["500 0", "10 10", "0 52", "0 30.44", "0 15.22", "0 91.31"]);
    assert_eq!((dear.home, dear.road, dear.saved), (money("510"), money("198.97"), money("311.03")));
    // 600 x 30.436875 / 311.03 = 58.72 days; 311.03 x 40 / 30.436875 = 408.75 saved on the route.
    assert_eq!((dear.days_to_pay_back, dear.paid_back_on), (Some(59), Some(date(2027, 4, 29))));
    assert_eq!((dear.saved_in_all, dear.months_of_freedom), (money("-191.25"), None));
    let cheap = month("100");
    assert_eq!((cheap.days_to_pay_back, cheap.saved_in_all), (Some(10), money("308.75")));
    assert_eq!(cheap.months_of_freedom.map(|months| (months * 1000.0).round()), Some(1552.0)); // 308.75 / 198.97
}

/// What a loan pays of the van is not put in; its payment is in the month instead.
#[test]
fn a_loan_is_paid_back_by_the_month_and_not_put_in() {
    let month = asked(&van_with_loan(), date(2027, 2, 15)).month.unwrap();
    assert_eq!(month.put_in, money("2570")); // 300 + 3,380 + 60 - 1,170
    assert_eq!((month.home, month.road), (Money::ZERO, money("105.49")));
    assert_eq!(month.days_to_pay_back, None);
}

/// Worked by hand: 10.00 less 15 % are 8.50; three are 25.50 and 20 % tax 5.10; the delivery of 8.00 has its tax in it.
/// One that goes back brings 8.50 and 1.70 of tax.
#[test]
fn a_purchase_has_a_discount_a_delivery_and_what_goes_back() {
    let file = json!({
        "calendar": { "starts_on": "2027-02-01", "leaves_on": "2027-03-01" },
        "purse": { "opening_cash": "100", "tax_percent": "20", "prices_include_tax": false },
        "kit": [{
            "id": 1, "name": "Board", "quantity": 3, "unit_price": "10", "discount_percent": "15", "delivery": "8",
            "needed_on": "2027-02-10", "returned": { "quantity": 1, "on": "2027-02-20" },
        }],
        "stays": [{ "id": 2, "nights": 5 }],
    });
    let mut plan = plan(&file);
    let report = assess(&plan, date(2027, 2, 1)).money;
    let kit = |report: &Report| lines(report, FlowGroup::Kit(kerbstead_core::plan::Group::Other));
    assert_eq!(kit(&report), ["2027-02-10 -38.60", "2027-02-20 10.20"]);
    assert_eq!((report.still_to_pay, plan.kit[0].kept()), (money("38.60"), 2));
    let as_of = date(2027, 2, 25);
    let flows = assess(&plan, as_of).money.flows;
    answer(&plan, &flows[1], false).unwrap().apply(&mut plan).unwrap();
    assert_eq!(kit(&assess(&plan, as_of).money), ["2027-02-10 -38.60"]);
    assert_eq!(plan.kit[0].kept(), 3);
}

/// Worked by hand: the bicycle brings 100 - 5 = 95; the chest is less likely to be sold than not.
#[test]
fn a_sale_less_likely_than_not_is_not_counted_on() {
    let file = json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
        "purse": { "opening_cash": "0" },
        "kit": [{ "id": 9, "name": "Bed", "unit_price": "60", "needed_on": "2027-03-11" }],
        "belongings": [
            { "id": 1, "price": "100", "lowest": "70", "chance_percent": "80", "selling_cost": "5",
              "listed_on": "2027-03-02", "on": "2027-03-10" },
            { "id": 2, "price": "50", "chance_percent": "40", "on": "2027-03-12" },
        ],
        "stays": [{ "id": 3, "nights": 5 }],
    });
    let report = asked(&file, date(2027, 3, 1));
    assert_eq!(lines(&report, FlowGroup::Sales), ["2027-03-10 95"]);
    let finding = report.standing.findings.iter().find(|finding| finding.key() == "money-sales-unlikely").unwrap();
    assert_eq!(serde_json::to_value(finding).unwrap()["amount"], "50");
    let mut likelier = file;
    likelier["belongings"][1]["chance_percent"] = json!("50");
    assert_eq!(lines(&asked(&likelier, date(2027, 3, 1)), FlowGroup::Sales), ["2027-03-10 95", "2027-03-12 50"]);
}

/// Worked by hand: 40 in hand and a floor of 100. 60 more are needed at once, 110 in all after 50 are paid, and the 200
/// that come then settle it until 300 are due.
#[test]
fn what_is_needed_more_is_told_step_by_step() {
    let file = json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
        "purse": { "opening_cash": "40", "floor": "100" },
        "kit": [
            { "id": 1, "name": "Can", "unit_price": "50", "needed_on": "2027-03-05" },
            { "id": 2, "name": "Store", "unit_price": "300", "needed_on": "2027-03-15" },
        ],
        "incomes": [{ "id": 3, "amount": "200", "on": "2027-03-10" }],
        "stays": [{ "id": 4, "nights": 5 }],
    });
    let needed: Vec<String> =
        asked(&file, date(2027, 3, 1)).needed.iter().map(|needed| format!("{} {}", needed.by, needed.in_all)).collect();
    assert_eq!(needed, ["2027-03-01 60", "2027-03-05 110", "2027-03-15 210"]);
}

/// Worked by hand: 100 a week from the day of leaving; 950 for a room; the van brings 900 and 100 less each month.
///
/// | day | cash | van | kit | left |
/// |---|---|---|---|---|
/// | 22 March | 100 | 900 | | 50 |
/// | 29 March | 0 | 900 | | -50 |
/// | with a chair for 80: 29 March | 0 | 900 | 80 | 30 |
/// | 1 April | 0 | 800 | 80 | -70 |
#[test]
fn going_home_is_affordable_up_to_a_day() {
    let mut file = json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-01" },
        "purse": { "opening_cash": "500", "room_deposit": "600", "room_rent": "350" },
        "vehicle": { "resale": "900", "resale_falls": "100" },
        "costs": [{ "id": 1, "amount": "100", "every": "week", "last_on": "2027-03-31" }],
        "stays": [{ "id": 2, "nights": 60 }],
    });
    let home = asked(&file, date(2027, 3, 1)).going_home.unwrap();
    assert_eq!((home.room, home.last_on), (money("950"), Some(date(2027, 3, 28))));
    assert_eq!(home.days[21].left, money("50"));
    file["kit"] = json!([{
        "id": 5, "name": "Chair", "obtain": "owned", "sale": { "price": "80", "on": "2027-04-10" },
    }]);
    let report = asked(&file, date(2027, 3, 1));
    assert_eq!(report.going_home.as_ref().unwrap().last_on, Some(date(2027, 3, 31)));
    assert!(findings(&report).contains(&"money-home-until"));
    let report = asked(&file, date(2027, 4, 2));
    assert!(findings(&report).contains(&"money-no-way-home"));
}

/// The van is there to be sold from the day it is paid, and its loan has to be settled then.
#[test]
fn who_goes_home_sells_the_van_and_settles_the_loan() {
    let mut file = van_with_loan();
    file["purse"]["room_deposit"] = json!("950");
    let home = asked(&file, date(2027, 2, 15)).going_home.unwrap();
    let on = |on: Date| *home.days.iter().find(|day| day.on == on).unwrap();
    assert_eq!((on(date(2027, 3, 9)).van, on(date(2027, 3, 9)).left), (Money::ZERO, money("2750"))); // 3,700 - 950
    let bought = on(date(2027, 3, 10));
    assert_eq!((bought.van, bought.owed, bought.left), (money("3600"), money("1200"), money("2940")));
}

#[test]
fn sales_and_returns_that_cannot_be_are_told_at_their_field() {
    let file = json!({
        "kit": [{ "id": 1, "quantity": 2, "returned": { "quantity": 3 }, "discount_percent": "101" }],
        "belongings": [
            { "id": 2, "price": "50", "lowest": "60", "chance_percent": "100.5", "on": "2027-03-01",
              "listed_on": "2027-03-02" },
        ],
        "costs": [{ "id": 3, "first_on": "2027-03-02", "last_on": "2027-03-01", "every": "decade" }],
    });
    let found = problems(&file);
    let mut paths: Vec<&str> = found.iter().map(|problem| problem.path.as_str()).collect();
    paths.sort_unstable();
    let expected = [
        "belongings/2/chance_percent",
        "belongings/2/lowest",
        "belongings/2/on",
        "costs/3/every",
        "costs/3/last_on",
        "kit/1/discount_percent",
        "kit/1/returned/quantity",
    ];
    assert_eq!(paths, expected);
}

/// 500 in hand, 100 kept; 300 go on the 10th, 450 come on the 20th. Cash: 500, 200 from the 10th, 650 from the 20th.
fn paid_before_payday() -> Value {
    json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-30" },
        "purse": { "opening_cash": "500", "floor": "100" },
        "kit": [{ "id": 1, "name": "Bed", "unit_price": "300", "needed_on": "2027-03-10" }],
        "incomes": [{ "id": 2, "name": "Wages", "amount": "450", "on": "2027-03-20" }],
        "stays": [{ "id": 3, "nights": 3 }],
    })
}

#[test]
fn what_is_free_today_is_what_the_tightest_evening_leaves() {
    let today = date(2027, 3, 1);
    let report = asked(&paid_before_payday(), today);
    let answer = |amount: &str, on: Date| report.afford(money("100"), on, money(amount)).unwrap();
    // Each row: the amount, the day asked, what stays free, the tightest evening, from when on it can be paid.
    let rows = [
        ("0", today, "100", date(2027, 3, 10), Some(today)),
        ("100", today, "0", date(2027, 3, 10), Some(today)),
        ("100.01", today, "-0.01", date(2027, 3, 10), Some(date(2027, 3, 20))),
        ("550", today, "-450", date(2027, 3, 10), Some(date(2027, 3, 20))),
        ("550.01", today, "-450.01", date(2027, 3, 10), None),
        ("550", date(2027, 3, 20), "0", date(2027, 3, 20), Some(date(2027, 3, 20))),
    ];
    for (amount, on, left, tightest_on, from) in rows {
        let afford = answer(amount, on);
        assert_eq!(
            (afford.left, afford.tightest_on, afford.from),
            (money(left), tightest_on, from),
            "{amount} on {on}"
        );
    }
}

#[test]
fn nobody_can_say_what_is_free_while_the_cash_is_not_known() {
    let mut file = paid_before_payday();
    file["purse"]["opening_cash"] = Value::Null;
    assert!(asked(&file, date(2027, 3, 1)).afford(money("100"), date(2027, 3, 1), money("1")).is_none());
}

#[test]
fn a_planned_payment_is_told_since_when_cash_would_bear_it() {
    let mut file = paid_before_payday();
    let kit = file["kit"].as_array_mut().unwrap();
    kit.push(json!({ "id": 4, "name": "Stove", "unit_price": "150", "needed_on": "2027-03-25" }));
    kit.push(json!({ "id": 5, "name": "Lamp", "unit_price": "90", "needed_on": "2027-03-25" }));
    let (report, today) = (asked(&file, date(2027, 3, 1)), date(2027, 3, 1));
    let from = |source| {
        let flow = report.flows.iter().find(|flow| flow.source == source).unwrap();
        report.payable_from(money("100"), today, flow)
    };
    assert_eq!(from(1), Some(today)); // 500 less 300 stays above 100
    assert_eq!(from(4), Some(date(2027, 3, 20))); // before the wages, 150 would leave 50
    assert_eq!(from(5), Some(today)); // 90 leave 110
    assert_eq!(from(2), None); // it comes in
}
