//! Links as QR codes (ISO/IEC 18004), which a phone's camera opens.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

use super::text::{code_chars, split};

/// The largest version that is drawn: larger ones have modules too small for the screen of a phone.
pub const MOST_VERSION: u8 = 20;

/// The light modules that must surround a code. Source: ISO/IEC 18004:2015, 6.3.8 (from memory).
pub const QUIET_MODULES: usize = 4;

/// A QR code of a link.
pub struct Code {
    /// The link in it.
    pub link: String,
    drawn: QrCode,
}

impl Code {
    /// How many modules a side has, without what must surround it.
    pub fn side(&self) -> usize {
        usize::try_from(self.drawn.size()).unwrap_or_default()
    }

    /// Its version, 1 to [`MOST_VERSION`].
    pub fn version(&self) -> u8 {
        self.drawn.version().value()
    }

    /// The dark modules, as stripes along the rows: column and row of the first module, and how many there are.
    pub fn stripes(&self) -> Vec<(usize, usize, usize)> {
        let size = self.drawn.size();
        let mut stripes = Vec::new();
        for row in 0..size {
            let mut length = 0;
            // The column behind the last one is light, so that the last stripe ends there.
            for column in 0..=size {
                if self.drawn.get_module(column, row) {
                    length += 1;
                } else if length > 0 {
                    let [column, row] = [column, row].map(|at| usize::try_from(at).unwrap_or_default());
                    stripes.push((column - length, row, length));
                    length = 0;
                }
            }
        }
        stripes
    }
}

/// The codes that carry a text that [`seal`](super::seal) made, each a link of its own: `before` is what stands before
/// the text in it. One code if the text fits, else several; none when nobody could put that many together again.
///
/// ```
/// use kerbstead_core::share::{Parcel, Scope, codes, open, seal};
/// let parcel = Parcel::of(&serde_json::json!({ "title": "North with the harvest" }), Scope::Whole, true);
/// let before = "https://kerbstead.example/#/open/";
/// let codes = codes(before, &seal(&parcel).unwrap());
/// assert_eq!(codes.len(), 1);
/// assert_eq!(open(codes[0].link.strip_prefix(before).unwrap()), Ok(parcel));
/// ```
pub fn codes(before: &str, text: &str) -> Vec<Code> {
    let parts = split(text, code_chars(before.len()));
    parts.iter().filter_map(|part| code(before, part)).collect()
}

/// The smallest code that holds the link: at level M where that is as small as at L.
fn code(before: &str, text: &str) -> Option<Code> {
    if !QrSegment::is_alphanumeric(text) {
        return None;
    }
    let segments = [QrSegment::make_bytes(before.as_bytes()), QrSegment::make_alphanumeric(text)];
    let drawn =
        |level, most| QrCode::encode_segments_advanced(&segments, level, Version::new(1), most, None, false).ok();
    let low = drawn(QrCodeEcc::Low, Version::new(MOST_VERSION))?;
    let drawn = drawn(QrCodeEcc::Medium, low.version()).unwrap_or(low);
    Some(Code { link: [before, text].concat(), drawn })
}
