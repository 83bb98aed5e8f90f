//! What it takes to keep a thing in its place: the rules for tie-downs, each by itself.

use serde::Serialize;

use super::constants as rules;
use super::input::sound;
use crate::plan::{Fastened, Id, Plan};
use crate::space::{Placed, Thing};
use crate::water::constants::DENSITY_KG_PER_L;

/// What it takes to keep one heavy thing in its place.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Tying {
    /// The placement.
    pub placement: Id,
    /// The item of the kit.
    pub item: Id,
    /// What it is called.
    pub name: String,
    /// With all that a can holds when it is full, in kilograms.
    pub mass_kg: f64,
    /// What the plan says that keeps it in its place.
    pub fastened: Fastened,
    /// What must hold it when the van brakes, in newtons.
    pub forward_n: f64,
    /// What must hold it rearwards, in newtons.
    pub rearward_n: f64,
    /// What must hold it to either side, in newtons.
    pub sideways_n: f64,
    /// What must hold it down, in newtons.
    pub upward_n: f64,
    /// What the working load limits of all its straps must come to, in kilograms.
    pub aggregate_limit_kg: f64,
    /// Fewest tie-downs by its length and mass.
    pub fewest_ties: u32,
    /// How many of the straps at hand it needs, when their limit is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub straps: Option<u32>,
    /// How many strips it needs, when strips hold it and it is known what one holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strips: Option<u32>,
}

/// The force that a mass has against what holds it, in newtons; `part_of_g` is the acceleration in parts of gravity.
/// Statics: force = mass × acceleration.
///
/// ```
/// use kerbstead_core::load::tying::force_n;
/// assert!((force_n(60.0, 0.8) - 470.72).abs() < 0.01);
/// ```
pub fn force_n(mass_kg: f64, part_of_g: f64) -> f64 {
    mass_kg * rules::GRAVITY * part_of_g
}

/// The tension of each of some straps that together hold a force, at an angle to its direction. Statics:
/// force / (straps × cos angle). Nothing where straps pull across or there are none.
///
/// ```
/// use kerbstead_core::load::tying::direct_tension_n;
/// assert_eq!(direct_tension_n(470.0, 2, 0.0), Some(235.0));
/// assert_eq!(direct_tension_n(470.0, 2, 90.0), None);
/// ```
pub fn direct_tension_n(force_n: f64, straps: u32, angle_deg: f64) -> Option<f64> {
    let along = libm::cos(angle_deg.to_radians());
    (straps > 0 && along > LEAST_PART).then(|| force_n / (f64::from(straps) * along))
}

/// Less of a strap's pull than this in the direction that counts is none.
const LEAST_PART: f64 = 1e-6;

/// A thing under straps that go over it and press it to the floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OverTop {
    /// Its mass.
    pub mass_kg: f64,
    /// Friction between it and what it stands on.
    pub friction: f64,
    /// The acceleration in the direction that is looked at, in parts of gravity.
    pub along_g: f64,
    /// The acceleration downwards, in parts of gravity: 1 as a rule.
    pub down_g: f64,
    /// How steep the straps are, from the floor.
    pub angle_deg: f64,
    /// How many straps there are.
    pub straps: u32,
    /// How many times as much as is needed: 1.25 forwards, 1.1 to the sides.
    pub safety: f64,
}

/// Gravity as the norm for over-the-top straps rounds it, in m/s². Source: EN 12195-1:2010 (from memory).
const NORM_GRAVITY: f64 = 9.81;

/// The tension that each over-the-top strap needs, in newtons; none where friction holds it already. Source: EN
/// 12195-1:2010, frictional lashing (from memory): (c − μ cz) m g fs / (2 n μ sin α).
///
/// ```
/// use kerbstead_core::load::tying::{OverTop, over_top_tension_n};
/// let chest = OverTop { mass_kg: 80.0, friction: 0.3, along_g: 0.8, down_g: 1.0, angle_deg: 60.0, straps: 2, safety: 1.25 };
/// assert!((over_top_tension_n(&chest).unwrap() - 471.98).abs() < 0.5);
/// ```
pub fn over_top_tension_n(thing: &OverTop) -> Option<f64> {
    let steep = libm::sin(thing.angle_deg.to_radians());
    let grip = 2.0 * f64::from(thing.straps) * thing.friction * steep;
    let slides = (thing.along_g - thing.friction * thing.down_g).max(0.0);
    let tension = slides * thing.mass_kg * NORM_GRAVITY * thing.safety / grip;
    (grip > LEAST_PART && tension.is_finite()).then_some(tension)
}

/// What the working load limits of all tie-downs must come to, in kilograms. Source: 49 CFR 393.106(d): half the weight.
pub fn aggregate_limit_kg(mass_kg: f64) -> f64 {
    mass_kg * rules::AGGREGATE_PART
}

/// Fewest tie-downs by length and mass. Source: 49 CFR 393.110: blocked at its front, one for every 10 ft begun; otherwise
/// one up to 5 ft and 1,100 lb, two up to 10 ft, and one more for every 10 ft begun beyond.
///
/// ```
/// use kerbstead_core::load::tying::fewest_ties;
/// assert_eq!([fewest_ties(1_200.0, 40.0, false), fewest_ties(1_800.0, 40.0, false)], [1, 2]);
/// ```
pub fn fewest_ties(length_mm: f64, mass_kg: f64, is_blocked: bool) -> u32 {
    let stretches = |mm: f64| whole_up(mm / rules::STRETCH_MM);
    if is_blocked {
        return stretches(length_mm).max(1);
    }
    if length_mm <= rules::SHORT_MM && mass_kg <= rules::LIGHT_KG {
        return 1;
    }
    stretches(length_mm - rules::STRETCH_MM).saturating_add(2)
}

