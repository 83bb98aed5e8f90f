//! What came by link and is not done with yet: parts of a text that wait for others, and answers that are being written.

use kerbstead_core::plan::Plain;
use kerbstead_core::share::{Answer, Collected, collect};
use serde_json::{Map, Value};

use crate::storage;

const PARTS: &str = "kerbstead.parts";
const ANSWERS: &str = "kerbstead.answers";

/// The most answers that are kept; the oldest goes first.
const MOST_ANSWERS: usize = 20;

/// How much of a text tells it from all others: its check stands at its beginning.
const KEY_CHARS: usize = 16;

/// An answer that is being written, and the text it answers.
#[derive(Clone, Debug, Default)]
struct Begun {
    of: String,
    answer: Answer,
}

impl Plain for Begun {
    fn to_plain(&self) -> Value {
        let mut object = Map::new();
        object.insert("of".to_owned(), self.of.to_plain());
        object.insert("answer".to_owned(), self.answer.to_plain());
        Value::Object(object)
    }

    fn read(&mut self, value: &Value) -> bool {
        let read = |name: &str| value.get(name).unwrap_or(&Value::Null);
        self.of.read(read("of")) && self.answer.read(read("answer"))
    }
}

/// Keeps a part, and puts its text together if it was the last. None when the text is no part.
pub fn put_part(text: &str) -> Option<Collected> {
    let mut parts: Vec<String> = storage::record(PARTS).unwrap_or_default();
    let outcome = collect(&mut parts, text)?;
    storage::keep(PARTS, &parts);
    Some(outcome)
}

/// The answer to a text as far as it was written; a new one is signed as the last one was.
pub fn answer_to(text: &str) -> Answer {
    let answers = answers();
    let begun = answers.iter().find(|begun| begun.of == key(text)).map(|begun| begun.answer.clone());
    begun.unwrap_or_else(|| {
        let from = answers.last().map(|begun| begun.answer.from.clone()).unwrap_or_default();
        Answer { from, ..Answer::default() }
    })
}

/// Keeps an answer.
pub fn keep_answer(text: &str, answer: &Answer) {
    let mut answers = answers();
    answers.retain(|begun| begun.of != key(text));
    answers.push(Begun { of: key(text).to_owned(), answer: answer.clone() });
    answers.drain(..answers.len().saturating_sub(MOST_ANSWERS));
    storage::keep(ANSWERS, &answers);
}

fn answers() -> Vec<Begun> {
    storage::record(ANSWERS).unwrap_or_default()
}

fn key(text: &str) -> &str {
    text.get(..KEY_CHARS).unwrap_or(text)
}
