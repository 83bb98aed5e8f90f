//! A field of the plan, by its path: what it accepts, its unit and its example come from core's table.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{
    Edit, Field as PlanField, Kind, List, Path, Plan, Quantity, Scale, Wrong, field as table, is_calculation,
    typed_value,
};
use kerbstead_core::words::unit;
use serde_json::{Value, json};

use super::button::button;
use super::entries::named_in;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{self, plain_sentence, t, words};
use crate::state::App;

/// The label of a field.
pub fn field_label(field: &PlanField) -> String {
    t(&format!("field-{}", field.name.replace(['/', '_'], "-")))
}

/// The value of a field of the plan in words.
pub fn said_value(plan: &Plan, path: &Path, value: &Value) -> String {
    words(|words| words.value(plan, table::at(path), value))
}

/// Several fields of one part of the plan, in order.
pub fn fields(base: &Path, names: &'static [&'static str]) -> View {
    el("div").class("fields").put_each(names.iter().map(|name| field(base.child(name)))).done()
}

/// One field of the plan with its label, unit, range, message and mark for a guess.
pub fn field(path: Path) -> View {
    let Some(field) = table::at(&path) else { return nothing() };
    let label = field_label(field);
    match field.kind {
        Kind::Flag => flag(path, label),
        Kind::Choice(choices) => choice(path, field, label, choices),
        Kind::StoreItem => store_choice(path, label),
        Kind::Entry(list) => entry_choice(path, label, list),
        Kind::Date => date(path, field, label),
        Kind::Number { range: true, .. } | Kind::Money { range: true, .. } => estimate(&path, field, &label),
        _ => typed(path, field, label),
    }
}

/// The value at a path, followed as the plan changes.
fn value_at(path: &Path) -> Memo<Value> {
    let (app, path) = (App::here(), path.clone());
    live::memo(move || app.plan(|plan| plan.value(&path)))
}

pub(super) fn dom_id(path: &Path) -> String {
    path.as_str().replace('/', "-")
}

fn flag(path: Path, label: String) -> View {
    let app = App::here();
    let value = value_at(&path);
    let id = dom_id(&path);
    let set = move |checked: bool| app.edit(Edit::set(path.clone(), checked));
    tick_box(id, label, move || value.get() == Value::Bool(true), set)
}

/// A box to tick with its label.
pub fn tick_box(
    id: String,
    label: String,
    is_on: impl Fn() -> bool + 'static,
    set: impl FnMut(bool) + 'static,
) -> View {
    el("div")
        .class("field flag")
        .put(el("input").attr("type", "checkbox").attr("id", id.clone()).on_or_off("checked", is_on).on_tick(set))
        .put(el("label").attr("for", id).put(label))
        .done()
}

/// Choices that may be left open; others have a usual word, which is the first.
const MAY_BE_OPEN: [&str; 8] = ["clouds", "like", "slept", "colour", "cab", "effort", "treated", "nominal"];

