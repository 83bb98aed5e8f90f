//! The surfaces of the van, and what lies on them.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity};
use kerbstead_core::warmth::shell::Kind;
use kerbstead_core::warmth::{FacePart, LayerReport, Report};
use kerbstead_core::words::Key;
use serde_json::json;

use crate::el::{View, el, fragment, nothing};
use crate::live;
use crate::locale::{plain_sentence, say_measure, say_money};
use crate::parts::{Entries, TableRow, fields, named_in, table};
use crate::route::Page;
use crate::state::App;

const SHELL: &[&str] = &["colour", "cab", "window_m2", "rib_percent"];
const LAYER: &[&str] =
    &["name", "covers", "material", "thick_mm", "conducts_w_mk", "square_metre_kg", "layer_price", "made_of"];

/// What a surface is called.
pub fn kind_name(kind: Kind) -> String {
    plain_sentence(match kind {
        Kind::Roof => key!("warmth-roof"),
        Kind::Sides => key!("warmth-sides"),
        Kind::Doors => key!("warmth-doors"),
        Kind::Floor => key!("warmth-floor"),
        Kind::Cab => key!("warmth-cab"),
        Kind::Divider => key!("warmth-divider"),
    })
}

/// What an inner face is called.
fn face_name(kind: Kind, part: FacePart) -> String {
    let part: Key = match part {
        FacePart::Wall => return kind_name(kind),
        FacePart::Ribs => key!("warmth-ribs"),
        FacePart::Window => key!("warmth-window"),
    };
    [kind_name(kind), plain_sentence(part)].join(", ")
}

/// What each lets through, and which get wet.
pub fn surfaces() -> View {
    let app = App::here();
    let inside = el("p").class("links").put(el("a").attr("href", Page::Inside.link()).put(key!("warmth-to-inside")));
    fragment()
        .put(live::view(move || app.settled_assessment(|assessment| rows(&assessment.warmth))))
        .put(inside)
        .put(fields(&Path::section("shell"), SHELL))
        .done()
}

fn rows(warmth: &Report) -> View {
    let all_w_k: f64 = warmth.surfaces.iter().map(|surface| surface.w_k).sum::<f64>() + warmth.air_w_k;
    let share = |w_k: f64| say_measure(if all_w_k > 0.0 { w_k / all_w_k * 100.0 } else { 0.0 }, Quantity::Percent);
    let mut surfaces: Vec<TableRow> = warmth
        .surfaces
        .iter()
        .map(|surface| {
            let cells = vec![
                say_measure(surface.area_m2, Quantity::AreaM2),
                say_measure(surface.u_w_m2k, Quantity::HeatWM2k),
                say_measure(surface.w_k, Quantity::HeatWK),
                share(surface.w_k),
            ];
            TableRow(kind_name(surface.kind), cells, None)
        })
        .collect();
    if !warmth.hours.is_empty() {
        let cells =
            vec![String::new(), String::new(), say_measure(warmth.air_w_k, Quantity::HeatWK), share(warmth.air_w_k)];
        surfaces.push(TableRow(t!("warmth-fresh-air"), cells, None));
    }
    let heads = [
        key!("warmth-surface"),
        key!("warmth-area"),
        key!("warmth-lets-through"),
        key!("warmth-loses"),
        key!("warmth-share"),
    ];
    let wet = warmth.faces.iter().map(|face| {
        let hours: usize = face.wet.iter().map(|(from, until)| until - from).sum();
        let cells = vec![
            say_measure(face.coldest_c, Quantity::TemperatureC),
            if hours > 0 { say_measure(hours as f64, Quantity::Hours) } else { t!("warmth-stays-dry") },
            if hours > 0 { say_measure(face.most_g, Quantity::MassG) } else { String::new() },
        ];
        TableRow(face_name(face.kind, face.part), cells, (hours > 0).then_some("short"))
    });
    let wet_heads = [key!("warmth-face"), key!("warmth-coldest"), key!("warmth-wet-hours"), key!("warmth-most-water")];
    let wet = (!warmth.faces.is_empty()).then(|| {
        fragment()
            .put(el("h3").put(key!("warmth-wet-title")))
            .put(table(t!("warmth-wet-title"), true, &wet_heads, wet.collect()))
            .done()
    });
    fragment().put(table(t!("warmth-surfaces"), true, &heads, surfaces)).put(wet).done()
}

/// The layers, and what each saves for its money, mass and width.
pub fn layers() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(layer) = plan.layers.iter().find(|layer| layer.id == id) else { return Default::default() };
        let thick = layer.thick_mm.map_or_else(String::new, |mm| say_measure(mm, Quantity::LengthMm));
        (layer.name.clone(), thick)
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("layers", id), LAYER)
    }
    let app = App::here();
    let told = move || {
        let lines = app.settled_assessment(|assessment| assessment.warmth.layers.clone());
        app.settled_plan(|plan| table_of_layers(plan, &lines))
    };
    fragment()
        .put(el("p").class("hint").put(key!("warmth-layers-hint")))
        .put(live::view(told))
        .put(Entries { list: List::Layers, line, body, fresh: || json!({}), add: key!("warmth-add-layer") }.show())
        .done()
}

fn table_of_layers(plan: &Plan, layers: &[LayerReport]) -> View {
    if layers.is_empty() {
        return nothing();
    }
    let row = |layer: &LayerReport| {
        let per = |divisor: f64| {
            if divisor > 0.0 { say_measure(layer.saves_w_k / divisor, Quantity::HeatWK) } else { String::new() }
        };
        let cells = vec![
            say_measure(layer.saves_w_k, Quantity::HeatWK),
            layer.price.map_or_else(String::new, |price| per(price.to_plot())),
            per(layer.mass_kg),
            per(layer.width_mm),
        ];
        TableRow(named_in(plan, layer.layer), cells, layer.is_idle_foil.then_some("short"))
    };
    let one = say_money(kerbstead_core::plan::Money::whole(1));
    let head = tell!("warmth-per-money", &vec![("one", Figure::Name(one))]);
    let heads =
        vec![t!("warmth-layer"), t!("warmth-saves"), head, t!("warmth-per-kilogram"), t!("warmth-per-millimetre")];
    crate::parts::named_table(t!("warmth-layers"), true, heads, layers.iter().map(row).collect())
}
