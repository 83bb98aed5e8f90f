//! A workload made sound and ready to be placed many times: sets of slots as bits.

use super::hindrance::{Hindrance, behind_circles, lack};
use super::{MOST_SLOTS, Span, Workload};

/// Slots in a word of bits.
pub(super) const WORD: usize = 64;

/// What never changes while schedules are tried.
#[derive(Clone, Default)]
pub(super) struct Ground {
    pub(super) slots: usize,
    /// How many words hold the bits of all slots.
    pub(super) words: usize,
    pub(super) acts: Vec<Act>,
    /// Open slots by profile, word by word, and how many open slots lie before each word.
    pub(super) open: Vec<u64>,
    before_word: Vec<usize>,
    /// Pairs of a resource and a demand, those of a resource side by side, and where each resource's begin.
    pub(super) lanes: Vec<Lane>,
    pub(super) lanes_of: Vec<usize>,
    /// What each resource has, slot by slot, and where each lane's demand fits into it, as bits.
    pub(super) room: Vec<u16>,
    /// Of which resources there is never more than one.
    pub(super) is_single: Vec<bool>,
    pub(super) fits: Vec<u64>,
    /// What each activity comes after, and those that can be placed and come after it, each with the slots between.
    pub(super) after: Vec<Vec<(usize, usize)>>,
    pub(super) before: Vec<Vec<(usize, usize)>>,
    /// Those that can be placed if nothing else takes the room, each behind what it comes after; and their turns in it.
    pub(super) topo: Vec<usize>,
    pub(super) turn: Vec<usize>,
    pub(super) hindered: Vec<Option<Hindrance>>,
}

#[derive(Clone, Default)]
pub(super) struct Act {
    pub(super) work: usize,
    pub(super) profile: usize,
    pub(super) lanes: Vec<usize>,
    pub(super) earliest: usize,
    pub(super) one_go: bool,
}

#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) struct Lane {
    pub(super) resource: usize,
    pub(super) demand: u16,
}

impl Ground {
    pub(super) fn new(workload: &Workload) -> Self {
        let slots = workload.slots.min(MOST_SLOTS);
        let mut ground = Self { slots, words: slots.div_ceil(WORD), ..Self::default() };
        ground.take_arcs(workload);
        ground.take_room(workload);
        ground.take_lanes(workload);
        ground.take_activities(workload);
        ground.sift(workload);
        ground
    }

    fn take_arcs(&mut self, workload: &Workload) {
        let count = workload.activities.len();
        self.after = vec![Vec::new(); count];
        self.before = vec![Vec::new(); count];
        for (at, activity) in workload.activities.iter().enumerate() {
            for (of, wait) in &activity.after {
                if *of < count {
                    let wait = usize::try_from(*wait).unwrap_or(MOST_SLOTS).min(2 * MOST_SLOTS);
                    self.after[at].push((*of, wait));
                    self.before[*of].push((at, wait));
                }
            }
        }
    }

    fn take_room(&mut self, workload: &Workload) {
        self.room = vec![0; workload.resources.len() * self.slots];
        for (row, resource) in self.room.chunks_mut(self.slots.max(1)).zip(&workload.resources) {
            for (room, capacity) in row.iter_mut().zip(resource) {
                *room = *capacity;
            }
        }
        self.is_single = (0..workload.resources.len()).map(|resource| self.most(resource) <= 1).collect();
    }

    fn take_lanes(&mut self, workload: &Workload) {
        let demands = workload.activities.iter().flat_map(|activity| demands_of(activity, workload.resources.len()));
        let keys = demands.map(|(resource, demand)| ((resource as u64) << 16) | u64::from(demand));
        for (key, _) in crate::order::sorted(keys) {
            let lane = Lane { resource: (key >> 16) as usize, demand: (key & 0xffff) as u16 };
            if self.lanes.last() != Some(&lane) {
                self.lanes.push(lane);
            }
        }
        let firsts = 0..=workload.resources.len();
        self.lanes_of = firsts.map(|first| self.lanes.partition_point(|lane| lane.resource < first)).collect();
        self.fits = vec![0; self.lanes.len() * self.words];
        for (lane, bits) in self.lanes.iter().zip(self.fits.chunks_mut(self.words.max(1))) {
            let row = &self.room[lane.resource * self.slots..][..self.slots];
            set_bits(bits, row.iter().map(|room| *room >= lane.demand));
        }
    }

