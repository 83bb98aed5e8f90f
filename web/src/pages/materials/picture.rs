//! A board or a sheet with its pieces and bad places, to scale.

use kerbstead_core::explain::Figure;
use kerbstead_core::materials::{CutOne, Saw};

use super::super::space::clamp;
use crate::el::{View, svg};

/// A board is drawn at least as wide as this part of its length, so that numbers can be read.
const LEAST_WIDTH: f64 = 0.08;

/// The picture; pieces have the numbers of the table. What cannot be used goes from one place to another.
pub fn picture(one: &CutOne, flaws_mm: &[(f64, f64)]) -> View {
    let is_board = one.left_width_mm <= 0.0 && one.pieces.iter().all(|piece| piece.width_mm <= 0.0);
    let length = one.length_mm.max(1.0);
    let width = if is_board { one.width_mm.max(length * LEAST_WIDTH) } else { one.width_mm.max(1.0) };
    let letters = clamp(length * 0.035);
    let pieces = one.pieces.iter().enumerate().map(|(at, piece)| {
        let side = if is_board { width } else { piece.width_mm };
        let rect = svg("rect")
            .class("piece")
            .attr("x", clamp(piece.along_mm))
            .attr("y", clamp(piece.across_mm))
            .attr("width", clamp(piece.length_mm))
            .attr("height", clamp(side));
        let number = svg("text")
            .attr("x", clamp(piece.along_mm + piece.length_mm / 2.0))
            .attr("y", clamp(piece.across_mm + side / 2.0))
            .attr("font-size", letters)
            .put((at + 1).to_string());
        svg("g").put(rect).put(number).done()
    });
    let flaws = flaws_mm.iter().map(|(from, to)| {
        let across = |x1: f64, x2: f64| {
            let [x1, x2, y2] = [x1, x2, width].map(clamp);
            svg("line").attr("x1", x1).attr("y1", 0).attr("x2", x2).attr("y2", y2).done()
        };
        svg("g").class("flaw").put(across(*from, *to)).put(across(*to, *from)).done()
    });
    let saws = one.saws.iter().map(|saw| line(saw, if is_board { width } else { saw.to_mm }));
    svg("svg")
        .class("cut-picture")
        .attr("viewBox", format!("0 0 {} {}", clamp(length), clamp(width)))
        .attr("role", "img")
        .attr("aria-label", tell!("materials-picture", &vec![("count", Figure::count(one.pieces.len()))]))
        .put(svg("rect").class("rest").attr("width", clamp(length)).attr("height", clamp(width)))
        .put_each(flaws)
        .put_each(pieces)
        .put_each(saws)
        .done()
}

fn line(saw: &Saw, to_mm: f64) -> View {
    let [at, from, to] = [saw.at_mm, saw.from_mm, to_mm].map(clamp);
    let [x1, y1, x2, y2] = if saw.is_across { [at, from, at, to] } else { [from, at, to, at] };
    svg("line").class("saw").attr("x1", x1).attr("y1", y1).attr("x2", x2).attr("y2", y2).done()
}
