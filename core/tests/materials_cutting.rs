//! Boards cut to lengths: against trying every way of cutting, published optima, and what must hold of every plan.
#![allow(clippy::unwrap_used, clippy::panic, clippy::float_cmp, reason = "a test stops at what it did not expect")]

use std::collections::BTreeMap;

use kerbstead_core::draws::Chance;
use kerbstead_core::materials::cutting::{Board, CutBoard, CutError, CutJob, CutPlan, CutSearch, Objective, Piece};
use kerbstead_core::plan::Money;

fn pieces(list: &[(f64, u32)]) -> Vec<Piece> {
    list.iter().map(|(length_mm, count)| Piece { length_mm: *length_mm, count: *count }).collect()
}

fn board(length_mm: f64, price: &str) -> Board {
    Board { length_mm, price: price.parse().unwrap(), ..Board::default() }
}

fn scrap(length_mm: f64, available: u32) -> Board {
    Board { length_mm, available: Some(available), ..Board::default() }
}

/// The usable spans of a board, read off the rules.
fn spans(board: &Board, job: &CutJob) -> Vec<(f64, f64)> {
    let mut spans = Vec::new();
    let mut from = job.trim_mm;
    let end = board.length_mm - job.trim_mm;
    let mut defects = board.defects_mm.clone();
    defects.sort_by(|a, b| a.0.total_cmp(&b.0));
    for (begins, ends) in defects {
        spans.push((from, begins.min(end)));
        // A cut at the beginning of the defect, unless nothing usable is before it: then one at its end, on the board.
        let after_the_cut = if begins > job.trim_mm { begins + job.kerf_mm } else { job.kerf_mm };
        if ends > from || begins > job.trim_mm {
            from = from.max(ends).max(after_the_cut);
        }
    }
    spans.push((from, end));
    spans.retain(|(from, to)| from < to);
    spans
}

/// Each piece is cut off on both sides, but for the ends of the board, and no cut goes into a piece.
fn assert_parted(job: &CutJob, board: &Board, cut: &CutBoard) {
    let is_cut = |at_mm: f64| cut.cuts_mm.iter().any(|saw| (saw - at_mm).abs() < 1e-5);
    let (first, last) = (job.trim_mm, board.length_mm - job.trim_mm);
    for piece in &cut.pieces {
        assert!(is_cut(piece.to_mm) || piece.to_mm >= last - 1e-5, "{job:?} {cut:?}");
        assert!(is_cut(piece.from_mm - job.kerf_mm) || piece.from_mm <= first + 1e-5, "{job:?} {cut:?}");
        let is_clear = |saw: &f64| saw + job.kerf_mm <= piece.from_mm + 1e-5 || *saw >= piece.to_mm - 1e-5;
        assert!(cut.cuts_mm.iter().all(is_clear), "{job:?} {cut:?}");
    }
    assert!(cut.cuts_mm.iter().all(|saw| *saw >= 0.0) && cut.cuts_mm.is_sorted(), "{job:?} {cut:?}");
}

/// What must hold of a plan, whatever the job.
fn assert_sound(job: &CutJob, plan: &CutPlan) {
    let mut made = vec![0; job.pieces.len()];
    let mut used = vec![0; job.boards.len()];
    for cut in &plan.boards {
        let board = &job.boards[cut.board];
        used[cut.board] += cut.alike;
        assert!(cut.alike > 0 && !cut.pieces.is_empty());
        let mut last_end = f64::NEG_INFINITY;
        for placed in &cut.pieces {
            made[placed.piece] += cut.alike;
            assert!((placed.to_mm - placed.from_mm - job.pieces[placed.piece].length_mm).abs() < 1e-5);
            assert!(placed.from_mm >= last_end + job.kerf_mm - 1e-5, "{job:?} {cut:?}");
            let holds = |(from, to): &(f64, f64)| *from <= placed.from_mm + 1e-5 && placed.to_mm <= to + 1e-5;
            assert!(spans(board, job).iter().any(holds), "{job:?} {cut:?}");
            last_end = placed.to_mm;
        }
        assert_parted(job, board, cut);
        assert!(cut.offcut_mm >= 0.0 && cut.offcut_mm < board.length_mm);
    }
    for (missing, count) in &plan.missing {
        made[*missing] += count;
    }
    assert!(made.iter().zip(&job.pieces).all(|(made, piece)| *made == piece.count), "{job:?} {plan:?}");
    for (used, board) in used.iter().zip(&job.boards) {
        assert!(board.available.is_none_or(|available| *used <= available), "{job:?} {plan:?}");
    }
    let cost: Money = used.iter().zip(&job.boards).map(|(used, board)| board.price.times(*used)).sum();
    assert_eq!((plan.cost, plan.board_count), (cost, used.iter().sum()));
    if plan.missing.is_empty() {
        let least =
            if job.objective == Objective::Cheapest { plan.cost } else { Money::whole(plan.bought_count.into()) };
        assert!(plan.bound <= least && plan.is_proven == (plan.bound == least), "{plan:?}");
    }
}

