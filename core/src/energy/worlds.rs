//! Runs whose days are drawn elsewhere, for whoever draws more than what is known here: eight at once, each with its own
//! clouds, driving, mains and uses, and what each of them came to.
//!
//! ```
//! use kerbstead_core::energy::draw::Draw;
//! use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
//! use kerbstead_core::energy::store::Store;
//! use kerbstead_core::energy::worlds::Worlds;
//! // 240 Wh and a lamp of 10 W: it lasts a day if the lamp burns no longer than it likely does.
//! let setup = Setup {
//!     stores: vec![OnBoard::full(Store::ideal(240.0))],
//!     draws: vec![Draw { power_w: 10.0, ..Draw::default() }],
//!     hours: vec![Given::default(); 24],
//!     cloud_by_day: vec![],
//! };
//! let worlds = Worlds::from_hour(&setup, 0, &[true]);
//! let outcomes = worlds.run(&mut |_, today| today.uses[0] = [0.5, 1.0, 2.0, 3.0, 1.0, 1.0, 1.0, 1.0]);
//! assert_eq!(outcomes.map(|outcome| outcome.first_short_hour)[..4], [None, None, Some(12), Some(8)]);
//! assert_eq!(outcomes[0].spare_wh, 120.0);
//! ```

pub use super::lanes::{LANES, Lane, Today};

use super::lanes::Lanes;
use super::prepare::{Prepared, Side};
use super::setup::Setup;
use super::several::Several;
use super::step::Factors;
use super::whole;

/// Any chance below 1 makes the engine ask each day how much of a draw's use counts; how great it is does not matter here.
const ASKED_FOR: f64 = 0.5;

/// A setup from an hour on, ready for runs whose days are given.
pub struct Worlds {
    prepared: Prepared,
}

/// What a run came to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Outcome {
    /// The first hour in which something was not served or a store fell below its floor, counted from the hour with which the
    /// run began.
    pub first_short_hour: Option<usize>,
    /// The store that did, by its position.
    pub store: usize,
    /// The least that all stores held above their floors, in Wh, less all that was not served.
    pub spare_wh: f64,
}

impl Worlds {
    /// Prepares runs that begin with an hour of the setup: what the stores open with is in them then. `varies` says of each
    /// draw whether its use is given; of others all counts.
    pub fn from_hour(setup: &Setup, from_hour: usize, varies: &[bool]) -> Self {
        let mut setup = setup.clone();
        for (draw, _) in setup.draws.iter_mut().zip(varies).filter(|(_, varies)| **varies) {
            draw.chance = ASKED_FOR;
        }
        Self { prepared: Prepared::from_hour(&setup, from_hour) }
    }

    /// Makes eight runs. `begin_day` is asked when a day begins, with the number of the day from 0, and changes what was so the
    /// day before.
    pub fn run(&self, begin_day: &mut dyn FnMut(usize, &mut Today)) -> [Outcome; LANES] {
        let mut days = 0..;
        let mut begin_day = |_: usize, today: &mut Today| begin_day(days.next().unwrap_or(usize::MAX), today);
        match self.prepared.sides.as_slice() {
            [] => [Outcome::default(); LANES],
            [side] => self.of_one(side, &mut begin_day),
            _ => self.of_several(&mut begin_day),
        }
    }

    fn of_one(&self, side: &Side, begin_day: &mut dyn FnMut(usize, &mut Today)) -> [Outcome; LANES] {
        let mut today = Today::likely(self.prepared.draws.len());
        let ended = Lanes::<true>::new(&self.prepared, side, &mut today, begin_day).run(|_, _| {});
        std::array::from_fn(|lane| Outcome {
            first_short_hour: hour(ended.first_short[lane]),
            store: 0,
            spare_wh: ended.lowest_wh[lane] - side.floor_wh - ended.unserved_wh[lane],
        })
    }

    fn of_several(&self, begin_day: &mut dyn FnMut(usize, &mut Today)) -> [Outcome; LANES] {
        let prepared = &self.prepared;
        let mut today = Today::likely(prepared.draws.len());
        let mut uses = vec![vec![1.0; prepared.draws.len()]; LANES];
        let mut courses = vec![Several::new(prepared); LANES];
        for (number, likely) in prepared.offers.iter().enumerate() {
            if prepared.begins_day(number) {
                begin_day(number / 24, &mut today);
                for (lane, uses) in uses.iter_mut().enumerate() {
                    uses.iter_mut().zip(&today.uses).for_each(|(of, all)| *of = all[lane]);
                }
            }
            for (lane, (course, uses)) in courses.iter_mut().zip(&uses).enumerate() {
                let factors = Factors { cloud: today.cloud[lane], drive: 1.0, scale: today.scale[lane], happens: uses };
                course.hour(prepared, number, today.offer(*likely, lane), factors);
            }
        }
        let floors_wh: f64 = prepared.sides.iter().map(|side| side.floor_wh).sum();
        std::array::from_fn(|lane| {
            courses.get(lane).map_or(Outcome::default(), |course| Outcome {
                first_short_hour: course.first_short.map(|(hour, _)| hour),
                store: course.first_short.map_or(0, |(_, store)| store),
                spare_wh: course.lowest_wh - floors_wh - course.unserved_wh,
            })
        })
    }
}

fn hour(first_short: f64) -> Option<usize> {
    (first_short < f64::INFINITY).then(|| whole(first_short))
}
