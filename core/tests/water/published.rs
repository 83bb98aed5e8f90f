//! Against the project's table of reference values, its source beside each.

use super::assert_near;
use kerbstead_core::explain::Source;
use kerbstead_core::plan::Estimate;
use kerbstead_core::water::boiling::{Boil, rolling_boil_min};
use kerbstead_core::water::course::run;
use kerbstead_core::water::needs::{Drinker, Effort, NEEDS, drinking_l, emergency};
use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
use kerbstead_core::water::volume::{
    box_l, density_kg_per_l, frost_safe_l, lying_cylinder_l, upright_cylinder_l, weighed_l,
};

/// Source: NIST Handbook 44, appendix C: a US gallon is 231 cubic inches of 25.4 mm, exactly; a box of 3 by 7 by 11 inches.
#[test]
fn a_box_of_231_cubic_inches_is_a_gallon() {
    assert_near(box_l(3.0 * 25.4, 7.0 * 25.4, 11.0 * 25.4), 3.785_411_784, 1e-12 * 3.8, "gallon");
}

/// Source: by hand, 0.394 m by 0.294 m by 0.244 m within walls of 3 mm; density by IAPWS-95 at 15 °C (`box-0.4`).
#[test]
fn a_box_with_walls_holds_what_is_within_them() {
    let inside = |outside_mm: f64| outside_mm - 2.0 * 3.0;
    let litres = box_l(inside(400.0), inside(300.0), inside(250.0));
    assert_near(litres, 28.264, 0.000_5 * 28.0, "litres");
    assert_near(litres * density_kg_per_l(15.0), 28.239, 0.000_5 * 28.0, "kg");
}

/// Source: circle segment, `fluids` 1.3.1 (`lying-cylinder-*`).
#[test]
fn a_lying_cylinder_holds_a_segment_of_its_circle() {
    for (diameter_m, length_m, part, litres, full_litres) in
        [(0.3, 0.6, 0.25, 8.2915, 42.4115), (0.4, 0.9, 0.5, 56.5487, 113.0973)]
    {
        let held_l = |part: f64| lying_cylinder_l(diameter_m * 1e3, length_m * 1e3, part * diameter_m * 1e3);
        assert_near(held_l(part), litres, 1e-4 * litres, "filled");
        assert_near(held_l(1.0), full_litres, 1e-4 * litres, "full");
        assert_near(held_l(7.0), full_litres, 1e-4 * litres, "more than full");
        // Full, it holds what it would hold standing.
        assert_near(held_l(1.0), upright_cylinder_l(diameter_m * 1e3, length_m * 1e3), 1e-9, "standing");
        // What is below a height and what is above it make all of it.
        assert_near(held_l(0.3) + held_l(0.7), full_litres, 1e-4, "both parts");
    }
}

/// Source: IAPWS-95 at 101,325 Pa (`density-*`), and mass over density (`weighed-21.2`).
#[test]
fn weighing_says_how_much_a_can_holds() {
    for (celsius, density) in [(4.0, 0.999_97), (15.0, 0.999_1), (20.0, 0.998_21)] {
        assert_near(density_kg_per_l(celsius), density, 1e-4, "density");
    }
    assert_near(weighed_l(1.35, 21.2, 20.0), 19.886, 0.005, "weighed");
}

/// Source: IAPWS ice and handbooks, from memory: 0.9167 kg/l, 9.07 % more (`freezing`).
#[test]
fn what_freezes_in_a_can_fits_into_it() {
    assert_near(density_kg_per_l(0.0) / 0.9167, 1.0907, 0.005 * 1.09, "growth");
    let safe_l = frost_safe_l(10.0);
    assert_near(safe_l * density_kg_per_l(0.0) / 0.9167, 10.0, 0.001, "as ice");
}

/// Source: US National Academies 2005, chapter 4: 3.0 of 3.7 l and 2.2 of 2.7 l are drunk, 81 %; in very hot weather, about
/// 40 °C, twice or three times as much in all (`adequate-intake`; pages 144 and 155, read).
#[test]
fn drinking_begins_with_what_suffices() {
    for (who, drunk_l, total_l) in [(Drinker::Man, 3.0, 3.7), (Drinker::Woman, 2.2, 2.7)] {
        let temperate = drinking_l(who, 20.0, 0.0, Effort::Easy);
        assert_eq!((temperate.likely(), temperate.high()), (drunk_l, total_l));
        assert_near(drunk_l / total_l, 0.81, 0.005, "share that is drunk");
        let hot = drinking_l(who, 40.0, 0.0, Effort::Easy);
        assert_near(hot.likely(), 2.0 * drunk_l, 1e-12, "doubled");
        assert_near(hot.high(), 3.0 * total_l, 1e-12, "tripled");
    }
}

