//! Answers from a setup: the heater for the coldest hour, what a layer changes, how hot it gets on a parked day, and what air
//! keeps the faces dry.

use super::constants::AIR_WH_M3K;
use super::damp::{dew_point_c, dry_m3_h, humidity_ratio, saturation_pa, vapour_pa};
use super::faces::{Faces, Now, Pull};
use super::layers::Layer;
use super::run::{Course, run};
use super::setup::{Hour, Setup};
use super::shell::Surface;
use super::vents::{Outside, Through};
use super::{sound, sound_c};

/// A room in an hour that lasts: what it is when nothing changes any more.
///
/// ```
/// use kerbstead_core::thermal::answers::Steady;
/// use kerbstead_core::thermal::people::GivenOff;
/// use kerbstead_core::thermal::setup::{Hour, Setup};
/// use kerbstead_core::thermal::layers::{Layer, Wall};
/// use kerbstead_core::thermal::shell::Surface;
/// let wall = Wall { layers: vec![Layer::Solid { thickness_m: 0.03, conductivity_w_mk: 0.034 }], ..Wall::default() };
/// let setup = Setup { shell: vec![Surface::side(20.0, wall, 0.0)], ..Setup::default() };
/// let hour = Hour { air_c: 2.0, inside: GivenOff { heat_w: 140.0, ..GivenOff::default() }, ..Hour::default() };
/// let steady = Steady::new(&setup, &hour, &[]);
/// assert!(steady.heater_w(steady.inside_c()) < 1e-6 && steady.heater_w(16.0) > 0.0);
/// ```
#[derive(Clone, Debug)]
pub struct Steady {
    faces: Faces,
    through: Through,
    now: Vec<Now>,
    pull: Pull,
    hour: Hour,
    pressure_pa: f64,
}

impl Steady {
    /// For an hour and the sun on each surface in W/m².
    pub fn new(setup: &Setup, hour: &Hour, sun_w_m2: &[f64]) -> Self {
        let mut steady = Self {
            faces: Faces::of(&setup.shell),
            through: Through::of(&setup.vents),
            now: vec![],
            pull: Pull::default(),
            hour: *hour,
            pressure_pa: sound(setup.pressure_pa, 1e4, 2e5),
        };
        steady.turn_to(hour, sun_w_m2);
        steady
    }

    fn turn_to(&mut self, hour: &Hour, sun_w_m2: &[f64]) {
        self.hour = *hour;
        self.pull = self.faces.at(hour, sun_w_m2, &mut self.now);
    }

    /// Fresh air with the inside at a temperature, in m³/h.
    pub fn air_m3_h(&self, inside_c: f64) -> f64 {
        let hour = &self.hour;
        let outside = Outside::new(hour.air_c, hour.wind_m_s, hour.open, hour.fan_m3_h);
        self.through.flow_m3_h(sound_c(inside_c), outside)
    }

    /// Heat that goes out at a temperature beyond what comes in without a heater, in W.
    pub fn lacks_w(&self, inside_c: f64) -> f64 {
        let inside_c = sound_c(inside_c);
        let vents_w = AIR_WH_M3K * self.air_m3_h(inside_c) * (inside_c - sound_c(self.hour.air_c));
        let comes_w = self.pull.comes_w + self.pull.sun_w + sound(self.hour.inside.heat_w, -1e5, 1e5);
        self.pull.w_k * inside_c + vents_w - comes_w
    }

    /// Heater that keeps a temperature, in W; 0 where it is as warm without.
    pub fn heater_w(&self, wanted_c: f64) -> f64 {
        self.lacks_w(wanted_c).max(0.0)
    }

    /// Temperature without a heater, in °C, by halving: what goes out grows with it. -90 or 90 if it is not between them.
    pub fn inside_c(&self) -> f64 {
        let (mut low_c, mut high_c) = (-90.0, 90.0);
        for _ in 0..60 {
            let middle_c = f64::midpoint(low_c, high_c);
            if self.lacks_w(middle_c) > 0.0 { high_c = middle_c } else { low_c = middle_c }
        }
        f64::midpoint(low_c, high_c)
    }

