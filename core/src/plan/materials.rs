//! Boards and sheets with what is cut of them, and what surfaces are covered with.

use rust_decimal::Decimal;

use super::record::{record, words};
use super::{Id, Material, Money, Plain};
use crate::materials::lumber;
use crate::words::MM_PER_INCH;

/// Boards or sheets of one size that can be had, or that are there already.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Stock {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// Whether it is a board or a sheet.
    pub stock_kind: StockKind,
    /// The size it is sold by, where it has one: then it is as thick and wide as the standard says, whatever is typed.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub nominal: Option<Nominal>,
    /// What it is of.
    pub material: Material,
    /// Its length: of a sheet, along its grain.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub length_mm: Option<f64>,
    /// Its width.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub width_mm: Option<f64>,
    /// Its thickness.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub thick_mm: Option<f64>,
    /// What one costs, as marked, with or without tax as the purse says.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub stock_price: Option<Money>,
    /// Whether it is at hand: own scrap, which costs nothing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub at_hand: bool,
    /// How many there are; without it, as many as one likes, or one where it is at hand.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub how_many: Option<u32>,
    /// Mass of one; without it, by its size and what is usual for its material.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub one_kg: Option<f64>,
    /// The thing of the kit that stands for those that are bought.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub bought_as: Option<Id>,
}

record!(Stock {
    id, name, stock_kind, nominal, material, length_mm, width_mm, thick_mm, stock_price, at_hand, how_many, one_kg,
    bought_as,
} unless empty { at_hand });

impl Stock {
    /// How thick and how wide it is, in millimetres: by its nominal size where it has one. A panel has no width by it.
    ///
    /// ```
    /// use kerbstead_core::plan::{Nominal, Stock};
    /// let stock = Stock { nominal: Some(Nominal::By2x4), ..Stock::default() };
    /// assert_eq!(stock.section_mm(), (Some(38.0), Some(89.0)));
    /// ```
    pub fn section_mm(&self) -> (Option<f64>, Option<f64>) {
        match self.nominal.and_then(Nominal::section_mm) {
            Some((thick_mm, width_mm)) => (Some(thick_mm), width_mm.or(self.width_mm)),
            None => (self.thick_mm, self.width_mm),
        }
    }
}

impl Default for Stock {
    fn default() -> Self {
        Self {
            id: 0,
            name: String::new(),
            stock_kind: StockKind::Board,
            nominal: None,
            material: Material::Timber,
            length_mm: None,
            width_mm: None,
            thick_mm: None,
            stock_price: None,
            at_hand: false,
            how_many: None,
            one_kg: None,
            bought_as: None,
        }
    }
}

/// How something is cut.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum StockKind {
    /// To lengths.
    #[default]
    Board,
    /// To rectangles, from edge to edge.
    Sheet,
}

words!(StockKind { Board = "board", Sheet = "sheet" });

/// A size that softwood or a panel is sold by. Source of what they are: PS 20, PS 1 and PS 2, in
/// [`lumber`](crate::materials::lumber).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum Nominal {
    #[cfg_attr(feature = "schema", schemars(rename = "1x2"))]
    By1x2,
    #[cfg_attr(feature = "schema", schemars(rename = "1x3"))]
    By1x3,
    #[cfg_attr(feature = "schema", schemars(rename = "1x4"))]
    By1x4,
    #[cfg_attr(feature = "schema", schemars(rename = "1x6"))]
    By1x6,
    #[cfg_attr(feature = "schema", schemars(rename = "1x8"))]
    By1x8,
    #[default]
    #[cfg_attr(feature = "schema", schemars(rename = "2x2"))]
    By2x2,
    #[cfg_attr(feature = "schema", schemars(rename = "2x3"))]
    By2x3,
    #[cfg_attr(feature = "schema", schemars(rename = "2x4"))]
    By2x4,
    #[cfg_attr(feature = "schema", schemars(rename = "2x6"))]
    By2x6,
    #[cfg_attr(feature = "schema", schemars(rename = "4x4"))]
    By4x4,
    /// A panel of a quarter of an inch.
    PanelQuarter,
    PanelThreeEighths,
    PanelHalf,
    PanelFiveEighths,
    PanelThreeQuarters,
}

words!(Nominal {
    By1x2 = "1x2", By1x3 = "1x3", By1x4 = "1x4", By1x6 = "1x6", By1x8 = "1x8", By2x2 = "2x2", By2x3 = "2x3",
    By2x4 = "2x4", By2x6 = "2x6", By4x4 = "4x4", PanelQuarter = "panel_quarter",
    PanelThreeEighths = "panel_three_eighths", PanelHalf = "panel_half", PanelFiveEighths = "panel_five_eighths",
    PanelThreeQuarters = "panel_three_quarters",
});

impl Nominal {
    /// How thick it is, and how wide where it says so, in millimetres.
    pub fn section_mm(self) -> Option<(f64, Option<f64>)> {
        let inches = match self {
            Self::PanelQuarter => 0.25,
            Self::PanelThreeEighths => 0.375,
            Self::PanelHalf => 0.5,
            Self::PanelFiveEighths => 0.625,
            Self::PanelThreeQuarters => 0.75,
            _ => {
                let size = lumber::actual(self.to_plain().as_str()?)?;
                return Some((size.thickness_mm, Some(size.width_mm)));
            }
        };
        lumber::panel_thickness_in(inches).map(|thick_in| (thick_in * MM_PER_INCH, None))
    }
}

