//! Tolerance, confidence, meter and reference table, from the flags that every command shares.

use std::path::Path;

use anyhow::{Context as _, Result, anyhow, bail};

use super::flags;
use crate::cli::{self, Strictness};
use crate::comparison::Settings;
use crate::draw::Model;
use crate::intake::quantity;
use crate::reference::Table;
use crate::report::worth::Money;

pub(super) fn settings(flags: &Strictness) -> Result<Settings> {
    let share = |name: &str, text: &str, accepted: &str| {
        quantity(text, "%")
            .map(|p| p / 100.0)
            .ok_or_else(|| anyhow!("--{name}: found '{text}', accepted: {accepted}"))
    };
    let tolerance_range = "a percentage from 0 to under 100, such as 10";
    let confidence_range = "a percentage above 50 and below 100, such as 95";
    let tolerance = share("tolerance", &flags.tolerance, tolerance_range)?;
    let confidence = share("confidence", &flags.confidence, confidence_range)?;
    let meter = flags.meter.as_deref().map(flags::meter).transpose()?.unwrap_or_default();
    if !(0.0..1.0).contains(&tolerance) {
        bail!("--tolerance: found '{}', accepted: {tolerance_range}", flags.tolerance);
    }
    Settings::new(tolerance, confidence, meter)
        .ok_or_else(|| anyhow!("--confidence: found '{}', accepted: {confidence_range}", flags.confidence))
}

pub(super) fn model(reference: Option<&Path>) -> Result<Model> {
    let table = match reference {
        None => Table::built_in(),
        Some(path) => {
            let text = std::fs::read_to_string(path)
                .with_context(|| format!("--reference: cannot read {}", path.display()))?;
            let name = path.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
            Table::with_diodes(&name, &text).with_context(|| format!("--reference: {}", path.display()))?
        }
    };
    Model::new(table).context("the reference table has a class outside the curve of its dice")
}

/// What was asked about money.
pub(super) fn money(asked: &cli::Money) -> Result<Money> {
    let tariff = asked
        .tariff
        .as_deref()
        .map(|t| flags::money("tariff", t, "a price of a kWh above 0, such as 0.31"))
        .transpose()?;
    let hours = flags::hours(&asked.hours)?;
    let currency = flags::currency(asked.currency.as_deref().unwrap_or(""))?;
    Ok(Money { tariff: tariff.map(|t| t.value), hours, currency })
}
