//! The signs, numbers and words that a line of arithmetic is made of.

use std::iter::Peekable;
use std::str::Chars;

use rust_decimal::Decimal;

use super::NumberMarks;
use super::numeral::plain;

/// One of them.
#[derive(Clone, Debug, PartialEq)]
pub enum Token {
    Plus,
    Minus,
    Times,
    Divide,
    Percent,
    Open,
    Close,
    Number(Decimal),
    /// A unit, or what may be meant for one.
    Word(String),
}

/// The tokens of a line in their order; none if there is something in it that has no place in arithmetic. Signs of
/// currencies are passed over where money belongs.
pub fn tokens(line: &str, marks: NumberMarks, is_money: bool) -> Option<Vec<Token>> {
    let mut chars = line.chars().peekable();
    let mut tokens = Vec::new();
    while let Some(&first) = chars.peek() {
        if begins_number(first, &chars, marks) {
            tokens.push(Token::Number(number(&mut chars, marks)?));
            continue;
        }
        if first.is_ascii_alphabetic() {
            tokens.push(word(&mut chars));
            continue;
        }
        chars.next();
        if !(first.is_whitespace() || is_money && is_currency_sign(first)) {
            tokens.push(sign(first)?);
        }
    }
    Some(tokens)
}

fn sign(sign: char) -> Option<Token> {
    Some(match sign {
        '+' => Token::Plus,
        '-' | '\u{2212}' | '\u{2013}' => Token::Minus,
        '*' | '×' | '·' => Token::Times,
        '/' | '÷' | '\u{2044}' | '\u{2215}' => Token::Divide,
        '%' => Token::Percent,
        '(' => Token::Open,
        ')' => Token::Close,
        '\'' | '\u{2019}' | '\u{2032}' => Token::Word("ft".to_owned()),
        '"' | '\u{201d}' | '\u{2033}' => Token::Word("in".to_owned()),
        _ => return None,
    })
}

const fn is_currency_sign(sign: char) -> bool {
    // The block of currency signs in Unicode, and those that are older than it.
    matches!(sign, '$' | '£' | '¥' | '¤' | '\u{20a0}'..='\u{20cf}')
}

/// Letters; a letter x alone multiplies. A full stop behind belongs to them, as in `3 in.`
fn word(chars: &mut Peekable<Chars>) -> Token {
    let mut word = letters(chars);
    if word.eq_ignore_ascii_case("x") {
        return Token::Times;
    }
    if word.eq_ignore_ascii_case("fl") {
        while chars.next_if(|c| c.is_whitespace()).is_some() {}
        word.push_str(&letters(chars));
    }
    Token::Word(word)
}

fn letters(chars: &mut Peekable<Chars>) -> String {
    let mut letters = String::new();
    while let Some(letter) = chars.next_if(char::is_ascii_alphabetic) {
        letters.push(letter);
    }
    letters.extend(chars.next_if_eq(&'²'));
    chars.next_if_eq(&'.');
    letters
}

fn begins_number(first: char, chars: &Peekable<Chars>, marks: NumberMarks) -> bool {
    let second = || chars.clone().nth(1).is_some_and(|c| c.is_ascii_digit());
    first.is_ascii_digit() || is_mark(first, marks) && second()
}

/// Whether it can stand between digits wherever it is.
fn is_mark(sign: char, marks: NumberMarks) -> bool {
    matches!(sign, '.' | ',') || sign == marks.decimal
}

/// A number with its marks, in the person's own way of writing.
fn number(chars: &mut Peekable<Chars>, marks: NumberMarks) -> Option<Decimal> {
    let mut text = String::new();
    while let Some(&next) = chars.peek() {
        let goes_on = next.is_ascii_digit()
            || is_mark(next, marks)
            || (next.is_whitespace() || next == '\'' || next == '\u{2019}' || next == marks.group)
                && !text.contains(marks.decimal)
                && is_thousand(chars);
        if !goes_on {
            break;
        }
        text.push(next);
        chars.next();
    }
    Decimal::from_str_exact(&plain(&text, marks)?).ok()
}

/// Whether just three digits follow the next character, so that it only sets thousands apart.
fn is_thousand(chars: &Peekable<Chars>) -> bool {
    chars.clone().skip(1).take_while(char::is_ascii_digit).count() == 3
}