/// Source: US Army, TB MED 507, table of fluids (read in copies): above 90 °F a quart an hour, below 82 °F half a quart to three
/// quarters, a quarter more or less, never more than 12 quarts a day.
#[test]
fn work_in_the_heat_is_drunk_for_by_the_hour() {
    let quart_l = 0.946_352_946;
    for (air_c, effort, quarts) in [
        (26.0, Effort::Easy, 0.5),
        (26.0, Effort::Moderate, 0.75),
        (28.5, Effort::Hard, 1.0),
        (30.0, Effort::Easy, 0.75),
        (33.0, Effort::Easy, 1.0),
    ] {
        let hours = |hours: f64| drinking_l(Drinker::Man, air_c, hours, effort);
        let (rest, worked) = (hours(0.0), hours(3.0));
        assert_near(worked.likely() - rest.likely() * 21.0 / 24.0, 3.0 * quarts * quart_l, 1e-9, "likely");
        assert_near(worked.low() - rest.low() * 21.0 / 24.0, 3.0 * (quarts - 0.25) * quart_l, 1e-9, "low");
        assert_near(worked.high() - rest.high() * 21.0 / 24.0, 3.0 * (quarts + 0.25) * quart_l, 1e-9, "high");
    }
    assert_eq!(drinking_l(Drinker::Man, 45.0, 16.0, Effort::Hard).high(), 12.0 * quart_l);
}

/// Source: Sphere Handbook 2011 (`emergency-quantities`, read): 7.5 to 15 l in all, made of 2.5 to 3, 2 to 6 and 3 to 6. What is
/// usual here lies around it: the parts' likely litres within or below, their sum within.
#[test]
fn usual_needs_agree_with_sphere() {
    assert_eq!(emergency::TOTAL_L, [7.5, 15.0]);
    let lows = emergency::DRINKING_AND_FOOD_L[0] + emergency::HYGIENE_L[0] + emergency::COOKING_L[0];
    let highs = emergency::DRINKING_AND_FOOD_L[1] + emergency::HYGIENE_L[1] + emergency::COOKING_L[1];
    assert_eq!([lows, highs], emergency::TOTAL_L);
    let likely = |keys: &[&str]| -> f64 {
        NEEDS.iter().filter(|need| keys.contains(&need.key)).map(|need| need.litres.likely()).sum()
    };
    let within = |litres: f64, [low, high]: [f64; 2]| assert!(litres >= low && litres <= high, "{litres} {low} {high}");
    within(likely(&["drinking"]), emergency::DRINKING_AND_FOOD_L);
    within(likely(&["cooking", "dishes"]), emergency::COOKING_L);
    within(likely(&["hands-and-face", "teeth", "wash-from-a-bowl"]), emergency::HYGIENE_L);
    within(
        likely(&["drinking", "cooking", "dishes", "hands-and-face", "teeth", "wash-from-a-bowl"]),
        emergency::TOTAL_L,
    );
}

#[test]
fn every_need_is_in_order_and_says_whose_number_it_is() {
    for (at, need) in NEEDS.iter().enumerate() {
        assert!(matches!(need.litres, Estimate::Range { low, likely, high } if low < likely && likely < high));
        assert!((0.0..=1.0).contains(&need.grey_share));
        assert!(NEEDS.iter().skip(at + 1).all(|other| other.key != need.key), "{}", need.key);
        assert_eq!(matches!(need.source, Source::Published(_)), need.key == "drinking");
    }
}

/// Source: division (`days-40-2-7.5`, `days-19-1-3`): 2.66667 and 6.33333 days.
#[test]
fn water_lasts_as_many_days_as_division_says() {
    for (litres, persons, each_l, days) in [(40.0, 2.0, 7.5, 2.666_67), (19.0, 1.0, 3.0, 6.333_33)] {
        let day = Day { wants: Use::new(persons * each_l, 0.0, 0.0), ..Day::default() };
        let course = run(&Setup { fresh: vec![Tank::full(litres)], days: vec![day; 10], ..Setup::default() });
        let first = course.first.unwrap();
        let lacks_ml = course.fresh.unwrap().on_that_day_ml;
        let lasted = first.day as f64 + 1.0 - lacks_ml as f64 / 1e3 / (persons * each_l);
        assert_near(lasted, days, 1e-4 * days, "days");
    }
}

/// Source: CDC, one minute, three above 6,500 feet (1,981 m), as tabled in Emerging Infectious Diseases 31(8), 2025 (read);
/// heat to the boil of a litre by `CoolProp`: 98.795 Wh from 15 °C at the sea, 98.447 Wh from 10 °C at 1,600 m.
#[test]
fn boiling_takes_the_heat_and_the_minutes() {
    for (altitude_m, minutes) in [(0.0, 1.0), (1_900.0, 1.0), (2_000.0, 3.0)] {
        assert_eq!(rolling_boil_min(altitude_m), minutes);
    }
    for (from_c, altitude_m, expected_wh) in [(15.0, 0.0, 98.795), (10.0, 1_600.0, 98.447)] {
        let boil = Boil { litres: 1.0, from_c, altitude_m, power_w: 600.0, ..Boil::default() };
        assert_near(boil.to_the_boil_wh(), expected_wh, 0.005 * expected_wh, "to the boil");
        assert_near(boil.energy_wh() - boil.to_the_boil_wh(), 10.0, 1e-9, "a minute of 600 W");
        assert_near(boil.hours().unwrap(), boil.energy_wh() / 600.0, 1e-12, "hours");
    }
    assert_eq!(Boil { litres: 1.0, ..Boil::default() }.hours(), None);
}
