//! A button.

use crate::el::{El, el};
use crate::locale::t;

/// A button with a text of the catalogue.
pub fn button(key: &str, act: impl FnMut() + 'static) -> El {
    fn make(key: &str, act: Box<dyn FnMut()>) -> El {
        el("button").attr("type", "button").on_click(act).put(t(key))
    }
    make(key, Box::new(act))
}
