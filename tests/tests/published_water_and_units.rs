//! Water and units against published values. The source of each stands beside it.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test stops at what it did not expect; exact values are meant"
)]

use jiff::civil::{Date, date};
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Calendar, Item, Per, Plan, Quantity, Stay, Tank, TankKind, WaterUse};
use kerbstead_core::water::{Finding, constants::DENSITY_KG_PER_L};
use kerbstead_core::words::{Plain, Units, Words, unit};
use kerbstead_core::{Margin, Verdict, assess};

const DAY: Date = date(2027, 3, 1);

fn close(found: f64, expected: f64, relative: f64) {
    assert!((found - expected).abs() <= expected.abs() * relative, "{found} is not {expected}");
}

/// Source: IAPWS-95 at 101,325 Pa, as `CoolProp` 8.0.0 computes it: 0.99997 at 4 °C, 0.9991 at 15 °C, 0.99821 at 20 °C.
/// Core takes the one of 20 °C; over what a can meets, that is within a fifth of a percent.
#[test]
fn a_litre_of_water_weighs_what_iapws_says() {
    assert!((DENSITY_KG_PER_L - 0.998_21).abs() <= 1e-4);
    let heaviest_kg = assess(&trip(1, 1, &[20.0], 0.0), DAY).water.heaviest_kg;
    for density in [0.999_97, 0.999_1, 0.998_21] {
        close(heaviest_kg, 20.0 * density, 0.002);
    }
    close(heaviest_kg, 20.0 * 0.998_21, 1e-9);
    // A can weighed empty at 1.35 kg and full at 21.2 kg, at 20 °C: 19.886 L. Source: mass / density.
    assert!(((21.2 - 1.35) / DENSITY_KG_PER_L - 19.886).abs() <= 0.005);
}

fn trip(nights: u32, people: u32, cans: &[f64], litres_per_person: f64) -> Plan {
    let can = |(id, capacity_l): (u32, f64)| Item {
        id,
        tank: Some(Tank { holds: TankKind::Fresh, capacity_l, opening_percent: None }),
        ..Item::default()
    };
    Plan {
        people,
        calendar: Calendar { starts_on: Some(DAY), leaves_on: Some(DAY), ..Calendar::default() },
        kit: (1..).zip(cans.iter().copied()).map(can).collect(),
        stays: vec![Stay { id: 900, nights, ..Stay::default() }],
        water_uses: vec![WaterUse {
            id: 901,
            litres_per_day: litres_per_person.into(),
            per: Per::Person,
            ..WaterUse::default()
        }],
        ..Plan::default()
    }
}

/// 40 L for 2 persons at 7.5 L a day last 2.66667 days; 19 L for one at 3 L 6.33333 days. Source: division. On the road
/// that is two (six) whole days, and the next one short.
#[test]
fn water_lasts_as_many_days_as_division_says() {
    for (litres, people, per_person, whole_days, days, missing_l) in
        [(40.0, 2, 7.5, 2, 2.666_67, 5.0), (19.0, 1, 3.0, 6, 6.333_33, 2.0)]
    {
        close(litres / (f64::from(people) * per_person), days, 1e-4);
        let lasting = assess(&trip(whole_days, people, &[litres], per_person), DAY).water;
        assert_ne!(lasting.standing.verdict, Verdict::FallsShort);
        let Some(Margin::Days(left)) = lasting.standing.margin else { unreachable!("water is measured in days") };
        close(left, days - f64::from(whole_days), 1e-4);
        let short = assess(&trip(whole_days + 1, people, &[litres], per_person), DAY).water;
        assert_eq!(short.standing.verdict, Verdict::FallsShort);
        let on = DAY.checked_add(jiff::Span::new().days(whole_days)).unwrap();
        let expected = Finding::RunsOut { on, short_days: 1, missing_l };
        assert_eq!(short.standing.findings[0], expected);
        assert!(matches!(short.standing.findings[1..], [Finding::NoToilet { .. }]), "no place has one either");
    }
}

