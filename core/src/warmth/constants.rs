//! Numbers of the warmth that nobody typed. What is measured or declared wins.

/// Steel of the body, in m and W/(m K) (a panel van's sheet: common practice, no source; ISO 10456:2007 has 50 W/(m K)).
pub const STEEL: [f64; 2] = [0.000_8, 50.0];
/// Share of walls, doors and roof that ribs take, in percent. Common practice, no source.
pub const RIB_PERCENT: f64 = 10.0;
/// Doors of the load space at the side, in m², where none is drawn. Common practice, no source.
pub const SIDE_DOOR_M2: f64 = 1.6;
/// The windows' share of a surface is no more than this.
pub const MOST_WINDOW: f64 = 0.9;
/// The cab around its seats, with windscreen and door windows: all of it and the panes, in m², and its air, in m³. Common
/// practice, no source.
pub const CAB: [f64; 3] = [7.0, 2.2, 2.6];
/// A curtain: thickness in m, conductivity in W/(m K), as thick cloth. Common practice, no source.
pub const CURTAIN: [f64; 2] = [0.003, 0.06];
/// Air between what divides the cab off and the cab itself counts as a gap so wide, in m: the widest of ISO 6946.
pub const CAB_GAP_M: f64 = 0.3;
/// Gaps in a van's shell that nobody can close, in cm². Common practice, no source: door seals and body vents.
pub const LEAK_CM2: f64 = 80.0;
/// Height of a single opening such as a window that is ajar, in m. Common practice, no source.
pub const SINGLE_HIGH_M: f64 = 0.25;
/// What can be opened is opened while it is at least so warm outside, in °C. Common practice, no source.
pub const OPEN_ABOVE_C: f64 = 18.0;
/// Relative humidity outside when it is coldest, in percent. Common practice, no source: nights by the coast and in river
/// valleys near 90, dry inland ones 60 to 80.
pub const DAMP_PERCENT: f64 = 85.0;
/// Wind where one stands, in m/s. Common practice, no source: a light breeze.
pub const WIND_M_S: f64 = 2.0;
/// Asleep from and until, as hours of the day. Common practice, no source.
pub const ASLEEP_HOURS: [f64; 2] = [22.5, 6.5];
/// Hours awake inside before and after sleeping. Common practice, no source.
pub const AWAKE_HOURS: [f64; 2] = [2.5, 1.0];
/// The coldest that bedding is warm enough for where nothing is said, in °C. Common practice, no source: the lower limits on
/// labels by ISO 23537 are for a standard man, and many need more.
pub const LEAST_ASLEEP_C: f64 = 5.0;
/// So little warmer than must be is called tight, in K. Common practice, no source.
pub const TIGHT_K: f64 = 2.0;
/// The hour a meal is cooked, if something to cook with is on board. Common practice, no source.
pub const MEAL_HOUR: usize = 18;
/// The hour at which something that burns is lit. Common practice, no source.
pub const LIT_FROM_HOUR: f64 = 18.5;
/// What a heater with a pipe gives of its fuel's heat, in percent. Common practice, no source: 75 to 85.
pub const PIPE_PERCENT: f64 = 80.0;
/// Heat that bedding, boxes and linings take with the air, in Wh/K. Common practice, no source.
pub const LIGHT_WH_K: f64 = 25.0;
/// Heat of things by their mass, in Wh/(kg K): 1.5 kJ/(kg K), between wood and food. Common practice, no source.
pub const THINGS_WH_KG_K: f64 = 0.42;
/// Heat of water, in Wh/(l K): 4.19 kJ/(kg K) (IAPWS, from memory).
pub const WATER_WH_L_K: f64 = 1.163;
/// What of the floor's area things turn to the air. Common practice, no source.
pub const THINGS_FACE: f64 = 1.5;
/// Heat between a face and air, in W/(m² K): 1/0.13 (ISO 6946:2017, table 7).
pub const FACE_W_M2K: f64 = 7.7;

/// Stale air, in ppm of carbon dioxide: what outdoor air adds to in a well-aired office. Common practice, no source.
pub const STALE_PPM: f64 = 1_500.0;
/// A hot van, in °C inside. Common practice, no source.
pub const HOT_C: f64 = 35.0;
/// A hot day for the answers about one, in °C, where the route has none warmer. Common practice, no source.
pub const HOT_DAY_C: f64 = 28.0;
/// Diurnal range of that day, in K. Common practice, no source.
pub const HOT_DAY_RANGE_K: f64 = 12.0;
/// What shade of a tree leaves of the sun. Common practice, no source.
pub const TREE_SHADE: f64 = 0.2;
/// Thickness in mm, conductivity in W/(m K) and density in kg/m³ of what layers are of, in the order of
/// [`crate::plan::Material`]: foams by EN 13163 to 13165's usual declared values, aged (from memory); wool, cork, plywood,
/// timber, carpet by ISO 10456:2007 (from memory; plywood, timber and carpet in the project's table of reference values).
/// Soft foam, cloth: common practice, no source. Foil is taken without what carries it. Other: as plywood, until it is said.
pub const MATERIALS: [[f64; 3]; 13] = [
    [30.0, 0.034, 32.0],
    [30.0, 0.037, 18.0],
    [30.0, 0.025, 32.0],
    [20.0, 0.036, 40.0],
    [40.0, 0.038, 20.0],
    [20.0, 0.050, 120.0],
    [6.0, 0.130, 500.0],
    [12.0, 0.130, 450.0],
    [5.0, 0.060, 200.0],
    [4.0, 0.060, 150.0],
    [0.05, 200.0, 2_700.0],
    [20.0, 0.025, 0.0],
    [10.0, 0.130, 500.0],
];

/// Lower heating value and density of fuels, in Wh/kg and kg/l, in the order of [`crate::plan::BurnerFuel`]: propane 46.35,
/// ethanol 26.8, petrol 43.0, diesel 42.6 MJ/kg; 0.51, 0.79, 0.745, 0.835 kg/l (handbook values, from memory).
pub const FUELS: [[f64; 2]; 4] = [[12_875.0, 0.51], [7_444.0, 0.79], [11_944.0, 0.745], [11_833.0, 0.835]];
