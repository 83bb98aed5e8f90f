//! The most that a room can hold of things that have a value: exactly, by lists of fillings of which none is both
//! shorter and worth more than another.
//!
//! Things come by value for length, the most first, so that what is still to come is worth no more than the next thing
//! for the length that is left. A filling that cannot be worth more than the best even so is left out. A list that gets
//! too long is thinned out, with the lower length and the higher value of each two: what is said then is still no less
//! than the truth.

use super::problem::Filling;
use crate::order;

/// Fillings remembered in one go.
const MOST_STATES: usize = 600_000;
/// Lists are no longer than this, or a little more than their part of the above.
const LONGEST_LIST: usize = 30_000;
/// Products of floats are this much more than the truth at least, in parts of it.
const ROUNDING: f64 = 1e-12;
const NOTHING: u32 = u32::MAX;

/// A kind of thing with its value; values below 2^48.
#[derive(Clone, Copy, Debug)]
pub(super) struct Item {
    pub(super) kind: usize,
    pub(super) size: u64,
    pub(super) value: u64,
    pub(super) most: u64,
}

impl Item {
    fn density(&self) -> f64 {
        self.value as f64 / self.size as f64
    }
}

/// By value for length, the most first.
pub(super) fn by_density(items: &[Item]) -> Vec<Item> {
    order::by_key(items, |item| !item.density().to_bits())
}

#[derive(Clone, Copy)]
struct Entry {
    size: u64,
    value: u64,
    state: u32,
}

/// A few of one kind, all or none.
struct Chunk {
    item: Item,
    count: u64,
    /// The density of the next chunk, a little more than it is.
    after: f64,
}

/// The most that a room holds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Packed {
    /// Nothing that the room holds is worth more; at least what was said to be of no interest.
    pub(super) value: u64,
    /// What is worth that much; none where nothing is worth more than what is of no interest.
    pub(super) filling: Option<Filling>,
}

/// What is used again from one room to the next.
#[derive(Default)]
pub(super) struct Knapsack {
    states: Vec<(u32, u32)>,
    list: Vec<Entry>,
    spare: Vec<Entry>,
    /// How many fillings were looked at, ever.
    pub(super) work: u64,
}

impl Knapsack {
    /// The most valuable filling of a room, if it is worth more than `above`. Items come by density.
    pub(super) fn most(&mut self, items: &[Item], room: u64, above: u64) -> Packed {
        let chunks = chunks(items, room);
        let longest = LONGEST_LIST.min(MOST_STATES / chunks.len().max(1));
        self.states.clear();
        self.list.clear();
        self.list.push(Entry { size: 0, value: 0, state: NOTHING });
        let mut best = Entry { size: 0, value: above, state: NOTHING };
        for (at, chunk) in chunks.iter().enumerate() {
            self.add(chunk, at, room, &mut best);
            if self.list.is_empty() {
                break;
            }
            if self.list.len() > longest {
                self.thin();
            }
        }
        let filling = self.filling(&chunks, best.state).filter(|filling| {
            let size = |(kind, count): &(usize, u64)| {
                count * items.iter().find(|item| item.kind == *kind).map_or(0, |item| item.size)
            };
            filling.iter().map(size).sum::<u64>() <= room
        });
        Packed { value: best.value, filling }
    }

    /// Every filling without the chunk and with it, where it may still lead to the best.
    fn add(&mut self, chunk: &Chunk, number: usize, room: u64, best: &mut Entry) {
        let (size, value) = (chunk.count * chunk.item.size, chunk.count * chunk.item.value);
        self.work += self.list.len() as u64;
        self.spare.clear();
        let (mut plain, mut with) = (0, 0);
        let mut reached = None;
        loop {
            let without = self.list.get(plain).copied();
            let shifted = self.list.get(with).map(|entry| (entry.size + size, entry.value + value, entry.state));
            let shifted = shifted.filter(|(size, ..)| *size <= room);
            let is_plain = match (without, shifted) {
                (None, None) => break,
                (Some(entry), Some((size, value, _))) => (entry.size, value) <= (size, entry.value),
                (without, _) => without.is_some(),
            };
            let mut entry = Entry { size: 0, value: 0, state: NOTHING };
            let mut before = None;
            if is_plain {
                entry = without.unwrap_or(entry);
                plain += 1;
            } else if let Some((size, value, state)) = shifted {
                (entry.size, entry.value) = (size, value);
                before = Some(state);
                with += 1;
            }
            if reached.is_some_and(|reached| entry.value <= reached) {
                continue;
            }
            let is_best = before.is_some() && entry.value > best.value;
            let hope = entry.value as f64 + (room - entry.size) as f64 * chunk.after;
            let is_kept = is_best || hope + 1.0 > best.value as f64;
            if !is_kept {
                continue;
            }
            if let Some(before) = before {
                entry.state = u32::try_from(self.states.len()).unwrap_or(NOTHING);
                self.states.push((before, u32::try_from(number).unwrap_or(NOTHING)));
            }
            if is_best {
                *best = entry;
            }
            reached = Some(entry.value);
            self.spare.push(entry);
        }
        std::mem::swap(&mut self.list, &mut self.spare);
    }

    fn thin(&mut self) {
        let merged = self.list.chunks(2).filter_map(|pair| {
            let (low, high) = (pair.first()?, pair.last()?);
            Some(Entry { size: low.size, ..*high })
        });
        self.spare.clear();
        self.spare.extend(merged);
        std::mem::swap(&mut self.list, &mut self.spare);
    }

    fn filling(&self, chunks: &[Chunk], mut state: u32) -> Option<Filling> {
        let mut filling = Filling::new();
        while let Some((before, number)) = self.states.get(state as usize) {
            let chunk = chunks.get(*number as usize)?;
            match filling.iter_mut().find(|(kind, _)| *kind == chunk.item.kind) {
                Some((_, count)) => *count += chunk.count,
                None => filling.push((chunk.item.kind, chunk.count)),
            }
            state = *before;
        }
        filling.sort_unstable();
        (!filling.is_empty()).then_some(filling)
    }
}

/// Chunks of 1, 2, 4 … and the rest, of which each number up to the most can be made.
fn chunks(items: &[Item], room: u64) -> Vec<Chunk> {
    let mut chunks: Vec<Chunk> = Vec::new();
    for item in items.iter().filter(|item| item.value > 0 && item.size <= room) {
        let mut left = item.most.min(room / item.size);
        let mut count = 1;
        while left > 0 {
            let next = count.min(left);
            if let Some(last) = chunks.last_mut() {
                last.after = item.density() * (1.0 + ROUNDING);
            }
            chunks.push(Chunk { item: *item, count: next, after: 0.0 });
            left -= next;
            count *= 2;
        }
    }
    chunks
}
