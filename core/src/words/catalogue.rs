//! A catalogue in the Fluent syntax, and the few kinds of placeables it uses: a variable, and a choice by plural.
//!
//! The syntax is read by its own maintained crate. Its companion that formats whole bundles brings the plural rules of
//! all languages along, which the browser has already, and would be a tenth of what a phone has to load.

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, Variant, VariantKey};
use fluent_syntax::parser;

/// The sentences of one language.
pub(super) struct Catalogue {
    /// By their names, in order.
    sentences: Vec<(&'static str, Pattern<&'static str>)>,
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
    /// Reads a catalogue. A faulty line would leave its sentence out; a test reads every line of every catalogue.
    pub fn new(source: &'static str) -> Self {
        let resource = parser::parse_runtime(source).unwrap_or_else(|(partly, _)| partly);
        let sentence = |entry| match entry {
            Entry::Message(message) => Some((message.id.name, message.value?)),
            _ => None,
        };
        let mut sentences: Vec<_> = resource.body.into_iter().filter_map(sentence).collect();
        sentences.sort_unstable_by_key(|(name, _)| *name);
        Self { sentences }
    }

    /// Whether there is a sentence of that name.
    pub fn has(&self, key: &str) -> bool {
        self.find(key).is_some()
    }

    /// A sentence, filled in. `plural` names the form of a number, as the rules of the language have it.
    pub fn fill(&self, key: &str, fillings: &Fillings, plural: &dyn Fn(f64) -> &'static str) -> Option<String> {
        let mut text = String::new();
        Filler { fillings, plural }.pattern(self.find(key)?, &mut text);
        Some(text)
    }

    fn find(&self, key: &str) -> Option<&Pattern<&'static str>> {
        let at = self.sentences.binary_search_by(|(name, _)| (*name).cmp(key)).ok()?;
        self.sentences.get(at).map(|(_, pattern)| pattern)
    }
}

struct Filler<'a> {
    fillings: &'a Fillings,
    plural: &'a dyn Fn(f64) -> &'static str,
}

impl Filler<'_> {
    fn pattern(&self, pattern: &Pattern<&str>, text: &mut String) {
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => text.push_str(value),
                PatternElement::Placeable { expression } => self.expression(expression, text),
            }
        }
    }

    fn expression(&self, expression: &Expression<&str>, text: &mut String) {
        match expression {
            Expression::Inline(InlineExpression::VariableReference { id }) => {
                if let Some(Filling::Text(filling)) = self.filling(id.name) {
                    text.push_str(filling);
                }
            }
            Expression::Select { selector: InlineExpression::VariableReference { id }, variants } => {
                if let Some(variant) = self.chosen(id.name, variants) {
                    self.pattern(&variant.value, text);
                }
            }
            // The catalogue uses nothing else; a test formats every sentence of it.
            _ => {}
        }
    }

    fn filling(&self, name: &str) -> Option<&Filling> {
        self.fillings.iter().find(|(filled, _)| filled == name).map(|(_, filling)| filling)
    }

    /// The variant whose name is the plural form of the number, or else the default.
    fn chosen<'v, 's>(&self, name: &str, variants: &'v [Variant<&'s str>]) -> Option<&'v Variant<&'s str>> {
        let form = match self.filling(name) {
            Some(Filling::Number(number)) => (self.plural)(*number),
            _ => "other",
        };
        let is_form = |variant: &&Variant<&str>| matches!(variant.key, VariantKey::Identifier { name } if name == form);
        variants.iter().find(is_form).or_else(|| variants.iter().find(|variant| variant.default))
    }
}
