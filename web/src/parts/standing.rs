//! A verdict, and what it rests on.

use kerbstead_core::explain::{Figure, Working};
use kerbstead_core::plan::{Id, Path, Quantity, field};
use kerbstead_core::{Caution, Margin, Moment, Say, Severity, Standing, Verdict};

use super::field::field_label;
use super::icon::{Shape, icon};
use crate::el::{El, View, all, el, fragment, nothing};
use crate::live::{self, Memo};
use crate::locale::{t, tell, words};

/// The word for a verdict.
pub fn verdict_word(verdict: Verdict) -> String {
    t(match verdict {
        Verdict::Unknown => "verdict-unknown",
        Verdict::FallsShort => "verdict-falls-short",
        Verdict::Tight => "verdict-tight",
        Verdict::Holds => "verdict-holds",
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
    subject: Option<Id>,
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
    cautions: Vec<String>,
    working: Vec<(String, String)>,
}

impl StandingView {
    /// Puts a standing into words.
    pub fn of<F: Say>(standing: &Standing<F>) -> Self {
        Self {
            verdict: standing.verdict,
            line: line(standing.verdict, standing.margin, standing.first_short),
            missing: standing.missing.clone(),
            findings: standing.findings.iter().map(|finding| FindingView::of(finding)).collect(),
            cautions: standing
                .cautions
                .iter()
                .map(|caution: &Caution| words(|words| words.caution(*caution)))
                .collect(),
            working: standing.working.iter().map(working).collect(),
        }
    }
}

/// Everything below the verdict: findings, what is missing, cautions, working.
pub fn standing_details(view: Memo<StandingView>) -> View {
    fragment()
        .put(live::view(move || view.with(|standing| all([missing(standing), finding_list(standing)]))))
        .put(fold(view, "standing-cautions", "cautions", cautions))
        .put(fold(view, "standing-working", "working", workings))
        .done()
}

fn missing(standing: &StandingView) -> View {
    let names = standing.missing.iter().map(missing_name).collect::<Vec<_>>();
    if names.is_empty() {
        return nothing();
    }
    el("p").put(t("standing-missing")).put(" ").put(names.join(", ")).done()
}

fn cautions(standing: &StandingView) -> Vec<El> {
    standing.cautions.iter().map(|text| el("li").put(text.as_str())).collect()
}

fn workings(standing: &StandingView) -> Vec<El> {
    let line = |(formula, source): &(String, String)| {
        el("li").put(formula.as_str()).put(" ").put(el("small").put("(").put(source.as_str()).put(")"))
    };
    standing.working.iter().map(line).collect()
}

impl FindingView {
    fn of(finding: &dyn Say) -> Self {
        words(|words| Self {
            id: finding.id(),
            severity: finding.severity(),
            text: words.say(finding),
            next: words.next_step(finding),
            subject: finding.subject(),
        })
    }

    /// The sentence of the finding.
    pub fn text(&self) -> &str {
        &self.text
    }
}

fn working(working: &Working) -> (String, String) {
    words(|words| (words.working(working), words.source(working.source)))
}

fn line(verdict: Verdict, margin: Option<Margin>, first_short: Option<Moment>) -> String {
    let margin = margin.map(Figure::from);
    match (verdict, margin, first_short) {
        (Verdict::FallsShort, Some(margin), Some(moment)) => {
            let key = match margin {
                Figure::Money(_) => "standing-short-money",
                Figure::Measure { quantity: Quantity::Days, .. } => "standing-short-days",
                _ => "standing-short-hours",
            };
            tell(key, &vec![("when", Figure::Moment(moment)), ("margin", positive(margin))])
        }
        (Verdict::FallsShort, _, _) => t("standing-cannot"),
        (Verdict::Holds | Verdict::Tight, Some(margin), _) => tell("standing-spare", &vec![("margin", margin)]),
        _ => t("standing-unknown"),
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

/// Lines that are folded away, if there are any; unfolded, they stay so while they change.
fn fold(
    view: Memo<StandingView>,
    title: &'static str,
    class: &'static str,
    lines: fn(&StandingView) -> Vec<El>,
) -> View {
    let all_lines = move || fragment().put_each(view.with(lines)).done();
    live::when(
        move || !view.with(lines).is_empty(),
        move || {
            el("details").class(class).put(el("summary").put(t(title))).put(el("ul").put(live::view(all_lines))).done()
        },
    )
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
        let link = finding.subject.map(|id| {
            fragment().put(" ").put(el("a").attr("href", format!("#/kit/{id}")).put(t("finding-show"))).done()
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
    t(match severity {
        Severity::Short => "severity-short",
        Severity::Close => "severity-close",
        Severity::Note => "severity-note",
    })
}
