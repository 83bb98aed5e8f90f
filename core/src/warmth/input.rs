//! What the warmth takes: the room with its shell, and what each hour of the road brings.

use super::constants::{
    ASLEEP_HOURS, AWAKE_HOURS, DAMP_PERCENT, FACE_W_M2K, LEAK_CM2, LIGHT_WH_K, LIT_FROM_HOUR, MEAL_HOUR, OPEN_ABOVE_C,
    SINGLE_HIGH_M, THINGS_FACE, THINGS_WH_KG_K, WATER_WH_L_K, WIND_M_S,
};
use super::shell::{Kind, Sizes, surfaces, volume_m3};
use crate::energy::heat::pressure_pa;
use crate::energy::{sound, within};
use crate::plan::{Burner, DrawDays, Item, Plan, Shell, TankKind, Works};
use crate::power::Skies;
use crate::run::Day;
use crate::thermal::constants::AIR_WH_M3K;
use crate::thermal::damp::saturation_pa;
use crate::thermal::people::{Activity, GivenOff};
use crate::thermal::setup::{Hour, Mass, Setup};
use crate::thermal::shell::Surface;
use crate::thermal::vents::{Opening, Vents};

/// The warm side of a plan along some days.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// The room. Its hours are those of [`Self::hours`].
    pub setup: Setup,
    /// What each surface of its shell is.
    pub kinds: Vec<Kind>,
    /// What each hour brings, but for the heat of what runs on the stores.
    pub hours: Vec<Hour>,
    /// The light on a roof and on upright sides, in W/m².
    pub light_w_m2: Vec<[f64; 2]>,
    /// Whether all sleep.
    pub asleep: Vec<bool>,
    /// Whether the air outside is known on all days.
    pub is_air_known: bool,
    /// What heaters with a thermostat give that burn something, and what share of it puts its fumes into the room.
    pub burners: (f64, f64),
}

impl Input {
    /// The warm side of a plan along these days under their skies.
    pub(crate) fn new(plan: &Plan, days: &[&Day], skies: &Skies) -> Self {
        let sizes = Sizes::new(plan);
        let (kinds, shell): (Vec<Kind>, Vec<Surface>) = surfaces(plan, &sizes, None).into_iter().unzip();
        let (heater_w, open_w) = thermostats(plan);
        let setup = Setup {
            vents: vents(&plan.shell, &sizes),
            volume_m3: volume_m3(plan, &sizes),
            light_wh_k: AIR_WH_M3K * volume_m3(plan, &sizes) + LIGHT_WH_K,
            mass: Some(mass(plan, &sizes, skies.air_c.first().copied().unwrap_or(0.0))),
            heater_w,
            pressure_pa: pressure_pa(skies.lowest_m.unwrap_or(0.0)),
            start_c: skies.air_c.first().copied().unwrap_or(0.0),
            shell,
            ..Setup::default()
        };
        let hours = Hours::new(plan);
        Self {
            setup,
            kinds,
            hours: days.iter().enumerate().flat_map(|(at, day)| hours.of_day(at, day, skies)).collect(),
            light_w_m2: skies.light_w_m2.clone(),
            asleep: (0..days.len() * 24).map(|hour| hours.asleep.has(hour % 24)).collect(),
            is_air_known: !days.is_empty() && skies.is_air_known,
            burners: (heater_w, if heater_w > 0.0 { open_w / heater_w } else { 0.0 }),
        }
    }

    /// How warm it gets outside on each day, in °C; empty where that is not known.
    pub fn highs_c(&self) -> Vec<f64> {
        let high = |hours: &[Hour]| hours.iter().map(|hour| hour.air_c).fold(f64::MIN, f64::max);
        if self.is_air_known { self.hours.chunks(24).map(high).collect() } else { Vec::new() }
    }

    /// The sun on each surface in an hour, in W/m².
    pub fn sun_into(&self, hour: usize, sun_w_m2: &mut Vec<f64>) {
        let light = self.light_w_m2.get(hour).copied().unwrap_or_default();
        sun_w_m2.clear();
        sun_w_m2.extend(self.sun_of(light));
    }

    /// The same of a light on a roof and on upright sides.
    pub(super) fn sun_of(&self, [roof, upright]: [f64; 2]) -> impl Iterator<Item = f64> {
        self.kinds.iter().map(move |kind| match kind {
            Kind::Roof => roof,
            Kind::Sides | Kind::Doors | Kind::Cab => upright,
            Kind::Floor | Kind::Divider => 0.0,
        })
    }
}

