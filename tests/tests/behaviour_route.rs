//! The route, the kit and what is missing: what each of them changes.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test stops at what it did not expect; exact values are meant"
)]

use jiff::civil::{Date, date};
use kerbstead_core::plan::{Obtain, Plan};
use kerbstead_core::power::Finding;
use kerbstead_core::run::{Phase, Timeline};
use kerbstead_core::{Assessment, Balance, Standing, Verdict, assess, water};
use kerbstead_tests::generate::plan_of;
use serde_json::{Value, json};

/// Monday.
const DAY: Date = date(2027, 3, 1);

fn plan(value: &Value) -> Plan {
    plan_of(value.clone())
}

fn complete() -> Value {
    json!({
        "calendar": { "starts_on": "2027-02-27", "leaves_on": "2027-03-01", "ends_on": "2027-03-15" },
        "purse": { "opening_cash": "500" },
        "kit": [
            { "id": 1, "name": "Store", "obtain": "owned", "store": { "usable_wh": 1000 } },
            { "id": 2, "name": "Lamp", "obtain": "owned", "draw": { "power_w": 1, "outlet": "dc" } },
            { "id": 3, "name": "Can", "obtain": "owned", "tank": { "capacity_l": 100 } },
        ],
        "stays": [
            { "id": 4, "nights": 4, "working_days_per_week": 3, "drive_hours": 2, "drive_km": 100 },
            { "id": 5, "nights": 10, "drive_hours": { "low": 1, "likely": 3, "high": 6 }, "offers": { "water": true } },
        ],
        "week": [
            { "id": 6, "weekday": "monday", "kind": "working" },
            { "id": 7, "weekday": "friday", "kind": "driving", "drive_hours": 5, "offers": { "water": true } },
        ],
        "water_uses": [{ "id": 8, "litres_per_day": 3, "per": "van" }],
        "tasks": [{ "id": 9 }],
        "helpers": [{ "id": 10 }],
    })
}

fn missing<F>(standing: &Standing<F>) -> Vec<&str> {
    assert_eq!(standing.verdict == Verdict::Unknown, !standing.missing.is_empty());
    standing.missing.iter().map(kerbstead_core::plan::Path::as_str).collect()
}

/// Each row takes something away and says what each balance then misses.
#[test]
fn a_balance_without_a_verdict_names_the_field_it_misses() {
    for (pointer, value, money, power, water) in [
        ("/title", json!("all is there"), "", "", ""),
        ("/purse/opening_cash", json!(null), "purse/opening_cash", "", ""),
        ("/calendar/leaves_on", json!(null), "", "calendar/leaves_on", "calendar/leaves_on"),
        ("/stays", json!([]), "stays", "stays", "stays"),
        ("/stays", json!([{ "nights": 0 }]), "stays", "stays", "stays"),
        ("/water_uses", json!([]), "", "", "water_uses"),
        ("/calendar/mode", json!("week"), "", "", ""),
        // A first day so long ago that the days at home fill the whole run.
        ("/calendar/starts_on", json!("2020-01-01"), "calendar/starts_on", "calendar/starts_on", "calendar/starts_on"),
    ] {
        let mut value_of_plan = complete();
        let place = value_of_plan.pointer_mut(pointer);
        match place {
            Some(place) => *place = value.clone(),
            None if pointer == "/title" => value_of_plan["title"] = value.clone(),
            None => value_of_plan["calendar"]["mode"] = value.clone(),
        }
        let fields: Value = strip_nulls(value_of_plan);
        let Assessment { money: m, power: p, water: w, .. } = assess(&plan(&fields), DAY);
        let found = [missing(&m.standing), missing(&p.standing), missing(&w.standing)].map(|paths| paths.join(" "));
        assert_eq!(found, [money, power, water], "{pointer} = {value}");
    }
}

