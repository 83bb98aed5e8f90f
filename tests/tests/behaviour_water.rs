//! What uses, heat, stops, toilets, filters and frost do to the water, in plans worked out by hand.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test stops at what it did not expect; exact values are meant"
)]

use jiff::civil::{Date, date};
use kerbstead_core::money::FlowGroup;
use kerbstead_core::moves::{Change, Moves};
use kerbstead_core::plan::{Edit, Money, Plain, Plan};
use kerbstead_core::run::{Timeline, walk};
use kerbstead_core::task::{Question, Subject};
use kerbstead_core::water::needs::{Effort, NEEDS, heat_factor};
use kerbstead_core::water::{Course, Finding, Frost, Input, Outlook, Report, Vessel};
use kerbstead_core::{Caution, Verdict, assess, water};
use kerbstead_tests::generate::plan_of;
use serde_json::{Value, json};

/// Thursday, the day of leaving.
const DAY: Date = date(2027, 4, 1);

fn on(day: i8) -> Date {
    date(2027, 4, day)
}

/// Two stays of five nights for one, a can of 40 l and a grey tank of 20 l; 6 l a day, half of which is kept.
fn value() -> Value {
    json!({
        "people": 1,
        "calendar": { "starts_on": "2027-04-01", "leaves_on": "2027-04-01", "mode": "stays" },
        "kit": [
            { "id": 1, "name": "Can", "obtain": "owned", "tank": { "capacity_l": 40 } },
            { "id": 2, "name": "Grey", "obtain": "owned", "tank": { "capacity_l": 20, "holds": "grey" } },
        ],
        "stays": [
            { "id": 4, "nights": 5, "offers": { "toilet": true } },
            { "id": 5, "nights": 5, "offers": { "toilet": true } },
        ],
        "water_uses": [{ "id": 8, "name": "All", "litres_per_day": 6, "per": "van", "to_grey_percent": 50 }],
    })
}

fn with(field: &str, entry: Value) -> Value {
    let mut all = value();
    all[field] = entry;
    all
}

fn plan(value: &Value) -> Plan {
    plan_of(value.clone())
}

fn report(value: &Value) -> Report {
    assess(&plan(value), DAY).water
}

fn keys(report: &Report) -> Vec<&'static str> {
    use kerbstead_core::Say;
    report.standing.findings.iter().map(Say::key).collect()
}

fn asked(plan: Plan, subject: Subject) -> Value {
    let mut task = Question { subject, plan, as_of: DAY, seed: 1, ..Question::default() }.begin();
    while task.step() < 1.0 {}
    task.answer()
}

#[test]
fn what_comes_so_many_times_a_week_is_spread_over_its_days() {
    let weekly = with("water_uses", json!([{ "id": 8, "litres_per_day": 7, "per": "van", "times_per_week": 3 }]));
    assert_eq!(report(&weekly).use_l_per_day, 3.0);
    // A litre a week is 143 ml a day, rounded; a can of a litre lasts a week to the last drop.
    let mut drops = with("water_uses", json!([{ "id": 8, "litres_per_day": 1, "per": "van", "times_per_week": 1 }]));
    drops["kit"] = json!([{ "id": 1, "tank": { "capacity_l": 1 } }]);
    drops["stays"] = json!([{ "id": 4, "nights": 7, "offers": { "toilet": true } }]);
    let week = report(&drops);
    assert_eq!((week.days[6].fresh_l, week.first), (0.0, None));
}

/// At rest in temperate air 1, at 30 °C half as much more; used water too.
#[test]
fn what_is_drunk_grows_with_the_heat_and_the_work_of_the_day() {
    let drinking = json!([
        { "id": 8, "litres_per_day": 2, "is_drunk": true, "to_grey_percent": 10 },
        { "id": 9, "litres_per_day": 1 },
    ]);
    let plan = plan(&with("water_uses", drinking));
    let (timeline, input) = (Timeline::new(&plan, DAY), Input::new(&plan));
    let mut course = Course::default();
    let day = timeline.road().next().unwrap();
    for high_c in [None, Some(18.0), Some(30.0), Some(40.0)] {
        course.step(input.opening(), &input, day, high_c);
    }
    let used: Vec<f64> = course.days.iter().map(|day| day.used_l).collect();
    assert_eq!(used, [3.0, 3.0, 4.0, 5.0]);
    assert_eq!(course.days[2].grey_l, 0.3);

    let mut working = plan.clone();
    working.water_uses[0].exertion_hours = Some(4.0);
    working.water_uses[0].effort = Some(Effort::Hard);
    let litres = 2.0 * heat_factor(None, 4.0, Effort::Hard) + 1.0;
    assert!((Input::new(&working).use_l_per_day - litres).abs() < 1e-9 && litres > 3.5);
}