/// What is open: gaps, what is left open at night, and what is opened when it is warm outside.
pub fn vents(shell: &Shell, sizes: &Sizes) -> Vents {
    let m2 = |cm2: f64| cm2 / 1e4;
    let leaks = Opening::low_and_high(m2(shell.leak_cm2.unwrap_or(LEAK_CM2)) / 2.0, sizes.height_m / 2.0);
    Vents {
        fixed: vec![leaks, left_open(shell, shell.vent_cm2.unwrap_or(0.0))],
        openings: vec![Opening::single(m2(shell.open_cm2.unwrap_or(0.0)), SINGLE_HIGH_M)],
    }
}

/// What is left open at night, if it is so much.
pub fn left_open(shell: &Shell, open_cm2: f64) -> Opening {
    match shell.vent_rise_mm.filter(|rise_mm| *rise_mm > 0.0) {
        Some(rise_mm) => Opening::low_and_high(open_cm2 / 2e4, rise_mm / 1_000.0),
        None => Opening::single(open_cm2 / 1e4, SINGLE_HIGH_M),
    }
}

/// Full power of all that burns by a thermostat, and of those whose fumes stay inside.
fn thermostats(plan: &Plan) -> (f64, f64) {
    let mut sums = (0.0, 0.0);
    for (burner, count) in burners(plan).filter(|(burner, _)| burner.keeps_warm) {
        sums.0 += burner.heat_w * count;
        sums.1 += if burner.vents_out { 0.0 } else { burner.heat_w * count };
    }
    sums
}

fn burners(plan: &Plan) -> impl Iterator<Item = (Burner, f64)> {
    let of = |item: &Item| {
        let burner = item.burner?;
        Some((Burner { heat_w: sound(burner.heat_w, MOST_BURNER_W), ..burner }, f64::from(item.kept())))
    };
    plan.carried().filter_map(of)
}

/// No burner gives more, in W.
const MOST_BURNER_W: f64 = 2e4;

/// What is heavy inside.
fn mass(plan: &Plan, sizes: &Sizes, start_c: f64) -> Mass {
    let mut holds_wh_k = 0.0;
    for item in plan.carried() {
        let count = f64::from(item.kept());
        holds_wh_k += sound(item.mass_kg.map_or(0.0, |mass| mass.likely()), 1e5) * count * THINGS_WH_KG_K;
        if let Some(tank) = item.tank.filter(|tank| tank.holds == TankKind::Fresh) {
            // Half full on average.
            holds_wh_k += sound(tank.capacity_l, 1e5) * count * WATER_WH_L_K / 2.0;
        }
    }
    Mass {
        holds_wh_k: holds_wh_k.clamp(1.0, 1e5),
        to_air_w_k: (sizes.floor_m2() * THINGS_FACE * FACE_W_M2K).clamp(0.1, 1e4),
        start_c,
    }
}

/// Hours of the day, from one to another, which may lie past midnight.
#[derive(Clone, Copy)]
pub struct Span {
    from_hour: f64,
    hours: f64,
}

impl Span {
    fn new(from_hour: f64, hours: f64) -> Self {
        Self { from_hour: within(from_hour, 0.0, 24.0), hours: sound(hours, 24.0) }
    }

    /// From one hour of the day until another.
    fn until(from_hour: f64, until_hour: f64) -> Self {
        let hours = until_hour - from_hour;
        Self::new(from_hour, if hours < 0.0 { hours + 24.0 } else { hours })
    }

    /// The share of an hour of the day that lies in it.
    fn share(&self, hour: usize) -> f64 {
        let within = |from: f64| ((from + self.hours).min(hour as f64 + 1.0) - from.max(hour as f64)).clamp(0.0, 1.0);
        (within(self.from_hour) + within(self.from_hour - 24.0)).min(1.0)
    }

    fn has(&self, hour: usize) -> bool {
        self.share(hour) > 0.5
    }
}

/// From and until which hour of the day all sleep.
fn asleep_hours(plan: &Plan) -> [f64; 2] {
    let [from, until] = ASLEEP_HOURS;
    [plan.shell.asleep_from_hour.unwrap_or(from), plan.shell.asleep_until_hour.unwrap_or(until)]
}

/// What is the same on every day, or on every working day.
struct Hours<'a> {
    plan: &'a Plan,
    asleep: Span,
    /// On days off and on working days, hour by hour: what is given off, and what a thermostat is set to.
    kinds: [[(GivenOff, Option<f64>); 24]; 2],
    /// What each fan blows, when and on which days.
    fans: Vec<(f64, Span, DrawDays)>,
}

impl<'a> Hours<'a> {
    fn new(plan: &'a Plan) -> Self {
        let [from, until] = asleep_hours(plan);
        let asleep = Span::until(from, until);
        let fan = |item: &Item| {
            let blows = sound(item.fan?.blows_m3_h * f64::from(item.kept()), 5_000.0);
            let draw = item.draw.unwrap_or_default();
            let hours = draw.hours_per_day.map_or(24.0, |hours| hours.likely());
            Some((blows, Span::new(draw.from_hour.unwrap_or(0.0), hours), draw.days))
        };
        let kinds = [false, true].map(|works| kind_of_day(plan, asleep, (from, until), works));
        Self { plan, asleep, kinds, fans: plan.carried().filter_map(fan).collect() }
    }

