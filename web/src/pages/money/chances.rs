//! What may become of the money when not all goes as is likely, and what is to be kept apart for it.

use kerbstead_core::Standing;
use kerbstead_core::explain::{Figure, Figures};
use kerbstead_core::money::{KeptApart, NotAhead, Odds, Prospect};
use kerbstead_core::plan::{Path, Plain, Quantity};
use kerbstead_core::task::Subject;

use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo};
use crate::parts::{Band, Grounds, StandingView, fields, standing_details_once};
use crate::state::App;
use crate::worker::{Asked, ask_and_follow};

/// What is asked of the worker, and what it said.
#[derive(Clone, Copy)]
pub struct Chances {
    asked: Asked,
    prospect: Memo<Option<Prospect>>,
}

impl Chances {
    /// Asks.
    pub fn of(app: App) -> Self {
        let asked = ask_and_follow(app, Subject::Chances);
        let prospect = live::memo(move || asked.answer.with(|answer| Prospect::from_plain(answer.as_ref()?)));
        Self { asked, prospect }
    }

    /// The band for the plot; none while nothing is uncertain.
    pub fn band(self) -> Option<Band> {
        self.prospect.with(|prospect| {
            let prospect = prospect.as_ref().filter(|prospect| prospect.uncertain > 0)?;
            Some(Band { from: prospect.from, skips: 0, low: prospect.low.clone(), high: prospect.high.clone() })
        })
    }

    /// What there is to say of the chances.
    pub fn told(self) -> View {
        let told = move || self.prospect.with(|prospect| prospect.as_ref().map_or_else(nothing, told));
        fragment().put(waiting(self.asked)).put(live::view(told)).done()
    }

    /// What is to be kept apart, with its fields.
    pub fn reserve(self) -> View {
        let told = move || {
            let prospect = self.prospect.get().filter(|prospect| prospect.refused.is_none());
            prospect.map_or_else(nothing, |prospect| reserve(&prospect.reserve))
        };
        let inputs = fields(&Path::section("purse"), &["reserve_percent", "breakdown_fund"]);
        fragment().put(live::view(told)).put(inputs).done()
    }
}

/// How far the first answer is, or that there will be none.
pub fn waiting(asked: Asked) -> View {
    let text = move || match (asked.has_failed.get(), asked.answer.with(Option::is_some)) {
        (true, _) => t!("asked-failed"),
        (false, true) => String::new(),
        (false, false) => {
            let percent = Figure::of((asked.share.get() * 100.0).floor(), Quantity::Percent);
            tell!("asked-waiting", &vec![("share", percent)])
        }
    };
    el("p").attr("role", "status").put(live::text(text)).done()
}

/// Why there is no answer.
pub fn refused(refused: NotAhead) -> View {
    let text = match refused {
        NotAhead::CashUnknown => t!("ahead-cash-unknown"),
        NotAhead::Over => t!("ahead-over"),
        NotAhead::TooMany => t!("ahead-too-many"),
        NotAhead::TooLarge => t!("ahead-too-large"),
        NotAhead::NothingToBuy => t!("ahead-nothing-to-buy"),
    };
    el("p").put(text).done()
}

fn told(prospect: &Prospect) -> View {
    if let Some(why) = prospect.refused {
        return refused(why);
    }
    if prospect.uncertain == 0 {
        return el("p").put(key!("chances-nothing")).done();
    }
    let figures: Figures = vec![
        ("until", Figure::Date(prospect.until)),
        ("likely", Figure::Money(prospect.likely_end)),
        ("expected", Figure::Money(prospect.expected_end)),
        ("low", Figure::Money(prospect.low_end)),
        ("high", Figure::Money(prospect.high_end)),
        ("lowest", Figure::Money(prospect.low_lowest)),
        ("paths", Figure::count(prospect.paths as usize)),
    ];
    let lines = [
        tell!("chances-likely", &figures),
        tell!("chances-expected", &figures),
        tell!("chances-between", &figures),
        tell!("chances-lowest", &figures),
    ];
    fragment()
        .put(
            el("p")
                .put(key!("chances-kept"))
                .put(" ")
                .put(el("strong").put(odds(Odds::of(prospect.kept, prospect.paths), prospect.paths))),
        )
        .put(el("ul").put_each(lines.into_iter().map(|line| el("li").put(line))))
        .put(
            el("details")
                .put(el("summary").put(key!("chances-how")))
                .put(el("p").put(tell!("chances-assumed", &figures))),
        )
        .done()
}

/// A chance in words; where it is none or certain, after so many tries.
pub fn odds(odds: Odds, tries: u32) -> String {
    let number = |count: u32| Figure::count(count as usize);
    let paths = vec![("paths", number(tries))];
    match odds {
        Odds::Never => tell!("odds-never", &paths),
        Odds::AlmostNever => t!("odds-almost-never"),
        Odds::About { count, of } => tell!("odds-about", &vec![("count", number(count)), ("of", number(of))]),
        Odds::AlmostAlways => t!("odds-almost-always"),
        Odds::Always => tell!("odds-always", &paths),
    }
}

fn reserve(kept: &KeptApart) -> View {
    let standing = Standing { findings: vec![kept.clone()], working: kept.working(), ..Standing::unknown(Vec::new()) };
    standing_details_once(&StandingView::of(&standing), &Grounds::of(&standing))
}
