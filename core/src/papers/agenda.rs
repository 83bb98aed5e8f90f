//! The plan's days as a calendar file, by RFC 5545.

use jiff::civil::Date;

use crate::explain::{Figure, Figures};
use crate::money::FlowGroup;
use crate::plan::civil::day_after;
use crate::plan::{Id, Mode, Offer, Plan, date_text};
use crate::run::Timeline;
use crate::words::{Format, Words};
use crate::{Assessment, money};

/// The longest line in bytes, without its end. Source: RFC 5545, section 3.1.
const LINE_BYTES: usize = 75;

/// What there is to do, as events of whole days: purchases to pay, things to sell, stops to charge and to fill up at.
/// What is done already is left out. `as_of` is the day the file says it was made on.
///
/// The same plan gives events of the same identity, so that a calendar that takes the file again changes them instead
/// of adding them twice.
pub fn agenda<F: Format>(plan: &Plan, assessment: &Assessment, as_of: Date, words: &Words<F>) -> String {
    let mut file = File { text: String::new(), made_on: compact(as_of) };
    file.line("BEGIN:VCALENDAR");
    file.line("VERSION:2.0");
    file.line("PRODID:-//Kerbstead//Kerbstead//EN");
    for flow in &assessment.money.flows {
        flow_event(&mut file, plan, flow, words);
    }
    for stop in stops(plan, as_of) {
        let place = stop.place.map_or_else(|| words.text("agenda-on-the-way"), str::to_owned);
        let figures: Figures = vec![("place", Figure::Name(place))];
        let summary = words.with(stop.key, &figures);
        file.event(&Event {
            identity: stop_identity(plan, &stop),
            from: stop.from,
            until: stop.until,
            summary: &summary,
        });
    }
    file.line("END:VCALENDAR");
    file.text
}

fn flow_event<F: Format>(file: &mut File, plan: &Plan, flow: &money::Flow, words: &Words<F>) {
    let key = match flow.group {
        FlowGroup::Kit(_) if flow.amount.is_negative() => "agenda-pay",
        FlowGroup::Sales => "agenda-sell",
        _ => return,
    };
    if flow.state == money::FlowState::Confirmed {
        return;
    }
    let amount = if flow.amount.is_negative() { -flow.amount } else { flow.amount };
    let figures: Figures = vec![
        ("name", Figure::Name(plan.name_of(flow.source).unwrap_or_default().to_owned())),
        ("amount", Figure::Money(amount)),
    ];
    let summary = words.with(key, &figures);
    let identity = format!("{key}-{}", flow.source);
    let event = Event { identity, from: flow.on, until: day_after(flow.on), summary: &summary };
    file.event(&event);
}

/// Days in a row at one place that offers something.
struct Stop<'a> {
    key: &'static str,
    source: Id,
    /// Its name, where it is a stay that has one.
    place: Option<&'a str>,
    from: Date,
    until: Date,
}

/// Whether a place offers something.
type Offers = fn(&Offer) -> bool;

/// The stops still ahead, with mains or with water, each as one event from its first day to its last.
fn stops(plan: &Plan, as_of: Date) -> Vec<Stop<'_>> {
    let timeline = Timeline::new(plan, as_of);
    let mut stops: Vec<Stop> = Vec::new();
    let offered: [(&'static str, Offers); 2] = [("agenda-charge", has_mains), ("agenda-refill", |offer| offer.water)];
    for (key, offers) in offered {
        for day in timeline.road().filter(|day| day.date >= as_of && day.offer.is_some_and(offers)) {
            let Some(source) = day.source else { continue };
            match stops.last_mut() {
                Some(last) if last.key == key && last.source == source && last.until == day.date => {
                    last.until = day_after(day.date);
                }
                _ => stops.push(Stop {
                    key,
                    source,
                    place: place_of(plan, source),
                    from: day.date,
                    until: day_after(day.date),
                }),
            }
        }
    }
    stops
}

fn has_mains(offer: &Offer) -> bool {
    offer.mains_hours.is_some_and(|hours| hours.likely() > 0.0)
}

/// A stay is one stop, whenever it is; a day of the week is one again every week.
fn stop_identity(plan: &Plan, stop: &Stop) -> String {
    let stay = format!("{}-{}", stop.key, stop.source);
    if plan.calendar.mode == Mode::Stays { stay } else { format!("{stay}-{}", compact(stop.from)) }
}

fn place_of(plan: &Plan, source: Id) -> Option<&str> {
    let stay = plan.stays.iter().find(|stay| stay.id == source)?;
    Some(stay.place.as_str()).filter(|place| !place.is_empty())
}

struct Event<'a> {
    /// The same for the same thing to do, also when its day has changed.
    identity: String,
    from: Date,
    /// The first day after it.
    until: Date,
    summary: &'a str,
}

struct File {
    text: String,
    made_on: String,
}

impl File {
    fn event(&mut self, event: &Event) {
        let from = compact(event.from);
        self.line("BEGIN:VEVENT");
        self.line(&format!("UID:{}@kerbstead", event.identity));
        let stamp = format!("DTSTAMP:{}T000000Z", self.made_on);
        self.line(&stamp);
        self.line(&format!("DTSTART;VALUE=DATE:{from}"));
        self.line(&format!("DTEND;VALUE=DATE:{}", compact(event.until)));
        self.line(&format!("SUMMARY:{}", escaped(event.summary)));
        self.line("TRANSP:TRANSPARENT");
        self.line("END:VEVENT");
    }

    /// A line, folded after 75 bytes without cutting a character in two. Source: RFC 5545, section 3.1.
    fn line(&mut self, line: &str) {
        let mut bytes = 0;
        for letter in line.chars() {
            if bytes + letter.len_utf8() > LINE_BYTES {
                self.text.push_str("\r\n ");
                bytes = 1;
            }
            self.text.push(letter);
            bytes += letter.len_utf8();
        }
        self.text.push_str("\r\n");
    }
}

/// Text with the marks that the format uses escaped. Source: RFC 5545, section 3.3.11. Other control characters, which
/// it forbids, are left out.
fn escaped(text: &str) -> String {
    let mut escaped = String::new();
    for letter in text.chars() {
        match letter {
            '\\' | ';' | ',' => escaped.extend(['\\', letter]),
            '\n' => escaped.push_str("\\n"),
            letter if letter.is_control() => {}
            letter => escaped.push(letter),
        }
    }
    escaped
}

/// `20300517`
fn compact(date: Date) -> String {
    date_text(date).replace('-', "")
}
