//! What a light costs, for people and machines.

use serde::Serialize;

use super::Light;
use super::Run;
use super::sanitise::terminal;
use crate::comparison::Assessment;
use crate::cost::{Cost, Draws, Prices, Running, Span, cost};
use crate::facts::Listing;
use crate::photons::Photons;

/// What was asked beside the verdict.
#[derive(Debug, Clone, PartialEq)]
pub struct Money {
    /// Price of a kilowatt hour.
    pub tariff: Option<f64>,
    /// Hours a day.
    pub hours: f64,
    /// The currency's name or sign; may be empty.
    pub currency: String,
}

/// The price of one light: that of the listing, over the lights in its pack.
#[must_use]
pub fn price_each(listing: &Listing<'_>) -> Option<f64> {
    listing.price.map(|price| price / f64::from(listing.units_in_pack.unwrap_or(1).max(1)))
}

/// Price over the draw that is known best: measured, else full.
#[must_use]
pub fn price_per_watt(listing: &Listing<'_>, assessment: &Assessment) -> Option<f64> {
    let draw = assessment.measured.or(assessment.counted.draw.as_ref().map(|d| d.full.wall))?.value;
    price_each(listing).map(|price| price / draw.0)
}

/// The cost of the light; absent where its draw is not known.
fn of(run: Run<'_>, light: Light<'_>, money: &Money) -> Option<Cost> {
    let assessment = light.assessment;
    let draw = assessment.counted.draw.as_ref();
    let photons = draw.map(|draw| Photons::of(run.model, draw));
    let prices = Prices { price: price_each(light.listing), tariff: money.tariff, hours: money.hours };
    let draws = match assessment.measured {
        Some(read) => {
            let full = read.interval_95();
            let flux = photons.map(|p| {
                let (low, high) = p.efficacy_interval();
                (low * full.0, high * full.1)
            });
            Draws { common: None, full, flux }
        }
        None => Draws {
            common: Some(draw?.common),
            full: draw?.full.wall_interval(),
            flux: photons.map(|p| p.par_interval()),
        },
    };
    Some(cost(&prices, &draws))
}

/// The lines of the working: name and text. None where nothing about money was asked.
pub(super) fn lines(run: Run<'_>, light: Light<'_>) -> Vec<(&'static str, String)> {
    let Some(money) = light.money else { return Vec::new() };
    let Some(cost) = of(run, light, money) else {
        return vec![("price", "the draw is not known, so neither is what a watt or a day costs".to_owned())];
    };
    let mut lines = Vec::new();
    let currency = terminal(&money.currency);
    let unit = if currency.is_empty() { String::new() } else { format!(" {currency}") };
    if let (Some(price), Some(per_watt)) = (price_each(light.listing), cost.per_watt) {
        let flux = cost.per_flux.map(|s| format!(", {} a umol/s", span(s))).unwrap_or_default();
        lines.push(("price", format!("{price:.2}{unit}: {} a watt drawn{flux}", span(per_watt))));
    }
    if let (Some(day), Some(month), Some(year), Some(tariff)) =
        (cost.day, cost.month, cost.year, money.tariff)
    {
        let of = |pick: fn(&Running) -> Option<Span>| {
            let [day, month, year] = [&day, &month, &year].map(pick);
            Some(format!("{} a day, {} a month, {} a year", span(day?), span(month?), span(year?)))
        };
        let terms = format!("{} h a day at {tariff}{unit}/kWh", money.hours);
        let full = of(|r| Some(r.full)).unwrap_or_default();
        match of(|r| r.common) {
            Some(common) => {
                lines.push(("to run", common));
                lines.push(("  at full", full));
            }
            None => lines.push(("to run", full)),
        }
        lines.push(("", terms));
    }
    lines
}

fn span(span: Span) -> String {
    let places = match span.high {
        x if x >= 99.95 => 0,
        x if x >= 9.995 => 1,
        _ => 2,
    };
    let (low, high) = (format!("{:.places$}", span.low), format!("{:.places$}", span.high));
    if low == high { low } else { format!("{low}-{high}") }
}

/// Least and most.
#[derive(Serialize)]
struct SpanObject {
    low: f64,
    high: f64,
}

impl From<Span> for SpanObject {
    fn from(span: Span) -> Self {
        Self { low: span.low, high: span.high }
    }
}

#[derive(Serialize)]
struct RunningObject {
    common: Option<SpanObject>,
    full: SpanObject,
}

impl From<Running> for RunningObject {
    fn from(running: Running) -> Self {
        Self { common: running.common.map(SpanObject::from), full: running.full.into() }
    }
}

/// The cost, in `currency` where one was given.
#[derive(Serialize)]
pub(super) struct CostObject<'a> {
    currency: Option<&'a str>,
    hours: f64,
    tariff: Option<f64>,
    price_each: Option<f64>,
    price_per_w: Option<SpanObject>,
    price_per_umol_s: Option<SpanObject>,
    day: Option<RunningObject>,
    month: Option<RunningObject>,
    year: Option<RunningObject>,
}

impl<'a> CostObject<'a> {
    /// The object; absent where nothing was asked or the draw is not known.
    pub(super) fn of(run: Run<'a>, light: Light<'a>) -> Option<Self> {
        let money = light.money?;
        let cost = of(run, light, money)?;
        Some(Self {
            currency: Some(money.currency.as_str()).filter(|c| !c.is_empty()),
            hours: money.hours,
            tariff: money.tariff,
            price_each: price_each(light.listing),
            price_per_w: cost.per_watt.map(SpanObject::from),
            price_per_umol_s: cost.per_flux.map(SpanObject::from),
            day: cost.day.map(RunningObject::from),
            month: cost.month.map(RunningObject::from),
            year: cost.year.map(RunningObject::from),
        })
    }
}
