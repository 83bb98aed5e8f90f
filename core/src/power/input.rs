//! What the power balance takes: stores with their draws by hour, and what charges them.

use super::constants::{DRIVE_FROM_HOUR, MAINS_FROM_HOUR, SOCKET_LASTING_SHARE};
use crate::plan::{Draw, DrawDays, Id, Item, Outlet, Plan, Reading, Store, Vehicle};
use crate::run::Day;

/// The electric side of a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// The stores carried, in the order of the kit.
    pub stores: Vec<StoreInput>,
    /// The most a store gets from the vehicle's socket for hours.
    pub socket_w: f64,
    /// Items that draw and find no store to run on.
    pub without_store: Vec<Id>,
    /// Whether anything draws at all.
    pub has_draws: bool,
}

/// A store and what hangs on it.
#[derive(Clone, Debug, PartialEq)]
pub struct StoreInput {
    /// The item it is.
    pub item: Id,
    /// Its data, made sound: no share above one, nothing negative or not a number.
    pub store: Store,
    /// A day's draws by hour, for each kind of day.
    pub profiles: [Profile; DayKind::COUNT],
    /// Draws that the outlets cannot carry even alone; they are in no profile.
    pub too_strong: Vec<TooStrong>,
}

/// A draw above the limit of its outlet.
#[derive(Clone, Debug, PartialEq)]
pub struct TooStrong {
    /// The item that draws.
    pub item: Id,
    /// Its name.
    pub name: String,
    /// What it needs.
    pub needs_w: f64,
    /// What the outlet gives.
    pub limit_w: f64,
    /// Whether it is the moment of starting that is too much.
    pub at_start: bool,
}

/// What one store must give through one kind of day.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Profile {
    /// Hour by hour.
    pub hours: [Hour; 24],
}

/// What one store must give in one hour.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hour {
    /// Energy taken at the mains-voltage outlets.
    pub ac_wh: f64,
    /// Energy taken at the low-voltage outlets.
    pub dc_wh: f64,
    /// Share of the hour in which something hangs on the inverter, as if the draws overlapped as much as they can.
    pub inverter_share: f64,
    /// Mains-voltage power if all that may run in the hour runs at once.
    pub ac_peak_w: f64,
    /// Low-voltage power if all that may run in the hour runs at once.
    pub dc_peak_w: f64,
    /// The most that one start adds to `ac_peak_w`.
    pub surge_extra_w: f64,
}

/// A kind of day, by what draws depend on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DayKind {
    /// Somebody works.
    pub is_working: bool,
    /// The van moves.
    pub is_driving: bool,
}

impl DayKind {
    /// How many there are.
    pub const COUNT: usize = 4;

    const ALL: [Self; Self::COUNT] = [
        Self { is_working: false, is_driving: false },
        Self { is_working: true, is_driving: false },
        Self { is_working: false, is_driving: true },
        Self { is_working: true, is_driving: true },
    ];

    /// The kind of a day.
    pub fn of(day: &Day) -> Self {
        Self { is_working: day.is_working, is_driving: day.drive_hours > 0.0 }
    }

    /// Its position in [`StoreInput::profiles`].
    pub fn index(self) -> usize {
        usize::from(self.is_working) + 2 * usize::from(self.is_driving)
    }

    fn has(self, days: DrawDays) -> bool {
        match days {
            DrawDays::Every => true,
            DrawDays::Working => self.is_working,
            DrawDays::Free => !self.is_working,
            DrawDays::Driving => self.is_driving,
            DrawDays::Standing => !self.is_driving,
        }
    }
}

impl Input {
    /// The electric side of the plan's kit.
    pub fn new(plan: &Plan) -> Self {
        let mut stores: Vec<StoreInput> =
            plan.carried().filter_map(|item| Some(StoreInput::new(item.id, item.store?))).collect();
        let mut without_store = Vec::new();
        let mut has_draws = false;
        for item in plan.carried() {
            let Some(draw) = item.draw else { continue };
            has_draws = true;
            let wanted = |store: &&mut StoreInput| draw.store.is_none_or(|id| id == store.item);
            match stores.iter_mut().find(wanted) {
                Some(store) => store.add(item, &draw),
                None => without_store.push(item.id),
            }
        }
        Self { stores, socket_w: socket_w(&plan.vehicle), without_store, has_draws }
    }

