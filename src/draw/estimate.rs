//! All packages of a light, through its driver, to the wall.

use smallvec::SmallVec;

use super::forward_voltage::OutsideCurve;
use super::model::{JUNCTION_HALF_WIDTH, Model};
use super::package::{OperatingPoint, ScaledPower};
use crate::facts::{Colour, Count};
use crate::reference::{ClassId, Die, driver};
use crate::uncertain::{Distribution, Uncertain, combined};
use crate::units::{Amps, Watts};

/// Half the width of what a driver's current may be off, as a share of it, rectangular; common to the whole light.
const REGULATION: f64 = 0.05;

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
    /// Standard uncertainty of the wall draw with the currents taken as known.
    pub(super) u_wall_at_known_current: Watts,
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

/// The kind of die and the colour: what shares one batch, one bin, and so one error of forward voltage.
pub(super) type Batch = (Die, Colour);

/// Sums over the packages at one operating point; the order of adding never matters.
#[derive(Default)]
pub(super) struct Sums {
    watts: f64,
    per_current: f64,
    per_kelvin: f64,
    counts_squared: f64,
    /// By batch: the sum of N * dice * I * `u_V`. Within a batch the error is the same for every diode, so that it adds
    /// linearly (GUM 5.2.2: ten resistors calibrated against one standard).
    pub(super) voltage: SmallVec<[f64; 8]>,
    pub(super) batches: SmallVec<[Batch; 8]>,
}

impl Sums {
    pub(super) fn add(&mut self, batch: Batch, count: Count, point: &OperatingPoint) {
        let place = self.batches.iter().position(|b| *b == batch).unwrap_or(self.batches.len());
        self.add_at(place, batch, count, point);
    }

    /// As [`Sums::add`], the batch's place being known: the first that is not taken yet, or the one that it has.
    fn add_at(&mut self, place: usize, batch: Batch, count: Count, point: &OperatingPoint) {
        let n = f64::from(count.number);
        self.watts += n * point.watts.0;
        self.per_current += n * point.per_current.0;
        self.per_kelvin += n * point.per_kelvin.0;
        let u = n * point.u_voltage.0;
        if let Some(sum) = self.voltage.get_mut(place) {
            *sum += u;
        } else {
            self.voltage.push(u);
            self.batches.push(batch);
        }
        if let Some(half) = count.half_width {
            let u = Distribution::Rectangular { half_width: f64::from(half) }.u();
            self.counts_squared += (u * point.watts.0).powi(2);
        }
    }

    /// Standard uncertainty of the LED power from forward voltage; batches know nothing of each other.
    pub(super) fn voltage_u(&self) -> f64 {
        combined(&self.voltage, |_, _| 0.0)
    }

    pub(super) fn regulation_u(&self) -> f64 {
        self.per_current * Distribution::Rectangular { half_width: REGULATION }.u()
    }

    pub(super) fn temperature_u(&self) -> f64 {
        self.per_kelvin.abs() * Distribution::Rectangular { half_width: JUNCTION_HALF_WIDTH }.u()
    }

    pub(super) fn counts_u(&self) -> f64 {
        self.counts_squared.sqrt()
    }

    pub(super) fn led(&self) -> Watts {
        Watts(self.watts)
    }

    pub(super) fn point(&self) -> PointDraw {
        let led = self.led();
        let efficiency = Efficiency::at(led);
        let known = self.voltage_u().powi(2) + self.temperature_u().powi(2) + self.counts_squared;
        let u_led = (known + self.regulation_u().powi(2)).sqrt();
        let factor = wall_factor(efficiency);
        let beyond_led = efficiency_u(led, efficiency).powi(2) + aux_u(led).powi(2);
        PointDraw {
            led: Uncertain { value: led, u: Watts(u_led) },
            wall: Uncertain { value: led * factor, u: Watts(((u_led * factor).powi(2) + beyond_led).sqrt()) },
            efficiency,
            u_wall_at_known_current: Watts((known * factor * factor + beyond_led).sqrt()),
        }
    }
}

/// Contribution of the driver's efficiency to the wall draw, watts, its bounds held fixed.
pub(super) fn efficiency_u(led: Watts, efficiency: Efficiency) -> f64 {
    led.0 * efficiency.u() / efficiency.mean().powi(2)
}

/// Contribution of fans and controls to the wall draw, watts.
pub(super) fn aux_u(led: Watts) -> f64 {
    led.0 * Distribution::Rectangular { half_width: driver::AUX_MOST / 2.0 }.u()
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
        let (mut full, mut ceiling) = (Sums::default(), Sums::default());
        let (mut low, mut high) = (0.0, 0.0);
        let mut scaled = ScaledPower::default();
        let mut ceiling_die_current = Amps(0.0);
        let (mut scale_least, mut scale_most) = (0.0_f64, f64::INFINITY);
        for part in parts {
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
            let place = full.batches.iter().position(|b| *b == batch).unwrap_or(full.batches.len());
            full.add_at(place, batch, part.count, &package.full);
            ceiling.add_at(place, batch, part.count, &package.ceiling);
            ceiling_die_current = ceiling_die_current.max(package.ceiling.die_current);
            low += n * package.common_low.0;
            high += n * package.common_high.0;
            scaled.add(&package.scaled, n);
            scale_least = scale_least.max(package.scale_least);
            scale_most = scale_most.min(package.scale_most);
        }
        Ok(Self {
            full: full.point(),
            ceiling: ceiling.point(),
            common: (wall(Watts(low)), wall(Watts(high))),
            parts: SmallVec::from_slice(parts),
            ceiling_die_current,
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
