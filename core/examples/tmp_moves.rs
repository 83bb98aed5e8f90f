use jiff::civil::date;
use kerbstead_core::moves::MovesTask;
use kerbstead_core::plan::demo_plan;
use kerbstead_core::task::Task;
use std::time::Instant;
fn main() {
    for as_of in [date(2027, 3, 10), date(2027, 2, 1), date(2027, 5, 1)] {
        let mut plan = demo_plan();
        if as_of == date(2027, 2, 1) {
            kerbstead_core::plan::Edit::set("purse/opening_cash", "885").apply(&mut plan).unwrap();
        }
        let s = Instant::now();
        let mut task = MovesTask::new(&plan, as_of);
        let mut slowest = 0.0_f64;
        let mut trials = 0.0;
        loop {
            let t = Instant::now();
            let share = task.step();
            slowest = slowest.max(t.elapsed().as_secs_f64());
            if share < 0.5 {
                trials = s.elapsed().as_secs_f64();
            }
            if share >= 1.0 {
                break;
            }
        }
        println!(
            "{as_of}: {:.1} ms, trials {:.1} ms, slowest {:.2}",
            s.elapsed().as_secs_f64() * 1e3,
            trials * 1e3,
            slowest * 1e3
        );
        let m = task.moves();
        println!("wanting {:?} tried {} of {}, {} moves", m.wanting, m.tried, m.to_try, m.moves.len());
        for x in m.moves.iter().take(14) {
            println!(
                "  {:?} {} {:?} mends {:.2} cost {:.2}d money {} effects {:?}",
                x.change,
                x.name,
                x.on,
                x.mends,
                x.cost_days,
                x.money,
                x.effects
                    .iter()
                    .map(|e| (e.balance, e.before, e.after, e.spare_before, e.spare_after))
                    .collect::<Vec<_>>()
            );
        }
        if let Some(set) = m.set {
            println!(
                "set found {} proven {} assessed {} among {} cost {} money {} still {:?}",
                set.is_found, set.is_proven, set.assessed, set.among, set.cost_days, set.money, set.still_short
            );
            for x in &set.moves {
                println!("   {:?} {} {:?}", x.change, x.name, x.on);
            }
        }
    }
}
