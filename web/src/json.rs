//! JSON values of core to and from plain JavaScript values, without text in between.

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
