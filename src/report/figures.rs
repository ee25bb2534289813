//! The other figures of a page: photons and what is claimed of them.

use std::fmt::Write as _;

use serde::Serialize;

use crate::photons::Photons;
use crate::uncertain::Uncertain;
use crate::units::{PhotonEfficacy, PhotonFlux, Rounded};

/// The estimated photons on one line.
pub(super) fn photons(photons: &Photons) -> String {
    let (low, high) = photons.par_interval();
    let (least, most) = photons.efficacy_interval();
    let mut text = format!("{} to {high} in 400-700 nm, {} to {most}", Rounded(low.0), Rounded(least.0));
    if let Some(far_red) = photons.far_red {
        let _ = write!(text, "; far red {}", far_red.value);
    }
    text
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
