//! Values that are followed, and parts of a page that follow them.
//!
//! The framework makes new code for every type of value, every closure and every shape of view. What is here boxes
//! what it is given, so that the code of a signal, a memo and an effect is in the bundle once.

use std::any::Any;
use std::marker::PhantomData;
use std::sync::Arc;

use leptos::prelude::{Get, GetUntracked, Owner, RenderEffect, RwSignal, Set, Write, document, on_cleanup};
use web_sys::Node;

use crate::browser;
use crate::call::{Act, Read};
use crate::el::{View, fragment, nothing};

type Held = Arc<dyn Any + Send + Sync>;

/// A value that can be changed; whoever reads it is told.
pub struct Signal<T> {
    held: RwSignal<Held>,
    kind: PhantomData<fn() -> T>,
}

impl<T> Clone for Signal<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Signal<T> {}

impl<T: Default + Send + Sync + 'static> Default for Signal<T> {
    fn default() -> Self {
        Self::new(T::default())
    }
}

impl<T: Send + Sync + 'static> Signal<T> {
    /// A signal with its first value.
    pub fn new(value: T) -> Self {
        Self { held: new_signal(Arc::new(value)), kind: PhantomData }
    }

    /// Reads the value; the caller runs again when it changes.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(typed(&*held(self.held)))
    }

    /// Reads the value as it is now.
    pub fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(typed(&*held_now(self.held)))
    }

    /// Gives it another value, unless the part of the page it belongs to is gone.
    pub fn set(self, value: T) {
        replace(self.held, Arc::new(value));
    }

    /// Changes the value, unless the part of the page it belongs to is gone.
    pub fn update<R>(self, change: impl FnOnce(&mut T) -> R) -> Option<R> {
        let (mut change, mut result) = (Some(change), None);
        alter(self.held, &mut |value| {
            result = typed_mut(value).zip(change.take()).map(|(value, change)| change(value));
        });
        result
    }

    /// A copy of the value; the caller runs again when it changes.
    pub fn get(self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// A copy of the value as it is now.
    pub fn get_untracked(self) -> T
    where
        T: Clone,
    {
        self.with_untracked(T::clone)
    }
}

fn new_signal(first: Held) -> RwSignal<Held> {
    RwSignal::new(first)
}

fn held(signal: RwSignal<Held>) -> Held {
    signal.get()
}

fn held_now(signal: RwSignal<Held>) -> Held {
    signal.get_untracked()
}

fn replace(signal: RwSignal<Held>, value: Held) {
    signal.set(value);
}

fn alter(signal: RwSignal<Held>, change: &mut dyn FnMut(&mut dyn Any)) {
    if let Some(mut held) = signal.try_write()
        && let Some(value) = Arc::get_mut(&mut held)
    {
        change(value);
    }
}

/// A value worked out from others.
pub struct Memo<T> {
    held: leptos::prelude::Memo<Worked>,
    kind: PhantomData<fn() -> T>,
}

impl<T> Clone for Memo<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Memo<T> {}

impl<T: 'static> Memo<T> {
    /// Reads the value; the caller runs again when it changes.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(typed(&*worked(self.held)))
    }

    /// A copy of the value; the caller runs again when it changes.
    pub fn get(self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// A copy of the value as it is now.
    pub fn get_untracked(self) -> T
    where
        T: Clone,
    {
        T::clone(typed(&*worked_now(self.held)))
    }
}

/// A value worked out from others; whoever reads it is told only when it changes.
pub fn memo<T: PartialEq + Send + Sync + 'static>(read: impl Fn() -> T + Send + Sync + 'static) -> Memo<T> {
    Memo { held: new_memo(Box::new(move || Worked(Arc::new(read())))), kind: PhantomData }
}

fn new_memo(read: Box<dyn Read<Worked> + Send + Sync>) -> leptos::prelude::Memo<Worked> {
    leptos::prelude::Memo::new(move |_| read.read())
}

fn worked(memo: leptos::prelude::Memo<Worked>) -> Arc<dyn Comparable> {
    memo.get().0
}

fn worked_now(memo: leptos::prelude::Memo<Worked>) -> Arc<dyn Comparable> {
    memo.get_untracked().0
}

/// What a memo holds, whatever its type.
#[derive(Clone)]
struct Worked(Arc<dyn Comparable>);

impl PartialEq for Worked {
    fn eq(&self, other: &Self) -> bool {
        self.0.is_same(&*other.0)
    }
}

trait Comparable: Any + Send + Sync {
    fn is_same(&self, other: &dyn Any) -> bool;
}

impl<T: PartialEq + Send + Sync + 'static> Comparable for T {
    fn is_same(&self, other: &dyn Any) -> bool {
        other.downcast_ref() == Some(self)
    }
}

/// The value of a signal or a memo, which are made and changed with values of their type alone. In the bundle once for
/// each type, since comparing types takes more code than calling this.
#[inline(never)]
fn typed<T: 'static>(held: &dyn Any) -> &T {
    held.downcast_ref().unwrap_or_else(|| unreachable!("held with its type"))
}

