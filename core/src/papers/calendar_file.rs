//! A calendar file, line by line, by RFC 5545.

use jiff::civil::Date;

use crate::Moment;
use crate::plan::civil::day_after;
use crate::plan::date_text;

/// The longest line in bytes, without its end. Source: RFC 5545, section 3.1.
const LINE_BYTES: usize = 75;

/// Something that stands in a calendar.
pub(super) struct Event<'a> {
    /// The same for the same thing to do, also when its day has changed.
    pub(super) identity: String,
    pub(super) span: Span,
    pub(super) summary: &'a str,
    /// More of it; empty where there is no more.
    pub(super) description: &'a str,
}

/// When an event is.
#[derive(Clone, Copy)]
pub(super) enum Span {
    /// Whole days, on which one is free for other things.
    Days {
        from: Date,
        /// The first day after it.
        until: Date,
    },
    /// Hours, wherever one is: local time without a zone. Source: RFC 5545, section 3.3.5, form 1.
    Hours { from: Moment, until: Moment },
}

impl Span {
    /// One whole day.
    pub(super) fn day(on: Date) -> Self {
        Self::Days { from: on, until: day_after(on) }
    }
}

/// The file while it is written.
pub(super) struct CalendarFile {
    text: String,
    made_on: String,
}

impl CalendarFile {
    /// The file with nothing in it yet, made on that day.
    pub(super) fn begun(made_on: Date) -> Self {
        let mut file = Self { text: String::new(), made_on: compact(made_on) };
        file.line("BEGIN:VCALENDAR");
        file.line("VERSION:2.0");
        file.line("PRODID:-//Kerbstead//Kerbstead//EN");
        file
    }

    /// The whole text.
    pub(super) fn ended(mut self) -> String {
        self.line("END:VCALENDAR");
        self.text
    }

    pub(super) fn event(&mut self, event: &Event) {
        self.line("BEGIN:VEVENT");
        self.joined(&["UID:", &event.identity, "@kerbstead"]);
        let made_on = self.made_on.clone();
        self.joined(&["DTSTAMP:", &made_on, "T000000Z"]);
        match event.span {
            Span::Days { from, until } => {
                self.joined(&["DTSTART;VALUE=DATE:", &compact(from)]);
                self.joined(&["DTEND;VALUE=DATE:", &compact(until)]);
            }
            Span::Hours { from, until } => {
                self.joined(&["DTSTART:", &local_time(from)]);
                self.joined(&["DTEND:", &local_time(until)]);
            }
        }
        self.joined(&["SUMMARY:", &escaped(event.summary)]);
        if !event.description.is_empty() {
            self.joined(&["DESCRIPTION:", &escaped(event.description)]);
        }
        if matches!(event.span, Span::Days { .. }) {
            self.line("TRANSP:TRANSPARENT");
        }
        self.line("END:VEVENT");
    }

    fn joined(&mut self, parts: &[&str]) {
        self.line(&parts.concat());
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
pub(super) fn compact(date: Date) -> String {
    date_text(date).replace('-', "")
}

/// `20300517T083000`
fn local_time(moment: Moment) -> String {
    let minute = moment.minute.unwrap_or(0);
    format!("{}T{:02}{:02}00", compact(moment.on), minute / 60, minute % 60)
}
