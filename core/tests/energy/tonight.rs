//! From a reading on.

use kerbstead_core::energy::chance::{Runs, Uncertainty};
use kerbstead_core::energy::draw::{Draw, Need, Outlet, Span};
use kerbstead_core::energy::run::{Limit, run};
use kerbstead_core::energy::setup::{OnBoard, Setup};
use kerbstead_core::energy::spread::Spread;
use kerbstead_core::energy::store::{InverterOn, Store, TaperOf};
use kerbstead_core::energy::tonight::{Tonight, cost_in_hours, tonight, tonight_without_chances};

use crate::properties::by_chance;
use crate::{assert_near, setup, steady};

fn likely(setup: &Setup, from_hour: usize) -> Option<f64> {
    tonight_without_chances(setup, from_hour, None, &[]).lasts_to
}

fn spans(power_w: f64, at: &[(f64, f64)]) -> Draw {
    let spans = at.iter().map(|&(from_hour, hours)| Span { from_hour, hours }).collect();
    Draw { need: Need::Spans(spans), ..steady(power_w) }
}

/// A setup by chance that draws less, by its seed, so that some last long, and whose inverters do not stand by alone, which is
/// no draw that could be left unserved.
fn sparing(seed: u64, days: usize) -> Setup {
    let mut setup = by_chance(seed, 1 + seed as usize % 3, days);
    for draw in &mut setup.draws {
        draw.power_w = draw.power_w.min(60.0) * 0.1 * (seed % 7) as f64;
        draw.surge_w = 0.0;
        if let Need::Fridge(fridge) = &mut draw.need {
            (fridge.ua_w_k, fridge.running_w) = (0.02 * (seed % 7) as f64, 20.0);
        }
    }
    for board in &mut setup.stores {
        board.opening_state = 0.9;
        board.store.inverter.iter_mut().for_each(|inverter| inverter.on = InverterOn::WhileDrawing);
    }
    setup
}

#[test]
fn it_lasts_from_the_reading_on_to_the_moment() {
    let mut setup = setup(Store::ideal(200.0), vec![steady(30.0)], 72);
    setup.stores[0].opening_state = 0.5;
    for from_hour in [0, 7, 18, 23, 30] {
        assert_near(likely(&setup, from_hour).unwrap(), 100.0 / 30.0, 1e-12, "steady");
    }
    // A floor of a tenth is met earlier; below it there is nothing to wait for.
    setup.stores[0].floor_state = 0.1;
    assert_near(likely(&setup, 18).unwrap(), 80.0 / 30.0, 1e-12, "floor");
    setup.stores[0].opening_state = 0.05;
    assert_eq!(likely(&setup, 18), Some(0.0));
    // The end of what is looked at, and beyond it.
    assert_eq!((likely(&setup, 72), likely(&setup, usize::MAX)), (None, None));
}

/// Above the knee at half of it, with T of 100 W that taper and 140 W more drawn than comes in steadily, the charge nears 300 Wh
/// exponentially, from 1,000; below it goes straight down by 40 W.
#[test]
fn it_lasts_through_a_taper_as_the_closed_form_says() {
    for (of, steady_w) in [(TaperOf::Every, 0.0), (TaperOf::Mains, 60.0)] {
        let mut store = Store::ideal(1_000.0);
        (store.taper.from_state, store.taper.of) = (0.5, of);
        let mut setup = setup(store, vec![steady(140.0 + steady_w)], 48);
        setup.hours.iter_mut().for_each(|given| (given.mains_w, given.vehicle_w) = (100.0, steady_w));
        let mut lasts = |floor_state: f64| {
            setup.stores[0].floor_state = floor_state;
            likely(&setup, 5).unwrap()
        };
        assert_near(lasts(0.0), libm::log(700.0 / 200.0) / 0.2 + 12.5, 1e-9, "empty");
        assert_near(lasts(0.7), libm::log(700.0 / 400.0) / 0.2, 1e-9, "a floor above the knee");
        assert_near(lasts(0.2), libm::log(700.0 / 200.0) / 0.2 + 7.5, 1e-9, "a floor below it");
    }
}

