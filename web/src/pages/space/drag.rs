//! Things and the drawing itself, moved by a finger or a mouse.

use std::cell::RefCell;
use std::rc::Rc;

use kerbstead_core::plan::Id;
use kerbstead_core::space::{Moved, Moving};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, PointerEvent};

use super::Chosen;
use super::view::Window;
use crate::el::El;
use crate::live::{Memo, Signal};
use crate::state::App;

/// A finger must go so far before it moves anything, in pixels.
const STILL_PX: i32 = 6;
/// An edge that comes so close to another is laid to it, in pixels.
const SNAP_PX: f64 = 10.0;

/// What is under way.
pub enum Drag {
    /// A thing is moved.
    Thing(ThingDrag),
    /// The drawing is.
    View { pointers: Vec<(i32, [i32; 2])>, from: Window, mm_per_px: f64 },
}

/// A thing on its way.
pub struct ThingDrag {
    pointer: i32,
    element: Element,
    moving: Moving,
    began_px: [i32; 2],
    mm_per_px: f64,
    moved: Option<Moved>,
}

type State = Rc<RefCell<Option<Drag>>>;

impl Drag {
    /// Lets a drawing be dragged.
    pub fn listen(picture: El, app: App, chosen: Chosen, window: Memo<Window>, seen: Signal<Option<Window>>) -> El {
        let state: State = Rc::default();
        let on = |state: &State, act: fn(&State, &PointerEvent, &Desk)| {
            let state = Rc::clone(state);
            let desk = Desk { app, chosen, window, seen };
            Box::new(move |event: Event| {
                if let Some(event) = event.dyn_ref::<PointerEvent>() {
                    act(&state, event, &desk);
                }
            })
        };
        // What was chosen is moved, not the page; parts of a drawing cannot say so in the style sheet.
        let hold = move |event: Event| {
            if thing_of(&event).is_some_and(|(_, id)| chosen.get_untracked() == Some(id)) {
                event.prevent_default();
            }
        };
        picture
            .on("touchstart", Box::new(hold))
            .on("pointerdown", on(&state, begin))
            .on("pointermove", on(&state, go_on))
            .on("pointerup", on(&state, end))
            .on("pointercancel", on(&state, cancel))
    }
}

/// What a drag works on.
struct Desk {
    app: App,
    chosen: Chosen,
    window: Memo<Window>,
    seen: Signal<Option<Window>>,
}

/// The thing that an event happens to.
fn thing_of(event: &Event) -> Option<(Element, Id)> {
    let element = event.target()?.dyn_into::<Element>().ok()?.closest("g.thing").ok().flatten()?;
    let id = element.id().strip_prefix("thing-")?.parse().ok()?;
    Some((element, id))
}

fn begin(state: &State, event: &PointerEvent, desk: &Desk) {
    let Some(picture) = event.current_target().and_then(|target| target.dyn_into::<Element>().ok()) else { return };
    let at = [event.client_x(), event.client_y()];
    let mm_per_px = mm_per_px(&picture, desk.window.get_untracked());
    if let Some((element, id)) = thing_of(event) {
        let was_chosen = desk.chosen.get_untracked() == Some(id);
        // A finger that goes over the page scrolls it; only what was chosen before is moved.
        if event.pointer_type() == "touch" && !was_chosen {
            *state.borrow_mut() = None;
            desk.chosen.set(Some(id));
            return;
        }
        desk.chosen.set(Some(id));
        if let Some(moving) = desk.app.plan(|plan| Moving::new(plan, id)) {
            // A pointer that is gone already is captured by nobody, and ends nothing.
            let _ = picture.set_pointer_capture(event.pointer_id());
            let pointer = event.pointer_id();
            let drag = ThingDrag { pointer, element, moving, began_px: at, mm_per_px, moved: None };
            *state.borrow_mut() = Some(Drag::Thing(drag));
        }
        return;
    }
    if desk.seen.get_untracked().is_none() {
        return;
    }
    let _ = picture.set_pointer_capture(event.pointer_id());
    let mut state = state.borrow_mut();
    let from = desk.window.get_untracked();
    let mut pointers = match state.take() {
        Some(Drag::View { pointers, .. }) => pointers,
        _ => Vec::new(),
    };
    pointers.retain(|(id, _)| *id != event.pointer_id());
    pointers.push((event.pointer_id(), at));
    *state = Some(Drag::View { pointers, from, mm_per_px });
}

