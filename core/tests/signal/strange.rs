//! Strange numbers: nothing panics, and nothing that is infinite or not a number comes out.

use kerbstead_core::plan::{Estimate, Money, Signal};
use kerbstead_core::signal::allowance::{Beyond, Contract, Wanted, cheapest};
use kerbstead_core::signal::course::{After, Meter, course};
use kerbstead_core::signal::data::{TASKS, Task, Unit, bits, in_unit, megabytes, stream_mb, total};
use kerbstead_core::signal::hours::Hours;
use kerbstead_core::signal::transfer::Transfer;

const STRANGE: [f64; 12] =
    [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, 1e-320, 1e308, -1e308, f64::MAX, 1.0, -1.0, 0.5];

fn assert_sound(value: f64) {
    assert!(value.is_finite() && value >= 0.0, "{value}");
}

#[test]
fn data_and_times_are_sound_for_any_number() {
    for a in STRANGE {
        for b in STRANGE {
            for c in STRANGE {
                let range = Estimate::Range { low: a, likely: b, high: c };
                let both = total(&[(Task { down_mb: range, up_mb: range, ..TASKS[0] }, a), (TASKS[3], b)]).both_mb();
                [both.low(), both.likely(), both.high()].into_iter().for_each(assert_sound);
                let file = Transfer { size_mb: a, rate_mbit_s: range, payload_share: c };
                file.seconds().into_iter().flatten().for_each(assert_sound);
                file.needs_mbit_s(b).into_iter().for_each(assert_sound);
                for sent in file.within(b) {
                    assert!((0.0..=1.0).contains(&sent.part) && (!sent.is_done || sent.part == 1.0));
                    assert_sound(sent.sent_mb);
                }
                let contract = |beyond| Contract { allowance_mb: Some(3), price: Money::ZERO, days: Some(0), beyond };
                let wanted = Wanted { mb: u64::MAX, days: u32::MAX, least_kbit_s: b, slow_hours: c };
                let _ = cheapest(&[contract(Beyond::Slowed { kbit_s: a }), contract(Beyond::Stops)], &wanted);
            }
            assert_sound(stream_mb(a, b));
        }
        for value in [bits(a), in_unit(a, Unit::Mib), megabytes(a, Unit::Gib)] {
            assert_sound(value);
        }
    }
}

#[test]
fn the_greatest_amounts_do_not_overflow() {
    let most: Money = "79228162514264337593543950335".parse().unwrap();
    let greatest =
        Contract { allowance_mb: Some(u64::MAX), price: most, days: Some(1), beyond: Beyond::Costs { per_gb: most } };
    let unlimited = Contract { allowance_mb: None, ..greatest };
    let wanted = Wanted { mb: u64::MAX, days: u32::MAX, ..Wanted::default() };
    assert_eq!(cheapest(&[greatest, unlimited, greatest], &wanted).unwrap().contracts.len(), 1);
    let meter = Meter { allowance_mb: Some(u64::MAX), renews_on: vec![0] };
    let found = course(&[meter.clone(), meter], &After::default(), &[u64::MAX; 3]);
    assert_eq!((found.days[0].left_mb, found.days[2].missing_mb), (Some(u64::MAX), u64::MAX));
    let lacks = Hours {
        wanted_minutes: &[60; 3],
        signal: &[Signal::None; 3],
        power: &[],
        bearable: &[],
        weak_is_enough: false,
    };
    assert_eq!(lacks.at_risk(most).certain, most);
}