fn choice(path: Path, field: &'static PlanField, label: String, choices: &'static [&'static str]) -> View {
    let open = MAY_BE_OPEN.contains(&path.last()).then(|| (String::new(), t!("choice-open")));
    let words = choices.iter().map(|word| ((*word).to_owned(), choice_text(field, word)));
    let read = |text: &str| if text.is_empty() { Value::Null } else { text.into() };
    select(path, label, open.into_iter().chain(words).collect(), read)
}

/// What one of the words of a choice says.
pub(super) fn choice_text(field: &PlanField, word: &str) -> String {
    let name = field.name.rsplit('/').next().unwrap_or_default();
    t(&format!("choice-{name}-{word}").replace('_', "-"))
}

fn store_choice(path: Path, label: String) -> View {
    let stores = App::here().desk.plan.with_untracked(|plan| {
        let stores = plan.carried().filter(|item| item.store.is_some());
        stores.map(|item| (item.id.to_string(), item.name.clone())).collect::<Vec<_>>()
    });
    let mut options = vec![(String::new(), t!("choice-first-store"))];
    options.extend(stores);
    select(path, label, options, |text| text.parse::<u32>().map_or(Value::Null, Value::from))
}

/// An entry of a list, or none of it; also one that is not there any more.
fn entry_choice(path: Path, label: String, list: List) -> View {
    let none = match list {
        List::Kit => key!("choice-no-item"),
        List::Helpers => key!("choice-everybody"),
        _ => key!("choice-none"),
    };
    let mut options = vec![(String::new(), plain_sentence(none))];
    App::here().desk.plan.with_untracked(|plan| {
        options.extend(list.ids(plan).into_iter().map(|id| (id.to_string(), named_in(plan, id))));
        let id = plan.value(&path).as_u64().map(|id| id.to_string());
        let gone = id.filter(|id| options.iter().all(|(known, _)| known != id));
        options.extend(gone.map(|id| (id.clone(), id)));
    });
    select(path, label, options, |text| text.parse::<u32>().map_or(Value::Null, Value::from))
}

fn select(path: Path, label: String, options: Vec<(String, String)>, read: fn(&str) -> Value) -> View {
    let app = App::here();
    let value = value_at(&path);
    let current = live::memo(move || match value.get() {
        Value::String(text) => text,
        Value::Number(number) => number.as_u64().unwrap_or_default().to_string(),
        _ => String::new(),
    });
    let id = dom_id(&path);
    let wrong = wrong_of(path.clone());
    let set = move |text: String| app.edit(Edit::Set { path: path.clone(), value: read(&text) });
    let options = options.into_iter().map(|(word, text)| {
        let is_current = {
            let word = word.clone();
            move || current.get() == word
        };
        el("option").attr("value", word).on_or_off("selected", is_current).put(text).done()
    });
    el("div")
        .class("field")
        .put(el("label").attr("for", id.clone()).put(label))
        .put(el("select").attr("id", id).on_change(set).put_each(options))
        .put(message(wrong, None))
        .done()
}

fn date(path: Path, field: &'static PlanField, label: String) -> View {
    let app = App::here();
    let value = value_at(&path);
    let id = dom_id(&path);
    let message_id = format!("{id}-message");
    let wrong = wrong_of(path.clone());
    let guess = guess_mark(path.clone());
    let set = move |text: String| {
        // A date input gives a whole date or nothing, so there is never half a date to keep.
        if let Ok(value) = typed_value(field, &text, locale::number_marks(), 1.0) {
            app.edit(Edit::Set { path: path.clone(), value });
        }
    };
    el("div")
        .class("field")
        .put(el("label").attr("for", id.clone()).put(label))
        .put(
            el("input")
                .attr("type", "date")
                .attr("id", id)
                .attr("aria-describedby", message_id.clone())
                .value(move || value.get().as_str().unwrap_or_default().to_owned())
                .on_change(set),
        )
        .put(guess)
        .put(message(wrong, Some(message_id)))
        .done()
}

/// A field that is typed: text, a number, an amount.
fn typed(path: Path, field: &'static PlanField, label: String) -> View {
    let id = dom_id(&path);
    let wide = matches!(field.kind, Kind::Text { .. });
    let guess = guess_mark(path.clone());
    let class = if wide { "field wide" } else { "field" };
    el("div")
        .class(class)
        .put(el("label").attr("for", id).put(label))
        .put(Typed { path: path.clone(), field, target: path, part: Part::Whole, label: None }.show())
        .put(guess)
        .done()
}

/// A field that takes one value, or low, likely and high.
fn estimate(path: &Path, field: &'static PlanField, label: &str) -> View {
    let app = App::here();
    let value = value_at(path);
    let is_range = live::memo(move || value.get().is_object());
    let switch = {
        let path = path.clone();
        move || {
            let value = match value.get_untracked() {
                Value::Object(range) => range.get("likely").cloned().unwrap_or_default(),
                plain => json!({ "low": plain, "likely": plain, "high": plain }),
            };
            app.edit(Edit::Set { path: path.clone(), value });
        }
    };
    let switch_button = move || {
        let text = live::text(move || {
            plain_sentence(if is_range.get() { key!("field-be-sure") } else { key!("field-be-unsure") })
        });
        el("button").attr("type", "button").class("quiet").on_click(switch.clone()).put(text).done()
    };
    let guess = guess_mark(path.clone());
    let inputs = {
        let (path, label) = (path.clone(), label.to_owned());
        move || {
            if is_range.get() {
                range_inputs(&path, field)
            } else {
                let label = Some(label.clone());
                Typed { path: path.clone(), field, target: path.clone(), part: Part::Whole, label }.show()
            }
        }
    };
    el("div")
        .class("field estimate")
        .attr("role", "group")
        .attr("aria-label", label.to_owned())
        .put(el("span").class("label").attr("aria-hidden", "true").put(label.to_owned()))
        .put(live::view(inputs))
        .put(live::when(move || !value.get().is_null(), switch_button))
        .put(guess)
        .done()
}

fn range_inputs(path: &Path, field: &'static PlanField) -> View {
    let parts = [(Part::Low, "field-low"), (Part::Likely, "field-likely"), (Part::High, "field-high")];
    // There is no room for the unit beside three numbers.
    let unit = unit_sign(field).map_or_else(String::new, |unit| format!(" ({unit})"));
    let inputs = parts.map(|(part, label)| {
        let draft = path.child(part.name());
        let id = dom_id(&draft);
        el("div")
            .put(el("label").attr("for", id).put(t(label) + &unit))
            .put(Typed { path: draft, field, target: path.clone(), part, label: None }.show())
            .done()
    });
    el("div").class("range").put_each(inputs).done()
}

/// Which part of an estimate an input is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    Whole,
    Low,
    Likely,
    High,
}

