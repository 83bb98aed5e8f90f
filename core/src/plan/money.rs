//! Money: exact decimals that never overflow, panic or turn into a float.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Neg, Sub, SubAssign};
use std::str::FromStr;

use rust_decimal::{Decimal, RoundingStrategy};
use serde::de::Visitor;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::decimal;

/// An amount in the plan's currency. Arithmetic saturates at the limits of [`Decimal`] (about 7.9e28) instead of
/// panicking; validation refuses amounts far below that.
///
/// ```
/// use kerbstead_core::plan::Money;
/// let price: Money = "19.99".parse().unwrap();
/// assert_eq!((price + price).to_string(), "39.98");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(with = "String"))]
pub struct Money(Decimal);

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(Decimal::ZERO);

    /// A whole number of the currency's main unit.
    pub fn whole(units: i64) -> Self {
        Self(Decimal::from(units))
    }

    /// The exact amount.
    pub const fn new(amount: Decimal) -> Self {
        Self(amount)
    }

    /// The exact amount as a decimal.
    pub const fn decimal(self) -> Decimal {
        self.0
    }

    /// Whether it is less than nothing.
    pub fn is_negative(self) -> bool {
        self.0.is_sign_negative() && !self.0.is_zero()
    }

    /// The amount `count` times.
    #[must_use]
    pub fn times(self, count: u32) -> Self {
        self.scaled(Decimal::from(count))
    }

    /// The amount multiplied by an exact factor, unrounded.
    #[must_use]
    pub fn scaled(self, factor: Decimal) -> Self {
        let most = decimal::most(self.0.is_sign_negative() != factor.is_sign_negative());
        Self(decimal::times(self.0, factor).unwrap_or(most))
    }

    /// That share of the amount, `percent` of a hundred, unrounded.
    #[must_use]
    pub fn percent(self, percent: Decimal) -> Self {
        self.scaled(Self(percent).scaled(Decimal::new(1, 2)).0)
    }

    /// Rounded half away from zero to so many decimal digits: half a cent goes up, as tills do it.
    ///
    /// ```
    /// use kerbstead_core::plan::Money;
    /// let tax: Money = "0.045".parse().unwrap();
    /// assert_eq!(tax.rounded(2).to_string(), "0.05");
    /// assert_eq!("-0.004".parse::<Money>().unwrap().rounded(2).to_string(), "0.00");
    /// ```
    #[must_use]
    pub fn rounded(self, digits: u32) -> Self {
        Self(self.0.round_dp_with_strategy(digits, RoundingStrategy::MidpointAwayFromZero)).unsigned_nothing()
    }

    /// Nothing is written without a minus, whatever it came from.
    fn unsigned_nothing(self) -> Self {
        if self.0.is_zero() { Self(self.0.abs()) } else { self }
    }

    /// Rounded, in whole minor units of so many decimal digits; nothing when an `i64` does not hold them.
    ///
    /// ```
    /// use kerbstead_core::plan::Money;
    /// let price: Money = "19.995".parse().unwrap();
    /// assert_eq!(price.to_minor(2), Some(2_000));
    /// assert_eq!(Money::from_minor(-5, 2).to_string(), "-0.05");
    /// ```
    pub fn to_minor(self, digits: u32) -> Option<i64> {
        let rounded = self.rounded(digits).0;
        let shift = 10_i128.checked_pow(digits.checked_sub(rounded.scale())?)?;
        rounded.mantissa().checked_mul(shift)?.try_into().ok()
    }

    /// So many minor units of so many decimal digits, 28 at most.
    pub fn from_minor(units: i64, digits: u32) -> Self {
        Self(Decimal::new(units, digits.min(28)))
    }

    /// A float for drawing only; no sum is ever made of it.
    pub fn to_plot(self) -> f64 {
        decimal::to_float(self.0)
    }
}

