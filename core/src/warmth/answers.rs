//! Answers beside the verdict, for whoever looks at the warmth: the heater that a wanted temperature takes, what opening keeps
//! faces dry and the air fresh, and a hot parked day.

use jiff::civil::Date;

use super::constants::{FUELS, HOT_DAY_C, HOT_DAY_RANGE_K, PIPE_PERCENT, STALE_PPM, TREE_SHADE};
use super::input::{Input, left_open};
use super::report::Report;
use crate::energy::{sound, within};
use crate::plan::{BurnerFuel, Colour, Id, Money, Plan, decimal};
use crate::power::Skies;
use crate::run::{Day, Timeline, dated};
use crate::sun::air::temperature_c;
use crate::thermal::air_quality::fresh_m3_h;
use crate::thermal::answers::{Steady, heater_for, parked_day};
use crate::thermal::people::GivenOff;
use crate::thermal::setup::{Hour, Setup};
use crate::thermal::vents::Vents;

/// What can be answered.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answers {
    /// What keeps the temperature that is wanted.
    pub heater: Option<Heater>,
    /// What opening keeps every face dry in the wettest hour.
    pub dry: Option<Opening>,
    /// What opening keeps the air from being stale in the coldest hour of sleep.
    pub fresh: Option<Opening>,
    /// The hottest day on the road, or a hot one, with the van parked in the sun.
    pub hot: Vec<Hot>,
    /// How warm it is outside then at most, in °C.
    pub hot_outside_c: f64,
}

/// A heater that keeps a temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Heater {
    /// The temperature, in °C.
    pub wanted_c: f64,
    /// What it takes in the worst hour as if that lasted, in W.
    pub most_w: f64,
    /// What it would be inside in that hour without it, in °C.
    pub without_c: f64,
    /// What it takes in all hours in which somebody is inside, each as if it lasted, in Wh.
    pub heat_wh: f64,
    /// Hours in which it is wanted.
    pub hours: usize,
    /// What each thing of the kit that burns by a thermostat would burn for that.
    pub fuel: Vec<Burnt>,
}

/// Fuel for the heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Burnt {
    /// The item.
    pub item: Id,
    /// What it burns.
    pub fuel: BurnerFuel,
    /// Litres; of gas, kilograms.
    pub amount: f64,
    /// What that costs.
    pub price: Option<Money>,
}

/// How much must be open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening {
    /// The hour, counted from the first on the road.
    pub hour: usize,
    /// Fresh air that does it, in m³/h; none if no amount does.
    pub air_m3_h: Option<f64>,
    /// What must be open for it beside the gaps, in cm², in the wind as stated.
    pub open_cm2: Option<f64>,
    /// What is open already, in cm².
    pub is_open_cm2: f64,
}

/// A parked day in the sun.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(clippy::struct_excessive_bools)] // it stands so or not, each by itself
pub struct Hot {
    /// Its colour.
    pub colour: Colour,
    /// Whether it stands in the shade of trees.
    pub in_shade: bool,
    /// Whether all that opens is open.
    pub is_open: bool,
    /// Whether fans run.
    pub fans: bool,
    /// Whether it is the van as it is.
    pub is_own: bool,
    /// The hottest inside, in °C.
    pub inside_c: f64,
    /// The hour of the day in which it is.
    pub hour: usize,
}

impl Answers {
    /// Of a plan, for what was found of its warmth.
    pub fn new(plan: &Plan, as_of: Date, report: &Report) -> Self {
        let dated = dated(plan, as_of);
        let plan = &dated.plan;
        let timeline = Timeline::new(plan, as_of);
        let road: Vec<&Day> = timeline.road().collect();
        let skies = Skies::over(plan, &road);
        let input = Input::new(plan, &road, &skies);
        let mut answers = Self { hot_outside_c: HOT_DAY_C, ..Self::default() };
        if input.is_air_known {
            answers.heater = heater(plan, &input, report.least_c);
            answers.dry = report.wettest.map(|hour| drying(plan, &input, report, hour));
            answers.fresh = report.coldest.map(|hour| freshening(plan, &input, report, hour));
        }
        (answers.hot, answers.hot_outside_c) = hot_days(plan, &input);
        answers
    }
}

