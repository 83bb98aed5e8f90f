//! What must hold for any setup.

use kerbstead_core::draws::Chance;
use kerbstead_core::energy::chance::{Runs, Uncertainty};
use kerbstead_core::energy::draw::{Days, Draw, Need, Outlet, Span};
use kerbstead_core::energy::fridge::{Cooling, Fridge};
use kerbstead_core::energy::run::{Course, run};
use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
use kerbstead_core::energy::sizing::{least_panel, least_store};
use kerbstead_core::energy::spread::Spread;
use kerbstead_core::energy::stops::{Aim, Place, stops};
use kerbstead_core::energy::store::{Chemistry, InverterOn, Store, TaperOf, TaperWithin};

/// A setup by chance: `stores` of them, draws of every kind, `days` days.
pub fn by_chance(seed: u64, stores: usize, days: usize) -> Setup {
    let mut chance = Chance::new(seed);
    let mut between = |low: f64, high: f64| low + (high - low) * chance.share();
    let boards = (0..stores).map(|_| {
        let mut store = Store::usual(Chemistry::Lfp, between(200.0, 1_500.0));
        store.taper.from_state = between(0.3, 1.05);
        store.taper.of = if between(0.0, 1.0) < 0.5 { TaperOf::Every } else { TaperOf::Mains };
        store.self_discharge_per_month = between(0.0, 0.2);
        if let Some(inverter) = &mut store.inverter {
            inverter.on = if between(0.0, 1.0) < 0.3 { InverterOn::Always } else { InverterOn::WhileDrawing };
        }
        OnBoard {
            store,
            panel_w: between(0.0, 200.0),
            sun_share: (0..if stores > 1 { 48 } else { 0 }).map(|_| between(0.0, 1.0)).collect(),
            opening_state: between(0.0, 1.0),
            floor_state: between(0.0, 0.2),
        }
    });
    let boards: Vec<OnBoard> = boards.collect();
    let draws = (0..10).map(|number| {
        let need = match number % 4 {
            0 => Need::Spans(vec![Span { from_hour: between(0.0, 24.0), hours: between(0.0, 5.0) }]),
            1 => Need::Duty(between(0.0, 0.4)),
            2 => Need::ByHour(std::array::from_fn(|_| between(-0.5, 0.5))),
            _ => Need::Fridge(Fridge { ua_w_k: between(0.2, 2.0), ..Fridge::default() }),
        };
        Draw {
            power_w: between(1.0, if number == 0 { 900.0 } else { 60.0 }),
            surge_w: between(0.0, 200.0),
            outlet: if between(0.0, 1.0) < 0.5 { Outlet::Ac } else { Outlet::Dc },
            need,
            duty: if number == 4 { 0.5 } else { 1.0 },
            days: if number == 5 { Days::OneIn { days: 3, first: 1 } } else { Days::Every },
            chance: if number == 6 { 0.5 } else { 1.0 },
            store: number % stores.max(1),
            may_move: number % 2 == 0,
            importance: (number * 7 % 5) as u8,
        }
    });
    let draws = draws.collect();
    let hours = (0..days * 24).map(|hour| {
        let of_day = (hour % 24) as f64;
        Given {
            air_c: between(-5.0, 40.0),
            store_c: between(-3.0, 50.0),
            sun_share: (0.7 - (of_day - 12.5).abs() / 8.0).max(0.0),
            vehicle_w: if hour % 24 == 10 { 100.0 } else { 0.0 },
            vehicle_hour: if hour % 48 == 10 { 0.5 } else { 1.0 },
            mains_w: if hour % 72 == 19 { 300.0 } else { 0.0 },
            mains_hour: if hour % 144 == 19 { 0.25 } else { 1.0 },
        }
    });
    let hours = hours.collect();
    Setup { stores: boards, draws, hours, cloud_by_day: (0..days).map(|_| between(0.1, 1.0)).collect() }
}

