//! JSON values of core to and from plain JavaScript values, and by way of those to and from text: the browser can read and
//! write it already.

use js_sys::JSON;
use kerbstead_core::keeping::is_too_deep;
use serde::Serialize;
use serde_json::Value;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::JsValue;

/// The JavaScript value, with plain objects.
pub fn to_js(value: &Value) -> JsValue {
    // Every JSON value has a form in JavaScript.
    value.serialize(&Serializer::json_compatible()).unwrap_or(JsValue::UNDEFINED)
}

/// The value as `JSON.stringify` would write it; none when a part of it has no form in JSON.
pub fn from_js(value: &JsValue) -> Option<Value> {
    serde_wasm_bindgen::from_value(value.clone()).ok()
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
