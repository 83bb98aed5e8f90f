//! What there is to say about data and hours of work.

use jiff::civil::Date;
use serde::Serialize;

use super::hours::Cause;
use super::input::{Input, in_gb};
use super::report::{Ahead, Report};
use super::work::{AtRisk, OfCause, OfPlace, powered};
use crate::assessment::{Moment, Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, List, Money, Plan, Quantity};

/// Something wrong, close or worth knowing about data and hours of work.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// Data is used and no contract is in use.
    NoContract {
        /// What is used in the month in which most is, in GB.
        month_gb: f64,
    },
    /// The allowances are used up, and nothing comes after them that would be of use.
    RunsOut {
        /// The first day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// What is missing until they begin anew, in GB.
        missing_gb: f64,
    },
    /// They are, if as much is used as may be.
    MayRunOut {
        /// The first day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// What would be missing until they begin anew, in GB.
        missing_gb: f64,
    },
    /// Some data comes through slowly only.
    SlowBeyond {
        /// The first day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// The slow rate.
        kbit_s: f64,
        /// For how many of the uses it is enough.
        serves: usize,
        /// How many uses there are.
        of: usize,
    },
    /// Some data is paid for beyond the allowances.
    PaidBeyond {
        /// The first day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// What it comes to in all from the day asked on.
        amount: Money,
        /// What the dearest day costs.
        a_day: Money,
        /// The contract.
        contract: Id,
    },
    /// Other contracts of the list would do for less.
    CheaperSet {
        /// How much less they cost in the month in which most is used.
        saves: Money,
        /// The first of them.
        contract: Id,
        /// Their names.
        names: String,
    },
    /// Hours of work lack something.
    HoursLost {
        /// What.
        cause: Cause,
        /// How many.
        hours: f64,
        /// Their pay.
        pay: Money,
        /// The first day that has any.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// The place where most of them are; 0 for none.
        place: Id,
        /// Whether that is a stay and no day of the week.
        is_stay: bool,
    },
    /// Hours of work are at places whose signal nobody stated, or of which something else is not known.
    HoursUnknown {
        /// How many.
        hours: f64,
        /// Their pay.
        pay: Money,
        /// At how many places.
        places: usize,
        /// The first day that has any.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// The place where most of them are; 0 for none.
        place: Id,
        /// Whether that is a stay and no day of the week.
        is_stay: bool,
    },
    /// There is work, and nothing that it needs draws any power.
    NothingPowered,
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::NoContract { .. } => "signal-no-contract",
            Self::RunsOut { .. } => "signal-runs-out",
            Self::MayRunOut { .. } => "signal-may-run-out",
            Self::SlowBeyond { serves, of, .. } if serves < of => "signal-slow-for-some",
            Self::SlowBeyond { .. } => "signal-slow-for-all",
            Self::PaidBeyond { .. } => "signal-paid-beyond",
            Self::CheaperSet { .. } => "signal-cheaper-set",
            Self::HoursLost { cause, .. } => match cause {
                Cause::NoSignal => "signal-hours-without-signal",
                Cause::WeakSignal => "signal-hours-weak",
                Cause::NoPower => "signal-hours-without-power",
                Cause::Unbearable | Cause::Unknown => "signal-hours-unbearable",
            },
            Self::HoursUnknown { .. } => "signal-hours-unknown",
            Self::NothingPowered => "signal-nothing-powered",
        }
    }

    fn figures(&self) -> Figures {
        let gb = |value: f64| Figure::of(value, Quantity::DataGb);
        let hours = |value: f64| Figure::of(value, Quantity::Hours);
        match self.clone() {
            Self::NoContract { month_gb } => vec![("month", gb(month_gb))],
            Self::RunsOut { on, missing_gb } | Self::MayRunOut { on, missing_gb } => {
                vec![("on", Figure::Date(on)), ("missing", gb(missing_gb))]
            }
            Self::SlowBeyond { on, kbit_s, serves, of } => vec![
                ("on", Figure::Date(on)),
                ("rate", Figure::of(kbit_s, Quantity::RateKbitS)),
                ("serves", Figure::count(serves)),
                ("of", Figure::count(of)),
            ],
            Self::PaidBeyond { on, amount, a_day, .. } => {
                vec![("on", Figure::Date(on)), ("amount", Figure::Money(amount)), ("day", Figure::Money(a_day))]
            }
            Self::CheaperSet { saves, names, .. } => {
                vec![("saves", Figure::Money(saves)), ("names", Figure::Name(names))]
            }
            Self::HoursLost { hours: lost, pay, on, .. } => {
                vec![("hours", hours(lost)), ("pay", Figure::Money(pay)), ("on", Figure::Date(on))]
            }
            Self::HoursUnknown { hours: unknown, pay, places, on, .. } => vec![
                ("hours", hours(unknown)),
                ("pay", Figure::Money(pay)),
                ("places", Figure::count(places)),
                ("on", Figure::Date(on)),
            ],
            Self::NothingPowered => Vec::new(),
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::NoContract { .. } => "next-signal-no-contract",
            Self::RunsOut { .. } | Self::MayRunOut { .. } => "next-signal-runs-out",
            Self::SlowBeyond { .. } => "next-signal-slow",
            Self::PaidBeyond { .. } => "next-signal-paid-beyond",
            Self::CheaperSet { .. } => "next-signal-cheaper-set",
            Self::HoursLost { cause, .. } => match cause {
                Cause::NoSignal | Cause::WeakSignal => "next-signal-hours-signal",
                Cause::NoPower => "next-signal-hours-power",
                Cause::Unbearable | Cause::Unknown => "next-signal-hours-unbearable",
            },
            Self::HoursUnknown { .. } => "next-signal-hours-unknown",
            Self::NothingPowered => "next-signal-nothing-powered",
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::NoContract { .. } | Self::RunsOut { .. } | Self::HoursLost { .. } => Severity::Short,
            Self::MayRunOut { .. } | Self::SlowBeyond { .. } | Self::PaidBeyond { .. } | Self::HoursUnknown { .. } => {
                Severity::Close
            }
            Self::CheaperSet { .. } | Self::NothingPowered => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::PaidBeyond { contract, .. } | Self::CheaperSet { contract, .. } => Some(*contract),
            Self::HoursLost { place, .. } | Self::HoursUnknown { place, .. } => Some(*place).filter(|place| *place > 0),
            _ => None,
        }
    }

    fn list(&self) -> List {
        match self {
            Self::HoursLost { is_stay: true, .. } | Self::HoursUnknown { is_stay: true, .. } => List::Stays,
            Self::HoursLost { .. } | Self::HoursUnknown { .. } => List::Week,
            _ => List::DataContracts,
        }
    }

    fn id(&self) -> String {
        match self {
            // The place with most hours may be another after any change.
            Self::HoursLost { .. } | Self::HoursUnknown { .. } => self.key().to_owned(),
            _ => self.id_by_subject(),
        }
    }
}

