//! Ways of having a toilet beside one another, and what a plan without one relies on.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Quantity, ToiletWay};
use kerbstead_core::water::{ToiletOption, Toilets};

use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::say_figure;
use crate::parts::{TableRow, named_in, table};
use crate::route::Page;
use crate::state::App;

/// The answer.
pub fn toilets() -> View {
    let app = App::here();
    let told = live::memo(move || {
        app.settled_assessment(|assessment| {
            let people = app.desk.plan.with_untracked(|plan| plan.people);
            (assessment.water.toilets.clone(), people)
        })
    });
    let shown = move || {
        told.with(|(toilets, people)| {
            let heads = [key!("toilet-way"), key!("toilet-lasts"), key!("toilet-month")];
            let rows = toilets.ways.iter().map(|way| row(app, way, *people)).collect();
            fragment().put(el("p").put(relied_on(toilets))).put(table(t!("water-toilets"), true, &heads, rows)).done()
        })
    };
    fragment()
        .put(live::view(shown))
        .put(el("p").put(key!("toilet-hint")))
        .put(el("p").put(el("a").attr("href", Page::Kit.link()).put(key!("toilet-add"))))
        .done()
}

fn row(app: App, option: &ToiletOption, people: u32) -> TableRow {
    let kind = match option.way {
        Some(ToiletWay::Portable) => t!("toilet-portable"),
        Some(ToiletWay::Dry) => t!("toilet-dry"),
        Some(ToiletWay::Bags) => t!("toilet-bags"),
        None => t!("toilet-public"),
    };
    let name = option.item.map(|id| app.desk.plan.with_untracked(|plan| named_in(plan, id)));
    let name = name.map_or(kind.clone(), |name| [name, kind].join(", "));
    let lasts = option.person_days.map_or_else(
        || t!("toilet-never-full"),
        |person_days| {
            let of = |days: f64| Figure::of(days / f64::from(people.max(1)), Quantity::Days);
            let figures = vec![
                ("low", of(person_days.low())),
                ("likely", of(person_days.likely())),
                ("high", of(person_days.high())),
            ];
            tell!("toilet-days", &figures)
        },
    );
    let cost = option.cost_a_month.map_or_else(
        || t!("no-amount"),
        |cost| {
            let figure = Figure::Money(cost);
            if option.way.is_some() { say_figure(&figure) } else { tell!("toilet-up-to", &vec![("cost", figure)]) }
        },
    );
    TableRow(name, vec![lasts, cost], None)
}

fn relied_on(toilets: &Toilets) -> String {
    if toilets.days == 0 {
        return t!("toilet-no-road");
    }
    let days = |count: usize| Figure::of(count as f64, Quantity::Days);
    let mut figures = vec![("days", days(toilets.days)), ("public", days(toilets.public_days))];
    let Some(without) = toilets.without else { return tell!("toilet-always", &figures) };
    figures.extend([
        ("row", days(without.days)),
        ("from", Figure::Date(without.from)),
        ("hours", Figure::of(without.hours as f64, Quantity::Hours)),
    ]);
    tell!("toilet-without", &figures)
}
