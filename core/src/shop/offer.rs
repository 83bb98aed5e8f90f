//! What is typed of a thing on a shelf, read into an offer.

use rust_decimal::Decimal;

use super::pack::{Pack, read_pack};
use crate::money::{PriceParts, price_parts};
use crate::plan::{
    Edit, Field, Id, Item, Money, NumberMarks, Obtain, Path, Plan, Quantity, Scale, Wrong, decimal, field, typed_value,
};

/// A thing on a shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// It as it would stand in the kit; its price is that of one as it is marked on the shelf.
    pub item: Item,
    /// The thing of the kit it would be, if it is planned already.
    pub is_for: Option<Id>,
    /// Whether the marked price has the tax in it.
    pub includes_tax: bool,
    /// Sales tax on it.
    pub tax_percent: Decimal,
    /// How much is in one.
    pub pack: Option<Pack>,
    /// The marked price of another offer, and how much is in one there; taxed alike.
    pub other: Option<(Money, Pack)>,
}

/// The fields of an item that can be typed in the aisle, besides `pack`, `other_price`, `other_pack`, `tax` (`included`
/// or `added`) and `for` (the id of a thing of the kit).
pub const ITEM_FIELDS: [&str; 12] = [
    "unit_price",
    "quantity",
    "tax_percent",
    "group",
    "name",
    "mass_kg",
    "length_mm",
    "width_mm",
    "height_mm",
    "draw/power_w",
    "draw/hours_per_day",
    "water/litres_per_day",
];

/// What came of reading.
#[derive(Clone, Debug, PartialEq)]
pub struct OfferRead {
    /// The offer; none until there is a price.
    pub offer: Option<Offer>,
    /// What could not be read, by its field; it counts as not typed.
    pub wrong: Vec<(&'static str, Wrong)>,
}

/// Reads what is typed. `text` gives the text of a field by its name, empty where there is none; `scale` the unit
/// that bare numbers are in, as for [`typed_value`]. What is not typed is as in the kit, if the thing is of the kit.
pub fn read_offer(
    plan: &Plan,
    text: &dyn Fn(&str) -> String,
    marks: NumberMarks,
    scale: &dyn Fn(&Field) -> Scale,
) -> OfferRead {
    let mut wrong = Vec::new();
    let planned = text("for").parse().ok().and_then(|id| plan.item(id));
    let mut item = Item { id: 1, ..planned.cloned().unwrap_or_default() };
    if !item.obtain.is_paid() {
        item.obtain = Obtain::Bought;
    }
    let mut shelf = Plan { kit: vec![item], ..Plan::default() };
    for name in ITEM_FIELDS {
        let path = Path::entry("kit", 1).child(name);
        let Some(field) = field::at(&path) else { continue };
        match typed_value(field, &bare(&text(name), &plan.currency), marks, scale(field)) {
            Ok(value) if value.is_null() => {}
            // A value that was read is of its field's kind, so it can be set.
            Ok(value) => drop(Edit::Set { path, value }.apply(&mut shelf)),
            Err(why) => wrong.push((name, why)),
        }
    }
    let mut pack = |name: &'static str| match read_pack_if_any(&text(name), marks) {
        Ok(pack) => pack,
        Err(why) => {
            wrong.push((name, why));
            None
        }
    };
    let (pack, other_pack) = (pack("pack"), pack("other_pack"));
    let other_price = price(&text("other_price"), plan, marks).unwrap_or_else(|why| {
        wrong.push(("other_price", why));
        None
    });
    let item = shelf.kit.pop().unwrap_or_default();
    let includes_tax = match text("tax").as_str() {
        "included" => true,
        "added" => false,
        _ => plan.purse.prices_include_tax,
    };
    let offer = item.unit_price.is_some().then(|| Offer {
        is_for: planned.map(|planned| planned.id),
        includes_tax,
        tax_percent: item.tax_percent.unwrap_or(plan.purse.tax_percent),
        pack,
        other: other_price.zip(other_pack),
        item,
    });
    OfferRead { offer, wrong }
}

fn read_pack_if_any(text: &str, marks: NumberMarks) -> Result<Option<Pack>, Wrong> {
    if text.trim().is_empty() { Ok(None) } else { read_pack(text, marks).map(Some) }
}

fn price(text: &str, plan: &Plan, marks: NumberMarks) -> Result<Option<Money>, Wrong> {
    let Some(field) = field::at(&Path::entry("kit", 1).child("unit_price")) else { return Ok(None) };
    let value = typed_value(field, &bare(text, &plan.currency), marks, 1.0)?;
    Ok(value.as_str().and_then(|amount| amount.parse().ok()))
}

/// A text without the plan's currency code at its ends, as prices are pasted.
fn bare(text: &str, currency: &str) -> String {
    let text = text.trim();
    let text = text.strip_prefix(currency).filter(|_| !currency.is_empty()).unwrap_or(text);
    text.strip_suffix(currency).unwrap_or(text).trim().to_owned()
}

impl Offer {
    /// The price of one as marked.
    pub fn marked(&self) -> Money {
        self.item.unit_price.map_or(Money::ZERO, |price| price.likely())
    }

    /// What is to pay at the till for all of it.
    pub fn price(&self, digits: u32) -> PriceParts {
        price_parts(self.marked(), self.item.quantity, self.tax_percent, self.includes_tax, digits)
    }

    /// A marked price with the tax, unrounded.
    pub fn with_tax(&self, marked: Money) -> Money {
        if self.includes_tax { marked } else { marked + marked.percent(self.tax_percent) }
    }

    /// What it weighs in all, where that is known.
    pub fn mass_kg(&self) -> Option<f64> {
        let mass = self.item.mass_kg?.likely() * f64::from(self.item.quantity);
        sound(mass)
    }

    /// The room it takes in all as boxes, where that is known.
    pub fn volume_l(&self) -> Option<f64> {
        let Item { length_mm, width_mm, height_mm, quantity, .. } = self.item;
        let one_mm3 = length_mm? * width_mm? * height_mm?;
        sound(one_mm3 / super::constants::MM3_PER_LITRE * f64::from(quantity))
    }

    /// How much of it is bought, in the unit of its pack.
    pub fn bought(&self) -> Option<(Decimal, Quantity)> {
        let pack = self.pack?;
        Some((decimal::times(pack.amount, Decimal::from(self.item.quantity))?, pack.quantity))
    }
}

pub(super) fn sound(value: f64) -> Option<f64> {
    (value.is_finite() && value >= 0.0).then_some(value)
}
