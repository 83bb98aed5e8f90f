//! What the water balance takes: cans, tanks and toilets together, the uses, and where one can fill up and empty.

use jiff::civil::Date;

use super::constants::{FAECES_L, USUAL_WASTE_L};
use super::course::{Level, Rooms};
use super::needs::heat_factor;
use super::tanks::{Day as Place, Use as Asks, milli};
use super::toilet::{Way, each_day, person_days};
use crate::energy::sound as within_most;
use crate::plan::{
    Effort, Estimate, Id, Item, Per, Plan, Reading, TankKind, Toilet, ToiletWay, Treated, WaterStop, WaterUse,
};
use crate::run::Day;

/// The water side of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Input {
    /// What all fresh cans hold.
    pub fresh_capacity_l: f64,
    /// What is in them on the day of leaving.
    pub fresh_opening_l: f64,
    /// What all grey tanks hold.
    pub grey_capacity_l: f64,
    /// What is in them on the day of leaving.
    pub grey_opening_l: f64,
    /// For how many person-days all toilets of the kit have room, likely.
    pub toilet_person_days: f64,
    /// What a person-day leaves in them, in l.
    pub toilet_l_per_person_day: f64,
    /// Fresh water used on an average day in temperate air.
    pub use_l_per_day: f64,
    /// Of it, what ends as used water to be kept.
    pub grey_l_per_day: f64,
    /// Whether any use is stated.
    pub has_uses: bool,
    /// How many go to the toilet.
    pub people: u32,
    /// What all vessels hold.
    pub(crate) rooms: Rooms,
    opening: Level,
    /// What the uses ask for.
    pub(crate) wants: Wants,
    /// Of it, what is boiled before.
    pub(super) boiled: Wants,
    /// Of it, what goes through a filter.
    pub(super) filtered: Wants,
    /// Stops in use, each with the day from which it counts.
    stops: Vec<(WaterStop, Date)>,
}

/// A use of fresh water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Use {
    /// The use, or the item that uses it.
    pub id: Id,
    /// Whether it is an item.
    pub is_item: bool,
    /// Litres each time, of each person or of all.
    pub litres: Estimate<f64>,
    /// How many times a day, over all persons.
    pub times: f64,
    /// What of it ends as used water, in percent.
    to_grey_percent: f64,
    /// Hours of work a day and how hard they are, if it is drunk.
    drunk: Option<(f64, Effort)>,
    treated: Option<Treated>,
}

/// All uses of a plan: those of its items, then the others.
pub(crate) fn uses(plan: &Plan) -> Vec<Use> {
    let of_items = plan.carried().filter_map(|item| {
        let water = item.water?;
        let (litres, to_grey_percent) = (water.litres_per_day, water.to_grey_percent);
        Some(Use { id: item.id, is_item: true, litres, times: 1.0, to_grey_percent, drunk: None, treated: None })
    });
    let others = plan.water_uses.iter().map(|water_use| Use {
        id: water_use.id,
        is_item: false,
        litres: water_use.litres_per_day,
        times: times_a_day(water_use) * persons(plan, water_use),
        to_grey_percent: water_use.to_grey_percent,
        drunk: water_use
            .is_drunk
            .then(|| (water_use.exertion_hours.map_or(0.0, sound), water_use.effort.unwrap_or_default())),
        treated: water_use.treated,
    });
    of_items.chain(others).collect()
}

/// How often a use comes on an average day.
fn times_a_day(water_use: &WaterUse) -> f64 {
    water_use.times_per_week.map_or(1.0, |times| sound(times) / 7.0)
}

fn persons(plan: &Plan, water_use: &WaterUse) -> f64 {
    if water_use.per == Per::Person { f64::from(plan.people) } else { 1.0 }
}

/// What uses ask for on a day: what is drunk grows with its heat.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Wants {
    steady: Litres,
    drunk: Vec<(Litres, f64, Effort)>,
}

/// Fresh water, and what of it becomes used water.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Litres {
    pub fresh_l: f64,
    pub grey_l: f64,
}

impl Litres {
    fn plus(self, other: Self, times: f64) -> Self {
        Self { fresh_l: self.fresh_l + other.fresh_l * times, grey_l: self.grey_l + other.grey_l * times }
    }
}