/// The currencies in use, each by its three letters. Source: ISO 4217:2015, list one (from memory), without metals, codes
/// for tests and for nothing; with two that gave way of late, in which there may be plans: ANG and BGN.
const CURRENCIES: &str = "AEDAFNALLAMDANGAOAARSAUDAWGAZNBAMBBDBDTBGNBHDBIFBMDBNDBOBBOVBRLBSDBTNBWPBYNBZDCADCDFCHE\
    CHFCHWCLFCLPCNYCOPCOUCRCCUPCVECZKDJFDKKDOPDZDEGPERNETBEURFJDFKPGBPGELGHSGIPGMDGNFGTQGYDHKDHNLHTGHUFIDRILSINRIQDIRR\
    ISKJMDJODJPYKESKGSKHRKMFKPWKRWKWDKYDKZTLAKLBPLKRLRDLSLLYDMADMDLMGAMKDMMKMNTMOPMRUMURMVRMWKMXNMXVMYRMZNNADNGNNIONOK\
    NPRNZDOMRPABPENPGKPHPPKRPLNPYGQARRONRSDRUBRWFSARSBDSCRSDGSEKSGDSHPSLESOSSRDSSPSTNSVCSYPSZLTHBTJSTMTTNDTOPTRYTTDTWD\
    TZSUAHUGXUSDUSNUYIUYUUYWUZSVEDVESVNDVUVWSTXAFXCDXCGXOFXPFYERZARZMWZWG";

/// Whether a text is the code of a currency in use.
///
/// ```
/// use kerbstead_core::plan::is_currency;
/// assert!(is_currency("KWD") && !is_currency("EUX") && !is_currency("EURAED") && !is_currency("DAF"));
/// ```
pub fn is_currency(code: &str) -> bool {
    CURRENCIES.as_bytes().chunks(3).any(|known| known == code.as_bytes())
}

/// Digits after the point of a currency's minor unit, by its ISO 4217 code; two when the code is not in the short
/// list of exceptions. Source: ISO 4217:2015, list one (from memory).
///
/// ```
/// use kerbstead_core::plan::minor_digits;
/// assert_eq!((minor_digits("EUR"), minor_digits("JPY"), minor_digits("KWD")), (2, 0, 3));
/// ```
pub fn minor_digits(currency: &str) -> u32 {
    match currency {
        "BIF" | "CLP" | "DJF" | "GNF" | "ISK" | "JPY" | "KMF" | "KRW" | "PYG" | "RWF" | "UGX" | "UYI" | "VND"
        | "VUV" | "XAF" | "XOF" | "XPF" => 0,
        "BHD" | "IQD" | "JOD" | "KWD" | "LYD" | "OMR" | "TND" => 3,
        "CLF" | "UYW" => 4,
        _ => 2,
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(decimal::plus(self.0, other.0).unwrap_or(decimal::most(self.0.is_sign_negative())))
    }
}

impl Sub for Money {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(decimal::less(self.0, other.0).unwrap_or(decimal::most(self.0.is_sign_negative())))
    }
}

impl Neg for Money {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0).unsigned_nothing()
    }
}

impl AddAssign for Money {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl SubAssign for Money {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        amounts.fold(Self::ZERO, Add::add)
    }
}

impl fmt::Display for Money {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(formatter)
    }
}

impl FromStr for Money {
    type Err = rust_decimal::Error;

    /// Reads a plain decimal: `12.50`, `-3`. More digits than a decimal holds are an error, never a rounding.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        Decimal::from_str_exact(text.trim()).map(Self)
    }
}

impl Serialize for Money {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for Money {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(MoneyVisitor)
    }
}

/// Takes the text that Kerbstead writes, and the plain numbers that people write by hand.
struct MoneyVisitor;

impl Visitor<'_> for MoneyVisitor {
    type Value = Money;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("an amount such as \"12.50\"")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Money, E> {
        text.parse().map_err(|_| E::custom("not an amount such as \"12.50\""))
    }

    fn visit_i64<E: serde::de::Error>(self, units: i64) -> Result<Money, E> {
        Ok(Money::whole(units))
    }

    fn visit_u64<E: serde::de::Error>(self, units: u64) -> Result<Money, E> {
        Ok(Money(Decimal::from(units)))
    }

    fn visit_f64<E: serde::de::Error>(self, amount: f64) -> Result<Money, E> {
        self.visit_str(&amount.to_string())
    }
}
