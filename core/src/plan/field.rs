//! What every field of the plan accepts: one table that validation, forms, the JSON Schema and files all read.

use rust_decimal::Decimal;
use serde::Serialize;

use super::List;

/// A field of a section or of an entry of a list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// Its path below the section or entry: `mass_kg`, `draw/power_w`.
    pub name: &'static str,
    /// What it accepts.
    pub kind: Kind,
}

/// What a field accepts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// Text of at most so many characters.
    Text {
        /// The most characters.
        max_chars: usize,
    },
    /// A number within a range, both ends included.
    Number {
        /// What it measures, and so its unit.
        quantity: Quantity,
        /// The least.
        min: f64,
        /// The most.
        max: f64,
        /// A believable value to show as an example.
        example: f64,
        /// Whether low, likely and high may be given instead.
        range: bool,
    },
    /// A whole number within a range, both ends included.
    Whole {
        /// What it counts.
        quantity: Quantity,
        /// The least.
        min: u32,
        /// The most.
        max: u32,
        /// A believable value to show as an example.
        example: u32,
    },
    /// An amount of the plan's currency, at most [`MOST_MONEY`].
    Money {
        /// Whether it may be below zero.
        negative: bool,
        /// A believable value to show as an example.
        example: i64,
        /// Whether low, likely and high may be given instead.
        range: bool,
    },
    /// An exact percentage from 0 to 100, such as a tax rate.
    Rate,
    /// A civil date.
    Date,
    /// Yes or no.
    Flag,
    /// One of a few words.
    Choice(&'static [&'static str]),
    /// The id of an item that has a store.
    StoreItem,
    /// The id of an entry of a list.
    Entry(List),
    /// A three-letter currency code of ISO 4217.
    Currency,
}

/// What a number measures. The plan is always in these units; others are converted where they are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// Kilograms.
    MassKg,
    /// Millimetres.
    LengthMm,
    /// Kilometres.
    DistanceKm,
    /// Watts.
    PowerW,
    /// Watt-hours.
    EnergyWh,
    /// Volts.
    Volts,
    /// Amperes.
    Amperes,
    /// Litres.
    VolumeL,
    /// Hours.
    Hours,
    /// An hour of the day.
    HourOfDay,
    /// Days.
    Days,
    /// Nights.
    Nights,
    /// Months.
    Months,
    /// Hundredths.
    Percent,
    /// A bare count.
    Count,
    /// A day of the month.
    DayOfMonth,
    /// Square metres.
    AreaM2,
    /// Degrees of an angle.
    Degrees,
    /// Newtons.
    ForceN,
    /// Degrees Celsius.
    TemperatureC,
    /// Metres above the sea.
    AltitudeM,
    /// Square centimetres of an opening.
    OpeningCm2,
    /// Metres a second.
    SpeedMS,
    /// Cubic metres of air an hour.
    AirM3H,
    /// Parts in a million.
    Ppm,
    /// Watts through a metre for each degree.
    ConductivityWMk,
    /// Watts through a square metre for each degree.
    HeatWM2k,
    /// A difference of temperatures, in degrees Celsius.
    WarmerK,
    /// Watts for each degree.
    HeatWK,
    /// Grams.
    MassG,
    /// Gigabytes.
    DataGb,
    /// Megabytes.
    DataMb,
    /// Megabits a second.
    RateMbitS,
    /// Kilobits a second.
    RateKbitS,
}

/// The most that one amount of money may be, either way.
pub const MOST_MONEY: i64 = 1_000_000_000;

/// The most entries one list may have.
pub const MOST_ENTRIES: usize = 10_000;

impl Kind {
    /// [`MOST_MONEY`] as a decimal.
    pub fn most_money() -> Decimal {
        Decimal::from(MOST_MONEY)
    }
}

/// A part of the plan that has a table of fields.
#[derive(Clone, Copy, Debug)]
pub struct Section {
    /// The first part of its paths; empty for fields of the plan itself.
    pub name: &'static str,
    /// Whether it is a list of entries with ids.
    pub is_list: bool,
    /// Its fields.
    pub fields: &'static [Field],
}

impl Section {
    /// The section of that name.
    pub fn named(name: &str) -> Option<&'static Self> {
        SECTIONS.iter().find(|section| section.name == name)
    }

    /// The field of that name.
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.name == name)
    }
}

/// The field a path leads to, if it is one of the table's.
///
/// ```
/// use kerbstead_core::plan::{Kind, Path, field};
/// let draw = field::at(&Path::from("kit/12/draw/power_w")).unwrap();
/// assert!(matches!(draw.kind, Kind::Number { .. }));
/// ```
pub fn at(path: &super::Path) -> Option<&'static Field> {
    let (first, rest) = path.split_first();
    let Some(section) = Section::named(first) else {
        return SECTIONS[0].field(path.as_str());
    };
    let name = if section.is_list { rest.split_once('/')?.1 } else { rest };
    section.field(name)
}

/// Whether a path leads to a field of the table, or to a part such as `draw` that has fields below it.
pub fn is_known(path: &super::Path) -> bool {
    let (first, rest) = path.split_first();
    let Some(section) = Section::named(first) else {
        return SECTIONS[0].field(path.as_str()).is_some();
    };
    let name = if section.is_list { rest.split_once('/').map_or("", |(_, name)| name) } else { rest };
    !name.is_empty()
        && section
            .fields
            .iter()
            .any(|field| field.name.strip_prefix(name).is_some_and(|below| below.is_empty() || below.starts_with('/')))
}

const fn text(name: &'static str, max_chars: usize) -> Field {
    Field { name, kind: Kind::Text { max_chars } }
}

const fn number(name: &'static str, quantity: Quantity, min: f64, max: f64, example: f64) -> Field {
    Field { name, kind: Kind::Number { quantity, min, max, example, range: false } }
}

const fn estimate(name: &'static str, quantity: Quantity, min: f64, max: f64, example: f64) -> Field {
    Field { name, kind: Kind::Number { quantity, min, max, example, range: true } }
}

const fn whole(name: &'static str, quantity: Quantity, min: u32, max: u32, example: u32) -> Field {
    Field { name, kind: Kind::Whole { quantity, min, max, example } }
}

const fn percent(name: &'static str, example: f64) -> Field {
    number(name, Quantity::Percent, 0.0, 100.0, example)
}

const fn degrees(name: &'static str, example: f64) -> Field {
    number(name, Quantity::TemperatureC, -60.0, 120.0, example)
}

