//! Something that takes energy: when, how strongly, from which store, and how much it matters.
//!
//! ```
//! use kerbstead_core::energy::draw::{Draw, Need, Outlet};
//! use kerbstead_core::energy::heat::{Heating, boiling_c};
//! let water = Heating { water_kg: 0.5, from_c: 8.0, to_c: boiling_c(0.0), efficiency: 0.9, ..Heating::default() };
//! let kettle = Draw::heating(&water, 600.0, &[7.0, 16.5]);
//! assert_eq!(kettle.outlet, Outlet::Ac);
//! let Need::Spans(spans) = &kettle.need else { panic!() };
//! assert!((spans[0].hours - 0.0991).abs() < 1e-3);
//! ```

use super::constants::MOST_W;
use super::fridge::Fridge;
use super::heat::Heating;
use super::{sound, within};

/// Something that takes energy.
#[derive(Clone, Debug, PartialEq)]
pub struct Draw {
    /// What it takes while it runs, in W. A fridge brings its own.
    pub power_w: f64,
    /// What it takes in the moment of starting, in W; less than `power_w` counts as that.
    pub surge_w: f64,
    /// Where it hangs.
    pub outlet: Outlet,
    /// When it runs.
    pub need: Need,
    /// Share of its spans in which it really does, at moments that nobody knows, 0 to 1.
    pub duty: f64,
    /// On which days.
    pub days: Days,
    /// The chance that it is used on such a day, 0 to 1. A run without chances takes so much of its energy.
    pub chance: f64,
    /// The store that it hangs on, by its position.
    pub store: usize,
    /// Whether it can be hung on another store in an hour in which its own is empty.
    pub may_move: bool,
    /// What matters more is served longer; of equal ones the earlier in the list.
    pub importance: u8,
}

/// Where a draw hangs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Outlet {
    /// Mains voltage, through the inverter.
    #[default]
    Ac,
    /// Low voltage, without the inverter: 12 V or USB.
    Dc,
}

/// When a draw runs on a day.
#[derive(Clone, Debug, PartialEq)]
pub enum Need {
    /// From and for how long.
    Spans(Vec<Span>),
    /// The share of each hour of the day in which it runs, at moments that nobody knows.
    ByHour([f64; 24]),
    /// The share of all time in which it runs, at moments that nobody knows.
    Duty(f64),
    /// A fridge, whose share depends on the air.
    Fridge(Fridge),
    /// The share of each hour of the run in which it runs, at moments that nobody knows: an electric heater with a
    /// thermostat.
    Hours(Vec<f64>),
}

/// A time of the day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Hour of the day, 0 to below 24.
    pub from_hour: f64,
    /// How long, in hours, at most 24; it may last past midnight.
    pub hours: f64,
}

/// Which days a draw is used on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Days {
    /// All.
    Every,
    /// Those of the week, of which the first of a run is day 0.
    Week([bool; 7]),
    /// One of so many.
    OneIn {
        /// Every so many days; 0 counts as 1.
        days: usize,
        /// The first of them, from 0.
        first: usize,
    },
    /// These days of a run, from 0; those that are not in the list are none.
    These(Vec<bool>),
}

impl Days {
    /// Whether the day of the run, from 0, is one.
    pub fn has(&self, day: usize) -> bool {
        match self {
            Self::Every => true,
            Self::Week(week) => week.get(day % 7).copied().unwrap_or(false),
            Self::OneIn { days, first } => day >= *first && (day - first).is_multiple_of((*days).max(1)),
            Self::These(list) => list.get(day).copied().unwrap_or(false),
        }
    }
}

impl Default for Draw {
    /// Nothing, at a low-voltage outlet of the first store, every day.
    fn default() -> Self {
        Self {
            power_w: 0.0,
            surge_w: 0.0,
            outlet: Outlet::Dc,
            need: Need::Duty(1.0),
            duty: 1.0,
            days: Days::Every,
            chance: 1.0,
            store: 0,
            may_move: false,
            importance: 0,
        }
    }
}

impl Draw {
    /// A kettle or hob of a power, in W, that heats at these hours of every day; it runs as long as the heat takes.
    pub fn heating(heating: &Heating, power_w: f64, at_hours: &[f64]) -> Self {
        let hours = if power_w > 0.0 { within(heating.energy_wh() / power_w, 0.0, 24.0) } else { 0.0 };
        let span = |&from_hour: &f64| Span { from_hour, hours };
        Self {
            power_w,
            surge_w: power_w,
            outlet: Outlet::Ac,
            need: Need::Spans(at_hours.iter().map(span).collect()),
            ..Self::default()
        }
    }

