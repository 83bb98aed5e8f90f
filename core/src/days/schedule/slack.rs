//! How much later each activity may start.

use super::board::Board;
use super::bounds::{earliest_alone, latest_alone};
use super::chain::sound_spans;
use super::ground::Ground;
use super::serial::{by_time, serial};
use super::{Schedule, Workload};

/// By how many slots each activity may start later while all still ends by the same finish, with what comes after what
/// kept, also between those that never fit beside each other: how far it moves when all are pushed to the right. None
/// for what is not placed.
pub fn slack_slots(workload: &Workload, schedule: &Schedule) -> Vec<Option<u32>> {
    let ground = Ground::new(workload);
    let spans = sound_spans(&ground, schedule);
    let mut mirror = ground.mirrored();
    for arcs in &mut mirror.after {
        arcs.retain(|(later, _)| spans[*later].is_some());
    }
    keep_order(&ground, &mut mirror, schedule);
    let start = |at: usize| spans[at].map_or(0, |span| ground.mirrored_span(span).start);
    let mut list = by_time(&mirror, start);
    list.retain(|at| spans[*at].is_some());
    let finish = spans.iter().flatten().map(|span| span.end).max().unwrap_or(0);
    let late = serial(&mirror, &mut Board::new(&mirror), &list, ground.slots - finish).spans;
    let slack = |at: usize| Some(later_by(spans[at]?.start, ground.mirrored_span(late[at]?).start));
    (0..spans.len()).map(slack).collect()
}

/// Of two activities that never fit beside each other, the one that was first stays first.
fn keep_order(ground: &Ground, mirror: &mut Ground, schedule: &Schedule) {
    let spans = sound_spans(ground, schedule);
    for resource in 0..ground.lanes_of.len() - 1 {
        let most = u32::from(ground.most(resource));
        let users: Vec<(usize, u32)> = ground
            .topo
            .iter()
            .filter_map(|at| Some((*at, u32::from(ground.demand(*at, resource)?))))
            .filter(|(at, _)| spans[*at].is_some())
            .collect();
        for (at, demand) in &users {
            let followers = users.iter().filter(|(other, with)| {
                demand + with > most && spans[*at].zip(spans[*other]).is_some_and(|(one, two)| one.end <= two.start)
            });
            mirror.after[*at].extend(followers.map(|(later, _)| (*later, 0)));
        }
    }
}

/// By how many slots each activity may start later if each had all the room for itself and all ended as early as could
/// be: the total float of the critical path method (Kelley and Walker, 1959), through the calendars. None for what can
/// never be placed.
pub fn total_float_slots(workload: &Workload) -> Vec<Option<u32>> {
    let ground = Ground::new(workload);
    let earliest = earliest_alone(&ground, 0).unwrap_or_default();
    let finish = earliest.iter().map(|span| span.end).max().unwrap_or(0);
    let latest = latest_alone(&ground.mirrored(), finish).unwrap_or_default();
    let mut slack = vec![None; ground.acts.len()];
    for at in &ground.topo {
        let pair = earliest.get(*at).zip(latest.get(*at));
        slack[*at] = pair.map(|(early, late)| later_by(early.start, late.start));
    }
    slack
}

fn later_by(early: usize, late: usize) -> u32 {
    u32::try_from(late.saturating_sub(early)).unwrap_or(u32::MAX)
}