/// Whether pieces fit into spans, each tried in each.
fn fits(lengths: &[f64], rooms: &mut [f64], kerf: f64) -> bool {
    let Some((first, others)) = lengths.split_first() else { return true };
    (0..rooms.len()).any(|at| {
        let takes = first + kerf;
        let is_room = rooms[at] + 1e-6 >= takes;
        rooms[at] -= takes;
        let is_well = is_room && fits(others, rooms, kerf);
        rooms[at] += takes;
        is_well
    })
}

struct Trying<'a> {
    job: &'a CutJob,
    known: BTreeMap<(u32, Vec<u32>), (u32, u32)>,
    /// Board by board, which sets of pieces it holds.
    holds: Vec<Vec<bool>>,
}

impl Trying<'_> {
    /// The fewest missing pieces, and then the least cost, for what is left and the boards that are left.
    fn least(&mut self, left: u32, boards: &[u32]) -> (u32, u32) {
        if left == 0 {
            return (0, 0);
        }
        if let Some(known) = self.known.get(&(left, boards.to_vec())) {
            return *known;
        }
        let first = left & left.wrapping_neg();
        let (missing, cost) = self.least(left & !first, boards);
        let mut best = (missing + 1, cost);
        for at in (0..boards.len()).filter(|at| boards[*at] > 0) {
            let mut fewer = boards.to_vec();
            fewer[at] -= 1;
            let price = self.price(at);
            let mut set = left;
            while set > 0 {
                if set & first != 0 && self.holds[at][set as usize] {
                    let (missing, cost) = self.least(left & !set, &fewer);
                    best = best.min((missing, cost + price));
                }
                set = (set - 1) & left;
            }
        }
        self.known.insert((left, boards.to_vec()), best);
        best
    }

    fn price(&self, at: usize) -> u32 {
        let price = u32::try_from(self.job.boards[at].price.to_minor(0).unwrap()).unwrap();
        if self.job.objective == Objective::FewestBoards { price.min(1) } else { price }
    }
}

fn by_trying(job: &CutJob) -> (u32, u32) {
    let copies = |piece: &Piece| std::iter::repeat_n(piece.length_mm, piece.count as usize);
    let lengths: Vec<f64> = job.pieces.iter().flat_map(copies).collect();
    let sets = 1_u32 << lengths.len();
    let holds = |board: &Board| {
        let rooms: Vec<f64> = spans(board, job).iter().map(|(from, to)| to - from + job.kerf_mm).collect();
        let set = |mask: u32| {
            let chosen: Vec<f64> =
                (0..lengths.len()).filter(|at| mask & (1 << at) != 0).map(|at| lengths[at]).collect();
            fits(&chosen, &mut rooms.clone(), job.kerf_mm)
        };
        (0..sets).map(set).collect()
    };
    let boards: Vec<u32> = job.boards.iter().map(|board| board.available.unwrap_or(9).min(9)).collect();
    let holds = job.boards.iter().map(holds).collect();
    Trying { job, known: BTreeMap::new(), holds }.least(sets - 1, &boards)
}

fn below(chance: &mut Chance, low: u32, high: u32) -> u32 {
    low + chance.below(high - low + 1)
}

