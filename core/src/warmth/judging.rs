//! Whether it is warm enough, dry enough and fit to breathe, from the course of the room.

use super::constants::{HOT_C, STALE_PPM, TIGHT_K};
use super::findings::Finding;
use super::input::{Input, burns_asleep, has_electric_heater};
use super::report::Report;
use crate::assessment::{Margin, Moment, Standing, Verdict};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Layer, Plan, Quantity};
use crate::run::Span;
use crate::thermal::constants::WORK_PPM;
use crate::thermal::run::{Course, Done};

/// Hours over which the lower limit at work is a mean.
const LIMIT_HOURS: usize = 8;

/// A heater that comes within so much of what is wanted is strong enough, in K.
const REACHED_K: f64 = 0.5;

pub(super) fn judge(plan: &Plan, input: &Input, room: &Course, report: &Report, span: Span) -> Standing<Finding> {
    let ahead = Ahead { plan, input, room, report, span };
    let mut findings = Vec::from_iter(ahead.cold());
    findings.extend(ahead.heaters());
    findings.extend(ahead.damp());
    findings.extend(ahead.air());
    findings.extend(ahead.flames());
    findings.extend(ahead.foils());
    findings.extend(ahead.hot());
    let coldest = ahead.coldest();
    Standing {
        verdict: Verdict::by_worst(&findings),
        margin: coldest.map(|(_, done)| Margin::Warmer(done.inside_c - report.least_c)),
        first_short: ahead.first_short(),
        missing: Vec::new(),
        findings,
        cautions: Vec::new(),
        working: coldest.map(|(hour, _)| ahead.working(hour)).unwrap_or_default(),
    }
}

/// The hours from the day asked on.
struct Ahead<'a> {
    plan: &'a Plan,
    input: &'a Input,
    room: &'a Course,
    report: &'a Report,
    span: Span,
}