/// Source: addition. Cans of one kind are counted together, a line of several as so many.
#[test]
fn cans_are_counted_together() {
    let mut plan = trip(1, 1, &[19.0, 10.0], 3.0);
    plan.kit[1].quantity = 3;
    plan.kit[1].tank.as_mut().unwrap().opening_percent = Some(50.0);
    let report = assess(&plan, DAY).water;
    assert_eq!((report.fresh_capacity_l, report.days[0].opening_l, report.days[0].fresh_l), (49.0, 34.0, 31.0));
    close(report.heaviest_kg, 34.0 * 0.998_21, 1e-9);
}

/// Source: NIST Handbook 44, appendix C: inch 25.4 mm, pound 0.45359237 kg, US gallon 231 cubic inches, mile 5280 feet
/// of 12 inches, all exact.
#[test]
fn customary_units_are_the_legal_ones() {
    for (quantity, in_plan_units, key) in [
        (Quantity::LengthMm, 25.4, "measure-inches"),
        (Quantity::MassKg, 0.453_592_37, "measure-pounds"),
        (Quantity::VolumeL, 3.785_411_784, "measure-gallons"),
        (Quantity::VolumeL, 231.0 * 2.54 * 2.54 * 2.54 / 1_000.0, "measure-gallons"),
        (Quantity::DistanceKm, 1.609_344, "measure-miles"),
        (Quantity::AreaM2, 0.092_903_04, "measure-square-feet"),
        (Quantity::AreaM2, 0.304_8 * 0.304_8, "measure-square-feet"),
        (Quantity::DistanceKm, 5_280.0 * 12.0 * 25.4 / 1e6, "measure-miles"),
    ] {
        let unit = unit(quantity, Units::UsCustomary);
        close(unit.factor, in_plan_units, 1e-12);
        assert_eq!(unit.key, key);
    }
    // 1000 lb = 453.59237 kg. Source: as above.
    assert!((1_000.0 * unit(Quantity::MassKg, Units::UsCustomary).factor - 453.592_37).abs() <= 1e-6);
}

/// Watts, hours and percents are the same everywhere; metric values are shown as the plan has them.
#[test]
fn what_is_metric_or_the_same_everywhere_is_not_converted() {
    use Quantity as Q;
    let all = [
        Q::MassKg,
        Q::LengthMm,
        Q::DistanceKm,
        Q::PowerW,
        Q::EnergyWh,
        Q::Volts,
        Q::Amperes,
        Q::VolumeL,
        Q::Hours,
        Q::HourOfDay,
        Q::Days,
        Q::Nights,
        Q::Percent,
        Q::Count,
        Q::DayOfMonth,
        Q::AreaM2,
    ];
    for quantity in all {
        assert_eq!(unit(quantity, Units::Metric).factor, 1.0, "{quantity:?}");
        let is_converted = matches!(quantity, Q::MassKg | Q::LengthMm | Q::DistanceKm | Q::VolumeL | Q::AreaM2);
        assert_eq!(unit(quantity, Units::UsCustomary).factor != 1.0, is_converted, "{quantity:?}");
    }
}

#[test]
fn values_are_shown_in_the_units_a_person_reads() {
    let shown = |units, value, quantity| Words::english(Plain, units, "EUR").figure(&Figure::of(value, quantity));
    for (value, quantity, metric, customary) in [
        (3.785_411_784, Quantity::VolumeL, "3.8 L", "1 gal"),
        (453.592_37, Quantity::MassKg, "454 kg", "1000 lb"),
        (1_000.0, Quantity::LengthMm, "1000 mm", "39.4 in"),
        (160.934_4, Quantity::DistanceKm, "161 km", "100 mi"),
        (45.0, Quantity::PowerW, "45 W", "45 W"),
        (1.0, Quantity::Days, "1 day", "1 day"),
        (2.5, Quantity::Days, "2.5 days", "2.5 days"),
        (18.5, Quantity::HourOfDay, "18:30", "18:30"),
    ] {
        assert_eq!(shown(Units::Metric, value, quantity), metric);
        assert_eq!(shown(Units::UsCustomary, value, quantity), customary);
    }
}
