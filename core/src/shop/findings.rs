//! What there is to say about a thing on a shelf.

use jiff::civil::Date;
use serde::Serialize;

use super::pack::{Comparison, UnitPrice};
use super::report::{Report, RunOut, margins};
use crate::assessment::{Assessment, Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, Money, Quantity, days_between};

/// Something to say, the most telling first.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// The days on the road that the price would pay for.
    RoadDays {
        /// The days.
        days: f64,
    },
    /// The plan knows of nothing that a day on the road costs.
    NoRoadCost,
    /// When the cash falls below the floor.
    RunOut(RunOut),
    /// The lowest day of the cash.
    Lowest {
        /// The day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// Its cash.
        lowest: Money,
        /// Its cash without the thing.
        before: Money,
        /// Above the floor; negative below.
        margin: Money,
    },
    /// Nobody has counted the cash, or the plan is over.
    CashNotKnown,
    /// What a unit costs.
    UnitPrice(UnitPrice),
    /// What a unit of the other offer costs.
    OtherUnitPrice(UnitPrice),
    /// Which offer is cheaper.
    Compared(Comparison),
    /// What the heading costs with it.
    Group {
        /// Foreseen without it.
        foreseen: Money,
        /// Foreseen with it.
        with: Money,
        /// Paid, without it.
        paid: Money,
        /// Still to pay then.
        left: Money,
    },
    /// The margin of the power moves.
    Power {
        /// Without it.
        before: Figure,
        /// With it.
        after: Figure,
    },
    /// The margin of the water moves.
    Water {
        /// Without it.
        before: Figure,
        /// With it.
        after: Figure,
    },
    /// It weighs something.
    Mass {
        /// All of it.
        mass_kg: f64,
        /// All things of known mass with it.
        carried_kg: f64,
    },
    /// It takes room.
    Volume {
        /// As a box.
        volume_l: f64,
    },
}

