//! A plan as chances take it: against the cash by day of the balance, and against closed forms and tables worked by hand.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::assess;
use kerbstead_core::money::chance::{Chances, Runs, UncertainFlow};
use kerbstead_core::money::{Ahead, NotAhead, ahead};
use kerbstead_core::plan::{Money, Plain as _, Plan, Reading};
use kerbstead_tests::generate::{cases, seeded};
use kerbstead_tests::worked::{money, plan};
use serde_json::{Value, json};

const PATHS: u32 = 40_000;
const ASKED: Date = date(2027, 3, 1);

fn looked_ahead(file: &Value) -> Ahead {
    ahead(&plan(file), ASKED).unwrap()
}

fn run(ahead: &Ahead, paths: u32) -> Chances {
    let mut runs = Runs::new(&ahead.outlook, 5, paths).unwrap();
    runs.step(paths);
    runs.chances()
}

/// Every range as its likely value, and no chances.
fn made_sure(value: &mut Value) {
    match value {
        Value::Object(object) => {
            object.remove("chance_percent");
            object.remove("lowest");
            object.values_mut().for_each(made_sure);
            if let Some(likely) = object.get("likely").cloned() {
                *value = likely;
            }
        }
        Value::Array(entries) => entries.iter_mut().for_each(made_sure),
        _ => {}
    }
}

/// The plan without ranges and chances, its cash in whole minor units.
fn sure_plan(plan: &Plan) -> Plan {
    let mut file = plan.to_plain();
    made_sure(&mut file);
    let mut plan = Plan::from_plain(&file).unwrap();
    let digits = plan.minor_digits();
    let rounded = |cash: &mut Option<Money>| *cash = cash.map(|cash| cash.rounded(digits));
    rounded(&mut plan.purse.opening_cash);
    plan.readings.iter_mut().for_each(|reading| rounded(&mut reading.cash));
    plan
}

#[test]
fn without_ranges_and_chances_every_course_is_the_cash_by_day_to_the_cent() {
    let (mut days, mut counted) = (0, 0);
    for (number, (plan, as_of)) in seeded(&cases(), 41, 1_800).into_iter().enumerate() {
        let mut plan = sure_plan(&plan);
        if number % 3 == 0 {
            let cash = Some(money("123.40").rounded(plan.minor_digits()));
            plan.readings.push(Reading { on: Some(as_of), hour: 20, cash, ..Reading::default() });
        }
        let Ok(ahead) = ahead(&plan, as_of) else { continue };
        assert_eq!(ahead.outlook.uncertain, []);
        let report = assess(&plan, as_of).money;
        let cash = report.days.iter().filter(|day| day.on >= as_of).map(|day| day.closing.to_minor(ahead.digits));
        let cash: Vec<i64> = cash.map(Option::unwrap).collect();
        let chances = run(&ahead, 2);
        assert!(chances.band.iter().zip(&cash).all(|(band, cash)| band.low == *cash && band.high == *cash));
        assert_eq!(ahead.outlook.expected_by_day().unwrap(), cash);
        let lowest = *cash.iter().min().unwrap();
        assert_eq!((chances.lowest.amounts(), chances.end.amounts()[0]), (&[lowest; 2][..], *cash.last().unwrap()));
        days += cash.len();
        counted += usize::from(ahead.days.iter().any(|day| day.corrected != Money::ZERO));
    }
    assert!(days > 40_000 && counted > 10, "{days} days, {counted} with a count in the evening");
}

/// Whatever the plan, the likely amounts of all that counts are those of the flows, and no amount is out of order.
#[test]
fn every_plan_is_looked_ahead_or_refused() {
    let mut seen = [0; 6];
    for (plan, as_of) in seeded(&cases(), 43, 3_000) {
        let refused = match ahead(&plan, as_of) {
            Ok(ahead) => {
                assert_eq!(ahead.outlook.check(), Ok(()));
                let likely: i64 = ahead.outlook.uncertain.iter().map(|flow| flow.likely).sum::<i64>()
                    + ahead.outlook.certain.iter().map(|flow| flow.amount).sum::<i64>();
                let unlikely: Money = ahead.unlikely.iter().map(|flow| flow.amount).sum();
                let end = ahead.days.last().unwrap();
                let change = end.closing - ahead.days[0].opening + unlikely;
                let change = change.to_minor(ahead.digits).unwrap();
                assert!(change.abs_diff(likely) <= 1, "{change} {likely}");
                0
            }
            Err(NotAhead::CashUnknown) => 1,
            Err(NotAhead::Over) => 2,
            Err(NotAhead::TooMany) => 3,
            Err(NotAhead::TooLarge) => 4,
            Err(NotAhead::NothingToBuy) => 5,
        };
        seen[refused] += 1;
    }
    assert!(seen[0] > 500 && seen[1] > 10 && seen[2] > 10 && seen[5] == 0, "{seen:?}");
}