/// Seven pieces at most, and boards of every kind: scrap, few, enough, with knots, equal ones.
fn small(chance: &mut Chance) -> CutJob {
    let kinds = below(chance, 1, 4);
    let mut left = 7;
    let mut pieces = Vec::new();
    for _ in 0..kinds {
        let count = below(chance, 1, 3).min(left);
        left -= count;
        pieces.push(Piece { length_mm: f64::from(below(chance, 5, 40)), count });
    }
    let boards = (0..below(chance, 1, 3)).map(|_| {
        let length = below(chance, 44, 100);
        let knot = below(chance, 0, length);
        let has_knot = chance.below(4) == 0;
        Board {
            length_mm: f64::from(length),
            price: Money::whole(i64::from(below(chance, 0, 9))),
            available: (chance.below(3) == 0).then(|| below(chance, 0, 3)),
            defects_mm: if has_knot { vec![(f64::from(knot), f64::from((knot + 3).min(length)))] } else { Vec::new() },
        }
    });
    CutJob {
        pieces,
        boards: boards.collect(),
        kerf_mm: f64::from(chance.below(4)),
        trim_mm: f64::from(chance.below(6) / 4),
        objective: if chance.below(4) == 0 { Objective::FewestBoards } else { Objective::Cheapest },
    }
}

#[test]
fn nothing_is_cheaper_than_the_plans_of_two_thousand_small_jobs() {
    let mut chance = Chance::new(11);
    let (mut missing, mut too_long) = (0, 0);
    for _ in 0..2_000 {
        let job = small(&mut chance);
        let search = match CutSearch::new(&job) {
            Ok(search) => search,
            Err(CutError::PieceTooLong { .. }) => {
                too_long += 1;
                continue;
            }
            Err(error) => panic!("{error:?} {job:?}"),
        };
        let plan = search.end();
        assert_sound(&job, &plan);
        let least = match job.objective {
            Objective::Cheapest => plan.cost.to_minor(0).unwrap(),
            Objective::FewestBoards => i64::from(plan.bought_count),
        };
        let missed: u32 = plan.missing.iter().map(|(_, count)| count).sum();
        assert!(plan.is_proven, "{job:?} {plan:?}");
        assert_eq!((missed, u32::try_from(least).unwrap()), by_trying(&job), "{job:?} {plan:?}");
        missing += u32::from(missed > 0);
    }
    assert!(missing > 100 && too_long < 500, "{missing} with too few boards, {too_long} with too short ones");
}

type Case<'a> = (&'a [(i32, u32)], Vec<Board>, f64, &'a str);

/// Sources: the paper-mill example of 5600 mm and Chvátal's of 100; the others proven by `HiGHS` over all patterns.
#[test]
fn published_optima_are_found_and_proven() {
    let mill = [
        (1380, 22),
        (1520, 25),
        (1560, 12),
        (1710, 14),
        (1820, 18),
        (1880, 18),
        (1930, 20),
        (2000, 10),
        (2050, 12),
        (2100, 14),
        (2140, 16),
        (2150, 18),
        (2200, 20),
    ];
    let short = [(745, 6), (1180, 4), (560, 5), (1905, 2)];
    let cases: [Case; 6] = [
        (&mill, vec![board(5600.0, "1")], 0.0, "73"),
        (&[(45, 97), (36, 610), (31, 395), (14, 211)], vec![board(100.0, "1")], 0.0, "453"),
        (&short, vec![board(2438.0, "1")], 3.0, "8"),
        (&[(1219, 8)], vec![board(2438.0, "1")], 3.0, "8"),
        (&[(1219, 8)], vec![board(2438.0, "1")], 0.0, "4"),
        (&[(890, 5), (610, 7), (1340, 3)], vec![board(2438.0, "389"), board(3658.0, "607")], 3.0, "2210"),
    ];
    for (list, boards, kerf_mm, cost) in cases {
        let list: Vec<(f64, u32)> = list.iter().map(|(length, count)| (f64::from(*length), *count)).collect();
        let job = CutJob { pieces: pieces(&list), boards, kerf_mm, ..CutJob::default() };
        let plan = CutSearch::new(&job).unwrap().end();
        assert_sound(&job, &plan);
        assert_eq!((plan.cost.to_string().as_str(), plan.is_proven), (cost, true), "{job:?}");
    }
}

