//! Receipts from a file of another program: looked at first, then put in as one change.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::{Receipt, are_booked, book};
use kerbstead_core::papers::receipts::{
    DateOrder, MOST_BYTES, Meaning, Preview, Refused, Settings, preview, receipts_for,
};
use kerbstead_core::plan::Plan;
use kerbstead_core::words::Key;

use crate::browser;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{plain_sentence, say_date, say_money, words};
use crate::parts::{button, tick_box};
use crate::state::App;

/// What is being looked at.
#[derive(Clone, Copy)]
struct Desk {
    app: App,
    /// The file, if there is one.
    file: Signal<Option<Vec<u8>>>,
    /// What the person said about it.
    settings: Signal<Settings>,
    /// What was found in it.
    found: Memo<Option<Result<Preview, Refused>>>,
    /// Its receipts, and whether each seems to be in the plan already.
    receipts: Memo<Vec<(Receipt, bool)>>,
    /// The receipts of which the person said whether they are to be put in.
    answers: Signal<Vec<(usize, bool)>>,
    /// Whether they did not fit into the plan.
    is_too_much: Signal<bool>,
}

/// The choice of a file, and what is in it.
pub fn import() -> View {
    let desk = Desk::new();
    let pasted = Signal::new(String::new());
    let look = move || desk.look_at(pasted.with_untracked(|text| text.as_bytes().to_vec()));
    let file = el("input")
        .attr("type", "file")
        .attr("id", "receipts-file")
        .attr("accept", ".csv,.tsv,.txt,text/csv")
        .on_file(move |file| browser::read_bytes(&file, MOST_BYTES, Box::new(move |bytes| desk.look_at(bytes))));
    let paste = el("details")
        .put(el("summary").put(key!("receipts-paste")))
        .put(el("label").attr("for", "receipts-pasted").put(key!("receipts-pasted")))
        .put(el("textarea").attr("id", "receipts-pasted").attr("rows", 6).on_input(move |text| pasted.set(text)))
        .put(button(key!("receipts-look"), look));
    fragment()
        .put(
            el("div")
                .class("field wide")
                .put(el("label").attr("for", "receipts-file").put(key!("receipts-choose")))
                .put(file)
                .put(el("small").put(key!("receipts-choose-hint"))),
        )
        .put(paste)
        .put(live::when(move || desk.file.with(Option::is_some), move || looked_at(desk)))
        .done()
}

impl Desk {
    fn new() -> Self {
        let app = App::here();
        let file = Signal::new(None::<Vec<u8>>);
        let settings = Signal::new(Settings::default());
        let found = live::memo(move || {
            let currency = app.plan(|plan| plan.currency.clone());
            let settings = Settings { currency, ..settings.get() };
            file.with(|file| file.as_ref().map(|bytes| preview(bytes, &settings)))
        });
        let receipts = live::memo(move || {
            found.with(|found| match found {
                Some(Ok(found)) => app.plan(|plan| marked(plan, receipts_for(plan, &found.rows))),
                _ => Vec::new(),
            })
        });
        Self { app, file, settings, found, receipts, answers: Signal::default(), is_too_much: Signal::default() }
    }

    fn look_at(self, bytes: Vec<u8>) {
        self.say(|settings| *settings = Settings::default());
        self.file.set(Some(bytes));
        browser::focus_soon("receipts-found".to_owned());
    }

    /// Takes a correction; the receipts are other ones then.
    fn say(self, change: impl FnOnce(&mut Settings)) {
        self.answers.set(Vec::new());
        self.is_too_much.set(false);
        self.settings.update(change);
    }

    /// Whether a receipt is to be put in: all but those that are there already, unless the person says otherwise.
    fn is_wanted(self, at: usize) -> bool {
        let said = self.answers.with(|answers| answers.iter().find(|(of, _)| *of == at).map(|(_, said)| *said));
        said.unwrap_or_else(|| self.receipts.with(|all| all.get(at).is_some_and(|(_, is_there)| !is_there)))
    }

    fn wanted(self) -> Vec<Receipt> {
        let all = self.receipts.get().into_iter().enumerate();
        all.filter(|(at, _)| self.is_wanted(*at)).map(|(_, (receipt, _))| receipt).collect()
    }

    fn put_in(self) {
        let (app, wanted) = (self.app, self.wanted());
        match app.plan(|plan| book(plan, &wanted)) {
            Some(edit) => {
                let text = tell!("receipts-put-in-done", &vec![("count", Figure::count(wanted.len()))]);
                app.edit_and_tell(edit, text);
                self.file.set(None);
            }
            None => self.is_too_much.set(true),
        }
    }
}

fn marked(plan: &Plan, receipts: Vec<Receipt>) -> Vec<(Receipt, bool)> {
    let booked = are_booked(plan, &receipts);
    receipts.into_iter().zip(booked).collect()
}

