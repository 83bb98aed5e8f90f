//! A line of arithmetic, worked out in decimals as it is read.
//!
//! A sum is of products, a product of numbers with their units or of sums in brackets. Two rules are not those of
//! mathematics: per cent is reckoned as shop calculators do it, `100 + 8%` is 108; and a fraction before a unit counts
//! as one number, `3/4 in` is three quarters of an inch.

use rust_decimal::Decimal;

use super::super::decimal::{over, plus, times};
use super::super::{Quantity, Wrong};
use super::NumberMarks;
use super::tokens::{Token, tokens};
use super::units::{Unit, signs_of};

/// The most characters of a line that is worked out.
const MOST_CHARS: usize = 200;

/// The most brackets inside one another.
const MOST_DEPTH: usize = 16;

/// What the line is to come to.
#[derive(Clone, Copy, Debug)]
pub struct Asked {
    quantity: Option<Quantity>,
    is_money: bool,
}

impl Asked {
    pub const MONEY: Self = Self { quantity: None, is_money: true };
    pub const RATE: Self = Self::measure(Quantity::Percent);

    pub const fn measure(quantity: Quantity) -> Self {
        Self { quantity: Some(quantity), is_money: false }
    }
}

/// What a line comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Worked {
    /// How much: in the plan's unit if it has one.
    pub amount: Decimal,
    /// Whether units were given.
    pub has_unit: bool,
}

/// Why a line comes to nothing.
#[derive(Clone, Debug, PartialEq)]
pub enum Trouble {
    /// It is no line of arithmetic.
    Unreadable,
    /// More than a decimal holds, on the way or in the end.
    TooLarge,
    /// What can be said more closely.
    Wrong(Wrong),
}

/// Works a line out.
///
/// # Errors
/// Why it comes to nothing. Units that do not fit are only spoken of if there is nothing else in the way.
pub fn worked_out(line: &str, marks: NumberMarks, asked: Asked) -> Result<Worked, Trouble> {
    if line.chars().count() > MOST_CHARS {
        return Err(Trouble::Unreadable);
    }
    let tokens = tokens(line, marks, asked.is_money).ok_or(Trouble::Unreadable)?;
    let mut reader = Reader { tokens, at: 0, asked, has_unit: false, other_unit: None };
    let sum = reader.sum(0)?;
    if reader.at < reader.tokens.len() {
        return Err(Trouble::Unreadable);
    }
    if let Some(unit) = reader.other_unit {
        return Err(Trouble::Wrong(wrong_unit(unit, asked)));
    }
    if sum.power != i32::from(reader.has_unit) {
        return Err(Trouble::Wrong(Wrong::UnitsMixed));
    }
    Ok(Worked { amount: sum.number, has_unit: reader.has_unit })
}

fn wrong_unit(unit: String, asked: Asked) -> Wrong {
    match asked.quantity.map(signs_of).filter(|signs| !signs.is_empty()) {
        Some(units) => Wrong::OtherUnit { unit, units },
        None => Wrong::NoUnit { unit },
    }
}

/// A number on the way.
#[derive(Clone, Copy)]
struct Amount {
    number: Decimal,
    /// How often the unit is in it: 1 for a length, 2 for an area, nought for a bare number.
    power: i32,
}

impl Amount {
    fn plus(self, other: Self) -> Result<Self, Trouble> {
        if self.power != other.power {
            return Err(Trouble::Wrong(Wrong::UnitsMixed));
        }
        let number = plus(self.number, other.number).ok_or(Trouble::TooLarge)?;
        Ok(Self { number, ..self })
    }

    fn times(self, other: Self) -> Result<Self, Trouble> {
        let number = times(self.number, other.number).ok_or(Trouble::TooLarge)?;
        Ok(Self { number, power: self.power + other.power })
    }

    fn divided_by(self, other: Self) -> Result<Self, Trouble> {
        if other.number.is_zero() {
            return Err(Trouble::Wrong(Wrong::DividedByNothing));
        }
        let number = over(self.number, other.number).ok_or(Trouble::TooLarge)?;
        Ok(Self { number, power: self.power - other.power })
    }

    fn negated(self) -> Self {
        Self { number: -self.number, ..self }
    }
}

/// A part of a sum or of a product.
struct Part {
    amount: Amount,
    /// Whether it is a percentage alone, so that in a sum it is a share of what stands before.
    is_share: bool,
}

struct Reader {
    tokens: Vec<Token>,
    at: usize,
    asked: Asked,
    has_unit: bool,
    /// The first unit that does not measure what is asked.
    other_unit: Option<String>,
}

impl Reader {
    fn sum(&mut self, depth: usize) -> Result<Amount, Trouble> {
        let mut sum = self.product(depth)?.amount;
        loop {
            let is_less = match self.tokens.get(self.at) {
                Some(Token::Plus) => false,
                Some(Token::Minus) => true,
                _ => return Ok(sum),
            };
            self.at += 1;
            let part = self.product(depth)?;
            let amount = if part.is_share { sum.times(part.amount)? } else { part.amount };
            sum = sum.plus(if is_less { amount.negated() } else { amount })?;
        }
    }

