//! The few things asked of the page and the browser that Leptos does not give.

use std::cell::RefCell;
use std::rc::Rc;

use jiff::civil::Date;
use js_sys::{Array, Promise, Reflect, Uint8Array};
use kerbstead_core::keeping::Moment;
use leptos::prelude::{document, request_animation_frame, set_timeout, window};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, Element, Event, EventTarget, File, HtmlElement, HtmlInputElement, Url};

use crate::call::{ActOn, Read};

/// The element of that id.
pub fn element(id: &str) -> Option<HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

/// Where the app is shown; nowhere in a worker, which has no page.
pub fn place_of_the_app() -> Option<HtmlElement> {
    web_sys::window().and_then(|_| element("app"))
}

/// What an attribute of the first element of that kind says; an address as a whole one.
pub fn attribute_of(selector: &str, name: &str) -> Option<String> {
    let element = document().query_selector(selector).ok().flatten()?;
    part(&element, name)?.as_string()
}

/// Says that the app can be used: tests and scripts wait for it.
pub fn mark_ready() {
    if let Some(root) = document().document_element() {
        // The attribute's name is a constant and valid, so this cannot fail.
        let _ = root.set_attribute("data-ready", "");
    }
}

/// Tells the scripts around the module of something, as an event of the window.
pub fn announce(name: &str) {
    if let Ok(event) = web_sys::Event::new(name) {
        // It only fails while the same event is being told already.
        let _ = window().dispatch_event(&event);
    }
}

/// Today, where the person is.
pub fn today() -> Date {
    let now = js_sys::Date::new_0();
    let year = i16::try_from(now.get_full_year()).unwrap_or(1970);
    let month = i8::try_from(now.get_month() + 1).unwrap_or(1);
    let day = i8::try_from(now.get_date()).unwrap_or(1);
    Date::new(year, month, day).unwrap_or(Date::ZERO)
}

/// The hour of the day it is, 0 to 23.
pub fn hour() -> u32 {
    js_sys::Date::new_0().get_hours()
}

/// The moment it is.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a cast keeps to the range
pub fn now() -> Moment {
    js_sys::Date::now() as Moment
}

/// The person's preferred language and region, as a BCP 47 tag.
pub fn language() -> String {
    window().navigator().language().unwrap_or_else(|| "en".to_owned())
}

/// Sets the page's title.
pub fn set_title(title: &str) {
    document().set_title(title);
}

/// Does something in a task of its own, once the browser had time for others.
pub fn soon(act: Box<dyn FnOnce()>) {
    set_timeout(act, std::time::Duration::ZERO);
}

/// Calls a function once what has changed is on the screen; where nothing is drawn, as in a tab behind others, soon. It may be
/// called twice.
pub fn after_paint(act: impl Fn() + Clone + 'static) {
    /// Longer than a frame takes even on a slow phone.
    const WITHOUT_FRAMES: std::time::Duration = std::time::Duration::from_millis(250);
    set_timeout(act.clone(), WITHOUT_FRAMES);
    request_animation_frame(move || set_timeout(act, std::time::Duration::ZERO));
}

/// Moves the keyboard to the element of that id, once the page has been drawn.
pub fn focus_soon(id: String) {
    request_animation_frame(move || {
        if let Some(element) = document().get_element_by_id(&id) {
            focus(element.unchecked_ref());
        }
    });
}

/// Calls a function at every event of that name, as long as what it happens to is there.
pub fn listen(target: &EventTarget, name: &str, mut act: Box<dyn ActOn<Event>>) {
    let act: Box<dyn FnMut(Event)> = Box::new(move |event| act.act_on(event));
    let act = Closure::wrap(act).into_js_value();
    // A function is a listener, so this is not refused.
    let _ = target.add_event_listener_with_callback(name, act.unchecked_ref());
}