fn looked_at(desk: Desk) -> View {
    el("div")
        .attr("role", "group")
        .attr("aria-labelledby", "receipts-found")
        .put(el("h3").attr("id", "receipts-found").attr("tabindex", "-1").put(key!("receipts-found")))
        .put(live::view(move || {
            desk.found.with(|found| match found {
                Some(Ok(found)) => settings(desk, found),
                Some(Err(refused)) => wrong(words(|words| words.refused(*refused))),
                None => nothing(),
            })
        }))
        .put(receipts(desk))
        .put(live::view(move || {
            desk.found.with(|found| found.as_ref().and_then(|found| found.as_ref().ok()).map_or_else(nothing, kept))
        }))
        .put(live::when(move || desk.is_too_much.get(), || wrong(t!("receipts-too-much"))))
        .put(
            el("div")
                .class("buttons")
                .put(
                    el("button")
                        .attr("type", "button")
                        .class("primary")
                        .live_flag("disabled", move || desk.wanted().is_empty())
                        .on_click(move || desk.put_in())
                        .put(live::text(move || {
                            tell!("receipts-put-in", &vec![("count", Figure::count(desk.wanted().len()))])
                        })),
                )
                .put(button(key!("restore-cancel"), move || desk.file.set(None)).class("quiet")),
        )
        .done()
}

fn wrong(text: String) -> View {
    el("p").class("wrong").attr("role", "alert").put(text).done()
}

const DELIMITERS: [(char, Key); 4] = [
    (',', key!("receipts-comma")),
    (';', key!("receipts-semicolon")),
    ('\t', key!("receipts-tab")),
    ('|', key!("receipts-bar")),
];
const DECIMALS: [(char, Key); 2] = [('.', key!("receipts-point")), (',', key!("receipts-comma"))];
const ORDERS: [(DateOrder, Key); 2] =
    [(DateOrder::DayFirst, key!("receipts-day-first")), (DateOrder::MonthFirst, key!("receipts-month-first"))];

/// What was found out about the file: all of it can be said otherwise.
fn settings(desk: Desk, found: &Preview) -> View {
    let asks = found.asks.iter().map(|ask| wrong(words(|words| words.ask(ask))));
    let asks = fragment().put_each(asks).done();
    let of = |known: &[Key], at: Option<usize>| {
        let open = at.is_none().then(|| (t!("receipts-say"), true));
        let known = known.iter().enumerate().map(|(number, key)| (plain_sentence(*key), at == Some(number)));
        open.into_iter().chain(known).collect::<Vec<_>>()
    };
    let delimiter = DELIMITERS.iter().position(|(delimiter, _)| *delimiter == found.delimiter);
    let decimal = DECIMALS.iter().position(|(decimal, _)| Some(*decimal) == found.decimal);
    let order = ORDERS.iter().position(|(order, _)| Some(*order) == found.order);
    let put_delimiter = move |at: usize| {
        desk.say(|settings| {
            let delimiter = DELIMITERS.get(at).map(|(delimiter, _)| *delimiter);
            *settings = Settings { delimiter, ..Settings::default() };
        });
    };
    let put_decimal = move |at: usize| desk.say(|it| it.decimal = DECIMALS.get(at).map(|(decimal, _)| *decimal));
    let put_order = move |at: usize| desk.say(|it| it.order = ORDERS.get(at).map(|(order, _)| *order));
    let is_negative = found.paid_is_negative;
    let put_negative = move |is_so| desk.say(|settings| settings.paid_is_negative = Some(is_so));
    let select =
        |id: &str, label: Key, options, put: Box<dyn Fn(usize)>| choice(id, plain_sentence(label), options, put);
    fragment()
        .put(asks)
        .put(
            el("div")
                .class("filters")
                .put(select(
                    "receipts-delimiter",
                    key!("receipts-delimiter"),
                    of(&DELIMITERS.map(|(_, key)| key), delimiter),
                    Box::new(put_delimiter),
                ))
                .put(select(
                    "receipts-decimal",
                    key!("receipts-decimal"),
                    of(&DECIMALS.map(|(_, key)| key), decimal),
                    Box::new(put_decimal),
                ))
                .put(select(
                    "receipts-order",
                    key!("receipts-order"),
                    of(&ORDERS.map(|(_, key)| key), order),
                    Box::new(put_order),
                ))
                .put_each(columns(desk, found)),
        )
        .put(tick_box("receipts-negative".to_owned(), t!("receipts-negative"), move || is_negative, put_negative))
        .done()
}

