//! The hours one after another. Within each, all but the temperatures, the water and the carbon dioxide inside is steady, and
//! these are followed in closed form.
//!
//! A heater gives, evenly over the hour, what brings the air to its thermostat at the end of it, or all it can. Air that
//! warmth moves is taken as at the mean temperature that the air would have with that of the hour's beginning.
//!
//! ```
//! use kerbstead_core::thermal::layers::{Layer, Wall};
//! use kerbstead_core::thermal::run::run;
//! use kerbstead_core::thermal::setup::{Hour, Setup};
//! use kerbstead_core::thermal::shell::Surface;
//! let wall = Wall { layers: vec![Layer::Solid { thickness_m: 0.03, conductivity_w_mk: 0.034 }], ..Wall::default() };
//! let cold = Hour { air_c: -5.0, wanted_c: Some(15.0), ..Hour::default() };
//! let setup = Setup { shell: vec![Surface::side(20.0, wall, 0.0)], heater_w: 2_000.0, hours: vec![cold; 3], ..Setup::default() };
//! let course = run(&setup);
//! assert!((course.hours[2].inside_c - 15.0).abs() < 1e-9);
//! assert!((course.hours[2].heater_wh - 20.0 * 20.0 / (0.13 + 0.03 / 0.034 + 1.0 / 24.59)).abs() < 0.01);
//! ```

pub use super::faces::{Face, Part};

use super::air_quality::Room;
use super::constants::AIR_WH_M3K;
use super::damp::{humidity_ratio, vapour_pa};
use super::faces::{Faces, Now, Pull};
use super::lump::{Course as Warming, Lump, Pair};
use super::moist::{Into, Moist};
use super::saturation::Table;
use super::setup::{Hour, Setup};
use super::vents::{Outside, Through};
use super::{decay_reach, sound, sound_c};

/// What an hour came to; what is not a mean or a sum is as at its end.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Done {
    /// Inside, in °C.
    pub inside_c: f64,
    /// Inside on average, in °C.
    pub mean_c: f64,
    /// The mass, in °C; the air's without one.
    pub mass_c: f64,
    /// Given by the heater, in Wh.
    pub heater_wh: f64,
    /// Come in through the shell, less what went out, in Wh.
    pub shell_wh: f64,
    /// Come in through windows from the sun, in Wh.
    pub sun_wh: f64,
    /// Come in with air, less what went out, in Wh.
    pub vents_wh: f64,
    /// Fresh air, in m³/h.
    pub air_m3_h: f64,
    /// Relative humidity inside, 0 to 1.
    pub relative_humidity: f64,
    /// Dew point inside, in °C.
    pub dew_point_c: f64,
    /// Humidity ratio inside, in kg/kg.
    pub humidity_ratio: f64,
    /// The same on average.
    pub mean_ratio: f64,
    /// Water that settled on faces, less what dried, in g.
    pub settled_g: f64,
    /// Carbon dioxide inside, in ppm.
    pub co2_ppm: f64,
    /// The same on average.
    pub mean_ppm: f64,
}

/// How wet a face got.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Wetness {
    /// Hours at whose end it is below the dew point.
    pub hours_below_dew: usize,
    /// Hours at whose end water lies on it.
    pub hours_wet: usize,
    /// The first hour that ends below the dew point.
    pub first_hour: Option<usize>,
    /// Water on it at the end of the run, in g.
    pub water_g: f64,
    /// Most that lay on it, in g.
    pub most_g: f64,
    /// Water that ran off it, in g.
    pub ran_off_g: f64,
}

/// A run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Course {
    /// The hours.
    pub hours: Vec<Done>,
    /// The faces: of each surface the wall, its ribs, its window, as far as they have an area.
    pub faces: Vec<Face>,
    /// How wet each face got.
    pub wetness: Vec<Wetness>,
    /// Inside of each face at the end of each hour, in °C, hour after hour.
    pub faces_c: Vec<f64>,
}

impl Course {
    /// The faces' temperatures at the end of an hour, in °C.
    pub fn faces_at(&self, hour: usize) -> &[f64] {
        let from = hour.saturating_mul(self.faces.len()).min(self.faces_c.len());
        self.faces_c.get(from..from.saturating_add(self.faces.len())).unwrap_or_default()
    }

    /// Whether a face is below the dew point at the end of an hour.
    pub fn is_below_dew(&self, face: usize, hour: usize) -> bool {
        let dew_c = self.hours.get(hour).map(|done| done.dew_point_c);
        self.faces_at(hour).get(face).zip(dew_c).is_some_and(|(face_c, dew_c)| *face_c < dew_c)
    }

