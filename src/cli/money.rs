//! What lights cost to run, and sorting them by what they cost.

use clap::{Args, ValueEnum};

/// What a light costs to run.
#[derive(Debug, Args)]
pub struct Money {
    /// The currency of price and tariff: EUR
    #[arg(long, value_name = "NAME", hide_short_help = true)]
    pub currency: Option<String>,
    /// Price of a kWh, for running cost; with --hours 12
    #[arg(long, value_name = "AMOUNT", allow_hyphen_values = true)]
    pub tariff: Option<String>,
    /// Hours a day that it runs
    #[arg(
        long,
        value_name = "HOURS",
        default_value = "12",
        allow_hyphen_values = true,
        hide_short_help = true
    )]
    pub hours: String,
}

/// What to sort by, the lowest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Sort {
    /// Draw over claim
    Share,
    /// Price of a watt really drawn
    PricePerWatt,
    /// Price of a umol/s of its photons
    PricePerFlux,
    /// What a day costs at full draw, or as measured
    DayCost,
    /// A month
    MonthCost,
    /// A year
    YearCost,
}
