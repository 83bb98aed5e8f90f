//! A number somebody is sure of, or a range they are not.

/// A plain value, or low, likely and high. A plain value is written as a plain value.
///
/// ```
/// use kerbstead_core::plan::Estimate;
/// let sure: Estimate<f64> = serde_json::from_str("12").unwrap();
/// let guess: Estimate<f64> = serde_json::from_str(r#"{"low":8,"likely":12,"high":20}"#).unwrap();
/// assert_eq!((sure.likely(), guess.high()), (12.0, 20.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(untagged))]
pub enum Estimate<T> {
    /// The value is known, or taken as known.
    Plain(T),
    /// The value lies between `low` and `high`, most likely at `likely`.
    Range {
        /// The least that is still believable.
        low: T,
        /// The most likely value: the likely run uses it.
        likely: T,
        /// The most that is still believable.
        high: T,
    },
}

super::record::serde_by_plain!(Estimate<T>, T);

impl<T: Default> Default for Estimate<T> {
    fn default() -> Self {
        Self::Plain(T::default())
    }
}

impl<T: Copy> Estimate<T> {
    /// The value the likely run uses.
    pub fn likely(&self) -> T {
        match *self {
            Self::Plain(value) | Self::Range { likely: value, .. } => value,
        }
    }

    /// The least that is still believable.
    pub fn low(&self) -> T {
        match *self {
            Self::Plain(value) | Self::Range { low: value, .. } => value,
        }
    }

    /// The most that is still believable.
    pub fn high(&self) -> T {
        match *self {
            Self::Plain(value) | Self::Range { high: value, .. } => value,
        }
    }
}

impl<T> From<T> for Estimate<T> {
    fn from(value: T) -> Self {
        Self::Plain(value)
    }
}
