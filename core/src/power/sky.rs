//! The sky along the route: how warm it is, when it is dark, and what panels give, hour by hour.

use std::borrow::Cow;

use jiff::civil::Date;

use super::constants::{DARK_HOURS, SHADED_SHARE, SWITCHING_VOLTS, UNKNOWN_AIR_C};
use super::input::charging_panels;
use crate::plan::{Climate, Controller, Fixing, Id, Panel, PanelSetup, Plan, Year};
use crate::run::Day;
use crate::sun::air::temperature_c;
use crate::sun::constants::{TRACKING_EFFICIENCY, USUAL_PER_C, USUAL_SOILING};
use crate::sun::month::{Asked, Overhead, Sky, ThirtyDays, fill_under};
use crate::sun::panel::{self, cell_c, dc_w};
use crate::sun::plane::{Plane, Setup};
use crate::sun::typical::{TypicalMonth, TypicalYear};
use crate::sun::{Place, clouds::Clouds};

/// The hours of the route under their skies.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Skies {
    /// The air outside, in °C.
    pub air_c: Vec<f64>,
    /// Whether the sun is below the horizon.
    pub is_dark: Vec<bool>,
    /// What each panel gives as a share of its peak watts; nothing where no place is known.
    pub sun_share: Vec<Vec<f64>>,
    /// What a flat panel on the roof would give, likewise.
    pub flat_share: Vec<f64>,
    /// The light on a roof and, on average, on upright sides, in W/m².
    pub light_w_m2: Vec<[f64; 2]>,
    /// Share of the sky without clouds.
    pub clear: Vec<f64>,
    /// For days in a row: how many, their mean clearness and that of a clear day.
    pub clearness: Vec<(usize, f64, f64)>,
    /// Height of the lowest place: water boils hottest there, which takes the most.
    pub lowest_m: Option<f64>,
    /// Whether nobody said where some of the days are.
    pub is_place_unknown: bool,
    /// Whether the air is known on all days.
    pub is_air_known: bool,
}

/// Days in a row at one place in one month.
struct Stretch {
    first: usize,
    days: usize,
    date: Date,
    climate: Climate,
}

/// Skies with all that they depend on, for plans that are changed a little.
pub(crate) struct KnownSkies {
    under: Under,
    skies: Skies,
}

/// All that skies depend on.
#[derive(PartialEq)]
struct Under {
    climate: Climate,
    years: Vec<Year>,
    stays: Vec<(Id, Climate)>,
    days: Vec<(Date, Option<Id>, f64)>,
    panels: Vec<Panel>,
}

impl KnownSkies {
    pub fn new(plan: &Plan, days: &[&Day]) -> Self {
        Self { under: Under::new(plan, days), skies: Skies::over(plan, days) }
    }

    /// Those over the days of a changed plan: the same where nothing that they depend on is different.
    pub fn over(&self, changed: &Plan, days: &[&Day]) -> Cow<'_, Skies> {
        if self.under == Under::new(changed, days) {
            Cow::Borrowed(&self.skies)
        } else {
            Cow::Owned(Skies::over(changed, days))
        }
    }
}

impl Under {
    fn new(plan: &Plan, days: &[&Day]) -> Self {
        Self {
            climate: plan.climate,
            years: plan.years.clone(),
            stays: plan.stays.iter().map(|stay| (stay.id, stay.climate)).collect(),
            days: days.iter().map(|day| (day.date, day.source, day.drive_hours)).collect(),
            panels: charging_panels(plan),
        }
    }
}

/// A typical year of the plan; none if its hours cannot be read.
pub fn typical_year(year: &crate::plan::Year) -> Option<TypicalYear> {
    let place =
        Place { latitude_deg: year.latitude_deg, longitude_deg: year.longitude_deg, altitude_m: year.altitude_m };
    TypicalYear::of_text(&year.mean_days, place, year.clock_ahead_h)
}

/// What is known of the sky and the air on a day.
fn climate_of(plan: &Plan, day: &Day) -> Climate {
    let stay = plan.stays.iter().find(|stay| Some(stay.id) == day.source);
    let climate = stay.map_or(plan.climate, |stay| stay.climate.or(&plan.climate));
    let year = plan.years.iter().find(|year| Some(year.id) == climate.year);
    match year.filter(|_| climate.latitude_deg.is_none()) {
        None => climate,
        // Where nobody says where it is, it is where the year is of.
        Some(year) => Climate {
            latitude_deg: Some(year.latitude_deg),
            longitude_deg: Some(year.longitude_deg),
            altitude_m: climate.altitude_m.or(Some(year.altitude_m)),
            clock_ahead_h: climate.clock_ahead_h.or(Some(year.clock_ahead_h)),
            ..climate
        },
    }
}

