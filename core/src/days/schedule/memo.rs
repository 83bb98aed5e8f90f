//! What was searched already: sets of placed activities, and when the last of them were at work.

use super::Span;

/// The most entries that are kept, about 8 MB with what they hold; then it begins anew.
const MOST_ENTRIES: usize = 1 << 16;
const BUCKETS: usize = 1 << 15;
const NONE: u32 = u32::MAX;

/// Partial schedules whose continuations were all looked at.
pub(super) struct Memo {
    heads: Vec<u32>,
    entries: Vec<Entry>,
    /// Activity and span of those at work after the last start.
    running: Vec<(usize, Span)>,
    /// Those not placed that may not start right away because of a wait, and when they may.
    waiting: Vec<(usize, usize)>,
}

struct Entry {
    set: u128,
    last_start: usize,
    reached: usize,
    running: (usize, usize),
    waiting: (usize, usize),
    next: u32,
}

/// A partial schedule.
pub(super) struct Partial<'a> {
    /// A bit for each activity that is placed.
    pub(super) set: u128,
    /// When the one that was placed last starts; all others will start then or later.
    pub(super) last_start: usize,
    /// Before this slot none of the others can start.
    pub(super) next_start: usize,
    /// The latest end so far.
    pub(super) reached: usize,
    pub(super) spans: &'a [Option<Span>],
    /// When each may start, after those that are placed.
    pub(super) ready: &'a [usize],
}

impl Memo {
    pub(super) fn new() -> Self {
        Self { heads: vec![NONE; BUCKETS], entries: Vec::new(), running: Vec::new(), waiting: Vec::new() }
    }

    /// Whether a partial schedule that was searched already lets everything else be done as early.
    pub(super) fn covers(&self, partial: &Partial) -> bool {
        let mut at = self.heads[bucket(partial.set)];
        while let Some(entry) = self.entries.get(at as usize) {
            if entry.set == partial.set && self.is_as_early(entry, partial) {
                return true;
            }
            at = entry.next;
        }
        false
    }

    /// The others start at `next_start` or later. So they fit in beside the entry's activities too when each of these has
    /// ended by then, or started no later than here, which uses no slot from then on that is not used here.
    fn is_as_early(&self, entry: &Entry, partial: &Partial) -> bool {
        let next = partial.next_start;
        entry.last_start <= next
            && entry.reached <= partial.reached.max(next)
            && self.running[entry.running.0..entry.running.1]
                .iter()
                .all(|(at, span)| span.end <= next || partial.spans[*at].is_some_and(|here| span.start <= here.start))
            && self.waiting[entry.waiting.0..entry.waiting.1]
                .iter()
                .all(|(at, ready)| *ready <= partial.ready[*at].max(next))
    }

    /// Adds one whose continuations are looked at from now on.
    pub(super) fn add(&mut self, partial: &Partial, activities: &[usize]) {
        if self.entries.len() >= MOST_ENTRIES {
            *self = Self::new();
        }
        let (running, waiting) = (self.running.len(), self.waiting.len());
        for at in activities {
            match partial.spans[*at] {
                Some(span) if span.end > partial.last_start => self.running.push((*at, span)),
                None if partial.ready[*at] > partial.last_start => self.waiting.push((*at, partial.ready[*at])),
                _ => {}
            }
        }
        let bucket = bucket(partial.set);
        let next = std::mem::replace(&mut self.heads[bucket], u32::try_from(self.entries.len()).unwrap_or(NONE));
        self.entries.push(Entry {
            set: partial.set,
            last_start: partial.last_start,
            reached: partial.reached,
            running: (running, self.running.len()),
            waiting: (waiting, self.waiting.len()),
            next,
        });
    }
}

fn bucket(set: u128) -> usize {
    let halves = [0, 64].map(|shift| (set << (64 - shift) >> 64) as u64);
    let folded = halves[0] ^ halves[1].rotate_left(29);
    (folded.wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 49) as usize
}
