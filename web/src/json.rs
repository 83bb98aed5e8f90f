//! JSON values of core to and from plain JavaScript values, without text in between.

use js_sys::{Array, Object, Reflect};
use serde_json::{Map, Value};
use wasm_bindgen::{JsCast, JsValue};

/// The JavaScript value, with plain objects.
pub fn to_js(value: &Value) -> JsValue {
    match value {
        Value::Null => JsValue::NULL,
        Value::Bool(flag) => (*flag).into(),
        Value::Number(number) => number.as_f64().into(),
        Value::String(text) => text.as_str().into(),
        Value::Array(entries) => {
            let array = Array::new();
            for entry in entries {
                array.push(&to_js(entry));
            }
            array.into()
        }
        Value::Object(fields) => {
            let object = Object::new();
            for (name, field) in fields {
                // A fresh object takes every field.
                let _ = Reflect::set(&object, &name.as_str().into(), &to_js(field));
            }
            object.into()
        }
    }
}

/// The value as `JSON.stringify` would write it; none when a part of it has no form in JSON.
pub fn from_js(value: &JsValue) -> Option<Value> {
    if value.is_null() || value.is_undefined() {
        Some(Value::Null)
    } else if let Some(flag) = value.as_bool() {
        Some(flag.into())
    } else if let Some(number) = value.as_f64() {
        Some(number_value(number))
    } else if let Some(text) = value.as_string() {
        Some(text.into())
    } else if Array::is_array(value) {
        value.unchecked_ref::<Array>().iter().map(|entry| from_js(&entry)).collect::<Option<Vec<_>>>().map(Value::Array)
    } else if value.is_object() {
        let mut fields = Map::new();
        for entry in Object::entries(value.unchecked_ref()) {
            let entry: Array = entry.unchecked_into();
            fields.insert(entry.get(0).as_string()?, from_js(&entry.get(1))?);
        }
        Some(Value::Object(fields))
    } else {
        None
    }
}

/// Whole numbers as such, as far as JavaScript tells them apart.
fn number_value(number: f64) -> Value {
    const MOST: f64 = 9_007_199_254_740_991.0;
    #[allow(clippy::cast_possible_truncation)] // whole and within the range just before
    if number.abs() <= MOST && number.fract() == 0.0 { (number as i64).into() } else { number.into() }
}
