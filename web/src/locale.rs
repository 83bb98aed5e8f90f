//! Numbers, money and dates as the browser's `Intl` writes them, and the words of the app.

use std::cell::RefCell;
use std::rc::Rc;

use jiff::civil::Date;
use js_sys::{Array, Function, Intl, Object, Reflect};
use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::keeping::Moment;
use kerbstead_core::plan::{Money, NumberMarks, Quantity, days_between};
use kerbstead_core::space::taping::inches;
use kerbstead_core::words::{Format, Key, Units, Words, currency_of, units_of};
use wasm_bindgen::JsValue;

use crate::browser;

/// Formats with the browser's own `Intl`, one formatter for each way of writing, made when first needed.
pub struct Browser {
    language: Array,
    formatters: RefCell<Vec<(String, Function)>>,
    /// The rules of the language of the sentences, whatever the person's own is.
    plurals: Intl::PluralRules,
}

impl Browser {
    fn new(language: &str) -> Self {
        let plurals = Intl::PluralRules::new(&Array::of1(&"en".into()), &Object::new());
        Self { language: Array::of1(&language.into()), formatters: RefCell::default(), plurals }
    }

    /// Formats with the formatter of that name, made by `make` if there is none.
    fn format(&self, name: &str, make: &dyn Fn(&Array) -> Function, value: &JsValue) -> String {
        let mut formatters = self.formatters.borrow_mut();
        let at = formatters.iter().position(|(made, _)| made == name).unwrap_or_else(|| {
            formatters.push((name.to_owned(), make(&self.language)));
            formatters.len() - 1
        });
        let text = formatters.get(at).and_then(|(_, formatter)| formatter.call1(&JsValue::UNDEFINED, value).ok());
        text.and_then(|text| text.as_string()).unwrap_or_default()
    }
}

fn options(pairs: &[(&str, JsValue)]) -> Object {
    let options = Object::new();
    for (name, value) in pairs {
        // A new plain object takes every property.
        let _ = Reflect::set(&options, &(*name).into(), value);
    }
    options
}

fn number_format(language: &Array, pairs: &[(&str, JsValue)]) -> Function {
    Intl::NumberFormat::new(language, &options(pairs)).format()
}

fn date_format(language: &Array, pairs: &[(&str, JsValue)]) -> Function {
    let mut pairs = pairs.to_vec();
    pairs.push(("timeZone", "UTC".into()));
    Intl::DateTimeFormat::new(language, &options(&pairs)).format()
}

impl Format for Browser {
    fn number(&self, value: f64, decimals: u8) -> String {
        let make = |language: &Array| number_format(language, &[("maximumFractionDigits", f64::from(decimals).into())]);
        self.format(&format!("number {decimals}"), &make, &value.into())
    }

    fn money(&self, amount: Money, currency: &str) -> String {
        let make =
            |language: &Array| number_format(language, &[("style", "currency".into()), ("currency", currency.into())]);
        // As text, which `Intl` reads as an exact decimal.
        self.format(&format!("money {currency}"), &make, &amount.to_string().into())
    }

    fn date(&self, date: Date) -> String {
        let make = |language: &Array| {
            date_format(language, &[("year", "numeric".into()), ("month", "short".into()), ("day", "numeric".into())])
        };
        self.format("date", &make, &js_date(date, 0))
    }

    fn month(&self, date: Date) -> String {
        let make = |language: &Array| date_format(language, &[("month", "short".into())]);
        self.format("month", &make, &js_date(date, 0))
    }

    fn rough_money(&self, amount: f64, currency: &str) -> String {
        let make = |language: &Array| {
            let pairs =
                [("style", "currency".into()), ("currency", currency.into()), ("maximumFractionDigits", 0.into())];
            number_format(language, &pairs)
        };
        self.format(&format!("rough {currency}"), &make, &amount.into())
    }

    fn plural(&self, number: f64) -> &'static str {
        const FORMS: [&str; 5] = ["zero", "one", "two", "few", "many"];
        let form = self.plurals.select(number);
        FORMS.into_iter().find(|known| form == *known).unwrap_or("other")
    }

    fn time(&self, minute: u16) -> String {
        let make =
            |language: &Array| date_format(language, &[("hour", "numeric".into()), ("minute", "2-digit".into())]);
        self.format("time", &make, &js_date(Date::constant(2000, 1, 1), minute))
    }
}

/// A moment of the person's own clock, with its day.
#[allow(clippy::cast_precision_loss)] // exact for thousands of years
pub fn date_time(moment: Moment) -> String {
    let make = |language: &Array| {
        let pairs = [("dateStyle", "medium".into()), ("timeStyle", "short".into())];
        Intl::DateTimeFormat::new(language, &options(&pairs)).format()
    };
    words(|words| words.format().format("moment", &make, &(moment as f64).into()))
}

/// A civil day and minute as the moment that `Intl` writes the same way in UTC.
fn js_date(date: Date, minute: u16) -> JsValue {
    const MS_PER_DAY: f64 = 86_400_000.0;
    let days = days_between(Date::constant(1970, 1, 1), date);
    js_sys::Date::new(&(f64::from(days) * MS_PER_DAY + f64::from(minute) * 60_000.0).into()).into()
}

thread_local! {
    /// Asked for once: at every key it would take longer than reading what is typed.
    static MARKS: NumberMarks = marks_of_the_browser();
    static WORDS: RefCell<Rc<Words<Browser>>> = RefCell::new(english(default_units(), default_currency()));
}

/// Sets up the words for those units and that currency; pages drawn before must be drawn again.
pub fn set_up(units: Units, currency: &str) {
    WORDS.set(english(units, currency));
}

