//! What the coverings of a plan take: areas, amounts, packs, and what is left over for the next of the same material.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::coverage::{by_rate, paint_m2, with_waste};
use super::offers::{Bought, ForNeed, PackOffer, Wanted, buy_in_turn, compare};
use crate::explain::Figure;
use crate::plan::{Covering, Id, Material, MaterialPack, Money, Plan, Quantity, Surface, decimal};
use crate::shop::Pack;
use crate::warmth::shell::{Kind, Sizes, lined_m2};

/// So many coverings may follow one another.
const LONGEST_CHAIN: usize = 50;
/// Millimetres by the metre, as digits.
const M_PER_MM_DIGITS: u32 = 3;

/// What a covering comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Covered {
    /// The covering.
    pub id: Id,
    /// The surface without openings, in m².
    pub area_m2: f64,
    /// What it takes with waste and all coats: in m² of one coat, or in units.
    pub needed: Option<Decimal>,
    /// What it is counted in, if in units; a length in metres.
    pub unit: Option<Quantity>,
    /// The covering whose packs it takes, where it is another.
    pub packs_of: Option<Id>,
    /// Its packs, for all that take of them together.
    pub packs: Vec<PackFor>,
    /// Which of them comes cheapest, what is left over counted.
    pub cheapest: Option<Id>,
    /// Which of them is cheapest by what is in it.
    pub cheapest_by_unit: Option<Id>,
    /// The pack that is bought.
    pub pack: Option<Id>,
    /// What is bought for it, after those before it of the same packs.
    pub bought: Option<Bought>,
}

impl Covered {
    /// An amount of what it takes, to be shown.
    pub fn figure(&self, amount: f64) -> Figure {
        match self.unit {
            Some(Quantity::LengthMm) => Figure::of(amount * 1_000.0, Quantity::LengthMm),
            unit => Figure::of(amount, unit.unwrap_or(Quantity::AreaM2)),
        }
    }

    /// The price of one of what it is counted in.
    pub fn each(&self, price: Money) -> Figure {
        match self.unit {
            Some(Quantity::LengthMm) => {
                Figure::Each { price: price.scaled(Decimal::new(1, M_PER_MM_DIGITS)), quantity: Quantity::LengthMm }
            }
            unit => Figure::Each { price, quantity: unit.unwrap_or(Quantity::AreaM2) },
        }
    }

    /// What it takes, and what is left over once it is bought, in its unit.
    pub fn amounts(&self) -> [Option<f64>; 2] {
        [self.needed, self.bought.map(|bought| bought.left_over)].map(|amount| amount.map(decimal::to_float))
    }
}

/// A pack beside the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PackFor {
    /// The pack.
    pub id: Id,
    /// What it comes to; nothing where its price or what is in it is not known, or cannot be held against the need.
    pub comes_to: Option<ForNeed>,
}

/// A surface of the van by its sizes without openings, or as it is stated, in m².
///
/// ```
/// use kerbstead_core::materials::surface_m2;
/// use kerbstead_core::plan::{Covering, Plan, Surface, Vehicle};
/// let vehicle = Vehicle { inside_length_mm: Some(3000.0), inside_width_mm: Some(1700.0), ..Vehicle::default() };
/// let plan = Plan { vehicle, ..Plan::default() };
/// let floor = Covering { surface: Surface::Floor, ..Covering::default() };
/// assert!((surface_m2(&plan, &floor) - 5.1).abs() < 1e-9);
/// ```
pub fn surface_m2(plan: &Plan, covering: &Covering) -> f64 {
    let of = |kinds: &[Kind]| {
        let sizes = Sizes::new(plan);
        kinds.iter().map(|kind| lined_m2(plan, &sizes, *kind)).sum::<f64>().max(0.0)
    };
    match covering.surface {
        Surface::Own => covering.own_m2.filter(|area| area.is_finite()).unwrap_or(0.0).max(0.0),
        Surface::Roof => of(&[Kind::Roof]),
        Surface::Sides => of(&[Kind::Sides]),
        Surface::RoofAndSides => of(&[Kind::Roof, Kind::Sides]),
        Surface::Doors => of(&[Kind::Doors]),
        Surface::Floor => of(&[Kind::Floor]),
    }
}

/// Whether something is a foam, which burns.
pub const fn needs_fire_care(material: Material) -> bool {
    matches!(material, Material::Xps | Material::Eps | Material::Pir | Material::SoftFoam)
}

/// What each covering of the plan comes to, in the plan's order.
pub fn covered(plan: &Plan) -> Vec<Covered> {
    let by_id: BTreeMap<Id, &Covering> = plan.coverings.iter().map(|covering| (covering.id, covering)).collect();
    let first_of = |covering: &Covering| first_of(&by_id, covering);
    let mut chains: BTreeMap<Id, Vec<&Covering>> = BTreeMap::new();
    for covering in &plan.coverings {
        chains.entry(first_of(covering)).or_default().push(covering);
    }
    let mut found: BTreeMap<Id, Covered> = BTreeMap::new();
    for (first, chain) in &chains {
        let Some(first) = by_id.get(first) else { continue };
        found.extend(of_chain(plan, first, chain).into_iter().map(|covered| (covered.id, covered)));
    }
    plan.coverings.iter().filter_map(|covering| found.remove(&covering.id)).collect()
}

/// The covering whose packs it takes; itself where that leads nowhere or round in a circle.
fn first_of(by_id: &BTreeMap<Id, &Covering>, covering: &Covering) -> Id {
    let mut at = covering;
    for _ in 0..LONGEST_CHAIN {
        match at.same_as.and_then(|id| by_id.get(&id)) {
            Some(next) => at = next,
            None => return at.id,
        }
    }
    covering.id
}

