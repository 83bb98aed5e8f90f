//! Hours of work that lack something, by cause and place and by day, and their pay.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::Quantity;
use kerbstead_core::signal::hours::Cause;
use kerbstead_core::signal::{AtRisk, OfCause, OfDay, OfPlace};
use kerbstead_core::words::Key;

use super::places::place_name;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{plain_sentence, say_date, say_figure};
use crate::parts::{TableRow, folded_table, table};
use crate::state::App;

/// What is known of it.
pub fn at_risk(app: App) -> View {
    live::view(move || {
        app.settled_assessment(|assessment| match &assessment.signal.work {
            None => el("p").put(key!("signal-no-work")).done(),
            Some(work) => told(app, work),
        })
    })
}

fn told(app: App, work: &AtRisk) -> View {
    let figures = vec![
        ("sure", hours(work.sure_hours)),
        ("wanted", hours(work.wanted_hours)),
        ("certain", Figure::Money(work.certain)),
        ("unknown", Figure::Money(work.unknown)),
    ];
    let warmth = if work.is_warmth_known { key!("signal-warmth-known") } else { key!("signal-warmth-unknown") };
    fragment()
        .put(el("p").put(tell!("signal-hours-sum", &figures)))
        .put((!work.causes.is_empty()).then(|| by_cause(app, work)))
        .put(by_day(work))
        .put(el("p").put(el("small").put(warmth)))
        .done()
}

/// All of it by cause, and then each place.
fn by_cause(app: App, work: &AtRisk) -> View {
    let row = |place: &str, of: &OfCause| {
        TableRow(
            cause(of.cause),
            vec![place.to_owned(), say_figure(&hours(of.hours)), say_figure(&Figure::Money(of.pay))],
            None,
        )
    };
    let everywhere = t!("signal-everywhere");
    let mut rows: Vec<TableRow> = work.causes.iter().map(|of| row(&everywhere, of)).collect();
    for OfPlace { place, causes, .. } in &work.places {
        let name = app.plan(|plan| place_name(plan, *place));
        rows.extend(causes.iter().map(|of| row(&name, of)));
    }
    let heads = [key!("signal-cause"), key!("signal-place"), key!("signal-hours"), key!("signal-pay")];
    table(t!("signal-at-risk"), true, &heads, rows)
}

fn by_day(work: &AtRisk) -> View {
    let row = |day: &OfDay| {
        let cells =
            [hours(day.lost_hours), Figure::Money(day.certain), hours(day.unknown_hours), Figure::Money(day.unknown)];
        TableRow(say_date(day.on), cells.iter().map(say_figure).collect(), None)
    };
    let heads = [
        key!("signal-day"),
        key!("signal-lost-hours"),
        key!("signal-lost-pay"),
        key!("signal-unknown-hours"),
        key!("signal-unknown-pay"),
    ];
    folded_table(t!("signal-by-day"), &heads, work.days.iter().map(row).collect())
}

fn cause(cause: Cause) -> String {
    let key: Key = match cause {
        Cause::NoSignal => key!("signal-cause-no-signal"),
        Cause::WeakSignal => key!("signal-cause-weak"),
        Cause::NoPower => key!("signal-cause-no-power"),
        Cause::Unbearable => key!("signal-cause-unbearable"),
        Cause::Unknown => key!("signal-cause-unknown"),
    };
    plain_sentence(key)
}

fn hours(hours: f64) -> Figure {
    Figure::of(hours, Quantity::Hours)
}
