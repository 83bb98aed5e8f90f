//! Elements, made at once in the page.
//!
//! The framework's markup makes new code for each tag, each attribute and each shape of element. Here an element is the
//! browser's own, made and filled by a few functions that are in the bundle once. What changes later is an effect of the
//! framework that sets one text, attribute or property; [`crate::live`] has those for whole parts of a page.

use kerbstead_core::words::Key;
use leptos::prelude::document;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, Event, File, HtmlDetailsElement, HtmlInputElement, Node};

use crate::browser;
use crate::call::{Act, ActOn};
use crate::live::{ReadText, follow, follow_text};
use crate::locale::plain_sentence;

/// What is shown: an element, a text, or several of them in a row.
pub struct View(Node);

/// An element being put together; or several parts without an element around them.
pub struct El(Node);

/// An element of that tag.
pub fn el(tag: &str) -> El {
    El(made(document().create_element(tag)))
}

/// An element of a drawing.
pub fn svg(tag: &str) -> El {
    El(made(document().create_element_ns(Some("http://www.w3.org/2000/svg"), tag)))
}

/// Several parts without an element around them.
pub fn fragment() -> El {
    El(document().create_document_fragment().into())
}

/// Several views, one after the other.
pub fn all(views: impl IntoIterator<Item = View>) -> View {
    fragment().put_each(views).done()
}

/// Nothing.
pub fn nothing() -> View {
    fragment().done()
}

/// Tags are constants and valid, so the browser refuses none; it would be left out.
fn made(element: Result<Element, JsValue>) -> Node {
    element.map_or_else(|_| document().create_document_fragment().into(), Node::from)
}

impl View {
    /// A view of that node.
    pub fn of(node: impl Into<Node>) -> Self {
        Self(node.into())
    }

    /// The node to put into the page; one that holds others loses them there.
    pub fn node(&self) -> &Node {
        &self.0
    }
}

impl El {
    /// Its classes.
    pub fn class(self, class: &str) -> Self {
        self.attr("class", class)
    }

    /// An attribute, if there is a value for it.
    pub fn attr(self, name: &str, value: impl AttributeText) -> Self {
        value.set_on(&self, name);
        self
    }

    /// An attribute that is there or not.
    pub fn flag(self, name: &str, is_there: bool) -> Self {
        self.attr(name, is_there.then_some(""))
    }

    /// An attribute that follows what it reads.
    pub fn live(self, name: &'static str, read: impl Fn() -> Option<String> + 'static) -> Self {
        self.live_attribute(name, Box::new(read))
    }

    /// An attribute that is there while a condition holds.
    pub fn live_flag(self, name: &'static str, holds: impl Fn() -> bool + 'static) -> Self {
        self.live(name, move || holds().then(String::new))
    }

    fn live_attribute(self, name: &'static str, read: ReadText) -> Self {
        let element = self.0.clone();
        follow_text(read, Box::new(move |text| set_attribute(&element, name, text)));
        self
    }

    /// The text an input holds, following what it reads.
    pub fn value(self, read: impl Fn() -> String + 'static) -> Self {
        self.live_value(Box::new(move || Some(read())))
    }

    fn live_value(self, read: ReadText) -> Self {
        let element = self.0.clone();
        follow_text(read, Box::new(move |text| set_property(&element, "value", &text.into())));
        self
    }

    /// A property that is on or off, such as whether a box is ticked, following what it reads.
    pub fn on_or_off(self, name: &'static str, read: impl Fn() -> bool + 'static) -> Self {
        let element = self.0.clone();
        follow(move || set_property(&element, name, &read().into()));
        self
    }

    /// What to do when it is pressed.
    pub fn on_click(self, act: impl FnMut() + 'static) -> Self {
        self.on_plain("click", Box::new(act))
    }

    /// What to do when the keyboard leaves it.
    pub fn on_blur(self, act: impl FnMut() + 'static) -> Self {
        self.on_plain("blur", Box::new(act))
    }

    /// What to do when the keyboard comes to it.
    pub fn on_focus(self, act: impl FnMut() + 'static) -> Self {
        self.on_plain("focus", Box::new(act))
    }

    /// Leaves the keyboard where it is when this is pressed by a finger or a mouse.
    pub fn keeps_focus(self) -> Self {
        self.on("mousedown", Box::new(|event: Event| event.prevent_default()))
    }

    /// What to do with a form that is sent off, which then stays here.
    pub fn on_submit(self, act: impl FnMut() + 'static) -> Self {
        self.on_form(Box::new(act))
    }

    /// What to do with its text at every key.
    pub fn on_input(self, act: impl FnMut(String) + 'static) -> Self {
        self.on_text("input", Box::new(act))
    }

    /// What to do with the value that is chosen in it.
    pub fn on_change(self, act: impl FnMut(String) + 'static) -> Self {
        self.on_text("change", Box::new(act))
    }