/// Each kind of entry that can be a range or a chance, on days that are easy to count from 1 March.
fn whole_plan() -> Value {
    let range = |low: &str, likely: &str, high: &str| json!({ "low": low, "likely": likely, "high": high });
    json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
        "purse": { "opening_cash": "1000", "tax_percent": "10", "prices_include_tax": false },
        "vehicle": {
            "fuel_l_per_100_km": { "low": 8, "likely": 9, "high": 11 },
            "fuel_price_per_l": range("1.50", "1.60", "2.00"),
        },
        "purchase": { "agreed_price": range("300", "400", "500"), "part_exchange": range("50", "60", "80"),
            "deposit": "100", "deposit_on": "2027-03-02", "pay_on": "2027-03-04" },
        "kit": [{
            "id": 1, "name": "Store", "quantity": 2, "unit_price": range("10", "20", "25"), "discount_percent": "50",
            "delivery": "3", "needed_on": "2027-03-03", "sale": { "price": range("5", "6", "7"), "on": "2027-03-10" },
        }],
        "belongings": [
            { "id": 2, "name": "Desk", "price": "80", "lowest": "50", "on": "2027-03-05", "chance_percent": "75" },
            { "id": 3, "name": "Lamp", "price": range("5", "10", "15"), "on": "2027-03-06", "chance_percent": "49.9",
              "selling_cost": "2" },
        ],
        "incomes": [{ "id": 4, "amount": range("90", "100", "120"), "on": "2027-03-07", "repeat": "weekly" }],
        "costs": [
            { "id": 5, "name": "Phone", "amount": range("9", "10", "12"), "every": "week", "first_on": "2027-03-08",
              "phase": "always" },
            { "id": 6, "name": "Tyres", "amount": range("1", "2", "4"), "every": "hundred_km" },
        ],
        "stays": [{ "id": 7, "nights": 2, "drive_km": 200, "offers": { "price_per_night": range("0", "10", "12") } }],
    })
}

#[test]
fn each_entry_that_is_not_sure_is_a_flow_on_each_of_its_days() {
    let ahead = looked_ahead(&whole_plan());
    let flow = |low, likely, high, day| UncertainFlow { low, likely, high, ..UncertainFlow::fixed(0, day) };
    let sale = |chance_ppm, flow| UncertainFlow { chance_ppm, ..flow };
    let mut expected = vec![
        flow(-3_050, -2_500, -1_400, 2), // 2 x 12.50 + 10 % + 3 at most
        // 300 - 80 - 100 deposit at least, 500 - 50 - 100 at most.
        flow(-35_000, -24_000, -12_000, 3),
        sale(750_000, flow(5_000, 8_000, 8_000, 4)),
        flow(9_000, 10_000, 12_000, 6),
        flow(-1_200, -1_000, -900, 7),
        flow(500, 600, 700, 9),
        flow(9_000, 10_000, 12_000, 13),
        flow(-1_200, -1_000, -900, 14),
        flow(9_000, 10_000, 12_000, 20),
        flow(-800, -400, -200, 19),
        flow(-4_400, -2_880, -2_400, 19), // 2 x 8 l at 1.50 to 2 x 11 l at 2.00
        flow(-1_200, -1_000, 0, 19),
        flow(-1_200, -1_000, 0, 20),
        sale(499_000, flow(300, 800, 1_300, 5)),
    ];
    let key = |flow: &UncertainFlow| (flow.first_day, flow.low);
    let mut uncertain = ahead.outlook.uncertain.clone();
    // Those less likely than not come last, so that the draws of the others do not depend on them.
    assert_eq!(uncertain.last(), expected.last());
    uncertain.sort_by_key(key);
    expected.sort_by_key(key);
    assert_eq!(uncertain, expected);
    let certain: Vec<(u32, i64)> = ahead.outlook.certain.iter().map(|flow| (flow.day, flow.amount)).collect();
    assert_eq!(certain, [(1, -10_000)]);
}

/// Worked by hand: each mean is (low + likely + high) / 3, times its chance. Phone and wages come after the days shown.
#[test]
fn the_average_is_that_of_a_table_worked_by_hand() {
    let expected = looked_ahead(&whole_plan()).outlook.expected_by_day().unwrap();
    // 1,000 - 100 deposit - (30.50 + 25 + 14) / 3 - (350 + 240 + 120) / 3 + 0.75 x (50 + 80 + 80) / 3
    // + 0.499 x (3 + 8 + 13) / 3
    let cents = [100_000, 90_000, 87_683, 64_017, 69_267, 69_666];
    assert_eq!(expected[..6], cents);
}