    /// Inside of each face with the air at a temperature, in °C.
    pub fn faces_c(&self, inside_c: f64) -> Vec<f64> {
        self.now.iter().map(|now| now.inside_face_c(sound_c(inside_c))).collect()
    }

    /// Dew point inside with the air at a temperature while no face takes water, in °C; 90 at most.
    pub fn dew_point_c(&self, inside_c: f64) -> f64 {
        let room = super::damp::Room {
            volume_m3: 1.0,
            air_m3_h: self.air_m3_h(inside_c),
            outside_ratio: humidity_ratio(self.outside_pa(), self.pressure_pa),
            water_g_h: self.hour.inside.water_g_h,
        };
        dew_point_c(vapour_pa(room.steady_ratio(), self.pressure_pa))
    }

    /// Vapour pressure outside, in Pa.
    fn outside_pa(&self) -> f64 {
        sound(self.hour.relative_humidity, 0.0, 1.0) * saturation_pa(self.hour.air_c)
    }

    /// Fresh air that just keeps every face dry, in m³/h, while a heater keeps the inside at a temperature; none if outside air
    /// would wet the coldest face by itself. The heater has more to do for it.
    pub fn dry_m3_h(&self, inside_c: f64) -> Option<f64> {
        let coldest_c = self.faces_c(inside_c).into_iter().fold(90.0, f64::min);
        dry_m3_h(coldest_c, self.hour.inside.water_g_h, self.outside_pa(), self.pressure_pa)
    }

    /// The least air that a fan must blow out to keep every face dry without a heater, in m³/h: more air dries, and cools.
    /// Found among 60 flows up to 1,000 m³/h, each 1/6 of an octave apart, then by halving; none if none of them does.
    pub fn dry_unheated_m3_h(&self) -> Option<f64> {
        let is_dry = |fan_m3_h: f64| {
            let mut with = self.clone();
            with.hour.fan_m3_h = fan_m3_h;
            let inside_c = with.inside_c();
            with.is_dry(inside_c)
        };
        if is_dry(0.0) {
            return Some(0.0);
        }
        let flows = (0..60).map(|step| 1_000.0 * libm::exp2(f64::from(step - 59) / 6.0));
        let mut wet_m3_h = 0.0;
        for flow_m3_h in flows {
            if is_dry(flow_m3_h) {
                return Some(halve(wet_m3_h, flow_m3_h, is_dry));
            }
            wet_m3_h = flow_m3_h;
        }
        None
    }

    fn is_dry(&self, inside_c: f64) -> bool {
        let coldest_c = self.faces_c(inside_c).into_iter().fold(90.0, f64::min);
        let borne = humidity_ratio(saturation_pa(coldest_c), self.pressure_pa);
        borne >= humidity_ratio(saturation_pa(self.dew_point_c(inside_c)), self.pressure_pa)
    }
}

fn halve(mut no: f64, mut yes: f64, is_so: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..30 {
        let middle = f64::midpoint(no, yes);
        if is_so(middle) { yes = middle } else { no = middle }
    }
    yes
}

/// The heater that a wanted temperature takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Need {
    /// The hour that takes most.
    pub hour: usize,
    /// In W.
    pub heater_w: f64,
    /// Inside in that hour without it, in °C.
    pub without_c: f64,
}

/// The heater that keeps a temperature through every hour as if each lasted; none without hours. The hour that takes most need
/// not be the coldest: wind, sun and people count.
pub fn heater_for(setup: &Setup, wanted_c: f64) -> Option<Need> {
    let mut steady = Steady::new(setup, setup.hours.first()?, setup.sun_at(0));
    let (mut worst, mut most_w) = (0, f64::NEG_INFINITY);
    for (at, hour) in setup.hours.iter().enumerate() {
        steady.turn_to(hour, setup.sun_at(at));
        let lacks_w = steady.lacks_w(wanted_c);
        if lacks_w > most_w {
            (worst, most_w) = (at, lacks_w);
        }
    }
    steady.turn_to(setup.hours.get(worst)?, setup.sun_at(worst));
    Some(Need { hour: worst, heater_w: most_w.max(0.0), without_c: steady.inside_c() })
}

