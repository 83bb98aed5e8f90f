//! Power in the aisle: three questions, each answered from two or three fields by the same engine as the plan.

use kerbstead_core::Caution;
use kerbstead_core::energy::quick::{Source, charge_time, lasts, size_for};
use kerbstead_core::energy::run::Limit;
use kerbstead_core::energy::store::{Chemistry, Store};
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Field, Kind, Outlet, Path, Plan, Quantity, typed_value};
use kerbstead_core::power::engine_store;
use kerbstead_core::words::Key;

use super::super::section;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{self, plain_sentence, words};
use crate::parts::{scale, take_care, unit_sign};
use crate::state::App;

const fn number(name: &'static str, quantity: Quantity, max: f64, example: f64) -> Field {
    Field { name, kind: Kind::Number { quantity, min: 0.0, max, example, range: false } }
}

static POWER: Field = number("power", Quantity::PowerW, 20_000.0, 45.0);
static ENERGY: Field = number("energy", Quantity::EnergyWh, 200_000.0, 630.0);
static HOURS: Field = number("hours", Quantity::Hours, 1_000.0, 12.0);
static FROM: Field = number("from", Quantity::Percent, 100.0, 20.0);
static UNTIL: Field = number("until", Quantity::Percent, 100.0, 100.0);

/// What is to stay in the store whose size is asked for.
const SPARE: f64 = 0.2;

/// The page.
pub fn aisle() -> View {
    let app = App::here();
    fragment()
        .put(el("h1").put(key!("page-aisle")))
        .put(el("p").put(key!("aisle-hint")))
        .put(section(
            key!("aisle-lasts"),
            question(
                app,
                "lasts",
                &[(key!("aisle-power"), &POWER), (key!("aisle-energy"), &ENERGY)],
                &[(key!("aisle-outlet"), "outlet", OUTLETS), (key!("aisle-store"), "store", STORES)],
                how_long,
            ),
        ))
        .put(section(
            key!("aisle-size"),
            question(
                app,
                "size",
                &[(key!("aisle-power"), &POWER), (key!("aisle-hours"), &HOURS)],
                &[(key!("aisle-outlet"), "outlet", OUTLETS)],
                what_size,
            ),
        ))
        .put(section(
            key!("aisle-charge"),
            question(
                app,
                "charge",
                &[
                    (key!("aisle-energy"), &ENERGY),
                    (key!("aisle-from"), &FROM),
                    (key!("aisle-until"), &UNTIL),
                    (key!("aisle-gives"), &POWER),
                ],
                &[(key!("aisle-source"), "source", SOURCES), (key!("aisle-store"), "store", STORES)],
                how_long_to_charge,
            ),
        ))
        .put(take_care(&[Caution::StoreHeatAndFrost, Caution::ChargingUnattended, Caution::ExtensionLeads]))
        .done()
}

/// The words of a choice with their texts; none are the stores of the plan.
type Words = &'static [(&'static str, Key)];

const OUTLETS: Words = &[("ac", key!("choice-outlet-ac")), ("dc", key!("choice-outlet-dc"))];
const SOURCES: Words =
    &[("mains", key!("aisle-mains")), ("vehicle", key!("aisle-vehicle")), ("panel", key!("aisle-panel"))];
const STORES: Words = &[];

