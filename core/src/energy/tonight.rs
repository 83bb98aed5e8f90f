//! From a reading on: how long what is in the stores lasts, how sure that is, and what to go without.
//!
//! ```
//! use kerbstead_core::energy::chance::Uncertainty;
//! use kerbstead_core::energy::draw::Draw;
//! use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
//! use kerbstead_core::energy::store::Store;
//! use kerbstead_core::energy::tonight::tonight;
//! let lamp = Draw { power_w: 20.0, importance: 1, ..Draw::default() };
//! let radio = Draw { power_w: 5.0, ..Draw::default() };
//! let setup = Setup {
//!     // Read at 18:00: 110 Wh.
//!     stores: vec![OnBoard { opening_state: 0.2, ..OnBoard::full(Store::ideal(550.0)) }],
//!     draws: vec![lamp, radio],
//!     hours: vec![Given::default(); 48],
//!     cloud_by_day: vec![],
//! };
//! let tonight = tonight(&setup, 18, Some(23), &[true, true], &Uncertainty::default(), 7, 100);
//! assert_eq!((tonight.lasts_to, tonight.one_in_ten), (Some(4.4), Some(4.0)));
//! assert!(!tonight.reaches);
//! // Without the radio it lasts until half past eleven.
//! assert_eq!((tonight.sheds[0].draw, tonight.sheds[0].lasts_to), (1, Some(5.5)));
//! ```

use super::chance::{Chances, Runs, Uncertainty};
use super::constants::MOST_RESERVE_H;
use super::draw::Days;
use super::lasting::lasts_to;
use super::prepare::Prepared;
use super::run::{Limit, run_prepared};
use super::setup::Setup;
use super::whole;

/// What a reading says. Hours are counted from it; an hour of the setup is counted from the midnight before it.
#[derive(Clone, Debug, PartialEq)]
pub struct Tonight {
    /// When something is first not served for want of energy, or a floor is broken, in the run without chances: exactly with one
    /// store and steady hours. None if all is served through the last hour.
    pub lasts_to: Option<f64>,
    /// Nine runs in ten last at least so long, in whole hours, and one does not last an hour longer. None if fewer than one in ten
    /// fall short.
    pub one_in_ten: Option<f64>,
    /// Whether it lasts until the hour that was asked about, or else through all hours, in the run without chances.
    pub reaches: bool,
    /// In what share of the runs it does; none if there were none.
    pub share_reaching: Option<f64>,
    /// What the outlets do not bear in the meantime, whatever is in the stores; it counts in nothing else here.
    pub refused: Option<Limit>,
    /// How many hours were asked about.
    pub wanted_hours: usize,
    /// What to go without until it reaches: one after another, or all that helps if it never does.
    pub sheds: Vec<Shed>,
}

/// A draw to go without, besides those before it in the list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shed {
    /// Its position in the setup.
    pub draw: usize,
    /// What it would have taken at its outlet until the hour that was asked about, in Wh.
    pub wh_saved: f64,
    /// As [`Tonight::lasts_to`], without it and those before it.
    pub lasts_to: Option<f64>,
}

/// Looks ahead from the hour of the setup at whose beginning the stores hold what they open with. `until_hour` is an hour of the
/// setup, too; draws without a true `may_shed` are never shed. Least important draws are shed first, of equal ones that which
/// alone wins most time for each Wh, of equal ones again the later in the list; what wins nothing is left alone.
pub fn tonight(
    setup: &Setup,
    from_hour: usize,
    until_hour: Option<usize>,
    may_shed: &[bool],
    uncertainty: &Uncertainty,
    seed: u64,
    runs: u32,
) -> Tonight {
    let mut runs = Runs::from_hour(setup, from_hour, uncertainty, seed, runs);
    while runs.step(1_000) > 0 {}
    tonight_without_chances(setup, from_hour, until_hour, may_shed).with_chances(&runs.chances())
}

/// The same without the runs by chance, for a caller who makes those of [`Runs::from_hour`] in slices and hands them to
/// [`Tonight::with_chances`].
pub fn tonight_without_chances(
    setup: &Setup,
    from_hour: usize,
    until_hour: Option<usize>,
    may_shed: &[bool],
) -> Tonight {
    let ahead = Ahead::new(setup, from_hour, until_hour);
    let prepared = ahead.without(&[]);
    let lasts_to = lasts_to(&prepared);
    let is_ahead = |hour: usize| hour < ahead.wanted_hours;
    Tonight {
        lasts_to,
        one_in_ten: None,
        reaches: ahead.reaches(lasts_to),
        share_reaching: None,
        refused: prepared.refused.iter().find(|(hour, _)| is_ahead(*hour)).map(|(_, part)| part.limit),
        wanted_hours: ahead.wanted_hours,
        sheds: ahead.sheds(&prepared, lasts_to, may_shed),
    }
}

impl Tonight {
    /// Adds what the runs of [`Runs::from_hour`] came to, of the same setup and hour.
    #[must_use]
    pub fn with_chances(self, chances: &Chances) -> Self {
        let tenth = (chances.runs as usize).div_ceil(10).max(1);
        Self {
            one_in_ten: chances.first_short_hours.get(tenth - 1).copied(),
            share_reaching: (chances.runs > 0).then(|| chances.reaching_hour(self.wanted_hours)),
            ..self
        }
    }
}

