//! The fields of a thing on a shelf.

use kerbstead_core::money::are_paid;
use kerbstead_core::plan::{Field, Group, Kind, Obtain, Plain, Plan};
use kerbstead_core::shop::ITEM_FIELDS;
use kerbstead_core::words::{Units, Words};

use super::super::money::group_key;
use super::counter::{Counter, input_id, item_field};
use crate::browser;
use crate::el::{El, View, el, fragment};
use crate::live;
use crate::locale::{t, words};
use crate::parts::{comes_to, field_label, unit_sign};
use crate::state::App;

/// What it costs and how much of it there is.
pub fn first_inputs(counter: Counter) -> View {
    el("div")
        .class("fields")
        .put(of_item(counter, "unit_price", Keyboard::Ours))
        .put(of_item(counter, "quantity", Keyboard::Ours))
        .put(pack(counter, "pack", "shop-pack"))
        .put(units(counter))
        .done()
}

/// Everything else.
pub fn more_inputs(counter: Counter) -> View {
    let other = el("div").class("fields").put(other_price(counter)).put(pack(counter, "other_pack", "shop-other-pack"));
    let (_, details) = ITEM_FIELDS.split_at(5);
    let details = details.iter().map(|name| of_item(counter, name, Keyboard::Numbers));
    fragment()
        .put(el("fieldset").put(el("legend").put(key!("shop-other"))).put(other))
        .put(
            el("div")
                .class("fields")
                .put(thing_of_the_kit(counter))
                .put(of_item(counter, "name", Keyboard::Letters))
                .put(group(counter))
                .put(of_item(counter, "tax_percent", Keyboard::Ours))
                .put(tax(counter)),
        )
        .put(el("details").put(el("summary").put(key!("shop-more"))).put(el("div").class("fields").put_each(details)))
        .done()
}

/// What a phone shows to type with.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Keyboard {
    /// Nothing: the page has keys of its own.
    Ours,
    /// The phone's, for numbers.
    Numbers,
    /// The phone's, for letters.
    Letters,
}

impl Keyboard {
    const fn input_mode(self) -> &'static str {
        match self {
            Self::Ours => "none",
            Self::Numbers => "decimal",
            Self::Letters => "text",
        }
    }
}

/// A field that an item of the kit has too.
fn of_item(counter: Counter, name: &'static str, keyboard: Keyboard) -> View {
    let Some(field) = item_field(name) else { return fragment().done() };
    // What counts where nothing is typed: of the thing of the kit that it is, or one piece.
    let at = ITEM_FIELDS.iter().position(|known| *known == name);
    let counts = move || counter.said.with(|said| said.answer.as_ref()?.counts.get(at?).cloned());
    let input = input(counter, name, keyboard).live("placeholder", counts);
    labelled(counter, name, field_label(field), input, Some(field))
}

fn other_price(counter: Counter) -> View {
    let input = input(counter, "other_price", Keyboard::Ours);
    labelled(counter, "other_price", t!("shop-other-price"), input, item_field("unit_price"))
}

/// How much is in a pack, in whatever unit it says.
fn pack(counter: Counter, name: &'static str, label: &'static str) -> View {
    labelled(counter, name, t(label), input(counter, name, Keyboard::Ours), None)
}

/// The units that are on packs, a key each: they go to the pack that is being typed.
fn units(counter: Counter) -> View {
    let metric = ["g", "kg", "ml", "L", "m"];
    let us = ["oz", "lb", "fl oz", "gal", "ft"];
    let signs = if words(Words::units) == Units::UsCustomary { us } else { metric };
    let key = |sign: &'static str| {
        let put = move || {
            let current = counter.current.get_untracked();
            let name = if current.ends_with("pack") { current } else { "pack" };
            counter.current.set(name);
            browser::type_text(&input_id(name), &format!(" {sign} "));
        };
        el("button").attr("type", "button").keeps_focus().on_click(put).put(sign).done()
    };
    el("div").class("units").attr("role", "group").attr("aria-label", t!("shop-units")).put_each(signs.map(key)).done()
}

fn control_class(counter: Counter, name: &str) -> String {
    if counter.current.get() == name { "control current" } else { "control" }.to_owned()
}