#[test]
fn what_was_used_and_what_shone_before_the_reading_does_not_count() {
    // 60 W from 8 to 9, and from 23:00 on for three hours; panels until noon. Read at 18:00: 100 Wh.
    let mut setup = setup(Store::ideal(100.0), vec![spans(60.0, &[(8.0, 1.0), (23.0, 3.0)])], 48);
    setup.stores[0].panel_w = 200.0;
    setup.cloud_by_day = vec![1.0, 0.1];
    setup.hours.iter_mut().enumerate().for_each(|(hour, given)| given.sun_share = f64::from(u8::from(hour % 24 < 12)));
    // 60 Wh until midnight. Then 20 W shine on the next day, and 60 are drawn: 40 Wh last an hour.
    assert_eq!(likely(&setup, 18), Some(7.0));
    // The first day's draw runs on past midnight, although its hours before it are cut off.
    assert_eq!(likely(&setup, 24), None);
    setup.cloud_by_day = vec![1.0, 0.0];
    assert_near(likely(&setup, 24).unwrap(), 1.0 + 40.0 / 60.0, 1e-12, "in the second hour after midnight");
}

#[test]
fn a_reading_of_what_a_run_has_goes_on_as_the_run_does() {
    let (mut compared, mut fell_short) = (0, 0);
    for seed in 0..150 {
        let mut setup = sparing(seed, 12);
        setup.stores.iter_mut().for_each(|board| board.floor_state = 0.0);
        let course = run(&setup);
        if course.unserved_by_limit_wh[Limit::Power as usize] + course.unserved_by_limit_wh[Limit::Surge as usize] > 0.0
        {
            continue;
        }
        for from_hour in [0, 5, 17, 24, 40] {
            if course.first_short_hour.is_some_and(|first| first < from_hour) {
                continue;
            }
            let mut read = setup.clone();
            for (board, store) in read.stores.iter_mut().zip(&course.stores) {
                let charge_wh = from_hour.checked_sub(1).map(|before| store.hours[before].charge_wh);
                board.opening_state = charge_wh.map_or(0.9, |wh| wh / board.store.usable_wh);
            }
            let first = likely(&read, from_hour).map(|hours| from_hour as f64 + hours.floor());
            assert_eq!(first, course.first_short_hour.map(|hour| hour as f64), "{seed} from {from_hour}");
            (compared, fell_short) = (compared + 1, fell_short + usize::from(first.is_some()));
        }
    }
    assert!(compared > 200 && (50..compared - 20).contains(&fell_short), "{compared} {fell_short}");
}

#[test]
fn without_chance_all_runs_fall_short_when_the_likely_one_does() {
    let mut fell_short = 0;
    for seed in 0..60 {
        let mut setup = sparing(seed, 6);
        setup.draws[6].chance = 1.0;
        let from_hour = seed as usize % 30;
        let Tonight { lasts_to, one_in_ten, reaches, share_reaching, .. } =
            tonight(&setup, from_hour, Some(40), &[], &Uncertainty::default(), seed, 10);
        assert_eq!(one_in_ten, lasts_to.map(|hours| hours.ceil().max(1.0) - 1.0).filter(|_| one_in_ten.is_some()));
        assert_eq!(one_in_ten.is_some(), lasts_to.is_some(), "{seed}");
        assert_eq!(share_reaching, Some(f64::from(u8::from(reaches))), "{seed} {lasts_to:?}");
        fell_short += usize::from(lasts_to.is_some());
    }
    assert!((15..55).contains(&fell_short), "{fell_short}");
}