impl Part {
    const fn name(self) -> &'static str {
        match self {
            Self::Whole => "",
            Self::Low => "low",
            Self::Likely => "likely",
            Self::High => "high",
        }
    }
}

/// An input that is typed in. Text that cannot be used yet is kept as a draft under `path`; a value goes to `target`.
struct Typed {
    path: Path,
    field: &'static PlanField,
    target: Path,
    part: Part,
    label: Option<String>,
}

impl Typed {
    fn show(self) -> View {
        let app = App::here();
        let Self { path, field, target, part, label } = self;
        let value = value_at(&target);
        let shown = live::memo(move || field_text(field, part_of(&value.get(), part)));
        let draft = draft_at(&path);
        // What is typed, and the value it led to: once another tab has changed that, the text is not shown any more.
        let typing = Signal::new(None::<(String, Value)>);
        let typed_text = live::memo(move || {
            let typed = typing.get().filter(|(_, led_to)| *led_to == value.get());
            typed.map(|(text, _)| text)
        });
        // What counted before this typing began: it counts again while the text cannot be used.
        let before = Signal::new(None::<Value>);
        let text = move || typed_text.get().or_else(|| draft.get()).unwrap_or_else(|| shown.get());
        let problems = wrong_of(target.clone());
        let wrong = live::memo(move || match draft.get() {
            Some(text) => draft_message(field, &text, &shown.get()),
            None => problems.get(),
        });
        let id = dom_id(&path);
        let message_id = format!("{id}-message");
        let on_input = move |text: String| {
            if before.with_untracked(Option::is_none) {
                before.set(Some(value.get_untracked()));
            }
            let typed = typed_value(field, &text, locale::number_marks(), scale(field)).ok();
            let is_usable = typed.is_some();
            let new = match typed {
                Some(typed) => with_part(&value.get_untracked(), part, typed),
                None => before.get_untracked().unwrap_or_default(),
            };
            app.type_in(&path, Edit::Set { path: target.clone(), value: new });
            typing.set(Some((text.clone(), value.get_untracked())));
            if !is_usable {
                app.keep_draft(&path, text);
            }
        };
        let on_blur = move || {
            typing.set(None);
            before.set(None);
            app.settle();
        };
        fragment()
            .put(
                el("div")
                    .class("control")
                    .put(
                        el("input")
                            .attr("type", "text")
                            .attr("id", id)
                            .attr("inputmode", input_mode(field))
                            .attr("autocomplete", "off")
                            .attr("aria-label", label)
                            .attr("placeholder", example(field))
                            .attr("aria-describedby", message_id.clone())
                            .live("aria-invalid", move || wrong.get().is_some().then(|| "true".to_owned()))
                            .value(text)
                            .on_input(on_input)
                            .on_blur(on_blur),
                    )
                    .put(unit_sign(field).map(|unit| el("span").class("unit").put(unit).done())),
            )
            .put(outcome(field, typed_text))
            .put(message(wrong, Some(message_id)))
            .put(accepted(field).map(|range| el("small").class("accepts").put(range).done()))
            .done()
    }
}

/// What a line of arithmetic comes to, while it is typed.
fn outcome(field: &'static PlanField, typing: Memo<Option<String>>) -> View {
    let text = move || typing.get().and_then(|line| comes_to(field, &line)).unwrap_or_default();
    el("output").class("outcome").put(live::text(text)).done()
}

/// What a line of arithmetic for a field comes to; nothing for a plain number, or while it cannot be worked out.
pub fn comes_to(field: &PlanField, line: &str) -> Option<String> {
    let marks = locale::number_marks();
    if !is_calculation(&field.kind, line, marks) {
        return None;
    }
    let value = typed_value(field, line, marks, scale(field)).ok()?;
    Some(tell!("field-comes-to", &vec![("value", figure(field, value))]))
}

/// An amount as money is written; anything else as the field will show it, with its unit.
fn figure(field: &PlanField, value: Value) -> Figure {
    if let (Kind::Money { .. }, Some(Ok(amount))) = (field.kind, value.as_str().map(str::parse)) {
        return Figure::Money(amount);
    }
    let unit = unit_sign(field).map_or_else(String::new, |unit| format!("\u{a0}{unit}"));
    Figure::Name(field_text(field, value) + &unit)
}

fn draft_at(path: &Path) -> Memo<Option<String>> {
    let (app, path) = (App::here(), path.clone());
    live::memo(move || app.desk.drafts.with(|drafts| drafts.get(&path).cloned()))
}

