//! Likelihoods over the whole plan: plans whose chances are known in closed form, agreement with the verdicts where nothing is
//! uncertain, common draws, and strange plans.
//!
//! A share of 1,000 runs is within three standard errors of its chance, `3 sqrt(p (1 - p) / 1,000)`, 997 times in 1,000; seeds
//! are fixed.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::chances::{BalanceChance, What, Whole, WholeTask};
use kerbstead_core::plan::{Document, Estimate, Money, Plain, Plan, demo_plan};
use kerbstead_core::task::{Question, Subject, Task};
use kerbstead_core::{Balance, Verdict, assess};
use serde_json::{Value, json};

/// A Friday.
const ASKED: Date = date(2027, 3, 5);

fn plan(file: Value) -> Plan {
    Document::from_value(file).unwrap().plan
}

fn whole(plan: &Plan, as_of: Date, seed: u32) -> Whole {
    let mut task = WholeTask::new(plan, as_of, seed);
    let mut share = 0.0;
    while share < 1.0 {
        let next = task.step();
        assert!(next > share && next <= 1.0, "{share} {next}");
        share = next;
    }
    task.whole().clone()
}

fn of(file: Value) -> Whole {
    whole(&plan(file), ASKED, 1)
}

fn balance(whole: &Whole, balance: Balance) -> BalanceChance {
    *whole.balances.iter().find(|line| line.balance == balance).unwrap()
}

fn held(whole: &Whole, of: Balance) -> u32 {
    let line = balance(whole, of);
    assert!(line.is_known, "{of:?}");
    line.held
}

fn square(x: f64) -> f64 {
    x * x
}

/// Within three standard errors.
fn assert_share(held: u32, chance: f64) {
    let wrong_by = (f64::from(held) / 1_000.0 - chance).abs();
    assert!(wrong_by <= 3.0 * (chance * (1.0 - chance) / 1_000.0).sqrt(), "{held} of 1,000 for {chance}");
}

/// What is there of every file: cash in hand, and a day of leaving.
#[expect(clippy::needless_pass_by_value, reason = "it is made where it is given")]
fn with(cash: &str, more: Value) -> Value {
    let mut file = json!({
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-04-30" },
        "purse": { "opening_cash": cash },
        "stays": [{ "id": 90, "nights": 5 }],
    });
    for (name, value) in more.as_object().unwrap() {
        file[name] = value.clone();
    }
    file
}

fn sale(id: u32, price: &str, on: &str, percent: &str) -> Value {
    json!({ "id": id, "price": price, "on": on, "chance_percent": percent })
}

#[test]
fn the_chance_of_one_sale_is_the_chance_of_the_money() {
    let whole = of(with(
        "100",
        json!({
            "belongings": [sale(1, "80", "2027-03-15", "70")],
            "kit": [{ "id": 2, "unit_price": "150", "needed_on": "2027-03-15" }],
        }),
    ));
    assert_eq!(whole.runs, 1_000);
    assert_share(held(&whole, Balance::Money), 0.7);
    let money = balance(&whole, Balance::Money);
    assert_eq!((money.likely_on, money.early_on), (Some(date(2027, 3, 15)), Some(date(2027, 3, 15))));
    let first = whole.first.unwrap();
    assert_eq!((first.balance, first.fails, first.by), (Balance::Money, 1_000 - money.held, Some(2)));
    assert_eq!((whole.all_hold, money.first_fails), (money.held, 1_000 - money.held));
    assert_eq!((whole.from, whole.until), (ASKED, date(2027, 5, 4)));
    // All hangs on the day of the sale: in time, whatever the half; late, it fails.
    let input = &whole.inputs[0];
    assert_eq!((input.what, input.id, input.path.as_str()), (What::SaleDay, 1, "belongings/1/chance_percent"));
    assert_eq!((whole.inputs.len(), input.of_low, input.of_high), (1, 500, 500));
    assert_eq!((input.fails_low, input.fails_high), (0, first.fails));
    assert!(input.correlation < -0.7, "{}", input.correlation);
}

