//! What a plan has on a line.

use std::cmp::Ordering;

use jiff::civil::Date;

use crate::assessment::{Balance, Margin, Moment, Verdict};
use crate::explain::Figure;
use crate::plan::record::{record, words};
use crate::plan::{Money, Quantity};

/// What is compared. The first three are there for each balance.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// The verdict.
    #[default]
    Verdict,
    /// What is to spare, or missing if negative.
    Margin,
    /// When it first falls short.
    FirstShort,
    /// Cash at the end of the plan.
    CashAtEnd,
    /// The lowest cash from the day asked on.
    LowestCash,
    /// What is still to be paid for the kit.
    KitToPay,
    /// What a month on the road costs.
    MonthOnRoad,
    /// What a month at home costs.
    MonthAtHome,
    /// What an average day on the road costs.
    DayOnRoad,
    /// The day on which what is put in has come back.
    PaidBack,
    /// When the van leaves.
    Leaves,
    /// The last day of the plan.
    Ends,
    /// When all work is done.
    Done,
    /// Hours of work that are left.
    HoursLeft,
    /// What the empty van weighs.
    EmptyMass,
    /// What the kit weighs, without water.
    KitMass,
    /// What the van weighs on the day when it weighs most.
    MostMass,
    /// What may still come aboard on that day.
    SpareMass,
    /// What the fresh cans hold, in litres.
    FreshLitres,
    /// Fresh water used a day, in litres.
    LitresADay,
    /// The least fresh water of an evening, in litres.
    LowestLitres,
    /// What the stores hold together.
    StoresHold,
    /// What is drawn on an average day, at the outlets.
    DrawnADay,
    /// What comes from the sun on an average day, at the sockets.
    SunADay,
    /// What is to be put away, in litres.
    Goods,
    /// What of that finds no room, in litres.
    LeftOver,
}

words!(Line {
    Verdict = "verdict", Margin = "margin", FirstShort = "first_short", CashAtEnd = "cash_at_end",
    LowestCash = "lowest_cash", KitToPay = "kit_to_pay", MonthOnRoad = "month_on_road", MonthAtHome = "month_at_home",
    DayOnRoad = "day_on_road", PaidBack = "paid_back", Leaves = "leaves", Ends = "ends", Done = "done",
    HoursLeft = "hours_left", EmptyMass = "empty_mass", KitMass = "kit_mass", MostMass = "most_mass",
    SpareMass = "spare_mass", FreshLitres = "fresh_litres", LitresADay = "litres_a_day", LowestLitres = "lowest_litres",
    StoresHold = "stores_hold", DrawnADay = "drawn_a_day", SunADay = "sun_a_day", Goods = "goods",
    LeftOver = "left_over",
});

impl Line {
    /// Whether more of it is better (or later, or a better verdict), or less, where that can be said of it alone. What
    /// is carried, used or spent at home is a matter of taste or of the other lines.
    pub const fn is_more_better(self) -> Option<bool> {
        match self {
            Self::Verdict
            | Self::Margin
            | Self::FirstShort
            | Self::CashAtEnd
            | Self::LowestCash
            | Self::SpareMass
            | Self::LowestLitres => Some(true),
            Self::KitToPay
            | Self::MonthOnRoad
            | Self::DayOnRoad
            | Self::PaidBack
            | Self::Done
            | Self::HoursLeft
            | Self::LeftOver => Some(false),
            Self::MonthAtHome
            | Self::Leaves
            | Self::Ends
            | Self::EmptyMass
            | Self::KitMass
            | Self::MostMass
            | Self::FreshLitres
            | Self::LitresADay
            | Self::StoresHold
            | Self::DrawnADay
            | Self::SunADay
            | Self::Goods => None,
        }
    }

    /// Whether it is an amount of money.
    pub fn is_money(self, balance: Option<Balance>) -> bool {
        match self {
            Self::Margin => balance == Some(Balance::Money),
            Self::CashAtEnd
            | Self::LowestCash
            | Self::KitToPay
            | Self::MonthOnRoad
            | Self::MonthAtHome
            | Self::DayOnRoad => true,
            _ => false,
        }
    }

