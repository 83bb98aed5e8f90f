//! A schedule placed again and again, with other durations and other days.

use super::board::Board;
use super::ground::{Ground, WORD};
use super::serial::ready;
use super::{Schedule, Span, Workload};

/// What a schedule has placed, ready to be placed anew in its order, each as early as can be.
pub struct Placing {
    ground: Ground,
    board: Board,
    list: Vec<usize>,
    /// Which profiles the weather closes.
    is_outside: Vec<bool>,
    slots_per_day: usize,
    open: Vec<u64>,
}

impl Placing {
    /// Of a schedule of the workload; `outside` are the calendars that the weather closes, slot 0 begins a day.
    pub fn new(workload: &Workload, schedule: &Schedule, outside: &[usize], slots_per_day: usize) -> Self {
        let ground = Ground::new(workload);
        let mut is_outside = vec![false; ground.profiles()];
        for (act, activity) in ground.acts.iter().zip(&workload.activities) {
            is_outside[act.profile] |= activity.calendars.iter().any(|it| outside.contains(it));
        }
        Self {
            board: Board::new(&ground),
            list: listed(&ground, schedule),
            is_outside,
            slots_per_day,
            open: ground.open.clone(),
            ground,
        }
    }

    /// Activities times the words of slots that each is looked at in: what placing takes.
    pub(crate) fn effort(&self) -> usize {
        self.list.len().max(1) * (self.ground.words + 24)
    }

    /// How many days there are.
    pub fn days(&self) -> usize {
        self.ground.slots.checked_div(self.slots_per_day).map_or(0, |_| self.ground.slots.div_ceil(self.slots_per_day))
    }

    /// Closes what needs the weather on the days of which it is said, and opens it on all others. Each day is asked once, in
    /// their order.
    pub fn close_days(&mut self, is_closed: &mut dyn FnMut(usize) -> bool) {
        let words = self.ground.words;
        let mut dry = vec![u64::MAX; words];
        for day in 0..self.days() {
            if !is_closed(day) {
                continue;
            }
            let first = day * self.slots_per_day;
            for slot in first..(first + self.slots_per_day).min(self.ground.slots) {
                dry[slot / WORD] &= !(1 << (slot % WORD));
            }
        }
        for (profile, is_outside) in self.is_outside.iter().enumerate() {
            if *is_outside {
                let from = profile * words;
                for (word, dry) in dry.iter().enumerate() {
                    self.open[from + word] = self.ground.open[from + word] & dry;
                }
            }
        }
    }

    /// Places all with durations in slots, which are asked once for each activity in the order of the schedule, and rounded to
    /// whole ones. Gives the slot by which all is done; nothing when something finds no place before the last slot.
    pub fn place(&mut self, duration: &mut dyn FnMut(usize) -> f64) -> Option<usize> {
        self.board.clear(&self.ground);
        let mut spans: Vec<Option<Span>> = vec![None; self.ground.acts.len()];
        let mut finish = 0;
        for at in &self.list {
            let mut act = self.ground.acts[*at].clone();
            act.work = slots_of(duration(*at));
            let open = &self.open[act.profile * self.ground.words..][..self.ground.words];
            let ready = ready(&self.ground, *at, &spans);
            let span = ready.and_then(|ready| self.board.earliest_in(&self.ground, &act, ready, open))?;
            self.board.take_in(&self.ground, &act, span, open);
            finish = finish.max(span.end);
            spans[*at] = Some(span);
        }
        Some(finish)
    }
}

/// Whole slots: the nearest, but what takes any time takes one at least.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // at most a million
fn slots_of(drawn: f64) -> usize {
    if drawn <= 0.0 { 0 } else { (drawn + 0.5).floor().max(1.0) as usize }
}

/// What a schedule has placed, in its order, as far as this ground can.
fn listed(ground: &Ground, schedule: &Schedule) -> Vec<usize> {
    let mut is_left: Vec<bool> = ground.hindered.iter().map(Option::is_none).collect();
    let mut list = schedule.order.clone();
    list.retain(|at| is_left.get_mut(*at).is_some_and(std::mem::take));
    list
}
