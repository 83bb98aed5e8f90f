//! A verdict, and what it rests on.

use kerbstead_core::explain::{Figure, Working};
use kerbstead_core::plan::{Id, List, Path, field};
use kerbstead_core::{Caution, Margin, Moment, Say, Severity, Standing, Verdict};

use super::field::field_label;
use super::icon::{Shape, icon};
use crate::call::Read;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{plain_sentence, t, words};
use crate::route::Page;

/// The word for a verdict.
pub fn verdict_word(verdict: Verdict) -> String {
    plain_sentence(match verdict {
        Verdict::Unknown => key!("verdict-unknown"),
        Verdict::FallsShort => key!("verdict-falls-short"),
        Verdict::Tight => key!("verdict-tight"),
        Verdict::Holds => key!("verdict-holds"),
    })
}

/// A verdict as a shape and a word.
pub fn verdict_badge(verdict: Verdict) -> View {
    let class = match verdict {
        Verdict::Unknown => "badge unknown",
        Verdict::FallsShort => "badge short",
        Verdict::Tight => "badge tight",
        Verdict::Holds => "badge holds",
    };
    el("span").class(class).put(icon(Shape::Verdict(verdict))).put(verdict_word(verdict)).done()
}

/// A finding in words.
#[derive(Clone, Debug, PartialEq)]
pub struct FindingView {
    id: String,
    severity: Severity,
    text: String,
    next: Option<String>,
    subject: Option<(List, Id)>,
}

/// A standing in words, the same for every balance.
#[derive(Clone, Debug, PartialEq)]
pub struct StandingView {
    /// The verdict.
    pub verdict: Verdict,
    /// One sentence: how much is to spare, or when it runs out and by how much.
    pub line: String,
    /// What is wrong or close.
    pub findings: Vec<FindingView>,
    missing: Vec<Path>,
}

/// What a standing rests on, put into words only where it is unfolded.
#[derive(Clone, Debug, PartialEq)]
pub struct Grounds {
    cautions: Vec<Caution>,
    working: Vec<Working>,
}

impl Grounds {
    /// Of a standing.
    pub fn of<F>(standing: &Standing<F>) -> Self {
        Self { cautions: standing.cautions.clone(), working: standing.working.clone() }
    }
}

impl StandingView {
    /// Puts a standing into words.
    pub fn of<F: Say>(standing: &Standing<F>) -> Self {
        Self {
            verdict: standing.verdict,
            line: line(standing.verdict, standing.margin, standing.first_short),
            missing: standing.missing.clone(),
            findings: standing.findings.iter().map(|finding| FindingView::of(finding)).collect(),
        }
    }

    /// The same of a plan that is not open here: nothing in it leads into the open plan.
    #[must_use]
    pub fn of_another(mut self) -> Self {
        self.findings.iter_mut().for_each(|finding| finding.subject = None);
        self
    }
}

/// Everything below the verdict: findings, what is missing, cautions, working.
pub fn standing_details(view: Memo<StandingView>, grounds: Memo<Grounds>) -> View {
    fragment()
        .put(live::view(move || view.with(|standing| all([missing(standing), finding_list(standing)]))))
        .put(fold(
            &["standing-cautions", "cautions"],
            Box::new(move || grounds.with(|grounds| !grounds.cautions.is_empty())),
            Box::new(move || grounds.with(cautions)),
        ))
        .put(fold(
            &["standing-working", "working"],
            Box::new(move || grounds.with(|grounds| !grounds.working.is_empty())),
            Box::new(move || grounds.with(|grounds| workings(&grounds.working))),
        ))
        .done()
}

/// The same, drawn once and all of it now: of a plan that is not open here, in words of its currency.
pub fn standing_details_once(standing: &StandingView, grounds: &Grounds) -> View {
    let folded = |title: &'static str, class: &'static str, lines: View| {
        el("details").class(class).put(el("summary").put(t(title))).put(el("ul").put(lines)).done()
    };
    fragment()
        .put(missing(standing))
        .put(finding_list(standing))
        .put((!grounds.cautions.is_empty()).then(|| folded("standing-cautions", "cautions", cautions(grounds))))
        .put((!grounds.working.is_empty()).then(|| folded("standing-working", "working", workings(&grounds.working))))
        .done()
}

fn missing(standing: &StandingView) -> View {
    let names = standing.missing.iter().map(missing_name).collect::<Vec<_>>();
    if names.is_empty() {
        return nothing();
    }
    el("p").put(key!("standing-missing")).put(" ").put(names.join(", ")).done()
}

fn cautions(grounds: &Grounds) -> View {
    caution_lines(&grounds.cautions)
}

fn caution_lines(cautions: &[Caution]) -> View {
    let text = |caution: &Caution| words(|words| words.caution(*caution));
    all(cautions.iter().map(|caution| el("li").put(text(caution)).done()))
}

/// Cautions folded away, beside numbers that belong to no balance.
pub fn take_care(cautions: &[Caution]) -> View {
    let lines = el("ul").put(caution_lines(cautions));
    el("details").class("cautions").put(el("summary").put(key!("standing-cautions"))).put(lines).done()
}

/// How numbers came about, folded away, if there is anything to tell.
pub fn folded_working(working: Memo<Vec<Working>>) -> View {
    fold(
        &["standing-working", "working"],
        Box::new(move || working.with(|working| !working.is_empty())),
        Box::new(move || working.with(|working| workings(working))),
    )
}

