//! One way of cutting: the parts in some order, each into the corner of the rectangle where it fits best, which is then
//! cut in two beside it.

use super::problem::{Problem, Wanted};

/// A rectangle on a sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Rect {
    pub(super) along: u64,
    pub(super) across: u64,
    pub(super) length: u64,
    pub(super) width: u64,
}

impl Rect {
    pub(super) fn area(&self) -> u128 {
        u128::from(self.length) * u128::from(self.width)
    }
}

/// What became of a rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Node {
    Free(Rect),
    Part { entry: usize, is_turned: bool, rect: Rect },
    Cut { rect: Rect, is_across: bool, at: u64, first: usize, second: Option<usize> },
}

/// Which free rectangle a part goes into.
#[derive(Clone, Copy, Debug)]
pub(super) enum Fit {
    /// That of which least is left.
    Area,
    /// That where the lesser of both rests is least.
    ShortRest,
    /// That where the larger of both rests is least.
    LongRest,
}

/// How the rest beside a part is cut.
#[derive(Clone, Copy, Debug)]
pub(super) enum Split {
    /// So that the largest rectangle is left.
    LargestRest,
    /// The shorter rest is cut off first.
    ShorterFirst,
    /// Across the sheet first.
    Across,
    /// Along it first.
    Along,
}

/// Rules of a way of cutting.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rules {
    pub(super) fit: Fit,
    pub(super) split: Split,
    /// Which entry of sheets is begun where a part fits nowhere.
    pub(super) opened: usize,
}

pub(super) const FITS: [Fit; 3] = [Fit::Area, Fit::ShortRest, Fit::LongRest];
pub(super) const SPLITS: [Split; 4] = [Split::LargestRest, Split::ShorterFirst, Split::Across, Split::Along];

/// A sheet that was begun; its first node is the whole of it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Begun {
    pub(super) stock: usize,
    pub(super) nodes: Vec<Node>,
}

/// All sheets, and what is left out.
#[derive(Clone, Debug, Default)]
pub(super) struct Packing {
    pub(super) sheets: Vec<Begun>,
    pub(super) missing: Vec<Wanted>,
    free: Vec<(usize, usize, Rect)>,
    /// How many rectangles were looked at.
    pub(super) work: u64,
}

/// Where a part may go: how bad that is, the place among the free rectangles, and how it lies.
type Choice = (u128, usize, (u64, u64, bool));

/// Cuts parts in their order.
pub(super) fn pack(problem: &Problem, order: &[Wanted], rules: Rules) -> Packing {
    let mut packing = Packing::default();
    let mut left: Vec<u64> = problem.stocks.iter().map(|stock| stock.limit.unwrap_or(u64::MAX)).collect();
    for (at, stock) in problem.stocks.iter().enumerate() {
        if stock.cost == 0 && stock.limit.is_some() {
            let scraps = left[at].min(order.len() as u64);
            (0..scraps).for_each(|_| packing.begin(problem, at));
            left[at] = 0;
        }
    }
    for part in order {
        if packing.best(part, rules.fit).is_none() {
            let Some(stock) = opening(problem, part, &left, rules.opened) else {
                packing.missing.push(*part);
                continue;
            };
            left[stock] -= 1;
            packing.begin(problem, stock);
        }
        if let Some((_, at, way)) = packing.best(part, rules.fit) {
            packing.place(problem.kerf, part, at, way, rules.split);
        }
    }
    packing
}

fn opening(problem: &Problem, part: &Wanted, left: &[u64], opened: usize) -> Option<usize> {
    let holds = |stock: &usize| left[*stock] > 0 && problem.stocks[*stock].holds(part);
    let cheapest = || (0..problem.stocks.len()).filter(holds).min_by_key(|stock| problem.stocks[*stock].cost);
    if holds(&opened) { Some(opened) } else { cheapest() }
}

impl Packing {
    fn begin(&mut self, problem: &Problem, stock: usize) {
        let of = problem.stocks[stock];
        let rect = Rect { along: problem.trim, across: problem.trim, length: of.length, width: of.width };
        self.free.push((self.sheets.len(), 0, rect));
        self.sheets.push(Begun { stock, nodes: vec![Node::Free(rect)] });
    }

    fn best(&mut self, part: &Wanted, fit: Fit) -> Option<Choice> {
        self.work += self.free.len() as u64;
        let mut best: Option<Choice> = None;
        for (at, (.., rect)) in self.free.iter().enumerate() {
            for way in part.ways().filter(|(length, width, _)| *length <= rect.length && *width <= rect.width) {
                let (long, wide) = (u128::from(rect.length - way.0), u128::from(rect.width - way.1));
                let rest = match fit {
                    Fit::Area => rect.area(),
                    Fit::ShortRest => long.min(wide),
                    Fit::LongRest => long.max(wide),
                };
                if best.is_none_or(|(least, ..)| rest < least) {
                    best = Some((rest, at, way));
                }
            }
        }
        best
    }

    /// Cuts a part off the corner of a free rectangle.
    fn place(&mut self, kerf: u64, part: &Wanted, at: usize, way: (u64, u64, bool), split: Split) {
        let (sheet, node, rect) = self.free.swap_remove(at);
        let (length, width, is_turned) = way;
        let across_first = is_across_first(rect, length, width, split);
        let begun = &mut self.sheets[sheet];
        let mut strip = (node, rect);
        for is_across in [across_first, !across_first] {
            let size = if is_across { length } else { width };
            let cut = cut(begun, strip, is_across, size, kerf);
            if let Some((free, rect)) = cut.1 {
                self.free.push((sheet, free, rect));
            }
            strip = cut.0;
        }
        begun.nodes[strip.0] = Node::Part { entry: part.entry, is_turned, rect: strip.1 };
    }
}

fn is_across_first(rect: Rect, length: u64, width: u64, split: Split) -> bool {
    let (long, wide) = (rect.length - length, rect.width - width);
    match split {
        Split::LargestRest => u128::from(long) * u128::from(rect.width) >= u128::from(wide) * u128::from(rect.length),
        Split::ShorterFirst => long < wide,
        Split::Across => true,
        Split::Along => false,
    }
}

/// A rectangle of a sheet, by its node.
type Piece = (usize, Rect);

/// Cuts a rectangle to a size, unless it has it; gives what is before the cut, and what is beyond.
fn cut(begun: &mut Begun, (node, rect): Piece, is_across: bool, size: u64, kerf: u64) -> (Piece, Option<Piece>) {
    let (from, whole) = if is_across { (rect.along, rect.length) } else { (rect.across, rect.width) };
    if whole == size {
        return ((node, rect), None);
    }
    let part = |begins: u64, size: u64| {
        if is_across {
            Rect { along: begins, length: size, ..rect }
        } else {
            Rect { across: begins, width: size, ..rect }
        }
    };
    let first = (begun.nodes.len(), part(from, size));
    begun.nodes.push(Node::Free(first.1));
    let left = whole.saturating_sub(size + kerf);
    let second = (left > 0).then(|| {
        let beyond = (begun.nodes.len(), part(from + size + kerf, left));
        begun.nodes.push(Node::Free(beyond.1));
        beyond
    });
    begun.nodes[node] =
        Node::Cut { rect, is_across, at: from + size, first: first.0, second: second.map(|piece| piece.0) };
    (first, second)
}
