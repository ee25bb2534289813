//! How strict the comparison is.

use crate::uncertain::{Chance, Distribution, normal_quantile};
use crate::units::Watts;

/// What a meter's maker says of its accuracy: a share of the reading plus a fixed part, rectangular.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeterAccuracy {
    /// Share of the reading, 0.02 for 2 %.
    pub share: f64,
    /// Fixed part.
    pub fixed: Watts,
}

impl Default for MeterAccuracy {
    /// 2 % + 0.5 W, from memory: what plug-in energy meters state.
    fn default() -> Self {
        Self { share: 0.02, fixed: Watts(0.5) }
    }
}

impl MeterAccuracy {
    /// The standard uncertainty of a reading of that many watts.
    #[must_use]
    pub fn u(&self, reading: Watts) -> Watts {
        Watts(Distribution::Rectangular { half_width: self.share * reading.0 + self.fixed.0 }.u())
    }
}

/// Tolerance, confidence and meter of one run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settings {
    /// How far the draw may fall short of the claim (or exceed it) and still be consistent with it, as a share.
    pub tolerance: f64,
    confidence: f64,
    z: f64,
    /// Chances by which `p` is surely on one side of the confidence, and of one minus it.
    yes: Side,
    no: Side,
    /// The meter.
    pub meter: MeterAccuracy,
}

impl Default for Settings {
    /// 10 % and 95 %. Ten per cent is as wide as any published lighting tolerance on a quantity that buyers want high:
    /// Regulation (EU) 2019/2020, Annex IV Table 6 (luminous flux -10 %).
    fn default() -> Self {
        Self::with(0.10, 0.95, MeterAccuracy::default())
    }
}

impl Settings {
    /// Settings with that tolerance (0 up to under 1) and confidence (above 0.5, below 1); `None` outside.
    #[must_use]
    pub fn new(tolerance: f64, confidence: f64, meter: MeterAccuracy) -> Option<Self> {
        let sensible = (0.0..1.0).contains(&tolerance) && confidence > 0.5 && confidence < 1.0;
        sensible.then(|| Self::with(tolerance, confidence, meter))
    }

    fn with(tolerance: f64, confidence: f64, meter: MeterAccuracy) -> Self {
        let z = normal_quantile(confidence);
        let (yes, no) = (Side::of(confidence, z), Side::of(1.0 - confidence, -z));
        Self { tolerance, confidence, z, yes, no, meter }
    }

    /// The confidence.
    #[must_use]
    pub fn confidence(&self) -> f64 {
        self.confidence
    }

    /// The standard normal quantile of the confidence.
    #[must_use]
    pub fn z(&self) -> f64 {
        self.z
    }

    /// The least draw that is consistent with that claim.
    #[must_use]
    pub fn least(&self, claim: Watts) -> Watts {
        claim * (1.0 - self.tolerance)
    }

    /// The most.
    #[must_use]
    pub fn most(&self, claim: Watts) -> Watts {
        claim * (1.0 + self.tolerance)
    }

    /// Whether that probability is high enough to be taken as yes.
    #[must_use]
    pub fn sure(&self, p: f64) -> bool {
        p >= self.confidence
    }

    /// Whether it is low enough to be taken as no.
    #[must_use]
    pub fn sure_not(&self, p: f64) -> bool {
        p <= 1.0 - self.confidence
    }

    /// As [`sure`](Self::sure), the probability being taken only where it is close to the confidence.
    #[must_use]
    pub fn surely(&self, chance: Chance) -> bool {
        self.yes.is_above(chance).unwrap_or_else(|| self.sure(chance.p()))
    }

    /// As [`sure_not`](Self::sure_not), the probability being taken only where it is close to one minus the confidence.
    #[must_use]
    pub fn surely_not(&self, chance: Chance) -> bool {
        self.no.is_above(chance).map_or_else(|| self.sure_not(chance.p()), |above| !above)
    }
}

/// Where it need not be asked on which side of a limit a probability is.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Side {
    /// Up to so many standard uncertainties it is below.
    below: f64,
    /// From so many on it is above.
    above: f64,
}

impl Side {
    /// A hundredth of a standard uncertainty about `z`, the quantile of `limit`. Where that does not set the probabilities
    /// apart by more than their last digits, as for a limit next to 1, nothing is known beforehand.
    fn of(limit: f64, z: f64) -> Self {
        let (below, above) = (z - 0.01, z + 0.01);
        let (less, more) = (limit * (1.0 - 1e-12), limit * (1.0 + 1e-12));
        Self {
            below: if Chance::above(below).p() < less { below } else { f64::NEG_INFINITY },
            above: if Chance::above(above).p() > more { above } else { f64::INFINITY },
        }
    }

    /// Whether it is above; `None` if it is too close for that.
    fn is_above(self, chance: Chance) -> Option<bool> {
        if chance.z() >= self.above {
            Some(true)
        } else if chance.z() <= self.below {
            Some(false)
        } else {
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_short_way_to_a_decision_comes_to_the_same(
            confidence in prop_oneof![Just(0.95), 0.5001..0.9999_f64, (1..16_i32).prop_map(|n| 1.0 - 10.0_f64.powi(-n))],
            far in -9.0..9.0_f64,
            near in -0.02..0.02_f64,
        ) {
            let settings = Settings::new(0.1, confidence, MeterAccuracy::default()).unwrap();
            for z in [far, near, settings.z() + near, near - settings.z()] {
                let chance = Chance::above(z);
                prop_assert_eq!(settings.surely(chance), settings.sure(chance.p()));
                prop_assert_eq!(settings.surely_not(chance), settings.sure_not(chance.p()));
            }
        }
    }
}
