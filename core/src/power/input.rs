//! What the power balance takes: stores, what hangs on them, panels, and the hours of the route.

use super::constants::INSIDE_WARMER_C;
use super::sky::Skies;
use super::{draws, given, store};
use crate::energy::constants::MOST_W;
use crate::energy::draw::Need;
use crate::energy::setup::{OnBoard, Setup};
use crate::energy::sound;
use crate::plan::{Draw, Id, Item, Panel, Plan, Reading, Works};
use crate::run::Day;

/// The electric side of a plan along some days.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// The items that are stores, in the order of the kit.
    pub stores: Vec<Id>,
    /// What hangs on them, in the order of the setup's draws.
    pub draws: Vec<Hanging>,
    /// Panels in the order of the kit, each with the position of its store.
    pub panels: Vec<(Id, usize)>,
    /// Stores, draws and hours as the engine takes them.
    pub setup: Setup,
    /// When it is dark, hour by hour.
    pub is_dark: Vec<bool>,
    /// What each panel gives, in watts, hour by hour.
    pub panel_w: Vec<Vec<f64>>,
    /// For days in a row: how many, their mean clearness and that of a clear day.
    pub clearness: Vec<(usize, f64, f64)>,
    /// Height of the lowest place, where water takes the most to boil.
    pub lowest_m: f64,
    /// The most a store gets from the vehicle's socket for hours, in W.
    pub socket_w: f64,
    /// Items that draw and find no store to run on.
    pub without_store: Vec<Id>,
    /// Whether anything draws at all.
    pub has_draws: bool,
    /// Whether there are panels on days of which no place is known.
    pub is_place_unknown: bool,
}

/// Something that hangs on a store.
#[derive(Clone, Debug, PartialEq)]
pub struct Hanging {
    /// The item.
    pub item: Id,
    /// What one of it takes, in W.
    pub one_w: f64,
    /// What one of it takes in the moment of starting, in W.
    pub start_w: f64,
    /// How it may differ from the likely: the least and the most of it.
    pub range: (f64, f64),
}

impl Input {
    /// The electric side of the plan's kit along these days.
    pub fn new(plan: &Plan, days: &[&Day]) -> Self {
        Self::beneath(plan, days, &Skies::over(plan, days))
    }

    /// The same where the skies over these days are known already.
    pub(crate) fn beneath(plan: &Plan, days: &[&Day], skies: &Skies) -> Self {
        let stores: Vec<&Item> = plan.carried().filter(|item| item.store.is_some()).collect();
        let panels = panels(plan, &stores);
        let mut input = Self {
            stores: stores.iter().map(|item| item.id).collect(),
            draws: Vec::new(),
            setup: Setup { hours: given::hours(plan, days), ..Setup::default() },
            panel_w: panel_watts(&panels, skies),
            panels: panels.iter().map(|(id, store, _)| (*id, *store)).collect(),
            lowest_m: skies.lowest_m.unwrap_or(0.0),
            socket_w: given::socket_w(&plan.vehicle),
            without_store: Vec::new(),
            has_draws: false,
            is_place_unknown: !panels.is_empty() && skies.is_place_unknown,
            is_dark: skies.is_dark.clone(),
            clearness: skies.clearness.clone(),
        };
        input.put_stores(&stores, &panels);
        for item in plan.carried() {
            let Some(draw) = item.draw else { continue };
            input.has_draws = true;
            match position(&stores, draw.store) {
                Some(store) => input.hang(item, &draw, store, days),
                None => input.without_store.push(item.id),
            }
        }
        for (given, air_c) in input.setup.hours.iter_mut().zip(&skies.air_c) {
            given.air_c = air_c + INSIDE_WARMER_C;
            given.store_c = given.air_c;
        }
        for (given, share) in input.setup.hours.iter_mut().zip(&skies.flat_share) {
            given.sun_share = *share;
        }
        input
    }

    /// As warm as it was along a run of the whole road, from an hour of it on, with heaters wanting to run as they did.
    pub(super) fn be_as_warm_as(&mut self, walked: &Self, from_hour: usize) {
        for (given, was) in self.setup.hours.iter_mut().zip(walked.setup.hours.iter().skip(from_hour)) {
            (given.air_c, given.store_c) = (was.air_c, was.store_c);
        }
        for (draw, was) in self.setup.draws.iter_mut().zip(&walked.setup.draws) {
            if let (Need::Hours(shares), Need::Hours(ran)) = (&mut draw.need, &was.need) {
                *shares = ran.iter().skip(from_hour).copied().collect();
            }
        }
    }