/// A repeating week misses its days or its end, never the stays.
#[test]
fn a_week_without_days_or_an_end_says_so() {
    for (pointer, value, missed) in [
        ("/week", json!([]), "week"),
        ("/calendar/ends_on", json!(null), "calendar/ends_on"),
        ("/calendar/ends_on", json!("2027-03-01"), "calendar/ends_on"),
    ] {
        let mut changed = complete();
        changed["calendar"]["mode"] = json!("week");
        *changed.pointer_mut(pointer).unwrap() = value;
        let assessment = assess(&plan(&strip_nulls(changed)), DAY);
        assert_eq!(missing(&assessment.power.standing), [missed]);
        assert_eq!(missing(&assessment.water.standing), [missed]);
    }
}

#[test]
fn stays_follow_each_other_night_by_night() {
    let plan = plan(&complete());
    let timeline = Timeline::new(&plan, DAY);
    assert_eq!(timeline.days.len(), 16);
    assert_eq!(timeline.days.iter().filter(|day| day.phase == Phase::Home).count(), 2);
    let road: Vec<(Option<u32>, bool, f64)> =
        timeline.road().map(|day| (day.source, day.is_working, day.drive_hours)).collect();
    // The first stay: driven to on the first day only, worked from Monday to Wednesday.
    let (first, second) = (Some(4), Some(5));
    assert_eq!(
        road[..6],
        [
            (first, true, 2.0),
            (first, true, 0.0),
            (first, true, 0.0),
            (first, false, 0.0),
            (second, false, 3.0),
            (second, false, 0.0),
        ]
    );
    assert_eq!(timeline.ends_on(), date(2027, 3, 14));
}

#[test]
fn a_week_repeats_until_the_day_it_ends() {
    let mut value = complete();
    value["calendar"]["mode"] = json!("week");
    let plan = plan(&value);
    let timeline = Timeline::new(&plan, DAY);
    let road: Vec<(Option<u32>, bool, f64)> =
        timeline.road().map(|day| (day.source, day.is_working, day.drive_hours)).collect();
    assert_eq!(road.len(), 14);
    for week in road.chunks(7) {
        let nothing = (None, false, 0.0);
        assert_eq!(week, [(Some(6), true, 0.0), nothing, nothing, nothing, (Some(7), false, 5.0), nothing, nothing]);
    }
    // Fridays have a tap: the can is full that evening.
    let fresh: Vec<f64> = assess(&plan, DAY).water.days.iter().map(|day| day.fresh_l).collect();
    assert_eq!(fresh[..7], [97.0, 94.0, 91.0, 88.0, 100.0, 97.0, 94.0]);
}

/// The calendar ends with the year 9999, and so does a route.
#[test]
fn a_route_at_the_end_of_time_ends_there() {
    let mut value = complete();
    value["calendar"] = json!({ "starts_on": "9999-12-29", "leaves_on": "9999-12-30" });
    let plan = plan(&value);
    let days: Vec<String> = Timeline::new(&plan, DAY).days.iter().map(|day| day.date.to_string()).collect();
    assert_eq!(days, ["9999-12-29", "9999-12-30", "9999-12-31"]);
}

#[test]
fn the_route_that_does_not_count_changes_nothing() {
    let with = plan(&complete());
    let without = Plan { week: Vec::new(), ..with.clone() };
    assert_eq!(assess(&with, DAY).digest(), assess(&without, DAY).digest());
}

/// Draw, store and tank of what is left out are not there; its price is not paid.
#[test]
fn what_is_left_out_draws_stores_holds_and_costs_nothing() {
    let all = plan(&complete());
    let without = |position: usize| {
        let mut plan = all.clone();
        plan.kit[position].obtain = Obtain::LeftOut;
        assess(&plan, DAY)
    };
    assert!(matches!(without(0).power.standing.findings[..], [Finding::NoStore { count: 1, item: 2, .. }]));
    assert!(without(0).power.stores.is_empty());
    assert_eq!(without(1).power.standing.findings, [Finding::NothingDraws]);
    assert_eq!(without(1).power.stores[0].taken_out_wh, 0.0);
    let dry = without(2).water;
    assert_eq!((dry.fresh_capacity_l, dry.standing.verdict), (0.0, Verdict::FallsShort));
    assert!(dry.standing.findings.contains(&water::Finding::NoFreshTank { litres_per_day: 3.0 }));

    let mut paid = all.clone();
    paid.kit[0].obtain = Obtain::Bought;
    paid.kit[0].unit_price = Some("100".parse::<kerbstead_core::plan::Money>().unwrap().into());
    assert_eq!(assess(&paid, DAY).money.flows.len(), 1);
    paid.kit[0].obtain = Obtain::LeftOut;
    assert_eq!(assess(&paid, DAY).money.flows.len(), 0);
}

