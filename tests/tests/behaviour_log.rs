//! What the road log says of a plan, each in a log worked out by hand; and a log that is wrong, or very long.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    clippy::cast_possible_truncation,
    clippy::cast_possible_wrap,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a test stops at what it did not expect, and means exact values where it says so"
)]

use jiff::civil::{Date, date};
use kerbstead_core::draws::Chance;
use kerbstead_core::plan::{
    Calendar, Cost, CostEvery, CostPhase, Draw, Edit, Estimate, Income, Item, Money, Need, Obtain, Offer, Outlet, Path,
    Plan, Purse, Reading, Slept, Stay, Store, Tank, WaterUse, Wish, Works, Wrong, add_days, validate,
};
use kerbstead_core::road_log::{What, Why, brief, earned, learned};
use kerbstead_core::{Verdict, assess};

const DAY: Date = date(2027, 5, 1);

fn on(number: i32) -> Option<Date> {
    add_days(DAY, number)
}

/// Sixty nights without a tap or a socket, two people who are to drink three litres a day each, 60 kg of cans.
fn trip() -> Plan {
    Plan {
        people: 2,
        calendar: Calendar { starts_on: Some(DAY), leaves_on: Some(DAY), ..Calendar::default() },
        stays: vec![Stay { id: 900, nights: 60, ..Stay::default() }],
        purse: Purse { opening_cash: Some(Money::whole(2_000)), ..Purse::default() },
        kit: vec![Item {
            id: 1,
            obtain: Obtain::Owned,
            tank: Some(Tank { capacity_l: 1_000.0, ..Tank::default() }),
            ..Item::default()
        }],
        water_uses: vec![WaterUse { id: 2, litres_per_day: 3.0.into(), ..WaterUse::default() }],
        costs: vec![Cost {
            id: 3,
            name: "Food".into(),
            amount: Some(Estimate::Range {
                low: Money::whole(200),
                likely: Money::whole(300),
                high: Money::whole(400),
            }),
            every: CostEvery::Month,
            phase: CostPhase::Road,
            ..Cost::default()
        }],
        ..Plan::default()
    }
}

fn counted(id: u32, day: i32, hour: u32) -> Reading {
    Reading { id, on: on(day), hour, ..Reading::default() }
}

fn corrected(plan: &Plan, edit: Edit) -> Plan {
    let mut plan = plan.clone();
    edit.apply(&mut plan).unwrap();
    plan
}

#[test]
fn litres_that_go_faster_than_planned_correct_the_litres_of_a_person() {
    // 9 litres a day instead of 6, every evening at eight for twelve days.
    let mut plan = trip();
    plan.readings = (0..12_u32)
        .map(|day| Reading { fresh_l: Some(900.0 - 9.0 * f64::from(day)), ..counted(100 + day, day as i32, 20) })
        .collect();
    let found = learned(&plan, on(12).unwrap());
    let water = found.iter().find(|one| one.what == What::Water).unwrap();
    assert_eq!((water.planned, water.used, water.gaps.len(), water.outliers.len()), (6.0, 11, 0, 0));
    assert!((water.mean - 9.0).abs() < 0.3, "{}", water.mean);
    assert!(water.low < 9.0 && 9.0 < water.high + 0.1 && water.low > 6.0, "{} to {}", water.low, water.high);
    let better = corrected(&plan, water.correction.clone().unwrap());
    let litres = better.water_uses[0].litres_per_day;
    assert!((litres.likely() - water.mean / 2.0).abs() < 0.01, "each of two people");
    assert!(litres.low() < litres.likely() && litres.likely() < litres.high(), "with what is not sure of it");
    let back = learned(&better, on(12).unwrap());
    let water = back.iter().find(|one| one.what == What::Water).unwrap();
    assert!(water.correction.is_none(), "corrected, it is right");
}

