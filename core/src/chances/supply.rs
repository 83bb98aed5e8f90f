//! The water of a run, and what the van weighs with it: each use and each mass as its input has it.

use jiff::civil::Date;

use super::answer::What;
use super::inputs::{Drawn, Inputs, Number};
use super::judging::Fate;
use crate::load::{self, Weight, stated};
use crate::plan::{Path, Plan, Reading, days_between};
use crate::run::{Phase, Timeline, tanks_on};
use crate::space::Placed;
use crate::water::course::DayOf;
use crate::water::tanks::{Day as Place, Use as Asks};
use crate::water::{self, Level, Meter, Use, Wants, is_missing, step, toilet_factor, units, uses};

/// Tanks, uses and masses from the first day ahead on.
pub(super) struct Supply {
    tanks: water::Input,
    opening: Level,
    /// Counts of the first evening.
    counted: Vec<Reading>,
    days: Vec<Day>,
    uses: Vec<Use>,
    /// What each takes.
    litres: Vec<Number>,
    /// What a person leaves in the toilet, beside what is likely.
    toilet: Number,
    load: load::Input,
    /// Each thing for one kilogram of each of its pieces, and what one weighs.
    things: Vec<(Weight, Number)>,
    limits: Limits,
}

/// A day on the road.
struct Day {
    /// Counted from the first day ahead.
    number: u32,
    /// How warm the air gets, in °C, where it is known.
    high_c: Option<f64>,
    /// What can be done there.
    place: Place,
}

/// What the van may weigh, as far as that is known.
#[expect(clippy::struct_field_names, reason = "units stand in names")]
struct Limits {
    gross_kg: Option<f64>,
    luggage_kg: f64,
    front_kg: Option<f64>,
    rear_kg: Option<f64>,
}

impl Supply {
    /// Of the road from `as_of` on; `from` is the first day that is ahead, and the air gets so warm on each of the road.
    pub fn new(
        plan: &Plan,
        as_of: Date,
        from: Date,
        timeline: &Timeline,
        highs_c: &[f64],
        inputs: &mut Inputs,
    ) -> Self {
        let tanks = water::Input::new(plan);
        let (opening, counted) = tanks_on(plan, as_of, timeline, &tanks, highs_c);
        let uses = uses(plan);
        let litres_of = |one: &Use, inputs: &mut Inputs| {
            let path = || {
                let entry = Path::entry(if one.is_item { "kit" } else { "water_uses" }, one.id);
                entry.child(if one.is_item { "water/litres_per_day" } else { "litres_per_day" })
            };
            inputs.number(What::Water, one.id, &path, one.litres)
        };
        let placed = Placed::new(plan);
        let of_thing = |thing: &load::Thing, inputs: &mut Inputs| {
            let path = || Path::entry("kit", thing.item.id).child("mass_kg");
            let mass = thing.item.mass_kg.unwrap_or_default();
            (thing.each(1.0), inputs.number(What::Mass, thing.item.id, &path, mass))
        };
        let road = timeline.days.iter().filter(|day| day.phase == Phase::Road).enumerate();
        let days = road.filter(|(_, day)| day.date >= as_of);
        Self {
            opening,
            counted: counted.into_iter().cloned().collect(),
            days: days
                .map(|(at, day)| Day {
                    number: u32::try_from(days_between(from, day.date)).unwrap_or(0),
                    high_c: highs_c.get(at).copied(),
                    place: tanks.place(day, Asks::default()),
                })
                .collect(),
            tanks,
            toilet: toilet_factor(plan).map_or(Number::Sure(1.0), |(id, factor)| {
                inputs.number(What::Toilet, id, &|| Path::entry("kit", id).child("toilet/waste_l"), factor)
            }),
            litres: uses.iter().map(|one| litres_of(one, inputs)).collect(),
            uses,
            load: load::Input::new(plan, &placed),
            things: load::things(plan, &placed).iter().map(|thing| of_thing(thing, inputs)).collect(),
            limits: Limits {
                gross_kg: stated(plan.vehicle.gross_limit_kg),
                luggage_kg: load::sound(plan.vehicle.luggage_kg()),
                front_kg: stated(plan.vehicle.front_limit_kg),
                rear_kg: stated(plan.vehicle.rear_limit_kg),
            },
        }
    }

