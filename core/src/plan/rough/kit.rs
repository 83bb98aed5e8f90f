//! A small usual kit: what one sleeps on, cooks with, drinks from and sees by, and what keeps one alive.

use crate::plan::Obtain::{Bought, Made, Owned};
use crate::plan::starter::{STARTERS, starter_item};
use crate::plan::{Item, Obtain};

/// The kit for so many people. What nearly everybody has at home is not bought; common practice, no source.
pub(super) fn items(people: u32, currency: &str, name: &dyn Fn(&str) -> String) -> Vec<Item> {
    let half = people.div_ceil(2);
    let mattress = if people == 1 { "mattress-single" } else { "mattress-double" };
    let rows: [(&str, Obtain, u32); 22] = [
        ("bed-platform", Made, half),
        (mattress, Owned, half),
        ("quilt", Owned, people),
        ("pillow", Owned, people),
        ("gas-stove", Bought, 1),
        ("gas-cartridge", Bought, 2 * people),
        ("pots", Owned, 1),
        ("dishes", Owned, 1),
        ("store-medium", Bought, 1),
        ("vehicle-lead", Bought, 1),
        ("phone", Owned, people),
        ("lamp", Bought, 1),
        ("can-15", Bought, 2 * people),
        ("grey-can-10", Bought, people),
        ("bucket-toilet", Bought, 1),
        ("wash-bag", Owned, people),
        ("window-covers", Made, 1),
        ("carbon-monoxide-alarm", Bought, 1),
        ("smoke-alarm", Bought, 1),
        ("fire-extinguisher", Bought, 1),
        ("first-aid-kit", Owned, 1),
        ("clothes-bag", Owned, people),
    ];
    rows.into_iter().filter_map(|(key, obtain, quantity)| item(key, obtain, quantity, currency, name)).collect()
}

fn item(key: &str, obtain: Obtain, quantity: u32, currency: &str, name: &dyn Fn(&str) -> String) -> Option<Item> {
    let starter = STARTERS.iter().find(|starter| starter.key == key)?;
    let (item, _) = starter_item(starter, 0, name(starter.name_key), currency);
    // What is there already has no price to be paid.
    let unit_price = item.unit_price.filter(|_| obtain.is_paid());
    Some(Item { obtain, quantity, unit_price, ..item })
}
