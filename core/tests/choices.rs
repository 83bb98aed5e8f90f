//! What is chosen before leaving, against tables worked by hand: what to ask for a thing and when, what becomes of it,
//! and how much to build. The formulas are common practice, no source.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::assess;
use kerbstead_core::money::Odds;
use kerbstead_core::money::futures::{BreakEven, Compared, Lever, WayName, compared};
use kerbstead_core::money::selling::{
    Demand, Fate, NoSchedule, Schedule, Thing, Wish, fates_of, offered, plan_sales, schedule, taking,
};
use kerbstead_core::plan::{Document, Estimate, Money, Plain, Plan, Problem, VanBuild, Wrong, validate};
use serde_json::{Value, json};

const AS_OF: Date = date(2027, 4, 1);

fn money(text: &str) -> Money {
    text.parse().unwrap()
}

/// The plan of a file, which must be sound.
fn plan(file: &Value) -> Plan {
    let opened = Document::open(&file.to_string()).unwrap();
    assert_eq!(opened.problems, []);
    opened.plan
}

fn prices_of(file: &Value) -> Result<Schedule, NoSchedule> {
    let plan = plan(file);
    schedule(&plan, AS_OF, &assess(&plan, AS_OF).money)
}

fn nearly(left: f64, right: f64) -> bool {
    (left - right).abs() < 1e-6
}

#[test]
fn the_chance_of_each_thing_follows_its_price_and_its_days() {
    let plan = plan(&json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-04-15" },
        "belongings": [
            { "id": 1, "name": "Half-time once", "price": "60", "on": "2027-04-08", "half_sold_days": 7 },
            // Twice the usual price sells an eighth as fast: 1 − 2^(−14 / 7 / 8).
            { "id": 2, "name": "Dear", "price": "120", "usual_price": "60", "half_sold_days": 7 },
            // Not offered before the 8th: 1 − 2^(−7 / 14), the usual fortnight.
            { "id": 3, "name": "Later", "price": "20", "listed_on": "2027-04-08" },
            { "id": 4, "name": "Sold", "price": "20", "outcome": { "happened": true } },
            { "id": 5, "name": "Its day is over", "price": "20", "on": "2027-03-30" },
            { "id": 6, "name": "Without a price" },
        ],
    }));
    let found: Vec<(u32, f64)> = offered(&plan, AS_OF).iter().map(|thing| (thing.id, thing.percent)).collect();
    let expected = [(1, 50.0), (2, 100.0 * (1.0 - 0.25_f64.exp2().recip())), (3, 100.0 * (1.0 - 0.5_f64.sqrt()))];
    assert_eq!(found.len(), expected.len(), "{found:?}");
    for ((id, percent), (other, by_hand)) in found.into_iter().zip(expected) {
        assert!(id == other && nearly(percent, by_hand), "{id}: {percent}, by hand {by_hand}");
    }
}

fn desk_and_lamp() -> Value {
    json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-04-29" },
        "purse": { "opening_cash": "100", "floor": "50" },
        "kit": [{ "id": 1, "name": "Boards", "unit_price": "200", "needed_on": "2027-04-10" }],
        "belongings": [
            { "id": 2, "name": "Desk", "price": "120", "lowest": "45", "half_sold_days": 9, "on": "2027-04-20" },
            { "id": 3, "name": "Lamp", "price": "30", "selling_cost": "4", "on": "2027-04-05" },
        ],
    })
}

#[test]
fn without_a_stated_sum_sales_are_to_bring_what_cash_needs() {
    // 100 in the purse, 200 for the boards, 50 stay untouched: 150 must come by the 29th, whatever sales are planned.
    let needed = prices_of(&desk_and_lamp()).unwrap();
    assert_eq!((needed.sum, needed.is_needed, needed.on), (money("150"), true, date(2027, 4, 29)));
    let mut stated = desk_and_lamp();
    stated["selling"] = json!({ "wanted_sum": "60", "wanted_on": "2027-04-22", "wanted_percent": "75" });
    let stated = prices_of(&stated).unwrap();
    assert_eq!((stated.sum, stated.is_needed, stated.wanted_percent), (money("60"), false, 75.0));
    assert_eq!((stated.from, stated.on), (AS_OF, date(2027, 4, 22)));
    assert!(stated.percent >= 75.0 && stated.list_by.is_some_and(|day| day >= AS_OF && day < stated.on));
}