#[test]
fn what_runs_out_first_is_told_with_the_spacing_of_stops_and_what_lacks() {
    // 40 l of 6 a day last six days. So have 20 l room for 3 a day, and less water then means less used water.
    let all = report(&value());
    let first = all.first.unwrap();
    assert_eq!((first.vessel, first.on, first.days_before_next), (Vessel::Fresh, on(7), None));
    assert_eq!(
        (all.spacing.days, all.spacing.first_by, all.spacing.limit),
        (Some(7), Some(on(7)), Some(Vessel::Fresh))
    );
    // 60 are used, 30 come.
    assert_eq!((all.lacks.fresh_l, all.lacks.grey_l, all.lacks.toilet_days), (20.0, 10.0, 0.0));
    let mut long = value();
    long["stays"][1]["nights"] = json!(30);
    long["kit"][1]["tank"]["capacity_l"] = json!(12);
    let spacing = report(&long).spacing;
    // Four days of 3 l, and the fifth is too much: a stop on every fifth day at least.
    assert_eq!((spacing.days, spacing.first_by, spacing.limit), (Some(5), Some(on(5)), Some(Vessel::Grey)));
}

#[test]
fn stops_in_use_fill_empty_and_cost_on_their_days() {
    let stop = |more: Value| {
        let mut stop = json!({
            "id": 9, "name": "Tap", "refills": true, "empties": true, "stop_price": "3", "in_use": true,
        });
        stop.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        plan(&with("water_stops", json!([stop])))
    };
    let paid = |plan: &Plan| -> Vec<Date> {
        let flows = assess(plan, DAY).money.flows;
        let flows = flows.into_iter().filter(|flow| flow.group == FlowGroup::WaterStops);
        flows
            .inspect(|flow| assert_eq!((flow.amount, flow.source), (Money::whole(-3), 9)))
            .map(|flow| flow.on)
            .collect()
    };
    for (more, days) in [
        (json!({ "on": "2027-04-04" }), vec![4]),
        (json!({ "every_days": 4 }), vec![1, 5, 9]),
        (json!({ "every_days": 2, "stay": 5 }), vec![6, 8, 10]),
        (json!({ "stay": 4 }), vec![1, 2, 3, 4, 5]),
        (json!({ "stay": 77 }), vec![]),
    ] {
        let plan = stop(more.clone());
        let expected: Vec<Date> = days.iter().map(|day| on(*day)).collect();
        assert_eq!(paid(&plan), expected, "{more}");
        for day in assess(&plan, DAY).water.days {
            let is_stop = expected.contains(&day.on);
            assert_eq!((day.fresh_l == 40.0, day.grey_l == 0.0), (is_stop, is_stop), "{more} {day:?}");
        }
    }
    assert!(paid(&stop(json!({ "in_use": false }))).is_empty());
    let a_month = assess(&stop(json!({ "every_days": 4 })), DAY).money.month.unwrap();
    let line = a_month.lines.iter().find(|line| line.group == FlowGroup::WaterStops).unwrap();
    assert_eq!(line.road.to_string(), "27.39"); // three of ten days, 9 × 30.436875 / 10
}

#[test]
fn a_stop_that_is_not_in_use_mends_the_water() {
    let stops = json!([{ "id": 9, "name": "Tap", "refills": true, "empties": true, "stop_price": "3" }]);
    let plan = plan(&with("water_stops", stops));
    let moves = Moves::from_plain(&asked(plan.clone(), Subject::Moves)).unwrap();
    let mut stops = moves.moves.iter().filter(|one| one.change == Change::WaterStop);
    let once = stops.find(|one| one.on.is_some() && one.mends >= 1.0).unwrap();
    assert_eq!(once.money, Money::whole(-3));
    let mut mended = plan;
    once.edit.clone().apply(&mut mended).unwrap();
    assert_ne!(assess(&mended, DAY).water.standing.verdict, Verdict::FallsShort);
}