/// Eight pieces of 5 57/64 in and seven cuts of 1/8 in are four feet, and a sixty-fourth more is more.
#[test]
fn parts_of_an_inch_are_exact() {
    let inch = 25.4;
    let job = |over: f64| CutJob {
        pieces: pieces(&[((5.0 + 57.0 / 64.0 + over) * inch, 8)]),
        boards: vec![board(48.0 * inch, "1")],
        kerf_mm: 1.0 / 8.0 * inch,
        ..CutJob::default()
    };
    assert_eq!(CutSearch::new(&job(0.0)).unwrap().end().board_count, 1);
    assert_eq!(CutSearch::new(&job(1.0 / 64.0)).unwrap().end().board_count, 2);
}

#[test]
fn own_scrap_goes_first_and_what_it_cannot_give_is_bought() {
    let job = CutJob {
        pieces: pieces(&[(600.0, 3), (400.0, 1)]),
        boards: vec![board(2000.0, "5"), scrap(1010.0, 1), scrap(650.0, 1)],
        kerf_mm: 3.0,
        ..CutJob::default()
    };
    let plan = CutSearch::new(&job).unwrap().end();
    assert_sound(&job, &plan);
    assert_eq!((plan.cost.to_string().as_str(), plan.board_count, plan.bought_count), ("5", 3, 1));
    // Without a price there is nothing to gain from a shorter board, but it is the one that is taken.
    let enough = CutJob { boards: vec![board(2000.0, "5"), scrap(2600.0, 1), scrap(2300.0, 1)], ..job };
    let plan = CutSearch::new(&enough).unwrap().end();
    assert_eq!((plan.bought_count, plan.boards.len(), plan.boards[0].board), (0, 1, 2));
    assert_eq!(plan.boards[0].cuts_mm, [600.0, 1203.0, 1806.0, 2209.0]);
    assert_eq!((plan.boards[0].offcut_mm, plan.waste_mm), (88.0, 100.0));
}

#[test]
fn a_board_with_a_knot_is_two_spans() {
    let knotty = Board { defects_mm: vec![(900.0, 1000.0)], ..board(2000.0, "4") };
    let job = |length_mm: f64, kerf_mm: f64| CutJob {
        pieces: pieces(&[(length_mm, 2)]),
        boards: vec![knotty.clone()],
        kerf_mm,
        ..CutJob::default()
    };
    assert_eq!(CutSearch::new(&job(900.0, 3.0)).unwrap().end().board_count, 1);
    assert_eq!(CutSearch::new(&job(950.0, 3.0)).unwrap().end().board_count, 2);
    assert_eq!(CutSearch::new(&job(1001.0, 3.0)).err(), Some(CutError::PieceTooLong { piece: 0 }));
    // Both sides of the knot are cut off from it; where it is as narrow as a cut, that is one cut.
    let cuts_mm = |knot_mm, length_mm| {
        let job = CutJob {
            pieces: pieces(&[(length_mm, 2)]),
            boards: vec![Board { defects_mm: vec![knot_mm], ..board(2000.0, "4") }],
            kerf_mm: 3.0,
            ..CutJob::default()
        };
        CutSearch::new(&job).unwrap().end().boards[0].cuts_mm.clone()
    };
    assert_eq!(cuts_mm((1000.0, 1050.0), 900.0), [900.0, 1047.0, 1950.0]);
    assert_eq!(cuts_mm((900.0, 1000.0), 900.0), [900.0, 997.0, 1900.0]);
    assert_eq!(cuts_mm((900.0, 903.0), 900.0), [900.0, 1803.0]);
    assert_eq!(cuts_mm((0.0, 200.0), 900.0), [197.0, 1100.0]);
    // A kerf wider than the knot goes on into what is behind it.
    assert_eq!(CutSearch::new(&job(900.0, 200.0)).unwrap().end().board_count, 1);
    assert_eq!(CutSearch::new(&job(901.0, 200.0)).err(), Some(CutError::PieceTooLong { piece: 0 }));
}

