//! What the work on the road has around it, as other balances have worked it out.

use crate::energy::run::{Course, DrawCourse};
use crate::plan::Plan;
use crate::run::Gone;
use crate::{power, signal};

/// How warm it is inside on average, in °C, and whether the work has power, hour by hour of the road; empty where that is not
/// known.
pub(crate) fn of(plan: &Plan, hours: &Gone) -> (Vec<f64>, Vec<bool>) {
    let inside_c = hours.room.hours.iter().map(|done| done.mean_c).collect();
    (inside_c, served(plan, &hours.electrics, &hours.power))
}

/// Whether what the work of a plan needs has power, hour by hour of the road; empty where nobody works or nothing that it needs
/// draws any.
///
/// The course of the stores tells of a draw how much it did not get and between which hours, not in which of them. So an hour
/// counts as one without power when the store that the draw hangs on gave less than was wanted of it in that hour, and it is
/// none before the first or after the last in which the draw went short. A draw that is never served, and one that has no store
/// to run on, has no power in any hour. A draw that gives way to others for some of its hours only, because all together are
/// above what an outlet gives, counts as served.
fn served(plan: &Plan, electrics: &power::Input, course: &Course) -> Vec<bool> {
    if plan.work.work_hours.is_none() || signal::powered(plan).next().is_none() {
        return Vec::new();
    }
    let is_of_work = |id| signal::powered(plan).any(|item| item.id == id);
    let mut served = vec![true; electrics.setup.hours.len()];
    if electrics.without_store.iter().any(|id| is_of_work(*id)) {
        served.fill(false);
    }
    for (at, _) in electrics.draws.iter().enumerate().filter(|(_, hanging)| is_of_work(hanging.item)) {
        let (Some(draw), Some(of)) = (electrics.setup.draws.get(at), course.draws.get(at)) else { continue };
        if is_never_served(of) {
            served.fill(false);
        }
        let Some((first, last)) = of.first_hour.iter().flatten().min().copied().zip(of.last_hour) else { continue };
        let Some(store) = course.stores.get(draw.store) else { continue };
        for (hour, (served, of)) in served.iter_mut().zip(&store.hours).enumerate() {
            *served &= of.missing_wh() <= 0.0 || hour < first || hour > last;
        }
    }
    served
}

/// Whether a draw got nothing of what it wanted, apart from rounding.
fn is_never_served(of: &DrawCourse) -> bool {
    let missing_wh: f64 = of.by_limit_wh.iter().sum();
    missing_wh > 0.0 && missing_wh >= of.wanted_wh * (1.0 - 1e-9)
}
