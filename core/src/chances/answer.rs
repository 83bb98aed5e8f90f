//! What the runs came to.

use jiff::civil::Date;

use crate::assessment::Balance;
use crate::plan::record::{record, words};
use crate::plan::{Id, Path};

/// How likely a plan holds as a whole, and what that hangs on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Whole {
    /// How many runs there were; none when nothing of the plan can be judged.
    pub runs: u32,
    /// The first day that is ahead.
    pub from: Date,
    /// The last day of the plan.
    pub until: Date,
    /// In how many runs every balance holds that is known.
    pub all_hold: u32,
    /// Each balance, in the order in which they are always shown.
    pub balances: Vec<BalanceChance>,
    /// The balance that most often fails before all others.
    pub first: Option<First>,
    /// What the plan hangs on, the most important first.
    pub inputs: Vec<Input>,
}

record!(Whole { runs, from, until, all_hold, balances, first, inputs });

/// How likely one balance holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct BalanceChance {
    /// Which.
    pub balance: Balance,
    /// Whether it can be judged. If not, it counts nowhere.
    pub is_known: bool,
    /// In how many runs it holds.
    pub held: u32,
    /// In how many runs it fails before all others. Of those that fail on the same day, the one counts that is listed first.
    pub first_fails: u32,
    /// In half of the runs in which it fails it does so by this day.
    pub likely_on: Option<Date>,
    /// In one in ten of them it does so by this day.
    pub early_on: Option<Date>,
}

record!(BalanceChance { balance, is_known, held, first_fails, likely_on, early_on });

/// What most often fails first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct First {
    /// The balance.
    pub balance: Balance,
    /// In how many runs it fails before all others.
    pub fails: u32,
    /// In half of these it fails by this day.
    pub likely_on: Option<Date>,
    /// What it most often fails by in these: of the money, whatever has the largest payment due on the day it is short; of the
    /// power, the store. Nothing when that is nothing with an id, or one of another balance.
    pub by: Option<Id>,
}

record!(First { balance, fails, likely_on, by });

/// A number of the plan that is not certain, and what hangs on it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Input {
    /// What it is.
    pub what: What,
    /// The entry that it stands in; 0 for what is of the whole plan.
    pub id: Id,
    /// Where it stands in the plan.
    pub path: Path,
    /// How far what is to spare rises with it, from -1 to 1: the rank correlation with the worst of the margins that
    /// [`crate::chances`] tells of. Below 0, more of it is worse.
    pub correlation: f64,
    /// In how many of `of_low` runs the plan fails. A balance that fails in every run is not looked at here, for nothing of
    /// this would change it.
    pub fails_low: u32,
    /// How many runs had it in its lower half.
    pub of_low: u32,
    /// In how many of `of_high` runs the plan fails.
    pub fails_high: u32,
    /// How many runs had it in its upper half.
    pub of_high: u32,
}

record!(Input { what, id, path, correlation, fails_low, of_low, fails_high, of_high });

/// What an uncertain number is. High is more of it: dearer, longer, later, brighter, drier. The draws hang on the place
/// in this list, so what is new stands last.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// What an item of the kit costs.
    #[default]
    Price,
    /// What a sale brings.
    SalePrice,
    /// When something is sold, if it is in time.
    SaleDay,
    /// What comes in otherwise.
    Income,
    /// What must be paid again and again.
    Cost,
    /// What a night costs.
    Night,
    /// What the van costs.
    VanPrice,
    /// What the seller takes off for the present car.
    PartExchange,
    /// What the van burns.
    FuelUse,
    /// What fuel costs.
    FuelPrice,
    /// How long and how far is driven, to a stay or on a day of the week.
    Driving,
    /// How long a socket is there, at a stay or on a day of the week.
    Mains,
    /// How much something draws.
    Use,
    /// On how many days something is used that is not used every day.
    Often,
    /// How much water is used.
    Water,
    /// What something weighs.
    Mass,
    /// How long a task takes.
    TaskHours,
    /// How bright the days on the road are.
    Clouds,
    /// How many days are dry until the day of leaving.
    DryDays,
    /// How much a person leaves in the toilet.
    Toilet,
}

words!(What {
    Price = "price", SalePrice = "sale_price", SaleDay = "sale_day", Income = "income", Cost = "cost", Night = "night",
    VanPrice = "van_price", PartExchange = "part_exchange", FuelUse = "fuel_use", FuelPrice = "fuel_price",
    Driving = "driving", Mains = "mains", Use = "use", Often = "often", Water = "water", Mass = "mass",
    TaskHours = "task_hours", Clouds = "clouds", DryDays = "dry_days", Toilet = "toilet",
});
