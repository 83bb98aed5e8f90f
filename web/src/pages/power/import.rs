//! A typical year from a file of an open format, reduced to twelve mean days.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, List, Plain, Plan, Year};
use kerbstead_core::sun::typical::{self, TypicalYear};

use crate::browser;
use crate::el::{View, el, fragment};
use crate::live::{self, Signal};
use crate::locale::words;
use crate::state::App;

/// No file is longer, in bytes: a leap year in steps of five minutes, with all its columns.
const MOST_BYTES: usize = 60_000_000;

/// The choice of a file.
pub fn import() -> View {
    let app = App::here();
    let wrong = Signal::new(String::new());
    let read = move |name: &str, bytes: &[u8]| match typical::read(&String::from_utf8_lossy(bytes)) {
        Ok(year) => {
            wrong.set(String::new());
            put_in(app, name, &year);
        }
        Err(unreadable) => wrong.set(words(|words| words.unreadable_year(&unreadable))),
    };
    let file = el("input")
        .attr("type", "file")
        .attr("id", "year-file")
        .attr("accept", ".epw,.csv,.tm3,text/csv,text/plain")
        .attr("aria-describedby", "year-message")
        .on_file(move |file| {
            let name = file.name();
            browser::read_bytes(&file, MOST_BYTES, Box::new(move |bytes: Vec<u8>| read(&name, &bytes)));
        });
    fragment()
        .put(
            el("div")
                .class("field wide")
                .put(el("label").attr("for", "year-file").put(key!("sky-choose")))
                .put(file)
                .put(el("small").put(key!("sky-choose-hint"))),
        )
        .put(
            el("p")
                .class("wrong")
                .attr("id", "year-message")
                .attr("aria-live", "polite")
                .put(live::text(move || wrong.get())),
        )
        .done()
}

/// Puts a year into the plan, which takes its sky from it unless it already says one.
fn put_in(app: App, file: &str, read: &TypicalYear) {
    let id = app.plan(Plan::next_id);
    let name: String = file.chars().take(120).collect();
    let year = Year {
        id,
        name: name.clone(),
        latitude_deg: read.place.latitude_deg,
        longitude_deg: read.place.longitude_deg,
        altitude_m: read.place.altitude_m,
        clock_ahead_h: read.utc_offset_h,
        mean_days: read.to_text(),
    };
    let mut edits = vec![Edit::Insert { list: List::Years, at: usize::MAX, entry: year.to_plain() }];
    let is_free = app.plan(|plan| plan.climate.year.is_none());
    edits.extend(is_free.then(|| Edit::set("climate/year", id)));
    let is_nowhere = app.plan(|plan| plan.climate.latitude_deg.is_none());
    if is_nowhere {
        edits.push(Edit::set("climate/latitude_deg", year.latitude_deg));
        edits.push(Edit::set("climate/longitude_deg", year.longitude_deg));
        edits.push(Edit::set("climate/altitude_m", year.altitude_m));
        edits.push(Edit::set("climate/clock_ahead_h", year.clock_ahead_h));
    }
    app.edit_and_tell(Edit::All { edits }, tell!("sky-year-in", &vec![("name", Figure::Name(name))]));
}
