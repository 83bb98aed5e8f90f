//! What does not depend on the charge, worked out once: what each store must give in each hour, what its outlets refuse, and
//! what is on offer.

use super::constants::{LEAST_SHORT_WH, MOST_W};
use super::draw::{Draw, Need, Outlet, Piece, pieces_into};
use super::hour::Cell;
use super::outlets::{Refused, inverter_share, inverter_wh, peaks, refuse};
use super::setup::{Given, OnBoard, Setup};
use super::store::{Store, TaperOf};
use super::{least, sound, within};

/// A setup as tables.
#[derive(Clone, Debug)]
pub(super) struct Prepared {
    pub sides: Vec<Side>,
    pub draws: Vec<Draw>,
    pub offers: Vec<Offer>,
    pub cloud_by_day: Vec<f64>,
    /// What the outlets refuse, with its hour, by ascending hour.
    pub refused: Vec<(usize, Refused)>,
    /// Hour of the day with which the tables begin.
    pub first_hour: usize,
    /// Whether a run by chance falls short when a floor is broken, too.
    pub floors_count: bool,
}

/// What is on offer to all stores in an hour, in W.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Offer {
    pub vehicle_w: f64,
    pub vehicle_hour: f64,
    pub mains_w: f64,
    pub mains_hour: f64,
}

/// One store.
#[derive(Clone, Debug)]
pub(super) struct Side {
    pub store: Store,
    pub cell: Cell,
    pub kept_per_hour: f64,
    pub opening_wh: f64,
    pub floor_wh: f64,
    pub hours: Vec<SideHour>,
    /// What hangs on it, hour after hour, the most important first.
    pub uses: Vec<Use>,
    /// Where in `uses` each hour ends.
    pub use_ends: Vec<usize>,
    /// Whether any of `uses` may not happen.
    pub has_chances: bool,
}

/// One hour of a store. Needs are at the cells.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct SideHour {
    /// What its panels give under a clear sky, in W.
    pub panel_w: f64,
    /// The most that it takes in all, in W at the sockets.
    pub cap_w: f64,
    /// What it needs whatever is used: standby, in Wh.
    pub fixed_wh: f64,
    /// What certain draws need, in Wh.
    pub certain_wh: f64,
    /// Power if all runs at once, in W.
    pub ac_peak_w: f64,
    /// Power if all runs at once, in W.
    pub dc_peak_w: f64,
}

/// What a draw uses in an hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Use {
    pub draw: usize,
    pub outlet_wh: f64,
    pub cells_wh: f64,
    pub chance: f64,
}

impl Prepared {
    pub fn new(setup: &Setup) -> Self {
        let (mut prepared, mut hanging) = Self::begun(setup);
        for (hour, given) in setup.hours.iter().take(setup.hour_count()).enumerate() {
            prepared.add_hour(setup, &mut hanging, hour, given);
        }
        prepared
    }

    /// Without the tables of any hour: they are added one after another, with what hangs on each store.
    pub fn begun(setup: &Setup) -> (Self, Vec<Hanging>) {
        let draws = setup.sound_draws();
        let stores = setup.sound_stores().count();
        let hanging = (0..stores).map(|at| Hanging::new(&draws, at, stores)).collect();
        let offer = |given: &Given| Offer {
            vehicle_w: sound(given.vehicle_w, MOST_W),
            vehicle_hour: sound(given.vehicle_hour, 1.0),
            mains_w: sound(given.mains_w, MOST_W),
            mains_hour: sound(given.mains_hour, 1.0),
        };
        let hours = setup.hour_count();
        let cloud = |day: usize| setup.cloud_by_day.get(day).map_or(1.0, |cloud| sound(*cloud, 1.5));
        let prepared = Self {
            sides: setup.sound_stores().map(|board| Side::new(setup.hour_count(), board)).collect(),
            draws,
            offers: setup.hours.iter().take(hours).map(offer).collect(),
            cloud_by_day: (0..hours.div_ceil(24)).map(cloud).collect(),
            refused: Vec::new(),
            first_hour: 0,
            floors_count: false,
        };
        (prepared, hanging)
    }

    /// The tables of the next hour.
    pub fn add_hour(&mut self, setup: &Setup, hanging: &mut [Hanging], hour: usize, given: &Given) {
        for ((side, board), hanging) in self.sides.iter_mut().zip(setup.sound_stores()).zip(hanging) {
            let pieces = hanging.pieces(&self.draws, hour, within(given.air_c, -60.0, 90.0));
            let mut entry = side.needs(&self.draws, pieces, &mut |part| self.refused.push((hour, part)));
            let sun_share = board.sun_share.get(hour).copied().unwrap_or(given.sun_share);
            entry.panel_w = sound(board.panel_w, MOST_W) * sound(sun_share, 2.0);
            entry.cap_w = side.store.inputs.together_w * side.store.charging.share_at(given.store_c);
            side.hours.push(entry);
        }
    }

    /// From an hour on, at whose beginning the stores hold what they open with; floors count. Hour 0 of the tables is that hour.
    pub fn from_hour(setup: &Setup, from: usize) -> Self {
        let mut prepared = Self::new(setup);
        let from = from.min(prepared.offers.len());
        for side in &mut prepared.sides {
            for (hour, entry) in side.hours.iter_mut().enumerate() {
                entry.panel_w *= prepared.cloud_by_day.get(hour / 24).copied().unwrap_or(1.0);
            }
            side.cut(from);
        }
        prepared.cloud_by_day.clear();
        prepared.offers.drain(..from);
        prepared.refused.retain_mut(|(hour, _)| {
            let is_later = *hour >= from;
            *hour -= from.min(*hour);
            is_later
        });
        Self { first_hour: from % 24, floors_count: true, ..prepared }
    }