/// At most thirty days each, since that is what is worked out at once.
fn stretches(plan: &Plan, days: &[&Day]) -> Vec<Stretch> {
    let mut stretches: Vec<Stretch> = Vec::new();
    for (at, day) in days.iter().enumerate() {
        let before = at.checked_sub(1).and_then(|before| days.get(before));
        let goes_on =
            before.is_some_and(|before| before.source == day.source && before.date.month() == day.date.month());
        match stretches.last_mut().filter(|stretch| goes_on && stretch.days < 30) {
            Some(stretch) => stretch.days += 1,
            None => {
                stretches.push(Stretch { first: at, days: 1, date: day.date, climate: climate_of(plan, day) });
            }
        }
    }
    merged(stretches)
}

/// Days of a week come one by one; where their climate is the same, they are one stretch.
fn merged(stretches: Vec<Stretch>) -> Vec<Stretch> {
    let mut merged: Vec<Stretch> = Vec::new();
    for stretch in stretches {
        let fits = |last: &&mut Stretch| {
            last.climate == stretch.climate
                && last.date.month() == stretch.date.month()
                && last.days + stretch.days <= 30
        };
        match merged.last_mut().filter(fits) {
            Some(last) => last.days += stretch.days,
            None => merged.push(stretch),
        }
    }
    merged
}

impl Skies {
    /// The skies over days, for the panels of the plan.
    pub fn over(plan: &Plan, days: &[&Day]) -> Self {
        let panels = charging_panels(plan);
        let years: Vec<Option<TypicalYear>> = plan.years.iter().map(typical_year).collect();
        let mut skies = Self { sun_share: vec![Vec::new(); panels.len()], is_air_known: true, ..Self::default() };
        for stretch in stretches(plan, days) {
            let days = &days[stretch.first..stretch.first + stretch.days];
            let year = plan.years.iter().position(|year| Some(year.id) == stretch.climate.year);
            let year = year.and_then(|at| years.get(at)?.as_ref());
            let height_m = stretch.climate.altitude_m.into_iter();
            skies.lowest_m = height_m.chain(skies.lowest_m).min_by(f64::total_cmp);
            skies.is_place_unknown |= stretch.climate.latitude_deg.is_none();
            let air = &stretch.climate;
            skies.is_air_known &= air.low_c.is_some() || air.high_c.is_some() || air.like.is_some() || year.is_some();
            skies.add(&stretch, days, &panels, year);
        }
        skies
    }

    fn add(&mut self, stretch: &Stretch, days: &[&Day], panels: &[Panel], year: Option<&TypicalYear>) {
        let climate = &stretch.climate;
        let Some(latitude_deg) = climate.latitude_deg else { return self.add_air_only(stretch) };
        let clock_h = climate.clock_ahead_h;
        let longitude_deg = climate.longitude_deg.unwrap_or_else(|| clock_h.unwrap_or(0.0) * 15.0);
        let place = Place { latitude_deg, longitude_deg, altitude_m: climate.altitude_m.unwrap_or(0.0) };
        let month = stretch.date.month();
        let usual = climate.like.map(|like| like.month(month, latitude_deg));
        let typical = year.and_then(|year| year.months.get(usize::try_from(month - 1).ok()?));
        let stated_c = (climate.low_c, climate.high_c);
        let in_stated_air = typical.filter(|_| stated_c != (None, None)).map(|month| in_air(month, stated_c));
        let typical = in_stated_air.as_ref().or(typical);
        let word = [climate.clouds.unwrap_or(Clouds::Many)];
        let sky = match (climate.clearness_percent, climate.clouds, typical, &usual) {
            (Some(percent), ..) => Sky::Steady(percent / 100.0),
            (_, Some(_), ..) => Sky::Words(&word),
            (_, _, Some(typical), _) => Sky::Typical(typical),
            (_, _, _, Some(usual)) => Sky::Steady(usual.clearness),
            _ => Sky::Words(&word),
        };
        let low_c = climate.low_c.or(typical.map(|month| month.low_c)).or(usual.as_ref().map(|month| month.low_c));
        let high_c = climate.high_c.or(typical.map(|month| month.high_c)).or(usual.as_ref().map(|month| month.high_c));
        let (low_c, high_c) = low_and_high(low_c, high_c);
        let asked = Asked {
            // Whole hours, as most clocks are ahead.
            utc_offset_h: clock_h.unwrap_or_else(|| libm::round(longitude_deg / 15.0)),
            low_c,
            high_c,
            soiling: USUAL_SOILING,
            days: days.len(),
            ..Asked::new(place, stretch.date, sky)
        };
        let overhead = Overhead::new(&asked);
        let clearest = overhead.clearest();
        let mean = match sky {
            Sky::Words(words) => words.first().map_or(1.0, |word| word.clear_share()) * clearest,
            Sky::Steady(clearness) | Sky::Month { clearness, .. } => clearness,
            Sky::Typical(typical) => typical.clearness(month, latitude_deg),
        };
        self.clearness.push((days.len(), mean, clearest));
        let clear = if clearest > 0.0 { (mean / clearest).clamp(0.0, 1.0) } else { 0.0 };
        self.clear.extend(std::iter::repeat_n(clear, days.len() * 24));
        self.add_light(&overhead, &asked, days, panels);
    }

