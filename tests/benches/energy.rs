//! How long runs of stores take: `cargo bench -p kerbstead-tests --bench energy`.

use divan::{Bencher, black_box};
use kerbstead_core::energy::chance::{Runs, Uncertainty};
use kerbstead_core::energy::draw::{Draw, Need, Outlet};
use kerbstead_core::energy::fridge::Fridge;
use kerbstead_core::energy::heat::{Heating, boiling_c};
use kerbstead_core::energy::run::run;
use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
use kerbstead_core::energy::sizing::least_panel;
use kerbstead_core::energy::spread::Spread;
use kerbstead_core::energy::stops::{Aim, Place, stops};
use kerbstead_core::energy::store::{Chemistry, Store};

fn main() {
    divan::main();
}

/// So many days of a usual store: twelve draws by the hour, a fridge, a kettle that is not used every day.
fn usual(days: usize, stores: usize) -> Setup {
    let by_hour = |number: usize| -> [f64; 24] {
        std::array::from_fn(|hour| if (hour + number * 7) % 24 < 4 { 0.6 } else { 0.0 })
    };
    let draw = |number: usize| Draw {
        power_w: 4.0 + number as f64,
        outlet: if number.is_multiple_of(3) { Outlet::Ac } else { Outlet::Dc },
        need: Need::ByHour(by_hour(number)),
        store: number % stores,
        may_move: true,
        ..Draw::default()
    };
    let water = Heating { water_kg: 1.0, from_c: 10.0, to_c: boiling_c(300.0), efficiency: 0.9, ..Heating::default() };
    let mut draws: Vec<Draw> = (0..12).map(draw).collect();
    draws.push(Draw::fridge(Fridge::default()));
    draws.push(Draw { chance: 0.6, ..Draw::heating(&water, 500.0, &[7.0]) });
    let given = |hour: usize| Given {
        air_c: 16.0 + 6.0 * (1.0 - ((hour % 24) as f64 - 15.0).abs() / 12.0),
        sun_share: (0.7 - ((hour % 24) as f64 - 12.5).abs() / 9.0).max(0.0),
        vehicle_w: if hour % 24 == 10 { 100.0 } else { 0.0 },
        mains_w: if hour % 72 == 66 { 300.0 } else { 0.0 },
        ..Given::default()
    };
    let board = OnBoard { panel_w: 100.0, ..OnBoard::full(Store::usual(Chemistry::Lfp, 900.0)) };
    Setup { stores: vec![board; stores], draws, hours: (0..days * 24).map(given).collect(), cloud_by_day: vec![] }
}

fn thousand(setup: &Setup, has_band: bool) -> f64 {
    let uncertainty = Uncertainty {
        cloud: Spread::Beta { a: 5.0, b: 2.0 },
        scale: Spread::Lognormal { mean: 0.0, deviation: 0.25 },
        has_band,
        ..Uncertainty::default()
    };
    let mut runs = Runs::new(setup, &uncertainty, 1_002, 1_000);
    while runs.step(100) > 0 {}
    let chances = runs.chances();
    black_box(&chances);
    chances.share_kept()
}

#[divan::bench]
fn run_of_30_days(bencher: Bencher) {
    let setup = usual(30, 1);
    bencher.bench(|| run(black_box(&setup)));
}

#[divan::bench]
fn run_of_a_year_with_two_stores(bencher: Bencher) {
    let setup = usual(365, 2);
    bencher.bench(|| run(black_box(&setup)));
}

#[divan::bench(args = [false, true])]
fn thousand_runs_of_30_days(bencher: Bencher, has_band: bool) {
    let setup = usual(30, 1);
    bencher.bench(|| thousand(black_box(&setup), has_band));
}

#[divan::bench]
fn thousand_runs_of_30_days_with_two_stores(bencher: Bencher) {
    let setup = usual(30, 2);
    bencher.bench(|| thousand(black_box(&setup), true));
}

#[divan::bench]
fn least_panel_for_30_days(bencher: Bencher) {
    let setup = usual(30, 1);
    bencher.bench(|| least_panel(black_box(&setup), 0, 1_000));
}

#[divan::bench]
fn stops_of_30_days_with_ten_places(bencher: Bencher) {
    let mut setup = usual(30, 1);
    setup.stores.iter_mut().for_each(|board| board.panel_w = 30.0);
    let place = |number: usize| Place {
        from_hour: 20 + number * 70,
        most_hours: 6,
        mains_w: 200.0,
        price: 300 + number as u64 % 3 * 150,
        price_per_hour: 50,
    };
    let places: Vec<Place> = (0..10).map(place).collect();
    bencher.bench(|| stops(black_box(&setup), &places, Aim::Cheapest));
}
