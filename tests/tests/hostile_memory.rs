//! How much memory a stranger's link can ask for. A file of its own, since all memory of a test's program is counted.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::share::{MOST_CHARS, Unreadable, Version, open, text_of};
use kerbstead_tests::generate::seeded;
use peak_alloc::PeakAlloc;
use proptest::collection::vec;
use proptest::prelude::any;

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

/// More than anybody's link needs, and less than an old phone notices.
const MOST_BYTES: usize = 8_000_000;

/// The most memory that is in use at once while something is done, beyond what was in use before.
fn most_while(act: impl FnOnce()) -> usize {
    MEMORY.reset_peak_usage();
    let before = MEMORY.current_usage();
    act();
    MEMORY.peak_usage().saturating_sub(before)
}

/// Links as long as any that is read, behind a right check, that promise the most there is to promise: values without
/// end, one in another without end, texts without end; and some by chance. A text longer than any link is
/// refused by its length, before anything is made of it. One test, so that no other takes memory meanwhile.
#[test]
fn no_link_takes_more_than_eight_megabytes() {
    let mut bombs: Vec<Vec<u8>> = (0..=255).map(|byte| [byte].repeat(23_000)).collect();
    bombs.extend(seeded(&vec(any::<u8>(), 2_000), 8_000_000, 1_000));
    let mut most = 0;
    for bomb in bombs {
        for version in Version::ALL {
            let link = text_of(version, &bomb);
            assert!(link.len() <= MOST_CHARS);
            most = most.max(most_while(|| drop(open(&link))));
        }
    }
    println!("The most that a link took: {most} bytes");
    assert!(most < MOST_BYTES, "{most}");

    let long = "1".repeat(64_000_000);
    let most = most_while(|| assert_eq!(open(&long), Err(Unreadable::TooLong { most: MOST_CHARS })));
    assert!(most < 1_000, "{most}");
}