/// What a draw costs from an hour of the setup on, in hours: how much sooner the stores fall short with it than without it, as
/// [`Tonight::lasts_to`] counts; where they do not without it, at least so much. If they never do, so many hours of reserve less
/// at the moment at which its store is lowest. None if there is no such draw, or nothing else to draw on that reserve.
///
/// ```
/// use kerbstead_core::energy::draw::Draw;
/// use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
/// use kerbstead_core::energy::store::Store;
/// use kerbstead_core::energy::tonight::cost_in_hours;
/// let draw = |power_w| Draw { power_w, ..Draw::default() };
/// let setup = Setup {
///     stores: vec![OnBoard::full(Store::ideal(120.0))],
///     draws: vec![draw(10.0), draw(2.0)],
///     hours: vec![Given::default(); 48],
///     cloud_by_day: vec![],
/// };
/// assert_eq!(cost_in_hours(&setup, 0, 1), Some(2.0));
/// ```
pub fn cost_in_hours(setup: &Setup, from_hour: usize, draw: usize) -> Option<f64> {
    let ahead = Ahead::new(setup, from_hour, None);
    let (with, without) = (ahead.without(&[]), ahead.without(&[draw]));
    let of = with.draws.get(draw)?;
    match (lasts_to(&with), lasts_to(&without)) {
        (None, None) => {
            let at = of.store;
            let (with, without) = (run_prepared(with), run_prepared(without));
            let at = at.min(with.stores.len().checked_sub(1)?);
            let (with, without) = (with.stores.get(at)?, without.stores.get(at)?);
            let reserve_h = *without.reserve_h.get(with.lowest_hour)?;
            (reserve_h < MOST_RESERVE_H).then_some(reserve_h - with.reserve_h.get(with.lowest_hour)?)
        }
        (with_h, without_h) => Some(ahead.to_end(without_h) - ahead.to_end(with_h)),
    }
}

/// What is looked at.
struct Ahead<'a> {
    setup: &'a Setup,
    from_hour: usize,
    /// Hours from the reading to the one that was asked about.
    wanted_hours: usize,
    /// Hours from the reading to the end.
    all_hours: usize,
}

impl<'a> Ahead<'a> {
    fn new(setup: &'a Setup, from_hour: usize, until_hour: Option<usize>) -> Self {
        let all_hours = setup.hour_count().saturating_sub(from_hour);
        let wanted_hours = until_hour.map_or(all_hours, |until| until.saturating_sub(from_hour).min(all_hours));
        Self { setup, from_hour, wanted_hours, all_hours }
    }

    fn without(&self, shed: &[usize]) -> Prepared {
        let mut setup = self.setup.clone();
        for at in shed {
            if let Some(draw) = setup.draws.get_mut(*at) {
                draw.days = Days::These(Vec::new());
            }
        }
        Prepared::from_hour(&setup, self.from_hour)
    }

    fn reaches(&self, lasts_to: Option<f64>) -> bool {
        lasts_to.is_none_or(|hours| hours >= self.wanted_hours as f64)
    }

    fn to_end(&self, lasts_to: Option<f64>) -> f64 {
        lasts_to.unwrap_or(self.all_hours as f64)
    }

    fn sheds(&self, prepared: &Prepared, mut lasts_h: Option<f64>, may_shed: &[bool]) -> Vec<Shed> {
        let mut sheds: Vec<Shed> = Vec::new();
        let mut gone = Vec::new();
        if self.reaches(lasts_h) {
            return sheds;
        }
        let mut left = self.in_order(prepared, lasts_h, may_shed);
        // What wins nothing at first may do so later, when what it takes comes before the end. Each round sheds something or
        // is the last, and no more runs are made than four for each draw.
        let mut runs_left = left.len() * 4;
        while !self.reaches(lasts_h) {
            let next = left.iter().position(|at| {
                if runs_left == 0 || wh_until(prepared, *at, whole(self.to_end(lasts_h)) + 1) <= 0.0 {
                    return false;
                }
                runs_left -= 1;
                gone.push(*at);
                let without_h = lasts_to(&self.without(&gone));
                let wins = self.to_end(without_h) > self.to_end(lasts_h);
                if wins {
                    lasts_h = without_h;
                } else {
                    gone.truncate(gone.len() - 1);
                }
                wins
            });
            let Some(next) = next else { break };
            let draw = left.remove(next);
            sheds.push(Shed { draw, wh_saved: wh_until(prepared, draw, self.wanted_hours), lasts_to: lasts_h });
        }
        sheds
    }

    /// What may be shed, the first to go without first.
    fn in_order(&self, prepared: &Prepared, lasts_h: Option<f64>, may_shed: &[bool]) -> Vec<usize> {
        let may = |at: &usize| may_shed.get(*at).copied().unwrap_or(false);
        let mut ranks: Vec<(u8, f64, usize)> = Vec::new();
        for (at, draw) in prepared.draws.iter().enumerate().filter(|(at, _)| may(at)) {
            let wh = wh_until(prepared, at, self.wanted_hours);
            if wh > 0.0 {
                let won_h = self.to_end(lasts_to(&self.without(&[at]))) - self.to_end(lasts_h);
                ranks.push((draw.importance, won_h / wh, at));
            }
        }
        ranks.sort_by(|a, b| a.0.cmp(&b.0).then(b.1.total_cmp(&a.1)).then(b.2.cmp(&a.2)));
        ranks.into_iter().map(|(_, _, at)| at).collect()
    }
}

/// What a draw asks for at its outlet before an hour of the tables, in Wh.
fn wh_until(prepared: &Prepared, draw: usize, hour: usize) -> f64 {
    let hours = 0..hour.min(prepared.offers.len());
    let uses = prepared.sides.iter().flat_map(|side| hours.clone().flat_map(|hour| side.uses_of(hour)));
    uses.filter(|one| one.draw == draw).map(|one| one.outlet_wh * one.chance).sum()
}
