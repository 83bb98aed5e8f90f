//! Bytes as text that any link, message and QR code carries unharmed, and text in parts.
//!
//! A text begins with its mark, then come a check of the bytes and the bytes, which never end in a zero. There are two ways of writing: short,
//! for links ([base64url of RFC 4648]); and in capital letters and digits, of which a QR code holds a third more.
//!
//! [base64url of RFC 4648]: https://www.rfc-editor.org/rfc/rfc4648#section-5

use super::prime::Version;
use super::unreadable::Unreadable;

/// The most characters of a text that are read.
pub const MOST_CHARS: usize = 32_000;

/// What a text begins with, by how it is written and what it is read with; then what begins a part. A mark is never used
/// again for something else. Whoever knows only the first version says of every digit that it is of a newer one.
const MARKS: [(char, &Alphabet, Version); 4] = [
    ('1', &SHORTEST, Version::First),
    ('Q', &IN_CAPITALS, Version::First),
    ('2', &SHORTEST, Version::Second),
    ('3', &IN_CAPITALS, Version::Second),
];
const PART: char = 'S';

const BASE_64: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
const BASE_36: &[u8; 36] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/// How bytes become characters: so many bits are one number of so many digits.
#[derive(PartialEq, Eq)]
struct Alphabet {
    digits: &'static [u8],
    bits: u32,
    chars: u32,
}

const SHORTEST: Alphabet = Alphabet { digits: BASE_64, bits: 6, chars: 1 };
/// 36^6 is little more than 2^31: of the bits that six characters hold, a fifth of a percent is lost.
const IN_CAPITALS: Alphabet = Alphabet { digits: BASE_36, bits: 31, chars: 6 };

/// The short text of bytes.
pub(super) fn short(version: Version, bytes: &[u8]) -> String {
    marked(&SHORTEST, version, bytes)
}

/// The same bytes in capital letters and digits; `None` when the text is none of ours.
pub(super) fn in_capitals(text: &str) -> Option<String> {
    bytes(text).ok().map(|(version, bytes)| marked(&IN_CAPITALS, version, &bytes))
}

fn marked(alphabet: &Alphabet, version: Version, bytes: &[u8]) -> String {
    let is_it = |mark: &&(char, &Alphabet, Version)| mark.1 == alphabet && mark.2 == version;
    let mut text: String = MARKS.iter().find(is_it).map(|mark| mark.0).into_iter().collect();
    alphabet.write(&[&check(version, bytes), bytes].concat(), &mut text);
    text
}

/// The bytes of a text in either writing, and the version they are of.
pub(super) fn bytes(text: &str) -> Result<(Version, Vec<u8>), Unreadable> {
    if text.len() > MOST_CHARS {
        return Err(Unreadable::TooLong { most: MOST_CHARS });
    }
    let mut rest = text.chars();
    let first = rest.next().unwrap_or_default();
    let Some((_, alphabet, version)) = MARKS.iter().find(|mark| mark.0 == first) else {
        return Err(if first.is_ascii_digit() && first != '0' { Unreadable::Newer } else { Unreadable::NotALink });
    };
    let mut told = alphabet.read(rest.as_str()).filter(|bytes| bytes.len() >= 4).ok_or(Unreadable::Damaged)?;
    let bytes = told.split_off(4);
    (check(*version, &bytes) == *told).then_some((*version, bytes)).ok_or(Unreadable::Damaged)
}

/// The check of bytes. Since the second version it has the version in it, so that a changed mark is noticed.
fn check(version: Version, bytes: &[u8]) -> [u8; 4] {
    let checksum = match version {
        Version::First => checksum(bytes),
        Version::Second => checksum(&[&[2], bytes].concat()),
    };
    checksum.to_be_bytes()
}

impl Alphabet {
    /// Writes bytes as numbers of whole width, and leaves out the zeros at the end.
    fn write(&self, bytes: &[u8], text: &mut String) {
        let (mut number, mut held) = (0_u64, 0);
        for byte in bytes.iter().copied().chain([0; 4]) {
            number = number << 8 | u64::from(byte);
            held += 8;
            while held >= self.bits {
                held -= self.bits;
                self.write_number(number >> held, self.chars, text);
                number &= (1 << held) - 1;
            }
        }
        let zero = self.digits.first().copied().map_or('0', char::from);
        text.truncate(text.trim_end_matches(zero).len());
    }

