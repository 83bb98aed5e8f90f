//! "Can I afford this today?", with one amount to type.

use jiff::civil::Date;
use kerbstead_core::Verdict;
use kerbstead_core::explain::Figure;
use kerbstead_core::money::Afford;
use kerbstead_core::plan::{Field, Kind, Money, Plain, Wrong, typed_value};

use crate::browser;
use crate::el::{View, el, fragment};
use crate::live::{self, Signal};
use crate::locale::{number_marks, tell, words};
use crate::parts::{Shape, comes_to, icon, unit_sign};
use crate::route::Page;
use crate::state::App;

const AMOUNT: Field = Field { name: "amount", kind: Kind::Money { negative: false, example: 25, range: false } };

/// What is free today, and the answer for an amount.
pub fn afford() -> View {
    let typed = Signal::new(String::new());
    let wrong = move || amount(&typed.get()).err().flatten();
    let message = move || wrong().map_or_else(String::new, |wrong| words(|words| words.wrong(&wrong)));
    let input = el("input")
        .attr("type", "text")
        .attr("id", "afford")
        .attr("inputmode", "decimal")
        .attr("autocomplete", "off")
        .attr("aria-describedby", "afford-message")
        .live("aria-invalid", move || wrong().map(|_| "true".to_owned()))
        .value(move || typed.get())
        .on_input(move |text| typed.set(text));
    let unit = unit_sign(&AMOUNT).map(|unit| el("span").class("unit").put(unit).done());
    let outcome = move || comes_to(&AMOUNT, &typed.get()).unwrap_or_default();
    fragment()
        .put(el("p").class("reply").put(live::view(move || sentence(&Ok(Money::ZERO)))))
        .put(
            el("div")
                .class("field amount")
                .put(el("label").attr("for", "afford").put(key!("afford-amount")))
                .put(el("div").class("control").put(input).put(unit))
                .put(el("output").class("outcome").put(live::text(outcome)))
                .put(el("p").class("wrong").attr("id", "afford-message").put(live::text(message))),
        )
        .put(el("p").class("reply").attr("role", "status").put(live::view(move || sentence(&amount(&typed.get())))))
        .put(el("p").put(el("a").attr("href", Page::Shop.link()).put(key!("afford-shop"))))
        .done()
}

fn amount(text: &str) -> Result<Money, Option<Wrong>> {
    let value = typed_value(&AMOUNT, text, number_marks(), 1.0).map_err(Some)?;
    Money::from_plain(&value).ok_or(None)
}

/// The answer in words and a shape; what is free, for an amount of nothing.
fn sentence(amount: &Result<Money, Option<Wrong>>) -> View {
    let &Ok(amount) = amount else { return fragment().done() };
    let today = browser::today();
    let app = App::here();
    let (afford, floor) = app.assessment(|assessment| {
        let floor = app.plan(|plan| plan.purse.floor);
        (assessment.money.afford(floor, today, amount), floor)
    });
    let Some(afford) = afford else { return fragment().put(key!("afford-unknown")).done() };
    let (verdict, key) = kind(amount, &afford, today);
    let missing = -afford.left;
    let figures = vec![
        ("left", Figure::Money(afford.left)),
        ("missing", Figure::Money(missing)),
        ("floor", Figure::Money(floor)),
        ("on", Figure::Date(afford.tightest_on)),
        ("from", Figure::Date(afford.from.unwrap_or(today))),
    ];
    fragment().put(icon(Shape::Verdict(verdict))).put(" ").put(tell(key, &figures)).done()
}

fn kind(amount: Money, afford: &Afford, today: Date) -> (Verdict, &'static str) {
    let is_free = !afford.left.is_negative();
    match (amount == Money::ZERO, is_free, afford.from) {
        (true, true, _) => (Verdict::Holds, "afford-free"),
        (true, false, _) => (Verdict::FallsShort, "afford-nothing"),
        (false, true, _) => (Verdict::Holds, "afford-yes"),
        (false, false, Some(from)) if from > today => (Verdict::Tight, "afford-later"),
        (false, false, _) => (Verdict::FallsShort, "afford-never"),
    }
}
