//! Work placed in time, against a solver that proves each least finish, published values, and what must hold for every
//! schedule. The source of each stands beside it.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::days::schedule::{
    Activity, Durations, Hindrance, Lack, Runs, Schedule, Search, Span, Weather, Why, Workload, circle, critical_chain,
    first_schedule, pert_mean, pert_variance, slack_slots, total_float_slots,
};
use kerbstead_core::draws::Chance;
use proptest::prelude::*;
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
        assert_eq!((search.best().finish, search.is_proven()), (index(&case["finish"]), true), "{}", case["name"]);
        assert_eq!(search.bound(), search.best().finish);
    }
}

/// Work without calendars, of so many hours each, after others.
fn network(hours: &[(u32, &[usize])]) -> Workload {
    let activities = hours.iter().map(|(work_slots, after)| Activity {
        work_slots: *work_slots,
        after: after.iter().map(|of| (*of, 0)).collect(),
        ..Activity::default()
    });
    Workload { slots: 200, activities: activities.collect(), ..Workload::default() }
}

/// Clearing, floor, foam, walls, bed, moving in.
fn six_jobs() -> Workload {
    network(&[(2, &[]), (4, &[0]), (6, &[0]), (5, &[2]), (3, &[1, 3]), (1, &[4])])
}

/// Source: critical path method (Kelley and Walker 1959), computed with networkx: 17 hours, 7 to spare for the floor, none
/// for the others.
#[test]
fn the_critical_path_is_that_of_the_method() {
    let workload = six_jobs();
    let schedule = first_schedule(&workload);
    assert_eq!(schedule.finish, 17);
    let slack = [0, 7, 0, 0, 0, 0].map(Some);
    assert_eq!(slack_slots(&workload, &schedule), slack);
    assert_eq!(total_float_slots(&workload), slack);
    let chain = critical_chain(&workload, &schedule);
    assert_eq!(chain.iter().map(|link| link.activity).collect::<Vec<_>>(), [0, 2, 3, 4, 5]);
    assert_eq!(chain[0].why, Why::Beginning);
    assert_eq!(chain[1].why, Why::After { activity: 0, wait_slots: 0 });
}

/// Source: the same network with one pair of hands: 2 + 4 + 6 + 5 + 3 + 1 hours one after another, none to spare.
#[test]
fn one_pair_of_hands_does_one_thing_after_another() {
    let mut workload = six_jobs();
    workload.resources = vec![vec![1; 200]];
    for activity in &mut workload.activities {
        activity.demands = vec![(0, 1)];
    }
    let search = searched(&workload);
    assert_eq!((search.best().finish, search.bound(), search.is_proven()), (21, 21, true));
    assert_eq!(slack_slots(&workload, search.best()), [Some(0); 6]);
    assert_eq!(total_float_slots(&workload)[1], Some(7));
    let chain = critical_chain(&workload, search.best());
    assert_eq!(chain.len(), 6);
    let is_cause = |pair: &[kerbstead_core::days::schedule::Link]| pair[1].why.cause() == Some(pair[0].activity);
    assert!(chain.windows(2).all(is_cause));
    assert!(chain.iter().any(|link| matches!(link.why, Why::Freed { resource: 0, .. })));
}

/// Worked by hand. Days of eight slots, open from 2 to 6. Gluing (3 slots, in one go) needs a whole day when it does not
/// begin one; it hardens for 12 slots; sanding (5 slots) goes on the next day.
///
/// ```text
/// slot     0       8       16      24      32
/// open     ..xxxx....xxxx....xxxx....xxxx..
/// measure  ..mm............................   2 to 4
/// glue     ..........ggg...................   10 to 13: from 4 on only two slots are left on the first day
/// sand     ..........................ssss..   13 + 12 = 25, open from 26 on; 4 slots, and one on the day after
/// ```
#[test]
fn work_pauses_where_it_is_closed() {
    let open = (0..48).map(|slot| (2..6).contains(&(slot % 8))).collect();
    let job = |work_slots, in_one_go, after| Activity {
        work_slots,
        calendars: vec![0],
        in_one_go,
        after,
        ..Activity::default()
    };
    let workload = Workload {
        slots: 48,
        calendars: vec![open],
        activities: vec![job(2, false, vec![]), job(3, true, vec![(0, 0)]), job(5, false, vec![(1, 12)])],
        ..Workload::default()
    };
    let schedule = first_schedule(&workload);
    check(&workload, &schedule);
    let spans: Vec<_> = schedule.spans.iter().map(|span| span.map(|span| (span.start, span.end)).unwrap()).collect();
    assert_eq!(spans, [(2, 4), (10, 13), (26, 35)]);
    let chain = critical_chain(&workload, &schedule);
    let told: Vec<_> = chain.iter().map(|link| (link.activity, link.why, link.closed_slots)).collect();
    let after = |activity, wait_slots| Why::After { activity, wait_slots };
    assert_eq!(told, [(0, Why::Beginning, 2), (1, after(0, 0), 6), (2, after(1, 12), 1)]);
    // Pushed to the right with the end at 35: sanding cannot move, gluing may begin at 11 (12 + 12 < 26), measuring at 5.
    assert_eq!(slack_slots(&workload, &schedule), [Some(3), Some(1), Some(0)]);
}

