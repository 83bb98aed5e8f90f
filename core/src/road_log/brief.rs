//! The next build, briefed: what was needed, as numbers that somebody else could quote from.
//!
//! Needs of a day are taken at their ninetieth percentile, of the stretches that were counted or, where too few were, of the
//! days of the plan; each line says which. Every number stands beside its working.

use jiff::civil::Date;

use super::constants::{
    BED_OVER_MM, CHARGED_SHARE, FOAM_MM, FOAM_W_MK, LEAST_STRETCHES, NEED_PERCENT, SUN_PERCENT, USABLE_SHARE, WARM_C,
};
use super::learned::{as_money, of_spending};
use super::stretches::{Evidence, Road};
use super::wishes::logged_days;
use crate::assessment::{Caution, assess};
use crate::explain::{Figure, Figures, Source, Working};
use crate::money::constants::DAYS_PER_MONTH;
use crate::plan::{Plan, Quantity};
use crate::power::Skies;
use crate::run::{Day, Timeline, dated};
use crate::statistics::{ascending, percentile};
use crate::sun::series::Month;
use crate::thermal::constants::{INSIDE_M2K_W, OUTSIDE_M2K_W};
use crate::{Assessment, space, water};

/// What the next build needs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Brief {
    /// The first day of the road.
    pub from: Option<Date>,
    /// The day it was asked.
    pub until: Option<Date>,
    /// On how many days anything was logged.
    pub logged_days: usize,
    /// What is needed, line by line.
    pub lines: Vec<BriefLine>,
    /// What to be careful of.
    pub cautions: Vec<Caution>,
}

/// One need.
#[derive(Clone, Debug, PartialEq)]
pub struct BriefLine {
    /// What it is: its sentence in the catalogue.
    pub key: &'static str,
    /// The figures in it.
    pub figures: Figures,
    /// How it came about.
    pub working: Vec<Working>,
    /// Whether it rests on counts, rather than on the plan alone.
    pub is_logged: bool,
}

/// Sums up what the next build needs, as logged up to a day.
pub fn brief(plan: &Plan, as_of: Date) -> Brief {
    let moved = dated(plan, as_of);
    let timeline = Timeline::new(&moved.plan, as_of);
    let road = Road::new(&moved.plan, as_of, &timeline);
    let skies = Skies::over(plan, road.days());
    let assessment = assess(plan, as_of);
    let briefing = Briefing { plan, as_of, timeline: &timeline, road: &road, skies: &skies, assessment: &assessment };
    let mut lines = Vec::new();
    lines.extend(briefing.power());
    lines.extend(briefing.water());
    lines.extend(briefing.warmth());
    lines.extend(briefing.floor());
    lines.extend(briefing.load());
    lines.extend(briefing.money());
    Brief {
        from: road.days().first().map(|day| day.date),
        until: Some(as_of),
        logged_days: logged_days(plan, as_of),
        lines,
        cautions: vec![
            Caution::LicensedTrades,
            Caution::WiresAndFuelLines,
            Caution::CuttingTheVan,
            Caution::StoreHeatAndFrost,
            Caution::Overloading,
            Caution::WaterQuality,
        ],
    }
}

struct Briefing<'a> {
    plan: &'a Plan,
    as_of: Date,
    timeline: &'a Timeline<'a>,
    road: &'a Road<'a>,
    skies: &'a Skies,
    assessment: &'a Assessment,
}

/// What a day needs, and whether it was counted.
#[derive(Clone, Copy)]
struct ADay {
    need: f64,
    is_logged: bool,
    /// How many stretches or days it is the percentile of.
    of: usize,
}

/// The high end of what a day needs: of counted stretches, or else of the plan's days.
fn high(evidence: &Evidence, planned: &[f64]) -> Option<ADay> {
    let counted: Vec<f64> = evidence
        .stretches
        .iter()
        .filter(|stretch| stretch.weight_days > 0.0)
        .map(|stretch| ((stretch.observed - stretch.known) / stretch.weight_days).max(0.0))
        .collect();
    let is_logged = counted.len() >= LEAST_STRETCHES;
    let days = finite_ascending(if is_logged { &counted } else { planned });
    let need = percentile(&days, NEED_PERCENT);
    (need > 0.0).then_some(ADay { need, is_logged, of: days.len() })
}

fn finite_ascending(values: &[f64]) -> Vec<f64> {
    ascending(&values.iter().copied().filter(|value| value.is_finite()).collect::<Vec<f64>>())
}

/// The most days in a row without something; the whole road if it is never there.
fn longest_without(days: &[&Day], has: impl Fn(&Day) -> bool) -> usize {
    let (mut longest, mut current) = (0, 0);
    for day in days {
        current = if has(day) { 0 } else { current + 1 };
        longest = longest.max(current);
    }
    longest
}

