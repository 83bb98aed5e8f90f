//! What a thing on a shelf comes to, against values worked out by hand, and what must hold for every plan and offer.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Field, Money, NumberMarks, Obtain, Plan, Quantity, Wrong, validate};
use kerbstead_core::shop::{
    Comparison, Finding, ITEM_FIELDS, Offer, OfferRead, Report, Taking, read_offer, report, take,
};
use kerbstead_core::{Balance, Margin, Say, Verdict, assess};
use kerbstead_tests::generate::{cases, plan_of};
use kerbstead_tests::worked::money;
use proptest::prelude::*;
use serde_json::{Value, json};

const TODAY: Date = date(2027, 3, 5);

/// Ten days at home, then twenty nights at 5 a night; 304.37 a month on the road, due after the end.
fn plan_with(cash: &str, more: &Value) -> Plan {
    let mut plan = json!({
        "currency": "EUR",
        "calendar": { "starts_on": "2027-03-01", "leaves_on": "2027-03-11" },
        "purse": { "opening_cash": cash, "floor": "100", "tax_percent": "8", "prices_include_tax": true },
        "costs": [
            { "id": 50, "name": "Food", "amount": "304.37", "phase": "road" },
            { "id": 51, "name": "Rent", "amount": "0.00", "phase": "home" },
        ],
        "stays": [{ "id": 60, "nights": 20, "offers": { "price_per_night": "5" } }],
    });
    for (name, value) in more.as_object().unwrap() {
        plan[name] = value.clone();
    }
    plan_of(plan)
}

fn read(plan: &Plan, texts: &[(&str, &str)]) -> OfferRead {
    let text =
        |name: &str| texts.iter().find(|(of, _)| *of == name).map_or_else(String::new, |(_, text)| (*text).into());
    read_offer(plan, &text, NumberMarks::default(), &|_: &Field| 1.0.into())
}

fn offer(plan: &Plan, texts: &[(&str, &str)]) -> Offer {
    let read = read(plan, texts);
    assert!(read.wrong.is_empty(), "{:?}", read.wrong);
    read.offer.unwrap()
}

fn report_of(plan: &Plan, texts: &[(&str, &str)]) -> Report {
    report(plan, &assess(plan, TODAY), &offer(plan, texts))
}

fn says(report: &Report, key: &str) -> bool {
    report.findings.iter().any(|finding| finding.key() == key)
}

const THREE_OF_IT: [(&str, &str); 4] =
    [("unit_price", "12.50"), ("quantity", "3"), ("tax", "added"), ("group", "kitchen")];

#[test]
fn the_price_at_the_till_has_the_tax() {
    let plan = plan_with("500", &json!({}));
    let added = report_of(&plan, &THREE_OF_IT).price;
    assert_eq!((added.net, added.tax, added.total), (money("37.50"), money("3.00"), money("40.50")));
    // 20.00 with 8 % in it: 20 / 1.08 = 18.5185.
    let included = report_of(&plan, &[("unit_price", "20")]).price;
    assert_eq!((included.net, included.tax, included.total), (money("18.52"), money("1.48"), money("20.00")));
    let own = report_of(&plan, &[("unit_price", "10"), ("tax_percent", "20"), ("tax", "added")]).price;
    assert_eq!(own.total, money("12.00"));
}

#[test]
fn a_price_is_taken_as_it_is_pasted() {
    let plan = plan_with("500", &json!({}));
    for text in ["€12.50", "12.50 €", "EUR 12.50", "12.50EUR", "2*6.25", " 12.50 "] {
        assert_eq!(offer(&plan, &[("unit_price", text)]).marked(), money("12.50"), "{text}");
    }
    let other = read(&plan, &[("unit_price", "USD 12.50")]);
    assert!(other.offer.is_none() && matches!(other.wrong[..], [("unit_price", Wrong::NotMoney { .. })]), "{other:?}");
}

