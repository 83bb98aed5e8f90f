//! What must hold for the assessment of every plan.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

use jiff::civil::Date;
use kerbstead_core::energy::run::Walk;
use kerbstead_core::money::Instalment;
use kerbstead_core::plan::{Money, Plan, Reading};
use kerbstead_core::run::{Timeline, walk};
use kerbstead_core::{Assessment, assess};
use kerbstead_tests::generate::{Taste, cases, days, file_plans, native_plans};
use proptest::prelude::*;
use serde_json::Value;

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_plan_makes_it_panic_or_give_a_value_that_is_no_number(plan in native_plans(), as_of in days(Taste::Extreme)) {
        let json = serde_json::to_value(assess(&plan, as_of)).unwrap();
        check_values(&json, "");
    }

    #[test]
    fn no_file_makes_it_panic_or_give_a_value_that_is_no_number(plan in file_plans(), as_of in days(Taste::Extreme)) {
        let json = serde_json::to_value(assess(&plan, as_of)).unwrap();
        check_values(&json, "");
    }

    #[test]
    fn the_same_plan_gives_the_same_assessment((plan, as_of) in cases()) {
        let first = assess(&plan, as_of);
        prop_assert_eq!(first.digest(), assess(&plan.clone(), as_of).digest());
        prop_assert_eq!(first, assess(&plan, as_of));
    }

    #[test]
    fn what_is_not_counted_on_a_day_changes_nothing((plan, as_of) in cases()) {
        let mut renamed = plan.clone();
        renamed.kit.iter_mut().for_each(|item| item.note = "written on the way".into());
        renamed.guesses.retain(|_| false);
        prop_assert_eq!(assess(&plan, as_of).digest(), assess(&renamed, as_of).digest());
    }

    #[test]
    fn cash_is_conserved_every_day_and_over_the_plan((plan, as_of) in cases()) {
        check_cash(&plan, &assess(&plan, as_of));
    }

    #[test]
    fn energy_is_conserved_every_hour(plan in file_plans(), as_of in days(Taste::Believable)) {
        check_energy(&plan, as_of);
    }

    #[test]
    fn energy_is_conserved_every_hour_even_with_numbers_no_file_holds(
        plan in native_plans(), as_of in days(Taste::Believable),
    ) {
        check_energy(&plan, as_of);
    }

    #[test]
    fn water_is_conserved_every_day(plan in native_plans(), as_of in days(Taste::Believable)) {
        check_water(&plan, as_of);
    }

    #[test]
    fn every_day_follows_the_one_before(plan in native_plans(), as_of in days(Taste::Extreme)) {
        let timeline = Timeline::new(&plan, as_of);
        prop_assert!(!timeline.days.is_empty());
        for pair in timeline.days.windows(2) {
            prop_assert_eq!(pair[0].date.tomorrow().ok(), Some(pair[1].date));
        }
        for (position, day) in timeline.days.iter().enumerate() {
            prop_assert_eq!(timeline.index_of(day.date), Some(position));
            prop_assert!((0.0..=24.0).contains(&day.drive_hours) && day.drive_km >= 0.0);
        }
    }
}

/// A number that is infinite or not a number is written as null; no value of an assessment is null otherwise. Nor is
/// an amount ever "-0".
fn check_values(value: &Value, path: &str) {
    match value {
        Value::Null => panic!("{path} is infinite or not a number"),
        Value::Object(fields) => fields.iter().for_each(|(name, value)| check_values(value, &format!("{path}/{name}"))),
        Value::Array(entries) => {
            entries.iter().enumerate().for_each(|(at, value)| check_values(value, &format!("{path}/{at}")));
        }
        Value::String(text) => {
            let is_minus_nothing =
                text.starts_with("-0") && text.parse::<Money>().is_ok_and(|money| money == Money::ZERO);
            assert!(!is_minus_nothing, "{path} is {text}");
        }
        Value::Bool(_) | Value::Number(_) => {}
    }
}

