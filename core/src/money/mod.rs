//! Money: can it be paid, day by day?
//!
//! [`Input`] turns the plan into dated flows, [`Course::step`] adds them up day by day, [`report`] judges the course.

mod afford;
mod answers;
mod booking;
pub mod buying;
pub mod chance;
pub mod constants;
mod debt;
mod due;
mod findings;
mod flows;
pub mod futures;
mod going_home;
mod loan;
mod month;
mod moves;
mod outlook;
mod price;
mod prospect;
mod rate;
mod receipt;
mod report;
mod reserve;
mod sales;
pub mod selling;
mod span;
mod step;
mod unearned;

pub use afford::Afford;
pub use answers::answer;
pub use booking::{
    Booking, are_booked, are_paid, blank, blank_line, book, bookings, expected_prices, newest_first, paid_against_plan,
    still_to_buy, take_out, tax_percents,
};
pub use debt::{Debt, LoanReport, OwedDay, van_resale};
pub use findings::Finding;
pub use flows::{Flow, FlowGroup, FlowRange, FlowState, Input};
pub use going_home::{GoingHome, HomeDay};
pub use loan::{Instalment, MOST_MONTHS, Terms, level_payment, payoff, schedule, total_interest, yearly_cost_percent};
pub(crate) use month::divided;
pub use month::{Month, MonthLine, a_month, fuel_a_month, km_a_month};
pub(crate) use moves::{leave_elsewhen, moves};
pub use outlook::{Ahead, NotAhead, ahead};
pub(crate) use outlook::{ahead_of_dated, is_counted_tonight};
pub use price::{PriceParts, price_parts, purchase_price};
pub use prospect::{Odds, Prospect, ProspectTask};
pub use rate::{RatedFlow, months_to_pay_off, present_value, rate_per_period};
pub use receipt::{
    Expected, Explanation, ItemPaid, MOST_EXPLANATIONS, Receipt, ReceiptLine, Reckoning, Spot, paid_by_item, reckon,
};
pub use report::{GroupTotal, Needed, Report, report};
pub use reserve::{CostAhead, KeptApart, Reserve, reserve};
pub use step::{CashDay, Course};