    fn of_day(&self, number: usize, day: &Day, skies: &Skies) -> Vec<Hour> {
        let airs = skies.air_c.get(number * 24..number * 24 + 24).unwrap_or_default();
        let airs: Vec<f64> = airs.iter().map(|air_c| within(*air_c, -90.0, 90.0)).collect();
        let coldest_c = airs.iter().copied().fold(90.0, f64::min);
        let damp = self.plan.shell.damp_percent.unwrap_or(DAMP_PERCENT) / 100.0;
        // The water in the air stays over the day; what it can bear does not.
        let vapour_pa = damp * saturation_pa(coldest_c);
        let of = |(hour, (air_c, (inside, wanted_c))): (usize, (&f64, &(GivenOff, Option<f64>)))| Hour {
            air_c: *air_c,
            relative_humidity: (vapour_pa / saturation_pa(*air_c)).min(1.0),
            wind_m_s: self.plan.shell.wind_m_s.unwrap_or(WIND_M_S),
            clear: skies.clear.get(number * 24 + hour).copied().unwrap_or(0.0),
            inside: *inside,
            wanted_c: *wanted_c,
            open: if *air_c >= OPEN_ABOVE_C { 1.0 } else { 0.0 },
            fan_m3_h: self.fans_m3_h(hour, day),
        };
        airs.iter().zip(&self.kinds[usize::from(day.is_working)]).enumerate().map(of).collect()
    }

    fn fans_m3_h(&self, hour: usize, day: &Day) -> f64 {
        let runs = self.fans.iter().filter(|(.., days)| days.has(day));
        runs.map(|(blows_m3_h, span, _)| blows_m3_h * span.share(hour)).sum()
    }
}

/// Hour by hour what people and flames give off, and what a thermostat is set to.
fn kind_of_day(plan: &Plan, asleep: Span, (from, until): (f64, f64), works: bool) -> [(GivenOff, Option<f64>); 24] {
    let [before, after] = AWAKE_HOURS;
    let (evening, morning) = (Span::new((from - before).rem_euclid(24.0), before), Span::new(until, after));
    let work = plan.work.work_hours.filter(|_| works).map(|hours| Span::new(plan.work.begins_hour(), hours));
    let people = f64::from(plan.people);
    let cooks = plan.carried().any(cooks);
    std::array::from_fn(|hour| {
        let at_work = work.map_or(0.0, |work| work.share(hour));
        let awake = (evening.share(hour) + morning.share(hour)).max(at_work).min(1.0 - asleep.share(hour));
        let mut sum = GivenOff::person(Activity::Asleep).times(people * asleep.share(hour));
        sum = sum.and(GivenOff::person(Activity::Seated).times(people * awake));
        if hour == MEAL_HOUR && cooks {
            sum = sum.and(GivenOff::meal());
        }
        for (burner, count) in burners(plan).filter(|(burner, _)| !burner.keeps_warm) {
            let share = burning(&burner).share(hour);
            let heat_w = burner.heat_w * count * share;
            let flame = GivenOff::flame(heat_w);
            sum = sum.and(if burner.vents_out { GivenOff { heat_w, ..GivenOff::default() } } else { flame });
        }
        let is_asleep = asleep.has(hour);
        let wanted_c = if is_asleep { plan.shell.wanted_asleep_c } else { plan.shell.wanted_c.filter(|_| awake > 0.0) };
        (sum, wanted_c.map(|wanted_c| within(wanted_c, -50.0, 50.0) + 0.0))
    })
}

/// When something burns that no thermostat decides over.
fn burning(burner: &Burner) -> Span {
    let hours = burner.burns_hours.map_or(0.0, |hours| hours.likely());
    Span::new(burner.lit_from_hour.unwrap_or(LIT_FROM_HOUR), hours)
}

/// Whether something electric warms the room by a thermostat.
pub(super) fn has_electric_heater(plan: &Plan) -> bool {
    plan.carried().any(|item| item.draw.is_some_and(|draw| draw.works == Some(Works::Warming)))
}

fn cooks(item: &Item) -> bool {
    item.burner.is_some_and(|burner| !burner.keeps_warm)
        || item.draw.is_some_and(|draw| draw.works == Some(Works::Heating))
}

/// Whether something burns in an hour in which all sleep.
pub(super) fn burns_asleep(plan: &Plan, burner: &Burner) -> bool {
    let [from, until] = asleep_hours(plan);
    let asleep = Span::until(from, until);
    let burns = burning(burner);
    (0..24).any(|hour| burns.share(hour) > 0.0 && asleep.has(hour))
}
