//! What the parts of the page share: what is typed, what is read of it, and what can be done with it.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::{Drafts, PastAnswer, Slip};
use kerbstead_core::plan::{Field, Group, Path, Plain, field as table, value_in};
use kerbstead_core::shop::{Finding, ITEM_FIELDS, Offer, OfferRead, Report, Taking, read_offer, report, take};
use kerbstead_core::{Balance, Say, Severity, Verdict};
use serde_json::Value;

use super::super::money::group_key;
use crate::browser;
use crate::live::{self, Memo, Signal};
use crate::locale::{self, say_money, t, tell, words};
use crate::parts::{field_text, scale};
use crate::state::{App, WayBack};

/// The fields that are gone through with one key, in their order.
const IN_ORDER: [&str; 7] = ["unit_price", "quantity", "pack", "other_price", "other_pack", "tax_percent", "name"];

/// The most answers that are kept.
const MOST_PAST: usize = 50;

/// A handle to all of it.
#[derive(Clone, Copy)]
pub struct Counter {
    /// The app.
    app: App,
    /// What is typed, in words.
    pub said: Memo<Said>,
    /// The field that the keys write in.
    pub current: Signal<&'static str>,
    /// What was cleared last, to bring it back.
    cleared: Signal<Option<(&'static str, String)>>,
}

/// What is typed and what it comes to, in words.
#[derive(Debug, Default, PartialEq)]
pub struct Said {
    /// What could not be read, by its field.
    pub wrong: Vec<(&'static str, String)>,
    /// What it comes to, once there is a price.
    pub answer: Option<Answer>,
}

/// What a thing comes to, in words.
#[derive(Debug, PartialEq)]
pub struct Answer {
    /// The price at the till.
    pub price: String,
    /// The days on the road that it would pay for.
    pub days: String,
    /// Verdicts that it changes.
    pub changes: Vec<(Balance, Verdict, Verdict)>,
    /// Everything else, and whether it is bad.
    pub lines: Vec<(String, bool)>,
    /// How that was worked out.
    pub working: Vec<String>,
    /// What counts in each field, also where nothing is typed.
    pub counts: Vec<String>,
    /// Its heading.
    pub group: Group,
    /// All of it as one line.
    line: String,
}

impl Counter {
    pub fn new() -> Self {
        let app = App::here();
        let said = live::memo(move || said(app));
        Self { app, said, current: Signal::new(IN_ORDER[0]), cleared: Signal::new(None) }
    }

    /// What is typed in a field; the caller runs again when it changes.
    pub fn text(self, name: &str) -> String {
        self.app.desk.slip.with(|slip| slip.texts.get(&Path::from(name)).cloned().unwrap_or_default())
    }

    /// Keeps what is typed in a field.
    pub fn write(self, name: &str, text: String) {
        self.app.write_slip(|slip| slip.texts.insert(Path::from(name), text));
    }

    /// Goes on to the next field.
    pub fn next(self) {
        let current = self.current.get_untracked();
        let at = IN_ORDER.iter().position(|name| *name == current).map_or(0, |at| (at + 1) % IN_ORDER.len());
        self.current.set(IN_ORDER[at]);
        browser::focus_soon(input_id(IN_ORDER[at]));
    }

    /// Whether there is something that was cleared from the current field, which is empty.
    pub fn can_bring_back(self) -> bool {
        let current = self.current.get();
        self.text(current).is_empty()
            && self.cleared.with(|cleared| cleared.as_ref().is_some_and(|(name, _)| *name == current))
    }

    /// Clears the current field, or brings back what was cleared from it.
    pub fn clear_or_bring_back(self) {
        let current = self.current.get_untracked();
        if self.can_bring_back() {
            let cleared = self.cleared.get_untracked().map(|(_, text)| text);
            self.write(current, cleared.unwrap_or_default());
        } else {
            self.cleared.set(Some((current, self.text(current))));
            self.write(current, String::new());
        }
    }

    /// Puts the thing into the plan, and its answer to the others.
    pub fn take(self, taking: Taking) {
        let Some(mut offer) = read(self.app).offer else { return };
        offer.item.name = named(&offer);
        let edit = self.app.plan(|plan| take(plan, browser::today(), &offer, taking));
        let key = if taking == Taking::Paid { "shop-taken-paid" } else { "shop-taken-planned" };
        let text = tell(key, &vec![("name", Figure::Name(offer.item.name.clone()))]);
        self.put_away();
        self.app.edit_and_tell(edit, text);
    }