fn go_on(state: &State, event: &PointerEvent, desk: &Desk) {
    let at = [event.client_x(), event.client_y()];
    match state.borrow_mut().as_mut() {
        Some(Drag::Thing(drag)) if drag.pointer == event.pointer_id() => drag.to(at),
        Some(Drag::View { pointers, from, mm_per_px }) => {
            let mm = |px: i32| whole(f64::from(px) * *mm_per_px);
            match pointers.as_slice() {
                [(_, began)] => {
                    let [x, y, width, length] = *from;
                    let window = [x - mm(at[0] - began[0]), y - mm(at[1] - began[1]), width, length];
                    desk.seen.set(Some(window));
                }
                [one, other] => {
                    let still = if one.0 == event.pointer_id() { other.1 } else { one.1 };
                    let apart = |one: [i32; 2], other: [i32; 2]| {
                        libm::hypot(f64::from(one[0] - other[0]), f64::from(one[1] - other[1])).max(1.0)
                    };
                    let share = (apart(one.1, other.1) / apart(at, still)).clamp(0.2, 5.0);
                    let [x, y, width, length] = *from;
                    let sized = |mm: i32| whole(f64::from(mm) * share).clamp(300, 40_000);
                    let (new_width, new_length) = (sized(width), sized(length));
                    let window = [x + (width - new_width) / 2, y + (length - new_length) / 2, new_width, new_length];
                    desk.seen.set(Some(window));
                }
                _ => {}
            }
        }
        _ => {}
    }
}

fn end(state: &State, event: &PointerEvent, desk: &Desk) {
    let mut state = state.borrow_mut();
    match state.take() {
        Some(Drag::Thing(drag)) if drag.pointer == event.pointer_id() => {
            drop(state);
            drag.lay_down(desk);
        }
        Some(Drag::View { mut pointers, mm_per_px, .. }) => {
            pointers.retain(|(id, _)| *id != event.pointer_id());
            if !pointers.is_empty() {
                *state = Some(Drag::View { pointers, from: desk.window.get_untracked(), mm_per_px });
            }
        }
        other => *state = other,
    }
}

fn cancel(state: &State, _: &PointerEvent, _: &Desk) {
    if let Some(Drag::Thing(drag)) = state.borrow_mut().take() {
        // An attribute of a plain name is always taken off.
        let _ = drag.element.remove_attribute("transform");
    }
}

impl ThingDrag {
    /// The thing follows the pointer: nothing but its place in the drawing is touched.
    fn to(&mut self, at: [i32; 2]) {
        let way = [at[0] - self.began_px[0], at[1] - self.began_px[1]];
        if self.moved.is_none() && way.iter().all(|px| px.abs() < STILL_PX) {
            return;
        }
        let [x, y] = self.moving.corner_mm();
        let (along, across) = (f64::from(way[1]) * self.mm_per_px, f64::from(way[0]) * self.mm_per_px);
        let moved = self.moving.to(x + along, y + across, SNAP_PX * self.mm_per_px);
        let (right, down) = (f64::from(moved.corner_mm[1]) - y, f64::from(moved.corner_mm[0]) - x);
        // Attributes of plain names are always taken.
        let _ = self.element.set_attribute("transform", &format!("translate({} {})", whole(right), whole(down)));
        let is_wrong = !moved.is_inside || !moved.meets.is_empty();
        let _ = self.element.set_attribute("data-meets", if is_wrong { "yes" } else { "no" });
        self.moved = Some(moved);
    }

    fn lay_down(self, desk: &Desk) {
        let _ = self.element.remove_attribute("transform");
        if let Some(moved) = &self.moved {
            desk.app.edit(self.moving.edit(moved));
        }
    }
}

/// Millimetres of the van in a pixel of the page.
fn mm_per_px(picture: &Element, [_, _, width, length]: Window) -> f64 {
    let place = picture.get_bounding_client_rect();
    let across = f64::from(width) / place.width().max(1.0);
    let along = f64::from(length) / place.height().max(1.0);
    across.max(along)
}

fn whole(mm: f64) -> i32 {
    #[allow(clippy::cast_possible_truncation)] // clamped
    let whole = libm::round(mm.clamp(-1e6, 1e6)) as i32;
    whole
}
