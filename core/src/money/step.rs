//! Cash by day.

use jiff::civil::Date;
use serde::Serialize;

use super::flows::Input;
use crate::plan::Money;
use crate::run::Day;

/// One day of the cash.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CashDay {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// Cash before the day's flows: what was counted that morning, or the evening before.
    pub opening: Money,
    /// What came in.
    pub inflow: Money,
    /// What went out.
    pub outflow: Money,
    /// Cash after the day's flows.
    pub closing: Money,
    /// What a count in the evening changed; the next day opens with it.
    pub corrected: Money,
}

/// The cash as the run went.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// Day by day.
    pub days: Vec<CashDay>,
    /// The flows behind them.
    pub input: Input,
    next_flow: usize,
}

impl Course {
    pub(crate) fn new(input: Input, days: usize) -> Self {
        Self { days: Vec::with_capacity(days), input, next_flow: 0 }
    }

    /// One day: cash in the morning in, cash in the evening out.
    pub fn step(&mut self, opening: Money, day: &Day) -> Money {
        let (mut inflow, mut outflow) = (Money::ZERO, Money::ZERO);
        while let Some(flow) = self.input.flows.get(self.next_flow).filter(|flow| flow.on <= day.date) {
            self.next_flow += 1;
            match flow.amount {
                _ if !flow.counts() => {}
                amount if amount.is_negative() => outflow -= amount,
                amount => inflow += amount,
            }
        }
        let closing = opening + inflow - outflow;
        self.days.push(CashDay { on: day.date, opening, inflow, outflow, closing, corrected: Money::ZERO });
        closing
    }

    /// Notes what a count after the day's flows changed.
    pub(crate) fn correct(&mut self, counted: Money) {
        if let Some(day) = self.days.last_mut() {
            day.corrected = counted - day.closing;
        }
    }
}
