//! How warm a panel's cells get, what the panel gives, and what its controller makes of that.
//!
//! ```
//! use kerbstead_core::sun::panel::{Controller, Fixing, Panel, cell_c, dc_w};
//! let panel = Panel { rated_w: 100.0, per_c: -0.004 };
//! let cells_c = cell_c(Fixing::Open, 800.0, 20.0, 1.0);
//! assert!((cells_c - 43.507).abs() < 0.001);
//! let from_panel_w = dc_w(panel, 800.0, 45.0);
//! assert!((from_panel_w - 73.6).abs() < 1e-9);
//! assert!((Controller::Tracking { efficiency: 0.95 }.out_w(from_panel_w) - 69.92).abs() < 1e-9);
//! ```

use super::constants::{NOCT_AIR_C, NOCT_W_M2, RATED_C, RATED_W_M2, SANDIA};
use super::position::sound;
use serde::Serialize;

/// How a panel is fixed, which decides how warm it gets.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Fixing {
    /// With air all around: on a stand beside the van.
    Open,
    /// Close above the roof, with a gap.
    #[default]
    Close,
    /// Glued to the roof, with no air behind.
    Glued,
}

/// A panel.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Panel {
    /// Its peak watts: at 1,000 W/m² and cells of 25 °C; 0 to 1,000,000.
    pub rated_w: f64,
    /// What a degree above 25 °C changes, as a share of its peak watts, -0.02 to 0.02: about -0.0035, see
    /// [`USUAL_PER_C`](super::constants::USUAL_PER_C).
    pub per_c: f64,
}

/// What stands between a panel and a store.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Controller {
    /// Follows the panel's best voltage and converts it.
    Tracking {
        /// Share that comes out, 0 to 1; see [`TRACKING_EFFICIENCY`](super::constants::TRACKING_EFFICIENCY).
        efficiency: f64,
    },
    /// Switches the panel straight to the store, which pulls it down to its own voltage.
    Switching {
        /// Voltage of the store while it is charged, above 0.
        store_v: f64,
        /// Voltage of the panel at its best, above 0.
        panel_v: f64,
    },
}

impl Controller {
    /// What comes out of it, in watts. Switching: the current stays, the voltage is the store's: the share is the quotient of
    /// voltages, 1 at most. Source: Ohm; that the current stays is common practice, no source.
    pub fn out_w(self, panel_w: f64) -> f64 {
        let share = match self {
            Self::Tracking { efficiency } => efficiency,
            Self::Switching { store_v, panel_v } => store_v / panel_v,
        };
        panel_w * sound(share, 0.0, 1.0)
    }
}

/// Temperature of the cells in degrees Celsius, for the irradiance on the panel in watts per square metre, the air's
/// temperature and a wind of so many metres a second at ten metres above ground. Source: King, Boyson and Kratochvil,
/// SAND2004-3535, with its constants by [`Fixing`] as pvlib 0.16.1 has them.
pub fn cell_c(fixing: Fixing, plane_w_m2: f64, air_c: f64, wind_m_s: f64) -> f64 {
    let [open, close, glued] = SANDIA;
    let [a, b, above_back_c] = match fixing {
        Fixing::Open => open,
        Fixing::Close => close,
        Fixing::Glued => glued,
    };
    let light = sound(plane_w_m2, 0.0, 3_000.0);
    sound(air_c, -90.0, 70.0)
        + light * libm::exp(a + b * sound(wind_m_s, 0.0, 60.0))
        + light / RATED_W_M2 * above_back_c
}

/// The same from the one number on many data sheets, the cells' temperature at 800 W/m² and 20 °C with wind (`NOCT`, 30 to
/// 90 °C). Source: Ross 1976 (from memory), as the project's reference values have it.
///
/// ```
/// use kerbstead_core::sun::panel::cell_by_noct_c;
/// assert!((cell_by_noct_c(800.0, 20.0, 45.0) - 45.0).abs() < 1e-9);
/// ```
pub fn cell_by_noct_c(plane_w_m2: f64, air_c: f64, noct_c: f64) -> f64 {
    let warmer_c = sound(noct_c, 30.0, 90.0) - NOCT_AIR_C;
    sound(air_c, -90.0, 70.0) + sound(plane_w_m2, 0.0, 3_000.0) / NOCT_W_M2 * warmer_c
}

/// What a panel gives, in watts, never negative, for the irradiance on it and the temperature of its cells. Source: `PVWatts`
/// version 5, NREL/TP-6A20-62641, as pvlib 0.16.1 has it.
pub fn dc_w(panel: Panel, plane_w_m2: f64, cells_c: f64) -> f64 {
    let warmer_c = sound(cells_c, -90.0, 200.0) - RATED_C;
    let share = 1.0 + sound(panel.per_c, -0.02, 0.02) * warmer_c;
    sound(panel.rated_w, 0.0, 1e6) * sound(plane_w_m2, 0.0, 3_000.0) / RATED_W_M2 * share.max(0.0)
}