#[test]
fn prices_fall_in_whole_units_to_the_lowest_at_most() {
    let mut file = desk_and_lamp();
    file["selling"] = json!({ "wanted_sum": "60" });
    let found = prices_of(&file).unwrap();
    for (prices, lowest) in found.prices.iter().zip([money("45"), money("15")]) {
        assert_eq!(prices.asked[0].0, AS_OF);
        assert!(prices.asked.is_sorted_by(|before, after| before.0 < after.0 && before.1 > after.1), "{prices:?}");
        let is_whole = |amount: Money| amount.rounded(0) == amount;
        assert!(prices.asked.iter().all(|(_, asking)| is_whole(*asking) && *asking >= lowest), "{prices:?}");
        assert!(prices.likely <= prices.asked[0].1 && prices.likely >= prices.asked.last().unwrap().1);
    }
    // More than both can bring.
    file["selling"] = json!({ "wanted_sum": "500" });
    let hopeless = prices_of(&file).unwrap();
    assert_eq!((hopeless.percent < 1e-6, hopeless.list_by), (true, None));
}

#[test]
fn what_selling_costs_is_taken_off_what_it_brings() {
    // One price only, 100.00: it is one and a half times the usual one and the lowest.
    let thing = Thing {
        demand: Demand { usual_price: 6_000, half_sold_days: 10.0, steepness: 0.0 },
        lowest: 10_000,
        cost: 1_000,
    };
    let wish = Wish { sum: 9_000, chance: 0.1, days: 20, days_per_price: 20, price_step: 1 };
    let found = plan_sales(&[thing], &wish).unwrap();
    assert!(nearly(found.chance, 0.75) && found.expected == 6_750, "{found:?}"); // 90.00 × 3 / 4
    let more = plan_sales(&[thing], &Wish { sum: 9_200, ..wish }).unwrap();
    assert!(nearly(more.chance, 0.0), "{more:?}");
}

#[test]
fn without_what_it_takes_there_are_no_prices_and_the_reason_is_told() {
    let case = |change: &dyn Fn(&mut Value)| {
        let mut file = desk_and_lamp();
        change(&mut file);
        prices_of(&file).map(drop)
    };
    assert_eq!(case(&|file| file["belongings"] = json!([])), Err(NoSchedule::NothingToSell));
    assert_eq!(case(&|file| file["calendar"] = json!({})), Err(NoSchedule::NoDay));
    assert_eq!(case(&|file| file["selling"] = json!({ "wanted_on": "2027-04-01" })), Err(NoSchedule::DayOut));
    assert_eq!(case(&|file| file["selling"] = json!({ "wanted_sum": "0" })), Err(NoSchedule::NoSum));
    assert_eq!(case(&|file| file["purse"]["opening_cash"] = json!("900")), Err(NoSchedule::NoSum));
    let many: Vec<Value> = (10..90).map(|id| json!({ "id": id, "price": "5" })).collect();
    assert_eq!(case(&|file| file["belongings"] = json!(many)), Err(NoSchedule::TooMany));
}

#[test]
fn a_schedule_is_taken_into_the_plan_as_one_change_and_does_not_drift() {
    let mut file = desk_and_lamp();
    file["selling"] = json!({ "wanted_sum": "60" });
    let before = plan(&file);
    let found = prices_of(&file).unwrap();
    let mut after = before.clone();
    let undo = taking(&before, &found, 2).unwrap().apply(&mut after).unwrap();
    let (desk, prices) = (&after.belongings[0], &found.prices[0]);
    let (first, last) = (prices.asked[0].1, prices.asked.last().unwrap().1);
    assert_eq!(desk.price, Some(Estimate::Range { low: last, likely: prices.likely, high: first }));
    assert_eq!((desk.on, desk.listed_on), (Some(date(2027, 4, 29)), Some(AS_OF)));
    assert_eq!((desk.usual_price, desk.lowest), (Some(money("120")), Some(money("45"))));
    assert_eq!(desk.chance_percent.map(|percent| percent.to_string()), Some(format!("{:.0}", prices.percent.floor())));
    assert_eq!(validate(&after), []);
    // Asked again, the same prices are found: they are of what such things usually bring.
    assert_eq!(schedule(&after, AS_OF, &assess(&after, AS_OF).money).unwrap().prices, found.prices);
    undo.apply(&mut after).unwrap();
    assert_eq!(after, before);
    assert_eq!(taking(&before, &found, 77), None);
}

