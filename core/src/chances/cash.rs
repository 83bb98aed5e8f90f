//! The money of a run: the flows ahead, each on its day and as its inputs have it.

use super::amounts::{Amount, Of, amount};
use super::answer::What;
use super::inputs::{Drawn, Inputs};
use super::judging::Fate;
use crate::energy::worlds::LANES;
use crate::money::{Ahead, Flow, FlowGroup, FlowState, is_counted_tonight};
use crate::plan::{Id, Money, Path, days_between};

/// The cash from the first day ahead on, ready to be drawn.
pub(super) struct Cash {
    opening: i64,
    floor: i64,
    /// What certainly moves on each day.
    certain: Vec<i64>,
    moving: Vec<Moving>,
    /// What has the largest payment of each day.
    largest: Vec<Id>,
    /// On which days something is paid that open work waits for.
    holds_up: Vec<bool>,
    /// What moves on each day of the current run.
    gains: Vec<i64>,
}

/// A flow that is not certain.
struct Moving {
    day: usize,
    amount: Amount,
    sale: Option<Sale>,
}

/// When a sale brings its money.
struct Sale {
    input: usize,
    /// The chance that it is sold by its day, between 0 and 1.
    chance: f64,
    /// Days until then.
    days: f64,
    /// The last day on which it can be sold.
    last_day: usize,
}

impl Cash {
    pub fn new(of: &Of, ahead: &Ahead, inputs: &mut Inputs) -> Self {
        let days = ahead.days.len();
        let mut cash = Self {
            opening: ahead.outlook.opening,
            floor: ahead.outlook.floor,
            certain: vec![0; days],
            moving: Vec::new(),
            largest: vec![0; days],
            holds_up: vec![false; days],
            gains: vec![0; days],
        };
        for (day, before) in (1..days).zip(&ahead.days) {
            // What a count in the evening changed is there the next day.
            cash.add(day, before.corrected.to_minor(ahead.digits).unwrap_or(0));
        }
        let mut most = vec![Money::ZERO; days];
        for flow in ahead.flows.iter().chain(&ahead.unlikely) {
            let day = ahead.index_of(flow.on) as usize;
            let Some(most) = most.get_mut(day) else { continue };
            if -flow.amount > *most {
                *most = -flow.amount;
                cash.largest[day] = flow.source;
            }
            let is_for_the_kit = matches!(flow.group, FlowGroup::Kit(_)) && flow.amount.is_negative();
            cash.holds_up[day] |=
                is_for_the_kit && flow.state == FlowState::Planned && of.awaited.contains(&flow.source);
            cash.take(of, ahead, flow, day, inputs);
        }
        cash
    }

    fn add(&mut self, day: usize, amount: i64) {
        if let Some(gain) = self.certain.get_mut(day) {
            *gain += amount;
        }
    }

    fn take(&mut self, of: &Of, ahead: &Ahead, flow: &Flow, day: usize, inputs: &mut Inputs) {
        let is_settled = flow.on == ahead.from && is_counted_tonight(of.plan, ahead.from);
        if flow.state != FlowState::Planned || is_settled {
            return self.add(day, flow.amount.to_minor(ahead.digits).unwrap_or(0));
        }
        let amount = amount(of, flow, ahead.digits, inputs);
        let sale = match flow.range.chance_ppm {
            0 => return,
            1_000_000.. => None,
            ppm => Some(sale(of, ahead, flow, f64::from(ppm) / 1e6, inputs)),
        };
        match amount {
            Amount::Sure(amount) if sale.is_none() => self.add(day, amount),
            amount => self.moving.push(Moving { day, amount, sale }),
        }
    }

    /// What a run takes, in flows that are looked at.
    pub fn effort(&self) -> usize {
        self.moving.len() + self.gains.len() / LANES
    }

    /// What becomes of the money in a run of eight.
    pub fn run(&mut self, drawn: &Drawn, lane: usize) -> Fate {
        self.gains.copy_from_slice(&self.certain);
        for flow in &self.moving {
            let Some(day) = flow.day(drawn, lane) else { continue };
            if let Some(gain) = self.gains.get_mut(day) {
                *gain += flow.amount.of(drawn, lane);
            }
        }
        let (mut cash, mut lowest, mut short) = (self.opening, i64::MAX, None);
        for (day, gain) in self.gains.iter().enumerate() {
            cash += gain;
            lowest = lowest.min(cash);
            if cash < self.floor && short.is_none() {
                short = Some(day);
            }
        }
        let by = short.and_then(|day| self.largest.get(day).copied()).unwrap_or(0);
        let fails_on = short.and_then(|day| u32::try_from(day).ok());
        Fate { fails_on, margin: (lowest - self.floor) as f64, by }
    }

    /// Whether work waits for what is paid on a day.
    pub fn holds_up(&self, day: u32) -> bool {
        self.holds_up.get(day as usize).is_some_and(|holds_up| *holds_up)
    }
}

impl Moving {
    /// The day on which it moves, if it does.
    fn day(&self, drawn: &Drawn, lane: usize) -> Option<usize> {
        let Some(sale) = &self.sale else { return Some(self.day) };
        let share = drawn.share(sale.input, lane);
        if share < sale.chance {
            return Some(self.day);
        }
        let days_late = libm::ceil(days_until_sold(share, sale.chance, sale.days) - sale.days).max(1.0);
        let day = self.day as f64 + days_late;
        // What is beyond the last day is lost, and all others are whole numbers that are days.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a day of the plan")]
        (day <= sale.last_day as f64).then_some(day as usize)
    }
}

/// When something is sold that is sold by a day with a chance: as an exponential law has it, which is sold on any day as likely
/// as on any other that it is still there, `-ln(1 - share) / rate` with `rate = -ln(1 - chance) / days` (Ross, "Introduction
/// to probability models", from memory).
fn days_until_sold(share: f64, chance: f64, days: f64) -> f64 {
    days * libm::log1p(-share) / libm::log1p(-chance)
}

fn sale(of: &Of, ahead: &Ahead, flow: &Flow, chance: f64, inputs: &mut Inputs) -> Sale {
    let listed_on = of.plan.belongings.iter().find(|thing| thing.id == flow.source).and_then(|thing| thing.listed_on);
    let since = listed_on.map_or(of.asked_on, |on| on.max(of.asked_on));
    let last_on = of.plan.calendar.leaves_on.filter(|on| *on >= ahead.from);
    let end = ahead.days.len().saturating_sub(1);
    let path = || Path::entry("belongings", flow.source).child("chance_percent");
    Sale {
        input: inputs.input(What::SaleDay, flow.source, &path),
        chance,
        days: f64::from(days_between(since, flow.on).max(1)),
        last_day: match (last_on, of.plan.calendar.leaves_on) {
            (Some(on), _) => (ahead.index_of(on) as usize).min(end),
            (None, Some(_)) => 0,
            (None, None) => end,
        },
    }
}