impl Ahead<'_> {
    fn hours(&self) -> impl Iterator<Item = (usize, &Done)> {
        self.room.hours.iter().enumerate().skip(self.span.first_hour)
    }

    fn asleep(&self) -> impl Iterator<Item = (usize, &Done)> {
        self.hours().filter(|(hour, _)| self.input.asleep.get(*hour) == Some(&true))
    }

    fn at(&self, hour: usize) -> Moment {
        self.span.moment(hour, 1.0)
    }

    fn coldest(&self) -> Option<(usize, &Done)> {
        let hour = self.report.coldest?;
        Some((hour, self.room.hours.get(hour)?))
    }

    fn first_short(&self) -> Option<Moment> {
        let cold = self.asleep().find(|(_, done)| done.inside_c < self.report.least_c).map(|(hour, _)| hour);
        let bad = self.bad_air().map(|(hour, _)| hour);
        cold.into_iter().chain(bad).min().map(|hour| self.at(hour))
    }

    fn cold(&self) -> Option<Finding> {
        let (hour, done) = self.coldest()?;
        let (at, inside_c, least_c) = (self.at(hour), done.inside_c, self.report.least_c);
        if inside_c >= least_c + TIGHT_K {
            return None;
        }
        if inside_c >= least_c {
            return Some(Finding::NearlyTooCold { at, inside_c, least_c });
        }
        let mut days: Vec<usize> =
            self.asleep().filter(|(_, done)| done.inside_c < least_c).map(|(hour, _)| hour / 24).collect();
        days.dedup();
        Some(Finding::TooCold { at, inside_c, least_c, nights: days.len() })
    }

    fn heaters(&self) -> Option<Finding> {
        let wanted = |hour: usize| self.input.hours.get(hour).and_then(|hour| hour.wanted_c);
        let lacking = |(hour, done): (usize, &Done)| Some((hour, done.inside_c, wanted(hour)?));
        let worst = self.hours().filter_map(lacking).min_by(|a, b| (a.1 - a.2).total_cmp(&(b.1 - b.2)));
        let (hour, inside_c, wanted_c) = worst?;
        if self.input.burners.0 <= 0.0 && !has_electric_heater(self.plan) {
            return Some(Finding::NothingHeats { wanted_c });
        }
        let at = self.at(hour);
        (inside_c < wanted_c - REACHED_K).then_some(Finding::HeaterTooWeak { at, inside_c, wanted_c })
    }

    fn damp(&self) -> Option<Finding> {
        let wet = || self.report.faces.iter().filter(|face| !face.wet.is_empty());
        let first = wet().filter_map(|face| Some(face.wet.first()?.0)).min()?;
        let hours = self.report.hours.iter().skip(self.span.first_hour).filter(|hour| hour.wet_faces > 0).count();
        let most_g = wet().map(|face| face.most_g).sum();
        Some(Finding::GetsWet { at: self.at(first), hours, faces: wet().count(), most_g })
    }

    /// The first hour above a limit at work: over eight hours of sleep, or over any hour.
    fn bad_air(&self) -> Option<(usize, f64)> {
        let [long_ppm, short_ppm] = WORK_PPM;
        let mut sum = 0.0;
        let ppm = |hour: usize| self.room.hours.get(hour).map_or(0.0, |done| done.mean_ppm);
        for (at, (hour, done)) in self.hours().enumerate() {
            sum += done.mean_ppm;
            if at >= LIMIT_HOURS {
                sum -= ppm(hour - LIMIT_HOURS);
            }
            if done.mean_ppm > short_ppm {
                return Some((hour, short_ppm));
            }
            if at + 1 >= LIMIT_HOURS && sum / LIMIT_HOURS as f64 > long_ppm {
                return Some((hour, long_ppm));
            }
        }
        None
    }

    fn air(&self) -> Option<Finding> {
        let (worst, most_ppm) =
            self.hours().map(|(hour, done)| (hour, done.mean_ppm)).max_by(|a, b| a.1.total_cmp(&b.1))?;
        if let Some((hour, limit_ppm)) = self.bad_air() {
            return Some(Finding::BadAir { at: self.at(hour), most_ppm, limit_ppm });
        }
        (most_ppm > STALE_PPM).then(|| Finding::StaleAir { at: self.at(worst), most_ppm })
    }

    fn flames(&self) -> Vec<Finding> {
        let open = self.plan.carried().filter(|item| item.burner.is_some_and(|burner| !burner.vents_out));
        let of = |item: &crate::plan::Item| {
            let burner = item.burner?;
            let (id, name) = (item.id, item.name.clone());
            if burner.keeps_warm {
                return Some(Finding::OpenFlameHeats { item: id, name });
            }
            burns_asleep(self.plan, &burner).then_some(Finding::FlameWhileAsleep { item: id, name })
        };
        open.filter_map(of).collect()
    }

    fn foils(&self) -> Vec<Finding> {
        let idle = self.report.layers.iter().filter(|layer| layer.is_idle_foil);
        let named = |id| self.plan.layers.iter().find(|layer| layer.id == id).map(|layer: &Layer| layer.name.clone());
        idle.map(|layer| Finding::IdleFoil { layer: layer.layer, name: named(layer.layer).unwrap_or_default() })
            .collect()
    }

    fn hot(&self) -> Option<Finding> {
        let (hour, done) = self.hours().max_by(|a, b| a.1.inside_c.total_cmp(&b.1.inside_c))?;
        (done.inside_c >= HOT_C).then(|| Finding::HotInside { at: self.at(hour), inside_c: done.inside_c })
    }

    /// How the coldest hour of sleep came about, and what was gone by.
    fn working(&self, hour: usize) -> Vec<Working> {
        let degrees = |value| Figure::of(value, Quantity::TemperatureC);
        let w_k = |value| Figure::of(value, Quantity::HeatWK);
        let done = self.room.hours.get(hour).copied().unwrap_or_default();
        let outside_c = self.input.hours.get(hour).map_or(0.0, |hour| hour.air_c);
        let people = self.input.hours.get(hour).map_or(0.0, |hour| hour.inside.heat_w);
        let shell_w_k: f64 = self.report.surfaces.iter().map(|surface| surface.w_k).sum();
        vec![
            Working {
                formula: "working-warmth-shell",
                figures: vec![
                    ("shell", w_k(shell_w_k)),
                    ("air", w_k(self.report.air_w_k)),
                    (
                        "area",
                        Figure::of(self.report.surfaces.iter().map(|surface| surface.area_m2).sum(), Quantity::AreaM2),
                    ),
                ],
                source: Source::Published("ISO 6946:2017; BS 5925; ASHRAE Fundamentals, infiltration"),
            },
            Working {
                formula: "working-warmth-night",
                figures: vec![
                    ("at", Figure::Moment(self.at(hour))),
                    ("outside", degrees(outside_c)),
                    ("inside", degrees(done.inside_c)),
                    ("people", Figure::of(people, Quantity::PowerW)),
                    ("heater", Figure::of(done.heater_wh, Quantity::PowerW)),
                    ("least", degrees(self.report.least_c)),
                    ("margin", Figure::of(done.inside_c - self.report.least_c, Quantity::WarmerK)),
                ],
                source: Source::Published("ASHRAE Fundamentals 2009, table 1; ASHRAE 55"),
            },
            Working {
                formula: "working-warmth-dew",
                figures: vec![
                    ("humidity", Figure::of(done.relative_humidity * 100.0, Quantity::Percent)),
                    ("inside", degrees(done.inside_c)),
                    ("dew", degrees(done.dew_point_c)),
                ],
                source: Source::Published("ASHRAE Fundamentals 2017, chapter 1"),
            },
            Working {
                formula: "working-warmth-air",
                figures: vec![
                    ("fresh", Figure::of(done.air_m3_h, Quantity::AirM3H)),
                    ("ppm", Figure::of(done.mean_ppm, Quantity::Ppm)),
                ],
                source: Source::Published("Persily and de Jonge 2017; ASTM D6245"),
            },
        ]
    }
}