fn check_cash(plan: &Plan, assessment: &Assessment) {
    // Amounts far beyond any purse are cut off at the limits of a decimal; there is nothing to conserve there.
    let is_payable = |money: Money| money.decimal().abs() <= 1_000_000_000_000_i64.into();
    let days = &assessment.money.days;
    let flows = &assessment.money.flows;
    if !days.iter().all(|day| is_payable(day.opening)) || !flows.iter().all(|flow| is_payable(flow.amount)) {
        return;
    }
    let was_counted = |on: Date| plan.readings.iter().any(|reading| reading.on == Some(on) && reading.cash.is_some());
    for day in days {
        assert!(!day.inflow.is_negative() && !day.outflow.is_negative());
        assert_eq!(day.closing, day.opening + day.inflow - day.outflow, "{}", day.on);
        assert!(day.corrected == Money::ZERO || was_counted(day.on), "{}", day.on);
    }
    let mut counted_in_the_morning = Money::ZERO;
    for pair in days.windows(2) {
        let evening = pair[0].closing + pair[0].corrected;
        assert!(pair[1].opening == evening || was_counted(pair[1].on), "{}", pair[1].on);
        counted_in_the_morning += pair[1].opening - evening;
    }
    let (first, last) = (days.first().unwrap(), days.last().unwrap());
    let sum = |part: fn(&kerbstead_core::money::CashDay) -> Money| days.iter().map(part).sum::<Money>();
    let moved = sum(|day| day.inflow) - sum(|day| day.outflow);
    let corrected = sum(|day| day.corrected) + counted_in_the_morning;
    assert_eq!(last.closing + last.corrected, first.opening + moved + corrected);
    assert_eq!(moved, flows.iter().filter(|flow| flow.counts()).map(|flow| flow.amount).sum());
    check_loans(assessment);
    check_course(plan, assessment);
    let groups: Money = assessment.money.groups.iter().map(|group| group.foreseen).sum();
    assert_eq!(groups, flows.iter().map(|flow| flow.amount).sum());
}

/// What is needed brings the lowest day to the floor; the lines of a month make its sums; what is left of going home is
/// what there is less what is owed.
fn check_course(plan: &Plan, assessment: &Assessment) {
    let report = &assessment.money;
    let is_short = |lowest: &kerbstead_core::money::CashDay| lowest.closing < plan.purse.floor;
    if let Some(last) = report.needed.last() {
        assert_eq!(last.in_all, plan.purse.floor - report.lowest.unwrap().closing);
    } else {
        assert!(!report.standing.missing.is_empty() || !report.lowest.as_ref().is_some_and(is_short));
    }
    if let Some(month) = &report.month {
        assert_eq!(month.home, month.lines.iter().map(|line| line.home).sum());
        assert_eq!(month.road, month.lines.iter().map(|line| line.road).sum());
        assert_eq!(month.saved, month.home - month.road);
        assert!(month.days_to_pay_back.is_none() || month.saved > Money::ZERO);
    }
    if let Some(home) = &report.going_home {
        for day in &home.days {
            assert_eq!(day.left, day.cash + day.van + day.kit - day.owed - home.room);
        }
        let affordable = home.days.iter().take_while(|day| !day.left.is_negative()).last();
        assert_eq!(home.last_on, affordable.map(|day| day.on));
    }
}

/// What is paid of a loan is what was lent and the interest, and nothing is owed after the last payment.
fn check_loans(assessment: &Assessment) {
    let is_payable = |paid: &Instalment| paid.balance.decimal().abs() <= 1_000_000_000_000_i64.into();
    for loan in assessment.money.loans.iter().filter(|loan| loan.payments.iter().all(is_payable)) {
        let sum = |part: fn(&Instalment) -> Money| loan.payments.iter().map(part).sum::<Money>();
        assert_eq!(sum(|paid| paid.payment), sum(|paid| paid.principal) + sum(|paid| paid.interest));
        assert_eq!(sum(|paid| paid.interest), loan.interest);
        assert!(loan.payments.last().is_none_or(|last| last.balance == Money::ZERO));
        assert!(loan.payments.is_sorted_by_key(|paid| paid.on));
    }
}

