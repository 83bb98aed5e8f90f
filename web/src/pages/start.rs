//! Five questions, each of which can be skipped, to a first rough plan.

use kerbstead_core::plan::{
    Answers, Field, Kind, Money, Path, Place, Quantity, SizeClass, field, read_date, rough_plan, typed_value,
};
use serde_json::Value;

use crate::browser;
use crate::el::{View, el, fragment};
use crate::live::{self, Signal};
use crate::locale::{self, t, words};
use crate::route::{self, Page};
use crate::state::App;

/// The page.
pub fn start() -> View {
    let app = App::here();
    let answers = Typed::default();
    let make = move || {
        let Some(answers) = answers.read() else { return };
        let currency = locale::default_currency();
        let mut plan = rough_plan(&answers, browser::today(), currency, &|key| t(key));
        if plan.title.is_empty() {
            plan.title = t!("start-title");
        }
        app.add_plan(&plan, false);
        route::go(Page::Overview);
    };
    fragment()
        .put(el("h1").put(key!("page-start")))
        .put(el("p").put(key!("start-hint")))
        .put(
            el("form")
                .class("start")
                .on_submit(make)
                .put(question("start-leaves", "date", answers.leaves_on, None))
                .put(question("start-cash", "decimal", answers.cash, Some(locale::default_currency().to_owned())))
                .put(choice("start-size", answers.size, sizes()))
                .put(choice("start-place", answers.place, places()))
                .put(question("start-nights", "numeric", answers.nights, Some(t!("unit-nights"))))
                .put(question("start-people", "numeric", answers.people, None))
                .put(
                    el("p")
                        .class("wrong")
                        .attr("role", "alert")
                        .put(live::text(move || answers.wrong().unwrap_or_default())),
                )
                .put(el("button").attr("type", "submit").class("primary").put(key!("start-show"))),
        )
        .done()
}

/// What was typed so far.
#[derive(Clone, Copy, Default)]
struct Typed {
    leaves_on: Signal<String>,
    cash: Signal<String>,
    size: Signal<String>,
    place: Signal<String>,
    nights: Signal<String>,
    people: Signal<String>,
}

impl Typed {
    /// The answers, when each of them is skipped or can be read.
    fn read(self) -> Option<Answers> {
        let cash = value(&self.cash.get(), &money_field()).ok()?;
        let nights = value(&self.nights.get(), &NIGHTS).ok()?;
        let people = value(&self.people.get(), &people_field()).ok()?;
        let whole = |value: Value| value.as_u64().and_then(|number| u32::try_from(number).ok());
        let size = self.size.get();
        let place = self.place.get();
        Some(Answers {
            leaves_on: read_date(&self.leaves_on.get()),
            cash: cash.as_str().and_then(|text| text.parse::<Money>().ok()),
            size: SIZES.into_iter().find(|(_, key)| *key == size).map(|(size, _)| size),
            place: Place::ALL.into_iter().find(|candidate| candidate.key() == place),
            nights: whole(nights),
            people: whole(people),
        })
    }

    /// What is wrong with the first answer that cannot be read.
    fn wrong(self) -> Option<String> {
        let checks = [
            (self.cash.get(), money_field(), "start-cash"),
            (self.nights.get(), NIGHTS, "start-nights"),
            (self.people.get(), people_field(), "start-people"),
        ];
        checks.into_iter().find_map(|(text, field, label)| {
            let wrong = value(&text, &field).err()?;
            let problem = kerbstead_core::plan::Problem { path: Path::default(), wrong };
            Some(format!("{} {}", t(label), words(|words| words.problem(&problem))))
        })
    }
}

const NIGHTS: Field =
    Field { name: "nights", kind: Kind::Whole { quantity: Quantity::Nights, min: 1, max: 730, example: 60 } };

fn money_field() -> Field {
    field::at(&Path::from("purse/opening_cash")).copied().unwrap_or(NIGHTS)
}

fn people_field() -> Field {
    field::at(&Path::from("people")).copied().unwrap_or(NIGHTS)
}

fn value(text: &str, field: &Field) -> Result<Value, kerbstead_core::plan::Wrong> {
    typed_value(field, text, locale::number_marks(), 1.0)
}

const SIZES: [(SizeClass, &str); 4] = [
    (SizeClass::Small, "choice-size-small"),
    (SizeClass::Medium, "choice-size-medium"),
    (SizeClass::HighRoof, "choice-size-high-roof"),
    (SizeClass::LongHighRoof, "choice-size-long-high-roof"),
];

fn sizes() -> Vec<&'static str> {
    SIZES.map(|(_, key)| key).to_vec()
}

fn places() -> Vec<&'static str> {
    Place::ALL.map(Place::key).to_vec()
}

fn question(key: &'static str, mode: &'static str, answer: Signal<String>, unit: Option<String>) -> View {
    let kind = if mode == "date" { "date" } else { "text" };
    let mode = (mode != "date").then_some(mode);
    el("div")
        .class("field")
        .put(el("label").attr("for", key).put(t(key)))
        .put(
            el("div")
                .class("control")
                .put(
                    el("input")
                        .attr("id", key)
                        .attr("type", kind)
                        .attr("inputmode", mode)
                        .attr("autocomplete", "off")
                        .on_input(move |text| answer.set(text)),
                )
                .put(unit.map(|unit| el("span").class("unit").put(unit).done())),
        )
        .done()
}

fn choice(key: &'static str, answer: Signal<String>, options: Vec<&'static str>) -> View {
    let options = options.into_iter().map(|word| el("option").attr("value", word).put(t(word)).done());
    el("div")
        .class("field")
        .put(el("label").attr("for", key).put(t(key)))
        .put(
            el("select")
                .attr("id", key)
                .on_change(move |text| answer.set(text))
                .put(el("option").attr("value", "").put(key!("start-skip")))
                .put_each(options),
        )
        .done()
}
