//! Whether a file is through before one must leave.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Estimate, Field, Id, Quantity, Signal};
use kerbstead_core::signal::rate_mbit_s;
use kerbstead_core::signal::transfer::{Sent, Transfer, payload_share};

use super::places::{lines, signal_word};
use crate::el::{View, el, fragment};
use crate::parts::{Choice, Number, Typed, number_field, number_of, question, worded};
use crate::state::App;

static SIZE: Field = number_field("size", Quantity::DataMb, [0.0, 1e9], 250.0);
static RATE: Field = number_field("rate", Quantity::RateMbitS, [0.0, 1e6], 2.0);
static HOURS: Field = number_field("hours", Quantity::Hours, [0.0, 1_000.0], 0.5);

/// The question.
pub fn send(app: App) -> View {
    let numbers = [
        number_of(key!("send-size"), &SIZE),
        number_of(key!("send-hours"), &HOURS),
        Number { unless: Some("where"), ..number_of(key!("send-rate"), &RATE) },
    ];
    let choice = Choice { label: key!("send-where"), name: "where", options };
    fragment().put(el("p").put(key!("send-hint"))).put(question(app, "send", &numbers, &[choice], answer)).done()
}

/// A typed rate, that of a signal, or that of a place of the route by its signal.
fn options(app: App) -> Vec<(String, String)> {
    let mut options = worded(&[("", key!("send-typed")), ("good", key!("send-good")), ("weak", key!("send-weak"))]);
    let said = |(id, place, signal): (Id, String, Signal)| {
        let figures = vec![("place", Figure::Name(place)), ("signal", Figure::Name(signal_word(signal)))];
        (id.to_string(), tell!("send-place", &figures))
    };
    options.extend(app.desk.plan.with_untracked(lines).into_iter().map(said));
    options
}

fn answer(app: App, typed: &Typed) -> Option<String> {
    let size_mb = typed.read(&SIZE)?;
    let rate_mbit_s = match rate(app, typed) {
        Rate::Known(rate) => rate,
        Rate::NotSaid => return Some(t!("send-signal-unknown")),
        Rate::NotTyped => return None,
    };
    if rate_mbit_s.high() <= 0.0 {
        return Some(t!("send-no-signal"));
    }
    let file = Transfer { size_mb, rate_mbit_s, payload_share: payload_share() };
    let hours = typed.read(&HOURS)?;
    let [low, likely, high] = file.within(hours);
    let part = |sent: &Sent| Figure::of(sent.part * 100.0, Quantity::Percent);
    let [longest, usual, shortest] = file.seconds().map(|seconds| Figure::Name(time(seconds)));
    let mut figures = vec![
        ("low", part(&low)),
        ("likely", part(&likely)),
        ("high", part(&high)),
        ("longest", longest),
        ("usual", usual),
        ("shortest", shortest),
    ];
    let needs = file.needs_mbit_s(hours);
    figures.extend(needs.map(|rate| ("needs", Figure::of(rate, Quantity::RateMbitS))));
    Some(match () {
        () if low.is_done => tell!("send-yes", &figures),
        () if likely.is_done => tell!("send-likely", &figures),
        () if high.is_done => tell!("send-hardly", &figures),
        () if needs.is_some() => tell!("send-no", &figures),
        () => t!("send-no-time"),
    })
}

/// What is known of the rate.
enum Rate {
    Known(Estimate<f64>),
    NotTyped,
    NotSaid,
}

fn rate(app: App, typed: &Typed) -> Rate {
    let chosen = typed.text("where");
    if chosen.is_empty() {
        return typed.read(&RATE).map_or(Rate::NotTyped, |rate| Rate::Known(rate.into()));
    }
    let of_signal = app.plan(|plan| {
        let signal = match chosen.as_str() {
            "good" => Signal::Good,
            "weak" => Signal::Weak,
            id => {
                let id: Option<Id> = id.parse().ok();
                let stay = plan.stays.iter().find(|stay| Some(stay.id) == id).map(|stay| stay.offers.signal);
                let day = || plan.week.iter().find(|day| Some(day.id) == id).map(|day| day.offers.signal);
                stay.or_else(day).unwrap_or_default()
            }
        };
        rate_mbit_s(&plan.work, signal)
    });
    of_signal.map_or(Rate::NotSaid, Rate::Known)
}

/// Hours and minutes, up.
fn time(seconds: Option<f64>) -> String {
    let Some(seconds) = seconds else { return t!("send-never") };
    let minutes = (seconds / 60.0).ceil();
    let hours = (minutes / 60.0).floor();
    let figures = vec![
        ("hours", Figure::of(hours, Quantity::Count)),
        ("minutes", Figure::of(minutes - hours * 60.0, Quantity::Count)),
    ];
    if hours > 0.0 { tell!("send-hours-minutes", &figures) } else { tell!("send-minutes", &figures) }
}