#[test]
fn two_sales_are_independent() {
    let sales = |price: &str, wanted: &str| {
        of(with(
            "100",
            json!({
                "belongings": [sale(1, price, "2027-03-15", "70"), sale(2, price, "2027-03-15", "60")],
                "kit": [{ "id": 3, "unit_price": wanted, "needed_on": "2027-03-15" }],
            }),
        ))
    };
    let both_are_needed = sales("80", "250");
    assert_share(held(&both_are_needed, Balance::Money), 0.7 * 0.6);
    assert_eq!(both_are_needed.inputs.len(), 2);
    // What is more likely to fail matters more.
    assert_eq!((both_are_needed.inputs[0].id, both_are_needed.inputs[1].id), (2, 1));
    assert_share(held(&sales("80", "150"), Balance::Money), 1.0 - 0.3 * 0.4);
}

/// The exponential law: sold by day 10 with 50 %, it is sold by day 20 with 1 - 0.5² and by day 40 with 1 - 0.5⁴.
#[test]
fn a_sale_may_come_late() {
    for (due, chance) in [("2027-03-15", 0.5), ("2027-03-25", 0.75), ("2027-04-14", 0.937_5)] {
        let whole = of(with(
            "100",
            json!({
                "belongings": [sale(1, "80", "2027-03-15", "50")],
                "kit": [{ "id": 2, "unit_price": "150", "needed_on": due }],
            }),
        ));
        assert_share(held(&whole, Balance::Money), chance);
    }
    // After the day of leaving it is lost, and the law begins on the day from which it is offered: 25 days, not 35.
    let lost = of(with(
        "100",
        json!({
            "belongings": [{ "id": 1, "price": "80", "on": "2027-04-09", "chance_percent": "50", "listed_on": "2027-03-15" }],
            "kit": [{ "id": 2, "unit_price": "150", "needed_on": "2027-05-04" }],
        }),
    ));
    let rate = libm::log(2.0) / 25.0;
    assert_share(held(&lost, Balance::Money), 1.0 - libm::exp(-rate * 46.0));
}

/// Triangle over 100, 200 and 400: at most 300 with 1 - (400 - 300)² / ((400 - 100) (400 - 200)).
#[test]
fn a_price_that_is_a_range_is_a_triangle_against_the_cash() {
    let whole = of(with(
        "300",
        json!({ "kit": [{ "id": 1, "unit_price": { "low": "100", "likely": "200", "high": "400" } }] }),
    ));
    assert_share(held(&whole, Balance::Money), 1.0 - square(100.0) / (300.0 * 200.0));
    assert_eq!(whole.inputs[0].path.as_str(), "kit/1/unit_price");
    // Prices to the cent are equal now and then.
    assert!(whole.inputs[0].correlation < -0.999 && whole.inputs[0].fails_low == 0);
}

/// Three payments of 100 / 200 / 300 out of 750: all three are the same, at most 250 with 1 - 50² / (200 * 100). Drawn each
/// anew they would do with 98 %.
#[test]
fn a_budget_is_wrong_all_along() {
    let whole = of(with(
        "750",
        json!({ "costs": [{
            "id": 1, "amount": { "low": "100", "likely": "200", "high": "300" }, "phase": "home", "every": "week",
            "first_on": "2027-03-05", "last_on": "2027-03-19",
        }] }),
    ));
    assert_share(held(&whole, Balance::Money), 1.0 - square(50.0) / (200.0 * 100.0));
}

/// A week with one drive on its Saturday, three times. 96 W for two hours are as much as is drawn on the evening of the drive,
/// and three times a hundred kilometres cost the 60 that there are: whoever drives longer than is likely has power enough and
/// too little money, and the other way round.
#[expect(clippy::needless_pass_by_value, reason = "it is made where it is given")]
fn driving(km: Value) -> Whole {
    let draw = json!({ "power_w": 100, "outlet": "dc", "hours_per_day": 1.92, "from_hour": 20, "days": "driving" });
    let store = json!({
        "usable_wh": 400, "opening_percent": 0, "charge_efficiency_percent": 100, "taper_from_percent": 100,
    });
    let hours = json!({ "low": 1, "likely": 2, "high": 3 });
    let mut file = with(
        "60",
        json!({
            "vehicle": { "fuel_l_per_100_km": 10, "fuel_price_per_l": "2" },
            "week": [{ "id": 1, "weekday": "saturday", "kind": "driving", "drive_hours": hours, "drive_km": km }],
            "kit": [
                { "id": 2, "obtain": "owned", "store": store },
                { "id": 3, "obtain": "owned", "draw": draw },
            ],
        }),
    );
    file["calendar"] =
        json!({ "starts_on": "2027-03-01", "leaves_on": "2027-03-06", "ends_on": "2027-03-27", "mode": "week" });
    of(file)
}