fn assert_sound(course: &Course, setup: &Setup) {
    for (store, board) in course.stores.iter().zip(&setup.stores) {
        let mut before_wh = board.store.usable_wh * board.opening_state;
        for hour in &store.hours {
            let after_wh = before_wh - hour.lost_wh + hour.put_in_wh - hour.taken_out_wh;
            let throughput_wh = before_wh + hour.put_in_wh + hour.taken_out_wh;
            assert!((hour.charge_wh - after_wh).abs() <= 1e-9 * throughput_wh.max(1e-3), "{hour:?} from {before_wh}");
            assert!(hour.charge_wh >= 0.0 && hour.charge_wh <= board.store.usable_wh);
            let most_wh = hour.could_take_wh * board.store.charge_efficiency;
            assert!(hour.put_in_wh >= 0.0 && hour.put_in_wh <= most_wh * (1.0 + 1e-9) + 1e-9, "{hour:?}");
            before_wh = hour.charge_wh;
        }
        assert!(store.reserve_h.iter().all(|hours| (0.0..=10_000.0).contains(hours)));
    }
}

#[test]
fn energy_is_conserved_in_every_hour() {
    for seed in 0..60 {
        // Of every ten one has three stores and lasts a year.
        let (stores, days) = if seed % 10 == 0 { (3, 365) } else { (1 + seed as usize % 3, 20) };
        let setup = by_chance(seed, stores, days);
        assert_sound(&run(&setup), &setup);
    }
}

/// What is drawn and not served is what was asked for and not given, at the cells of an ideal store.
#[test]
fn what_is_served_and_what_is_not_is_what_was_asked_for() {
    for seed in 0..40 {
        let mut setup = by_chance(seed, 1, 20);
        setup.stores[0].store = Store { inputs: setup.stores[0].store.inputs, ..Store::ideal(400.0) };
        let mut plenty = setup.clone();
        plenty.stores[0] = OnBoard::full(Store::ideal(1e7));
        let given = |course: &Course| course.stores[0].hours.iter().map(|hour| hour.taken_out_wh).sum::<f64>();
        let (course, all) = (run(&setup), run(&plenty));
        let unserved_wh: f64 = course.unserved_wh.iter().sum();
        assert!((given(&course) + unserved_wh - given(&all)).abs() < 1e-6, "{seed}");
    }
}

#[test]
fn more_is_never_worse_for_one_store() {
    for seed in 0..40 {
        let setup = by_chance(seed, 1, 15);
        let charges =
            |setup: &Setup| -> Vec<f64> { run(setup).stores[0].hours.iter().map(|hour| hour.charge_wh).collect() };
        let usual = charges(&setup);
        let mut better = [setup.clone(), setup.clone(), setup.clone()];
        better[0].stores[0].panel_w += 40.0;
        better[1].stores[0].opening_state = 1.0;
        better[2].hours.iter_mut().for_each(|given| given.mains_w += 20.0);
        for (number, better) in better.iter().enumerate() {
            let is_fuller = charges(better).iter().zip(&usual).all(|(more, less)| *more >= less - 1e-9);
            assert!(is_fuller, "{seed}, {number}");
        }
    }
}

#[test]
fn courses_side_by_side_are_those_of_a_single_run() {
    for seed in 0..30 {
        let mut setup = by_chance(seed, 1, 12);
        setup.draws[6].chance = 1.0;
        if seed % 3 == 0 {
            setup.stores[0].store.taper.within = TaperWithin::AtStart;
        }
        let course = run(&setup);
        let mut runs = Runs::new(&setup, &Uncertainty { has_band: true, ..Uncertainty::default() }, seed, 3);
        while runs.step(1) > 0 {}
        let (chances, store) = (runs.chances(), &course.stores[0]);
        let last_wh = store.hours.last().map_or(0.0, |hour| hour.charge_wh);
        assert!(chances.end_wh.iter().all(|wh| (wh - last_wh).abs() < 1e-9), "{seed}: {chances:?} {last_wh}");
        assert!(chances.lowest_wh.iter().all(|wh| (wh - store.lowest_wh).abs() < 1e-9));
        let half_step_wh = setup.stores[0].store.usable_wh / 400.0 + 1e-9;
        for (band, hour) in chances.band.iter().zip(&store.hours) {
            assert!((band.middle_wh - hour.charge_wh).abs() <= half_step_wh && band.low_wh == band.high_wh);
        }
    }
}

