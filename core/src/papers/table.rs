//! Tables of comma-separated values, by RFC 4180, that a spreadsheet opens with the right numbers and days.

use serde_json::Value;

use crate::money::Report;
use crate::plan::field::{self, Section};
use crate::plan::{Field, Kind, Money, Plan, date_text, value_in};
use crate::words::{Format, Words, unit};

/// How a table is written where the person lives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marks {
    /// What stands before the decimals. Where it is a comma, cells are parted by semicolons, as spreadsheets of such
    /// places expect.
    pub decimal: char,
}

impl Marks {
    const fn separator(self) -> char {
        if self.decimal == ',' { ';' } else { ',' }
    }
}

/// The kit list: a row for each item, a column for each field that any item fills, in the units that the words show.
pub fn kit_table<F: Format>(plan: &Plan, words: &Words<F>, marks: Marks) -> String {
    use crate::plan::Plain;
    let fields: &[Field] = Section::named("kit").map_or(&[], |section| section.fields);
    let items: Vec<Value> = plan.kit.iter().map(Plain::to_plain).collect();
    let filled = |field: &&Field| items.iter().any(|item| value_at(item, field.name).is_some());
    let columns: Vec<&Field> = fields.iter().filter(filled).collect();
    let mut table = Table::new(marks);
    table.row(columns.iter().map(|field| Cell::Text(heading(field, words))));
    for item in &items {
        let cell = |field: &&Field| value_at(item, field.name).map_or(Cell::Empty, |value| cell(value, field, words));
        table.row(columns.iter().map(cell));
    }
    table.text
}

/// The cash by day: what came in, what went out, what is in hand in the evening.
pub fn cash_table<F: Format>(report: &Report, words: &Words<F>, marks: Marks) -> String {
    let mut table = Table::new(marks);
    let headings = ["column-day", "column-opening", "column-in", "column-out", "column-closing"];
    table.row(headings.map(|key| Cell::Text(words.text(key))));
    for day in &report.days {
        let amounts = [day.opening, day.inflow, day.outflow, day.closing + day.corrected].map(Cell::money);
        table.row(std::iter::once(Cell::Plain(date_text(day.on))).chain(amounts));
    }
    table.text
}

fn value_at<'a>(item: &'a Value, name: &str) -> Option<&'a Value> {
    value_in(item, name).filter(|value| !value.is_null() && **value != "")
}

/// The field's name, with its unit if it has one.
fn heading<F: Format>(field: &Field, words: &Words<F>) -> String {
    let name = words.text(&format!("field-{}", field.name.replace(['/', '_'], "-")));
    match field.kind {
        Kind::Number { quantity, .. } if quantity != field::Quantity::Count => {
            format!("{name} ({})", words.unit_sign(quantity))
        }
        Kind::Money { .. } => format!("{name} ({})", words.currency()),
        _ => name,
    }
}

fn cell<F: Format>(value: &Value, field: &Field, words: &Words<F>) -> Cell {
    // Of a range, the likely value stands in the table.
    let value = value.get("likely").unwrap_or(value);
    match (field.kind, value) {
        (Kind::Number { quantity, .. }, Value::Number(number)) => {
            let shown = unit(quantity, words.units()).scale().shown(number.as_f64().unwrap_or(0.0));
            Cell::Number(serde_json::Number::from_f64(shown).map_or_else(String::new, |number| number.to_string()))
        }
        (Kind::Money { .. } | Kind::Rate, Value::String(amount)) => Cell::Number(amount.clone()),
        (Kind::Choice(_), Value::String(word)) => {
            let last = field.name.rsplit('/').next().unwrap_or(field.name);
            Cell::Text(words.text(&format!("choice-{last}-{word}").replace('_', "-")))
        }
        (Kind::Flag, Value::Bool(is_so)) => Cell::Text(words.text(if *is_so { "column-yes" } else { "column-no" })),
        (_, Value::String(text)) => Cell::Text(text.clone()),
        (_, other) => Cell::Number(other.to_string()),
    }
}

/// What stands in a cell.
pub(super) enum Cell {
    Empty,
    /// Words of a person or of the catalogue.
    Text(String),
    /// A plain decimal with a point.
    Number(String),
    /// Text of our own that no program takes for anything else, such as a date.
    Plain(String),
}

impl Cell {
    pub fn money(amount: Money) -> Self {
        Self::Number(amount.to_string())
    }
}

pub(super) struct Table {
    marks: Marks,
    pub text: String,
}

impl Table {
    /// An empty table that says it is UTF-8, which spreadsheets do not assume.
    pub fn new(marks: Marks) -> Self {
        Self { marks, text: String::from('\u{feff}') }
    }

    pub fn row(&mut self, cells: impl IntoIterator<Item = Cell>) {
        for (column, cell) in cells.into_iter().enumerate() {
            if column > 0 {
                self.text.push(self.marks.separator());
            }
            match cell {
                Cell::Empty => {}
                Cell::Plain(text) => self.text.push_str(&text),
                Cell::Number(number) => {
                    self.text.extend(number.chars().map(|mark| if mark == '.' { self.marks.decimal } else { mark }));
                }
                Cell::Text(text) => self.quoted(&text),
            }
        }
        self.text.push_str("\r\n");
    }

    /// Text between quotes. What a spreadsheet would take for a formula gets an apostrophe before it: the plan may come
    /// from a stranger's link.
    fn quoted(&mut self, text: &str) {
        self.text.push('"');
        if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
            self.text.push('\'');
        }
        self.text.push_str(&text.replace('"', "\"\""));
        self.text.push('"');
    }
}
