//! What people need in a day, with low, likely and high, and whose numbers they are. A person's own count wins.
//!
//! ```
//! use kerbstead_core::water::needs::{Drinker, Effort, NEEDS, a_day, drinking_l};
//! let temperate = drinking_l(Drinker::Any, 18.0, 0.0, Effort::Easy);
//! let hot = drinking_l(Drinker::Any, 35.0, 4.0, Effort::Hard);
//! assert!((temperate.likely() - 2.6).abs() < 1e-12 && hot.likely() > 2.0 * temperate.likely());
//! // Everything that is daily, for two.
//! let daily: Vec<_> = NEEDS.iter().map(|need| (*need, need.usual_times())).collect();
//! let day = a_day(&daily, 2);
//! assert!(day.grey_l.high() < day.fresh_l.high());
//! ```

use super::constants::{
    COOL_WORK_SHARE, HEAT_STEPS_C, MAN_DRINKS_L, MOST_QUARTS_PER_DAY, MOST_WORK_H, PET_L_PER_KG, QUART_L,
    SHOWER_L_PER_MIN, SHOWER_MIN, TEMPERATE_C, VERY_HOT_C, WOMAN_DRINKS_L, WORK_QUARTS_OFF, WORK_QUARTS_PER_H,
};
use crate::energy::{sound, within};
use crate::explain::Source;
use crate::plan::{Estimate, Id, Per, WaterUse};

/// A use of fresh water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Need {
    /// Its name, for the catalogue; never changes.
    pub key: &'static str,
    /// Litres each time.
    pub litres: Estimate<f64>,
    /// For each person, or for the van.
    pub whom: Per,
    /// Once a day, or as often as is said.
    pub often: Often,
    /// What becomes used water, 0 to 1. The rest is drunk, dries up or goes into the toilet. Common practice, no source.
    pub grey_share: f64,
    /// Whose number the litres are.
    pub source: Source,
}

/// How often a need comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Often {
    /// Its litres are those of a day.
    Day,
    /// Its litres are those of one time.
    Time,
}

impl Need {
    /// Times a day that are counted unless said otherwise: 1 of what is daily, 0 of the rest.
    pub fn usual_times(&self) -> f64 {
        f64::from(u8::from(self.often == Often::Day))
    }

    /// It as a use of a plan: what is not daily comes once a week, a pet drinks every day.
    ///
    /// ```
    /// use kerbstead_core::water::needs::NEEDS;
    /// let drinking = NEEDS[0].to_use(7, "Drinking".to_owned());
    /// assert!(drinking.is_drunk && drinking.litres_per_day.high() == 3.7);
    /// assert_eq!(NEEDS[7].to_use(8, "Shower".to_owned()).times_per_week, Some(1.0));
    /// ```
    pub fn to_use(&self, id: Id, name: String) -> WaterUse {
        let is_daily = self.often == Often::Day || self.key == "pet-of-ten-kg";
        WaterUse {
            id,
            name,
            litres_per_day: self.litres,
            per: self.whom,
            to_grey_percent: self.grey_share * 100.0,
            times_per_week: (!is_daily).then_some(1.0),
            is_drunk: self.key == "drinking",
            ..WaterUse::default()
        }
    }
}

const ACADEMIES: Source = Source::Published("US National Academies 2005, chapter 4; low: Jéquier and Constant 2010");

/// The usual uses. Those by common practice are what people with cans and a bowl report, not with a running tap.
pub const NEEDS: [Need; 11] = [
    Need { grey_share: 0.0, source: ACADEMIES, ..daily("drinking", DRINKS_L, Per::Person) },
    Need { grey_share: 0.1, ..daily("cooking", [0.7, 1.5, 3.0], Per::Person) },
    daily("dishes", [1.0, 2.0, 4.0], Per::Person),
    daily("hands-and-face", [0.5, 1.0, 2.0], Per::Person),
    Need { grey_share: 1.0, ..daily("teeth", [0.2, 0.4, 1.0], Per::Person) },
    Need { grey_share: 0.8, ..daily("cleaning", [0.2, 0.5, 2.0], Per::Van) },
    each("wash-from-a-bowl", [1.5, 3.0, 6.0], Per::Person),
    each("shower", SHOWER_L, Per::Person),
    each("hair", [2.0, 4.0, 8.0], Per::Person),
    each("laundry-by-hand", [8.0, 15.0, 30.0], Per::Van),
    Need { grey_share: 0.0, ..each("pet-of-ten-kg", PET_OF_TEN_L, Per::Van) },
];