#[test]
fn fuel_and_power_share_the_draw_of_the_driving() {
    let whole = driving(json!({ "low": 50, "likely": 100, "high": 150 }));
    assert_share(held(&whole, Balance::Money), 0.5);
    assert_share(held(&whole, Balance::Power), 0.5);
    // Independent draws would let both hold in a quarter of the runs.
    assert!(whole.all_hold <= 1, "{}", whole.all_hold);
    assert_eq!(held(&whole, Balance::Money) + held(&whole, Balance::Power), 1_000 + whole.all_hold);
    let both = driving(json!(100));
    assert_eq!(held(&both, Balance::Money), 1_000);
    assert_eq!(held(&both, Balance::Power), held(&whole, Balance::Power));
    let driven = &both.inputs[0];
    assert_eq!((driven.what, driven.path.as_str()), (What::Driving, "week/1/drive_hours"));
    assert!(driven.correlation > 0.8 && driven.fails_high == 0 && driven.fails_low > 450, "{driven:?}");
}

/// Four hours of work on one Saturday, 2 / 4 / 6 hours likely to be needed: in slots of half an hour 4 to 12, of which less
/// than 8.5 are rounded to 8. Beta(3, 3) has the distribution 10 x³ - 15 x⁴ + 6 x⁵.
#[test]
fn work_takes_as_long_as_chance_has_it() {
    let build = |task: Value| {
        let mut file = with(
            "100",
            json!({
                "helpers": [{ "id": 1, "saturday_hours": 4 }],
                "tasks": [task],
            }),
        );
        file["calendar"]["leaves_on"] = json!("2027-03-07");
        of(file)
    };
    let late = build(json!({ "id": 2, "hours": { "low": 2, "likely": 4, "high": 6 } }));
    let x = 4.5 / 8.0;
    assert_share(held(&late, Balance::Days), x * square(x) * (10.0 - 15.0 * x + 6.0 * square(x)));
    assert_eq!(balance(&late, Balance::Days).likely_on, Some(date(2027, 3, 7)));
    let input = &late.inputs[0];
    assert_eq!((input.what, input.path.as_str()), (What::TaskHours, "tasks/2/hours"));
    assert!(input.correlation < -0.9 && input.fails_low == 0);
    // The one Saturday is dry with 65 %, as is usual.
    let wet = build(json!({ "id": 2, "hours": 3, "dry": true }));
    assert_share(held(&wet, Balance::Days), 0.65);
    assert_eq!(wet.inputs[0].what, What::DryDays);
    assert_eq!(held(&build(json!({ "id": 2, "hours": 3 })), Balance::Days), 1_000);
}

/// Five days on 15 l: up to 3 l a day with 1 - (4 - 3)² / ((4 - 2) (4 - 2.5)). A van of 2,000 kg with 75 kg of somebody, a bag
/// of 50 / 100 / 150 kg and 15 kg of water may weigh 2,200: up to 110 kg with 1 - 40² / (100 * 50).
#[test]
fn water_and_load_are_triangles_against_their_limits() {
    let whole = of(with(
        "100",
        json!({
            "vehicle": { "empty_mass_kg": 2_000, "gross_limit_kg": 2_200, "weighed_fuel_percent": 0 },
            "kit": [
                { "id": 1, "obtain": "owned", "mass_kg": 0, "tank": { "capacity_l": 15 } },
                { "id": 2, "obtain": "owned", "mass_kg": { "low": 50, "likely": 100, "high": 150 } },
            ],
            "water_uses": [{ "id": 3, "litres_per_day": { "low": 2, "likely": 2.5, "high": 4 } }],
        }),
    ));
    assert_share(held(&whole, Balance::Water), 1.0 - 1.0 / (2.0 * 1.5));
    assert_eq!(balance(&whole, Balance::Water).likely_on, Some(date(2027, 5, 4)));
    // 15 l at 20 °C are 14.97 kg.
    let most_kg = 2_200.0 - 2_000.0 - 75.0 - 15.0 * 0.998_2;
    assert_share(held(&whole, Balance::Load), 1.0 - square(150.0 - most_kg) / (100.0 * 50.0));
    assert_eq!(balance(&whole, Balance::Load).likely_on, Some(date(2027, 4, 30)));
    // Independent of one another.
    let all = f64::from(held(&whole, Balance::Water)) * f64::from(held(&whole, Balance::Load)) / 1e6;
    assert_share(whole.all_hold, all);
    // The van is overloaded on the day on which it leaves, before the water is out.
    let (load, water) = (balance(&whole, Balance::Load), balance(&whole, Balance::Water));
    assert_eq!(load.first_fails, 1_000 - load.held);
    assert_eq!(load.first_fails + water.first_fails, 1_000 - whole.all_hold);
}