    fn take_activities(&mut self, workload: &Workload) {
        let mut calendars = vec![0; workload.calendars.len() * self.words];
        for (calendar, bits) in workload.calendars.iter().zip(calendars.chunks_mut(self.words.max(1))) {
            set_bits(bits, calendar.iter().take(self.slots).copied());
        }
        let mut known: std::collections::BTreeMap<(Vec<usize>, Vec<usize>), usize> = std::collections::BTreeMap::new();
        for activity in &workload.activities {
            let demands = demands_of(activity, workload.resources.len());
            let lanes: Vec<usize> = demands.into_iter().map(|(resource, demand)| self.lane(resource, demand)).collect();
            let mut open_in = activity.calendars.clone();
            open_in.retain(|calendar| *calendar < workload.calendars.len());
            let next = known.len();
            let profile = *known.entry((open_in.clone(), lanes.clone())).or_insert(next);
            if profile == next {
                self.add_profile(&calendars, &open_in, &lanes);
            }
            let work = usize::try_from(activity.work_slots).unwrap_or(usize::MAX);
            self.acts.push(Act { work, profile, lanes, earliest: activity.earliest, one_go: activity.in_one_go });
        }
    }

    fn lane(&self, resource: usize, demand: u16) -> usize {
        let lanes = &self.lanes[..self.lanes_of[resource + 1]];
        lanes.partition_point(|lane| (lane.resource, lane.demand) < (resource, demand))
    }

    fn add_profile(&mut self, calendars: &[u64], open_in: &[usize], lanes: &[usize]) {
        let mut bits = vec![0; self.words];
        set_bits(&mut bits, (0..self.slots).map(|_| true));
        for (rows, of) in [(calendars, open_in), (&self.fits, lanes)] {
            for row in of {
                for (word, other) in bits.iter_mut().zip(&rows[row * self.words..]) {
                    *word &= other;
                }
            }
        }
        let mut before = 0;
        for word in &bits {
            self.before_word.push(before);
            before += word.count_ones() as usize;
        }
        self.open.extend(bits);
    }

    /// Puts those that can be placed in order, and finds out what hinders the others.
    fn sift(&mut self, workload: &Workload) {
        let order = topological(&self.after, &self.before);
        self.hindered = behind_circles(&self.after, &order);
        let mut ends = vec![0; self.acts.len()];
        for at in order {
            match self.first_end(workload, at, &ends) {
                Ok(end) => {
                    ends[at] = end;
                    self.topo.push(at);
                }
                Err(hindrance) => self.hindered[at] = Some(hindrance),
            }
        }
        for arcs in &mut self.before {
            arcs.retain(|(later, _)| self.hindered[*later].is_none());
        }
        self.number_turns();
    }

    fn first_end(&self, workload: &Workload, at: usize, ends: &[usize]) -> Result<usize, Hindrance> {
        let mut from = self.acts[at].earliest;
        for (of, wait) in &self.after[at] {
            if self.hindered[*of].is_some() {
                return Err(Hindrance::Behind { activity: at, of: *of });
            }
            from = from.max(ends[*of] + wait);
        }
        match self.nominal(at, from) {
            Some(span) => Ok(span.end),
            None if self.nominal(at, 0).is_some() => Err(Hindrance::BeyondHorizon { activity: at }),
            None => Err(lack(workload, self, at)),
        }
    }

    fn number_turns(&mut self) {
        self.turn = vec![0; self.acts.len()];
        for (turn, at) in self.topo.iter().enumerate() {
            self.turn[*at] = turn;
        }
    }

    /// The same backwards in time: slot 0 is the last one, and what came after comes before. Nothing has an earliest
    /// start there.
    pub(super) fn mirrored(&self) -> Self {
        let mut mirror = Self { before: self.after.clone(), after: self.before.clone(), ..self.clone() };
        for row in mirror.room.chunks_mut(self.slots.max(1)) {
            row.reverse();
        }
        for bits in mirror.open.chunks_mut(self.words.max(1)).chain(mirror.fits.chunks_mut(self.words.max(1))) {
            reverse_bits(bits, self.slots);
        }
        for (bits, before) in
            mirror.open.chunks(self.words.max(1)).zip(mirror.before_word.chunks_mut(self.words.max(1)))
        {
            let mut count = 0;
            for (word, before) in bits.iter().zip(before) {
                *before = count;
                count += word.count_ones() as usize;
            }
        }
        for act in &mut mirror.acts {
            act.earliest = 0;
        }
        mirror.topo.reverse();
        mirror.number_turns();
        mirror
    }

