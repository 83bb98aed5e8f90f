//! Searches against trying all.

use super::by_chance;
use kerbstead_core::energy::spread::Spread;
use kerbstead_core::water::chance::{Unsure, lasting};
use kerbstead_core::water::course::run;
use kerbstead_core::water::sizing::{Extra, fewest_stops, least_extra, longest_interval};
use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};

/// The route with a stop for everything on the days whose bits are set, and nowhere else.
fn stopping(setup: &Setup, stops: u32) -> Setup {
    let days = setup.days.iter().enumerate().map(|(at, day)| {
        let stop = stops >> at & 1 == 1;
        Day { refill: stop, empty_grey: stop, empty_toilet: stop, ..*day }
    });
    Setup { days: days.collect(), ..setup.clone() }
}

/// Days between stops, the first of them no later than a day; none if there is a longer stretch or one to the end.
fn is_spaced(stops: u32, days: usize, first_by_day: Option<usize>, most_days: usize) -> bool {
    let at: Vec<usize> = (0..days).filter(|day| stops >> day & 1 == 1).collect();
    let Some(first) = at.first() else { return first_by_day.is_none() };
    let ends = at.windows(2).all(|pair| pair[1] - pair[0] <= most_days) && days - at[at.len() - 1] <= most_days;
    first_by_day.is_none_or(|day| *first <= day) && ends
}

#[test]
fn stops_no_further_apart_hold_wherever_they_are_and_further_apart_not_always() {
    let mut limited = 0;
    for seed in 0..120 {
        let days = 3 + seed as usize % 7;
        let setup = by_chance(seed, days);
        let interval = longest_interval(&setup);
        let all = || (0..1_u32 << days).map(|stops| (stops, run(&stopping(&setup, stops)).holds()));
        let most = interval.days.unwrap_or(days + 1);
        assert!(
            all().filter(|(stops, _)| is_spaced(*stops, days, interval.first_by_day, most)).all(|(_, holds)| holds)
        );
        if let Some(worst) = interval.worst_stop {
            limited += 1;
            // After that very stop, with the next one a day too late.
            let late = worst + most + 1;
            let until = (0..=worst).fold(0, |stops, at| stops | 1 << at);
            let stops = if late < days { until | 1 << late } else { until };
            let course = run(&stopping(&setup, stops));
            assert_eq!(course.first.map(|first| (first.day, Some(first.vessel))), Some((worst + most, interval.limit)));
        }
        if let Some(day) = interval.first_by_day {
            assert_eq!(run(&stopping(&setup, 0)).first.map(|first| first.day), Some(day), "{seed}");
        }
    }
    assert!(limited > 60, "{limited}");
}

#[test]
fn the_least_extra_is_enough_and_a_tenth_less_is_not() {
    let mut lacked = [0; 3];
    for seed in 0..300 {
        let setup = by_chance(seed, 12);
        let extra = least_extra(&setup);
        let with = |extra: Extra| {
            let mut with = setup.clone();
            with.fresh.push(Tank { capacity_ml: extra.fresh_ml, opening_ml: extra.fresh_ml });
            if !with.grey.is_empty() {
                with.grey.push(Tank { capacity_ml: extra.grey_ml, opening_ml: 0 });
            }
            with.toilet.iter_mut().for_each(|tank| tank.capacity_ml += extra.toilet);
            run(&with)
        };
        assert!(with(extra).holds(), "{seed}");
        // Every smaller size is tried.
        for fresh_ml in (0..extra.fresh_ml).step_by(100) {
            assert!(with(Extra { fresh_ml, ..extra }).fresh.is_some(), "{seed}");
        }
        for grey_ml in (0..extra.grey_ml).step_by(100) {
            assert!(with(Extra { grey_ml, ..extra }).grey.is_some(), "{seed}");
        }
        for toilet in (0..extra.toilet).step_by(100) {
            assert!(with(Extra { toilet, ..extra }).toilet.is_some(), "{seed}");
        }
        for (lacked, size) in lacked.iter_mut().zip([extra.fresh_ml, extra.grey_ml, extra.toilet]) {
            *lacked += u32::from(size > 0);
        }
    }
    assert!(lacked.iter().all(|lacked| *lacked > 40), "{lacked:?}");
}