#[test]
fn the_fewest_stops_and_the_chance_are_the_same_each_time() {
    let mut uncertain = with("water_stops", json!([{ "id": 9, "refills": true, "empties": true, "every_days": 3 }]));
    uncertain["water_uses"][0]["litres_per_day"] = json!({ "low": 2, "likely": 4, "high": 6 });
    uncertain["kit"][1]["tank"]["capacity_l"] = json!(100);
    let ask = || Outlook::from_plain(&asked(plan(&uncertain), Subject::Water)).unwrap();
    let outlook = ask();
    assert_eq!(outlook, ask());
    // Ten days of 4 l are just what 40 l last: of a triangle that is even, half is no more.
    let share = f64::from(outlook.held) / f64::from(outlook.runs);
    assert!((share - 0.5).abs() < 0.04, "{share}");
    assert_eq!((outlook.fresh_first, outlook.held + outlook.fresh_first), (outlook.runs - outlook.held, outlook.runs));
    assert!(outlook.fewest.is_found && outlook.fewest.days.is_empty());
    let mut thirsty = uncertain.clone();
    thirsty["water_uses"][0]["litres_per_day"] = json!(6.5);
    let fewest = Outlook::from_plain(&asked(plan(&thirsty), Subject::Water)).unwrap().fewest;
    // 40 l last six days. Of the 1st, 4th, 7th and 10th, the 7th is the last that does.
    assert_eq!(fewest.days.iter().map(|day| (day.on, day.place)).collect::<Vec<_>>(), [(on(7), Some(9))]);
    assert!(!Outlook::from_plain(&asked(plan(&value()), Subject::Water)).unwrap().fewest.is_found);
    let empty = with("water_uses", json!([]));
    assert_eq!(Outlook::from_plain(&asked(plan(&empty), Subject::Water)).unwrap().runs, 0);
}

/// A bag a time, 1.2 times a person and day: six bags are five person-days.
#[test]
fn a_toilet_fills_where_the_place_has_none_and_is_emptied_where_that_is_possible() {
    let mut bags = value();
    bags["kit"].as_array_mut().unwrap().push(json!({ "id": 3, "quantity": 6, "toilet": { "way": "bags" } }));
    let held = report(&bags);
    assert_eq!((held.toilet_capacity_days, held.days[9].toilet_days), (5.0, 0.0), "every place has one");
    assert!(held.standing.cautions.contains(&Caution::ToiletWaste));
    bags["stays"][1]["offers"] = json!({});
    let just = report(&bags);
    assert_eq!(just.days.iter().map(|day| day.toilet_days).fold(0.0, f64::max), 5.0);
    assert!(!keys(&just).contains(&"water-toilet-full"));
    assert!((just.days[9].toilet_l - 0.6).abs() < 1e-9, "0.12 l each");
    bags["stays"][0]["offers"] = json!({});
    let full = report(&bags);
    assert!(full.standing.findings.contains(&Finding::ToiletFull { on: on(6), full_days: 5 }));
    assert_eq!((full.first.unwrap().vessel, full.lacks.toilet_days), (Vessel::Toilet, 5.0));
    bags["stays"][0]["offers"] = json!({ "toilet_emptying": true });
    assert!(!keys(&report(&bags)).contains(&"water-toilet-full"), "it is empty after the first stay");
}

#[test]
fn what_is_on_board_weighs_in_the_load_of_the_day() {
    let mut dry = value();
    dry["vehicle"] = json!({ "empty_mass_kg": 1_500, "gross_limit_kg": 2_500 });
    let before = assess(&plan(&dry), DAY).load;
    let toilet = json!({ "id": 3, "obtain": "owned", "mass_kg": 0, "toilet": { "way": "dry", "waste_l": 20 } });
    dry["kit"].as_array_mut().unwrap().push(toilet);
    dry["stays"][0]["offers"] = json!({});
    let after = assess(&plan(&dry), DAY).load;
    // 1.32 l a person and day.
    for (day, litres) in [(0, 1.32), (4, 6.6), (9, 6.6)] {
        let more_kg = after.days[day].water_kg - before.days[day].water_kg;
        assert!((more_kg - litres * 0.998_21).abs() < 1e-6, "{more_kg}");
    }
}