#[test]
fn a_tap_on_the_way_and_more_than_before_are_gaps_and_so_are_counts_too_far_apart() {
    let mut plan = trip();
    let tap = Stay { id: 901, nights: 1, offers: Offer { water: true, ..Offer::default() }, ..Stay::default() };
    plan.stays =
        vec![Stay { id: 900, nights: 5, ..Stay::default() }, tap, Stay { id: 902, nights: 40, ..Stay::default() }];
    let litres = |id, day, hour, litres| Reading { fresh_l: Some(litres), ..counted(id, day, hour) };
    plan.readings = vec![
        litres(10, 1, 20, 500.0),
        litres(11, 1, 21, 499.0),
        litres(12, 4, 20, 482.0),
        litres(13, 7, 20, 900.0),
        litres(14, 9, 20, 950.0),
        litres(15, 30, 20, 700.0),
    ];
    let found = learned(&plan, on(40).unwrap());
    let water = found.iter().find(|one| one.what == What::Water).unwrap();
    assert_eq!(water.used, 1);
    let whys: Vec<Why> = water.gaps.iter().map(|gap| gap.why).collect();
    assert_eq!(whys, [Why::TooShort, Why::Refilled, Why::Refilled, Why::TooLong]);
    assert!(water.correction.is_none(), "one stretch corrects nothing");
}

#[test]
fn a_day_on_which_the_water_was_spilled_is_named_and_left_out() {
    let mut plan = trip();
    let mut left = 950.0;
    for day in 0..14_u32 {
        left -= if day == 7 { 70.0 } else { 6.0 + f64::from(day % 3) * 0.4 };
        plan.readings.push(Reading { fresh_l: Some(left), ..counted(100 + day, day as i32, 20) });
    }
    let found = learned(&plan, on(14).unwrap());
    let water = found.iter().find(|one| one.what == What::Water).unwrap();
    assert_eq!(water.outliers.len(), 1);
    assert_eq!((Some(water.outliers[0].from), Some(water.outliers[0].to)), (on(6), on(7)));
    assert!((water.mean - 6.4).abs() < 0.3, "{}", water.mean);
}

#[test]
fn money_that_goes_is_held_against_what_was_planned_apart_from_wages_and_purchases() {
    // 300 a month are 9.86 a day; 15 go, and 400 came in between, as was planned.
    let mut plan = trip();
    plan.incomes = vec![Income { id: 4, amount: Some(Money::whole(400).into()), on: on(5), ..Income::default() }];
    let mut cash = 2_000;
    for day in 0..11_i32 {
        if day == 5 {
            cash += 400;
        }
        plan.readings.push(Reading { cash: Some(Money::whole(cash)), ..counted(100 + day as u32, day, 20) });
        cash -= 15;
    }
    plan.incomes[0].received_until = on(5);
    let found = learned(&plan, on(11).unwrap());
    let spent = found.iter().find(|one| one.what == What::Spending).unwrap();
    assert_eq!((spent.used, spent.outliers.len()), (10, 0));
    assert!((spent.mean - 15.0).abs() < 1.0, "{}", spent.mean);
    let better = corrected(&plan, spent.correction.clone().unwrap());
    let food = better.costs[0].amount.unwrap();
    let month = 365.2425 / 12.0;
    let wanted = 300.0 + (spent.mean - spent.planned) * month;
    assert!((food.likely().to_plot() - wanted).abs() < 0.01, "{} for {wanted}", food.likely());
}