const fn money(name: &'static str, example: i64) -> Field {
    Field { name, kind: Kind::Money { negative: false, example, range: false } }
}

const fn price(name: &'static str, example: i64) -> Field {
    Field { name, kind: Kind::Money { negative: false, example, range: true } }
}

const fn of(name: &'static str, kind: Kind) -> Field {
    Field { name, kind }
}

/// All sections, the plan's own fields first.
pub const SECTIONS: &[Section] = &[
    Section { name: "", is_list: false, fields: PLAN },
    Section { name: "calendar", is_list: false, fields: CALENDAR },
    Section { name: "vehicle", is_list: false, fields: VEHICLE },
    Section { name: "purse", is_list: false, fields: PURSE },
    Section { name: "kit", is_list: true, fields: ITEM },
    Section { name: "belongings", is_list: true, fields: BELONGING },
    Section { name: "incomes", is_list: true, fields: INCOME },
    Section { name: "costs", is_list: true, fields: COST },
    Section { name: "stays", is_list: true, fields: STAY },
    Section { name: "week", is_list: true, fields: WEEK_DAY },
    Section { name: "water_uses", is_list: true, fields: WATER_USE },
    Section { name: "readings", is_list: true, fields: READING },
    Section { name: "purchase", is_list: false, fields: PURCHASE },
    Section { name: "loans", is_list: true, fields: LOAN },
    Section { name: "selling", is_list: false, fields: SELLING },
    Section { name: "trial", is_list: false, fields: TRIAL },
    Section { name: "builds", is_list: true, fields: BUILD },
    Section { name: "receipts", is_list: true, fields: RECEIPT },
    Section { name: "receipt_lines", is_list: true, fields: RECEIPT_LINE },
    Section { name: "tasks", is_list: true, fields: TASK },
    Section { name: "task_needs", is_list: true, fields: TASK_NEED },
    Section { name: "tools", is_list: true, fields: TOOL },
    Section { name: "helpers", is_list: true, fields: HELPER },
    Section { name: "other_days", is_list: true, fields: OTHER_DAY },
    Section { name: "building", is_list: false, fields: BUILDING },
    Section { name: "room", is_list: false, fields: ROOM },
    Section { name: "corners", is_list: true, fields: CORNER },
    Section { name: "built_ins", is_list: true, fields: BUILT_IN },
    Section { name: "doors", is_list: true, fields: DOOR },
    Section { name: "wall_rows", is_list: true, fields: WALL_ROW },
    Section { name: "roof_rows", is_list: true, fields: ROOF_ROW },
    Section { name: "placements", is_list: true, fields: PLACEMENT },
    Section { name: "sleepers", is_list: true, fields: SLEEPER },
    Section { name: "distances", is_list: true, fields: DISTANCE },
    Section { name: "climate", is_list: false, fields: CLIMATE },
    Section { name: "years", is_list: true, fields: YEAR },
    Section { name: "charging", is_list: true, fields: CHARGING },
    Section { name: "wishes", is_list: true, fields: WISH },
    Section { name: "water_stops", is_list: true, fields: WATER_STOP },
    Section { name: "shell", is_list: false, fields: SHELL },
    Section { name: "layers", is_list: true, fields: LAYER },
    Section { name: "work", is_list: false, fields: WORK },
    Section { name: "data_uses", is_list: true, fields: DATA_USE },
    Section { name: "data_contracts", is_list: true, fields: DATA_CONTRACT },
    Section { name: "stock", is_list: true, fields: STOCK },
    Section { name: "cuts", is_list: true, fields: CUT },
    Section { name: "cutting", is_list: false, fields: CUTTING },
    Section { name: "coverings", is_list: true, fields: COVERING },
    Section { name: "material_packs", is_list: true, fields: MATERIAL_PACK },
    Section { name: "flaws", is_list: true, fields: FLAW },
];

/// Fields of the plan itself.
pub const PLAN: &[Field] =
    &[text("title", 120), of("currency", Kind::Currency), whole("people", Quantity::Count, 1, 20, 2)];

/// Fields of the calendar.
pub const CALENDAR: &[Field] = &[
    of("starts_on", Kind::Date),
    of("leaves_on", Kind::Date),
    of("ends_on", Kind::Date),
    of("mode", Kind::Choice(&["stays", "week"])),
];

/// Fields of the vehicle.
pub const VEHICLE: &[Field] = &[
    of("size", Kind::Choice(&["small", "medium", "high_roof", "long_high_roof"])),
    number("inside_length_mm", Quantity::LengthMm, 500.0, 15_000.0, 3_100.0),
    number("inside_width_mm", Quantity::LengthMm, 500.0, 3_000.0, 1_750.0),
    number("inside_height_mm", Quantity::LengthMm, 500.0, 4_000.0, 1_850.0),
    number("empty_mass_kg", Quantity::MassKg, 300.0, 20_000.0, 1_950.0),
    of("is_weighed", Kind::Flag),
    whole("weighed_people", Quantity::Count, 0, 20, 1),
    number("weighed_fuel_percent", Quantity::Percent, 0.0, 100.0, 50.0),
    number("empty_front_kg", Quantity::MassKg, 100.0, 15_000.0, 1_150.0),
    number("empty_left_kg", Quantity::MassKg, 100.0, 15_000.0, 990.0),
    number("gross_limit_kg", Quantity::MassKg, 500.0, 30_000.0, 3_300.0),
    number("front_limit_kg", Quantity::MassKg, 300.0, 15_000.0, 1_750.0),
    number("rear_limit_kg", Quantity::MassKg, 300.0, 15_000.0, 1_900.0),
    number("wheelbase_mm", Quantity::LengthMm, 1_500.0, 6_000.0, 3_450.0),
    number("rear_overhang_mm", Quantity::LengthMm, 0.0, 3_000.0, 1_000.0),
    number("track_mm", Quantity::LengthMm, 1_000.0, 2_500.0, 1_700.0),
    number("floor_from_axle_mm", Quantity::LengthMm, -1_000.0, 4_000.0, 1_350.0),
    number("seats_from_axle_mm", Quantity::LengthMm, -1_000.0, 5_000.0, 1_050.0),
    number("person_kg", Quantity::MassKg, 20.0, 250.0, 75.0),
    number("tank_l", Quantity::VolumeL, 0.0, 500.0, 70.0),
    of("burns", Kind::Choice(&["diesel", "petrol"])),
    number("luggage_kg", Quantity::MassKg, 0.0, 2_000.0, 40.0),
    number("socket_volts", Quantity::Volts, 5.0, 60.0, 12.0),
    number("socket_fuse_a", Quantity::Amperes, 1.0, 200.0, 10.0),
    price("resale", 3_600),
    money("resale_falls", 45),
    estimate("fuel_l_per_100_km", Quantity::VolumeL, 0.0, 100.0, 9.0),
    price("fuel_price_per_l", 2),
];

