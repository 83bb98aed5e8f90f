//! What a can holds, by its shape or by weighing it. What is typed is kept, beside the plan.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Field, Id, Path, Quantity};
use kerbstead_core::water::volume::{box_l, frost_safe_l, lying_cylinder_l, upright_cylinder_l, weighed_l};
use kerbstead_core::words::Key;

use crate::el::{View, all, el, fragment, nothing};
use crate::live;
use crate::parts::{Choice, Number, Typed, button, choice, input, named, number_field, number_of, worded};
use crate::state::App;

static LENGTH: Field = number_field("length", Quantity::LengthMm, [1.0, 5_000.0], 350.0);
static WIDTH: Field = number_field("width", Quantity::LengthMm, [1.0, 5_000.0], 200.0);
static HEIGHT: Field = number_field("height", Quantity::LengthMm, [1.0, 5_000.0], 300.0);
static DIAMETER: Field = number_field("diameter", Quantity::LengthMm, [1.0, 5_000.0], 300.0);
static FILLED: Field = number_field("filled", Quantity::LengthMm, [0.0, 5_000.0], 150.0);
static EMPTY: Field = number_field("empty", Quantity::MassKg, [0.0, 2_000.0], 1.2);
static FULL: Field = number_field("full", Quantity::MassKg, [0.0, 2_000.0], 21.2);
static WATER: Field = number_field("water", Quantity::TemperatureC, [0.0, 100.0], 15.0);

/// Taken where nobody says how warm the water is that is weighed, in °C.
const USUAL_WATER_C: f64 = 15.0;

const SHAPES: [(&str, Key); 4] = [
    ("box", key!("can-box")),
    ("upright", key!("can-upright")),
    ("lying", key!("can-lying")),
    ("weighed", key!("can-weighed")),
];

const SHAPE: Choice = Choice { label: key!("can-shape"), name: "shape", options: |_| worded(&SHAPES) };

/// The calculator.
pub fn measure() -> View {
    let app = App::here();
    let typed = Typed::of(app, "can");
    let shape = live::memo(move || typed.text("shape"));
    let inputs = move || all(wanted(&shape.get()).iter().map(|number| input(typed, *number)));
    fragment()
        .put(el("p").put(key!("can-hint")))
        .put(el("div").class("fields").put(choice(typed, SHAPE)).put(live::view(inputs)))
        .put(
            el("p")
                .class("rough-answer")
                .attr("aria-live", "polite")
                .put(el("strong").put(live::text(move || said(typed)))),
        )
        .put(live::view(move || taking(typed)))
        .done()
}

/// What a shape is measured by.
fn wanted(shape: &str) -> Vec<Number> {
    let length = number_of(key!("can-length"), &LENGTH);
    let height = number_of(key!("can-height"), &HEIGHT);
    let diameter = number_of(key!("can-diameter"), &DIAMETER);
    let filled = number_of(key!("can-filled"), &FILLED);
    match shape {
        "upright" => vec![diameter, height, filled],
        "lying" => vec![diameter, length, filled],
        "weighed" => vec![
            number_of(key!("can-empty"), &EMPTY),
            number_of(key!("can-full"), &FULL),
            number_of(key!("can-water"), &WATER),
        ],
        _ => vec![length, number_of(key!("can-width"), &WIDTH), height, filled],
    }
}

/// Litres when it is full, and when it is filled so high, where that is typed.
fn litres(typed: Typed) -> Option<(f64, Option<f64>)> {
    let filled_mm = typed.read(&FILLED);
    let both = |holds: &dyn Fn(f64) -> f64, height_mm: f64| {
        (holds(height_mm), filled_mm.map(|filled_mm| holds(filled_mm.min(height_mm))))
    };
    let litres = match typed.text("shape").as_str() {
        "upright" => {
            let diameter_mm = typed.read(&DIAMETER)?;
            both(&|height_mm| upright_cylinder_l(diameter_mm, height_mm), typed.read(&HEIGHT)?)
        }
        "lying" => {
            let (diameter_mm, length_mm) = (typed.read(&DIAMETER)?, typed.read(&LENGTH)?);
            both(&|height_mm| lying_cylinder_l(diameter_mm, length_mm, height_mm), diameter_mm)
        }
        "weighed" => {
            let water_c = typed.read(&WATER).unwrap_or(USUAL_WATER_C);
            (weighed_l(typed.read(&EMPTY)?, typed.read(&FULL)?, water_c), None)
        }
        _ => {
            let (length_mm, width_mm) = (typed.read(&LENGTH)?, typed.read(&WIDTH)?);
            both(&|height_mm| box_l(length_mm, width_mm, height_mm), typed.read(&HEIGHT)?)
        }
    };
    Some(litres).filter(|(full_l, _)| *full_l > 0.0)
}

fn said(typed: Typed) -> String {
    let Some((full_l, filled_l)) = litres(typed) else {
        let is_weighed = typed.read(&EMPTY).is_some() && typed.read(&FULL).is_some();
        let is_light = typed.text("shape") == "weighed" && is_weighed;
        return if is_light { t!("can-no-water") } else { t!("can-waiting") };
    };
    let litres = |value: f64| Figure::of(value, Quantity::VolumeL);
    let figures = vec![("litres", litres(full_l)), ("frost", litres(frost_safe_l(full_l)))];
    let filled = filled_l.map(|filled_l| tell!("can-filled-so", &vec![("litres", litres(filled_l))]));
    std::iter::once(tell!("can-holds", &figures)).chain(filled).collect::<Vec<_>>().join(" ")
}

/// A can of the kit to be chosen, and the button that gives it the litres.
fn taking(typed: Typed) -> View {
    let Some((full_l, _)) = litres(typed) else { return nothing() };
    let app = typed.app;
    let cans: Vec<(Id, String)> = app.plan(|plan| {
        plan.carried().filter(|item| item.tank.is_some()).map(|item| (item.id, named(item.name.clone()))).collect()
    });
    let Some(first) = cans.first().map(|(id, _)| *id) else { return el("p").put(key!("can-no-can")).done() };
    let chosen = typed.text("can").parse::<Id>().ok();
    let chosen = chosen.filter(|id| cans.iter().any(|(can, _)| can == id)).unwrap_or(first);
    let name = cans.iter().find(|(id, _)| *id == chosen).map(|(_, name)| name.clone()).unwrap_or_default();
    let options = cans
        .into_iter()
        .map(|(id, name)| el("option").attr("value", id.to_string()).flag("selected", id == chosen).put(name).done());
    let take = move || {
        // A tenth of a litre is as near as anybody measures.
        let litres = (full_l * 10.0).round() / 10.0;
        let path = Path::entry("kit", chosen).child("tank/capacity_l");
        let figures = vec![("name", Figure::Name(name.clone())), ("litres", Figure::of(litres, Quantity::VolumeL))];
        app.edit_and_tell(Edit::set(path, litres), tell!("can-taken", &figures));
    };
    fragment()
        .put(el("div").class("field").put(el("label").attr("for", "can-chosen").put(key!("can-of-kit"))).put(
            el("select").attr("id", "can-chosen").on_change(move |id: String| typed.write("can", id)).put_each(options),
        ))
        .put(button(key!("can-take"), take))
        .done()
}