    /// Energy in each store on the day of leaving.
    pub fn opening_wh(&self) -> Vec<f64> {
        self.stores.iter().map(|store| energy_wh(&store.store, store.store.opening_percent)).collect()
    }

    /// Replaces a computed charge with the one that was read off.
    pub(crate) fn correct(&self, charge_wh: &mut [f64], reading: &Reading) {
        let Some(percent) = reading.charge_percent else { return };
        let position = reading.store.map_or(Some(0), |id| self.stores.iter().position(|store| store.item == id));
        let Some(position) = position else { return };
        if let (Some(charge), Some(store)) = (charge_wh.get_mut(position), self.stores.get(position)) {
            *charge = energy_wh(&store.store, sound(percent, 100.0));
        }
    }
}

impl StoreInput {
    fn new(item: Id, store: Store) -> Self {
        Self { item, store: made_sound(&store), profiles: Default::default(), too_strong: Vec::new() }
    }

    fn add(&mut self, item: &Item, draw: &Draw) {
        let one_w = sound(draw.power_w.likely(), MOST_W);
        let start_w = draw.surge_w.map_or(one_w, |surge| sound(surge, MOST_W).max(one_w));
        if let Some(too_strong) = self.too_strong(item, draw, one_w, start_w) {
            self.too_strong.push(too_strong);
            return;
        }
        let all_w = one_w * f64::from(item.kept());
        let duty = draw.duty_percent.map_or(1.0, |duty| sound(duty.likely(), 100.0) / 100.0);
        let hours = draw.hours_per_day.map_or(24.0, |hours| sound(hours.likely(), 24.0));
        let from = draw.from_hour.map_or(0.0, |hour| sound(hour, 24.0));
        let kinds = DayKind::ALL.into_iter().filter(|kind| kind.has(draw.days));
        for kind in kinds {
            for (hour, need) in self.profiles[kind.index()].hours.iter_mut().enumerate() {
                let share = daily_overlap(from, hours, hour as f64);
                need.add(draw.outlet, all_w, duty, share, start_w - one_w);
            }
        }
    }

    fn too_strong(&self, item: &Item, draw: &Draw, one_w: f64, start_w: f64) -> Option<TooStrong> {
        let (limit_w, start_limit_w) = match draw.outlet {
            Outlet::Ac => (self.store.ac_continuous_w, self.store.ac_surge_w),
            Outlet::Dc => (self.store.dc_continuous_w, f64::INFINITY),
        };
        let at_start = one_w <= limit_w;
        if at_start && start_w <= start_limit_w {
            return None;
        }
        let (needs_w, limit_w) = if at_start { (start_w, start_limit_w) } else { (one_w, limit_w) };
        Some(TooStrong { item: item.id, name: item.name.clone(), needs_w, limit_w, at_start })
    }
}

impl Hour {
    fn add(&mut self, outlet: Outlet, power_w: f64, duty: f64, share: f64, surge_extra_w: f64) {
        if share <= 0.0 {
            return;
        }
        match outlet {
            Outlet::Ac => {
                self.ac_wh += power_w * duty * share;
                self.ac_peak_w += power_w;
                self.inverter_share = self.inverter_share.max(share);
                self.surge_extra_w = self.surge_extra_w.max(surge_extra_w);
            }
            Outlet::Dc => {
                self.dc_wh += power_w * duty * share;
                self.dc_peak_w += power_w;
            }
        }
    }

    /// Energy the cells must give for the hour: what is drawn, what the inverter loses and what it takes for itself.
    pub fn cells_wh(&self, store: &Store) -> f64 {
        let inverter = store.inverter_efficiency_percent / 100.0;
        self.ac_wh / inverter + store.inverter_idle_w * self.inverter_share + self.dc_wh
    }
}

