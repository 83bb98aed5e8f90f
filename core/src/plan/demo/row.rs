//! An item of the kit in one row.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::about;
use crate::plan::{
    Draw, DrawDays, Estimate, Group, Item, ItemWater, Money, Need, Obtain, Outlet, Sale, Store, Tank, TankKind,
};

/// An item being written down.
pub(super) struct Row(pub(super) Box<Item>);

fn row(name: &str, group: Group, need: Need, obtain: Obtain) -> Row {
    Row(Box::new(Item { name: name.to_owned(), group, need, obtain, ..Item::default() }))
}

/// There already.
pub(super) fn owned(name: &str, group: Group, need: Need) -> Row {
    row(name, group, need, Obtain::Owned)
}

/// Lent by somebody.
pub(super) fn lent(name: &str, group: Group, need: Need, lender: &str) -> Row {
    let mut row = row(name, group, need, Obtain::Borrowed);
    lender.clone_into(&mut row.0.lender);
    row
}

/// To be paid for, in whole euros each.
pub(super) fn bought(name: &str, group: Group, need: Need, euros: i64) -> Row {
    row(name, group, need, Obtain::Bought).price(Money::whole(euros).into())
}

/// To be made from materials of that price, in whole euros.
pub(super) fn made(name: &str, group: Group, need: Need, euros: i64) -> Row {
    row(name, group, need, Obtain::Made).price(Money::whole(euros).into())
}

/// Thought of and given up again; it would have cost so many whole euros.
pub(super) fn left_out(name: &str, group: Group, need: Need, euros: i64) -> Row {
    row(name, group, need, Obtain::LeftOut).price(Money::whole(euros).into())
}

impl Row {
    fn price(mut self, price: Estimate<Money>) -> Self {
        self.0.unit_price = Some(price);
        self
    }

    /// The price is not sure yet: low, likely and high, in whole euros.
    pub(super) fn price_about(self, low: i64, likely: i64, high: i64) -> Self {
        self.price(about(Money::whole(low), Money::whole(likely), Money::whole(high)))
    }

    /// Bought from somebody who charges no tax.
    pub(super) fn untaxed(mut self) -> Self {
        self.0.tax_percent = Some(Decimal::ZERO);
        self
    }

    /// Needed, and paid, on that day rather than on the day of leaving.
    pub(super) fn by(mut self, on: Date) -> Self {
        self.0.needed_on = Some(on);
        self
    }

    /// So many of them.
    pub(super) fn times(mut self, quantity: u32) -> Self {
        self.0.quantity = quantity;
        self
    }

    /// Weighed.
    pub(super) fn kg(mut self, mass: f64) -> Self {
        self.0.mass_kg = Some(mass.into());
        self
    }

    /// Not weighed yet: low, likely and high.
    pub(super) fn kg_about(mut self, low: f64, likely: f64, high: f64) -> Self {
        self.0.mass_kg = Some(about(low, likely, high));
        self
    }

    /// Length, width and height as it travels.
    pub(super) fn mm(mut self, length: f64, width: f64, height: f64) -> Self {
        (self.0.length_mm, self.0.width_mm, self.0.height_mm) = (Some(length), Some(width), Some(height));
        self
    }

    /// What it draws.
    pub(super) fn draws(mut self, draw: Draw) -> Self {
        self.0.draw = Some(draw);
        self
    }

    /// Fresh water it uses, and how much of it is to be kept as used water.
    pub(super) fn uses(mut self, litres_per_day: f64, to_grey_percent: f64) -> Self {
        self.0.water = Some(ItemWater { litres_per_day: litres_per_day.into(), to_grey_percent });
        self
    }

    /// What it stores.
    pub(super) fn stores(mut self, store: Store) -> Self {
        self.0.store = Some(store);
        self
    }

    /// Litres it holds.
    pub(super) fn holds(mut self, holds: TankKind, capacity_l: f64) -> Self {
        self.0.tank = Some(Tank { holds, capacity_l, opening_percent: None });
        self
    }

    /// To be sold again for low, likely and high, in whole euros.
    pub(super) fn resold(mut self, low: i64, likely: i64, high: i64, on: Date) -> Self {
        let price = about(Money::whole(low), Money::whole(likely), Money::whole(high));
        self.0.sale = Some(Sale { price: Some(price), on: Some(on), outcome: None });
        self
    }

    /// Something worth remembering.
    pub(super) fn note(mut self, note: &str) -> Self {
        note.clone_into(&mut self.0.note);
        self
    }
}

/// A draw of one from that outlet, so many hours a day from an hour on.
pub(super) fn draw(power_w: f64, outlet: Outlet, hours_per_day: f64, from_hour: f64) -> Draw {
    Draw {
        power_w: power_w.into(),
        outlet,
        hours_per_day: Some(hours_per_day.into()),
        from_hour: Some(from_hour),
        ..Draw::default()
    }
}

/// A draw that switches itself on and off all day, running between `low` and `high` percent of the time.
pub(super) fn cycling(power_w: f64, surge_w: f64, low: f64, likely: f64, high: f64) -> Draw {
    Draw {
        power_w: power_w.into(),
        outlet: Outlet::Dc,
        surge_w: Some(surge_w),
        duty_percent: Some(about(low, likely, high)),
        ..Draw::default()
    }
}

/// The same draw on those days only.
pub(super) fn only(days: DrawDays, draw: Draw) -> Draw {
    Draw { days, ..draw }
}