#[test]
fn what_becomes_of_a_thing_is_read_from_the_plan() {
    let plan = plan(&json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-04-15" },
        // 100 nights, so four begun months.
        "stays": [{ "id": 9, "nights": 100 }],
        "belongings": [{
            "id": 1, "price": "80", "chance_percent": "75", "selling_cost": "10",
            "kept": {
                "replaces": "120", "later_price": "40", "mass_kg": 14, "floor_m2": 0.6, "fit_cost": "30",
                "fitted_later_price": "15", "fitted_floor_m2": 0.3, "storage_monthly": "15",
            },
        }, {
            // Half of such are sold within the fortnight, so that half the price is forgone.
            "id": 2, "price": "40", "kept": { "usable": false, "fit_cost": "5", "replaces": "30" },
        }, { "id": 3, "price": "10" }],
    }));
    let found: Vec<_> = fates_of(&plan, AS_OF)
        .iter()
        .map(|thing| {
            let way = |way: &kerbstead_core::money::selling::FateWay| {
                (way.fate, way.better.to_string(), way.mass_kg, way.floor_m2)
            };
            (thing.id, thing.ways.iter().map(way).collect::<Vec<_>>())
        })
        .collect();
    let line = |fate, better: &str, mass_kg, floor_m2| (fate, better.to_owned(), mass_kg, floor_m2);
    let table = vec![
        line(Fate::Keep, "110.00", 14.0, 0.6), // 120 + 40 - 50
        line(Fate::Adapt, "55.00", 14.0, 0.3), // 120 + 15 - 30 - 50
        line(Fate::Sell, "0.00", 0.0, 0.0),
        line(Fate::Store, "-70.00", 0.0, 0.0), // 40 - 4 × 15 - 50
    ];
    let chair = vec![line(Fate::Adapt, "5.00", 0.0, 0.0), line(Fate::Sell, "0.00", 0.0, 0.0)]; // 30 - 5 - 20
    assert_eq!(found, [(1, table), (2, chair)]);
}

/// 800 a month at home, 250 on the road; two months until leaving.
fn rent_and_food() -> Value {
    json!({
        "calendar": { "starts_on": "2027-01-01", "leaves_on": "2027-03-03" },
        "purse": { "room_deposit": "500", "room_rent": "300" },
        "costs": [
            { "id": 1, "name": "Rent", "amount": "600", "phase": "home" },
            { "id": 2, "name": "Food", "amount": "200", "phase": "always" },
            { "id": 3, "name": "Insurance", "amount": "50", "phase": "road" },
        ],
        "kit": [
            { "id": 4, "name": "Cool box", "unit_price": "200", "sale": { "price": "120" } },
            { "id": 5, "name": "Boards", "obtain": "made", "unit_price": "300" },
            { "id": 6, "name": "Stove", "unit_price": "40", "paid": {} },
        ],
        "stays": [{ "id": 7, "nights": 30 }],
        "trial": { "trial_months": 12 },
    })
}

fn compare(file: &Value) -> Compared {
    let plan = plan(file);
    compared(&plan, date(2027, 1, 1), &assess(&plan, date(2027, 1, 1)).money)
}

#[test]
fn the_plan_as_it_stands_is_compared_with_staying() {
    let found = compare(&rent_and_food());
    let names: Vec<_> = found.ways.iter().map(|way| way.name.clone()).collect();
    assert_eq!(names, [WayName::AsPlanned, WayName::Stay]);
    let end = |amounts: &[Money]| amounts[12];
    let planned = &found.futures[0];
    // 2 × 800 + 10 × 250 + 500; 9 × 800 + 3 × 250 + 500 + 500 to move in - 120 for the box; 7 and 3 in 10 of them.
    assert_eq!((end(&planned.suited), end(&planned.unsuited)), (money("4600"), money("8830")));
    assert_eq!((end(&planned.expected), end(&found.futures[1].expected)), (money("5869"), money("9600")));
    assert_eq!((found.cheapest, found.against[0].dearer, found.against[0].even), (0, money("3731"), None));
    assert_eq!(found.question.kept_percent.likely(), 60.into());
}

