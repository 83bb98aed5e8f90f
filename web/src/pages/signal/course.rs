//! Data by day, and what is left of the allowances in the evening.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::Quantity;
use kerbstead_core::signal::{DataDay, Report};

use crate::el::{View, el, fragment};
use crate::live;
use crate::parts::PlotData;
use crate::state::App;

/// Both drawings, and the month in which most is used.
pub fn courses(app: App) -> View {
    let month = move || {
        app.assessment(|assessment| {
            let month = assessment.signal.busiest?;
            let [low, likely, high] = month.gb;
            let gb = |value: f64| Figure::of(value, Quantity::DataGb);
            let figures =
                vec![("from", Figure::Date(month.from)), ("low", gb(low)), ("likely", gb(likely)), ("high", gb(high))];
            Some(tell!("signal-busiest", &figures))
        })
        .unwrap_or_default()
    };
    fragment()
        .put(plot(app, "signal-left-plot", true, |day| day.left_gb))
        .put(plot(app, "signal-day-plot", false, |day| Some(day.likely_gb)))
        .put(el("p").put(live::text(month)))
        .done()
}

fn plot(app: App, title: &'static str, low_matters: bool, of_day: fn(&DataDay) -> Option<f64>) -> View {
    let data = live::memo(move || {
        app.settled_assessment(|assessment| {
            let report = &assessment.signal;
            let values: Vec<f64> = report.days.iter().filter_map(of_day).collect();
            let from = report.days.first().map_or(assessment.starts_on, |day| day.on);
            // Of data without end there is nothing to draw.
            (!values.is_empty() && values.len() == report.days.len()).then(|| PlotData {
                quantity: Some(Quantity::DataGb),
                ceiling: low_matters.then(|| largest(report)),
                low_matters,
                ..PlotData::by_day(title, from, assessment.as_of, values)
            })
        })
    });
    crate::parts::plot(data)
}

/// The largest allowance of a period.
fn largest(report: &Report) -> f64 {
    report.periods.iter().filter_map(|period| period.allowance_gb).fold(0.0, f64::max)
}
