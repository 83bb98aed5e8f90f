//! Data into sentences. One catalogue file per language, in the Fluent syntax; numbers, dates and money are formatted
//! by whoever asks (a browser passes its own `Intl`).

mod catalogue;
mod key;
mod marks;
mod plain;
mod problem;
mod receipts;
mod region;
mod typical;
mod units;
mod value;

use catalogue::{Catalogue, Filling, Fillings};
use jiff::civil::Date;

pub use key::Key;
pub use plain::Plain;
pub use region::{currency_of, units_of};
pub(crate) use units::MM_PER_INCH;
use units::each;
pub use units::{Unit, Units, unit};

use crate::assessment::{Caution, Margin, Moment, Say};
use crate::explain::{Figure, Figures, Source, Working};
use crate::plan::{Money, Problem, Quantity, Wrong};

/// English, the catalogue that is complete by definition.
pub const ENGLISH: &str = include_str!("en.ftl");

/// English, as the build script prepared it.
const PREPARED_ENGLISH: &str = include_str!(concat!(env!("OUT_DIR"), "/en.sentences"));
/// The keys of its sentences.
const KEYS_OF_ENGLISH: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/en.keys"));

/// Formats values the way people write them where they live.
pub trait Format {
    /// A number with at most so many decimals.
    fn number(&self, value: f64, decimals: u8) -> String;
    /// An amount of a currency by its ISO 4217 code.
    fn money(&self, amount: Money, currency: &str) -> String;
    /// A day.
    fn date(&self, date: Date) -> String;
    /// A month, short, to stand below an axis.
    fn month(&self, date: Date) -> String;
    /// A time of day, in minutes since it began.
    fn time(&self, minute: u16) -> String;
    /// An amount of a currency without the small change, to stand beside an axis.
    fn rough_money(&self, amount: f64, currency: &str) -> String;
    /// The plural form of a number in the language of the sentences: `one`, `few`, `other` ... as CLDR names them.
    fn plural(&self, number: f64) -> &'static str;
}

/// Sentences in one language, with values formatted one way.
pub struct Words<F> {
    catalogue: Catalogue,
    format: F,
    units: Units,
    currency: String,
}

impl<F: Format> Words<F> {
    /// English sentences.
    pub fn english(format: F, units: Units, currency: &str) -> Self {
        Self {
            catalogue: Catalogue::new(PREPARED_ENGLISH, KEYS_OF_ENGLISH),
            format,
            units,
            currency: currency.to_owned(),
        }
    }

    /// The units values are shown in.
    pub const fn units(&self) -> Units {
        self.units
    }

    /// The currency amounts are in.
    pub fn currency(&self) -> &str {
        &self.currency
    }

    /// How values are formatted.
    pub const fn format(&self) -> &F {
        &self.format
    }

    /// A sentence without figures. A key the catalogue lacks comes back as itself, so that nothing is ever blank.
    pub fn text(&self, key: &str) -> String {
        self.with(key, &Vec::new())
    }

    /// Whether the catalogue has that sentence.
    pub fn has(&self, key: &str) -> bool {
        self.catalogue.has(Key::of(key))
    }

    /// A sentence with figures. In the catalogue, `{ $name }` is the formatted figure and `{ $name_n }` its bare number
    /// for choosing singular or plural.
    pub fn with(&self, key: &str, figures: &Figures) -> String {
        self.sentence(Key::of(key), figures).unwrap_or_else(|| key.to_owned())
    }

    /// The sentence of a key with figures, if the catalogue has it.
    pub fn sentence(&self, key: Key, figures: &Figures) -> Option<String> {
        let mut fillings = Fillings::new();
        for (name, figure) in figures {
            fillings.push(((*name).to_owned(), Filling::Text(self.figure(figure))));
            if let Figure::Measure { value, .. } = figure {
                fillings.push((format!("{name}_n"), Filling::Number(*value)));
            }
        }
        self.catalogue.fill(key, &fillings, &|number| self.format.plural(number))
    }

