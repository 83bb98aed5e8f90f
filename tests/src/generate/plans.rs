//! Whole plans as they stand in a file, drawn field by field from the table.

use jiff::ToSpan;
use jiff::civil::{Date, date};
use kerbstead_core::plan::field::{Field, SECTIONS, Section};
use kerbstead_core::plan::{Kind, List};
use kerbstead_core::sun::typical::{TypicalHour, TypicalYear};
use kerbstead_core::sun::{Irradiance, Place};
use proptest::prelude::*;
use serde_json::{Map, Value, json};

use super::values::{Taste, value};

/// Around this day everything believable happens.
const LEAVES_ON: Date = date(2027, 3, 1);

/// Days: near [`LEAVES_ON`], or any of those there are.
pub fn days(taste: Taste) -> BoxedStrategy<Date> {
    let near = |from: i64, to: i64| {
        (from..to).prop_map(|days| LEAVES_ON.checked_add(days.days()).unwrap_or(LEAVES_ON)).boxed()
    };
    match taste {
        Taste::Believable => near(-50, 30),
        Taste::Extreme => prop_oneof![
            3 => near(-60, 40),
            1 => near(-900, 900),
            1 => (-9999_i16..=9999, 1_i8..=12, 1_i8..=28).prop_map(|(year, month, day)| date(year, month, day)),
            1 => prop::sample::select(vec![Date::MIN, Date::MAX, Date::ZERO, date(2024, 2, 29), date(2027, 12, 31)]),
        ]
        .boxed(),
    }
}

/// The entries of each list are numbered one after the other, so that every id is unique.
pub fn plan_values(taste: Taste) -> BoxedStrategy<Value> {
    let sections: Vec<BoxedStrategy<Value>> = SECTIONS.iter().map(|section| part(section, taste)).collect();
    (sections, guesses()).prop_map(|(parts, guesses)| assembled(parts, &guesses)).boxed()
}

fn guesses() -> impl Strategy<Value = Vec<String>> {
    let path = prop::sample::select(vec!["kit/1/mass_kg", "kit/2/draw/power_w", "vehicle/socket_volts", "nowhere/7"]);
    prop_oneof![3 => Just(Vec::new()), 1 => prop::collection::vec(path.prop_map(str::to_owned), 0..4)]
}

fn assembled(parts: Vec<Value>, guesses: &[String]) -> Value {
    let mut plan = Map::new();
    let mut id = 0_u32;
    for (section, mut value) in SECTIONS.iter().zip(parts) {
        for entry in value.as_array_mut().into_iter().flatten().filter_map(Value::as_object_mut) {
            id += 1;
            entry.insert("id".to_owned(), id.into());
        }
        match value {
            Value::Object(fields) if section.name.is_empty() => plan.extend(fields),
            value => drop(plan.insert(section.name.to_owned(), value)),
        }
    }
    // Years stand behind the stays that name them, so all ids are given by now.
    let there = plan.clone();
    for section in SECTIONS.iter().filter(|section| !section.name.is_empty()) {
        if let Some(entries) = plan.get_mut(section.name) {
            refer(section, entries, &there);
        }
    }
    if !guesses.is_empty() {
        plan.insert("guesses".to_owned(), json!(guesses));
    }
    Value::Object(plan)
}

/// Most references are to entries that are there, whose ids are known only now; those of receipts and tasks to the kit are
/// as they were drawn.
fn refer(section: &Section, entries: &mut Value, plan: &Map<String, Value>) {
    for field in section.fields {
        let Kind::Entry(list) = field.kind else { continue };
        let there = plan.get(list.name()).and_then(Value::as_array).map_or(&[][..], Vec::as_slice);
        let is_drawn = list == List::Kit && matches!(section.name, "receipt_lines" | "tasks" | "task_needs");
        let entries = match &mut *entries {
            Value::Array(entries) => entries.as_mut_slice(),
            one => std::slice::from_mut(one),
        };
        for entry in entries.iter_mut().filter(|_| !is_drawn) {
            let Some(drawn) = entry.pointer_mut(&format!("/{}", field.name)) else { continue };
            let at = drawn.as_u64().and_then(|at| usize::try_from(at).ok());
            if let Some(id) = at.and_then(|at| there.get(at % (there.len() + 1))?.get("id")) {
                *drawn = id.clone();
            }
        }
    }
}

