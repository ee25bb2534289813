//! The other figures of a page: photons and what is claimed of them.

use std::fmt::Write as _;

use serde::Serialize;

use super::style::Style;
use super::{Light, Run};
use crate::comparison::{Claimed, Figure};
use crate::facts::{LampKind, Replaced};
use crate::photons::Photons;
use crate::reference::lamp::{LampFlux, LampSource, lamp_flux};
use crate::uncertain::Uncertain;
use crate::units::{PhotonEfficacy, PhotonFlux, Rounded, Watts};

/// The 95 % interval of the PPF: of the draw that was read where it was, else of full draw.
pub(super) fn par(photons: &Photons, measured: Option<Uncertain<Watts>>) -> (PhotonFlux, PhotonFlux) {
    match measured {
        None => photons.par_interval(),
        Some(read) => {
            let ((least, most), (low, high)) = (photons.efficacy_interval(), read.interval_95());
            (least * low, most * high)
        }
    }
}

/// The estimated photons on one line.
pub(super) fn photons(photons: &Photons, measured: Option<Uncertain<Watts>>) -> String {
    let (low, high) = par(photons, measured);
    let (least, most) = photons.efficacy_interval();
    let at = if measured.is_none() { " at full draw" } else { "" };
    let mut text = format!("{} to {high}{at} (400-700 nm)", Rounded(low.0));
    // What is outside that band is in proportion to the draw as well.
    let share = measured
        .filter(|_| photons.par.value.0 > 0.0)
        .map_or(1.0, |read| photons.at_wall(read.value) / photons.par.value);
    for (flux, band) in [(photons.far_red, "far red"), (photons.beyond, "beyond")] {
        if let Some(flux) = flux {
            let _ = write!(text, " + {} {band}", Rounded(flux.value.0 * share));
        }
    }
    let _ = write!(text, ", {} to {most}", Rounded(least.0));
    text
}

/// Sodium lamps as they are sold, W.
const SOLD: [f64; 5] = [150.0, 250.0, 400.0, 600.0, 1000.0];

/// Which lamp it stands for by its photons, where the listing names none; absent where they are not known.
pub(super) fn lamp(run: Run<'_>, light: Light<'_>) -> Option<String> {
    if light.listing.replaces.is_some() || light.listing.tally.as_ref().is_some_and(|t| t.lower_bound) {
        return None;
    }
    let photons = Photons::of(run.model, light.assessment.counted.draw.as_ref()?);
    let (low, high) = par(&photons, light.assessment.measured);
    if high.0 <= 0.0 {
        return None;
    }
    let sodium =
        |watts| lamp_flux(&Replaced { watts: Watts(watts), kind: Some(LampKind::Hps) }).map(|l| (watts, l));
    let least = sodium(SOLD[0])?;
    let largest = |flux: PhotonFlux| SOLD.into_iter().filter_map(sodium).rfind(|(_, l)| l.flux.0 <= flux.0);
    let more = |watts: f64| if watts < SOLD[4] { "" } else { " or more" };
    let (text, shown) = match (largest(low), largest(high)) {
        (_, None) => (format!("less than HPS {} W", least.0), least.1),
        (None, Some((best, lamp))) => (format!("at best HPS {best} W{}", more(best)), lamp),
        (Some((sure, lamp)), Some((best, _))) if sure >= best => {
            (format!("HPS {sure} W{}", more(sure)), lamp)
        }
        (Some((sure, a)), Some((best, b))) => {
            let shown = if a.source == LampSource::Measured { b } else { a };
            (format!("HPS {sure} W, at best {best} W{}", more(best)), shown)
        }
    };
    Some(format!("{text} ({})", how(shown.source)))
}

/// A claim with its verdict and why, on one line.
pub(super) fn claim(figure: &Figure, style: Style) -> String {
    row(figure, &style.verdict(figure.verdict))
}

/// The same with the code of the reason.
pub(super) fn coded_claim(figure: &Figure, style: Style) -> String {
    row(figure, &format!("{} ({})", style.verdict(figure.verdict), figure.reason.code()))
}

/// The same without the reason.
pub(super) fn bare_claim(figure: &Figure, style: Style) -> String {
    format!("{}: {}", claimed(figure), style.verdict(figure.verdict))
}

