//! Numbers of data and time that nobody typed.

/// Bits in a byte. Source: IEC 80000-13 (from memory).
pub const BITS_PER_BYTE: f64 = 8.0;
/// Bits in a megabit. Source: IEC 80000-13 (from memory).
pub const BITS_PER_MBIT: f64 = 1e6;
/// Bytes in a megabyte. Source: IEC 80000-13 (from memory).
pub const BYTES_PER_MB: f64 = 1e6;
/// Bytes in a mebibyte: 2^20. Source: IEC 80000-13 (from memory).
pub const BYTES_PER_MIB: f64 = 1_048_576.0;
/// Bytes in a gigabyte. Source: IEC 80000-13 (from memory).
pub const BYTES_PER_GB: f64 = 1e9;
/// Bytes in a gibibyte: 2^30. Source: IEC 80000-13 (from memory).
pub const BYTES_PER_GIB: f64 = 1_073_741_824.0;
/// Megabytes that a stream of 1 Mbit/s makes in an hour: 3,600 s over 8 bits.
pub const MB_PER_MBIT_S_HOUR: f64 = 450.0;

/// Bytes of a packet, headers and all, that Ethernet carries. Source: IEEE 802.3 (from memory).
pub const MTU_BYTES: f64 = 1_500.0;
/// Bytes of an IPv4 header without options. Source: RFC 791 (from memory).
pub const IPV4_HEADER_BYTES: f64 = 20.0;
/// Bytes of a TCP header without options. Source: RFC 9293 (from memory).
pub const TCP_HEADER_BYTES: f64 = 20.0;
/// Bytes that Ethernet puts around a packet: preamble 8, header 14, check 4, gap 12. Source: IEEE 802.3 (from memory).
pub const ETHERNET_BYTES: f64 = 38.0;

/// The highest rate that is believed, in Mbit/s.
pub const MOST_MBIT_S: f64 = 1e6;
/// The most data that is believed of anything, in MB: a petabyte.
pub const MOST_MB: u64 = 1_000_000_000;
/// The longest time that is stated, in hours.
pub const MOST_HOURS: f64 = 100_000.0;
/// Of no more contracts every set is tried.
pub const MOST_CONTRACTS: usize = 12;

/// Hours of a day in which a slow rate is used at the most: those one is awake. Common practice, no source.
pub const SLOW_HOURS_PER_DAY: f64 = 16.0;
/// The hour that work begins where nobody says. Common practice, no source.
pub const USUAL_BEGINS_HOUR: f64 = 9.0;
/// Too cold to work sitting where nobody says, in °C. Common practice, no source.
pub const USUAL_TOO_COLD_C: f64 = 12.0;
/// Too hot to work where nobody says, in °C. Common practice, no source.
pub const USUAL_TOO_HOT_C: f64 = 32.0;
/// What goes out with a good signal where nobody says, in Mbit/s: low, likely, high. Common practice, no source.
pub const USUAL_GOOD_MBIT_S: [f64; 3] = [3.0, 10.0, 30.0];
/// What goes out with a weak signal where nobody says, in Mbit/s: low, likely, high. Common practice, no source.
pub const USUAL_WEAK_MBIT_S: [f64; 3] = [0.2, 1.0, 3.0];
