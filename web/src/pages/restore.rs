//! A file brought back: what it would change, and what the person chooses of it.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::Fit;

use crate::el::{View, all, el, fragment, nothing};
use crate::live;
use crate::locale::t;
use crate::parts::{button, named, tick_box};
use crate::state::{App, Choice, Restoring};

/// The choice of a file, and what is in it.
pub fn restore() -> View {
    let app = App::here();
    let input = el("input")
        .attr("type", "file")
        .attr("id", "restore-file")
        .attr("accept", ".json,application/json")
        .on_file(move |file| app.open_file(&file));
    fragment()
        .put(
            el("div")
                .class("field wide")
                .put(el("label").attr("for", "restore-file").put(key!("restore-choose")))
                .put(input)
                .put(el("small").put(key!("restore-hint"))),
        )
        .put(live::view(move || app.desk.restoring.with(|restoring| restoring.as_ref().map_or_else(nothing, preview))))
        .done()
}

fn preview(restoring: &Restoring) -> View {
    let app = App::here();
    let plans = restoring.backup.plans.iter().zip(&restoring.plans).enumerate();
    let rows = plans.map(|(at, (saved, (fit, choice)))| row(at, saved.title(), *fit, *choice));
    let unreadable = restoring.backup.unreadable;
    let figure = Figure::count(unreadable);
    el("div")
        .attr("role", "group")
        .attr("aria-label", t!("restore-preview"))
        .put(el("h3").attr("id", "restore-preview").attr("tabindex", "-1").put(key!("restore-preview")))
        .put(
            (unreadable > 0)
                .then(|| el("p").class("warning").put(tell!("restore-unreadable", &vec![("count", figure)])).done()),
        )
        .put(el("ul").class("shelf").put(all(rows)))
        .put(restoring.backup.settings.as_ref().map(|_| settings(restoring.with_settings)))
        .put(
            el("div")
                .class("buttons")
                .put(button(key!("restore-do"), move || app.restore()))
                .put(button(key!("restore-cancel"), move || app.desk.restoring.set(None)).class("quiet")),
        )
        .done()
}

fn row(at: usize, title: &str, fit: Fit, choice: Choice) -> View {
    let app = App::here();
    let title = named(title.to_owned());
    let (says, slot) = match fit {
        Fit::New => (t!("restore-new"), None),
        Fit::Same => (t!("restore-same"), None),
        Fit::Changed { slot, count } => (tell!("restore-changed", &vec![("count", Figure::count(count))]), Some(slot)),
    };
    let choices = [
        Some(("restore-beside", Choice::Beside)),
        slot.map(|slot| ("restore-replace", Choice::Replace(slot))),
        Some(("restore-leave", Choice::Leave)),
    ];
    let options = choices
        .iter()
        .flatten()
        .map(|(key, option)| el("option").attr("value", *key).flag("selected", *option == choice).put(t(key)).done());
    let set = move |key: String| {
        let chosen =
            choices.iter().flatten().find(|(known, _)| *known == key).map_or(Choice::Leave, |(_, choice)| *choice);
        app.desk.restoring.update(|restoring| {
            if let Some((_, choice)) = restoring.as_mut().and_then(|restoring| restoring.plans.get_mut(at)) {
                *choice = chosen;
            }
        });
    };
    let id = format!("restore-{at}");
    el("li")
        .put(el("label").class("name").attr("for", id.clone()).put(title))
        .put(el("small").put(says))
        .put(el("select").attr("id", id).on_change(set).put_each(options))
        .done()
}

fn settings(with_settings: bool) -> View {
    let app = App::here();
    let set = move |is_on: bool| {
        app.desk
            .restoring
            .update(|restoring| restoring.iter_mut().for_each(|restoring| restoring.with_settings = is_on));
    };
    tick_box("restore-settings".to_owned(), t!("restore-settings"), move || with_settings, set)
}
