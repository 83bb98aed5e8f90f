//! A button.

use kerbstead_core::words::Key;

use crate::call::Act;
use crate::el::{El, el};

/// A button with a text of the catalogue.
pub fn button(key: Key, act: impl FnMut() + 'static) -> El {
    fn make(key: Key, mut act: Box<dyn Act>) -> El {
        el("button").attr("type", "button").on_click(move || act.act()).put(key)
    }
    make(key, Box::new(act))
}
