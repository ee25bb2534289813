//! One package (a diode as a shopper counts it): its dice, the current through them, and what it then takes.

use super::forward_voltage::{OutsideCurve, Shockley};
use crate::reference::{ClassRow, DiodeRow};
use crate::units::{Amps, Celsius, Volts, Watts};

/// How much more the products of one colour differ in voltage, per e-fold away from the test current, volts. Products of
/// one colour differ in slope as well as in level.
const U_SLOPE: f64 = 0.10;

/// One package at one current, with what its draw is sensitive to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OperatingPoint {
    /// Current through each die.
    pub die_current: Amps,
    /// Voltage across each die.
    pub die_voltage: Volts,
    /// What the package takes.
    pub watts: Watts,
    /// dP per unit of relative change of current: dice * I * (V + I dV/dI).
    pub per_current: Watts,
    /// dP per kelvin: dice * I * k.
    pub per_kelvin: Watts,
    /// dice * I * `u_V`: the standard uncertainty that the forward voltage alone gives it.
    pub u_voltage: Watts,
}

impl OperatingPoint {
    /// The package of that class and die at `die_current` and a junction temperature `junction`.
    ///
    /// # Errors
    /// Outside the die's curve.
    pub fn at(
        class: &ClassRow,
        row: &DiodeRow,
        die_current: Amps,
        junction: Celsius,
    ) -> Result<Self, OutsideCurve> {
        let curve = Shockley::of(row);
        let die_voltage = curve.voltage(die_current, junction)?;
        let current = class.dice() * die_current;
        let e_folds = (die_current / row.test).ln();
        let u_v = row.u_vf.0.hypot(U_SLOPE * e_folds);
        Ok(Self {
            die_current,
            die_voltage,
            watts: die_voltage * current,
            per_current: (die_voltage + curve.relative_slope(die_current)) * current,
            per_kelvin: Volts(row.dvf_dt) * current,
            u_voltage: Volts(u_v) * current,
        })
    }
}

/// The power of a package, or of a sum of packages, when all its currents are scaled by s:
/// `P(s) = s * (level + log * ln s + ohmic * s)`, which is equation (1) times I with I = s * `I_full`.
///
/// It is linear in its three coefficients, so a whole light has one too, and solving backwards costs one logarithm a step.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ScaledPower {
    /// Watts at s = 1 less the ohmic part.
    pub level: f64,
    /// Watts per e-fold.
    pub log: f64,
    /// Watts of the series resistance at s = 1.
    pub ohmic: f64,
}

impl ScaledPower {
    /// Watts at the scale `s` > 0, and dP/ds there; together, for the sake of the one logarithm.
    pub(super) fn at(&self, s: f64) -> (Watts, f64) {
        let log = self.log * s.ln();
        let watts = s * (self.level + log + self.ohmic * s);
        (Watts(watts), self.level + log + self.log + 2.0 * self.ohmic * s)
    }

    /// The scale that gives about that power, above zero: by the parabola that has the power, the slope and the curvature
    /// of the curve at s = 1. The logarithm is the small part of it, so this is near over the whole range.
    pub(super) fn nearly(&self, power: Watts) -> f64 {
        let half_curvature = self.log / 2.0 + self.ohmic;
        let slope = self.level + self.log + 2.0 * self.ohmic;
        let lacking = power.0 - (self.level + self.ohmic);
        // The root written so that nothing cancels where the curvature is small.
        1.0 + 2.0 * lacking / (slope + (slope * slope + 4.0 * half_curvature * lacking).sqrt())
    }

    pub(super) fn add(&mut self, other: &Self, times: f64) {
        self.level += other.level * times;
        self.log += other.log * times;
        self.ohmic += other.ohmic * times;
    }
}

/// One package at the three operating points, ready to be counted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PackageDraw {
    /// At the class current, or at a stated drive current.
    pub full: OperatingPoint,
    /// At the lower of the colour's and the class's published maximum, never under full.
    pub ceiling: OperatingPoint,
    /// At the lowest current that such lights are commonly run at.
    pub common_low: Watts,
    /// At the highest.
    pub common_high: Watts,
    /// Power against the scale of current, 1 being full.
    pub scaled: ScaledPower,
    /// Lowest scale at which the curve holds.
    pub scale_least: f64,
    /// Highest scale at which the curve holds.
    pub scale_most: f64,
}

impl PackageDraw {
    /// The package of that class and die, driven at `drive` through the package where that is stated.
    ///
    /// # Errors
    /// If any of the three currents is outside the die's curve.
    pub fn new(
        class: &ClassRow,
        row: &DiodeRow,
        drive: Option<Amps>,
        junction: Celsius,
    ) -> Result<Self, OutsideCurve> {
        let full_current = drive.map_or(class.die_current, |i| i / f64::from(class.parallel));
        let ceiling_current = row.max.min(class.max_die_current).max(full_current);
        let at = |current| OperatingPoint::at(class, row, current, junction);
        let full = at(full_current)?;
        let curve = Shockley::of(row);
        let current = class.dice() * full_current;
        let ohmic = (row.rs * full_current * current).0;
        let (lowest, highest) = curve.range();
        Ok(Self {
            full,
            ceiling: at(ceiling_current)?,
            common_low: at(class.die_current * class.common_low)?.watts,
            common_high: at(class.die_current * class.common_high)?.watts,
            scaled: ScaledPower { level: full.watts.0 - ohmic, log: (curve.slope() * current).0, ohmic },
            scale_least: lowest / full_current,
            scale_most: highest / full_current,
        })
    }
}
