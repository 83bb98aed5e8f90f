//! The module as small as it gets, and the script that calls it.
//!
//! A library may export functions from the module for scripts of its own kind. Linkers keep what is exported, so that a
//! page that never asks for it carries it all the same. Here the script says what is called, and the rest goes.

use super::order::named_by_likeness;
use crate::command;
use anyhow::{Context, Result};
use std::fs;
use std::path::Path;

/// What the module uses of newer WebAssembly.
const FEATURES: [&str; 7] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
];

/// How the code is made short: by leaving functions alone that are called from one place, and only then by more.
const SMALL: [&str; 5] = [
    "--low-memory-unused",
    "--one-caller-inline-max-function-size=20",
    "--always-inline-max-function-size=4",
    // Zeros between data cost nothing once compressed, and the headers of smaller pieces do.
    "--skip-pass=memory-packing",
    "-Oz",
];

/// What is done before.
const FIRST: [&str; 7] = [
    "--strip-producers",
    "--strip-target-features",
    "--flatten",
    "--rereloop",
    "--simplify-locals-notee-nostructure",
    "--vacuum",
    "-Oz",
];

/// What is done once functions have names to be sorted by; it tells the short names.
const LAST: [&str; 2] = ["--reorder-functions-by-name", "--minify-imports-and-exports-and-modules"];

/// How the script names an export of the module.
const EXPORT: &str = "wasm.";

/// What precedes each function of the script for the module.
const INDENT: &str = "        ";

/// The short name of the script as the module knows it.
const MODULE: &str = "a";

/// Makes the module and the script of that name small, in place.
pub fn trim(dist: &Path, stem: &str) -> Result<()> {
    let (script, module) = (dist.join(format!("{stem}.js")), dist.join(format!("{stem}_bg.wasm")));
    let text = fs::read_to_string(&script).with_context(|| format!("reading {}", script.display()))?;
    let text = without_classes(&text);
    reachable(&module, &exports(&text))?;
    let names = shortened(&module)?;
    put(&script, renamed(&text, &names).as_bytes())
}

fn put(path: &Path, bytes: &[u8]) -> Result<()> {
    fs::write(path, bytes).with_context(|| format!("writing {}", path.display()))
}

/// The script without classes. Ours exports functions only; the classes are those of libraries.
fn without_classes(script: &str) -> String {
    let mut text = String::new();
    let mut is_kept = true;
    for line in script.split_inclusive('\n') {
        // What goes on is indented, or begins with a brace.
        if line.starts_with(|first: char| first.is_alphabetic() || first == '/') {
            is_kept = !is_of_class(line);
        }
        if is_kept {
            text += line;
        }
    }
    text
}

/// Whether a line begins a class, or one of the two statements that follow from it.
fn is_of_class(line: &str) -> bool {
    let is_registry = line.starts_with("const ") && line.contains("Finalization = ");
    is_registry || line.starts_with("export class ") || line.starts_with("if (Symbol.dispose)")
}

/// The exports that a script asks for.
fn exports(script: &str) -> Vec<&str> {
    let is_end = |character: char| !(character.is_alphanumeric() || "_$".contains(character));
    let mut names: Vec<&str> = script
        .split(EXPORT)
        .skip(1)
        .filter_map(|rest| rest.split(is_end).next())
        .filter(|name| !name.is_empty())
        .collect();
    names.sort_unstable();
    names.dedup();
    names
}

/// Leaves in the module what these exports need.
fn reachable(module: &Path, exports: &[&str]) -> Result<()> {
    let nodes: Vec<String> = exports
        .iter()
        .map(|name| format!("{{\"name\": \"export {name}\", \"export\": \"{name}\", \"root\": true}}"))
        .collect();
    let graph = module.with_extension("graph");
    put(&graph, format!("[{}]", nodes.join(", ")).as_bytes())?;
    let mut metadce = command::program("wasm-metadce");
    metadce.args(FEATURES).arg(module).arg("--graph-file").arg(&graph).arg("--output").arg(module);
    // It lists every function that goes.
    command::capture(&mut metadce)?;
    fs::remove_file(&graph).with_context(|| format!("removing {}", graph.display()))
}

/// Long names between module and script, each with the short one in its place.
#[derive(Debug, Default, PartialEq)]
struct Names {
    imports: Vec<(String, String)>,
    exports: Vec<(String, String)>,
}

