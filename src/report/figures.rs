//! The other figures of a page: photons and what is claimed of them.

use std::fmt::Write as _;

use serde::Serialize;

use super::style::Style;
use crate::comparison::{Claimed, Figure};
use crate::facts::LampKind;
use crate::photons::Photons;
use crate::reference::lamp::{LampFlux, LampSource};
use crate::uncertain::Uncertain;
use crate::units::{PhotonEfficacy, PhotonFlux, Rounded};

/// The estimated photons on one line.
pub(super) fn photons(photons: &Photons) -> String {
    let (low, high) = photons.par_interval();
    let (least, most) = photons.efficacy_interval();
    let mut text = format!("{} to {high} (400-700 nm), {} to {most}", Rounded(low.0), Rounded(least.0));
    if let Some(far_red) = photons.far_red {
        let _ = write!(text, ", far red {}", far_red.value);
    }
    text
}

/// A claim with its verdict and why, on one line.
pub(super) fn claim(figure: &Figure, style: Style) -> String {
    let what = match figure.claimed {
        Claimed::Flux(flux) => format!("photon flux {flux}"),
        Claimed::Efficacy(efficacy) => format!("photon efficacy {efficacy}"),
        Claimed::Replaces(lamp) => format!(
            "replaces {} {}",
            lamp.watts,
            lamp.kind.map_or("lamp", |kind| match kind {
                LampKind::Hps => "HPS",
                LampKind::Mh => "MH",
                LampKind::Hid => "HID",
                LampKind::Incandescent | LampKind::Fluorescent => kind.key(),
            })
        ),
    };
    let lamp = figure.lamp.map(|lamp| lamp_text(&lamp)).unwrap_or_default();
    format!("{what}: {}: {lamp}{}", style.verdict(figure.verdict), figure.reason.text())
}

fn lamp_text(lamp: &LampFlux) -> String {
    let how = match lamp.source {
        LampSource::Measured => "measured, Nelson & Bugbee 2014",
        LampSource::Scaled => "interpolated, Nelson & Bugbee 2014",
        LampSource::Lumens => "for its lumens, EU 2019/2015 Annex V",
        LampSource::LumensFromMemory => "for its lumens, from memory",
    };
    format!("that lamp gives {} ({how}); ", lamp.flux)
}

/// One claim beside watts. `claimed` is in `unit`.
#[derive(Serialize)]
pub(super) struct ClaimObject {
    what: &'static str,
    claimed: f64,
    unit: &'static str,
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
        };
        Self {
            what,
            claimed,
            unit,
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