/// What could reach a store's sockets in one hour.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Supply {
    /// From the vehicle's socket while driving.
    pub vehicle_w: f64,
    /// From the mains.
    pub mains_w: f64,
}

impl Supply {
    /// What the store takes of it while it is far from full.
    pub fn accepted_w(&self, store: &Store) -> f64 {
        let sum = self.vehicle_w + self.mains_w;
        store.total_input_w.map_or(sum, |limit| sum.min(limit))
    }
}

/// What a store gets offered in an hour of a day, each source limited by its socket and averaged over the hour.
pub fn supply(input: &Input, store: &Store, day: &Day, hour: u32) -> Supply {
    let hour = f64::from(hour);
    let driving = overlap(DRIVE_FROM_HOUR.min(24.0 - day.drive_hours), day.drive_hours, hour);
    let vehicle_w = input.socket_w.min(store.vehicle_input_w) * driving;
    let mains_w = day.offer.map_or(0.0, |offer| {
        let hours = offer.mains_hours.map_or(0.0, |hours| sound(hours.likely(), 24.0));
        let from = offer.mains_from_hour.map_or(MAINS_FROM_HOUR, |hour| sound(hour, 24.0));
        let limit = offer.mains_w.map_or(store.mains_input_w, |limit| sound(limit, MOST_W).min(store.mains_input_w));
        limit * daily_overlap(from, hours, hour)
    });
    Supply { vehicle_w, mains_w }
}

/// Energy in a store by the percentage it shows. A full one holds its usable energy to the last bit: rounding must not
/// leave it fuller than full.
fn energy_wh(store: &Store, percent: f64) -> f64 {
    (store.usable_wh * percent / 100.0).min(store.usable_wh)
}

/// What a vehicle socket gives for hours: volts by amperes of the fuse, less what a fuse does not bear for long.
fn socket_w(vehicle: &Vehicle) -> f64 {
    sound(vehicle.socket_volts, 1_000.0) * sound(vehicle.socket_fuse_a, 1_000.0) * SOCKET_LASTING_SHARE
}

/// Share of the hour beginning at `hour` that lies in a span of `length` hours from `from`.
fn overlap(from: f64, length: f64, hour: f64) -> f64 {
    ((from + length).min(hour + 1.0) - from.max(hour)).clamp(0.0, 1.0)
}

/// The same for a span that repeats every day and may run past midnight.
fn daily_overlap(from: f64, length: f64, hour: f64) -> f64 {
    (overlap(from, length, hour) + overlap(from - 24.0, length, hour)).min(1.0)
}

/// The most power that is believed of anything.
const MOST_W: f64 = 1e6;

/// A number from 0 to `most`, whatever was typed.
fn sound(value: f64, most: f64) -> f64 {
    // What is not a number, below zero or a zero with a minus sign becomes plain zero.
    if value > 0.0 { value.min(most) } else { 0.0 }
}

fn made_sound(store: &Store) -> Store {
    let watts = |value| sound(value, MOST_W);
    let efficiency = |percent: f64| sound(percent, 100.0).max(1.0);
    Store {
        usable_wh: sound(store.usable_wh, 1e9),
        opening_percent: sound(store.opening_percent, 100.0),
        inverter_efficiency_percent: efficiency(store.inverter_efficiency_percent),
        inverter_idle_w: watts(store.inverter_idle_w),
        charge_efficiency_percent: efficiency(store.charge_efficiency_percent),
        ac_continuous_w: watts(store.ac_continuous_w),
        ac_surge_w: watts(store.ac_surge_w),
        dc_continuous_w: watts(store.dc_continuous_w),
        vehicle_input_w: watts(store.vehicle_input_w),
        mains_input_w: watts(store.mains_input_w),
        total_input_w: store.total_input_w.map(watts),
        taper_from_percent: sound(store.taper_from_percent, 100.0),
    }
}