#[test]
fn one_in_ten_is_the_tenth_of_the_spread() {
    let uncertainty =
        Uncertainty { scale: Spread::Triangle { low: 0.5, likely: 1.0, high: 1.5 }, ..Uncertainty::default() };
    let setup = setup(Store::ideal(240.0), vec![steady(10.0)], 72);
    let of = |floor_state: f64, runs: u32| {
        let mut setup = setup.clone();
        setup.stores[0].floor_state = floor_state;
        tonight(&setup, 18, Some(42), &[], &uncertainty, 3, runs)
    };
    // One in ten uses more than 1.5 - sqrt(0.1 x 0.5) = 1.2764 as much: 18.80 h, and with a floor of a quarter 14.10 h.
    assert_eq!((of(0.0, 4_000).one_in_ten, of(0.25, 4_000).one_in_ten), (Some(18.0), Some(14.0)));
    assert_near(of(0.0, 4_000).share_reaching.unwrap(), 0.5, 0.03, "half of them reach the next evening");
    assert_eq!((of(0.0, 0).one_in_ten, of(0.0, 0).share_reaching), (None, None));
    assert_eq!(of(0.0, 500), of(0.0, 500));
}

/// Runs from a reading on draw a day's chances at its midnight: a lamp of the night that is on by chance 1/2 from 22:00 past
/// midnight and one from 1:00 on are two draws, with a reading in the evening as well.
#[test]
fn a_new_day_begins_at_midnight_also_after_a_reading() {
    for stores in [1, 2] {
        let lamp = Draw { chance: 0.5, ..spans(10.0, &[(1.0, 1.0), (20.0, 1.0)]) };
        let mut setup = setup(Store::ideal(15.0), vec![lamp], 26);
        setup.stores.resize(stores, OnBoard::full(Store::ideal(0.0)));
        let mut runs = Runs::from_hour(&setup, 18, &Uncertainty::default(), 9, 20_000);
        while runs.step(5_000) > 0 {}
        let chances = runs.chances();
        assert_near(1.0 - chances.share_kept(), 0.25, 0.01, "both");
        assert_eq!(chances.first_short_hours.first(), Some(&7.0));
    }
}

#[test]
fn the_least_important_go_first_and_of_equals_what_wins_most() {
    // 1,000 Wh, 100 W: ten hours. A mains draw of equal importance saves its standby too.
    let mut store = Store::ideal(1_000.0);
    store.inverter.iter_mut().for_each(|inverter| inverter.standby_w = 20.0);
    let draws = vec![
        Draw { importance: 9, ..steady(40.0) },
        Draw { importance: 1, ..steady(10.0) },
        Draw { importance: 1, outlet: Outlet::Ac, ..steady(10.0) },
        Draw { importance: 5, ..steady(20.0) },
        Draw { importance: 0, ..steady(0.0) },
    ];
    let setup = setup(store, draws, 48);
    let ahead = |until: usize, may: [bool; 5]| tonight_without_chances(&setup, 6, Some(until), &may);
    let sheds = |tonight: &Tonight| -> Vec<(usize, f64)> {
        tonight.sheds.iter().map(|shed| (shed.draw, shed.lasts_to.unwrap_or(-1.0))).collect()
    };
    assert_eq!(ahead(16, [true; 5]).sheds, []);
    assert!(ahead(16, [true; 5]).reaches);
    let long = ahead(30, [true; 5]);
    assert_eq!((long.lasts_to, long.reaches), (Some(10.0), false));
    let expected = [(2, 1_000.0 / 70.0), (1, 1_000.0 / 60.0), (3, 25.0)];
    for ((draw, lasts_h), (expected_draw, expected_h)) in sheds(&long).into_iter().zip(expected) {
        assert_eq!(draw, expected_draw);
        assert_near(lasts_h, expected_h, 1e-9, "lasts");
    }
    assert_eq!(long.sheds.len(), 3);
    assert_near(long.sheds[0].wh_saved, 240.0, 1e-9, "saved until the hour");
    // What may not be shed stays; what is not enough is all the same listed.
    assert_eq!(sheds(&ahead(30, [false, true, false, false, true])), [(1, 1_000.0 / 90.0)]);
    // Until the hour is reached, no more.
    assert_eq!(ahead(20, [true; 5]).sheds.len(), 1);
    // With all of them gone it lasts through all hours.
    assert_eq!(tonight_without_chances(&setup, 6, None, &[true; 5]).sheds.last().unwrap().lasts_to, None);
}