/// The same, to be changed.
#[inline(never)]
fn typed_mut<T: 'static>(held: &mut dyn Any) -> Option<&mut T> {
    held.downcast_mut()
}

/// Runs now and again whenever what it reads changes, while the part of the page it belongs to is there.
pub fn follow(run: impl FnMut() + 'static) {
    fn make(mut run: Box<dyn Act>) {
        let effect = RenderEffect::new(move |_| run.act());
        on_cleanup(move || drop(effect));
    }
    make(Box::new(run));
}

/// Reads a text, if there is one.
pub type ReadText = Box<dyn Read<Option<String>>>;
/// Shows a text, or none.
pub type ShowText = Box<dyn Fn(Option<&str>)>;

/// Shows a text now and again whenever it changes.
pub fn follow_text(read: ReadText, show: ShowText) {
    let mut shown = None;
    follow(move || {
        let text = read.read();
        if shown.as_ref() != Some(&text) {
            show(text.as_deref());
            shown = Some(text);
        }
    });
}

/// A text that follows what it reads.
pub fn text(read: impl Fn() -> String + 'static) -> View {
    fn make(read: ReadText) -> View {
        let node: Node = document().create_text_node("").into();
        let shown = node.clone();
        follow_text(read, Box::new(move |text| shown.set_node_value(text)));
        View::of(node)
    }
    make(Box::new(move || Some(read())))
}

/// A view that is drawn again when what it reads changes. What has the focus in it keeps it if it has an id.
pub fn view(draw: impl Fn() -> View + 'static) -> View {
    fn make(draw: Box<dyn Read<View>>) -> View {
        let place = Place::new();
        let view = place.view();
        follow(move || {
            let view = draw.read();
            browser::keeping_focus(&mut || {
                place.clear();
                place.put(view.node(), &place.end);
            });
        });
        view
    }
    make(Box::new(draw))
}

/// A view that is there while a condition holds.
pub fn when(condition: impl Fn() -> bool + Send + Sync + 'static, draw: impl Fn() -> View + 'static) -> View {
    let condition = memo(condition);
    view(move || if condition.get() { draw() } else { nothing() })
}

/// A row for each key, kept while the key stays in the list. A row is one element.
pub fn rows<K: Copy + PartialEq + 'static>(keys: Memo<Vec<K>>, row: impl Fn(K) -> View + 'static) -> View {
    fn make<K: Copy + PartialEq + 'static>(keys: Memo<Vec<K>>, row: Box<dyn Fn(K) -> View>) -> View {
        let place = Place::new();
        let view = place.view();
        // Rows belong to what surrounds the list, since they outlast its changes.
        let around = Owner::new();
        let mut rows: Vec<Row<K>> = Vec::new();
        follow(move || {
            let keys = keys.get();
            browser::keeping_focus(&mut || {
                rows.retain(|row| keys.contains(&row.key) || row.remove());
                let mut next = place.start.next_sibling();
                for &key in &keys {
                    let known = rows.iter().find(|row| row.key == key).map(|row| row.node.clone());
                    let node = known.unwrap_or_else(|| {
                        let new = Row::new(key, &around, &row);
                        let node = new.node.clone();
                        rows.push(new);
                        node
                    });
                    if next.as_ref() == Some(&node) {
                        next = node.next_sibling();
                    } else if let Some(next) = &next {
                        place.put(&node, next);
                    }
                }
            });
        });
        view
    }
    make(keys, Box::new(row))
}

/// A row of a list.
struct Row<K> {
    key: K,
    node: Node,
    owner: Owner,
}

impl<K: Copy> Row<K> {
    fn new(key: K, around: &Owner, draw: &dyn Fn(K) -> View) -> Self {
        let owner = around.with(Owner::new);
        let node = owner.with(|| draw(key).node().clone());
        Self { key, node, owner }
    }

    /// Takes it out of the page; false, since it is not in the list any more.
    fn remove(&self) -> bool {
        self.owner.cleanup();
        remove(&self.node);
        false
    }
}

/// A place in the page whose content changes, between two marks.
struct Place {
    start: Node,
    end: Node,
}

impl Place {
    fn new() -> Self {
        let mark = || document().create_comment("").into();
        Self { start: mark(), end: mark() }
    }

    fn view(&self) -> View {
        fragment().put(View::of(self.start.clone())).put(View::of(self.end.clone())).done()
    }

    fn clear(&self) {
        while let Some(node) = self.start.next_sibling().filter(|node| *node != self.end) {
            remove(&node);
        }
    }

    fn put(&self, node: &Node, before: &Node) {
        if let Some(parent) = self.end.parent_node() {
            // `before` is a child of the same parent, so this is not refused.
            let _ = parent.insert_before(node, Some(before));
        }
    }
}

fn remove(node: &Node) {
    if let Some(parent) = node.parent_node() {
        // It is a child of its parent, so this is not refused.
        let _ = parent.remove_child(node);
    }
}
