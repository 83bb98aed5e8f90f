//! How long the page takes in a browser, at the machine's speed and slowed as a cheap phone is:
//! `cargo xtask bench`. With a text after it, only what has that text in its name.

use anyhow::{Context, Result};
use jiff::civil::{Date, date};
use kerbstead_core::plan::{Plain, Plan, Reading, add_days, date_text, demo_plan};
use kerbstead_core::share::{Parcel, Scope, seal};
use kerbstead_core::task::{Question, Subject};
use kerbstead_tests::browser::{Browser, HIRED, Key, ROUTES, Setup};
use kerbstead_tests::vans::{furnished, plan_of, van};
use serde_json::json;
use std::time::Duration;

/// How many times each thing is timed; the middle one counts.
const TIMES: usize = 7;

/// How many times slower a cheap phone is taken to be.
const PHONE: u32 = 4;

/// The day on which the runs begin.
const ASKED: Date = date(2027, 3, 1);

/// Between two keys: longer than all that follows one.
const REST: Duration = Duration::from_millis(500);

/// A thing to time: what it is called, and how to get its milliseconds from a browser.
struct Timing {
    name: &'static str,
    measure: fn(&Browser) -> Result<f64>,
}

/// Everything that is timed. A new timing is added here.
const TIMINGS: [Timing; 19] = [
    Timing { name: "start page, from request to ready", measure: start_page },
    Timing { name: "assess, 30 days of the example, plan and answer passed to and from JavaScript", measure: assess },
    Timing { name: "10,000 runs of the example in the worker, from question to answer", measure: runs_of_the_example },
    Timing { name: "10,000 runs of half a year with 25 sales, likewise", measure: runs_of_half_a_year },
    Timing {
        name: "what comes in and goes out, from a key to the end of its frame",
        measure: |page| key(page, "/in-and-out"),
    },
    Timing { name: "power page, likewise", measure: |page| key(page, "/power") },
    Timing {
        name: "what comes in and goes out, from a key to the next paint",
        measure: |page| paint(page, "/in-and-out"),
    },
    Timing { name: "power page, from a key to the next paint", measure: |page| paint(page, "/power") },
    Timing {
        name: "power of 30 days of the example in the worker: 1,000 runs, sizes, stops, costs",
        measure: power_of_a_month,
    },
    Timing { name: "every single change of the example ranked, in the worker", measure: ranked_changes },
    Timing { name: "the cheapest set of changes of the example too, in the worker", measure: cheapest_set },
    Timing { name: "1,000 runs of the whole example, in the worker", measure: whole_plan },
    Timing { name: "beside a log of 10,000 entries, from a key to the next paint", measure: beside_a_long_log },
    Timing { name: "water page, from a key to the end of its frame", measure: |page| key(page, "/water") },
    Timing { name: "warmth page, from a key to the end of its frame", measure: |page| key(page, "/warmth") },
    Timing { name: "signal page, from a key to the end of its frame", measure: |page| key(page, "/signal") },
    Timing { name: "warmth page, from a key to the next paint", measure: |page| paint(page, "/warmth") },
    Timing { name: "arranging in the worker, the slowest but four of forty vans made by chance", measure: arranging },
    Timing { name: "one step of dragging a thing of 80, script and layout", measure: drag_step },
];

fn main() -> Result<()> {
    let wanted = std::env::args().nth(1).unwrap_or_default();
    for slower in [1, PHONE] {
        let browser = Browser::start(&Setup { width: 360, height: 740, ..Setup::default() })?;
        browser.slow_processor(slower)?;
        for timing in TIMINGS.iter().filter(|timing| timing.name.contains(&wanted)) {
            let mut times = (0..TIMES).map(|_| (timing.measure)(&browser)).collect::<Result<Vec<_>>>()?;
            times.sort_by(f64::total_cmp);
            println!(
                "{}, processor {slower} times slower: {:.0} ms ({:.0} to {:.0})",
                timing.name,
                times[TIMES / 2],
                times[0],
                times[TIMES - 1]
            );
        }
    }
    Ok(())
}

/// The page's own clock, from the start of its navigation to the moment it marked itself ready.
fn start_page(browser: &Browser) -> Result<f64> {
    let record = "new MutationObserver((_, self) => {
        if (!document.documentElement?.hasAttribute('data-ready')) return;
        window.readyAfter = performance.now();
        self.disconnect();
    }).observe(document, { subtree: true, childList: true, attributes: true })";
    let script = serde_json::json!({ "source": record });
    let added = browser.devtools("Page.addScriptToEvaluateOnNewDocument", script)?;
    browser.load(ROUTES[0])?;
    browser.devtools("Page.removeScriptToEvaluateOnNewDocument", added)?;
    browser.script("return window.readyAfter", vec![])?.as_f64().context("the page never became ready")
}

