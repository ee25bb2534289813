//! From watts at the wall back to the current that the diodes would need.

use super::estimate::{Draw, Efficiency, wall, wall_factor};
use super::forward_voltage::OutsideCurve;
use super::model::{JUNCTION, Model};
use super::package::OperatingPoint;
use super::sums::Sums;
use crate::units::{Amps, Watts};

/// Above this LED power the driver's lower bound no longer moves, so that wall draw is proportional to LED power.
const LINEAR_ABOVE: Watts = Watts(60.0);

/// The LED power behind that wall draw. Wall draw rises with LED power throughout, so there is exactly one.
pub(super) fn led_behind(wall_draw: Watts) -> Watts {
    let linear = wall_draw / wall_factor(Efficiency::at(LINEAR_ABOVE));
    if linear.0 >= LINEAR_ABOVE.0 {
        return linear;
    }
    // Below, the driver is less efficient the smaller the light: bisect between nothing and the linear answer.
    let (mut low, mut high) = (0.0, linear.0);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if wall(Watts(middle)).0 < wall_draw.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    Watts(f64::midpoint(low, high))
}

impl Draw {
    /// The factor on all currents, 1 being full draw, at which the light would draw `wall_draw`; absent where it is
    /// outside what the reference curves cover.
    #[must_use]
    pub fn scale_for(&self, wall_draw: Watts) -> Option<f64> {
        let led = led_behind(wall_draw);
        // Newton's steps shrink with their square: after one of a millionth the rest is below the last digit.
        let mut s = self.scaled.nearly(led);
        for _ in 0..30 {
            let (watts, slope) = self.scaled.at(s);
            let next = (s - (watts.0 - led.0) / slope).max(s / 4.0);
            let done = (next - s).abs() <= 1e-6 * s;
            s = next;
            if done {
                break;
            }
        }
        (s >= self.scale_least && s <= self.scale_most).then_some(s)
    }

    /// The standard uncertainty of a scale found from a reading with standard uncertainty `u_reading`: the reading's own
    /// and the estimate's at that scale, the drive current itself left out because it is what is sought.
    ///
    /// # Errors
    /// If the scale is outside the curves.
    pub fn scale_u(&self, model: &Model, scale: f64, u_reading: Watts) -> Result<f64, OutsideCurve> {
        let mut sums = Sums::<1>::new();
        for part in &self.parts {
            let class = model.table().class(part.class);
            let row = model.table().diode(class.die, part.colour).0;
            let current = self.full_die_current(model, part.class) * scale;
            sums.add(
                (class.die, part.colour),
                part.count,
                [&OperatingPoint::at(class, row, current, JUNCTION)?],
            );
        }
        let point = sums.point(0);
        let watts_per_scale = self.scaled.at(scale).1 * wall_factor(point.efficiency);
        let u_wall = (u_reading.0.powi(2) + point.wall_variance_at_known_current).sqrt();
        Ok(u_wall / watts_per_scale)
    }

    /// The current through each die of that class at full draw.
    #[must_use]
    pub fn full_die_current(&self, model: &Model, class: crate::reference::ClassId) -> Amps {
        let row = model.table().class(class);
        self.drive.map_or(row.die_current, |i| i / f64::from(row.parallel))
    }

    /// The wall draw with every die at `share` of the lowest current commonly used in its class.
    ///
    /// # Errors
    /// If that is outside the curves.
    pub fn wall_at_share_of_common_low(&self, model: &Model, share: f64) -> Result<Watts, OutsideCurve> {
        let mut led = 0.0;
        for part in &self.parts {
            let class = model.table().class(part.class);
            let row = model.table().diode(class.die, part.colour).0;
            let current = class.die_current * (class.common_low * share);
            let point = OperatingPoint::at(class, row, current, JUNCTION)?;
            led += f64::from(part.count.number) * point.watts.0;
        }
        Ok(wall(Watts(led)))
    }
}