impl Wants {
    /// What uses ask for when each takes so many litres each time: asked with its position.
    pub fn of(uses: &[Use], litres: &mut dyn FnMut(usize, &Use) -> f64) -> Self {
        let mut wants = Self::default();
        for (at, one) in uses.iter().enumerate() {
            let fresh_l = sound(litres(at, one)) * one.times;
            let litres = Litres { fresh_l, grey_l: fresh_l * sound(one.to_grey_percent).min(100.0) / 100.0 };
            match one.drunk {
                Some((hours, effort)) => wants.drunk.push((litres, hours, effort)),
                None => wants.steady = wants.steady.plus(litres, 1.0),
            }
        }
        wants
    }

    fn likely(uses: &[Use], treated: Option<Treated>) -> Self {
        let counts = |one: &Use| treated.is_none() || one.treated == treated;
        Self::of(uses, &mut |_, one| if counts(one) { one.litres.likely() } else { 0.0 })
    }

    /// At rest in temperate air.
    pub fn at_rest(&self) -> Litres {
        self.drunk.iter().fold(self.steady, |sum, (litres, ..)| sum.plus(*litres, 1.0))
    }

    /// On a day whose air gets so warm; temperate when that is not known.
    pub fn on(&self, high_c: Option<f64>) -> Litres {
        let of_drunk = |sum: Litres, (litres, hours, effort): &(Litres, f64, Effort)| {
            sum.plus(*litres, heat_factor(high_c, *hours, *effort))
        };
        self.drunk.iter().fold(self.steady, of_drunk)
    }
}

/// Counts what is asked for in whole millilitres, day after day, so that what is rounded on one day is made up for on the next.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Meter(Litres);

impl Meter {
    /// The next day's.
    pub fn next(&mut self, wants: Litres, person_days: f64) -> Asks {
        let owed = self.0.plus(wants, 1.0);
        let (fresh_ml, grey_ml) = (milli(owed.fresh_l), milli(owed.grey_l));
        // What is too much to be counted is not owed.
        let rest = |owed: f64, ml: u64| (owed - ml as f64 / 1_000.0).clamp(-0.001, 0.001);
        self.0 = Litres { fresh_l: rest(owed.fresh_l, fresh_ml), grey_l: rest(owed.grey_l, grey_ml) };
        Asks { fresh_ml, grey_ml, toilet: milli(person_days) }
    }
}

impl Input {
    /// The water side of the plan.
    pub fn new(plan: &Plan) -> Self {
        let mut sums = Sums::default();
        plan.carried().for_each(|item| sums.add(item));
        let uses = uses(plan);
        let wants = Wants::likely(&uses, None);
        let usual = wants.on(None);
        let holds = Level { fresh: milli(sums.fresh_l), grey: milli(sums.grey_l), toilet: milli(sums.person_days) };
        let opening = Level {
            fresh: milli(sums.fresh_opening_l).min(holds.fresh),
            grey: milli(sums.grey_opening_l).min(holds.grey),
            toilet: 0,
        };
        Self {
            fresh_capacity_l: units(holds.fresh),
            fresh_opening_l: units(opening.fresh),
            grey_capacity_l: units(holds.grey),
            grey_opening_l: units(opening.grey),
            toilet_person_days: units(holds.toilet),
            toilet_l_per_person_day: if sums.person_days > 0.0 { sums.waste_l / sums.person_days } else { 0.0 },
            use_l_per_day: sound(usual.fresh_l),
            grey_l_per_day: sound(usual.grey_l),
            has_uses: !uses.is_empty(),
            people: plan.people,
            rooms: Rooms { holds, has_grey: holds.grey > 0, has_toilet: holds.toilet > 0 },
            opening,
            boiled: Wants::likely(&uses, Some(Treated::Boiled)),
            filtered: Wants::likely(&uses, Some(Treated::Filtered)),
            wants,
            stops: plan.water_stops_in_use().map(|(stop, from)| (stop.clone(), from)).collect(),
        }
    }

    /// What is on board on the day of leaving.
    pub fn opening(&self) -> Level {
        self.opening
    }

    /// What a day on the road asks for, and what its place offers.
    pub(crate) fn place(&self, day: &Day, wants: Asks) -> Place {
        let offers = |of: fn(&crate::plan::Offer) -> bool| day.offer.is_some_and(of);
        let mut place = Place {
            wants,
            refill: offers(|offer| offer.water),
            empty_grey: offers(|offer| offer.emptying),
            empty_toilet: offers(|offer| offer.toilet_emptying),
            public_toilet: offers(|offer| offer.toilet),
            away: false,
        };
        for (stop, from) in &self.stops {
            if stop.is_there(day.date, day.source, *from) {
                stop_at(&mut place, stop);
            }
        }
        place
    }

    /// Person-days of a day.
    pub(crate) fn person_days(&self) -> f64 {
        f64::from(self.people)
    }