#[test]
fn without_a_toilet_the_days_that_rely_on_others_are_counted() {
    let all = report(&value());
    assert_eq!((all.toilets.days, all.toilets.public_days, all.toilets.without), (10, 10, None));
    assert!(!keys(&all).contains(&"water-no-toilet"));
    let mut none = value();
    none["stays"][1]["offers"] = json!({});
    let told = report(&none);
    let without = told.toilets.without.unwrap();
    assert_eq!((without.from, without.days, without.hours), (on(6), 5, 120));
    assert!(told.standing.findings.contains(&Finding::NoToilet { from: on(6), in_a_row: 5, days: 5 }));
    // Portable, dry, bags, and none: each with its cost; bags at 0.60, 1.2 a day, 30.436875 days.
    let costs: Vec<String> = told.toilets.ways.iter().map(|way| way.cost_a_month.unwrap().to_string()).collect();
    assert_eq!(costs, ["7.65", "2.58", "21.91", "91.31"]);
    none["currency"] = json!("JPY");
    assert!(report(&none).toilets.ways.iter().all(|way| way.cost_a_month.is_none()), "rough prices are in euro");
    none["kit"].as_array_mut().unwrap().push(json!({
        "id": 3, "obtain": "bought", "unit_price": "72", "toilet": { "waste_l": 28.2, "lasts_months": 36, "each_time": "1" },
    }));
    none["currency"] = json!("EUR");
    let own = report(&none);
    // 28.2 l are ten days of 2.82 l: 72 over 36 months, and 3.0436875 emptyings.
    assert_eq!((own.toilets.own, own.toilets.ways[0].cost_a_month.unwrap().to_string()), (1, "5.04".to_owned()));
    assert!((own.toilet_capacity_days - 10.0).abs() < 1e-9 && !keys(&own).contains(&"water-no-toilet"));
}

#[test]
fn boiling_and_filters_say_what_they_take_and_when_they_are_done() {
    let treated =
        |way: &str| with("water_uses", json!([{ "id": 8, "litres_per_day": 3, "per": "van", "treated": way }]));
    let cold = report(&treated("boiled"));
    assert_eq!(keys(&cold), ["water-nothing-boils"]);
    assert_eq!((cold.standing.verdict, cold.treatment.boiled.unwrap().by), (Verdict::Tight, None));
    assert!(cold.standing.cautions.contains(&Caution::WaterTreated));
    let mut kettle = treated("boiled");
    let draw = json!({ "power_w": 1_000, "works": "heating", "heat_percent": 100, "vessel_kg": 0, "heats_from_c": 15 });
    kettle["kit"].as_array_mut().unwrap().push(json!({ "id": 3, "obtain": "owned", "draw": draw }));
    let boiled = report(&kettle).treatment.boiled.unwrap();
    // 98.8 Wh a litre from 15 °C, and a minute of 1,000 W.
    assert!((boiled.energy_wh - (3.0 * 98.8 + 16.7)).abs() < 1.0, "{}", boiled.energy_wh);
    assert!((boiled.minutes.unwrap() - boiled.energy_wh * 0.06).abs() < 1e-9 && boiled.by == Some(3));
    let mut stove = treated("boiled");
    stove["kit"].as_array_mut().unwrap().push(json!({ "id": 3, "obtain": "owned", "burner": { "heat_w": 2_000 } }));
    assert_eq!(report(&stove).treatment.boiled.unwrap().by, Some(3));
    assert!(keys(&report(&stove)).is_empty());

    assert_eq!(keys(&report(&treated("filtered"))), ["water-no-filter"]);
    let filter = |life_l: f64| {
        let mut value = treated("filtered");
        value["kit"].as_array_mut().unwrap().push(json!({ "id": 3, "obtain": "owned", "filters_l": life_l }));
        report(&value)
    };
    let enough = filter(30.0);
    assert_eq!((enough.treatment.filters[0].days, enough.treatment.filters[0].needed), (Some(10.0), 1));
    assert!(keys(&enough).is_empty());
    let short = filter(12.0);
    assert_eq!((short.treatment.filters[0].needed, short.treatment.filters_done_on), (3, Some(on(5))));
    assert!(short.standing.findings.contains(&Finding::FiltersDone { on: on(5), litres_per_day: 3.0 }));
}

