//! What is worked out beside the page: the chances and the reserve of a plan, and what to buy when, against plans worked by
//! hand; that slices make no difference; and that questions and answers survive their way as plain values.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::money::buying::{BuyingPlan, Proof, buying_plan};
use kerbstead_core::money::{KeptApart, NotAhead, Odds, Prospect};
use kerbstead_core::plan::{Money, Plain, Plan, demo_plan, validate};
use kerbstead_core::task::{Question, Subject};
use kerbstead_core::words::{Plain as PlainFormat, Units, Words};
use kerbstead_core::{Say, assess};
use kerbstead_tests::generate::{cases, seeded};
use kerbstead_tests::worked::{money, plan};
use serde_json::{Value, json};

const ASKED: Date = date(2027, 3, 1);

fn answer(subject: Subject, plan: &Plan, as_of: Date) -> Value {
    let question = Question { subject, plan: plan.clone(), as_of, seed: 1, ..Question::default() };
    let mut task = Question::from_plain(&question.to_plain()).unwrap().begin();
    let mut share = 0.0;
    while share < 1.0 {
        let next = task.step();
        assert!(next > share && next <= 1.0, "{share} {next}");
        share = next;
    }
    task.answer()
}

fn prospect(file: &Value) -> Prospect {
    Prospect::from_plain(&answer(Subject::Chances, &plan(file), ASKED)).unwrap()
}

/// 100 in hand, a sale of 80 with a chance of 80 % on 4 March, and 150 to pay on 6 March.
fn one_sale() -> Value {
    json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
        "purse": { "opening_cash": "100" },
        "belongings": [{ "id": 1, "name": "Desk", "price": "80", "on": "2027-03-04", "chance_percent": "80" }],
        "kit": [{ "id": 2, "name": "Store", "unit_price": "150", "needed_on": "2027-03-06" }],
        "stays": [{ "id": 3, "nights": 5 }],
    })
}

#[test]
fn the_chance_of_one_sale_is_the_chance_of_the_plan() {
    let prospect = prospect(&one_sale());
    assert_eq!((prospect.refused, prospect.paths, prospect.uncertain), (None, 10_000, 1));
    assert!(prospect.kept.abs_diff(8_000) < 180, "{}", prospect.kept);
    assert_eq!(Odds::of(prospect.kept, prospect.paths), Odds::About { count: 8, of: 10 });
    assert_eq!((prospect.from, prospect.until), (ASKED, date(2027, 3, 24)));
    assert_eq!((prospect.likely_end, prospect.expected_end), (money("30"), money("14.00")));
    assert_eq!((prospect.low_end, prospect.high_end, prospect.low_lowest), (money("-50"), money("30"), money("-50")));
    assert_eq!((prospect.low.len(), prospect.low[2], prospect.low[3], prospect.high[3]), (24, 100.0, 100.0, 180.0));
}

/// Worked by hand. 60 % of 10,000 is the exact half between 5 and 7 tenths; ends of the ranges of words.
#[test]
fn chances_are_said_without_decimals() {
    let about = |count, of| Odds::About { count, of };
    for (kept, odds) in [
        (0, Odds::Never),
        (1, Odds::AlmostNever),
        (94, Odds::AlmostNever),
        (100, about(1, 100)),
        (494, about(5, 100)),
        (500, about(1, 10)),
        (1_499, about(1, 10)),
        (1_500, about(2, 10)),
        (6_000, about(6, 10)),
        (9_504, about(9, 10)),
        (9_506, about(95, 100)),
        (9_904, about(99, 100)),
        (9_906, Odds::AlmostAlways),
        (10_000, Odds::Always),
    ] {
        assert_eq!(Odds::of(kept, 10_000), odds, "{kept}");
    }
}

fn reserve_of(file: &Value) -> KeptApart {
    prospect(file).reserve
}

/// Without ranges it is arithmetic: 10 % of 150 and the fund; then 20 %. The lowest day has 30 above the floor.
#[test]
fn the_reserve_is_a_share_and_the_fund_where_there_are_no_ranges() {
    let mut file = one_sale();
    let kept = reserve_of(&file);
    assert_eq!((kept.from_share, kept.total, kept.lowest_on), (money("15"), money("15"), date(2027, 3, 6)));
    assert_eq!((kept.above_floor, kept.is_covered()), (money("30"), true));
    file["purse"]["reserve_percent"] = json!("20");
    file["purse"]["breakdown_fund"] = json!("25");
    file["purse"]["floor"] = json!("5");
    let kept = reserve_of(&file);
    assert_eq!((kept.from_share, kept.breakdown, kept.total), (money("30"), money("25"), money("55")));
    assert_eq!((kept.above_floor, kept.is_covered(), kept.key()), (money("25"), false, "reserve-not-covered"));
}