fn part(section: &'static Section, taste: Taste) -> BoxedStrategy<Value> {
    if !section.is_list {
        return entry(section, taste);
    }
    let most = match section.name {
        "kit" => 8,
        "readings" => 3,
        "corners" => 7,
        _ => 4,
    };
    let entry = entry(section, taste);
    // Corners drawn by chance are seldom a floor, and walls and built-in parts leave little room.
    let seldom = matches!(section.name, "corners" | "wall_rows" | "roof_rows" | "built_ins");
    let (empty, filled) = if seldom && taste == Taste::Believable { (9, 1) } else { (1, 11) };
    prop_oneof![empty => Just(0..1), filled => Just(1..most)]
        .prop_flat_map(move |count| prop::collection::vec(entry.clone(), count))
        .prop_map(Value::Array)
        .boxed()
}

/// One entry of a section: parts such as `draw` are there or not as a whole.
fn entry(section: &'static Section, taste: Taste) -> BoxedStrategy<Value> {
    let mut parts: Vec<&'static str> = section.fields.iter().map(first_name).collect();
    parts.dedup();
    let fields: Vec<BoxedStrategy<Vec<(&'static Field, Value)>>> = parts
        .into_iter()
        .map(|name| {
            let fields: Vec<BoxedStrategy<Option<(&'static Field, Value)>>> = section
                .fields
                .iter()
                .filter(|field| first_name(field) == name)
                .map(|field| optional(section, field, taste))
                .collect();
            if fields.len() == 1 {
                return fields.prop_map(|fields| fields.into_iter().flatten().collect()).boxed();
            }
            prop::option::weighted(share_of_part(name), fields)
                .prop_map(|fields| fields.into_iter().flatten().flatten().collect())
                .boxed()
        })
        .collect();
    fields
        .prop_map(|parts| {
            let mut entry = Map::new();
            for (field, value) in parts.into_iter().flatten() {
                put(&mut entry, field.name, value);
            }
            Value::Object(entry)
        })
        .boxed()
}

fn optional(section: &Section, field: &'static Field, taste: Taste) -> BoxedStrategy<Option<(&'static Field, Value)>> {
    let value = match (section.name, field.name, taste) {
        ("calendar", "starts_on", Taste::Believable) => shifted(-50, 1),
        ("calendar", "leaves_on", Taste::Believable) => shifted(0, 10),
        ("calendar", "ends_on", Taste::Believable) => shifted(5, 60),
        ("stays", "nights", Taste::Believable) => (0_u32..12).prop_map(|nights| json!(nights)).boxed(),
        // A year-long trip takes its time, so there are not many of them.
        ("stays", "nights", Taste::Extreme) => {
            prop_oneof![20 => 0_u32..30, 1 => Just(366), 1 => Just(u32::MAX)].prop_map(|nights| json!(nights)).boxed()
        }
        ("vehicle", "inside_length_mm", Taste::Believable) => between(2_500, 4_000),
        ("vehicle", "inside_width_mm", Taste::Believable) => between(1_500, 1_900),
        ("vehicle", "inside_height_mm", Taste::Believable) => between(1_400, 2_000),
        ("vehicle", "empty_mass_kg", Taste::Believable) => between(1_500, 2_300),
        ("vehicle", "gross_limit_kg", Taste::Believable) => between(2_000, 3_500),
        ("vehicle", "empty_front_kg", Taste::Believable) => between(900, 1_200),
        ("vehicle", "luggage_kg", Taste::Believable) => between(0, 60),
        // Near one another, or an outline would seldom cross itself.
        ("corners", "x_mm" | "y_mm", _) => between(-500, 4_000),
        ("placements", "x_mm", Taste::Believable) => between(0, 2_000),
        ("placements", "y_mm", Taste::Believable) => between(0, 900),
        ("placements", "level", Taste::Believable) => {
            prop_oneof![4 => Just("floor"), 1 => Just("counter"), 1 => Just("outside")].prop_map(Value::from).boxed()
        }
        ("room", "body_width_mm", Taste::Believable) => between(250, 500),
        ("kit", "length_mm" | "width_mm" | "height_mm", Taste::Believable) => between(80, 900),
        ("kit", "holds_l", Taste::Believable) => between(100, 2_000),
        ("doors", "side", Taste::Believable) => {
            prop_oneof![2 => Just("right"), 2 => Just("rear"), 1 => Just("front")].prop_map(Value::from).boxed()
        }
        (_, "low_c" | "climate/low_c", Taste::Believable) => between(-18, 16),
        (_, "high_c" | "climate/high_c", Taste::Believable) => between(-4, 34),
        (_, "charging_hours", Taste::Believable) => between(1, 6),
        // Text of the length that it may have, in several years, is more than any link holds, which `seal` says.
        ("years", "mean_days", _) => prop_oneof![
            9 => (200_u32..900, -5_i32..20).prop_map(|(noon_w_m2, air_c)| json!(mean_days(noon_w_m2, air_c))),
            if taste == Taste::Extreme { 9 } else { 1 } => value(Kind::Text { max_chars: 2_000 }, taste),
        ]
        .boxed(),
        ("doors", "from_mm", Taste::Believable) => between(0, 400),
        ("doors", "width_mm", Taste::Believable) => between(500, 1_100),
        _ => value(field.kind, taste),
    };
    prop::option::weighted(share_of_field(section, field), value.prop_map(move |value| (field, value))).boxed()
}

/// A typical year of which each day is alike: light from six to six, and steady air.
fn mean_days(noon_w_m2: u32, air_c: i32) -> String {
    let nowhere = Place { latitude_deg: 0.0, longitude_deg: 0.0, altitude_m: 0.0 };
    let mut year = TypicalYear { place: nowhere, utc_offset_h: 0.0, months: Default::default() };
    for month in &mut year.months {
        let air_c = f64::from(air_c);
        (month.low_c, month.high_c, month.coldest_c, month.warmest_c, month.days) = (air_c, air_c, air_c, air_c, 30);
        for (at, hour) in (0_u32..).zip(&mut month.hours) {
            let global_w_m2 = f64::from(noon_w_m2 * 6_u32.saturating_sub(at.abs_diff(12)) / 6);
            let sky = Irradiance { global_w_m2, beam_w_m2: global_w_m2 / 2.0, diffuse_w_m2: global_w_m2 / 2.0 };
            *hour = TypicalHour { sky, air_c };
        }
    }
    year.to_text()
}

fn shifted(from: i64, to: i64) -> BoxedStrategy<Value> {
    (from..to).prop_map(|days| json!(LEAVES_ON.saturating_add(days.days()).to_string())).boxed()
}

fn between(least: i32, most: i32) -> BoxedStrategy<Value> {
    (least..most).prop_map(|value| json!(f64::from(value))).boxed()
}

/// How often a part is there.
fn share_of_part(name: &str) -> f64 {
    match name {
        "offers" => 0.9,
        "draw" | "store" | "tank" => 0.45,
        _ => 0.25,
    }
}

/// How often a field is there; what a balance needs nearly always is.
fn share_of_field(section: &Section, field: &Field) -> f64 {
    match (section.name, field.name) {
        (
            _,
            "leaves_on" | "ends_on" | "nights" | "opening_cash" | "amount" | "store/usable_wh" | "draw/power_w"
            | "tank/capacity_l" | "litres_per_day" | "x_mm" | "y_mm" | "length_mm" | "width_mm" | "height_mm"
            | "empty_mass_kg" | "gross_limit_kg" | "panel/peak_w" | "mean_days",
        )
        | ("placements", "thing") => 0.95,
        (_, "weekday" | "price" | "unit_price" | "on" | "draw/hours_per_day") => 0.85,
        (
            _,
            "obtain"
            | "offers/water"
            | "offers/emptying"
            | "offers/price_per_night"
            | "latitude_deg"
            | "climate/latitude_deg"
            | "draw/heats_l",
        ) => 0.7,
        (_, "mode" | "received_until" | "until" | "quantity" | "draw/surge_w") => 0.25,
        // Most things run by the clock.
        (_, "draw/works" | "draw/label_wh" | "draw/wall_mm" | "draw/loss_percent" | "draw/used_percent") => 0.2,
        ("receipt_lines", "receipt") | ("distances", "of" | "other" | "distance_mm") => 0.9,
        (_, "draw/store") | ("readings", "store") => 0.1,
        // What an outlet gives is mostly left as it usually is, or draws would seldom run at all.
        ("kit", name) if name.starts_with("store/") => 0.2,
        ("placements", "sleeps") => 0.55,
        ("placements", "base_mm" | "turn_deg" | "clear_under_mm") | (_, "stands") => 0.1,
        ("placements", "fastened" | "reached") | ("kit", "mass_kg") => 0.7,
        _ => 0.4,
    }
}

fn first_name(field: &Field) -> &'static str {
    field.name.split('/').next().unwrap_or_default()
}

fn put(entry: &mut Map<String, Value>, name: &str, value: Value) {
    match name.split_once('/') {
        None => drop(entry.insert(name.to_owned(), value)),
        Some((first, rest)) => {
            let part = entry.entry(first.to_owned()).or_insert_with(|| json!({}));
            part.as_object_mut().into_iter().for_each(|part| put(part, rest, value.clone()));
        }
    }
}