fn english(units: Units, currency: &str) -> Rc<Words<Browser>> {
    Rc::new(Words::english(Browser::new(&browser::language()), units, currency))
}

/// Uses the words of the app.
pub fn words<R>(use_them: impl FnOnce(&Words<Browser>) -> R) -> R {
    use_them(&current())
}

// Not inside `words`, which is in the bundle once for each use.
fn current() -> Rc<Words<Browser>> {
    WORDS.with_borrow(Rc::clone)
}

/// Uses the words of another currency while something is drawn once: the plan of a friend has its own.
pub fn in_currency<R>(currency: &str, draw: impl FnOnce() -> R) -> R {
    let before = current();
    set_up(before.units(), currency);
    let drawn = draw();
    WORDS.set(before);
    drawn
}

/// A text of the catalogue.
pub fn t(name: &str) -> String {
    plain_sentence(Key::of(name))
}

/// The key of a sentence whose name is written here: in the bundle it is a number.
macro_rules! key {
    ($name:literal) => {
        const { kerbstead_core::words::Key::of($name) }
    };
}

/// The sentence of a name that is written here.
macro_rules! t {
    ($name:literal) => {
        $crate::locale::plain_sentence(key!($name))
    };
}

/// The same, with figures.
macro_rules! tell {
    ($name:literal, $figures:expr $(,)?) => {
        $crate::locale::sentence(key!($name), $figures)
    };
}

/// The sentence of a key without figures.
#[inline(never)]
pub fn plain_sentence(key: Key) -> String {
    sentence(key, &Vec::new())
}

/// The sentence of a key. A test sees to it that there is one.
#[inline(never)]
pub fn sentence(key: Key, figures: &Figures) -> String {
    words(|words| words.sentence(key, figures)).unwrap_or_default()
}

/// A sentence of the catalogue with figures.
pub fn tell(key: &str, figures: &Figures) -> String {
    words(|words| words.with(key, figures))
}

/// A figure in words.
pub fn say_figure(figure: &Figure) -> String {
    words(|words| words.figure(figure))
}

/// A number with its unit.
pub fn say_measure(value: f64, quantity: Quantity) -> String {
    words(|words| words.measure(value, quantity))
}

/// A length as it is read off a tape, without its unit: whole millimetres, or inches and sixteenths.
pub fn on_tape(mm: f64) -> String {
    words(|words| match words.units() {
        Units::Metric => words.figure(&Figure::of(mm.round(), Quantity::Count)),
        Units::UsCustomary => {
            let tape = inches(mm);
            let sign = if tape.is_negative { "−" } else { "" };
            let whole = (tape.whole > 0 || tape.numerator == 0).then(|| tape.whole.to_string());
            let part = (tape.numerator > 0).then(|| format!("{}/{}", tape.numerator, tape.denominator));
            let parts: Vec<String> = [whole, part].into_iter().flatten().collect();
            format!("{sign}{}", parts.join(" "))
        }
    })
}

/// The same with its unit, on one line.
pub fn say_on_tape(mm: f64) -> String {
    let unit = words(|words| words.unit_sign(Quantity::LengthMm));
    format!("{} {unit}", on_tape(mm)).replace(' ', "\u{a0}")
}

/// An amount in words.
pub fn say_money(amount: Money) -> String {
    say_figure(&Figure::Money(amount))
}

/// A day in words.
pub fn say_date(date: Date) -> String {
    say_figure(&Figure::Date(date))
}

/// A day with its day of the week.
pub fn say_day(date: Date) -> String {
    let make = |language: &Array| {
        let pairs = [("weekday", "short"), ("month", "short"), ("day", "numeric")];
        date_format(language, &pairs.map(|(name, value)| (name, value.into())))
    };
    words(|words| words.format().format("day", &make, &js_date(date, 0)))
}

/// Units as the person's region has them.
pub fn default_units() -> Units {
    units_of(&region())
}

/// The currency of the person's region.
pub fn default_currency() -> &'static str {
    currency_of(&region())
}

/// The region of the person's language tag, such as `AT` of `de-AT`; empty when the tag has none.
fn region() -> String {
    let tag = browser::language();
    let is_region = |part: &&str| part.len() == 2 && part.bytes().all(|byte| byte.is_ascii_uppercase());
    tag.split('-').skip(1).find(is_region).unwrap_or("").to_owned()
}

/// The marks the browser writes numbers with, so that numbers are read the same way.
pub fn number_marks() -> NumberMarks {
    MARKS.with(|marks| *marks)
}

fn marks_of_the_browser() -> NumberMarks {
    let language = Array::of1(&browser::language().into());
    let parts = Intl::NumberFormat::new(&language, &Object::new()).format_to_parts(12_345.6);
    let mark = |wanted: &str| {
        parts.iter().find_map(|part| {
            let text = |name: &str| Reflect::get(&part, &name.into()).ok()?.as_string();
            (text("type")? == wanted).then(|| text("value"))?.and_then(|value| value.chars().next())
        })
    };
    let usual = NumberMarks::default();
    NumberMarks { decimal: mark("decimal").unwrap_or(usual.decimal), group: mark("group").unwrap_or(usual.group) }
}

/// A number as it would be typed: nothing between thousands, and no more decimals than anybody types.
pub fn typing_number(number: f64) -> String {
    words(|words| {
        let make = |language: &Array| {
            number_format(language, &[("useGrouping", false.into()), ("maximumFractionDigits", 4.into())])
        };
        words.format().format("typing", &make, &number.into())
    })
}

/// A plain decimal as it is typed: with the person's decimal mark and nothing between thousands.
pub fn typing_text(plain: &str, marks: NumberMarks) -> String {
    plain.replace('.', &marks.decimal.to_string())
}