/// One price from 200 to 600, most likely 300: its median is 600 - sqrt(400 x 300 / 2) = 355.05, its 80th percentile
/// 600 - sqrt(0.2 x 400 x 300) = 445.08. What is paid already, and what is not for the build, is not in it.
#[test]
fn the_reserve_of_a_range_is_that_of_its_triangle() {
    let mut file = one_sale();
    file["kit"][0]["unit_price"] = json!({ "low": "200", "likely": "300", "high": "600" });
    let paid = json!({ "id": 8, "unit_price": "90", "needed_on": "2027-03-02", "paid": { "happened": true } });
    file["kit"].as_array_mut().unwrap().push(paid);
    file["costs"] = json!([{ "id": 9, "amount": "40", "every": "week", "phase": "always" }]);
    let kept = reserve_of(&file);
    let near = |amount: Money, exact: f64| (amount.to_plot() - exact).abs() < 3.0;
    assert!(near(kept.middle, 355.05) && near(kept.high, 445.08), "{kept:?}");
    assert_eq!((kept.from_ranges, kept.total), (kept.high - kept.middle, kept.high - kept.middle));
    assert_eq!((kept.without_range, kept.from_share), (Money::ZERO, Money::ZERO));
}

#[test]
fn every_sentence_of_the_reserve_has_its_figures() {
    let words = Words::english(PlainFormat, Units::Metric, "EUR");
    let mut ranged = one_sale();
    ranged["kit"][0]["unit_price"] = json!({ "low": "20", "likely": "30", "high": "60" });
    let mut short = one_sale();
    short["purse"]["breakdown_fund"] = json!("90");
    for kept in [reserve_of(&ranged), reserve_of(&short), reserve_of(&one_sale())] {
        let mut said = vec![words.say(&kept)];
        said.extend(words.next_step(&kept));
        said.extend(kept.working().iter().map(|working| words.working(working)));
        assert!(said.iter().all(|said| !said.contains(['{', '}', '$']) && said.contains(' ')), "{said:?}");
    }
}

fn order(file: &Value) -> BuyingPlan {
    BuyingPlan::from_plain(&answer(Subject::Buying, &plan(file), ASKED)).unwrap()
}

/// The things to buy in order, each with its day.
fn days(order: &BuyingPlan) -> String {
    let day = |on: Option<Date>| on.map_or_else(|| "never".to_owned(), |on| on.to_string());
    let lines: Vec<String> = order.lines.iter().map(|line| format!("{} {}", line.item, day(line.on))).collect();
    lines.join(", ")
}

/// 300 in hand of which 100 are kept, wages of 400 on 11 March. A bed for 450 that is a must, a stove for 90, a lamp for
/// 120 that is only wanted to try out.
fn three_things() -> Value {
    json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
        "purse": { "opening_cash": "300", "floor": "100" },
        "incomes": [{ "id": 9, "name": "Wages", "amount": "400", "on": "2027-03-11" }],
        "kit": [
            { "id": 1, "name": "Bed", "need": "must", "unit_price": "450", "needed_on": "2027-03-13" },
            { "id": 2, "name": "Lamp", "need": "experiment", "unit_price": "120" },
            { "id": 3, "name": "Stove", "unit_price": "90" },
            { "id": 4, "name": "Pan", "obtain": "owned", "unit_price": "10" },
            { "id": 5, "name": "Mat", "unit_price": "30", "paid": { "happened": true, "on": "2027-02-20" } },
            { "id": 6, "name": "Rug" },
        ],
        "stays": [{ "id": 8, "nights": 5 }],
    })
}

/// Worked by hand: the 600 above the floor pay for bed and stove on 11 March; the stove alone at once. The lamp lacks 60.
#[test]
fn what_matters_is_bought_as_soon_as_it_can_be_and_what_lacks_is_said() {
    let order = order(&three_things());
    assert_eq!(order.refused, None);
    assert_eq!(days(&order), "3 2027-03-01, 1 2027-03-11, 2 never");
    assert_eq!((order.finished_on, order.proof), (Some(date(2027, 3, 11)), Proof::Proven));
    let lamp = order.lines[2];
    let lack = lamp.lack.unwrap();
    assert_eq!((lamp.needed_on, lack.amount, lack.by), (date(2027, 3, 20), money("60"), date(2027, 3, 20)));
    // 19 days are two whole weeks.
    assert_eq!((lack.sale, lack.a_week), (None, Some(money("30"))));
    assert_eq!(order.lack.unwrap().amount, money("60"));
    assert_eq!(order.changes(), 2);
}

