//! Work to be placed in time, made by chance, as somebody who turns a van into a home may have it.

use kerbstead_core::days::schedule::{Activity, Workload};
use kerbstead_core::draws::Chance;

/// Slots of a day: half hours.
pub const SLOTS_PER_DAY: usize = 48;
const TOOLS: usize = 8;

/// So many activities in so many days, with hands (resource 0), skilled hands (1) and eight tools; calendar 0 is daylight,
/// 1 the hours in which noise is allowed, 2 the days that are free of other things.
pub fn building(activities: usize, days: usize, seed: u64) -> Workload {
    let chance = &mut Chance::new(seed);
    let slots = days * SLOTS_PER_DAY;
    let (hands, skilled) = helpers(days, chance);
    let tools = (0..TOOLS).map(|_| tool(slots, chance));
    Workload {
        slots,
        resources: [hands, skilled].into_iter().chain(tools).collect(),
        calendars: vec![by_hour(slots, 14..38), by_hour(slots, 16..40), free_days(slots, chance)],
        activities: (0..activities).map(|at| activity(at, chance)).collect(),
    }
}

/// Four people of whom some come on a day, each for hours of their own; the first two are skilled.
fn helpers(days: usize, chance: &mut Chance) -> (Vec<u16>, Vec<u16>) {
    let (mut hands, mut skilled) = (vec![0; days * SLOTS_PER_DAY], vec![0; days * SLOTS_PER_DAY]);
    for person in 0..4 {
        for day in 0..days {
            if person > 0 && chance.below(3) == 0 {
                continue;
            }
            let (first, last) = (16 + chance.below(6) as usize, 32 + chance.below(8) as usize);
            for slot in day * SLOTS_PER_DAY + first..day * SLOTS_PER_DAY + last {
                hands[slot] += 1;
                skilled[slot] += u16::from(person < 2);
            }
        }
    }
    (hands, skilled)
}

/// Some are lent from a later day on.
fn tool(slots: usize, chance: &mut Chance) -> Vec<u16> {
    let from = if chance.below(4) == 0 { chance.below(6) as usize * SLOTS_PER_DAY } else { 0 };
    (0..slots).map(|slot| u16::from(slot >= from)).collect()
}

fn by_hour(slots: usize, open: std::ops::Range<usize>) -> Vec<bool> {
    (0..slots).map(|slot| open.contains(&(slot % SLOTS_PER_DAY))).collect()
}

fn free_days(slots: usize, chance: &mut Chance) -> Vec<bool> {
    let days: Vec<bool> = (0..slots.div_ceil(SLOTS_PER_DAY)).map(|_| chance.below(6) > 0).collect();
    (0..slots).map(|slot| days[slot / SLOTS_PER_DAY]).collect()
}

fn activity(at: usize, chance: &mut Chance) -> Activity {
    let work_slots = if chance.below(16) == 0 { 0 } else { 1 + chance.below(16) };
    let mut demands = vec![(0, if chance.below(4) == 0 { 2 } else { 1 })];
    if chance.below(3) == 0 {
        demands.push((1, 1));
    }
    if chance.below(5) < 3 {
        demands.push((2 + chance.below(8) as usize, 1));
    }
    let before = |chance: &mut Chance| at.checked_sub(1 + chance.below(12) as usize);
    let count = [0, 1, 1, 2][chance.below(4) as usize];
    let waits = [0, 0, 0, 0, 4, 24, 48];
    let after = (0..count).filter_map(|_| Some((before(chance)?, waits[chance.below(7) as usize]))).collect();
    Activity {
        work_slots,
        calendars: (0..3).filter(|_| chance.below(3) == 0).collect(),
        demands,
        earliest: if chance.below(8) == 0 { chance.below(400) as usize } else { 0 },
        in_one_go: work_slots < 6 && chance.below(3) == 0,
        after,
    }
}