#[test]
fn a_cool_box_that_takes_more_than_its_label_is_told_from_all_else() {
    // 240 Wh a day by its label and 40 Wh of a lamp, of 5,000 Wh: it takes half as much again.
    let mut plan = trip();
    let owned = |id| Item { id, name: format!("Thing {id}"), obtain: Obtain::Owned, ..Item::default() };
    plan.kit.extend([
        Item { store: Some(Store { usable_wh: 5_000.0, ..Store::default() }), ..owned(20) },
        Item {
            draw: Some(Draw {
                power_w: 40.0.into(),
                outlet: Outlet::Dc,
                works: Some(Works::Cooling),
                label_wh: Some(240.0),
                ..Draw::default()
            }),
            ..owned(21)
        },
        Item {
            draw: Some(Draw {
                power_w: 10.0.into(),
                outlet: Outlet::Dc,
                from_hour: Some(18.0),
                hours_per_day: Some(4.0.into()),
                ..Draw::default()
            }),
            ..owned(22)
        },
    ]);
    let planned = assess(&plan, on(0).unwrap()).power;
    let [cool_wh, lamp_wh] = [21, 22].map(|id| planned.draws.iter().find(|draw| draw.item == id).unwrap().wh_per_day);
    // Counted at six in the evening and at ten: what cools runs all the time, the lamp in these four hours.
    let mut charge = 5_000.0;
    for day in 0..10_i32 {
        for (hour, hours, lamp) in [(18, 20.0, 0.0), (22, 4.0, lamp_wh)] {
            charge -= 1.5 * cool_wh * hours / 24.0 + lamp;
            let percent = Some(charge / 50.0);
            let id = 100 + (day * 24 + hour) as u32;
            plan.readings.push(Reading { charge_percent: percent, ..counted(id, day, hour as u32) });
        }
    }
    let found = learned(&plan, on(10).unwrap());
    let cooling = found.iter().find(|one| one.what == What::Cooling).unwrap();
    let rest = found.iter().find(|one| one.what == What::OtherDraws).unwrap();
    assert!((cooling.mean / cooling.planned - 1.5).abs() < 0.1, "{} of {}", cooling.mean, cooling.planned);
    assert!((rest.mean / rest.planned - 1.0).abs() < 0.2, "{} of {}", rest.mean, rest.planned);
    let better = corrected(&plan, cooling.correction.clone().unwrap());
    let label = better.item(21).unwrap().draw.unwrap().label_wh.unwrap();
    assert!((label / 240.0 - cooling.mean / cooling.planned).abs() < 0.01);
}

#[test]
fn ways_that_nobody_planned_come_to_the_way() {
    let mut plan = trip();
    plan.readings = (0..10_u32)
        .map(|day| Reading {
            odometer_km: Some(90_000.0 + 12.0 * f64::from(day)),
            ..counted(100 + day, day as i32, 20)
        })
        .collect();
    let found = learned(&plan, on(10).unwrap());
    let driving = found.iter().find(|one| one.what == What::Driving).unwrap();
    assert!((driving.mean - 12.0).abs() < 1.5, "{}", driving.mean);
    let better = corrected(&plan, driving.correction.clone().unwrap());
    let km = better.stays[0].drive_km.unwrap();
    assert!((km.likely() - driving.mean * 60.0).abs() <= 0.5);
}

#[test]
fn wishes_rise_with_the_days_they_are_missed_and_their_worth_and_fall_with_their_price() {
    let mut plan = trip();
    let wish = |id, cost, worth| Wish {
        id,
        name: format!("Wish {id}"),
        would_cost: Some(Money::whole(cost)),
        worth: Some(worth),
        ..Wish::default()
    };
    plan.wishes = vec![wish(50, 100, 9), wish(51, 10, 3), wish(52, 5, 9)];
    plan.kit.push(Item { id: 60, obtain: Obtain::LeftOut, ..Item::default() });
    plan.kit.push(Item { id: 61, need: Need::Want, obtain: Obtain::Owned, ..Item::default() });
    plan.kit.push(Item { id: 62, need: Need::Want, obtain: Obtain::Owned, ..Item::default() });
    for day in 0..20_i32 {
        let id = 200 + 3 * day as u32;
        let missed = (day < 10).then_some(50);
        plan.readings.push(Reading { missed, slept: Some(Slept::Well), ..counted(id, day, 8) });
        plan.readings.push(Reading { missed: (day < 4).then_some(51), ..counted(id + 1, day, 20) });
        plan.readings.push(Reading { missed: (day < 4).then_some(51), ..counted(id + 2, day, 21) });
    }
    plan.readings[0].used = Some(61);
    let found = earned(&plan, on(20).unwrap(), Money::whole(10));
    assert_eq!(found.logged_days, 20);
    // 4 of 20 days x 3 / 10 = 0.06 before 10 of 20 x 9 / 100 = 0.045; twice on a day is once.
    let ranked: Vec<(u32, usize)> = found.wishes.iter().map(|wish| (wish.id, wish.missed_days)).collect();
    assert_eq!(ranked, [(51, 4), (50, 10), (52, 0)]);
    assert_eq!((found.not_missed, found.never_used.contains(&62)), (vec![52, 60], true));
    assert!(!found.never_used.contains(&61));
}

