//! Ways of having a toilet, worked by hand.

use super::assert_near;
use kerbstead_core::plan::Money;
use kerbstead_core::water::boiling::{filter_lasts_days, filters_needed};
use kerbstead_core::water::toilet::{Costs, Wait, Way, cost_a_month, longest_wait, person_days};

/// By hand: WHO 1992 (read) has 1.2 l of urine and 0.12 l of faeces a day; 1.5 l of flushing makes 2.82 l. A bag each time, 1.2
/// times a day (Rose et al. 2015, read).
#[test]
fn a_way_lasts_as_many_person_days_as_division_says() {
    for (way, days) in [
        (Way::Portable { waste_l: 20.0 }, 20.0 / 2.82),
        (Way::Dry { waste_l: 20.0 }, 20.0 / 1.32),
        (Way::Bags { count: 30 }, 25.0),
    ] {
        let lasts = person_days(way).unwrap();
        assert_near(lasts.likely(), days, 1e-9, "days");
        assert!(lasts.low() < days && days < lasts.high());
    }
    assert_eq!(person_days(Way::Public), None);
}

/// By hand, a month of 30.436875 days. Bags: 30.436875 × 2 × 1.2 × 0.45 = 32.871825. Public ones at 0.50, six times a day for
/// one: 91.310625. A tank of 20 l for one, 1.20 each time: 30.436875 × 2.82 / 20 × 1.20 = 5.14991925, and 90 over 36 months 2.50.
#[test]
fn a_month_costs_what_it_does_by_hand() {
    let money = |text: &str| text.parse::<Money>().unwrap();
    let costs = |bought: &str, lasts_months, each_time: &str| Costs {
        bought: money(bought),
        lasts_months,
        each_time: money(each_time),
    };
    for (way, people, costs, expected) in [
        (Way::Bags { count: 10 }, 2, costs("0", 1, "0.45"), "32.871825"),
        (Way::Public, 1, costs("0", 0, "0.50"), "91.310625"),
        (Way::Portable { waste_l: 20.0 }, 1, costs("90", 36, "1.20"), "7.64991925"),
        (Way::Portable { waste_l: 0.0 }, 1, costs("90", 0, "1.20"), "90"),
        (Way::Public, 0, costs("0", 0, "0.50"), "0"),
    ] {
        assert_eq!(cost_a_month(way, people, &costs), money(expected), "{way:?}");
    }
}

#[test]
fn the_longest_time_without_a_toilet_is_found() {
    let open = |text: &str| -> Vec<bool> { text.chars().map(|hour| hour == 'o').collect() };
    for (hours, longest) in [
        ("ooo", None),
        ("", None),
        ("---", Some((0, 3))),
        ("-o---o---o", Some((2, 3))),
        ("-----oo------", Some((7, 6))),
    ] {
        let wait = |(from, count)| Wait { from, count };
        assert_eq!(longest_wait(&open(hours)), longest.map(wait), "{hours}");
    }
}

#[test]
fn filters_last_as_division_says() {
    assert_eq!((filter_lasts_days(300.0, 4.0), filter_lasts_days(300.0, 0.0)), (Some(75.0), None));
    for (life_l, done_l, per_day_l, days, expected) in [
        (300.0, 0.0, 4.0, 75, Some(1)),
        (300.0, 0.0, 4.0, 76, Some(2)),
        (300.0, 299.0, 4.0, 1, Some(2)),
        (300.0, 900.0, 4.0, 1, Some(2)),
        (0.0, 0.0, 4.0, 1, None),
        (300.0, 0.0, 0.0, 9, Some(0)),
    ] {
        assert_eq!(filters_needed(life_l, done_l, per_day_l, days), expected);
    }
}