    fn product(&mut self, depth: usize) -> Result<Part, Trouble> {
        let mut product = self.signed(depth)?;
        loop {
            let is_division = match self.tokens.get(self.at) {
                Some(Token::Times) => false,
                Some(Token::Divide) => true,
                _ => return Ok(product),
            };
            self.at += 1;
            let next = self.signed(depth)?.amount;
            let amount = product.amount;
            let amount = if is_division { amount.divided_by(next)? } else { amount.times(next)? };
            product = Part { amount, is_share: false };
        }
    }

    /// A number or bracket with at most one sign before it and a per cent sign behind.
    fn signed(&mut self, depth: usize) -> Result<Part, Trouble> {
        let is_negative = self.next_is(&Token::Minus);
        if !is_negative {
            self.next_is(&Token::Plus);
        }
        let amount = if self.next_is(&Token::Open) { self.bracket(depth)? } else { self.measured()? };
        let amount = if is_negative { amount.negated() } else { amount };
        if !self.next_is(&Token::Percent) {
            return Ok(Part { amount, is_share: false });
        }
        let hundredth = Amount { number: Decimal::new(1, 2), power: 0 };
        Ok(Part { amount: amount.times(hundredth)?, is_share: true })
    }

    fn bracket(&mut self, depth: usize) -> Result<Amount, Trouble> {
        if depth >= MOST_DEPTH {
            return Err(Trouble::Unreadable);
        }
        let sum = self.sum(depth + 1)?;
        if self.next_is(&Token::Close) { Ok(sum) } else { Err(Trouble::Unreadable) }
    }

    /// A number, or one with a unit and others behind it: `4 ft 8 in`.
    fn measured(&mut self) -> Result<Amount, Trouble> {
        let number = self.number()?;
        let Some(mut sum) = self.unit(number)? else { return Ok(Amount { number, power: 0 }) };
        while self.number_at(self.at).is_some() {
            let number = self.number()?;
            sum = sum.plus(self.unit(number)?.ok_or(Trouble::Unreadable)?)?;
        }
        Ok(sum)
    }

    /// A number, also a mixed one such as `2 3/4`, or a fraction that a unit follows.
    fn number(&mut self) -> Result<Decimal, Trouble> {
        let first = self.number_at(self.at).ok_or(Trouble::Unreadable)?;
        self.at += 1;
        if let Some(upper) = self.number_at(self.at) {
            let under = self.divisor_at(self.at + 1).ok_or(Trouble::Unreadable)?;
            self.at += 3;
            return plus(first, fraction(upper, under)?).ok_or(Trouble::TooLarge);
        }
        if let Some(under) = self.divisor_at(self.at).filter(|_| self.unit_at(self.at + 2).is_some()) {
            self.at += 2;
            return fraction(first, under);
        }
        Ok(first)
    }

    /// So many of the unit that comes next, if one does.
    fn unit(&mut self, number: Decimal) -> Result<Option<Amount>, Trouble> {
        let Some(name) = self.unit_at(self.at) else { return Ok(None) };
        self.at += 1;
        self.has_unit = true;
        let unit = self.asked.quantity.and_then(|quantity| Unit::named(&name, quantity));
        if unit.is_none() {
            self.other_unit.get_or_insert(name);
        }
        let number = unit.map_or(Some(number), |unit| unit.of(number)).ok_or(Trouble::TooLarge)?;
        Ok(Some(Amount { number, power: 1 }))
    }

    /// Where percentages are asked for, per cent is the unit.
    fn unit_at(&self, at: usize) -> Option<String> {
        match self.tokens.get(at)? {
            Token::Word(name) => Some(name.clone()),
            Token::Percent if self.asked.quantity == Some(Quantity::Percent) => Some("%".to_owned()),
            _ => None,
        }
    }

    fn number_at(&self, at: usize) -> Option<Decimal> {
        match self.tokens.get(at) {
            Some(Token::Number(number)) => Some(*number),
            _ => None,
        }
    }

    fn divisor_at(&self, at: usize) -> Option<Decimal> {
        (self.tokens.get(at) == Some(&Token::Divide)).then(|| self.number_at(at + 1))?
    }

    /// Whether that token comes next; it is passed then.
    fn next_is(&mut self, token: &Token) -> bool {
        let is_next = self.tokens.get(self.at) == Some(token);
        self.at += usize::from(is_next);
        is_next
    }
}

fn fraction(upper: Decimal, under: Decimal) -> Result<Decimal, Trouble> {
    let [upper, under] = [upper, under].map(|number| Amount { number, power: 0 });
    upper.divided_by(under).map(|amount| amount.number)
}
