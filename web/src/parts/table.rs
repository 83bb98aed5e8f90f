//! A table with its heads.

use kerbstead_core::words::Key;

use crate::el::{El, View, el, nothing};
use crate::locale::plain_sentence;

/// A row of a table: its head, its cells, and its class if it has one.
pub struct TableRow(pub String, pub Vec<String>, pub Option<&'static str>);

/// A table under its heads that can be moved sideways and, unless it is short and `whole`, up and down.
pub fn table(label: String, whole: bool, heads: &[Key], rows: Vec<TableRow>) -> View {
    named_table(label, whole, heads.iter().map(|key| plain_sentence(*key)).collect(), rows)
}

/// The same folded away under its label, if it has a row.
pub fn folded_table(label: String, heads: &[Key], rows: Vec<TableRow>) -> View {
    if rows.is_empty() {
        return nothing();
    }
    el("details").put(el("summary").put(label.clone())).put(table(label, false, heads, rows)).done()
}

/// A table under heads that are no texts of the catalogue.
pub fn named_table(label: String, whole: bool, heads: Vec<String>, rows: Vec<TableRow>) -> View {
    scrolling(label, whole)
        .put(el("table").put(head(heads)).put(el("tbody").put_each(rows.into_iter().map(row))))
        .done()
}

/// What a table is in that can be moved.
pub(super) fn scrolling(label: String, whole: bool) -> El {
    el("div")
        .class(if whole { "scroll whole" } else { "scroll" })
        .attr("tabindex", "0")
        .attr("role", "group")
        .attr("aria-label", label)
}

/// The heads of its columns.
fn head(heads: Vec<String>) -> View {
    let heads = heads.into_iter().map(|head| el("th").attr("scope", "col").put(head).done());
    el("thead").put(el("tr").put_each(heads)).done()
}

pub(super) fn row(row: TableRow) -> View {
    let TableRow(name, cells, class) = row;
    el("tr")
        .attr("class", class)
        .put(el("th").attr("scope", "row").put(name))
        .put_each(cells.into_iter().map(|cell| el("td").put(cell).done()))
        .done()
}
