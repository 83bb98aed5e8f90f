//! Work placed in time: activities that need open days, hands and tools, one after another, done as early as can be.
//!
//! Time is cut into slots of equal length. A slot is open for an activity when all its calendars are open there and each
//! resource could give what it demands. From the slot on which it starts, an activity works in the first open slots that
//! follow, as many as it needs; where it is not open it pauses and holds nothing. What works in a slot may not demand
//! more than there is. An activity starts when everything it comes after has ended, and so many slots of the clock later.
//!
//! ```
//! use kerbstead_core::days::schedule::{Activity, Search, Workload, first_schedule};
//! // Two days of four open slots each, one pair of hands: four slots of work, then three after a wait of two.
//! let open = vec![true, true, true, true, false, false, true, true, true, true];
//! let first = Activity { work_slots: 4, demands: vec![(0, 1)], ..Activity::default() };
//! let second = Activity { work_slots: 3, after: vec![(0, 2)], ..first.clone() };
//! let workload = Workload {
//!     slots: 10,
//!     resources: vec![vec![1; 10]],
//!     calendars: vec![open],
//!     activities: vec![first, second].into_iter().map(|it| Activity { calendars: vec![0], ..it }).collect(),
//! };
//! assert_eq!(first_schedule(&workload).finish, 9);
//! let mut search = Search::new(&workload);
//! while search.step() < 1.0 {}
//! assert!(search.is_proven() && search.best().finish == 9);
//! ```
//!
//! # Why lists are enough
//!
//! Placing a list one by one, each activity at the first start that leaves everything placed before as it is, is called
//! serial placement. Some list whose serial placement finishes first of all always exists:
//!
//! 1. Let an activity move from start s to an earlier start r. It still works in as many open slots, so it ends no
//!    later, and of the slots from s on it uses only such as it used before: those it gained lie before s, those it lost
//!    are its last. This also holds for work in one go.
//! 2. Take any best schedule and list its activities by their starts there, what comes after behind what it comes after.
//!    Assume that serial placement has put the first of the list no later than the best schedule has them. For the next
//!    one, which starts at s there, none of them started after s there; so by 1 they use from s on no more than they do
//!    there, and they end no later. Hence s is free for it, and it is placed at s or before.
//! 3. So no activity ends later than in the best schedule, and the finish is no later.
//!
//! The same argument read backwards in time holds for placing each activity as late as can be.

mod board;
mod bounds;
mod chain;
mod ground;
mod hindrance;
mod improve;
mod memo;
mod pert;
mod placing;
mod runs;
mod search;
mod serial;
mod slack;
mod tree;

pub use chain::{Link, Why, critical_chain};
pub use hindrance::{Hindrance, Lack, circle};
pub use pert::{Durations, draw as drawn_duration, pert_mean, pert_variance};
pub use placing::Placing;
pub use runs::{Chances, Runs, Weather};
pub use search::{Search, first_schedule};
pub use slack::{slack_slots, total_float_slots};

/// The most slots that are looked at: more than five years of half hours. What would need later ones is not placed.
pub const MOST_SLOTS: usize = 100_000;

/// Work to be placed in time, which is cut into slots of equal length from slot 0 on.
///
/// What points nowhere is ignored: calendars, resources and activities that do not exist. A list that is shorter than
/// `slots` is closed, or has nothing, from its end on.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Workload {
    /// How many slots there are; of more than [`MOST_SLOTS`] the first count.
    pub slots: usize,
    /// What each resource has, slot by slot.
    pub resources: Vec<Vec<u16>>,
    /// Which slots are open.
    pub calendars: Vec<Vec<bool>>,
    /// What is to be done.
    pub activities: Vec<Activity>,
}

/// Something to be done.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Activity {
    /// Slots of work; 0 is nothing to do, a milestone, which needs neither open slots nor resources.
    pub work_slots: u32,
    /// The calendars that must all be open.
    pub calendars: Vec<usize>,
    /// A resource, and how much of it is needed in every slot of work.
    pub demands: Vec<(usize, u16)>,
    /// The first slot on which it may start.
    pub earliest: usize,
    /// Whether its slots of work must follow one another without a pause.
    pub in_one_go: bool,
    /// The activities it comes after, and how many slots of the clock lie between their end and its start.
    pub after: Vec<(usize, u32)>,
}

/// When an activity is done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Span {
    /// Its first slot of work.
    pub start: usize,
    /// The slot after its last slot of work; the start, for a milestone.
    pub end: usize,
}

/// Where each activity was placed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Schedule {
    /// The span of each activity; none when it could not be placed.
    pub spans: Vec<Option<Span>>,
    /// The latest end of those placed; 0 when there are none.
    pub finish: usize,
    /// The activities that were placed, by their starts, each behind what it comes after.
    pub order: Vec<usize>,
    /// The others, and what keeps each of them from being placed.
    pub not_placed: Vec<(usize, Hindrance)>,
}