/// Changes the page without taking the focus from where it is: what was moved, or came instead with the same id, gets it
/// back.
pub fn keeping_focus(change: &mut dyn FnMut()) {
    let before = document().active_element();
    change();
    if let Some(before) = before
        && document().active_element().as_ref() != Some(&before)
    {
        focus_again(&before);
    }
}

fn focus_again(before: &Element) {
    let same = if before.is_connected() { Some(before.clone()) } else { document().get_element_by_id(&before.id()) };
    if let Some(same) = same {
        // Parts of a drawing take the focus by the same name as what `HtmlElement` is for.
        focus(same.unchecked_ref());
    }
}

fn focus(element: &HtmlElement) {
    // An element that cannot take the focus leaves it where it is, which is no harm.
    let _ = element.focus();
}

/// Puts a text where the caret of an input is, in place of what is selected there, as if it had been typed.
pub fn type_text(id: &str, text: &str) {
    splice(id, text, 0);
}

/// Takes away what is selected in an input, or else the character before the caret.
pub fn erase(id: &str) {
    splice(id, "", 1);
}

fn splice(id: &str, text: &str, erased: usize) {
    let Some(Ok(input)) = element(id).map(JsCast::dyn_into::<HtmlInputElement>) else { return };
    // Positions count the units that JavaScript has.
    let before: Vec<u16> = input.value().encode_utf16().collect();
    let at = |position: Option<u32>| position.map_or(before.len(), |at| before.len().min(at as usize));
    let from = at(input.selection_start().ok().flatten());
    let to = at(input.selection_end().ok().flatten()).max(from);
    let from = if from == to { from.saturating_sub(erased) } else { from };
    let mut after = before[..from].to_vec();
    after.extend(text.encode_utf16());
    let caret = u32::try_from(after.len()).unwrap_or(u32::MAX);
    after.extend(&before[to..]);
    input.set_value(&String::from_utf16_lossy(&after));
    if let Ok(event) = Event::new("input") {
        // A new event is not being told already, so this is not refused.
        let _ = input.dispatch_event(&event);
    }
    // An input of text has a caret, so this is not refused.
    let _ = input.set_selection_range(caret, caret);
}

/// How far across an element a tap was, from 0 to 1.
pub fn share_across(tap: &Event, element: &Element) -> f64 {
    let x = part(tap, "clientX").and_then(|x| x.as_f64()).unwrap_or_default();
    let around = element.get_bounding_client_rect();
    (x - around.x()) / around.width().max(1.0)
}

/// Whether an event comes from something that is typed in.
pub fn is_text_input(target: &EventTarget) -> bool {
    let element = target.dyn_ref::<Element>();
    element.is_some_and(|element| matches!(element.tag_name().as_str(), "INPUT" | "TEXTAREA" | "SELECT"))
}

/// Tells whoever looks into the browser's console of a fault in the app itself.
pub fn report(message: &str) {
    web_sys::console::error_1(&message.into());
}

/// A text in small letters, as the browser makes them.
pub fn small_letters(text: &str) -> String {
    js_sys::JsString::from(text).to_lower_case().into()
}

/// Opens the browser's own way to print.
pub fn print() {
    // Where printing is not possible the browser says so itself.
    let _ = window().print();
}

/// Asks the browser not to clear what is kept here when it needs room, and tells what it promised.
pub fn ask_to_stay(mut tell: Box<dyn ActOn<bool>>) {
    // Without a secure connection there is nobody to ask.
    if let Ok(answer) = window().navigator().storage().persist() {
        when_settled(
            &answer,
            Box::new(move |stays: Option<JsValue>| stays.into_iter().for_each(|stays| tell.act_on(stays.is_truthy()))),
        );
    }
}

/// Tells whether the browser promised not to clear what is kept here.
pub fn look_whether_it_stays(mut tell: Box<dyn ActOn<bool>>) {
    if let Ok(answer) = window().navigator().storage().persisted() {
        when_settled(
            &answer,
            Box::new(move |stays: Option<JsValue>| stays.into_iter().for_each(|stays| tell.act_on(stays.is_truthy()))),
        );
    }
}

