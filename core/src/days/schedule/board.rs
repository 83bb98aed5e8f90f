//! What is still free, slot by slot.

use super::Span;
use super::ground::{Act, Ground, WORD};

/// The room that is left on a ground.
#[derive(Clone, Default)]
pub(super) struct Board {
    /// By resource, slot by slot; not kept up where there is one at most.
    room: Vec<u16>,
    /// Where each lane's demand still fits, as bits.
    fits: Vec<u64>,
}

impl Board {
    pub(super) fn new(ground: &Ground) -> Self {
        Self { room: ground.room.clone(), fits: ground.fits.clone() }
    }

    /// Takes everything away again.
    pub(super) fn clear(&mut self, ground: &Ground) {
        self.room.copy_from_slice(&ground.room);
        self.fits.copy_from_slice(&ground.fits);
    }

    /// When an activity can be done at the earliest from a slot on, beside what is placed. `open` are the words of its
    /// open slots.
    pub(super) fn earliest(&self, ground: &Ground, at: usize, from: usize) -> Option<Span> {
        let act = &ground.acts[at];
        self.earliest_in(ground, act, from, ground.open_words(act))
    }

    /// The same with other open slots than the ground has.
    pub(super) fn earliest_in(&self, ground: &Ground, act: &Act, from: usize, open: &[u64]) -> Option<Span> {
        first_span(ground.slots, act, from, open, |word| {
            let lanes = act.lanes.iter();
            lanes.fold(u64::MAX, |fit, lane| fit & self.fits[lane * ground.words + word])
        })
    }

    /// Takes the room that an activity uses.
    pub(super) fn take(&mut self, ground: &Ground, at: usize, span: Span) {
        let act = &ground.acts[at];
        self.take_in(ground, act, span, ground.open_words(act));
    }

    /// The same with other open slots than the ground has.
    pub(super) fn take_in(&mut self, ground: &Ground, act: &Act, span: Span, open: &[u64]) {
        self.change(ground, act, span, open, false);
    }

    /// Gives it back.
    pub(super) fn give_back(&mut self, ground: &Ground, at: usize, span: Span) {
        let act = &ground.acts[at];
        self.change(ground, act, span, ground.open_words(act), true);
    }

    fn change(&mut self, ground: &Ground, act: &Act, span: Span, open: &[u64], gives: bool) {
        if act.work == 0 {
            return;
        }
        for (word, open) in open.iter().enumerate().take(span.end.div_ceil(WORD)).skip(span.start / WORD) {
            let bits = open & mask_from(span.start, word) & !mask_from(span.end, word);
            for lane in &act.lanes {
                let of = ground.lanes[*lane];
                // Of a resource of which there is one, the bits say it all.
                if ground.is_single[of.resource] {
                    let fits = &mut self.fits[lane * ground.words + word];
                    *fits = if gives { *fits | bits } else { *fits & !bits };
                    continue;
                }
                let from = of.resource * ground.slots + word * WORD;
                let room = &mut self.room[from..(from + WORD).min((of.resource + 1) * ground.slots)];
                change_word(room, bits, of.demand, gives);
                for other in ground.lanes_of[of.resource]..ground.lanes_of[of.resource + 1] {
                    let fits = &mut self.fits[other * ground.words + word];
                    *fits = *fits & !bits | fitting(room, bits, ground.lanes[other].demand);
                }
            }
        }
    }

    /// Whether a lane's demand does not fit into a slot.
    pub(super) fn is_full(&self, ground: &Ground, lane: usize, slot: usize) -> bool {
        self.fits[lane * ground.words + slot / WORD] >> (slot % WORD) & 1 == 0
    }
}

fn change_word(room: &mut [u16], mut bits: u64, demand: u16, gives: bool) {
    while bits != 0 {
        if let Some(room) = room.get_mut(bits.trailing_zeros() as usize) {
            *room = if gives { room.saturating_add(demand) } else { room.saturating_sub(demand) };
        }
        bits &= bits - 1;
    }
}

/// Those of the bits whose slots have room for a demand.
fn fitting(room: &[u16], mut bits: u64, demand: u16) -> u64 {
    let mut fitting = 0;
    while bits != 0 {
        let bit = bits & bits.wrapping_neg();
        if room.get(bits.trailing_zeros() as usize).is_some_and(|room| *room >= demand) {
            fitting |= bit;
        }
        bits ^= bit;
    }
    fitting
}

/// The bits of a word that belong to a slot or later ones.
fn mask_from(slot: usize, word: usize) -> u64 {
    match slot.saturating_sub(word * WORD) {
        before if before >= WORD => 0,
        before => u64::MAX << before,
    }
}

/// The first span from a slot on whose slots of work are all open and fit; `fits` gives a word of the slots that do.
#[inline]
pub(super) fn first_span(
    slots: usize,
    act: &Act,
    from: usize,
    open: &[u64],
    fits: impl Fn(usize) -> u64,
) -> Option<Span> {
    if act.work == 0 {
        return (from <= slots).then_some(Span { start: from, end: from });
    }
    let (mut run, mut start) = (0, 0);
    for (word, open) in open.iter().enumerate().skip(from / WORD) {
        let mask = mask_from(from, word);
        let fit = open & fits(word);
        // Work in one go is broken by every slot that it cannot have, other work only by open ones.
        let mut worked = if act.one_go { mask } else { open & mask };
        let mut blocked = worked & !fit;
        loop {
            let lowest = blocked & blocked.wrapping_neg();
            let piece = worked & lowest.wrapping_sub(1);
            if piece != 0 {
                if run == 0 {
                    start = word * WORD + piece.trailing_zeros() as usize;
                }
                let count = piece.count_ones() as usize;
                if run + count >= act.work {
                    let end = word * WORD + nth_bit(piece, act.work - run - 1) + 1;
                    return Some(Span { start, end });
                }
                run += count;
            }
            if blocked == 0 {
                break;
            }
            run = 0;
            // The blocked bits that lie side by side are passed at once.
            let side_by_side = blocked & !blocked.wrapping_add(lowest);
            worked &= !(side_by_side | lowest.wrapping_sub(1));
            blocked &= !side_by_side;
        }
    }
    None
}

/// The place of the set bit before which there are `count` others.
fn nth_bit(mut word: u64, mut count: usize) -> usize {
    let mut at = 0;
    for width in [32, 16, 8, 4, 2, 1] {
        let low = word & ((1 << width) - 1);
        let below = low.count_ones() as usize;
        if count >= below {
            count -= below;
            word >>= width;
            at += width;
        } else {
            word = low;
        }
    }
    at
}
