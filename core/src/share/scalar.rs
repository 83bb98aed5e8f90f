//! Single values to symbols and back.

use jiff::civil::Date;
use serde_json::{Number, Value};

use super::codec::{Stop, Walk, all, hash};
use super::likely::Told;
use super::numbers::{amount, amount_digits, digits, float, whole};
use super::place::{Form, Place};
use super::tree::Tree;
use crate::plan::{add_days, date_text, days_between, read_date};

/// The most texts or dates of one place that are told by their number.
const MOST_AGAIN: usize = 255;

impl Tree {
    /// The form a value is told in.
    pub(super) fn form_of(&self, at: Place, value: &Value) -> Form {
        match value {
            Value::Null => Form::Null,
            Value::Bool(false) => Form::No,
            Value::Bool(true) => Form::Yes,
            Value::Number(number) => match number.as_f64().map(digits) {
                _ if whole(value).is_some() => Form::Whole,
                _ if !number.is_f64() => Form::OddWhole,
                Some(Some(_)) => Form::Decimals,
                _ => Form::OddFloat,
            },
            Value::String(text) => self.form_of_text(at, text),
            Value::Array(_) => Form::List,
            Value::Object(_) => Form::Object,
        }
    }

    fn form_of_text(&self, at: Place, text: &str) -> Form {
        let date = read_date(text).filter(|date| date_text(*date) == text);
        match text.bytes().next() {
            _ if date.is_some_and(|date| self.told_date(at, date).is_some()) => Form::DateAgain,
            _ if date.is_some() => Form::Date,
            _ if amount_digits(text).is_some() => Form::Amount,
            _ if self.told_text(at, text).is_some() => Form::TextAgain,
            _ if text.contains('\0') => Form::OddText,
            Some(b'A'..=b'Z') => Form::Capital,
            _ => Form::Text,
        }
    }

    /// A value of one of the forms without parts.
    pub(super) fn scalar(&mut self, form: Form, at: Place, known: Option<&Value>) -> Walk<Value> {
        let text = known.and_then(Value::as_str);
        Ok(match form {
            Form::No | Form::Yes => {
                self.told(at, form as u32);
                (form == Form::Yes).into()
            }
            Form::Whole if at.is_id() => self.id(at, known)?,
            Form::Whole => self.number(at, known.and_then(whole))?.into(),
            Form::Decimals => {
                let (digits, decimals) = self.decimals(at, known.and_then(Value::as_f64).and_then(digits))?;
                float(digits, decimals).and_then(Number::from_f64).ok_or(Stop)?.into()
            }
            Form::Amount => {
                let (digits, decimals) = self.decimals(at, text.and_then(amount_digits))?;
                amount(digits, decimals).into()
            }
            Form::OddFloat => {
                let bits = self.bytes(known.and_then(Value::as_f64).map(f64::to_bits))?;
                Number::from_f64(f64::from_bits(bits)).ok_or(Stop)?.into()
            }
            Form::OddWhole => self.bytes(known.and_then(Value::as_u64))?.into(),
            Form::Date | Form::DateAgain => {
                let date = self.date(form, at, text.and_then(read_date))?;
                self.row.date = Some(date);
                self.row.any_date = Some(date);
                let text = date_text(date);
                self.told(at, hash(&text));
                text.into()
            }
            Form::Text | Form::Capital => {
                let text = self.capital(form, at, text)?;
                self.texts.push((at.path, text.clone()));
                self.told(at, hash(&text));
                text.into()
            }
            Form::TextAgain => {
                let index = self.index(at, text.and_then(|text| self.told_text(at, text)))?;
                let text = self.texts.iter().filter(|(path, _)| *path == at.path).nth(index).ok_or(Stop)?.1.clone();
                self.row.word = hash(&text);
                self.told(at, hash(&text));
                text.into()
            }
            Form::OddText => {
                let count = self.bytes(text.map(|text| text.len() as u64))?;
                let mut known = text.map(str::bytes);
                let mut bytes = Vec::new();
                for _ in 0..count {
                    bytes.push(self.byte(known.as_mut().and_then(Iterator::next))?);
                }
                String::from_utf8(bytes).map_err(|_| Stop)?.into()
            }
            Form::Null | Form::List | Form::Object => Value::Null,
        })
    }

