//! What the load takes of the plan: masses at their places, made sound.

use super::constants::{DIESEL_KG_PER_L, MOST_KG, PETROL_KG_PER_L, TANK_AT_WHEELBASE};
use super::step::{LoadDay, Weight, is_length};
use crate::plan::{Fuel, Item, Path, Plan, TankKind, Vehicle};
use crate::space::Placed;
use crate::space::constants::MOST_MM;
use crate::space::geometry::Point;
use crate::water::Aboard;
use crate::water::constants::DENSITY_KG_PER_L;

/// The load side of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Input {
    /// The van without people and fuel.
    pub empty: Weight,
    /// Everybody who travels.
    pub people: Weight,
    /// A full fuel tank. Nothing when it is not known what the tank holds; then the fuel is in the empty mass, as it was
    /// weighed.
    pub fuel: Weight,
    /// The kit, likely.
    pub things: Weight,
    /// The kit, at its least.
    pub things_low_kg: f64,
    /// The kit, at its most.
    pub things_high_kg: f64,
    /// A litre of fresh water, spread over the cans in proportion to what they hold.
    pub fresh_litre: Weight,
    /// A litre of used water, the same.
    pub grey_litre: Weight,
    /// A litre of what is in toilets, spread over them.
    pub toilet_litre: Weight,
    /// Items whose mass is not stated.
    pub unknown_mass: usize,
    /// What of the kit has no place, without water: it is counted in the middle of the floor.
    pub unplaced_kg: f64,
    /// From axle to axle, when what the axles bear can be worked out.
    pub wheelbase_mm: Option<f64>,
    /// From the left wheels to the right ones, where it is known.
    pub track_mm: Option<f64>,
    /// What is missing for the axles.
    pub missing_for_axles: Vec<Path>,
}

/// Water in cans that are being counted: what they hold, and where.
#[derive(Default)]
struct Cans {
    litres: f64,
    held: Weight,
}

impl Input {
    /// The load side of the plan, with its things where they are placed.
    pub fn new(plan: &Plan, placed: &Placed) -> Self {
        let vehicle = &plan.vehicle;
        let missing_for_axles = missing_for_axles(vehicle);
        let wheelbase_mm = vehicle.wheelbase_mm.filter(|_| missing_for_axles.is_empty());
        let track_mm = vehicle.track_mm.filter(|track| is_length(*track));
        let tank_mm = wheelbase_mm.map_or(0.0, |base| base * TANK_AT_WHEELBASE);
        let people_kg = f64::from(plan.people) * sound(vehicle.person_kg());
        let mut input = Self {
            empty: empty(vehicle, wheelbase_mm, track_mm),
            people: Weight::at(people_kg.min(MOST_KG), place(vehicle.seats_from_axle_mm()), 0.0),
            fuel: Weight::at(full_tank_kg(vehicle), tank_mm, 0.0),
            wheelbase_mm,
            track_mm,
            missing_for_axles,
            ..Self::default()
        };
        input.add_things(plan, placed);
        input
    }

    fn add_things(&mut self, plan: &Plan, placed: &Placed) {
        let (mut fresh, mut grey, mut toilets) = (Cans::default(), Cans::default(), Cans::default());
        for thing in things(plan, placed) {
            let item = thing.item;
            let count = f64::from(item.kept());
            let one = item.mass_kg.map_or(0.0, |mass| sound(mass.likely()));
            let [low, high] = item.mass_kg.map_or([0.0; 2], |mass| [sound(mass.low()), sound(mass.high())]);
            self.unknown_mass += usize::from(item.mass_kg.is_none());
            self.things = self.things.plus(thing.each(one));
            self.things_low_kg += low.min(one) * count;
            self.things_high_kg += high.max(one) * count;
            self.unplaced_kg += one * thing.unplaced;
            if let Some(tank) = item.tank {
                let cans = if tank.holds == TankKind::Fresh { &mut fresh } else { &mut grey };
                cans.add(&thing, sound(tank.capacity_l), count);
            }
            if item.toilet.is_some() {
                toilets.add(&thing, 1.0, count);
            }
        }
        self.fresh_litre = fresh.litre();
        self.grey_litre = grey.litre();
        self.toilet_litre = toilets.litre();
    }

    /// The van with everything, and so much water.
    pub fn weight(&self, aboard: Aboard) -> Weight {
        self.without_water().plus(self.water(aboard))
    }

    /// So much water in the cans, and in the toilets.
    pub fn water(&self, aboard: Aboard) -> Weight {
        let water = self.fresh_litre.times(sound(aboard.fresh_l)).plus(self.grey_litre.times(sound(aboard.grey_l)));
        water.plus(self.toilet_litre.times(sound(aboard.toilet_l)))
    }

    /// One day with so much water.
    pub fn day(&self, on: Option<jiff::civil::Date>, aboard: Aboard) -> LoadDay {
        let weight = self.weight(aboard);
        let axles = self.wheelbase_mm.and_then(|base| weight.axles_kg(base));
        let sides = self.track_mm.and_then(|track| weight.sides_kg(track));
        LoadDay {
            on,
            total_kg: weight.kg,
            water_kg: self.water(aboard).kg,
            front_kg: axles.map(|(front, _)| front),
            rear_kg: axles.map(|(_, rear)| rear),
            left_kg: sides.map(|(left, _)| left),
            right_kg: sides.map(|(_, right)| right),
        }
    }