    /// Since which hour a face has been below the dew point without a break, if it is at the end of this one.
    pub fn below_dew_since(&self, face: usize, hour: usize) -> Option<usize> {
        (0..=hour).rev().take_while(|at| self.is_below_dew(face, *at)).last()
    }

    /// Given by the heater, in Wh.
    pub fn heater_wh(&self) -> f64 {
        self.hours.iter().map(|done| done.heater_wh).sum()
    }
}

/// Runs a setup through its hours.
pub fn run(setup: &Setup) -> Course {
    let mut walk = Walk::new(setup, setup.hours.first());
    for (at, hour) in setup.hours.iter().enumerate() {
        walk.step(hour, setup.sun_at(at));
    }
    walk.end()
}

fn note(wetness: &mut [Wetness], at: usize, dew_c: f64, walk: &Walk) {
    let water_kg = walk.moist.water_kg.iter().zip(&walk.moist.ran_off_kg);
    for ((wet, face_c), (water_kg, ran_off_kg)) in wetness.iter_mut().zip(&walk.faces_c).zip(water_kg) {
        let is_below = *face_c < dew_c;
        wet.hours_below_dew += usize::from(is_below);
        if is_below && wet.first_hour.is_none() {
            wet.first_hour = Some(at);
        }
        wet.hours_wet += usize::from(*water_kg > 0.0);
        wet.water_g = water_kg * 1e3;
        wet.ran_off_g += ran_off_kg * 1e3;
        wet.most_g = wet.most_g.max(wet.water_g);
    }
}

/// A room on its way through the hours, for whoever knows each only when it comes.
pub struct Walk {
    course: Course,
    faces: Faces,
    through: Through,
    lump: Lump,
    at_c: Pair,
    table: Table,
    moist: Moist,
    dew_c: f64,
    co2_ppm: f64,
    room: Room,
    heater_w: f64,
    pressure_pa: f64,
    now: Vec<Now>,
    faces_c: Vec<f64>,
}

impl Walk {
    /// Begins it, with the water of the first hour's outside air. The hours of the setup do not count.
    pub fn new(setup: &Setup, first: Option<&Hour>) -> Self {
        let faces = Faces::of(&setup.shell);
        let (volume_m3, pressure_pa) = (sound(setup.volume_m3, 0.1, 1e3), sound(setup.pressure_pa, 1e4, 2e5));
        let start_c = sound_c(setup.start_c);
        let table = Table::new();
        let ratio = first.map_or(0.0, |hour| outside_ratio(hour, pressure_pa, &table));
        let areas_m2 = faces.faces.iter().map(|face| face.area_m2);
        let count = faces.faces.len();
        Self {
            course: Course {
                hours: Vec::with_capacity(setup.hours.len()),
                wetness: vec![Wetness::default(); count],
                faces_c: Vec::with_capacity(setup.hours.len() * count),
                faces: vec![],
            },
            table,
            dew_c: start_c,
            moist: Moist::new(volume_m3, pressure_pa, ratio, areas_m2),
            through: Through::of(&setup.vents),
            lump: Lump::new(setup),
            at_c: [start_c, setup.mass.map_or(start_c, |mass| sound_c(mass.start_c))],
            co2_ppm: sound(setup.outside_ppm, 0.0, 1e6),
            room: Room { volume_m3, air_m3_h: 0.0, outside_ppm: setup.outside_ppm, co2_l_h: 0.0 },
            heater_w: sound(setup.heater_w, 0.0, 1e5),
            pressure_pa,
            now: Vec::with_capacity(faces.faces.len()),
            faces_c: Vec::with_capacity(faces.faces.len()),
            faces,
        }
    }

    /// The next hour, with the sun on each surface in W/m².
    pub fn step(&mut self, hour: &Hour, sun_w_m2: &[f64]) -> Done {
        let done = self.hour(hour, sun_w_m2);
        let at = self.course.hours.len();
        self.course.faces_c.extend_from_slice(&self.faces_c);
        let mut wetness = std::mem::take(&mut self.course.wetness);
        note(&mut wetness, at, done.dew_point_c, self);
        self.course.wetness = wetness;
        self.course.hours.push(done);
        done
    }

    /// Heat that would bring the air to the hour's thermostat at its end, beyond what is there without a heater, in W; none
    /// without one. It changes nothing.
    pub fn lacks_w(&mut self, hour: &Hour, sun_w_m2: &[f64]) -> f64 {
        let (heater_w, at_c) = (std::mem::replace(&mut self.heater_w, 1e5), self.at_c);
        let lacks_w = self.warmed(hour, sun_w_m2).heater_wh;
        (self.heater_w, self.at_c) = (heater_w, at_c);
        lacks_w
    }

