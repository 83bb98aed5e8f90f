//! What no schedule can be better than.

use super::Span;
use super::ground::Ground;
use crate::order;

/// When each could be at the earliest and must be at the latest, if each had all the room for itself.
#[derive(Clone, Default)]
pub(super) struct Windows {
    pub(super) earliest: Vec<Span>,
    pub(super) latest: Vec<Span>,
}

/// The earliest span of each, alone: the forward pass of the critical path method (Kelley and Walker, 1959), through the
/// calendars. Those that cannot be placed have an empty one.
pub(super) fn earliest_alone(ground: &Ground, from: usize) -> Option<Vec<Span>> {
    let mut spans = vec![Span::default(); ground.acts.len()];
    for at in &ground.topo {
        let mut ready = ground.acts[*at].earliest.max(from);
        for (of, wait) in &ground.after[*at] {
            ready = ready.max(spans[*of].end + wait);
        }
        spans[*at] = ground.nominal(*at, ready)?;
    }
    Some(spans)
}

/// The latest span of each, alone, if all ends by a slot: the backward pass. None when some cannot.
pub(super) fn latest_alone(mirror: &Ground, by: usize) -> Option<Vec<Span>> {
    let late = earliest_alone(mirror, mirror.slots.checked_sub(by)?)?;
    Some(late.into_iter().map(|span| mirror.mirrored_span(span)).collect())
}

/// A resource, or a group of activities of which no two can be done at once, as a store of slots.
#[derive(Clone)]
pub(super) struct Store {
    /// What there is before each slot, in slots times amount, where it is of use to anybody.
    pub(super) before: Vec<u64>,
    /// Who needs it, and how much.
    pub(super) users: Vec<(usize, u64)>,
}

impl Store {
    pub(super) fn between(&self, from: usize, to: usize) -> u64 {
        self.before[to] - self.before[from.min(to)]
    }
}

/// The stores of a ground: those of its resources, and of the activities that each need more than half of one.
pub(super) fn stores(ground: &Ground) -> Vec<Store> {
    let mut stores = Vec::new();
    for resource in 0..ground.lanes_of.len() - 1 {
        let most = ground.most(resource);
        let users: Vec<(usize, u16)> =
            ground.topo.iter().filter_map(|at| Some((*at, ground.demand(*at, resource)?))).collect();
        let alone: Vec<_> =
            users.iter().filter(|(_, demand)| u32::from(*demand) * 2 > u32::from(most)).copied().collect();
        if alone.len() > 1 && alone.iter().any(|(_, demand)| *demand < most) {
            stores.push(store(ground, &alone, |_| 1, |room| u64::from(room > 0), resource));
        }
        if !users.is_empty() {
            stores.push(store(ground, &users, u64::from, u64::from, resource));
        }
    }
    stores
}

fn store(
    ground: &Ground,
    users: &[(usize, u16)],
    need: fn(u16) -> u64,
    gives: fn(u16) -> u64,
    resource: usize,
) -> Store {
    let mut of_use = vec![0; ground.words];
    for (at, _) in users {
        for (word, open) in of_use.iter_mut().zip(ground.open_words(&ground.acts[*at])) {
            *word |= open;
        }
    }
    let mut before = vec![0];
    let mut sum = 0;
    for slot in 0..ground.slots {
        if of_use[slot / 64] >> (slot % 64) & 1 == 1 {
            sum += gives(ground.room[resource * ground.slots + slot]);
        }
        before.push(sum);
    }
    Store { before, users: users.iter().map(|(at, demand)| (*at, need(*demand))).collect() }
}

/// Whether, by what must be done within some window, all could end by the deadline that the windows were made for.
/// Energetic reasoning: Baptiste, Le Pape and Nuijten, "Constraint-based scheduling", 2001 (from memory), with slots
/// counted as each activity's calendars have them.
pub(super) fn is_possible(ground: &Ground, stores: &[Store], windows: &Windows) -> bool {
    if ground.topo.iter().any(|at| windows.earliest[*at].start > windows.latest[*at].start) {
        return false;
    }
    stores.iter().all(|store| !is_overdrawn(ground, store, windows))
}

/// The most users of a store for which every window is looked at, which takes the third power of them.
const MOST_USERS: usize = 100;

fn is_overdrawn(ground: &Ground, store: &Store, windows: &Windows) -> bool {
    let users = store.users.iter().map(|(at, _)| *at);
    let mut froms = distinct(users.clone().map(|at| windows.earliest[at].start));
    let tos = distinct(users.map(|at| windows.latest[at].end));
    if store.users.len() > MOST_USERS {
        froms.truncate(1);
    }
    froms.iter().any(|from| {
        tos.iter().filter(|to| *to > from).any(|to| {
            let need = store.users.iter().map(|(at, need)| need * needed_within(ground, windows, *at, *from, *to));
            need.sum::<u64>() > store.between(*from, *to)
        })
    })
}

fn distinct(slots: impl Iterator<Item = usize>) -> Vec<usize> {
    let slots: Vec<usize> = slots.collect();
    let mut found = order::by_key(&slots, |slot| *slot as u64);
    found.dedup();
    found
}

/// The slots of work of an activity that lie between two slots wherever it is put: the fewer of those when it is put as
/// early and as late as can be, since between the two they first rise and then fall.
fn needed_within(ground: &Ground, windows: &Windows, at: usize, from: usize, to: usize) -> u64 {
    let act = &ground.acts[at];
    let (first, last) = (ground.open_before(act, from), ground.open_before(act, to));
    let within = |start: usize| {
        let begins = ground.open_before(act, start);
        (begins + act.work).min(last).saturating_sub(begins.max(first))
    };
    within(windows.earliest[at].start).min(within(windows.latest[at].start)) as u64
}
