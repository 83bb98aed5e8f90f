//! Amounts as files have them.

use rust_decimal::Decimal;

use super::columns::is_letter;
use crate::plan::{Kind, Money};

/// In which money amounts are.
#[derive(Clone, Copy)]
pub(super) struct Coin<'a> {
    /// Its ISO 4217 code.
    pub code: &'a str,
    /// Decimal digits of its minor unit.
    pub digits: u32,
}

/// Why a text is no amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum NoAmount {
    /// It cannot be read as one.
    Unreadable,
    /// It is of another currency.
    OtherCurrency,
    /// It is more than a plan takes.
    TooMuch,
}

/// The most characters of an amount.
const MOST_CHARS: usize = 40;

/// What is written for currencies besides their codes and the signs that are one character.
const SIGNS: [&str; 14] = ["kr", "kr.", "zł", "Kč", "Ft", "Fr", "Fr.", "Rs", "Rs.", "R$", "C$", "A$", "US$", "NZ$"];

/// Reads an amount whose decimals follow `decimal`, a point or a comma. Thousands may be set apart by the other one, by
/// spaces or by apostrophes; a minus sign stands before or behind, or brackets around; a currency before or behind. It
/// has no more decimals than its currency, not counting noughts: `1.234` is no amount of euros.
pub(super) fn amount(text: &str, decimal: char, coin: Coin) -> Result<Money, NoAmount> {
    let text = text.trim();
    let is_digit = |letter: char| letter.is_ascii_digit();
    let (Some(first), Some(last)) = (text.find(is_digit), text.rfind(is_digit)) else {
        return Err(NoAmount::Unreadable);
    };
    if text.chars().count() > MOST_CHARS {
        return Err(NoAmount::Unreadable);
    }
    let before = &text[..first];
    // The mark of `.50` belongs to it, that of `Rs.50` does not.
    let is_leading = |before: &&str| !before.ends_with(is_letter);
    let (before, number) = match before.strip_suffix(decimal).filter(is_leading) {
        Some(shorter) => (shorter, &text[shorter.len()..=last]),
        None => (before, &text[first..=last]),
    };
    let number = plain(number, decimal, coin.digits).ok_or(NoAmount::Unreadable)?;
    let is_negative = around(before, no_cents(&text[last + 1..], decimal), coin)?;
    let amount = Decimal::from_str_exact(&number).map_err(|_| NoAmount::TooMuch)?;
    if amount > Kind::most_money() {
        return Err(NoAmount::TooMuch);
    }
    Ok(Money::new(if is_negative { -amount } else { amount }))
}

/// What stands behind the number, without the stroke for no cents: `12,-`.
fn no_cents(behind: &str, decimal: char) -> &str {
    let stroke = behind.strip_prefix(decimal).filter(|rest| rest.starts_with(['-', '–', '—']));
    stroke.map_or(behind, |stroke| stroke.trim_start_matches(['-', '–', '—']))
}

/// Whether what stands around a number says that it is negative.
fn around(before: &str, behind: &str, coin: Coin) -> Result<bool, NoAmount> {
    let is_sign = |letter: char| matches!(letter, '-' | '+' | '\u{2212}' | '\u{2013}' | '(' | ')');
    let all = || before.chars().chain(behind.chars());
    let signs: String = all().filter(|letter| is_sign(*letter)).collect();
    let currency: String = all().filter(|letter| !is_sign(*letter) && !letter.is_whitespace()).collect();
    let is_negative = match signs.as_str() {
        "" | "+" => false,
        "-" | "\u{2212}" | "\u{2013}" | "()" => true,
        _ => return Err(NoAmount::Unreadable),
    };
    let is_code = currency.len() == 3 && currency.bytes().all(|letter| letter.is_ascii_uppercase());
    let is_euro = coin.code == "EUR";
    let mut letters = currency.chars();
    match (letters.next(), letters.next()) {
        (None, _) => Ok(is_negative),
        _ if currency == coin.code => Ok(is_negative),
        _ if is_code => Err(NoAmount::OtherCurrency),
        // The euro's sign is of one currency, and the euro has no other.
        (Some('€'), None) if is_euro => Ok(is_negative),
        (Some('$' | '£' | '¥' | '¤' | '\u{20a0}'..='\u{20cf}'), None) if !is_euro && currency != "€" => {
            Ok(is_negative)
        }
        (Some('$' | '£' | '¥' | '¤' | '\u{20a0}'..='\u{20cf}'), None) => Err(NoAmount::OtherCurrency),
        _ if SIGNS.contains(&currency.as_str()) && is_euro => Err(NoAmount::OtherCurrency),
        _ if SIGNS.contains(&currency.as_str()) => Ok(is_negative),
        _ => Err(NoAmount::Unreadable),
    }
}

/// The number with a point and without marks between thousands.
fn plain(number: &str, decimal: char, digits: u32) -> Option<String> {
    let (whole, decimals) = number.split_once(decimal).unwrap_or((number, ""));
    let is_fine = decimals.trim_end_matches('0').len() <= usize::try_from(digits).ok()?;
    if !is_fine || !decimals.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let whole = match whole.find(|letter: char| !letter.is_ascii_digit()) {
        Some(at) => without_groups(whole, whole[at..].chars().next()?)?,
        None => whole.to_owned(),
    };
    Some(if decimals.is_empty() { whole } else { format!("{whole}.{decimals}") })
}

/// Digits in groups of three, or of two before the last three as in India; the first may be shorter and does not begin
/// with a nought.
fn without_groups(whole: &str, mark: char) -> Option<String> {
    if !matches!(mark, '.' | ',' | '\'' | '’' | ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}') {
        return None;
    }
    let groups = whole.split(mark).count();
    for (at, group) in whole.split(mark).enumerate() {
        let is_sound = match at {
            0 => (1..=3).contains(&group.len()) && !group.starts_with('0'),
            _ if at + 1 == groups => group.len() == 3,
            _ => (2..=3).contains(&group.len()),
        };
        if !is_sound || !group.bytes().all(|byte| byte.is_ascii_digit()) {
            return None;
        }
    }
    Some(whole.replace(mark, ""))
}
