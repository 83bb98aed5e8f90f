//! What is wrong with a plan: data, not sentences.

use jiff::civil::Date;
use serde::Serialize;

use super::{Id, Money, Path, Quantity};

/// Something in a plan or in what was typed that cannot be used as it stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Problem {
    /// The field, or the place in a file.
    pub path: Path,
    /// What is wrong, with what would be right.
    pub wrong: Wrong,
}

/// What is wrong, and what would be right.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Wrong {
    /// The text is not JSON.
    NotJson {
        /// Line of the text, from 1.
        line: usize,
        /// Column of the line, from 1.
        column: usize,
    },
    /// The document is longer than is read.
    TooLarge {
        /// The most bytes that are read.
        most: usize,
    },
    /// The document is not a plan: an object is expected.
    NotAPlan,
    /// The file comes from a newer version; what is unknown is kept but not counted.
    NewerVersion {
        /// The file's version.
        found: u64,
        /// The newest this code knows.
        known: u32,
    },
    /// A list is expected here.
    NotAList,
    /// An entry with named fields is expected here.
    NotAnEntry,
    /// A list has too many entries; those beyond are kept but not counted.
    TooManyEntries {
        /// The most that are counted.
        most: usize,
    },
    /// The entry has no id, or one that another entry has.
    IdNotUnique {
        /// The id in question, 0 where there is none.
        id: Id,
    },
    /// Text is expected.
    NotText,
    /// The text is too long.
    TextTooLong {
        /// The most characters.
        most: usize,
    },
    /// A number is expected.
    NotANumber {
        /// A value that would do.
        example: f64,
        /// What it measures.
        quantity: Quantity,
    },
    /// What was typed has a unit that does not measure what the field asks for.
    OtherUnit {
        /// The unit typed.
        unit: String,
        /// Signs of the units that would do.
        units: String,
    },
    /// What was typed has a unit where a bare number is expected.
    NoUnit {
        /// The unit typed.
        unit: String,
    },
    /// In what is to be worked out, some numbers have units and others have none, or the units do not come out.
    UnitsMixed,
    /// What is to be worked out divides by nought.
    DividedByNothing,
    /// A whole number is expected.
    NotWhole {
        /// A value that would do.
        example: u32,
    },
    /// The number lies outside its range.
    OutOfRange {
        /// The least.
        min: f64,
        /// The most.
        max: f64,
        /// What it measures.
        quantity: Quantity,
    },
    /// An amount of money is expected.
    NotMoney {
        /// A value that would do.
        example: i64,
    },
    /// The amount is below zero where that makes no sense.
    NegativeMoney,
    /// The amount is larger than any in a plan of this kind.
    TooMuchMoney {
        /// The most.
        most: i64,
    },
    /// A percentage from 0 to 100 is expected.
    NotARate,
    /// A date is expected.
    NotADate,
    /// Yes or no is expected.
    NotAFlag,
    /// One of these words is expected.
    NotAChoice {
        /// The words.
        choices: &'static [&'static str],
    },
    /// The code of a currency in use is expected, by ISO 4217.
    NotACurrency,
    /// Low, likely and high are not in that order.
    RangeReversed,
    /// A range is given where only one value can be used.
    RangeNotTaken,
    /// Two dates are the wrong way round.
    DatesReversed {
        /// The date that must come first.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        first: Date,
        /// The date given, which is earlier.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        second: Date,
    },
    /// A part is more than what it is a part of.
    MoreThanWhole {
        /// The whole.
        whole: Money,
    },
    /// More go back than there are.
    MoreThanThereAre {
        /// How many there are.
        most: u32,
    },
    /// There is no item with a store of that id.
    NoSuchStore {
        /// The id.
        id: Id,
    },
    /// What is referred to is not there any more.
    NoSuchEntry {
        /// The id of what it was.
        id: Id,
    },
    /// Tasks wait for one another in a circle, so that none of them can begin.
    TaskCircle {
        /// Their names, in order; the first stands at the end again.
        names: String,
    },
    /// Each power store is an item of its own: its quantity must be 1.
    StoreQuantity,
    /// The surge limit of a store lies below its continuous limit.
    SurgeBelowContinuous {
        /// The continuous limit.
        continuous_w: f64,
    },
    /// The route is longer than is computed.
    RouteTooLong {
        /// The most days.
        most_days: u32,
    },
    /// The weekday stands twice in the repeating week.
    WeekdayTwice,
    /// The outline of the floor crosses or touches itself.
    OutlineCrosses {
        /// The corner, from 1, from which the other stretch leads to the next.
        corner: usize,
    },
    /// The corners of the floor enclose nothing, or the outline goes back the way it came.
    OutlineFlat,
    /// A door is not in one straight stretch of its side.
    DoorPastWall,
    /// The hours of a typical year cannot be read.
    NotAYear,
    /// The same thing was counted at the same time already: this one counts.
    CountedTwice {
        /// The day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// The hour of it.
        hour: u32,
    },
    /// More litres were counted than all cans or tanks hold.
    MoreThanFits {
        /// What they hold.
        most_l: f64,
    },
    /// The van had driven farther on a day before.
    OdometerBack {
        /// The day before.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// What it had driven then, in km.
        before_km: f64,
    },
}
