//! What a change does to every balance, and what it is worth.

use jiff::civil::Date;

use super::constants::{USUAL_DAY, trouble_days};
use super::{Candidate, Change};
use crate::assessment::{Again, Outcome, Outlined};
use crate::explain::{Figure, Figures};
use crate::plan::record::record;
use crate::plan::{Edit, Id, Money, Plan};
use crate::{Balance, Margin, Verdict};

/// What one balance is before and after a change.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Effect {
    /// Which.
    pub balance: Balance,
    /// Its verdict before.
    pub before: Verdict,
    /// Its verdict after.
    pub after: Verdict,
    /// What is to spare before.
    pub spare_before: Option<Margin>,
    /// What is to spare after.
    pub spare_after: Option<Margin>,
}

record!(Effect { balance, before, after, spare_before, spare_after });

/// A change with what it does and costs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Move {
    /// What kind of change.
    pub change: Change,
    /// The entry it is about; 0 for the plan itself.
    pub id: Id,
    /// What that is called.
    pub name: String,
    /// The day it is about, where there is one.
    pub on: Option<Date>,
    /// The amount it is about, where there is one.
    pub amount: Option<Money>,
    /// The change.
    pub edit: Edit,
    /// The balances that it changes.
    pub effects: Vec<Effect>,
    /// How much more cash is there at the end of the plan; less, if negative.
    pub money: Money,
    /// Days that it takes or moves something by.
    pub days: f64,
    /// What it mends: 1 for each balance that falls short no longer, a part where it falls less short, less where another
    /// balance becomes worse.
    pub mends: f64,
    /// What it costs in money, days and comfort together, in days on the road.
    pub cost_days: f64,
}

record!(Move { change, id, name, on, amount, edit, effects, money, days, mends, cost_days });

impl Move {
    /// What it mends for a day on the road that it costs.
    pub fn worth(&self) -> f64 {
        /// So that what costs nothing is not worth everything.
        const LEAST_DAYS: f64 = 0.1;
        self.mends / (self.cost_days + LEAST_DAYS)
    }

    /// The sentence's name in the catalogue, and the figures in it.
    pub fn said(&self) -> (&'static str, Figures) {
        let key = match self.change {
            Change::LeaveOut => "move-leave-out",
            Change::Fewer => "move-fewer",
            Change::Borrow => "move-borrow",
            Change::BuyUsed => "move-buy-used",
            Change::BuyLater => "move-buy-later",
            Change::Sell => "move-sell",
            Change::AskLess => "move-ask-less",
            Change::Leave => "move-leave",
            Change::Stop if self.on.is_none() => "move-stop-always",
            Change::Stop => "move-stop",
            Change::ChargeLonger => "move-charge-longer",
            Change::UseLess => "move-use-less",
            Change::HangElsewhere => "move-hang-elsewhere",
            Change::MoreCans => "move-more-cans",
            Change::WaterStop if self.on.is_none() => "move-water-stop-always",
            Change::WaterStop => "move-water-stop",
            Change::LessWater => "move-less-water",
            Change::Lighter => "move-lighter",
            Change::Smaller => "move-smaller",
            Change::MoveIt => "move-move-it",
            Change::TaskLater => "move-task-later",
            Change::LeaveTaskOut => "move-leave-task-out",
            Change::HireTool => "move-hire-tool",
            Change::HeatAtNight => "move-heat-at-night",
            Change::CloseCab => "move-close-cab",
            Change::OpenMore => "move-open-more",
            Change::TakeContract => "move-take-contract",
            Change::EndContract => "move-end-contract",
            Change::LessData => "move-less-data",
        };
        let mut figures = vec![("name", Figure::Name(self.name.clone()))];
        figures.extend(self.on.map(|on| ("on", Figure::Date(on))));
        figures.extend(self.amount.map(|amount| ("amount", Figure::Money(amount))));
        (key, figures)
    }
}

