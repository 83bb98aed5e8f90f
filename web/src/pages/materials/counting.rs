//! Counts for the shop: how many rolls an area takes as strips, and how many screws a row.

use kerbstead_core::explain::Figure;
use kerbstead_core::materials::coverage::{Roll, screws_in_row, strips};
use kerbstead_core::plan::{Field, Quantity};

use crate::el::{View, el, fragment};
use crate::parts::{Typed, number_field, number_of, question};
use crate::state::App;

static ROLL_LENGTH: Field = number_field("roll_length", Quantity::LengthMm, [1.0, 100_000.0], 10_000.0);
static ROLL_WIDTH: Field = number_field("roll_width", Quantity::LengthMm, [1.0, 10_000.0], 1_200.0);
static OVERLAP: Field = number_field("overlap", Quantity::LengthMm, [0.0, 10_000.0], 0.0);
static RUN: Field = number_field("run", Quantity::LengthMm, [1.0, 100_000.0], 3_100.0);
static SIDE: Field = number_field("side", Quantity::LengthMm, [1.0, 100_000.0], 1_750.0);
static CUT_OFF: Field = number_field("cut_off", Quantity::LengthMm, [0.0, 10_000.0], 50.0);
static ROW: Field = number_field("row", Quantity::LengthMm, [1.0, 100_000.0], 2_440.0);
static EDGE: Field = number_field("edge", Quantity::LengthMm, [0.0, 10_000.0], 20.0);
static SPACING: Field = number_field("spacing", Quantity::LengthMm, [1.0, 10_000.0], 150.0);

/// Both questions.
pub fn counting(app: App) -> View {
    let roll = [
        number_of(key!("count-roll-length"), &ROLL_LENGTH),
        number_of(key!("count-roll-width"), &ROLL_WIDTH),
        number_of(key!("count-run"), &RUN),
        number_of(key!("count-side"), &SIDE),
        number_of(key!("count-overlap"), &OVERLAP),
        number_of(key!("count-cut-off"), &CUT_OFF),
    ];
    let row = [
        number_of(key!("count-row"), &ROW),
        number_of(key!("count-edge"), &EDGE),
        number_of(key!("count-spacing"), &SPACING),
    ];
    fragment()
        .put(el("h3").put(key!("count-rolls")))
        .put(el("p").put(key!("count-rolls-hint")))
        .put(question(app, "rolls", &roll, &[], rolls))
        .put(el("h3").put(key!("count-screws")))
        .put(el("p").put(key!("count-screws-hint")))
        .put(question(app, "screws", &row, &[], screws))
        .done()
}

fn rolls(_: App, typed: &Typed) -> Option<String> {
    let overlap_mm = typed.read(&OVERLAP).unwrap_or(0.0);
    let roll = Roll { length_mm: typed.read(&ROLL_LENGTH)?, width_mm: typed.read(&ROLL_WIDTH)?, overlap_mm };
    let (run_mm, side_mm) = (typed.read(&RUN)?, typed.read(&SIDE)?);
    let Some(found) = strips(roll, run_mm, side_mm, typed.read(&CUT_OFF).unwrap_or(0.0)) else {
        return Some(t!("count-rolls-not"));
    };
    let count = |count: u32| Figure::of(f64::from(count), Quantity::Count);
    let figures = vec![("strips", count(found.strips)), ("each", count(found.per_roll)), ("rolls", count(found.rolls))];
    Some(tell!("count-rolls-so", &figures))
}

fn screws(_: App, typed: &Typed) -> Option<String> {
    let edge_mm = typed.read(&EDGE).unwrap_or(0.0);
    let count = screws_in_row(typed.read(&ROW)?, edge_mm, typed.read(&SPACING)?)?;
    Some(tell!("count-screws-so", &vec![("count", Figure::of(f64::from(count), Quantity::Count))]))
}
