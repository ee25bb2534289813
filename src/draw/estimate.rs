//! All packages of a light, through its driver, to the wall.

use smallvec::SmallVec;

use super::forward_voltage::OutsideCurve;
use super::model::Model;
use super::package::{OperatingPoint, ScaledPower};
use super::sums::Sums;
use crate::facts::{Colour, Count};
use crate::reference::{ClassId, driver};
use crate::uncertain::{Distribution, Uncertain};
use crate::units::{Amps, Watts};

/// Packages of one class and colour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// Class row.
    pub class: ClassId,
    /// Colour.
    pub colour: Colour,
    /// How many.
    pub count: Count,
}

/// The driver's efficiency at one operating point: equally likely anywhere between two bounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Efficiency {
    /// Lower bound.
    pub low: f64,
    /// Upper bound.
    pub high: f64,
}

impl Efficiency {
    /// The bounds at that LED power.
    #[must_use]
    pub fn at(led: Watts) -> Self {
        Self { low: driver::eta_low(led), high: driver::ETA_HIGH }
    }

    /// The middle.
    #[must_use]
    pub fn mean(self) -> f64 {
        f64::midpoint(self.low, self.high)
    }

    /// The standard uncertainty of the middle.
    #[must_use]
    pub fn u(self) -> f64 {
        Distribution::Rectangular { half_width: (self.high - self.low) / 2.0 }.u()
    }
}

/// Wall draw over LED power at that efficiency, fans and controls at the middle of their bounds (equation 3).
#[must_use]
pub(super) fn wall_factor(efficiency: Efficiency) -> f64 {
    1.0 / efficiency.mean() + driver::AUX_MOST / 2.0
}

/// The wall draw of that much LED power.
#[must_use]
pub(super) fn wall(led: Watts) -> Watts {
    led * wall_factor(Efficiency::at(led))
}

/// A light at one operating point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PointDraw {
    /// DC power into the LEDs.
    pub led: Uncertain<Watts>,
    /// Power at the wall outlet.
    pub wall: Uncertain<Watts>,
    /// The driver's efficiency.
    pub efficiency: Efficiency,
    /// Square of the standard uncertainty of the wall draw with the currents taken as known, square watts; its root is
    /// seldom needed.
    pub(super) wall_variance_at_known_current: f64,
}

impl PointDraw {
    /// The 95 % interval of the wall draw, never below 0.
    #[must_use]
    pub fn wall_interval(&self) -> (Watts, Watts) {
        self.wall.interval_95()
    }

    /// The most that the wall draw can be by bounds rather than by a normal distribution: LED power `z` standard
    /// uncertainties up, the least efficient driver, the most for fans and controls. The first-order interval is too
    /// narrow below 15 W of LED power, where the driver's bounds are wide.
    #[must_use]
    pub fn wall_upper_bound(&self, z: f64) -> Watts {
        (self.led.value + self.led.u * z) / self.efficiency.low + self.led.value * driver::AUX_MOST
    }
}

/// What a light can draw.
#[derive(Debug, Clone, PartialEq)]
pub struct Draw {
    /// With every diode at the current its class stands for, or at the stated drive current.
    pub full: PointDraw,
    /// With every diode at its published maximum.
    pub ceiling: PointDraw,
    /// Wall draw over the range of currents that such lights are commonly run at.
    pub common: (Watts, Watts),
    /// What was counted.
    pub parts: SmallVec<[Part; 8]>,
    /// The highest current through any die at the ceiling.
    pub ceiling_die_current: Amps,
    /// The stated current through each package, if any.
    pub drive: Option<Amps>,
    pub(super) scaled: ScaledPower,
    pub(super) scale_least: f64,
    pub(super) scale_most: f64,
}

impl Draw {
    /// Estimates a light of at least one part.
    ///
    /// # Errors
    /// If a stated drive current is outside the curve of one of the dice.
    pub fn of(model: &Model, parts: &[Part], drive: Option<Amps>) -> Result<Self, OutsideCurve> {
        Self::of_parts(model, SmallVec::from_slice(parts), drive)
    }

    /// As [`Draw::of`], keeping the parts it is given. Never inlined, so that there are registers for the sums.
    #[inline(never)]
    pub(crate) fn of_parts(
        model: &Model,
        parts: SmallVec<[Part; 8]>,
        drive: Option<Amps>,
    ) -> Result<Self, OutsideCurve> {
        let mut sums = Sums::<2>::new();
        let (mut low, mut high) = (0.0, 0.0);
        let mut scaled = ScaledPower::default();
        let (mut most_current, mut scale_least, mut scale_most) = (0.0, 0.0, f64::INFINITY);
        for part in &parts {
            let driven;
            let package = match drive {
                None => model.package(part.class, part.colour),
                Some(current) => {
                    driven = model.driven(part.class, part.colour, current)?;
                    &driven
                }
            };
            let n = f64::from(part.count.number);
            let batch = (model.table().class(part.class).die, part.colour);
            sums.add(batch, part.count, [&package.full, &package.ceiling]);
            low += n * package.common_low.0;
            high += n * package.common_high.0;
            scaled.add(&package.scaled, n);
            most_current = larger(most_current, package.ceiling.die_current.0);
            scale_least = larger(scale_least, package.scale_least);
            scale_most = if package.scale_most < scale_most { package.scale_most } else { scale_most };
        }
        Ok(Self {
            full: sums.point(0),
            ceiling: sums.point(1),
            common: (wall(Watts(low)), wall(Watts(high))),
            parts,
            ceiling_die_current: Amps(most_current),
            drive,
            scaled,
            scale_least,
            scale_most,
        })
    }

    /// One package of `part` at full draw.
    ///
    /// # Panics
    /// Never for a part of this draw: its current was inside the curve when the draw was made.
    #[must_use]
    pub fn package_at_full(&self, model: &Model, part: &Part) -> OperatingPoint {
        match self.drive {
            None => model.package(part.class, part.colour).full,
            Some(current) => {
                model.driven(part.class, part.colour, current).expect("it was inside the curve before").full
            }
        }
    }
}

/// The larger of two numbers, none of which is NaN, in one instruction.
fn larger(one: f64, other: f64) -> f64 {
    if other > one { other } else { one }
}
