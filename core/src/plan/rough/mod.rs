//! A first plan from a few questions, so that there is a verdict before anything was typed into a form.
//!
//! Whatever was not answered is a guess of common practice, and every guess is marked in [`Plan::guesses`].

mod kit;
mod running;
mod van;
mod week;

pub use running::{COST_STARTERS, CostStarter, starter_cost};

use super::field::MOST_MONEY;
use super::starter::{Guessed, has_rough_prices};
use super::{Calendar, Mode, Money, Path, Plan, Purse, SizeClass, add_days};
use jiff::civil::Date;

/// Days until leaving if nobody says. Common practice, no source.
const USUAL_DAYS_AT_HOME: u32 = 42;
/// Nights on the road if nobody says. Common practice, no source.
const USUAL_NIGHTS: u32 = 90;
/// Days from leaving to the first pay on the road. Common practice, no source.
const USUAL_DAYS_TO_PAY: u32 = 30;
/// What is kept untouched, in whole units of a currency near the euro. Common practice, no source.
const USUAL_FLOOR: i64 = 100;
/// Days at home and nights that a run covers together: [`crate::run::MOST_DAYS`] is just above their sum.
const MOST_DAYS_AT_HOME: u32 = 365;
const MOST_NIGHTS: u32 = 730;
/// As many as the plan's field takes.
const MOST_PEOPLE: u32 = 20;

/// What was answered; every question may be skipped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Answers {
    /// The day of leaving. A day past counts as today: whoever has left already plans from today on.
    pub leaves_on: Option<Date>,
    /// Cash in hand today.
    pub cash: Option<Money>,
    /// The size of the van.
    pub size: Option<SizeClass>,
    /// Where the nights will mostly be.
    pub place: Option<Place>,
    /// Nights on the road, 1 to 730.
    pub nights: Option<u32>,
    /// How many travel, 1 to 20.
    pub people: Option<u32>,
}

/// A kind of life on the road, which gives a usual week.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Place {
    /// Streets of one town: work on weekdays, charging there or in a library, taps where one knows them.
    Town,
    /// Quiet places in one region, a paid night a week.
    #[default]
    Country,
    /// Somewhere else most days, a paid night a week.
    Moving,
    /// Paid pitches with mains and water.
    Campsites,
}

impl Place {
    /// All of them, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Town, Self::Country, Self::Moving, Self::Campsites];

    /// Its name's key in the catalogue.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Town => "rough-place-town",
            Self::Country => "rough-place-country",
            Self::Moving => "rough-place-moving",
            Self::Campsites => "rough-place-campsites",
        }
    }
}

/// A first plan along a repeating week. It begins on `as_of` (or a year before leaving, if that is later), holds a
/// small usual kit, and lists every value that was not answered in [`Plan::guesses`]. Answers outside their range are
/// moved into it, and are guesses then. `name` turns keys of the catalogue into names. Prices are rough and meant in
/// euro: they are left empty unless `currency` is EUR, USD, GBP or CHF. Wages have a line without an amount.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::{Answers, Place, rough_plan, validate};
/// let answers = Answers { place: Some(Place::Town), nights: Some(60), ..Answers::default() };
/// let plan = rough_plan(&answers, date(2027, 2, 1), "EUR", &|key| key.to_owned());
/// assert!(validate(&plan).is_empty());
/// assert!(plan.guesses.contains(&"people".into()));
/// ```
pub fn rough_plan(answers: &Answers, as_of: Date, currency: &str, name: &dyn Fn(&str) -> String) -> Plan {
    let place = answers.place.unwrap_or_default();
    let people = answers.people.unwrap_or(1).clamp(1, MOST_PEOPLE);
    let currency = if is_currency(currency) { currency.to_owned() } else { Plan::default().currency };
    let calendar = calendar(answers, as_of);
    let mut plan = Plan {
        title: name("rough-title"),
        people,
        calendar,
        vehicle: van::vehicle(answers.size.unwrap_or_default()),
        purse: purse(answers, &currency),
        kit: kit::items(people, &currency, name),
        incomes: running::incomes(days_after(calendar.leaves_on.unwrap_or(as_of), USUAL_DAYS_TO_PAY), name),
        costs: running::costs(people, week::km(place), &currency, name),
        week: week::days(place, &currency),
        water_uses: running::water_uses(name),
        currency,
        ..Plan::default()
    };
    super::demo::number(&mut plan);
    let guesses = Guessed::new().in_plan(&plan);
    plan.guesses.extend(guesses);
    // Values that happen to be those of an empty plan are guesses all the same, if nobody gave them.
    for (path, is_answered) in asked(answers, &plan) {
        if is_answered {
            plan.guesses.remove(&path);
        } else {
            plan.guesses.insert(path);
        }
    }
    plan
}

/// The fields that were asked for, and whether the plan has just what was answered.
fn asked(answers: &Answers, plan: &Plan) -> Vec<(Path, bool)> {
    let leaves_as_said = answers.leaves_on.is_some() && answers.leaves_on == plan.calendar.leaves_on;
    let nights_as_said = answers.nights.is_some_and(|nights| (1..=MOST_NIGHTS).contains(&nights));
    let mut asked = vec![
        (Path::from("people"), answers.people == Some(plan.people)),
        (Path::from("vehicle/size"), answers.size.is_some()),
        (Path::from("calendar/leaves_on"), leaves_as_said),
        (Path::from("calendar/ends_on"), leaves_as_said && nights_as_said),
    ];
    if answers.cash.is_some() {
        asked.push((Path::from("purse/opening_cash"), answers.cash == plan.purse.opening_cash));
    }
    asked
}

fn calendar(answers: &Answers, as_of: Date) -> Calendar {
    let nights = answers.nights.unwrap_or(USUAL_NIGHTS).clamp(1, MOST_NIGHTS);
    let leaves_on = answers.leaves_on.unwrap_or_else(|| days_after(as_of, USUAL_DAYS_AT_HOME));
    // The last nights of the calendar itself are needed for the road.
    let leaves_on = leaves_on.min(days_before(Date::MAX, nights)).max(as_of);
    Calendar {
        starts_on: Some(as_of.max(days_before(leaves_on, MOST_DAYS_AT_HOME))),
        leaves_on: Some(leaves_on),
        ends_on: Some(days_after(leaves_on, nights)),
        mode: Mode::Week,
    }
}

fn days_after(date: Date, days: u32) -> Date {
    i32::try_from(days).ok().and_then(|days| add_days(date, days)).unwrap_or(Date::MAX)
}

fn days_before(date: Date, days: u32) -> Date {
    i32::try_from(days).ok().and_then(|days| add_days(date, -days)).unwrap_or(Date::MIN)
}

fn purse(answers: &Answers, currency: &str) -> Purse {
    let most = Money::whole(MOST_MONEY);
    Purse {
        opening_cash: answers.cash.map(|cash| cash.clamp(-most, most)),
        floor: if has_rough_prices(currency) { Money::whole(USUAL_FLOOR) } else { Money::ZERO },
        ..Purse::default()
    }
}

fn is_currency(code: &str) -> bool {
    code.len() == 3 && code.bytes().all(|byte| byte.is_ascii_uppercase())
}
