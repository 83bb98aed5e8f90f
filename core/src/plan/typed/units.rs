//! The units that may be typed, each in the plan's own for its quantity.

use rust_decimal::Decimal;

use super::super::Quantity;
use super::super::decimal::{over, times};

/// A unit by what people write for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unit {
    /// What is written, in letters of either size; the first is its usual sign.
    names: &'static [&'static str],
    /// So many of the plan's unit, without its decimal point.
    digits: i64,
    /// How many of these digits are decimals.
    decimals: u32,
    /// Divided by so many: 60 for a minute in hours.
    parts: i64,
}

impl Unit {
    /// The unit of that name, if it measures that quantity.
    pub fn named(name: &str, quantity: Quantity) -> Option<&'static Self> {
        units_of(quantity).iter().find(|unit| unit.names.iter().any(|known| known.eq_ignore_ascii_case(name)))
    }

    /// So many of it in the plan's unit; none if that is too much.
    pub fn of(&self, count: Decimal) -> Option<Decimal> {
        over(times(count, Decimal::new(self.digits, self.decimals))?, Decimal::from(self.parts))
    }
}

/// The usual signs of the units that measure a quantity, for a message; empty if there are none.
pub fn signs_of(quantity: Quantity) -> String {
    let signs: Vec<&str> = units_of(quantity).iter().filter_map(|unit| unit.names.first().copied()).collect();
    signs.join(", ")
}

const fn unit(names: &'static [&'static str], digits: i64, decimals: u32) -> Unit {
    Unit { names, digits, decimals, parts: 1 }
}

const fn part(names: &'static [&'static str], parts: i64) -> Unit {
    Unit { names, digits: 1, decimals: 0, parts }
}

/// Source of the factors: NIST Handbook 44, appendix C, and NIST SP 811, appendix B; all of them exact (from memory).
const fn units_of(quantity: Quantity) -> &'static [Unit] {
    use Quantity as Q;
    match quantity {
        Q::MassKg => MASS,
        Q::LengthMm => LENGTH,
        Q::DistanceKm => DISTANCE,
        Q::VolumeL => VOLUME,
        Q::PowerW => POWER,
        Q::EnergyWh => ENERGY,
        Q::Volts => VOLTS,
        Q::Amperes => AMPERES,
        Q::Hours | Q::HourOfDay => TIME,
        Q::Days => DAYS,
        Q::Nights => NIGHTS,
        Q::Percent => PERCENT,
        Q::AreaM2 => AREA,
        Q::Degrees => DEGREES,
        Q::TemperatureC => CELSIUS,
        Q::AltitudeM => ALTITUDE,
        Q::OpeningCm2 => OPENING,
        Q::SpeedMS => SPEED,
        Q::AirM3H => AIR,
        Q::MassG => MASS_G,
        Q::DataGb => DATA_GB,
        Q::DataMb => DATA_MB,
        Q::RateMbitS => RATE_MBIT,
        Q::RateKbitS => RATE_KBIT,
        Q::Count
        | Q::DayOfMonth
        | Q::Months
        | Q::ForceN
        | Q::Ppm
        | Q::WarmerK
        | Q::ConductivityWMk
        | Q::HeatWM2k
        | Q::HeatWK => &[],
    }
}

/// Degrees of another kind have another zero, which arithmetic cannot bear.
const CELSIUS: &[Unit] = &[unit(&["°C", "C"], 1, 0)];

const ALTITUDE: &[Unit] = &[unit(&["m"], 1, 0), unit(&["ft", "feet"], 3_048, 4)];

const DEGREES: &[Unit] = &[unit(&["°", "deg"], 1, 0)];

const MASS: &[Unit] = &[
    unit(&["kg"], 1, 0),
    unit(&["g"], 1, 3),
    unit(&["t"], 1_000, 0),
    unit(&["lb", "lbs"], 45_359_237, 8),
    unit(&["oz"], 28_349_523_125, 12),
];

const LENGTH: &[Unit] = &[
    unit(&["mm"], 1, 0),
    unit(&["cm"], 10, 0),
    unit(&["m"], 1_000, 0),
    unit(&["in", "inch", "inches"], 254, 1),
    unit(&["ft", "foot", "feet"], 3_048, 1),
    unit(&["yd", "yard", "yards"], 9_144, 1),
];