    /// What a finding says.
    pub fn say(&self, finding: &dyn Say) -> String {
        self.with(finding.key(), &finding.figures())
    }

    /// What a finding suggests.
    pub fn next_step(&self, finding: &dyn Say) -> Option<String> {
        finding.next_step().map(|key| self.with(key, &finding.figures()))
    }

    /// A caution.
    pub fn caution(&self, caution: Caution) -> String {
        self.text(caution.key())
    }

    /// The working of a number: the formula with its values.
    pub fn working(&self, working: &Working) -> String {
        self.with(working.formula, &working.figures)
    }

    /// Whose rule a number follows.
    pub fn source(&self, source: Source) -> String {
        match source {
            Source::Arithmetic => self.text("source-arithmetic"),
            Source::CommonPractice => self.text("source-common-practice"),
            Source::Published(name) => self.with("source-published", &vec![("name", Figure::Name(name.to_owned()))]),
        }
    }

    /// What is wrong with a field, and what would be right.
    pub fn problem(&self, problem: &Problem) -> String {
        self.wrong(&problem.wrong)
    }

    /// What is wrong, and what would be right.
    pub fn wrong(&self, wrong: &Wrong) -> String {
        let (key, figures) = problem::said(wrong);
        self.with(key, &figures)
    }

    /// A value with its unit.
    pub fn figure(&self, figure: &Figure) -> String {
        match figure {
            Figure::Money(amount) => self.format.money(*amount, &self.currency),
            Figure::Measure { value, quantity } => self.measure(*value, *quantity),
            Figure::Each { price, quantity } => {
                let (factor, key) = each(*price, *quantity, self.units);
                let price = self.format.money(price.scaled(factor), &self.currency);
                self.fill(key, &vec![("price".to_owned(), Filling::Text(price))])
            }
            Figure::Date(date) => self.format.date(*date),
            Figure::Moment(moment) => self.moment(*moment),
            Figure::Name(name) => name.clone(),
        }
    }

    /// A month, short, to stand below an axis.
    pub fn month(&self, date: Date) -> String {
        self.format.month(date)
    }

    /// An amount without the small change, to stand beside an axis.
    pub fn rough_money(&self, amount: f64) -> String {
        self.format.rough_money(amount, &self.currency)
    }

    /// A margin with its unit.
    pub fn margin(&self, margin: Margin) -> String {
        self.figure(&Figure::from(margin))
    }

    /// A value of the plan, in the unit it is shown in.
    pub fn measure(&self, value: f64, quantity: Quantity) -> String {
        if quantity == Quantity::HourOfDay {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to a day just before
            return self.format.time((value * 60.0).clamp(0.0, 1439.0) as u16);
        }
        let unit = unit(quantity, self.units);
        let shown = unit.scale().shown(value);
        let number = self.format.number(shown, decimals(shown, unit.decimals));
        let fillings = vec![("number".to_owned(), Filling::Text(number)), ("n".to_owned(), Filling::Number(shown))];
        self.fill(unit.key, &fillings)
    }

    /// The unit's sign, to stand beside a field.
    pub fn unit_sign(&self, quantity: Quantity) -> String {
        self.text(unit(quantity, self.units).sign)
    }

    fn fill(&self, key: &str, fillings: &Fillings) -> String {
        self.catalogue
            .fill(Key::of(key), fillings, &|number| self.format.plural(number))
            .unwrap_or_else(|| key.to_owned())
    }

    fn moment(&self, moment: Moment) -> String {
        let date = self.format.date(moment.on);
        match moment.minute {
            None => date,
            Some(minute) => {
                let time = self.format.time(minute);
                self.with("moment", &vec![("date", Figure::Name(date)), ("time", Figure::Name(time))])
            }
        }
    }
}

/// Fewer decimals for larger numbers: nobody reads the tenths of a thousand.
fn decimals(value: f64, most: u8) -> u8 {
    match value.abs() {
        size if size >= 100.0 => 0,
        size if size >= 10.0 => most.min(1),
        _ => most,
    }
}
