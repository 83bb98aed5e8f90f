//! How the numbers of data and hours of work came about.

use super::hours::Cause;
use super::input::in_gb;
use super::report::{Ahead, Report};
use super::work::AtRisk;
use crate::explain::{Figure, Source, Working};
use crate::plan::{Plan, Quantity};

/// The month in which most is used, the evening on which least is left, and the pay of the hours that lack something.
pub(super) fn working(plan: &Plan, ahead: &Ahead, report: &Report) -> Vec<Working> {
    let gb = |value: f64| Figure::of(value, Quantity::DataGb);
    let mut working = Vec::new();
    if let Some(month) = &report.busiest {
        let [low, likely, high] = month.gb;
        working.push(Working {
            formula: "working-signal-month",
            figures: vec![
                ("from", Figure::Date(month.from)),
                ("days", Figure::of(f64::from(month.days), Quantity::Days)),
                ("uses", Figure::count(plan.data_uses.len())),
                ("low", gb(low)),
                ("likely", gb(likely)),
                ("high", gb(high)),
            ],
            source: Source::CommonPractice,
        });
    }
    let has_contract = report.periods.iter().any(|period| period.allowance_gb.is_some());
    if let Some((on, left_mb)) = ahead.least_left.filter(|_| has_contract && report.busiest.is_some()) {
        working.push(Working {
            formula: "working-signal-left",
            figures: vec![("on", Figure::Date(on)), ("left", gb(in_gb(left_mb)))],
            source: Source::Arithmetic,
        });
    }
    working.extend(report.work.as_ref().and_then(|work| of_pay(plan, work)));
    working
}

fn of_pay(plan: &Plan, work: &AtRisk) -> Option<Working> {
    let pay_per_hour = plan.work.pay_per_hour?;
    let hours = |hours: f64| Figure::of(hours, Quantity::Hours);
    Some(Working {
        formula: "working-signal-pay",
        figures: vec![
            ("lost", hours(work.lost_hours())),
            ("unknown_hours", hours(work.hours(Cause::Unknown))),
            ("wanted", hours(work.wanted_hours)),
            ("pay", Figure::Money(pay_per_hour)),
            ("certain", Figure::Money(work.certain)),
            ("unknown", Figure::Money(work.unknown)),
        ],
        source: Source::Arithmetic,
    })
}
