//! Texts of files: sound ones, and ones with a fault of every kind.

use kerbstead_core::plan::Kind;
use kerbstead_core::plan::field::SECTIONS;
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::{Value, json};

use super::{Taste, plan_values};

/// A document: a plan with up to four faults, and now and then one that is no plan at all.
pub fn documents() -> BoxedStrategy<String> {
    let faulty = (plan_values(Taste::Believable), prop::collection::vec((fault(), any::<Index>()), 0..5));
    let faulty = faulty.prop_map(|(mut plan, faults)| {
        for (fault, at) in &faults {
            fault.put_into(&mut plan, *at);
        }
        plan.to_string()
    });
    let extreme = plan_values(Taste::Extreme).prop_map(|plan| plan.to_string());
    prop_oneof![
        80 => faulty,
        6 => extreme,
        4 => (plan_values(Taste::Believable), any::<Index>()).prop_map(|(plan, at)| torn(&plan.to_string(), at)),
        3 => prop::sample::select(vec!["", "[]", "7", "null", "\"plan\"", "true", "[{}]"]).prop_map(str::to_owned),
        2 => (plan_values(Taste::Believable), 4_194_305..4_200_000_usize)
            .prop_map(|(plan, bytes)| format!("{plan}{}", " ".repeat(bytes))),
        2 => "\\PC{0,60}",
    ]
    .boxed()
}

/// The plan as a document with unknown fields in every object, and unknown entries in some lists.
pub fn documents_of(plan: &Value) -> Value {
    let mut document = plan.clone();
    add_unknown(&mut document);
    if let Some(list) = document.get_mut("costs").and_then(Value::as_array_mut) {
        list.push(json!("an entry of a later kind"));
    }
    document
}

/// Puts a field that no version knows into every object of a value.
pub fn add_unknown(value: &mut Value) {
    match value {
        Value::Object(fields) => {
            fields.values_mut().for_each(add_unknown);
            fields.insert("since_later".to_owned(), json!({ "kept": [1, "two", null] }));
        }
        Value::Array(entries) => entries.iter_mut().for_each(add_unknown),
        _ => {}
    }
}

/// A text cut off, or with a piece taken out of its middle.
fn torn(text: &str, at: Index) -> String {
    let chars: Vec<char> = text.chars().collect();
    let cut = at.index(chars.len());
    let gap = if cut.is_multiple_of(2) { chars.len() } else { cut.min(7) };
    chars[..cut].iter().chain(chars.iter().skip(cut + gap)).collect()
}

