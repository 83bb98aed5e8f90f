//! What takes longer than a key should: how likely the stores last, what size would do, where to charge, what each draw
//! costs, and what tonight holds.

use jiff::civil::Date;
use serde_json::Value;

use super::ahead::{Ahead, uncertainty};
use super::constants::{MOST_PANEL_W, MOST_STORE_WH, RUNS};
use crate::assessment::Moment;
use crate::energy::chance::Runs;
use crate::energy::run::run;
use crate::energy::sizing::{SizeOf, Sized, Sizing};
use crate::energy::stops::{Aim, Place, StopPlan, StopSearch};
use crate::energy::tonight::{Tonight, cost_in_hours, tonight_without_chances};
use crate::plan::record::record;
use crate::plan::{Charging, Edit, Id, List, Money, Need, Plain, Plan, add_days};
use crate::task::Task;

/// What the runs, the searches and the trials found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outlook {
    /// How many runs there were, with weather, use and driving by chance.
    pub runs: u32,
    /// In how many of them everything is served and no store falls below what is to stay in it.
    pub kept: u32,
    /// The day with whose midnight the hours are counted.
    pub from: Date,
    /// The hour of it with which the runs begin.
    pub from_hour: u32,
    /// What all stores hold in one of ten runs, or less, at the end of each hour from then on.
    pub low_wh: Vec<f64>,
    /// What they hold in nine of ten, or less.
    pub high_wh: Vec<f64>,
    /// The store that sizes are looked for.
    pub store: Id,
    /// The least panels on it, in W, with which the plan holds.
    pub least_panel: Size,
    /// The least energy in it, in Wh.
    pub least_store: Size,
    /// The fewest stops at places that are not in use yet.
    pub fewest: Stops,
    /// The cheapest.
    pub cheapest: Stops,
    /// What each draw costs.
    pub costs: Vec<Cost>,
    /// From the last reading on, if there is one.
    pub tonight: Option<Night>,
}

record!(Outlook {
    runs,
    kept,
    from,
    from_hour,
    low_wh,
    high_wh,
    store,
    least_panel,
    least_store,
    fewest,
    cheapest,
    costs,
    tonight,
});

/// A least size.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Size {
    /// It holds, and one less does not.
    pub least: Option<u32>,
    /// A greater one that was met and fails.
    pub greater_fails: Option<u32>,
    /// Whether an outlet's limit keeps every size from doing.
    pub is_prevented: bool,
}

record!(Size { least, greater_fails, is_prevented });

/// Where to charge.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stops {
    /// Whether stops were found; none may be needed.
    pub is_found: bool,
    /// Whether nothing better is possible.
    pub is_proven: bool,
    /// The stops in the order of time.
    pub stops: Vec<Stop>,
    /// What they cost together.
    pub price: Money,
}

record!(Stops { is_found, is_proven, stops, price });

/// A stop.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Stop {
    /// The place of the plan.
    pub place: Id,
    /// The day.
    pub on: Date,
    /// From this hour on.
    pub from_hour: f64,
    /// For so many hours.
    pub hours: f64,
    /// What it costs.
    pub price: Money,
}

record!(Stop { place, on, from_hour, hours, price });

/// What a draw costs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cost {
    /// The item.
    pub item: Id,
    /// So many hours longer the stores would last without it.
    pub hours: f64,
}

record!(Cost { item, hours });

/// What a reading says of the hours after it. Moments are hours after it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Night {
    /// The day of the reading.
    pub on: Date,
    /// Its hour.
    pub hour: u32,
    /// How long everything runs; nothing if through all of the route.
    pub lasts: Option<f64>,
    /// In one of ten runs no longer than this.
    pub one_in_ten: Option<f64>,
    /// Until something can be charged again, if ever.
    pub next_charge: Option<f64>,
    /// Whether it lasts until then.
    pub reaches: bool,
    /// In what share of the runs it does, in percent.
    pub reaching_percent: Option<f64>,
    /// What to go without, one after another, and how long it lasts then.
    pub without: Vec<Without>,
}

record!(Night { on, hour, lasts, one_in_ten, next_charge, reaches, reaching_percent, without });

/// Something to go without.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Without {
    /// The item.
    pub item: Id,
    /// What that saves until the next charge.
    pub saved_wh: f64,
    /// How long everything else runs then.
    pub lasts: Option<f64>,
}