/// Fields of the purse.
pub const PURSE: &[Field] = &[
    of("opening_cash", Kind::Money { negative: true, example: 900, range: false }),
    money("floor", 100),
    of("tax_percent", Kind::Rate),
    of("prices_include_tax", Kind::Flag),
    money("room_deposit", 600),
    money("room_rent", 350),
    of("reserve_percent", Kind::Rate),
    money("breakdown_fund", 250),
];

const OUTLETS: Kind = Kind::Choice(&["ac", "dc"]);
const USE_DAYS: Kind = Kind::Choice(&["every", "working", "free", "driving", "standing"]);

/// Fields of an item of the kit.
pub const ITEM: &[Field] = &[
    text("name", 120),
    of(
        "group",
        Kind::Choice(&[
            "sleeping",
            "kitchen",
            "power",
            "water",
            "hygiene",
            "structure",
            "warmth",
            "work",
            "clothing",
            "safety",
            "tools",
            "vehicle",
            "other",
        ]),
    ),
    of("need", Kind::Choice(&["must", "want", "experiment"])),
    of("obtain", Kind::Choice(&["owned", "borrowed", "bought", "made", "left_out"])),
    whole("quantity", Quantity::Count, 1, 1_000, 1),
    price("unit_price", 25),
    of("tax_percent", Kind::Rate),
    of("discount_percent", Kind::Rate),
    money("delivery", 8),
    of("needed_on", Kind::Date),
    whole("delivery_days", Quantity::Days, 0, 365, 4),
    of("buy_on", Kind::Date),
    of("paid/happened", Kind::Flag),
    of("paid/on", Kind::Date),
    money("paid/amount", 25),
    text("lender", 120),
    price("sale/price", 40),
    of("sale/on", Kind::Date),
    of("sale/outcome/happened", Kind::Flag),
    of("sale/outcome/on", Kind::Date),
    money("sale/outcome/amount", 40),
    whole("returned/quantity", Quantity::Count, 1, 1_000, 1),
    of("returned/on", Kind::Date),
    of("returned/outcome/happened", Kind::Flag),
    of("returned/outcome/on", Kind::Date),
    money("returned/outcome/amount", 15),
    estimate("mass_kg", Quantity::MassKg, 0.0, 2_000.0, 4.5),
    number("length_mm", Quantity::LengthMm, 1.0, 15_000.0, 600.0),
    number("width_mm", Quantity::LengthMm, 1.0, 15_000.0, 400.0),
    number("height_mm", Quantity::LengthMm, 1.0, 15_000.0, 350.0),
    number("holds_l", Quantity::VolumeL, 0.0, 5_000.0, 45.0),
    number("packed_l", Quantity::VolumeL, 0.0, 5_000.0, 30.0),
    estimate("draw/power_w", Quantity::PowerW, 0.0, 20_000.0, 45.0),
    of("draw/outlet", OUTLETS),
    number("draw/surge_w", Quantity::PowerW, 0.0, 60_000.0, 90.0),
    estimate("draw/hours_per_day", Quantity::Hours, 0.0, 24.0, 2.0),
    number("draw/from_hour", Quantity::HourOfDay, 0.0, 24.0, 18.0),
    estimate("draw/duty_percent", Quantity::Percent, 0.0, 100.0, 35.0),
    of("draw/days", USE_DAYS),
    of("draw/store", Kind::StoreItem),
    of("draw/works", Kind::Choice(&["by_clock", "heating", "cooling", "warming"])),
    whole("draw/times_per_day", Quantity::Count, 1, 24, 2),
    number("draw/again_after_hours", Quantity::Hours, 0.25, 24.0, 10.0),
    percent("draw/used_percent", 60.0),
    number("draw/loss_percent", Quantity::Percent, 0.0, 90.0, 12.0),
    whole("draw/importance", Quantity::Count, 1, 9, 5),
    of("draw/may_move", Kind::Flag),
    number("draw/heats_l", Quantity::VolumeL, 0.0, 100.0, 0.7),
    degrees("draw/heats_from_c", 12.0),
    degrees("draw/heats_to_c", 92.0),
    number("draw/vessel_kg", Quantity::MassKg, 0.0, 50.0, 0.6),
    number("draw/boiled_away_l", Quantity::VolumeL, 0.0, 50.0, 0.1),
    number("draw/heat_percent", Quantity::Percent, 5.0, 100.0, 85.0),
    number("draw/label_wh", Quantity::EnergyWh, 0.0, 50_000.0, 340.0),
    degrees("draw/label_air_c", 25.0),
    degrees("draw/inside_c", 5.0),
    number("draw/wall_mm", Quantity::LengthMm, 1.0, 500.0, 40.0),
    estimate("water/litres_per_day", Quantity::VolumeL, 0.0, 1_000.0, 2.0),
    number("water/to_grey_percent", Quantity::Percent, 0.0, 100.0, 90.0),
    number("store/usable_wh", Quantity::EnergyWh, 0.0, 200_000.0, 630.0),
    number("store/opening_percent", Quantity::Percent, 0.0, 100.0, 100.0),
    number("store/inverter_efficiency_percent", Quantity::Percent, 10.0, 100.0, 88.0),
    number("store/inverter_idle_w", Quantity::PowerW, 0.0, 500.0, 9.0),
    number("store/charge_efficiency_percent", Quantity::Percent, 10.0, 100.0, 90.0),
    number("store/ac_continuous_w", Quantity::PowerW, 0.0, 50_000.0, 500.0),
    number("store/ac_surge_w", Quantity::PowerW, 0.0, 100_000.0, 1_000.0),
    number("store/dc_continuous_w", Quantity::PowerW, 0.0, 20_000.0, 120.0),
    number("store/vehicle_input_w", Quantity::PowerW, 0.0, 20_000.0, 100.0),
    number("store/mains_input_w", Quantity::PowerW, 0.0, 20_000.0, 200.0),
    number("store/total_input_w", Quantity::PowerW, 0.0, 40_000.0, 300.0),
    number("store/taper_from_percent", Quantity::Percent, 0.0, 100.0, 85.0),
    of("store/chemistry", Kind::Choice(&["lfp", "nmc"])),
    number("store/rated_wh", Quantity::EnergyWh, 0.0, 200_000.0, 720.0),
    number("store/discharge_efficiency_percent", Quantity::Percent, 10.0, 100.0, 96.0),
    number("store/inverter_low_percent", Quantity::Percent, 10.0, 100.0, 82.0),
    number("store/inverter_full_percent", Quantity::Percent, 10.0, 100.0, 85.0),
    of("store/inverter_stays_on", Kind::Flag),
    number("store/dc_surge_w", Quantity::PowerW, 0.0, 40_000.0, 180.0),
    number("store/panel_input_w", Quantity::PowerW, 0.0, 20_000.0, 180.0),
    degrees("store/charges_above_c", 0.0),
    degrees("store/charges_below_c", 45.0),
    percent("store/loses_percent", 3.0),
    number("store/cycles_done", Quantity::Count, 0.0, 20_000.0, 150.0),
    number("store/cycles_stated", Quantity::Count, 1.0, 20_000.0, 2_500.0),
    percent("store/cycles_left_percent", 80.0),
    percent("store/keeps_percent", 15.0),
    number("panel/peak_w", Quantity::PowerW, 0.0, 20_000.0, 90.0),
    of("panel/setup", Kind::Choice(&["flat", "tilted", "beside"])),
    number("panel/tilt_deg", Quantity::Degrees, 0.0, 90.0, 35.0),
    number("panel/azimuth_deg", Quantity::Degrees, 0.0, 360.0, 180.0),
    whole("panel/turned_times", Quantity::Count, 0, 24, 3),
    of("panel/fixing", Kind::Choice(&["open", "close", "glued"])),
    number("panel/sun_from_hour", Quantity::HourOfDay, 0.0, 24.0, 8.0),
    number("panel/sun_until_hour", Quantity::HourOfDay, 0.0, 24.0, 17.0),
    percent("panel/shade_percent", 20.0),
    percent("panel/dirt_percent", 5.0),
    number("panel/per_degree_percent", Quantity::Percent, -2.0, 2.0, -0.4),
    of("panel/controller", Kind::Choice(&["tracking", "switching"])),
    number("panel/controller_percent", Quantity::Percent, 1.0, 100.0, 94.0),
    of("panel/charges", Kind::StoreItem),
    of("tank/holds", Kind::Choice(&["fresh", "grey"])),
    number("tank/capacity_l", Quantity::VolumeL, 0.0, 2_000.0, 15.0),
    number("tank/opening_percent", Quantity::Percent, 0.0, 100.0, 100.0),
    of("toilet/way", Kind::Choice(&["portable", "dry", "bags"])),
    number("toilet/waste_l", Quantity::VolumeL, 0.1, 500.0, 12.0),
    whole("toilet/lasts_months", Quantity::Months, 1, 240, 36),
    money("toilet/each_time", 1),
    number("filters_l", Quantity::VolumeL, 1.0, 1_000_000.0, 900.0),
    number("burner/heat_w", Quantity::PowerW, 0.0, 20_000.0, 1_800.0),
    of("burner/fuel", Kind::Choice(&["gas", "spirit", "petrol", "diesel"])),
    of("burner/vents_out", Kind::Flag),
    of("burner/keeps_warm", Kind::Flag),
    estimate("burner/burns_hours", Quantity::Hours, 0.0, 24.0, 0.7),
    number("burner/lit_from_hour", Quantity::HourOfDay, 0.0, 24.0, 18.5),
    number("burner/heat_percent", Quantity::Percent, 5.0, 100.0, 80.0),
    money("burner/fuel_price", 3),
    number("fan/blows_m3_h", Quantity::AirM3H, 0.0, 5_000.0, 300.0),
    text("note", 2_000),
];