#[test]
fn frost_names_what_may_freeze_from_the_hours_on_that_it_takes() {
    let mut all = value();
    all["kit"].as_array_mut().unwrap().push(json!({ "id": 3, "obtain": "owned", "filters_l": 900 }));
    all["placements"] = json!([{ "id": 20, "thing": 2, "level": "outside" }]);
    let plan = plan(&all);
    let (timeline, run) = (Timeline::new(&plan, DAY), walk(&plan, DAY, &Timeline::new(&plan, DAY)));
    let told = |inside_h: f64, outside_h: f64| {
        let hours = |most: f64| (0..10).map(|day| if day == 2 { most } else { 0.0 }).collect::<Vec<_>>();
        let frost = Frost {
            inside_h: hours(inside_h),
            outside_h: hours(outside_h),
            coldest_inside_c: Some(-1.0),
            coldest_outside_c: Some(-8.0),
        };
        let report = water::report(&plan, DAY, &timeline, &run.supply, run.water.clone(), &frost);
        keys(&report).into_iter().filter(|key| key.contains("freeze")).collect::<Vec<_>>()
    };
    assert!(told(0.9, 3.9).is_empty());
    assert_eq!(told(1.0, 4.0), ["water-tank-freezes", "water-filter-freezes"]);
    assert_eq!(told(4.0, 0.0), ["water-cans-freeze", "water-filter-freezes"]);
}

#[test]
fn a_count_on_the_day_asked_is_what_the_answers_begin_with() {
    let mut counted = value();
    counted["readings"] = json!([{ "id": 30, "on": "2027-04-01", "hour": 20, "fresh_l": 12, "grey_l": 0 }]);
    let report = report(&counted);
    // 12 l last two days after the evening of the first: the fourth is short.
    assert_eq!((report.first.unwrap().on, report.spacing.first_by), (on(4), Some(on(4))));
    assert_eq!(report.lacks.fresh_l, 42.0); // nine days of 6, less 12
}

#[test]
fn each_can_is_told_when_it_is_empty_and_each_tank_when_it_is_full() {
    let mut two = value();
    two["kit"] = json!([
        { "id": 1, "obtain": "owned", "tank": { "capacity_l": 12 } },
        { "id": 3, "obtain": "owned", "quantity": 2, "tank": { "capacity_l": 20 } },
        { "id": 2, "obtain": "owned", "tank": { "capacity_l": 9, "holds": "grey" } },
    ]);
    let outlook = Outlook::from_plain(&asked(plan(&two), Subject::Water)).unwrap();
    // 12 l are two days of 6 l, 40 l more last until the ninth day; 9 l are three days of 3 l.
    let done: Vec<_> = outlook.cans.iter().map(|can| (can.item, can.done_on)).collect();
    assert_eq!(done, [(1, Some(on(2))), (3, Some(on(9))), (2, Some(on(3)))]);
}

/// Whatever the usual uses are, each is a use that the plan takes as it is.
#[test]
fn every_usual_use_is_taken_by_a_plan_and_can_be_taken_back() {
    let mut plan = plan(&value());
    let before = plan.clone();
    for need in NEEDS {
        let entry = need.to_use(plan.next_id(), need.key.to_owned()).to_plain();
        let list = kerbstead_core::plan::List::WaterUses;
        let back = Edit::Insert { list, at: usize::MAX, entry }.apply(&mut plan).unwrap();
        assert!(kerbstead_core::plan::validate(&plan).is_empty(), "{}", need.key);
        back.apply(&mut plan).unwrap();
    }
    assert_eq!(plan, before);
}

#[test]
fn absurd_litres_are_a_problem_at_their_field_and_leave_the_plan_as_it_is() {
    for (path, value) in [
        ("kit/1/tank/capacity_l", json!("much")),
        ("water_uses/8/times_per_week", json!("often")),
        ("kit/1/filters_l", json!(true)),
    ] {
        let mut plan = plan(&self::value());
        let before = plan.clone();
        assert!(Edit::Set { path: path.into(), value }.apply(&mut plan).is_err(), "{path}");
        assert_eq!(plan, before);
    }
    for (path, value) in [
        ("kit/1/tank/capacity_l", json!(-4.0)),
        ("water_uses/8/times_per_week", json!(1e9)),
        ("kit/1/filters_l", json!(0.0)),
    ] {
        let mut plan = plan(&self::value());
        Edit::Set { path: path.into(), value }.apply(&mut plan).unwrap();
        let problems = kerbstead_core::plan::validate(&plan);
        assert!(problems.iter().any(|problem| problem.path == path.into()), "{path}");
        assert!(assess(&plan, DAY).water.use_l_per_day.is_finite());
    }
}