#[test]
fn what_wins_nothing_is_not_given_up() {
    // The second store is full of its own; on the first there is a lamp and later a pump.
    let draws = vec![
        Draw { importance: 1, store: 1, ..steady(5.0) },
        Draw { importance: 2, ..spans(50.0, &[(10.0, 2.0)]) },
        Draw { importance: 3, ..steady(10.0) },
    ];
    let mut setup = setup(Store::ideal(60.0), draws, 24);
    setup.stores.push(OnBoard::full(Store::ideal(500.0)));
    let ahead = tonight_without_chances(&setup, 0, None, &[true; 3]);
    assert_eq!(ahead.lasts_to, Some(6.0));
    // The lamp first, although it matters more: the pump wins nothing until then. Then the pump.
    assert_eq!(ahead.sheds.iter().map(|shed| shed.draw).collect::<Vec<usize>>(), [2, 1]);
    assert_eq!(ahead.sheds[1].lasts_to, None);
}

#[test]
fn each_shed_wins_time_and_only_what_may_go_goes() {
    let mut shed = 0;
    for seed in 0..60 {
        let setup = by_chance(seed, 1 + seed as usize % 3, 5);
        let may: Vec<bool> = (0..10).map(|draw| (draw + seed) % 3 != 0).collect();
        let ahead = tonight_without_chances(&setup, 15, None, &may);
        let mut before = ahead.lasts_to;
        for one in &ahead.sheds {
            assert!(may[one.draw] && one.wh_saved > 0.0 && before.is_some());
            assert!(one.lasts_to.is_none_or(|hours| before.is_some_and(|before| hours > before)), "{seed}");
            before = one.lasts_to;
            shed += 1;
        }
        assert_eq!(tonight_without_chances(&setup, 15, None, &may), ahead);
    }
    assert!(shed > 50, "{shed}");
}

#[test]
fn outlets_that_refuse_are_told_apart() {
    let mut store = Store::ideal(1_000.0);
    store.dc.continuous_w = 30.0;
    let setup = setup(store, vec![spans(50.0, &[(7.0, 1.0)])], 24);
    let refused = |from, until| tonight_without_chances(&setup, from, Some(until), &[]).refused;
    assert_eq!((refused(0, 24), refused(0, 7), refused(8, 24)), (Some(Limit::Power), None, None));
}

#[test]
fn a_draw_costs_hours() {
    let mut short = setup(Store::ideal(100.0), vec![steady(8.0), steady(2.0)], 24);
    assert_near(cost_in_hours(&short, 3, 1).unwrap(), 2.5, 1e-9, "sooner");
    // Without the greater one it holds through the 21 hours that are left.
    assert_near(cost_in_hours(&short, 3, 0).unwrap(), 11.0, 1e-9, "at least");
    assert_eq!(cost_in_hours(&short, 3, 2), None);
    // Where it holds either way: 1,000 less 210 and less 168 Wh last 79 and 104 hours.
    short.stores[0].store.usable_wh = 1_000.0;
    assert_near(cost_in_hours(&short, 3, 1).unwrap(), 832.0 / 8.0 - 790.0 / 10.0, 1e-9, "reserve");
    short.draws.truncate(1);
    assert_eq!(cost_in_hours(&short, 3, 0), None);
}

#[test]
fn nothing_odd_breaks_a_look_ahead() {
    for odd in [f64::NAN, f64::INFINITY, -1.0, 1e300] {
        let mut setup = by_chance(4, 2, 2);
        setup.stores[0].opening_state = odd;
        setup.stores[0].floor_state = odd;
        setup.draws[1].power_w = odd;
        for hour in [0, 30, 48, 49, usize::MAX] {
            tonight(&setup, hour, Some(hour / 2), &[true; 20], &Uncertainty::default(), 1, 9);
            tonight(&setup, 3, Some(hour), &[true; 3], &Uncertainty::default(), 1, 9);
            cost_in_hours(&setup, hour, 1);
        }
    }
    let nothing = tonight(&Setup::default(), 5, None, &[true], &Uncertainty::default(), 1, 9);
    assert!(nothing.reaches && nothing.sheds.is_empty());
    let no_store = Setup { stores: vec![], ..setup(Store::ideal(1.0), vec![steady(1.0)], 5) };
    assert_eq!(likely(&no_store, 2), Some(0.0));
}
