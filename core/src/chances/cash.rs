//! The money of a run: the flows ahead, each as its inputs have it.

use jiff::civil::Date;

use super::answer::What;
use super::inputs::{Drawn, Inputs, Number, Range, minor};
use super::judging::Fate;
use crate::money::chance::MOST_MINOR;
use crate::money::{Ahead, Flow, FlowGroup, FlowState, is_counted_tonight};
use crate::plan::{Belonging, Estimate, Id, Money, Path, Plan, days_between};
use crate::run::Timeline;

use super::route::{Route, offer};

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

/// What a flow comes to.
enum Amount {
    Sure(i64),
    /// Between its own low and high, where its input is between its own.
    Ranged {
        ranged: usize,
        low: i64,
        likely: i64,
        high: i64,
        /// Whether it goes out, so that more of the input is less of it.
        is_paid: bool,
    },
    /// For every hundred kilometres, the product of two numbers.
    ByDistance([Number; 2], Number),
    /// The likely amount, less what the van costs more, and with what the present car brings more.
    Van {
        likely: i64,
        price: Number,
        exchange: Number,
        likely_rest: f64,
    },
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

/// What else the flows are about, on the way from the plan.
#[allow(clippy::struct_field_names)] // `as_of` is what a day of asking is called everywhere
pub(super) struct Of<'a> {
    pub plan: &'a Plan,
    pub as_of: Date,
    pub timeline: &'a Timeline<'a>,
    pub route: &'a Route,
    /// Items that placed work waits for.
    pub awaited: &'a [Id],
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

impl Amount {
    fn of(&self, drawn: &Drawn, lane: usize) -> i64 {
        match self {
            Self::Sure(amount) => *amount,
            Self::Ranged { ranged, low, likely, high, is_paid } => {
                let position = drawn.position(*ranged, lane) * if *is_paid { -1.0 } else { 1.0 };
                let end = if position < 0.0 { low } else { high };
                likely + whole(position.abs() * (end - likely) as f64)
            }
            Self::ByDistance([one, other], km) => {
                let price = drawn.value(*one, lane) * drawn.value(*other, lane);
                whole(-price * (drawn.value(*km, lane) / 100.0))
            }
            Self::Van { likely, price, exchange, likely_rest } => {
                likely - whole(drawn.value(*price, lane) - drawn.value(*exchange, lane) - likely_rest)
            }
        }
    }
}

/// Whole minor units, to the nearest, and none that is beyond any plan.
#[expect(clippy::cast_possible_truncation, reason = "clamped just before")]
fn whole(amount: f64) -> i64 {
    let most = MOST_MINOR as f64;
    libm::round(amount.clamp(-most, most)) as i64
}

fn amount(of: &Of, flow: &Flow, digits: u32, inputs: &mut Inputs) -> Amount {
    let in_minor = |amount: Money| amount.to_minor(digits).unwrap_or(0);
    let (low, likely, high) = (in_minor(flow.range.low), in_minor(flow.amount), in_minor(flow.range.high));
    let by_distance = by_distance(of, flow, digits, inputs);
    if let Some(([one, other], km)) = by_distance {
        let is_sure = [one, other, km].iter().all(|number| matches!(number, Number::Sure(_)));
        return if is_sure { Amount::Sure(likely) } else { Amount::ByDistance([one, other], km) };
    }
    if low == high {
        return Amount::Sure(likely);
    }
    if flow.group == FlowGroup::Vehicle {
        return van(of.plan, likely, digits, inputs);
    }
    let is_paid = match flow.group {
        FlowGroup::Kit(_) => flow.amount.is_negative(),
        FlowGroup::Costs | FlowGroup::Nights => true,
        _ => false,
    };
    match ranged(of, flow, digits, inputs) {
        Some(ranged) => Amount::Ranged { ranged, low, likely, high, is_paid },
        None => Amount::Sure(likely),
    }
}

/// The numbers of what is paid by the distance.
fn by_distance(of: &Of, flow: &Flow, digits: u32, inputs: &mut Inputs) -> Option<([Number; 2], Number)> {
    let rates = match flow.group {
        FlowGroup::Fuel => {
            let (litres, price) = (of.plan.vehicle.fuel_l_per_100_km?, of.plan.vehicle.fuel_price_per_l?);
            let path = |field: &str| Path::section("vehicle").child(field);
            [
                inputs.number(What::FuelUse, 0, &|| path("fuel_l_per_100_km"), litres),
                money(What::FuelPrice, 0, &|| path("fuel_price_per_l"), price, digits, inputs),
            ]
        }
        FlowGroup::Costs => {
            let cost = of.plan.costs.iter().find(|cost| cost.id == flow.source)?;
            let amount = cost.amount.filter(|_| cost.every == crate::plan::CostEvery::HundredKm)?;
            let path = || Path::entry("costs", cost.id).child("amount");
            [money(What::Cost, cost.id, &path, amount, digits, inputs), Number::Sure(1.0)]
        }
        _ => return None,
    };
    let at = of.timeline.index_of(flow.on)?;
    Some((rates, of.route.km(of.timeline.days.get(at)?)))
}

fn money(
    what: What,
    id: Id,
    path: &dyn Fn() -> Path,
    amount: Estimate<Money>,
    digits: u32,
    inputs: &mut Inputs,
) -> Number {
    match Range::of_money(amount, digits) {
        Some(range) => Number::Ranged(inputs.ranged(what, id, path, range)),
        None => Number::Sure(minor(amount.likely(), digits)),
    }
}

fn van(plan: &Plan, likely: i64, digits: u32, inputs: &mut Inputs) -> Amount {
    let mut number = |what: What, field: &str, amount: Option<Estimate<Money>>| {
        let path = || Path::section("purchase").child(field);
        amount.map_or(Number::Sure(0.0), |amount| money(what, 0, &path, amount, digits, inputs))
    };
    let price = number(What::VanPrice, "agreed_price", plan.purchase.agreed_price);
    let exchange = number(What::PartExchange, "part_exchange", plan.purchase.part_exchange);
    let likely_rest = inputs.likely(price) - inputs.likely(exchange);
    Amount::Van { likely, price, exchange, likely_rest }
}

/// The range of the input that a flow follows.
fn ranged(of: &Of, flow: &Flow, digits: u32, inputs: &mut Inputs) -> Option<usize> {
    let (plan, id) = (of.plan, flow.source);
    let (what, path, amount) = match flow.group {
        FlowGroup::Kit(_) => (What::Price, Path::entry("kit", id).child("unit_price"), plan.item(id)?.unit_price?),
        FlowGroup::Sales => match plan.belongings.iter().find(|thing| thing.id == id) {
            Some(thing) => (What::SalePrice, Path::entry("belongings", id).child("price"), asked(thing)?),
            None => (What::SalePrice, Path::entry("kit", id).child("sale/price"), plan.item(id)?.sale?.price?),
        },
        FlowGroup::Income => {
            let amount = plan.incomes.iter().find(|income| income.id == id)?.amount?;
            (What::Income, Path::entry("incomes", id).child("amount"), amount)
        }
        FlowGroup::Costs => {
            let amount = plan.costs.iter().find(|cost| cost.id == id)?.amount?;
            (What::Cost, Path::entry("costs", id).child("amount"), amount)
        }
        FlowGroup::Nights => {
            let (path, offer) = offer(plan, id)?;
            (What::Night, path.child("offers/price_per_night"), offer.price_per_night?)
        }
        _ => return None,
    };
    let range = Range::of_money(amount, digits)?;
    Some(inputs.ranged(what, id, &|| path.clone(), range))
}

/// What a thing may bring: it may go down to the lowest price it is given away for.
fn asked(thing: &Belonging) -> Option<Estimate<Money>> {
    let price = thing.price?;
    let low = thing.lowest.unwrap_or(price.low());
    Some(Estimate::Range { low, likely: price.likely(), high: price.high() })
}

fn sale(of: &Of, ahead: &Ahead, flow: &Flow, chance: f64, inputs: &mut Inputs) -> Sale {
    let listed_on = of.plan.belongings.iter().find(|thing| thing.id == flow.source).and_then(|thing| thing.listed_on);
    let since = listed_on.map_or(of.as_of, |on| on.max(of.as_of));
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