/// Reads a file as text.
pub fn read_file(file: &File, mut read: Box<dyn ActOn<String>>) {
    let act = move |text: Option<JsValue>| {
        if let Some(text) = text {
            read.act_on(text.as_string().unwrap_or_default());
        }
    };
    when_settled(&file.text(), Box::new(act));
}

/// Reads a file as it is; of one that is longer than `most` bytes, one byte more.
pub fn read_bytes(file: &File, most: usize, mut read: Box<dyn ActOn<Vec<u8>>>) {
    let end = i32::try_from(most + 1).unwrap_or(i32::MAX);
    let act = move |buffer: Option<JsValue>| {
        if let Some(buffer) = buffer {
            read.act_on(Uint8Array::new(&buffer).to_vec());
        }
    };
    // The part is within the file, so this is not refused.
    if let Ok(part) = file.slice_with_i32_and_i32(0, end) {
        when_settled(&part.array_buffer(), Box::new(act));
    }
}

/// Calls a function with each file that is let fall onto the page, which the browser would otherwise open in its place.
pub fn listen_for_files(mut act: Box<dyn ActOn<File>>) {
    listen(&window(), "dragover", Box::new(|event: Event| event.prevent_default()));
    let fall = move |event: Event| {
        event.prevent_default();
        part(&event, "dataTransfer").and_then(|data| first_file(&data)).into_iter().for_each(|file| act.act_on(file));
    };
    listen(&window(), "drop", Box::new(fall));
}

/// The first file that was chosen in an input.
pub fn chosen_file(event: &Event) -> Option<File> {
    first_file(&event.target()?.into())
}

fn first_file(holder: &JsValue) -> Option<File> {
    part(&part(holder, "files")?, "0")?.dyn_into().ok()
}

fn part(value: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(value, &name.into()).ok()
}

/// Calls a function with what a promise comes to, or with nothing if it is broken.
pub fn when_settled(promise: &Promise, act: Box<dyn ActOn<Option<JsValue>>>) {
    type Act = Box<dyn FnMut(JsValue)>;
    let act = Rc::new(RefCell::new(act));
    let also = act.clone();
    let kept = Closure::wrap(Box::new(move |value| act.borrow_mut().act_on(Some(value))) as Act);
    let broken = Closure::wrap(Box::new(move |_| also.borrow_mut().act_on(None)) as Act);
    let _ = promise.then2(&kept, &broken);
    kept.forget();
    broken.forget();
}

/// Has the browser ask before the page is closed, while there is something to lose.
pub fn ask_before_closing(would_lose: Box<dyn Read<bool>>) {
    let ask = move |event: Event| {
        if would_lose.read() {
            event.prevent_default();
        }
    };
    listen(&window(), "beforeunload", Box::new(ask));
}

/// The address of the app, without what stands behind the `#`.
pub fn address() -> String {
    let address = window().location().href().unwrap_or_default();
    address.split('#').next().unwrap_or_default().to_owned()
}

/// Gives the person a file to save.
pub fn save_file(name: &str, text: &str) {
    const FETCHED_AFTER: std::time::Duration = std::time::Duration::from_mins(1);
    let file = Blob::new_with_str_sequence(&Array::of1(&text.into()));
    let address = file.and_then(|file| Url::create_object_url_with_blob(&file));
    let (Ok(address), Ok(link)) = (address, document().create_element("a")) else { return };
    // These names are valid, and an element takes every attribute.
    let _ = link.set_attribute("href", &address).and_then(|()| link.set_attribute("download", name));
    if let Some(link) = link.dyn_ref::<HtmlElement>() {
        link.click();
    }
    // Some browsers fetch the file only a moment later. What is not there any more need not be let go.
    set_timeout(move || drop(Url::revoke_object_url(&address)), FETCHED_AFTER);
}
