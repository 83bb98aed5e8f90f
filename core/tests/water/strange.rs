//! Strange numbers: nothing panics, and nothing that is infinite or not a number comes out.

use kerbstead_core::energy::spread::Spread;
use kerbstead_core::plan::{Estimate, Per};
use kerbstead_core::water::boiling::{Boil, filter_lasts_days, filters_needed, rolling_boil_min};
use kerbstead_core::water::cans::{fresh_by_can_ml, grey_by_tank_ml};
use kerbstead_core::water::chance::{Unsure, lasting};
use kerbstead_core::water::course::run;
use kerbstead_core::water::needs::{Drinker, Effort, NEEDS, Need, a_day, drinking_l, pet_l, shower_l};
use kerbstead_core::water::sizing::{fewest_stops, least_extra, longest_interval};
use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
use kerbstead_core::water::toilet::{Costs, Way, cost_a_month, person_days};
use kerbstead_core::water::volume::{
    box_l, density_kg_per_l, frost_safe_l, lying_cylinder_l, upright_cylinder_l, weighed_l,
};

const STRANGE: [f64; 12] =
    [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, 1e-320, 1e308, -1e308, f64::MAX, 1.0, -1.0, 0.5];

fn assert_sound(value: f64) {
    assert!(value.is_finite() && value >= 0.0, "{value}");
}

fn assert_all_sound(range: Estimate<f64>) {
    for value in [range.low(), range.likely(), range.high()] {
        assert_sound(value);
    }
    assert!(range.low() <= range.likely() && range.likely() <= range.high());
}

#[test]
fn volumes_and_needs_are_sound_for_any_number() {
    for a in STRANGE {
        for b in STRANGE {
            for c in STRANGE {
                for value in [box_l(a, b, c), lying_cylinder_l(a, b, c), upright_cylinder_l(a, b), weighed_l(a, b, c)] {
                    assert_sound(value);
                }
                assert_all_sound(drinking_l(Drinker::Any, a, b, Effort::Hard));
                let litres = Estimate::Range { low: a, likely: b, high: c };
                let need = Need { litres, grey_share: a, whom: Per::Person, ..NEEDS[0] };
                let day = a_day(&[(need, b)], u32::MAX);
                assert_all_sound(day.fresh_l);
                assert_all_sound(day.grey_l);
                let boil = Boil { litres: a, from_c: b, altitude_m: c, pot_kj_per_k: a, power_w: b, efficiency: c };
                assert_sound(boil.energy_wh());
                boil.hours().into_iter().for_each(assert_sound);
                filters_needed(a, b, c, u32::MAX);
            }
            assert_sound(shower_l(a, b));
            filter_lasts_days(a, b).into_iter().for_each(assert_sound);
        }
        for value in [density_kg_per_l(a), frost_safe_l(a), rolling_boil_min(a)] {
            assert_sound(value);
        }
        assert_all_sound(pet_l(a));
        for way in [Way::Portable { waste_l: a }, Way::Dry { waste_l: a }, Way::Bags { count: u32::MAX }] {
            assert_all_sound(person_days(way).unwrap());
            cost_a_month(
                way,
                u32::MAX,
                &Costs { each_time: "79228162514264337593543950335".parse().unwrap(), ..Costs::default() },
            );
        }
    }
}

#[test]
fn routes_with_the_greatest_numbers_are_run_and_conserved() {
    let strange = [0, 1, 999, u64::MAX / 2, u64::MAX];
    for a in strange {
        for b in strange {
            let tank = Tank { capacity_ml: a, opening_ml: b };
            let wants = Use { fresh_ml: b, grey_ml: a, toilet: a };
            let day = Day { wants, ..Day::default() };
            let days = vec![day, Day { refill: true, ..day }, Day { empty_grey: true, empty_toilet: true, ..day }, day];
            let setup = Setup { fresh: vec![tank; 3], grey: vec![tank; 2], toilet: Some(tank), days };
            let course = run(&setup);
            let mut before = 3 * a.min(1_000_000_000).min(b);
            for went in &course.days {
                assert_eq!(before + went.filled_ml, went.used_ml + went.fresh_ml);
                before = went.fresh_ml;
            }
            assert_eq!(fresh_by_can_ml(&setup, &course).len(), grey_by_tank_ml(&setup, &course).len());
            longest_interval(&setup);
            least_extra(&setup);
            fewest_stops(&setup);
            for value in STRANGE {
                let spread = || Spread::Triangle { low: value, likely: value, high: f64::MAX };
                let unsure = Unsure { habits: spread(), day: spread(), toilet: spread() };
                assert_sound(lasting(&setup, &unsure, 1, 3).share());
            }
        }
    }
    for value in STRANGE {
        assert!(
            Tank::full(value).capacity_ml <= 1_000_000_000 && Use::new(value, value, value).toilet <= 1_000_000_000
        );
    }
}
