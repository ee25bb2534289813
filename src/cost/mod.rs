//! What a light costs: its price over what it really draws and emits, and what it costs to run.
//!
//! Money has no unit here: it is in whatever currency the price and the tariff are in.

use crate::units::{PhotonFlux, Watts};

/// Days of a year; a month is a twelfth of it.
const DAYS: f64 = 365.0;

/// What was paid and what is paid for power.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prices {
    /// Price of one light; absent where it is not known.
    pub price: Option<f64>,
    /// Price of a kilowatt hour.
    pub tariff: Option<f64>,
    /// Hours a day that the light is on, above 0 up to 24.
    pub hours: f64,
}

/// What the light draws and emits, as far as it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Draws {
    /// As such lights are commonly run; absent where a meter says how this one is.
    pub common: Option<(Watts, Watts)>,
    /// The 95 % interval at full draw, or of the reading.
    pub full: (Watts, Watts),
    /// The 95 % interval of the PPF at full draw.
    pub flux: Option<(PhotonFlux, PhotonFlux)>,
}

/// From the least to the most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// The least.
    pub low: f64,
    /// The most.
    pub high: f64,
}

impl Span {
    fn times(self, factor: f64) -> Self {
        Self { low: self.low * factor, high: self.high * factor }
    }

    /// A price over a quantity that lies between two bounds; absent where the lower is nothing, since then no price is
    /// the most.
    fn over(price: f64, low: f64, high: f64) -> Option<Self> {
        (low > 0.0).then(|| Self { low: price / high, high: price / low })
    }
}

/// What running it costs over some time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Running {
    /// As such lights are commonly run.
    pub common: Option<Span>,
    /// At full draw, or as measured.
    pub full: Span,
}

impl Running {
    fn times(self, factor: f64) -> Self {
        Self { common: self.common.map(|c| c.times(factor)), full: self.full.times(factor) }
    }
}

/// The answers; each absent where something that it needs is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cost {
    /// Price per watt really drawn, from full draw to the least common one.
    pub per_watt: Option<Span>,
    /// Price per umol/s at full draw.
    pub per_flux: Option<Span>,
    /// A day of running.
    pub day: Option<Running>,
    /// A month.
    pub month: Option<Running>,
    /// A year.
    pub year: Option<Running>,
}

/// The cost of a light.
#[must_use]
pub fn cost(prices: &Prices, draws: &Draws) -> Cost {
    let least = draws.common.map_or(draws.full.0, |common| common.0.min(draws.full.0));
    let energy = |(low, high): (Watts, Watts)| Span {
        low: low.0 * prices.hours / 1000.0,
        high: high.0 * prices.hours / 1000.0,
    };
    let day = prices
        .tariff
        .map(|tariff| Running { common: draws.common.map(energy), full: energy(draws.full) }.times(tariff));
    Cost {
        per_watt: prices.price.and_then(|price| Span::over(price, least.0, draws.full.1.0)),
        per_flux: prices
            .price
            .zip(draws.flux)
            .and_then(|(price, (low, high))| Span::over(price, low.0, high.0)),
        day,
        month: day.map(|day| day.times(DAYS / 12.0)),
        year: day.map(|day| day.times(DAYS)),
    }
}

/// The same at one draw: what lights are sorted by. Each absent where something that it needs is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Price per watt.
    pub per_watt: Option<f64>,
    /// Price per umol/s.
    pub per_flux: Option<f64>,
    /// A day of running.
    pub day: Option<f64>,
    /// A month.
    pub month: Option<f64>,
    /// A year.
    pub year: Option<f64>,
}

/// The cost at that wall draw and that PPF.
#[must_use]
pub fn at(prices: &Prices, wall: Watts, flux: Option<PhotonFlux>) -> Point {
    let over = |quantity: f64| prices.price.filter(|_| quantity > 0.0).map(|price| price / quantity);
    let day = prices.tariff.map(|tariff| wall.0 * prices.hours / 1000.0 * tariff);
    Point {
        per_watt: over(wall.0),
        per_flux: flux.and_then(|flux| over(flux.0)),
        day,
        month: day.map(|day| day * DAYS / 12.0),
        year: day.map(|day| day * DAYS),
    }
}
