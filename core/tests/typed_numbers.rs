//! Numbers as they are typed, against the standard library's way of reading them.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::plan::{NumberMarks, Path, field, typed_value};
use proptest::prelude::*;

/// As read for a field of energy, which takes numbers from 0 to 200,000.
fn read(text: &str) -> Option<f64> {
    let energy = field::at(&Path::from("kit/1/store/usable_wh")).unwrap();
    typed_value(energy, text, NumberMarks::default(), 1.0).ok()?.as_f64()
}

/// Digits with a point before the last few.
fn written(digits: &str, decimals: usize) -> String {
    let padded = format!("{digits:0>width$}", width = decimals + 1);
    let (whole, rest) = padded.split_at(padded.len() - decimals);
    if rest.is_empty() { whole.to_owned() } else { format!("{whole}.{rest}") }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn up_to_fifteen_digits_are_read_to_the_bit(digits in 0_u64..1_000_000_000_000_000, decimals in 10_usize..=22) {
        let text = written(&digits.to_string(), decimals);
        let expected: f64 = text.parse().unwrap();
        prop_assert_eq!(read(&text).map(f64::to_bits), Some(expected.to_bits()), "{}", text);
    }
}

#[test]
fn noughts_at_the_ends_do_not_count() {
    assert_eq!(read("0000000000000000000012.5000000000000000000"), Some(12.5));
    assert_eq!(read("100000.00"), Some(100_000.0));
    assert_eq!(read("0.000"), Some(0.0));
    assert_eq!(read("0"), Some(0.0));
}

#[test]
fn longer_numbers_are_refused() {
    assert_eq!(read("0.123456789012345"), Some(0.123_456_789_012_345));
    assert_eq!(read("0.1234567890123456"), None);
    assert_eq!(read("0.00000000000000000000000001"), None);
}
