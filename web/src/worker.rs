//! What takes long is worked out beside the page, by `beside.js` with the same module, so that the page goes on answering.
//! Where there can be no worker, it is done here, in slices between which the page answers.
//!
//! There is one question at a time, since there is one page at a time: a new one takes the place of the one before.

use std::cell::RefCell;

use js_sys::{Array, Object, Reflect};
use kerbstead_core::plan::{Plain, Plan};
use kerbstead_core::task::{Question, Subject, Task};
use leptos::prelude::on_cleanup;
use serde_json::Value;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, Worker};

use crate::live::{self, Signal};
use crate::state::App;
use crate::{browser, json};

/// What numbers by chance begin with: always the same, so that a plan has one answer until it is changed.
const SEED: u32 = 1;

/// An answer as far as it is there.
#[derive(Clone, Copy)]
pub struct Asked {
    /// The last answer; that to the plan before while a new one is worked out.
    pub answer: Signal<Option<Value>>,
    /// How far the newest is: 0 to 1.
    pub share: Signal<f64>,
    /// Whether it broke off. Only a fault of the app itself does that.
    pub has_failed: Signal<bool>,
}

/// Asks about the plan, and again whenever it has changed, as long as the page that asks is there.
pub fn ask_and_follow(app: App, subject: Subject) -> Asked {
    let asked = not_asked();
    live::follow(move || ask_about(app, app.settled_plan(Plan::clone), subject, asked));
    asked
}

/// Asks about the plan beside others, and again whenever one of them has changed.
pub fn ask_beside(app: App, subject: Subject, others: impl Fn() -> Vec<Plan> + 'static) -> Asked {
    let asked = not_asked();
    live::follow(move || {
        let (plan, others) = (app.settled_plan(Plan::clone), others());
        asked.answer.set(None);
        ask_of(app, Question { subject, plan, others, ..Question::default() }, asked);
    });
    asked
}

/// Nothing yet: for what is asked when somebody wants it, and forgotten with the page.
pub fn not_asked() -> Asked {
    on_cleanup(forget);
    Asked { answer: Signal::new(None), share: Signal::new(0.0), has_failed: Signal::new(false) }
}

/// Asks about the plan as it is now.
pub fn ask_once(app: App, subject: Subject, asked: Asked) {
    asked.answer.set(None);
    ask_about(app, app.desk.plan.with_untracked(Plan::clone), subject, asked);
}

/// Nobody wants to know what was asked any more.
pub fn cancel(asked: Asked) {
    forget();
    asked.share.set(0.0);
}

fn ask_about(app: App, plan: Plan, subject: Subject, asked: Asked) {
    ask_of(app, Question { subject, plan, ..Question::default() }, asked);
}

/// Asks as of the day of the assessment.
fn ask_of(app: App, question: Question, asked: Asked) {
    let as_of = app.desk.assessment.with_untracked(|assessment| assessment.as_of);
    asked.share.set(0.0);
    asked.has_failed.set(false);
    ask(&Question { as_of, seed: SEED, ..question }, asked);
}

thread_local! {
    static DESK: RefCell<Desk> = const { RefCell::new(Desk { number: 0, question: None, place: Place::Unknown }) };
    /// What is under way in this copy of the module: in that of the worker, or here where there is none.
    static TASK: RefCell<Option<Box<dyn Task>>> = const { RefCell::new(None) };
}

/// What is asked at present.
struct Desk {
    number: u32,
    question: Option<(Question, Asked)>,
    place: Place,
}

/// Where it is worked out.
#[derive(Clone)]
enum Place {
    /// Nothing was asked yet.
    Unknown,
    /// In a worker; whether it has ever said anything.
    Beside(Worker, bool),
    /// Here.
    Here,
}

fn ask(question: &Question, asked: Asked) {
    let (number, place) = DESK.with_borrow_mut(|desk| {
        desk.number += 1;
        if matches!(desk.place, Place::Unknown) {
            desk.place = hired().map_or(Place::Here, |worker| Place::Beside(worker, false));
        }
        desk.question = Some((question.clone(), asked));
        (desk.number, desk.place.clone())
    });
    match place {
        Place::Beside(worker, _) => send(&worker, &[number.into(), json::to_js(&question.to_plain())]),
        Place::Unknown | Place::Here => begin_here(question, number),
    }
}

/// Nobody wants to know any more.
fn forget() {
    TASK.set(None);
    let (number, place) = DESK.with_borrow_mut(|desk| {
        desk.number += 1;
        desk.question = None;
        (desk.number, desk.place.clone())
    });
    if let Place::Beside(worker, _) = place {
        send(&worker, &[number.into()]);
    }
}