fn row(figure: &Figure, verdict: &str) -> String {
    let lamp = figure.lamp.map(|lamp| lamp_text(&lamp)).unwrap_or_default();
    format!("{}: {verdict}: {lamp}{}", claimed(figure), figure.reason.text())
}

fn claimed(figure: &Figure) -> String {
    match figure.claimed {
        Claimed::Flux(flux) => format!("photon flux {flux}"),
        Claimed::Efficacy(efficacy) => format!("photon efficacy {efficacy}"),
        Claimed::Replaces(lamp) => format!(
            "replaces {} {}",
            lamp.watts,
            lamp.kind.map_or("lamp", |kind| match kind {
                LampKind::Hps => "HPS",
                LampKind::Mh => "metal halide",
                LampKind::Hid => "HID",
                LampKind::Incandescent | LampKind::Fluorescent => kind.key(),
            })
        ),
        Claimed::Amperes { supply, from } => {
            let from = from.map(|low| format!("{} to ", Rounded(low.0))).unwrap_or_default();
            format!("{} A at {from}{} V", Rounded(supply.amps.value), Rounded(supply.volts.value))
        }
    }
}

fn lamp_text(lamp: &LampFlux) -> String {
    format!("that lamp gives {} ({}); ", lamp.flux, how(lamp.source))
}

fn how(source: LampSource) -> &'static str {
    match source {
        LampSource::Measured => "measured, Nelson & Bugbee 2014",
        LampSource::Ceramic => "a ceramic one, measured, Nelson & Bugbee 2014",
        LampSource::Scaled => "scaled, Nelson & Bugbee 2014",
        LampSource::Lumens => "for its lumens, EU 2019/2015 Annex V",
        LampSource::LumensFromMemory => "for its lumens, from memory",
    }
}

/// One claim beside watts. `claimed` is in `unit`.
#[derive(Serialize)]
pub(super) struct ClaimObject {
    what: &'static str,
    claimed: f64,
    unit: &'static str,
    /// Of amperes, the lowest and the highest volts that they are stated at.
    volts: Option<[f64; 2]>,
    verdict: &'static str,
    evidence: &'static str,
    lamp_flux: Option<PhotonFlux>,
    code: &'static str,
    reason: String,
}

impl From<&Figure> for ClaimObject {
    fn from(figure: &Figure) -> Self {
        let (what, claimed, unit) = match figure.claimed {
            Claimed::Flux(flux) => ("ppf", flux.0, "umol/s"),
            Claimed::Efficacy(efficacy) => ("ppe", efficacy.0, "umol/J"),
            Claimed::Replaces(lamp) => ("replaces", lamp.watts.0, "W"),
            Claimed::Amperes { supply, .. } => ("amps", supply.amps.value, "A"),
        };
        let volts = match figure.claimed {
            Claimed::Amperes { supply, from } => {
                let high = supply.volts.value;
                Some([from.map_or(high, |low| low.0), high])
            }
            _ => None,
        };
        Self {
            what,
            claimed,
            unit,
            volts,
            verdict: figure.verdict.word(),
            evidence: figure.evidence.word(),
            lamp_flux: figure.lamp.map(|lamp| lamp.flux),
            code: figure.reason.code(),
            reason: figure.reason.text(),
        }
    }
}

/// The estimated photons at full draw, umol/s and umol/J.
#[derive(Serialize)]
pub(super) struct PhotonsObject {
    ppf: Uncertain<PhotonFlux>,
    far_red: Option<Uncertain<PhotonFlux>>,
    beyond: Option<Uncertain<PhotonFlux>>,
    ppe: Uncertain<PhotonEfficacy>,
    ppe_limit: PhotonEfficacy,
    ppe_best_packages: PhotonEfficacy,
}

impl From<&Photons> for PhotonsObject {
    fn from(photons: &Photons) -> Self {
        Self {
            ppf: photons.par,
            far_red: photons.far_red,
            beyond: photons.beyond,
            ppe: photons.efficacy,
            ppe_limit: photons.limit,
            ppe_best_packages: photons.best_packages,
        }
    }
}
