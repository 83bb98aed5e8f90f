//! A room with its shell, and the hours it is run through.

use super::constants::{OUTSIDE_PPM, SEA_LEVEL_PA};
use super::people::GivenOff;
use super::shell::Surface;
use super::vents::Vents;

/// What is heavy inside and warms slowly: water, wood, food.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mass {
    /// Heat that it takes a degree, in Wh/K, 1 to 1e5: ten kilograms of water take 11.6.
    pub holds_wh_k: f64,
    /// Heat between it and the air, in W/K, 0.1 to 1e4: some 7 for each m² of its face (ISO 6946's 1/Rsi).
    pub to_air_w_k: f64,
    /// What it is at to begin with, in °C.
    pub start_c: f64,
}

/// What the room is.
#[derive(Clone, Debug, PartialEq)]
pub struct Setup {
    /// Its surfaces.
    pub shell: Vec<Surface>,
    /// What lets air in.
    pub vents: Vents,
    /// Air in it, in m³, 0.1 to 1,000.
    pub volume_m3: f64,
    /// Heat that the air and all that warms with it take a degree, in Wh/K, 1 to 1e5. The air alone takes 0.335 for each m³.
    pub light_wh_k: f64,
    /// What warms slowly.
    pub mass: Option<Mass>,
    /// Most that the heater gives, in W, 0 to 1e5.
    pub heater_w: f64,
    /// Air pressure, in Pa, 1e4 to 2e5.
    pub pressure_pa: f64,
    /// Carbon dioxide outside, in ppm.
    pub outside_ppm: f64,
    /// What it is inside at to begin with, in °C. Water and carbon dioxide begin as outside.
    pub start_c: f64,
    /// The hours.
    pub hours: Vec<Hour>,
    /// Sun on each surface, in W/m², hour after hour and within each in the shell's order; what is missing is 0.
    pub sun_w_m2: Vec<f64>,
}

impl Default for Setup {
    /// Ten cubic metres of air at sea level, and nothing else.
    fn default() -> Self {
        Self {
            shell: vec![],
            vents: Vents::default(),
            volume_m3: 10.0,
            light_wh_k: 30.0,
            mass: None,
            heater_w: 0.0,
            pressure_pa: SEA_LEVEL_PA,
            outside_ppm: OUTSIDE_PPM,
            start_c: 15.0,
            hours: vec![],
            sun_w_m2: vec![],
        }
    }
}

impl Setup {
    /// The sun on each surface in an hour; short, or nothing, where it is not given.
    pub fn sun_at(&self, hour: usize) -> &[f64] {
        let count = self.shell.len();
        let from = hour.saturating_mul(count).min(self.sun_w_m2.len());
        let to = from.saturating_add(count).min(self.sun_w_m2.len());
        self.sun_w_m2.get(from..to).unwrap_or_default()
    }
}

/// What an hour brings, steady within it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hour {
    /// Outside, in °C, -90 to 90.
    pub air_c: f64,
    /// Relative humidity outside, 0 to 1.
    pub relative_humidity: f64,
    /// Wind, in m/s, 0 to 60.
    pub wind_m_s: f64,
    /// Share of the sky without clouds, 0 to 1.
    pub clear: f64,
    /// What people and things give off inside.
    pub inside: GivenOff,
    /// What the thermostat is set to, in °C, -50 to 50; without it the heater is off.
    pub wanted_c: Option<f64>,
    /// How far openings that close are open, 0 to 1.
    pub open: f64,
    /// Air that a fan blows out, in m³/h, 0 to 5,000.
    pub fan_m3_h: f64,
}

impl Default for Hour {
    /// 10 °C, 70 %, ISO 6946's usual wind, clouds; nobody there, all open.
    fn default() -> Self {
        Self {
            air_c: 10.0,
            relative_humidity: 0.7,
            wind_m_s: super::constants::USUAL_WIND_M_S,
            clear: 0.0,
            inside: GivenOff::default(),
            wanted_c: None,
            open: 1.0,
            fan_m3_h: 0.0,
        }
    }
}