/// What there is to say about data.
pub(super) fn of_data(plan: &Plan, input: &Input, ahead: &Ahead, report: &Report) -> Vec<Finding> {
    let mut findings = Vec::new();
    let Some(busiest) = &report.busiest else { return findings };
    let [_, likely_gb, _] = busiest.gb;
    if input.meters.is_empty() {
        if likely_gb > 0.0 {
            findings.push(Finding::NoContract { month_gb: likely_gb });
        }
    } else if let Some((on, missing_mb)) = ahead.first_out {
        findings.push(Finding::RunsOut { on, missing_gb: in_gb(missing_mb) });
    } else if let Some((on, missing_mb)) = ahead.first_out_at_most {
        findings.push(Finding::MayRunOut { on, missing_gb: in_gb(missing_mb) });
    }
    let first_slow = ahead.days.iter().find(|(_, day)| day.slow_mb > 0);
    findings.extend(input.slow.zip(first_slow).map(|(slow, (on, _))| Finding::SlowBeyond {
        on: *on,
        kbit_s: slow.kbit_s,
        serves: slow.serves,
        of: slow.of,
    }));
    findings.extend(paid_beyond(ahead));
    findings.extend(cheaper_set(plan, report));
    findings
}

fn paid_beyond(ahead: &Ahead) -> Option<Finding> {
    let (on, contract, _) = *ahead.paid.first()?;
    Some(Finding::PaidBeyond {
        on,
        amount: ahead.paid.iter().map(|(.., amount)| *amount).sum(),
        a_day: ahead.paid.iter().map(|(.., amount)| *amount).max().unwrap_or(Money::ZERO),
        contract,
    })
}

fn cheaper_set(plan: &Plan, report: &Report) -> Option<Finding> {
    let cheapest = report.cheapest.as_ref()?;
    let in_use = cheapest.in_use.filter(|in_use| *in_use > cheapest.price)?;
    let names: Vec<&str> = cheapest.contracts.iter().filter_map(|id| plan.name_of(*id)).collect();
    let contract = *cheapest.contracts.first()?;
    Some(Finding::CheaperSet { saves: in_use - cheapest.price, contract, names: names.join(", ") })
}

/// What there is to say about hours of work.
pub(super) fn of_work(plan: &Plan, work: Option<&AtRisk>) -> Vec<Finding> {
    let Some(work) = work else { return Vec::new() };
    let at = |cause: Cause| {
        let hours_at = |of: &OfPlace| of.causes.iter().find(|lost| lost.cause == cause).map_or(0.0, |lost| lost.hours);
        let mut most = (0, 0.0);
        for of in &work.places {
            if hours_at(of) > most.1 {
                most = (of.place, hours_at(of));
            }
        }
        let is_there = |of: &&OfPlace| hours_at(of) > 0.0;
        (most.0, work.places.iter().filter(is_there).count())
    };
    let mut findings = Vec::new();
    for lost in &work.causes {
        let OfCause { cause, hours, pay, first_on: on } = *lost;
        let (place, places) = at(cause);
        let is_stay = plan.stays.iter().any(|stay| stay.id == place);
        findings.push(match cause {
            Cause::Unknown => Finding::HoursUnknown { hours, pay, places, on, place, is_stay },
            _ => Finding::HoursLost { cause, hours, pay, on, place, is_stay },
        });
    }
    if work.wanted_hours > 0.0 && powered(plan).next().is_none() {
        findings.push(Finding::NothingPowered);
    }
    findings
}

/// When something is first missing: the first day out of data, or the first hour of work that is lost.
pub(super) fn first_short(ahead: &Ahead, findings: &[Finding], work: Option<&AtRisk>) -> Option<Moment> {
    let is_out = findings.iter().any(|it| matches!(it, Finding::RunsOut { .. } | Finding::NoContract { .. }));
    let out = ahead.first_out.filter(|_| is_out).map(|(on, _)| Moment::day(on));
    out.into_iter().chain(work.and_then(|work| work.first_lost)).min()
}