/// Somebody, man or woman: both ends, and the middle of what suffices.
const DRINKS_L: [f64; 3] = [WOMAN_DRINKS_L[0], f64::midpoint(MAN_DRINKS_L[1], WOMAN_DRINKS_L[1]), MAN_DRINKS_L[2]];
const SHOWER_L: [f64; 3] =
    [SHOWER_L_PER_MIN[0] * SHOWER_MIN[0], SHOWER_L_PER_MIN[1] * SHOWER_MIN[1], SHOWER_L_PER_MIN[2] * SHOWER_MIN[2]];
const PET_OF_TEN_L: [f64; 3] = [PET_L_PER_KG[0] * 10.0, PET_L_PER_KG[1] * 10.0, PET_L_PER_KG[2] * 10.0];

const fn daily(key: &'static str, litres: [f64; 3], whom: Per) -> Need {
    let litres = range(litres);
    Need { key, litres, whom, often: Often::Day, grey_share: 0.95, source: Source::CommonPractice }
}

const fn each(key: &'static str, litres: [f64; 3], whom: Per) -> Need {
    Need { often: Often::Time, ..daily(key, litres, whom) }
}

/// Litres a person and day in an emergency, to lay beside a plan. Source: Sphere Handbook 2011, water supply standard (read).
pub mod emergency {
    /// Drinking and food.
    pub const DRINKING_AND_FOOD_L: [f64; 2] = [2.5, 3.0];
    /// Basic hygiene.
    pub const HYGIENE_L: [f64; 2] = [2.0, 6.0];
    /// Basic cooking.
    pub const COOKING_L: [f64; 2] = [3.0, 6.0];
    /// In all.
    pub const TOTAL_L: [f64; 2] = [7.5, 15.0];
}

/// What all needs of a day come to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DayNeeds {
    /// Fresh water, in l.
    pub fresh_l: Estimate<f64>,
    /// Of it, what becomes used water, in l.
    pub grey_l: Estimate<f64>,
}

/// What needs come to in a day, each so many times a day (a shower every other day is 0.5), for so many people. Low is all lows
/// together, high all highs: days that are that good or bad in everything are rare.
pub fn a_day(needs: &[(Need, f64)], people: u32) -> DayNeeds {
    let (mut fresh_l, mut grey_l) = ([0.0; 3], [0.0; 3]);
    for (need, times) in needs {
        let persons = if need.whom == Per::Person { f64::from(people.min(1_000)) } else { 1.0 };
        let times = sound(*times, 100.0) * persons;
        let grey_share = sound(need.grey_share, 1.0);
        for ((fresh, grey), litres) in fresh_l.iter_mut().zip(&mut grey_l).zip(three(need.litres)) {
            *fresh += litres * times;
            *grey += litres * times * grey_share;
        }
    }
    DayNeeds { fresh_l: range(fresh_l), grey_l: range(grey_l) }
}

/// Who drinks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Drinker {
    /// Nobody said who.
    #[default]
    Any,
    /// A man of 19 to 50 years.
    Man,
    /// A woman of 19 to 50 years.
    Woman,
}

/// How hard work is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Effort {
    /// Strolling, handiwork.
    Easy,
    /// A brisk walk, a light load.
    #[default]
    Moderate,
    /// A heavy load, digging.
    Hard,
}