    /// Notes what was told at a place.
    fn told(&mut self, at: Place, value: u32) {
        let value = all([value]);
        self.row.values = [value, self.row.values[0]];
        self.set_last(at, value);
    }

    fn told_text(&self, at: Place, text: &str) -> Option<usize> {
        let mut texts = self.texts.iter().filter(|(path, _)| *path == at.path).take(MOST_AGAIN);
        texts.position(|(_, told)| told == text)
    }

    fn told_date(&self, at: Place, date: Date) -> Option<usize> {
        let mut dates = self.dates.iter().filter(|(path, _)| *path == at.path).take(MOST_AGAIN);
        dates.position(|(_, told)| *told == date)
    }

    /// Ids mostly count on from one to the next.
    fn id(&mut self, at: Place, known: Option<&Value>) -> Walk<Value> {
        let next = self.row.id.wrapping_add(1);
        let step = self.number(at, known.and_then(whole).map(|id| id.wrapping_sub(next)))?;
        self.row.id = next.wrapping_add(step);
        Ok(self.row.id.into())
    }

    /// A date by the days from another: of the same entry, of the same place, or of any.
    fn date(&mut self, form: Form, at: Place, known: Option<Date>) -> Walk<Date> {
        if form == Form::DateAgain {
            let index = self.index(at, known.and_then(|date| self.told_date(at, date)))?;
            return self.dates.iter().filter(|(path, _)| *path == at.path).nth(index).map(|told| told.1).ok_or(Stop);
        }
        let of_place = || self.dates.iter().rev().find(|(path, _)| *path == at.path).map(|told| told.1);
        let from = self.row.date.or_else(of_place).or(self.row.any_date).unwrap_or(Date::constant(2027, 1, 1));
        let days = self.number(at, known.map(|date| days_between(from, date).into()))?;
        let date = i32::try_from(days).ok().and_then(|days| add_days(from, days)).ok_or(Stop)?;
        self.dates.push((at.path, date));
        Ok(date)
    }

    fn index(&mut self, at: Place, known: Option<usize>) -> Walk<usize> {
        let [before, second] = self.row.values;
        let contexts = [
            all([31, at.path]),
            all([32, at.path, self.last(at)]),
            all([33, at.path, before]),
            all([35, at.path, before, second]),
        ];
        let known = known.and_then(|index| u32::try_from(index).ok());
        Ok(self.codec.symbol(known, Told::Index, 8, &contexts)? as usize)
    }

    /// Digits, and how many of them stand behind the point.
    fn decimals(&mut self, at: Place, known: Option<(i64, u32)>) -> Walk<(i64, u32)> {
        let contexts = [
            all([41, at.path]),
            all([42, at.path, self.last(at)]),
            all([43, at.path, self.row.values[0]]),
            all([44, at.unit]),
        ];
        let decimals = self.codec.symbol(known.map(|(_, decimals)| decimals), Told::Length, 4, &contexts)?;
        Ok((self.number(at, known.map(|(digits, _)| digits))?, decimals))
    }

