//! The cheapest set of changes, against trying every set.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::draws::Chance;
use kerbstead_core::moves::pick::{Choice, PickSearch, Picked};

/// What sets cost and whether they are good, read off the rules.
fn is_good(choice: &Choice, set: &[usize]) -> bool {
    let reaches = |(at, need): (usize, &i64)| {
        let effect = |change: &usize| choice.effects.get(at).and_then(|row| row.get(*change)).copied().unwrap_or(0);
        set.iter().map(effect).sum::<i64>() >= *need
    };
    let is_refused = choice.refused.iter().any(|refused| {
        let mut refused = refused.clone();
        refused.sort_unstable();
        refused.dedup();
        refused == set
    });
    choice.needs.iter().enumerate().all(reaches)
        && choice.groups.iter().all(|group| set.iter().filter(|change| group.contains(change)).count() <= 1)
        && !is_refused
}

fn cost(choice: &Choice, set: &[usize]) -> u64 {
    set.iter().map(|change| choice.costs[*change]).sum()
}

/// The least cost of all sets.
fn by_trying(choice: &Choice) -> Option<u64> {
    let sets = (0_u32..1 << choice.costs.len()).map(|mask| {
        let members = (0..choice.costs.len()).filter(|at| mask & (1 << at) != 0);
        members.collect::<Vec<_>>()
    });
    sets.filter(|set| is_good(choice, set)).map(|set| cost(choice, &set)).min()
}

fn assert_sound(choice: &Choice, picked: &Picked) {
    assert!(picked.is_proven, "{choice:?}");
    if let Some(chosen) = &picked.chosen {
        assert!(is_good(choice, chosen), "{choice:?} {picked:?}");
        assert_eq!((cost(choice, chosen), picked.cost), (picked.cost, picked.bound), "{choice:?} {picked:?}");
    }
}

fn between(chance: &mut Chance, low: i64, high: i64) -> i64 {
    low + i64::from(chance.below(u32::try_from(high - low + 1).unwrap()))
}

fn some_of(chance: &mut Chance, count: usize, most: u32) -> Vec<usize> {
    let many = chance.below(most + 1);
    (0..many).map(|_| chance.below(u32::try_from(count).unwrap()) as usize).collect()
}

/// Small, and of every kind: free changes, equal ones, harm, limits that are none, overlapping groups.
fn small(chance: &mut Chance) -> Choice {
    let count = 1 + chance.below(11) as usize;
    let limits = chance.below(5) as usize;
    let (step, most_cost) = (between(chance, 1, 3), between(chance, 0, 12));
    let mut draw = |low, high| between(chance, low, high);
    let costs = (0..count).map(|_| (step * draw(0, most_cost)).unsigned_abs()).collect();
    let effects: Vec<Vec<i64>> =
        (0..limits).map(|_| (0..count).map(|_| if draw(0, 2) == 0 { 0 } else { draw(-6, 12) }).collect()).collect();
    let helping = |row: &Vec<i64>| row.iter().filter(|effect| **effect > 0).sum::<i64>();
    let needs = effects.iter().map(|row| draw(-8, 2 + helping(row) * 3 / 4)).collect();
    let groups = (0..chance.below(4)).map(|_| some_of(chance, count, 4)).collect();
    Choice { costs, effects, needs, groups, refused: Vec::new() }
}

#[test]
fn nothing_is_cheaper_than_what_is_picked_of_three_thousand_small_choices() {
    let mut chance = Chance::new(7);
    let mut none = 0;
    for _ in 0..3_000 {
        let choice = small(&mut chance);
        let picked = PickSearch::new(&choice).end();
        assert_sound(&choice, &picked);
        assert_eq!(picked.chosen.is_some().then_some(picked.cost), by_trying(&choice), "{choice:?} {picked:?}");
        assert!(picked.beyond.is_none() || picked.chosen.is_none());
        none += usize::from(picked.chosen.is_none());
    }
    assert!((300..2_000).contains(&none), "{none} without a set");
}

/// As whoever asks does: what is picked is refused, until nothing is left or twenty sets are.
#[test]
fn sets_that_are_refused_one_after_another_come_in_the_order_of_their_costs() {
    let mut chance = Chance::new(8);
    for _ in 0..150 {
        let mut choice = small(&mut chance);
        for _ in 0..20 {
            let picked = PickSearch::new(&choice).end();
            assert_sound(&choice, &picked);
            assert_eq!(picked.chosen.is_some().then_some(picked.cost), by_trying(&choice), "{choice:?} {picked:?}");
            let Some(chosen) = picked.chosen else { break };
            choice.refused.push(chosen.into_iter().rev().collect());
        }
    }
}

