//! The plan with a thing in it, beside the plan without.

use jiff::civil::Date;
use rust_decimal::Decimal;
use serde::Serialize;

use super::findings::{Finding, findings};
use super::freedom::{RoadCost, road_cost};
use super::offer::{Offer, sound};
use super::pack::{Comparison, UnitPrice, compared, unit_price};
use super::taking::{Taking, take};
use crate::assessment::{Assessment, Balance, Margin, Verdict, assess};
use crate::explain::{Figure, Source, Working};
use crate::money::{FlowGroup, PriceParts};
use crate::plan::{Money, Plan, Quantity};
use crate::run::Timeline;

/// What a thing on a shelf comes to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// What is to pay at the till.
    pub price: PriceParts,
    /// What a unit of it costs, with tax.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit_price: Option<UnitPrice>,
    /// What a unit of the other offer costs, with tax.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_unit_price: Option<UnitPrice>,
    /// Which of the two is cheaper.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub comparison: Option<Comparison>,
    /// What its heading of the kit costs.
    pub group: GroupRoom,
    /// The lowest day of the cash, if it is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cash: Option<CashChange>,
    /// When the cash runs out.
    pub run_out: RunOut,
    /// What a day on the road costs.
    pub road_cost: RoadCost,
    /// The days on the road that the price would pay for; none if a day costs nothing that the plan knows of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub road_days: Option<f64>,
    /// What it weighs, and the room it takes.
    pub load: Load,
    /// Verdicts that it changes: without it, with it.
    pub verdicts: Vec<(Balance, Verdict, Verdict)>,
    /// What to say of all that.
    pub findings: Vec<Finding>,
    /// How the numbers came about.
    pub working: Vec<Working>,
}

/// A heading of the kit: what is paid is positive.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct GroupRoom {
    /// All that was foreseen or paid under it.
    pub foreseen: Money,
    /// Of it, what is paid.
    pub paid: Money,
    /// All of it with the thing.
    pub foreseen_with: Money,
    /// Of that, what is still to pay once the thing is paid.
    pub left_with: Money,
}

/// The lowest day of the cash, without the thing and with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CashChange {
    /// Its cash without the thing.
    pub before: Money,
    /// Its cash with it.
    pub after: Money,
    /// Which day that is.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// What is above the floor that day; negative if it is below.
    pub margin: Money,
}

/// When the cash falls below the floor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RunOut {
    /// Without the thing; none if it stays above within the plan.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub before: Option<Date>,
    /// With it.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub after: Option<Date>,
    /// The last day of the plan.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub ends_on: Date,
    /// What is above the floor that day, with the thing.
    pub left: Money,
    /// Days more that this pays for, without income, if the plan ends on the road and a day there costs something.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days_beyond: Option<f64>,
}

/// What a thing adds to the load.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Load {
    /// What it weighs, where that is typed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_kg: Option<f64>,
    /// What all things of known mass weigh with it.
    pub carried_kg: f64,
    /// The room it takes as a box, where its three sides are typed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub volume_l: Option<f64>,
}

/// Works out what an offer comes to: the plan is assessed with the thing paid for on the day, and compared with
/// `before`, its assessment without it on the same day.
///
/// Pure, and without a panic for any plan and any offer.
pub fn report(plan: &Plan, before: &Assessment, offer: &Offer) -> Report {
    let as_of = before.as_of;
    let mut with = plan.clone();
    // What was read from a field can be set, and an id that was free is free; otherwise nothing would change.
    let _ = take(plan, as_of, offer, Taking::Paid).apply(&mut with);
    let after = assess(&with, as_of);
    let digits = plan.minor_digits();
    let price = offer.price(digits);
    let unit_price = offer.pack.and_then(|pack| unit_price(offer.with_tax(offer.marked()), pack));
    let other_unit_price = offer.other.and_then(|(price, pack)| self::unit_price(offer.with_tax(price), pack));
    let bought = offer.bought().map_or(Decimal::ZERO, |(amount, _)| amount);
    let comparison = unit_price.zip(other_unit_price).map(|(first, second)| compared(first, second, bought, digits));
    let timeline = Timeline::new(plan, as_of);
    let road_cost = road_cost(plan, &timeline);
    let floor = plan.purse.floor;
    let mut report = Report {
        price,
        unit_price,
        other_unit_price,
        comparison,
        group: group_room(offer, before, &after),
        cash: cash(before, &after, floor),
        run_out: run_out(before, &after, floor, &timeline, &road_cost),
        road_days: road_cost.days_for(price.total),
        road_cost,
        load: load(offer, &with),
        verdicts: verdicts(before, &after),
        findings: Vec::new(),
        working: Vec::new(),
    };
    report.findings = findings(&report, before, &after);
    report.working = working(&report, offer, digits);
    report
}