/// By hand: 304.37 a month over 30.436875 days is 10.0000 a day, and a night is 5: 40.50 pays for 2.70 days. The cash
/// of 500 pays for 20 nights to the end, which leaves 400; with the thing 359.50, 259.50 above the floor, 17.30 days.
#[test]
fn a_price_is_so_many_days_on_the_road() {
    let plan = plan_with("500", &json!({}));
    let report = report_of(&plan, &THREE_OF_IT);
    let per_day = 304.37 / 30.436_875 + 5.0;
    assert!((report.road_days.unwrap() - 40.5 / per_day).abs() < 1e-12, "{:?}", report.road_days);
    assert!((report.road_days.unwrap() - 2.70).abs() < 0.001);
    assert_eq!((report.road_cost.names.join(","), report.road_cost.nights), ("Food".to_owned(), 20));
    let cash = report.cash.unwrap();
    assert_eq!((cash.before, cash.after, cash.margin), (money("400"), money("359.50"), money("259.50")));
    assert_eq!((report.run_out.before, report.run_out.after), (None, None));
    assert_eq!((report.run_out.ends_on, report.run_out.left), (date(2027, 3, 30), money("259.50")));
    assert!((report.run_out.days_beyond.unwrap() - 259.5 / per_day).abs() < 1e-12);
    assert!(says(&report, "shop-never-runs-out-days") && report.verdicts.is_empty());
}

/// By hand: 150 less 5 a night is below 100 on the eleventh night, 21 March; less 20 for the thing, on the seventh.
#[test]
fn the_day_cash_runs_out_moves() {
    let plan = plan_with("150", &json!({}));
    let report = report_of(&plan, &[("unit_price", "20")]);
    assert_eq!((report.run_out.before, report.run_out.after), (Some(date(2027, 3, 21)), Some(date(2027, 3, 17))));
    let finding = report.findings.iter().find(|finding| finding.key() == "shop-runs-out-earlier").unwrap();
    assert!(finding.figures().contains(&("days", Figure::of(4.0, Quantity::Days))), "{finding:?}");
}

/// By hand: 205 less 100 for the nights leaves 105, 5 above the floor, less than a week on the road; with 5.01, it
/// falls below on the last day.
#[test]
fn the_verdict_changes_when_the_last_of_the_cushion_is_spent() {
    let plan = plan_with("205", &json!({}));
    assert!(report_of(&plan, &[("unit_price", "5.00")]).verdicts.is_empty());
    let report = report_of(&plan, &[("unit_price", "5.01")]);
    assert_eq!(report.verdicts, [(Balance::Money, Verdict::Tight, Verdict::FallsShort)]);
    assert_eq!((report.run_out.before, report.run_out.after), (None, Some(date(2027, 3, 30))));
    assert!(says(&report, "shop-runs-out-now") && says(&report, "shop-lowest-below"));
}

/// By hand: 2.40 for 500 ml is 4.80 a litre, 3.30 for 750 ml is 4.40: 1/12 less, and 0.40 on the litre of two bottles.
#[test]
fn of_two_packs_the_cheaper_is_found() {
    let plan = plan_with("500", &json!({}));
    let this = [("unit_price", "2.40"), ("quantity", "2"), ("pack", "500 ml")];
    let with = |other: [(&str, &str); 2]| report_of(&plan, &[&this[..], &other[..]].concat());
    let second = with([("other_price", "3.30"), ("other_pack", "75 cl")]);
    let Some(Comparison::Second { percent, saved }) = second.comparison else { panic!("{:?}", second.comparison) };
    assert!((percent - 100.0 / 12.0).abs() < 1e-9 && saved == money("0.40"));
    assert_eq!(second.unit_price.unwrap().price, money("4.8"));
    let first = with([("other_price", "5"), ("other_pack", "1 l")]);
    assert!(matches!(first.comparison, Some(Comparison::First { saved, .. }) if saved == money("0.20")));
    assert_eq!(with([("other_price", "7.20"), ("other_pack", "3 x 0.5 l")]).comparison, Some(Comparison::Same));
    assert_eq!(with([("other_price", "7.20"), ("other_pack", "1 kg")]).comparison, Some(Comparison::NotAlike));
    assert_eq!(with([("other_price", "7.20"), ("other_pack", "")]).comparison, None);
}