    /// Puts what is typed and its answer to the others, and begins anew.
    pub fn put_away(self) {
        let line = self.line();
        self.app.write_slip(|slip| {
            let texts = std::mem::take(&mut slip.texts);
            put_to_past(slip, 0, line, texts);
        });
        // What was pressed may be of no use now, and the next thing begins with its price.
        self.current.set(IN_ORDER[0]);
        browser::focus_soon(input_id(IN_ORDER[0]));
    }

    /// Takes up a thing of before again; what is typed now takes its place.
    pub fn take_up(self, at: usize) {
        let line = self.line();
        self.app.write_slip(|slip| {
            if at < slip.past.len() {
                let past = slip.past.remove(at);
                let texts = std::mem::replace(&mut slip.texts, past.texts);
                put_to_past(slip, at, line, texts);
            }
        });
        browser::focus_soon(input_id(IN_ORDER[0]));
    }

    /// The answers of before, in a line each; the newest first.
    pub fn past(self) -> Vec<String> {
        self.app.desk.slip.with(|slip| slip.past.iter().map(|past| past.line.clone()).collect())
    }

    /// Forgets them, with a way back.
    pub fn forget_past(self) {
        let before = self.app.desk.slip.get_untracked();
        self.app.write_slip(|slip| slip.past.clear());
        self.app.tell(t!("shop-past-cleared"), WayBack::Slip(Box::new(before)));
    }

    /// What is typed, as a line: what it came to, or the bare texts where it came to nothing.
    fn line(self) -> String {
        let answered = self.said.with(|said| said.answer.as_ref().map(|answer| answer.line.clone()));
        let typed = || self.app.desk.slip.with_untracked(|slip| slip.texts.all().collect::<Vec<_>>().join(" · "));
        answered.unwrap_or_else(typed)
    }
}

fn read(app: App) -> OfferRead {
    app.desk.slip.with(|slip| {
        let text = |name: &str| slip.texts.get(&Path::from(name)).cloned().unwrap_or_default();
        app.plan(|plan| read_offer(plan, &text, locale::number_marks(), &scale))
    })
}

fn said(app: App) -> Said {
    let OfferRead { offer, wrong } = read(app);
    let wrong = wrong.into_iter().map(|(name, wrong)| (name, words(|words| words.wrong(&wrong)))).collect();
    let answer = offer.map(|offer| {
        let report = app.plan(|plan| app.assessment(|before| report(plan, before, &offer)));
        answer(&offer, &report)
    });
    Said { wrong, answer }
}

fn answer(offer: &Offer, report: &Report) -> Answer {
    let price = say_money(report.price.total);
    let (mut days, mut lines) = (String::new(), Vec::new());
    for finding in &report.findings {
        let line = words(|words| words.say(finding));
        match finding {
            Finding::RoadDays { .. } => days = line,
            Finding::Group { .. } => {
                lines.push((format!("{} “{}”: {line}", t!("field-group"), t(group_key(offer.item.group))), false));
            }
            _ => lines.push((line, finding.severity() == Severity::Short)),
        }
    }
    let item = offer.item.to_plain();
    let line = format!("{}: {price}{}{days}", named(offer), if days.is_empty() { "" } else { ", " });
    Answer {
        price,
        days,
        changes: report.verdicts.clone(),
        lines,
        working: report.working.iter().map(|working| words(|words| words.working(working))).collect(),
        counts: ITEM_FIELDS.iter().map(|name| counted(&item, name)).collect(),
        group: offer.item.group,
        line,
    }
}

/// A value of the thing as it would be typed.
fn counted(item: &Value, name: &str) -> String {
    let value = value_in(item, name).cloned().unwrap_or_default();
    item_field(name).map_or_else(String::new, |field| field_text(field, value))
}

/// The field that an item of the kit has too.
pub fn item_field(name: &str) -> Option<&'static Field> {
    table::at(&Path::entry("kit", 1).child(name))
}

fn named(offer: &Offer) -> String {
    let name = offer.item.name.trim();
    if name.is_empty() { t!("shop-no-name") } else { name.to_owned() }
}

/// Nothing is put there where nothing was typed.
fn put_to_past(slip: &mut Slip, at: usize, line: String, texts: Drafts) {
    if texts.all().all(|text| text.trim().is_empty()) {
        return;
    }
    slip.past.insert(at.min(slip.past.len()), PastAnswer { line, texts });
    slip.past.truncate(MOST_PAST);
}

/// The id of the input of a field.
pub fn input_id(name: &str) -> String {
    format!("shop-{}", name.replace(['/', '_'], "-"))
}