const AREA: &[Unit] = &[unit(&["m²", "sqm"], 1, 0), unit(&["cm²"], 1, 4), unit(&["ft²", "sqft"], 9_290_304, 8)];

const DISTANCE: &[Unit] = &[unit(&["km"], 1, 0), unit(&["m"], 1, 3), unit(&["mi", "mile", "miles"], 1_609_344, 6)];

/// US liquid measure; a cup is half a pint.
const VOLUME: &[Unit] = &[
    unit(&["L"], 1, 0),
    unit(&["dl"], 1, 1),
    unit(&["cl"], 1, 2),
    unit(&["ml"], 1, 3),
    unit(&["gal", "gallon", "gallons"], 3_785_411_784, 9),
    unit(&["qt", "quart", "quarts"], 946_352_946, 9),
    unit(&["pt", "pint", "pints"], 473_176_473, 9),
    unit(&["cup", "cups"], 2_365_882_365, 10),
    unit(&["fl oz", "floz", "oz"], 295_735_295_625, 13),
];

const TIME: &[Unit] = &[
    unit(&["h", "hr", "hrs", "hour", "hours"], 1, 0),
    part(&["min", "mins", "minute", "minutes"], 60),
    part(&["s", "sec", "seconds"], 3_600),
];

const OPENING: &[Unit] =
    &[unit(&["cm²"], 1, 0), unit(&["mm²"], 1, 2), unit(&["m²"], 10_000, 0), unit(&["in²", "sqin"], 64_516, 4)];

const SPEED: &[Unit] =
    &[unit(&["m/s"], 1, 0), Unit { names: &["km/h"], digits: 10, decimals: 0, parts: 36 }, unit(&["mph"], 44_704, 5)];

const AIR: &[Unit] = &[
    unit(&["m³/h"], 1, 0),
    unit(&["l/s"], 36, 1),
    // A foot of 0.3048 m, cubed, sixty times.
    unit(&["cfm"], 169_901_079_552, 11),
];

const MASS_G: &[Unit] = &[unit(&["g"], 1, 0), unit(&["kg"], 1_000, 0), unit(&["oz"], 28_349_523_125, 9)];

/// Source of the prefixes: IEC 80000-13 (from memory).
const DATA_GB: &[Unit] = &[
    unit(&["GB"], 1, 0),
    unit(&["MB"], 1, 3),
    unit(&["TB"], 1_000, 0),
    unit(&["GiB"], 1_073_741_824, 9),
    unit(&["MiB"], 1_048_576, 9),
];

const DATA_MB: &[Unit] = &[
    unit(&["MB"], 1, 0),
    unit(&["kB"], 1, 3),
    unit(&["GB"], 1_000, 0),
    unit(&["MiB"], 1_048_576, 6),
    unit(&["GiB"], 1_073_741_824, 6),
];

const RATE_MBIT: &[Unit] =
    &[unit(&["Mbit/s", "Mbps"], 1, 0), unit(&["kbit/s", "kbps"], 1, 3), unit(&["Gbit/s", "Gbps"], 1_000, 0)];

const RATE_KBIT: &[Unit] = &[unit(&["kbit/s", "kbps"], 1, 0), unit(&["Mbit/s", "Mbps"], 1_000, 0)];

const PERCENT: &[Unit] = &[unit(&["%"], 1, 0)];

const POWER: &[Unit] = &[unit(&["W"], 1, 0), unit(&["kW"], 1_000, 0)];

const ENERGY: &[Unit] = &[unit(&["Wh"], 1, 0), unit(&["kWh"], 1_000, 0)];

const VOLTS: &[Unit] = &[unit(&["V"], 1, 0)];

const AMPERES: &[Unit] = &[unit(&["A"], 1, 0), unit(&["mA"], 1, 3)];

const DAYS: &[Unit] = &[unit(&["days", "day", "d"], 1, 0), unit(&["weeks", "week"], 7, 0)];

const NIGHTS: &[Unit] = &[unit(&["nights", "night"], 1, 0), unit(&["weeks", "week"], 7, 0)];
