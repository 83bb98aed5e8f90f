//! What data and hours of work come to.

use jiff::civil::Date;
use serde::Serialize;

use super::course::{Course, DayOf};
use super::findings::{Finding, first_short, of_data, of_work};
use super::input::{Input, Which, in_gb};
use super::set::{Busiest, Cheapest, busiest, of_plan};
use super::work::{Around, AtRisk, at_risk};
use super::working::working;
use crate::assessment::{Margin, Standing, Verdict};
use crate::plan::{Id, Money, Path, Plan, add_days};
use crate::run::{Timeline, missing_road};

/// Data and hours of work of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on.
    pub standing: Standing<Finding>,
    /// Data by day of the road; empty where nothing takes data.
    pub days: Vec<DataDay>,
    /// The periods of the contracts in use, by their first day.
    pub periods: Vec<Period>,
    /// The month from the day of leaving on, or a month or more later, in which most data is used.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub busiest: Option<Busiest>,
    /// The cheapest contracts for that month.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cheapest: Option<Cheapest>,
    /// What the work lacks; none where nobody works.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub work: Option<AtRisk>,
}

/// A day's data, in GB.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DataDay {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// The least that is believable.
    pub low_gb: f64,
    /// The likely.
    pub likely_gb: f64,
    /// The most that is believable.
    pub high_gb: f64,
    /// What is left of the allowances in the evening by the likely use; none for as much as one likes, or without a contract.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left_gb: Option<f64>,
    /// What comes through slowly.
    pub slow_gb: f64,
    /// What is paid for beyond the allowances.
    pub paid_gb: f64,
    /// What there is no way for.
    pub missing_gb: f64,
}

/// A period of a contract in use.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Period {
    /// The contract.
    pub contract: Id,
    /// Its first day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub from: Date,
    /// What it includes, in GB; none for as much as one likes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub allowance_gb: Option<f64>,
    /// What of it is used by the likely use, in GB.
    pub used_gb: f64,
    /// What it costs.
    pub price: Money,
}

/// Judges data and hours of work from `as_of` on, beside what is around them.
pub fn report(plan: &Plan, as_of: Date, timeline: &Timeline, around: &Around) -> Report {
    let input = Input::new(plan, timeline);
    let course = input.course(Which::Likely);
    let work = at_risk(plan, as_of, timeline, around);
    let uses_data = !plan.data_uses.is_empty();
    let busiest = busiest(&input, as_of).filter(|_| uses_data);
    let cheapest = busiest.as_ref().and_then(|month| of_plan(plan, month));
    let mut report = Report {
        standing: Standing::unknown(missing(plan, as_of, timeline)),
        days: if uses_data { days(&input, &course) } else { Vec::new() },
        periods: periods(plan, &input, &course),
        busiest,
        cheapest,
        work,
    };
    if report.standing.missing.is_empty() {
        let ahead = Ahead::new(&input, &course, as_of, plan.minor_digits());
        report.standing = judge(plan, &input, &ahead, &report);
    }
    report
}

impl Report {
    /// The pay that is certainly not earned, day by day.
    pub fn unearned(&self) -> Vec<(Date, Money)> {
        self.work.as_ref().map(AtRisk::unearned).unwrap_or_default()
    }
}

/// What keeps it from being judged: nothing is said of data or work, or there is no road ahead.
fn missing(plan: &Plan, as_of: Date, timeline: &Timeline) -> Vec<Path> {
    if plan.data_uses.is_empty() && plan.work.work_hours.is_none() {
        return vec![Path::section("data_uses"), Path::section("work").child("work_hours")];
    }
    missing_road(plan, as_of, timeline)
}

/// The likely course from the day asked on.
pub(super) struct Ahead<'a> {
    /// Its days, with their dates.
    pub days: Vec<(Date, &'a DayOf)>,
    /// The first day on which data is missing, and how much is until allowances begin anew, in MB.
    pub first_out: Option<(Date, u64)>,
    /// The same of the most that is believable.
    pub first_out_at_most: Option<(Date, u64)>,
    /// The most that is missing between two days on which an allowance begins anew, in MB.
    pub worst_mb: u64,
    /// What is left on the evening on which least is, in MB; none for as much as one likes, or without a contract.
    pub least_left: Option<(Date, u64)>,
    /// What is paid beyond the allowances, day by day, with the contract.
    pub paid: Vec<(Date, Id, Money)>,
}