    /// What a run takes, in days that are looked at, uses and things.
    pub fn effort(&self) -> usize {
        2 * self.days.len() + self.uses.len() + self.things.len()
    }

    /// What becomes of the water and of the load in a run of eight. Without a day on the road the van is weighed with all
    /// tanks full, on the day on which it `leaves`.
    pub fn run(&mut self, drawn: &Drawn, lane: usize, leaves: u32) -> (Fate, Fate) {
        let litres = &self.litres;
        let wants = Wants::of(&self.uses, &mut |at, _| litres.get(at).map_or(0.0, |litres| drawn.value(*litres, lane)));
        let mut meter = Meter::default();
        let person_days = self.tanks.person_days() * drawn.value(self.toilet, lane);
        let things = self.things.iter();
        self.load.things = things
            .fold(Weight::default(), |sum, (place, mass)| sum.plus(place.times(load::sound(drawn.value(*mass, lane)))));
        let (mut water, mut load) = (Litres::new(&self.tanks), Fate::unhurt());
        let mut level = self.opening;
        let is_first_ahead = self.days.first().is_some_and(|day| day.number == 0);
        if !is_first_ahead {
            level = self.evening(level);
        }
        for day in &self.days {
            let place = Place { wants: meter.next(wants.on(day.high_c), person_days), ..day.place };
            let ended = step(&self.tanks.rooms, level, &place, place.asks());
            let fresh = ended.fresh_ml.max(level.fresh);
            level = ended.evening();
            water.note(&self.tanks, day.number, &ended);
            self.weigh(&mut load, day.number, Level { fresh, ..level });
            if day.number == 0 {
                level = self.evening(level);
            }
        }
        if self.days.is_empty() {
            self.weigh(&mut load, leaves, self.tanks.rooms.holds);
        }
        (water.fate, load)
    }

    fn evening(&self, level: Level) -> Level {
        self.counted.iter().fold(level, |level, reading| self.tanks.counted(level, reading))
    }

    /// Notes what is to spare on a day, as the balance judges it.
    fn weigh(&self, fate: &mut Fate, day: u32, level: Level) {
        let of_day = self.load.day(None, self.tanks.aboard(level));
        let axle = |limit: Option<f64>, kg: Option<f64>| limit.zip(kg).map(|(limit, kg)| limit - kg);
        let gross = self.limits.gross_kg.map(|gross| gross - of_day.total_kg - self.limits.luggage_kg);
        let spares = [gross, axle(self.limits.front_kg, of_day.front_kg), axle(self.limits.rear_kg, of_day.rear_kg)];
        for spare_kg in spares.into_iter().flatten() {
            fate.note(day, spare_kg, spare_kg < 0.0);
        }
    }
}

/// The water of a run.
struct Litres {
    fate: Fate,
    missing_l: f64,
    over_l: f64,
    toilet_over_l: f64,
}

impl Litres {
    fn new(input: &water::Input) -> Self {
        let margin = input.fresh_capacity_l.max(input.grey_capacity_l);
        Self { fate: Fate { margin, ..Fate::unhurt() }, missing_l: 0.0, over_l: 0.0, toilet_over_l: 0.0 }
    }

    /// To spare is what is left in the evening, less all that was missing; and what room there is, less all for which there was
    /// none.
    fn note(&mut self, input: &water::Input, day: u32, ended: &DayOf) {
        self.missing_l += units(ended.missing_ml);
        let left_l = units(ended.fresh_ml) - self.missing_l;
        self.fate.note(day, left_l, is_missing(units(ended.missing_ml)));
        if input.rooms.has_grey {
            self.over_l += units(ended.grey_over_ml);
            let room_l = input.grey_capacity_l - units(ended.grey_ml) - self.over_l;
            self.fate.note(day, room_l, is_missing(units(ended.grey_over_ml)));
        }
        if input.rooms.has_toilet {
            self.toilet_over_l += input.toilet_l(ended.toilet_over);
            let room_l = input.toilet_l(input.rooms.holds.toilet) - input.toilet_l(ended.toilet) - self.toilet_over_l;
            self.fate.note(day, room_l, is_missing(units(ended.toilet_over)));
        }
    }
}
