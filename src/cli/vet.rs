//! What can be typed after `vet`.

use clap::Args;

use super::{Format, Money, SCREEN, Strictness};

/// `vet`.
#[derive(Debug, Args)]
#[command(help_template = SCREEN, after_help = SHORT, after_long_help = LONG)]
pub struct Vet {
    /// The listing's title, pasted; flags outrank what is read from it
    pub title: Option<String>,
    /// The wattage under test
    #[arg(long, value_name = "WATTS", allow_hyphen_values = true)]
    pub claim: Option<String>,
    /// Drive class of the diodes: 3W, smd-1W, cob-50W
    #[arg(long)]
    pub class: Option<String>,
    /// Diodes by colour: "60 deep-red + 20 blue"
    ///
    /// Also with factors, "4 x (12 red + 3 blue)", and with a count that is not sure, "60±2 red".
    #[arg(long, value_name = "DIODES", allow_hyphen_values = true)]
    pub tally: Option<String>,
    /// Stated drive current through each diode
    #[arg(long, value_name = "MA", allow_hyphen_values = true)]
    pub drive_ma: Option<String>,
    /// Meter reading: 135W, "120.4V 1.18A pf 0.97"
    ///
    /// At full brightness, at the wall.
    #[arg(long, value_name = "READING", allow_hyphen_values = true)]
    pub measured: Option<String>,
    /// A draw that the listing admits: 185W±5%, 110-120W
    #[arg(long, value_name = "WATTS", allow_hyphen_values = true)]
    pub admits: Option<String>,
    /// Volts and amperes that it states: "120V 0.6A"
    #[arg(long, value_name = "SUPPLY", allow_hyphen_values = true)]
    pub supply: Option<String>,
    /// Photon flux that it states, umol/s
    #[arg(long, value_name = "FLUX", allow_hyphen_values = true)]
    pub ppf: Option<String>,
    /// Photon efficacy that it states, umol/J
    #[arg(long, value_name = "EFFICACY", allow_hyphen_values = true)]
    pub ppe: Option<String>,
    /// Lamp that it is said to replace: "600W HPS"
    #[arg(long, value_name = "LAMP", allow_hyphen_values = true)]
    pub replaces: Option<String>,
    /// How many such lights a circuit carries: "120V 15A"
    #[arg(long, value_name = "CIRCUIT", allow_hyphen_values = true)]
    pub circuit: Option<String>,
    /// How many such diodes a supply carries: 100W, DC
    #[arg(long, value_name = "WATTS", allow_hyphen_values = true)]
    pub fit_supply: Option<String>,
    /// Price, for cost per watt; with --currency EUR
    #[arg(long, value_name = "AMOUNT", allow_hyphen_values = true)]
    pub price: Option<String>,
    #[command(flatten)]
    /// What it costs to run
    pub money: Money,
    /// Show all of the working, not the answers alone
    ///
    /// What was read and what was left out, the diodes one by one, all that was found, the uncertainty budget.
    #[arg(long)]
    pub working: bool,
    /// table, json, csv or markdown [default: table]
    #[arg(long, value_enum, default_value = "table", hide_default_value = true, hide_possible_values = true)]
    pub format: Format,
    #[command(flatten)]
    /// How strict to be
    pub strictness: Strictness,
}

const SHORT: &str = "\
Also --tolerance, --confidence, --meter, --reference: 'plainwatt help vet'.
Example:
  plainwatt vet --claim 300 --class 3W --tally \"60 deep-red + 20 white\"";

const LONG: &str = "\
Example:
  plainwatt vet --claim 300 --class 3W --tally \"60 deep-red + 20 white\"";