    /// A whole number: its sign, how many digits it has, then each from the first.
    fn number(&mut self, at: Place, known: Option<i64>) -> Walk<i64> {
        let [before, second] = self.row.values;
        let last = self.last(at);
        let is_negative =
            self.codec.flag(known.map(|number| number < 0), &[all([51, at.path]), all([52, at.path, before])])?;
        let path = all([at.path, u32::from(is_negative)]);
        let known = known.map(|number| number.unsigned_abs().to_string());
        let contexts = [
            all([53, path]),
            all([54, path, last]),
            all([55, path, before]),
            all([56, at.unit]),
            all([57, path, before, second]),
        ];
        let count = known.as_ref().and_then(|digits| u32::try_from(digits.len()).ok());
        let count = self.codec.symbol(count, Told::Length, 5, &contexts)?;
        let mut known = known.as_ref().map(|digits| digits.bytes());
        let mut number = 0_u64;
        for place in 0..count {
            #[allow(clippy::cast_possible_truncation)] // what it depends on is enough
            let so_far = all([count, place, number as u32]);
            let contexts = [
                all([61, path, so_far]),
                all([63, path, so_far, last]),
                all([65, at.unit, count, place, u32::from(number.is_multiple_of(10))]),
                all([66, at.unit, so_far, before]),
                all([68, so_far]),
            ];
            let known = known.as_mut().map(|digits| u32::from(digits.next().unwrap_or(b'0') - b'0'));
            let digit = self.codec.symbol(known, Told::Digit, 4, &contexts)?;
            number = number.wrapping_mul(10).wrapping_add(digit.into());
        }
        #[allow(clippy::cast_possible_truncation)] // likewise
        self.told(at, number as u32 ^ count << 28);
        let number = number.cast_signed();
        Ok(if is_negative { number.wrapping_neg() } else { number })
    }

    fn bytes(&mut self, known: Option<u64>) -> Walk<u64> {
        let mut known = known.map(|number| number.to_be_bytes().into_iter());
        (0..8).try_fold(0, |number, _| Ok(number << 8 | u64::from(self.byte(known.as_mut().and_then(Iterator::next))?)))
    }

    fn byte(&mut self, known: Option<u8>) -> Walk<u8> {
        let byte = self.codec.symbol(known.map(u32::from), Told::Byte, 8, &[all([71])])?;
        u8::try_from(byte).map_err(|_| Stop)
    }

    fn capital(&mut self, form: Form, at: Place, known: Option<&str>) -> Walk<String> {
        let first = |text: &str| text.get(..1).map(|first| (first.to_owned(), text.get(1..).unwrap_or("").to_owned()));
        let known = known.map(|text| match first(text) {
            Some((first, rest)) if form == Form::Capital => first.to_ascii_lowercase() + &rest,
            _ => text.to_owned(),
        });
        let text = self.text(at, known.as_deref())?;
        Ok(match first(&text) {
            Some((first, rest)) if form == Form::Capital => first.to_ascii_uppercase() + &rest,
            _ => text,
        })
    }

    /// A text, byte by byte, with a zero after the last.
    pub(super) fn text(&mut self, at: Place, known: Option<&str>) -> Walk<String> {
        let mut known = known.map(|text| text.bytes().chain([0]));
        let mut bytes = Vec::new();
        let mut word = 0;
        loop {
            let known = known.as_mut().map(|bytes| u32::from(bytes.next().unwrap_or(0)));
            let contexts = [
                all([81, at.path]),
                before(1, &bytes),
                before(2, &bytes),
                before(3, &bytes),
                before(4, &bytes),
                all([82, word]),
            ];
            let byte = u8::try_from(self.codec.symbol(known, Told::Letter, 8, &contexts)?).map_err(|_| Stop)?;
            if byte == 0 {
                return String::from_utf8(bytes).map_err(|_| Stop);
            }
            bytes.push(byte);
            let is_of_word = byte.is_ascii_alphabetic() || !byte.is_ascii();
            word = if is_of_word { all([word, byte.to_ascii_lowercase().into()]) } else { 0 };
        }
    }
}

/// The last few bytes as a context, in small letters.
fn before(count: u32, bytes: &[u8]) -> u32 {
    let mut last = bytes.iter().rev().map(|byte| u32::from(byte.to_ascii_lowercase()));
    (0..count).fold(all([84, count]), |context, _| all([context, last.next().unwrap_or(0)]))
}