/// What is compared is what is paid: tax that is not on the tag comes on top of both.
#[test]
fn unit_prices_have_the_tax() {
    let plan = plan_with("500", &json!({}));
    let report = report_of(&plan, &[("unit_price", "10"), ("tax", "added"), ("pack", "4")]);
    let unit = report.unit_price.unwrap();
    assert_eq!((unit.price, unit.quantity), (money("2.70"), Quantity::Count));
}

#[test]
fn packs_that_cannot_be_read_are_told_of() {
    let plan = plan_with("500", &json!({}));
    for (text, is_right) in [
        (
            "3 boxes",
            (|wrong| matches!(wrong, Wrong::OtherUnit { units, .. } if units.contains("kg"))) as fn(&Wrong) -> bool,
        ),
        ("0", |wrong| matches!(wrong, Wrong::NotANumber { .. })),
        ("-1 kg", |wrong| matches!(wrong, Wrong::NotANumber { .. })),
        ("much", |wrong| matches!(wrong, Wrong::NotANumber { .. })),
        ("1 kg + 2", |wrong| matches!(wrong, Wrong::UnitsMixed)),
    ] {
        let read = read(&plan, &[("unit_price", "1"), ("pack", text)]);
        assert!(matches!(&read.wrong[..], [("pack", wrong)] if is_right(wrong)), "{text}: {:?}", read.wrong);
        assert!(read.offer.is_some_and(|offer| offer.pack.is_none()));
    }
}

/// By hand: the stove is still to pay, 24, the pan is paid, 12; with 40.50, 76.50 in all and 24 still to pay.
#[test]
fn its_heading_is_counted_with_and_without() {
    let kit = json!([
        { "id": 1, "name": "Stove", "group": "kitchen", "unit_price": "24" },
        { "id": 2, "name": "Pan", "group": "kitchen", "unit_price": "12", "paid": { "on": "2027-03-02" } },
        { "id": 3, "name": "Bed", "group": "sleeping", "unit_price": "70" },
    ]);
    let group = report_of(&plan_with("500", &json!({ "kit": kit })), &THREE_OF_IT).group;
    assert_eq!((group.foreseen, group.paid), (money("36"), money("12")));
    assert_eq!((group.foreseen_with, group.left_with), (money("76.50"), money("24")));
}

/// By hand: two boxes of 60 × 40 × 35 cm are 168 L; 2 × 4.5 kg and the bed of 20 kg are 29 kg.
#[test]
fn its_mass_and_room_are_told() {
    let kit = json!([{ "id": 1, "name": "Bed", "obtain": "owned", "mass_kg": 20.0 }]);
    let plan = plan_with("500", &json!({ "kit": kit }));
    let sides = [("length_mm", "60 cm"), ("width_mm", "40 cm"), ("height_mm", "350")];
    let report =
        report_of(&plan, &[&[("unit_price", "1"), ("quantity", "2"), ("mass_kg", "4.5")][..], &sides].concat());
    assert!((report.load.volume_l.unwrap() - 168.0).abs() < 1e-9);
    assert_eq!((report.load.mass_kg, report.load.carried_kg), (Some(9.0), 29.0));
}

