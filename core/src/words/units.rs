//! The units values are shown and typed in. The plan always keeps its own; nothing computed is ever converted.

use rust_decimal::Decimal;

use crate::plan::{Money, Quantity, Scale};

/// Which units a person reads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Metric.
    #[default]
    Metric,
    /// US customary.
    UsCustomary,
}

/// How a quantity is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// One of this unit in the plan's unit.
    pub factor: f64,
    /// None of it in the plan's unit: nothing, but for degrees Fahrenheit.
    pub zero: f64,
    /// The catalogue's sentence for a number with the unit.
    pub key: &'static str,
    /// The catalogue's text for the unit alone.
    pub sign: &'static str,
    /// Decimals of a small number.
    pub decimals: u8,
}

/// Kilograms in a pound. Source: NIST Handbook 44, appendix C (exact).
pub const KG_PER_LB: f64 = 0.453_592_37;
/// Millimetres in an inch. Source: NIST Handbook 44, appendix C (exact).
pub const MM_PER_INCH: f64 = 25.4;
/// Kilometres in a mile. Source: NIST Handbook 44, appendix C (exact).
pub const KM_PER_MILE: f64 = 1.609_344;
/// Square metres in a square foot. Source: NIST Handbook 44, appendix C (exact).
pub const M2_PER_SQUARE_FOOT: f64 = 0.092_903_04;
/// Newtons in a pound-force. Source: NIST SP 811, appendix B (rounded from 4.448 221 615 260 5; from memory).
pub const N_PER_LBF: f64 = 4.448_221_615_260_5;
/// Metres in a foot. Source: NIST Handbook 44, appendix C (exact).
pub const M_PER_FOOT: f64 = 0.304_8;
/// Kelvin in a degree Fahrenheit, and 0 °F in °C. Source: NIST SP 811, appendix B (exact; from memory).
const FAHRENHEIT: (f64, f64) = (5.0 / 9.0, -160.0 / 9.0);
/// Litres in a US gallon of 231 cubic inches. Source: NIST Handbook 44, appendix C (exact).
pub const L_PER_GALLON: f64 = 3.785_411_784;

/// Square centimetres in a square inch. Source: NIST Handbook 44, appendix C (exact).
pub const CM2_PER_SQUARE_INCH: f64 = 6.451_6;
/// Metres a second in a mile an hour. Source: NIST SP 811, appendix B (exact; from memory).
pub const M_S_PER_MPH: f64 = 0.447_04;
/// Cubic metres an hour in a cubic foot a minute. Source: NIST SP 811, appendix B: a foot of 0.3048 m, cubed, times 60.
pub const M3_H_PER_CFM: f64 = 1.699_010_795_52;
/// Watts for each degree Celsius in a Btu an hour for each degree Fahrenheit. Source: NIST SP 811, appendix B, the
/// international-table Btu of 1055.055 852 62 J (from memory).
pub const W_K_PER_BTU_H_F: f64 = 0.527_527_926_31;
/// The same for each square metre and each square foot.
const W_M2K_PER_BTU: f64 = W_K_PER_BTU_H_F / M2_PER_SQUARE_FOOT;
/// Grams in an ounce. Source: NIST Handbook 44, appendix C (exact).
pub const G_PER_OUNCE: f64 = 28.349_523_125;