/// What each column is taken for. What another is taken for now, it is taken for no longer.
fn columns(desk: Desk, found: &Preview) -> Vec<View> {
    let taken: Vec<Meaning> = found.columns.iter().map(|column| column.taken_for).collect();
    let column = |(at, column): (usize, &kerbstead_core::papers::receipts::Column)| {
        let heading = if column.heading.is_empty() { format!("#{}", at + 1) } else { column.heading.clone() };
        let label = tell!("receipts-column", &vec![("column", Figure::Name(heading))]);
        let options = Meaning::ALL.iter().map(|it| (words(|words| words.meaning(*it)), *it == column.taken_for));
        let taken = taken.clone();
        let put = move |meaning: usize| {
            let meaning = Meaning::ALL.get(meaning).copied().unwrap_or(Meaning::Nothing);
            let mut taken: Vec<Meaning> =
                taken.iter().map(|it| if *it == meaning { Meaning::Nothing } else { *it }).collect();
            if let Some(column) = taken.get_mut(at) {
                *column = meaning;
            }
            desk.say(|settings| settings.columns = Some(taken));
        };
        choice(&format!("receipts-column-{at}"), label, options.collect(), Box::new(put))
    };
    found.columns.iter().enumerate().map(column).collect()
}

/// A selection list; what is chosen goes by its position among those that can be chosen.
fn choice(id: &str, label: String, options: Vec<(String, bool)>, put: Box<dyn Fn(usize)>) -> View {
    let is_open = options.first().is_some_and(|(text, _)| *text == t!("receipts-say"));
    let options = options.into_iter().enumerate().map(|(at, (text, is_chosen))| {
        // What is still to be said is no choice.
        let value = if is_open { at.checked_sub(1) } else { Some(at) };
        let value = value.map_or_else(String::new, |at| at.to_string());
        el("option").attr("value", value).flag("selected", is_chosen).put(text).done()
    });
    let set = move |value: String| {
        if let Ok(at) = value.parse() {
            put(at);
        }
    };
    el("div")
        .class("field")
        .put(el("label").attr("for", id).put(label))
        .put(el("select").attr("id", id).on_change(set).put_each(options))
        .done()
}

/// So many receipts are shown at first, and so many more each time; all of them are put in.
const SHOWN: usize = 30;

/// The receipts that were read, each with a box to tick.
fn receipts(desk: Desk) -> View {
    let shown = Signal::new(SHOWN);
    let lines = move || {
        let first = shown.get();
        desk.receipts
            .with(|all_of_them| all(all_of_them.iter().take(first).enumerate().map(|(at, of)| receipt(desk, at, of))))
    };
    let are_more = move || desk.receipts.with(Vec::len) > shown.get();
    let more = move || button(key!("receipts-more"), move || shown.set(shown.get_untracked() + SHOWN)).done();
    fragment().put(el("ul").class("entries").put(live::view(lines))).put(live::when(are_more, more)).done()
}

fn receipt(desk: Desk, at: usize, (receipt, is_there): &(Receipt, bool)) -> View {
    let id = format!("receipts-take-{at}");
    let set = move |is_wanted: bool| {
        desk.answers.update(|answers| {
            answers.retain(|(of, _)| *of != at);
            answers.push((at, is_wanted));
        });
    };
    let date = receipt.on.map(say_date);
    let place = Some(receipt.place.clone());
    let names = receipt.lines.iter().map(|line| Some(line.name.clone()));
    let parts = [date, place].into_iter().chain(names).flatten().filter(|part| !part.is_empty());
    let mut text = parts.chain([say_money(receipt.paid())]).collect::<Vec<_>>().join(" · ");
    if *is_there {
        text += " – ";
        text += &t!("receipts-there");
    }
    el("li").put(tick_box(id, text, move || desk.is_wanted(at), set)).done()
}

/// So many rows that were not read are shown; the file has all of them.
const KEPT_SHOWN: usize = 20;

/// What was not read, row by row, with the reason and a way to keep it.
fn kept(found: &Preview) -> View {
    if found.kept.is_empty() {
        return nothing();
    }
    let row = |kept: &kerbstead_core::papers::receipts::Kept| {
        let reason = words(|words| words.reason(&kept.reason, &found.columns));
        let line = vec![("line", Figure::Name(kept.line.to_string())), ("reason", Figure::Name(reason))];
        el("li").put(el("p").put(tell!("receipts-row", &line))).put(el("code").put(kept.text.as_str())).done()
    };
    let text = found.kept_text();
    let save = move || browser::save_file("kerbstead-not-read.csv", &text);
    el("div")
        .class("warning")
        .put(el("p").put(tell!("receipts-kept", &vec![("count", Figure::count(found.kept.len()))])))
        .put(el("ul").put_each(found.kept.iter().take(KEPT_SHOWN).map(row)))
        .put(button(key!("receipts-save-kept"), save))
        .done()
}
