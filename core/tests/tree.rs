//! That what leaves core is written as `serde_json` itself would write it.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use std::collections::BTreeMap;

use jiff::civil::date;
use kerbstead_core::{assess, plan, tree};
use serde::Serialize;

#[derive(Serialize)]
struct Unit;

#[derive(Serialize)]
struct Wrapped(u8);

#[derive(Serialize)]
struct Pair(i64, f64);

#[derive(Serialize)]
enum Shape {
    Point,
    Circle(f64),
    Line(i8, char),
    Rectangle { width: f32, height: Option<u16> },
}

#[derive(Serialize)]
#[serde(tag = "kind")]
enum Tagged {
    Empty,
    Full { litres: u64 },
}

#[test]
fn every_form_of_value_is_written_as_serde_json_writes_it() {
    fn same(value: &impl Serialize) {
        assert_eq!(tree(value), serde_json::to_value(value).unwrap());
    }
    same(&(Unit, Wrapped(1), Pair(-2, 0.5), (), true, "text", String::from("more")));
    same(&[f64::NAN, f64::INFINITY, -0.0, 1e300]);
    same(&[Shape::Point, Shape::Circle(1.5), Shape::Line(-1, 'é')]);
    same(&[Shape::Rectangle { width: 0.25, height: None }, Shape::Rectangle { width: 2.0, height: Some(3) }]);
    same(&[Tagged::Empty, Tagged::Full { litres: u64::MAX }]);
    same(&BTreeMap::from([("b", vec![Some(1)]), ("a", Vec::new())]));
}

#[test]
fn an_assessment_is_written_as_serde_json_writes_it() {
    for month in [1, 5, 8] {
        let assessment = assess(&plan::demo_plan(), date(2027, month, 20));
        assert_eq!(tree(&assessment), serde_json::to_value(&assessment).unwrap());
    }
}