fn wh(value: f64) -> Figure {
    Figure::of(value, Quantity::EnergyWh)
}

fn count_of(a_day: ADay) -> Figure {
    Figure::count(a_day.of)
}

impl Briefing<'_> {
    /// The store and the panel.
    fn power(&self) -> Vec<BriefLine> {
        let Some(item) = self.plan.carried().find(|item| item.store.is_some()) else { return Vec::new() };
        let stores = self.road.stores(self.skies);
        let Some(evidence) = self.road.power(&stores, item.id) else { return Vec::new() };
        let planned = stores.wanted_by_day(item.id);
        let Some(a_day) = high(&evidence, &planned) else { return Vec::new() };
        let without = longest_without(self.road.days(), |day| {
            day.offer.and_then(|offer| offer.mains_hours).is_some_and(|hours| hours.likely() > 0.0)
        });
        // At least the one day from one evening to the next.
        let without = without.max(1) as f64;
        let store_wh = a_day.need * without / USABLE_SHARE;
        let days = Figure::of(without, Quantity::Days);
        let figures = vec![
            ("need", wh(a_day.need)),
            ("days", days),
            ("usable", Figure::of(USABLE_SHARE * 100.0, Quantity::Percent)),
            ("store", wh(store_wh)),
            ("count", count_of(a_day)),
        ];
        let mut lines = vec![line("brief-store", "working-brief-store", figures, a_day.is_logged, Source::Arithmetic)];
        lines.extend(self.panel(a_day));
        lines
    }

    /// What the sun gives on a dull day, as hours of full sun on a flat panel, its losses counted.
    fn panel(&self, a_day: ADay) -> Option<BriefLine> {
        let hours = dull_sun_hours(self.skies)?;
        let panel_w = a_day.need / (hours * CHARGED_SHARE);
        let figures = vec![
            ("need", wh(a_day.need)),
            ("hours", Figure::of(hours, Quantity::Hours)),
            ("charged", Figure::of(CHARGED_SHARE * 100.0, Quantity::Percent)),
            ("panel", Figure::of(panel_w, Quantity::PowerW)),
        ];
        Some(line("brief-panel", "working-brief-panel", figures, a_day.is_logged, Source::CommonPractice))
    }

    fn water(&self) -> Option<BriefLine> {
        let supply = water::Input::new(self.plan);
        let a_day = high(&self.road.water(), &[supply.use_l_per_day])?;
        let days = longest_without(self.road.days(), |day| supply.has_tap(day)).max(1) as f64;
        let litres = |value: f64| Figure::of(value, Quantity::VolumeL);
        let figures = vec![
            ("need", litres(a_day.need)),
            ("days", Figure::of(days, Quantity::Days)),
            ("litres", litres(a_day.need * days)),
            ("count", count_of(a_day)),
        ];
        Some(line("brief-water", "working-brief-water", figures, a_day.is_logged, Source::Arithmetic))
    }

    /// What the shell loses on the coldest night, bare and with foam: what insulation is worth.
    fn warmth(&self) -> Option<BriefLine> {
        let measured = self.plan.readings.iter().filter_map(|reading| reading.measured_c);
        let coldest_inside = measured.filter(|inside| inside.is_finite()).reduce(f64::min);
        let outside_c = self.skies.air_c.iter().copied().filter(|air| air.is_finite()).reduce(f64::min)?;
        let [length, width, height] = inside_m(self.plan);
        let area_m2 = 2.0 * (length * width + length * height + width * height);
        let bare_m2k_w = INSIDE_M2K_W[1] + OUTSIDE_M2K_W;
        let kelvin = (WARM_C - outside_c).max(0.0);
        let loss = |m2k_w: f64| Figure::of(area_m2 * kelvin / m2k_w, Quantity::PowerW);
        let mut figures = vec![
            ("area", Figure::of(area_m2, Quantity::AreaM2)),
            ("warm", Figure::of(WARM_C, Quantity::TemperatureC)),
            ("outside", Figure::of(outside_c, Quantity::TemperatureC)),
            ("bare", loss(bare_m2k_w)),
            ("foam", Figure::of(FOAM_MM, Quantity::LengthMm)),
            ("insulated", loss(bare_m2k_w + FOAM_MM / 1_000.0 / FOAM_W_MK)),
        ];
        let key = match coldest_inside {
            None => "brief-warmth",
            Some(inside_c) => {
                figures.push(("inside", Figure::of(inside_c, Quantity::TemperatureC)));
                "brief-warmth-measured"
            }
        };
        let source = Source::Published("ISO 6946");
        Some(line(key, "working-brief-warmth", figures, coldest_inside.is_some(), source))
    }

    /// The length of the floor that is in use, and what the tallest needs to lie.
    fn floor(&self) -> Option<BriefLine> {
        let tallest = self.plan.sleepers.iter().filter_map(|sleeper| sleeper.height_mm).reduce(f64::max)?;
        let placed = space::Placed::new(self.plan);
        let ends = placed.layout.items.iter().filter(|item| item.is_inside()).flat_map(|item| item.solid().corners);
        let along: Vec<f64> = finite_ascending(&ends.map(|spot| spot.x).collect::<Vec<f64>>());
        let used_mm = along.last().zip(along.first()).map_or(0.0, |(last, first)| last - first);
        let mm = |value: f64| Figure::of(value, Quantity::LengthMm);
        let figures = vec![
            ("tallest", mm(tallest)),
            ("over", mm(BED_OVER_MM)),
            ("bed", mm(tallest + BED_OVER_MM)),
            ("used", mm(used_mm)),
        ];
        Some(line("brief-floor", "working-brief-floor", figures, false, Source::CommonPractice))
    }

    fn load(&self) -> Option<BriefLine> {
        let parts = self.assessment.load.parts?;
        let kg = |value: f64| Figure::of(value, Quantity::MassKg);
        let carried = parts.people_kg + parts.things_kg + parts.water_kg;
        let figures = vec![
            ("people", kg(parts.people_kg)),
            ("things", kg(parts.things_kg)),
            ("water", kg(parts.water_kg)),
            ("payload", kg(carried)),
        ];
        Some(line("brief-load", "working-brief-load", figures, false, Source::Arithmetic))
    }

    fn money(&self) -> Option<BriefLine> {
        let a_day = self.assessment.money.road_cost_per_day;
        let spending = of_spending(self.plan, self.as_of, self.timeline, self.road);
        let counted = Some(spending).filter(|spending| spending.used > 0);
        let (likely, high) = match &counted {
            Some(learned) => (as_money(learned.mean, self.plan)?, as_money(learned.high, self.plan)?),
            None => (a_day, a_day),
        };
        let month = |a_day: crate::plan::Money| a_day.scaled(DAYS_PER_MONTH).rounded(self.plan.minor_digits());
        if likely <= crate::plan::Money::ZERO {
            return None;
        }
        let figures = vec![
            ("day", Figure::Money(likely)),
            ("month", Figure::Money(month(likely))),
            ("high", Figure::Money(month(high))),
        ];
        let key = if counted.is_some() { "brief-money-counted" } else { "brief-money" };
        Some(line(key, "working-brief-money", figures, counted.is_some(), Source::Arithmetic))
    }
}

