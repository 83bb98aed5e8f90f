//! Arranging for somebody: where all of it could stand so that it fits, one gets through, and every wish is kept.
//!
//! ```
//! use kerbstead_core::space::arrange::{Freedom, Search, State, Wish};
//! use kerbstead_core::space::item::{Item, Layout};
//! use kerbstead_core::space::shape::{Door, Shape};
//! use kerbstead_core::space::walkway::{Body, Place};
//! let door = Door { wall: 0, from_mm: 1_200, width_mm: 900, height_mm: 1_500, ..Door::default() };
//! let shape = Shape { doors: vec![door], ..Shape::square(3_000, 1_700) };
//! let bed = Item { length_mm: 1_900, width_mm: 800, height_mm: 450, ..Item::default() };
//! let kitchen = Item { length_mm: 1_000, width_mm: 500, height_mm: 850, ..Item::default() };
//! let mut wish = Wish {
//!     layout: Layout { shape, items: vec![bed, kitchen], together: vec![] },
//!     freedoms: vec![Freedom::Moves { may_turn: true }; 2],
//!     ways: vec![(Place::Door(0), Place::Beside { item: 0, side: None })],
//!     body: Body { width_mm: 500, from_mm: 0, to_mm: 1_900 },
//!     wanted: 3,
//!     ..Wish::default()
//! };
//! let mut search = Search::new(&wish);
//! while search.step() < 1.0 {}
//! assert_eq!((search.state(), search.found().len()), (State::Found, 3));
//! wish.layout.items.push(Item { length_mm: 2_900, width_mm: 1_000, height_mm: 450, ..Item::default() });
//! wish.freedoms.push(Freedom::Moves { may_turn: false });
//! let mut search = Search::new(&wish);
//! while search.step() < 1.0 {}
//! assert_eq!(search.state(), State::Impossible);
//! ```
//!
//! Three kinds of work take turns, all of it in the same order every time:
//! - `proof.rs` tries to show that there is no arrangement: that what may not be moved is in its own way, or that the
//!   rectangles do not fit on the floor beside it, the doors and the ways, whatever else is wished;
//! - `corridors.rs` keeps a straight way free, or one with a corner, and lets [`rectangles`](super::rectangles) decide
//!   about the rest;
//! - `dives.rs` puts one thing after another where it touches the most, goes back where it cannot go on, and begins again
//!   in another order.
//!
//! Whatever they come up with is checked as a whole by [`fit`](super::fit), by [`walkway`](super::walkway) and rule by rule
//! before it is given. That nothing was found proves nothing, and [`State::NotFound`] says so.

mod board;
mod corridors;
mod dives;
mod proof;
mod rules;

pub use rules::{Rule, Side};

use super::constants::MOST_MM;
use super::item::{Item, Layout};
use super::walkway::{Body, Place};
use board::Board;
use corridors::Corridors;
use dives::Dives;
use proof::Proof;

/// How much work is done before nothing is said to be found: about a second on a plain computer.
const MOST_WORK: u32 = 20_000;
/// The work of one step: a few milliseconds.
const WORK_OF_A_STEP: u32 = 12;
/// Arrangements count as different when something stands at least so far elsewhere, or is turned. Common practice, no
/// source.
const DIFFERENT_MM: i32 = 250;

/// What is wished.
#[derive(Clone, Debug, PartialEq)]
pub struct Wish {
    /// The van and what is to stand in it; where movable things stand in it does not count.
    pub layout: Layout,
    /// What may be done with each item; what is missing is pinned.
    pub freedoms: Vec<Freedom>,
    /// What is to be kept.
    pub rules: Vec<Rule>,
    /// From where to where one has to get through.
    pub ways: Vec<(Place, Place)>,
    /// Who has to.
    pub body: Body,
    /// How many different arrangements are wanted.
    pub wanted: usize,
}

/// What may be done with an item.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Freedom {
    /// It stays where it is.
    #[default]
    Pinned,
    /// It may be moved on the floor, at its height.
    Moves {
        /// Also turned by quarters.
        may_turn: bool,
    },
}

/// How a search stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// It goes on.
    Searching,
    /// At least one arrangement was found; fewer than were wanted does not mean that there are no more.
    Found,
    /// There is none, and that is proven.
    Impossible,
    /// None was found. There may be one.
    NotFound,
}