    /// Whether a day begins for the run with an hour of the tables.
    #[inline]
    pub fn begins_day(&self, hour: usize) -> bool {
        hour == 0 || (hour + self.first_hour).is_multiple_of(24)
    }

    pub fn opening_wh(&self) -> Vec<f64> {
        self.sides.iter().map(|side| side.opening_wh).collect()
    }
}

impl Side {
    fn new(hours: usize, board: &OnBoard) -> Self {
        let store = board.store.made_sound();
        let full_wh = store.usable_wh;
        Self {
            cell: Cell {
                full_wh,
                knee_wh: least(full_wh * store.taper.from_state, full_wh),
                within: store.taper.within,
            },
            kept_per_hour: store.kept_per_hour(),
            opening_wh: least(full_wh * sound(board.opening_state, 1.0), full_wh),
            floor_wh: least(full_wh * sound(board.floor_state, 1.0), full_wh),
            hours: Vec::with_capacity(hours),
            uses: Vec::new(),
            use_ends: Vec::with_capacity(hours),
            has_chances: false,
            store,
        }
    }

    /// What an hour's pieces need of the cells; notes the uses.
    fn needs(&mut self, draws: &[Draw], pieces: &mut Vec<Piece>, refused: &mut impl FnMut(Refused)) -> SideHour {
        let mut parts = Vec::new();
        refuse(&self.store, draws, pieces, &mut parts);
        parts.into_iter().for_each(refused);
        let mut entry = SideHour {
            ac_peak_w: peaks(draws, pieces, Outlet::Ac).0,
            dc_peak_w: peaks(draws, pieces, Outlet::Dc).0,
            ..SideHour::default()
        };
        let mut ac_cells_per_wh = 0.0;
        if let Some(inverter) = &self.store.inverter {
            entry.fixed_wh =
                inverter.standby_w * inverter_share(inverter, draws, pieces) / self.store.discharge_efficiency;
            let ac_wh: f64 = pieces.iter().filter_map(|piece| outlet_wh(draws, piece, Outlet::Ac)).sum();
            if ac_wh > 0.0 {
                ac_cells_per_wh = inverter_wh(inverter, draws, pieces) / ac_wh / self.store.discharge_efficiency;
            }
        }
        for piece in pieces.iter() {
            let Some(draw) = draws.get(piece.draw) else { continue };
            let outlet_wh = draw.power_w * piece.duty * (piece.to - piece.from);
            let cells_per_wh = match draw.outlet {
                Outlet::Ac => ac_cells_per_wh,
                Outlet::Dc => 1.0 / self.store.discharge_efficiency,
            };
            let cells_wh = outlet_wh * cells_per_wh;
            if cells_wh <= LEAST_SHORT_WH {
                continue;
            }
            self.uses.push(Use { draw: piece.draw, outlet_wh, cells_wh, chance: draw.chance });
            if draw.chance < 1.0 {
                self.has_chances = true;
            } else {
                entry.certain_wh += cells_wh;
            }
        }
        self.use_ends.push(self.uses.len());
        entry
    }

    /// Takes away the hours before one.
    fn cut(&mut self, from: usize) {
        let uses = from.checked_sub(1).and_then(|before| self.use_ends.get(before).copied()).unwrap_or(0);
        self.hours.drain(..from.min(self.hours.len()));
        self.use_ends.drain(..from.min(self.use_ends.len()));
        self.use_ends.iter_mut().for_each(|end| *end -= uses);
        self.uses.drain(..uses);
    }

    /// What hangs on it in an hour.
    pub fn uses_of(&self, hour: usize) -> &[Use] {
        let from = hour.checked_sub(1).map_or(Some(0), |before| self.use_ends.get(before).copied());
        let to = self.use_ends.get(hour).copied();
        from.zip(to).and_then(|(from, to)| self.uses.get(from..to)).unwrap_or(&[])
    }

    /// Whether what does not come from the mains tapers too.
    pub fn tapers_all(&self) -> bool {
        self.store.taper.of == TaperOf::Every
    }
}

fn outlet_wh(draws: &[Draw], piece: &Piece, outlet: Outlet) -> Option<f64> {
    let draw = draws.get(piece.draw).filter(|draw| draw.outlet == outlet)?;
    Some(draw.power_w * piece.duty * (piece.to - piece.from))
}

/// The draws of a store, the most important first, with the temperatures of their boxes.
pub(super) struct Hanging {
    draws: Vec<usize>,
    box_c: Vec<f64>,
    pieces: Vec<Piece>,
}

impl Hanging {
    /// A draw of a store that is not there hangs on the last one.
    fn new(draws: &[Draw], store: usize, stores: usize) -> Self {
        let is_here = |draw: &Draw| draw.store.min(stores.saturating_sub(1)) == store;
        let mut here: Vec<usize> =
            draws.iter().enumerate().filter(|(_, draw)| is_here(draw)).map(|(at, _)| at).collect();
        here.sort_by_key(|at| std::cmp::Reverse(draws.get(*at).map(|draw| draw.importance)));
        let box_c = |at: &usize| match draws.get(*at).map(|draw| &draw.need) {
            Some(Need::Fridge(fridge)) => fridge.inside_c,
            _ => 0.0,
        };
        Self { box_c: here.iter().map(box_c).collect(), draws: here, pieces: Vec::new() }
    }

    fn pieces(&mut self, draws: &[Draw], hour: usize, air_c: f64) -> &mut Vec<Piece> {
        self.pieces.clear();
        for (at, box_c) in self.draws.iter().zip(&mut self.box_c) {
            if let Some(draw) = draws.get(*at) {
                pieces_into(draw, *at, hour / 24, hour % 24, air_c, box_c, &mut self.pieces);
            }
        }
        &mut self.pieces
    }
}
