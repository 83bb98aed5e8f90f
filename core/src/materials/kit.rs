//! What is bought, as entries of the kit.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::answer::Cuts;
use super::covered::Covered;
use super::lumber::{Species, mass};
use crate::plan::{Edit, Estimate, Group, Id, Item, List, Material, Nominal, Path, Plain, Plan, Stock, StockKind};
use crate::warmth::shell::usual;

/// No more of one thing are in an entry of the kit.
const MOST_OF_ONE: u32 = 1_000;
const MM3_PER_M3: f64 = 1e9;

/// Something to be bought, for an entry of the materials.
#[derive(Clone, Debug, PartialEq)]
pub struct ToBuy {
    /// The list of that entry.
    pub list: List,
    /// The entry.
    pub id: Id,
    /// How many are bought.
    pub count: u32,
    /// One of them, as an entry of the kit.
    pub item: Item,
    /// The entry of the kit that stands for it already.
    pub bought_as: Option<Id>,
}

/// The boards and sheets that are bought, and those of the kit that are not any more.
pub fn stock_to_buy(plan: &Plan, cuts: &Cuts) -> Vec<ToBuy> {
    let mut counts: BTreeMap<Id, u32> = BTreeMap::new();
    for one in cuts.jobs.iter().flat_map(|job| &job.ones) {
        let count = counts.entry(one.stock).or_default();
        *count = count.saturating_add(one.alike);
    }
    let bought = plan.stock.iter().filter(|stock| !stock.at_hand).map(|stock| ToBuy {
        list: List::Stock,
        id: stock.id,
        count: counts.get(&stock.id).copied().unwrap_or(0),
        item: stock_item(stock),
        bought_as: there(plan, stock.bought_as),
    });
    bought.filter(|bought| bought.count > 0 || bought.bought_as.is_some()).collect()
}

/// The packs that are bought for the coverings, each for all that take of it.
pub fn packs_to_buy(plan: &Plan, covered: &[Covered]) -> Vec<ToBuy> {
    let mut counts: BTreeMap<Id, u32> = BTreeMap::new();
    for covered in covered {
        let count = counts.entry(covered.packs_of.unwrap_or(covered.id)).or_default();
        *count = count.saturating_add(covered.bought.map_or(0, |bought| bought.packs));
    }
    let first = covered.iter().filter(|covered| covered.packs_of.is_none());
    let bought = first.filter_map(|covered| {
        let covering = plan.coverings.iter().find(|covering| covering.id == covered.id)?;
        let pack = plan.material_packs.iter().find(|pack| Some(pack.id) == covered.pack)?;
        let name = if pack.name.is_empty() { &covering.name } else { &pack.name };
        let item = Item {
            name: name.clone(),
            group: group(covering.material),
            unit_price: pack.pack_price.map(Estimate::Plain),
            tax_percent: pack.tax_percent,
            mass_kg: pack.one_kg.map(Estimate::Plain),
            length_mm: pack.length_mm,
            width_mm: pack.width_mm,
            height_mm: pack.height_mm,
            ..Item::default()
        };
        let count = counts.get(&covered.id).copied().unwrap_or(0);
        Some(ToBuy { list: List::Coverings, id: covered.id, count, item, bought_as: there(plan, covering.bought_as) })
    });
    bought.filter(|bought| bought.count > 0 || bought.bought_as.is_some()).collect()
}