    /// Nobody knows where: there is no sun, and the air by what is said of it.
    fn add_air_only(&mut self, stretch: &Stretch) {
        let (climate, days) = (&stretch.climate, stretch.days);
        // A climate that is said to be like another one is taken to be north of the equator.
        let usual = climate.like.map(|like| like.month(stretch.date.month(), 1.0));
        let or = |stated_c: Option<f64>, usual_c: Option<f64>| stated_c.or(usual_c);
        let (low_c, high_c) = low_and_high(
            or(climate.low_c, usual.as_ref().map(|month| month.low_c)),
            or(climate.high_c, usual.as_ref().map(|month| month.high_c)),
        );
        let clear = climate.clouds.unwrap_or(Clouds::Many).clear_share();
        for hour in (0..days).flat_map(|_| 0..24_usize) {
            self.air_c.push(temperature_c(low_c, high_c, hour as f64 + 0.5 - 12.0));
            self.light_w_m2.push([0.0; 2]);
            self.clear.push(clear);
            self.is_dark.push(hour >= DARK_HOURS.0 || hour < DARK_HOURS.1);
            self.flat_share.push(0.0);
            self.sun_share.iter_mut().for_each(|shares| shares.push(0.0));
        }
    }

    fn add_light(&mut self, overhead: &Overhead, asked: &Asked, days: &[&Day], panels: &[Panel]) {
        let hours = days.len() * 24;
        let mut light = ThirtyDays::default();
        fill_under(overhead, asked, &mut light);
        self.air_c.extend(light.air_c.iter().take(hours));
        self.is_dark.extend(light.plane_w_m2.iter().take(hours).map(|light| *light <= 0.0));
        let on_roof = Panel::default();
        self.flat_share.extend(shares(&on_roof, &light, hours));
        fill_under(overhead, &Asked { soiling: 0.0, setup: Setup::Flat, ..*asked }, &mut light);
        let begin = self.light_w_m2.len();
        self.light_w_m2.extend(light.plane_w_m2.iter().take(hours).map(|roof| [*roof, 0.0]));
        fill_under(overhead, &Asked { soiling: 0.0, setup: Setup::AllAround, ..*asked }, &mut light);
        for (light_w_m2, upright) in self.light_w_m2.iter_mut().skip(begin).zip(&light.plane_w_m2) {
            light_w_m2[1] = *upright;
        }
        for (panel, to) in panels.iter().zip(&mut self.sun_share) {
            let asked = Asked {
                setup: setup(panel, asked.place.latitude_deg),
                unshaded: unshaded(panel),
                soiling: panel.dirt_percent.map_or(USUAL_SOILING, |percent| percent / 100.0),
                ..*asked
            };
            fill_under(overhead, &asked, &mut light);
            let begin = to.len();
            to.extend(shares(panel, &light, hours));
            if panel.setup == Some(PanelSetup::Beside) {
                fold_up_while_driving(to.get_mut(begin..).unwrap_or_default(), days);
            }
        }
    }
}

