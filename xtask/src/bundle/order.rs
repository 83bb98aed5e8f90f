//! Functions that are alike side by side: gzip looks back 32 KiB, and finds more there of what it has seen before.
//!
//! The optimiser can sort functions by name. So each is given a name here that says where it belongs.

use anyhow::{Context, Result, ensure};
use std::collections::HashMap;
use std::ops::Range;

/// As many bytes of code are compared at a time.
const PIECE: usize = 5;
/// Pieces that occur in more functions than this say little of any of them.
const COMMON: usize = 100;
/// A function is compared with so many before it.
const LOOK_BACK: usize = 6;
/// Added to a function's pieces, so that tiny ones are not alike to everything.
const TINY: f64 = 30.0;

const CUSTOM: u8 = 0;
const IMPORTS: u8 = 2;
const CODE: u8 = 10;
const FUNCTION_NAMES: u8 = 1;

/// The module with names by which its functions, once sorted, lie beside those that are like them.
pub fn named_by_likeness(module: &[u8]) -> Result<Vec<u8>> {
    let sections = sections(module)?;
    let section = |kind| sections.iter().find(|section| section.0 == kind).map(|section| &module[section.1.clone()]);
    let imported = section(IMPORTS).map_or(Ok(0), imported_functions)?;
    let bodies = bodies(section(CODE).context("a module without code")?)?;
    let mut named: Vec<u8> = module[..8].to_vec();
    for (kind, content) in &sections {
        let content = &module[content.clone()];
        if *kind != CUSTOM || !content.starts_with(b"\x04name") {
            put_section(&mut named, *kind, content);
        }
    }
    put_section(&mut named, CUSTOM, &names(imported, &order(&bodies)));
    Ok(named)
}

/// The functions by likeness: each next one is what is most like the last few, by the rarer pieces of their code.
fn order(bodies: &[&[u8]]) -> Vec<usize> {
    let pieces: Vec<Vec<u64>> = bodies.iter().map(|body| pieces(body)).collect();
    let mut with: HashMap<u64, Vec<usize>> = HashMap::new();
    for (function, pieces) in pieces.iter().enumerate() {
        for piece in pieces {
            with.entry(*piece).or_default().push(function);
        }
    }
    with.retain(|_, functions| (2..=COMMON).contains(&functions.len()));

    let mut by_length: Vec<usize> = (0..bodies.len()).collect();
    by_length.sort_by_key(|&function| std::cmp::Reverse(bodies[function].len()));
    let mut is_left = vec![true; bodies.len()];
    let mut order: Vec<usize> = Vec::new();
    let mut longest = by_length.iter();
    let mut next = longest.next().copied();
    while let Some(function) = next {
        is_left[function] = false;
        order.push(function);
        let mut scores = vec![0.0; bodies.len()];
        for (distance, &before) in order.iter().rev().take(LOOK_BACK).enumerate() {
            for &like in pieces[before].iter().filter_map(|piece| with.get(piece)).flatten() {
                scores[like] += 1.0 / (1.0 + distance as f64) / (pieces[like].len() as f64 + TINY);
            }
        }
        let most_like = (0..bodies.len()).filter(|&like| is_left[like] && scores[like] > 0.0);
        next = most_like
            .max_by(|&a, &b| scores[a].total_cmp(&scores[b]).then(b.cmp(&a)))
            .or_else(|| longest.find(|&&function| is_left[function]).copied());
    }
    order
}

/// Every few bytes of some code, each once.
fn pieces(body: &[u8]) -> Vec<u64> {
    let number = |piece: &[u8]| piece.iter().fold(0, |number, byte| number << 8 | u64::from(*byte));
    let mut pieces: Vec<u64> = body.windows(PIECE).map(number).collect();
    pieces.sort_unstable();
    pieces.dedup();
    pieces
}