/// Makes the code short, and gives what the module imports and exports short names.
fn shortened(module: &Path) -> Result<Names> {
    let optimise = |options: &[&str]| {
        let mut optimiser = command::program("wasm-opt");
        optimiser.args(FEATURES).arg(module).args(options).arg("--output").arg(module);
        command::capture(&mut optimiser)
    };
    optimise(&[&FIRST[..], &SMALL].concat())?;
    let bytes = fs::read(module).with_context(|| format!("reading {}", module.display()))?;
    put(module, &named_by_likeness(&bytes)?)?;
    Ok(names(
        &String::from_utf8(optimise(&[&SMALL[..], &LAST].concat())?).context("the list of short names is no text")?,
    ))
}

/// The names in the list that the tool prints: JSON with a name a line.
fn names(list: &str) -> Names {
    let mut names = Names::default();
    for line in list.lines() {
        let words: Vec<&str> = line.split('"').skip(1).step_by(2).collect();
        match *words.as_slice() {
            [_, long, short] => names.imports.push((long.to_owned(), short.to_owned())),
            [long, short] => names.exports.push((long.to_owned(), short.to_owned())),
            _ => {}
        }
    }
    names
}

/// The script with the short names, and without the functions that the module does not import any more.
fn renamed(script: &str, names: &Names) -> String {
    let mut text = String::new();
    let mut is_left_out = false;
    for line in script.split_inclusive('\n') {
        if let Some((long, rest)) = imported(line) {
            match names.imports.iter().find(|(name, _)| name == long) {
                Some((_, short)) => text += &format!("{short}: {rest}"),
                None => is_left_out = true,
            }
        } else if line.trim_start().starts_with("\"./") && line.trim_end().ends_with("_bg.js\": import0,") {
            text += &format!("{MODULE}: import0,\n");
        } else if !is_left_out {
            text += line;
        }
        // A function of the list ends where it began, by its indentation.
        is_left_out &= !line.strip_prefix(INDENT).is_some_and(|rest| rest.starts_with('}'));
    }
    // A name may begin as another does.
    let mut exports: Vec<_> = names.exports.iter().collect();
    exports.sort_by_key(|(long, _)| std::cmp::Reverse(long.len()));
    for (long, short) in exports {
        text = text.replace(&format!("{EXPORT}{long}"), &format!("{EXPORT}{short}"));
    }
    text
}

/// The name of a function for the module, and what follows it on its line.
fn imported(line: &str) -> Option<(&str, &str)> {
    let (name, rest) = line.strip_prefix(INDENT)?.split_once(": ")?;
    name.starts_with("__wb").then_some((name, rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SCRIPT: &str = "\
export class Foreign {
    free() {
        wasm.foreign_free(this.ptr);
    }
}
if (Symbol.dispose) Foreign.prototype[Symbol.dispose] = Foreign.prototype.free;
const ForeignFinalization = (typeof FinalizationRegistry === 'undefined')
    ? { register: () => {} }
    : new FinalizationRegistry(ptr => wasm.foreign_free(ptr, 1));
export function sum(a) {
    return wasm.sum(a) + wasm.summary(a);
}
    const import0 = {
        __wbg_now_12: function() {
            return Date.now();
        },
        __wbg_gone_34: function() { return handle(function () {
            if (gone) {
                return {};
            }
        }, arguments); },
        __wbindgen_generic_00: function(a) {
            return a;
        },
    };
        \"./page_bg.js\": import0,
";

    const LIST: &str = r#"{
 "imports": [
  ["./page_bg.js", "__wbg_now_12", "A"],
  ["./page_bg.js", "__wbindgen_generic_00", "B"]
 ],
"exports": [
  ["sum", "C"],
  ["summary", "D"]
 ]
}"#;

    #[test]
    fn a_script_keeps_what_is_called() {
        let text = without_classes(SCRIPT);
        assert!(text.starts_with("export function sum"), "{text}");
        assert_eq!(exports(&text), ["sum", "summary"]);
        let text = renamed(&text, &names(LIST));
        assert!(text.contains("return wasm.C(a) + wasm.D(a);"), "{text}");
        assert!(text.contains("A: function() {\n            return Date.now();"), "{text}");
        assert!(text.contains("B: function(a) {"), "{text}");
        assert!(!text.contains("handle"), "{text}");
        assert!(text.contains("\na: import0,\n"), "{text}");
    }
}
