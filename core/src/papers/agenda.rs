//! The plan's days as a calendar file, by RFC 5545.

use jiff::civil::Date;

use super::calendar_file::{CalendarFile, Event, Span, compact};
use super::work_events::{tool_events, work_events};
use crate::explain::{Figure, Figures};
use crate::money::FlowGroup;
use crate::plan::civil::day_after;
use crate::plan::{Id, Mode, Offer, Plan};
use crate::run::Timeline;
use crate::words::{Format, Words};
use crate::{Assessment, money};

/// What there is to do. As events of whole days: purchases to pay, things to sell, stops to charge and to fill up at, the
/// days on which what was borrowed or hired goes back. As events of hours: each task on each day on which it is worked
/// on; what is waited for after it is none. What is done already is left out. `as_of` is the day the file says it was
/// made on.
///
/// The same plan gives events of the same identity, so that a calendar that takes the file again changes them instead
/// of adding them twice.
pub fn agenda<F: Format>(plan: &Plan, assessment: &Assessment, as_of: Date, words: &Words<F>) -> String {
    let mut file = CalendarFile::begun(as_of);
    for flow in &assessment.money.flows {
        flow_event(&mut file, plan, flow, words);
    }
    for stop in stops(plan, as_of) {
        let place = stop.place.map_or_else(|| words.text("agenda-on-the-way"), str::to_owned);
        let figures: Figures = vec![("place", Figure::Name(place))];
        let summary = words.with(stop.key, &figures);
        file.event(&Event {
            identity: stop_identity(plan, &stop),
            span: Span::Days { from: stop.from, until: stop.until },
            summary: &summary,
            description: "",
        });
    }
    work_events(&mut file, plan, &assessment.days.days, words);
    tool_events(&mut file, plan, as_of, words);
    file.ended()
}

fn flow_event<F: Format>(file: &mut CalendarFile, plan: &Plan, flow: &money::Flow, words: &Words<F>) {
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
    file.event(&Event { identity, span: Span::day(flow.on), summary: &summary, description: "" });
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
    // Places to charge at that are in use on one day.
    let used = plan.charging.iter().filter(|place| place.in_use);
    stops.extend(used.filter_map(|place| {
        let from = place.on.filter(|on| *on >= as_of)?;
        let name = Some(place.name.as_str()).filter(|name| !name.is_empty());
        Some(Stop { key: "agenda-charge", source: place.id, place: name, from, until: day_after(from) })
    }));
    // Stops for water that are in use on one day.
    stops.extend(plan.water_stops.iter().filter(|stop| stop.in_use && stop.refills).filter_map(|stop| {
        let from = stop.on.filter(|on| *on >= as_of)?;
        let name = Some(stop.name.as_str()).filter(|name| !name.is_empty());
        Some(Stop { key: "agenda-refill", source: stop.id, place: name, from, until: day_after(from) })
    }));
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