/// From 22:30 for four hours: half an hour, then one, then two whole hours past midnight, then half of the next.
#[test]
fn a_draw_past_midnight_goes_on_in_the_small_hours() {
    let mut value = complete();
    value["kit"][1]["draw"] = json!({ "power_w": 10, "outlet": "dc", "from_hour": 22.5, "hours_per_day": 4 });
    let report = assess(&plan(&value), DAY).power;
    let charge = &report.stores[0].charge_wh;
    let drawn: Vec<f64> = (1..48).map(|hour| charge[hour - 1] - charge[hour]).collect();
    for (hour, expected) in [(21, 0.0), (22, 5.0), (23, 10.0), (24, 10.0), (25, 10.0), (26, 5.0), (27, 0.0)] {
        assert_eq!(drawn[hour - 1], expected, "hour {hour}");
    }
    // The first night has no evening before it, and of the last evening two and a half hours are after the end.
    assert_eq!((charge[0], charge[1]), (charge[2], charge[2]));
    assert_eq!(report.stores[0].taken_out_wh, 14.0 * 40.0 - 25.0);
}

/// Who draws on which days of a route of one working and driving, one working, one free and driving, one free day.
#[test]
fn draws_keep_to_their_days() {
    let mut value = complete();
    value["calendar"] = json!({ "starts_on": "2027-03-04", "leaves_on": "2027-03-04" });
    value["stays"] = json!([
        { "id": 4, "nights": 2, "working_days_per_week": 5, "drive_hours": 1 },
        { "id": 5, "nights": 2, "drive_hours": 1 },
    ]);
    value["kit"][0]["store"]["vehicle_input_w"] = json!(0);
    for (days, expected) in [
        ("every", [24.0; 4]),
        ("working", [24.0, 24.0, 0.0, 0.0]),
        ("free", [0.0, 0.0, 24.0, 24.0]),
        ("driving", [24.0, 0.0, 24.0, 0.0]),
        ("standing", [0.0, 24.0, 0.0, 24.0]),
    ] {
        value["kit"][1]["draw"] = json!({ "power_w": 1, "outlet": "dc", "days": days });
        let report = assess(&plan(&value), date(2027, 3, 4)).power;
        let evenings: Vec<f64> = report.stores[0].charge_wh.iter().skip(23).step_by(24).copied().collect();
        let mornings = [1_000.0, evenings[0], evenings[1], evenings[2]];
        let drawn: Vec<f64> = mornings.iter().zip(&evenings).map(|(morning, evening)| morning - evening).collect();
        assert_eq!(drawn, expected, "{days}");
    }
}

#[test]
fn every_balance_of_a_complete_plan_has_a_verdict() {
    let verdicts = assess(&plan(&complete()), DAY).verdicts();
    for (balance, verdict) in verdicts {
        // Nothing has its place or a mass in that plan, nobody says how warm it is outside, and nothing takes data.
        let is_told = !matches!(balance, Balance::Space | Balance::Load | Balance::Warmth | Balance::Signal);
        assert_eq!(verdict, if is_told { Verdict::Holds } else { Verdict::Unknown }, "{balance:?}");
    }
}

fn strip_nulls(value: Value) -> Value {
    match value {
        Value::Object(fields) => fields
            .into_iter()
            .filter(|(_, value)| !value.is_null())
            .map(|(name, value)| (name, strip_nulls(value)))
            .collect(),
        other => other,
    }
}
