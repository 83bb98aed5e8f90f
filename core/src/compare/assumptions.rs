//! What could come otherwise: each assumption as a changed copy of a plan.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::constants::{DEARER_PERCENT, DULLER_PERCENT, LATER_DAYS};
use crate::money::{Flow, FlowGroup, are_paid};
use crate::order;
use crate::plan::record::words;
use crate::plan::{Cost, CostEvery, CostPhase, Draw, Estimate, Item, Mode, Money, Obtain, Plan, add_days};
use crate::sun::constants::USUAL_SOILING;

/// Something that is taken to come so.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Assumption {
    /// All as planned.
    #[default]
    AsPlanned,
    /// What is still to be bought, the van included, costs what it can cost at the most.
    DearPurchases,
    /// Sales that are not certain bring nothing.
    SalesFail,
    /// Everything that draws, and all water, is used as much as it can be.
    MuchUsed,
    /// There is [`DULLER_PERCENT`] less light on panels.
    DullerSky,
    /// Fuel and running costs are [`DEARER_PERCENT`] dearer from the day asked on.
    DearRunning,
    /// The van leaves [`LATER_DAYS`] days later, and all that hangs on that day comes later.
    LeavingLater,
}

words!(Assumption {
    AsPlanned = "as_planned", DearPurchases = "dear_purchases", SalesFail = "sales_fail", MuchUsed = "much_used",
    DullerSky = "duller_sky", DearRunning = "dear_running", LeavingLater = "leaving_later",
});

impl Assumption {
    /// All of them, the plain case first.
    pub const ALL: [Self; 7] = [
        Self::AsPlanned,
        Self::DearPurchases,
        Self::SalesFail,
        Self::MuchUsed,
        Self::DullerSky,
        Self::DearRunning,
        Self::LeavingLater,
    ];
}

/// The plan as it would be under an assumption. `flows` are those that it has as planned. The plan itself where the
/// assumption says nothing of it, such as of a day of leaving that is not set or is past.
pub fn assumed(plan: &Plan, assumption: Assumption, as_of: Date, flows: &[Flow]) -> Plan {
    let mut changed = plan.clone();
    match assumption {
        Assumption::AsPlanned => {}
        Assumption::DearPurchases => dear_purchases(&mut changed),
        Assumption::SalesFail => sales_fail(&mut changed),
        Assumption::MuchUsed => much_used(&mut changed),
        Assumption::DullerSky => duller_sky(&mut changed),
        Assumption::DearRunning => dear_running(&mut changed, as_of, flows),
        Assumption::LeavingLater => leaving_later(&mut changed, as_of),
    }
    changed
}

fn dear_purchases(plan: &mut Plan) {
    let paid = are_paid(plan);
    for (item, _) in plan.kit.iter_mut().zip(paid).filter(|(item, is_paid)| item.obtain.is_paid() && !is_paid) {
        item.unit_price = item.unit_price.map(|price| Estimate::Plain(price.likely().max(price.high())));
    }
    let purchase = &mut plan.purchase;
    if purchase.paid.is_none() {
        purchase.agreed_price = purchase.agreed_price.map(|price| Estimate::Plain(price.likely().max(price.high())));
    }
}

/// A sale without a chance is taken as certain everywhere else, and so it is here.
fn sales_fail(plan: &mut Plan) {
    let open = plan.belongings.iter_mut().filter(|thing| thing.outcome.is_none());
    for thing in open {
        thing.chance_percent =
            thing.chance_percent.map(|chance| if chance < Decimal::ONE_HUNDRED { Decimal::ZERO } else { chance });
    }
}

fn much_used(plan: &mut Plan) {
    for item in carried(plan) {
        if let Some(draw) = &mut item.draw {
            *draw = much_drawn(draw);
        }
        if let Some(water) = &mut item.water {
            water.litres_per_day = at_high(water.litres_per_day);
        }
    }
    for water in &mut plan.water_uses {
        water.litres_per_day = at_high(water.litres_per_day);
    }
}

fn carried(plan: &mut Plan) -> impl Iterator<Item = &mut Item> {
    plan.kit.iter_mut().filter(|item| item.obtain != Obtain::LeftOut)
}

fn much_drawn(draw: &Draw) -> Draw {
    Draw {
        power_w: at_high(draw.power_w),
        hours_per_day: draw.hours_per_day.map(at_high),
        duty_percent: draw.duty_percent.map(at_high),
        ..*draw
    }
}

/// The most; of a range that is upside down, the likely value.
fn at_high(estimate: Estimate<f64>) -> Estimate<f64> {
    Estimate::Plain(estimate.likely().max(estimate.high()))
}

/// As much less light as more dirt would leave, whatever the sky is made of.
fn duller_sky(plan: &mut Plan) {
    for panel in carried(plan).filter_map(|item| item.panel.as_mut()) {
        let clean = 100.0 - panel.dirt_percent.unwrap_or(USUAL_SOILING * 100.0);
        panel.dirt_percent = Some(100.0 - clean * (1.0 - DULLER_PERCENT / 100.0));
    }
}

/// What is dearer is paid besides, on the days of the flows themselves: what is past was paid at its price.
fn dear_running(plan: &mut Plan, as_of: Date, flows: &[Flow]) {
    let is_running = |cost: &&Cost| cost.phase != CostPhase::Home && cost.every != CostEvery::Once;
    let running = order::sorted(plan.costs.iter().filter(is_running).map(|cost| cost.id.into()));
    let is_running = |flow: &&Flow| match flow.group {
        FlowGroup::Fuel => true,
        FlowGroup::Costs => order::find(&running, flow.source.into()).is_some(),
        _ => false,
    };
    let mut dearer: Vec<(Date, Money)> = Vec::new();
    for flow in flows.iter().filter(|flow| flow.on >= as_of).filter(is_running) {
        let more = -flow.amount.percent(Decimal::from(DEARER_PERCENT));
        match dearer.last_mut().filter(|(on, _)| *on == flow.on) {
            Some((_, amount)) => *amount += more,
            None => dearer.push((flow.on, more)),
        }
    }
    plan.costs.extend(dearer.into_iter().map(|(on, amount)| Cost {
        amount: Some(Estimate::Plain(amount)),
        every: CostEvery::Once,
        phase: CostPhase::Always,
        first_on: Some(on),
        ..Cost::default()
    }));
}

/// A week that repeats keeps its last day, so that there is less of it; it must not be gone.
fn leaving_later(plan: &mut Plan, as_of: Date) {
    let calendar = &mut plan.calendar;
    let Some(leaves_on) = calendar.leaves_on.filter(|on| *on > as_of) else { return };
    let ends_on = calendar.ends_on.filter(|_| calendar.mode == Mode::Week);
    let later = add_days(leaves_on, LATER_DAYS).filter(|later| ends_on.is_none_or(|ends_on| *later < ends_on));
    calendar.leaves_on = later.or(Some(leaves_on));
}