/// A part of a board that cannot be used: a knot, a split, old holes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Flaw {
    /// Unique in the plan.
    pub id: Id,
    /// The board it is in; where that stands for several, each has it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub flawed: Option<Id>,
    /// How far from the board's beginning it starts.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub flaw_from_mm: Option<f64>,
    /// How far from there it ends.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub flaw_to_mm: Option<f64>,
}

record!(Flaw { id, flawed, flaw_from_mm, flaw_to_mm });

/// Pieces of one size that are wanted.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Cut {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// What it is cut from: this board or sheet, or any other of the same material, thickness and, of boards, width.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub cut_from: Option<Id>,
    /// How long it is to be: of a sheet's, along the grain where it keeps it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub length_mm: Option<f64>,
    /// How wide, where it is cut of a sheet.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub width_mm: Option<f64>,
    /// How many.
    pub pieces: u32,
    /// Whether its length must lie along the sheet's grain.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub keeps_grain: bool,
}

record!(Cut { id, name, cut_from, length_mm, width_mm, pieces, keeps_grain } unless empty { keeps_grain });

impl Default for Cut {
    fn default() -> Self {
        Self {
            id: 0,
            name: String::new(),
            cut_from: None,
            length_mm: None,
            width_mm: None,
            pieces: 1,
            keeps_grain: false,
        }
    }
}

/// How all is cut. What is not said is taken as is usual.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Cutting {
    /// What a cut takes away.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub kerf_mm: Option<f64>,
    /// What is cut off at each end or edge first.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub trim_mm: Option<f64>,
    /// What is to be as little as possible; without it, what it costs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub cut_for: Option<CutFor>,
}

record!(Cutting { kerf_mm, trim_mm, cut_for });

impl Cutting {
    /// Whether nothing is said.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// What a cut takes away: 3 mm where nothing is said. Common practice, no source.
    pub fn kerf_mm(&self) -> f64 {
        self.kerf_mm.unwrap_or(3.0)
    }
}

/// What is to be as little as possible.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum CutFor {
    /// What it costs.
    #[default]
    Cheapest,
    /// How many boards are bought.
    Fewest,
}

words!(CutFor { Cheapest = "cheapest", Fewest = "fewest" });

/// A surface that is to be covered: with boards, panels, rolls, foam, paint, glue, screws.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Covering {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// Which surface.
    pub surface: Surface,
    /// How large it is, where it is one of one's own.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub own_m2: Option<f64>,
    /// What it is of.
    pub material: Material,
    /// What is lost, as more of the area.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub waste_percent: Option<f64>,
    /// How often it is covered; without it, once.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub coats: Option<u32>,
    /// What a litre, kilogram, metre or piece is enough for.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub unit_covers_m2: Option<f64>,
    /// How many litres, kilograms, metres or pieces a square metre takes, where that is known instead.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub each_m2_takes: Option<f64>,
    /// How much of what is left over will be of use elsewhere.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub rest_used_percent: Option<f64>,
    /// The covering whose packs it takes: what is left over of one goes to the next.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub same_as: Option<Id>,
    /// The pack that is bought; without it, the one that comes cheapest.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub from_pack: Option<Id>,
    /// The thing of the kit that stands for what is bought.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub bought_as: Option<Id>,
}

record!(Covering {
    id,
    name,
    surface,
    own_m2,
    material,
    waste_percent,
    coats,
    unit_covers_m2,
    each_m2_takes,
    rest_used_percent,
    same_as,
    from_pack,
    bought_as,
});

/// A surface of the van by its sizes, or another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Surface {
    /// One of one's own.
    #[default]
    Own,
    /// The roof.
    Roof,
    /// Both sides, without doors and windows.
    Sides,
    /// Roof and sides.
    RoofAndSides,
    /// The doors of the load space, without their windows.
    Doors,
    /// The floor.
    Floor,
}

words!(Surface {
    Own = "own", Roof = "roof", Sides = "sides", RoofAndSides = "roof_and_sides", Doors = "doors", Floor = "floor",
});

/// A pack that a covering could be bought in. How much is in it stands in one of its fields.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct MaterialPack {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// The covering it is for.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub covering: Option<Id>,
    /// What it costs, as marked, with or without tax as the purse says.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub pack_price: Option<Money>,
    /// Sales tax on it in percent; without it, the purse's.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub tax_percent: Option<Decimal>,
    /// Square metres in it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub pack_m2: Option<f64>,
    /// Litres in it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub pack_l: Option<f64>,
    /// Kilograms in it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub pack_kg: Option<f64>,
    /// Millimetres in it, of what goes by its length.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub pack_mm: Option<f64>,
    /// Pieces in it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub pack_pieces: Option<u32>,
    /// Mass of one pack.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub one_kg: Option<f64>,
    /// Length of one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub length_mm: Option<f64>,
    /// Width of one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub width_mm: Option<f64>,
    /// Height of one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub height_mm: Option<f64>,
}

record!(MaterialPack {
    id,
    name,
    covering,
    pack_price,
    tax_percent,
    pack_m2,
    pack_l,
    pack_kg,
    pack_mm,
    pack_pieces,
    one_kg,
    length_mm,
    width_mm,
    height_mm,
});
