//! What a can holds, by its shape or by weighing it. What is typed is kept, beside the plan.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Field, Id, Kind, Path, Quantity, typed_value};
use kerbstead_core::water::volume::{box_l, frost_safe_l, lying_cylinder_l, upright_cylinder_l, weighed_l};
use kerbstead_core::words::Key;

use crate::el::{View, all, el, fragment, nothing};
use crate::live;
use crate::locale::{self, plain_sentence, words};
use crate::parts::{button, named, scale, unit_sign};
use crate::state::App;

const fn number(name: &'static str, quantity: Quantity, min: f64, max: f64, example: f64) -> Field {
    Field { name, kind: Kind::Number { quantity, min, max, example, range: false } }
}

static LENGTH: Field = number("length", Quantity::LengthMm, 1.0, 5_000.0, 350.0);
static WIDTH: Field = number("width", Quantity::LengthMm, 1.0, 5_000.0, 200.0);
static HEIGHT: Field = number("height", Quantity::LengthMm, 1.0, 5_000.0, 300.0);
static DIAMETER: Field = number("diameter", Quantity::LengthMm, 1.0, 5_000.0, 300.0);
static FILLED: Field = number("filled", Quantity::LengthMm, 0.0, 5_000.0, 150.0);
static EMPTY: Field = number("empty", Quantity::MassKg, 0.0, 2_000.0, 1.2);
static FULL: Field = number("full", Quantity::MassKg, 0.0, 2_000.0, 21.2);
static WATER: Field = number("water", Quantity::TemperatureC, 0.0, 100.0, 15.0);

/// Taken where nobody says how warm the water is that is weighed, in °C.
const USUAL_WATER_C: f64 = 15.0;

const SHAPES: [(&str, Key); 4] = [
    ("box", key!("can-box")),
    ("upright", key!("can-upright")),
    ("lying", key!("can-lying")),
    ("weighed", key!("can-weighed")),
];

/// What is typed.
#[derive(Clone, Copy)]
struct Typed {
    app: App,
}

/// The calculator.
pub fn measure() -> View {
    let app = App::here();
    let typed = Typed { app };
    let shape = live::memo(move || typed.shape());
    let now = app.desk.slip.with_untracked(|slip| slip.cans.get(&Path::from("shape")).cloned().unwrap_or_default());
    let options = SHAPES.iter().map(|(word, key)| {
        el("option").attr("value", *word).flag("selected", *word == now).put(plain_sentence(*key)).done()
    });
    let choice = el("select")
        .attr("id", "can-shape")
        .on_change(move |word: String| typed.write("shape", word))
        .put_each(options);
    let inputs = move || all(wanted(&shape.get()).into_iter().map(|(label, field)| input(typed, label, field)));
    fragment()
        .put(el("p").put(key!("can-hint")))
        .put(
            el("div")
                .class("fields")
                .put(
                    el("div")
                        .class("field")
                        .put(el("label").attr("for", "can-shape").put(key!("can-shape")))
                        .put(choice),
                )
                .put(live::view(inputs)),
        )
        .put(
            el("p")
                .class("rough-answer")
                .attr("aria-live", "polite")
                .put(el("strong").put(live::text(move || typed.said()))),
        )
        .put(live::view(move || taking(typed)))
        .done()
}

/// What a shape is measured by.
fn wanted(shape: &str) -> Vec<(Key, &'static Field)> {
    let filled = (key!("can-filled"), &FILLED);
    match shape {
        "upright" => vec![(key!("can-diameter"), &DIAMETER), (key!("can-height"), &HEIGHT), filled],
        "lying" => vec![(key!("can-diameter"), &DIAMETER), (key!("can-length"), &LENGTH), filled],
        "weighed" => {
            vec![(key!("can-empty"), &EMPTY), (key!("can-full"), &FULL), (key!("can-water"), &WATER)]
        }
        _ => vec![(key!("can-length"), &LENGTH), (key!("can-width"), &WIDTH), (key!("can-height"), &HEIGHT), filled],
    }
}

impl Typed {
    fn text(self, field: &str) -> String {
        self.app.desk.slip.with(|slip| slip.cans.get(&Path::from(field)).cloned().unwrap_or_default())
    }