    fn base(&self) -> u64 {
        self.digits.len() as u64
    }

    fn write_number(&self, number: u64, chars: u32, text: &mut String) {
        for at in (0..chars).rev() {
            let digit = usize::try_from(number / self.base().pow(at) % self.base()).ok();
            text.extend(digit.and_then(|digit| self.digits.get(digit)).copied().map(char::from));
        }
    }

    /// The bytes without the zeros at their end. `None` when a character is not of the alphabet.
    fn read(&self, text: &str) -> Option<Vec<u8>> {
        let mut bytes = Vec::new();
        let (mut number, mut held) = (0_u64, 0);
        for group in text.as_bytes().chunks(self.chars as usize) {
            let zeros = std::iter::repeat(self.digits.first()?);
            let mut value = 0;
            for char in group.iter().chain(zeros).take(self.chars as usize) {
                value = value * self.base() + self.digits.iter().position(|digit| digit == char)? as u64;
            }
            number = number << self.bits | (value & ((1 << self.bits) - 1));
            held += self.bits;
            while held >= 8 {
                held -= 8;
                bytes.push(u8::try_from(number >> held & 0xFF).ok()?);
            }
            number &= (1 << held) - 1;
        }
        // A last byte whose zeros were left out.
        bytes.extend(u8::try_from(number << (8 - held)).ok().filter(|_| held > 0));
        while bytes.len() > 4 && bytes.last() == Some(&0) {
            bytes.pop();
        }
        Some(bytes)
    }
}

/// CRC-32 as in ISO/IEC/IEEE 8802-3 (Ethernet): polynomial 0x04C11DB7, reflected. Source: from memory; a test compares
/// it with the published check value.
pub(super) fn checksum(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |check, byte| {
        (0..8).fold(check ^ u32::from(*byte), |check, _| check >> 1 ^ 0xEDB8_8320 & (check & 1).wrapping_neg())
    })
}

/// The texts of ours in a message: alone, in links, or among other words. When there is none, what comes nearest to one,
/// so that it can be said what is wrong with it.
///
/// ```
/// use kerbstead_core::share::{Parcel, Scope, found_in, seal};
/// let text = seal(&Parcel::of(&serde_json::json!({ "title": "North" }), Scope::Whole, true)).unwrap();
/// assert_eq!(found_in(&format!("Look: https://kerbstead.example/#/open/{text}. See you!")), [text.as_str()]);
/// assert_eq!(found_in("https://kerbstead.example/#/open/1cut"), ["1cut"]);
/// assert_eq!(found_in(" hello "), ["hello"]);
/// ```
pub fn found_in(message: &str) -> Vec<&str> {
    let is_of_text = |char: char| char.is_ascii_alphanumeric() || char == '-' || char == '_';
    let words = || message.split(|char| !is_of_text(char)).filter(|word| !word.is_empty());
    let found: Vec<&str> = words().filter(|word| bytes(word).is_ok() || part(word).is_some()).collect();
    if !found.is_empty() {
        return found;
    }
    let after_mark = message.rsplit_once("/open/").and_then(|(_, rest)| rest.split(|char| !is_of_text(char)).next());
    vec![after_mark.unwrap_or_else(|| message.trim())]
}

/// One of the parts that a text was split into.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Which text it is of, as a number that two texts hardly ever share.
    pub set: u32,
    /// Its position, from 0.
    pub index: u32,
    /// How many parts the text has, at most [`MOST_PARTS`].
    pub count: u32,
    /// The piece.
    pub piece: String,
}

/// The most parts of one text.
pub const MOST_PARTS: u32 = 99;

/// The characters of a part that are not its piece.
const FRAME: usize = 13;

