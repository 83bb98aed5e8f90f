//! A few climates by month, for whoever has no file of a typical year of a place: how clear the days are, and how cold and
//! warm.
//!
//! ```
//! use kerbstead_core::sun::climates::Climate;
//! let january = Climate::Oceanic.month(1, 52.0);
//! assert_eq!((january.clearness, january.low_c, january.high_c), (0.3, 2.0, 6.5));
//! assert_eq!(january, Climate::Oceanic.month(7, -45.0));
//! ```

/// A climate in a plain word. Each is one place's, near the sea's level but for two; others of its kind differ by some
/// degrees and hundredths.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Climate {
    /// Long dark winters, mild bright summers: 60° north.
    #[default]
    LongWinters,
    /// Cool and gray all year, by a cold sea: 55° north.
    ColdCoast,
    /// Mild winters and mild summers, much cloud: 52° north.
    Oceanic,
    /// A wide plain behind mountains, cold clear winters and warm summers: 45° north, 250 m up.
    InlandPlain,
    /// Dry hot summers, wet mild winters with fog: 37° north.
    DrySummers,
    /// Hot wet summers, cool winters: 36° north, 273 m up.
    WetSummers,
    /// Hot and clear: 33° north.
    DryHeat,
}

/// Means of a month.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MonthMeans {
    /// Clearness index, 0 to 1, in hundredths: what falls on level ground, as a share of what would fall without air.
    pub clearness: f64,
    /// Of the days' lows, in half degrees Celsius.
    pub low_c: f64,
    /// Of the days' highs, in half degrees Celsius.
    pub high_c: f64,
}

impl Climate {
    /// Every climate, from the north.
    pub const ALL: [Self; 7] = [
        Self::LongWinters,
        Self::ColdCoast,
        Self::Oceanic,
        Self::InlandPlain,
        Self::DrySummers,
        Self::WetSummers,
        Self::DryHeat,
    ];

    /// Means of a month (1 to 12) at a place so many degrees north: south of the equator those of the month six months away.
    /// Of the latitude only the side counts, so take a climate of about the same.
    pub fn month(self, month: i8, latitude_deg: f64) -> MonthMeans {
        let of_north = i32::from(month) - 1 + if latitude_deg < 0.0 { 6 } else { 0 };
        let at = of_north.rem_euclid(12).unsigned_abs() as usize;
        let [clearness, low, high] = self.row().months.get(at).copied().unwrap_or_default();
        MonthMeans {
            clearness: f64::from(clearness) / 100.0,
            low_c: f64::from(low) / 2.0,
            high_c: f64::from(high) / 2.0,
        }
    }

    /// Degrees north of the place that the numbers are of.
    pub const fn latitude_deg(self) -> f64 {
        self.row().latitude_deg
    }

    /// Where the numbers are from.
    pub const fn source(self) -> &'static str {
        self.row().source
    }

    const fn row(self) -> &'static Row {
        match self {
            Self::LongWinters => &LONG_WINTERS,
            Self::ColdCoast => &COLD_COAST,
            Self::Oceanic => &OCEANIC,
            Self::InlandPlain => &INLAND_PLAIN,
            Self::DrySummers => &DRY_SUMMERS,
            Self::WetSummers => &WET_SUMMERS,
            Self::DryHeat => &DESERT,
        }
    }
}

/// Where the place is, where its numbers are from, and from January on the hundredths of its clearness, the half degrees of
/// its lows and of its highs.
///
/// Clearness is always a month's mean daily global irradiation on level ground, divided by that above the air on the 16th
/// (Duffie and Beckman, equation 1.10.3, as `extraterrestrial_day_wh_m2` has it).
struct Row {
    latitude_deg: f64,
    source: &'static str,
    months: [[i8; 3]; 12],
}

const LONG_WINTERS: Row = Row {
    latitude_deg: 60.2,
    source: "WMO normals 1991-2020, station 02978, and monthly global irradiation of the Finnish Meteorological Institute \
        (from memory)",
    months: [
        [32, -11, -1],
        [36, -13, -3],
        [46, -7, 4],
        [52, 3, 16],
        [54, 13, 29],
        [52, 23, 38],
        [52, 29, 44],
        [48, 27, 41],
        [44, 19, 31],
        [34, 9, 18],
        [29, 1, 8],
        [28, -5, 2],
    ],
};

const COLD_COAST: Row = Row {
    latitude_deg: 55.3,
    source: "TMY3, station 703165, as pvlib 0.16.1 ships it",
    months: [
        [35, -2, 5],
        [32, -1, 6],
        [33, 0, 7],
        [37, 0, 9],
        [31, 3, 10],
        [33, 12, 21],
        [46, 19, 28],
        [30, 21, 27],
        [47, 12, 19],
        [41, 6, 12],
        [37, -2, 4],
        [37, -5, 2],
    ],
};

const OCEANIC: Row = Row {
    latitude_deg: 52.3,
    source: "IWEC, station 062400, as the tests of pvlib 0.16.1 have it",
    months: [
        [30, 4, 13],
        [36, 2, 12],
        [41, 5, 17],
        [40, 10, 23],
        [45, 16, 34],
        [43, 21, 38],
        [45, 25, 41],
        [43, 27, 41],
        [39, 21, 36],
        [35, 15, 28],
        [33, 7, 20],
        [27, 5, 12],
    ],
};

const INLAND_PLAIN: Row = Row {
    latitude_deg: 45.0,
    source: "PVGIS, typical year of 2005-2023 at 45° N, 8° E, as the tests of pvlib 0.16.1 have it",
    months: [
        [46, 4, 19],
        [48, 6, 23],
        [54, 7, 27],
        [43, 17, 33],
        [44, 26, 43],
        [62, 32, 57],
        [59, 34, 53],
        [58, 35, 53],
        [58, 31, 50],
        [51, 23, 38],
        [54, 5, 21],
        [51, 1, 17],
    ],
};

/// Lows and highs are the file's mean temperature, less and more half of the range that it gives from the ASHRAE Handbook of
/// Fundamentals 2009.
const DRY_SUMMERS: Row = Row {
    latitude_deg: 36.8,
    source: "TMY3, station 723890, statistics file that comes with EnergyPlus",
    months: [
        [39, 8, 25],
        [50, 10, 31],
        [58, 14, 37],
        [66, 20, 47],
        [66, 29, 58],
        [71, 36, 67],
        [69, 41, 74],
        [71, 38, 71],
        [66, 33, 64],
        [64, 26, 54],
        [53, 12, 34],
        [44, 7, 24],
    ],
};

const WET_SUMMERS: Row = Row {
    latitude_deg: 36.1,
    source: "TMY3, station 723170, as pvlib 0.16.1 ships it",
    months: [
        [49, -9, 11],
        [48, 0, 20],
        [52, 12, 34],
        [54, 16, 42],
        [51, 27, 49],
        [54, 38, 58],
        [54, 42, 61],
        [54, 40, 59],
        [50, 31, 50],
        [52, 16, 37],
        [46, 10, 34],
        [50, -3, 20],
    ],
};

/// Lows and highs as for [`DRY_SUMMERS`].
const DESERT: Row = Row {
    latitude_deg: 33.5,
    source: "TMY3, station 722780, statistics file that comes with EnergyPlus",
    months: [
        [62, 15, 38],
        [61, 20, 43],
        [63, 22, 47],
        [70, 34, 61],
        [70, 41, 68],
        [72, 54, 82],
        [67, 59, 83],
        [68, 56, 79],
        [70, 49, 73],
        [66, 37, 62],
        [66, 24, 48],
        [63, 12, 35],
    ],
};