/// Fields of a belonging.
pub const BELONGING: &[Field] = &[
    text("name", 120),
    price("price", 80),
    of("on", Kind::Date),
    of("outcome/happened", Kind::Flag),
    of("outcome/on", Kind::Date),
    money("outcome/amount", 80),
    money("lowest", 60),
    of("chance_percent", Kind::Rate),
    of("listed_on", Kind::Date),
    money("selling_cost", 5),
    number("half_sold_days", Quantity::Days, 0.5, 1_000.0, 14.0),
    money("usual_price", 80),
    money("kept/replaces", 60),
    of("kept/usable", Kind::Flag),
    money("kept/later_price", 30),
    number("kept/mass_kg", Quantity::MassKg, 0.0, 2_000.0, 12.0),
    number("kept/floor_m2", Quantity::AreaM2, 0.0, 50.0, 0.4),
    money("kept/fit_cost", 15),
    money("kept/fitted_later_price", 10),
    number("kept/fitted_mass_kg", Quantity::MassKg, 0.0, 2_000.0, 9.0),
    number("kept/fitted_floor_m2", Quantity::AreaM2, 0.0, 50.0, 0.3),
    money("kept/storage_monthly", 10),
    of("end", Kind::Choice(&["open", "carried", "sold", "lent", "stored", "given", "thrown"])),
    text("end_with", 120),
    money("end_fee", 15),
    of("ended_on", Kind::Date),
];

/// Fields of an income.
pub const INCOME: &[Field] = &[
    text("name", 120),
    price("amount", 400),
    of("on", Kind::Date),
    of("repeat", Kind::Choice(&["once", "weekly", "fortnightly", "monthly", "yearly"])),
    of("until", Kind::Date),
    of("received_until", Kind::Date),
];

/// Fields of a cost.
pub const COST: &[Field] = &[
    text("name", 120),
    price("amount", 120),
    whole("day_of_month", Quantity::DayOfMonth, 1, 31, 1),
    of("phase", Kind::Choice(&["home", "road", "always"])),
    of("every", Kind::Choice(&["once", "week", "month", "quarter", "half_year", "year", "hundred_km"])),
    of("first_on", Kind::Date),
    of("last_on", Kind::Date),
];

