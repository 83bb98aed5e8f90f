//! What is wrong with the log of the road: two counts of one thing at one time, more than there is room for, a distance that
//! goes back.

use jiff::civil::Date;

use crate::order;
use crate::plan::civil::day_key;
use crate::plan::{Path, Plan, Problem, Reading, Wrong};
use crate::water;

pub(super) fn check_log(plan: &Plan, problems: &mut Vec<Problem>) {
    let dated: Vec<(Date, &Reading)> = plan.readings.iter().filter_map(|one| Some((one.on?, one))).collect();
    let dated = order::by_key(&dated, |(on, one)| day_key(*on) << 32 | u64::from(one.hour));
    check_twice(&dated, problems);
    check_odometer(&dated, problems);
    let tanks = water::Input::new(plan);
    for (_, reading) in dated {
        let holds =
            [("fresh_l", reading.fresh_l, tanks.fresh_capacity_l), ("grey_l", reading.grey_l, tanks.grey_capacity_l)];
        for (field, litres, most_l) in holds {
            if most_l > 0.0 && litres.is_some_and(|litres| litres > most_l) {
                push(problems, reading, field, Wrong::MoreThanFits { most_l });
            }
        }
    }
}

fn push(problems: &mut Vec<Problem>, reading: &Reading, field: &str, wrong: Wrong) {
    problems.push(Problem { path: Path::entry("readings", reading.id).child(field), wrong });
}

/// Of two counts of one thing at one time, the second in the list counts: it is told there.
fn check_twice(dated: &[(Date, &Reading)], problems: &mut Vec<Problem>) {
    let is_same_time = |a: &(Date, &Reading), b: &(Date, &Reading)| (a.0, a.1.hour) == (b.0, b.1.hour);
    for at_once in dated.chunk_by(is_same_time) {
        for (place, (on, later)) in at_once.iter().enumerate().skip(1) {
            let before = at_once.get(..place).unwrap_or_default();
            let was = |counts: fn(&Reading) -> bool| counts(later) && before.iter().any(|(_, one)| counts(one));
            let same_store = |one: &Reading| one.charge_percent.is_some() && one.store == later.store;
            let is_store_twice = later.charge_percent.is_some() && before.iter().any(|(_, one)| same_store(one));
            let twice = [
                ("cash", was(|one| one.cash.is_some())),
                ("charge_percent", is_store_twice),
                ("fresh_l", was(|one| one.fresh_l.is_some())),
                ("grey_l", was(|one| one.grey_l.is_some())),
                ("odometer_km", was(|one| one.odometer_km.is_some())),
                ("measured_c", was(|one| one.measured_c.is_some())),
            ];
            for (field, _) in twice.into_iter().filter(|(_, is_twice)| *is_twice) {
                push(problems, later, field, Wrong::CountedTwice { on: *on, hour: later.hour });
            }
        }
    }
}

fn check_odometer(dated: &[(Date, &Reading)], problems: &mut Vec<Problem>) {
    let mut before: Option<(Date, f64)> = None;
    for (on, reading) in dated {
        let Some(km) = reading.odometer_km else { continue };
        match before {
            Some((earlier, before_km)) if km < before_km => {
                push(problems, reading, "odometer_km", Wrong::OdometerBack { on: earlier, before_km });
            }
            _ => before = Some((*on, km)),
        }
    }
}
