//! Prepares the catalogues of sentences, so that no browser has to carry a reader of their syntax.

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey};
use fluent_syntax::parser;

#[path = "src/words/marks.rs"]
mod marks;

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
        fs::write(Path::new(&out).join(language).with_extension("sentences"), prepared)?;
    }
    Ok(())
}

/// All sentences of a catalogue, by name.
fn prepared(source: &str) -> Result<String, String> {
    let resource = parser::parse(source).map_err(|(_, faults)| format!("{faults:?}"))?;
    let mut sentences = Vec::new();
    for entry in &resource.body {
        if let Entry::Message(message) = entry {
            let name = message.id.name;
            let pattern = message.value.as_ref().ok_or_else(|| format!("{name} says nothing"))?;
            let mut text = String::from(name);
            text.push(TEXT);
            write(pattern, &mut text).map_err(|fault| format!("{name}: {fault}"))?;
            sentences.push(text);
        }
    }
    sentences.sort_unstable();
    Ok(sentences.join(SENTENCE.encode_utf8(&mut [0; 4])))
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
