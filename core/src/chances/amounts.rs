//! What the flows of the money come to in a run, as the inputs they follow have it.

use jiff::civil::Date;

use super::answer::What;
use super::inputs::{Drawn, Inputs, Number, Range, minor};
use super::route::{Route, offered};
use crate::money::chance::MOST_MINOR;
use crate::money::{Flow, FlowGroup};
use crate::plan::{Belonging, CostEvery, Estimate, Id, Money, Path, Plan};
use crate::run::Timeline;

/// What else the flows are about, on the way from the plan.
pub(super) struct Of<'a> {
    pub plan: &'a Plan,
    pub asked_on: Date,
    pub timeline: &'a Timeline<'a>,
    pub route: &'a Route,
    /// Items that placed work waits for.
    pub awaited: &'a [Id],
}

/// What a flow comes to.
pub(super) enum Amount {
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

impl Amount {
    /// In minor units, in a run of eight.
    pub fn of(&self, drawn: &Drawn, lane: usize) -> i64 {
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

/// What a flow follows.
pub(super) fn amount(of: &Of, flow: &Flow, digits: u32, inputs: &mut Inputs) -> Amount {
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
            let amount = cost.amount.filter(|_| cost.every == CostEvery::HundredKm)?;
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
            let (path, offer) = offered(plan, id)?;
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
