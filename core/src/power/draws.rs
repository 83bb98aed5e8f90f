//! What the kit draws, as the engine takes it.

use super::constants::{
    AGAIN_WITHIN_H, FOAM_W_MK, HEAT_FROM_C, HEAT_PERCENT, INSIDE_C, LABEL_AIR_C, STEEL_KJ_PER_KG_K, USUAL_IMPORTANCE,
    VESSEL_KG,
};
use crate::energy::draw::{Days, Draw as Engine, Need, Span};
use crate::energy::fridge::{Box, Fridge};
use crate::energy::heat::{Heating, boiling_c};
use crate::plan::{Draw, Item, Works};
use crate::run::Day;

/// A draw of all that is kept of an item, on a store by its position, along the days of a run.
pub(super) fn of_plan(item: &Item, draw: &Draw, store: usize, days: &[&Day], altitude_m: f64) -> Engine {
    let one_w = draw.power_w.likely() / (1.0 - draw.loss_percent.unwrap_or(0.0) / 100.0);
    let start_w = draw.surge_w.map_or(one_w, |surge_w| surge_w.max(one_w));
    let power_w = one_w * f64::from(item.kept());
    let mut engine = Engine {
        power_w,
        surge_w: power_w - one_w + start_w,
        outlet: draw.outlet,
        need: Need::Duty(0.0),
        duty: draw.duty_percent.map_or(1.0, |duty| duty.likely() / 100.0),
        days: Days::These(days.iter().map(|day| draw.days.has(day)).collect()),
        chance: draw.used_percent.map_or(1.0, |percent| percent / 100.0),
        store,
        may_move: draw.may_move,
        importance: u8::try_from(draw.importance.unwrap_or(USUAL_IMPORTANCE)).unwrap_or(u8::MAX),
    };
    engine.need = match draw.works {
        Some(Works::Cooling) => Need::Fridge(of_all(fridge(item, draw), power_w)),
        Some(Works::Warming) => Need::Hours(Vec::new()),
        Some(Works::Heating) if one_w > 0.0 => {
            let hours = heating(draw, altitude_m).energy_wh() / draw.power_w.likely();
            engine.duty = 1.0;
            Need::Spans(spans(draw, hours * f64::from(times(draw))))
        }
        _ => Need::Spans(spans(draw, draw.hours_per_day.map_or(24.0, |hours| hours.likely()))),
    };
    engine.made_sound()
}

/// Several boxes, and what a charger loses, as one box: as much more heat comes in as more power is taken.
fn of_all(one: Fridge, power_w: f64) -> Fridge {
    if one.running_w <= 0.0 {
        return Fridge { running_w: power_w, ..one };
    }
    let times = power_w / one.running_w;
    Fridge {
        ua_w_k: one.ua_w_k * times,
        running_w: power_w,
        holds_wh_k: one.holds_wh_k * times,
        opening_w: one.opening_w * times,
        ..one
    }
}

fn times(draw: &Draw) -> u32 {
    draw.times_per_day.unwrap_or(1).clamp(1, 24)
}

/// The hours of a day in equal parts, one after the other.
fn spans(draw: &Draw, hours: f64) -> Vec<Span> {
    let times = times(draw);
    let again_h = draw.again_after_hours.unwrap_or(AGAIN_WITHIN_H / f64::from(times.max(2) - 1));
    // What would be after midnight is in the small hours of the same day: two times must not both begin at 24:00.
    let from_hour = |time: u32| match draw.from_hour.unwrap_or(0.0) + f64::from(time) * again_h {
        hour if time > 0 && hour >= 24.0 => hour % 24.0,
        hour => hour,
    };
    let hours = (hours / f64::from(times)).clamp(0.0, 24.0);
    (0..times).map(|time| Span { from_hour: from_hour(time), hours }).collect()
}

/// What is heated each time.
pub(super) fn heating(draw: &Draw, altitude_m: f64) -> Heating {
    let water_kg = draw.heats_l.unwrap_or(0.0);
    Heating {
        water_kg,
        vessel_kj_per_k: draw.vessel_kg.unwrap_or(VESSEL_KG) * STEEL_KJ_PER_KG_K,
        from_c: draw.heats_from_c.unwrap_or(HEAT_FROM_C),
        to_c: draw.heats_to_c.unwrap_or_else(|| boiling_c(altitude_m)).min(boiling_c(altitude_m)),
        boiled_away_kg: draw.boiled_away_l.unwrap_or(0.0).min(water_kg),
        efficiency: draw.heat_percent.unwrap_or(HEAT_PERCENT) / 100.0,
    }
}

/// A cool box by its label, or else by its size and walls, or else a small one.
pub(super) fn fridge(item: &Item, draw: &Draw) -> Fridge {
    let inside_c = draw.inside_c.unwrap_or(INSIDE_C);
    let running_w = draw.power_w.likely();
    if let Some(label_wh) = draw.label_wh {
        return Fridge::labelled(label_wh, draw.label_air_c.unwrap_or(LABEL_AIR_C), inside_c, running_w);
    }
    let metres = |mm: Option<f64>| mm.map(|mm| mm / 1_000.0);
    let sides = metres(item.length_mm).zip(metres(item.width_mm)).zip(metres(item.height_mm)).zip(metres(draw.wall_mm));
    let usual = Fridge { inside_c, running_w, ..Fridge::default() };
    let Some((((length_m, width_m), height_m), foam_m)) = sides else { return usual };
    let walls = Box { length_m, width_m, height_m, foam_m, conductivity_w_mk: FOAM_W_MK };
    Fridge { ua_w_k: walls.ua_w_k(), ..usual }
}
