//! What is still free, slot by slot.

use super::Span;
use super::ground::{Act, Ground, WORD};

/// The room that is left on a ground.
#[derive(Clone, Default)]
pub(super) struct Board {
    /// By resource, slot by slot.
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
        self.change(ground, act, span, open, u16::saturating_sub);
    }

    /// Gives it back.
    pub(super) fn give_back(&mut self, ground: &Ground, at: usize, span: Span) {
        let act = &ground.acts[at];
        self.change(ground, act, span, ground.open_words(act), u16::saturating_add);
    }

    fn change(&mut self, ground: &Ground, act: &Act, span: Span, open: &[u64], with: impl Fn(u16, u16) -> u16) {
        if act.lanes.is_empty() || act.work == 0 {
            return;
        }
        for (word, open) in open.iter().enumerate().take(span.end.div_ceil(WORD)).skip(span.start / WORD) {
            let mut bits = open & mask_from(span.start, word) & !mask_from(span.end, word);
            while bits != 0 {
                let bit = bits & bits.wrapping_neg();
                bits ^= bit;
                let slot = word * WORD + bit.trailing_zeros() as usize;
                for lane in &act.lanes {
                    self.change_slot(ground, *lane, (slot, word, bit), &with);
                }
            }
        }
    }

    #[inline]
    fn change_slot(
        &mut self,
        ground: &Ground,
        lane: usize,
        (slot, word, bit): (usize, usize, u64),
        with: impl Fn(u16, u16) -> u16,
    ) {
        let of = ground.lanes[lane];
        let room = &mut self.room[of.resource * ground.slots + slot];
        *room = with(*room, of.demand);
        let room = *room;
        for other in ground.lanes_of[of.resource]..ground.lanes_of[of.resource + 1] {
            let fits = &mut self.fits[other * ground.words + word];
            *fits = if room >= ground.lanes[other].demand { *fits | bit } else { *fits & !bit };
        }
    }

    /// Whether a lane's demand does not fit into a slot.
    pub(super) fn is_full(&self, ground: &Ground, lane: usize, slot: usize) -> bool {
        self.fits[lane * ground.words + slot / WORD] >> (slot % WORD) & 1 == 0
    }
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