/// The middle of many calls of what embedders call, which is compiled by then.
fn assess(browser: &Browser) -> Result<f64> {
    let script = "const done = arguments[0];
        import(new URL('kerbstead.js', document.baseURI).href).then((kerbstead) => {
            const plan = kerbstead.demo_plan('2027-01-01');
            let left = 30;
            for (const stay of plan.stays) {
                stay.nights = Math.min(stay.nights, left);
                left -= stay.nights;
            }
            const times = Array.from({ length: 60 }, () => {
                const before = performance.now();
                kerbstead.assess(plan, '2027-03-01');
                return performance.now() - before;
            });
            done(times.sort((a, b) => a - b)[30]);
        }).catch((error) => done(String(error)));";
    browser.load(ROUTES[0])?;
    browser.script_async(script, vec![])?.as_f64().context("the bundle did not assess the example")
}

fn runs_of_the_example(browser: &Browser) -> Result<f64> {
    runs(browser, Subject::Chances, demo_plan(), ASKED)
}

/// With what it takes to look for sizes and stops, and to tell what each draw costs.
fn power_of_a_month(browser: &Browser) -> Result<f64> {
    let mut plan = demo_plan();
    let mut left = 30;
    for stay in &mut plan.stays {
        stay.nights = stay.nights.min(left);
        left -= stay.nights;
    }
    let leaves_on = plan.calendar.leaves_on.context("the example leaves")?;
    runs(browser, Subject::Power, plan, leaves_on)
}

/// As in the bench `chances`: 25 sales, each with a range and a chance, over 180 days of running costs.
fn runs_of_half_a_year(browser: &Browser) -> Result<f64> {
    let sale = |number: u32| {
        let likely = 90 + number * 79 % 800;
        let price = json!({ "low": likely * 3 / 5, "likely": likely, "high": likely * 5 / 4 });
        let on = add_days(ASKED, i32::try_from(5 + number * 27 / 4)?).context("a day beyond all days")?;
        let chance = 50 + number * 37 % 45;
        Ok(json!({ "id": number + 10, "price": price, "on": date_text(on), "chance_percent": chance }))
    };
    let file = json!({
        "calendar": { "starts_on": date_text(ASKED), "leaves_on": date_text(ASKED) },
        "purse": { "opening_cash": "2100" },
        "belongings": (0..25).map(sale).collect::<Result<Vec<_>>>()?,
        "costs": [
            { "id": 1, "amount": "203", "every": "week", "phase": "always" },
            { "id": 2, "amount": "640", "phase": "always" },
        ],
        "stays": [{ "id": 3, "nights": 180 }],
    });
    runs(browser, Subject::Chances, Plan::from_plain(&file).context("no plan")?, ASKED)
}

fn ranked_changes(browser: &Browser) -> Result<f64> {
    runs_until(browser, Subject::Moves, demo_plan(), ASKED, "share === 1 || (answer && answer.tried === answer.to_try)")
}

fn cheapest_set(browser: &Browser) -> Result<f64> {
    runs(browser, Subject::Moves, demo_plan(), ASKED)
}

fn whole_plan(browser: &Browser) -> Result<f64> {
    runs(browser, Subject::Whole, demo_plan(), ASKED)
}

/// The example with a log as long as can be.
fn beside_a_long_log(browser: &Browser) -> Result<f64> {
    let mut plan = demo_plan();
    let first = plan.calendar.leaves_on.context("the example leaves")?;
    plan.readings = (0..10_000_u32)
        .map(|number| Reading {
            id: 10_000 + number,
            on: add_days(first, i32::try_from(number / 24 % 150).unwrap_or(0)),
            hour: number % 24,
            fresh_l: Some(f64::from(number % 45)),
            ..Reading::default()
        })
        .collect();
    plan.title = "A long log".into();
    browser.load("/plans")?;
    if !browser.text()?.contains(&plan.title) {
        browser.open_file_of(&plan)?;
    }
    paint(browser, "/in-and-out")
}

fn runs(browser: &Browser, subject: Subject, plan: Plan, as_of: Date) -> Result<f64> {
    runs_until(browser, subject, plan, as_of, "share === 1")
}

/// The middle of some answers of a worker that has answered before: the time until what it says is what is waited for.
fn runs_until(browser: &Browser, subject: Subject, plan: Plan, as_of: Date, until: &str) -> Result<f64> {
    let script = "const times = [];
        let asked, heard;
        const ask = () => {
            asked = performance.now();
            heard = undefined;
            worker.postMessage([times.length, question]);
        };
        worker.onmessage = ({ data: [, share, answer] }) => {
            if (UNTIL) heard ??= performance.now() - asked;
            if (share < 1) return;
            times.push(heard);
            if (times.length < 22) return ask();
            worker.terminate();
            done(times.slice(1).sort((a, b) => a - b)[10]);
        };
        ask();"
        .replace("UNTIL", until);
    let question = Question { subject, plan, as_of, seed: 1, ..Question::default() };
    browser.load(ROUTES[0])?;
    browser
        .script_async(&format!("const [question, done] = arguments; {HIRED} {script}"), vec![question.to_plain()])?
        .as_f64()
        .context("the worker gave no answer")
}

