//! Links and files of strangers, for as long as a test may take; `cargo xtask fuzz` reads as many as are asked for.

use std::time::{Duration, Instant};

use kerbstead_tests::strangers::Strangers;

/// How long they are read.
const FOR: Duration = Duration::from_secs(20);

#[test]
#[allow(clippy::disallowed_methods)] // the test has a clock; what it tests has none
fn nothing_that_strangers_send_does_harm_for_twenty_seconds() {
    let (mut strangers, begin) = (Strangers::new(20), Instant::now());
    let mut read = 0_u64;
    while begin.elapsed() < FOR {
        // A hundred are one of each kind in its share.
        (0..100).for_each(|_| strangers.read_one());
        read += 100;
    }
    let tally = strangers.tally();
    println!("{read} inputs: {tally:?}");
    let kinds = [tally.files_opened, tally.files_refused, tally.texts_refused];
    assert!(kinds.iter().all(|count| *count > 0), "of some kind there was none: {tally:?}");
}
