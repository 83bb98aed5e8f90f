//! How long a room takes to run through its hours: `cargo bench -p kerbstead-tests --bench thermal`. A year is to take at most
//! 5 ms natively.

use divan::{Bencher, black_box};
use kerbstead_core::draws::Chance;
use kerbstead_core::thermal::answers::Steady;
use kerbstead_core::thermal::layers::{Flow, Layer, Wall};
use kerbstead_core::thermal::people::{Activity, GivenOff};
use kerbstead_core::thermal::run::run;
use kerbstead_core::thermal::setup::{Hour, Mass, Setup};
use kerbstead_core::thermal::shell::{Surface, Window};
use kerbstead_core::thermal::vents::{Opening, Vents};

fn main() {
    divan::main();
}

/// Foam between ribs of steel that a layer of felt covers.
fn wall(flow: Flow, foam_m: f64) -> Wall {
    let steel = Layer::Solid { thickness_m: 0.001, conductivity_w_mk: 50.0 };
    let solid = |thickness_m, conductivity_w_mk| Layer::Solid { thickness_m, conductivity_w_mk };
    let ribs = vec![solid(0.003, 0.04), steel];
    Wall::new(flow, vec![solid(0.006, 0.13), solid(foam_m, 0.034), steel]).bridged(0.08, ribs)
}

/// Twelve faces: walls with their ribs, and four windows; two vents that warmth moves, a window and a hatch to open.
fn van() -> Setup {
    let side = |area_m2, turned_deg| Surface::side(area_m2, wall(Flow::Sideways, 0.03), turned_deg);
    let bare = Wall { bridge: None, ..wall(Flow::Down, 0.02) };
    let rear = Surface::side(2.8, Wall { bridge: None, ..wall(Flow::Sideways, 0.02) }, 270.0);
    Setup {
        shell: vec![
            Surface::roof(6.5, wall(Flow::Up, 0.03)).with_window(Window::single_glass(0.16)),
            side(6.0, 0.0).with_window(Window::single_glass(0.4)),
            side(6.0, 180.0).with_window(Window::single_glass(0.6)),
            rear.with_window(Window::single_glass(0.5)),
            Surface::floor(6.5, bare),
        ],
        vents: Vents {
            fixed: vec![Opening::low_and_high(0.002, 1.6), Opening::low_and_high(0.001, 0.4)],
            openings: vec![Opening::single(0.1, 0.3), Opening::single(0.08, 0.2)],
        },
        mass: Some(Mass { holds_wh_k: 90.0, to_air_w_k: 60.0, start_c: 8.0 }),
        heater_w: 1_500.0,
        ..Setup::default()
    }
}

/// What a swing about 0 has come to in an hour: `period` hours from one height, which is at `most_at`, to the next.
fn swing(hour: usize, period: f64, most_at: f64) -> f64 {
    libm::cos((hour as f64 - most_at) * std::f64::consts::TAU / period)
}

/// So many hours from the first of January on, no two of them alike: two people who sleep there, cook with kettle and flame
/// twice a day, heat in the cold, and open up in the warm.
fn hour(at: usize, chance: &mut Chance) -> Hour {
    let of_day = at % 24;
    let season_c = 11.0 - 10.0 * swing(at, 8_760.0, 480.0);
    let air_c = season_c + 4.0 * swing(at, 24.0, 15.0) + 5.0 * swing(at, 130.0, 0.0) + chance.share() - 0.5;
    let people = match of_day {
        0..7 | 23 => GivenOff::person(Activity::Asleep).times(2.0),
        7 | 18 => GivenOff::person(Activity::Busy).times(2.0).and(GivenOff::flame(600.0 + 900.0 * chance.share())),
        19..23 => GivenOff::person(Activity::Seated).times(2.0),
        _ if chance.share() < 0.3 => GivenOff::person(Activity::Seated),
        _ => GivenOff::default(),
    };
    let steam = GivenOff { water_g_h: 250.0 * chance.share(), ..GivenOff::default() };
    let is_cold = air_c < 12.0;
    Hour {
        air_c,
        relative_humidity: 0.75 - 0.15 * swing(at, 24.0, 15.0) + 0.1 * chance.share(),
        wind_m_s: 8.0 * chance.share() * chance.share(),
        clear: chance.share(),
        inside: if matches!(of_day, 7 | 18) { people.and(steam) } else { people },
        wanted_c: (is_cold && matches!(of_day, 6..9 | 17..23)).then_some(18.0),
        open: if is_cold { 0.0 } else { 0.6 * chance.share() },
        fan_m3_h: if matches!(of_day, 7 | 18) { 60.0 } else { 0.0 },
    }
}

fn year(hours: usize) -> Setup {
    let mut chance = Chance::new(4);
    let mut setup = van();
    for at in 0..hours {
        setup.hours.push(hour(at, &mut chance));
        let height = (swing(at, 24.0, 12.5) + 0.1 - 0.4 * swing(at, 8_760.0, -240.0)).max(0.0);
        let clouds = 0.2 + 0.8 * chance.share();
        setup.sun_w_m2.extend([700.0, 90.0, 500.0, 300.0 * chance.share(), 60.0].map(|most| most * height * clouds));
    }
    setup
}

#[divan::bench]
fn run_of_a_year(bencher: Bencher) {
    let setup = year(8_760);
    bencher.bench(|| run(black_box(&setup)));
}

#[divan::bench]
fn run_of_a_year_without_a_mass(bencher: Bencher) {
    let setup = Setup { mass: None, ..year(8_760) };
    bencher.bench(|| run(black_box(&setup)));
}

/// Mostly what is worked out once for a room.
#[divan::bench]
fn run_of_a_winter_night(bencher: Bencher) {
    let setup = year(12);
    bencher.bench(|| run(black_box(&setup)));
}

#[divan::bench]
fn steady_state_without_a_heater(bencher: Bencher) {
    let setup = year(1);
    bencher.bench(|| setup.hours.first().map(|hour| Steady::new(black_box(&setup), hour, &[]).inside_c()));
}
