//! Materials: what surfaces take, how boards and sheets are cut, and what of it goes into the kit.

mod counting;
mod coverings;
mod cut_plan;
mod picture;
mod stock;

use kerbstead_core::Caution;
use kerbstead_core::materials::{ToBuy, into_kit, needs_fire_care};
use kerbstead_core::plan::Path;

use super::section;
use crate::el::{El, View, el, fragment};
use crate::live;
use crate::parts::{button, fields, take_care};
use crate::state::App;

/// The page.
pub fn materials() -> View {
    let app = App::here();
    let cutting = fields(&Path::section("cutting"), &["kerf_mm", "trim_mm", "cut_for"]);
    let inputs = el("div")
        .class("screen-only")
        .put(el("h1").put(key!("page-materials")))
        .put(el("p").put(key!("materials-lede")))
        .put(live::view(move || cautions(app)))
        .put(section(key!("materials-coverings"), coverings::coverings(app)))
        .put(section(key!("materials-stock"), stock::stock()))
        .put(section(key!("materials-flaws"), stock::flaws()))
        .put(section(key!("materials-cuts"), stock::cuts()))
        .put(section(key!("materials-cutting"), cutting));
    let counts = el("div").class("screen-only").put(section(key!("materials-counting"), counting::counting(app)));
    fragment().put(inputs).put(cut_plan::cut_plan(app)).put(counts).done()
}

/// What to be careful of; of foam that it burns, where there is any.
fn cautions(app: App) -> View {
    let is_foam = app.plan(|plan| {
        plan.coverings.iter().any(|covering| needs_fire_care(covering.material))
            || plan.stock.iter().any(|stock| needs_fire_care(stock.material))
    });
    let mut all =
        vec![Caution::PowerToolsAndDust, Caution::SolventsAndFoam, Caution::WiresAndFuelLines, Caution::CuttingTheVan];
    all.extend(is_foam.then_some(Caution::InsulationFire));
    take_care(&all)
}

/// A button that puts what is bought into the kit, where anything is.
fn kit_button(app: App, bought: Vec<ToBuy>) -> Option<El> {
    if bought.is_empty() {
        return None;
    }
    let take = move || {
        let edit = app.plan(|plan| into_kit(plan, &bought));
        app.edit_and_tell(edit, t!("materials-in-kit"));
    };
    Some(button(key!("materials-into-kit"), take).class("primary"))
}
