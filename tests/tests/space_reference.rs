//! Room in the van against independent code: tables that `tests/reference/spaces.py` and `rectangles.py` made.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]
#![allow(clippy::float_cmp, reason = "what is square to the walls is exact")]

use kerbstead_core::space::fit::fit;
use kerbstead_core::space::item::{Item, Layout};
use kerbstead_core::space::rectangles::{Block, Decision, Place, Rectangle, Room, fits_rectangles};
use kerbstead_core::space::shape::{Shape, Spot};
use kerbstead_core::space::walkway::{self, Body, Walkway};
use serde_json::Value;

fn table(text: &str, key: &str) -> Vec<Value> {
    let whole: Value = serde_json::from_str(text).unwrap();
    whole[key].as_array().unwrap().clone()
}

fn spaces(key: &str) -> Vec<Value> {
    table(include_str!("../data/spaces.json"), key)
}

fn mm(value: &Value) -> i32 {
    i32::try_from(value.as_i64().unwrap()).unwrap()
}

fn spot(value: &Value) -> Spot {
    Spot { x_mm: mm(&value[0]), y_mm: mm(&value[1]) }
}

/// A box as the tables have it: length, width, place, turn.
fn item(value: &Value) -> Item {
    Item {
        length_mm: mm(&value[0]),
        width_mm: mm(&value[1]),
        x_mm: mm(&value[2]),
        y_mm: mm(&value[3]),
        turn_deg: value[4].as_f64().unwrap(),
        height_mm: 400,
        ..Item::default()
    }
}

/// Source: Shapely (GEOS).
#[test]
fn boxes_overlap_as_shapely_has_it() {
    for pair in spaces("pairs") {
        let items = vec![item(&pair["first"]), item(&pair["second"])];
        let layout = Layout { shape: Shape::square(100_000, 100_000), items, together: vec![] };
        let shared = fit(&layout).overlaps.first().map_or(0.0, |overlap| overlap.shared_mm2);
        let expected = pair["shared_mm2"].as_f64().unwrap();
        assert!((shared - expected).abs() <= 1e-3 + expected * 1e-9, "{pair}: {shared}");
    }
}

/// Source: Shapely (GEOS): free space shrunk by half the body. Its arcs are of 128 pieces a quarter, and it was halved
/// down to a hundredth of a millimetre.
#[test]
fn the_widest_body_that_passes_is_that_of_shapely() {
    for walk in spaces("walks") {
        let outline = walk["outline"].as_array().unwrap().iter().map(spot).collect();
        let items = walk["boxes"].as_array().unwrap().iter().map(item).collect();
        let layout = Layout { shape: Shape { outline, ..Shape::default() }, items, together: vec![] };
        let walkway = Walkway::new(&layout, &Body { width_mm: 500, from_mm: 0, to_mm: 1_900 }, &[]);
        let place = |key: &str| walkway::Place::Spot(spot(&walk[key]));
        let way = walkway.way(place("start"), place("goal"));
        let expected = walk["widest_mm"].as_f64().unwrap();
        assert!(way.widest_mm <= expected + 0.1 && way.widest_mm > expected - 1.0, "{walk}: {way:?}");
        assert_eq!(way.passes, way.widest_mm + 1e-6 >= 500.0);
    }
}

/// Source: CP-SAT of OR-Tools, proven both ways.
#[test]
fn rectangles_fit_just_where_the_solver_proved_it() {
    for case in table(include_str!("../data/rectangles.json"), "cases") {
        let list = |key: &str| case[key].as_array().unwrap().clone();
        let block = |value: &Value| {
            let part = |at: usize| mm(&value[at]);
            Block { x_mm: part(0), y_mm: part(1), length_mm: part(2), width_mm: part(3) }
        };
        let rectangle = |value: &Value| Rectangle {
            length_mm: mm(&value[0]),
            width_mm: mm(&value[1]),
            may_turn: value[2].as_bool().unwrap(),
        };
        let room = Room {
            blocks: list("blocks").iter().map(block).collect(),
            ..Room::empty(mm(&case["room"][0]), mm(&case["room"][1]))
        };
        let rectangles: Vec<_> = list("rectangles").iter().map(rectangle).collect();
        match fits_rectangles(&room, &rectangles, 50_000_000) {
            Decision::Fits(places) => {
                assert_eq!(case["fits"], true, "{case}");
                assert_stands(&room, &rectangles, &places);
            }
            other => assert_eq!((case["fits"].clone(), &other), (Value::Bool(false), &Decision::Impossible), "{case}"),
        }
    }
}

/// Every rectangle in the room, no two in one place, none in a block.
fn assert_stands(room: &Room, rectangles: &[Rectangle], places: &[Place]) {
    let standing = rectangles.iter().zip(places).map(|(rectangle, place)| {
        assert!(rectangle.may_turn || !place.turned);
        let (length, width) = (rectangle.length_mm, rectangle.width_mm);
        let (length, width) = if place.turned { (width, length) } else { (length, width) };
        [place.x_mm, place.y_mm, place.x_mm + length, place.y_mm + width]
    });
    let blocks = room
        .blocks
        .iter()
        .map(|block| [block.x_mm, block.y_mm, block.x_mm + block.length_mm, block.y_mm + block.width_mm]);
    let all: Vec<_> = standing.chain(blocks).collect();
    for (at, one) in all.iter().enumerate() {
        assert!(one[0] >= 0 && one[1] >= 0 && one[2] <= room.length_mm && one[3] <= room.width_mm, "{one:?}");
        for other in &all[..at] {
            let apart = one[2] <= other[0] || other[2] <= one[0] || one[3] <= other[1] || other[3] <= one[1];
            assert!(apart, "{one:?} {other:?}");
        }
    }
}
