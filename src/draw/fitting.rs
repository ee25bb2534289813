//! For somebody who builds: how many diodes would make a claim true, and how many a power supply carries.

use std::fmt;

use smallvec::SmallVec;

use super::backwards::led_behind;
use super::estimate::Draw;
use super::forward_voltage::{OutsideCurve, Shockley};
use super::model::{BENCH, JUNCTION, Model};
use super::package::OperatingPoint;
use crate::facts::Colour;
use crate::uncertain::COVERAGE_95;
use crate::units::{Amps, Volts, Watts};

/// A small step in voltage: what a supply at constant voltage may be off, or a string may differ by.
pub const STEP: Volts = Volts(0.1);

/// What a supply carries.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// Packages of each part of the mix, in its order, rounded down.
    pub packages: SmallVec<[u32; 8]>,
    /// Current through every package.
    pub current: Amps,
    /// All in one string, warm: the typical voltage.
    pub running: Volts,
    /// All in one string, cold and of the highest voltage that the 95 % interval allows: what a driver has to reach.
    pub reach: Volts,
    /// What constant voltage does to the colour of which there are most.
    pub steep: Steep,
}

/// One package at a fixed voltage, and a tenth of a volt above it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Steep {
    /// The colour.
    pub colour: Colour,
    /// Voltage across the package at its class current.
    pub volts: Volts,
    /// The current there.
    pub current: Amps,
    /// The current at a tenth of a volt more; absent where that is beyond the curve.
    pub more: Option<Amps>,
}

/// Why nothing was fitted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NoFit {
    /// The packages run at different currents, so that they cannot share a string.
    MixedCurrents,
    /// The supply does not carry one of each.
    TooSmall {
        /// What one of each in this proportion takes at least.
        least: Watts,
    },
    /// A current is outside a curve.
    Outside(OutsideCurve),
}

impl From<OutsideCurve> for NoFit {
    fn from(outside: OutsideCurve) -> Self {
        Self::Outside(outside)
    }
}

impl fmt::Display for NoFit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::MixedCurrents => {
                f.write_str("the classes run at different currents and need a supply each")
            }
            Self::TooSmall { least } => write!(f, "too small for this mix, which takes {least} at least"),
            Self::Outside(outside) => outside.fmt(f),
        }
    }
}

impl Draw {
    /// How many packages of the same mix would draw `wall_draw` at full draw, not rounded.
    #[must_use]
    pub fn packages_for(&self, wall_draw: Watts) -> f64 {
        let counted: f64 = self.parts.iter().map(|p| f64::from(p.count.number)).sum();
        counted * (led_behind(wall_draw) / self.full.led.value)
    }

    /// How many packages of this mix a supply of `supply` watts (DC, what its plate says it gives) carries at full draw, in
    /// one string at one current. Cold dice take more voltage than warm ones and some products more than others; neither
    /// overloads it.
    ///
    /// # Errors
    /// If the mix cannot share a string, or the supply is too small for it.
    pub fn fit(&self, model: &Model, supply: Watts) -> Result<Fit, NoFit> {
        let mut current: Option<Amps> = None;
        let mut volts = SmallVec::<[(f64, f64); 8]>::new();
        for part in &self.parts {
            let class = model.table().class(part.class);
            let row = model.table().diode(class.die, part.colour).0;
            let warm = self.package_at_full(model, part);
            let cold = OperatingPoint::at(class, row, warm.die_current, BENCH)?;
            let through = warm.die_current * f64::from(class.parallel);
            if current.is_some_and(|other| (other / through - 1.0).abs() > 1e-9) {
                return Err(NoFit::MixedCurrents);
            }
            current = Some(through);
            let series = f64::from(class.series);
            let u = cold.u_voltage.0 / (class.dice() * cold.die_current.0);
            volts.push((warm.die_voltage.0 * series, (cold.die_voltage.0 + COVERAGE_95 * u) * series));
        }
        let current = current.ok_or(NoFit::MixedCurrents)?;
        let counts = || self.parts.iter().map(|p| f64::from(p.count.number));
        let all = current * Volts(counts().zip(&volts).map(|(n, v)| n * v.1).sum());
        let share = supply / all;
        let packages: SmallVec<[u32; 8]> = counts().map(|n| whole(n * share)).collect();
        if packages.contains(&0) {
            let fewest = counts().fold(f64::INFINITY, f64::min);
            return Err(NoFit::TooSmall { least: all / fewest });
        }
        let string = |pick: fn(&(f64, f64)) -> f64| {
            Volts(packages.iter().zip(&volts).map(|(n, v)| f64::from(*n) * pick(v)).sum())
        };
        Ok(Fit {
            current,
            running: string(|v| v.0),
            reach: string(|v| v.1),
            steep: self.steep(model, current)?,
            packages,
        })
    }

    fn steep(&self, model: &Model, current: Amps) -> Result<Steep, OutsideCurve> {
        let most = self.parts.iter().max_by_key(|p| p.count.number).unwrap_or(&self.parts[0]);
        let class = model.table().class(most.class);
        let (series, parallel) = (f64::from(class.series), f64::from(class.parallel));
        let curve = Shockley::of(model.table().diode(class.die, most.colour).0);
        let each = curve.voltage(current / parallel, JUNCTION)?;
        let more = current_at(&curve, each + STEP / series).map(|i| i * parallel);
        Ok(Steep { colour: most.colour, volts: each * series, current, more })
    }
}

/// The current of one warm die at that voltage, by bisection on a curve that rises throughout; absent outside it.
fn current_at(curve: &Shockley, volts: Volts) -> Option<Amps> {
    let (mut low, mut high) = curve.range();
    let at = |current| curve.voltage(current, JUNCTION).ok();
    if volts.0 < at(low)?.0 || volts.0 > at(high)?.0 {
        return None;
    }
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if at(middle)?.0 < volts.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some((low + high) / 2.0)
}

/// Rounded down to a count.
fn whole(n: f64) -> u32 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within 0 and u32::MAX")]
    let whole = (n * (1.0 + 1e-12)).floor().clamp(0.0, f64::from(u32::MAX)) as u32;
    whole
}