    fn without_water(&self) -> Weight {
        self.empty.plus(self.people).plus(self.fuel).plus(self.things)
    }
}

impl Cans {
    /// So many cans of so many litres each, where they are.
    fn add(&mut self, thing: &Thing, litres: f64, count: f64) {
        self.litres += litres * count;
        self.held = self.held.plus(thing.each(litres * DENSITY_KG_PER_L));
    }

    fn litre(&self) -> Weight {
        // Less than a millilitre is no can.
        if self.litres > 0.001 { self.held.times(1.0 / self.litres) } else { Weight::default() }
    }
}

/// Where things act, measured from the front axle and from the middle.
struct Middles<'a> {
    placed: &'a Placed,
    floor_from_axle_mm: f64,
    middle: Point,
}

/// An item of the kit where its pieces act.
pub(crate) struct Thing<'a> {
    /// The item.
    pub item: &'a Item,
    /// The sum of the places of its pieces, for one kilogram each.
    all: Weight,
    /// Pieces without a place.
    unplaced: f64,
}

/// What is carried, in the order of the kit.
pub(crate) fn things<'a>(plan: &'a Plan, placed: &Placed) -> Vec<Thing<'a>> {
    let middles = Middles::new(plan, placed);
    plan.kept().map(|item| middles.of(item)).collect()
}

impl<'p> Middles<'p> {
    fn new(plan: &Plan, placed: &'p Placed) -> Self {
        let floor_from_axle_mm = plan.vehicle.floor_from_axle_mm.map_or(0.0, place);
        let middle = placed.layout.shape.floor_solid().middle().unwrap_or_default();
        Self { placed, floor_from_axle_mm, middle }
    }

    fn weight(&self, kg: f64, at: Point) -> Weight {
        Weight::at(kg, self.floor_from_axle_mm + at.x, at.y - self.middle.y)
    }

    /// An item's placements take one piece each; the others are in the middle of the floor.
    fn of<'a>(&self, item: &'a Item) -> Thing<'a> {
        let kept = item.kept();
        let boxes = self.placed.things.iter().zip(&self.placed.layout.items);
        let own = boxes.filter(|(thing, _)| thing.item == item.id).take(usize::try_from(kept).unwrap_or(usize::MAX));
        let (mut all, mut unplaced) = (Weight::default(), f64::from(kept));
        for (_, standing) in own {
            let at = standing.solid().middle().unwrap_or(self.middle);
            all = all.plus(self.weight(1.0, at));
            unplaced -= 1.0;
        }
        Thing { item, all: all.plus(self.weight(unplaced, self.middle)), unplaced }
    }
}

impl Thing<'_> {
    /// All pieces, when each weighs so much.
    pub fn each(&self, kg: f64) -> Weight {
        self.all.times(kg)
    }
}

/// The van without the people and the fuel that were in it when its mass was taken. Without its axles, its moments along
/// it mean nothing, and nobody asks for them.
fn empty(vehicle: &Vehicle, wheelbase_mm: Option<f64>, track_mm: Option<f64>) -> Weight {
    let stated = sound(vehicle.empty_mass_kg.unwrap_or(0.0));
    let front = sound(vehicle.empty_front_kg.unwrap_or(0.0)).min(stated);
    let left = vehicle.empty_left_kg.map_or(stated / 2.0, sound).min(stated);
    let (base, track) = (wheelbase_mm.unwrap_or(0.0), track_mm.unwrap_or(0.0));
    let people = (f64::from(vehicle.weighed_people.unwrap_or(0)) * sound(vehicle.person_kg())).min(stated);
    let filled = sound(vehicle.weighed_fuel_percent()).min(100.0) / 100.0;
    let fuel = (full_tank_kg(vehicle) * filled).min(stated - people);
    Weight { kg: stated, behind_kg_mm: (stated - front) * base, right_kg_mm: (stated / 2.0 - left) * track }
        .plus(Weight::at(-people, place(vehicle.seats_from_axle_mm()), 0.0))
        .plus(Weight::at(-fuel, base * TANK_AT_WHEELBASE, 0.0))
}

/// Mass of a full fuel tank; nothing when it is not known what it holds.
pub fn full_tank_kg(vehicle: &Vehicle) -> f64 {
    let density = match vehicle.burns.unwrap_or_default() {
        Fuel::Diesel => DIESEL_KG_PER_L,
        Fuel::Petrol => PETROL_KG_PER_L,
    };
    vehicle.tank_l.map_or(0.0, |litres| sound(litres) * density)
}

fn missing_for_axles(vehicle: &Vehicle) -> Vec<Path> {
    let known = [
        ("wheelbase_mm", vehicle.wheelbase_mm.is_some_and(is_length)),
        ("floor_from_axle_mm", vehicle.floor_from_axle_mm.is_some_and(f64::is_finite)),
        ("empty_front_kg", vehicle.empty_front_kg.is_some_and(|front| front > 0.0)),
    ];
    let missing = known.iter().filter(|(_, is_known)| !is_known);
    missing.map(|(field, _)| Path::section("vehicle").child(field)).collect()
}

/// A mass, or litres: no less than nothing, and no more than can be believed.
pub(crate) fn sound(kg: f64) -> f64 {
    if kg > 0.0 { kg.min(MOST_KG) } else { 0.0 }
}

/// A place along the van that can be reckoned with.
fn place(mm: f64) -> f64 {
    let most = f64::from(MOST_MM);
    if mm.is_nan() { 0.0 } else { mm.clamp(-most, most) }
}
