//! What comes in and goes out besides the kit.

use rust_decimal::Decimal;

use super::{Year, about};
use crate::plan::CostPhase::{Always, Home, Road};
use crate::plan::Repeat::{Fortnightly, Once, Weekly};
use crate::plan::{Belonging, Cost, Estimate, Income, Money, Purse};

/// Cash in the tin on the first day, and what stays in it.
pub(super) fn purse() -> Purse {
    Purse {
        opening_cash: Some(Money::whole(1_185)),
        floor: Money::whole(100),
        tax_percent: Decimal::from(20),
        prices_include_tax: true,
    }
}

/// What stands at home and is to be sold.
pub(super) fn belongings(year: Year) -> Vec<Belonging> {
    let sale = |name: &str, price: Estimate<Money>, month, day| Belonging {
        name: name.to_owned(),
        price: Some(price),
        on: Some(year.on(month, day)),
        ..Belonging::default()
    };
    vec![
        sale("Racing bicycle", euros_about(90, 120, 160), 3, 13),
        sale("Television", euros(65), 3, 20),
        sale("Sewing machine", euros_about(40, 55, 70), 3, 21),
        sale("Dining table and four chairs", euros(70), 3, 27),
        sale("Record player", euros(45), 3, 28),
        sale("Bookcase", euros(25), 4, 4),
        sale("Kitchen dresser", euros(40), 4, 10),
        sale("Wardrobe", euros_about(20, 35, 50), 4, 11),
        sale("Washing machine", euros_about(100, 140, 170), 4, 13),
        sale("Sofa", euros_about(30, 60, 90), 4, 15),
        sale("Bed frame", euros(50), 4, 17),
        sale("Crockery at the flea market", euros_about(15, 30, 45), 4, 18),
    ]
}

/// Wages of both, less deductions, keep and the days the rain takes; and the deposit of the flat.
pub(super) fn incomes(year: Year) -> Vec<Income> {
    let pays = |name: &str, amount: Estimate<Money>, repeat, first: (i8, i8), last: (i8, i8)| Income {
        name: name.to_owned(),
        amount: Some(amount),
        on: Some(year.on(first.0, first.1)),
        repeat,
        until: Some(year.on(last.0, last.1)),
        ..Income::default()
    };
    vec![
        pays("Packing shed, winter hours", euros(430), Fortnightly, (3, 12), (4, 9)),
        // Two weeks' work, paid a week after: the first money comes three weeks after the first morning.
        pays("Strawberries, Orlenbeck", euros_about(720, 880, 960), Fortnightly, (5, 11), (5, 25)),
        pays("Cherries, Hindlefold", euros_about(260, 350, 420), Weekly, (5, 29), (6, 19)),
        pays("Deposit of the flat", euros_about(400, 620, 620), Once, (6, 1), (6, 1)),
        pays("Apricots, Sennick", euros(340), Weekly, (7, 2), (7, 16)),
        pays("Currants, Haverlund", euros_about(220, 290, 350), Weekly, (7, 24), (8, 7)),
        pays("Plums, Velm", euros(350), Weekly, (8, 18), (9, 1)),
        pays("Apples, Norrinfell", euros_about(600, 720, 780), Once, (9, 15), (9, 15)),
    ]
}

/// What must be paid every month.
pub(super) fn costs() -> Vec<Cost> {
    let monthly = |name: &str, amount: Estimate<Money>, day: u32, phase| Cost {
        name: name.to_owned(),
        amount: Some(amount),
        day_of_month: Some(day),
        phase,
        ..Cost::default()
    };
    vec![
        monthly("Rent", euros(420), 1, Home),
        monthly("Electricity and internet at home", euros(75), 15, Home),
        monthly("Food", euros_about(210, 240, 300), 2, Always),
        monthly("Two phone contracts", euros(18), 12, Always),
        monthly("Insurance and tax of the van", euros(52), 20, Always),
        monthly("Diesel", euros_about(90, 120, 180), 6, Road),
        monthly("Laundry, showers", euros(22), 17, Road),
        monthly("Put by for repairs", euros(40), 25, Road),
    ]
}

fn euros(amount: i64) -> Estimate<Money> {
    Money::whole(amount).into()
}

fn euros_about(low: i64, likely: i64, high: i64) -> Estimate<Money> {
    about(Money::whole(low), Money::whole(likely), Money::whole(high))
}