/// Worked by hand: what stands in a circle or behind one, what is never open, what is too long, is not placed and says so.
#[test]
fn what_cannot_be_placed_says_why() {
    let after =
        |of: &[usize]| Activity { work_slots: 1, after: of.iter().map(|of| (*of, 0)).collect(), ..Activity::default() };
    let workload = Workload {
        slots: 20,
        resources: vec![vec![1; 20], vec![]],
        calendars: vec![vec![false; 20], vec![true; 10]],
        activities: vec![
            after(&[2]),
            after(&[0]),
            after(&[1, 3]),
            after(&[]),
            after(&[2, 3]),
            after(&[5]),
            Activity { calendars: vec![0, 1], ..after(&[]) },
            Activity { demands: vec![(0, 2)], ..after(&[]) },
            Activity { work_slots: 11, calendars: vec![1], ..after(&[]) },
            Activity { calendars: vec![1], earliest: 10, ..after(&[]) },
            Activity { demands: vec![(1, 1), (7, 1)], calendars: vec![9], ..after(&[99]) },
            after(&[9]),
            Activity { earliest: usize::MAX, work_slots: 0, ..after(&[]) },
        ],
    };
    let schedule = searched(&workload).best().clone();
    let never = |activity, lacks| (activity, Hindrance::NeverOpen { activity, lacks });
    let circle_of_three = || Hindrance::Circle(vec![0, 1, 2]);
    assert_eq!(
        schedule.not_placed,
        [
            (0, circle_of_three()),
            (1, circle_of_three()),
            (2, circle_of_three()),
            (4, Hindrance::Behind { activity: 4, of: 2 }),
            (5, Hindrance::Circle(vec![5])),
            never(6, Lack::Calendar(0)),
            never(7, Lack::Resource(0)),
            never(8, Lack::Length),
            (9, Hindrance::BeyondHorizon { activity: 9 }),
            never(10, Lack::Resource(1)),
            (11, Hindrance::Behind { activity: 11, of: 9 }),
            (12, Hindrance::BeyondHorizon { activity: 12 }),
        ]
    );
    assert_eq!(circle(&workload), Some(vec![0, 1, 2]));
    assert_eq!(circle(&six_jobs()), None);
    assert_eq!((schedule.finish, schedule.order), (1, vec![3]));
    let mut crowded = Workload { slots: 5, resources: vec![vec![1; 5]], ..Workload::default() };
    crowded.activities = vec![Activity { work_slots: 3, demands: vec![(0, 1)], ..Activity::default() }; 2];
    let search = searched(&crowded);
    assert_eq!(search.best().not_placed.len(), 1, "there is room for one of two");
    assert!(!search.is_proven());
}

#[test]
fn nothing_is_too_little_and_a_thousand_not_too_many() {
    for slots in [0, 1, 64, usize::MAX] {
        let empty = Workload { slots, ..Workload::default() };
        assert_eq!(searched(&empty).best(), &Schedule::default());
        assert_eq!(critical_chain(&empty, &Schedule::default()), []);
        let milestone = Workload { activities: vec![Activity::default()], ..empty.clone() };
        assert_eq!(first_schedule(&milestone).spans, [Some(Span::default())]);
        let work = Workload { activities: vec![Activity { work_slots: 1, ..Activity::default() }], ..empty };
        assert_eq!(first_schedule(&work).not_placed.len(), usize::from(slots == 0));
    }
    let workload = kerbstead_tests::workloads::building(1_000, 420, 9);
    let first = first_schedule(&workload);
    check(&workload, &first);
    let mut search = Search::new(&workload);
    for _ in 0..20 {
        search.step();
    }
    check(&workload, search.best());
    assert!(!critical_chain(&workload, search.best()).is_empty());
    assert_eq!(slack_slots(&workload, search.best()).len(), 1_000);
}

