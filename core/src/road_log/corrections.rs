//! Corrections of a plan by what was learned: changes that a person accepts, or not. What was learned goes in as a range.

use super::learned::{Learned, as_money};
use crate::plan::{Cost, CostEvery, CostPhase, Draw, Edit, Estimate, List, Mode, Path, Plain, Plan, Works};
use crate::run::MOST_DAYS;

/// How wide the plan's ranges of water are, as a share of the likely use: half of it, for low and high are its ends.
pub(super) fn water_spread(plan: &Plan) -> f64 {
    let ranges = plan.water_uses.iter().map(|water_use| water_use.litres_per_day);
    let (width, likely) = ranges
        .fold((0.0, 0.0), |(width, likely), litres| (width + (litres.high() - litres.low()), likely + litres.likely()));
    let spread = width / 2.0 / likely;
    if spread.is_finite() && spread > 0.0 { spread.min(1.0) } else { 0.0 }
}

/// What a number becomes: low, likely and high as they were learned.
fn scaled(value: f64, learned: &Learned, digits: f64) -> Estimate<f64> {
    let round = |value: f64| libm::round(value * digits) / digits;
    let by = |to: f64| round((value * to / learned.planned).clamp(0.0, 1e6));
    let (low, likely, high) = (by(learned.low), by(learned.mean), by(learned.high));
    if low < likely && likely < high { Estimate::Range { low, likely, high } } else { Estimate::Plain(likely) }
}

fn all(edits: Vec<Edit>) -> Option<Edit> {
    (!edits.is_empty()).then_some(Edit::All { edits })
}

pub(super) fn of_water(plan: &Plan, learned: &Learned) -> Option<Edit> {
    let uses = plan.water_uses.iter().map(|water_use| {
        let path = Path::entry(List::WaterUses.name(), water_use.id).child("litres_per_day");
        (path, water_use.litres_per_day.likely())
    });
    let items = plan.carried().filter_map(|item| {
        let path = Path::entry(List::Kit.name(), item.id).child("water/litres_per_day");
        Some((path, item.water?.litres_per_day.likely()))
    });
    let edits = uses.chain(items).filter(|(_, litres)| *litres > 0.0);
    all(edits.map(|(path, litres)| Edit::set(path, scaled(litres, learned, 100.0).to_plain())).collect())
}

/// The running costs by the month or the week that are a range are what nobody knew; without any, the largest of them is.
pub(super) fn of_spending(plan: &Plan, learned: &Learned) -> Option<Edit> {
    let is_running = |cost: &&Cost| {
        cost.phase != CostPhase::Home
            && matches!(cost.every, CostEvery::Month | CostEvery::Week)
            && cost.amount.is_some()
    };
    let a_day = |cost: &Cost| {
        let amount = cost.amount.map_or(0.0, |amount| amount.likely().to_plot());
        amount / days_between_payments(cost)
    };
    let running: Vec<&Cost> = plan.costs.iter().filter(is_running).collect();
    let mut open: Vec<&Cost> =
        running.iter().copied().filter(|cost| matches!(cost.amount, Some(Estimate::Range { .. }))).collect();
    if open.is_empty() {
        open.extend(running.into_iter().max_by(|a, b| a_day(a).total_cmp(&a_day(b))));
    }
    let sum: f64 = open.iter().map(|cost| a_day(cost)).sum();
    if sum <= 0.0 {
        return None;
    }
    let edits = open.iter().filter_map(|cost| {
        let share = a_day(cost) / sum;
        // What a day costs more or less than planned falls on these.
        let to = |learned_a_day: f64| {
            let more = (learned_a_day - learned.planned) * share;
            as_money(((a_day(cost) + more) * days_between_payments(cost)).max(0.0), plan)
        };
        let (low, likely, high) = (to(learned.low)?, to(learned.mean)?, to(learned.high)?);
        let amount =
            if low < likely && likely < high { Estimate::Range { low, likely, high } } else { Estimate::Plain(likely) };
        Some(Edit::set(Path::entry(List::Costs.name(), cost.id).child("amount"), amount.to_plain()))
    });
    all(edits.collect())
}

