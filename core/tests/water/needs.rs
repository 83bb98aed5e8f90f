//! A day's needs, worked by hand, and how they grow.

use super::assert_near;
use kerbstead_core::plan::{Estimate, Per};
use kerbstead_core::water::needs::{Drinker, Effort, NEEDS, Need, a_day, drinking_l, pet_l, shower_l};

fn need(key: &str) -> Need {
    *NEEDS.iter().find(|need| need.key == key).unwrap()
}

/// By hand: two people drink 5.2 l, wash up for the two of them with 4 l, and each has a shower of 8 l every other day; a van's
/// cleaning takes 0.5 l. Used water: 0.95 of 4 and of 8, 0.8 of 0.5.
#[test]
fn a_day_is_the_sum_of_what_is_done_in_it() {
    let list = [(need("drinking"), 1.0), (need("dishes"), 1.0), (need("shower"), 0.5), (need("cleaning"), 1.0)];
    let day = a_day(&list, 2);
    assert_near(day.fresh_l.likely(), 5.2 + 4.0 + 8.0 + 0.5, 1e-12, "fresh");
    assert_near(day.grey_l.likely(), 0.95 * 12.0 + 0.8 * 0.5, 1e-12, "grey");
    assert!(day.fresh_l.low() < day.fresh_l.likely() && day.fresh_l.likely() < day.fresh_l.high());
    assert_eq!(a_day(&list, 0).fresh_l.likely(), 0.5);
    assert_eq!(need("cleaning").whom, Per::Van);
}

#[test]
fn nobody_drinks_less_in_more_heat_or_with_more_work() {
    let three = |litres: Estimate<f64>| [litres.low(), litres.likely(), litres.high()];
    for who in [Drinker::Any, Drinker::Man, Drinker::Woman] {
        for effort in [Effort::Easy, Effort::Moderate, Effort::Hard] {
            for at in 0..80 {
                let air_c = f64::from(at) - 20.0;
                let litres = three(drinking_l(who, air_c, 3.0, effort));
                assert!(litres[0] <= litres[1] && litres[1] <= litres[2]);
                for more in [drinking_l(who, air_c + 1.0, 3.0, effort), drinking_l(who, air_c, 4.0, effort)] {
                    assert!(litres.iter().zip(three(more)).all(|(less, more)| *less <= more + 1e-12), "{air_c}");
                }
            }
        }
    }
}

/// By hand: 4 l/min for two minutes; 25 kg at 55 ml.
#[test]
fn showers_and_pets_are_products() {
    assert_eq!(shower_l(4.0, 2.0), 8.0);
    assert_near(pet_l(25.0).likely(), 1.375, 1e-12, "pet");
    assert_near(pet_l(10.0).high(), need("pet-of-ten-kg").litres.high(), 1e-12, "of ten kg");
}
