//! Values of the plan's fields, as they stand in its file, in words.

use serde_json::Value;

use super::{Format, Words};
use crate::explain::Figure;
use crate::plan::{Field, Id, Kind, List, Money, Plain, Plan, Quantity, read_date};

impl<F: Format> Words<F> {
    /// The value of a field, or of a part such as `draw` where there is no field. The plan tells the names of stores.
    ///
    /// ```
    /// use kerbstead_core::plan::{Path, demo_plan, field};
    /// use kerbstead_core::words::{Plain, Units, Words};
    /// let words = Words::english(Plain, Units::Metric, "EUR");
    /// let say = |path: &str, value| words.value(&demo_plan(), field::at(&Path::from(path)), &value);
    /// assert_eq!(say("kit/1/obtain", "left_out".into()), "left out");
    /// assert_eq!(say("kit/1/mass_kg", 2.5.into()), "2.5 kg");
    /// assert_eq!(say("kit/1/mass_kg", serde_json::json!({ "low": 2, "likely": 3, "high": 5 })), "3 kg (2 kg to 5 kg)");
    /// assert_eq!(say("kit/1/note", serde_json::Value::Null), "nothing");
    /// ```
    pub fn value(&self, plan: &Plan, field: Option<&Field>, value: &Value) -> String {
        match (field, value) {
            (_, Value::Null) => self.text("value-none"),
            (Some(field), Value::Object(range)) => {
                let part =
                    |name: &str| Figure::Name(self.plain_value(plan, field, range.get(name).unwrap_or(&Value::Null)));
                let figures = ["likely", "low", "high"].map(|name| (name, part(name)));
                self.with("value-range", &figures.to_vec())
            }
            (Some(field), value) => self.plain_value(plan, field, value),
            (None, _) => self.text("value-filled"),
        }
    }

    fn plain_value(&self, plan: &Plan, field: &Field, value: &Value) -> String {
        let measure = |quantity: Quantity| self.measure(value.as_f64().unwrap_or_default(), quantity);
        let text = value.as_str().unwrap_or_default();
        match field.kind {
            Kind::Text { .. } | Kind::Currency if text.is_empty() => self.text("value-none"),
            Kind::Text { .. } | Kind::Currency => text.to_owned(),
            Kind::Number { quantity, .. } | Kind::Whole { quantity, .. } => measure(quantity),
            Kind::Money { .. } => self.figure(&Figure::Money(Money::from_plain(value).unwrap_or_default())),
            // As an amount: a reader of floats would be 12,000 bytes more for a phone to load.
            Kind::Rate => self.measure(Money::from_plain(value).unwrap_or_default().to_plot(), Quantity::Percent),
            Kind::Date => read_date(text).map_or_else(|| text.to_owned(), |date| self.figure(&Figure::Date(date))),
            Kind::Flag => self.text(if value == &Value::Bool(true) { "column-yes" } else { "column-no" }),
            Kind::Choice(_) => {
                let name = field.name.rsplit('/').next().unwrap_or_default();
                self.text(&format!("choice-{name}-{text}").replace('_', "-"))
            }
            Kind::StoreItem => self.entry_name(plan, List::Kit, value),
            Kind::Entry(list) => self.entry_name(plan, list, value),
        }
    }

    /// The name of an entry, or the place or the day it has instead; failing that its number.
    fn entry_name(&self, plan: &Plan, list: List, id: &Value) -> String {
        let id = Id::from_plain(id).unwrap_or_default();
        let entry = list.entry(plan, id).unwrap_or_default();
        let text = |name: &str| entry.get(name).and_then(Value::as_str).filter(|text| !text.is_empty());
        match text("name").or_else(|| text("place")) {
            Some(name) => name.to_owned(),
            None => text("on").and_then(read_date).map_or(id.to_string(), |on| self.figure(&Figure::Date(on))),
        }
    }
}
