//! Two days of a store: the charge, and above it when it is dark, when the van drives, when there is mains and sun.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, Quantity};
use kerbstead_core::power::Hour;
use kerbstead_core::words::Key;

use crate::el::{View, el, nothing};
use crate::locale::plain_sentence;
use crate::parts::{Lane, TwoDays, around, time};
use crate::state::App;

/// A kind of hour, with its name and its class.
type Kind = (Key, &'static str, fn(&Hour) -> bool);

const KINDS: [Kind; 4] = [
    (key!("hour-dark"), "hours dark", |hour| hour.dark),
    (key!("hour-driving"), "hours driving", |hour| hour.driving),
    (key!("hour-mains"), "hours mains", |hour| hour.mains),
    (key!("hour-sun"), "hours sun", |hour| hour.sun),
];

/// The day of the hour that is picked, and the next.
pub fn day(app: App, id: Id, picked: Option<usize>) -> View {
    let Some(picked) = picked else { return el("p").put(key!("power-day-hint")).done() };
    app.settled_assessment(|assessment| {
        let power = &assessment.power;
        let store = power.stores.iter().find(|store| store.item == id);
        let Some((store, begins)) = store.zip(power.from) else { return nothing() };
        let (range, from) = around(picked, begins, store.charge_wh.len());
        let charge_wh = store.charge_wh.get(range.clone()).unwrap_or_default().to_vec();
        let hours = power.hours.get(range).unwrap_or_default();
        let lane =
            |(name, class, is): &Kind| Lane { name: plain_sentence(*name), class, is: hours.iter().map(is).collect() };
        TwoDays {
            from,
            lanes: KINDS.iter().map(lane).collect(),
            said: said(&charge_wh),
            courses: vec![(key!("hour-charge"), charge_wh)],
            quantity: Quantity::EnergyWh,
            levels: vec![0.0, store.usable_wh / 2.0, store.usable_wh],
            table: "power-day-table",
        }
        .show()
    })
}

fn said(charge_wh: &[f64]) -> String {
    let lowest = charge_wh.iter().copied().enumerate().min_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or_default();
    let figures = vec![
        ("lowest", Figure::of(lowest.1, Quantity::EnergyWh)),
        ("at", Figure::Name(time(lowest.0 + 1))),
        ("end", Figure::of(charge_wh.last().copied().unwrap_or_default(), Quantity::EnergyWh)),
    ];
    tell!("power-day-charge", &figures)
}