#[test]
fn own_ways_are_compared_with_one_another_and_with_staying() {
    let mut file = rent_and_food();
    file["trial"]["kept_percent"] = json!(50);
    file["builds"] = json!([
        { "id": 21, "name": "Full", "build_months": 4, "removable": "500", "fixed": "3100" },
        { "id": 20, "name": "Simple", "build_months": 1.2, "removable": "400", "fixed": "1500", "redone": "2000" },
    ]);
    let found = compare(&file);
    let end = |at: usize| {
        let future = &found.futures[at];
        [&future.suited, &future.unsuited, &future.expected].map(|amounts| amounts[12])
    };
    // 4 × 800 + 8 × 250 + 3,600; 9 × 800 + 3 × 250 + 3,600 + 500 - 250.
    assert_eq!(end(0), [money("8800"), money("11800"), money("9700")]);
    // 800 + 11 × 250 + 1,900 + 2,000; 9 × 800 + 3 × 250 + 1,900 + 500 - 200.
    assert_eq!(end(1), [money("7450"), money("10150"), money("8260")]);
    assert_eq!((found.cheapest, found.ways[1].name.clone()), (1, WayName::Own(20, "Simple".into())));
    let against: Vec<_> = found.against.iter().map(|one| (one.other, one.dearer)).collect();
    assert_eq!(against, [(2, money("1340")), (0, money("1440"))]);
    // Suited, it saves 2,150; not suited, it costs 550 more: 2,150 of 2,700.
    let even = found.against[0].even.unwrap();
    assert_eq!((even.unsuited_percent.round_dp(2).to_string(), even.first_is_cheaper_below), ("79.63".into(), true));
    assert_eq!(found.against[1].even, None);
    // The chance from 10 to 60 in 100: 7,720 and 9,070 less 9,600. Known after 1 or 6 months: 8,590 and 7,765.
    let swings: Vec<_> = found.depends.iter().map(|on| (on.swing.lever, on.swing.at_low, on.swing.at_high)).collect();
    let by_hand = [
        (Lever::UnsuitedPercent, money("-1880"), money("-530")),
        (Lever::FindsOutMonths, money("-1010"), money("-1835")),
    ];
    assert_eq!(swings, by_hand);
}

#[test]
fn what_the_plan_states_goes_before_what_it_says_elsewhere() {
    let mut file = rent_and_food();
    file["trial"] = json!({
        "trial_months": 12, "home_monthly": "700", "road_monthly": { "low": "200", "likely": "300", "high": "500" },
        "going_back": "0", "unsuited_percent": 0, "finds_out_months": 2, "kept_percent": 100,
    });
    file["costs"][1]["amount"] = json!({ "low": "150", "likely": "200", "high": "300" });
    let stated = compare(&file);
    assert_eq!(stated.futures[0].expected[12], money("4900")); // 2 × 700 + 10 × 300 + 500
    assert_eq!(stated.depends.iter().map(|on| on.swing.lever).collect::<Vec<_>>(), [Lever::RoadMonthly]);
    // Without a statement, the ranges of the costs are those of the month.
    file["trial"] = json!({});
    let range = Estimate::Range { low: money("750"), likely: money("800"), high: money("900") };
    let derived = compare(&file);
    assert_eq!((derived.question.home_monthly, derived.question.months), (range, 24));
}

#[test]
fn a_van_still_to_be_bought_and_what_its_loan_costs_are_part_of_the_build() {
    let mut file = rent_and_food();
    file["purchase"] = json!({ "agreed_price": "3000", "seller_fees": "50", "registration": "60" });
    file["loans"] = json!([{ "id": 30, "amount": "600", "months": 12, "fees": "15" }]);
    let build = |file: &Value| {
        let plan = plan(file);
        VanBuild::as_planned(&plan, date(2027, 1, 1), &assess(&plan, date(2027, 1, 1)).money, 8, "As it is".into())
    };
    // Nobody says what the van would bring: all of it is lost.
    let lost = build(&file);
    assert_eq!((lost.removable, lost.fixed), (Some(money("200").into()), Some(money("3425").into())));
    file["vehicle"] = json!({ "resale": "2400" });
    let kept = build(&file);
    assert_eq!((kept.removable, kept.fixed), (Some(money("3200").into()), Some(money("425").into())));
    let question = compare(&file).question;
    // 2,520 of 3,200; the payments of the loan are not in the month.
    assert_eq!(
        (question.kept_percent.likely().to_string(), question.road_monthly.likely()),
        ("78.8".into(), money("250"))
    );
    // Written into the list, the comparison stays what it was.
    let before = compare(&file);
    file["builds"] = json!([kept.to_plain()]);
    assert_eq!(compare(&file).futures, before.futures);
}

