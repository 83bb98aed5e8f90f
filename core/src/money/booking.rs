//! The receipts of a plan: each with its lines, beside what was planned, and the changes that put them in and take them
//! out.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::price::purchase_price;
use super::receipt::{Expected, ItemPaid, Receipt, ReceiptLine, paid_by_item};
use crate::order;
use crate::plan::civil::day_key;
use crate::plan::field::MOST_ENTRIES;
use crate::plan::{self, Edit, Id, Item, List, Money, Plain, Plan};

/// A receipt of the plan with its lines.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Booking {
    /// The receipt; none for the lines whose receipt is not there.
    pub id: Option<Id>,
    /// Its lines, in the order of `receipt.lines`.
    pub lines: Vec<Id>,
    /// What stands on it. The first line without an amount is worth what the total has beyond the other lines.
    pub receipt: Receipt,
}

/// The receipts of a plan in its order; last the lines whose receipt is not there, as one without a day.
///
/// ```
/// use kerbstead_core::money::bookings;
/// use kerbstead_core::plan::{Money, Plan, Receipt, ReceiptLine};
/// let receipts = vec![Receipt { id: 1, total: Some(Money::whole(9)), ..Receipt::default() }];
/// let line = |id, amount| ReceiptLine { id, receipt: Some(1), amount, ..ReceiptLine::default() };
/// let plan = Plan { receipts, receipt_lines: vec![line(2, None), line(3, Some(Money::whole(4)))], ..Plan::default() };
/// assert_eq!(bookings(&plan)[0].receipt.lines[0].amount, Money::whole(5));
/// ```
pub fn bookings(plan: &Plan) -> Vec<Booking> {
    let known = order::sorted(plan.receipts.iter().map(|receipt| receipt.id.into()));
    let booking = |of: &plan::Receipt| Booking {
        id: Some(of.id),
        lines: Vec::new(),
        receipt: Receipt { on: of.on, place: of.place.clone(), stated: of.total, lines: Vec::new() },
    };
    let mut bookings: Vec<Booking> = plan.receipts.iter().map(booking).collect();
    bookings.push(Booking::default());
    let mut without_amount: Vec<Option<usize>> = vec![None; bookings.len()];
    for line in &plan.receipt_lines {
        let found = line.receipt.and_then(|id| order::find(&known, id.into())).and_then(|at| known.get(at));
        let at = found.map_or(plan.receipts.len(), |(_, at)| *at);
        let Some((booking, without)) = bookings.get_mut(at).zip(without_amount.get_mut(at)) else { continue };
        if line.amount.is_none() && without.is_none() {
            *without = Some(booking.lines.len());
        }
        booking.lines.push(line.id);
        let amount = line.amount.unwrap_or(Money::ZERO);
        let (name, item, more_follows) = (line.name.clone(), line.item, line.more_follows);
        booking.receipt.lines.push(ReceiptLine { name, amount, item, more_follows });
    }
    for (booking, without) in bookings.iter_mut().zip(without_amount) {
        let sum: Money = booking.receipt.lines.iter().map(|line| line.amount).sum();
        let line = without.and_then(|at| booking.receipt.lines.get_mut(at));
        if let Some((line, stated)) = line.zip(booking.receipt.stated) {
            line.amount = stated - sum;
        }
    }
    bookings.retain(|booking| booking.id.is_some() || !booking.lines.is_empty());
    bookings
}

/// The same, the newest first; what was put in later comes first of a day, and what has no day comes last.
pub fn newest_first(bookings: &[Booking]) -> Vec<Booking> {
    let latest: Vec<Booking> = bookings.iter().rev().cloned().collect();
    order::by_key(&latest, |booking| u64::MAX - booking.receipt.on.map_or(0, day_key))
}

/// What the receipts say of an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct OnReceipts {
    /// What was paid for it.
    pub paid: Money,
    /// Whether that was all of it: some line does not say that more follows.
    pub is_all: bool,
}