/// The change that puts it all into the kit, so that it is paid, weighed and placed with everything else: new entries, and
/// those that are there already brought up to what is bought now. One change, so that one step takes it back.
///
/// ```
/// use kerbstead_core::materials::{covered, into_kit, packs_to_buy};
/// use kerbstead_core::plan::{Covering, MaterialPack, Money, Plan};
/// let wall = Covering { id: 1, own_m2: Some(5.0), ..Covering::default() };
/// let price = Some(Money::whole(20));
/// let pack = MaterialPack { id: 2, covering: Some(1), pack_m2: Some(2.0), pack_price: price, ..MaterialPack::default() };
/// let mut plan = Plan { coverings: vec![wall], material_packs: vec![pack], ..Plan::default() };
/// into_kit(&plan, &packs_to_buy(&plan, &covered(&plan))).apply(&mut plan).unwrap();
/// assert_eq!(plan.kit[0].quantity, 3);
/// ```
pub fn into_kit(plan: &Plan, bought: &[ToBuy]) -> Edit {
    let new = bought.iter().filter(|bought| bought.bought_as.is_none() && bought.count > 0);
    let ids = plan.next_ids(new.count());
    let mut ids = ids.into_iter();
    let mut edits = Vec::new();
    for bought in bought {
        let link = Path::entry(bought.list.name(), bought.id).child("bought_as");
        let item = counted(bought);
        match bought.bought_as {
            Some(id) if bought.count == 0 => {
                edits.extend([Edit::unset(link), Edit::Remove { list: List::Kit, id }]);
            }
            Some(id) => {
                let path = Path::entry(List::Kit.name(), id);
                edits.push(Edit::set(path.child("quantity"), item.quantity));
                edits.push(Edit::Set { path: path.child("unit_price"), value: item.unit_price.to_plain() });
            }
            None if bought.count == 0 => {}
            None => {
                let Some(id) = ids.next() else { continue };
                let entry = Item { id, ..item }.to_plain();
                edits.push(Edit::Insert { list: List::Kit, at: usize::MAX, entry });
                edits.push(Edit::set(link, id));
            }
        }
    }
    Edit::all(edits)
}

/// So many of it; what is more than an entry may have is one of all.
fn counted(bought: &ToBuy) -> Item {
    let (item, count) = (bought.item.clone(), bought.count);
    if count <= MOST_OF_ONE {
        return Item { quantity: count.max(1), ..item };
    }
    let unit_price = item.unit_price.map(|price| Estimate::Plain(price.likely().times(count)));
    let mass_kg = item.mass_kg.map(|mass| Estimate::Plain(mass.likely() * f64::from(count)));
    Item { quantity: 1, unit_price, mass_kg, ..item }
}

fn there(plan: &Plan, id: Option<Id>) -> Option<Id> {
    id.filter(|id| plan.item(*id).is_some())
}

fn stock_item(stock: &Stock) -> Item {
    let (thick_mm, width_mm) = stock.section_mm();
    Item {
        name: stock.name.clone(),
        group: group(stock.material),
        unit_price: stock.stock_price.map(Estimate::Plain),
        tax_percent: None::<Decimal>,
        mass_kg: stock_mass(stock),
        length_mm: stock.length_mm,
        width_mm,
        height_mm: thick_mm,
        ..Item::default()
    }
}

/// Mass of one: as it is said, by its nominal size, or by its volume and what is usual for its material.
fn stock_mass(stock: &Stock) -> Option<Estimate<f64>> {
    if let Some(kg) = stock.one_kg {
        return Some(Estimate::Plain(kg));
    }
    let length_mm = stock.length_mm?;
    let is_softwood = stock.stock_kind == StockKind::Board && stock.material == Material::Timber;
    let word = stock.nominal.as_ref().map(Nominal::to_plain);
    let range =
        word.filter(|_| is_softwood).and_then(|word| mass(Species::SprucePineFir, word.as_str()?, length_mm, 1));
    if let Some(range) = range {
        return Some(Estimate::Range { low: range.low_kg, likely: range.likely_kg, high: range.high_kg });
    }
    let (thick_mm, width_mm) = stock.section_mm();
    let [_, _, density] = usual(stock.material);
    let kg = length_mm * thick_mm? * width_mm? / MM3_PER_M3 * density;
    (kg.is_finite() && kg >= 0.0).then_some(Estimate::Plain(kg))
}

const fn group(material: Material) -> Group {
    match material {
        Material::Plywood | Material::Timber | Material::Carpet | Material::Other => Group::Structure,
        _ => Group::Warmth,
    }
}
