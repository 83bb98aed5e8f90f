//! What was paid, line by line, against what is stated in all and against what was planned.

mod explanation;

use jiff::civil::Date;

pub use explanation::{Explanation, Spot};

use crate::plan::{Id, Money};

/// What was paid at one till on one day, in the plan's currency.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Receipt {
    /// The day, where it is known.
    pub on: Option<Date>,
    /// Where it was; empty where nobody noted it.
    pub place: String,
    /// What it says was paid in all; without it, what the lines come to.
    pub stated: Option<Money>,
    /// What was bought.
    pub lines: Vec<ReceiptLine>,
}

/// One line of a receipt.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ReceiptLine {
    /// What it is called there.
    pub name: String,
    /// What was paid for it; negative for a reduction or a deposit that came back.
    pub amount: Money,
    /// The item of the kit it is for.
    pub item: Option<Id>,
    /// Whether more of the item is still to be paid.
    pub more_follows: bool,
}

/// What an item is planned to cost in all, with its tax: [`purchase_price`](super::purchase_price) gives it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Expected {
    /// The item.
    pub item: Id,
    /// What it is to cost.
    pub price: Money,
}

/// What the lines of a receipt come to beside its stated total.
#[derive(Clone, Debug, PartialEq)]
pub struct Reckoning {
    /// The lines added up, each rounded to the minor unit as a till does it.
    pub sum: Money,
    /// The stated total less the sum: above nothing, the lines lack something. Nothing where no total is stated.
    pub difference: Money,
    /// What alone would make up for the difference, the most telling first; at most [`MOST_EXPLANATIONS`].
    pub explanations: Vec<Explanation>,
}

/// More ways to explain a difference than these tell nobody anything.
pub const MOST_EXPLANATIONS: usize = 12;

/// Adds a receipt up and looks for what explains a difference to its stated total.
///
/// `expected` are the items of the plan with their prices, `tax_percents` the sales taxes that may be at work, `digits`
/// the decimal digits of the currency's minor unit. No input is refused; amounts beyond those that a plan takes
/// (a thousand million) are added up, but not explained.
///
/// ```
/// use kerbstead_core::money::{Explanation, Receipt, ReceiptLine, Spot, reckon};
/// use kerbstead_core::plan::Money;
/// let line = |amount: &str| ReceiptLine { amount: amount.parse().unwrap(), ..ReceiptLine::default() };
/// let stated: Money = "45.70".parse().unwrap();
/// let receipt = Receipt { stated: Some(stated), lines: vec![line("12.70"), line("24.00")], ..Receipt::default() };
/// let reckoning = reckon(&receipt, &[], &[], 2);
/// assert_eq!(reckoning.difference.to_string(), "9.00");
/// // The difference divides by nine: somebody took 21.70 for 12.70.
/// let to = "21.70".parse().unwrap();
/// assert_eq!(reckoning.explanations[0], Explanation::DigitsSwapped { at: Spot::Line(0), to });
/// ```
pub fn reckon(
    receipt: &Receipt,
    expected: &[Expected],
    tax_percents: &[rust_decimal::Decimal],
    digits: u32,
) -> Reckoning {
    let sum = receipt.sum(digits);
    let stated = receipt.stated.map_or(sum, |stated| stated.rounded(digits));
    let difference = stated - sum;
    let explanations = explanation::explanations(&explanation::Case {
        receipt,
        expected,
        tax_percents,
        digits,
        stated,
        sum,
        difference,
    });
    Reckoning { sum, difference, explanations }
}

impl Receipt {
    /// The lines added up, each rounded to the minor unit as a till does it.
    pub fn sum(&self, digits: u32) -> Money {
        self.lines.iter().map(|line| line.amount.rounded(digits)).sum()
    }

    /// The stated total less the sum of the lines, where both are there.
    pub fn difference(&self, digits: u32) -> Money {
        let stated = self.stated.filter(|_| !self.lines.is_empty());
        stated.map_or(Money::ZERO, |stated| stated.rounded(digits) - self.sum(digits))
    }

    /// What left the purse: the stated total, or what the lines come to.
    pub fn paid(&self) -> Money {
        self.stated.unwrap_or_else(|| self.lines.iter().map(|line| line.amount).sum())
    }
}

/// What was paid for an item beside what was planned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ItemPaid {
    /// The item; none for all that is for no item, with what the stated totals have beyond their lines.
    pub item: Option<Id>,
    /// What was planned, where it was.
    pub planned: Option<Money>,
    /// What was paid.
    pub paid: Money,
}

impl ItemPaid {
    /// What was paid beyond the plan; negative where it was less. None without a plan.
    pub fn beyond_plan(&self) -> Option<Money> {
        self.planned.map(|planned| self.paid - planned)
    }
}

/// What was paid for each planned item, in the order of the plan; then for other items, in the order of the receipts;
/// last what is for none. All of it together is what left the purse.
///
/// ```
/// use kerbstead_core::money::{Expected, Receipt, ReceiptLine, paid_by_item};
/// use kerbstead_core::plan::Money;
/// let lines = vec![ReceiptLine { amount: Money::whole(23), item: Some(4), ..ReceiptLine::default() }];
/// let receipt = Receipt { stated: Some(Money::whole(25)), lines, ..Receipt::default() };
/// let paid = paid_by_item(&[receipt], &[Expected { item: 4, price: Money::whole(20) }]);
/// assert_eq!(paid[0].beyond_plan(), Some(Money::whole(3)));
/// assert_eq!((paid[1].item, paid[1].paid), (None, Money::whole(2)));
/// ```
pub fn paid_by_item(receipts: &[Receipt], expected: &[Expected]) -> Vec<ItemPaid> {
    let planned = |of: &Expected| ItemPaid { item: Some(of.item), planned: Some(of.price), paid: Money::ZERO };
    let mut paid: Vec<ItemPaid> = expected.iter().map(planned).collect();
    let mut rest = Money::ZERO;
    for receipt in receipts {
        rest += receipt.paid();
        for line in receipt.lines.iter().filter(|line| line.item.is_some()) {
            rest -= line.amount;
            match paid.iter_mut().find(|known| known.item == line.item) {
                Some(known) => known.paid += line.amount,
                None => paid.push(ItemPaid { item: line.item, planned: None, paid: line.amount }),
            }
        }
    }
    if rest != Money::ZERO {
        paid.push(ItemPaid { item: None, planned: None, paid: rest });
    }
    paid
}
