//! What a change takes of comfort and trouble, in days on the road that it is as bad as losing. Common practice, no source:
//! only their order matters much, and what is shown beside them is the money and the days.

use super::Change;

/// What an average day on the road costs where the plan does not say, in units of the currency. Common practice, no source.
pub const USUAL_DAY: i64 = 20;
/// What a thing bought used costs of its price when new, in percent. Common practice, no source.
pub const USED_PERCENT: i64 = 60;
/// How much of its mass a lighter one has, in percent. Common practice, no source.
pub const LIGHTER_PERCENT: f64 = 70.0;
/// How much of its length, width and height a smaller one has, in percent. Common practice, no source.
pub const SMALLER_PERCENT: f64 = 85.0;
/// How much of its hours a draw keeps that is used less, in percent.
pub const LESS_HOURS_PERCENT: f64 = 50.0;
/// How much of a use of water is left where less is used and nobody said how little would do, in percent.
pub const LESS_WATER_PERCENT: f64 = 75.0;
/// How much of a use of data is left where less is used and nobody said how little would do, in percent.
pub const LESS_DATA_PERCENT: f64 = 50.0;
/// How likely a thing is to be sold at the price that is asked for it to be gone by a day, in percent.
pub const SOLD_PERCENT: i64 = 80;
/// Days by which the day of leaving is moved.
pub const MOVED_DAYS: [i32; 4] = [-14, -7, 7, 14];
/// How many days before the first short one a stop for charging or water is tried on.
pub const STOP_DAYS: i32 = 4;
/// No more changes of one kind are tried for one balance: the largest first.
pub const MOST_OF_A_KIND: usize = 12;
/// No more changes are tried in all.
pub const MOST_TRIED: usize = 120;
/// Among how many changes the cheapest set is searched: those of most worth.
pub const MOST_IN_SEARCH: usize = 48;
/// How many sets are assessed that would do if effects were added up.
pub const MOST_ROUNDS: u32 = 40;
/// How many cheaper sets are assessed at the most to prove that there is none.
pub const MOST_PROVED: u32 = 400;
/// Money is counted in this many parts of a day on the road.
pub const PARTS_OF_A_DAY: f64 = 1_000.0;

/// What a change takes of comfort and trouble, in days on the road.
pub const fn trouble_days(change: Change) -> f64 {
    match change {
        Change::AskLess
        | Change::MoveIt
        | Change::MoreCans
        | Change::CloseCab
        | Change::OpenMore
        | Change::HeatAtNight
        | Change::TakeContract
        | Change::EndContract => 0.1,
        Change::Stop | Change::WaterStop | Change::ChargeLonger | Change::HangElsewhere => 0.25,
        // Of leaving, the days themselves are counted besides.
        Change::Borrow | Change::BuyUsed | Change::Sell | Change::HireTool | Change::Leave => 0.5,
        Change::BuyLater | Change::UseLess | Change::Fewer | Change::TaskLater => 0.75,
        Change::Lighter | Change::Smaller | Change::LessWater | Change::LessData => 1.0,
        Change::LeaveOut => 1.5,
        Change::LeaveTaskOut => 2.0,
    }
}
