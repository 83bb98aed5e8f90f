//! A typical year as short text and back, to be kept in a plan as one piece of text.
//!
//! Where it is of and its clock are kept beside it. Irradiances are whole watts per square metre, temperatures tenths of a
//! degree. Hours without light are left out; what remains are differences from the number before, in letters, digits, `-`
//! and `_`, as links and JSON carry them unharmed. A real year takes about 1,300 characters.
//!
//! ```
//! use kerbstead_core::sun::Place;
//! use kerbstead_core::sun::typical::TypicalYear;
//! let place = Place { latitude_deg: 45.0, longitude_deg: 8.0, altitude_m: 250.0 };
//! let mut year = TypicalYear { place, utc_offset_h: 1.0, months: Default::default() };
//! year.months[6].hours[12].sky.global_w_m2 = 801.4;
//! let kept = TypicalYear::of_text(&year.to_text(), place, 1.0).unwrap();
//! assert_eq!(kept.months[6].hours[12].sky.global_w_m2, 801.0);
//! assert_eq!(TypicalYear::of_text("July was nice", place, 1.0), None);
//! ```

use super::rows::{AIR, LIGHT};
use super::{TypicalHour, TypicalMonth, TypicalYear};
use crate::sun::position::{Place, sound};
use crate::sun::sky::Irradiance;

/// What the text begins with. Whoever writes it in another way begins with another letter.
const FORM: char = '1';
/// Five bits a letter, the lowest first; the upper half of the letters says that more follow.
const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
const BITS: u32 = 5;
/// No number takes more letters.
const MOST_LETTERS: u32 = 3;
/// Usual days of a month, from which the days are counted.
const USUAL_DAYS: i32 = 30;
const MOST_DAYS: u32 = 31;
/// The parts of the light in their order.
const PARTS: [fn(&mut Irradiance) -> &mut f64; 3] =
    [|sky| &mut sky.global_w_m2, |sky| &mut sky.beam_w_m2, |sky| &mut sky.diffuse_w_m2];

impl TypicalYear {
    /// The year as text. Numbers out of range are written as the nearest that is not.
    pub fn to_text(&self) -> String {
        let mut text = Writer(FORM.to_string());
        // A writer takes every number that it is given.
        let _ = all(&mut self.months.clone(), &mut text);
        text.0
    }

    /// The year of a text that [`TypicalYear::to_text`] gave, at a place with a clock so many hours ahead of universal time
    /// (-14 to 14); `None` if the text is none of these.
    pub fn of_text(text: &str, place: Place, utc_offset_h: f64) -> Option<Self> {
        let mut reader = Reader(text.strip_prefix(FORM)?.bytes());
        let mut months = Default::default();
        all(&mut months, &mut reader)?;
        let utc_offset_h = sound(utc_offset_h, -14.0, 14.0);
        reader.0.next().is_none().then(|| Self { place: place.sound(), utc_offset_h, months })
    }
}

/// One way through the numbers of a year, for writing them and for reading them.
trait Pass {
    /// Takes a number and gives the one that stands there: the same when writing. It is put as its difference from another.
    fn pass(&mut self, number: i32, from: i32) -> Option<i32>;
}

fn all(months: &mut [TypicalMonth; 12], pass: &mut dyn Pass) -> Option<()> {
    let mut air = Chain { scale: 10.0, range: AIR, last: 0 };
    months.iter_mut().try_for_each(|month| {
        let days = pass.pass(month.days.min(MOST_DAYS).cast_signed(), USUAL_DAYS)?;
        month.days = u32::try_from(days).ok().filter(|days| *days <= MOST_DAYS)?;
        for degrees in [&mut month.coldest_c, &mut month.warmest_c, &mut month.high_c, &mut month.low_c] {
            air.pass(degrees, pass)?;
        }
        month.hours.iter_mut().try_for_each(|hour| air.pass(&mut hour.air_c, pass))?;
        light(&mut month.hours, pass)
    })
}

/// From the first hour with light to the last: the global irradiances, then the beams, then what is diffuse. Less than half
/// a watt is none.
fn light(hours: &mut [TypicalHour; 24], pass: &mut dyn Pass) -> Option<()> {
    let is_lit = |hour: &TypicalHour| {
        let sky = hour.sky;
        [sky.global_w_m2, sky.beam_w_m2, sky.diffuse_w_m2].iter().any(|light| *light >= 0.5)
    };
    let first = hours.iter().position(is_lit).unwrap_or(0);
    let end = hours.iter().rposition(is_lit).map_or(first, |last| last + 1);
    let first = pass.pass(i32::try_from(first).ok()?, 0)?;
    let end = pass.pass(i32::try_from(end).ok()?, first)?;
    let lit = hours.get_mut(usize::try_from(first).ok()?..usize::try_from(end).ok()?)?;
    for part in PARTS {
        let mut chain = Chain { scale: 1.0, range: LIGHT, last: 0 };
        lit.iter_mut().try_for_each(|hour| chain.pass(part(&mut hour.sky), pass))?;
    }
    Some(())
}

/// Numbers of one kind, each put as its difference from the one before.
struct Chain {
    /// How many steps make one.
    scale: f64,
    range: [f64; 2],
    /// The last number in steps.
    last: i32,
}

impl Chain {
    fn pass(&mut self, value: &mut f64, pass: &mut dyn Pass) -> Option<()> {
        let [least, most] = self.range;
        #[allow(clippy::cast_possible_truncation, reason = "no range has more than 2,000 steps on a side")]
        let steps = libm::round(sound(*value, least, most) * self.scale) as i32;
        self.last = pass.pass(steps, self.last)?;
        *value = f64::from(self.last) / self.scale;
        (least..=most).contains(value).then_some(())
    }
}

struct Writer(String);

impl Pass for Writer {
    fn pass(&mut self, number: i32, from: i32) -> Option<i32> {
        let difference = number - from;
        // The sign is the lowest bit, so that small numbers of both signs are short.
        let mut rest = ((difference << 1) ^ (difference >> 31)).cast_unsigned();
        loop {
            let (low, more) = (rest & 31, rest >> BITS);
            let letter = if more == 0 { low } else { low + 32 };
            self.0.extend(LETTERS.get(letter as usize).map(|letter| char::from(*letter)));
            if more == 0 {
                return Some(number);
            }
            rest = more;
        }
    }
}

struct Reader<'a>(std::str::Bytes<'a>);

impl Pass for Reader<'_> {
    fn pass(&mut self, _: i32, from: i32) -> Option<i32> {
        let mut whole = 0;
        for place in 0..MOST_LETTERS {
            let letter = self.0.next()?;
            let (number, _) = (0_i32..).zip(LETTERS).find(|(_, other)| **other == letter)?;
            whole |= (number & 31) << (BITS * place);
            if number < 32 {
                return Some(from + ((whole >> 1) ^ -(whole & 1)));
            }
        }
        None
    }
}