    fn write(self, field: &str, text: String) {
        self.app.write_slip(|slip| slip.cans.insert(Path::from(field), text));
    }

    fn shape(self) -> String {
        self.text("shape")
    }

    fn read(self, field: &'static Field) -> Option<f64> {
        typed_value(field, &self.text(field.name), locale::number_marks(), scale(field)).ok()?.as_f64()
    }

    fn wrong(self, field: &'static Field) -> Option<String> {
        let text = self.text(field.name);
        let read = typed_value(field, &text, locale::number_marks(), scale(field));
        read.err().map(|wrong| words(|words| words.wrong(&wrong)))
    }

    /// Litres when it is full, and when it is filled so high, where that is typed.
    fn litres(self) -> Option<(f64, Option<f64>)> {
        let filled_mm = self.read(&FILLED);
        let both = |holds: &dyn Fn(f64) -> f64, height_mm: f64| {
            (holds(height_mm), filled_mm.map(|filled_mm| holds(filled_mm.min(height_mm))))
        };
        let litres = match self.shape().as_str() {
            "upright" => {
                let diameter_mm = self.read(&DIAMETER)?;
                both(&|height_mm| upright_cylinder_l(diameter_mm, height_mm), self.read(&HEIGHT)?)
            }
            "lying" => {
                let (diameter_mm, length_mm) = (self.read(&DIAMETER)?, self.read(&LENGTH)?);
                both(&|height_mm| lying_cylinder_l(diameter_mm, length_mm, height_mm), diameter_mm)
            }
            "weighed" => {
                let water_c = self.read(&WATER).unwrap_or(USUAL_WATER_C);
                (weighed_l(self.read(&EMPTY)?, self.read(&FULL)?, water_c), None)
            }
            _ => {
                let (length_mm, width_mm) = (self.read(&LENGTH)?, self.read(&WIDTH)?);
                both(&|height_mm| box_l(length_mm, width_mm, height_mm), self.read(&HEIGHT)?)
            }
        };
        Some(litres).filter(|(full_l, _)| *full_l > 0.0)
    }

    fn said(self) -> String {
        let Some((full_l, filled_l)) = self.litres() else {
            let is_light = self.shape() == "weighed" && self.read(&EMPTY).is_some() && self.read(&FULL).is_some();
            return if is_light { t!("can-no-water") } else { t!("can-waiting") };
        };
        let litres = |value: f64| Figure::of(value, Quantity::VolumeL);
        let figures = vec![("litres", litres(full_l)), ("frost", litres(frost_safe_l(full_l)))];
        let filled = filled_l.map(|filled_l| tell!("can-filled-so", &vec![("litres", litres(filled_l))]));
        std::iter::once(tell!("can-holds", &figures)).chain(filled).collect::<Vec<_>>().join(" ")
    }
}

/// A can of the kit to be chosen, and the button that gives it the litres.
fn taking(typed: Typed) -> View {
    let Some((full_l, _)) = typed.litres() else { return nothing() };
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

fn input(typed: Typed, label: Key, field: &'static Field) -> View {
    let id = format!("can-{}", field.name);
    let message = format!("{id}-message");
    let wrong = move || typed.wrong(field);
    el("div")
        .class("field")
        .put(el("label").attr("for", id.clone()).put(label))
        .put(
            el("div")
                .class("control")
                .put(
                    el("input")
                        .attr("type", "text")
                        .attr("id", id)
                        .attr("inputmode", "decimal")
                        .attr("autocomplete", "off")
                        .attr("aria-describedby", message.clone())
                        .live("aria-invalid", move || wrong().map(|_| "true".to_owned()))
                        .value(move || typed.text(field.name))
                        .on_input(move |text| typed.write(field.name, text)),
                )
                .put(unit_sign(field).map(|unit| el("span").class("unit").put(unit).done())),
        )
        .put(
            el("p")
                .class("wrong")
                .attr("id", message)
                .attr("aria-live", "polite")
                .put(live::text(move || wrong().unwrap_or_default())),
        )
        .done()
}
