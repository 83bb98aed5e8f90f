//! Work on the road, the data that it takes, and the contracts that give it.

use jiff::civil::Date;

use super::record::{record, words};
use super::{DrawDays, Estimate, Id, Money, add_days, add_months};

/// The work that earns money on the road. What is not said is taken as is usual.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Work {
    /// What an hour of it earns.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub pay_per_hour: Option<Money>,
    /// Hours of it on a working day; without it, nobody works in the van.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub work_hours: Option<f64>,
    /// The hour it begins.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub begins_hour: Option<f64>,
    /// Whether it can be done without any signal.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub offline: bool,
    /// Whether a weak signal is enough for it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub weak_is_enough: bool,
    /// The thing of the kit that must have power for it; without it, all that is under the heading of work.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub works_with: Option<Id>,
    /// The coldest in which it can be done.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub too_cold_c: Option<f64>,
    /// The hottest in which it can be done.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub too_hot_c: Option<f64>,
    /// What goes out with a good signal.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub good_mbit_s: Option<Estimate<f64>>,
    /// What goes out with a weak one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub weak_mbit_s: Option<Estimate<f64>>,
}

record!(Work {
    pay_per_hour,
    work_hours,
    begins_hour,
    offline,
    weak_is_enough,
    works_with,
    too_cold_c,
    too_hot_c,
    good_mbit_s,
    weak_mbit_s,
} unless empty { offline, weak_is_enough });

impl Work {
    /// Whether nothing is said.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// The hour it begins: 9 where nothing is said. Common practice, no source.
    pub fn begins_hour(&self) -> f64 {
        self.begins_hour.unwrap_or(9.0)
    }
}

/// Something that takes data on the road.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct DataUse {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// What kind it is.
    pub data_task: DataTask,
    /// Hours or pieces of it on each of its days, of all people together.
    pub uses_per_day: Estimate<f64>,
    /// Its days.
    pub data_days: DrawDays,
    /// What an hour or a piece takes, down and up together; without it, as is usual for its kind.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub each_mb: Option<Estimate<f64>>,
}

record!(DataUse { id, name, data_task, uses_per_day, data_days, each_mb });

impl Default for DataUse {
    fn default() -> Self {
        Self {
            id: 0,
            name: String::new(),
            data_task: DataTask::default(),
            uses_per_day: Estimate::Plain(1.0),
            data_days: DrawDays::Every,
            each_mb: None,
        }
    }
}

/// A kind of use of data.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum DataTask {
    CallVoice,
    CallLow,
    CallStandard,
    CallHigh,
    Music,
    FilmLow,
    FilmStandard,
    FilmHigh,
    #[default]
    Web,
    Maps,
    SharedDocuments,
    MailIn,
    MailOut,
    PhotoOut,
    FilmMinuteOut,
    UpdateIn,
    /// Anything else, by hours or pieces of its own size.
    Other,
}

words!(DataTask {
    CallVoice = "call_voice", CallLow = "call_low", CallStandard = "call_standard", CallHigh = "call_high",
    Music = "music", FilmLow = "film_low", FilmStandard = "film_standard", FilmHigh = "film_high", Web = "web",
    Maps = "maps", SharedDocuments = "shared_documents", MailIn = "mail_in", MailOut = "mail_out",
    PhotoOut = "photo_out", FilmMinuteOut = "film_minute_out", UpdateIn = "update_in", Other = "other",
});

/// A contract for data, or a card that is paid before; those not in use are held against the others.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct DataContract {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// What a period includes; without it, as much as one likes.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub allowance_gb: Option<f64>,
    /// What a period costs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub period_price: Option<Money>,
    /// Days of a period; without it, a month.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub period_days: Option<u32>,
    /// What comes after the allowance.
    pub beyond: BeyondAllowance,
    /// What a GB beyond it costs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub per_gb: Option<Money>,
    /// The slow rate beyond it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub slow_kbit_s: Option<f64>,
    /// Whether it is in use: then it is paid from the day of leaving on.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub in_use: bool,
}

record!(DataContract {
    id, name, allowance_gb, period_price, period_days, beyond, per_gb, slow_kbit_s, in_use,
} unless empty { in_use });

impl DataContract {
    /// The days on which its periods begin, from a first day to a last: every so many days, or the same day of each month,
    /// or its last where the month lacks it.
    ///
    /// ```
    /// use jiff::civil::date;
    /// use kerbstead_core::plan::DataContract;
    /// let begins = DataContract::default().periods(date(2027, 1, 31), date(2027, 4, 1));
    /// assert_eq!(begins, [date(2027, 1, 31), date(2027, 2, 28), date(2027, 3, 31)]);
    /// ```
    pub fn periods(&self, first: Date, last: Date) -> Vec<Date> {
        let begins = |at: i32| match self.period_days {
            Some(days) => add_days(first, i32::try_from(days.max(1)).unwrap_or(i32::MAX).checked_mul(at)?),
            None => add_months(first, at),
        };
        (0..).map_while(begins).take_while(|on| *on <= last).take(crate::run::MOST_DAYS as usize).collect()
    }
}

/// What comes after an allowance.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum BeyondAllowance {
    /// Nothing more.
    #[default]
    Stops,
    /// Each GB is paid.
    Costs,
    /// As much as comes through slowly.
    Slowed,
}

words!(BeyondAllowance { Stops = "stops", Costs = "costs", Slowed = "slowed" });
