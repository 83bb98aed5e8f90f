//! What a heater takes, what must be open, and a hot parked day.

use kerbstead_core::Caution;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{BurnerFuel, Colour, Plan, Quantity};
use kerbstead_core::warmth::answers::{Answers, Burnt, Heater, Hot, Opening};

use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{plain_sentence, say_measure};
use crate::parts::{TableRow, named_in, table, take_care, time};
use crate::state::App;

/// All of them, of the plan as it was last settled.
pub fn answers() -> View {
    let app = App::here();
    let told = move || {
        app.settled_assessment(|assessment| {
            app.settled_plan(|plan| {
                let answers = Answers::new(plan, assessment.as_of, &assessment.warmth);
                show(plan, &answers)
            })
        })
    };
    live::view(told)
}

fn show(plan: &Plan, answers: &Answers) -> View {
    let hottest = vec![("outside", Figure::of(answers.hot_outside_c, Quantity::TemperatureC))];
    let heads = [key!("warmth-parked"), key!("warmth-hottest"), key!("warmth-hottest-at")];
    fragment()
        .put(answers.heater.as_ref().map(|heater| heating(plan, heater)))
        .put(answers.dry.map(|opening| line(opened("warmth-dry", "warmth-never-dry", &opening))))
        .put(answers.fresh.map(|opening| line(opened("warmth-fresh", "warmth-never-fresh", &opening))))
        .put(el("h3").put(key!("warmth-hot-day")))
        .put(line(tell!("warmth-hot-outside", &hottest)))
        .put(table(t!("warmth-hot-day"), true, &heads, answers.hot.iter().map(parked).collect()))
        .put(take_care(&[Caution::HeatInside]))
        .done()
}

fn line(text: String) -> View {
    el("p").put(text).done()
}

fn heating(plan: &Plan, heater: &Heater) -> View {
    let figures = vec![
        ("wanted", Figure::of(heater.wanted_c, Quantity::TemperatureC)),
        ("most", Figure::of(heater.most_w, Quantity::PowerW)),
        ("without", Figure::of(heater.without_c, Quantity::TemperatureC)),
        ("heat", Figure::of(heater.heat_wh, Quantity::EnergyWh)),
        ("hours", Figure::of(heater.hours as f64, Quantity::Hours)),
    ];
    if heater.most_w <= 0.0 {
        return line(tell!("warmth-no-heater", &figures));
    }
    let fuel = heater.fuel.iter().map(|burnt| line(fuel(plan, burnt)));
    fragment().put(line(tell!("warmth-heater", &figures))).put(all(fuel)).done()
}

fn fuel(plan: &Plan, burnt: &Burnt) -> String {
    let is_gas = burnt.fuel == BurnerFuel::Gas;
    let amount = Figure::of(burnt.amount, if is_gas { Quantity::MassKg } else { Quantity::VolumeL });
    let mut figures = vec![("name", Figure::Name(named_in(plan, burnt.item))), ("amount", amount)];
    match burnt.price {
        Some(price) => {
            figures.push(("price", Figure::Money(price)));
            tell!("warmth-fuel-price", &figures)
        }
        None => tell!("warmth-fuel", &figures),
    }
}

fn opened(does: &'static str, never: &'static str, opening: &Opening) -> String {
    let Some((air, open)) = opening.air_m3_h.zip(opening.open_cm2) else { return crate::locale::t(never) };
    let figures = vec![
        ("air", Figure::of(air, Quantity::AirM3H)),
        ("open", Figure::of(open, Quantity::OpeningCm2)),
        ("is", Figure::of(opening.is_open_cm2, Quantity::OpeningCm2)),
    ];
    crate::locale::tell(does, &figures)
}

fn parked(hot: &Hot) -> TableRow {
    let colour = match hot.colour {
        Colour::Light => key!("choice-colour-light"),
        Colour::Middling => key!("choice-colour-middling"),
        Colour::Dark => key!("choice-colour-dark"),
    };
    let mut ways = vec![plain_sentence(colour)];
    ways.extend(hot.in_shade.then(|| t!("warmth-in-shade")));
    ways.extend(hot.is_open.then(|| t!("warmth-all-open")));
    ways.extend(hot.fans.then(|| t!("warmth-fans-on")));
    ways.extend(hot.is_own.then(|| t!("warmth-as-it-is")));
    let inside = say_measure(hot.inside_c, Quantity::TemperatureC);
    TableRow(ways.join(", "), vec![inside, time(hot.hour)], None)
}