/// For what is wanted while all sleep, or else for the coldest that the bedding is for.
fn heater(plan: &Plan, input: &Input, least_c: f64) -> Option<Heater> {
    let wanted_c = within(plan.shell.wanted_asleep_c.or(plan.shell.wanted_c).unwrap_or(least_c), -50.0, 50.0);
    let mut setup = Setup { sun_w_m2: Vec::new(), ..input.setup.clone() };
    let wanted = |at: usize, hour: &Hour| hour.wanted_c.is_some() || input.asleep.get(at) == Some(&true);
    let hours = input.hours.iter().enumerate().filter(|(at, hour)| wanted(*at, hour));
    setup.hours = hours.map(|(_, hour)| *hour).collect();
    let need = heater_for(&setup, wanted_c)?;
    let mut heat_wh = 0.0;
    for hour in &setup.hours {
        heat_wh += Steady::new(&setup, hour, &[]).heater_w(hour.wanted_c.unwrap_or(wanted_c));
    }
    let burners = plan.carried().filter_map(|item| Some((item.id, item.burner?)));
    let fuel = burners.filter(|(_, burner)| burner.keeps_warm).map(|(item, burner)| {
        let [wh_kg, kg_l] = FUELS[burner.fuel as usize];
        let usual = if burner.vents_out { PIPE_PERCENT } else { 100.0 };
        let burnt_wh = heat_wh / (within(burner.heat_percent.unwrap_or(usual), 1.0, 100.0) / 100.0);
        let kilograms = burnt_wh / wh_kg;
        let amount = if burner.fuel == BurnerFuel::Gas { kilograms } else { kilograms / kg_l };
        let price =
            burner.fuel_price.map(|price| price.scaled(decimal::of_measure(amount)).rounded(plan.minor_digits()));
        Burnt { item, fuel: burner.fuel, amount, price }
    });
    Some(Heater {
        wanted_c,
        most_w: need.heater_w,
        without_c: need.without_c,
        heat_wh,
        hours: setup.hours.len(),
        fuel: fuel.collect(),
    })
}

/// An hour of the course as if it lasted.
fn steady(input: &Input, hour: usize) -> Steady {
    let given = input.hours.get(hour).copied().unwrap_or_default();
    Steady::new(&input.setup, &given, &[])
}

fn drying(plan: &Plan, input: &Input, report: &Report, hour: usize) -> Opening {
    let steady = steady(input, hour);
    let inside_c = report.hours.get(hour).map_or(0.0, |hour| hour.inside_c);
    let heated = input.hours.get(hour).is_some_and(|hour| hour.wanted_c.is_some());
    // With a heater the room stays as warm; without one, more air cools it, and so its faces.
    let air_m3_h = if heated { steady.dry_m3_h(inside_c) } else { steady.dry_unheated_m3_h() };
    opening(plan, input, hour, inside_c, air_m3_h)
}

fn freshening(plan: &Plan, input: &Input, report: &Report, hour: usize) -> Opening {
    let co2_l_h = input.hours.get(hour).map_or(0.0, |hour| hour.inside.co2_l_h);
    let inside_c = report.hours.get(hour).map_or(0.0, |hour| hour.inside_c);
    opening(plan, input, hour, inside_c, fresh_m3_h(co2_l_h, STALE_PPM, input.setup.outside_ppm))
}

/// What must be open for so much air, beside the gaps: what goes through grows with it evenly.
fn opening(plan: &Plan, input: &Input, hour: usize, inside_c: f64, air_m3_h: Option<f64>) -> Opening {
    const HUNDRED_CM2: f64 = 100.0;
    let given = input.hours.get(hour).copied().unwrap_or_default();
    let through = |vents: &Vents| vents.flow_m3_h(inside_c, given.air_c, given.wind_m_s, 0.0, 0.0);
    let mut fixed = input.setup.vents.fixed.clone();
    fixed.truncate(1);
    let gaps_m3_h = through(&Vents { fixed, openings: vec![] });
    let each_m3_h = through(&Vents { fixed: vec![left_open(&plan.shell, HUNDRED_CM2)], openings: vec![] });
    let open_cm2 =
        air_m3_h.filter(|_| each_m3_h > 0.0).map(|air_m3_h| (air_m3_h - gaps_m3_h).max(0.0) / each_m3_h * HUNDRED_CM2);
    Opening { hour, air_m3_h, open_cm2, is_open_cm2: sound(plan.shell.vent_cm2.unwrap_or(0.0), 1e6) }
}

