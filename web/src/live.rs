//! Parts of a page that follow the plan.
//!
//! Leptos makes new code for every closure and every shape of view. These few functions box what they are given, so
//! that the code of a reactive text, view, memo or handler is in the bundle once: it is less than half the size so.

use std::sync::Arc;

use leptos::prelude::*;

/// A view that is drawn again when what it reads changes.
pub fn view(draw: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    fn make(draw: Box<dyn Fn() -> AnyView + Send>) -> AnyView {
        (move || draw()).into_any()
    }
    make(Box::new(draw))
}

/// A text that follows what it reads.
pub fn text(read: impl Fn() -> String + Send + 'static) -> AnyView {
    fn make(read: Box<dyn Fn() -> String + Send>) -> AnyView {
        (move || read()).into_any()
    }
    make(Box::new(read))
}

/// A view that is there while a condition holds.
pub fn when(
    condition: impl Fn() -> bool + Send + Sync + 'static,
    draw: impl Fn() -> AnyView + Send + 'static,
) -> AnyView {
    let condition = memo(condition);
    view(move || if condition.get() { draw() } else { ().into_any() })
}

/// A value worked out from others; whoever reads it is told only when it changes.
pub fn memo<T: PartialEq + Send + Sync + 'static>(read: impl Fn() -> T + Send + Sync + 'static) -> Memo<T> {
    fn make<T: PartialEq + Send + Sync + 'static>(read: Box<dyn Fn() -> T + Send + Sync>) -> Memo<T> {
        Memo::new(move |_| read())
    }
    make(Box::new(read))
}

/// A row for each entry, kept while the entry stays in the list.
pub fn rows(ids: Memo<Vec<u32>>, row: impl Fn(u32) -> AnyView + Send + Sync + 'static) -> AnyView {
    fn make(ids: Memo<Vec<u32>>, row: Arc<dyn Fn(u32) -> AnyView + Send + Sync>) -> AnyView {
        view! { <For each=move || ids.get() key=|id| *id children=move |id| row(id) /> }.into_any()
    }
    make(ids, Arc::new(row))
}
