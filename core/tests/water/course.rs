//! Routes worked by hand, and what must hold for any.

use super::by_chance;
use kerbstead_core::water::cans::{fresh_by_can_ml, grey_by_tank_ml};
use kerbstead_core::water::course::{First, Short, Vessel, run};
use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};

fn holds_ml(tanks: &[Tank]) -> u64 {
    tanks.iter().map(|tank| tank.capacity_ml).sum()
}

fn opening_ml(tanks: &[Tank]) -> u64 {
    tanks.iter().map(|tank| tank.opening_ml).sum()
}

#[test]
fn what_was_there_and_came_is_what_went_and_is_left_to_the_millilitre() {
    for seed in 0..400 {
        let setup = by_chance(seed, 1 + seed as usize % 60);
        let course = run(&setup);
        let toilet = setup.toilet.unwrap_or_default();
        let (mut fresh, mut grey, mut in_toilet) =
            (opening_ml(&setup.fresh), opening_ml(&setup.grey), toilet.opening_ml);
        let opening = (fresh, grey, in_toilet);
        for went in &course.days {
            assert_eq!(fresh + went.filled_ml, went.used_ml + went.fresh_ml);
            assert_eq!(grey + went.grey_added_ml, went.grey_emptied_ml + went.grey_over_ml + went.grey_ml);
            assert_eq!(in_toilet + went.toilet_added, went.toilet_emptied + went.toilet_over + went.toilet);
            assert!(went.fresh_ml <= holds_ml(&setup.fresh) && went.grey_ml <= holds_ml(&setup.grey));
            assert!(went.toilet <= toilet.capacity_ml && went.grey_added_ml <= went.used_ml);
            (fresh, grey, in_toilet) = (went.fresh_ml, went.grey_ml, went.toilet);
        }
        let sum = |of: fn(&kerbstead_core::water::course::DayOf) -> u64| course.days.iter().map(of).sum::<u64>();
        assert_eq!(opening.0 + sum(|went| went.filled_ml), sum(|went| went.used_ml) + fresh);
        assert_eq!(
            opening.1 + sum(|went| went.grey_added_ml),
            sum(|went| went.grey_emptied_ml + went.grey_over_ml) + grey
        );
        assert_eq!(
            opening.2 + sum(|went| went.toilet_added),
            sum(|went| went.toilet_emptied + went.toilet_over) + in_toilet
        );
    }
}

#[test]
fn each_can_and_tank_has_its_part_of_the_whole() {
    for seed in 0..200 {
        let setup = by_chance(seed, 40);
        let course = run(&setup);
        let (fresh, grey) = (fresh_by_can_ml(&setup, &course), grey_by_tank_ml(&setup, &course));
        for ((went, fresh), grey) in course.days.iter().zip(&fresh).zip(&grey) {
            assert_eq!(fresh.iter().sum::<u64>(), went.fresh_ml, "{seed}");
            assert_eq!(grey.iter().sum::<u64>(), went.grey_ml, "{seed}");
            assert!(fresh.iter().zip(&setup.fresh).all(|(level, tank)| *level <= tank.capacity_ml));
            assert!(grey.iter().zip(&setup.grey).all(|(level, tank)| *level <= tank.capacity_ml));
        }
    }
}

/// By hand. Cans of 20 and 10 l, a grey tank of 12 l with 2 l in it, a toilet for four person-days; two people use 8 l a day, of
/// which 5 become used water. On day 1 there is a public toilet, on day 2 nobody is there, on day 3 there is a tap but no drain.
#[test]
fn a_route_goes_as_it_does_by_hand() {
    let day = Day { wants: Use::new(8.0, 5.0, 2.0), ..Day::default() };
    let days = vec![
        day,
        Day { public_toilet: true, ..day },
        Day { away: true, ..day },
        Day { refill: true, ..day },
        day,
        Day { empty_grey: true, empty_toilet: true, ..day },
    ];
    let grey = vec![Tank { capacity_ml: 12_000, opening_ml: 2_000 }];
    let setup = Setup { fresh: vec![Tank::full(20.0), Tank::full(10.0)], grey, toilet: Some(Tank::empty(4.0)), days };
    let course = run(&setup);
    let evenings: Vec<(u64, u64, u64)> =
        course.days.iter().map(|went| (went.fresh_ml, went.grey_ml, went.toilet)).collect();
    let expected = [
        (22_000, 7_000, 2_000),
        (14_000, 12_000, 2_000),
        (14_000, 12_000, 2_000),
        (30_000, 12_000, 4_000), // 5 l over
        (22_000, 12_000, 4_000), // 5 l and two person-days over
        (14_000, 0, 0),
    ];
    assert_eq!(evenings, expected);
    assert_eq!(course.days[3].filled_ml, 24_000);
    assert_eq!(course.fresh, None);
    assert_eq!(course.grey, Some(Short { day: 3, on_that_day_ml: 5_000, in_all_ml: 10_000, days: 2 }));
    assert_eq!(course.toilet, Some(Short { day: 4, on_that_day_ml: 2_000, in_all_ml: 2_000, days: 1 }));
    assert_eq!(course.first, Some(First { vessel: Vessel::Grey, day: 3, days_before_next: Some(1) }));
    assert!(!course.holds());
}

/// By hand: 5 of 8 l are there, so that 3.125 of 5 l become used water, to the millilitre.
#[test]
fn water_that_is_not_there_does_not_become_used_water() {
    let day = Day { wants: Use::new(8.0, 5.0, 0.0), ..Day::default() };
    let setup = Setup { fresh: vec![Tank::full(5.0)], grey: vec![Tank::empty(50.0)], toilet: None, days: vec![day; 2] };
    let course = run(&setup);
    assert_eq!((course.days[0].grey_ml, course.days[0].missing_ml), (3_125, 3_000));
    assert_eq!((course.days[1].grey_ml, course.days[1].missing_ml), (3_125, 8_000));
}

#[test]
fn of_what_does_not_exist_nothing_is_said() {
    let day = Day { wants: Use::new(2.0, 2.0, 1.0), ..Day::default() };
    let setup = Setup { fresh: vec![Tank::full(4.0)], grey: vec![], toilet: None, days: vec![day; 3] };
    let course = run(&setup);
    assert_eq!((course.grey, course.toilet, course.fresh.unwrap().day), (None, None, 2));
    assert!(run(&Setup::default()).holds());
    // But without any can, what is wanted is missing.
    assert_eq!(run(&Setup { fresh: vec![], ..setup }).fresh.unwrap().day, 0);
}

#[test]
fn more_room_and_more_stops_are_never_worse() {
    let first = |setup: &Setup| {
        let course = run(setup);
        [course.fresh, course.toilet].map(|short| short.map_or((usize::MAX, 0), |short| (short.day, short.in_all_ml)))
    };
    for seed in 0..200 {
        let setup = by_chance(seed, 30);
        let before = first(&setup);
        let mut more = [setup.clone(), setup.clone()];
        more[0].fresh.push(Tank::full(1.0));
        more[0].toilet.iter_mut().for_each(|tank| tank.capacity_ml += 1_000);
        let day = &mut more[1].days[seed as usize % 30];
        (day.refill, day.empty_toilet) = (true, true);
        for after in more.iter().map(first) {
            for ((day, in_all_ml), (day_after, in_all_after_ml)) in before.into_iter().zip(after) {
                assert!(day_after >= day && in_all_after_ml <= in_all_ml, "{seed}");
            }
        }
    }
}