/// Something that is wrong in a document.
#[derive(Clone, Debug)]
enum Fault {
    /// The value of some field is this one, whatever the field takes.
    Field(Value),
    /// The value at that pointer is this one.
    At(&'static str, Value),
    /// That list has this entry too.
    Entry(&'static str, Value),
    /// That list has so many entries.
    Many(&'static str, usize),
    /// A number far outside, in some field of numbers.
    OutOfRange,
    /// A fitting field gets low, likely and high in the wrong order.
    Reversed,
}

fn fault() -> impl Strategy<Value = Fault> {
    let any_value = prop_oneof![
        Just(json!("text")),
        Just(json!(7)),
        Just(json!(-1)),
        Just(json!(2.5)),
        Just(json!([])),
        Just(json!({})),
        Just(json!(null)),
        Just(json!(true)),
        Just(json!({ "low": 1, "likely": 2, "high": 3 })),
        Just(json!("1".repeat(30))),
        Just(json!("x".repeat(2_001))),
    ];
    prop_oneof![
        12 => any_value.prop_map(Fault::Field),
        2 => Just(Fault::OutOfRange),
        2 => Just(Fault::Reversed),
        40 => prop::sample::select(faults()),
        // Ten thousand entries take their time.
        1 => Just(Fault::Many("costs", 10_001)),
    ]
}

/// A fault for each problem that chance alone would not meet often enough.
fn faults() -> Vec<Fault> {
    use Fault::{At, Entry};
    vec![
        At("/schema_version", json!(7)),
        At("/schema_version", json!("one")),
        At("/kit", json!({ "1": {} })),
        At("/guesses", json!([1, 2])),
        At("/purse", json!([12])),
        At("/title", json!(12)),
        At("/currency", json!("euro")),
        At("/title", json!("t".repeat(121))),
        At("/people", json!("two")),
        At("/purse/floor", json!("-3")),
        At("/purse/opening_cash", json!("9".repeat(28))),
        At("/purse/opening_cash", json!("9".repeat(30))),
        At("/purse/opening_cash", json!({ "low": 1, "likely": 2, "high": 3 })),
        At("/purse/tax_percent", json!("101")),
        At("/purse/tax_percent", json!("nineteen")),
        At("/purse/tax_percent", json!([19])),
        At("/purse/prices_include_tax", json!("yes")),
        At("/calendar/mode", json!("hovering")),
        At("/calendar/leaves_on", json!("2027-02-30")),
        At("/calendar/leaves_on", json!("-009999-01-01")),
        At("/calendar/ends_on", json!("2019-12-31")),
        At("/calendar/ends_on", json!("9999-12-31")),
        At("/vehicle/socket_volts", json!("twelve")),
        Entry("kit", json!({ "id": 1, "name": "twice" })),
        Entry("kit", json!({ "id": u32::MAX, "store": { "ac_continuous_w": 900, "ac_surge_w": 100 } })),
        Entry("kit", json!({ "quantity": 2, "store": { "usable_wh": 500 } })),
        Entry("kit", json!({ "draw": { "power_w": 5, "store": 4_000_000 } })),
        Entry("kit", json!({ "mass_kg": { "low": 3, "likely": 2, "high": 1 } })),
        Entry("kit", json!({ "draw": 5, "sale": "later", "store": [] })),
        Entry("readings", json!({ "store": 4_000_000, "charge_percent": 50 })),
        At(
            "/readings",
            json!([
                { "on": "2027-05-02", "hour": 9, "cash": "80", "odometer_km": 90_500 },
                { "on": "2027-05-02", "hour": 9, "cash": "70", "odometer_km": 90_400, "missed": 4_000_000 },
                { "on": "2027-05-03", "hour": 7, "fresh_l": 19_999, "slept": "badly" },
            ]),
        ),
        Entry("kit", json!({ "obtain": "owned", "tank": { "capacity_l": 20 } })),
        Entry("receipt_lines", json!({ "item": 4_000_000, "amount": "5" })),
        Entry("incomes", json!({ "on": "2027-03-05", "until": "2027-03-04" })),
        Entry("kit", json!({ "quantity": 2, "returned": { "quantity": 3 } })),
        At("/purchase", json!({ "agreed_price": "500", "deposit": "501" })),
        Entry("stays", json!("somewhere")),
        Entry("stays", json!({ "nights": 4_000_000 })),
        Entry("week", json!({ "weekday": "friday" })),
        Entry("week", json!({ "weekday": "friday" })),
    ]
}

impl Fault {
    fn put_into(&self, plan: &mut Value, at: Index) {
        match self {
            Self::Field(value) => put_into_field(plan, at, |_| true, value),
            Self::At(pointer, value) => put_at(plan, pointer, value),
            Self::Entry(list, entry) => entries(plan, list).push(entry.clone()),
            Self::Many(list, count) => entries(plan, list).resize(*count, json!({})),
            Self::OutOfRange => {
                put_into_field(plan, at, |kind| matches!(kind, Kind::Number { .. } | Kind::Whole { .. }), &json!(-7));
            }
            Self::Reversed => {
                let takes_ranges =
                    |kind: &Kind| matches!(kind, Kind::Number { range: true, .. } | Kind::Money { range: true, .. });
                put_into_field(plan, at, takes_ranges, &json!({ "low": 3, "likely": 2, "high": 4 }));
            }
        }
    }
}

/// Sets one of the fields whose kind `fits`; in a list, of its first entry.
fn put_into_field(plan: &mut Value, at: Index, fits: impl Fn(&Kind) -> bool, value: &Value) {
    let fields = SECTIONS.iter().flat_map(|section| section.fields.iter().map(move |field| (section, field)));
    let fields: Vec<_> = fields.filter(|(_, field)| fits(&field.kind)).collect();
    let (section, field) = fields[at.index(fields.len())];
    let pointer = match (section.name, section.is_list) {
        ("", _) => format!("/{}", field.name),
        (name, false) => format!("/{name}/{}", field.name),
        (name, true) => {
            if entries(plan, name).is_empty() {
                entries(plan, name).push(json!({}));
            }
            format!("/{name}/0/{}", field.name)
        }
    };
    put_at(plan, &pointer, value);
}

fn put_at(value: &mut Value, pointer: &str, wanted: &Value) {
    let Some((name, rest)) = pointer.trim_start_matches('/').split_once('/') else {
        *place_in(value, pointer.trim_start_matches('/')) = wanted.clone();
        return;
    };
    put_at(place_in(value, name), rest, wanted);
}

/// The entry at that position of a list, or the field of that name, of something that is made to have fields.
fn place_in<'a>(value: &'a mut Value, name: &str) -> &'a mut Value {
    let position = name.parse::<usize>().ok().filter(|at| value.get(at).is_some());
    if let Some(position) = position {
        return &mut value[position];
    }
    if !value.is_object() {
        *value = json!({});
    }
    &mut value[name]
}

fn entries<'a>(plan: &'a mut Value, list: &str) -> &'a mut Vec<Value> {
    let place = &mut plan[list];
    if !place.is_array() {
        *place = json!([]);
    }
    match place {
        Value::Array(entries) => entries,
        _ => unreachable!("made a list just before"),
    }
}
