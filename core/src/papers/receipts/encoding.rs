//! The bytes of a file as text.

/// How a file has its letters in bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Encoding {
    /// As nearly everything today; with a mark at its start or without.
    Utf8,
    /// As some spreadsheets write "Unicode text"; known by the mark at its start.
    Utf16,
    /// What is neither, taken for the usual one of older programs in western Europe and America.
    Windows1252,
}

/// The text of a file, without a mark at its start. All bytes make some text: what UTF-16 cannot mean becomes the
/// replacement character.
pub(super) fn text_of(bytes: &[u8]) -> (String, Encoding) {
    match bytes {
        [0xff, 0xfe, rest @ ..] => return (utf16(rest, u16::from_le_bytes), Encoding::Utf16),
        [0xfe, 0xff, rest @ ..] => return (utf16(rest, u16::from_be_bytes), Encoding::Utf16),
        _ => {}
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    match std::str::from_utf8(bytes) {
        Ok(text) => (text.to_owned(), Encoding::Utf8),
        Err(_) => (bytes.iter().map(|byte| windows_1252(*byte)).collect(), Encoding::Windows1252),
    }
}

fn utf16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> String {
    let units = bytes.chunks_exact(2).map(|pair| unit([pair[0], pair[1]]));
    let mut text: String =
        char::decode_utf16(units).map(|letter| letter.unwrap_or(char::REPLACEMENT_CHARACTER)).collect();
    if bytes.len() % 2 == 1 {
        text.push(char::REPLACEMENT_CHARACTER);
    }
    text
}

/// Source: WHATWG Encoding Standard, index windows-1252 (from memory). All else is as in Unicode.
fn windows_1252(byte: u8) -> char {
    const FROM_128: &str = "€\u{81}‚ƒ„…†‡ˆ‰Š‹Œ\u{8d}Ž\u{8f}\u{90}‘’“”•–—˜™š›œ\u{9d}žŸ";
    let position = usize::from(byte).checked_sub(128);
    position.and_then(|position| FROM_128.chars().nth(position)).unwrap_or(char::from(byte))
}