fn line(key: &'static str, formula: &'static str, figures: Figures, is_logged: bool, source: Source) -> BriefLine {
    let working = vec![Working { formula, figures: figures.clone(), source }];
    BriefLine { key, figures, working, is_logged }
}

/// The length, width and height inside, as stated or usual for the van's size, in metres.
fn inside_m(plan: &Plan) -> [f64; 3] {
    let shape = space::shape_of(plan);
    let most = |of: fn(&space::shape::Spot) -> i32| shape.outline.iter().map(of).max().map_or(0.0, f64::from);
    let height = shape.roof.iter().map(|row| row.height_mm).max().map_or(0.0, f64::from);
    [most(|spot| spot.x_mm), most(|spot| spot.y_mm), height].map(|mm| mm / 1_000.0)
}

/// Hours of full sun on a flat panel, its losses counted, on a dull day: less comes on one day of ten. The days of each
/// stretch of the route are spread around their mean as days are.
fn dull_sun_hours(skies: &Skies) -> Option<f64> {
    /// So many equally likely days stand for all of a stretch.
    const DAYS: usize = 20;
    let a_day: Vec<f64> = skies.flat_share.chunks(24).map(|hours| hours.iter().sum()).collect();
    let mut days = Vec::new();
    let mut first = 0;
    for (count, clearness, clearest) in &skies.clearness {
        let mean = a_day.get(first..first + count).unwrap_or_default().iter().sum::<f64>() / (*count).max(1) as f64;
        first += count;
        if *clearness > 0.0 {
            let month = Month::new(*clearness, *clearest);
            let of_part = |part: usize| mean * month.day((part as f64 + 0.5) / DAYS as f64) / clearness;
            for _ in 0..*count {
                days.extend((0..DAYS).map(of_part));
            }
        }
    }
    let hours = percentile(&finite_ascending(&days), SUN_PERCENT);
    (hours > 0.0).then_some(hours)
}
