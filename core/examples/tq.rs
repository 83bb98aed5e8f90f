use kerbstead_core::plan::demo_plan;
use jiff::civil::date;
fn main(){ let plan=demo_plan(); let as_of=date(plan.calendar.leaves_on.unwrap().year(),3,1);
 let mut nosun=plan.clone(); nosun.climate.latitude_deg=None;
 for (n,p) in [("with sun",&plan),("without",&nosun)] {
 let mut best=f64::MAX; for _ in 0..40 { let t=std::time::Instant::now(); std::hint::black_box(kerbstead_core::assess(p, as_of)); best=best.min(t.elapsed().as_secs_f64()); } println!("{n}: {:.2} ms", best*1e3); }
}