#[test]
fn the_same_work_gives_the_same_schedule() {
    let workload = kerbstead_tests::workloads::building(20, 20, 5);
    let (one, other) = (searched(&workload), searched(&workload));
    assert_eq!((one.best(), one.bound()), (other.best(), other.bound()));
}

/// Source: Malcolm and others 1959: 4, 6 and 14 give 7 and (10 / 6)².
#[test]
fn a_range_has_the_mean_and_the_variance_of_the_method() {
    assert!((pert_mean(4.0, 6.0, 14.0) - 7.0).abs() < 1e-9);
    assert!((pert_variance(4.0, 14.0) - 2.777_777_777_8).abs() < 1e-9);
}

fn finishes(durations: Durations, runs: u32) -> Vec<f64> {
    let workload = Workload { slots: 5_000, ..network(&[(1, &[])]) };
    let mut task = Runs::new(&workload, &first_schedule(&workload), &[durations], Weather::default(), 77, runs);
    while task.step() < 1.0 {}
    let chances = task.chances();
    assert_eq!((chances.runs(), chances.unfinished), (runs as usize, 0));
    chances.finishes.into_iter().map(|finish| finish as f64).collect()
}

/// Source: the closed form of the beta distribution with alpha = 1 + 4 (m - a) / (b - a), beta = 1 + 4 (b - m) / (b - a):
/// mean (a + 4 m + b) / 6, variance (b - a)² alpha beta / (36 · 7); the whole distribution by the trapezium rule. The
/// slots are fine enough for the rounding to whole ones not to matter.
#[test]
fn drawn_durations_have_the_distribution_of_their_range() {
    const RUNS: u32 = 40_000;
    for (low, likely, high) in [
        (1_000.0, 1_000.0, 4_000.0),
        (1_000.0, 4_000.0, 4_000.0),
        (500.0, 1_500.0, 4_500.0),
        (1_000.0, 2_500.0, 4_000.0),
    ] {
        let drawn = finishes(Durations { low, likely, high }, RUNS);
        let (width, runs) = (high - low, f64::from(RUNS));
        let (alpha, beta) = (1.0 + 4.0 * (likely - low) / width, 1.0 + 4.0 * (high - likely) / width);
        let variance = width * width * alpha * beta / (36.0 * 7.0);
        let mean = drawn.iter().sum::<f64>() / runs;
        let found = drawn.iter().map(|it| (it - mean) * (it - mean)).sum::<f64>() / runs;
        // Four standard errors; that of the variance is below 1.5 variance / √runs for these.
        assert!((mean - pert_mean(low, likely, high)).abs() < 4.0 * (variance / runs).sqrt(), "{mean}");
        assert!((found / variance - 1.0).abs() < 4.0 * 1.5 / runs.sqrt(), "{found} {variance}");
        let density = |x: f64| libm::pow(x, alpha - 1.0) * libm::pow(1.0 - x, beta - 1.0);
        let mut below = vec![0.0];
        for part in 0..3_000_usize {
            let x = part as f64 / 3_000.0;
            below.push(below[part] + density(x) + density(x + 1.0 / 3_000.0));
        }
        let widest = (1..3_000_u32).map(|part| {
            let slot = low + width * f64::from(part) / 3_000.0;
            let count = drawn.partition_point(|it| *it < slot) as f64;
            (count / runs - below[part as usize] / below[3_000]).abs()
        });
        // Kolmogorov: beyond 1.95 / √runs once in a thousand.
        assert!(widest.fold(0.0, f64::max) < 1.95 / runs.sqrt() + 0.001);
    }
}

/// Source: the binomial distribution. One slot of work in the open, each day has one slot: it is done on the first dry day.
#[test]
fn weather_closes_days_as_often_as_it_should() {
    let dry = Activity { work_slots: 1, calendars: vec![0], ..Activity::default() };
    let workload =
        Workload { slots: 64, calendars: vec![vec![true; 64]], activities: vec![dry], ..Workload::default() };
    let weather = Weather { calendars: vec![0], chances: vec![0.3], slots_per_day: 1 };
    let certain = [Durations::certain(1.0)];
    let mut runs = Runs::new(&workload, &first_schedule(&workload), &certain, weather, 3, 20_000);
    while runs.step() < 1.0 {}
    let by_day = runs.chances().done_by_day(1);
    for (day, expected) in [(0, 0.7), (1, 0.91), (2, 0.973)] {
        assert!((by_day[day] as f64 / 20_000.0 - expected).abs() < 0.013, "{day}");
    }
    let rain = Weather { calendars: vec![0], chances: vec![1.0], slots_per_day: 1 };
    let mut runs = Runs::new(&workload, &first_schedule(&workload), &certain, rain, 3, 10);
    while runs.step() < 1.0 {}
    assert_eq!((runs.chances().unfinished, runs.chances().percentile(50)), (10, None));
}