/// A search that goes on step by step. The same wish always gives the same arrangements.
pub struct Search {
    wish: Wish,
    state: State,
    found: Vec<Vec<Item>>,
    work: u32,
    proof: Proof,
    corridors: Corridors,
    dives: Dives,
}

impl Default for Wish {
    fn default() -> Self {
        Self {
            layout: Layout::default(),
            freedoms: Vec::new(),
            rules: Vec::new(),
            ways: Vec::new(),
            body: Body { width_mm: 0, from_mm: 0, to_mm: 0 },
            wanted: 1,
        }
    }
}

impl Wish {
    /// Whether a layout keeps all of it.
    pub fn is_kept_by(&self, layout: &Layout) -> bool {
        super::fit::fit(layout).is_clear()
            && self.rules.iter().all(|rule| rule.is_kept(layout))
            && rules::all_ways_pass(layout, &self.body, &self.ways)
    }

    fn moves(&self, item: usize) -> Option<bool> {
        match self.freedoms.get(item) {
            Some(Freedom::Moves { may_turn }) => Some(*may_turn),
            Some(Freedom::Pinned) | None => None,
        }
    }

    fn movable(&self) -> Vec<usize> {
        (0..self.layout.items.len()).filter(|item| self.moves(*item).is_some() && self.is_inside(*item)).collect()
    }

    fn is_inside(&self, item: usize) -> bool {
        self.layout.items.get(item).is_some_and(Item::is_inside)
    }
}

impl Search {
    /// Prepares it.
    pub fn new(wish: &Wish) -> Self {
        let width_mm = wish.body.width_mm.clamp(0, MOST_MM);
        let wish = &Wish { body: Body { width_mm, ..wish.body }, ..wish.clone() };
        let board = Board::new(wish);
        let state = if proof::pinned_are_in_their_own_way(wish, &board) { State::Impossible } else { State::Searching };
        Self {
            state,
            found: Vec::new(),
            work: 0,
            proof: Proof::new(wish),
            corridors: Corridors::new(wish),
            dives: Dives::new(wish, board),
            wish: wish.clone(),
        }
    }

    /// Goes on for a few milliseconds, and gives the share that is done: 1 when the search is over.
    pub fn step(&mut self) -> f64 {
        let until = self.work + WORK_OF_A_STEP;
        while self.state == State::Searching && self.work < until {
            self.work += self.work_a_little();
            if self.found.len() >= self.wish.wanted {
                self.state = State::Found;
            } else if self.work >= MOST_WORK {
                self.state = if self.found.is_empty() { State::NotFound } else { State::Found };
            }
        }
        if self.state == State::Searching { f64::from(self.work) / f64::from(MOST_WORK) } else { 1.0 }
    }

    /// How it stands.
    pub fn state(&self) -> State {
        self.state
    }

    /// The arrangements so far: all items, each where it stands.
    pub fn found(&self) -> &[Vec<Item>] {
        &self.found
    }

    /// Each kind of work in turn; gives what it cost.
    fn work_a_little(&mut self) -> u32 {
        let mut cost = 0;
        if self.found.is_empty() {
            // The longer nothing is found, the likelier there is nothing.
            cost += self.proof.work(if self.work < MOST_WORK / 8 { 1 } else { 4 });
            if self.proof.is_done() {
                self.state = State::Impossible;
                return cost;
            }
        }
        let (more, layout) = self.corridors.work(&self.wish);
        self.take(layout);
        let (most, layout) = self.dives.work(&self.wish);
        self.take(layout);
        cost + more + most
    }

    /// Keeps what is right and not yet there.
    fn take(&mut self, layout: Option<Layout>) {
        if let Some(layout) = layout
            && self.found.iter().all(|other| differ(other, &layout.items))
            && self.wish.is_kept_by(&layout)
        {
            self.found.push(layout.items);
        }
    }
}

fn differ(first: &[Item], second: &[Item]) -> bool {
    first.iter().zip(second).any(|(one, other)| {
        let far = |one: i32, other: i32| one.saturating_sub(other).saturating_abs() >= DIFFERENT_MM;
        let quarter = |item: &Item| libm::round(item.turn_deg / 90.0) % 2.0 != 0.0;
        let ([x, y], [other_x, other_y]) = (board::corner(one), board::corner(other));
        far(x, other_x) || far(y, other_y) || quarter(one) != quarter(other)
    })
}
