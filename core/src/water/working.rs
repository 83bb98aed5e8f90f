//! How the numbers of the water came about.

use super::constants::TEMPERATE_C;
use super::input::Input;
use super::needs::emergency;
use super::report::{days_left, mass_kg};
use super::step::{Course, WaterDay};
use super::treated::Treatment;
use crate::explain::{Figure, Source, Working};
use crate::plan::{Plan, Quantity};

pub(super) fn working(
    plan: &Plan,
    input: &Input,
    course: &Course,
    from: usize,
    lowest: WaterDay,
    treatment: &Treatment,
) -> Vec<Working> {
    let mut lines = vec![
        Working {
            formula: "working-water-days",
            figures: vec![
                ("left", litres(lowest.fresh_l)),
                ("use", litres(input.use_l_per_day)),
                ("days", days(days_left(lowest.fresh_l, input.use_l_per_day))),
                ("on", Figure::Date(lowest.on)),
            ],
            source: Source::Arithmetic,
        },
        Working {
            formula: "working-water-mass",
            figures: vec![
                ("capacity", litres(input.fresh_capacity_l)),
                ("mass", Figure::of(mass_kg(input.fresh_capacity_l), Quantity::MassKg)),
            ],
            source: Source::Published("IAPWS-95"),
        },
    ];
    lines.extend(drunk(plan, input, course, from));
    lines.extend(beside_an_emergency(input));
    treatment.working(&mut lines, plan);
    if input.toilet_person_days > 0.0 {
        lines.push(Working {
            formula: "working-water-toilet",
            figures: vec![
                ("each", litres(input.toilet_l_per_person_day)),
                ("people", Figure::count(input.people as usize)),
                ("days", days(input.toilet_person_days / f64::from(input.people.max(1)))),
            ],
            source: Source::Published("WHO 1992, A guide to the development of on-site sanitation, chapter 5"),
        });
    }
    lines
}

fn litres(value: f64) -> Figure {
    Figure::of(value, Quantity::VolumeL)
}

fn days(value: f64) -> Figure {
    Figure::of(value, Quantity::Days)
}

/// What all days ask for at rest in temperate air, and what the day with the most does with its heat and work.
fn drunk(plan: &Plan, input: &Input, course: &Course, from: usize) -> Option<Working> {
    let rests = plan.water_uses.iter().any(|water_use| water_use.is_drunk);
    let highs_c = course.highs_c.get(from..).unwrap_or_default();
    let hottest_c = highs_c.iter().flatten().copied().reduce(f64::max);
    let most_l = input.wants.on(hottest_c).fresh_l;
    rests.then(|| Working {
        formula: "working-water-drunk",
        figures: vec![
            ("rest", litres(input.at_rest_l())),
            ("air", Figure::of(hottest_c.unwrap_or(TEMPERATE_C), Quantity::TemperatureC)),
            ("most", litres(most_l)),
        ],
        source: Source::Published("US National Academies 2005, chapter 4; TB MED 507"),
    })
}

/// What is planned, beside what people need at the least.
fn beside_an_emergency(input: &Input) -> Option<Working> {
    let [least, most] = emergency::TOTAL_L;
    (input.people > 0).then(|| Working {
        formula: "working-water-least",
        figures: vec![
            ("planned", litres(input.use_l_per_day / f64::from(input.people))),
            ("least", litres(least)),
            ("most", litres(most)),
        ],
        source: Source::Published("Sphere Handbook 2011, water supply standard"),
    })
}
