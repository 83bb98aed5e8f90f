//! Prepares the catalogues of sentences, so that no browser has to carry a reader of their syntax.

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey};
use fluent_syntax::parser;

#[path = "src/words/key.rs"]
mod key;
#[path = "src/words/marks.rs"]
mod marks;

use key::Key;
use marks::{CHOICE, CHOICE_END, SENTENCE, TEXT, VARIABLE, VARIABLE_END, VARIANT};

const FOLDER: &str = "src/words";
const LANGUAGES: [&str; 1] = ["en"];

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo:rerun-if-changed={FOLDER}");
    let out = env::var("OUT_DIR")?;
    for language in LANGUAGES {
        let source = Path::new(FOLDER).join(language).with_extension("ftl");
        let prepared =
            prepared(&fs::read_to_string(&source)?).map_err(|fault| format!("{}: {fault}", source.display()))?;
        let out = Path::new(&out).join(language);
        fs::write(out.with_extension("sentences"), prepared.sentences)?;
        fs::write(out.with_extension("keys"), prepared.keys)?;
    }
    Ok(())
}

/// A catalogue for the app.
struct Prepared {
    /// All sentences, by their keys.
    sentences: String,
    /// The keys, each as its distance from the one before: two bytes, the lower first.
    keys: Vec<u8>,
}

fn prepared(source: &str) -> Result<Prepared, String> {
    let resource = parser::parse(source).map_err(|(_, faults)| format!("{faults:?}"))?;
    let mut sentences = Vec::new();
    for entry in &resource.body {
        if let Entry::Message(message) = entry {
            let name = message.id.name;
            let pattern = message.value.as_ref().ok_or_else(|| format!("{name} says nothing"))?;
            let mut text = String::new();
            write(pattern, &mut text).map_err(|fault| format!("{name}: {fault}"))?;
            sentences.push((Key::of(name), name, text));
        }
    }
    sentences.sort_unstable();
    let mut keys = Vec::new();
    let mut before = Key::START;
    for (key, name, _) in &sentences {
        let distance = u16::try_from(key.after(before)).ok().filter(|distance| *distance > 0);
        keys.extend(distance.ok_or_else(|| format!("{name} needs another name: its key will not do"))?.to_le_bytes());
        before = *key;
    }
    let texts: Vec<String> = sentences.into_iter().map(|(_, _, text)| text).collect();
    Ok(Prepared { sentences: texts.join(SENTENCE.encode_utf8(&mut [0; 4])), keys })
}

fn write(pattern: &Pattern<&str>, text: &mut String) -> Result<(), String> {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => text.push_str(value),
            PatternElement::Placeable { expression } => placeable(expression, text)?,
        }
    }
    Ok(())
}

/// The two kinds that the catalogues use.
fn placeable(expression: &Expression<&str>, text: &mut String) -> Result<(), String> {
    match expression {
        Expression::Inline(InlineExpression::VariableReference { id }) => {
            text.push(VARIABLE);
            text.push_str(id.name);
            text.push(VARIABLE_END);
        }
        Expression::Select { selector: InlineExpression::VariableReference { id }, variants } => {
            text.push(CHOICE);
            text.push_str(id.name);
            // The one that is taken when no other fits stands last.
            let (default, others): (Vec<_>, Vec<_>) = variants.iter().partition(|variant| variant.default);
            for variant in others.into_iter().chain(default) {
                let VariantKey::Identifier { name } = variant.key else {
                    return Err("a number as the name of a variant".to_owned());
                };
                text.push(VARIANT);
                text.push_str(name);
                text.push(TEXT);
                let start = text.len();
                write(&variant.value, text)?;
                if text[start..].contains(CHOICE) {
                    return Err("a choice within a choice".to_owned());
                }
            }
            text.push(CHOICE_END);
        }
        _ => return Err("a placeable that is neither a variable nor a choice by one".to_owned()),
    }
    Ok(())
}