#[test]
fn what_is_used_more_or_seldom_and_what_the_sky_gives_decide_over_the_power() {
    let of_draw = |draw: Value| {
        of(with(
            "100",
            json!({ "kit": [
                { "id": 1, "obtain": "owned", "store": { "usable_wh": 500 } },
                { "id": 2, "obtain": "owned", "draw": draw },
            ] }),
        ))
    };
    // 100 Wh a day for five days: as much as there is, if it is used as is likely. Triangle over 50, 100 and 200.
    let range = json!({ "power_w": 50, "outlet": "dc", "hours_per_day": { "low": 1, "likely": 2, "high": 4 } });
    let whole = of_draw(range);
    assert_share(held(&whole, Balance::Power), 1.0 - square(100.0) / (150.0 * 100.0));
    assert_eq!(whole.first.unwrap().by, Some(1));
    assert_eq!((whole.inputs[0].what, whole.inputs[0].path.as_str()), (What::Use, "kit/2/draw/hours_per_day"));
    // 125 Wh on a day of use: five of five such days are too many.
    let seldom = of_draw(json!({ "power_w": 62.5, "outlet": "dc", "hours_per_day": 2, "used_percent": 80 }));
    assert_share(held(&seldom, Balance::Power), 1.0 - 0.8 * square(square(0.8)));
    assert_eq!(seldom.inputs[0].what, What::Often);
    // A lamp on a panel of which not much is over on bright days.
    let mut sunny = with(
        "100",
        json!({
            "climate": { "latitude_deg": 46, "longitude_deg": 12, "like": "inland_plain" },
            "kit": [
                { "id": 1, "obtain": "owned", "store": { "usable_wh": 150 } },
                { "id": 2, "obtain": "owned", "draw": { "power_w": 22, "outlet": "dc" } },
                { "id": 3, "obtain": "owned", "panel": { "peak_w": 150 } },
            ],
            "stays": [{ "id": 90, "nights": 20 }],
        }),
    );
    let sun = of(sunny.clone());
    assert_eq!((sun.inputs.len(), sun.inputs[0].what), (1, What::Clouds));
    assert!(sun.inputs[0].correlation > 0.3 && held(&sun, Balance::Power) < 1_000, "{sun:?}");
    sunny["kit"][1]["draw"]["power_w"] = json!(1);
    assert_eq!(held(&of(sunny), Balance::Power), 1_000);
}

#[test]
fn two_stores_go_side_by_side_as_one_does() {
    let of_stores = |stores: u32| {
        let store = |id: u32| {
            let opening = if id == 1 { 100 } else { 0 };
            json!({ "id": id, "obtain": "owned", "store": { "usable_wh": 450, "opening_percent": opening } })
        };
        let mut kit: Vec<Value> = (1..=stores).map(store).collect();
        let power_w = json!({ "low": 50, "likely": 55, "high": 60 });
        let draw = json!({ "power_w": power_w, "outlet": "dc", "hours_per_day": 2, "used_percent": 90 });
        kit.push(json!({ "id": 9, "obtain": "owned", "draw": draw }));
        let mut file = with("100", json!({ "kit": kit }));
        file["stays"][0]["offers"] = json!({ "mains_hours": { "low": 0, "likely": 0.5, "high": 1 }, "mains_w": 60 });
        of(file)
    };
    let (one, two) = (of_stores(1), of_stores(2));
    assert!((500..950).contains(&held(&one, Balance::Power)), "{one:?}");
    // The second one is empty and nothing hangs on it; what the first one leaves of the mains is all that differs.
    assert_eq!(held(&one, Balance::Power), held(&two, Balance::Power));
    let mains = one.inputs.iter().find(|input| input.what == What::Mains).unwrap();
    assert!(mains.path.as_str() == "stays/90/offers/mains_hours" && mains.fails_low > mains.fails_high, "{mains:?}");
}