fn send(worker: &Worker, parts: &[JsValue]) {
    // Plain values can be sent.
    let _ = worker.post_message(&parts.iter().collect::<Array>());
}

/// A worker that loads the module; none where the browser has none for scripts of this kind.
fn hired() -> Option<Worker> {
    let script = browser::attribute_of("meta[name=worker]", "content")?;
    let glue = browser::attribute_of("link[rel=modulepreload]", "href")?;
    let wasm = browser::attribute_of("link[type='application/wasm']", "href")?;
    let options = Object::new();
    // A new plain object takes every property.
    let _ = Reflect::set(&options, &"type".into(), &"module".into());
    let worker = Worker::new_with_options(&script, options.unchecked_ref()).ok()?;
    browser::listen(&worker, "message", Box::new(|event: Event| hear(&event)));
    browser::listen(&worker, "error", Box::new(|event: Event| break_off(&event)));
    send(&worker, &[glue.into(), wasm.into()]);
    Some(worker)
}

fn hear(event: &Event) {
    let data = Reflect::get(event, &"data".into()).unwrap_or_default();
    let part = |at: u32| Reflect::get_u32(&data, at).unwrap_or_default();
    let number = part(0).as_f64();
    let asked = DESK.with_borrow_mut(|desk| {
        if let Place::Beside(_, has_spoken) = &mut desk.place {
            *has_spoken = true;
        }
        desk.question.as_ref().filter(|_| number == Some(desk.number.into())).map(|(_, asked)| *asked)
    });
    if let Some(asked) = asked {
        tell(asked, part(1).as_f64().unwrap_or(0.0), json::from_js(&part(2)));
    }
}

/// What comes before the end is what can be shown already.
fn tell(asked: Asked, share: f64, answer: Option<Value>) {
    if share >= 1.0 || answer.as_ref().is_some_and(|answer| !answer.is_null()) {
        asked.answer.set(answer);
    }
    asked.share.set(share);
}

/// A worker that never spoke could not load the module: then it is done here. One that did has met a fault, which would
/// come again here and take the page along.
fn break_off(event: &Event) {
    event.prevent_default();
    let (number, question, has_spoken) = DESK.with_borrow_mut(|desk| {
        let has_spoken = matches!(desk.place, Place::Beside(_, true));
        if let Place::Beside(worker, _) = &desk.place {
            worker.terminate();
        }
        desk.place = if has_spoken { Place::Unknown } else { Place::Here };
        (desk.number, desk.question.clone(), has_spoken)
    });
    match question {
        Some((_, asked)) if has_spoken => asked.has_failed.set(true),
        Some((question, _)) => begin_here(&question, number),
        None => {}
    }
}

fn begin_here(question: &Question, number: u32) {
    TASK.set(Some(question.begin()));
    go_on_here(number);
}

fn go_on_here(number: u32) {
    browser::soon(Box::new(move || {
        let asked =
            DESK.with_borrow(|desk| desk.question.as_ref().filter(|_| desk.number == number).map(|(_, asked)| *asked));
        let Some(asked) = asked else { return };
        let share = go_on();
        if share < 1.0 {
            tell(asked, share, TASK.with_borrow_mut(|task| task.as_mut()?.so_far()));
            go_on_here(number);
        } else {
            tell(asked, share, TASK.take().map(|task| task.answer()));
        }
    }));
}

/// For `beside.js`: begins to work out a question, a value of JavaScript as core writes it, in place of the one before.
#[wasm_bindgen(skip_typescript)]
pub fn begin_task(question: &JsValue) {
    let question = json::from_js(question).and_then(|value| Question::from_plain(&value));
    TASK.set(question.map(|question| question.begin()));
}

/// For `beside.js`: goes on for a moment, and gives the share that is done, 0 to 1.
#[wasm_bindgen(skip_typescript)]
pub fn go_on() -> f64 {
    TASK.with_borrow_mut(|task| task.as_mut().map_or(1.0, |task| task.step()))
}

/// For `beside.js`: what can be shown already; nothing where that is of no use.
#[wasm_bindgen(skip_typescript)]
pub fn answer_so_far() -> JsValue {
    TASK.with_borrow_mut(|task| task.as_mut()?.so_far()).map_or(JsValue::UNDEFINED, |answer| json::to_js(&answer))
}

/// For `beside.js`: the answer, once all is done.
#[wasm_bindgen(skip_typescript)]
pub fn task_answer() -> JsValue {
    TASK.take().map_or(JsValue::UNDEFINED, |task| json::to_js(&task.answer()))
}