/// One dear thing with a range, and just so much money: the chance is the triangle's own.
#[test]
fn the_chance_that_a_price_can_be_paid_is_that_of_its_triangle() {
    for (cash, exact) in [("120", 0.0), ("150", 0.1), ("200", 0.4), ("260", 0.784), ("350", 1.0)] {
        let file = json!({
            "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
            "purse": { "opening_cash": cash },
            "kit": [{ "id": 1, "unit_price": { "low": "100", "likely": "200", "high": "350" }, "needed_on": "2027-03-09" }],
            "stays": [{ "id": 7, "nights": 5 }],
        });
        // Below the likely price (x - a)^2 / ((b - a)(c - a)), above it 1 - (b - x)^2 / ((b - a)(b - c)).
        let cash: f64 = cash.parse().unwrap();
        let below = if cash <= 200.0 {
            (cash - 100.0) * (cash - 100.0) / 25_000.0
        } else {
            1.0 - (350.0 - cash) * (350.0 - cash) / 37_500.0
        };
        assert!(cash < 130.0 || (below - exact).abs() < 1e-9, "{cash}: {below}");
        let kept = f64::from(run(&looked_ahead(&file), PATHS).kept) / f64::from(PATHS);
        assert!((kept - below).abs() < 0.012, "{cash}: {kept} drawn, {below} exact");
    }
}

/// Twelve sales of one price and chance on one day bring enough as often as a binomial distribution says.
#[test]
fn equal_sales_of_a_plan_are_binomial() {
    let sale =
        |id: u32| json!({ "id": id, "name": "Chair", "price": "50", "on": "2027-03-04", "chance_percent": "35" });
    let binomial = |sold: i32| {
        let ways = (0..sold).fold(1.0, |ways, at| ways * f64::from(12 - at) / f64::from(at + 1));
        ways * libm::pow(0.35, sold.into()) * libm::pow(0.65, (12 - sold).into())
    };
    for needed in [2, 4, 6] {
        let file = json!({
            "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
            "purse": { "opening_cash": "0" },
            "belongings": (1..=12).map(sale).collect::<Vec<_>>(),
            "kit": [{ "id": 20, "unit_price": (needed * 50).to_string(), "needed_on": "2027-03-04" }],
            "stays": [{ "id": 21, "nights": 5 }],
        });
        let exact: f64 = (needed..=12).map(binomial).sum();
        let kept = f64::from(run(&looked_ahead(&file), PATHS).kept) / f64::from(PATHS);
        let error = (exact * (1.0 - exact) / f64::from(PATHS)).sqrt();
        assert!((kept - exact).abs() < 4.5 * error, "{needed}: {kept} drawn, {exact} exact");
    }
}

#[test]
fn what_was_counted_in_the_evening_is_not_drawn_again() {
    let mut file = json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-20" },
        "purse": { "opening_cash": "100" },
        "belongings": [{ "id": 1, "name": "Desk", "price": "80", "on": "2027-03-01", "chance_percent": "60" }],
        "readings": [{ "id": 2, "on": "2027-03-01", "hour": 8, "cash": "110" }],
        "stays": [{ "id": 3, "nights": 5 }],
    });
    let ends = |file: &Value| {
        let end = run(&looked_ahead(file), 1_000).end;
        (end.amounts()[0], end.amounts()[999])
    };
    assert_eq!(ends(&file), (11_000, 19_000));
    file["readings"][0]["hour"] = json!(20);
    assert_eq!(ends(&file), (11_000, 11_000));
}

#[test]
fn what_cannot_be_looked_ahead_says_why() {
    let asked = |file: &Value| ahead(&plan(file), ASKED).err();
    let stays = json!([{ "id": 1, "nights": 5 }]);
    let calendar = json!({ "leaves_on": "2027-03-01" });
    assert_eq!(asked(&json!({ "calendar": calendar, "stays": stays })), Some(NotAhead::CashUnknown));
    let past = json!({ "calendar": { "leaves_on": "2027-01-01" }, "purse": { "opening_cash": "1" }, "stays": stays });
    assert_eq!(asked(&past), Some(NotAhead::Over));
    let mut many =
        json!({ "calendar": calendar, "purse": { "opening_cash": "1" }, "stays": [{ "id": 1, "nights": 366 }] });
    let cost = |id: u32| json!({ "id": id, "amount": { "low": "1", "likely": "2", "high": "3" }, "every": "week", "phase": "always" });
    many["costs"] = (10..210).map(cost).collect();
    assert_eq!(asked(&many), Some(NotAhead::TooMany));
    let mut large = many.clone();
    large["currency"] = json!("KWD");
    large["costs"] = json!([]);
    large["purse"]["opening_cash"] = json!("1000000000");
    assert_eq!(asked(&large), None);
    let mut beyond = plan(&large);
    beyond.purse.opening_cash = Some(Money::whole(2_000_000_000));
    assert_eq!(ahead(&beyond, ASKED).err(), Some(NotAhead::TooLarge));
}