/// Everything there is to say of a report whose numbers are there.
pub(super) fn findings(report: &Report, before: &Assessment, after: &Assessment) -> Vec<Finding> {
    let mut findings = vec![report.road_days.map_or(Finding::NoRoadCost, |days| Finding::RoadDays { days })];
    if let Some(cash) = report.cash {
        findings.push(Finding::RunOut(report.run_out));
        findings.push(Finding::Lowest { on: cash.on, lowest: cash.after, before: cash.before, margin: cash.margin });
    } else {
        findings.push(Finding::CashNotKnown);
    }
    findings.extend(report.comparison.map(Finding::Compared));
    findings.extend(report.unit_price.map(Finding::UnitPrice));
    findings.extend(report.other_unit_price.map(Finding::OtherUnitPrice));
    let group = report.group;
    findings.push(Finding::Group {
        foreseen: group.foreseen,
        with: group.foreseen_with,
        paid: group.paid,
        left: group.left_with,
    });
    let moved = margins(before.power.standing.margin, after.power.standing.margin);
    findings.extend(moved.map(|(before, after)| Finding::Power { before, after }));
    let moved = margins(before.water.standing.margin, after.water.standing.margin);
    findings.extend(moved.map(|(before, after)| Finding::Water { before, after }));
    let carried_kg = report.load.carried_kg;
    findings.extend(report.load.mass_kg.map(|mass_kg| Finding::Mass { mass_kg, carried_kg }));
    findings.extend(report.load.volume_l.map(|volume_l| Finding::Volume { volume_l }));
    findings
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::RoadDays { .. } => "shop-road-days",
            Self::NoRoadCost => "shop-no-road-cost",
            Self::RunOut(run_out) => run_out_key(run_out),
            Self::Lowest { margin, .. } if margin.is_negative() => "shop-lowest-below",
            Self::Lowest { .. } => "shop-lowest",
            Self::CashNotKnown => "shop-cash-not-known",
            Self::UnitPrice(_) => "shop-unit-price",
            Self::OtherUnitPrice(_) => "shop-other-unit-price",
            Self::Compared(Comparison::First { .. }) => "shop-first-cheaper",
            Self::Compared(Comparison::Second { .. }) => "shop-second-cheaper",
            Self::Compared(Comparison::Same) => "shop-same-price",
            Self::Compared(Comparison::NotAlike) => "shop-not-alike",
            Self::Group { .. } => "shop-group",
            Self::Power { .. } => "shop-power-moves",
            Self::Water { .. } => "shop-water-moves",
            Self::Mass { .. } => "shop-mass",
            Self::Volume { .. } => "shop-volume",
        }
    }

    fn figures(&self) -> Figures {
        match self {
            Self::NoRoadCost | Self::CashNotKnown | Self::Compared(Comparison::Same | Comparison::NotAlike) => vec![],
            Self::RoadDays { days } => vec![("days", Figure::of(*days, Quantity::Days))],
            Self::RunOut(run_out) => run_out_figures(run_out),
            Self::Lowest { on, lowest, before, margin } => vec![
                ("on", Figure::Date(*on)),
                ("lowest", Figure::Money(*lowest)),
                ("before", Figure::Money(*before)),
                ("margin", Figure::Money(if margin.is_negative() { -*margin } else { *margin })),
            ],
            Self::UnitPrice(unit) | Self::OtherUnitPrice(unit) => {
                vec![("price", Figure::Each { price: unit.price, quantity: unit.quantity })]
            }
            Self::Compared(Comparison::First { percent, saved } | Comparison::Second { percent, saved }) => {
                vec![("percent", Figure::of(*percent, Quantity::Percent)), ("saved", Figure::Money(*saved))]
            }
            Self::Group { foreseen, with, paid, left } => vec![
                ("foreseen", Figure::Money(*foreseen)),
                ("with", Figure::Money(*with)),
                ("paid", Figure::Money(*paid)),
                ("left", Figure::Money(*left)),
            ],
            Self::Power { before, after } | Self::Water { before, after } => {
                vec![("before", before.clone()), ("after", after.clone())]
            }
            Self::Mass { mass_kg, carried_kg } => vec![
                ("mass", Figure::of(*mass_kg, Quantity::MassKg)),
                ("carried", Figure::of(*carried_kg, Quantity::MassKg)),
            ],
            Self::Volume { volume_l } => vec![("volume", Figure::of(*volume_l, Quantity::VolumeL))],
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        None
    }

    fn severity(&self) -> Severity {
        match self {
            Self::Lowest { margin, .. } if margin.is_negative() => Severity::Short,
            Self::RunOut(RunOut { after: Some(_), .. }) => Severity::Short,
            _ => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        None
    }
}

fn run_out_key(run_out: &RunOut) -> &'static str {
    match (run_out.before, run_out.after) {
        (Some(before), Some(after)) if before == after => "shop-runs-out-the-same",
        (Some(before), Some(after)) if after < before => "shop-runs-out-earlier",
        (Some(_), Some(_)) => "shop-runs-out-later",
        (None, Some(_)) => "shop-runs-out-now",
        (Some(_), None) => "shop-runs-out-no-longer",
        (None, None) if run_out.days_beyond.is_some() => "shop-never-runs-out-days",
        (None, None) => "shop-never-runs-out",
    }
}

fn run_out_figures(run_out: &RunOut) -> Figures {
    let date = |name, date: Option<Date>| date.map(|date| (name, Figure::Date(date)));
    let days = |days: f64| ("days", Figure::of(days, Quantity::Days));
    let apart = run_out.before.zip(run_out.after).map(|(before, after)| f64::from(days_between(before, after).abs()));
    let mut figures: Figures = vec![("ends", Figure::Date(run_out.ends_on)), ("left", Figure::Money(run_out.left))];
    figures.extend(date("before", run_out.before));
    figures.extend(date("after", run_out.after));
    figures.extend(apart.or(run_out.days_beyond).map(days));
    figures
}