record!(Without { item, saved_wh, lasts });

impl Night {
    /// The moment so many hours after the reading.
    pub fn moment(&self, hours: f64) -> Moment {
        let since_midnight = f64::from(self.hour) + hours.clamp(0.0, 1e6);
        let days = libm::floor(since_midnight / 24.0);
        #[allow(clippy::cast_possible_truncation)] // clamped just before
        let on = add_days(self.on, days as i32).unwrap_or(self.on);
        Moment::hours_into(on, since_midnight - days * 24.0)
    }
}

impl Stops {
    /// The change that puts them into the plan: each a place in use on its day, for its hours.
    pub fn taking(&self, plan: &Plan) -> Edit {
        let ids = plan.next_ids(self.stops.len());
        let edits = self.stops.iter().zip(ids).filter_map(|(stop, id)| {
            let place = plan.charging.iter().find(|place| place.id == stop.place)?;
            let taken = Charging {
                id,
                on: Some(stop.on),
                from_hour: Some(stop.from_hour),
                charging_hours: Some(stop.hours),
                in_use: true,
                ..place.clone()
            };
            Some(Edit::Insert { list: List::Charging, at: usize::MAX, entry: taken.to_plain() })
        });
        Edit::All { edits: edits.collect() }
    }
}

/// An [`Outlook`] being worked out.
pub struct OutlookTask {
    plan: Plan,
    /// From the last reading on, or else from the first day ahead.
    near: Ahead,
    /// From the first whole day ahead on.
    far: Ahead,
    /// The position of the store that sizes are looked for.
    weakest: usize,
    /// Where and when one could charge besides, with the id of the place.
    places: Vec<(Id, Place)>,
    outlook: Outlook,
    doing: Doing,
}

/// What is being done.
enum Doing {
    Runs(Box<Runs>),
    Size(SizeOf, Box<Sizing>),
    Stops(Aim, Box<StopSearch>),
    Costs(usize),
    Done,
}

impl OutlookTask {
    /// Begins.
    pub fn new(plan: &Plan, as_of: Date, seed: u32) -> Self {
        let (near, far) = super::ahead::of_plan(plan, as_of);
        let runs = if near.input.has_draws && !near.input.setup.hours.is_empty() { RUNS } else { 0 };
        let uncertainty = uncertainty(plan, &near.input);
        let runs = Runs::from_hour(&near.input.setup, near.from_hour, &uncertainty, seed.into(), runs);
        let weakest = far.weakest();
        let outlook = Outlook {
            from: near.from,
            from_hour: u32::try_from(near.from_hour).unwrap_or(0),
            store: far.input.stores.get(weakest).copied().unwrap_or_default(),
            ..Outlook::default()
        };
        let places = far.places(plan);
        Self { plan: plan.clone(), near, far, weakest, places, outlook, doing: Doing::Runs(Box::new(runs)) }
    }

    fn end_runs(&mut self, runs: &Runs) {
        let chances = runs.chances();
        (self.outlook.runs, self.outlook.kept) = (chances.runs, chances.kept);
        self.outlook.low_wh = chances.band.iter().map(|hour| hour.low_wh).collect();
        self.outlook.high_wh = chances.band.iter().map(|hour| hour.high_wh).collect();
        if self.near.is_read {
            let setup = &self.near.input.setup;
            let may_shed: Vec<bool> = self.near.input.draws.iter().map(|draw| self.may_go(draw.item)).collect();
            let until = self.near.next_charge();
            let night = tonight_without_chances(setup, self.near.from_hour, until, &may_shed).with_chances(&chances);
            self.outlook.tonight = Some(self.night(&night, until));
        }
    }

    /// No suggestion ever touches a must.
    fn may_go(&self, item: Id) -> bool {
        self.plan.item(item).is_some_and(|item| item.need != Need::Must)
    }

    fn night(&self, night: &Tonight, until: Option<usize>) -> Night {
        let item = |draw: usize| self.near.input.draws.get(draw).map_or(0, |draw| draw.item);
        let without = |shed: &crate::energy::tonight::Shed| Without {
            item: item(shed.draw),
            saved_wh: shed.wh_saved,
            lasts: shed.lasts_to,
        };
        Night {
            on: self.near.from,
            hour: self.outlook.from_hour,
            lasts: night.lasts_to,
            one_in_ten: night.one_in_ten,
            next_charge: until.map(|until| until.saturating_sub(self.near.from_hour) as f64),
            reaches: night.reaches,
            reaching_percent: night.share_reaching.map(|share| share * 100.0),
            without: night.sheds.iter().map(without).collect(),
        }
    }