/// How a quantity is shown in those units.
///
/// ```
/// use kerbstead_core::{plan::Quantity, words::{unit, Units}};
/// let gallon = unit(Quantity::VolumeL, Units::UsCustomary);
/// assert_eq!(gallon.factor, 3.785_411_784);
/// ```
pub const fn unit(quantity: Quantity, units: Units) -> Unit {
    use Quantity as Q;
    let is_us = matches!(units, Units::UsCustomary);
    let (factor, key, sign, decimals) = match quantity {
        Q::MassKg if is_us => (KG_PER_LB, "measure-pounds", "unit-pounds", 1),
        Q::MassKg => (1.0, "measure-kilograms", "unit-kilograms", 1),
        Q::LengthMm if is_us => (MM_PER_INCH, "measure-inches", "unit-inches", 1),
        Q::LengthMm => (1.0, "measure-millimetres", "unit-millimetres", 0),
        Q::AreaM2 if is_us => (M2_PER_SQUARE_FOOT, "measure-square-feet", "unit-square-feet", 1),
        Q::AreaM2 => (1.0, "measure-square-metres", "unit-square-metres", 2),
        Q::ForceN if is_us => (N_PER_LBF, "measure-pounds-force", "unit-pounds-force", 0),
        Q::ForceN => (1.0, "measure-newtons", "unit-newtons", 0),
        Q::TemperatureC if is_us => (FAHRENHEIT.0, "measure-fahrenheit", "unit-fahrenheit", 0),
        Q::WarmerK if is_us => (FAHRENHEIT.0, "measure-fahrenheit", "unit-fahrenheit", 1),
        Q::TemperatureC | Q::WarmerK => (1.0, "measure-celsius", "unit-celsius", 1),
        Q::AltitudeM if is_us => (M_PER_FOOT, "measure-feet", "unit-feet", 0),
        Q::AltitudeM => (1.0, "measure-metres", "unit-metres", 0),
        Q::OpeningCm2 if is_us => (CM2_PER_SQUARE_INCH, "measure-square-inches", "unit-square-inches", 1),
        Q::OpeningCm2 => (1.0, "measure-square-centimetres", "unit-square-centimetres", 0),
        Q::SpeedMS if is_us => (M_S_PER_MPH, "measure-miles-per-hour", "unit-miles-per-hour", 0),
        Q::SpeedMS => (1.0, "measure-metres-per-second", "unit-metres-per-second", 1),
        Q::AirM3H if is_us => (M3_H_PER_CFM, "measure-cubic-feet-per-minute", "unit-cubic-feet-per-minute", 0),
        Q::AirM3H => (1.0, "measure-cubic-metres-per-hour", "unit-cubic-metres-per-hour", 0),
        Q::Ppm => (1.0, "measure-ppm", "unit-ppm", 0),
        Q::ConductivityWMk => (1.0, "measure-conductivity", "unit-conductivity", 3),
        Q::HeatWM2k if is_us => (W_M2K_PER_BTU, "measure-heat-per-square-foot", "unit-heat-per-square-foot", 2),
        Q::HeatWM2k => (1.0, "measure-heat-per-square-metre", "unit-heat-per-square-metre", 2),
        Q::HeatWK if is_us => (W_K_PER_BTU_H_F, "measure-heat-per-fahrenheit", "unit-heat-per-fahrenheit", 1),
        Q::HeatWK => (1.0, "measure-heat-per-celsius", "unit-heat-per-celsius", 1),
        Q::MassG if is_us => (G_PER_OUNCE, "measure-ounces", "unit-ounces", 1),
        Q::MassG => (1.0, "measure-grams", "unit-grams", 0),
        Q::DataGb => (1.0, "measure-gigabytes", "unit-gigabytes", 1),
        Q::DataMb => (1.0, "measure-megabytes", "unit-megabytes", 1),
        Q::RateMbitS => (1.0, "measure-megabits-per-second", "unit-megabits-per-second", 1),
        Q::RateKbitS => (1.0, "measure-kilobits-per-second", "unit-kilobits-per-second", 0),
        Q::Degrees => (1.0, "measure-degrees", "unit-degrees", 1),
        Q::DistanceKm if is_us => (KM_PER_MILE, "measure-miles", "unit-miles", 0),
        Q::DistanceKm => (1.0, "measure-kilometres", "unit-kilometres", 0),
        Q::VolumeL if is_us => (L_PER_GALLON, "measure-gallons", "unit-gallons", 1),
        Q::VolumeL => (1.0, "measure-litres", "unit-litres", 1),
        Q::PowerW => (1.0, "measure-watts", "unit-watts", 1),
        Q::EnergyWh => (1.0, "measure-watt-hours", "unit-watt-hours", 0),
        Q::Volts => (1.0, "measure-volts", "unit-volts", 1),
        Q::Amperes => (1.0, "measure-amperes", "unit-amperes", 1),
        Q::Hours => (1.0, "measure-hours", "unit-hours", 1),
        Q::Days => (1.0, "measure-days", "unit-days", 1),
        Q::Months => (1.0, "measure-months", "unit-months", 1),
        Q::Nights => (1.0, "measure-nights", "unit-nights", 0),
        Q::Percent => (1.0, "measure-percent", "unit-percent", 0),
        Q::HourOfDay => (1.0, "measure-count", "unit-hour-of-day", 2),
        Q::DayOfMonth => (1.0, "measure-count", "unit-day-of-month", 0),
        Q::Count => (1.0, "measure-count", "unit-count", 0),
    };
    let zero = if is_us && matches!(quantity, Q::TemperatureC) { FAHRENHEIT.1 } else { 0.0 };
    Unit { factor, zero, key, sign, decimals }
}

impl Unit {
    /// Its scale against the plan's unit.
    pub const fn scale(self) -> Scale {
        Scale { factor: self.factor, zero: self.zero }
    }
}

/// The unit that a price of one is shown for: how many of the plan's unit it is, exactly, and the catalogue's sentence.
/// The factors are those above. Pieces that cost less than a tenth are priced by the hundred, or nothing would be left
/// of the price.
pub(super) fn each(price: Money, quantity: Quantity, units: Units) -> (Decimal, &'static str) {
    use Quantity as Q;
    let is_us = units == Units::UsCustomary;
    match quantity {
        Q::MassKg if is_us => (Decimal::new(45_359_237, 8), "measure-per-pound"),
        Q::MassKg => (Decimal::ONE, "measure-per-kilogram"),
        Q::VolumeL if is_us => (Decimal::new(3_785_411_784, 9), "measure-per-gallon"),
        Q::VolumeL => (Decimal::ONE, "measure-per-litre"),
        Q::LengthMm if is_us => (Decimal::new(3_048, 1), "measure-per-foot"),
        Q::LengthMm => (Decimal::ONE_THOUSAND, "measure-per-metre"),
        Q::AreaM2 if is_us => (Decimal::new(9_290_304, 8), "measure-per-square-foot"),
        Q::AreaM2 => (Decimal::ONE, "measure-per-square-metre"),
        _ if price.decimal() < Decimal::new(1, 1) => (Decimal::ONE_HUNDRED, "measure-per-hundred"),
        _ => (Decimal::ONE, "measure-per-piece"),
    }
}