    /// The air inside and the mass, in °C.
    pub fn both_c(&self) -> [f64; 2] {
        self.at_c
    }

    /// What it came to.
    pub fn end(self) -> Course {
        Course { faces: self.faces.faces, ..self.course }
    }

    fn hour(&mut self, hour: &Hour, sun_w_m2: &[f64]) -> Done {
        let heat = self.warmed(hour, sun_w_m2);
        self.air(hour, heat)
    }

    /// The temperatures, with all that moves heat.
    fn warmed(&mut self, hour: &Hour, sun_w_m2: &[f64]) -> Done {
        let pull = self.faces.at(hour, sun_w_m2, &mut self.now);
        let outside = Outside::new(hour.air_c, hour.wind_m_s, hour.open, hour.fan_m3_h);
        let mut air_m3_h = self.through.flow_m3_h(self.at_c[0], outside);
        if self.through.is_moved_by_warmth() {
            let (guessed, _) = self.warm(hour, pull, air_m3_h);
            air_m3_h = self.through.flow_m3_h(guessed.mean_c[0], outside);
        }
        let (warming, heater_w) = self.warm(hour, pull, air_m3_h);
        self.at_c = warming.end_c;
        let mean_c = warming.mean_c[0];
        Done {
            inside_c: self.at_c[0],
            mean_c,
            mass_c: self.at_c[1],
            heater_wh: heater_w,
            shell_wh: pull.comes_w - pull.w_k * mean_c,
            sun_wh: pull.sun_w,
            vents_wh: AIR_WH_M3K * air_m3_h * (sound_c(hour.air_c) - mean_c),
            air_m3_h,
            ..Done::default()
        }
    }

    /// An hour's temperatures and the heater's power.
    fn warm(&self, hour: &Hour, pull: Pull, air_m3_h: f64) -> (Warming, f64) {
        let vents_w_k = AIR_WH_M3K * air_m3_h;
        let inside_w = sound(hour.inside.heat_w, -1e5, 1e5);
        let pull_w = pull.comes_w + pull.sun_w + vents_w_k * sound_c(hour.air_c) + inside_w;
        let (cold, each_w) = self.lump.hour(self.at_c, pull.w_k + vents_w_k, pull_w);
        let lacks_k = hour.wanted_c.map_or(0.0, |wanted_c| sound(wanted_c, -50.0, 50.0) - cold.end_c[0]);
        let heater_w = sound(lacks_k / each_w.end_c[0], 0.0, self.heater_w);
        let with = |cold: Pair, each: Pair| [cold[0] + heater_w * each[0], cold[1] + heater_w * each[1]];
        let mean_c = with(cold.mean_c, each_w.mean_c);
        (Warming { mean_c, end_c: with(cold.end_c, each_w.end_c) }, heater_w)
    }

    /// Water and carbon dioxide, once temperatures and fresh air are known.
    fn air(&mut self, hour: &Hour, heat: Done) -> Done {
        let inside_c = heat.inside_c;
        self.faces_c.clear();
        self.faces_c.extend(self.now.iter().map(|now| now.inside_face_c(inside_c)));
        let into = Into {
            water_kg_h: sound(hour.inside.water_g_h, 0.0, 1e5) / 1e3,
            air_m3_h: heat.air_m3_h,
            outside_ratio: outside_ratio(hour, self.pressure_pa, &self.table),
            reach: decay_reach(heat.air_m3_h / self.room.volume_m3),
        };
        let saturation_pa = self.table.saturation_pa(inside_c);
        let (mean_ratio, settled_kg) = self.moist.hour(into, &self.faces_c, saturation_pa, &self.table);
        let room = Room { air_m3_h: heat.air_m3_h, co2_l_h: hour.inside.co2_l_h, ..self.room };
        let (mean_ppm, co2_ppm) = room.after_by(self.co2_ppm, 1.0, into.reach);
        self.co2_ppm = co2_ppm;
        let vapour_pa = vapour_pa(self.moist.ratio, self.pressure_pa);
        self.dew_c = self.table.dew_point_c(vapour_pa, self.dew_c);
        Done {
            relative_humidity: vapour_pa / saturation_pa,
            dew_point_c: self.dew_c,
            humidity_ratio: self.moist.ratio,
            mean_ratio,
            settled_g: settled_kg * 1e3,
            co2_ppm,
            mean_ppm,
            ..heat
        }
    }
}

/// Humidity ratio of an hour's outside air.
fn outside_ratio(hour: &Hour, pressure_pa: f64, table: &Table) -> f64 {
    humidity_ratio(sound(hour.relative_humidity, 0.0, 1.0) * table.saturation_pa(hour.air_c), pressure_pa)
}