#[test]
fn the_next_build_is_briefed_by_what_was_counted() {
    let mut plan = trip();
    plan.readings = (0..12_u32)
        .map(|day| {
            let used = 8.0 * f64::from(day) + f64::from(day % 2);
            Reading {
                fresh_l: Some(900.0 - used),
                measured_c: Some(4.0 + f64::from(day)),
                ..counted(100 + day, day as i32, 20)
            }
        })
        .collect();
    let brief = brief(&plan, on(12).unwrap());
    let line = |key: &str| brief.lines.iter().find(|line| line.key == key);
    let water = line("brief-water").unwrap();
    assert!(water.is_logged);
    // 9 and 7 litres in turn: nine in ten are at most 9, for 60 days.
    let litres = water.figures.iter().find(|(name, _)| *name == "litres").unwrap().1.clone();
    assert_eq!(litres, kerbstead_core::explain::Figure::of(540.0, kerbstead_core::plan::Quantity::VolumeL));
    assert!(line("brief-warmth-measured").is_some());
    assert!(line("brief-money").is_some_and(|line| !line.is_logged), "no cash was counted");
    assert!(brief.cautions.contains(&kerbstead_core::Caution::LicensedTrades));
}

#[test]
fn counts_that_cannot_be_are_told_where_they_stand() {
    let mut plan = trip();
    plan.readings = vec![
        Reading { cash: Some(Money::whole(5)), odometer_km: Some(100.0), ..counted(10, 0, 9) },
        Reading { cash: Some(Money::whole(6)), ..counted(11, 0, 9) },
        Reading { odometer_km: Some(90.0), fresh_l: Some(1_001.0), charge_percent: Some(101.0), ..counted(12, 1, 9) },
    ];
    let wrong = |path: &str| {
        let path = Path::from(path);
        validate(&plan).into_iter().find(|problem| problem.path == path).map(|problem| problem.wrong)
    };
    assert_eq!(wrong("readings/11/cash"), Some(Wrong::CountedTwice { on: DAY, hour: 9 }));
    assert_eq!(wrong("readings/12/odometer_km"), Some(Wrong::OdometerBack { on: DAY, before_km: 100.0 }));
    assert_eq!(wrong("readings/12/fresh_l"), Some(Wrong::MoreThanFits { most_l: 1_000.0 }));
    assert!(matches!(wrong("readings/12/charge_percent"), Some(Wrong::OutOfRange { .. })));
    // It is assessed all the same, and of the counts of the morning the later one counts; then 300 are paid for food.
    let money = assess(&plan, on(1).unwrap()).money;
    assert_eq!(money.days[0].closing, Money::whole(6 - 300));
}

#[test]
fn a_log_of_ten_thousand_entries_is_worked_through() {
    let mut plan = trip();
    plan.stays[0].nights = 1_000;
    let mut chance = Chance::new(5);
    plan.readings = (0..10_000_u32)
        .map(|number| {
            let day = chance.below(1_000) as i32;
            Reading {
                fresh_l: Some(f64::from(chance.below(1_000))),
                charge_percent: Some(f64::from(chance.below(100))),
                cash: Some(Money::whole(i64::from(chance.below(2_000)))),
                ..counted(1_000 + number, day, chance.below(24))
            }
        })
        .collect();
    let as_of = on(1_000).unwrap();
    assert_ne!(assess(&plan, as_of).water.standing.verdict, Verdict::Holds);
    let found = learned(&plan, as_of);
    assert!(found.iter().any(|one| one.what == What::Spending && one.used > 1_000));
    assert!(!validate(&plan).is_empty());
}
