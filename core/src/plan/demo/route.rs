//! Where they go, and the water they use.

use super::about;
use crate::plan::{Estimate, Money, Night, Offer, Per, Signal, Stay, WaterUse};

/// The stays from April to September, one row a stay: place, nights, hours and kilometres to get there, days of work
/// a week, what is there.
pub(super) fn stays() -> Vec<Stay> {
    use Signal::{Good, None, Weak};
    vec![
        stay("Gravel lot above Tarnhollow", 2, 2.5, 150.0, 0, wild(Weak, 12.0)),
        stay("Strawberry tunnels, Orlenbeck", 24, 1.5, 85.0, 6, orchard(18.0, Good, Some(3))),
        stay("Wash place, Quillbridge", 1, 1.0, 45.0, 0, wash_place(19)),
        stay("Forest track near Ossel", 2, 1.0, 40.0, 0, wild(None, 30.0)),
        stay("Cherry orchard, Hindlefold", 27, 2.0, 120.0, 6, orchard(19.0, Weak, Option::None)),
        stay("Meadow at the old ferry", 4, 1.5, 70.0, 0, meadow()),
        stay("Wash place, Pellby", 1, 0.5, 25.0, 0, wash_place(17)),
        stay("Apricot terraces, Sennick", 22, 3.0, 190.0, 6, orchard(18.0, Good, Some(2))),
        stay("Lay-by at Corrin Water", 2, 2.0, 110.0, 0, wild(Weak, 18.0)),
        stay("Currant fields, Haverlund", 22, 1.0, 60.0, 5, orchard(18.0, Good, Option::None)),
        stay("Quarry lake near Stennet", 2, 1.0, 50.0, 0, wild(None, 25.0)),
        stay("Wash place, Brindal", 1, 0.5, 30.0, 0, wash_place(19)),
        stay("Plum orchard, Velm", 21, 2.0, 130.0, 6, orchard(18.0, Weak, Some(2))),
        stay("Ridge above Upper Garrow", 1, 1.5, 75.0, 0, wild(Good, 20.0)),
        stay("Apple orchard, Norrinfell", 20, 2.5, 160.0, 6, orchard(17.0, Good, Option::None)),
    ]
}

fn stay(place: &str, nights: u32, hours: f64, km: f64, working_days_per_week: u32, offers: Offer) -> Stay {
    // A day's way may take half as long again: the likely hours, and what a bad day makes of them.
    let drive_hours = Some(about(hours * 0.9, hours, hours * 1.5));
    Stay {
        id: 0,
        place: place.to_owned(),
        nights,
        drive_hours,
        drive_km: Some(km.into()),
        working_days_per_week,
        offers,
    }
}

/// Nothing is there, and nobody was asked.
fn wild(signal: Signal, fallback_km: f64) -> Offer {
    Offer { signal, fallback_km: Some(fallback_km), night: Night::Unknown, ..Offer::default() }
}

/// An evening's mains in the yard, a tap, a drain and a toilet.
fn orchard(mains_from_hour: f64, signal: Signal, euros_per_night: Option<i64>) -> Offer {
    Offer {
        mains_hours: Some(about(2.0, 3.0, 4.0)),
        mains_from_hour: Some(mains_from_hour),
        mains_w: Some(2_000.0),
        water: true,
        emptying: true,
        toilet: true,
        rubbish: true,
        signal,
        price_per_night: euros_per_night.map(euros),
        night: Night::Allowed,
        ..Offer::default()
    }
}

/// Everything for one night.
fn wash_place(euros_per_night: i64) -> Offer {
    Offer {
        mains_hours: Some(Estimate::Plain(12.0)),
        mains_from_hour: Some(18.0),
        shower: true,
        laundry: true,
        fuel: true,
        ..orchard(18.0, Signal::Good, Some(euros_per_night))
    }
}

/// Days off by the river: a pump and a drain, but no mains.
fn meadow() -> Offer {
    Offer { mains_hours: None, mains_from_hour: None, mains_w: None, ..orchard(18.0, Signal::Weak, Some(6)) }
}

fn euros(amount: i64) -> Estimate<Money> {
    Money::whole(amount).into()
}

/// What a person uses a day when every litre is carried.
pub(super) fn water_uses() -> Vec<WaterUse> {
    let each = |name: &str, litres_per_day: Estimate<f64>, to_grey_percent| WaterUse {
        id: 0,
        name: name.to_owned(),
        litres_per_day,
        per: Per::Person,
        to_grey_percent,
    };
    vec![
        each("Drinking and tea", about(2.0, 2.5, 3.5), 0.0),
        each("Cooking", about(1.0, 1.5, 2.0), 20.0),
        each("Washing at the bowl", about(1.0, 1.5, 2.5), 90.0),
    ]
}
