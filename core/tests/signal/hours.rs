//! Hours of work against signal, power and warmth.

use super::money;
use kerbstead_core::draws::Chance;
use kerbstead_core::plan::{Money, Signal};
use kerbstead_core::signal::hours::Cause::{self, NoPower, NoSignal, Unknown, WeakSignal};
use kerbstead_core::signal::hours::{Hours, pay, whole_days, work_minutes};

/// Whole hours of work.
fn minutes(wanted: &[bool]) -> Vec<u32> {
    wanted.iter().map(|wanted| if *wanted { 60 } else { 0 }).collect()
}

/// By hand, an hour a column: `o` good, `w` weak, `-` none, `?` not known.
#[test]
fn each_hour_counts_once_for_the_first_of_what_it_lacks() {
    let yes = |text: &str| -> Vec<bool> { text.chars().map(|hour| hour == 'o').collect() };
    let signal: Vec<Signal> = "oow-?-?w?o"
        .chars()
        .map(|hour| match hour {
            'o' => Signal::Good,
            'w' => Signal::Weak,
            '-' => Signal::None,
            _ => Signal::Unknown,
        })
        .collect();
    let (wanted, power, bearable) = (minutes(&yes("ooooooooo-")), yes("o-oooo--o-"), yes("ooooo-oooo"));
    let hours =
        Hours { wanted_minutes: &wanted, signal: &signal, power: &power, bearable: &bearable, weak_is_enough: false };
    let expected = [
        None,
        Some(NoPower),
        Some(WeakSignal),
        Some(NoSignal),
        Some(Unknown),
        Some(NoSignal),   // unbearable too
        Some(NoPower),    // signal not known
        Some(WeakSignal), // no power either
        Some(Unknown),
        None, // not wanted
    ];
    let found: Vec<_> = (0..10).map(|hour| hours.cause(hour)).collect();
    assert_eq!(found, expected);
    let risk = hours.at_risk(money("17.35"));
    let lacking = risk.lacking;
    assert_eq!((lacking.wanted_minutes, lacking.minutes, lacking.sure_minutes()), (540, [120, 120, 120, 0, 120], 60));
    assert_eq!((risk.certain, risk.unknown), (money("104.10"), money("34.70")));
    // With a weak signal that is enough, the next cause counts.
    let enough = Hours { weak_is_enough: true, ..hours };
    assert_eq!((enough.cause(2), enough.cause(7)), (None, Some(NoPower)));
}

#[test]
fn what_nobody_said_is_not_known() {
    let wanted = [60; 4];
    let good = [Signal::Good; 4];
    let hours = Hours {
        wanted_minutes: &wanted,
        signal: &good,
        power: &[true, true],
        bearable: &[true; 3],
        weak_is_enough: true,
    };
    let causes: Vec<_> = (0..5).map(|hour| hours.cause(hour)).collect();
    assert_eq!(causes, [None, None, Some(Cause::Unknown), Some(Cause::Unknown), None]);
    assert_eq!(Hours { signal: &[], ..hours }.cause(0), Some(Cause::Unknown));
}

#[test]
fn hours_and_pay_add_up_whatever_is_lacking() {
    for seed in 0..100 {
        let mut chance = Chance::new(seed);
        let mut yes = |count: usize| -> Vec<bool> { (0..count).map(|_| chance.below(3) > 0).collect() };
        let (wanted, power, bearable) = (yes(24 * 9), yes(24 * 8), yes(24 * 9));
        let days: Vec<Signal> = (0..9)
            .map(|_| [Signal::Good, Signal::Weak, Signal::None, Signal::Unknown][chance.below(4) as usize])
            .collect();
        let signal = whole_days(&days);
        assert_eq!(signal.len(), wanted.len());
        let weak_is_enough = chance.below(2) == 0;
        let minutes = minutes(&wanted);
        let hours =
            Hours { wanted_minutes: &minutes, signal: &signal, power: &power, bearable: &bearable, weak_is_enough };
        let pay = money("12.34");
        let risk = hours.at_risk(pay);
        let by_cause: Money = Cause::ALL.into_iter().map(|cause| hours.at_risk_by(cause, pay)).sum();
        assert_eq!(by_cause, risk.certain + risk.unknown);
        let sure = self::pay(pay, risk.lacking.sure_minutes());
        assert_eq!(risk.certain + risk.unknown + sure, pay.times(risk.lacking.wanted_minutes / 60));
        // Whoever lacks nothing can work.
        let works = (0..wanted.len()).filter(|at| wanted[*at] && hours.cause(*at).is_none());
        for at in works {
            let heard = signal[at] == Signal::Good || (weak_is_enough && signal[at] == Signal::Weak);
            assert!(heard && power[at] && bearable[at]);
        }
    }
}

/// By hand: from 22:45 for three and a half hours; 20 minutes at 18.60 are 6.20.
#[test]
fn work_may_go_past_midnight_and_is_paid_to_the_minute() {
    let by_hour = work_minutes(22.75, 3.5);
    assert_eq!(by_hour[21..28], [0, 15, 60, 60, 60, 15, 0]);
    assert_eq!(by_hour.iter().sum::<u32>(), 210);
    assert_eq!(work_minutes(24.0, 24.0).iter().sum::<u32>(), 1_440);
    assert_eq!(work_minutes(f64::NAN, -3.0), [0; 48]);
    assert_eq!((pay(money("18.60"), 20), pay(money("18.60"), 80)), (money("6.20"), money("24.80")));
}
