//! What is known of a light's driver, fans and controls: bounds, not measurements.

use crate::units::Watts;

/// Best driver efficiency. Regulation (EU) 2019/2020, Annex VI (benchmark for control gear).
pub const ETA_HIGH: f64 = 0.95;

/// What the lower bound of driver efficiency never exceeds: typical horticultural driver, Kusuma, Pattison & Bugbee 2020,
/// Horticulture Research 7:56.
pub const ETA_LOW_MOST: f64 = 0.85;

/// Fans and controls take between nothing and this share of the LED power. From memory: up to four 3 W fans on a 200 W
/// panel.
pub const AUX_MOST: f64 = 0.06;

/// LED power above which the least efficiency is over [`ETA_LOW_MOST`], so that the power need not be taken.
const PLATEAU_W: f64 = 52.0;

/// Least efficiency of separate LED control gear at an output of `led` watts, without full-load exemptions: P^0.81 /
/// (1.09 P^0.81 + 2.10). Regulation (EU) 2019/2020, Annex II Table 3.
#[must_use]
pub fn least_efficiency(led: Watts) -> f64 {
    let power = led.0.powf(0.81);
    power / (1.09 * power + 2.10)
}

/// Lower bound of a light's driver efficiency at that LED power.
#[must_use]
pub fn eta_low(led: Watts) -> f64 {
    if led.0 > PLATEAU_W { ETA_LOW_MOST } else { least_efficiency(led).min(ETA_LOW_MOST) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shortcut_above_the_plateau_changes_nothing() {
        for tenth in 1..2000 {
            let led = Watts(f64::from(tenth) / 10.0);
            assert!((eta_low(led) - least_efficiency(led).min(ETA_LOW_MOST)).abs() < 1e-15);
        }
    }
}
