//! How long the sun takes: `cargo bench -p kerbstead-tests --bench sun`. Thirty days are to take at most 2 ms in a browser.

use divan::{Bencher, black_box};
use jiff::civil::date;
use kerbstead_core::sun::clouds::Clouds;
use kerbstead_core::sun::month::{Asked, Sky, ThirtyDays, fill};
use kerbstead_core::sun::plane::{Plane, Setup};
use kerbstead_core::sun::typical::read;
use kerbstead_core::sun::{Air, Place, Utc, daylight, position};

fn main() {
    divan::main();
}

const PLACE: Place = Place { latitude_deg: 44.62, longitude_deg: -124.05, altitude_m: 40.0 };

/// The setups, by number, since a bench is named by it: level, tilted, turned four times a day.
const SETUPS: [Setup; 3] =
    [Setup::Flat, Setup::Tilted(Plane { tilt_deg: 35.0, azimuth_deg: 200.0 }), Setup::Turned { times: 4 }];

#[divan::bench(args = [0, 1, 2])]
fn thirty_days_of_june(bencher: Bencher, setup: usize) {
    let sky = Sky::Month { clearness: 0.45, seed: 7 };
    let setup = SETUPS.get(setup).copied().unwrap_or_default();
    let asked = Asked { setup, utc_offset_h: -8.0, ..Asked::new(PLACE, date(2027, 6, 5), sky) };
    let mut hours = ThirtyDays::default();
    bencher.bench_local(|| {
        fill(black_box(&asked), &mut hours);
        hours.plane_w_m2.iter().sum::<f64>()
    });
}

#[divan::bench]
fn thirty_days_by_words() -> f64 {
    let asked = Asked::new(PLACE, date(2027, 12, 5), Sky::Words(&Clouds::ALL));
    let mut hours = ThirtyDays::default();
    fill(black_box(&asked), &mut hours);
    hours.plane_w_m2.iter().sum()
}

#[divan::bench]
fn one_position() -> f64 {
    let utc = Utc { date: date(2027, 6, 5), hour: 19.5 };
    position(black_box(utc), PLACE, Air::at_altitude(40.0)).apparent_zenith_deg
}

#[divan::bench]
fn one_daylight() -> f64 {
    daylight(black_box(date(2027, 6, 5)), PLACE).length_h
}

/// A year of invented lines, each as long as those of real files are.
#[divan::bench]
fn a_typical_year(bencher: Bencher) {
    let mut text = String::from("LOCATION,Nowhere,-,-,-,0,44.6,-124.1,-8.0,40.0\n");
    for month in 1..=12 {
        for line in 0..730 {
            let (day, hour) = (line / 24 % 28 + 1, line % 24 + 1);
            text.push_str(&format!("1999,{month},{day},{hour},0,{},9.5,7,80,101000,0,0,300,", "A7".repeat(30)));
            text.push_str(&format!("250,300,120,{}\n", "0,9999,".repeat(9)));
        }
    }
    bencher.bench_local(|| read(black_box(&text)).is_ok());
}