fn days_between_payments(cost: &Cost) -> f64 {
    /// Days of an average month of the Gregorian calendar.
    const MONTH: f64 = 365.2425 / 12.0;
    if cost.every == CostEvery::Week { 7.0 } else { MONTH }
}

/// A label that says so many watt-hours a day takes more or less; of one without, its walls are thinner or thicker.
pub(super) fn of_cooling(plan: &Plan, learned: &Learned) -> Option<Edit> {
    let edits =
        hanging(plan, learned).filter(|(_, draw)| draw.works == Some(Works::Cooling)).filter_map(|(id, draw)| {
            let at = |field: &str| Path::entry(List::Kit.name(), id).child(field);
            let factor = learned.mean / learned.planned;
            match (draw.label_wh, draw.wall_mm) {
                (Some(label_wh), _) => Some(Edit::set(at("draw/label_wh"), libm::round(label_wh * factor))),
                (None, Some(wall_mm)) if factor > 0.0 => {
                    Some(Edit::set(at("draw/wall_mm"), libm::round((wall_mm / factor).clamp(1.0, 500.0))))
                }
                _ => None,
            }
        });
    all(edits.collect())
}

/// What runs by the clock runs longer or shorter, as far as a day has hours; beyond that it is stronger.
pub(super) fn of_draws(plan: &Plan, learned: &Learned) -> Option<Edit> {
    let by_clock = hanging(plan, learned).filter(|(_, draw)| draw.works.unwrap_or_default() == Works::ByClock);
    let edits = by_clock.map(|(id, draw)| {
        let at = |field: &str| Path::entry(List::Kit.name(), id).child(field);
        match draw.hours_per_day {
            Some(hours) if hours.likely() * learned.high / learned.planned <= 24.0 => {
                Edit::set(at("draw/hours_per_day"), scaled(hours.likely(), learned, 100.0).to_plain())
            }
            _ => Edit::set(at("draw/power_w"), scaled(draw.power_w.likely(), learned, 10.0).to_plain()),
        }
    });
    all(edits.collect())
}

/// What hangs on the store.
fn hanging<'a>(plan: &'a Plan, learned: &Learned) -> impl Iterator<Item = (u32, Draw)> + use<'a> {
    let first = plan.carried().find(|item| item.store.is_some()).map(|item| item.id);
    let store = learned.store;
    plan.carried()
        .filter_map(|item| Some((item.id, item.draw?)))
        .filter(move |(_, draw)| draw.store.or(first) == Some(store))
}

/// What is driven besides the way of the plan comes to the way: a stay's days at its drive, a week's days at each of them.
pub(super) fn of_driving(plan: &Plan, learned: &Learned) -> Option<Edit> {
    let round = |km: f64| libm::round(km.clamp(0.0, 1e5));
    let more = |likely: f64, days: f64| {
        let at = |extra: f64| round(likely + extra.max(0.0) * days);
        let (low, likely, high) = (at(learned.low), at(learned.mean), at(learned.high));
        if low < likely && likely < high { Estimate::Range { low, likely, high } } else { Estimate::Plain(likely) }
    };
    let edits = match plan.calendar.mode {
        Mode::Stays => plan
            .stays
            .iter()
            .map(|stay| {
                let km = stay.drive_km.map_or(0.0, |km| km.likely());
                let path = Path::entry(List::Stays.name(), stay.id).child("drive_km");
                Edit::set(path, more(km, f64::from(stay.nights.min(MOST_DAYS))).to_plain())
            })
            .collect(),
        Mode::Week => plan
            .week
            .iter()
            .map(|day| {
                let km = day.drive_km.map_or(0.0, |km| km.likely());
                let path = Path::entry(List::Week.name(), day.id).child("drive_km");
                Edit::set(path, more(km, 1.0).to_plain())
            })
            .collect(),
    };
    all(edits)
}
