//! Sums over the packages of a light, and what they come to at the wall.

use smallvec::SmallVec;

use super::estimate::{Efficiency, PointDraw, wall_factor};
use super::model::JUNCTION_HALF_WIDTH;
use super::package::OperatingPoint;
use crate::facts::{Colour, Count};
use crate::reference::{Die, driver};
use crate::uncertain::{Distribution, Uncertain};
use crate::units::Watts;

/// Half the width of what a driver's current may be off, as a share of it, rectangular; common to the whole light.
const REGULATION: f64 = 0.05;

/// The kind of die and the colour: what shares one batch, one bin, and so one error of forward voltage.
pub(super) type Batch = (Die, Colour);

/// Sums over the packages at `P` operating points, gathered together; the order of adding never matters.
pub(super) struct Sums<const P: usize> {
    points: [PointSums; P],
    batches: SmallVec<[BatchSums<P>; 8]>,
    /// A bit for each batch that there is.
    seen: u64,
}

/// There are few enough batches for that.
const _: () = assert!(Die::ALL.len() * Colour::ALL.len() <= 64);

/// What adds up at one operating point whatever the batch.
#[derive(Clone, Copy, Default)]
struct PointSums {
    watts: f64,
    per_current: f64,
    per_kelvin: f64,
    counts_squared: f64,
}

/// By point: the sum of N * dice * I * `u_V`. Within a batch the error is the same for every diode, so that it adds linearly
/// (GUM 5.2.2: ten resistors calibrated against one standard).
struct BatchSums<const P: usize> {
    batch: Batch,
    voltage: [f64; P],
}

impl<const P: usize> Sums<P> {
    pub(super) fn new() -> Self {
        Self { points: [PointSums::default(); P], batches: SmallVec::new(), seen: 0 }
    }

    /// Adds `count` packages of a batch, each at those points.
    #[inline]
    pub(super) fn add(&mut self, batch: Batch, count: Count, points: [&OperatingPoint; P]) {
        let n = f64::from(count.number);
        for (sums, point) in self.points.iter_mut().zip(points) {
            sums.watts += n * point.watts.0;
            sums.per_current += n * point.per_current.0;
            sums.per_kelvin += n * point.per_kelvin.0;
            if let Some(half) = count.half_width {
                let u = Distribution::Rectangular { half_width: f64::from(half) }.u();
                sums.counts_squared += (u * point.watts.0).powi(2);
            }
        }
        let voltage = points.map(|point| n * point.u_voltage.0);
        let bit = 1 << (batch.0 as usize * Colour::ALL.len() + batch.1 as usize);
        if self.seen & bit == 0 {
            self.seen |= bit;
            self.batches.push(BatchSums { batch, voltage });
        } else if let Some(sums) = self.batches.iter_mut().find(|sums| sums.batch == batch) {
            for (sum, u) in sums.voltage.iter_mut().zip(voltage) {
                *sum += u;
            }
        }
    }

    /// Standard uncertainty of the LED power from the forward voltage of each batch.
    pub(super) fn by_batch(&self, point: usize) -> impl Iterator<Item = (Batch, f64)> {
        self.batches.iter().map(move |sums| (sums.batch, sums.voltage[point]))
    }

    /// The square of the same of all together; batches know nothing of each other.
    fn voltage_variance(&self, point: usize) -> f64 {
        self.batches.iter().map(|sums| sums.voltage[point].powi(2)).sum()
    }

    pub(super) fn regulation_u(&self, point: usize) -> f64 {
        self.points[point].per_current * Distribution::Rectangular { half_width: REGULATION }.u()
    }

    pub(super) fn temperature_u(&self, point: usize) -> f64 {
        let junction = Distribution::Rectangular { half_width: JUNCTION_HALF_WIDTH };
        self.points[point].per_kelvin.abs() * junction.u()
    }

    pub(super) fn counts_u(&self, point: usize) -> f64 {
        self.points[point].counts_squared.sqrt()
    }

    /// The light at one of the points.
    pub(super) fn point(&self, point: usize) -> PointDraw {
        let led = Watts(self.points[point].watts);
        let efficiency = Efficiency::at(led);
        let known = self.voltage_variance(point)
            + self.temperature_u(point).powi(2)
            + self.points[point].counts_squared;
        let variance = known + self.regulation_u(point).powi(2);
        let factor = wall_factor(efficiency);
        let beyond_led = efficiency_u(led, efficiency).powi(2) + aux_u(led).powi(2);
        let at_wall = |variance: f64| variance * factor * factor + beyond_led;
        PointDraw {
            led: Uncertain { value: led, u: Watts(variance.sqrt()) },
            wall: Uncertain { value: led * factor, u: Watts(at_wall(variance).sqrt()) },
            efficiency,
            wall_variance_at_known_current: at_wall(known),
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
