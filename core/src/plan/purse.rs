//! Money that is there, comes in and goes out apart from the kit.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::record::{record, words};
use super::{Estimate, Id, Kept, Money, Outcome};

/// Cash in hand, and how the plan's prices are meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Purse {
    /// Cash at the start of the first day at home.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub opening_cash: Option<Money>,
    /// What is kept untouched: below it, the plan falls short.
    pub floor: Money,
    /// Sales tax in percent for items that state none.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub tax_percent: Decimal,
    /// Whether marked prices contain the tax already.
    pub prices_include_tax: bool,
    /// The deposit of a room, for whoever wants to go home again.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub room_deposit: Option<Money>,
    /// The first rent of that room.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub room_rent: Option<Money>,
    /// Of what is still to be bought and has no range of prices, so much is kept apart, in percent; without it, 10.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub reserve_percent: Option<Decimal>,
    /// What is kept for a breakdown: the tow, and nights elsewhere.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub breakdown_fund: Option<Money>,
}

record!(Purse {
    opening_cash,
    floor,
    tax_percent,
    prices_include_tax,
    room_deposit,
    room_rent,
    reserve_percent,
    breakdown_fund,
});

impl Default for Purse {
    fn default() -> Self {
        Self {
            opening_cash: None,
            floor: Money::ZERO,
            tax_percent: Decimal::ZERO,
            prices_include_tax: true,
            room_deposit: None,
            room_rent: None,
            reserve_percent: None,
            breakdown_fund: None,
        }
    }
}

/// Something at home that is to be turned into money.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Belonging {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// What it is expected to bring.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub price: Option<Estimate<Money>>,
    /// When the money is expected; without it, the day of leaving.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// What came of it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub outcome: Option<Outcome>,
    /// The least it is given away for.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub lowest: Option<Money>,
    /// How likely it is to be sold by then, in percent; without it, it is taken as sure. A sale that is less likely than
    /// not is not counted on.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub chance_percent: Option<Decimal>,
    /// Since when it is offered.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub listed_on: Option<Date>,
    /// What selling it costs: a fee, the way to the buyer. It is taken off what it brings.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub selling_cost: Option<Money>,
    /// In how many days half of such things are sold at their usual price; without it,
    /// [`HALF_SOLD_DAYS`](crate::money::constants::HALF_SOLD_DAYS).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub half_sold_days: Option<f64>,
    /// What such things usually bring; without it, what this one is expected to bring.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub usual_price: Option<Money>,
    /// What becomes of it if it is not sold.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub kept: Option<Kept>,
    /// Where it ends, so that nothing is left in the flat.
    pub end: BelongingEnd,
    /// With whom it is left, or who gets it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "String::is_empty"))]
    pub end_with: String,
    /// What bringing it there, or throwing it away, costs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub end_fee: Option<Money>,
    /// The day it left the flat.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub ended_on: Option<Date>,
}

record!(Belonging {
    id,
    name,
    price,
    on,
    outcome,
    lowest,
    chance_percent,
    listed_on,
    selling_cost,
    half_sold_days,
    usual_price,
    kept,
    end,
    end_with,
    end_fee,
    ended_on,
} unless empty { end_with });

impl Belonging {
    /// Whether it is to be sold: it is said to be, or it has a price and nothing else was decided.
    pub fn is_for_sale(&self) -> bool {
        match self.end {
            BelongingEnd::Sold => true,
            BelongingEnd::Open => self.price.is_some() || self.outcome.is_some(),
            _ => false,
        }
    }

    /// Whether it has left the flat, or was sold.
    pub fn is_gone(&self) -> bool {
        self.ended_on.is_some() || self.outcome.is_some_and(|outcome| outcome.happened)
    }

    /// Where it ends: what was decided, or that it is sold when it has a price.
    pub fn ends_as(&self) -> BelongingEnd {
        if self.is_for_sale() { BelongingEnd::Sold } else { self.end }
    }
}

/// Where a thing at home ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum BelongingEnd {
    /// Not decided.
    #[default]
    Open,
    /// It comes along.
    Carried,
    /// It is sold.
    Sold,
    /// It is lent, or left with somebody.
    Lent,
    /// It is stored at a monthly price.
    Stored,
    /// It is given away.
    Given,
    /// It is thrown away.
    Thrown,
}

words!(BelongingEnd {
    Open = "open", Carried = "carried", Sold = "sold", Lent = "lent", Stored = "stored", Given = "given",
    Thrown = "thrown",
});

/// Money that comes in otherwise: wages, a gift, a deposit that comes back.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Income {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// How much each time.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub amount: Option<Estimate<Money>>,
    /// When, or when first.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// How often.
    pub repeat: Repeat,
    /// The last day on which it can still come; without it, the end of the plan.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub until: Option<Date>,
    /// Everything due up to this day has really come.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub received_until: Option<Date>,
}

record!(Income { id, name, amount, on, repeat, until, received_until });

/// How often money moves.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Repeat {
    /// On that day only.
    #[default]
    Once,
    /// Every seventh day from it.
    Weekly,
    /// Every fourteenth day from it.
    Fortnightly,
    /// On the same day of every month; a day the month lacks falls on its last.
    Monthly,
    /// On the same day of every year.
    Yearly,
}

words!(Repeat {
    Once = "once", Weekly = "weekly", Fortnightly = "fortnightly", Monthly = "monthly", Yearly = "yearly",
});

/// What must be paid again and again, by the distance, or once.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Cost {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// How much each time.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub amount: Option<Estimate<Money>>,
    /// How often.
    pub every: CostEvery,
    /// Day of the month it is paid on, 1 to 31; a day the month lacks falls on its last.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub day_of_month: Option<u32>,
    /// When it must be paid: at home, on the road, or all along.
    pub phase: CostPhase,
    /// The first day it is due, and the day the later ones are counted from; without it, it begins with its part of
    /// the plan. It may lie before that part: an insurance that begins while the van is still being built.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub first_on: Option<Date>,
    /// The last day it can be due; without it, it ends with its part of the plan. It may lie behind that part: a rent
    /// until the end of the notice.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub last_on: Option<Date>,
}

record!(Cost { id, name, amount, every, day_of_month, phase, first_on, last_on });

/// How often a cost is due.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum CostEvery {
    /// On its first day only; without one, on the day of leaving.
    Once,
    /// Every seventh day from its first.
    Week,
    /// On its day of every month.
    #[default]
    Month,
    /// Every third month.
    Quarter,
    /// Every sixth month.
    HalfYear,
    /// Once a year.
    Year,
    /// For every hundred kilometres driven on the road, on the day they are driven.
    HundredKm,
}

words!(CostEvery {
    Once = "once", Week = "week", Month = "month", Quarter = "quarter", HalfYear = "half_year", Year = "year",
    HundredKm = "hundred_km",
});

/// In which part of the plan a cost is due.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum CostPhase {
    /// Until the van leaves.
    Home,
    /// From the day it leaves.
    #[default]
    Road,
    /// All along.
    Always,
}

words!(CostPhase { Home = "home", Road = "road", Always = "always" });
