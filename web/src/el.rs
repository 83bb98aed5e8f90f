//! Elements, all of one kind.
//!
//! The framework's markup makes new code for each tag, each attribute and each shape of element. Here every element has
//! a tag that is a name, a list of attributes and a list of children, so that the code of an element is in the bundle
//! once: [`crate::live`] does the same for what follows the plan.

use leptos::attr::any_attribute::{AnyAttribute, IntoAnyAttribute};
use leptos::attr::custom::custom_attribute;
use leptos::ev;
use leptos::html;
use leptos::prelude::*;
use leptos::tachys::html::event::on;
use leptos::tachys::html::property::prop;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlDetailsElement, HtmlInputElement};

/// An element being put together; without a tag, its children alone.
pub struct El {
    tag: &'static str,
    attributes: Vec<AnyAttribute>,
    children: Vec<AnyView>,
}

/// An element of that tag.
pub fn el(tag: &'static str) -> El {
    El { tag, attributes: Vec::new(), children: Vec::new() }
}

/// Several parts without an element around them.
pub fn fragment() -> El {
    el("")
}

impl El {
    /// Its classes.
    pub fn class(self, class: &str) -> Self {
        self.attr("class", class)
    }

    /// An attribute, if there is a value for it.
    pub fn attr(mut self, name: &'static str, value: impl AttributeText) -> Self {
        if let Some(text) = value.text() {
            self.attributes.push(text_attribute(name, text));
        }
        self
    }

    /// An attribute that is there or not.
    pub fn flag(self, name: &'static str, is_there: bool) -> Self {
        self.attr(name, is_there.then(String::new))
    }

    /// An attribute that follows what it reads.
    pub fn live(mut self, name: &'static str, read: impl Fn() -> Option<String> + Send + Sync + 'static) -> Self {
        self.attributes.push(live_attribute(name, Signal::derive(read)));
        self
    }

    /// An attribute that is there while a condition holds.
    pub fn live_flag(self, name: &'static str, holds: impl Fn() -> bool + Send + Sync + 'static) -> Self {
        self.live(name, move || holds().then(String::new))
    }

    /// The text an input holds, following what it reads.
    pub fn value(mut self, read: impl Fn() -> String + Send + Sync + 'static) -> Self {
        self.attributes.push(value_property(Signal::derive(read)));
        self
    }

    /// A property that is on or off, such as whether a box is ticked, following what it reads.
    pub fn on_or_off(mut self, name: &'static str, read: impl Fn() -> bool + Send + Sync + 'static) -> Self {
        self.attributes.push(flag_property(name, Signal::derive(read)));
        self
    }

    /// What to do when it is pressed.
    pub fn on_click(mut self, mut act: impl FnMut() + 'static) -> Self {
        let act: Box<dyn FnMut(ev::MouseEvent)> = Box::new(move |_| act());
        self.attributes.push(on(ev::click, act).into_any_attr());
        self
    }

    /// What to do with its text at every key.
    pub fn on_input(mut self, mut act: impl FnMut(String) + 'static) -> Self {
        let act: Box<dyn FnMut(Event)> = Box::new(move |event| act(event_target_value(&event)));
        self.attributes.push(on(ev::input, act).into_any_attr());
        self
    }

    /// What to do with the value that is chosen in it.
    pub fn on_change(self, mut act: impl FnMut(String) + 'static) -> Self {
        self.changing(Box::new(move |event| act(event_target_value(&event))))
    }

    /// What to do when it is ticked or not.
    pub fn on_tick(self, mut act: impl FnMut(bool) + 'static) -> Self {
        self.changing(Box::new(move |event| act(is_checked(&event))))
    }

    fn changing(mut self, act: Box<dyn FnMut(Event)>) -> Self {
        self.attributes.push(on(ev::change, act).into_any_attr());
        self
    }

    /// What to do when it is unfolded or folded.
    pub fn on_toggle(mut self, mut act: impl FnMut(bool) + 'static) -> Self {
        let act: Box<dyn FnMut(Event)> = Box::new(move |event| act(is_open(&event)));
        self.attributes.push(on(ev::toggle, act).into_any_attr());
        self
    }

    /// What to do when the keyboard leaves it.
    pub fn on_blur(mut self, mut act: impl FnMut() + 'static) -> Self {
        let act: Box<dyn FnMut(ev::FocusEvent)> = Box::new(move |_| act());
        self.attributes.push(on(ev::blur, act).into_any_attr());
        self
    }

    /// What to do with a form that is sent off, which then stays here.
    pub fn on_submit(mut self, mut act: impl FnMut() + 'static) -> Self {
        let act: Box<dyn FnMut(ev::SubmitEvent)> = Box::new(move |event| {
            event.prevent_default();
            act();
        });
        self.attributes.push(on(ev::submit, act).into_any_attr());
        self
    }

    /// A child, or several, or none.
    pub fn put(mut self, part: impl Part) -> Self {
        part.add_to(&mut self.children);
        self
    }

    /// The element as a view.
    pub fn done(self) -> AnyView {
        if self.tag.is_empty() {
            return self.children.into_any();
        }
        html::custom(self.tag).add_any_attr(self.attributes).child(self.children).into_any()
    }
}

/// What can be the value of an attribute.
pub trait AttributeText {
    /// The text, if there is one.
    fn text(self) -> Option<String>;
}

impl AttributeText for &str {
    fn text(self) -> Option<String> {
        Some(self.to_owned())
    }
}

impl AttributeText for String {
    fn text(self) -> Option<String> {
        Some(self)
    }
}

impl<T: AttributeText> AttributeText for Option<T> {
    fn text(self) -> Option<String> {
        self.and_then(AttributeText::text)
    }
}

/// What can be put into an element.
pub trait Part {
    /// Adds it to the children.
    fn add_to(self, children: &mut Vec<AnyView>);
}

impl Part for AnyView {
    fn add_to(self, children: &mut Vec<AnyView>) {
        children.push(self);
    }
}

impl Part for El {
    fn add_to(self, children: &mut Vec<AnyView>) {
        children.push(self.done());
    }
}

impl Part for String {
    fn add_to(self, children: &mut Vec<AnyView>) {
        children.push(self.into_any());
    }
}

impl Part for &str {
    fn add_to(self, children: &mut Vec<AnyView>) {
        children.push(self.to_owned().into_any());
    }
}

impl<T: Part> Part for Option<T> {
    fn add_to(self, children: &mut Vec<AnyView>) {
        if let Some(part) = self {
            part.add_to(children);
        }
    }
}

impl<T: Part> Part for Vec<T> {
    fn add_to(self, children: &mut Vec<AnyView>) {
        for part in self {
            part.add_to(children);
        }
    }
}

fn text_attribute(name: &'static str, text: String) -> AnyAttribute {
    custom_attribute(name, text).into_any_attr()
}

fn live_attribute(name: &'static str, text: Signal<Option<String>>) -> AnyAttribute {
    custom_attribute(name, text).into_any_attr()
}

fn value_property(text: Signal<String>) -> AnyAttribute {
    prop("value", text).into_any_attr()
}

fn flag_property(name: &'static str, flag: Signal<bool>) -> AnyAttribute {
    prop(name, flag).into_any_attr()
}

fn is_checked(event: &Event) -> bool {
    let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
    input.is_some_and(|input| input.checked())
}

fn is_open(event: &Event) -> bool {
    let details = event.target().and_then(|target| target.dyn_into::<HtmlDetailsElement>().ok());
    details.is_some_and(|details| details.open())
}