fn of_chain(plan: &Plan, first: &Covering, chain: &[&Covering]) -> Vec<Covered> {
    let packs: Vec<&MaterialPack> = plan.material_packs.iter().filter(|pack| pack.covering == Some(first.id)).collect();
    // What a unit is enough for is said of one kind of unit: the first that a pack is counted in.
    let unit = packs.iter().find_map(|pack| UNITS.iter().find(|(_, of)| of(pack).is_some()));
    let offers: Vec<Option<PackOffer>> =
        packs.iter().map(|pack| offer(plan, first, pack, unit.and_then(|(_, of)| of(pack)))).collect();
    let needs: Vec<Option<Decimal>> = chain.iter().map(|covering| needed(plan, first, covering)).collect();
    let all = needs.iter().try_fold(Decimal::ZERO, |sum, need| decimal::plus(sum, (*need)?));
    let of_use_percent = decimal::of_measure(first.rest_used_percent.unwrap_or(0.0));
    let digits = plan.minor_digits();
    // Packs of which something is not known stay out of the comparison.
    let known: Vec<(usize, PackOffer)> =
        offers.iter().enumerate().filter_map(|(at, offer)| Some((at, (*offer)?))).collect();
    let wanted = all.map(|amount| Wanted { amount, quantity: Quantity::AreaM2, of_use_percent });
    let only: Vec<PackOffer> = known.iter().map(|(_, offer)| *offer).collect();
    let compared = wanted.map(|wanted| compare(&only, wanted, digits)).unwrap_or_default();
    let id_of =
        |at: Option<usize>| at.and_then(|at| known.get(at)).and_then(|(at, _)| packs.get(*at)).map(|pack| pack.id);
    let comes_to = |at: usize| {
        let place = known.iter().position(|(known, _)| *known == at)?;
        compared.offers.get(place).copied().flatten()
    };
    let beside = packs.iter().enumerate().map(|(at, pack)| PackFor { id: pack.id, comes_to: comes_to(at) });
    let beside: Vec<PackFor> = beside.collect();
    let cheapest = id_of(compared.cheapest);
    let pack = first.from_pack.filter(|id| packs.iter().any(|pack| pack.id == *id)).or(cheapest);
    let at = packs.iter().position(|other| Some(other.id) == pack);
    let taken = at.and_then(|at| offers.get(at).copied().flatten());
    let whole: Option<Vec<Decimal>> = needs.iter().copied().collect();
    let bought = whole.zip(taken).and_then(|(needs, offer)| buy_in_turn(&needs, &offer, Decimal::ZERO, digits));
    let each = chain.iter().enumerate().map(|(at, covering)| {
        let is_first = covering.id == first.id;
        Covered {
            id: covering.id,
            area_m2: surface_m2(plan, covering),
            needed: needs.get(at).copied().flatten(),
            unit: first.each_m2_takes.map(|_| unit.map_or(Quantity::Count, |(quantity, _)| *quantity)),
            packs_of: (!is_first).then_some(first.id),
            packs: if is_first { beside.clone() } else { Vec::new() },
            cheapest,
            cheapest_by_unit: id_of(compared.cheapest_by_unit),
            pack,
            bought: bought.as_ref().and_then(|bought| bought.get(at).copied()),
        }
    });
    each.collect()
}

/// What a covering takes, in m² of one coat, or in units by what its first covering says of them.
fn needed(plan: &Plan, first: &Covering, covering: &Covering) -> Option<Decimal> {
    let area = decimal::of_measure(surface_m2(plan, covering));
    let with_waste = with_waste(area, decimal::of_measure(covering.waste_percent.unwrap_or(0.0)))?;
    let of_coats = paint_m2(with_waste, covering.coats.unwrap_or(1))?;
    match first.each_m2_takes {
        Some(takes) => by_rate(of_coats, decimal::of_measure(takes)),
        None => Some(of_coats),
    }
}

/// What of a unit is in a pack.
type InPack = fn(&MaterialPack) -> Option<Decimal>;

/// Litres, kilograms, metres, pieces.
const UNITS: [(Quantity, InPack); 4] = [
    (Quantity::VolumeL, |pack| pack.pack_l.map(decimal::of_measure)),
    (Quantity::MassKg, |pack| pack.pack_kg.map(decimal::of_measure)),
    (Quantity::LengthMm, |pack| decimal::times(decimal::of_measure(pack.pack_mm?), Decimal::new(1, M_PER_MM_DIGITS))),
    (Quantity::Count, |pack| pack.pack_pieces.map(Decimal::from)),
];

/// A pack as an offer, counted as the need is; `units` of what all packs of the covering are counted in are in it.
fn offer(plan: &Plan, covering: &Covering, pack: &MaterialPack, units: Option<Decimal>) -> Option<PackOffer> {
    let amount = amount(covering, pack, units).filter(|amount| *amount > Decimal::ZERO)?;
    Some(PackOffer {
        pack: Pack { amount, quantity: Quantity::AreaM2 },
        price: pack.pack_price?,
        tax_percent: pack.tax_percent.unwrap_or(plan.purse.tax_percent),
        includes_tax: plan.purse.prices_include_tax,
    })
}

fn amount(covering: &Covering, pack: &MaterialPack, units: Option<Decimal>) -> Option<Decimal> {
    let takes = covering.each_m2_takes.map(decimal::of_measure);
    if let Some(m2) = pack.pack_m2.map(decimal::of_measure) {
        return takes.map_or(Some(m2), |takes| decimal::times(m2, takes));
    }
    let units = units?;
    match (takes, covering.unit_covers_m2) {
        (Some(_), _) => Some(units),
        (None, Some(covers)) => decimal::times(units, decimal::of_measure(covers)),
        (None, None) => None,
    }
}
