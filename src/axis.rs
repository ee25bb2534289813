//! A linear axis of a picture, with round ticks.

/// A linear axis with round ticks that take in all values.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    low: f64,
    step: f64,
    steps: u32,
    decimals: usize,
    start: f64,
    end: f64,
}

impl Axis {
    /// An axis for values from `low` to `high` that is drawn from `start` to `end`, with about so many ticks. It begins and
    /// ends at a tick; ticks are 1, 2 or 5 times a power of ten apart.
    #[must_use]
    pub fn new(low: f64, high: f64, start: f64, end: f64, ticks: f64) -> Self {
        let rough = (high - low).max(0.01) / ticks;
        let power = rough.log10().floor();
        let unit = 10.0_f64.powf(power);
        let step = [1.0, 2.0, 5.0, 10.0].map(|m| m * unit).into_iter().find(|s| *s >= rough);
        let step = step.unwrap_or(10.0 * unit);
        let low = (low / step).floor() * step;
        let steps = (1..=20).find(|&n| low + f64::from(n) * step >= high - 1e-9 * step).unwrap_or(20);
        let decimals = (0..6).find(|&d| step * 10.0_f64.powi(d) >= 1.0 - 1e-9);
        let decimals = decimals.and_then(|d| usize::try_from(d).ok()).unwrap_or(6);
        Self { low, step, steps, decimals, start, end }
    }

    /// Where a value is drawn.
    #[must_use]
    pub fn at(&self, value: f64) -> f64 {
        self.start + (self.end - self.start) * (value - self.low) / (self.step * f64::from(self.steps))
    }

    /// Where each tick is drawn, and its label.
    pub fn ticks(&self) -> impl Iterator<Item = (f64, String)> + '_ {
        (0..=self.steps).map(|n| {
            let value = self.low + f64::from(n) * self.step;
            (self.at(value), format!("{value:.*}", self.decimals))
        })
    }
}
