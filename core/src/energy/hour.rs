//! One hour of a store, exactly. Everything is at the cells, steady within the hour.
//!
//! Above the knee what tapers comes in as `tapered * (full - charge) / (full - knee)`, so that the charge obeys a linear
//! equation: it nears, exponentially, the level at which as much comes in as goes out. When it meets the knee, the top or the
//! bottom has a closed form on both sides of the knee. An hour is at most four pieces.

use super::store::TaperWithin;
use super::{least, most, sound};

/// Less power coming in does not taper either, in W.
const LEAST_W: f64 = 1e-6;
/// Less room above the knee is none, in Wh.
const LEAST_WH: f64 = 1e-6;

/// What an hour needs to know of a store.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Cell {
    pub full_wh: f64,
    pub knee_wh: f64,
    pub within: TaperWithin,
}

/// What reaches the cells when they are far from full, and what is taken, in W.
#[derive(Clone, Copy, Debug, PartialEq)]
#[expect(clippy::struct_field_names, reason = "units stand in names")]
pub(super) struct Rates {
    /// Comes in at any charge.
    pub steady_w: f64,
    /// Comes in below the knee, and tapers above.
    pub tapered_w: f64,
    /// Is taken.
    pub out_w: f64,
}

/// What an hour did: `after = before + put_in - taken_out`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[expect(clippy::struct_field_names, reason = "units stand in names")]
pub(super) struct Flow {
    pub after_wh: f64,
    pub put_in_wh: f64,
    pub taken_out_wh: f64,
    /// Asked for, and not there.
    pub unserved_wh: f64,
}

impl Cell {
    /// Whether the charge follows a straight line through the hour, up to the top and the bottom.
    #[inline]
    pub fn is_straight(&self, before_wh: f64, raw_wh: f64) -> bool {
        before_wh <= self.knee_wh && raw_wh <= self.knee_wh
    }

    /// One hour from a charge between 0 and full.
    #[inline]
    pub fn hour(&self, before_wh: f64, rates: Rates) -> Flow {
        let in_w = rates.steady_w + rates.tapered_w;
        if rates.tapered_w <= LEAST_W || self.is_straight(before_wh, before_wh + in_w - rates.out_w) {
            return self.straight(before_wh, in_w, rates.out_w);
        }
        if self.within == TaperWithin::AtStart {
            let in_w = rates.steady_w + rates.tapered_w * self.taken_share(before_wh);
            return self.straight(before_wh, in_w, rates.out_w);
        }
        if self.full_wh - self.knee_wh < LEAST_WH {
            return self.straight(before_wh, in_w, rates.out_w);
        }
        self.in_pieces(before_wh, rates)
    }

    /// Hours until the charge meets a level, at rates that last; infinite if it never does. It may be above or below. A taper
    /// that goes by the hour's beginning is counted so for an hour alone.
    pub fn hours_until(&self, from_wh: f64, rates: Rates, level_wh: f64) -> f64 {
        let rate_w = rates.steady_w + rates.tapered_w - rates.out_w;
        if rates.tapered_w <= LEAST_W || self.full_wh - self.knee_wh < LEAST_WH {
            return line_h(from_wh, level_wh, rate_w);
        }
        if self.within == TaperWithin::AtStart {
            let refused_w = rates.tapered_w * (1.0 - self.taken_share(from_wh));
            return line_h(from_wh, level_wh, rate_w - refused_w);
        }
        let below = |charge_wh: f64| least(charge_wh, self.knee_wh);
        let above = |charge_wh: f64| most(charge_wh, self.knee_wh);
        line_h(below(from_wh), below(level_wh), rate_w) + self.curve_h(above(from_wh), above(level_wh), rates)
    }

    /// The same between charges above the knee: the distance from the level that the charge nears shrinks exponentially.
    fn curve_h(&self, from_wh: f64, to_wh: f64, rates: Rates) -> f64 {
        let per_h = rates.tapered_w / (self.full_wh - self.knee_wh);
        let distance_wh = from_wh - self.full_wh + (rates.out_w - rates.steady_w) / per_h;
        let moved = (to_wh - from_wh) / distance_wh;
        match () {
            () if from_wh.to_bits() == to_wh.to_bits() => 0.0,
            () if moved < 0.0 && moved > -1.0 => -libm::log1p(moved) / per_h,
            () => f64::INFINITY,
        }
    }