#[test]
fn the_days_are_taken_as_one_change_that_can_be_taken_back() {
    let before = plan(&three_things());
    let mut after = before.clone();
    let order = buying_plan(&before, ASKED);
    let back = order.taking().unwrap().apply(&mut after).unwrap();
    assert_eq!(validate(&after), []);
    let dates = |plan: &Plan, id| plan.item(id).map(|item| (item.buy_on, item.needed_on)).unwrap();
    assert_eq!(dates(&after, 1), (Some(date(2027, 3, 11)), Some(date(2027, 3, 13))));
    assert_eq!(dates(&after, 3), (Some(date(2027, 3, 1)), None));
    assert_eq!(dates(&after, 2), (None, None));
    // The same order again, and nothing left to change.
    let again = buying_plan(&after, ASKED);
    assert_eq!((days(&again), again.changes(), again.taking()), (days(&order), 0, None));
    back.apply(&mut after).unwrap();
    assert_eq!(after, before);
}

/// An unlikely sale, and one that comes too late: the one that brings the least of those that bring enough is named.
#[test]
fn a_sale_that_would_pay_is_named() {
    let mut file = three_things();
    file["belongings"] = json!([
        { "id": 20, "name": "Desk", "price": "90", "on": "2027-03-15", "chance_percent": "30" },
        { "id": 21, "name": "Chair", "price": "70", "on": "2027-03-22" },
        { "id": 22, "name": "Vase", "price": "40", "on": "2027-03-12", "chance_percent": "10" },
    ]);
    file["kit"][1]["needed_on"] = json!("2027-03-20");
    // What is not bought yet cannot be sold.
    file["kit"][1]["sale"] = json!({ "price": "65", "on": "2027-03-23" });
    let lack = |file: &Value| order(file).lines.last().unwrap().lack.unwrap();
    // The lamp is short from 20 to 21 March; then the chair is sold.
    assert_eq!((lack(&file).sale, lack(&file).sale_brings, lack(&file).amount), (Some(21), money("70"), money("60")));
    file["kit"][1].as_object_mut().unwrap().remove("sale");
    file["costs"] = json!([{ "id": 30, "amount": "70", "every": "once", "first_on": "2027-03-24", "phase": "always" }]);
    // Now the chair's money is needed on the 24th, and the lamp is short until the end: only the desk would help.
    let later = lack(&file);
    assert_eq!((later.sale, later.amount), (Some(20), money("60")));
}

#[test]
fn what_cannot_be_ordered_says_why() {
    let mut file = three_things();
    file["kit"] = json!([]);
    assert_eq!(order(&file).refused, Some(NotAhead::NothingToBuy));
    file = three_things();
    file["purse"] = json!({});
    assert_eq!(
        (order(&file).refused, prospect(&file).refused),
        (Some(NotAhead::CashUnknown), Some(NotAhead::CashUnknown))
    );
    file = three_things();
    let thing = |id: u32| json!({ "id": 100 + id, "unit_price": "1" });
    file["kit"] = (0..501).map(thing).collect();
    assert_eq!(order(&file).refused, Some(NotAhead::TooMany));
}

/// Whatever the plan: with the days taken, cash is nowhere further below the floor than it was without the purchases, no day
/// is too late, and what is left out says what it lacks.
#[test]
fn the_order_of_every_plan_keeps_the_floor() {
    let (mut orders, mut left_out, mut moved) = (0, 0, 0);
    for (plan, as_of) in seeded(&cases(), 47, 2_000) {
        let order = buying_plan(&plan, as_of);
        assert_eq!(BuyingPlan::from_plain(&order.to_plain()), Some(order.clone()));
        if order.refused.is_some() {
            continue;
        }
        orders += 1;
        left_out += order.lines.iter().filter(|line| line.on.is_none()).count();
        assert!(order.lines.iter().all(|line| line.on.is_none_or(|on| on >= as_of && on <= line.needed_on)));
        assert!(order.lines.iter().all(|line| line.on.is_some() != line.lack.is_some()));
        assert_eq!(order.lack.is_some(), order.lines.iter().any(|line| line.on.is_none()));
        if order.lack.is_some() || order.floor_lack.is_some() {
            continue;
        }
        let mut taken = plan.clone();
        if let Some(edit) = order.taking() {
            edit.apply(&mut taken).unwrap();
            moved += 1;
        }
        let report = assess(&taken, as_of).money;
        let lowest = report.days.iter().filter(|day| day.on >= as_of).map(|day| day.closing).min().unwrap();
        let lacking = (plan.purse.floor - lowest).rounded(plan.minor_digits());
        assert!(lacking <= Money::ZERO, "{lacking} below the floor");
    }
    assert!(orders > 300 && left_out > 300 && moved > 30, "{orders} {left_out} {moved}");
}

#[test]
fn the_example_has_an_answer_to_each_question() {
    let plan = demo_plan();
    let chances = Prospect::from_plain(&answer(Subject::Chances, &plan, ASKED)).unwrap();
    assert!(chances.refused.is_none() && chances.uncertain > 10 && chances.reserve.total > Money::ZERO);
    let order = BuyingPlan::from_plain(&answer(Subject::Buying, &plan, ASKED)).unwrap();
    assert!(order.refused.is_none() && order.lines.len() > 10);
}
