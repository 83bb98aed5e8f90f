//! How likely the next bit is, learned from the bits before: every context keeps count, and mixers weigh what the
//! contexts say by how well they did.
//!
//! Context mixing in the logistic domain, after M. Mahoney, "Adaptive weighing of context models for lossless data
//! compression" (2005; from memory). Whole numbers only, so that every device comes to the same bits. Nothing here may
//! change without a new version: it would make links of old unreadable.
#![allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_possible_wrap, reason = "see `LIMIT`")]
#![allow(clippy::needless_range_loop, reason = "tables are walked side by side, a hundred thousand times a link")]

/// What is being told: each kind of symbol has weights of its own.
#[derive(Clone, Copy)]
pub(super) enum Told {
    /// Whether something is there.
    Flag,
    /// The form of a value.
    Form,
    /// How many digits a number has.
    Length,
    /// A digit.
    Digit,
    /// A byte of a text.
    Letter,
    /// Which of the values met before.
    Index,
    /// A byte of anything else.
    Byte,
}

/// The most contexts of one bit.
const MOST_CONTEXTS: usize = 6;
/// So many contexts are kept count of: 4 MB.
const SLOT_BITS: u32 = 20;
/// How often a context was met, in steps.
const STEPS: usize = 8;
/// How many of the contexts were met before, by twos.
const KNOWN: usize = MOST_CONTEXTS / 2 + 1;
/// The first four bits of a symbol, as far as they are known.
const NODES: usize = 16;
const KINDS: usize = 7;
/// A weight of 1.
const ONE: i32 = 1 << 16;

/// All that was learned.
#[derive(Clone)]
pub(super) struct Likely {
    /// By context: the likelihood of a set bit (16 bits), how often it was met (8), and a check of whose slot it is (8).
    slots: Vec<u32>,
    /// The weights of two mixers, by what each goes by.
    weights: [Weights; 2],
    stretched: Vec<i32>,
    /// By how often a context was met: how far it moves towards the bit that came, in 32,768ths.
    rates: Vec<i32>,
    /// The contexts of the symbol being told: the first slot of each, and its check.
    contexts: [(u32, u32); MOST_CONTEXTS],
    count: usize,
    /// Of the bit just told, to learn from: where each context stands and what it said.
    slot: [usize; MOST_CONTEXTS],
    said: [i32; MOST_CONTEXTS],
    step: [usize; MOST_CONTEXTS],
    set: [usize; 2],
    mixed: [i32; 2],
}

/// The weights of a mixer: a set for each of what it goes by, in it those of every context by how often it was met.
type Weights = Vec<[[i32; STEPS]; MOST_CONTEXTS]>;

impl Likely {
    pub(super) fn new() -> Self {
        let weights = |sets: usize| vec![[[ONE * 3 / 10; STEPS]; MOST_CONTEXTS]; KINDS * sets];
        Self {
            slots: vec![0; 1 << SLOT_BITS],
            weights: [weights(KNOWN), weights(NODES)],
            stretched: stretched(),
            rates: (0..256).map(|met| 327_680 / (10 * met + 17)).collect(),
            contexts: [(0, 0); MOST_CONTEXTS],
            count: 0,
            slot: [0; MOST_CONTEXTS],
            said: [0; MOST_CONTEXTS],
            step: [0; MOST_CONTEXTS],
            set: [0; 2],
            mixed: [0; 2],
        }
    }

    /// Begins a symbol, or the next four bits of one, in these contexts. `node` is the symbol's bits so far behind a 1.
    pub(super) fn begin(&mut self, contexts: &[u32], node: u32) {
        self.count = contexts.len().min(MOST_CONTEXTS);
        for (context, place) in contexts.iter().zip(&mut self.contexts) {
            let hash = mix(context ^ node.wrapping_mul(0x9E37_79B1));
            *place = (hash >> (32 - SLOT_BITS), hash & 0xFF);
        }
    }

