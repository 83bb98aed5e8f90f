//! The likelihoods of whole plans, of plans made by chance: that without anything uncertain they say what the verdicts say, and
//! that no plan makes them panic or give a number that is none.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::Date;
use kerbstead_core::chances::{Whole, WholeTask};
use kerbstead_core::plan::{Document, Plain, Plan};
use kerbstead_core::task::Task;
use kerbstead_core::{Balance, Verdict, assess};
use kerbstead_tests::generate::{Taste, cases, days, native_plans, seeded};
use serde_json::{Value, json};

fn answer(plan: &Plan, as_of: Date) -> Value {
    let mut task = WholeTask::new(plan, as_of, 1);
    while task.step() < 1.0 {}
    task.answer()
}

/// The plan with every range at what is likely, every sale sure, every day dry, no sun, and no store read on the day asked:
/// hours before a reading of that day are past for the runs, and judged by the verdict.
fn without_chance(plan: &Plan, as_of: Date) -> Plan {
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
    let mut plan = Document::from_value(file).unwrap().plan;
    let today = plan.readings.iter_mut().filter(|reading| reading.on == Some(as_of));
    today.for_each(|reading| reading.charge_percent = None);
    plan
}

#[test]
fn without_anything_uncertain_a_balance_holds_in_all_runs_or_in_none_as_its_verdict_says() {
    let mut reached = [[0; 4]; 8];
    let mut wrong = Vec::new();
    for (number, (plan, as_of)) in seeded(&cases(), 20_270_310, 400).into_iter().enumerate() {
        let plan = without_chance(&plan, as_of);
        let whole = Whole::from_plain(&answer(&plan, as_of)).unwrap();
        for (line, (balance, verdict)) in whole.balances.iter().zip(assess(&plan, as_of).verdicts()) {
            reached[balance as usize][verdict as usize] += 1;
            // Amounts beyond any purse are not drawn.
            let is_known = verdict != Verdict::Unknown && (line.is_known || balance != Balance::Money);
            let held = if verdict == Verdict::FallsShort || !is_known { 0 } else { whole.runs };
            if (line.balance, line.is_known, line.held) != (balance, is_known, held) {
                wrong.push((number, balance, verdict, line.is_known, line.held));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:?}");
    let [_, power, water, days, ..] = reached;
    assert!([power, water, days].iter().all(|of| of[Verdict::FallsShort as usize] > 10), "{reached:?}");
}

#[test]
fn no_plan_makes_them_panic_or_give_a_number_that_is_none() {
    let strategy = (native_plans(), days(Taste::Extreme));
    for (plan, as_of) in seeded(&strategy, 20_270_311, 150) {
        let answer = answer(&plan, as_of);
        check_values(&answer);
        let whole = Whole::from_plain(&answer).unwrap();
        assert!(whole.balances.iter().all(|line| line.held <= whole.runs && whole.all_hold <= whole.runs));
        assert_eq!(whole.balances.iter().map(|line| line.first_fails).sum::<u32>(), whole.runs - whole.all_hold);
    }
}

fn check_values(value: &Value) {
    match value {
        Value::Null => unreachable!("a number that is none"),
        Value::Object(fields) => fields.values().for_each(check_values),
        Value::Array(entries) => entries.iter().for_each(check_values),
        _ => {}
    }
}
