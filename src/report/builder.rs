//! What would make a claim true, and what a builder's power supply carries.

use serde::Serialize;

use super::{Light, Run};
use crate::comparison::Verdict;
use crate::draw::{Draw, Fit, STEP};
use crate::units::{Rounded, Watts};

/// Above this a string is no longer touch-safe: 60 V DC, IEC 62368-1 class ES1 (from memory).
const TOUCH_SAFE: f64 = 60.0;

/// Packages for the claim, rounded up; only beside a verdict that the claim is too high, for "true with" says that it is.
fn needed(light: Light<'_>, draw: &Draw) -> Option<f64> {
    if !matches!(light.assessment.verdict, Verdict::Overstated | Verdict::OutOfReach) {
        return None;
    }
    let claim = light.listing.claim.filter(|claim| claim.0 > draw.full.wall.value.0)?;
    Some(draw.packages_for(claim).ceil())
}

/// The lines of the working: name and text.
pub(super) fn lines(run: Run<'_>, light: Light<'_>) -> Vec<(&'static str, String)> {
    let mut lines = Vec::new();
    let Some(draw) = &light.assessment.counted.draw else {
        if light.fit_supply.is_some() {
            lines.push(("supply", "without diodes and their class nothing can be fitted".to_owned()));
        }
        return lines;
    };
    let counted: u64 = draw.parts.iter().map(|p| u64::from(p.count.number)).sum();
    if let Some(needed) = needed(light, draw) {
        lines.push(("true with", format!("{needed:.0} diodes of this mix at full draw, not {counted}")));
    }
    let Some(supply) = light.fit_supply else { return lines };
    match draw.fit(run.model, supply) {
        Err(why) => lines.push(("supply", format!("{supply}: {why}"))),
        Ok(fit) => {
            let mix: Vec<String> = fit
                .packages
                .iter()
                .zip(&draw.parts)
                .map(|(n, part)| format!("{n} {}", part.colour.name()))
                .collect();
            lines.push(("supply", format!("{supply} DC carries {}", mix.join(" + "))));
            lines.push((
                "  in a string",
                format!(
                    "{} constant current, {} V warm, driver to reach {} V cold",
                    fit.current,
                    Rounded(fit.running.0),
                    Rounded(fit.reach.0)
                ),
            ));
            lines.push(("  not at fixed", steep(&fit)));
            if fit.reach.0 > TOUCH_SAFE {
                lines.push((
                    "  danger",
                    "over 60 V DC a string is not safe to touch: split it into several in parallel, each under 60 V \
                     and each with a current limiter of its own, or leave it to a licensed electrician; the driver's mains \
                     side in any case"
                        .to_owned(),
                ));
            }
        }
    }
    lines
}

/// Drivers hold the current because the curve is steep.
fn steep(fit: &Fit) -> String {
    let steep = &fit.steep;
    let more = steep.more.map_or("beyond the curve".to_owned(), |i| i.to_string());
    format!(
        "voltage: one {} takes {} at {:.2} V and {more} at {:.2} V",
        steep.colour.name(),
        steep.current,
        steep.volts.0,
        (steep.volts + STEP).0
    )
}

/// What would make the claim true, and what the supply carries.
#[derive(Serialize)]
pub(super) struct BuilderObject {
    diodes_for_claim: Option<f64>,
    supply_w: Option<Watts>,
    packages: Option<Vec<u32>>,
    current_ma: Option<f64>,
    running_v: Option<f64>,
    reach_v: Option<f64>,
    package_v: Option<f64>,
    ma_at_a_tenth_of_a_volt_more: Option<f64>,
}

impl BuilderObject {
    /// The object; absent without a draw.
    pub(super) fn of(run: Run<'_>, light: Light<'_>) -> Option<Self> {
        let draw = light.assessment.counted.draw.as_ref()?;
        let fit = light.fit_supply.and_then(|supply| draw.fit(run.model, supply).ok());
        let fit = fit.as_ref();
        Some(Self {
            diodes_for_claim: needed(light, draw),
            supply_w: light.fit_supply,
            packages: fit.map(|f| f.packages.to_vec()),
            current_ma: fit.map(|f| f.current.ma()),
            running_v: fit.map(|f| f.running.0),
            reach_v: fit.map(|f| f.reach.0),
            package_v: fit.map(|f| f.steep.volts.0),
            ma_at_a_tenth_of_a_volt_more: fit.and_then(|f| f.steep.more).map(crate::units::Amps::ma),
        })
    }
}