/// Tries a change: what the plan comes to with it, and what that is worth. None where the plan does not take it.
pub fn tried(again: &Again, plan: &Plan, candidate: &Candidate) -> Option<(Move, Outcome)> {
    let mut changed = plan.clone();
    candidate.edit.clone().apply(&mut changed).ok()?;
    let (before, after) = (again.before(), again.outcome(&changed));
    let money = after.cash_at_end() - before.cash_at_end();
    let found = Move {
        change: candidate.change,
        id: candidate.id,
        name: plan.name_of(candidate.id).unwrap_or_default().to_owned(),
        on: candidate.on,
        amount: candidate.amount,
        edit: candidate.edit.clone(),
        effects: effects(before, &after),
        money,
        days: candidate.days,
        mends: mends(before, &after),
        cost_days: money_days(before, money) + candidate.days + trouble_days(candidate.change),
    };
    Some((found, after))
}

/// What money given up is in days on the road; nothing for what is gained.
pub fn money_days(before: &Outcome, money: Money) -> f64 {
    let usual = Money::whole(USUAL_DAY);
    let a_day = if before.road_cost_per_day > Money::ZERO { before.road_cost_per_day } else { usual };
    let days = (Money::ZERO - money).to_plot() / a_day.to_plot();
    if days > 0.0 { days.min(1e6) } else { 0.0 }
}

/// The balances that differ.
pub fn effects(before: &Outcome, after: &Outcome) -> Vec<Effect> {
    let pairs = before.balances.iter().zip(&after.balances);
    let differ = pairs.filter(|(before, after)| (before.verdict, before.margin) != (after.verdict, after.margin));
    differ
        .map(|(before, after)| Effect {
            balance: before.balance,
            before: before.verdict,
            after: after.verdict,
            spare_before: before.margin,
            spare_after: after.margin,
        })
        .collect()
}

/// What a change mends in all. Where nothing falls short, what is tight counts in its place.
fn mends(before: &Outcome, after: &Outcome) -> f64 {
    let falls_short = !before.holds();
    before.balances.iter().zip(&after.balances).map(|(before, after)| mended(before, after, falls_short)).sum()
}

/// A part of a balance that is mended counts no more than this: only a whole one holds.
const MOST_OF_A_PART: f64 = 0.9;
/// What it is worth that a balance is tight no longer, where another falls short.
const OF_TIGHT: f64 = 0.2;

/// What of one balance is mended: 1 when it falls short no longer.
pub fn mended(before: &Outlined, after: &Outlined, falls_short: bool) -> f64 {
    let tight = if falls_short { OF_TIGHT } else { 1.0 };
    match (before.verdict, after.verdict) {
        (Verdict::FallsShort, Verdict::FallsShort) => part(before, after),
        (Verdict::FallsShort, Verdict::Tight | Verdict::Holds) => 1.0,
        (Verdict::Tight, Verdict::Holds) => tight,
        (Verdict::Tight, Verdict::Tight) => tight * part(before, after),
        (_, Verdict::FallsShort) => -1.0,
        (Verdict::Holds, Verdict::Tight) => -OF_TIGHT,
        _ => 0.0,
    }
}

/// The part of what is missing, or of what is wrong, that is there no longer; negative where there is more of it.
fn part(before: &Outlined, after: &Outlined) -> f64 {
    let missing = |outlined: &Outlined| outlined.margin.map_or(0.0, amount);
    let (was, is) = (missing(before), missing(after));
    // Of what is to spare, so much more again would be twice as good.
    let scale = was.abs().max(1e-9);
    let of_margin = ((is - was) / scale).clamp(-1.0, MOST_OF_A_PART);
    let (were, are) = (before.wrongs.0 as f64, after.wrongs.0 as f64);
    let of_wrongs = if were > 0.0 { ((were - are) / were).clamp(-1.0, MOST_OF_A_PART) } else { 0.0 };
    if of_margin.abs() >= of_wrongs.abs() { of_margin } else { of_wrongs }
}

/// A margin as a number in its own unit.
pub fn amount(margin: Margin) -> f64 {
    match margin {
        Margin::Money(amount) => amount.to_plot(),
        Margin::Hours(amount)
        | Margin::Days(amount)
        | Margin::Early(amount)
        | Margin::Width(amount)
        | Margin::Mass(amount)
        | Margin::Warmer(amount)
        | Margin::Data(amount) => amount,
    }
}
