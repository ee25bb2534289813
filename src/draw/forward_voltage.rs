//! The forward voltage of one die.

use std::fmt;

use crate::reference::DiodeRow;
use crate::units::{Amps, Celsius, Ohms, Volts};

/// Boltzmann constant over elementary charge, V/K. Both are exact: SI Brochure, 9th edition (2019).
const K_OVER_E: f64 = 1.380_649e-23 / 1.602_176_634e-19;

/// The temperature at which the table's ideality factors hold, kelvins (25 degrees Celsius).
pub const T_REF_K: f64 = 298.15;

/// A curve is good from this share of its test current ...
const LOWEST_SHARE: f64 = 0.05;
/// ... up to this multiple.
const HIGHEST_SHARE: f64 = 5.0;

/// A current at which a die's curve says nothing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutsideCurve {
    /// The current asked for.
    pub current: Amps,
    /// The lowest at which the curve holds.
    pub lowest: Amps,
    /// The highest.
    pub highest: Amps,
}

impl fmt::Display for OutsideCurve {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:.0} mA a die is outside {:.0} to {:.0} mA, where the reference curve holds",
            self.current.ma(),
            self.lowest.ma(),
            self.highest.ma()
        )
    }
}

impl std::error::Error for OutsideCurve {}

/// The Shockley equation with series resistance, written from a test point (V0 at I0 and 25 degrees Celsius), for I far
/// above the saturation current:
///
/// `V(I,T) = V0 + n*V_T*ln(I/I0) + Rs*(I - I0) + k*(T - 25)`, with `V_T` = kB*`T_ref/e`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shockley {
    /// V0, volts at the test current.
    pub v0: Volts,
    /// I0, the test current.
    pub i0: Amps,
    /// n, the ideality factor, no unit.
    pub ideality: f64,
    /// Rs, ohms.
    pub rs: Ohms,
    /// k, volts per kelvin.
    pub dvf_dt: f64,
    /// `T_ref`, kelvins.
    pub t_ref_k: f64,
}

impl Shockley {
    /// The curve of a row of the reference table.
    #[must_use]
    pub fn of(row: &DiodeRow) -> Self {
        Self {
            v0: row.vf,
            i0: row.test,
            ideality: row.ideality,
            rs: row.rs,
            dvf_dt: row.dvf_dt,
            t_ref_k: T_REF_K,
        }
    }

    /// n*`V_T`, the voltage gained per e-fold of current by the junction alone.
    #[must_use]
    pub fn slope(&self) -> Volts {
        Volts(self.ideality * K_OVER_E * self.t_ref_k)
    }

    /// The lowest and highest current at which the curve is used: 0.05 and 5 times the test current.
    #[must_use]
    pub fn range(&self) -> (Amps, Amps) {
        (self.i0 * LOWEST_SHARE, self.i0 * HIGHEST_SHARE)
    }

    /// The voltage at `current` and a junction temperature `junction`.
    ///
    /// # Errors
    /// Outside [`Shockley::range`].
    pub fn voltage(&self, current: Amps, junction: Celsius) -> Result<Volts, OutsideCurve> {
        let (lowest, highest) = self.range();
        // A relative slack, so that 0.05 * I0 computed in another order is not refused.
        if !(current.0 >= lowest.0 * (1.0 - 1e-9) && current.0 <= highest.0 * (1.0 + 1e-9)) {
            return Err(OutsideCurve { current, lowest, highest });
        }
        Ok(self.v0
            + self.slope() * (current / self.i0).ln()
            + self.rs * (current - self.i0)
            + Volts(self.dvf_dt * (junction.0 - 25.0)))
    }

    /// dV/dI times I, volts: how much the voltage changes per unit of relative change of current.
    #[must_use]
    pub fn relative_slope(&self, current: Amps) -> Volts {
        self.slope() + self.rs * current
    }
}

/// The forward voltage of a die of that row at `current` and a junction temperature `junction`.
///
/// # Errors
/// If the current is under 0.05 or over 5 times the row's test current.
pub fn forward_voltage(row: &DiodeRow, current: Amps, junction: Celsius) -> Result<Volts, OutsideCurve> {
    Shockley::of(row).voltage(current, junction)
}