/// What is in a store at the end of an hour is what was in it before, less what it lost, and what went in and out. Before is
/// the hour before, or the beginning, or what was read off.
fn check_energy(plan: &Plan, as_of: Date) {
    let timeline = Timeline::new(plan, as_of);
    let run = walk(plan, as_of, &timeline);
    let dates: Vec<Date> = timeline.road().map(|day| day.date).collect();
    let start = Walk::new(&run.hours.electrics.setup);
    let (full_wh, opening_wh) = (start.full_wh(), start.opening_wh());
    assert_eq!(run.hours.power.stores.len(), run.hours.electrics.stores.len());
    for (at, (item, course)) in run.hours.electrics.stores.iter().zip(&run.hours.power.stores).enumerate() {
        let (full, mut before) = (full_wh[at], opening_wh[at]);
        assert_eq!(course.hours.len(), dates.len() * 24);
        for (hour, flow) in course.hours.iter().enumerate() {
            let now = (Some(dates[hour / 24]), u32::try_from(hour % 24).unwrap());
            let is_read = |reading: &&Reading| {
                (reading.on, reading.hour) == now
                    && reading.on <= Some(as_of)
                    && reading.store.map_or(at == 0, |store| store == *item)
            };
            let read = plan.readings.iter().filter(is_read).filter_map(|reading| reading.charge_percent).next_back();
            if let Some(percent) = read {
                before = (full * (percent / 100.0).clamp(0.0, 1.0)).min(full);
            }
            let stated = || format!("store {item}, hour {hour}: {before} before, {flow:?}, {full}");
            let parts = [flow.charge_wh, flow.put_in_wh, flow.taken_out_wh, flow.lost_wh, flow.short_wh];
            assert!(parts.iter().all(|part| part.is_finite() && *part >= 0.0), "{}", stated());
            assert!(flow.charge_wh <= full && before <= full && before >= 0.0, "{}", stated());
            let error = before - flow.lost_wh + flow.put_in_wh - flow.taken_out_wh - flow.charge_wh;
            let throughput = before + flow.put_in_wh + flow.taken_out_wh;
            assert!(error.abs() <= 1e-9 * throughput.max(1e-3), "{} off by {error}", stated());
            before = flow.charge_wh;
        }
    }
    for store in assess(plan, as_of).power.stores {
        assert!((0.0..=dates.len() as f64 * 24.0).contains(&store.short_hours), "{}", store.short_hours);
        assert_eq!(store.first_short.is_some(), store.unserved_wh > 0.0);
    }
}

fn check_water(plan: &Plan, as_of: Date) {
    let timeline = Timeline::new(plan, as_of);
    let run = walk(plan, as_of, &timeline);
    let was_counted = |on: Date| {
        plan.readings
            .iter()
            .any(|reading| reading.on == Some(on) && (reading.fresh_l.is_some() || reading.grey_l.is_some()))
    };
    assert_eq!(run.water.days.len(), timeline.road().count());
    for day in &run.water.days {
        let water = [day.opening_l, day.filled_l, day.used_l, day.missing_l, day.fresh_l, day.grey_l, day.grey_over_l];
        let parts = water.into_iter().chain([day.toilet_days, day.toilet_over_days, day.toilet_l]).collect::<Vec<_>>();
        assert!(parts.iter().all(|part| part.is_finite() && *part >= 0.0), "{day:?}");
        let scale = (day.opening_l + day.filled_l + day.used_l).max(1.0);
        assert!((day.opening_l + day.filled_l - day.used_l - day.fresh_l).abs() <= 1e-9 * scale, "{day:?}");
        // Counted in whole millilitres; what is rounded on one day is made up for on the next.
        let asked_l = day.used_l + day.missing_l;
        let is_drunk = plan.water_uses.iter().any(|water_use| water_use.is_drunk);
        assert!(is_drunk || (asked_l - run.supply.use_l_per_day).abs() <= 0.001_001, "{day:?}");
        assert!(day.toilet_days <= run.supply.toilet_person_days, "{day:?}");
        assert!(day.fresh_l <= run.supply.fresh_capacity_l && day.grey_l <= run.supply.grey_capacity_l, "{day:?}");
    }
    for pair in run.water.days.windows(2) {
        let is_next = pair[1].opening_l.to_bits() == pair[0].fresh_l.to_bits();
        assert!(is_next || was_counted(pair[0].on) || was_counted(pair[1].on), "{pair:?}");
    }
}
