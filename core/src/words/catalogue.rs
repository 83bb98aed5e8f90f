//! A catalogue, and the few kinds of placeables it uses: a variable, and a choice by plural.
//!
//! Catalogues are written in the Fluent syntax. The build script reads them with the maintained crate for it, and
//! leaves here what is simple to fill in: reader and syntax tree would be a thirtieth of what a phone has to load. The
//! crate that formats whole bundles brings the plural rules of all languages along, which the browser has already.

use super::key::Key;
use super::marks::{CHOICE, CHOICE_END, SENTENCE, TEXT, VARIABLE, VARIABLE_END, VARIANT};

/// The sentences of one language.
pub(super) struct Catalogue {
    /// Each with its key, in the order of the keys.
    sentences: Vec<(Key, &'static str)>,
}

/// What a sentence is filled with.
pub(super) enum Filling {
    /// A text that is formatted already.
    Text(String),
    /// A bare number, by which a plural is chosen.
    Number(f64),
}

/// Fillings by the name they have in the sentence.
pub(super) type Fillings = Vec<(String, Filling)>;

impl Catalogue {
    /// A catalogue as the build script prepared it.
    pub fn new(sentences: &'static str, keys: &'static [u8]) -> Self {
        let mut key = Key::START;
        let mut next = |distance: &[u8; 2]| {
            key = key.plus(u16::from_le_bytes(*distance).into());
            key
        };
        Self { sentences: keys.as_chunks().0.iter().map(&mut next).zip(sentences.split(SENTENCE)).collect() }
    }

    /// Whether there is a sentence of that key.
    pub fn has(&self, key: Key) -> bool {
        self.find(key).is_some()
    }

    /// A sentence, filled in. `plural` names the form of a number, as the rules of the language have it.
    pub fn fill(&self, key: Key, fillings: &Fillings, plural: &dyn Fn(f64) -> &'static str) -> Option<String> {
        let mut text = String::new();
        Filler { fillings, plural }.pattern(self.find(key)?, &mut text);
        Some(text)
    }

    fn find(&self, key: Key) -> Option<&'static str> {
        let at = self.sentences.binary_search_by_key(&key, |(key, _)| *key).ok()?;
        self.sentences.get(at).map(|(_, pattern)| *pattern)
    }
}

struct Filler<'a> {
    fillings: &'a Fillings,
    plural: &'a dyn Fn(f64) -> &'static str,
}

impl Filler<'_> {
    fn pattern(&self, pattern: &str, text: &mut String) {
        let mut rest = pattern;
        while let Some(at) = rest.find([VARIABLE, CHOICE]) {
            let (plain, placeable) = rest.split_at(at);
            text.push_str(plain);
            rest = if let Some(variable) = placeable.strip_prefix(VARIABLE) {
                let (name, after) = variable.split_once(VARIABLE_END).unwrap_or_default();
                if let Some(Filling::Text(filling)) = self.filling(name) {
                    text.push_str(filling);
                }
                after
            } else {
                let (choice, after) = placeable.split_once(CHOICE_END).unwrap_or_default();
                self.pattern(self.chosen(choice.trim_start_matches(CHOICE)), text);
                after
            };
        }
        text.push_str(rest);
    }

    fn filling(&self, name: &str) -> Option<&Filling> {
        self.fillings.iter().find(|(filled, _)| filled == name).map(|(_, filling)| filling)
    }

    /// The variant whose name is the plural form of the number, or else the last.
    fn chosen<'c>(&self, choice: &'c str) -> &'c str {
        let mut parts = choice.split(VARIANT);
        let form = match parts.next().and_then(|name| self.filling(name)) {
            Some(Filling::Number(number)) => (self.plural)(*number),
            _ => "other",
        };
        let mut chosen = "";
        for (name, pattern) in parts.filter_map(|variant| variant.split_once(TEXT)) {
            chosen = pattern;
            if name == form {
                break;
            }
        }
        chosen
    }
}