/// What one more layer changes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// Heat through the wall before, in W/(m² K).
    pub before_w_m2k: f64,
    /// And with it.
    pub after_w_m2k: f64,
    /// What the surface loses less, in W/K; below 0 if it loses more.
    pub saves_w_k: f64,
    /// Width that goes, in mm.
    pub width_mm: f64,
    /// Saved for each unit of money; none if it costs nothing.
    pub w_k_per_money: Option<f64>,
    /// Saved for each kilogram; none if it weighs nothing.
    pub w_k_per_kg: Option<f64>,
    /// Saved for each millimetre; none if it takes none.
    pub w_k_per_mm: Option<f64>,
}

/// What one more layer at a place (as [`super::layers::Wall::with`] counts) changes in a surface, at a cost and a mass for all of
/// it.
///
/// ```
/// use kerbstead_core::thermal::answers::layer_change;
/// use kerbstead_core::thermal::layers::{Layer, Wall};
/// use kerbstead_core::thermal::shell::Surface;
/// let steel = Layer::Solid { thickness_m: 0.0008, conductivity_w_mk: 50.0 };
/// let side = Surface::side(6.0, Wall { layers: vec![steel], ..Wall::default() }, 0.0);
/// let foil = layer_change(&side, 0, Layer::FOIL, 30.0, 1.0);
/// assert!(foil.saves_w_k < 1e-4); // without a gap
/// ```
pub fn layer_change(surface: &Surface, at: usize, layer: Layer, cost: f64, mass_kg: f64) -> Change {
    let after = surface.wall.with(at, layer);
    let (before_w_m2k, after_w_m2k) = (surface.wall.u_w_m2k(), after.u_w_m2k());
    let saves_w_k = surface.wall_m2() * (before_w_m2k - after_w_m2k);
    let width_mm = layer.thickness_m() * 1e3;
    let per = |divisor: f64| (divisor > 0.0).then(|| saves_w_k / sound(divisor, 1e-9, 1e12));
    Change {
        before_w_m2k,
        after_w_m2k,
        saves_w_k,
        width_mm,
        w_k_per_money: per(cost),
        w_k_per_kg: per(mass_kg),
        w_k_per_mm: per(width_mm),
    }
}

/// When it was hottest inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// The hour at whose end it was.
    pub hour: usize,
    /// In °C.
    pub inside_c: f64,
}

/// The hottest hour of a run, the first of several; none without hours.
pub fn peak(course: &Course) -> Option<Peak> {
    let all = course.hours.iter().enumerate().map(|(hour, done)| Peak { hour, inside_c: done.inside_c });
    all.reduce(|most, next| if next.inside_c > most.inside_c { next } else { most })
}

/// The hottest hour of a day like the one given, the heater off, after as many of these days as it takes until the next is the
/// same within 0.01 K, thirty at most: a heavy inside takes some to warm.
pub fn parked_day(setup: &Setup) -> Option<Peak> {
    let mut setup = setup.clone();
    setup.hours.iter_mut().for_each(|hour| hour.wanted_c = None);
    let mut hottest = peak(&run(&setup));
    for _ in 0..30 {
        let course = run(&setup);
        let last = course.hours.last()?;
        let moved_k = (last.inside_c - setup.start_c).abs();
        let mass_moved_k = setup.mass.map_or(0.0, |mass| (last.mass_c - mass.start_c).abs());
        setup.start_c = last.inside_c;
        setup.mass = setup.mass.map(|mass| super::setup::Mass { start_c: last.mass_c, ..mass });
        hottest = peak(&course);
        if moved_k < 0.01 && mass_moved_k < 0.01 {
            break;
        }
    }
    hottest
}