fn question(
    app: App,
    name: &'static str,
    numbers: &[(Key, &'static Field)],
    choices: &[(Key, &'static str, Words)],
    answer: fn(App, &Typed) -> Option<String>,
) -> View {
    let typed = Typed { app, name };
    let inputs = numbers.iter().map(|(label, field)| input(typed, *label, field));
    let choices = choices.iter().map(|(label, field, words)| choice(typed, *label, field, words));
    let text = move || answer(app, &typed).unwrap_or_else(|| t!("aisle-waiting"));
    fragment()
        .put(el("div").class("fields").put_each(inputs).put_each(choices))
        .put(el("p").class("rough-answer").attr("aria-live", "polite").put(el("strong").put(live::text(text))))
        .done()
}

/// What is typed for a question.
#[derive(Clone, Copy)]
struct Typed {
    app: App,
    name: &'static str,
}

impl Typed {
    fn path(self, field: &str) -> Path {
        Path::section(self.name).child(field)
    }

    fn text(self, field: &str) -> String {
        self.app.desk.slip.with(|slip| slip.power.get(&self.path(field)).cloned().unwrap_or_default())
    }

    fn write(self, field: &str, text: String) {
        self.app.write_slip(|slip| slip.power.insert(self.path(field), text));
    }

    fn read(self, field: &'static Field) -> Option<f64> {
        typed_value(field, &self.text(field.name), locale::number_marks(), scale(field)).ok()?.as_f64()
    }

    fn wrong(self, field: &'static Field) -> Option<String> {
        let read = typed_value(field, &self.text(field.name), locale::number_marks(), scale(field));
        read.err().map(|wrong| words(|words| words.wrong(&wrong)))
    }

    fn outlet(self) -> Outlet {
        if self.text("outlet") == "dc" { Outlet::Dc } else { Outlet::Ac }
    }

    /// The plan's store that is chosen, or else a usual one of the energy that is typed.
    fn store(self) -> Option<Store> {
        let chosen = self.text("store").parse().ok();
        let of_plan = |id| self.app.plan(|plan: &Plan| plan.item(id)?.store.as_ref().map(engine_store));
        chosen.and_then(of_plan).or_else(|| Some(Store::usual(Chemistry::Lfp, self.read(&ENERGY)?)))
    }
}

fn input(typed: Typed, label: Key, field: &'static Field) -> View {
    let id = format!("aisle-{}-{}", typed.name, field.name);
    let message = format!("{id}-message");
    let wrong = move || typed.wrong(field);
    let is_needless = move || field.name == ENERGY.name && !typed.text("store").is_empty();
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
                        .live_flag("disabled", is_needless)
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

fn choice(typed: Typed, label: Key, field: &'static str, words: Words) -> View {
    let id = format!("aisle-{}-{field}", typed.name);
    let mut options: Vec<(String, String)> =
        words.iter().map(|(word, text)| ((*word).to_owned(), plain_sentence(*text))).collect();
    if words.is_empty() {
        options.push((String::new(), t!("aisle-usual-store")));
        typed.app.desk.plan.with_untracked(|plan| {
            let stores = plan.carried().filter(|item| item.store.is_some());
            options.extend(stores.map(|item| (item.id.to_string(), item.name.clone())));
        });
    }
    let now =
        typed.app.desk.slip.with_untracked(|slip| slip.power.get(&typed.path(field)).cloned().unwrap_or_default());
    let options = options.into_iter().map(|(word, text)| {
        let is_now = word == now;
        el("option").attr("value", word).flag("selected", is_now).put(text).done()
    });
    el("div")
        .class("field")
        .put(el("label").attr("for", id.clone()).put(label))
        .put(el("select").attr("id", id).on_change(move |text| typed.write(field, text)).put_each(options))
        .done()
}

fn hours(hours: f64) -> Figure {
    Figure::of(hours, Quantity::Hours)
}

fn how_long(_: App, typed: &Typed) -> Option<String> {
    let lasts = lasts(&typed.store()?, 1.0, typed.read(&POWER)?, typed.outlet());
    Some(match lasts.limit {
        Some(Limit::Surge | Limit::Power) => t!("aisle-too-strong"),
        _ => tell!("aisle-lasts-hours", &vec![("hours", hours(lasts.hours))]),
    })
}

fn what_size(_: App, typed: &Typed) -> Option<String> {
    let (power_w, wanted_h) = (typed.read(&POWER)?, typed.read(&HOURS)?);
    let size = size_for(Chemistry::Lfp, power_w, typed.outlet(), wanted_h, SPARE);
    let Some(usable_wh) = size.usable_wh else { return Some(t!("aisle-no-size")) };
    let figures = vec![
        ("energy", Figure::of(f64::from(usable_wh), Quantity::EnergyWh)),
        ("spare", Figure::of(SPARE * 100.0, Quantity::Percent)),
    ];
    Some(match size.limit {
        Some(Limit::Power | Limit::Surge) => tell!("aisle-size-by-outlet", &figures),
        _ => tell!("aisle-size-by-energy", &figures),
    })
}

fn how_long_to_charge(_: App, typed: &Typed) -> Option<String> {
    let store = typed.store()?;
    let watts = typed.read(&POWER)?;
    let source = match typed.text("source").as_str() {
        "vehicle" => Source::Vehicle,
        "panel" => Source::Panels,
        _ => Source::Mains,
    };
    let (from, until) = (typed.read(&FROM).unwrap_or(0.0), typed.read(&UNTIL).unwrap_or(100.0));
    let time = charge_time(&store, from / 100.0, until / 100.0, source, watts);
    let Some(lasting) = time.hours else { return Some(t!("aisle-charge-never")) };
    let figures = vec![("hours", hours(lasting)), ("takes", Figure::of(time.accepted_w, Quantity::PowerW))];
    Some(if time.accepted_w < watts {
        tell!("aisle-charge-cut", &figures)
    } else {
        tell!("aisle-charge-hours", &figures)
    })
}