#[test]
fn what_is_wrong_is_named() {
    let good = CutJob { pieces: pieces(&[(500.0, 2)]), boards: vec![board(2000.0, "4")], ..CutJob::default() };
    let wrong = |job: CutJob| CutSearch::new(&job).err().unwrap();
    for length in [0.0, -3.0, f64::NAN, f64::INFINITY, 1e9] {
        let job = CutJob { pieces: pieces(&[(500.0, 2), (length, 1)]), ..good.clone() };
        assert_eq!(wrong(job), CutError::PieceLength { piece: 1 });
        assert_eq!(
            wrong(CutJob { boards: vec![board(length, "4")], ..good.clone() }),
            CutError::BoardLength { board: 0 }
        );
    }
    let long = CutJob { pieces: pieces(&[(500.0, 2), (2100.0, 1), (2000.1, 1)]), ..good.clone() };
    assert_eq!(wrong(long), CutError::PieceTooLong { piece: 1 });
    assert_eq!(wrong(CutJob { boards: Vec::new(), ..good.clone() }), CutError::PieceTooLong { piece: 0 });
    assert_eq!(wrong(CutJob { boards: vec![board(2000.0, "-4")], ..good.clone() }), CutError::Price { board: 0 });
    assert_eq!(wrong(CutJob { kerf_mm: -1.0, ..good.clone() }), CutError::Kerf);
    assert_eq!(wrong(CutJob { trim_mm: f64::NAN, ..good.clone() }), CutError::Trim);
    let knots = Board { defects_mm: vec![(5.0, 4.0)], ..board(2000.0, "4") };
    assert_eq!(wrong(CutJob { boards: vec![knots], ..good.clone() }), CutError::Defects { board: 0, most: 20 });
    let many = CutJob { pieces: pieces(&[(500.0, u32::MAX), (400.0, u32::MAX)]), ..good.clone() };
    assert_eq!(wrong(many), CutError::TooManyPieces { most: 20_000 });
    let entries = CutJob { boards: vec![board(2000.0, "4"); 201], ..good.clone() };
    assert_eq!(wrong(entries), CutError::TooManyBoards { most: 200 });
    let nothing = CutSearch::new(&CutJob::default()).unwrap().end();
    assert!(nothing.is_proven && nothing.boards.is_empty());
    let none = CutSearch::new(&CutJob { pieces: pieces(&[(500.0, 0)]), ..good }).unwrap().end();
    assert!(none.is_proven && none.boards.is_empty());
}

/// Thousands of pieces in steps: each goes on, nothing gets worse, and it ends.
#[test]
fn large_jobs_end_with_a_bound() {
    let mut chance = Chance::new(12);
    for (kinds, most, length) in [(60, 170, 1_800), (150, 130, 3_000), (2_000, 5, 2_000), (40, 20, 400)] {
        let list = (0..kinds).map(|_| (f64::from(below(&mut chance, 100, length)) + 0.5, below(&mut chance, 1, most)));
        let job = CutJob {
            pieces: pieces(&list.collect::<Vec<_>>()),
            boards: vec![board(2438.0, "3.89"), board(3658.0, "6.07"), scrap(1200.0, 9)],
            kerf_mm: 3.2,
            ..CutJob::default()
        };
        let mut search = CutSearch::new(&job).unwrap();
        let (mut bound, mut cost, mut share) = (search.bound(), search.best().cost, 0.0);
        for number in 0.. {
            let next = search.step();
            assert!(number < 100_000 && next >= share || next >= 0.0);
            share = next;
            assert!(search.bound() >= bound);
            bound = search.bound();
            if share >= 1.0 {
                break;
            }
        }
        let plan = search.best();
        assert_sound(&job, &plan);
        assert!(plan.cost <= cost);
        cost = plan.cost;
        // The last board may be nearly empty, and no more; bounds without shares are weaker.
        let off = cost - bound;
        let most_off = if kinds > 200 { cost.percent(2.into()) } else { "6.07".parse().unwrap() };
        assert!(off <= most_off, "{kinds} kinds: {cost} against {bound}");
    }
}

#[test]
fn the_same_job_gives_the_same_plan_whatever_is_asked_in_between() {
    let mut chance = Chance::new(13);
    let list: Vec<(f64, u32)> =
        (0..12).map(|_| (f64::from(below(&mut chance, 240, 2_000)), below(&mut chance, 1, 6))).collect();
    let boards = vec![board(2438.0, "3.89"), board(3658.0, "6.07")];
    let job = CutJob { pieces: pieces(&list), boards, kerf_mm: 3.0, ..CutJob::default() };
    let mut search = CutSearch::new(&job).unwrap();
    while search.step() < 1.0 {
        assert_sound(&job, &search.best());
    }
    assert_eq!(search.best(), CutSearch::new(&job).unwrap().end());
}