impl<'a> Ahead<'a> {
    fn new(input: &Input, course: &'a Course, as_of: Date, minor_digits: u32) -> Self {
        let days = ahead(input, course, as_of);
        let (first_out, worst_mb) = missing_mb(&days);
        let most = input.course(Which::High);
        let first_out_at_most = missing_mb(&ahead(input, &most, as_of)).0;
        let has_contract = !input.meters.is_empty();
        let left = days.iter().filter_map(|(on, day)| Some((*on, day.left_mb.filter(|_| has_contract)?)));
        let mut paid = input.paid_beyond(course, minor_digits);
        paid.retain(|(on, ..)| *on >= as_of);
        Self {
            paid,
            first_out,
            first_out_at_most,
            worst_mb,
            least_left: left.min_by_key(|(_, left_mb)| *left_mb),
            days,
        }
    }

    /// The margin, in GB: what is left on the evening on which least is, which with one contract is the end of its tightest
    /// period; nothing where data is slow or paid for; or, negative, what is missing: without a contract all of it.
    pub fn margin(&self) -> Option<Margin> {
        if self.worst_mb > 0 {
            return Some(Margin::Data(-in_gb(self.worst_mb)));
        }
        self.least_left.map(|(_, left_mb)| Margin::Data(in_gb(left_mb)))
    }
}

fn ahead<'a>(input: &Input, course: &'a Course, as_of: Date) -> Vec<(Date, &'a DayOf)> {
    input.days.iter().copied().zip(&course.days).filter(|(on, _)| *on >= as_of).collect()
}

/// The first day on which data is missing with how much is until allowances begin anew, and the most of that.
fn missing_mb(days: &[(Date, &DayOf)]) -> (Option<(Date, u64)>, u64) {
    let (mut first, mut worst_mb, mut sum_mb): (Option<(Date, u64)>, u64, u64) = (None, 0, 0);
    let mut is_first_period = false;
    for (on, day) in days {
        if day.renews {
            (sum_mb, is_first_period) = (0, false);
        }
        sum_mb = sum_mb.saturating_add(day.missing_mb);
        worst_mb = worst_mb.max(sum_mb);
        if day.missing_mb > 0 && first.is_none() {
            (first, is_first_period) = (Some((*on, 0)), true);
        }
        if let Some((_, missing_mb)) = first.as_mut().filter(|_| is_first_period) {
            *missing_mb = sum_mb;
        }
    }
    (first, worst_mb)
}

fn judge(plan: &Plan, input: &Input, ahead: &Ahead, report: &Report) -> Standing<Finding> {
    let mut findings = of_data(plan, input, ahead, report);
    findings.extend(of_work(plan, report.work.as_ref()));
    let margin = ahead.margin().filter(|_| !plan.data_uses.is_empty());
    Standing {
        verdict: Verdict::by_worst(&findings),
        margin,
        first_short: first_short(ahead, &findings, report.work.as_ref()),
        missing: Vec::new(),
        working: working(plan, ahead, report),
        findings,
        cautions: Vec::new(),
    }
}

fn days(input: &Input, course: &Course) -> Vec<DataDay> {
    let [low, likely, high] = &input.mb_by_day;
    let of_use = low.iter().zip(likely).zip(high);
    let days = input.days.iter().zip(&course.days).zip(of_use);
    days.map(|((on, day), ((low, likely), high))| DataDay {
        on: *on,
        low_gb: in_gb(*low),
        likely_gb: in_gb(*likely),
        high_gb: in_gb(*high),
        left_gb: day.left_mb.filter(|_| !input.meters.is_empty()).map(in_gb),
        slow_gb: in_gb(day.slow_mb),
        paid_gb: in_gb(day.paid_mb),
        missing_gb: in_gb(day.missing_mb),
    })
    .collect()
}

fn periods(plan: &Plan, input: &Input, course: &Course) -> Vec<Period> {
    let Some(first) = input.days.first() else { return Vec::new() };
    let of = |period: &super::course::Period| {
        let id = *input.contracts.get(period.meter)?;
        let contract = plan.data_contracts.iter().find(|contract| contract.id == id)?;
        Some(Period {
            contract: id,
            from: add_days(*first, i32::try_from(period.from_day).ok()?)?,
            allowance_gb: input.meters.get(period.meter)?.allowance_mb.map(in_gb),
            used_gb: in_gb(period.used_mb),
            price: contract.period_price.unwrap_or(Money::ZERO),
        })
    };
    course.periods.iter().filter_map(of).collect()
}