    /// Litres a day at rest in temperate air.
    pub(super) fn at_rest_l(&self) -> f64 {
        sound(self.wants.at_rest().fresh_l)
    }

    /// Everything full.
    pub(crate) fn all_full(&self) -> Aboard {
        self.aboard(self.rooms.holds)
    }

    /// Whether one can fill up on a day of the road.
    pub(crate) fn has_tap(&self, day: &Day) -> bool {
        self.place(day, Asks::default()).refill
    }

    /// What is on board, as the load takes it.
    pub(crate) fn aboard(&self, level: Level) -> Aboard {
        Aboard { fresh_l: units(level.fresh), grey_l: units(level.grey), toilet_l: self.toilet_l(level.toilet) }
    }

    /// Litres in the toilets when so many thousandths of a person-day are.
    pub(crate) fn toilet_l(&self, toilet: u64) -> f64 {
        units(toilet) * self.toilet_l_per_person_day
    }

    /// What is on board after a count.
    pub(crate) fn counted(&self, level: Level, reading: &Reading) -> Level {
        let holds = self.rooms.holds;
        Level {
            fresh: reading.fresh_l.map_or(level.fresh, |counted| milli(counted).min(holds.fresh)),
            grey: reading.grey_l.map_or(level.grey, |counted| milli(counted).min(holds.grey)),
            ..level
        }
    }
}

/// What can be done at a stop, besides what the day's place offers.
pub(super) fn stop_at(place: &mut Place, stop: &WaterStop) {
    place.refill |= stop.refills;
    place.empty_grey |= stop.empties;
    place.empty_toilet |= stop.empties_toilet;
}

/// By how much what a person leaves may be more or less than is likely, and of which toilet: the first of the kit that fills.
pub(crate) fn toilet_factor(plan: &Plan) -> Option<(Id, Estimate<f64>)> {
    let (id, way) = plan.kept().find_map(|item| {
        let (way, _) = way_of(item, item.toilet.as_ref()?);
        Some((item.id, way))
    })?;
    let [low, likely, high] = each_day(way);
    Some((id, Estimate::Range { low: low / likely, likely: 1.0, high: high / likely }))
}

/// Litres on board.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Aboard {
    /// Fresh water.
    pub fresh_l: f64,
    /// Used water.
    pub grey_l: f64,
    /// What is in toilets, which weighs about as much as water.
    pub toilet_l: f64,
}

/// Thousandths as units: litres, or person-days.
pub(crate) fn units(thousandths: u64) -> f64 {
    thousandths as f64 / 1_000.0
}

/// What is in the kit.
#[derive(Default)]
struct Sums {
    fresh_l: f64,
    fresh_opening_l: f64,
    grey_l: f64,
    grey_opening_l: f64,
    person_days: f64,
    waste_l: f64,
}

impl Sums {
    fn add(&mut self, item: &Item) {
        if let Some(tank) = item.tank {
            let litres = sound(tank.capacity_l) * f64::from(item.kept());
            let filled = |usual: f64| litres * tank.opening_percent.map_or(usual, sound).min(100.0) / 100.0;
            match tank.holds {
                TankKind::Fresh => {
                    self.fresh_l += litres;
                    self.fresh_opening_l += filled(100.0);
                }
                TankKind::Grey => {
                    self.grey_l += litres;
                    self.grey_opening_l += filled(0.0);
                }
            }
        }
        if let Some((way, tanks)) = item.toilet.as_ref().map(|toilet| way_of(item, toilet)) {
            let [_, likely, _] = each_day(way);
            let person_days = person_days(way).map_or(0.0, |days| days.likely()) * tanks;
            self.person_days += person_days;
            // Of bags, what is in them.
            self.waste_l += person_days * if matches!(way, Way::Bags { .. }) { FAECES_L[1] } else { likely };
        }
    }
}

/// A toilet of the kit as the engine takes it, and how many of its tanks there are; bags are counted in the way itself.
pub(super) fn way_of(item: &Item, toilet: &Toilet) -> (Way, f64) {
    let waste_l = toilet.waste_l.map_or(USUAL_WASTE_L, sound);
    match toilet.way {
        ToiletWay::Portable => (Way::Portable { waste_l }, f64::from(item.kept())),
        ToiletWay::Dry => (Way::Dry { waste_l }, f64::from(item.kept())),
        ToiletWay::Bags => (Way::Bags { count: item.kept() }, 1.0),
    }
}

fn sound(litres: f64) -> f64 {
    /// The most litres that are believed of anything.
    const MOST_L: f64 = 1e6;
    within_most(litres, MOST_L)
}