#[test]
fn a_limit_out_of_reach_is_named() {
    let choice = Choice {
        costs: vec![1, 1, 1],
        effects: vec![vec![5, 5, 0], vec![4, -9, 5]],
        needs: vec![10, 9],
        ..Choice::default()
    };
    let beyond = |choice: &Choice| {
        let picked = PickSearch::new(choice).end();
        assert!(picked.is_proven && picked.chosen.is_none() && picked.bound == 0, "{picked:?}");
        picked.beyond
    };
    // Each of both is within reach, but not both.
    assert_eq!(beyond(&choice), None);
    assert_eq!(beyond(&Choice { needs: vec![10, 10], ..choice.clone() }), Some(1));
    assert_eq!(beyond(&Choice { groups: vec![vec![0, 1]], ..choice.clone() }), Some(0));
    assert_eq!(beyond(&Choice { groups: vec![vec![0, 2]], ..choice }), Some(1));
}

#[test]
fn nothing_is_chosen_where_nothing_is_wanted() {
    let nothing = Picked { chosen: Some(vec![]), is_proven: true, ..Picked::default() };
    assert_eq!(PickSearch::new(&Choice::default()).end(), nothing);
    let free = Choice { costs: vec![0, 3], effects: vec![vec![1]], needs: vec![0], ..Choice::default() };
    assert_eq!(PickSearch::new(&free).end(), nothing);
    // Unless just that is refused.
    let other = PickSearch::new(&Choice { refused: vec![vec![]], ..free }).end();
    assert_eq!((other.chosen, other.cost), (Some(vec![0]), 0));
}

#[test]
fn ragged_and_strange_input_is_borne() {
    // Rows that are short, long or not there; members that are not there; a group and a set with one of them twice.
    let ragged = Choice {
        costs: vec![5, 6, 7],
        effects: vec![vec![1], vec![0, 2, 2, 99]],
        needs: vec![1, 2, -3],
        groups: vec![vec![0, 9], vec![1, 1], vec![]],
        refused: vec![vec![0, 1, 7], vec![1, 0, 1]],
    };
    let picked = PickSearch::new(&ragged).end();
    assert_eq!((picked.chosen, picked.cost, picked.is_proven), (Some(vec![0, 2]), 12, true));
    let nowhere = Choice { needs: vec![1, 2, -3, 1], ..ragged };
    assert_eq!(PickSearch::new(&nowhere).end().beyond, Some(3));
    // The largest and the smallest there are.
    let numbers = [i64::MIN, i64::MAX, 0, 1, -1, i64::MAX - 1];
    for first in numbers {
        for second in numbers {
            for need in numbers {
                let choice = Choice {
                    costs: vec![u64::MAX, u64::MAX, 1, 0],
                    effects: vec![vec![first, second, 1, -1], vec![1, 1, second, first]],
                    needs: vec![need, 1],
                    groups: vec![vec![0, 3]],
                    refused: vec![vec![0]],
                };
                let picked = PickSearch::new(&choice).end();
                assert!(picked.is_proven && picked.bound == picked.cost, "{choice:?} {picked:?}");
            }
        }
    }
}

#[test]
fn of_more_than_sixty_four_changes_nothing_is_proven() {
    let choice = |count: usize| Choice {
        costs: (0..count as u64).map(|at| 100 - at).collect(),
        effects: vec![vec![1; count]],
        needs: vec![2],
        ..Choice::default()
    };
    let picked = PickSearch::new(&choice(64)).end();
    assert_eq!((picked.chosen, picked.cost, picked.is_proven), (Some(vec![62, 63]), 75, true));
    let picked = PickSearch::new(&choice(65)).end();
    assert_eq!((picked.chosen, picked.bound, picked.is_proven), (Some(vec![62, 63]), 0, false));
}

/// What costs nearly as much as it helps is the hardest to choose among.
#[test]
fn every_step_goes_on_and_the_share_never_falls() {
    let mut chance = Chance::new(9);
    let effects: Vec<Vec<i64>> =
        (0..4).map(|_| (0..24).map(|_| between(&mut chance, 10, 99)).collect::<Vec<_>>()).collect();
    let costs = (0..24).map(|at| effects.iter().map(|row| row[at].unsigned_abs()).sum()).collect();
    let needs = effects.iter().map(|row| row.iter().sum::<i64>() / 2).collect();
    let choice = Choice { costs, effects, needs, ..Choice::default() };
    let mut search = PickSearch::new(&choice);
    let (mut before, mut bound, mut steps) = (0.0, 0, 0);
    while before < 1.0 && steps < 100_000 {
        let (share, best) = (search.step(), search.best());
        assert!((before..=1.0).contains(&share) && best.bound >= bound && best.bound <= best.cost, "{share} {best:?}");
        assert!(is_good(&choice, &best.chosen.unwrap()));
        assert_eq!(best.is_proven, share >= 1.0);
        (before, bound, steps) = (share, best.bound, steps + 1);
    }
    assert!(steps > 20 && steps < 100_000, "{steps} steps");
}