/// By hand, without an inverter: 480 Wh less 20 days of 2 h × 5 W leaves 280 Wh; less another 3 h × 4 W a day, 40 Wh.
/// The reserve is that over the average draw: 280 over 10/24 W is 672 h, 40 over 22/24 W is 43.6 h.
#[test]
fn what_draws_takes_from_the_reserve() {
    let draw = |watts: f64, hours: f64| json!({ "power_w": watts, "outlet": "dc", "hours_per_day": hours });
    let kit = json!([
        { "id": 1, "name": "Store", "obtain": "owned", "store": { "usable_wh": 480.0 } },
        { "id": 2, "name": "Lamp", "obtain": "owned", "draw": draw(5.0, 2.0) },
        { "id": 3, "name": "Radio", "obtain": "left_out", "draw": draw(1.0, 3.0) },
    ]);
    let plan = plan_with("500", &json!({ "kit": kit }));
    let report = report_of(&plan, &[("for", "3"), ("unit_price", "9"), ("draw/power_w", "4")]);
    let Some(Finding::Power { before, after }) =
        report.findings.iter().find(|finding| matches!(finding, Finding::Power { .. }))
    else {
        panic!("{:?}", report.findings)
    };
    let hours = |figure: &Figure| match figure {
        Figure::Measure { value, quantity: Quantity::Hours } => *value,
        other => panic!("{other:?}"),
    };
    let bought = offer(&plan, &[("for", "3"), ("unit_price", "9"), ("draw/power_w", "4")]);
    let mut with = plan.clone();
    take(&plan, TODAY, &bought, Taking::Planned).apply(&mut with).unwrap();
    assert_eq!(with.item(3).map(|item| item.obtain), Some(Obtain::Bought));
    let margin = |plan: &Plan| match assess(plan, TODAY).power.standing.margin {
        Some(Margin::Hours(hours)) => hours,
        other => panic!("{other:?}"),
    };
    assert_eq!((hours(before), hours(after)), (margin(&plan), margin(&with)));
    assert!((hours(before) - 672.0).abs() < 0.5, "{}", hours(before));
    assert!((hours(after) - 480.0 / 11.0).abs() < 0.5, "{}", hours(after));
}

#[test]
fn what_is_taken_is_in_the_kit_and_can_be_taken_back() {
    let plan = plan_with("500", &json!({}));
    let offer = offer(&plan, &[&THREE_OF_IT[..], &[("name", "Can")]].concat());
    for (taking, unit_price, is_paid) in [(Taking::Paid, "13.5", true), (Taking::Planned, "13.5", false)] {
        let mut with = plan.clone();
        let undo = take(&plan, TODAY, &offer, taking).apply(&mut with).unwrap();
        let item = &with.kit[0];
        assert_eq!((item.name.as_str(), item.quantity, item.id), ("Can", 3, plan.next_id()));
        assert_eq!(item.unit_price.unwrap().likely(), money(unit_price));
        assert_eq!(item.paid.and_then(|paid| paid.amount), is_paid.then(|| money("40.50")));
        let flows = assess(&with, TODAY).money.flows;
        assert!(flows.iter().any(|flow| flow.source == item.id && flow.amount == money("-40.50")));
        assert!(validate(&with).is_empty());
        undo.apply(&mut with).unwrap();
        assert_eq!(with, plan);
    }
}

/// The thing is the stove of the kit, cheaper than planned: 24 were planned.
#[test]
fn a_thing_of_the_kit_takes_its_own_place() {
    let kit = json!([{ "id": 1, "name": "Stove", "group": "kitchen", "unit_price": "24", "mass_kg": 1.5 }]);
    let plan = plan_with("220", &json!({ "kit": kit }));
    let cheaper = report_of(&plan, &[("for", "1"), ("unit_price", "19")]);
    assert_eq!((cheaper.group.foreseen, cheaper.group.foreseen_with), (money("24"), money("19")));
    // 220 - 24 - 100 = 96 without, 101 with.
    assert!(says(&cheaper, "shop-runs-out-no-longer"));
    let planned = offer(&plan, &[("for", "1")]);
    assert_eq!((planned.item.name.as_str(), planned.marked()), ("Stove", money("24")));
    let mut with = plan.clone();
    let bought = offer(&plan, &[("for", "1"), ("unit_price", "19")]);
    let undo = take(&plan, TODAY, &bought, Taking::Paid).apply(&mut with).unwrap();
    assert_eq!((with.kit.len(), with.kit[0].paid.unwrap().amount), (1, Some(money("19"))));
    assert_eq!(with.kit[0].mass_kg, plan.kit[0].mass_kg);
    undo.apply(&mut with).unwrap();
    assert_eq!(with, plan);
}