#[test]
fn slices_change_nothing_and_a_seed_does() {
    let uncertainty = Uncertainty {
        cloud: Spread::Beta { a: 2.0, b: 2.0 },
        cloud_stays: 0.6,
        drive: Spread::Triangle { low: 0.0, likely: 1.0, high: 1.2 },
        scale: Spread::Lognormal { mean: 0.0, deviation: 0.3 },
        has_band: true,
    };
    for stores in [1, 2] {
        let setup = by_chance(8, stores, 10);
        let with = |slice: u32, seed: u64| {
            let mut runs = Runs::new(&setup, &uncertainty, seed, 61);
            while runs.step(slice) > 0 {}
            runs.chances()
        };
        assert_eq!(with(1, 5), with(1_000, 5));
        assert_ne!(with(61, 5), with(61, 6));
        assert_eq!(with(7, 5).runs, 61);
    }
}

#[test]
fn a_year_is_run_and_nothing_odd_breaks_anything() {
    let setup = by_chance(3, 2, 366);
    assert_sound(&run(&setup), &setup);
    for odd in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0, 0.0, 1e300, 1e-300] {
        for place in 0..20 {
            let setup = odd_setup(odd, place);
            let course = run(&setup);
            let sums = course.unserved_wh.iter().chain(&course.unserved_by_limit_wh);
            let charges = course
                .stores
                .iter()
                .flat_map(|store| &store.hours)
                .flat_map(|hour| [hour.charge_wh, hour.put_in_wh, hour.taken_out_wh, hour.lost_wh]);
            assert!(sums.copied().chain(charges).all(|wh| wh.is_finite() && wh >= 0.0), "{odd} at {place}");
            let spread = || Spread::Triangle { low: odd, likely: odd, high: odd };
            let uncertainty = Uncertainty {
                cloud: spread(),
                cloud_stays: odd,
                drive: spread(),
                scale: Spread::Beta { a: odd, b: odd },
                has_band: true,
            };
            let mut runs = Runs::new(&setup, &uncertainty, 1, 9);
            while runs.step(100) > 0 {}
            assert!(runs.chances().end_wh.iter().all(|wh| wh.is_finite() && *wh >= 0.0));
            least_panel(&setup, 7, 100);
            least_store(&setup, 0, 100);
            let place = Place {
                from_hour: usize::MAX - 5,
                most_hours: usize::MAX,
                mains_w: odd,
                price: u64::MAX,
                price_per_hour: u64::MAX,
            };
            stops(&setup, &[place, Place { from_hour: 3, ..place }, Place { from_hour: 3, ..place }], Aim::Cheapest);
        }
    }
    assert_eq!(run(&Setup::default()).binding, None);
    assert!(!run(&Setup { stores: vec![], ..by_chance(1, 1, 1) }).holds());
}

fn odd_setup(odd: f64, place: usize) -> Setup {
    let mut setup = by_chance(place as u64, 1 + place % 2, 3);
    let (board, draw) = (&mut setup.stores[0], &mut setup.draws[place % 10]);
    match place {
        0 => board.store.usable_wh = odd,
        1 => board.store.charge_efficiency = odd,
        2 => board.store.discharge_efficiency = odd,
        3 => board.store.taper.from_state = odd,
        4 => board.store.inputs.together_w = odd,
        5 => board.store.self_discharge_per_month = odd,
        6 => board.panel_w = odd,
        7 => board.opening_state = odd,
        8 => setup.cloud_by_day = vec![odd; 3],
        9 => setup.hours.iter_mut().for_each(|given| given.sun_share = odd),
        10 => setup.hours.iter_mut().for_each(|given| (given.air_c, given.store_c) = (odd, odd)),
        11 => setup.hours.iter_mut().for_each(|given| (given.vehicle_w, given.mains_w) = (odd, odd)),
        12 => draw.power_w = odd,
        13 => draw.surge_w = odd,
        14 => draw.need = Need::Spans(vec![Span { from_hour: odd, hours: odd }]),
        15 => {
            draw.need = Need::Fridge(Fridge {
                ua_w_k: odd,
                inside_c: odd,
                cooling: Cooling::PartOfCarnot(odd),
                running_w: odd,
                holds_wh_k: odd,
                opening_w: odd,
            });
        }
        16 => draw.chance = odd,
        17 => board.store = board.store.aged_to(odd),
        18 => board
            .store
            .inverter
            .iter_mut()
            .for_each(|inverter| inverter.efficiency.points = vec![(odd, odd), (odd, 0.5)]),
        _ => draw.store = usize::MAX,
    }
    setup
}
