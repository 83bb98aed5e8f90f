//! Where to put tape on a floor, so that the van can be walked through before anything is bought: offsets from one corner.
//!
//! ```
//! use kerbstead_core::space::taping::{Inches, inches};
//! let on_tape = |mm| { let Inches { whole, numerator, denominator, .. } = inches(mm); (whole, numerator, denominator) };
//! assert_eq!(on_tape(1_000.0), (39, 3, 8));
//! assert_eq!(on_tape(611.0), (24, 1, 16));
//! assert_eq!(on_tape(38.0), (1, 1, 2));
//! ```

use super::constants::MOST_MM;
use super::geometry::{Point, whole};
use super::item::Layout;
use super::shape::Spot;
use crate::words::MM_PER_INCH;

/// A mark on the floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mark {
    /// What it is a corner of.
    pub of: Marked,
    /// Which corner of it, from 0.
    pub corner: usize,
    /// From the corner that all is measured from, along the van, in millimetres; less than nothing: away from the van.
    pub along_mm: i32,
    /// From that corner across the van, in millimetres.
    pub across_mm: i32,
    /// From that corner straight to the mark, in millimetres: if this is right too, the angle is.
    pub straight_mm: i32,
}

/// What is marked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Marked {
    /// The outline of the floor.
    Outline,
    /// Something that is built in, by its number.
    Fixed(usize),
    /// An item, by its number.
    Item(usize),
}

/// A length in inches, to the nearest sixteenth, as it is read off a tape: the fraction is in its lowest terms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Inches {
    /// Less than nothing.
    pub is_negative: bool,
    /// Whole inches.
    pub whole: i64,
    /// The upper number of the fraction, 0 when there is none.
    pub numerator: i64,
    /// The lower number of the fraction: 1, 2, 4, 8 or 16.
    pub denominator: i64,
}

/// All marks in the order in which the tape is laid: the outline from the corner that all is measured from, what is built
/// in, then the items, the nearest first and each from its nearest corner. What is outside the van is not marked.
///
/// `corner` is the number of a corner of the outline; nothing comes back when there is none of this number.
pub fn taping(layout: &Layout, corner: usize) -> Vec<Mark> {
    let outline = &layout.shape.outline;
    let Some(from) = outline.get(corner) else { return Vec::new() };
    let origin = Origin::new(outline, *from);
    let mut marks = Vec::new();
    for step in 0..outline.len() {
        let at = (corner + step) % outline.len();
        marks.extend(outline.get(at).map(|spot| origin.mark(Marked::Outline, at, spot.point())));
    }
    let fixed = layout.shape.fixed.iter().enumerate();
    origin.add(&mut marks, fixed.map(|(number, fixed)| (Marked::Fixed(number), fixed.corners().to_vec())).collect());
    let items = layout.items.iter().enumerate().filter(|(_, item)| item.is_inside());
    origin.add(&mut marks, items.map(|(number, item)| (Marked::Item(number), item.solid().corners)).collect());
    marks
}

/// A length to the nearest sixteenth of an inch; halves go away from nothing. Source of the inch: NIST Handbook 44,
/// appendix C (25.4 mm, exact).
pub fn inches(mm: f64) -> Inches {
    #[expect(clippy::cast_possible_truncation, reason = "a length, and no more than the range of the cast")]
    let sixteenths = libm::round(mm.abs().min(MOST_MM.into()) * 16.0 / MM_PER_INCH) as i64;
    let (mut numerator, mut denominator) = (sixteenths % 16, 16);
    while denominator > 1 && numerator % 2 == 0 {
        (numerator, denominator) = (numerator / 2, denominator / 2);
    }
    Inches { is_negative: mm < 0.0 && sixteenths > 0, whole: sixteenths / 16, numerator, denominator }
}

/// The corner that all is measured from, and which ways lead into the van.
struct Origin {
    from: Point,
    inward: (f64, f64),
}

impl Origin {
    fn new(outline: &[Spot], from: Spot) -> Self {
        let more = |pick: fn(&Spot) -> i32| {
            let (above, below) = outline
                .iter()
                .map(|spot| i64::from(pick(spot)) - i64::from(pick(&from)))
                .fold((0, 0), |(above, below), way| (above.max(way), below.max(-way)));
            if above >= below { 1.0 } else { -1.0 }
        };
        Self { from: from.point(), inward: (more(|spot| spot.x_mm), more(|spot| spot.y_mm)) }
    }

    fn mark(&self, of: Marked, corner: usize, at: Point) -> Mark {
        let way = at.minus(self.from);
        Mark {
            of,
            corner,
            along_mm: nearest(way.x * self.inward.0),
            across_mm: nearest(way.y * self.inward.1),
            straight_mm: nearest(way.length()),
        }
    }

    /// Adds things, the nearest first, each from its nearest corner on.
    fn add(&self, marks: &mut Vec<Mark>, things: Vec<(Marked, Vec<Point>)>) {
        let mut ordered: Vec<(Mark, Vec<Mark>)> = Vec::new();
        for (of, corners) in things {
            let mut own: Vec<Mark> =
                corners.iter().enumerate().map(|(corner, point)| self.mark(of, corner, *point)).collect();
            let nearest = (0..own.len()).min_by_key(|at| own.get(*at).map(|mark| mark.straight_mm)).unwrap_or(0);
            own.rotate_left(nearest);
            if let Some(first) = own.first() {
                ordered.push((*first, own));
            }
        }
        ordered.sort_by_key(|(first, _)| first.straight_mm);
        marks.extend(ordered.into_iter().flat_map(|(_, own)| own));
    }
}

/// To the nearest millimetre.
fn nearest(mm: f64) -> i32 {
    whole(libm::round(mm))
}