    /// What its values measure.
    const fn quantity(self, balance: Option<Balance>) -> Quantity {
        match self {
            Self::Margin => match balance {
                Some(Balance::Power) => Quantity::Hours,
                Some(Balance::Space) => Quantity::LengthMm,
                Some(Balance::Load) => Quantity::MassKg,
                Some(Balance::Warmth) => Quantity::WarmerK,
                Some(Balance::Signal) => Quantity::DataGb,
                _ => Quantity::Days,
            },
            Self::HoursLeft => Quantity::Hours,
            Self::EmptyMass | Self::KitMass | Self::MostMass | Self::SpareMass => Quantity::MassKg,
            Self::StoresHold | Self::DrawnADay | Self::SunADay => Quantity::EnergyWh,
            _ => Quantity::VolumeL,
        }
    }
}

/// What a plan has on a line: at most one of these. With none of them it is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cell {
    /// A verdict.
    pub verdict: Option<Verdict>,
    /// An amount of the plan's currency.
    pub amount: Option<Money>,
    /// A value in the unit of the line.
    pub value: Option<f64>,
    /// A day.
    pub on: Option<Date>,
    /// With a day: the minute of it, where that is known.
    pub minute: Option<u32>,
    /// It never happens.
    pub is_never: bool,
}

record!(Cell { verdict, amount, value, on, minute, is_never } unless empty { is_never });

impl Cell {
    pub(super) fn of_verdict(verdict: Verdict) -> Self {
        Self { verdict: Some(verdict), ..Self::default() }
    }

    pub(super) fn of_amount(amount: Money) -> Self {
        Self { amount: Some(amount), ..Self::default() }
    }

    pub(super) fn of_value(value: f64) -> Self {
        Self { value: Some(value + 0.0), ..Self::default() }
    }

    pub(super) fn of_day(on: Date) -> Self {
        Self { on: Some(on), ..Self::default() }
    }

    pub(super) fn of_moment(moment: Moment) -> Self {
        Self { minute: moment.minute.map(u32::from), ..Self::of_day(moment.on) }
    }

    pub(super) fn never() -> Self {
        Self { is_never: true, ..Self::default() }
    }

    pub(super) fn of_margin(margin: Margin) -> Self {
        match Figure::from(margin) {
            Figure::Money(amount) => Self::of_amount(amount),
            Figure::Measure { value, .. } => Self::of_value(value),
            _ => Self::default(),
        }
    }

    /// Whether anything is known. A verdict for want of fields is none.
    pub fn is_known(&self) -> bool {
        *self != Self::default() && self.verdict != Some(Verdict::Unknown)
    }

    /// It as a figure that can be shown; none of a verdict, of what never happens, and of what is not known.
    pub fn figure(&self, line: Line, balance: Option<Balance>) -> Option<Figure> {
        let moment = |on: Date| match self.minute.and_then(|minute| u16::try_from(minute).ok()) {
            None => Figure::Date(on),
            minute => Figure::Moment(Moment { on, minute }),
        };
        let value = |value: f64| Figure::of(value, line.quantity(balance));
        self.amount.map(Figure::Money).or(self.value.map(value)).or(self.on.map(moment))
    }

    /// Which of two is more; none when they cannot be compared. What never happens is later than any day.
    pub(super) fn compared(&self, other: &Self) -> Option<Ordering> {
        if !self.is_known() || !other.is_known() {
            return None;
        }
        let moment = |cell: &Self| (cell.is_never, cell.on, cell.minute);
        if let (Some(one), Some(other)) = (self.verdict, other.verdict) {
            return Some(one.cmp(&other));
        }
        if let (Some(one), Some(other)) = (self.amount, other.amount) {
            return Some(one.cmp(&other));
        }
        if let (Some(one), Some(other)) = (self.value, other.value) {
            return Some(one.total_cmp(&other));
        }
        let are_days = |cell: &Self| cell.is_never || cell.on.is_some();
        (are_days(self) && are_days(other)).then(|| moment(self).cmp(&moment(other)))
    }
}
