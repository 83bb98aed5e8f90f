//! How likely the next bit is, learned from the bits before: several contexts each keep count, and a mixer weighs what
//! they say by how well they did.
//!
//! Context mixing in the logistic domain after M. Mahoney, "Adaptive weighing of context models for lossless data
//! compression" (2005). Whole numbers only, so that every device comes to the same bits.

/// The most contexts of one bit.
pub(super) const MOST_CONTEXTS: usize = 12;
const SLOT_BITS: u32 = 20;
/// How often a context was met, in steps: each has weights of its own, so that trust grows with what was seen.
const STEPS: usize = 8;
/// Kinds of symbols, each with weights of its own.
const KINDS: usize = 8;
/// A weight of 1.
const ONE: i32 = 1 << 16;

/// What was learned.
pub(super) struct Guess {
    /// By context: likelihood of a set bit (16 bits), how often it was met (8), and a check (8).
    slots: Vec<u32>,
    weights: Vec<i32>,
    weights2: Vec<i32>,
    stretched: Vec<i16>,
    /// Of the bit just guessed, to learn from.
    met: [Met; MOST_CONTEXTS],
    mixed: i32,
    mixed1: i32,
    mixed2: i32,
}

#[derive(Clone, Copy, Default)]
struct Met {
    slot: usize,
    check: u32,
    stretched: i32,
    weight: usize,
    weight2: usize,
}

impl Guess {
    pub(super) fn new() -> Self {
        let mut stretched = vec![0; 4096];
        let mut from = 0;
        for at in -LIMIT..=LIMIT {
            let to = (squash(at) >> 4) as usize;
            for place in stretched.iter_mut().take(to + 1).skip(from) {
                *place = at as i16;
            }
            from = from.max(to + 1);
        }
        for place in stretched.iter_mut().skip(from) {
            *place = LIMIT as i16;
        }
        Self {
            slots: vec![0; 1 << SLOT_BITS],
            weights: vec![ONE * param(1, 30) / 100; 13 * KINDS * MOST_CONTEXTS * STEPS],
            weights2: vec![ONE * param(1, 30) / 100; 40 * KINDS * MOST_CONTEXTS * STEPS],
            stretched,
            met: [Met::default(); MOST_CONTEXTS],
            mixed: 0, mixed1: 0, mixed2: 0,
        }
    }

    /// How likely the next bit is set, in 65,536ths, in these contexts.
    pub(super) fn likely(&mut self, kind: usize, contexts: &[u32], node: u32) -> u32 {
        let mut sum = 0_i64;
        let mut known = 0;
        for (at, (context, met)) in contexts.iter().zip(&mut self.met).enumerate() {
            let hash = mix(context ^ node.wrapping_mul(0x9E37_79B1));
            let slot = (hash >> (32 - SLOT_BITS)) as usize;
            let check = hash & 0xFF;
            let mut kept = self.slots[slot];
            if kept & 0xFF != check {
                kept = 0x8000 << 16 | check;
                self.slots[slot] = kept;
            }
            let count = kept >> 8 & 0xFF;
            let stretched = if count == 0 { 0 } else { i32::from(self.stretched[(kept >> 20) as usize]) };
            let weight = at * STEPS + step(count);
            known += usize::from(count > 0);
            *met = Met { slot, check, stretched, weight, weight2: weight };
        }
        let known = known / 2;
        let mut sum2 = 0_i64;
        let second = match param(7, 3) { 0 => 0, 1 => node.ilog2() as usize, 2 => contexts.len(), 3 => (node.min(15)) as usize, _ => 0 };
        for (_, met) in contexts.iter().zip(&mut self.met) {
            met.weight += (kind * 13 + known) * MOST_CONTEXTS * STEPS;
            met.weight2 += (kind * 20 + second) * MOST_CONTEXTS * STEPS;
            sum += i64::from(met.stretched) * i64::from(self.weights[met.weight]);
            sum2 += i64::from(met.stretched) * i64::from(self.weights2[met.weight2]);
        }
        let (sum, sum2) = (sum >> 16, sum2 >> 16);
        self.mixed1 = squash(sum.clamp(-3071, 3071) as i32);
        self.mixed2 = squash(sum2.clamp(-3071, 3071) as i32);
        let sum = (sum + sum2) << 15;
        self.mixed = squash((sum >> 16).clamp(-i64::from(LIMIT), i64::from(LIMIT)) as i32);
        self.mixed.clamp(1, 65_535) as u32
    }

    /// Learns what the bit just guessed was, with so many contexts.
    pub(super) fn learn(&mut self, bit: bool, contexts: usize, most: u32) {
        let wanted = if bit { 65_535 } else { 0 };
        let error = wanted - self.mixed1;
        let error2 = wanted - self.mixed2;
        for met in self.met.iter().take(contexts) {
            let weight = &mut self.weights[met.weight];
            *weight = (*weight + (((i64::from(met.stretched) * i64::from(error) * i64::from(param(0, 2))) >> 14) as i32)).clamp(-8 * ONE, 8 * ONE);
            let weight = &mut self.weights2[met.weight2];
            *weight = (*weight + ((i64::from(met.stretched) * i64::from(error2) * i64::from(param(0, 2))) >> 14) as i32).clamp(-8 * ONE, 8 * ONE);
            let kept = self.slots[met.slot];
            let (likely, count) = ((kept >> 16) as i32, kept >> 8 & 0xFF);
            let likely = (likely + (wanted - likely) * 10 / (10 * count as i32 + param(2, 17))).clamp(16, 65_519);
            let count = (count + 1).min(most);
            self.slots[met.slot] = (likely as u32) << 16 | count << 8 | met.check;
        }
    }
}

pub(super) const RATE: i32 = 10;

fn step(count: u32) -> usize {
    match count {
        0..=3 => count as usize,
        4..=6 => 4,
        7..=14 => 5,
        15..=40 => 6,
        _ => 7,
    }
}

/// Spreads a number over all its bits.
pub(super) fn mix(number: u32) -> u32 {
    let number = (number ^ number >> 16).wrapping_mul(0x7FEB_352D);
    let number = (number ^ number >> 15).wrapping_mul(0x846C_A68B);
    number ^ number >> 16
}

/// The end of the logistic scale, in 256ths.
const LIMIT: i32 = 3_071;

/// 65,536 / (1 + e^-x) for x from -12 to 12 in halves.
#[rustfmt::skip]
const LOGISTIC: [i32; 49] = [
    0, 1, 1, 2, 3, 5, 8, 13, 22, 36, 60, 98, 162, 267, 439, 720, 1179, 1921, 3108, 4971, 7812, 11955, 17625, 24743,
    32768, 40793, 47911, 53581, 57724, 60565, 62428, 63615, 64357, 64816, 65097, 65269, 65374, 65438, 65476, 65500,
    65514, 65523, 65528, 65531, 65533, 65534, 65535, 65535, 65536,
];

fn squash(at: i32) -> i32 {
    let at = at.clamp(-LIMIT, LIMIT) + 3_072;
    let (index, part) = ((at >> 7) as usize, at & 127);
    (LOGISTIC[index] * (128 - part) + LOGISTIC[index + 1] * part) >> 7
}

pub fn param(at: usize, usual: i32) -> i32 {
    static P: std::sync::OnceLock<Vec<Option<i32>>> = std::sync::OnceLock::new();
    P.get_or_init(|| (0..20).map(|n| std::env::var(format!("P{n}")).ok().and_then(|t| t.parse().ok())).collect())[at].unwrap_or(usual)
}