/// Of the vans of forty seeds, the time within which nine of ten are arranged or proven impossible. Those of which nothing
/// comes out count as a minute.
fn arranging(browser: &Browser) -> Result<f64> {
    let script = "const times = [];
        let asked;
        const ask = () => {
            asked = performance.now();
            worker.postMessage([times.length, questions[times.length]]);
        };
        worker.onmessage = ({ data: [, share, answer] }) => {
            if (share < 1) return;
            times.push(answer.ending === 'not_found' ? 60000 : performance.now() - asked);
            if (times.length < questions.length) return ask();
            worker.terminate();
            done(times.sort((a, b) => a - b)[Math.floor(questions.length * 0.9) - 1]);
        };
        ask();";
    let of = |seed| {
        Question {
            subject: Subject::Arranging,
            plan: plan_of(&van(seed)),
            as_of: ASKED,
            seed: 1,
            ..Question::default()
        }
        .to_plain()
    };
    browser.load(ROUTES[0])?;
    let questions = (5_001..=5_040).map(of).collect();
    browser
        .script_async(&format!("const [questions, done] = arguments; {HIRED} {script}"), vec![questions])?
        .as_f64()
        .context("the worker gave no answer")
}

/// The middle of many steps of a drag in a van with 80 things, each with the layout that follows it.
fn drag_step(browser: &Browser) -> Result<f64> {
    let link = seal(&Parcel::of(&furnished(80).to_plain(), Scope::Whole, true)).ok().context("a plan too large")?;
    browser.load(&format!("/open/{link}"))?;
    browser.wait_for_text("Keep it as a plan of mine")?;
    browser.find("button", "Keep it as a plan of mine")?.click()?;
    browser.load("/space")?;
    let script = "const picture = document.querySelector('#plan-view');
        const thing = picture.querySelectorAll('g.thing')[40];
        const place = thing.getBoundingClientRect();
        const at = (type, x, y) => new PointerEvent(type, {
            bubbles: true, pointerId: 1, pointerType: 'mouse', clientX: place.x + 4 + x, clientY: place.y + 4 + y,
        });
        thing.querySelector('.closed').dispatchEvent(at('pointerdown', 0, 0));
        const times = [];
        for (let step = 1; step <= 60; step += 1) {
            const before = performance.now();
            picture.dispatchEvent(at('pointermove', step % 20, step));
            thing.getBoundingClientRect();
            times.push(performance.now() - before);
        }
        picture.dispatchEvent(at('pointercancel', 0, 0));
        return times.sort((a, b) => a - b)[30];";
    browser.script(script, vec![])?.as_f64().context("nothing was dragged")
}

/// The middle of some keys in the first field for a number: from the input to the end of the next frame.
fn key(browser: &Browser, route: &str) -> Result<f64> {
    let record = "window.frames_after = [];
        addEventListener('input', (event) => requestAnimationFrame(() => {
            const channel = new MessageChannel();
            channel.port1.onmessage = () => window.frames_after.push(performance.now() - event.timeStamp);
            channel.port2.postMessage(0);
        }), true);
";
    press_keys(browser, route, record)?;
    let times = browser.script("return window.frames_after.sort((a, b) => a - b)", vec![])?;
    times.get(KEYS / 2).and_then(serde_json::Value::as_f64).context("no key came to the field")
}

/// The middle of some keys in the first field for a number: from the key to the next paint, as the browser measures it (Event
/// Timing, in steps of 8 ms; shorter than 16 it does not tell, which counts as 16).
fn paint(browser: &Browser, route: &str) -> Result<f64> {
    let record = "window.paints_after = [];
        new PerformanceObserver((list) => list.getEntries().forEach((entry) => {
            if (entry.name === 'keydown' || entry.name === 'input') window.paints_after.push(entry.duration);
        })).observe({ type: 'event', durationThreshold: 16 });
";
    press_keys(browser, route, record)?;
    let times = browser.script("return window.paints_after.sort((a, b) => a - b)", vec![])?;
    let told = times.as_array().context("no list of times")?;
    Ok(told.get(told.len() / 2).and_then(serde_json::Value::as_f64).unwrap_or(16.0))
}

/// How many keys are pressed.
const KEYS: usize = 9;

/// Keys in the first field for a number of a page, one after the other, while a script of the page listens.
fn press_keys(browser: &Browser, route: &str, listen: &str) -> Result<()> {
    let focus = "const entry = document.querySelector('main details.entry');
        if (entry) entry.open = true;
        setTimeout(() => document.querySelector('main input[inputmode=decimal]').focus(), 200);";
    browser.load(route)?;
    browser.script(&[listen, focus].concat(), vec![])?;
    std::thread::sleep(REST);
    for at in 0..KEYS {
        browser.press(if at % 2 == 0 { "7".to_owned() } else { Key::Backspace.value().to_string() })?;
        std::thread::sleep(REST);
    }
    Ok(())
}
