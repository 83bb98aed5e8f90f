//! A field of core's table that is filled in beside the open plan: in an answer to a friend.

use kerbstead_core::plan::{Kind, Path, field as table, typed_value};
use serde_json::Value;

use super::field::{choice_text, dom_id, field_label, field_text, message, scale, unit_sign};
use crate::el::{View, el, nothing};
use crate::live::{self, Signal};
use crate::locale::{self, words};

/// The field at a path with its value of now; what it becomes goes to `set`. Text that cannot be used goes nowhere.
pub fn asked(path: &Path, value: &Value, set: impl Fn(Value) + 'static) -> View {
    fn make(path: &Path, value: &Value, set: Box<dyn Fn(Value)>) -> View {
        let Some(field) = table::at(path) else { return nothing() };
        let id = dom_id(path);
        let message_id = [&id, "-message"].concat();
        let wrong = Signal::new(None);
        let on_text = move |text: String| match typed_value(field, &text, locale::number_marks(), scale(field)) {
            Ok(value) => {
                wrong.set(None);
                set(value);
            }
            Err(why) => wrong.set(Some(words(|words| words.wrong(&why)))),
        };
        let label = el("label").attr("for", id.clone()).put(field_label(field));
        let input = match field.kind {
            Kind::Choice(choices) => {
                let options = choices.iter().map(|word| {
                    let option = el("option").attr("value", *word).flag("selected", value == word);
                    option.put(choice_text(field, word)).done()
                });
                el("select").put_each(options).on_change(on_text)
            }
            kind => {
                let of_kind = match kind {
                    Kind::Date => el("input").attr("type", "date"),
                    Kind::Number { .. } => el("input").attr("type", "text").attr("inputmode", "decimal"),
                    _ => el("input").attr("type", "text").attr("maxlength", "120"),
                };
                of_kind.attr("autocomplete", "off").attr("value", field_text(field, value.clone())).on_input(on_text)
            }
        };
        let input = input.attr("id", id).attr("aria-describedby", message_id.clone());
        let unit = unit_sign(field).map(|unit| el("span").class("unit").put(unit).done());
        el("div")
            .class("field")
            .put(label)
            .put(el("div").class("control").put(input).put(unit))
            .put(message(live::memo(move || wrong.get()), Some(message_id)))
            .done()
    }
    make(path, value, Box::new(set))
}
