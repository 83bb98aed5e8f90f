//! Rows as receipts, and receipts as rows.

use super::Row;
use crate::money::{Receipt, ReceiptLine};
use crate::order;
use crate::papers::Marks;
use crate::papers::table::{Cell, Table};
use crate::plan::{Plan, date_text};
use crate::words::{Format, Words};

/// The receipts of rows that were read. Rows that have the text of a column for it in common, with the day and the
/// place, are the lines of one; every other row is a receipt of its own.
///
/// ```
/// use kerbstead_core::papers::receipts::{Settings, preview, receipts_of};
/// let file = "Bill,Date,What,Price,Total\n7,2027-03-24,Rope,4.00,6.50\n7,2027-03-24,Hooks,2.50,\n";
/// let settings = Settings { currency: "EUR".into(), ..Settings::default() };
/// let receipts = receipts_of(&preview(file.as_bytes(), &settings).unwrap().rows);
/// assert_eq!((receipts.len(), receipts[0].lines.len()), (1, 2));
/// assert_eq!(receipts[0].stated, "6.50".parse().ok());
/// ```
pub fn receipts_of(rows: &[Row]) -> Vec<Receipt> {
    let mut receipts: Vec<Receipt> = Vec::new();
    // The row that each of them began with. Lines of a receipt mostly follow one another.
    let mut began: Vec<&Row> = Vec::new();
    for row in rows {
        let is_same = |first: &&Row| {
            !row.receipt.is_empty() && (&first.receipt, first.on, &first.place) == (&row.receipt, row.on, &row.place)
        };
        let grouped = began.iter().rposition(is_same).filter(|at| belongs(row, &receipts[*at]));
        let at = grouped.unwrap_or(receipts.len());
        if at == receipts.len() {
            receipts.push(Receipt { on: row.on, place: row.place.clone(), ..Receipt::default() });
            began.push(row);
        }
        let receipt = &mut receipts[at];
        receipt.stated = receipt.stated.or(row.total);
        if let Some(amount) = row.amount {
            let (name, item, more_follows) = (row.name.clone(), row.item, row.more_follows);
            receipt.lines.push(ReceiptLine { name, amount, item, more_follows });
        }
    }
    receipts
}

/// The same for a plan: items are those of its kit, and a single line that says no more than what was paid is the total.
pub fn receipts_for(plan: &Plan, rows: &[Row]) -> Vec<Receipt> {
    let known = order::sorted(plan.kit.iter().map(|item| item.id.into()));
    let mut receipts = receipts_of(rows);
    for receipt in &mut receipts {
        for line in &mut receipt.lines {
            line.item = line.item.filter(|id| order::find(&known, (*id).into()).is_some());
        }
        if let [line] = receipt.lines.as_slice()
            && line.name.is_empty()
            && line.item.is_none()
            && receipt.stated.is_none_or(|stated| stated == line.amount)
        {
            receipt.stated = Some(line.amount);
            receipt.lines.clear();
        }
    }
    receipts
}

/// Two totals are of two receipts.
fn belongs(row: &Row, receipt: &Receipt) -> bool {
    row.total.is_none() || receipt.stated.is_none() || row.total == receipt.stated
}

/// Receipts as a table of comma-separated values (RFC 4180), a row for each line, that spreadsheets and
/// [`preview`](super::preview()) read. A receipt without lines has a row with its total only.
///
/// ```
/// use kerbstead_core::money::Receipt;
/// use kerbstead_core::papers::{Marks, receipts::receipt_table};
/// use kerbstead_core::plan::Money;
/// use kerbstead_core::words::{Plain, Units, Words};
/// let receipt = Receipt { place: "Yard".into(), stated: Some(Money::whole(12)), ..Receipt::default() };
/// let table = receipt_table(&[receipt], &Words::english(Plain, Units::Metric, "EUR"), Marks { decimal: '.' });
/// assert!(table.ends_with("1,,\"Yard\",,,,12,\r\n"));
/// ```
pub fn receipt_table<F: Format>(receipts: &[Receipt], words: &Words<F>, marks: Marks) -> String {
    let mut table = Table::new(marks);
    let money = |key: &str| format!("{} ({})", words.text(key), words.currency());
    let texts = ["column-receipt", "column-day", "field-place", "field-name", "column-item"].map(|key| words.text(key));
    let amounts = ["field-amount", "column-total"].map(money);
    let more_follows = words.text("field-more-follows");
    table.row(texts.into_iter().chain(amounts).chain([more_follows]).map(Cell::Text));
    for (at, receipt) in receipts.iter().enumerate() {
        let line = |line: Option<&ReceiptLine>| {
            [
                Cell::Number((at + 1).to_string()),
                receipt.on.map_or(Cell::Empty, |on| Cell::Plain(date_text(on))),
                text(&receipt.place),
                line.map_or(Cell::Empty, |line| text(&line.name)),
                line.and_then(|line| line.item).map_or(Cell::Empty, |item| Cell::Number(item.to_string())),
                line.map_or(Cell::Empty, |line| Cell::money(line.amount)),
                receipt.stated.map_or(Cell::Empty, Cell::money),
                line.filter(|line| line.more_follows).map_or(Cell::Empty, |_| Cell::Text(words.text("column-yes"))),
            ]
        };
        if receipt.lines.is_empty() {
            table.row(line(None));
        }
        receipt.lines.iter().for_each(|of| table.row(line(Some(of))));
    }
    table.text
}

fn text(text: &str) -> Cell {
    if text.is_empty() { Cell::Empty } else { Cell::Text(text.to_owned()) }
}
