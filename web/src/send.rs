//! How a link leaves the device: the browser's own way to send something, and its clipboard. Not every browser has both.

use js_sys::{Function, Object, Promise, Reflect};
use leptos::prelude::window;
use wasm_bindgen::{JsCast, JsValue};

use crate::browser;

/// What is told when it is known whether something was done.
type Tell = Box<dyn Fn(bool)>;

/// A function that only some browsers have.
fn function(of: &JsValue, name: &str) -> Option<Function> {
    Reflect::get(of, &name.into()).ok()?.dyn_into().ok()
}

/// Whether the device has a way of its own to send something to somebody.
pub fn can_send() -> bool {
    function(&window().navigator(), "share").is_some()
}

/// Opens the device's way to send a link. Whoever changes their mind there has sent nothing.
pub fn send(title: &str, link: &str) {
    let what = Object::new();
    for (name, text) in [("title", title), ("url", link)] {
        // A new plain object takes every property.
        let _ = Reflect::set(&what, &name.into(), &text.into());
    }
    asked(&window().navigator(), "share", &what, Box::new(|_| ()));
}

/// Copies a text, and tells whether that was possible.
pub fn copy(text: &str, tell: Tell) {
    let clipboard = Reflect::get(&window().navigator(), &"clipboard".into()).unwrap_or_default();
    asked(&clipboard, "writeText", &text.into(), tell);
}

/// Asks for something that a promise is made for, and tells whether it was kept.
fn asked(of: &JsValue, name: &str, what: &JsValue, tell: Tell) {
    let promise = function(of, name).and_then(|ask| ask.call1(of, what).ok()?.dyn_into::<Promise>().ok());
    let Some(promise) = promise else { return tell(false) };
    browser::when_settled(&promise, Box::new(move |done: Option<JsValue>| tell(done.is_some())));
}

/// Selects all the text in the field of that id.
pub fn select_text(id: &str) {
    let field = browser::element(id);
    let select = field.and_then(|field| Some((function(&field, "select")?, field)));
    // A field that cannot be selected can still be read.
    drop(select.map(|(select, field)| select.call0(&field)));
}