/// What the receipts say of each item, in the order of the kit.
pub(crate) fn on_receipts(plan: &Plan, bookings: &[Booking]) -> Vec<Option<OnReceipts>> {
    let known = order::sorted(plan.kit.iter().map(|item| item.id.into()));
    let mut said = vec![None; plan.kit.len()];
    for line in bookings.iter().flat_map(|booking| &booking.receipt.lines) {
        let at = line.item.and_then(|item| order::find(&known, item.into())).and_then(|at| known.get(at));
        if let Some(said) = at.and_then(|(_, at)| said.get_mut(*at)) {
            let OnReceipts { paid, is_all } = said.unwrap_or(OnReceipts { paid: Money::ZERO, is_all: false });
            let is_all = is_all || !line.more_follows;
            *said = Some(OnReceipts { paid: paid + line.amount.rounded(plan.minor_digits()), is_all });
        }
    }
    said
}

/// Whether each item is paid as far as the plan knows, in the order of the kit: the person answered so, or there is a
/// receipt for all of it.
pub fn are_paid(plan: &Plan) -> Vec<bool> {
    let said = on_receipts(plan, &bookings(plan));
    let is_all = said.into_iter().map(|said| said.is_some_and(|said| said.is_all));
    plan.kit.iter().zip(is_all).map(|(item, is_all)| item.paid.is_some() || is_all).collect()
}

/// The items that are bought or made and not paid yet, in the order of the kit.
pub fn still_to_buy(plan: &Plan) -> Vec<&Item> {
    let items = plan.kit.iter().zip(are_paid(plan));
    items.filter(|(item, is_paid)| item.obtain.is_paid() && !is_paid).map(|(item, _)| item).collect()
}

/// What each item that is bought or made is planned to cost, where it has a price, in the order of the kit.
pub fn expected_prices(plan: &Plan) -> Vec<Expected> {
    let bought = plan.carried().filter(|item| item.obtain.is_paid());
    let expected = bought.map(|item| {
        let price = purchase_price(item, &plan.purse, plan.minor_digits())?.total;
        Some(Expected { item: item.id, price })
    });
    expected.flatten().collect()
}

/// The sales taxes of the plan, each once: the purse's, then those of items.
pub fn tax_percents(plan: &Plan) -> Vec<Decimal> {
    let mut percents = vec![plan.purse.tax_percent];
    for percent in plan.kit.iter().filter_map(|item| item.tax_percent) {
        if !percents.contains(&percent) {
            percents.push(percent);
        }
    }
    percents
}

/// What was paid beside what was planned, for each item for which anything was paid; last what is for none. What was
/// said to be paid for an item counts as far as it goes beyond its receipts.
pub fn paid_against_plan(plan: &Plan) -> Vec<ItemPaid> {
    let receipts: Vec<Receipt> = bookings(plan).into_iter().map(|booking| booking.receipt).collect();
    let expected = expected_prices(plan);
    let mut paid = paid_by_item(&receipts, &expected);
    for it in &mut paid {
        let outcome = it.item.and_then(|id| plan.item(id)).and_then(|item| item.paid);
        if let Some(outcome) = outcome.filter(|outcome| outcome.happened) {
            let price = || it.planned.filter(|_| it.paid == Money::ZERO);
            it.paid = it.paid.max(outcome.amount.or_else(price).unwrap_or(it.paid));
        }
    }
    paid.retain(|it| it.paid != Money::ZERO);
    paid
}