/// How many straps it takes to stay within their working load limits. Straps from a thing to its anchors pull one way each,
/// at 45°, so those that hold it forwards are others than those that hold it rearwards; each of them also holds it to one
/// side. Source: 49 CFR 393.102(a)(2) with statics; the angle is common practice.
pub fn straps_within_limit(mass_kg: f64, strap_limit_kg: f64) -> u32 {
    let along = libm::cos(rules::STRAP_ANGLE_DEG.to_radians());
    let one_way = |part_of_g: f64| whole_up(mass_kg * part_of_g / (strap_limit_kg * along));
    let (forward, rearward) = (one_way(rules::WORKING_FORWARD), one_way(rules::WORKING_REARWARD));
    forward.saturating_add(rearward).max(one_way(rules::WORKING_SIDEWAYS).saturating_mul(2))
}

/// How many straps of that limit a thing needs: the most that one of the rules asks for. Source: 49 CFR 393.110; 393.102(a)(2);
/// 393.106(d), where a strap from an anchor to the thing counts half.
///
/// ```
/// use kerbstead_core::load::tying::straps_needed;
/// // 60 kg, 0.6 m long: one forwards and one rearwards.
/// assert_eq!(straps_needed(60.0, 600.0, 125.0, false), Some(2));
/// ```
pub fn straps_needed(mass_kg: f64, length_mm: f64, strap_limit_kg: f64, is_blocked: bool) -> Option<u32> {
    if !(strap_limit_kg > 0.0 && strap_limit_kg.is_finite()) {
        return None;
    }
    let by_weight = whole_up(aggregate_limit_kg(mass_kg) / (strap_limit_kg * rules::DIRECT_PART));
    Some(fewest_ties(length_mm, mass_kg, is_blocked).max(straps_within_limit(mass_kg, strap_limit_kg)).max(by_weight))
}

/// How many adhesive strips or hooks hold a thing without drilling: mass × gravity × √(1 + 0.8²), so many times over, by
/// what one holds in the heat. At least twice over. Statics, with 0.8 of gravity of 49 CFR 393.102(a)(1); how many times
/// over and what the heat leaves is common practice.
///
/// ```
/// use kerbstead_core::load::tying::strips_needed;
/// // 1 kg hangs and is thrown with 1.28 times its weight; three times that, and half of 1.5 kg in the heat.
/// assert_eq!(strips_needed(1.0, 3, 1.5, 50.0), Some(6));
/// ```
pub fn strips_needed(mass_kg: f64, times: u32, holds_kg: f64, heat_percent: f64) -> Option<u32> {
    let rating_n = force_n(holds_kg, heat_percent.min(100.0) / 100.0);
    let thrown = libm::sqrt(1.0 + rules::BREAKING_FORWARD * rules::BREAKING_FORWARD);
    let needed_n = force_n(mass_kg, thrown) * f64::from(times.max(rules::LEAST_STRIP_TIMES));
    (rating_n > 0.0).then(|| whole_up(needed_n / rating_n))
}

/// Up to the next whole number, with what rounding leaves a breath above one taken for it.
fn whole_up(count: f64) -> u32 {
    const BREATH: f64 = 1e-9;
    let up = libm::ceil(count - BREATH);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates at both ends")]
    let whole = up as u32;
    whole
}

/// What each heavy thing that is placed inside takes, in the order of the placements.
pub(super) fn tyings(plan: &Plan, placed: &Placed) -> Vec<Tying> {
    let things = placed.things.iter().zip(&placed.layout.items);
    let inside = things.filter(|(_, standing)| standing.is_inside());
    inside
        .filter_map(|(thing, standing)| {
            let length_mm = f64::from(standing.length_mm.max(standing.width_mm));
            heavy_kg(plan, thing).map(|mass_kg| tying(plan, thing, mass_kg, length_mm))
        })
        .collect()
}

/// The mass of a thing with what a can holds, where that is enough to be fastened.
fn heavy_kg(plan: &Plan, thing: &Thing) -> Option<f64> {
    Some(full_kg(plan, thing)).filter(|mass| *mass >= rules::HEAVY_KG)
}

/// The mass of a thing with what a can holds when it is full.
pub(super) fn full_kg(plan: &Plan, thing: &Thing) -> f64 {
    let held_l = plan.item(thing.item).and_then(|item| item.tank).map_or(0.0, |tank| sound(tank.capacity_l));
    thing.mass_kg.map_or(0.0, sound) + held_l * DENSITY_KG_PER_L
}

fn tying(plan: &Plan, thing: &Thing, mass_kg: f64, length_mm: f64) -> Tying {
    let room = &plan.room;
    let is_blocked = thing.fastened == Fastened::Wedged;
    let strips = room.strip_holds_kg.filter(|_| thing.fastened == Fastened::Strips);
    Tying {
        placement: thing.id,
        item: thing.item,
        name: thing.name.clone(),
        mass_kg,
        fastened: thing.fastened,
        forward_n: force_n(mass_kg, rules::BREAKING_FORWARD),
        rearward_n: force_n(mass_kg, rules::BREAKING_REARWARD),
        sideways_n: force_n(mass_kg, rules::BREAKING_SIDEWAYS),
        upward_n: force_n(mass_kg, rules::UPWARD),
        aggregate_limit_kg: aggregate_limit_kg(mass_kg),
        fewest_ties: fewest_ties(length_mm, mass_kg, is_blocked),
        straps: room.strap_limit_kg.and_then(|limit| straps_needed(mass_kg, length_mm, limit, is_blocked)),
        strips: strips.and_then(|holds| strips_needed(mass_kg, room.strip_times(), holds, room.strip_heat_percent())),
    }
}
