//! Warmth, damp and air by hour; the shell with its layers; and what a heater, an opening, shade would do.

mod answers;
mod hours;
mod shell;

use kerbstead_core::Balance;
use kerbstead_core::plan::{Item, Path, Quantity, Works};

use super::power::{draw_line, items};
use super::{balance_head, section};
use crate::el::{View, el, fragment};
use crate::locale::say_measure;
use crate::parts::fields;
use crate::route::Page;

/// What is said of the night.
const NIGHT: &[&str] = &["least_asleep_c", "wanted_asleep_c", "wanted_c", "asleep_from_hour", "asleep_until_hour"];
/// What is open.
const AIR: &[&str] = &["vent_cm2", "vent_rise_mm", "open_cm2", "leak_cm2", "damp_percent", "wind_m_s"];

/// The page.
pub fn warmth() -> View {
    let shell = Path::section("shell");
    let sky = el("p").class("links").put(el("a").attr("href", Page::Sky.link()).put(key!("warmth-to-sky")));
    fragment()
        .put(balance_head(Balance::Warmth))
        .put(sky)
        .put(section(key!("warmth-nights"), hours::nights()))
        .put(section(key!("warmth-air"), hours::air()))
        .put(section(key!("warmth-answers"), answers::answers()))
        .put(section(key!("warmth-stores"), hours::stores()))
        .put(section(key!("warmth-surfaces"), shell::surfaces()))
        .put(section(key!("warmth-layers"), shell::layers()))
        .put(section(key!("warmth-wanted"), fields(&shell, NIGHT)))
        .put(section(key!("warmth-open"), fields(&shell, AIR)))
        .put(section(key!("warmth-heats"), items(heats, heat_line, "warmth-add-heater")))
        .done()
}

/// What heats, burns or blows.
fn heats(item: &Item) -> bool {
    item.burner.is_some() || item.fan.is_some() || item.draw.is_some_and(|draw| draw.works == Some(Works::Warming))
}

fn heat_line(item: &Item) -> String {
    if let Some(burner) = item.burner {
        return say_measure(burner.heat_w * f64::from(item.kept()), Quantity::PowerW);
    }
    match item.fan {
        Some(fan) => say_measure(fan.blows_m3_h * f64::from(item.kept()), Quantity::AirM3H),
        None => draw_line(item),
    }
}