    /// A fridge at a low-voltage outlet, day and night.
    pub fn fridge(fridge: Fridge) -> Self {
        Self { power_w: fridge.running_w, surge_w: fridge.running_w, need: Need::Fridge(fridge), ..Self::default() }
    }

    /// Hours of an average day in which it runs, without its chance; a fridge in air of 20 °C.
    pub fn usual_hours(&self) -> f64 {
        match &self.need {
            Need::Spans(spans) => spans.iter().map(|span| span.hours).sum::<f64>() * self.duty,
            Need::ByHour(shares) => shares.iter().sum(),
            Need::Duty(share) => share * 24.0,
            Need::Fridge(fridge) if fridge.running_w > 0.0 => fridge.wh_per_day(20.0) / fridge.running_w,
            Need::Fridge(_) => 0.0,
            Need::Hours(shares) => shares.iter().sum::<f64>() * 24.0 / shares.len().max(1) as f64,
        }
    }

    /// The draw with nothing infinite, negative or not a number in it.
    pub(crate) fn made_sound(&self) -> Self {
        let need = match &self.need {
            Need::Spans(spans) => Need::Spans(spans.iter().take(100).map(Span::made_sound).collect()),
            Need::ByHour(shares) => Need::ByHour(shares.map(|share| sound(share, 1.0))),
            Need::Duty(share) => Need::Duty(sound(*share, 1.0)),
            Need::Fridge(fridge) => Need::Fridge(fridge.made_sound()),
            Need::Hours(shares) => Need::Hours(shares.iter().map(|share| sound(*share, 1.0)).collect()),
        };
        let power_w = match &need {
            Need::Fridge(fridge) => fridge.running_w,
            _ => sound(self.power_w, MOST_W),
        };
        let surge_w = within(self.surge_w, power_w, 10.0 * MOST_W);
        Self {
            power_w,
            surge_w,
            need,
            days: self.days.clone(),
            chance: sound(self.chance, 1.0),
            duty: sound(self.duty, 1.0),
            ..*self
        }
    }
}

impl Span {
    fn made_sound(&self) -> Self {
        Self { from_hour: sound(self.from_hour, 24.0), hours: sound(self.hours, 24.0) }
    }
}

/// A part of an hour in which a draw runs, all of it or at unknown moments.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    /// Which draw.
    pub draw: usize,
    /// Part of the hour, 0 to 1.
    pub from: f64,
    /// Part of the hour, 0 to 1.
    pub to: f64,
    /// Share of that part in which it runs.
    pub duty: f64,
}

/// Adds the pieces of a sound draw in the hour of a day; `fridge_c` is the temperature of its box, if it is one.
pub(super) fn pieces_into(
    draw: &Draw,
    at: usize,
    day: usize,
    hour: usize,
    air_c: f64,
    fridge_c: &mut f64,
    to: &mut Vec<Piece>,
) {
    let all = |duty: f64| Piece { draw: at, from: 0.0, to: 1.0, duty };
    let is_on = draw.days.has(day);
    match &draw.need {
        Need::Spans(spans) => {
            let was_on = day > 0 && draw.days.has(day - 1);
            for span in spans {
                let mut add = |from: f64| {
                    let (from, end) = (from - hour as f64, from + span.hours - hour as f64);
                    if from < 1.0 && end > 0.0 {
                        to.push(Piece { draw: at, from: sound(from, 1.0), to: sound(end, 1.0), duty: draw.duty });
                    }
                };
                if is_on {
                    add(span.from_hour);
                }
                if was_on && span.from_hour + span.hours > 24.0 {
                    add(span.from_hour - 24.0);
                }
            }
        }
        Need::ByHour(shares) if is_on => {
            to.extend(shares.get(hour).filter(|share| **share > 0.0).map(|share| all(*share)));
        }
        Need::Duty(share) if is_on && *share > 0.0 => to.push(all(*share)),
        Need::Fridge(fridge) if is_on => {
            let (after_c, share) = fridge.sound_hour(*fridge_c, air_c);
            *fridge_c = after_c;
            if share > 0.0 {
                to.push(all(share));
            }
        }
        Need::Hours(shares) if is_on => {
            to.extend(shares.get(day * 24 + hour).filter(|share| **share > 0.0).map(|share| all(*share)));
        }
        _ => {}
    }
}
