//! Numbers of the water balance that do not come from the plan.

/// Density of water at 20 °C. Source: IAPWS-95 at 101,325 Pa.
pub const DENSITY_KG_PER_L: f64 = 0.998_21;
/// Less water than this many days' use at the lowest moment is called tight. Common practice, no source.
pub const TIGHT_DAYS: f64 = 1.0;
/// The longest supply that is stated; beyond it the use is too small to matter.
pub const MOST_DAYS: f64 = 10_000.0;

/// Litres in a million cubic millimetres. Source: SI, exact (from memory).
pub const MM3_PER_L: f64 = 1e6;
/// Density of water from 0 to 100 °C in kg/m³ by the temperature: numerator from the constant term up, then the factor in
/// the denominator. Source: Kell 1975, J. Chem. Eng. Data 20, 97 (from memory; within 2e-5 kg/l of IAPWS-95, which is tested).
pub const KELL: ([f64; 6], f64) =
    ([999.839_52, 16.945_176, -7.987_040_1e-3, -46.170_461e-6, 105.563_02e-9, -280.542_53e-12], 16.879_850e-3);
/// What a litre of water at 0 °C becomes as ice: 0.99984 kg/l over 0.9167 kg/l. Source: IAPWS ice, handbooks (from memory).
pub const ICE_GROWTH: f64 = 1.0907;

/// The most of any vessel and any day's use that is believed, in ml or thousandths of a person-day: a million litres.
pub const MOST_ML: u64 = 1_000_000_000;
/// What is added to a vessel is added in such steps: a tenth of a litre, or of a person-day.
pub const SIZE_STEP_ML: u64 = 100;

/// What a man drinks a day in temperate air, in l: from drinks alone where much comes from food; what suffices; and all the
/// water he takes in, where none comes from food (dry food). Sources: Jéquier and Constant, "Water as an essential nutrient",
/// 2010, table 4 (read); US National Academies 2005, "Dietary Reference Intakes", chapter 4 (read), twice.
pub const MAN_DRINKS_L: [f64; 3] = [1.75, 3.0, 3.7];
/// What a woman drinks a day. Sources: as above.
pub const WOMAN_DRINKS_L: [f64; 3] = [1.4, 2.2, 2.7];
/// Up to this air temperature drinking stays what it is, in °C. Source: our reading of "temperate" in the source below.
pub const TEMPERATE_C: f64 = 20.0;
/// At this one it has doubled, or even tripled, in °C; between the two it is taken to grow straight. Source: US National
/// Academies 2005, chapter 4 ("can double or even triple in very hot weather, about 40 °C", read).
pub const VERY_HOT_C: f64 = 40.0;
/// A US quart in l. Source: a quarter of a gallon of 231 cubic inches, NIST Handbook 44.
pub const QUART_L: f64 = 0.946_352_946;
/// From these wet-bulb globe temperatures on, in °C: 78, 82, 85, 88 and 90 °F. The first is taken from 20 °C on, as the tables
/// made of it for Canada's forces do (read). Source: US Army, TB MED 507 (read in copies of its table).
pub const HEAT_STEPS_C: [f64; 5] = [20.0, 27.8, 29.4, 31.1, 32.2];
/// Quarts an hour of easy, moderate and hard work at each step, of people used to the heat. Source: as above.
pub const WORK_QUARTS_PER_H: [[f64; 3]; 5] =
    [[0.5, 0.75, 0.75], [0.5, 0.75, 1.0], [0.75, 0.75, 1.0], [0.75, 0.75, 1.0], [1.0, 1.0, 1.0]];
/// People differ by so many quarts an hour. Source: as above.
pub const WORK_QUARTS_OFF: f64 = 0.25;
/// Below the first step an hour of work takes this share of what it does there. Common practice, no source.
pub const COOL_WORK_SHARE: f64 = 0.5;
/// No more than this is to be drunk in a day, in quarts. Source: as above.
pub const MOST_QUARTS_PER_DAY: f64 = 12.0;
/// No more hours of work a day are reckoned with.
pub const MOST_WORK_H: f64 = 16.0;

/// Water for a pet a day by its mass, in l/kg: low, likely, high. Common practice of vets, no source: 50 to 60 ml is usual,
/// and from 100 ml on one asks the vet.
pub const PET_L_PER_KG: [f64; 3] = [0.04, 0.055, 0.1];
/// A van's shower head in l/min: low, likely, high. Common practice, no source.
pub const SHOWER_L_PER_MIN: [f64; 3] = [2.0, 4.0, 8.0];
/// Water runs for so many minutes in a van's shower. Common practice, no source.
pub const SHOWER_MIN: [f64; 3] = [1.0, 2.0, 4.0];