    /// Share that a store takes of what tapers.
    #[inline]
    pub fn taken_share(&self, charge_wh: f64) -> f64 {
        least((self.full_wh - charge_wh) / most(self.full_wh - self.knee_wh, 1e-300), 1.0)
    }

    /// An hour at a constant rate, cut at the top and the bottom: it stays at either once it is there.
    #[inline]
    fn straight(&self, before_wh: f64, in_w: f64, out_w: f64) -> Flow {
        let raw_wh = before_wh + in_w - out_w;
        let after_wh = most(least(raw_wh, self.full_wh), 0.0);
        let unserved_wh = most(-raw_wh, 0.0);
        let taken_out_wh = most(out_w - unserved_wh, 0.0);
        Flow { after_wh, put_in_wh: most(after_wh - before_wh + taken_out_wh, 0.0), taken_out_wh, unserved_wh }
    }

    #[inline(never)]
    fn in_pieces(&self, before_wh: f64, rates: Rates) -> Flow {
        let (mut charge_wh, mut left_h, mut unserved_wh) = (before_wh, 1.0, 0.0);
        for _ in 0..4 {
            if left_h <= 0.0 {
                break;
            }
            let rate_w = rates.steady_w + rates.tapered_w - rates.out_w;
            let is_above = charge_wh > self.knee_wh || (charge_wh >= self.knee_wh && rate_w >= 0.0);
            if is_above {
                (charge_wh, left_h) = self.above(charge_wh, rates, rate_w, left_h);
            } else if rate_w < 0.0 && charge_wh <= 0.0 {
                unserved_wh -= rate_w * left_h;
                left_h = 0.0;
            } else {
                let bound_wh = if rate_w < 0.0 { 0.0 } else { self.knee_wh };
                let until_h = if rate_w == 0.0 { left_h } else { (bound_wh - charge_wh) / rate_w };
                charge_wh = if until_h < left_h { bound_wh } else { charge_wh + rate_w * left_h };
                left_h = sound(left_h - until_h, 1.0);
            }
        }
        let after_wh = most(least(charge_wh, self.full_wh), 0.0);
        let taken_out_wh = most(rates.out_w - unserved_wh, 0.0);
        Flow { after_wh, put_in_wh: most(after_wh - before_wh + taken_out_wh, 0.0), taken_out_wh, unserved_wh }
    }

    /// A piece above the knee, until the knee, the top or the end; gives the charge and the hours that are left then.
    /// `expm1` and `log1p` keep a trickle from drowning in the rounding of the level that the charge nears.
    fn above(&self, charge_wh: f64, rates: Rates, rate_w: f64, left_h: f64) -> (f64, f64) {
        let per_h = rates.tapered_w / (self.full_wh - self.knee_wh);
        let deficit_w = rates.out_w - rates.steady_w;
        if deficit_w < 0.0 {
            // More comes in steadily than goes out: it reaches the top, and stays there.
            let until_h = libm::log1p((charge_wh - self.full_wh) * per_h / deficit_w) / per_h;
            if until_h < left_h {
                return (self.full_wh, 0.0);
            }
        } else if rate_w < 0.0 && charge_wh > self.knee_wh {
            let until_h = libm::log1p((charge_wh - self.knee_wh) * per_h / -rate_w) / per_h;
            if until_h < left_h {
                return (self.knee_wh, left_h - until_h);
            }
        }
        let above_level_wh = charge_wh - self.full_wh + deficit_w / per_h;
        (charge_wh + above_level_wh * libm::expm1(-per_h * left_h), 0.0)
    }
}

/// Hours along a straight line; infinite if it leads elsewhere.
fn line_h(from_wh: f64, to_wh: f64, rate_w: f64) -> f64 {
    let hours = (to_wh - from_wh) / rate_w;
    match () {
        () if from_wh.to_bits() == to_wh.to_bits() => 0.0,
        () if hours >= 0.0 => hours,
        () => f64::INFINITY,
    }
}
