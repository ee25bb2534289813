//! How many photons a joule of light of a colour has.

use crate::facts::Colour;
use crate::reference::DiodeRow;
use crate::units::PhotonEfficacy;

/// Avogadro constant x Planck constant x speed of light, in (J/umol) nm: exact, SI Brochure, 9th edition (2019).
const MOLAR_ENERGY_NM: f64 = 6.022_140_76e23 * 6.626_070_15e-34 * 299_792_458.0 * 1e3;

/// Half of how far the peak of a diode may be from its colour's usual one, nm: makers sort into bins of 10 to 20 nm (from
/// memory).
const PEAK_HALF_WIDTH: f64 = 10.0;

/// Photons per joule of white light in 400-700 nm, coolest and warmest: CIE illuminants LED-B5 and LED-B1 (CIE 15:2018; 5
/// nm tables in the Python package colour-science 0.4.7, trapezoid rule).
const WHITE: (f64, f64) = (4.397_485, 4.648_991);

/// How far pink phosphor light may be from LED-B1, as a share of it (from memory: no published spectrum was found).
const PINK_HALF_WIDTH: f64 = 0.05;

/// The most that light within 400-700 nm can have: all of it at 700 nm.
pub const LIMIT_PAR: PhotonEfficacy = PhotonEfficacy(700.0 / MOLAR_ENERGY_NM);

/// Where a colour's photons are counted (ANSI/ASABE S640).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Band {
    /// 400-700 nm: photosynthetic photons, the only ones in a PPF.
    Photosynthetic,
    /// 700-800 nm.
    FarRed,
    /// Ultraviolet and infrared.
    Beyond,
}

impl Band {
    /// The band of a colour of the table. An unstated colour is taken as photosynthetic, as nearly all are.
    #[must_use]
    pub const fn of(colour: Colour) -> Self {
        match colour {
            Colour::FarRed => Self::FarRed,
            Colour::UvA | Colour::Infrared => Self::Beyond,
            _ => Self::Photosynthetic,
        }
    }
}

/// Photons per joule of radiation: equally likely anywhere between two bounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PerJoule {
    /// Lower bound.
    pub low: PhotonEfficacy,
    /// Upper bound.
    pub high: PhotonEfficacy,
}

impl PerJoule {
    /// The middle.
    #[must_use]
    pub fn mean(self) -> PhotonEfficacy {
        (self.low + self.high) / 2.0
    }

    /// Light of one wavelength, in nanometres: lambda / (`N_A` h c).
    #[must_use]
    pub fn at(nm: f64) -> PhotonEfficacy {
        PhotonEfficacy(nm / MOLAR_ENERGY_NM)
    }
}

/// The photons in 400-700 nm per joule into the best package of any of those rows.
#[must_use]
pub fn best_of_any(rows: &[DiodeRow]) -> PhotonEfficacy {
    rows.iter()
        .filter(|row| Band::of(row.colour) == Band::Photosynthetic)
        .map(|row| per_joule(row).mean() * row.eff_high)
        .fold(PhotonEfficacy(0.0), PhotonEfficacy::max)
}

/// The photons per joule of what a diode of that row emits.
///
/// By the row's peak where it has one; white between the coolest and the warmest CIE LED illuminant; pink about LED-B1
/// (inferred); an unstated colour anywhere between 450 and 660 nm.
#[must_use]
pub fn per_joule(row: &DiodeRow) -> PerJoule {
    let (low, high) = match (row.peak_nm, row.colour) {
        (Some(nm), _) => (PerJoule::at(nm - PEAK_HALF_WIDTH), PerJoule::at(nm + PEAK_HALF_WIDTH)),
        (None, Colour::White) => (PhotonEfficacy(WHITE.0), PhotonEfficacy(WHITE.1)),
        (None, Colour::Pink) => (
            PhotonEfficacy(WHITE.1 * (1.0 - PINK_HALF_WIDTH)),
            PhotonEfficacy(WHITE.1 * (1.0 + PINK_HALF_WIDTH)),
        ),
        (None, _) => (PerJoule::at(450.0), PerJoule::at(660.0)),
    };
    PerJoule { low, high }
}
