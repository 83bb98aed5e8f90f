//! Wishes, earned: what was missed on how many days, for what it would cost; and what was not missed or never used.

use jiff::civil::Date;

use super::constants::{UNMISSED_AFTER_DAYS, UNUSED_AFTER_DAYS, USUAL_WORTH};
use crate::order;
use crate::plan::civil::day_key;
use crate::plan::{Group, Id, Money, Need, Obtain, Plan, Reading};

/// The wishes of a plan by what they have earned, and what turned out not to be needed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Earned {
    /// Days on which anything was logged.
    pub logged_days: usize,
    /// Wishes, the most earned first.
    pub wishes: Vec<EarnedWish>,
    /// Things left out, and wishes, that were not missed on any logged day, once there are enough of them.
    pub not_missed: Vec<Id>,
    /// Things that are carried and no must, and were never used, once there are enough logged days and anything was said to
    /// be used at all.
    pub never_used: Vec<Id>,
}

/// What a wish has earned.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct EarnedWish {
    /// The wish.
    pub id: Id,
    /// Days on which it was missed, each once.
    pub missed_days: usize,
    /// Of a hundred logged days.
    pub missed_percent: f64,
    /// How much a day without it matters, 1 to 9.
    pub worth: u32,
    /// What it would cost.
    pub would_cost: Option<Money>,
    /// What it is ranked by: missed days for each logged day, by its worth, over its cost; over what an average day on the road
    /// costs where nobody says what it would.
    pub score: f64,
}

/// Ranks the wishes of a plan as logged up to a day. `a_day` is what a day on the road costs.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::{Money, Plan, Reading, Wish};
/// use kerbstead_core::road_log::earned;
/// let on = |day, missed| Reading { id: day as u32, on: Some(date(2027, 5, day)), missed, ..Reading::default() };
/// let plan = Plan {
///     wishes: vec![Wish { id: 90, name: "Shower".into(), would_cost: Some(Money::whole(40)), ..Wish::default() }],
///     readings: vec![on(1, Some(90)), on(2, None), on(3, Some(90)), on(4, None)],
///     ..Plan::default()
/// };
/// let earned = earned(&plan, date(2027, 5, 4), Money::whole(20));
/// assert_eq!((earned.logged_days, earned.wishes[0].missed_days), (4, 2));
/// assert!((earned.wishes[0].score - 2.0 / 4.0 * 5.0 / 40.0).abs() < 1e-12);
/// ```
pub fn earned(plan: &Plan, as_of: Date, a_day: Money) -> Earned {
    let logged = logged(plan, as_of);
    let logged_days = days_of(&logged, |_| true);
    let mut wishes: Vec<EarnedWish> = plan
        .wishes
        .iter()
        .map(|wish| {
            let missed_days = days_of(&logged, |reading| reading.missed == Some(wish.id));
            let share = missed_days as f64 / logged_days.max(1) as f64;
            let worth = wish.worth.unwrap_or(USUAL_WORTH).clamp(1, 9);
            let cost = wish.would_cost.unwrap_or(a_day).to_plot().max(1.0);
            EarnedWish {
                id: wish.id,
                missed_days,
                missed_percent: share * 100.0,
                worth,
                would_cost: wish.would_cost,
                score: share * f64::from(worth) / cost,
            }
        })
        .collect();
    wishes.sort_by(|a, b| b.score.total_cmp(&a.score));
    let is_enough = logged_days >= UNMISSED_AFTER_DAYS;
    let unmissed = wishes.iter().filter(|wish| is_enough && wish.missed_days == 0).map(|wish| wish.id);
    let stand_for: Vec<Id> = plan.wishes.iter().filter_map(|wish| wish.thing).collect();
    let left_out = plan.kit.iter().filter(|item| item.obtain == Obtain::LeftOut && !stand_for.contains(&item.id));
    let not_missed = unmissed.chain(left_out.filter(|_| is_enough).map(|item| item.id)).collect();
    Earned { logged_days, not_missed, never_used: never_used(plan, &logged, logged_days), wishes }
}

/// On how many days anything was logged.
pub(super) fn logged_days(plan: &Plan, as_of: Date) -> usize {
    days_of(&logged(plan, as_of), |_| true)
}

fn logged(plan: &Plan, as_of: Date) -> Vec<&Reading> {
    plan.readings.iter().filter(|reading| reading.on.is_some_and(|on| on <= as_of)).collect()
}

/// On how many days, each once.
fn days_of(logged: &[&Reading], counts: impl Fn(&Reading) -> bool) -> usize {
    let days = logged.iter().filter(|reading| counts(reading)).filter_map(|reading| reading.on);
    let mut days: Vec<u64> = order::sorted(days.map(day_key)).into_iter().map(|(day, _)| day).collect();
    days.dedup();
    days.len()
}

fn never_used(plan: &Plan, logged: &[&Reading], logged_days: usize) -> Vec<Id> {
    let used: Vec<Id> = logged.iter().filter_map(|reading| reading.used).collect();
    if used.is_empty() || logged_days < UNUSED_AFTER_DAYS {
        return Vec::new();
    }
    let is_to_be_used = |group: Group| !matches!(group, Group::Structure | Group::Safety | Group::Vehicle);
    let wants = plan.carried().filter(|item| item.need != Need::Must && is_to_be_used(item.group));
    wants.filter(|item| !used.contains(&item.id)).map(|item| item.id).collect()
}