macro_rules! with_offer {
    ($($own:expr),* $(,)?) => {
        &[
            $($own,)*
            estimate("drive_hours", Quantity::Hours, 0.0, 24.0, 2.5),
            estimate("drive_km", Quantity::DistanceKm, 0.0, 5_000.0, 140.0),
            estimate("offers/mains_hours", Quantity::Hours, 0.0, 24.0, 3.0),
            number("offers/mains_from_hour", Quantity::HourOfDay, 0.0, 24.0, 9.0),
            number("offers/mains_w", Quantity::PowerW, 0.0, 20_000.0, 2_000.0),
            of("offers/water", Kind::Flag),
            of("offers/emptying", Kind::Flag),
            of("offers/toilet", Kind::Flag),
            of("offers/toilet_emptying", Kind::Flag),
            of("offers/shower", Kind::Flag),
            of("offers/laundry", Kind::Flag),
            of("offers/rubbish", Kind::Flag),
            of("offers/fuel", Kind::Flag),
            of("offers/signal", Kind::Choice(&["unknown", "none", "weak", "good"])),
            price("offers/price_per_night", 12),
            of("offers/night", Kind::Choice(&["unknown", "allowed", "not_allowed"])),
            number("offers/fallback_km", Quantity::DistanceKm, 0.0, 5_000.0, 25.0),
        ]
    };
}

/// Fields of a stay.
pub const STAY: &[Field] = with_offer![
    text("place", 120),
    whole("nights", Quantity::Nights, 0, 366, 5),
    whole("working_days_per_week", Quantity::Days, 0, 7, 5),
    number("climate/latitude_deg", Quantity::Degrees, -90.0, 90.0, 47.3),
    number("climate/longitude_deg", Quantity::Degrees, -180.0, 180.0, 9.1),
    number("climate/altitude_m", Quantity::AltitudeM, -500.0, 6_000.0, 450.0),
    number("climate/clock_ahead_h", Quantity::Hours, -14.0, 14.0, 1.0),
    degrees("climate/low_c", 7.0),
    degrees("climate/high_c", 18.0),
    of("climate/clouds", CLOUDS),
    percent("climate/clearness_percent", 45.0),
    of("climate/like", LIKE),
    of("climate/year", Kind::Entry(List::Years)),
];

const CLOUDS: Kind = Kind::Choice(&["clear", "some", "many", "overcast"]);
const LIKE: Kind =
    Kind::Choice(&["long_winters", "cold_coast", "oceanic", "inland_plain", "dry_summers", "wet_summers", "dry_heat"]);

/// Fields of the sky and the air of places that say nothing of their own.
pub const CLIMATE: &[Field] = &[
    number("latitude_deg", Quantity::Degrees, -90.0, 90.0, 47.3),
    number("longitude_deg", Quantity::Degrees, -180.0, 180.0, 9.1),
    number("altitude_m", Quantity::AltitudeM, -500.0, 6_000.0, 450.0),
    number("clock_ahead_h", Quantity::Hours, -14.0, 14.0, 1.0),
    degrees("low_c", 7.0),
    degrees("high_c", 18.0),
    of("clouds", CLOUDS),
    percent("clearness_percent", 45.0),
    of("like", LIKE),
    of("year", Kind::Entry(List::Years)),
];

/// Fields of a typical year.
pub const YEAR: &[Field] = &[
    text("name", 120),
    number("latitude_deg", Quantity::Degrees, -90.0, 90.0, 47.3),
    number("longitude_deg", Quantity::Degrees, -180.0, 180.0, 9.1),
    number("altitude_m", Quantity::AltitudeM, -500.0, 6_000.0, 450.0),
    number("clock_ahead_h", Quantity::Hours, -14.0, 14.0, 1.0),
    text("mean_days", 12_000),
];

/// Fields of a place to charge at.
pub const CHARGING: &[Field] = &[
    text("name", 120),
    of("gives", Kind::Choice(&["socket", "generator"])),
    of("stay", Kind::Entry(List::Stays)),
    of("on", Kind::Date),
    number("from_hour", Quantity::HourOfDay, 0.0, 24.0, 10.0),
    number("charging_hours", Quantity::Hours, 0.25, 24.0, 2.0),
    number("gives_w", Quantity::PowerW, 0.0, 20_000.0, 1_000.0),
    money("stop_price", 4),
    money("hour_price", 1),
    of("in_use", Kind::Flag),
];