    /// Replaces a computed charge with the one that was read off.
    pub(crate) fn correct(&self, charge_wh: &mut [f64], full_wh: &[f64], reading: &Reading) {
        let Some(percent) = reading.charge_percent else { return };
        let position = reading.store.map_or(Some(0), |id| self.stores.iter().position(|store| *store == id));
        let Some(position) = position else { return };
        if let (Some(charge), Some(full)) = (charge_wh.get_mut(position), full_wh.get(position)) {
            // A full one holds what it holds to the last bit: rounding must not leave it fuller than full.
            *charge = (full * share_of(percent)).min(*full);
        }
    }

    fn put_stores(&mut self, stores: &[&Item], panels: &[(Id, usize, Panel)]) {
        for (at, item) in stores.iter().enumerate() {
            let Some(stated) = &item.store else { continue };
            let here = || panels.iter().zip(&self.panel_w).filter(|((_, store, _), _)| *store == at);
            let peak_w: f64 = here().map(|((.., panel), _)| panel.peak_w).sum();
            let mut board = OnBoard {
                panel_w: peak_w,
                opening_state: share_of(stated.opening_percent),
                floor_state: share_of(stated.keeps_percent.unwrap_or(0.0)),
                ..OnBoard::full(store::of_plan(stated))
            };
            if peak_w > 0.0 {
                let watts = |hour: usize| here().filter_map(|(_, watts)| watts.get(hour)).sum::<f64>();
                board.sun_share = (0..self.setup.hours.len()).map(|hour| watts(hour) / peak_w).collect();
            }
            self.setup.stores.push(board);
        }
    }

    fn hang(&mut self, item: &Item, draw: &Draw, store: usize, days: &[&Day]) {
        let engine = draws::of_plan(item, draw, store, days, self.lowest_m);
        let kept = f64::from(item.kept().max(1));
        let one_w = engine.power_w / kept;
        self.draws.push(Hanging {
            item: item.id,
            one_w,
            start_w: engine.surge_w - engine.power_w + one_w,
            range: range(draw),
        });
        self.setup.draws.push(engine);
    }
}

/// The position of a store among all; without a wish, of the first.
fn position(stores: &[&Item], wanted: Option<Id>) -> Option<usize> {
    match wanted {
        None => (!stores.is_empty()).then_some(0),
        Some(id) => stores.iter().position(|store| store.id == id),
    }
}

/// The panels that charge a store, each with its position.
fn panels(plan: &Plan, stores: &[&Item]) -> Vec<(Id, usize, Panel)> {
    let panels = plan.carried().filter_map(|item| Some((item, item.panel?)));
    let charging = panels.filter_map(|(item, panel)| {
        let peak_w = sound(panel.peak_w * f64::from(item.kept()), MOST_W);
        Some((item.id, position(stores, panel.charges)?, Panel { peak_w, ..panel }))
    });
    charging.collect()
}

/// The panels that charge a store, in the order of the kit.
pub(super) fn charging_panels(plan: &Plan) -> Vec<Panel> {
    let stores: Vec<&Item> = plan.carried().filter(|item| item.store.is_some()).collect();
    panels(plan, &stores).into_iter().map(|(.., panel)| panel).collect()
}

/// Hundredths as a share; what is not a number is nothing.
fn share_of(percent: f64) -> f64 {
    if percent > 0.0 { (percent / 100.0).min(1.0) } else { 0.0 }
}

/// What the least and the most of a draw's power, hours and share are of the likely.
fn range(draw: &Draw) -> (f64, f64) {
    let mut range = (1.0, 1.0);
    // What heat or cold decides does not depend on how strong it is.
    if draw.works.is_some_and(|works| works != Works::ByClock) {
        return range;
    }
    for estimate in [Some(draw.power_w), draw.hours_per_day, draw.duty_percent].into_iter().flatten() {
        let likely = estimate.likely();
        if likely > 0.0 {
            range = (range.0 * estimate.low() / likely, range.1 * estimate.high() / likely);
        }
    }
    range
}

fn panel_watts(panels: &[(Id, usize, Panel)], skies: &Skies) -> Vec<Vec<f64>> {
    let watts = |((.., panel), shares): (&(Id, usize, Panel), &Vec<f64>)| {
        shares.iter().map(|share| share * panel.peak_w).collect()
    };
    panels.iter().zip(&skies.sun_share).map(watts).collect()
}
