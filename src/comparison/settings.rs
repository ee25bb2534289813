//! How strict the comparison is.

use crate::uncertain::{Distribution, normal_quantile};
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
    /// The meter.
    pub meter: MeterAccuracy,
}

impl Default for Settings {
    /// 10 % and 95 %. Ten per cent is as wide as any published lighting tolerance on a quantity that buyers want high:
    /// Regulation (EU) 2019/2020, Annex IV Table 6 (luminous flux -10 %).
    fn default() -> Self {
        Self { tolerance: 0.10, confidence: 0.95, z: normal_quantile(0.95), meter: MeterAccuracy::default() }
    }
}

impl Settings {
    /// Settings with that tolerance (0 up to under 1) and confidence (above 0.5, below 1); `None` outside.
    #[must_use]
    pub fn new(tolerance: f64, confidence: f64, meter: MeterAccuracy) -> Option<Self> {
        let sensible = (0.0..1.0).contains(&tolerance) && confidence > 0.5 && confidence < 1.0;
        sensible.then(|| Self { tolerance, confidence, z: normal_quantile(confidence), meter })
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
}
