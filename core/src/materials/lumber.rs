//! Softwood by its nominal sizes: what they are when dressed and dry, board feet, and what it weighs.
//!
//! ```
//! use kerbstead_core::materials::lumber::{actual, board_feet};
//! let size = actual("2x4").unwrap();
//! assert_eq!((size.thickness_in, size.width_in), (1.5, 3.5));
//! assert_eq!((size.thickness_mm, size.width_mm), (38.0, 89.0));
//! assert_eq!(board_feet("2x4", 8.0, 6), Some(32.0));
//! ```

use serde::Serialize;

use crate::words::MM_PER_INCH;

const KG_PER_M3_OF_WATER: f64 = 1_000.0;

/// Nominal thickness, and the actual one dressed and dry, both in inches, with the whole millimetres that the standard
/// has beside it. Source: American Softwood Lumber Standard PS 20, boards and dimension (1, 2 and 4 read, the rest from
/// memory).
const THICKNESSES: [(f64, f64, f64); 8] = [
    (1.0, 0.75, 19.0),
    (1.25, 1.0, 25.0),
    (1.5, 1.25, 32.0),
    (2.0, 1.5, 38.0),
    (2.5, 2.0, 51.0),
    (3.0, 2.5, 64.0),
    (3.5, 3.0, 76.0),
    (4.0, 3.5, 89.0),
];

/// The same for widths. Source: PS 20 (2, 4 and the reductions read, the rest from memory).
const WIDTHS: [(f64, f64, f64); 9] = [
    (2.0, 1.5, 38.0),
    (3.0, 2.5, 64.0),
    (4.0, 3.5, 89.0),
    (5.0, 4.5, 114.0),
    (6.0, 5.5, 140.0),
    (7.0, 6.5, 165.0),
    (8.0, 7.25, 184.0),
    (10.0, 9.25, 235.0),
    (12.0, 11.25, 286.0),
];

/// What sheathing panels are called, and how thick they are said to be since (their performance category), in inches.
/// Source: PS 1 and PS 2 (from memory). Real panels are a little off that, so measure one.
const PANELS: [(f64, f64); 5] =
    [(0.25, 7.0 / 32.0), (0.375, 11.0 / 32.0), (0.5, 15.0 / 32.0), (0.625, 19.0 / 32.0), (0.75, 23.0 / 32.0)];

/// A size as it is, dressed and dry.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ActualSize {
    /// In inches (exact).
    pub thickness_in: f64,
    /// In inches (exact).
    pub width_in: f64,
    /// In whole millimetres, as the standard has it.
    pub thickness_mm: f64,
    /// In whole millimetres, as the standard has it.
    pub width_mm: f64,
}

/// The actual size of a nominal one, thickness by width in inches, such as `2x4` or `1.25 x 6`. None for sizes that the
/// table does not have. Green lumber is larger.
pub fn actual(nominal: &str) -> Option<ActualSize> {
    let (thickness, width) = read(nominal)?;
    let (_, thickness_in, thickness_mm) = *row(&THICKNESSES, thickness)?;
    let (_, width_in, width_mm) = *row(&WIDTHS, width)?;
    Some(ActualSize { thickness_in, width_in, thickness_mm, width_mm })
}

/// The thickness of a sheathing panel by what it is called, both in inches: `0.5` is 15/32.
pub fn panel_thickness_in(nominal_in: f64) -> Option<f64> {
    PANELS.iter().find(|(nominal, _)| same(*nominal, nominal_in)).map(|(_, actual)| *actual)
}

/// Board feet of so many boards of a nominal size, each so many feet long: nominal thickness, at least 1 in, by nominal
/// width by length, of which 12 make one. Source: PS 20, by nominal size (from memory).
pub fn board_feet(nominal: &str, length_ft: f64, count: u32) -> Option<f64> {
    let (thickness, width) = read(nominal)?;
    let feet = thickness.max(1.0) * width * length_ft / 12.0 * f64::from(count);
    (feet.is_finite() && feet >= 0.0).then_some(feet)
}

/// Kinds of wood that are sold together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Species {
    /// Spruce, pine, fir.
    SprucePineFir,
    /// Hemlock and true firs.
    HemFir,
    /// Douglas fir and larch.
    DouglasFirLarch,
    /// Southern pine.
    SouthernPine,
    /// Western cedars.
    WesternCedars,
}

impl Species {
    /// All of them.
    pub const ALL: [Self; 5] =
        [Self::SprucePineFir, Self::HemFir, Self::DouglasFirLarch, Self::SouthernPine, Self::WesternCedars];

    /// Mass of the wood without water by that of water of its volume without water: a mean of what is sold so. Source:
    /// National Design Specification for Wood Construction, table of specific gravities (from memory).
    pub fn specific_gravity(self) -> f64 {
        match self {
            Self::SprucePineFir => 0.42,
            Self::HemFir => 0.43,
            Self::DouglasFirLarch => 0.50,
            Self::SouthernPine => 0.55,
            Self::WesternCedars => 0.36,
        }
    }
}

/// A mass from light to heavy, in kg.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct MassRange {
    /// Dry, and light for its kind.
    pub low_kg: f64,
    /// The mean of its kind at 12 % of water.
    pub likely_kg: f64,
    /// As wet as may be sold for dry, and heavy for its kind.
    pub high_kg: f64,
}

/// Water in hundredths of the dry mass: indoors, usual, and the most that may be called dry. Source: PS 20 for the last
/// (19 %, from memory); the others are common practice, no source.
const MOISTURES: (f64, f64, f64) = (8.0, 12.0, 19.0);
/// Boards of one kind differ by about this part of the mean. Common practice, no source.
const SPREAD: f64 = 0.12;

/// Density in kg/m³ of wood of a specific gravity, with so much water in hundredths of its dry mass: it swells as it
/// takes up water. Source: National Design Specification, supplement, section on weight (from memory).
pub fn density_kg_m3(specific_gravity: f64, moisture_percent: f64) -> f64 {
    let swollen = 1.0 + specific_gravity * 0.009 * moisture_percent;
    KG_PER_M3_OF_WATER * specific_gravity / swollen * (1.0 + moisture_percent / 100.0)
}

/// What so many boards of a nominal size weigh, each so long.
pub fn mass(species: Species, nominal: &str, length_mm: f64, count: u32) -> Option<MassRange> {
    let size = actual(nominal)?;
    let side_m = |inches: f64| inches * MM_PER_INCH / 1_000.0;
    let volume_m3 = side_m(size.thickness_in) * side_m(size.width_in) * length_mm / 1_000.0 * f64::from(count);
    let gravity = species.specific_gravity();
    let kg = |share: f64, moisture: f64| volume_m3 * density_kg_m3(gravity * share, moisture);
    let (low, likely, high) = MOISTURES;
    let range =
        MassRange { low_kg: kg(1.0 - SPREAD, low), likely_kg: kg(1.0, likely), high_kg: kg(1.0 + SPREAD, high) };
    (volume_m3 >= 0.0 && range.high_kg.is_finite()).then_some(range)
}

fn read(nominal: &str) -> Option<(f64, f64)> {
    let (thickness, width) = nominal.split_once(['x', 'X', '×'])?;
    let side = |text: &str| text.trim().parse::<f64>().ok().filter(|side| *side > 0.0 && *side <= 24.0);
    Some((side(thickness)?, side(width)?))
}

fn row(table: &[(f64, f64, f64)], nominal: f64) -> Option<&(f64, f64, f64)> {
    table.iter().find(|row| same(row.0, nominal))
}

/// Nominal sizes are quarters of an inch and eighths, which floats hold exactly.
fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}
