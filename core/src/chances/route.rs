//! What of the route is not certain: how far and how long is driven, and how long sockets are there.

use super::answer::What;
use super::inputs::{Inputs, Number, Range};
use crate::plan::{Estimate, Id, Mode, Offer, Path, Plan};
use crate::run::Day;

/// The entries of the route that its days come from.
pub(super) struct Route {
    entries: Vec<Entry>,
}

/// A stay, or a day of the week.
struct Entry {
    id: Id,
    hours: Number,
    km: Number,
    mains_hours: Number,
}

impl Route {
    /// The route that counts. Hours and kilometres of an entry are drawn as one: whoever drives longer than is likely drives
    /// farther. Of the two, what is no range is sure.
    pub fn new(plan: &Plan, inputs: &mut Inputs) -> Self {
        let mut entries = Vec::new();
        let mut add = |id: Id, hours: Option<Estimate<f64>>, km: Option<Estimate<f64>>, offer: &Offer| {
            let path = |field: &str| Path::entry(list(plan), id).child(field);
            let is_range = |estimate: Option<Estimate<f64>>| estimate.and_then(Range::of).is_some();
            let driving = if is_range(hours) { "drive_hours" } else { "drive_km" };
            let mut number = |what: What, field: &str, estimate: Option<Estimate<f64>>| {
                inputs.number(what, id, &|| path(field), estimate.unwrap_or_default())
            };
            let hours = number(What::Driving, driving, hours);
            let km = number(What::Driving, driving, km);
            let mains_hours = number(What::Mains, "offers/mains_hours", offer.mains_hours);
            entries.push(Entry { id, hours, km, mains_hours });
        };
        match plan.calendar.mode {
            Mode::Stays => {
                plan.stays.iter().for_each(|stay| add(stay.id, stay.drive_hours, stay.drive_km, &stay.offers));
            }
            Mode::Week => plan.week.iter().for_each(|day| add(day.id, day.drive_hours, day.drive_km, &day.offers)),
        }
        Self { entries }
    }

    fn of(&self, source: Option<Id>) -> Option<&Entry> {
        self.entries.iter().find(|entry| Some(entry.id) == source)
    }

    /// The kilometres of a day on which something is driven.
    pub fn km(&self, day: &Day) -> Number {
        self.of(day.source).map_or(Number::Sure(day.drive_km), |entry| entry.km)
    }

    /// The hours that are driven on a day that comes from an entry, and those of its socket.
    pub fn hours(&self, source: Option<Id>) -> (Number, Number) {
        self.of(source).map_or((Number::Sure(0.0), Number::Sure(0.0)), |entry| (entry.hours, entry.mains_hours))
    }
}

/// What an entry of the route offers, and where it stands.
pub(super) fn offered(plan: &Plan, id: Id) -> Option<(Path, &Offer)> {
    let offer = match plan.calendar.mode {
        Mode::Stays => &plan.stays.iter().find(|stay| stay.id == id)?.offers,
        Mode::Week => &plan.week.iter().find(|day| day.id == id)?.offers,
    };
    Some((Path::entry(list(plan), id), offer))
}

/// The list that the entries of the route stand in.
fn list(plan: &Plan) -> &'static str {
    match plan.calendar.mode {
        Mode::Stays => "stays",
        Mode::Week => "week",
    }
}
