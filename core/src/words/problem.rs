//! The sentence and the figures of a problem.

use crate::assessment::Moment;
use crate::explain::{Figure, Figures};
use crate::plan::{Money, Quantity, Wrong};

/// The catalogue's sentence for what is wrong, and the figures in it.
pub(super) fn said(wrong: &Wrong) -> (&'static str, Figures) {
    let count = |value: usize| Figure::count(value);
    match wrong {
        Wrong::NotJson { line, column } => {
            ("problem-not-json", vec![("line", count(*line)), ("column", count(*column))])
        }
        Wrong::TooLarge { most } => ("problem-too-large", vec![("most", count(*most))]),
        Wrong::NotAPlan => ("problem-not-a-plan", vec![]),
        Wrong::NewerVersion { found, known } => (
            "problem-newer-version",
            vec![("found", Figure::Name(found.to_string())), ("known", Figure::Name(known.to_string()))],
        ),
        Wrong::NotAList => ("problem-not-a-list", vec![]),
        Wrong::NotAnEntry => ("problem-not-an-entry", vec![]),
        Wrong::TooManyEntries { most } => ("problem-too-many-entries", vec![("most", count(*most))]),
        Wrong::IdNotUnique { id } => ("problem-id-not-unique", vec![("id", Figure::Name(id.to_string()))]),
        Wrong::NotText => ("problem-not-text", vec![]),
        Wrong::TextTooLong { most } => ("problem-text-too-long", vec![("most", count(*most))]),
        Wrong::NotANumber { example, quantity } => {
            ("problem-not-a-number", vec![("example", Figure::of(*example, *quantity))])
        }
        Wrong::OtherUnit { unit, units } => {
            ("problem-other-unit", vec![("unit", Figure::Name(unit.clone())), ("units", Figure::Name(units.clone()))])
        }
        Wrong::NoUnit { unit } => ("problem-no-unit", vec![("unit", Figure::Name(unit.clone()))]),
        Wrong::UnitsMixed => ("problem-units-mixed", vec![]),
        Wrong::DividedByNothing => ("problem-divided-by-nothing", vec![]),
        Wrong::NotWhole { example } => {
            ("problem-not-whole", vec![("example", Figure::of(f64::from(*example), Quantity::Count))])
        }
        Wrong::OutOfRange { min, max, quantity } => {
            ("problem-out-of-range", vec![("min", Figure::of(*min, *quantity)), ("max", Figure::of(*max, *quantity))])
        }
        Wrong::NotMoney { example } => ("problem-not-money", vec![("example", Figure::Money(Money::whole(*example)))]),
        Wrong::NegativeMoney => ("problem-negative-money", vec![]),
        Wrong::TooMuchMoney { most } => ("problem-too-much-money", vec![("most", Figure::Money(Money::whole(*most)))]),
        Wrong::NotARate => ("problem-not-a-rate", vec![]),
        Wrong::NotADate => ("problem-not-a-date", vec![]),
        Wrong::NotAFlag => ("problem-not-a-flag", vec![]),
        Wrong::NotAChoice { choices } => ("problem-not-a-choice", vec![("choices", Figure::Name(choices.join(", ")))]),
        Wrong::NotACurrency => ("problem-not-a-currency", vec![]),
        Wrong::RangeReversed => ("problem-range-reversed", vec![]),
        Wrong::RangeNotTaken => ("problem-range-not-taken", vec![]),
        Wrong::DatesReversed { first, second } => {
            ("problem-dates-reversed", vec![("first", Figure::Date(*first)), ("second", Figure::Date(*second))])
        }
        Wrong::MoreThanWhole { whole } => ("problem-more-than-whole", vec![("whole", Figure::Money(*whole))]),
        Wrong::MoreThanThereAre { most } => {
            ("problem-more-than-there-are", vec![("most", Figure::of(f64::from(*most), Quantity::Count))])
        }
        Wrong::NoSuchStore { id } => ("problem-no-such-store", vec![("id", Figure::Name(id.to_string()))]),
        Wrong::NoSuchEntry { id } => ("problem-no-such-entry", vec![("id", Figure::Name(id.to_string()))]),
        Wrong::TaskCircle { names } => ("problem-task-circle", vec![("names", Figure::Name(names.clone()))]),
        Wrong::StoreQuantity => ("problem-store-quantity", vec![]),
        Wrong::SurgeBelowContinuous { continuous_w } => {
            ("problem-surge-below-continuous", vec![("continuous", Figure::of(*continuous_w, Quantity::PowerW))])
        }
        Wrong::RouteTooLong { most_days } => {
            ("problem-route-too-long", vec![("most", Figure::of(f64::from(*most_days), Quantity::Days))])
        }
        Wrong::WeekdayTwice => ("problem-weekday-twice", vec![]),
        Wrong::OutlineCrosses { corner } => ("problem-outline-crosses", vec![("corner", count(*corner))]),
        Wrong::OutlineFlat => ("problem-outline-flat", vec![]),
        Wrong::DoorPastWall => ("problem-door-past-wall", vec![]),
        Wrong::NotAYear => ("problem-not-a-year", vec![]),
        Wrong::CountedTwice { on, hour } => {
            let moment = Moment::hours_into(*on, f64::from(*hour));
            ("problem-counted-twice", vec![("at", Figure::Moment(moment))])
        }
        Wrong::MoreThanFits { most_l } => {
            ("problem-more-than-fits", vec![("most", Figure::of(*most_l, Quantity::VolumeL))])
        }
        Wrong::OdometerBack { on, before_km } => (
            "problem-odometer-back",
            vec![("on", Figure::Date(*on)), ("before", Figure::of(*before_km, Quantity::DistanceKm))],
        ),
    }
}
