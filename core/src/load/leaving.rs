//! What to look at before driving off, made from the kit and its places: round the outside, inside from the rear to the
//! front, and at the driver's place.

use serde::Serialize;

use super::report::stated;
use crate::explain::{Figure, Figures, as_map};
use crate::order;
use crate::plan::{Fastened, Group, Id, Item, Level, Offer, Outlet, Plan, Quantity, TankKind};
use crate::space::Placed;
use crate::space::item::Item as Standing;

/// Where one stands while looking.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Round the van.
    Outside,
    /// In it, from the rear to the front.
    Inside,
    /// At the driver's place.
    Driver,
}

/// One thing to look at.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Check {
    /// A name that stays the same while the plan changes around it.
    pub id: String,
    /// Where one stands.
    pub side: Side,
    /// Its sentence in the catalogue.
    pub key: &'static str,
    /// The figures in it.
    #[serde(serialize_with = "as_map")]
    pub figures: Figures,
    /// The item of the kit it is about.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub item: Option<Id>,
}

impl Check {
    fn general(side: Side, key: &'static str) -> Self {
        Self { id: key.to_owned(), side, key, figures: Vec::new(), item: None }
    }

    /// About a thing; `id` is its placement, or the item when it has none.
    fn of(side: Side, key: &'static str, id: Id, item: &Item) -> Self {
        let figures = vec![("name", Figure::Name(item.name.clone()))];
        Self { id: format!("{key}-{id}"), side, key, figures, item: Some(item.id) }
    }
}

/// The list to go through before driving off. It names what the plan knows of, and is no promise that nothing else is
/// left.
///
/// ```
/// use kerbstead_core::{load, plan, space};
/// let plan = plan::demo_plan();
/// let checks = load::before_driving(&plan, &space::Placed::new(&plan));
/// assert!(checks.iter().any(|check| check.key == "leaving-mains-lead"));
/// assert_eq!(checks.last().map(|check| check.key), Some("leaving-handbrake"));
/// ```
pub fn before_driving(plan: &Plan, placed: &Placed) -> Vec<Check> {
    let mut checks = outside(plan, placed);
    checks.extend(inside(plan, placed));
    checks.extend(at_the_wheel(plan));
    checks
}

fn outside(plan: &Plan, placed: &Placed) -> Vec<Check> {
    let general = |key| Check::general(Side::Outside, key);
    let mut checks = vec![general("leaving-round")];
    let things = placed.things.iter().zip(&placed.layout.items);
    for (thing, _) in things.filter(|(_, standing)| !standing.is_inside()) {
        if let Some(item) = plan.item(thing.item) {
            checks.push(Check::of(Side::Outside, "leaving-thing-outside", thing.id, item));
        }
    }
    if has_mains(plan) {
        checks.push(general("leaving-mains-lead"));
    }
    let holds = |kind| plan.carried().any(|item| item.tank.is_some_and(|tank| tank.holds == kind));
    if holds(TankKind::Grey) {
        checks.push(general("leaving-used-water"));
    }
    checks.extend(["leaving-openings", "leaving-steps"].map(general));
    checks
}

/// Whether any place of the route has a mains socket.
fn has_mains(plan: &Plan) -> bool {
    let stays = plan.stays.iter().map(|stay| &stay.offers);
    let offers = stays.chain(plan.week.iter().map(|day| &day.offers));
    let hours = |offer: &Offer| offer.mains_hours.map_or(0.0, |hours| hours.likely());
    offers.into_iter().any(|offer| hours(offer) > 0.0)
}

/// From the rear to the front; what has no place comes last, in the order of the kit.
fn inside(plan: &Plan, placed: &Placed) -> Vec<Check> {
    let things = placed.things.iter().zip(&placed.layout.items);
    let standing: Vec<_> = things.filter(|(_, standing)| standing.is_inside()).collect();
    // The farther back, the smaller the key.
    let from_rear = order::by_key(&standing, |(_, standing)| u64::from(i32::MAX.abs_diff(standing.x_mm)));
    let mains = has_mains(plan);
    let mut checks = Vec::new();
    for (thing, standing) in from_rear {
        let Some(item) = plan.item(thing.item) else { continue };
        if is_raised(standing) && thing.fastened == Fastened::Nothing {
            checks.push(Check::of(Side::Inside, "leaving-latch", thing.id, item));
        }
        if standing.opened.is_some() {
            checks.push(Check::of(Side::Inside, "leaving-close", thing.id, item));
        }
        checks.extend(of_item(item, thing.id, mains));
    }
    let is_placed = |item: &Item| placed.things.iter().any(|thing| thing.item == item.id);
    for item in plan.carried().filter(|item| item.kept() > 0 && !is_placed(item)) {
        checks.extend(of_item(item, item.id, mains));
    }
    if plan.carried().any(|item| item.group == Group::Kitchen && item.draw.is_none()) {
        checks.push(Check::general(Side::Inside, "leaving-flames"));
    }
    checks.push(Check::general(Side::Inside, "leaving-loose"));
    checks
}

/// Whether something is where it could fall from.
fn is_raised(standing: &Standing) -> bool {
    matches!(standing.level, Level::Wall | Level::Roof | Level::Counter)
}

/// What there is to do about a thing wherever it is.
fn of_item(item: &Item, id: Id, has_mains: bool) -> Vec<Check> {
    let mut checks = Vec::new();
    if item.tank.is_some() {
        checks.push(Check::of(Side::Inside, "leaving-can", id, item));
    }
    let is_charged = has_mains && item.store.is_some_and(|store| store.mains_input_w > 0.0);
    if is_charged || item.draw.is_some_and(|draw| draw.outlet == Outlet::Ac) {
        checks.push(Check::of(Side::Inside, "leaving-unplug", id, item));
    }
    checks
}

fn at_the_wheel(plan: &Plan) -> Vec<Check> {
    let general = |key| Check::general(Side::Driver, key);
    let mut checks = vec![general("leaving-dashboard")];
    let people = vec![("people", Figure::of(f64::from(plan.people), Quantity::Count))];
    checks.push(Check { figures: people, ..general("leaving-seats") });
    if let Some(gross_kg) = stated(plan.vehicle.gross_limit_kg) {
        let gross = vec![("gross", Figure::of(gross_kg, Quantity::MassKg))];
        checks.push(Check { figures: gross, ..general("leaving-load") });
    }
    checks.push(general("leaving-handbrake"));
    checks
}