#[test]
fn the_same_seed_gives_the_same_answer_and_another_seed_another() {
    let (plan, as_of) = (demo_plan(), date(2027, 3, 10));
    let one = whole(&plan, as_of, 1);
    // Through a question and back, beside another one that is worked out in turns with it.
    let question = Question { subject: Subject::Whole, plan: plan.clone(), as_of, seed: 1, ..Question::default() };
    let mut task = Question::from_plain(&question.to_plain()).unwrap().begin();
    let mut other = WholeTask::new(&plan, as_of, 2);
    while task.step() < 1.0 {
        other.step();
    }
    while other.step() < 1.0 {}
    assert_eq!(Whole::from_plain(&task.answer()).unwrap(), one);
    assert_ne!(*other.whole(), one);
    let money = |whole: &Whole| f64::from(held(whole, Balance::Days));
    assert!((money(other.whole()) - money(&one)).abs() < 60.0);
}

#[test]
fn a_higher_chance_of_a_sale_never_lowers_how_often_the_money_holds() {
    let mut plan = demo_plan();
    let sofa = plan.belongings.iter().position(|thing| thing.chance_percent == Some(60.into())).unwrap();
    // With something more in hand, so that there is something to be lost.
    plan.purse.opening_cash = plan.purse.opening_cash.map(|cash| cash + Money::whole(300));
    let mut before = 0;
    for percent in [0, 1, 20, 49, 50, 60, 80, 99, 100] {
        plan.belongings[sofa].chance_percent = Some(percent.into());
        let held = held(&whole(&plan, date(2027, 3, 10), 4), Balance::Money);
        assert!(held >= before, "{percent} %: {held} after {before}");
        before = held;
    }
    assert!((100..1_000).contains(&before), "{before}");
}

/// What is drawn of the sale does not change when a price becomes a range that changes nothing, or a task is added.
#[test]
fn a_change_of_one_input_leaves_the_draws_of_the_others() {
    let mut file = with(
        "100",
        json!({
            "belongings": [sale(1, "80", "2027-03-15", "70")],
            "kit": [{ "id": 2, "unit_price": "150", "needed_on": "2027-03-15" }, { "id": 3, "unit_price": "3" }],
        }),
    );
    let before = of(file.clone());
    file["kit"][1]["unit_price"] = json!({ "low": "1", "likely": "3", "high": "4" });
    file["tasks"] = json!([{ "id": 4, "hours": { "low": 1, "likely": 2, "high": 3 } }]);
    file["helpers"] = json!([{ "id": 5, "saturday_hours": 4 }]);
    let after = of(file);
    assert_eq!(held(&before, Balance::Money), held(&after, Balance::Money));
}

/// The plan with every range at what is likely, every sale sure, every day dry and no sun.
fn without_chance(plan: &Plan) -> Plan {
    fn settle(value: &mut Value) {
        if let Some(likely) = value.get("likely").cloned() {
            *value = likely;
        }
        match value {
            Value::Object(fields) => {
                for name in ["chance_percent", "lowest", "used_percent", "panel", "toilet"] {
                    fields.remove(name);
                }
                fields.values_mut().for_each(settle);
            }
            Value::Array(entries) => entries.iter_mut().for_each(settle),
            _ => {}
        }
    }
    let mut file = plan.to_plain();
    settle(&mut file);
    file["building"]["dry_percent"] = json!(100);
    file.as_object_mut().unwrap().remove("trial");
    Document::from_value(file).unwrap().plan
}