/// The part in a text; `None` when it is no part, or was changed on its way.
pub(super) fn part(text: &str) -> Option<Part> {
    let digits = |from: usize, to: usize| u32::from_str_radix(text.get(from..to)?, 36).ok();
    let all_but_check = text.get(..text.len().checked_sub(4)?)?;
    let part = Part {
        set: digits(1, 5)?,
        index: digits(5, 7)?,
        count: digits(7, 9)?,
        piece: all_but_check.get(9..)?.to_owned(),
    };
    let is_whole = text.starts_with(PART) && all_but_check.to_owned() + &four(all_but_check) == text;
    (is_whole && part.index < part.count && part.count <= MOST_PARTS).then_some(part)
}

/// A check of four characters.
fn four(text: &str) -> String {
    digits(checksum(text.as_bytes()) % 36_u32.pow(4), 4)
}

fn digits(number: u32, chars: u32) -> String {
    let mut text = String::new();
    IN_CAPITALS.write_number(number.into(), chars, &mut text);
    text
}

/// A text for QR codes of at most so many characters each: in capital letters and digits, and in parts when it must
/// be. Empty when it is none of ours, or would need more than [`MOST_PARTS`] parts.
///
/// ```
/// use kerbstead_core::share::{Parcel, Scope, joined, part_of, seal, split};
/// let parcel = Parcel::of(&serde_json::json!({ "title": "North with the harvest" }), Scope::Whole, true);
/// let text = seal(&parcel).unwrap();
/// let parts = split(&text, 30);
/// assert!(parts.len() > 1 && parts.iter().all(|part| part.len() <= 30));
/// let parts: Vec<_> = parts.iter().filter_map(|part| part_of(part)).collect();
/// assert_eq!(joined(&parts), Ok(text));
/// assert_eq!(joined(&parts[1..]), Err(vec![0]));
/// ```
pub fn split(text: &str, most_chars: usize) -> Vec<String> {
    let Some(text) = in_capitals(text) else { return Vec::new() };
    if text.len() <= most_chars {
        return vec![text];
    }
    let most = most_chars.saturating_sub(FRAME).max(1);
    let count = text.len().div_ceil(most);
    let Some(parts) = u32::try_from(count).ok().filter(|count| *count <= MOST_PARTS) else { return Vec::new() };
    // All about as long, so that no code is denser than it must be.
    let pieces = text.as_bytes().chunks(text.len().div_ceil(count));
    let set = four(&text);
    let framed = |(index, piece): (u32, &[u8])| {
        let piece = String::from_utf8_lossy(piece);
        let part = format!("{PART}{set}{}{}{piece}", digits(index, 2), digits(parts, 2));
        let check = four(&part);
        part + &check
    };
    (0..).zip(pieces).map(framed).collect()
}

/// The short text that parts of one set make, in whatever order they came and however often.
///
/// # Errors
/// Which parts are missing, from 0, as far as the first part tells. None is missing when all are there and still
/// make no text: they are of several.
pub fn joined(parts: &[Part]) -> Result<String, Vec<u32>> {
    let Some(first) = parts.first() else { return Err(Vec::new()) };
    let found = |index| parts.iter().find(|part| part.set == first.set && part.index == index);
    let missing: Vec<u32> = (0..first.count).filter(|index| found(*index).is_none()).collect();
    if !missing.is_empty() {
        return Err(missing);
    }
    let text: String = (0..first.count).filter_map(found).map(|part| part.piece.as_str()).collect();
    bytes(&text).map(|(version, bytes)| short(version, &bytes)).map_err(|_| Vec::new())
}

/// How many capital letters and digits a QR code of version 20 at level L holds besides `before` bytes of any kind,
/// which is what stands before the text in a link. Source: ISO/IEC 18004:2015, tables 1, 3 and 7 (from memory): 861
/// data codewords; 4 bits of mode, then 16 bits of count for bytes and 11 for letters and digits; 11 bits for two of
/// these, 6 for one.
///
/// ```
/// // 1,249 letters and digits alone; to change over from bytes takes the room of three.
/// assert_eq!(kerbstead_core::share::code_chars(0), 1_246);
/// ```
pub const fn code_chars(before: usize) -> usize {
    let bits = (861_usize * 8).saturating_sub(4 + 16 + 8 * before + 4 + 11);
    bits / 11 * 2 + (bits % 11 >= 6) as usize
}