/// The hottest day of the route, or a hot one where it has none: nobody inside, and each way of standing.
fn hot_days(plan: &Plan, input: &Input) -> (Vec<Hot>, f64) {
    let hottest = |hours: &[Hour]| hours.iter().map(|hour| hour.air_c).fold(f64::MIN, f64::max);
    let days = input.hours.chunks_exact(24).zip(input.light_w_m2.chunks_exact(24));
    let worst = days.max_by(|a, b| hottest(a.0).total_cmp(&hottest(b.0)));
    let own = worst.filter(|(hours, _)| input.is_air_known && hottest(hours) >= HOT_DAY_C);
    let (hours, light): (Vec<Hour>, Vec<[f64; 2]>) = match own {
        Some((hours, light)) => (hours.to_vec(), light.to_vec()),
        None => hot_day(),
    };
    let outside_c = hottest(&hours);
    let fans_m3_h: f64 =
        plan.carried().map(|item| item.fan.map_or(0.0, |fan| fan.blows_m3_h * f64::from(item.kept()))).sum();
    let own_colour = plan.shell.colour.unwrap_or_default();
    let can_open = plan.shell.open_cm2.is_some_and(|open| open > 0.0);
    let mut ways = vec![(own_colour, false, false, false)];
    ways.extend(
        [Colour::Light, Colour::Dark]
            .into_iter()
            .filter(|colour| *colour != own_colour)
            .map(|colour| (colour, false, false, false)),
    );
    ways.push((own_colour, true, false, false));
    ways.extend(can_open.then_some((own_colour, false, true, false)));
    ways.extend((fans_m3_h > 0.0).then_some((own_colour, false, can_open, true)));
    ways.push((own_colour, true, can_open, fans_m3_h > 0.0));
    ways.dedup();
    let hot = ways.into_iter().enumerate().filter_map(|(at, (colour, in_shade, is_open, fans))| {
        let mut setup = input.setup.clone();
        for surface in &mut setup.shell {
            // What lies below takes no sun anyhow.
            surface.absorptance = if surface.absorptance > 0.0 { colour.absorptance() } else { 0.0 };
        }
        let shade = if in_shade { TREE_SHADE } else { 1.0 };
        for (hour, [roof, upright]) in light.iter().enumerate() {
            setup.sun_w_m2.extend(input.sun_of([roof * shade, upright * shade]));
            let given = hours.get(hour).copied().unwrap_or_default();
            setup.hours.push(Hour {
                inside: GivenOff::default(),
                wanted_c: None,
                open: if is_open { 1.0 } else { 0.0 },
                fan_m3_h: if fans { fans_m3_h } else { 0.0 },
                ..given
            });
        }
        let peak = parked_day(&setup)?;
        Some(Hot { colour, in_shade, is_open, fans, is_own: at == 0, inside_c: peak.inside_c, hour: peak.hour + 1 })
    });
    (hot.collect(), outside_c)
}

/// A clear summer day, by the sun 60° high at noon: 900 W/m² on the roof and half of it on upright sides. Common practice, no
/// source.
fn hot_day() -> (Vec<Hour>, Vec<[f64; 2]>) {
    let high = |hour: usize| libm::cos((hour as f64 + 0.5 - 12.0) / 14.0 * std::f64::consts::PI).max(0.0);
    let light = |hour: usize| {
        if (5..19).contains(&hour) { [900.0 * high(hour), 450.0 * libm::sqrt(high(hour))] } else { [0.0; 2] }
    };
    let hour = |hour: usize| Hour {
        air_c: temperature_c(HOT_DAY_C - HOT_DAY_RANGE_K, HOT_DAY_C, hour as f64 + 0.5 - 12.0),
        relative_humidity: 0.5,
        wind_m_s: super::constants::WIND_M_S,
        clear: 1.0,
        ..Hour::default()
    };
    ((0..24).map(hour).collect(), (0..24).map(light).collect())
}