fn group_room(offer: &Offer, before: &Assessment, after: &Assessment) -> GroupRoom {
    let group = FlowGroup::Kit(offer.item.group);
    let total = |assessment: &Assessment| {
        let total = assessment.money.groups.iter().find(|total| total.group == group).copied();
        total.map_or_else(Default::default, |total| {
            (Money::ZERO - total.foreseen, Money::ZERO - total.settled, Money::ZERO - total.open)
        })
    };
    let ((foreseen, paid, _), (foreseen_with, _, left_with)) = (total(before), total(after));
    GroupRoom { foreseen, paid, foreseen_with, left_with }
}

/// Both lowest days, if the cash is known.
fn cash(before: &Assessment, after: &Assessment, floor: Money) -> Option<CashChange> {
    let is_known = |assessment: &Assessment| assessment.money.standing.verdict != Verdict::Unknown;
    let (low, low_with) = before.money.lowest.zip(after.money.lowest)?;
    (is_known(before) && is_known(after)).then(|| CashChange {
        before: low.closing,
        after: low_with.closing,
        on: low_with.on,
        margin: low_with.closing - floor,
    })
}

fn run_out(before: &Assessment, after: &Assessment, floor: Money, timeline: &Timeline, road_cost: &RoadCost) -> RunOut {
    let first = |assessment: &Assessment| assessment.money.standing.first_short.map(|moment| moment.on);
    let left = after.money.days.last().map_or(Money::ZERO, |day| day.closing - floor);
    // Beyond the plan nothing is known but what a day on the road costs, and that only if it ends there.
    let ends_on_the_road = timeline.road().next().is_some();
    let days_beyond = road_cost.days_for(left).filter(|_| ends_on_the_road && left > Money::ZERO);
    RunOut { before: first(before), after: first(after), ends_on: after.ends_on, left, days_beyond }
}

fn load(offer: &Offer, with: &Plan) -> Load {
    let masses = with.carried().filter_map(|item| sound(item.mass_kg?.likely() * f64::from(item.kept())));
    let carried_kg = sound(masses.sum()).unwrap_or(0.0);
    Load { mass_kg: offer.mass_kg(), carried_kg, volume_l: offer.volume_l() }
}

fn verdicts(before: &Assessment, after: &Assessment) -> Vec<(Balance, Verdict, Verdict)> {
    let pairs = before.verdicts().into_iter().zip(after.verdicts());
    pairs.map(|((balance, old), (_, new))| (balance, old, new)).filter(|(_, old, new)| old != new).collect()
}

/// The margin of a balance as a figure, to be shown before and after.
pub(super) fn margins(before: Option<Margin>, after: Option<Margin>) -> Option<(Figure, Figure)> {
    let (before, after) = before.zip(after)?;
    (before != after).then(|| (before.into(), after.into()))
}

fn working(report: &Report, offer: &Offer, digits: u32) -> Vec<Working> {
    let RoadCost { monthly, fuel, names, night, nights, per_day } = &report.road_cost;
    let money = |amount: Money| Figure::Money(amount.rounded(digits));
    let line = |formula, figures| Working { formula, figures, source: Source::Arithmetic };
    let rate = Figure::Name(offer.tax_percent.normalize().to_string());
    let mut working = vec![line(
        if offer.includes_tax { "working-shop-tax-included" } else { "working-shop-tax-added" },
        vec![
            ("net", money(report.price.net)),
            ("rate", rate),
            ("tax", money(report.price.tax)),
            ("total", money(report.price.total)),
        ],
    )];
    if let Some(days) = report.road_days {
        let names = if names.is_empty() { "–".to_owned() } else { names.join(", ") };
        working.push(line(
            "working-shop-road-day",
            vec![
                ("monthly", money(*monthly)),
                ("names", Figure::Name(names)),
                ("night", money(*night)),
                ("nights", Figure::of(f64::from(*nights), Quantity::Nights)),
                ("day", money(*per_day)),
            ],
        ));
        if *fuel > Money::ZERO {
            working.push(line("working-shop-road-fuel", vec![("fuel", money(*fuel))]));
        }
        working.push(line(
            "working-shop-road-days",
            vec![
                ("price", money(report.price.total)),
                ("day", money(*per_day)),
                ("days", Figure::of(days, Quantity::Days)),
            ],
        ));
    }
    working
}
