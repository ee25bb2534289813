//! What the lamps that grow lights are said to replace give, as published.

use crate::facts::{LampKind, Replaced};
use crate::units::{PhotonFlux, Watts};

/// Photon flux of fixtures with one high-pressure sodium lamp on a mogul base, by the lamp's watts. Nelson & Bugbee 2014,
/// PLOS ONE 9(6): e99010.
const HPS: [(f64, f64); 2] = [(400.0, 416.0), (1000.0, 1090.0)];

/// Photon flux of the fixture with a 1000 W double-ended high-pressure sodium lamp (same source). A listing that says
/// "1000 W HPS" seldom says which, and the mogul-base one is the easier to replace.
pub const HPS_1000_DOUBLE_ENDED: PhotonFlux = PhotonFlux(1751.0);

/// The least watts of a high-pressure sodium lamp that is scaled for: common practice, no source.
const HPS_LEAST: f64 = 100.0;

/// Photon flux of the fixture with a ceramic metal halide lamp of 315 W (same source).
const CMH: (f64, f64) = (315.0, 491.0);

/// Lumens that an incandescent lamp of those watts stands for. Regulation (EU) 2019/2015, Annex V: 60 W was read there,
/// the others are from memory.
const INCANDESCENT: [(f64, f64); 8] = [
    (15.0, 136.0),
    (25.0, 249.0),
    (40.0, 470.0),
    (60.0, 806.0),
    (75.0, 1055.0),
    (100.0, 1521.0),
    (150.0, 2452.0),
    (200.0, 3452.0),
];

/// Watts of the row of [`INCANDESCENT`] that was read in the source.
const READ: f64 = 60.0;

/// The most lumens per umol/s that white light of an LED has: 305.28 lm/W over 4.3975 umol/J, CIE illuminant LED-B5 (CIE
/// 15:2018; tables of the Python package colour-science 0.4.7).
const LUMENS_PER_FLUX: f64 = 305.282_24 / 4.397_485;

/// How a lamp's flux is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LampSource {
    /// A fixture of those watts was measured and published.
    Measured,
    /// A fixture with a ceramic metal halide lamp of those watts was; a listing may mean another kind.
    Ceramic,
    /// Scaled from the published ones.
    Scaled,
    /// Lumens of a published row, as the photons that white LED light needs for them.
    Lumens,
    /// The same with a row from memory.
    LumensFromMemory,
}

/// What a lamp gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LampFlux {
    /// Photon flux in 400-700 nm.
    pub flux: PhotonFlux,
    /// How it is known.
    pub source: LampSource,
}

/// The flux to hold a replacement claim against; absent where no lamp of that kind and size was published, and for a lamp
/// of unstated kind.
#[must_use]
pub fn lamp_flux(lamp: &Replaced) -> Option<LampFlux> {
    let watts = lamp.watts.0;
    let is = |other: f64| (watts - other).abs() < 0.5;
    match lamp.kind? {
        LampKind::Hps => high_pressure_sodium(lamp.watts),
        // Either kind may be meant: the one of those watts that was measured, else sodium.
        LampKind::Hid if !is(CMH.0) => high_pressure_sodium(lamp.watts),
        LampKind::Mh | LampKind::Hid => {
            is(CMH.0).then_some(LampFlux { flux: PhotonFlux(CMH.1), source: LampSource::Ceramic })
        }
        LampKind::Incandescent => {
            let (watts, lumens) = INCANDESCENT.into_iter().find(|row| is(row.0))?;
            let read = (watts - READ).abs() < 0.5;
            let source = if read { LampSource::Lumens } else { LampSource::LumensFromMemory };
            Some(LampFlux { flux: PhotonFlux(lumens / LUMENS_PER_FLUX), source })
        }
        LampKind::Fluorescent => None,
    }
}

/// Measured where it was, else in proportion: between the two on the line through both, below at the photons per watt of
/// the smaller. Nothing above the largest.
fn high_pressure_sodium(lamp: Watts) -> Option<LampFlux> {
    let [(least, flux_least), (most, flux_most)] = HPS;
    if lamp.0 < HPS_LEAST || lamp.0 > most + 0.5 {
        return None;
    }
    if let Some((_, flux)) = HPS.into_iter().find(|(watts, _)| (lamp.0 - watts).abs() < 0.5) {
        return Some(LampFlux { flux: PhotonFlux(flux), source: LampSource::Measured });
    }
    let flux = if lamp.0 < least {
        flux_least * lamp.0 / least
    } else {
        flux_least + (flux_most - flux_least) * (lamp.0 - least) / (most - least)
    };
    Some(LampFlux { flux: PhotonFlux(flux), source: LampSource::Scaled })
}