    /// How many kinds of open slots there are.
    pub(super) fn profiles(&self) -> usize {
        self.acts.iter().map(|act| act.profile + 1).max().unwrap_or(0)
    }

    /// How much an activity demands of a resource, if any.
    pub(super) fn demand(&self, at: usize, resource: usize) -> Option<u16> {
        let mut lanes = self.acts[at].lanes.iter().map(|lane| self.lanes[*lane]);
        lanes.find(|lane| lane.resource == resource).map(|lane| lane.demand)
    }

    /// The most that a resource has at any time.
    pub(super) fn most(&self, resource: usize) -> u16 {
        self.room[resource * self.slots..][..self.slots].iter().copied().max().unwrap_or(0)
    }

    /// A span as the mirror has it.
    pub(super) fn mirrored_span(&self, span: Span) -> Span {
        Span { start: self.slots.saturating_sub(span.end), end: self.slots.saturating_sub(span.start) }
    }

    pub(super) fn open_words(&self, act: &Act) -> &[u64] {
        &self.open[act.profile * self.words..][..self.words]
    }

    /// How many slots before this one are open for an activity.
    pub(super) fn open_before(&self, act: &Act, slot: usize) -> usize {
        let slot = slot.min(self.slots);
        let (word, bit) = (slot / WORD, slot % WORD);
        if word == self.words {
            let Some(last) = self.words.checked_sub(1) else { return 0 };
            return self.before_word[act.profile * self.words + last]
                + self.open_words(act)[last].count_ones() as usize;
        }
        let below = self.open_words(act)[word] & ((1 << bit) - 1);
        self.before_word[act.profile * self.words + word] + below.count_ones() as usize
    }

    /// When an activity is done at the earliest from a slot on, if nothing else takes the room.
    pub(super) fn nominal(&self, at: usize, from: usize) -> Option<Span> {
        let act = &self.acts[at];
        super::board::first_span(self.slots, act, from, self.open_words(act), |_| u64::MAX)
    }
}

/// The demands of an activity, one a resource, in their order; a milestone demands nothing.
pub(super) fn demands_of(activity: &super::Activity, resources: usize) -> Vec<(usize, u16)> {
    let mut demands: Vec<(usize, u16)> = Vec::new();
    if activity.work_slots == 0 {
        return demands;
    }
    for (resource, demand) in &activity.demands {
        if *resource >= resources || *demand == 0 {
            continue;
        }
        match demands.iter_mut().find(|(known, _)| known == resource) {
            Some((_, sum)) => *sum = sum.saturating_add(*demand),
            None => demands.push((*resource, *demand)),
        }
    }
    demands
}

fn set_bits(bits: &mut [u64], slots: impl Iterator<Item = bool>) {
    for (slot, set) in slots.enumerate() {
        bits[slot / WORD] |= u64::from(set) << (slot % WORD);
    }
}

fn reverse_bits(bits: &mut [u64], slots: usize) {
    let mut reversed = vec![0; bits.len()];
    for (at, word) in bits.iter().enumerate() {
        let mut word = *word;
        while word != 0 {
            let slot = slots - 1 - (at * WORD + word.trailing_zeros() as usize);
            reversed[slot / WORD] |= 1 << (slot % WORD);
            word &= word - 1;
        }
    }
    bits.copy_from_slice(&reversed);
}

/// Each activity behind what it comes after; those in a circle or behind one are left out.
pub(super) fn topological(after: &[Vec<(usize, usize)>], before: &[Vec<(usize, usize)>]) -> Vec<usize> {
    let mut waits_for: Vec<usize> = after.iter().map(Vec::len).collect();
    let mut order: Vec<usize> = (0..after.len()).filter(|at| waits_for[*at] == 0).collect();
    let mut next = 0;
    while let Some(at) = order.get(next).copied() {
        next += 1;
        for (later, _) in &before[at] {
            waits_for[*later] -= 1;
            if waits_for[*later] == 0 {
                order.push(*later);
            }
        }
    }
    order
}