/// Cash that was counted this evening does not know yet of what is bought afterwards.
#[test]
fn what_is_bought_after_the_cash_was_counted_counts() {
    let readings = json!([{ "id": 9, "on": "2027-03-05", "hour": 18, "cash": "300" }]);
    let cash = report_of(&plan_with("500", &json!({ "readings": readings })), &[("unit_price", "20")]).cash.unwrap();
    assert_eq!((cash.before, cash.after), (money("200"), money("180")));
}

#[test]
fn without_cash_or_costs_it_says_what_is_missing() {
    let plan = plan_of(json!({ "calendar": { "leaves_on": "2027-03-11" }, "stays": [{ "id": 1, "nights": 3 }] }));
    let report = report_of(&plan, &[("unit_price", "20")]);
    assert!(says(&report, "shop-cash-not-known") && says(&report, "shop-no-road-cost"), "{:?}", report.findings);
    assert_eq!((report.cash, report.road_days), (None, None));
}

/// Texts as somebody might type them into the fields.
fn texts() -> impl Strategy<Value = Vec<(&'static str, String)>> {
    let price = prop_oneof!["[0-9]{1,5}([.][0-9]{1,2})?", "[0-9]{1,9}[*/][0-9]{1,9}", "[-0-9.*/+%()x ]{0,12}"];
    let pack = prop_oneof!["[0-9]{1,4} (g|kg|ml|l|m|cm)?", "[0-9]x[0-9]{1,3} g", "[0-9a-z ]{0,8}"];
    let number = prop_oneof!["[0-9]{1,4}", "[0-9]{0,3}[.][0-9]{1,3} ?(kg|cm|W|h)?"];
    let fields = (price.clone(), pack.clone(), price, pack, prop::collection::vec(number, 8), 0_usize..4, 0_u32..40);
    fields.prop_map(|(price, pack, other_price, other_pack, numbers, tax, id)| {
        let tax = ["", "included", "added", "?"][tax];
        let names = ITEM_FIELDS.into_iter().filter(|name| !matches!(*name, "unit_price" | "group" | "name"));
        let mut texts: Vec<_> = names.zip(numbers).collect();
        texts.extend([("unit_price", price), ("pack", pack), ("other_price", other_price), ("other_pack", other_pack)]);
        texts.extend([("tax", tax.to_owned()), ("for", id.to_string())]);
        texts
    })
}

/// No number of an answer is infinite or not a number: JSON would have nothing in its place.
fn check_values(value: &Value) {
    match value {
        Value::Null => panic!("not a number"),
        Value::Array(values) => values.iter().for_each(check_values),
        Value::Object(fields) => fields.values().for_each(check_values),
        _ => {}
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_offer_is_worked_out_for_every_plan((plan, as_of) in cases(), texts in texts()) {
        let text = |name: &str| texts.iter().find(|(of, _)| *of == name).map_or_else(String::new, |(_, text)| text.clone());
        let read = read_offer(&plan, &text, NumberMarks::default(), &|_: &Field| 1.0.into());
        let Some(offer) = read.offer else { return Ok(()) };
        let before = assess(&plan, as_of);
        let report = report(&plan, &before, &offer);
        check_values(&serde_json::to_value(&report).unwrap());
        prop_assert_eq!(&report, &kerbstead_core::shop::report(&plan, &before, &offer));
        // Beyond, a decimal has no digits left for the cents.
        let is_exact = |amount: Money| amount.to_plot().abs() < 1e15;
        let days = before.money.days.iter();
        let mut amounts = days.flat_map(|day| [day.opening, day.inflow, day.outflow, day.closing]);
        let is_sound = amounts.all(is_exact) && !report.price.total.is_negative();
        if let (Some(cash), None) = (report.cash.filter(|_| is_sound), offer.is_for) {
            prop_assert!(cash.after <= cash.before && cash.after >= cash.before - report.price.total, "{:?}", report);
        }
        for taking in [Taking::Paid, Taking::Planned] {
            let mut with = plan.clone();
            let undo = take(&plan, as_of, &offer, taking).apply(&mut with).unwrap();
            undo.apply(&mut with).unwrap();
            prop_assert_eq!(&with, &plan);
        }
    }
}
