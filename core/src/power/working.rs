//! The working of the power's figures.

use super::draws::{fridge, heating};
use super::input::Input;
use super::report::{DrawReport, PanelReport, StoreReport};
use crate::energy::constants::MOST_WH;
use crate::energy::within;
use crate::explain::{Figure, Source, Working};
use crate::plan::{Draw, Item, Plan, Quantity, Works};

/// How the margin of the worst store came about.
pub(super) fn working(
    plan: &Plan,
    input: &Input,
    store: &StoreReport,
    draws: &[DrawReport],
    panels: &[PanelReport],
) -> Vec<Working> {
    let watts = |value| figure(value, Quantity::PowerW);
    let margin = if store.first_short.is_some() {
        Working {
            formula: "working-power-short",
            figures: vec![
                ("short", figure(store.short_hours, Quantity::Hours)),
                ("missing", energy(store.unserved_wh)),
                ("average", watts(store.average_w)),
            ],
            source: Source::Arithmetic,
        }
    } else {
        Working {
            formula: "working-power-reserve",
            figures: vec![
                ("lowest", energy(store.lowest_wh)),
                ("average", watts(store.average_w)),
                ("reserve", figure(store.reserve_hours, Quantity::Hours)),
            ],
            source: Source::Arithmetic,
        }
    };
    let mut working = vec![
        margin,
        Working {
            formula: "working-power-energy",
            figures: vec![
                ("put_in", energy(store.put_in_wh)),
                ("taken_out", energy(store.taken_out_wh)),
                ("missing", energy(store.unserved_wh)),
            ],
            source: Source::Arithmetic,
        },
        Working {
            formula: "working-power-socket",
            figures: vec![("socket", watts(input.socket_w))],
            source: Source::CommonPractice,
        },
    ];
    if let Some(stated) = plan.item(store.item).and_then(|item| item.store) {
        working.push(Working {
            formula: "working-power-inverter",
            figures: vec![
                ("efficiency", figure(stated.inverter_efficiency_percent, Quantity::Percent)),
                ("idle", watts(stated.inverter_idle_w)),
            ],
            source: Source::CommonPractice,
        });
    }
    working.extend(draws.iter().filter_map(|draw| {
        let item = plan.item(draw.item)?;
        Some(of_draw(input, item, item.draw.as_ref()?, draw))
    }));
    working.extend(panels.iter().filter_map(|panel| of_panel(plan.item(panel.item)?, panel)));
    working
}

/// What a plan states, as far as it is a number that anybody can mean; what is no number is nothing.
fn figure(value: f64, quantity: Quantity) -> Figure {
    let value = if value.is_nan() { 0.0 } else { value };
    Figure::of(within(value, -MOST_WH, MOST_WH), quantity)
}

fn energy(value: f64) -> Figure {
    figure(value, Quantity::EnergyWh)
}

/// What a draw takes on an average day.
fn of_draw(input: &Input, item: &Item, draw: &Draw, report: &DrawReport) -> Working {
    let name = ("name", Figure::Name(item.name.clone()));
    let day = ("day", energy(report.wh_per_day));
    let count = f64::from(item.kept());
    match draw.works.unwrap_or_default() {
        Works::Heating => {
            let heating = heating(draw, input.lowest_m);
            Working {
                formula: "working-power-heat",
                figures: vec![
                    name,
                    ("litres", figure(heating.water_kg, Quantity::VolumeL)),
                    ("from", figure(heating.from_c, Quantity::TemperatureC)),
                    ("to", figure(heating.to_c, Quantity::TemperatureC)),
                    ("share", figure(heating.efficiency * 100.0, Quantity::Percent)),
                    ("once", energy(heating.energy_wh())),
                    day,
                ],
                source: Source::Published("IAPWS-95; US Standard Atmosphere 1976"),
            }
        }
        Works::Cooling => {
            let fridge = fridge(item, draw);
            let airs = || input.setup.hours.iter().map(|hour| hour.air_c);
            let air_c = airs().sum::<f64>() / airs().count().max(1) as f64;
            Working {
                formula: "working-power-cool",
                figures: vec![
                    name,
                    ("walls", figure(fridge.ua_w_k, Quantity::PowerW)),
                    ("inside", figure(fridge.inside_c, Quantity::TemperatureC)),
                    ("air", figure(air_c, Quantity::TemperatureC)),
                    day,
                ],
                source: Source::CommonPractice,
            }
        }
        Works::Warming => Working {
            formula: "working-power-warm",
            figures: vec![name, ("power", figure(draw.power_w.likely() * count, Quantity::PowerW)), day],
            source: Source::Arithmetic,
        },
        Works::ByClock => Working {
            formula: "working-power-draw",
            figures: vec![
                name,
                ("power", figure(draw.power_w.likely() * count, Quantity::PowerW)),
                ("hours", figure(draw.hours_per_day.map_or(24.0, |hours| hours.likely()), Quantity::Hours)),
                ("duty", figure(draw.duty_percent.map_or(100.0, |duty| duty.likely()), Quantity::Percent)),
                day,
            ],
            source: Source::Arithmetic,
        },
    }
}

/// What a panel gives on an average day.
fn of_panel(item: &Item, report: &PanelReport) -> Option<Working> {
    let panel = item.panel?;
    let peak_w = panel.peak_w * f64::from(item.kept());
    Some(Working {
        formula: "working-power-panel",
        figures: vec![
            ("name", Figure::Name(item.name.clone())),
            ("peak", figure(peak_w, Quantity::PowerW)),
            ("hours", figure(report.wh_per_day / peak_w.max(1e-9), Quantity::Hours)),
            ("day", energy(report.wh_per_day)),
        ],
        source: Source::Published("Reda and Andreas 2004; Ineichen and Perez 2002; Hay and Davies 1980"),
    })
}
