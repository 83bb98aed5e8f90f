//! What of the kit not all plans have.

use crate::money::purchase_price;
use crate::order;
use crate::plan::record::record;
use crate::plan::{Group, Item, Money, Obtain, Plan};

/// A thing of the kit that not all plans have, or of which they have not as many.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct KitRow {
    /// What it is called in the first plan that has it.
    pub name: String,
    /// The heading that it is under there.
    pub group: Group,
    /// What each plan has of it.
    pub had: Vec<Had>,
}

record!(KitRow { name, group, had });

/// What a plan has of a thing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Had {
    /// How many are kept; 0 where the plan has none, or leaves it out.
    pub quantity: u32,
    /// What buying all of it costs, tax and delivery included; none where it is not bought, or has no price.
    pub price: Option<Money>,
}

record!(Had { quantity, price });

/// An item with what it is called, for comparing.
struct Named<'a> {
    item: &'a Item,
    called: String,
}

/// A thing as each plan has it.
type Thing<'a> = Vec<Option<&'a Named<'a>>>;

/// The things that not all have as many of, in the order of the plans and their kits.
///
/// Plans that stem from one another have things of the same ids; what has no counterpart by its id, and things of other
/// plans, are the same when they are called the same under the same heading.
pub(super) fn only(plans: &[Plan]) -> Vec<KitRow> {
    let kits: Vec<Vec<Named>> = plans.iter().map(named).collect();
    let mut things: Vec<Thing> = Vec::new();
    for (at, kit) in kits.iter().enumerate() {
        let is_kin: Vec<bool> = kits.iter().take(at).map(|earlier| are_kin(earlier, kit)).collect();
        let is_same =
            |which: usize, one: &Named, other: &Named| is_kin.get(which) == Some(&true) && one.item.id == other.item.id;
        let mut left: Vec<&Named> = kit.iter().collect();
        left.retain(|named| !join(&mut things, at, named, &is_same));
        left.retain(|named| !join(&mut things, at, named, &|_, one, other| is_called_alike(one, other)));
        for named in left {
            let mut thing = vec![None; plans.len()];
            thing[at] = Some(named);
            things.push(thing);
        }
    }
    let rows = things.iter().filter_map(|thing| row(plans, thing));
    rows.filter(|row| row.had.windows(2).any(|pair| pair[0].quantity != pair[1].quantity)).collect()
}

fn named(plan: &Plan) -> Vec<Named<'_>> {
    plan.kit.iter().map(|item| Named { item, called: item.name.trim().to_lowercase() }).collect()
}

/// Puts an item with a thing that is the same, if there is one that this plan has not yet.
fn join<'a>(
    things: &mut [Thing<'a>],
    at: usize,
    named: &'a Named<'a>,
    is_same: &dyn Fn(usize, &Named, &Named) -> bool,
) -> bool {
    let same = things.iter_mut().find(|thing| {
        let mut had = thing.iter().enumerate();
        thing[at].is_none() && had.any(|(which, other)| other.is_some_and(|other| is_same(which, other, named)))
    });
    same.map(|thing| thing[at] = Some(named)).is_some()
}

/// Whether one kit was made from the other: of the ids that both have, at least half are of things called alike.
fn are_kin(one: &[Named], other: &[Named]) -> bool {
    let known = order::sorted(other.iter().map(|named| named.item.id.into()));
    let (mut alike, mut all) = (0, 0);
    for named in one {
        let Some(other) = order::find(&known, named.item.id.into()).and_then(|at| other.get(known.get(at)?.1)) else {
            continue;
        };
        all += 1;
        alike += usize::from(is_called_alike(named, other));
    }
    all > 0 && alike * 2 >= all
}

fn is_called_alike(one: &Named, other: &Named) -> bool {
    one.item.group == other.item.group && one.called == other.called
}

fn row(plans: &[Plan], thing: &Thing) -> Option<KitRow> {
    let first = thing.iter().flatten().map(|named| named.item).find(|item| item.obtain != Obtain::LeftOut)?;
    let had = plans.iter().zip(thing).map(|(plan, named)| named.map_or(Had::default(), |named| had(plan, named.item)));
    Some(KitRow { name: first.name.clone(), group: first.group, had: had.collect() })
}

fn had(plan: &Plan, item: &Item) -> Had {
    if item.obtain == Obtain::LeftOut {
        return Had::default();
    }
    let price = purchase_price(item, &plan.purse, plan.minor_digits()).filter(|_| item.obtain.is_paid());
    Had { quantity: item.kept(), price: price.map(|price| price.total) }
}