fn input(counter: Counter, name: &'static str, keyboard: Keyboard) -> El {
    el("input")
        .attr("type", "text")
        .attr("id", input_id(name))
        .attr("inputmode", keyboard.input_mode())
        .attr("autocomplete", "off")
        .attr("aria-describedby", format!("{}-message", input_id(name)))
        .live("aria-invalid", move || wrong(counter, name).map(|_| "true".to_owned()))
        .value(move || counter.text(name))
        .on_input(move |text| counter.write(name, text))
        .on_focus(move || counter.current.set(name))
}

/// An input with all that stands around it: its unit and what a calculation comes to, if it is of a field.
fn labelled(counter: Counter, name: &'static str, label: String, input: El, field: Option<&'static Field>) -> View {
    let id = input_id(name);
    let control = el("div")
        .live("class", move || Some(control_class(counter, name)))
        .put(input)
        .put(field.and_then(unit_sign).map(|unit| el("span").class("unit").put(unit).done()));
    let comes_to = move || field.and_then(|field| comes_to(field, &counter.text(name))).unwrap_or_default();
    el("div")
        .class(if name == "name" { "field wide" } else { "field" })
        .put(el("label").attr("for", id.clone()).put(label))
        .put(control)
        .put(el("output").class("outcome").put(live::text(comes_to)))
        .put(
            el("p")
                .class("wrong")
                .attr("id", format!("{id}-message"))
                .put(live::text(move || wrong(counter, name).unwrap_or_default())),
        )
        .done()
}

fn wrong(counter: Counter, name: &str) -> Option<String> {
    counter.said.with(|said| said.wrong.iter().find(|(of, _)| *of == name).map(|(_, wrong)| wrong.clone()))
}

/// Whether the price on the shelf has the tax in it.
fn tax(counter: Counter) -> View {
    let includes = move || {
        let typed = counter.text("tax");
        let of_purse = || App::here().plan(|plan| plan.purse.prices_include_tax);
        if typed.is_empty() { of_purse() } else { typed == "included" }
    };
    let options = [("included", "shop-tax-included", true), ("added", "shop-tax-added", false)];
    let options = options.map(|(word, text, of)| {
        let is_chosen = live::memo(move || includes() == of);
        el("option").attr("value", word).on_or_off("selected", move || is_chosen.get()).put(t(text)).done()
    });
    select(counter, "tax", "shop-tax", fragment().put_each(options).done())
}

fn group(counter: Counter) -> View {
    let chosen = live::memo(move || counter.said.with(|said| said.answer.as_ref().map(|answer| answer.group)));
    let words: &[&str] = match item_field("group") {
        Some(Field { kind: Kind::Choice(words), .. }) => words,
        _ => &[],
    };
    let options = words.iter().filter_map(|word| {
        let group = Group::from_plain(&(*word).into())?;
        let is_chosen = move || chosen.get().unwrap_or(Group::Other) == group;
        Some(el("option").attr("value", *word).on_or_off("selected", is_chosen).put(t(group_key(group))).done())
    });
    select(counter, "group", "field-group", fragment().put_each(options).done())
}

/// The thing of the kit that it is, of those that are still to be paid.
fn thing_of_the_kit(counter: Counter) -> View {
    let app = App::here();
    let things = live::memo(move || app.plan(unpaid));
    let options = move || {
        let chosen = counter.text("for");
        let none = el("option").attr("value", "").flag("selected", chosen.is_empty()).put(key!("shop-for-new")).done();
        let rest = things
            .get()
            .into_iter()
            .map(|(id, name)| el("option").flag("selected", chosen == id).attr("value", id).put(name).done());
        fragment().put(none).put_each(rest).done()
    };
    select(counter, "for", "shop-for", live::view(options))
}

fn unpaid(plan: &Plan) -> Vec<(String, String)> {
    let can_be_bought = |obtain: Obtain| obtain.is_paid() || obtain == Obtain::LeftOut;
    let things = plan.kit.iter().zip(are_paid(plan)).filter(|(item, is_paid)| !is_paid && can_be_bought(item.obtain));
    things.map(|(item, _)| (item.id.to_string(), item.name.clone())).collect()
}

fn select(counter: Counter, name: &'static str, label: &'static str, options: View) -> View {
    let id = input_id(name);
    el("div")
        .class(if matches!(name, "for" | "tax") { "field wide" } else { "field" })
        .put(el("label").attr("for", id.clone()).put(t(label)))
        .put(el("select").attr("id", id).on_change(move |word| counter.write(name, word)).put(options))
        .done()
}
