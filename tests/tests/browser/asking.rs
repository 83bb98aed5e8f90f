//! What is worked out beside the page: the same as natively, to the bit, and how the pages show it.

use anyhow::{Context, Result, ensure};
use jiff::civil::date;
use kerbstead_core::chances::Whole;
use kerbstead_core::compare::Compared;
use kerbstead_core::days::Outlook;
use kerbstead_core::materials::Cuts;
use kerbstead_core::money::Prospect;
use kerbstead_core::money::buying::BuyingPlan;
use kerbstead_core::moves::Moves;
use kerbstead_core::plan::{Plain, demo_plan};
use kerbstead_core::space::Arranged;
use kerbstead_core::task::{Question, Subject};
use kerbstead_core::{power, water};
use kerbstead_tests::browser::{Browser, HIRED, Setup};
use kerbstead_tests::generate::seeded_plans;
use kerbstead_tests::links::as_told;
use kerbstead_tests::vans::{plan_of, van};
use serde_json::{Value, json};

/// What the chances begin with, on the page.
const CHANCE: &str = "Chance that cash never falls below your floor from today on:";

/// The answer to one question after the other.
const ANSWERS: &str = "
    const answers = [];
    const next = () => worker.postMessage([answers.length + 1, questions[answers.length]]);
    worker.onmessage = ({ data: [, share, answer] }) => {
        if (share < 1) return;
        answers.push(answer);
        if (answers.length < questions.length) next();
        else done(answers);
    };
    next();";

/// Two questions at once, of which the second is answered; then one that is called off. Gives what came, by its number.
const REPLACED: &str = "
    const heard = [];
    worker.onmessage = ({ data: [number, share] }) => {
        heard.push([number, share]);
        if (number === 2 && share === 1) worker.postMessage([3, questions[0]]);
        if (number === 3 && heard.filter(([of]) => of === 3).length === 1) {
            worker.postMessage([4]);
            setTimeout(() => done(heard), 1500);
        }
    };
    for (const number of [1, 2]) worker.postMessage([number, questions[0]]);";

fn questions() -> Vec<Question> {
    let plans = std::iter::once(demo_plan()).chain(seeded_plans(20_270_302, 60));
    let of = |plan| {
        [Subject::Chances, Subject::Buying, Subject::Days, Subject::Power, Subject::Water]
            .map(|subject| (subject, Clone::clone(&plan)))
    };
    // The search for the cheapest set takes long: for some plans.
    let few = || std::iter::once(demo_plan()).chain(seeded_plans(20_270_302, 12));
    let whole = few().flat_map(|plan| {
        [Subject::Moves, Subject::Whole, Subject::Compare].map(|subject| (subject, Clone::clone(&plan)))
    });
    let vans = (1..=12).map(|seed| (Subject::Arranging, plan_of(&van(seed))));
    let all = plans.flat_map(of).chain(vans).chain(whole);
    let as_of = date(2027, 3, 1);
    let of = |(subject, plan)| Question { subject, plan, others: vec![demo_plan()], as_of, seed: 7 };
    all.map(of).collect()
}

fn natively(question: &Question) -> Value {
    let mut task = question.begin();
    while task.step() < 1.0 {}
    task.answer()
}

