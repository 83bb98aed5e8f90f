//! A button.

use crate::call::Act;
use crate::el::{El, el};
use crate::locale::t;

/// A button with a text of the catalogue.
pub fn button(key: &str, act: impl FnMut() + 'static) -> El {
    fn make(key: &str, mut act: Box<dyn Act>) -> El {
        el("button").attr("type", "button").on_click(move || act.act()).put(t(key))
    }
    make(key, Box::new(act))
}