/// The change that puts receipts in, at the end of the lists; none when that is more than a plan holds
/// ([`MOST_ENTRIES`] receipts, and as many lines).
///
/// ```
/// use kerbstead_core::money::{Receipt, book, bookings};
/// use kerbstead_core::plan::{Money, Plan};
/// let mut plan = Plan::default();
/// let receipt = Receipt { stated: Some(Money::whole(12)), place: "Yard".into(), ..Receipt::default() };
/// let undo = book(&plan, &[receipt.clone()]).unwrap().apply(&mut plan).unwrap();
/// assert_eq!(bookings(&plan)[0].receipt, receipt);
/// undo.apply(&mut plan).unwrap();
/// assert_eq!(plan, Plan::default());
/// ```
pub fn book(plan: &Plan, receipts: &[Receipt]) -> Option<Edit> {
    let count = receipts.iter().map(|receipt| receipt.lines.len()).sum::<usize>();
    if plan.receipts.len() + receipts.len() > MOST_ENTRIES || plan.receipt_lines.len() + count > MOST_ENTRIES {
        return None;
    }
    let mut ids = plan.next_ids(receipts.len() + count).into_iter();
    let mut edits = Vec::new();
    for receipt in receipts {
        let id = ids.next()?;
        let entry = plan::Receipt { id, on: receipt.on, place: receipt.place.clone(), total: receipt.stated };
        edits.push(at_the_end(List::Receipts, &entry));
        for line in &receipt.lines {
            let entry = plan::ReceiptLine {
                id: ids.next()?,
                receipt: Some(id),
                name: line.name.clone(),
                amount: Some(line.amount),
                item: line.item,
                more_follows: line.more_follows,
            };
            edits.push(at_the_end(List::ReceiptLines, &entry));
        }
    }
    Some(Edit::All { edits })
}

/// A new receipt of that day, still empty, and the change that puts it in: with a line, which is all that its total will
/// say until there are others.
pub fn blank(plan: &Plan, on: Date) -> (Id, Edit) {
    let mut ids = plan.next_ids(2).into_iter();
    let mut next = || ids.next().unwrap_or_default();
    let entry = plan::Receipt { id: next(), on: Some(on), ..plan::Receipt::default() };
    let line = plan::ReceiptLine { id: next(), receipt: Some(entry.id), ..plan::ReceiptLine::default() };
    let edits = vec![at_the_end(List::Receipts, &entry), at_the_end(List::ReceiptLines, &line)];
    (entry.id, Edit::All { edits })
}

/// A new line of a receipt, still empty, and the change that puts it in.
pub fn blank_line(plan: &Plan, receipt: Id) -> (Id, Edit) {
    let line = plan::ReceiptLine { id: plan.next_id(), receipt: Some(receipt), ..plan::ReceiptLine::default() };
    (line.id, at_the_end(List::ReceiptLines, &line))
}

fn at_the_end(list: List, entry: &dyn Plain) -> Edit {
    Edit::Insert { list, at: usize::MAX, entry: entry.to_plain() }
}

/// The change that takes a receipt out with its lines; or, for none, the lines whose receipt is not there.
pub fn take_out(plan: &Plan, receipt: Option<Id>) -> Edit {
    let taken = bookings(plan).into_iter().find(|booking| booking.id == receipt).unwrap_or_default();
    let lines = taken.lines.into_iter().map(|id| Edit::Remove { list: List::ReceiptLines, id });
    let receipt = receipt.map(|id| Edit::Remove { list: List::Receipts, id });
    Edit::All { edits: lines.chain(receipt).collect() }
}

/// Which of those receipts seem to be in the plan already: one of the same day that comes to the same. Of two that are
/// alike, both are only if two are in the plan.
pub fn are_booked(plan: &Plan, receipts: &[Receipt]) -> Vec<bool> {
    let digits = plan.minor_digits();
    let key = |receipt: &Receipt| -> (Option<Date>, Money) { (receipt.on, receipt.paid().rounded(digits)) };
    let mut there: Vec<_> = bookings(plan).iter().map(|booking| key(&booking.receipt)).collect();
    let mut is_booked = |receipt: &Receipt| {
        let at = there.iter().position(|known| *known == key(receipt));
        at.map(|at| there.swap_remove(at)).is_some()
    };
    receipts.iter().map(&mut is_booked).collect()
}
