//! Streams of the browser to and from streams of Rust, as far as Leptos' server functions name them.
//!
//! Leptos depends on its server functions, and they on a crate of this name. That crate hands objects of Rust to the
//! browser, so it exports their methods, and what is exported stays in the module: 6,000 bytes on every phone, of an app
//! that has no server. This one does the same with closures, which the linker leaves out as long as nobody calls them.

use std::cell::RefCell;
use std::pin::Pin;
use std::rc::Rc;

use futures_util::{Stream, StreamExt, stream};
use js_sys::{Function, Object, Promise, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, future_to_promise};

/// What a stream of the browser gives: a value, or what went wrong.
type Given = Result<JsValue, JsValue>;

/// A stream that is read from.
pub struct ReadableStream(web_sys::ReadableStream);

impl ReadableStream {
    /// The browser's own stream.
    pub fn from_raw(raw: web_sys::ReadableStream) -> Self {
        Self(raw)
    }

    /// As the browser's own.
    pub fn into_raw(self) -> web_sys::ReadableStream {
        self.0
    }

    /// A stream of the browser that gives what a stream of Rust gives, when it is asked to.
    pub fn from_stream(source: impl Stream<Item = Given> + 'static) -> Self {
        let source: Rc<RefCell<Pin<Box<dyn Stream<Item = Given>>>>> = Rc::new(RefCell::new(Box::pin(source)));
        let pull = Closure::<dyn FnMut(JsValue) -> Promise>::new(move |controller| {
            let source = source.clone();
            future_to_promise(async move {
                // The browser asks for one value after the other, so nobody else reads meanwhile.
                let next = stream::poll_fn(|context| source.borrow_mut().as_mut().poll_next(context)).next().await;
                match next {
                    Some(Ok(value)) => call(&controller, "enqueue", &value),
                    Some(Err(fault)) => call(&controller, "error", &fault),
                    None => call(&controller, "close", &JsValue::UNDEFINED),
                }
            })
        });
        let underlying = Object::new();
        // A new plain object takes every property.
        let _ = Reflect::set(&underlying, &"pull".into(), &pull.into_js_value());
        let raw = web_sys::ReadableStream::new_with_underlying_source(&underlying);
        Self(raw.unwrap_or_else(|_| Object::new().unchecked_into()))
    }

    /// What it gives, as a stream of Rust.
    pub fn into_stream(self) -> impl Stream<Item = Given> {
        let reader = call(&self.0, "getReader", &JsValue::UNDEFINED);
        stream::unfold(reader.ok(), |reader| async move {
            let reader = reader?;
            match read(&reader).await {
                Ok(value) => value.map(|value| (Ok(value), Some(reader))),
                Err(fault) => Some((Err(fault), None)),
            }
        })
    }
}

/// The next value; none at the end.
async fn read(reader: &JsValue) -> Result<Option<JsValue>, JsValue> {
    let promise: Promise = call(reader, "read", &JsValue::UNDEFINED)?.unchecked_into();
    let result = JsFuture::from(promise).await?;
    let is_done = Reflect::get(&result, &"done".into())?.is_truthy();
    if is_done { Ok(None) } else { Reflect::get(&result, &"value".into()).map(Some) }
}

/// Calls a method by its name.
fn call(of: &JsValue, name: &str, with: &JsValue) -> Given {
    Reflect::get(of, &name.into())?.unchecked_into::<Function>().call1(of, with)
}