    /// What to do with the file that is chosen in it.
    pub fn on_file(self, act: impl Fn(File) + 'static) -> Self {
        self.on("change", Box::new(move |event| browser::chosen_file(&event).into_iter().for_each(&act)))
    }

    /// What to do when it is ticked or not.
    pub fn on_tick(self, act: impl FnMut(bool) + 'static) -> Self {
        self.on_state("change", Box::new(act))
    }

    /// What to do when it is tapped, with how far across it that was, from 0 to 1.
    pub fn on_tap(self, mut act: impl FnMut(f64) + 'static) -> Self {
        let element = self.0.clone();
        self.on("click", Box::new(move |event: Event| act(browser::share_across(&event, element.unchecked_ref()))))
    }

    /// What to do when it is unfolded or folded.
    pub fn on_toggle(self, act: impl FnMut(bool) + 'static) -> Self {
        self.on_state("toggle", Box::new(act))
    }

    // The handlers come in boxes, so that what surrounds them is in the bundle once.

    fn on_plain(self, name: &str, mut act: Box<dyn Act>) -> Self {
        self.on(name, Box::new(move |_| act.act()))
    }

    fn on_text(self, name: &str, mut act: Box<dyn ActOn<String>>) -> Self {
        self.on(name, Box::new(move |event| act.act_on(leptos::prelude::event_target_value(&event))))
    }

    fn on_state(self, name: &str, mut act: Box<dyn ActOn<bool>>) -> Self {
        self.on(name, Box::new(move |event| act.act_on(is_on(&event))))
    }

    fn on_form(self, mut act: Box<dyn Act>) -> Self {
        let send = move |event: Event| {
            event.prevent_default();
            act.act();
        };
        self.on("submit", Box::new(send))
    }

    /// What to do with an event of that name.
    pub fn on(self, name: &str, act: Box<dyn ActOn<Event>>) -> Self {
        browser::listen(&self.0, name, act);
        self
    }

    /// A child, or several, or none.
    pub fn put(self, part: impl Part) -> Self {
        part.add_to(&self);
        self
    }

    /// Several children.
    pub fn put_each<P: Part>(mut self, parts: impl IntoIterator<Item = P>) -> Self {
        for part in parts {
            self = self.put(part);
        }
        self
    }

    fn add(&self, node: &Node) {
        // Nothing is ever put into itself, which is all that the browser refuses.
        let _ = self.0.append_child(node);
    }

    /// The element as a view.
    pub fn done(self) -> View {
        View(self.0)
    }
}

/// What can be the value of an attribute.
pub trait AttributeText {
    /// Sets the attribute of that name, if there is a text.
    fn set_on(self, element: &El, name: &str);
}

impl AttributeText for &str {
    fn set_on(self, element: &El, name: &str) {
        set_attribute(&element.0, name, Some(self));
    }
}

impl AttributeText for String {
    fn set_on(self, element: &El, name: &str) {
        self.as_str().set_on(element, name);
    }
}

impl AttributeText for i32 {
    fn set_on(self, element: &El, name: &str) {
        self.to_string().set_on(element, name);
    }
}

impl<T: AttributeText> AttributeText for Option<T> {
    fn set_on(self, element: &El, name: &str) {
        if let Some(text) = self {
            text.set_on(element, name);
        }
    }
}

/// What can be put into an element.
pub trait Part {
    /// Adds it to the children.
    fn add_to(self, parent: &El);
}

impl Part for View {
    fn add_to(self, parent: &El) {
        parent.add(&self.0);
    }
}

impl Part for El {
    fn add_to(self, parent: &El) {
        parent.add(&self.0);
    }
}

impl Part for &str {
    fn add_to(self, parent: &El) {
        parent.add(&document().create_text_node(self));
    }
}

impl Part for String {
    fn add_to(self, parent: &El) {
        self.as_str().add_to(parent);
    }
}

/// The sentence of the catalogue.
impl Part for Key {
    fn add_to(self, parent: &El) {
        plain_sentence(self).add_to(parent);
    }
}

impl<T: Part> Part for Option<T> {
    fn add_to(self, parent: &El) {
        if let Some(part) = self {
            part.add_to(parent);
        }
    }
}

fn set_attribute(element: &Node, name: &str, text: Option<&str>) {
    let element: &Element = element.unchecked_ref();
    // Names are constants and valid, so the browser refuses none.
    let _ = match text {
        Some(text) => element.set_attribute(name, text),
        None => element.remove_attribute(name),
    };
}

fn set_property(element: &Node, name: &str, value: &JsValue) {
    // An element takes every property.
    let _ = js_sys::Reflect::set(element, &name.into(), value);
}

/// Whether what an event comes from is ticked or unfolded.
fn is_on(event: &Event) -> bool {
    let Some(target) = event.target() else { return false };
    match target.dyn_ref::<HtmlInputElement>() {
        Some(input) => input.checked(),
        None => target.dyn_ref::<HtmlDetailsElement>().is_some_and(HtmlDetailsElement::open),
    }
}