/// Fields of a day of the repeating week.
pub const WEEK_DAY: &[Field] = with_offer![
    of("weekday", Kind::Choice(&["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]),),
    of("kind", Kind::Choice(&["working", "driving", "idle"])),
];

/// Fields of a use of water.
pub const WATER_USE: &[Field] = &[
    text("name", 120),
    estimate("litres_per_day", Quantity::VolumeL, 0.0, 500.0, 2.5),
    of("per", Kind::Choice(&["person", "van"])),
    number("to_grey_percent", Quantity::Percent, 0.0, 100.0, 80.0),
    number("times_per_week", Quantity::Count, 0.0, 100.0, 3.0),
    of("is_drunk", Kind::Flag),
    number("exertion_hours", Quantity::Hours, 0.0, 16.0, 4.0),
    of("effort", Kind::Choice(&["easy", "moderate", "hard"])),
    of("treated", Kind::Choice(&["boiled", "filtered"])),
];

/// Fields of a stop for water.
pub const WATER_STOP: &[Field] = &[
    text("name", 120),
    of("stay", Kind::Entry(List::Stays)),
    of("on", Kind::Date),
    whole("every_days", Quantity::Days, 1, 366, 4),
    of("refills", Kind::Flag),
    of("empties", Kind::Flag),
    of("empties_toilet", Kind::Flag),
    money("stop_price", 4),
    of("in_use", Kind::Flag),
];

/// Fields of the shell.
pub const SHELL: &[Field] = &[
    of("colour", Kind::Choice(&["light", "middling", "dark"])),
    of("cab", Kind::Choice(&["open", "curtain", "wall"])),
    number("window_m2", Quantity::AreaM2, 0.0, 20.0, 0.9),
    number("rib_percent", Quantity::Percent, 0.0, 60.0, 12.0),
    number("leak_cm2", Quantity::OpeningCm2, 0.0, 2_000.0, 45.0),
    number("vent_cm2", Quantity::OpeningCm2, 0.0, 20_000.0, 120.0),
    number("vent_rise_mm", Quantity::LengthMm, 0.0, 4_000.0, 1_100.0),
    number("open_cm2", Quantity::OpeningCm2, 0.0, 100_000.0, 2_500.0),
    number("wanted_c", Quantity::TemperatureC, -20.0, 35.0, 17.0),
    number("wanted_asleep_c", Quantity::TemperatureC, -20.0, 35.0, 10.0),
    number("least_asleep_c", Quantity::TemperatureC, -40.0, 30.0, 6.0),
    number("asleep_from_hour", Quantity::HourOfDay, 0.0, 24.0, 22.5),
    number("asleep_until_hour", Quantity::HourOfDay, 0.0, 24.0, 6.5),
    number("damp_percent", Quantity::Percent, 1.0, 100.0, 88.0),
    number("wind_m_s", Quantity::SpeedMS, 0.0, 40.0, 2.5),
];

const MATERIAL: Kind = Kind::Choice(&[
    "xps",
    "eps",
    "pir",
    "soft_foam",
    "wool",
    "cork",
    "plywood",
    "timber",
    "carpet",
    "cloth",
    "foil",
    "air_gap",
    "other",
]);

/// Fields of a layer.
pub const LAYER: &[Field] = &[
    text("name", 120),
    of("covers", Kind::Choice(&["roof_and_sides", "roof", "sides", "doors", "floor", "windows", "divider"])),
    of("material", MATERIAL),
    number("thick_mm", Quantity::LengthMm, 0.01, 300.0, 25.0),
    number("conducts_w_mk", Quantity::ConductivityWMk, 0.001, 500.0, 0.034),
    number("square_metre_kg", Quantity::MassKg, 0.0, 200.0, 0.9),
    money("layer_price", 70),
    of("made_of", Kind::Entry(List::Kit)),
];

/// Fields of the work on the road.
pub const WORK: &[Field] = &[
    money("pay_per_hour", 19),
    number("work_hours", Quantity::Hours, 0.0, 24.0, 5.0),
    number("begins_hour", Quantity::HourOfDay, 0.0, 24.0, 8.5),
    of("offline", Kind::Flag),
    of("weak_is_enough", Kind::Flag),
    of("works_with", Kind::Entry(List::Kit)),
    number("too_cold_c", Quantity::TemperatureC, -40.0, 40.0, 12.0),
    number("too_hot_c", Quantity::TemperatureC, 0.0, 70.0, 32.0),
    estimate("good_mbit_s", Quantity::RateMbitS, 0.01, 10_000.0, 12.0),
    estimate("weak_mbit_s", Quantity::RateMbitS, 0.01, 10_000.0, 1.5),
];

/// Fields of a use of data.
pub const DATA_USE: &[Field] = &[
    text("name", 120),
    of(
        "data_task",
        Kind::Choice(&[
            "call_voice",
            "call_low",
            "call_standard",
            "call_high",
            "music",
            "film_low",
            "film_standard",
            "film_high",
            "web",
            "maps",
            "shared_documents",
            "mail_in",
            "mail_out",
            "photo_out",
            "film_minute_out",
            "update_in",
            "other",
        ]),
    ),
    estimate("uses_per_day", Quantity::Count, 0.0, 10_000.0, 2.0),
    of("data_days", USE_DAYS),
    estimate("each_mb", Quantity::DataMb, 0.0, 1_000_000.0, 90.0),
];

/// Fields of a contract for data.
pub const DATA_CONTRACT: &[Field] = &[
    text("name", 120),
    number("allowance_gb", Quantity::DataGb, 0.0, 100_000.0, 25.0),
    money("period_price", 14),
    whole("period_days", Quantity::Days, 1, 366, 30),
    of("beyond", Kind::Choice(&["stops", "costs", "slowed"])),
    money("per_gb", 2),
    number("slow_kbit_s", Quantity::RateKbitS, 0.0, 1_000_000.0, 128.0),
    of("in_use", Kind::Flag),
];

/// Fields of a reading.
pub const READING: &[Field] = &[
    of("on", Kind::Date),
    whole("hour", Quantity::HourOfDay, 0, 23, 8),
    of("cash", Kind::Money { negative: true, example: 640, range: false }),
    of("store", Kind::StoreItem),
    number("charge_percent", Quantity::Percent, 0.0, 100.0, 62.0),
    number("fresh_l", Quantity::VolumeL, 0.0, 20_000.0, 18.0),
    number("grey_l", Quantity::VolumeL, 0.0, 20_000.0, 6.0),
    number("odometer_km", Quantity::DistanceKm, 0.0, 5_000_000.0, 184_200.0),
    number("measured_c", Quantity::TemperatureC, -60.0, 90.0, 11.0),
    of("slept", Kind::Choice(&["well", "badly"])),
    of("missed", Kind::Entry(List::Wishes)),
    of("used", Kind::Entry(List::Kit)),
];

/// Fields of something that was missed.
pub const WISH: &[Field] = &[
    text("name", 120),
    money("would_cost", 60),
    whole("worth", Quantity::Count, 1, 9, 5),
    of("thing", Kind::Entry(List::Kit)),
];

/// Fields of the purchase of the van.
pub const PURCHASE: &[Field] = &[
    price("agreed_price", 4_200),
    of("pay_on", Kind::Date),
    money("deposit", 300),
    of("deposit_on", Kind::Date),
    price("part_exchange", 600),
    money("seller_fees", 80),
    money("registration", 60),
    of("registration_on", Kind::Date),
    of("paid/happened", Kind::Flag),
    of("paid/on", Kind::Date),
    money("paid/amount", 4_200),
];

/// Fields of a loan.
pub const LOAN: &[Field] = &[
    text("name", 120),
    money("amount", 1_500),
    of("yearly_percent", Kind::Rate),
    whole("months", Quantity::Count, 1, crate::money::MOST_MONTHS, 24),
    money("fees", 30),
    of("drawn_on", Kind::Date),
    of("drawn", Kind::Flag),
    of("first_payment_on", Kind::Date),
    of("paid_off_on", Kind::Date),
];

/// Fields of what sales are to bring.
pub const SELLING: &[Field] =
    &[money("wanted_sum", 500), of("wanted_on", Kind::Date), of("wanted_percent", Kind::Rate)];

/// Fields of the comparison of ways of building.
pub const TRIAL: &[Field] = &[
    whole("trial_months", Quantity::Months, 1, crate::money::MOST_MONTHS, 24),
    estimate("unsuited_percent", Quantity::Percent, 0.0, 100.0, 30.0),
    estimate("finds_out_months", Quantity::Months, 0.0, 120.0, 3.0),
    estimate("kept_percent", Quantity::Percent, 0.0, 100.0, 50.0),
    price("home_monthly", 720),
    price("road_monthly", 540),
    price("going_back", 600),
];

/// Fields of a way of building.
pub const BUILD: &[Field] = &[
    text("name", 120),
    estimate("build_months", Quantity::Months, 0.0, 120.0, 4.0),
    price("removable", 900),
    price("fixed", 1_200),
    price("redone", 400),
    number("extra_kg", Quantity::MassKg, 0.0, 5_000.0, 180.0),
];

/// Fields of a receipt.
pub const RECEIPT: &[Field] =
    &[of("on", Kind::Date), text("place", 200), of("total", Kind::Money { negative: true, example: 43, range: false })];

/// Fields of a line of a receipt.
pub const RECEIPT_LINE: &[Field] = &[
    of("receipt", Kind::Entry(List::Receipts)),
    text("name", 500),
    of("amount", Kind::Money { negative: true, example: 12, range: false }),
    of("item", Kind::Entry(List::Kit)),
    of("more_follows", Kind::Flag),
];

/// Fields of a task.
pub const TASK: &[Field] = &[
    text("name", 120),
    estimate("hours", Quantity::Hours, 0.0, 1_000.0, 3.0),
    of("hands", Kind::Choice(&["one", "two", "skilled"])),
    of("in_one_go", Kind::Flag),
    of("without_van", Kind::Flag),
    of("daylight", Kind::Flag),
    of("dry", Kind::Flag),
    estimate("wait_hours", Quantity::Hours, 0.0, 2_000.0, 24.0),
    of("wait", Kind::Choice(&["curing", "drying", "delivery", "other"])),
    of("not_before", Kind::Date),
    number("spent_hours", Quantity::Hours, 0.0, 10_000.0, 1.5),
    of("done_on", Kind::Date),
    of("left_out", Kind::Flag),
    of("can_wait", Kind::Flag),
    of("for_item", Kind::Entry(List::Kit)),
    text("note", 2_000),
];

/// Fields of what a task needs.
pub const TASK_NEED: &[Field] = &[
    of("task", Kind::Entry(List::Tasks)),
    of("after", Kind::Entry(List::Tasks)),
    of("tool", Kind::Entry(List::Tools)),
    of("thing", Kind::Entry(List::Kit)),
    of("at_home", Kind::Entry(List::Belongings)),
];

/// Fields of a tool or a place.
pub const TOOL: &[Field] = &[
    text("name", 120),
    of("tool_kind", Kind::Choice(&["tool", "place"])),
    of("tool_source", Kind::Choice(&["owned", "borrowed", "hired", "missing"])),
    text("lender", 120),
    of("there_from", Kind::Date),
    of("there_until", Kind::Date),
    of("on_days", Kind::Choice(&["every", "workdays", "weekends"])),
    money("price_per_day", 18),
];

/// Fields of somebody who works on the van.
pub const HELPER: &[Field] = &[
    text("name", 120),
    of("is_skilled", Kind::Flag),
    number("workday_from_hour", Quantity::HourOfDay, 0.0, 24.0, 18.0),
    number("weekend_from_hour", Quantity::HourOfDay, 0.0, 24.0, 9.0),
    number("workday_hours", Quantity::Hours, 0.0, 24.0, 3.0),
    number("saturday_hours", Quantity::Hours, 0.0, 24.0, 7.0),
    number("sunday_hours", Quantity::Hours, 0.0, 24.0, 5.0),
    of("comes_from", Kind::Date),
    of("comes_until", Kind::Date),
];

/// Fields of days on which it is not as on others.
pub const OTHER_DAY: &[Field] = &[
    of("helper", Kind::Entry(List::Helpers)),
    of("first_day", Kind::Date),
    of("last_day", Kind::Date),
    number("from_hour", Quantity::HourOfDay, 0.0, 24.0, 18.0),
    number("hours_then", Quantity::Hours, 0.0, 24.0, 3.0),
];

/// Fields of when and under what sky the van is built.
pub const BUILDING: &[Field] = &[
    of("arrives_on", Kind::Date),
    number("light_from_hour", Quantity::HourOfDay, 0.0, 24.0, 8.0),
    number("light_until_hour", Quantity::HourOfDay, 0.0, 24.0, 18.0),
    number("dry_percent", Quantity::Percent, 0.0, 100.0, 65.0),
    money("day_longer", 22),
    number("road_extra_percent", Quantity::Percent, 0.0, 1_000.0, 50.0),
    money("road_day", 16),
];

const BOX_SIDES: Kind = Kind::Choice(&["whole", "start", "end", "left", "right"]);

/// A place along or across the van: it may lie outside of it while somebody still moves things.
const fn place(name: &'static str, example: f64) -> Field {
    number(name, Quantity::LengthMm, -5_000.0, 20_000.0, example)
}

/// A length that is more than nothing.
const fn length(name: &'static str, most: f64, example: f64) -> Field {
    number(name, Quantity::LengthMm, 1.0, most, example)
}

/// A height above the floor, or a distance.
const fn height(name: &'static str, most: f64, example: f64) -> Field {
    number(name, Quantity::LengthMm, 0.0, most, example)
}

/// Fields of the room inside.
pub const ROOM: &[Field] = &[
    length("body_width_mm", 2_000.0, 450.0),
    length("body_height_mm", 3_000.0, 1_700.0),
    number("strap_limit_kg", Quantity::MassKg, 1.0, 20_000.0, 125.0),
    number("strip_holds_kg", Quantity::MassKg, 0.01, 500.0, 1.5),
    whole("strip_times", Quantity::Count, 2, 20, 3),
    number("strip_heat_percent", Quantity::Percent, 1.0, 100.0, 50.0),
];

/// Fields of a corner of the floor.
pub const CORNER: &[Field] = &[place("x_mm", 0.0), place("y_mm", 1_700.0)];

/// Fields of something that is built in.
pub const BUILT_IN: &[Field] = &[
    text("name", 120),
    place("x_mm", 1_600.0),
    place("y_mm", 0.0),
    length("length_mm", 15_000.0, 750.0),
    length("width_mm", 3_000.0, 210.0),
    height("base_mm", 4_000.0, 0.0),
    length("height_mm", 4_000.0, 280.0),
];

/// Fields of a door.
pub const DOOR: &[Field] = &[
    of("side", Kind::Choice(&["left", "right", "rear", "front"])),
    place("from_mm", 300.0),
    length("width_mm", 5_000.0, 1_100.0),
    length("height_mm", 4_000.0, 1_650.0),
    height("clear_mm", 3_000.0, 400.0),
];

/// Fields of a row of the walls.
pub const WALL_ROW: &[Field] =
    &[height("height_mm", 4_000.0, 1_400.0), height("left_in_mm", 1_500.0, 90.0), height("right_in_mm", 1_500.0, 90.0)];

/// Fields of a row of the roof.
pub const ROOF_ROW: &[Field] = &[place("x_mm", 3_000.0), length("height_mm", 4_000.0, 1_780.0)];

/// Fields of a thing at its place.
pub const PLACEMENT: &[Field] = &[
    of("thing", Kind::Entry(List::Kit)),
    of("level", Kind::Choice(&["floor", "under_bed", "counter", "wall", "roof", "outside"])),
    place("x_mm", 1_200.0),
    place("y_mm", 0.0),
    height("base_mm", 4_000.0, 0.0),
    number("turn_deg", Quantity::Degrees, -360.0, 360.0, 90.0),
    of("stands", Kind::Choice(&["flat", "on_edge", "on_end"])),
    of("pinned", Kind::Flag),
    height("clear_under_mm", 4_000.0, 280.0),
    of("reached", Kind::Flag),
    whole("sleeps", Quantity::Count, 0, 6, 2),
    of("head", Kind::Choice(&["start", "end"])),
    of("fastened", Kind::Choice(&["nothing", "straps", "wedged", "bolted", "strips"])),
    place("opened/x_mm", 0.0),
    place("opened/y_mm", 400.0),
    length("opened/length_mm", 15_000.0, 600.0),
    length("opened/width_mm", 15_000.0, 400.0),
    height("opened/base_mm", 4_000.0, 700.0),
    length("opened/height_mm", 4_000.0, 30.0),
    of("opened/with_others", Kind::Flag),
];

/// Fields of somebody who sleeps in the van.
pub const SLEEPER: &[Field] = &[
    text("name", 120),
    length("height_mm", 2_600.0, 1_740.0),
    length("sitting_mm", 1_500.0, 900.0),
    of("bed", Kind::Entry(List::Kit)),
];

/// Fields of a distance to be kept.
pub const DISTANCE: &[Field] = &[
    of("of", Kind::Entry(List::Kit)),
    of("of_side", BOX_SIDES),
    of("keeps", Kind::Choice(&["apart", "near", "clear"])),
    of("other", Kind::Entry(List::Kit)),
    of("other_side", BOX_SIDES),
    height("distance_mm", 5_000.0, 300.0),
];

/// Fields of a board or a sheet.
pub const STOCK: &[Field] = &[
    text("name", 120),
    of("stock_kind", Kind::Choice(&["board", "sheet"])),
    of(
        "nominal",
        Kind::Choice(&[
            "1x2",
            "1x3",
            "1x4",
            "1x6",
            "1x8",
            "2x2",
            "2x3",
            "2x4",
            "2x6",
            "4x4",
            "panel_quarter",
            "panel_three_eighths",
            "panel_half",
            "panel_five_eighths",
            "panel_three_quarters",
        ]),
    ),
    of("material", MATERIAL),
    length("length_mm", 20_000.0, 2_400.0),
    length("width_mm", 20_000.0, 1_200.0),
    number("thick_mm", Quantity::LengthMm, 0.01, 300.0, 12.0),
    money("stock_price", 9),
    of("at_hand", Kind::Flag),
    whole("how_many", Quantity::Count, 0, 1_000, 2),
    number("one_kg", Quantity::MassKg, 0.0, 1_000.0, 4.0),
    of("bought_as", Kind::Entry(List::Kit)),
];

/// Fields of what of a board cannot be used.
pub const FLAW: &[Field] = &[
    of("flawed", Kind::Entry(List::Stock)),
    height("flaw_from_mm", 20_000.0, 640.0),
    height("flaw_to_mm", 20_000.0, 700.0),
];

/// Fields of pieces that are cut.
pub const CUT: &[Field] = &[
    text("name", 120),
    of("cut_from", Kind::Entry(List::Stock)),
    length("length_mm", 20_000.0, 640.0),
    length("width_mm", 20_000.0, 310.0),
    whole("pieces", Quantity::Count, 1, 10_000, 4),
    of("keeps_grain", Kind::Flag),
];

/// Fields of how all is cut.
pub const CUTTING: &[Field] = &[
    height("kerf_mm", 50.0, 3.0),
    height("trim_mm", 500.0, 10.0),
    of("cut_for", Kind::Choice(&["cheapest", "fewest"])),
];

/// Fields of a covering.
pub const COVERING: &[Field] = &[
    text("name", 120),
    of("surface", Kind::Choice(&["own", "roof", "sides", "roof_and_sides", "doors", "floor"])),
    number("own_m2", Quantity::AreaM2, 0.0, 1_000.0, 3.5),
    of("material", MATERIAL),
    number("waste_percent", Quantity::Percent, 0.0, 200.0, 10.0),
    whole("coats", Quantity::Count, 1, 20, 2),
    number("unit_covers_m2", Quantity::AreaM2, 0.001, 1_000.0, 9.0),
    number("each_m2_takes", Quantity::Count, 0.001, 10_000.0, 18.0),
    percent("rest_used_percent", 50.0),
    of("same_as", Kind::Entry(List::Coverings)),
    of("from_pack", Kind::Entry(List::MaterialPacks)),
    of("bought_as", Kind::Entry(List::Kit)),
];

/// Fields of a pack.
pub const MATERIAL_PACK: &[Field] = &[
    text("name", 120),
    of("covering", Kind::Entry(List::Coverings)),
    money("pack_price", 14),
    of("tax_percent", Kind::Rate),
    number("pack_m2", Quantity::AreaM2, 0.001, 10_000.0, 2.5),
    number("pack_l", Quantity::VolumeL, 0.001, 10_000.0, 2.5),
    number("pack_kg", Quantity::MassKg, 0.001, 10_000.0, 5.0),
    number("pack_mm", Quantity::LengthMm, 1.0, 10_000_000.0, 25_000.0),
    whole("pack_pieces", Quantity::Count, 1, 1_000_000, 200),
    number("one_kg", Quantity::MassKg, 0.0, 1_000.0, 4.0),
    length("length_mm", 20_000.0, 1_250.0),
    length("width_mm", 20_000.0, 600.0),
    length("height_mm", 20_000.0, 250.0),
];
