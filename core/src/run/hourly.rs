//! The hours of the road: stores and room side by side. The stores are as warm as the room was when an hour begins; the room
//! gets the heat that they gave in it. An empty store warms nobody, and a cold room keeps stores from charging.

use crate::energy::draw::Need;
use crate::energy::run::{Course, Walk};
use crate::energy::setup::Given;
use crate::plan::Plan;
use crate::power::{self, Skies};
use crate::run::Day;
use crate::thermal::people::GivenOff;
use crate::thermal::run::{Course as RoomCourse, Walk as Room};
use crate::warmth;
use crate::water::Frost;

/// What goes through the hours: the electric side and the warm side.
pub(crate) struct Hourly {
    /// Stores, what draws on them and what charges them.
    pub electrics: power::Input,
    /// The room, and what each hour brings to it.
    pub warmth: warmth::Input,
}

/// The same with its courses. The electric side says how warm it was beside the stores, and when heaters wanted to run.
#[derive(Clone, Debug, PartialEq)]
pub struct Gone {
    /// The electric side.
    pub electrics: power::Input,
    /// Its course.
    pub power: Course,
    /// The warm side.
    pub warmth: warmth::Input,
    /// Its course; empty where the air outside is not known.
    pub room: RoomCourse,
}

impl Gone {
    /// How long it froze, by day of the road.
    pub fn frost(&self) -> Frost {
        if self.room.hours.is_empty() {
            return Frost::default();
        }
        let inside = || self.room.hours.iter().map(|done| done.inside_c);
        let outside = || self.warmth.hours.iter().map(|hour| hour.air_c);
        Frost {
            inside_h: below_zero(inside()),
            outside_h: below_zero(outside()),
            coldest_inside_c: inside().reduce(f64::min),
            coldest_outside_c: outside().reduce(f64::min),
        }
    }
}

/// Hours below 0 °C of each day.
fn below_zero(hours_c: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut days = Vec::new();
    for (hour, celsius) in hours_c.enumerate() {
        if hour % 24 == 0 {
            days.push(0.0);
        }
        if let Some(day) = days.last_mut().filter(|_| celsius < 0.0) {
            *day += 1.0;
        }
    }
    days
}

impl Hourly {
    /// Of a plan's kit along these days under their skies.
    pub fn new(plan: &Plan, days: &[&Day], skies: &Skies) -> Self {
        Self { electrics: power::Input::beneath(plan, days, skies), warmth: warmth::Input::new(plan, days, skies) }
    }

    /// What the stores open with, in Wh.
    pub fn opening_wh(&self) -> Vec<f64> {
        Walk::new(&self.electrics.setup).opening_wh()
    }
}

/// An hour after the other.
pub(crate) struct Hours<'a> {
    of: &'a Hourly,
    stores: Walk<'a>,
    room: Option<Room>,
    /// The draws that want to run by a thermostat, by position, and what they take together, in W.
    warmers: Vec<usize>,
    warmers_w: f64,
    /// Beside the stores in each hour, in °C: the air and what is heavy.
    beside_c: Vec<[f64; 2]>,
    wanted: Vec<f64>,
    /// What ran by a thermostat in the hour before, and what else gave heat, in W.
    before_w: [f64; 2],
    fumes: GivenOff,
    sun_w_m2: Vec<f64>,
}

impl<'a> Hours<'a> {
    pub fn new(of: &'a Hourly) -> Self {
        let (electrics, warmth) = (&of.electrics, &of.warmth);
        let draws = electrics.setup.draws.iter().enumerate();
        let warmers = || draws.clone().filter(|(_, draw)| matches!(draw.need, Need::Hours(_)));
        Self {
            stores: Walk::new(&electrics.setup),
            room: warmth.is_air_known.then(|| Room::new(&warmth.setup, warmth.hours.first())),
            warmers: warmers().map(|(at, _)| at).collect(),
            warmers_w: warmers().map(|(_, draw)| draw.power_w).sum(),
            beside_c: Vec::new(),
            wanted: Vec::new(),
            before_w: [0.0; 2],
            fumes: GivenOff::default(),
            sun_w_m2: Vec::new(),
            of,
        }
    }

    /// What each store holds when it is full, in Wh.
    pub fn full_wh(&self) -> Vec<f64> {
        self.stores.full_wh()
    }

    /// The next hour, from charges to charges.
    pub fn step(&mut self, charge_wh: &mut [f64]) {
        let hour = self.beside_c.len();
        let Some(given) = self.of.electrics.setup.hours.get(hour).copied() else { return };
        let Some((room, air)) = self.room.as_mut().zip(self.of.warmth.hours.get(hour)) else {
            self.beside_c.push([given.air_c, given.store_c]);
            return self.stores.step(charge_wh, &given);
        };
        let [air_c, store_c] = room.both_c();
        self.beside_c.push([air_c, store_c]);
        self.of.warmth.sun_into(hour, &mut self.sun_w_m2);
        let mut air = *air;
        air.inside = air.inside.and(self.fumes);
        let mut wanted_w = 0.0;
        if self.warmers_w > 0.0 {
            let mut expected = air;
            expected.inside.heat_w += self.before_w[1];
            wanted_w = room.lacks_w(&expected, &self.sun_w_m2).min(self.warmers_w);
            let share = wanted_w / self.warmers_w;
            for draw in &self.warmers {
                self.stores.want(*draw, share);
            }
            self.wanted.push(share);
        }
        self.stores.step(charge_wh, &Given { air_c, store_c, ..given });
        let heat_w = self.stores.heat_wh();
        self.before_w = [wanted_w, (heat_w - wanted_w).max(0.0)];
        air.inside.heat_w += heat_w;
        let done = room.step(&air, &self.sun_w_m2);
        // What a flame puts into the room comes an hour late; its heat is there already.
        let flame = GivenOff::flame(done.heater_wh * self.of.warmth.burners.1);
        self.fumes = GivenOff { heat_w: 0.0, ..flame };
    }

    /// What it came to.
    pub fn end(self) -> Ended {
        Ended {
            power: self.stores.end(),
            room: self.room.map(Room::end).unwrap_or_default(),
            beside_c: self.beside_c,
            wanted: self.wanted,
        }
    }
}

/// What is left of the hours.
pub(crate) struct Ended {
    power: Course,
    room: RoomCourse,
    beside_c: Vec<[f64; 2]>,
    wanted: Vec<f64>,
}

impl Ended {
    /// With what went through them.
    pub fn of(self, hourly: Hourly) -> Gone {
        let Hourly { mut electrics, warmth } = hourly;
        for (given, [air_c, store_c]) in electrics.setup.hours.iter_mut().zip(self.beside_c) {
            (given.air_c, given.store_c) = (air_c, store_c);
        }
        for draw in &mut electrics.setup.draws {
            if let Need::Hours(shares) = &mut draw.need {
                shares.clone_from(&self.wanted);
            }
        }
        Gone { electrics, power: self.power, warmth, room: self.room }
    }
}
