//! A value for a field, by what the table says it accepts.

use jiff::civil::Date;
use kerbstead_core::plan::Kind;
use proptest::prelude::*;
use serde_json::{Value, json};

use super::plans::days;

/// How far values stray.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taste {
    /// What a person might type.
    Believable,
    /// Whatever the type can say and a file can hold.
    Extreme,
}

/// A value of the right form for a field: one that a file can hold and that reads as the field's type.
pub fn value(kind: Kind, taste: Taste) -> BoxedStrategy<Value> {
    match kind {
        Kind::Text { max_chars } => text(max_chars, taste),
        Kind::Number { min, max, example, range, .. } => {
            let one = number(min, max, example, taste);
            if range { with_ranges(one, |one| json!(one), taste) } else { one.prop_map(|one| json!(one)).boxed() }
        }
        Kind::Whole { min, max, example, .. } => match taste {
            Taste::Believable => prop_oneof![2 => Just(example), 1 => min..=max.min(example.saturating_mul(3))]
                .prop_map(|one| json!(one))
                .boxed(),
            Taste::Extreme => prop_oneof![6 => min..=max, 1 => 0..=u32::MAX, 1 => Just(0), 1 => Just(max)]
                .prop_map(|one| json!(one))
                .boxed(),
        },
        Kind::Money { negative, example, range } => {
            let one = cents(negative, example, taste);
            if range { with_ranges(one, amount, taste) } else { one.prop_map(amount).boxed() }
        }
        Kind::Rate => rate(taste),
        Kind::Date => days(taste).prop_map(|date: Date| json!(date.to_string())).boxed(),
        Kind::Flag => any::<bool>().prop_map(|flag| json!(flag)).boxed(),
        Kind::Choice(choices) => prop::sample::select(choices).prop_map(|word| json!(word)).boxed(),
        Kind::StoreItem => (1_u32..5).prop_map(|id| json!(id)).boxed(),
        Kind::Entry(_) => (1_u32..9).prop_map(|id| json!(id)).boxed(),
        Kind::Currency => prop_oneof![4 => Just("EUR"), 1 => prop::sample::select(vec!["JPY", "KWD", "CLF", "USD"])]
            .prop_map(|code| json!(code))
            .boxed(),
    }
}

fn rate(taste: Taste) -> BoxedStrategy<Value> {
    let write = |thousandths: i64| json!(rust_decimal::Decimal::new(thousandths, 3).to_string());
    match taste {
        Taste::Believable => (0_i64..=30_000).prop_map(write).boxed(),
        Taste::Extreme => prop_oneof![0..=100_000_i64, any::<i64>(), Just(-100_000)].prop_map(write).boxed(),
    }
}

fn text(max_chars: usize, taste: Taste) -> BoxedStrategy<Value> {
    match taste {
        Taste::Believable => "[a-z]{1,8}( [a-z]{1,8})?".prop_map(|text| json!(text)).boxed(),
        Taste::Extreme => prop_oneof![Just(String::new()), "\\PC{0,20}", Just("\u{202e}{$x}\n".repeat(max_chars / 8))]
            .prop_map(|text| json!(text))
            .boxed(),
    }
}

fn number(min: f64, max: f64, example: f64, taste: Taste) -> BoxedStrategy<f64> {
    let believable = (0.2..2.2_f64).prop_map(move |factor| (example * factor).clamp(min, max));
    match taste {
        Taste::Believable => prop_oneof![1 => Just(example), 4 => believable].boxed(),
        Taste::Extreme => prop_oneof![
            3 => believable,
            1 => min..=max,
            1 => prop::sample::select(vec![min, max, 0.0, -0.0, -1.0, 1e-12, f64::MIN_POSITIVE, 5e-324]),
            1 => prop::sample::select(vec![1e9, 1e300, f64::MAX, f64::MIN]),
            1 => prop::num::f64::NORMAL | prop::num::f64::SUBNORMAL,
        ]
        .boxed(),
    }
}

/// Hundredths of the main unit.
fn cents(negative: bool, example: i64, taste: Taste) -> BoxedStrategy<i128> {
    const MOST: i128 = 100_000_000_000;
    let example = i128::from(example) * 100;
    let least = if negative { -example } else { 0 };
    match taste {
        Taste::Believable => prop_oneof![1 => Just(example), 6 => least..=example * 3].boxed(),
        Taste::Extreme => prop_oneof![
            3 => least..=example * 3,
            1 => prop::sample::select(vec![0, 1, MOST, MOST + 1, -1, -MOST]),
            1 => -MOST..=MOST,
            // The largest that a decimal holds with two decimals.
            1 => prop::sample::select(vec![79_228_162_514_264_337_593_543_950_335, -79_228_162_514_264_337_593_543_950_335]),
        ]
        .boxed(),
    }
}

fn amount(cents: i128) -> Value {
    json!(rust_decimal::Decimal::from_i128_with_scale(cents, 2).to_string())
}

/// One value, or low, likely and high; at extremes in any order.
fn with_ranges<T, F>(one: BoxedStrategy<T>, write: F, taste: Taste) -> BoxedStrategy<Value>
where
    T: Clone + std::fmt::Debug + PartialOrd + 'static,
    F: Fn(T) -> Value + Clone + 'static,
{
    let plain = write.clone();
    let range = (one.clone(), one.clone(), one.clone()).prop_map(move |(low, likely, high)| {
        let mut parts = [low, likely, high];
        if taste == Taste::Believable {
            parts.sort_by(|a, b| a.partial_cmp(b).unwrap_or(std::cmp::Ordering::Equal));
        }
        let [low, likely, high] = parts;
        json!({ "low": write(low), "likely": write(likely), "high": write(high) })
    });
    prop_oneof![3 => one.prop_map(plain), 1 => range].boxed()
}