/// Urine a person and day, in l. Source: Franceys, Pickford and Reed, "A guide to the development of on-site sanitation",
/// WHO 1992, chapter 5 (read): usually 0.6 to 1.1, 1.2 in temperate air with much protein. High: as drinking goes up.
pub const URINE_L: [f64; 3] = [0.6, 1.2, 1.8];
/// Faeces a person and day, in l (a kilogram each): 120 g in temperate air, 400 g with much fibre. Source: as above; low:
/// common practice.
pub const FAECES_L: [f64; 3] = [0.1, 0.12, 0.4];
/// Water that flushes a portable toilet, a person and day, in l. Common practice, no source.
pub const FLUSH_L: [f64; 3] = [0.5, 1.5, 3.0];
/// Bags a person and day: Rose, Parker, Jefferson and Cartmell, "The characterization of feces and urine", 2015, have 1.20
/// times a day (read); low and high: common practice.
pub const BAGS_PER_DAY: [f64; 3] = [1.0, 1.2, 2.0];
/// Visits of a public toilet a person and day. Common practice, no source.
pub const VISITS_PER_DAY: [f64; 3] = [4.0, 6.0, 8.0];
/// What the waste tank of a toilet holds where nobody says, in l. Common practice, no source.
pub const USUAL_WASTE_L: f64 = 20.0;
/// How many months a toilet lasts where nobody says. Common practice, no source.
pub const USUAL_LASTS_MONTHS: u32 = 36;
/// Bags that are usually carried. Common practice, no source.
pub const USUAL_BAGS: u32 = 20;
/// Days in a month on average: 365.2425 days of the Gregorian year over 12. Source: ISO 8601:2004 (from memory).
pub const DAYS_PER_MONTH: rust_decimal::Decimal = rust_decimal::Decimal::from_parts(30_436_875, 0, 0, false, 6);

/// Minutes of a rolling boil. Source: CDC, "Making water safe in an emergency" (from memory; the table of Dorris et al.,
/// Emerging Infectious Diseases 31(8), 2025, says the same, read).
pub const ROLLING_BOIL_MIN: f64 = 1.0;
/// Minutes of it in the heights. Source: as above.
pub const ROLLING_BOIL_HIGH_MIN: f64 = 3.0;
/// The heights begin here, in m: 6,500 feet. Source: as above.
pub const HIGH_M: f64 = 1_981.2;
/// What of a flame's heat reaches water in an open pot. Common practice, no source.
pub const FLAME_TO_POT: f64 = 0.45;
/// A wet filter may freeze in so many hours of a day below 0 °C. Common practice, no source: its fibres hold drops.
pub const FILTER_FREEZES_H: f64 = 1.0;
/// A can's tap, neck and hose may freeze in so many hours of a day below 0 °C; the can itself takes longer. Common practice, no
/// source.
pub const CAN_FREEZES_H: f64 = 4.0;
/// Rough prices of ways of having a toilet, in euro: to buy a portable one and a dry one, each emptying of them with what is
/// filled in, a bag, and a visit where one pays. Common practice, no source.
pub mod rough_eur {
    use rust_decimal::Decimal;

    /// A portable toilet.
    pub const PORTABLE: Decimal = Decimal::from_parts(90, 0, 0, false, 0);
    /// A dry one: a bucket with a seat and a lid.
    pub const DRY: Decimal = Decimal::from_parts(35, 0, 0, false, 0);
    /// What is filled into a portable one at each emptying.
    pub const PORTABLE_EACH: Decimal = Decimal::from_parts(12, 0, 0, false, 1);
    /// Litter and liner of a dry one at each emptying.
    pub const DRY_EACH: Decimal = Decimal::from_parts(8, 0, 0, false, 1);
    /// A bag.
    pub const BAG: Decimal = Decimal::from_parts(6, 0, 0, false, 1);
    /// A visit of a public toilet that is paid for.
    pub const VISIT: Decimal = Decimal::from_parts(5, 0, 0, false, 1);
}
/// By how many times in which all is drawn by chance the water is judged.
pub const RUNS: u32 = 2_000;
/// So many of them in one step of the task.
pub const RUNS_A_STEP: u32 = 100;