#[test]
fn without_anything_uncertain_every_run_is_the_likely_run() {
    let plan = without_chance(&demo_plan());
    for as_of in [date(2027, 3, 1), date(2027, 3, 10), date(2027, 4, 20), date(2027, 7, 1), date(2027, 9, 16)] {
        let (whole, assessment) = (whole(&plan, as_of, 3), assess(&plan, as_of));
        assert!(whole.inputs.is_empty(), "{:?}", whole.inputs);
        for (line, (balance, verdict)) in whole.balances.iter().zip(assessment.verdicts()) {
            assert_eq!((line.balance, line.is_known), (balance, verdict != Verdict::Unknown));
            let held = if verdict == Verdict::FallsShort || !line.is_known { 0 } else { 1_000 };
            assert_eq!(line.held, held, "{balance:?} on {as_of}: {verdict:?}");
        }
        let money = assessment.money.standing.first_short.map(|moment| moment.on);
        assert_eq!(balance(&whole, Balance::Money).likely_on, money);
        let power = assessment.power.standing.first_short.map(|moment| moment.on);
        assert!(power.is_none() || balance(&whole, Balance::Power).likely_on <= power);
    }
}

#[test]
fn the_demo_plan_is_short_where_its_verdicts_say_so() {
    let whole = whole(&demo_plan(), date(2027, 3, 10), 1);
    assert_eq!(whole.runs, 1_000);
    assert!(whole.all_hold <= whole.balances.iter().map(|line| line.held).min().unwrap());
    assert!(whole.inputs.len() <= 12 && whole.inputs.iter().all(|input| input.correlation.abs() <= 1.0));
    assert!(whole.inputs.iter().all(|input| input.of_low + input.of_high <= 1_000));
    assert_eq!(whole.balances.iter().map(|line| line.first_fails).sum::<u32>(), 1_000 - whole.all_hold);
    let plan = demo_plan();
    for input in &whole.inputs {
        assert!(!plan.value(&input.path).is_null(), "{}", input.path);
    }
}

#[test]
fn an_empty_plan_has_no_runs_that_mean_anything() {
    let whole = whole(&Plan::default(), ASKED, 1);
    assert!(whole.balances.iter().all(|line| !line.is_known || line.held == whole.runs), "{whole:?}");
    assert!(whole.first.is_none() && whole.inputs.is_empty());
    assert_eq!(whole.all_hold, whole.runs);
}

#[test]
fn a_plan_of_ten_years_is_cut_and_answered() {
    let mut plan = demo_plan();
    for stay in &mut plan.stays {
        stay.nights = 250;
    }
    let whole = whole(&plan, date(2027, 3, 10), 1);
    assert_eq!((whole.runs, whole.until), (1_000, assess(&plan, date(2027, 3, 10)).ends_on));
}

#[test]
fn numbers_that_are_none_make_no_answer_that_is_none() {
    for odd in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, -1.0, 0.0] {
        let mut plan = demo_plan();
        let range = |low: f64, likely: f64, high: f64| Estimate::Range { low, likely, high };
        for stay in &mut plan.stays {
            stay.drive_hours = Some(range(odd, 2.0, odd));
            stay.drive_km = Some(range(1.0, odd, 3.0));
            stay.offers.mains_hours = Some(range(odd, odd, 4.0));
        }
        for item in &mut plan.kit {
            item.mass_kg = Some(range(1.0, odd, odd));
            if let Some(draw) = &mut item.draw {
                draw.power_w = range(odd, 5.0, odd);
                draw.used_percent = Some(odd);
            }
            if let Some(store) = &mut item.store {
                store.usable_wh = odd;
            }
        }
        for task in &mut plan.tasks {
            task.hours = Some(range(odd, 2.0, odd));
        }
        for water_use in &mut plan.water_uses {
            water_use.litres_per_day = range(odd, odd, 3.0);
        }
        plan.vehicle.fuel_l_per_100_km = Some(range(odd, 8.0, odd));
        plan.vehicle.fuel_price_per_l = Some(Estimate::Plain(Money::whole(2)));
        plan.building.dry_percent = Some(odd);
        plan.climate.latitude_deg = Some(odd);
        let whole = whole(&plan, date(2027, 3, 10), 1);
        let is_number = |input: &kerbstead_core::chances::Input| input.correlation.is_finite();
        assert!(whole.inputs.iter().all(is_number), "{odd}: {whole:?}");
        assert!(whole.balances.iter().all(|line| line.held <= 1_000));
    }
}
