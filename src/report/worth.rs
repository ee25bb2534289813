//! What a light costs, for people and machines.

use serde::Serialize;

use super::Light;
use super::Run;
use super::sanitise::terminal;
use crate::comparison::{Evidence, Reason};
use crate::cost::{Cost, Draws, Point, Prices, Running, Span, cost};
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

/// The prices of that light.
fn prices(listing: &Listing<'_>, money: &Money) -> Prices {
    Prices { price: price_each(listing), tariff: money.tariff, hours: money.hours }
}

/// The cost at the draw that is known best: measured, else full. Absent where it is not known.
pub(super) fn at_best(run: Run<'_>, light: Light<'_>, money: &Money) -> Option<Point> {
    let photons = light.assessment.counted.draw.as_ref().map(|draw| Photons::of(run.model, draw));
    at(light, money, photons.as_ref())
}

fn at(light: Light<'_>, money: &Money, photons: Option<&Photons>) -> Option<Point> {
    let assessment = light.assessment;
    let full = assessment.counted.draw.as_ref().map(|d| d.full.wall.value);
    let (wall, flux) = match assessment.measured {
        Some(read) => (read.value, photons.map(|p| p.at_wall(read.value))),
        None => (full?, photons.map(|p| p.par.value)),
    };
    Some(crate::cost::at(&prices(light.listing, money), wall, flux))
}

/// What lights can be sorted by, beside their share.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// Price of a watt really drawn.
    PerWatt,
    /// Price of a umol/s.
    PerFlux,
    /// A day of running.
    Day,
    /// A month.
    Month,
    /// A year.
    Year,
}

impl Measure {
    /// The head of its column.
    #[must_use]
    pub const fn head(self) -> &'static str {
        match self {
            Self::PerWatt => "price a W",
            Self::PerFlux => "price a umol/s",
            Self::Day => "cost a day",
            Self::Month => "cost a month",
            Self::Year => "cost a year",
        }
    }

    /// Whether it takes the price of a kilowatt hour.
    #[must_use]
    pub const fn needs_tariff(self) -> bool {
        matches!(self, Self::Day | Self::Month | Self::Year)
    }

    /// That of a light, at the draw that is known best. Absent where the draw, the price or the tariff is not known.
    #[must_use]
    pub fn of(self, run: Run<'_>, light: Light<'_>) -> Option<f64> {
        let money = light.money?;
        // Photons take long to work out, and only one measure needs them.
        let point = match self {
            Self::PerFlux => at_best(run, light, money),
            _ => at(light, money, None),
        }?;
        match self {
            Self::PerWatt => point.per_watt,
            Self::PerFlux => point.per_flux,
            Self::Day => point.day,
            Self::Month => point.month,
            Self::Year => point.year,
        }
    }
}

/// An amount as people read it.
pub(super) fn amount(amount: f64) -> String {
    format!("{amount:.places$}", places = places(amount))
}

/// The cost of the light, and what its draw rests on: a reading, else the count, else the draw that the listing itself
/// gives. Absent where none of them is known.
pub(super) fn of(run: Run<'_>, light: Light<'_>, money: &Money) -> Option<(Cost, Evidence)> {
    let assessment = light.assessment;
    let draw = assessment.counted.draw.as_ref();
    let photons = draw.map(|draw| Photons::of(run.model, draw));
    let (draws, evidence) = match (assessment.measured, draw) {
        (Some(read), _) => {
            let flux = photons.map(|p| super::figures::par(&p, Some(read)));
            (Draws { common: None, full: read.interval_95(), flux }, Evidence::Measured)
        }
        (None, Some(draw)) => {
            let flux = photons.map(|p| p.par_interval());
            (Draws { common: Some(draw.common), full: draw.full.wall_interval(), flux }, Evidence::Counted)
        }
        (None, None) => {
            let full = assessment.findings.iter().find_map(|finding| match finding.reason {
                Reason::AdmittedDraw { low, high } | Reason::ImpliedDraw { low, high } => Some((low, high)),
                _ => None,
            })?;
            (Draws { common: None, full, flux: None }, Evidence::OwnWords)
        }
    };
    Some((cost(&prices(light.listing, money), &draws), evidence))
}

/// The lines of the working: name and text. None where nothing about money was asked.
pub(super) fn lines(run: Run<'_>, light: Light<'_>) -> Vec<(&'static str, String)> {
    let Some(money) = light.money else { return Vec::new() };
    let Some((cost, evidence)) = of(run, light, money) else {
        return vec![("price", "the draw is not known, so neither is what a watt or a day costs".to_owned())];
    };
    let mut lines = Vec::new();
    let currency = terminal(&money.currency);
    let unit = if currency.is_empty() { String::new() } else { format!(" {currency}") };
    if let (Some(price), Some(per_watt)) = (price_each(light.listing), cost.per_watt) {
        let flux = cost.per_flux.map(|s| format!(", {} a umol/s", span(s))).unwrap_or_default();
        let drawn = if evidence == Evidence::OwnWords { "by its own words" } else { "drawn" };
        lines.push(("price", format!("{price:.2}{unit}: {} a watt {drawn}{flux}", span(per_watt))));
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

fn places(amount: f64) -> usize {
    match amount {
        x if x >= 99.95 => 0,
        x if x >= 9.995 => 1,
        _ => 2,
    }
}

fn span(span: Span) -> String {
    let places = places(span.high);
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
    /// What the draw rests on.
    evidence: &'static str,
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
        let money = light.money.filter(|m| m.tariff.is_some() || light.listing.price.is_some())?;
        let (cost, evidence) = of(run, light, money)?;
        Some(Self {
            evidence: evidence.word(),
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
