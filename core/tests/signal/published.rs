//! Against the project's table of reference values, its source beside each.

use super::assert_near;
use kerbstead_core::explain::Source;
use kerbstead_core::plan::Estimate;
use kerbstead_core::signal::data::{TASKS, Unit, bits, in_unit, megabytes, stream_mb, total};
use kerbstead_core::signal::transfer::{Transfer, payload_share};

/// Source: IEC 80000-13 prefixes and division (`upload-*`): 2 GB at 12 Mbit/s 1,333.333 s, 2 GiB 1,431.656 s, 250 MB at 0.8
/// Mbit/s 2,500 s, without overhead.
#[test]
fn a_file_takes_its_bits_over_the_rate() {
    for (amount, unit, rate_mbit_s, file_bits, seconds) in [
        (2.0, Unit::Gb, 12.0, 16_000_000_000.0, 1_333.333),
        (2.0, Unit::Gib, 12.0, 17_179_869_184.0, 1_431.656),
        (250.0, Unit::Mb, 0.8, 2_000_000_000.0, 2_500.0),
    ] {
        let size_mb = megabytes(amount, unit);
        assert_near(bits(size_mb), file_bits, 1e-6, "bits");
        let transfer = Transfer { size_mb, rate_mbit_s: Estimate::Plain(rate_mbit_s), payload_share: 1.0 };
        for found in transfer.seconds() {
            assert_near(found.unwrap(), seconds, 1e-6 * seconds, "seconds");
        }
        // In just that time it is through, with that rate; in less it is not, and with overhead neither.
        let hours = seconds / 3_600.0;
        assert!(transfer.within(hours * 1.000_001).iter().all(|sent| sent.is_done && sent.part == 1.0));
        assert_near(transfer.within(hours / 4.0)[0].part, 0.25, 1e-6, "a quarter");
        assert_near(transfer.needs_mbit_s(hours).unwrap(), rate_mbit_s, 1e-6 * rate_mbit_s, "rate");
        let framed = Transfer { payload_share: payload_share(), ..transfer };
        assert_near(framed.seconds()[1].unwrap(), seconds / 0.949_28, 1e-4 * seconds, "with overhead");
        assert_near(framed.within(hours)[1].part, 0.949_28, 1e-4, "what is through without it");
        assert_near(framed.needs_mbit_s(hours).unwrap(), rate_mbit_s / 0.949_28, 1e-4 * rate_mbit_s, "rate");
    }
}

/// Source: RFC 791, RFC 9293, IEEE 802.3 (`tcp-share`): 1,460 of 1,538 bytes.
#[test]
fn most_of_a_full_packet_is_payload() {
    assert_near(payload_share(), 0.949_28, 1e-4, "share");
    assert_near(payload_share(), 1_460.0 / 1_538.0, 1e-15, "share");
}

/// Source: multiplication (`call-1.5`): 1.5 Mbit/s for two hours on twenty days is 27 GB. IEC 80000-13 (`gb-to-gib-1`): 1 GB is
/// 0.931323 GiB.
#[test]
fn a_stream_makes_its_rate_times_its_time() {
    assert_near(in_unit(stream_mb(1.5, 2.0 * 20.0), Unit::Gb), 27.0, 27e-6, "GB");
    assert_near(in_unit(megabytes(1.0, Unit::Gb), Unit::Gib), 0.931_323, 1e-6, "GiB");
    assert_eq!(in_unit(megabytes(3.0, Unit::Mib), Unit::Mib), 3.0);
}

/// By hand: a call of 1 Mbit/s down and 0.8 up for ten hours is 4,500 and 3,600 MB; five photos of 4 MB and 0.02 back.
#[test]
fn tasks_add_up() {
    let task = |key: &str| *TASKS.iter().find(|task| task.key == key).unwrap();
    let data = total(&[(task("call-standard"), 10.0), (task("photo-out"), 5.0)]);
    assert_near(data.down_mb.likely(), 4_500.1, 1e-9, "down");
    assert_near(data.up_mb.likely(), 3_620.0, 1e-9, "up");
    assert_near(data.both_mb().likely(), 8_120.1, 1e-9, "both");
    assert!(data.both_mb().low() < 8_120.1 && data.both_mb().high() > 8_120.1);
}

#[test]
fn every_task_is_in_order_and_says_that_it_has_no_source() {
    for (at, task) in TASKS.iter().enumerate() {
        for mb in [task.down_mb, task.up_mb] {
            assert!(mb.low() < mb.likely() && mb.likely() < mb.high(), "{}", task.key);
        }
        assert!(TASKS.iter().skip(at + 1).all(|other| other.key != task.key));
        assert_eq!(task.source, Source::CommonPractice);
    }
    // Better pictures take more, in each of their numbers.
    for keys in [["call-low", "call-standard", "call-high"], ["film-low", "film-standard", "film-high"]] {
        let of = |key: &str| TASKS.iter().find(|task| task.key == key).unwrap().down_mb;
        for pair in keys.windows(2) {
            let (less, more) = (of(pair[0]), of(pair[1]));
            assert!(less.low() < more.low() && less.likely() < more.likely() && less.high() < more.high());
        }
    }
}