/// The content of a section of names; a name has as many digits as any other, so that they sort as numbers do.
fn names(imported: usize, order: &[usize]) -> Vec<u8> {
    let mut ranks = vec![0; order.len()];
    for (rank, &function) in order.iter().enumerate() {
        ranks[function] = rank;
    }
    let mut list = Vec::new();
    put_number(&mut list, ranks.len());
    for (function, rank) in ranks.iter().enumerate() {
        put_number(&mut list, imported + function);
        put_bytes(&mut list, format!("{rank:06}").as_bytes());
    }
    let mut content = Vec::new();
    put_bytes(&mut content, b"name");
    content.push(FUNCTION_NAMES);
    put_bytes(&mut content, &list);
    content
}

/// The kind and the content of each section.
fn sections(module: &[u8]) -> Result<Vec<(u8, Range<usize>)>> {
    ensure!(module.starts_with(b"\0asm"), "not a WebAssembly module");
    let mut sections = Vec::new();
    let mut reader = Reader { bytes: module, at: 8 };
    while reader.at < module.len() {
        let kind = reader.byte()?;
        let length = reader.number()?;
        let start = reader.at;
        reader.skip(length)?;
        sections.push((kind, start..reader.at));
    }
    Ok(sections)
}

/// How many functions a module imports; it imports nothing else, since a browser gives it nothing else.
fn imported_functions(section: &[u8]) -> Result<usize> {
    Reader { bytes: section, at: 0 }.number()
}

/// The code of each function.
fn bodies(section: &[u8]) -> Result<Vec<&[u8]>> {
    let mut reader = Reader { bytes: section, at: 0 };
    let count = reader.number()?;
    let mut body = || {
        let length = reader.number()?;
        let start = reader.at;
        reader.skip(length)?;
        Ok(&section[start..reader.at])
    };
    (0..count).map(|_| body()).collect()
}

/// Reads a module's bytes.
struct Reader<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl Reader<'_> {
    fn byte(&mut self) -> Result<u8> {
        let byte = self.bytes.get(self.at).copied().context("a module that ends too early")?;
        self.at += 1;
        Ok(byte)
    }

    /// A number of seven bits a byte, the lowest first (LEB128).
    fn number(&mut self) -> Result<usize> {
        let mut number = 0;
        for shift in (0..usize::BITS).step_by(7) {
            let byte = self.byte()?;
            number |= usize::from(byte & 0x7f) << shift;
            if byte < 0x80 {
                break;
            }
        }
        Ok(number)
    }

    fn skip(&mut self, length: usize) -> Result<()> {
        self.at += length;
        ensure!(self.at <= self.bytes.len(), "a module that ends too early");
        Ok(())
    }
}

fn put_section(module: &mut Vec<u8>, kind: u8, content: &[u8]) {
    module.push(kind);
    put_bytes(module, content);
}

fn put_bytes(to: &mut Vec<u8>, bytes: &[u8]) {
    put_number(to, bytes.len());
    to.extend(bytes);
}

fn put_number(to: &mut Vec<u8>, mut number: usize) {
    while number >= 0x80 {
        to.push(number.to_le_bytes()[0] | 0x80);
        number >>= 7;
    }
    to.push(number.to_le_bytes()[0]);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn functions_that_are_alike_lie_side_by_side() {
        let (a, b) = (b"0123456789abcdefgh".as_slice(), b"ZYXWVUTSRQPONMLKJI".as_slice());
        let (also_a, also_b) = (b"__0123456789abcdef".as_slice(), b"__ZYXWVUTSRQPONMLK".as_slice());
        let order = order(&[a, b, also_a, also_b]);
        assert!(order == [0, 2, 1, 3] || order == [1, 3, 0, 2], "{order:?}");
    }

    #[test]
    fn a_module_keeps_its_sections_and_gets_other_names() {
        // One type, one function of it, one body, and a name.
        let module =
            b"\0asm\x01\0\0\0\x01\x04\x01\x60\0\0\x03\x02\x01\0\x0a\x04\x01\x02\0\x0b\0\x0b\x04name\x01\x04\x01\0\x01f";
        let named = named_by_likeness(module).unwrap();
        assert!(named.starts_with(&module[..24]), "{named:?}");
        assert!(named.ends_with(b"\0\x10\x04name\x01\x09\x01\0\x06000000"), "{named:?}");
        assert!(named_by_likeness(b"\0asm\x01\0\0\0\x0a\x7f").is_err());
    }
}