    /// How likely the next bit is set, in 65,536ths. `node` is as above; its last bits tell apart what stands near.
    pub(super) fn bit(&mut self, told: Told, node: u32, near: u32) -> u32 {
        let mut known = 0;
        for at in 0..self.count {
            let (first, check) = self.contexts[at];
            // Sixteen slots side by side are fetched at once.
            let slot = (first ^ near) as usize;
            let mut kept = self.slots[slot];
            if kept & 0xFF != check {
                kept = EVEN << 16 | check;
                self.slots[slot] = kept;
            }
            let met = kept >> 8 & 0xFF;
            known += usize::from(met > 0);
            self.step[at] = STEP_OF[met as usize].into();
            self.slot[at] = slot;
            // What was never met says nothing: even odds.
            self.said[at] = self.stretched[(kept >> 20) as usize];
        }
        self.set = [told as usize * KNOWN + known / 2, told as usize * NODES + (node as usize).min(NODES - 1)];
        let mut sum = 0;
        for mixer in 0..2 {
            let set = &self.weights[mixer][self.set[mixer]];
            let mut own = 0;
            for at in 0..self.count {
                own += i64::from(self.said[at]) * i64::from(set[at][self.step[at]]);
            }
            self.mixed[mixer] = squash(own >> 16);
            sum += own;
        }
        squash(sum >> 17).clamp(1, 65_535) as u32
    }

    /// Learns what the bit just told was. A context met more often than `most` forgets.
    pub(super) fn learn(&mut self, bit: bool, most: u32) {
        let was = if bit { 65_535 } else { 0 };
        for mixer in 0..2 {
            let set = &mut self.weights[mixer][self.set[mixer]];
            for at in 0..self.count {
                let weight = &mut set[at][self.step[at]];
                let step = (self.said[at] * (was - self.mixed[mixer])) >> 13;
                *weight = (*weight + step).clamp(-8 * ONE, 8 * ONE);
            }
        }
        for at in 0..self.count {
            let kept = self.slots[self.slot[at]];
            let (likely, met) = ((kept >> 16) as i32, kept >> 8 & 0xFF);
            let likely = likely + (((was - likely) * self.rates[met as usize]) >> 15);
            let likely = likely.clamp(16, 65_519) as u32;
            self.slots[self.slot[at]] = likely << 16 | (met + 1).min(most) << 8 | kept & 0xFF;
        }
    }
}

/// Even odds.
const EVEN: u32 = 0x8000;

/// The step of every count.
const STEP_OF: [u8; 256] = {
    let mut steps = [7; 256];
    let (mut count, mut step) = (0, 0);
    while count <= 40 {
        if matches!(count, 1..=4 | 7 | 15) {
            step += 1;
        }
        steps[count] = step;
        count += 1;
    }
    steps
};

/// Spreads a number over all its bits.
pub(super) const fn mix(number: u32) -> u32 {
    let number = (number ^ number >> 16).wrapping_mul(0x7FEB_352D);
    let number = (number ^ number >> 15).wrapping_mul(0x846C_A68B);
    number ^ number >> 16
}

/// The end of the logistic scale, in 256ths. No number on it is larger, so that none is cut off by a cast.
const LIMIT: i64 = 3_071;

/// 65,536 / (1 + e^-x) for x from -12 to 12 in halves.
#[rustfmt::skip]
const LOGISTIC: [i32; 49] = [
    0, 1, 1, 2, 3, 5, 8, 13, 22, 36, 60, 98, 162, 267, 439, 720, 1179, 1921, 3108, 4971, 7812, 11955, 17625, 24743,
    32768, 40793, 47911, 53581, 57724, 60565, 62428, 63615, 64357, 64816, 65097, 65269, 65374, 65438, 65476, 65500,
    65514, 65523, 65528, 65531, 65533, 65534, 65535, 65535, 65536,
];

/// From the logistic scale to a likelihood.
fn squash(at: i64) -> i32 {
    let at = at.clamp(-LIMIT, LIMIT) as i32 + 3_072;
    let (index, part) = ((at >> 7) as usize, at & 127);
    (LOGISTIC[index] * (128 - part) + LOGISTIC[index + 1] * part) >> 7
}

/// From a likelihood, in 4,096ths, to the logistic scale.
fn stretched() -> Vec<i32> {
    let mut table = Vec::new();
    for at in -LIMIT..=LIMIT {
        table.resize((squash(at) >> 4) as usize + 1, at as i32);
    }
    table.resize(4096, LIMIT as i32);
    table
}
