//! Links made by chance, and what is needed to compare those there are.

use kerbstead_core::plan::{Plain, demo_plan};
use kerbstead_core::share::{Answer, Parcel, Reader, Scope, Unreadable, Version, numbered_fields, seal_as};
use serde_json::{Number, Value};

/// A value as a link gives it back: whole floats are whole numbers. Neither a plan nor a browser tells the two apart.
pub fn as_told(value: &Value) -> Value {
    match value {
        Value::Number(number) => as_told_number(number).into(),
        Value::Array(entries) => Value::Array(entries.iter().map(as_told).collect()),
        Value::Object(fields) => fields.iter().map(|(name, value)| (name.clone(), as_told(value))).collect(),
        value => value.clone(),
    }
}

fn as_told_number(number: &Number) -> Number {
    let whole = number.as_f64().filter(|value| {
        number.is_f64() && value.fract() == 0.0 && value.abs() < 1e15 && value.to_bits() != (-0.0_f64).to_bits()
    });
    #[allow(clippy::cast_possible_truncation)] // whole, and below 10^15
    whole.map_or_else(|| number.clone(), |whole| (whole as i64).into())
}

/// A value as text with the fields of every object in order, so that two can be compared to the bit.
pub fn in_order(value: &Value) -> String {
    match value {
        Value::Array(entries) => format!("[{}]", entries.iter().map(in_order).collect::<Vec<_>>().join(",")),
        Value::Object(fields) => {
            let mut fields: Vec<String> =
                fields.iter().map(|(name, value)| format!("{name:?}:{}", in_order(value))).collect();
            fields.sort();
            format!("{{{}}}", fields.join(","))
        }
        value => value.to_string(),
    }
}

/// The parcels that the encoder knows, from their file.
///
/// # Panics
/// When the file is not a list of plans and answers.
pub fn parcels_of_prime(text: &str) -> Vec<Parcel> {
    let Ok(Value::Array(values)) = serde_json::from_str(text) else { unreachable!("a list of parcels") };
    let parcel = |value: Value| match value.get("marks") {
        Some(_) => Parcel::Answer(Answer::from_plain(&value).unwrap_or_default()),
        None => Parcel::of(&value, Scope::Whole, true),
    };
    values.into_iter().map(parcel).collect()
}

/// Each field that has a number in a version, with its place: a line for each.
pub fn numbers(version: Version) -> String {
    let mut places: Vec<u32> = Vec::new();
    let mut lines = String::new();
    for (place, name) in numbered_fields(version) {
        let number = places.iter().filter(|known| **known == place).count();
        places.push(place);
        lines += &format!("{place:08x} {number} {name}\n");
    }
    lines
}

/// What reads links of every version.
pub struct Readers([Reader; Version::ALL.len()]);

impl Default for Readers {
    fn default() -> Self {
        Self(Version::ALL.map(Reader::of))
    }
}

impl Readers {
    /// The parcel in the bytes of a link of that version.
    ///
    /// # Errors
    /// Why they are none.
    pub fn open(&self, version: Version, bytes: &[u8]) -> Result<Parcel, Unreadable> {
        self.0[version as usize].open_bytes(bytes)
    }
}

/// The bytes of links without end, of any version, for each some way of going wrong: bytes changed, cut off, put in, and
/// bytes without any meaning. They stand for texts whose check a stranger has made right.
pub fn mutated(seed: u64) -> impl Iterator<Item = (Version, Vec<u8>)> {
    let mut chance = Chance::new(seed);
    let valid: Vec<(Version, Vec<u8>)> = valid();
    std::iter::repeat_with(move || {
        let (version, mut bytes) = valid[chance.below(valid.len())].clone();
        match chance.below(6) {
            0 => bytes = (0..chance.below(600)).map(|_| chance.byte()).collect(),
            1 => bytes.truncate(chance.below(bytes.len())),
            2 => bytes.extend((0..chance.below(90)).map(|_| chance.byte())),
            _ => {
                // Mostly near the end, as one bit changes all that follows.
                for _ in 0..=chance.below(3) {
                    let near = chance.below(bytes.len()).max(chance.below(bytes.len()));
                    if let Some(byte) = bytes.get_mut(near) {
                        *byte ^= chance.byte();
                    }
                }
            }
        }
        (version, bytes)
    })
}

fn valid() -> Vec<(Version, Vec<u8>)> {
    let file = demo_plan().to_plain();
    let mut parcels: Vec<Parcel> = Scope::ALL.iter().map(|scope| Parcel::of(&file, *scope, true)).collect();
    parcels.push(Parcel::of(&Value::Null, Scope::Whole, true));
    parcels.push(Parcel::Answer(Answer { from: "Runa".to_owned(), ..Answer::default() }));
    let of =
        |version| parcels.iter().filter_map(move |parcel| Some((version, bytes_of(&seal_as(version, parcel).ok()?)?)));
    Version::ALL.into_iter().flat_map(of).collect()
}

/// The bytes in a link's text, without their check.
fn bytes_of(text: &str) -> Option<Vec<u8>> {
    let digit = |byte: u8| {
        b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_".iter().position(|known| *known == byte)
    };
    let (mut bits, mut held, mut bytes) = (0_usize, 0, Vec::new());
    for byte in text.bytes().skip(1) {
        bits = bits << 6 | digit(byte)?;
        held += 6;
        if held >= 8 {
            held -= 8;
            bytes.push(u8::try_from(bits >> held).ok()?);
            bits &= (1 << held) - 1;
        }
    }
    bytes.get(4..).map(<[u8]>::to_vec)
}

/// Chance that is quick: xorshift64* of S. Vigna (from memory).
#[derive(Clone, Debug)]
pub struct Chance(u64);

impl Chance {
    /// Always the same for the same seed.
    pub fn new(seed: u64) -> Self {
        Self(0x9E37_79B9_7F4A_7C15 ^ seed)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D)
    }

    /// A number below that one, or zero.
    pub fn below(&mut self, most: usize) -> usize {
        usize::try_from(self.next() >> 33).unwrap_or(0) % most.max(1)
    }

    /// One of those.
    ///
    /// # Panics
    /// When there is none.
    pub fn one_of<'a>(&mut self, texts: &'a [String]) -> &'a str {
        let at = self.below(texts.len());
        &texts[at]
    }

    fn byte(&mut self) -> u8 {
        self.next().to_be_bytes()[0]
    }

    /// One to four changes: a byte changed, some cut out, some said twice, all cut off.
    pub fn changed(&mut self, bytes: &[u8]) -> Vec<u8> {
        let mut bytes = bytes.to_vec();
        for _ in 0..=self.below(4) {
            let at = self.below(bytes.len());
            let length = self.below(12).min(bytes.len() - at);
            match self.below(5) {
                0 => bytes.truncate(at),
                1 => drop(bytes.drain(at..at + length)),
                2 => {
                    let twice = bytes[at..at + length].to_vec();
                    bytes.splice(at..at, twice);
                }
                _ if at < bytes.len() => bytes[at] = b"0123456789.,:{}[]\"-eEnulltruefasQS1 \\\xFF\x00"[self.below(38)],
                _ => {}
            }
        }
        bytes
    }
}