pub(super) fn message(wrong: Memo<Option<String>>, id: Option<String>) -> View {
    el("p")
        .class("wrong")
        .attr("id", id)
        .attr("aria-live", "polite")
        .put(live::text(move || wrong.get().unwrap_or_default()))
        .done()
}

/// What is wrong with the value at a path, from the plan's own problems.
fn wrong_of(path: Path) -> Memo<Option<String>> {
    let app = App::here();
    live::memo(move || {
        app.desk.problems.with(|problems| {
            let problem = problems.iter().find(|problem| problem.path == path)?;
            Some(words(|words| words.problem(problem)))
        })
    })
}

fn draft_message(field: &PlanField, text: &str, counted: &str) -> Option<String> {
    let wrong: Wrong = typed_value(field, text, locale::number_marks(), scale(field)).err()?;
    let wrong = words(|words| words.wrong(&wrong));
    if counted.is_empty() {
        return Some(wrong);
    }
    let until_then = tell!("draft-until-then", &vec![("value", Figure::Name(counted.to_owned()))]);
    Some(format!("{wrong} {until_then}"))
}

/// The mark of a guess, with the way to confirm it.
fn guess_mark(path: Path) -> View {
    let app = App::here();
    let is_guess = {
        let path = path.clone();
        move || app.plan(|plan| plan.guesses.contains(&path))
    };
    let confirm = move || app.edit(Edit::Guess { paths: vec![path.clone()], guessed: false });
    live::when(is_guess, move || button(key!("field-guess"), confirm.clone()).class("guess").done())
}

fn part_of(value: &Value, part: Part) -> Value {
    match (value, part) {
        (Value::Object(range), Part::Whole) => range.get("likely").cloned().unwrap_or_default(),
        (Value::Object(range), part) => range.get(part.name()).cloned().unwrap_or_default(),
        (plain, _) => plain.clone(),
    }
}

fn with_part(value: &Value, part: Part, typed: Value) -> Value {
    match (value, part) {
        (_, Part::Whole) => typed,
        (Value::Object(range), part) if !typed.is_null() => {
            let mut range = range.clone();
            range.insert(part.name().to_owned(), typed);
            Value::Object(range)
        }
        (other, _) => other.clone(),
    }
}

/// A value of the plan as it would be typed.
pub fn field_text(field: &PlanField, value: Value) -> String {
    match value {
        Value::String(text) if matches!(field.kind, Kind::Money { .. } | Kind::Rate) => {
            locale::typing_text(&text, locale::number_marks())
        }
        Value::String(text) => text,
        Value::Number(number) => locale::typing_number(scale(field).shown(number.as_f64().unwrap_or_default())),
        _ => String::new(),
    }
}

fn quantity(field: &PlanField) -> Option<Quantity> {
    match field.kind {
        Kind::Number { quantity, .. } | Kind::Whole { quantity, .. } => Some(quantity),
        _ => None,
    }
}

/// The unit that a field is typed in.
pub fn scale(field: &PlanField) -> Scale {
    quantity(field).map_or(Scale::from(1.0), |quantity| words(|words| unit(quantity, words.units()).scale()))
}

/// The unit that stands beside a field.
pub fn unit_sign(field: &PlanField) -> Option<String> {
    match field.kind {
        Kind::Money { .. } => Some(words(|words| words.currency().to_owned())),
        Kind::Rate => Some(t!("unit-percent")),
        _ => quantity(field)
            .filter(|quantity| *quantity != Quantity::Count)
            .map(|quantity| words(|words| words.unit_sign(quantity))),
    }
}

fn input_mode(field: &PlanField) -> &'static str {
    match field.kind {
        Kind::Whole { .. } => "numeric",
        Kind::Number { .. } | Kind::Money { .. } | Kind::Rate => "decimal",
        _ => "text",
    }
}

fn example(field: &PlanField) -> Option<String> {
    let number = match field.kind {
        Kind::Number { example, .. } => (scale(field).shown(example) * 10.0).round() / 10.0,
        Kind::Whole { example, .. } => f64::from(example),
        Kind::Money { example, .. } => example as f64,
        _ => return None,
    };
    let example = locale::typing_number(number);
    Some(tell!("field-example", &vec![("example", Figure::Name(example))]))
}

/// The range a field accepts, in words.
fn accepted(field: &PlanField) -> Option<String> {
    let range = |min: f64, max: f64, quantity| {
        tell!("field-accepts", &vec![("min", Figure::of(min, quantity)), ("max", Figure::of(max, quantity))])
    };
    match field.kind {
        Kind::Number { min, max, quantity, .. } => Some(range(min, max, quantity)),
        Kind::Whole { min, max, quantity, .. } => Some(range(f64::from(min), f64::from(max), quantity)),
        _ => None,
    }
}