/// The route with stops only on the days whose bits are set.
fn stopping_at(setup: &Setup, stops: u32) -> Setup {
    let days = setup.days.iter().enumerate().map(|(at, day)| {
        let stop = stops >> at & 1 == 1;
        let (refill, empty_grey) = (day.refill && stop, day.empty_grey && stop);
        Day { refill, empty_grey, empty_toilet: day.empty_toilet && stop, ..*day }
    });
    Setup { days: days.collect(), ..setup.clone() }
}

#[test]
fn no_set_of_days_has_fewer_stops() {
    let (mut found, mut none) = (0, 0);
    for seed in 0..600 {
        let setup = by_chance(seed, 9);
        let least =
            (0..1_u32 << 9).filter(|stops| run(&stopping_at(&setup, *stops)).holds()).map(u32::count_ones).min();
        let fewest = fewest_stops(&setup);
        assert_eq!(fewest.as_ref().map(|days| days.len() as u32), least, "{seed}");
        if let Some(days) = fewest {
            let stops = days.iter().fold(0, |stops, day| stops | 1 << day);
            assert!(days.is_sorted() && run(&stopping_at(&setup, stops)).holds());
            found += 1;
        } else {
            none += 1;
        }
    }
    assert!(found > 80 && none > 80, "{found} {none}");
}

/// By hand: 20 l for 8 l a day last two days and a stop; every third day can be one.
#[test]
fn a_year_takes_a_stop_every_third_day() {
    let days = (0..365).map(|at| Day { wants: Use::new(8.0, 0.0, 0.0), refill: at % 3 == 2, ..Day::default() });
    let setup = Setup { fresh: vec![Tank::full(20.0)], days: days.collect(), ..Setup::default() };
    let stops = fewest_stops(&setup).unwrap();
    assert_eq!((stops.len(), stops[0], stops[120]), (121, 2, 362));
    assert_eq!(longest_interval(&setup).days, Some(3));
}

#[test]
fn chance_without_uncertainty_is_the_route_itself() {
    for seed in 0..100 {
        let setup = by_chance(seed, 20);
        let lasting = lasting(&setup, &Unsure::default(), seed, 7);
        let first = run(&setup).first;
        assert_eq!(lasting.share(), f64::from(u8::from(first.is_none())), "{seed}");
        if let Some(first) = first {
            assert_eq!(lasting.short_first[first.vessel as usize], 7);
            assert_eq!((lasting.share_to(first.day), lasting.share_to(first.day + 1)), (1.0, 0.0));
        }
    }
}

/// Runs add up, a seed gives the same again, and the first runs of many are those of few.
#[test]
fn runs_by_chance_are_counted_once_each() {
    let unsure = Unsure {
        habits: Spread::Triangle { low: 0.5, likely: 1.0, high: 1.8 },
        day: Spread::Triangle { low: 0.2, likely: 1.0, high: 2.0 },
        toilet: Spread::Triangle { low: 0.7, likely: 1.0, high: 1.5 },
    };
    for seed in 0..20 {
        let setup = by_chance(seed, 15);
        let many = lasting(&setup, &unsure, seed, 900);
        assert_eq!(many, lasting(&setup, &unsure, seed, 900));
        let short: u32 = many.first_short_on.iter().sum();
        assert_eq!(short, many.short_first.iter().sum::<u32>());
        assert_eq!(many.share(), 1.0 - f64::from(short) / 900.0);
        let few = lasting(&setup, &unsure, seed, 300);
        assert!(few.first_short_on.iter().zip(&many.first_short_on).all(|(few, many)| few <= many));
    }
}