/// What somebody drinks in a day, in l, with the air at a temperature in °C and so many hours of work (0 to 16).
///
/// At rest it is what suffices in temperate air, growing straight from 20 to 40 °C to twice that (high: three times). In the
/// hours of work it is what an army's table gives for people used to the heat; that goes by the wet-bulb globe temperature,
/// for which the air's stands in: in the shade that is more than enough, in the sun of damp days it is not. For water to be
/// carried, and no medical advice. Sources: see [`super::constants`].
pub fn drinking_l(who: Drinker, air_c: f64, work_h: f64, effort: Effort) -> Estimate<f64> {
    let [low_l, likely_l, high_l] = match who {
        Drinker::Any => DRINKS_L,
        Drinker::Man => MAN_DRINKS_L,
        Drinker::Woman => WOMAN_DRINKS_L,
    };
    let heat = within((air_c - TEMPERATE_C) / (VERY_HOT_C - TEMPERATE_C), 0.0, 1.0);
    let work_h = sound(work_h, MOST_WORK_H);
    let quarts_per_h = work_quarts_per_h(air_c, effort);
    let day_l = |rest_l: f64, quarts_per_h: f64| {
        let rest_l_per_h = rest_l / 24.0;
        // Whoever works drinks no less than at rest.
        let work_l_per_h = within(quarts_per_h * QUART_L, rest_l_per_h, 2.0);
        sound(rest_l + (work_l_per_h - rest_l_per_h) * work_h, MOST_QUARTS_PER_DAY * QUART_L)
    };
    range([
        day_l(low_l * (1.0 + heat), quarts_per_h - WORK_QUARTS_OFF),
        day_l(likely_l * (1.0 + heat), quarts_per_h),
        day_l(high_l * (1.0 + 2.0 * heat), quarts_per_h + WORK_QUARTS_OFF),
    ])
}

/// How many times as much is drunk on a day whose air gets so warm, with so many hours of work, as in temperate air at rest; in
/// temperate air where the heat is not known.
///
/// ```
/// use kerbstead_core::water::needs::{Effort, heat_factor};
/// assert_eq!(heat_factor(None, 0.0, Effort::Moderate), 1.0);
/// assert_eq!(heat_factor(Some(30.0), 0.0, Effort::Moderate), 1.5);
/// assert!(heat_factor(Some(30.0), 4.0, Effort::Hard) > 2.0);
/// ```
pub fn heat_factor(high_c: Option<f64>, work_h: f64, effort: Effort) -> f64 {
    let likely = |air_c: f64, work_h: f64| drinking_l(Drinker::Any, air_c, work_h, effort).likely();
    likely(high_c.unwrap_or(TEMPERATE_C), work_h) / likely(TEMPERATE_C, 0.0)
}

/// Quarts in an hour of work. Source: TB MED 507, see [`WORK_QUARTS_PER_H`].
fn work_quarts_per_h(air_c: f64, effort: Effort) -> f64 {
    let step = HEAT_STEPS_C.iter().filter(|from_c| air_c >= **from_c).count();
    let [easy, moderate, hard] = WORK_QUARTS_PER_H.get(step.saturating_sub(1)).copied().unwrap_or_default();
    let quarts = match effort {
        Effort::Easy => easy,
        Effort::Moderate => moderate,
        Effort::Hard => hard,
    };
    if step == 0 { quarts * COOL_WORK_SHARE } else { quarts }
}

/// A shower, in l: litres a minute times the minutes that the water runs.
pub fn shower_l(litres_per_min: f64, minutes: f64) -> f64 {
    sound(litres_per_min, 100.0) * sound(minutes, 1_000.0)
}

/// What a pet of a mass drinks in a day, in l. Common practice of vets, no source.
pub fn pet_l(mass_kg: f64) -> Estimate<f64> {
    range(PET_L_PER_KG.map(|litres| litres * sound(mass_kg, 200.0)))
}

pub(super) const fn range([low, likely, high]: [f64; 3]) -> Estimate<f64> {
    Estimate::Range { low, likely, high }
}

/// Low, likely and high, made sound and put in order.
pub(super) fn three(litres: Estimate<f64>) -> [f64; 3] {
    const MOST_L: f64 = 1e6;
    let likely = sound(litres.likely(), MOST_L);
    [sound(litres.low(), likely), likely, within(litres.high(), likely, MOST_L)]
}
