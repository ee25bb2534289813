//! Heat in the room, amperes on the wire, and how many lights a circuit carries.
//!
//! All of a light's wall draw ends as heat in the room. A circuit is loaded by volt-amperes, not by watts.

use crate::units::{Amps, Volts, Watts};

/// Btu per hour of one watt: 3600 J over the International Table Btu of 1055.05585262 J (ISO 31-4).
pub const BTU_PER_HOUR: f64 = 3600.0 / 1_055.055_852_62;

/// The share of its breaker that a continuous load (three hours or more) may take: NFPA 70 (NEC) 210.20(A), which asks for
/// a breaker of 125 % of it. A rule of the United States; other countries have their own.
pub const CONTINUOUS: f64 = 0.8;

/// Power factor taken for a light over 25 W: the least that Regulation (EU) 2019/2020, Annex II Table 4 allows a light
/// source of that power. A light sold elsewhere may have less.
const FACTOR_LARGE: f64 = 0.90;

/// Up to 25 W the same table asks for 0.5 at most, and small lamps are made so: the median of 4 149 lamps bought in shops
/// was 0.54 (public test database, 2014-2022, own computation).
const FACTOR_SMALL: f64 = 0.5;

/// Where the one ends and the other begins.
const SMALL: Watts = Watts(25.0);

/// No mains supply is lower: wide-range inputs are printed from 85 V, for mains of 100 V less a margin (from memory). Volts
/// below are those of an adapter.
const MAINS_FROM: Volts = Volts(85.0);

/// From this voltage up a supply is taken as three-phase, so that S = sqrt(3) V I: common practice, no source.
const THREE_PHASE_FROM: Volts = Volts(380.0);

/// A circuit of one phase.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Circuit {
    /// Between its conductors.
    pub volts: Volts,
    /// What its breaker is rated for.
    pub breaker: Amps,
}

/// The heat of that wall draw, Btu/h.
#[must_use]
pub fn btu_per_hour(wall: Watts) -> f64 {
    wall.0 * BTU_PER_HOUR
}

/// The power factor assumed for a light of that wall draw whose own is not known.
#[must_use]
pub fn assumed_factor(wall: Watts) -> f64 {
    if wall.0 > SMALL.0 { FACTOR_LARGE } else { FACTOR_SMALL }
}

/// The least and the most volt-amperes of a wall draw within those bounds whose power factor is not known, and the factor
/// behind the most. At 25 W the factor assumed jumps, so that a draw just under it may take more than one well over it.
#[must_use]
pub fn assumed_volt_amperes(low: Watts, high: Watts) -> (Watts, Watts, f64) {
    if high.0 <= SMALL.0 || low.0 > SMALL.0 {
        let factor = assumed_factor(high);
        return (low / factor, high / factor, factor);
    }
    let (small, large) = (SMALL / FACTOR_SMALL, high / FACTOR_LARGE);
    let (most, factor) = if small.0 > large.0 { (small, FACTOR_SMALL) } else { (large, FACTOR_LARGE) };
    ((low / FACTOR_SMALL).min(SMALL / FACTOR_LARGE), most, factor)
}

/// Whether that is a voltage of the mains, at which a light takes its wall draw.
#[must_use]
pub fn is_mains(volts: Volts) -> bool {
    volts.0 >= MAINS_FROM.0
}

/// Volt-amperes over volts times amperes in each conductor: 1 with one phase, the square root of 3 with three.
#[must_use]
pub fn phases(volts: Volts) -> f64 {
    if volts.0 >= THREE_PHASE_FROM.0 { 3.0_f64.sqrt() } else { 1.0 }
}

/// The current of that wall draw in each conductor: P / (PF U), over the square root of 3 with three phases.
/// `power_factor` is above 0 and at most 1.
#[must_use]
pub fn amps(wall: Watts, volts: Volts, power_factor: f64) -> Amps {
    Amps(wall.0 / power_factor / volts.0 / phases(volts))
}

impl Circuit {
    /// The current that it may carry for hours.
    #[must_use]
    pub fn continuous(&self) -> Amps {
        self.breaker * CONTINUOUS
    }

    /// How many lights of that current each it carries for hours, nothing else on it; `each` is above 0.
    #[must_use]
    pub fn lights(&self, each: Amps) -> u32 {
        // A hair over, so that a light of exactly the limit counts.
        let whole = (self.continuous() / each * (1.0 + 1e-9)).floor().min(f64::from(u32::MAX));
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within 0 and u32::MAX")]
        let lights = whole as u32;
        lights
    }
}
