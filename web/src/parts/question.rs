//! Questions that are answered from two or three fields: what is typed belongs to the device and to no plan.

use kerbstead_core::plan::{Field, Kind, Path, Quantity, typed_value};
use kerbstead_core::words::Key;

use super::field::{message, scale, unit_sign};
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{self, plain_sentence, words};
use crate::state::App;

/// A number to be typed.
#[derive(Clone, Copy)]
pub struct Number {
    /// What it is.
    pub label: Key,
    /// What it accepts.
    pub field: &'static Field,
    /// The choice that stands in its place while it says anything.
    pub unless: Option<&'static str>,
}

/// Something to be chosen.
#[derive(Clone, Copy)]
pub struct Choice {
    /// What it is.
    pub label: Key,
    /// Its name.
    pub name: &'static str,
    /// Its words, each with what it says.
    pub options: fn(App) -> Vec<(String, String)>,
}

/// A field that is not of the plan.
pub const fn number_field(name: &'static str, quantity: Quantity, [min, max]: [f64; 2], example: f64) -> Field {
    Field { name, kind: Kind::Number { quantity, min, max, example, range: false } }
}

/// A number that is always asked for.
pub const fn number_of(label: Key, field: &'static Field) -> Number {
    Number { label, field, unless: None }
}

/// Words that are said by texts of the catalogue.
pub fn worded(words: &[(&str, Key)]) -> Vec<(String, String)> {
    words.iter().map(|(word, text)| ((*word).to_owned(), plain_sentence(*text))).collect()
}

/// The fields of a question with its answer below them.
pub fn question(
    app: App,
    name: &'static str,
    numbers: &[Number],
    choices: &[Choice],
    answer: fn(App, &Typed) -> Option<String>,
) -> View {
    let typed = Typed::of(app, name);
    let inputs = numbers.iter().map(|number| input(typed, *number));
    let choices = choices.iter().map(|one| choice(typed, *one));
    let text = move || answer(app, &typed).unwrap_or_else(|| t!("aisle-waiting"));
    fragment()
        .put(el("div").class("fields").put_each(inputs).put_each(choices))
        .put(el("p").class("rough-answer").attr("aria-live", "polite").put(el("strong").put(live::text(text))))
        .done()
}

/// What is typed for a question.
#[derive(Clone, Copy)]
pub struct Typed {
    /// Where it is kept.
    pub app: App,
    name: &'static str,
}

impl Typed {
    /// What is typed for the question of a name.
    pub const fn of(app: App, name: &'static str) -> Self {
        Self { app, name }
    }

    fn path(self, field: &str) -> Path {
        Path::section(self.name).child(field)
    }

    /// A text as it is typed, or a word that is chosen.
    pub fn text(self, field: &str) -> String {
        self.app.desk.slip.with(|slip| slip.power.get(&self.path(field)).cloned().unwrap_or_default())
    }

    /// Keeps a text.
    pub fn write(self, field: &str, text: String) {
        self.app.write_slip(|slip| slip.power.insert(self.path(field), text));
    }

    /// A number, if it is one.
    pub fn read(self, field: &'static Field) -> Option<f64> {
        typed_value(field, &self.text(field.name), locale::number_marks(), scale(field)).ok()?.as_f64()
    }

    fn wrong(self, field: &'static Field) -> Option<String> {
        let read = typed_value(field, &self.text(field.name), locale::number_marks(), scale(field));
        read.err().map(|wrong| words(|words| words.wrong(&wrong)))
    }
}

/// The field of a number, with what is wrong with it.
pub fn input(typed: Typed, Number { label, field, unless }: Number) -> View {
    let id = format!("aisle-{}-{}", typed.name, field.name);
    let message_id = format!("{id}-message");
    let wrong = live::memo(move || typed.wrong(field));
    let is_needless = move || unless.is_some_and(|choice| !typed.text(choice).is_empty());
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
                        .attr("aria-describedby", message_id.clone())
                        .live("aria-invalid", move || wrong.get().is_some().then(|| "true".to_owned()))
                        .live_flag("disabled", is_needless)
                        .value(move || typed.text(field.name))
                        .on_input(move |text| typed.write(field.name, text)),
                )
                .put(unit_sign(field).map(|unit| el("span").class("unit").put(unit).done())),
        )
        .put(message(wrong, Some(message_id)))
        .done()
}

/// The field of a choice.
pub fn choice(typed: Typed, Choice { label, name, options }: Choice) -> View {
    let id = format!("aisle-{}-{name}", typed.name);
    let path = typed.path(name);
    let now = typed.app.desk.slip.with_untracked(|slip| slip.power.get(&path).cloned().unwrap_or_default());
    let options = options(typed.app).into_iter().map(|(word, text)| {
        let is_now = word == now;
        el("option").attr("value", word).flag("selected", is_now).put(text).done()
    });
    el("div")
        .class("field")
        .put(el("label").attr("for", id.clone()).put(label))
        .put(el("select").attr("id", id).on_change(move |text| typed.write(name, text)).put_each(options))
        .done()
}