fn ask(browser: &Browser, what: &str, questions: &[Question]) -> Result<Vec<Value>> {
    let script = format!("const [questions, done] = arguments; {HIRED} {what}");
    let questions = questions.iter().map(Plain::to_plain).collect();
    let answer = browser.script_async(&script, vec![Value::Array(questions)])?;
    answer.as_array().cloned().with_context(|| format!("no list of answers: {answer}"))
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_worker_answers_as_core_does_natively_to_the_bit() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    let mut answered = 0;
    for batch in questions().chunks(20) {
        for (question, there) in batch.iter().zip(ask(&browser, ANSWERS, batch)?) {
            let here = natively(question);
            // As numbers and amounts: JavaScript writes 12.0 as 12.
            let is_same = match question.subject {
                Subject::Chances => Prospect::from_plain(&here) == Prospect::from_plain(&there),
                Subject::Buying => BuyingPlan::from_plain(&here) == BuyingPlan::from_plain(&there),
                Subject::Days => Outlook::from_plain(&here) == Outlook::from_plain(&there),
                Subject::Water => water::Outlook::from_plain(&here) == water::Outlook::from_plain(&there),
                Subject::Power => power::Outlook::from_plain(&here) == power::Outlook::from_plain(&there),
                Subject::Whole => Whole::from_plain(&here) == Whole::from_plain(&there),
                Subject::Moves => Moves::from_plain(&as_told(&here)) == Moves::from_plain(&as_told(&there)),
                Subject::Compare => Compared::from_plain(&here) == Compared::from_plain(&there),
                Subject::Materials => Cuts::from_plain(&here) == Cuts::from_plain(&there),
                Subject::Arranging => Arranged::from_plain(&here) == Arranged::from_plain(&there),
            };
            ensure!(is_same && !there.is_null(), "natively {here}, in the browser {there}");
            answered += usize::from(there["refused"].is_null());
        }
    }
    ensure!(answered > 30, "only {answered} had an answer");
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_newer_question_takes_the_place_of_the_older_and_one_can_be_called_off() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    browser.slow_processor(4)?;
    let mut question = questions().swap_remove(0);
    // Hundreds of ranges, so that it takes a while.
    let mut costs = Vec::new();
    for id in 1_000..1_120 {
        let amount = json!({ "low": "1", "likely": "2", "high": "5" });
        costs.push(json!({ "id": id, "amount": amount, "every": "week", "phase": "always" }));
    }
    question.plan.costs = costs.iter().filter_map(Plain::from_plain).collect();
    let heard = ask(&browser, REPLACED, &[question])?;
    let of = |number: u64| heard.iter().filter(move |said| said[0] == number).filter_map(|said| said[1].as_f64());
    ensure!(of(1).all(|share| share < 1.0), "the first was worked out to its end: {heard:?}");
    ensure!(of(2).count() > 1 && of(2).is_sorted(), "no progress: {heard:?}");
    ensure!(of(3).all(|share| share < 1.0), "what was called off went on: {heard:?}");
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_money_page_says_the_chance_in_words_and_draws_its_band() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/money")?;
    browser.wait_for_text(CHANCE)?;
    let text = browser.text()?;
    let said = text.split(CHANCE).nth(1).unwrap_or_default();
    ensure!(said.contains("in 10") || said.contains("tries"), "no chance in words: {said}");
    ensure!(text.contains("On average over all that can happen"), "no average");
    browser.find_css(".plot path.band")?;
    // With far more cash the same page says so.
    let set_cash = |cash: &str| {
        browser.load("/in-and-out")?;
        browser.find("textbox", "Cash on the first day")?.replace(cash)?;
        browser.load("/money")
    };
    set_cash("90000")?;
    browser.wait_for_text("all of 10,000 tries")?;
    browser.find("textbox", "Kept for a breakdown: the tow, nights elsewhere")?.replace("200000")?;
    browser.wait_for_text("is missing for a reserve of")?;
    set_cash("")?;
    browser.wait_for_text("the cash you begin with must be known")?;
    browser.check_fits_width()?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn where_there_is_no_worker_the_page_works_it_out_itself() -> Result<()> {
    for (name, without) in [
        ("none at all", "delete window.Worker"),
        (
            "none that loads",
            "window.Worker = class extends
        Worker { constructor() { super('no-such-script.js'); } }",
        ),
    ] {
        let browser = Browser::start(&Setup::phone())?;
        browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": without }))?;
        browser.load("/money")?;
        browser.wait_for_text(CHANCE).with_context(|| format!("with {name}"))?;
    }
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_order_of_buying_is_taken_into_the_plan_and_taken_back() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/money")?;
    browser.find("link", "What to buy when")?.click()?;
    browser.wait_for_text("How sure this is")?;
    browser.wait_for_text("Proven: every choice and every order was weighed")?;
    browser.find("button", "Take these days into the plan")?.click()?;
    browser.wait_for_text("other days now")?;
    browser.wait_for_text("The plan has these days already.")?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("the days to be as before", |page| {
        Ok(!page.text()?.contains("The plan has these days already."))
    })?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn chances_are_worked_out_without_a_connection() -> Result<()> {
    let mut browser = Browser::open_at(&Setup::phone(), "/overview")?;
    browser.wait_kept()?;
    browser.stop_server();
    browser.load("/money")?;
    browser.wait_for_text(CHANCE)?;
    browser.check_console()
}
