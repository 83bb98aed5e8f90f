//! What is said of receipts and of files of them.

use super::{Format, Words};
use crate::explain::{Figure, Figures};
use crate::money::{Explanation, Receipt, Spot};
use crate::papers::receipts::{Ask, Column, MOST_BYTES, MOST_ROWS, Meaning, Reason, Refused};
use crate::plan::{Money, Plan, Quantity};

impl<F: Format> Words<F> {
    /// What could explain that a receipt's lines do not come to its total.
    ///
    /// ```
    /// use kerbstead_core::money::{Explanation, Receipt, ReceiptLine};
    /// use kerbstead_core::plan::{Money, Plan};
    /// use kerbstead_core::words::{Plain, Units, Words};
    /// let lines = vec![ReceiptLine { name: "Rope".into(), amount: Money::whole(4), ..ReceiptLine::default() }];
    /// let receipt = Receipt { lines, ..Receipt::default() };
    /// let words = Words::english(Plain, Units::Metric, "EUR");
    /// let said = words.explanation(&Explanation::LineTooMany { line: 0 }, &receipt, &Plan::default());
    /// assert_eq!(said, "“Rope” may not belong here.");
    /// ```
    pub fn explanation(&self, explanation: &Explanation, receipt: &Receipt, plan: &Plan) -> String {
        let item_name = |id| plan.item(id).map(|item| item.name.clone());
        let line_name = |at: usize| {
            let line = receipt.lines.get(at);
            let own = line.map(|line| line.name.clone()).filter(|name| !name.is_empty());
            let of_item = || line.and_then(|line| line.item).and_then(item_name);
            Figure::Name(own.or_else(of_item).unwrap_or_else(|| format!("#{}", at + 1)))
        };
        let of_line = |at: usize| vec![("name", line_name(at))];
        let at_spot = |[of_line_key, of_total]: [&'static str; 2], at: Spot, to: Money| match at {
            Spot::Line(line) => (of_line_key, vec![("name", line_name(line)), ("to", Figure::Money(to))]),
            Spot::Total => (of_total, vec![("to", Figure::Money(to))]),
        };
        let taxed = |[of_line_key, of_all]: [&'static str; 2], line: Option<usize>, percent| {
            let percent = Figure::of(Money::new(percent).to_plot(), Quantity::Percent);
            match line {
                Some(line) => (of_line_key, vec![("name", line_name(line)), ("percent", percent)]),
                None => (of_all, vec![("percent", percent)]),
            }
        };
        let (key, figures): (&str, Figures) = match *explanation {
            Explanation::ItemMissing { item, amount } => {
                let name = Figure::Name(item_name(item).unwrap_or_default());
                ("receipts-item-missing", vec![("name", name), ("amount", Figure::Money(amount))])
            }
            Explanation::CountedTwice { line, .. } => ("receipts-counted-twice", of_line(line)),
            Explanation::DigitsSwapped { at, to } => {
                at_spot(["receipts-digits-swapped", "receipts-total-digits-swapped"], at, to)
            }
            Explanation::MarkMisplaced { at, to } => {
                at_spot(["receipts-mark-misplaced", "receipts-total-mark-misplaced"], at, to)
            }
            Explanation::TaxLeftOut { line, percent } => {
                taxed(["receipts-tax-left-out", "receipts-all-tax-left-out"], line, percent)
            }
            Explanation::TaxTooMuch { line, percent } => {
                taxed(["receipts-tax-too-much", "receipts-all-tax-too-much"], line, percent)
            }
            Explanation::SignTurned { line } => ("receipts-sign-turned", of_line(line)),
            Explanation::ChargedTwice { line } => ("receipts-charged-twice", of_line(line)),
            Explanation::LineTooMany { line } => ("receipts-line-too-many", of_line(line)),
            Explanation::Rounded { to } => ("receipts-rounded", vec![("to", Figure::Money(to))]),
            Explanation::LineMissing { amount } if amount.is_negative() => {
                ("receipts-reduction-missing", vec![("amount", Figure::Money(-amount))])
            }
            Explanation::LineMissing { amount } => ("receipts-line-missing", vec![("amount", Figure::Money(amount))]),
        };
        self.with(key, &figures)
    }

    /// Why a row of a file was not read.
    pub fn reason(&self, reason: &Reason, columns: &[Column]) -> String {
        let of_column = |at: usize| {
            let heading = columns.get(at).map(|column| column.heading.clone()).filter(|heading| !heading.is_empty());
            vec![("column", Figure::Name(heading.unwrap_or_else(|| format!("#{}", at + 1))))]
        };
        let (key, figures): (&str, Figures) = match *reason {
            Reason::AboveHeadings => ("receipts-row-above-headings", vec![]),
            Reason::Cells { expected, found } => {
                ("receipts-row-cells", vec![("expected", Figure::count(expected)), ("found", Figure::count(found))])
            }
            Reason::QuoteOpen => ("receipts-row-quote-open", vec![]),
            Reason::NoAmount => ("receipts-row-no-amount", vec![]),
            Reason::NotAnAmount { column } => ("receipts-row-not-an-amount", of_column(column)),
            Reason::OtherCurrency { column } => {
                let mut figures = of_column(column);
                figures.push(("currency", Figure::Name(self.currency().to_owned())));
                ("receipts-row-other-currency", figures)
            }
            Reason::TooMuch { column } => ("receipts-row-too-much", of_column(column)),
            Reason::NotADay { column } => ("receipts-row-not-a-day", of_column(column)),
            Reason::NotAnItem { column } => ("receipts-row-not-an-item", of_column(column)),
            Reason::NotYesOrNo { column } => ("receipts-row-not-yes-or-no", of_column(column)),
            Reason::Waits => ("receipts-row-waits", vec![]),
        };
        self.with(key, &figures)
    }

    /// What a file leaves open and the person must say.
    pub fn ask(&self, ask: &Ask) -> String {
        let (key, example) = match ask {
            Ask::DateOrder { example } => ("receipts-ask-order", example.as_str()),
            Ask::DecimalMark { example } => ("receipts-ask-decimal", example.as_str()),
            Ask::AmountColumn => ("receipts-ask-amount", ""),
        };
        self.with(key, &vec![("example", Figure::Name(example.to_owned()))])
    }

    /// Why a file is not read at all.
    pub fn refused(&self, refused: Refused) -> String {
        let (key, most) = match refused {
            Refused::TooLong => ("receipts-file-too-long", MOST_BYTES),
            Refused::TooManyRows => ("receipts-file-too-many-rows", MOST_ROWS),
            Refused::Empty => ("receipts-file-empty", 0),
        };
        self.with(key, &vec![("most", Figure::count(most))])
    }

    /// What a column of a file is taken for.
    pub fn meaning(&self, meaning: Meaning) -> String {
        self.text(match meaning {
            Meaning::Day => "receipts-column-day",
            Meaning::Amount => "receipts-column-amount",
            Meaning::Back => "receipts-column-back",
            Meaning::Total => "receipts-column-total",
            Meaning::Name => "receipts-column-name",
            Meaning::Place => "receipts-column-place",
            Meaning::Item => "receipts-column-item",
            Meaning::MoreFollows => "field-more-follows",
            Meaning::Receipt => "receipts-column-receipt",
            Meaning::Currency => "receipts-column-currency",
            Meaning::Nothing => "receipts-column-nothing",
        })
    }
}