/// Without ranges and weather every run is the schedule itself.
#[test]
fn runs_of_what_is_certain_are_the_schedule() {
    let workload = kerbstead_tests::workloads::building(30, 30, 2);
    let schedule = first_schedule(&workload);
    let mut runs = Runs::new(&workload, &schedule, &[], Weather::default(), 1, 5);
    while runs.step() < 1.0 {}
    assert!(runs.chances().finishes.iter().all(|finish| *finish <= schedule.finish));
    assert_eq!(runs.chances().finishes.len(), 5);
}

fn workloads() -> impl Strategy<Value = Workload> {
    (1_usize..16, 1_usize..20, any::<u64>()).prop_map(|(activities, days, seed)| {
        let mut workload = kerbstead_tests::workloads::building(activities, days, seed);
        if Chance::new(seed).below(4) == 0 {
            workload.activities[0].after.push((activities - 1, 3));
        }
        workload
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_schedule_keeps_to_its_calendars_and_resources(workload in workloads()) {
        let first = first_schedule(&workload);
        check(&workload, &first);
        let mut search = Search::new(&workload);
        let bound = search.bound();
        for _ in 0..20 {
            search.step();
            check(&workload, search.best());
            prop_assert!(search.bound() >= bound);
            let known = search.best();
            prop_assert!((known.not_placed.len(), known.finish) <= (first.not_placed.len(), first.finish));
        }
        let hindered = |it: &(usize, Hindrance)| !matches!(it.1, Hindrance::BeyondHorizon { .. });
        if search.best().not_placed.iter().all(hindered) {
            prop_assert!(search.bound() <= search.best().finish);
        }
    }

    #[test]
    fn what_is_pushed_to_the_right_is_a_schedule_too(workload in workloads()) {
        let schedule = first_schedule(&workload);
        let slack = slack_slots(&workload, &schedule);
        let mut late = schedule.clone();
        for (at, span) in late.spans.iter_mut().enumerate() {
            if let Some(span) = span {
                let start = span.start + slack[at].unwrap() as usize;
                *span = ended(&workload, at, start);
            }
        }
        prop_assert!(late.spans.iter().flatten().all(|span| span.end <= schedule.finish));
        late.finish = late.spans.iter().flatten().map(|span| span.end).max().unwrap_or(0);
        check(&workload, &late);
    }

    #[test]
    fn a_chain_leads_from_the_beginning_to_the_end(workload in workloads()) {
        let schedule = first_schedule(&workload);
        let chain = critical_chain(&workload, &schedule);
        prop_assert_eq!(chain.is_empty(), schedule.order.is_empty());
        let end = |at: usize| schedule.spans[at].unwrap().end;
        let start = |at: usize| schedule.spans[at].unwrap().start;
        prop_assert_eq!(chain.last().map_or(0, |link| end(link.activity)), schedule.finish);
        prop_assert!(chain.first().is_none_or(|link| matches!(link.why, Why::Beginning | Why::Earliest)));
        for pair in chain.windows(2) {
            let (cause, link) = (pair[0].activity, pair[1]);
            prop_assert_eq!(link.why.cause(), Some(cause));
            if let Why::After { wait_slots, .. } = link.why {
                prop_assert_eq!(end(cause) + wait_slots + link.closed_slots, start(link.activity));
            }
            if let Why::Freed { .. } = link.why {
                prop_assert_eq!(end(cause) + link.closed_slots, start(link.activity));
            }
        }
    }
}

/// The span of an activity that starts at a slot.
fn ended(workload: &Workload, at: usize, start: usize) -> Span {
    let work = workload.activities[at].work_slots as usize;
    let whole = slots_of(workload, at, Span { start, end: workload.slots });
    let end = if work == 0 { start } else { whole[work - 1] + 1 };
    Span { start, end }
}