/// What a receipt says is paid is not still to be bought; what one says is paid in part is.
#[test]
fn what_a_receipt_pays_for_is_no_part_of_the_build_any_more() {
    let mut file = rent_and_food();
    let removable = |file: &Value| {
        let plan = plan(file);
        let as_of = date(2027, 1, 1);
        VanBuild::as_planned(&plan, as_of, &assess(&plan, as_of).money, 8, String::new()).removable
    };
    file["receipts"] = json!([{ "id": 40, "on": "2027-01-01" }]);
    file["receipt_lines"] = json!([{ "id": 41, "receipt": 40, "item": 4, "amount": "90", "more_follows": true }]);
    assert_eq!(removable(&file), Some(money("200").into()));
    file["receipt_lines"][0]["more_follows"] = json!(false);
    assert_eq!(removable(&file), Some(Money::ZERO.into()));
}

#[test]
fn the_chance_that_turns_a_choice_is_told_as_every_other() {
    let odds =
        |percent: &str| BreakEven { unsuited_percent: percent.parse().unwrap(), first_is_cheaper_below: true }.odds();
    let about = |count, of| Odds::About { count, of };
    let cases = [
        ("79.63", about(8, 10)),
        ("95.1", about(95, 100)),
        ("4.9", about(5, 100)),
        ("99.5", Odds::AlmostAlways),
        ("0.2", Odds::AlmostNever),
        ("100", Odds::AlmostAlways),
        ("0", Odds::AlmostNever),
    ];
    for (percent, told) in cases {
        assert_eq!(odds(percent), told, "{percent}");
    }
}

#[test]
fn what_cannot_be_is_told_at_its_field() {
    let wrong = |file: Value, path: &str| -> Vec<Wrong> {
        let problems: Vec<Problem> = Document::open(&file.to_string()).unwrap().problems;
        problems.into_iter().filter(|problem| problem.path.as_str() == path).map(|problem| problem.wrong).collect()
    };
    let belonging = |more: Value| {
        let mut file = json!({ "belongings": [{ "id": 1, "price": "50" }] });
        file["belongings"][0].as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        file
    };
    let is = |file: Value, path: &str, what: fn(&Wrong) -> bool| {
        let wrong = wrong(file, path);
        assert!(wrong.len() == 1 && what(&wrong[0]), "{path}: {wrong:?}");
    };
    let range = |wrong: &Wrong| matches!(wrong, Wrong::OutOfRange { .. });
    let whole = |wrong: &Wrong| matches!(wrong, Wrong::MoreThanWhole { .. });
    let dates = |wrong: &Wrong| matches!(wrong, Wrong::DatesReversed { .. });
    is(json!({ "selling": { "wanted_percent": "101" } }), "selling/wanted_percent", range);
    is(json!({ "trial": { "unsuited_percent": 130 } }), "trial/unsuited_percent", range);
    is(belonging(json!({ "chance_percent": "-1" })), "belongings/1/chance_percent", range);
    is(belonging(json!({ "half_sold_days": 0 })), "belongings/1/half_sold_days", range);
    is(belonging(json!({ "lowest": "51" })), "belongings/1/lowest", whole);
    is(belonging(json!({ "listed_on": "2027-05-02", "on": "2027-05-01" })), "belongings/1/on", dates);
    let early = json!({ "calendar": { "starts_on": "2027-03-01" }, "selling": { "wanted_on": "2027-02-28" } });
    is(early, "selling/wanted_on", dates);
    let negative = |wrong: &Wrong| *wrong == Wrong::NegativeMoney;
    is(belonging(json!({ "kept": { "fit_cost": "-3" } })), "belongings/1/kept/fit_cost", negative);
    is(json!({ "builds": [{ "id": 1, "fixed": "-3" }] }), "builds/1/fixed", negative);
}
