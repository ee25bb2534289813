//! A value with its standard uncertainty, the law of propagation, and the normal distribution.
//!
//! Terms and methods are those of the Guide to the expression of uncertainty in measurement, JCGM 100:2008 (GUM). A type
//! B evaluation names its distribution ([`Distribution`]); uncertainties combine by [`combined`], correlation included.

use std::ops::{Add, Mul, Sub};

use serde::Serialize;
use statrs::distribution::{ContinuousCDF, Normal};

/// The coverage factor of a 95 % interval under a normal distribution (GUM annex G, table G.1 for infinite degrees of
/// freedom).
pub const COVERAGE_95: f64 = 1.96;

/// A best estimate and its standard uncertainty, in the unit of `Q`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Uncertain<Q> {
    /// The best estimate.
    pub value: Q,
    /// Its standard uncertainty. Whoever does not know it has no `Uncertain` to give: it is never zero for "unknown".
    pub u: Q,
}

impl<Q> Uncertain<Q>
where
    Q: Copy + Default + PartialOrd + Add<Output = Q> + Sub<Output = Q> + Mul<f64, Output = Q>,
{
    /// Half the width of the 95 % interval.
    #[must_use]
    pub fn half_95(&self) -> Q {
        self.u * COVERAGE_95
    }

    /// The 95 % interval of a quantity that is never below 0.
    #[must_use]
    pub fn interval_95(&self) -> (Q, Q) {
        let low = self.value - self.half_95();
        (if low < Q::default() { Q::default() } else { low }, self.value + self.half_95())
    }
}

/// A named distribution for what is known of a quantity without repeated observation (GUM 4.3).
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Distribution {
    /// Normal with the given standard deviation.
    Normal {
        /// Standard deviation.
        sd: f64,
    },
    /// Equally likely anywhere within `half_width` of the estimate (GUM 4.3.7).
    Rectangular {
        /// Half the width.
        half_width: f64,
    },
}

impl Distribution {
    /// The standard uncertainty: for a rectangular distribution a/sqrt(3) (GUM 4.3.7, equation 7).
    #[must_use]
    pub fn u(self) -> f64 {
        match self {
            Self::Normal { sd } => sd,
            Self::Rectangular { half_width } => half_width / 3.0_f64.sqrt(),
        }
    }
}

/// The combined standard uncertainty of a sum of contributions `c_i` * `u(x_i)`, with correlation coefficients r(i, j)
/// (GUM 5.2.2, equation 16). `r` is asked for i < j only. Never negative.
#[must_use]
pub fn combined(contributions: &[f64], r: impl Fn(usize, usize) -> f64) -> f64 {
    let mut variance = 0.0;
    for (j, cj) in contributions.iter().enumerate() {
        variance += cj * cj;
        for (i, ci) in contributions[..j].iter().enumerate() {
            variance += 2.0 * ci * cj * r(i, j);
        }
    }
    variance.max(0.0).sqrt()
}

/// The probability that a normal quantity is above a limit, kept as how many standard uncertainties its estimate is above:
/// a decision can often be taken by that, and few results show the probability itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chance {
    z: f64,
}

impl Chance {
    /// Of an estimate `z` standard uncertainties above the limit.
    #[must_use]
    pub fn above(z: f64) -> Self {
        Self { z }
    }

    /// How many standard uncertainties the estimate is above the limit.
    #[must_use]
    pub fn z(self) -> f64 {
        self.z
    }

    /// The probability, 0 to 1.
    #[must_use]
    pub fn p(self) -> f64 {
        normal_cdf(self.z)
    }
}

/// Phi(z), the standard normal distribution function.
#[must_use]
pub fn normal_cdf(z: f64) -> f64 {
    0.5 * libm::erfc(-z * std::f64::consts::FRAC_1_SQRT_2)
}

/// The z with Phi(z) = p, for 0 < p < 1.
///
/// # Panics
/// If p is outside 0 to 1.
#[must_use]
pub fn normal_quantile(p: f64) -> f64 {
    Normal::standard().inverse_cdf(p)
}

/// One line of an uncertainty budget.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Contribution {
    /// What it comes from.
    pub source: String,
    /// Its contribution to the standard uncertainty of the wall draw, in watts.
    pub u_w: f64,
}