/// A typical month whose air goes between the stated low and high, as its own does between its own.
fn in_air(month: &TypicalMonth, (low_c, high_c): (Option<f64>, Option<f64>)) -> TypicalMonth {
    let (low_c, high_c) = (low_c.unwrap_or(month.low_c), high_c.unwrap_or(month.high_c));
    let (own_low_c, span_c) = (month.low_c, month.high_c - month.low_c);
    let mut month = TypicalMonth { low_c, high_c, ..month.clone() };
    for hour in &mut month.hours {
        let share = if span_c > 0.0 { (hour.air_c - own_low_c) / span_c } else { 0.0 };
        hour.air_c = low_c + share * (high_c - low_c);
    }
    month
}

fn low_and_high(low_c: Option<f64>, high_c: Option<f64>) -> (f64, f64) {
    let low = low_c.or(high_c).unwrap_or(UNKNOWN_AIR_C);
    (low, high_c.unwrap_or(low))
}

/// What a panel gives of its peak watts by the light on it and the air around it.
fn shares<'a>(panel: &Panel, light: &'a ThirtyDays, hours: usize) -> impl Iterator<Item = f64> + use<'a> {
    let cells =
        panel::Panel { rated_w: 1.0, per_c: panel.per_degree_percent.map_or(USUAL_PER_C, |percent| percent / 100.0) };
    let is_beside = panel.setup == Some(PanelSetup::Beside);
    let fixing = panel.fixing.unwrap_or(if is_beside { Fixing::Open } else { Fixing::Close });
    let controller = controller(panel);
    light.plane_w_m2.iter().zip(&light.air_c).take(hours).map(move |(light, air_c)| {
        if *light <= 0.0 {
            return 0.0;
        }
        controller.out_w(dc_w(cells, *light, cell_c(fixing, *light, *air_c, USUAL_WIND_M_S)))
    })
}

/// Wind that cools a panel, in metres a second. Common practice, no source: a light breeze.
const USUAL_WIND_M_S: f64 = 1.0;

fn controller(panel: &Panel) -> panel::Controller {
    let stated = panel.controller_percent.map(|percent| percent / 100.0);
    match panel.controller.unwrap_or_default() {
        Controller::Tracking => panel::Controller::Tracking { efficiency: stated.unwrap_or(TRACKING_EFFICIENCY) },
        Controller::Switching => {
            let (store_v, panel_v) = SWITCHING_VOLTS;
            let usual = panel::Controller::Switching { store_v, panel_v };
            stated.map_or(usual, |efficiency| panel::Controller::Tracking { efficiency })
        }
    }
}

fn setup(panel: &Panel, latitude_deg: f64) -> Setup {
    let south_deg = if latitude_deg < 0.0 { 0.0 } else { 180.0 };
    let plane =
        || Plane { tilt_deg: panel.tilt_deg.unwrap_or(0.0), azimuth_deg: panel.azimuth_deg.unwrap_or(south_deg) };
    let turns = panel.turned_times.unwrap_or(0);
    match panel.setup.unwrap_or_default() {
        PanelSetup::Flat => Setup::Flat,
        PanelSetup::Beside if turns > 0 => Setup::Turned { times: u8::try_from(turns).unwrap_or(u8::MAX) },
        PanelSetup::Tilted | PanelSetup::Beside => Setup::Tilted(plane()),
    }
}

/// What shade leaves, hour by hour of the clock.
fn unshaded(panel: &Panel) -> [f64; 24] {
    let left = 1.0 - panel.shade_percent.unwrap_or(0.0) / 100.0;
    let from = panel.sun_from_hour.unwrap_or(0.0);
    let until = panel.sun_until_hour.unwrap_or(24.0);
    std::array::from_fn(|hour| {
        let begin = hour as f64;
        let lit = ((begin + 1.0).min(until) - begin.max(from)).clamp(0.0, 1.0);
        left * (lit + (1.0 - lit) * SHADED_SHARE)
    })
}

/// What stands beside the van is folded up in the hours in which it drives.
fn fold_up_while_driving(shares: &mut [f64], days: &[&Day]) {
    for (day, shares) in days.iter().zip(shares.chunks_mut(24)) {
        for (hour, share) in shares.iter_mut().enumerate() {
            *share *= 1.0 - super::given::driving_share(day, hour);
        }
    }
}