fn workings(workings: &[Working]) -> View {
    let line = |working: &Working| {
        let (formula, source) = words(|words| (words.working(working), words.source(working.source)));
        el("li").put(formula).put(" ").put(el("small").put("(").put(source).put(")")).done()
    };
    all(workings.iter().map(line))
}

impl FindingView {
    fn of(finding: &dyn Say) -> Self {
        words(|words| Self {
            id: finding.id(),
            severity: finding.severity(),
            text: words.say(finding),
            next: words.next_step(finding),
            subject: finding.subject().map(|id| (finding.list(), id)),
        })
    }

    /// The sentence of the finding.
    pub fn text(&self) -> &str {
        &self.text
    }
}

fn line(verdict: Verdict, margin: Option<Margin>, first_short: Option<Moment>) -> String {
    match verdict {
        Verdict::FallsShort => short(margin, first_short),
        Verdict::Holds | Verdict::Tight => margin.map_or_else(|| t!("standing-spare-placed"), spare),
        Verdict::Unknown => t!("standing-unknown"),
    }
}

fn short(margin: Option<Margin>, first_short: Option<Moment>) -> String {
    let Some(moment) = first_short else {
        return if let Some(Margin::Width(_)) = margin { t!("standing-short-width") } else { t!("standing-cannot") };
    };
    let when = ("when", Figure::Moment(moment));
    let Some(margin) = margin else { return tell!("standing-short-from", &vec![when]) };
    let figures = vec![when, ("margin", positive(margin.into()))];
    match margin {
        // There is data; it is work that falls short.
        Margin::Data(gigabytes) if gigabytes >= 0.0 => tell!("standing-short-work", &figures),
        Margin::Data(_) => tell!("standing-short-data", &figures),
        Margin::Money(_) => tell!("standing-short-money", &figures),
        Margin::Early(_) => tell!("standing-short-early", &figures),
        Margin::Mass(_) => tell!("standing-short-mass", &figures),
        Margin::Warmer(_) => tell!("standing-short-warmer", &figures),
        Margin::Days(_) => tell!("standing-short-days", &figures),
        Margin::Hours(_) | Margin::Width(_) => tell!("standing-short-hours", &figures),
    }
}

fn spare(margin: Margin) -> String {
    let figures = vec![("margin", margin.into())];
    match margin {
        Margin::Width(_) => tell!("standing-spare-width", &figures),
        Margin::Mass(_) => tell!("standing-spare-mass", &figures),
        Margin::Warmer(_) => tell!("standing-spare-warmer", &figures),
        Margin::Data(_) => tell!("standing-spare-data", &figures),
        Margin::Early(_) => tell!("standing-spare-early", &figures),
        Margin::Money(_) | Margin::Hours(_) | Margin::Days(_) => tell!("standing-spare", &figures),
    }
}

/// What is missing is told as an amount, not as less than nothing.
fn positive(figure: Figure) -> Figure {
    match figure {
        Figure::Money(amount) if amount.is_negative() => Figure::Money(-amount),
        Figure::Measure { value, quantity } => Figure::of(value.abs(), quantity),
        other => other,
    }
}

fn missing_name(path: &Path) -> String {
    match field::at(path) {
        Some(field) => field_label(field),
        None => t(&format!("section-{}", path.as_str().replace('_', "-"))),
    }
}

/// Lines that are folded away, if there are any: made only while they are unfolded, and unfolded they stay so while
/// they change. First the title in the catalogue, then the class.
fn fold(
    [title, class]: &'static [&'static str; 2],
    are_there: Box<dyn Read<bool> + Send + Sync>,
    lines: Box<dyn Read<View>>,
) -> View {
    let is_open = Signal::new(false);
    let list = el("ul").put(live::view(move || if is_open.get() { lines.read() } else { nothing() }));
    let whole = el("details")
        .class(class)
        .on_toggle(move |open| is_open.set(open))
        .put(el("summary").put(t(title)))
        .put(list)
        .live_flag("hidden", move || !are_there.read());
    whole.done()
}

/// Findings, the worst first.
fn finding_list(standing: &StandingView) -> View {
    let findings = &standing.findings;
    let severities = [Severity::Short, Severity::Close, Severity::Note];
    let of = |severity| findings.iter().filter(move |finding| finding.severity == severity).cloned();
    let lines = severities.into_iter().flat_map(of).map(|finding| {
        let class = match finding.severity {
            Severity::Short => "finding short",
            Severity::Close => "finding tight",
            Severity::Note => "finding note",
        };
        let link = finding.subject.map(|(list, id)| {
            let page = match list {
                List::Tasks => Page::Work,
                List::Placements | List::Sleepers | List::Distances => Page::Space,
                List::Doors => Page::Inside,
                List::WaterUses | List::WaterStops => Page::Water,
                List::Layers => Page::Warmth,
                List::DataUses | List::DataContracts => Page::Signal,
                List::Stays | List::Week => Page::Route,
                _ => Page::Kit,
            };
            let link = format!("{}/{id}", page.link());
            fragment().put(" ").put(el("a").attr("href", link).put(key!("finding-show"))).done()
        });
        el("li")
            .class(class)
            .attr("id", finding.id)
            .put(el("strong").put(severity_word(finding.severity)).put(": "))
            .put(finding.text)
            .put(finding.next.map(|next| el("span").class("next").put(next).done()))
            .put(link)
            .done()
    });
    el("ul").class("findings").put_each(lines).done()
}

fn severity_word(severity: Severity) -> String {
    plain_sentence(match severity {
        Severity::Short => key!("severity-short"),
        Severity::Close => key!("severity-close"),
        Severity::Note => key!("severity-note"),
    })
}
