//! Work placed in time, against a solver that proves each least finish, published values, and what must hold for every
//! schedule. The source of each stands beside it.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::days::schedule::{
    Activity, Schedule, Search, Span, Workload, first_schedule, slack_slots, total_float_slots,
};
use serde_json::Value;

/// A list that is written in runs: how many, what.
fn unfolded(runs: &Value) -> impl Iterator<Item = u16> + '_ {
    runs.as_array().unwrap().iter().flat_map(|run| {
        let [count, value] = [0, 1].map(|at| u16::try_from(run[at].as_u64().unwrap()).unwrap());
        std::iter::repeat_n(value, count.into())
    })
}

fn index(value: &Value) -> usize {
    usize::try_from(value.as_u64().unwrap()).unwrap()
}

fn activity(value: &Value) -> Activity {
    let list = |at: usize| value[at].as_array().unwrap().iter();
    Activity {
        work_slots: u32::try_from(index(&value[0])).unwrap(),
        calendars: list(1).map(index).collect(),
        demands: list(2).map(|it| (index(&it[0]), u16::try_from(index(&it[1])).unwrap())).collect(),
        earliest: index(&value[3]),
        in_one_go: value[4].as_bool().unwrap(),
        after: list(5).map(|it| (index(&it[0]), u32::try_from(index(&it[1])).unwrap())).collect(),
    }
}

fn workload(case: &Value) -> Workload {
    let list = |name: &str| case[name].as_array().unwrap().iter();
    Workload {
        slots: index(&case["slots"]),
        resources: list("resources").map(|runs| unfolded(runs).collect()).collect(),
        calendars: list("calendars").map(|runs| unfolded(runs).map(|open| open == 1).collect()).collect(),
        activities: list("activities").map(activity).collect(),
    }
}

/// The slots in which an activity works, read off the rules and not off the program.
fn slots_of(workload: &Workload, at: usize, span: Span) -> Vec<usize> {
    let activity = &workload.activities[at];
    let is_open = |slot: &usize| {
        activity.calendars.iter().all(|calendar| workload.calendars[*calendar][*slot])
            && activity.demands.iter().all(|(resource, demand)| workload.resources[*resource][*slot] >= *demand)
    };
    let worked: Vec<usize> = (span.start..span.end).filter(is_open).collect();
    if activity.work_slots == 0 { Vec::new() } else { worked }
}

/// Everything that a schedule must be.
fn check(workload: &Workload, schedule: &Schedule) {
    let mut left = workload.resources.clone();
    for (at, activity) in workload.activities.iter().enumerate() {
        let Some(span) = schedule.spans[at] else { continue };
        let worked = slots_of(workload, at, span);
        assert_eq!(worked.len(), activity.work_slots as usize, "activity {at} works as long as it must");
        assert_eq!(worked.first().copied().unwrap_or(span.start), span.start, "it starts on a slot of work");
        assert_eq!(worked.last().map_or(span.start, |last| last + 1), span.end, "it ends behind one");
        assert!(!activity.in_one_go || span.end - span.start == worked.len(), "activity {at} in one go");
        assert!(span.start >= activity.earliest);
        for (of, wait) in &activity.after {
            let before = schedule.spans[*of].unwrap();
            assert!(span.start >= before.end + *wait as usize, "activity {at} after {of}");
        }
        for (resource, demand) in &activity.demands {
            for slot in &worked {
                let room = &mut left[*resource][*slot];
                *room = room.checked_sub(*demand).unwrap();
            }
        }
        assert!(span.end <= schedule.finish);
    }
    let finish = schedule.spans.iter().flatten().map(|span| span.end).max();
    assert_eq!(finish.unwrap_or(0), schedule.finish);
    assert_eq!(schedule.order.len() + schedule.not_placed.len(), workload.activities.len());
}

fn searched(workload: &Workload) -> Search {
    let mut search = Search::new(workload);
    while search.step() < 1.0 {
        assert!(search.best().not_placed.len() < workload.activities.len().max(1));
    }
    search
}

/// Source: OR-Tools, CP-SAT, each proven (tests/reference/schedules.py).
#[test]
fn the_least_finish_is_that_of_an_exact_solver() {
    let data: Value = serde_json::from_str(include_str!("../data/schedules.json")).unwrap();
    let cases = data["cases"].as_array().unwrap();
    assert!(cases.len() >= 60);
    for case in cases {
        let workload = workload(case);
        let first = first_schedule(&workload);
        check(&workload, &first);
        let search = searched(&workload);
        check(&workload, search.best());
        println!(
            "{} first {} best {} bound {} of {}",
            case["name"],
            first.finish,
            search.best().finish,
            search.bound(),
            case["finish"]
        );
        assert_eq!((search.best().finish, search.is_proven()), (index(&case["finish"]), true), "{}", case["name"]);
        assert_eq!(search.bound(), search.best().finish);
    }
}
