//! JSON values of core to and from plain JavaScript values, and by way of those to and from text: the browser can read and
//! write it already.

use js_sys::{Array, JSON, Number, Object, Reflect};
use kerbstead_core::keeping::is_too_deep;
use serde::Serialize;
use serde_json::Value;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::{JsCast, JsValue};

/// The JavaScript value, with plain objects.
pub fn to_js(value: &Value) -> JsValue {
    // Every JSON value has a form in JavaScript.
    value.serialize(&Serializer::json_compatible()).unwrap_or(JsValue::UNDEFINED)
}

/// The value as `JSON.stringify` would write it; none when a part of it has no form in JSON.
///
/// Read here and not by the crate that writes: its messages about values of the wrong kind, which nobody would see, bring
/// the printing of floats and the tables of printable characters along.
pub fn from_js(value: &JsValue) -> Option<Value> {
    if value.is_undefined() || value.is_null() {
        Some(Value::Null)
    } else if let Some(is_so) = value.as_bool() {
        Some(Value::Bool(is_so))
    } else if let Some(number) = value.as_f64() {
        #[allow(clippy::cast_possible_truncation)] // a safe integer is whole, and of at most 53 bits
        let whole = number as i64;
        Some(if Number::is_safe_integer(value) { whole.into() } else { number.into() })
    } else if let Some(text) = value.as_string() {
        Some(Value::String(text))
    } else if let Some(list) = value.dyn_ref::<Array>() {
        list.iter().map(|entry| from_js(&entry)).collect::<Option<_>>().map(Value::Array)
    } else if value.is_object() {
        let names = Object::keys(value.unchecked_ref::<Object>());
        let entry = |name: JsValue| Some((name.as_string()?, from_js(&Reflect::get(value, &name).ok()?)?));
        names.iter().map(entry).collect::<Option<_>>().map(Value::Object)
    } else {
        None
    }
}

/// The value as text.
pub fn text(value: &Value) -> String {
    // What came from a JSON value has a form in JSON.
    JSON::stringify(&to_js(value)).map(String::from).unwrap_or_default()
}

/// The value that a text is; none when it is not JSON, or deeper than any of ours, which would exhaust the stack.
pub fn read(text: &str) -> Option<Value> {
    if is_too_deep(text) { None } else { from_js(&JSON::parse(text).ok()?) }
}