    fn size(&self, of: SizeOf) -> Doing {
        let most = if of == SizeOf::Panel { MOST_PANEL_W } else { MOST_STORE_WH };
        Doing::Size(of, Box::new(Sizing::new(&self.far.input.setup, of, self.weakest, most)))
    }

    fn stops(&self, aim: Aim) -> Doing {
        let places: Vec<Place> = self.places.iter().map(|(_, place)| *place).collect();
        Doing::Stops(aim, Box::new(StopSearch::new(&self.far.input.setup, &places, aim)))
    }

    fn found(&self, plan: &StopPlan) -> Stops {
        let stop = |stop: &crate::energy::stops::Stop| {
            let (id, _) = self.places.get(stop.place)?;
            let hours = stop.hours as f64;
            let on = add_days(self.far.from, i32::try_from(stop.from_hour / 24).ok()?)?;
            let price = self.plan.charging.iter().find(|place| place.id == *id)?.price(hours);
            Some(Stop { place: *id, on, from_hour: (stop.from_hour % 24) as f64, hours, price })
        };
        let stops: Vec<Stop> = plan.found.iter().flatten().filter_map(stop).collect();
        Stops {
            is_found: plan.found.is_some(),
            is_proven: plan.is_exact,
            price: stops.iter().map(|stop| stop.price).sum(),
            stops,
        }
    }

    /// What comes next when the one before has ended, and the share that is done.
    fn next(&mut self, doing: Doing) -> (Doing, f64) {
        match doing {
            Doing::Runs(mut runs) => {
                let left = runs.step(self.near.runs_at_once());
                if left > 0 {
                    return (Doing::Runs(runs), 0.5 * (1.0 - f64::from(left) / f64::from(RUNS)));
                }
                self.end_runs(&runs);
                if self.far.input.setup.hours.is_empty() || !self.far.input.has_draws {
                    return (Doing::Done, 1.0);
                }
                (self.size(SizeOf::Panel), 0.5)
            }
            Doing::Size(of, mut sizing) => {
                let Some(sized) = sizing.step() else { return (Doing::Size(of, sizing), 0.6) };
                let size = size_of(&sized);
                if of == SizeOf::Panel {
                    self.outlook.least_panel = size;
                    return (self.size(SizeOf::Store), 0.6);
                }
                self.outlook.least_store = size;
                if run(&self.far.input.setup).holds() {
                    let none = Stops { is_found: true, is_proven: true, ..Stops::default() };
                    (self.outlook.fewest, self.outlook.cheapest) = (none.clone(), none);
                    return (Doing::Costs(0), 0.9);
                }
                (self.stops(Aim::Fewest), 0.7)
            }
            Doing::Stops(aim, mut search) => {
                let share = search.step();
                if share < 1.0 {
                    return (Doing::Stops(aim, search), 0.7 + 0.1 * share);
                }
                let stops = self.found(&search.end());
                if aim == Aim::Fewest {
                    self.outlook.fewest = stops;
                    return (self.stops(Aim::Cheapest), 0.8);
                }
                self.outlook.cheapest = stops;
                (Doing::Costs(0), 0.9)
            }
            Doing::Costs(at) => {
                let Some(draw) = self.far.input.draws.get(at) else { return (Doing::Done, 1.0) };
                let hours = cost_in_hours(&self.far.input.setup, 0, at);
                self.outlook.costs.extend(hours.map(|hours| Cost { item: draw.item, hours: hours + 0.0 }));
                (Doing::Costs(at + 1), 0.9)
            }
            Doing::Done => (Doing::Done, 1.0),
        }
    }
}

fn size_of(sized: &Sized) -> Size {
    Size {
        least: sized.least,
        greater_fails: sized.not_monotone.map(|(_, greater)| greater),
        is_prevented: sized.prevented_by.is_some(),
    }
}

impl Task for OutlookTask {
    fn step(&mut self) -> f64 {
        let doing = std::mem::replace(&mut self.doing, Doing::Done);
        let (doing, share) = self.next(doing);
        self.doing = doing;
        share
    }

    fn answer(&self) -> Value {
        self.outlook.to_plain()
    }
}
