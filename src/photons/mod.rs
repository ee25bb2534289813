//! Photons: from the counted diodes to the photon flux of the whole light, with its uncertainty.
//!
//! Radiation carries a number of photons per joule that its spectrum fixes ([`per_joule`]); a package turns a part of its
//! input into radiation (the efficiencies of the reference table); a light loses some more ([`Photons`]). Bands are those
//! of ANSI/ASABE S640: photosynthetic 400-700 nm, far red 700-800 nm; what lies beyond both is kept apart.

mod light;
mod spectrum;

pub use light::{LIGHT_HIGH, LIGHT_LOW, Photons};
pub use spectrum::{Band, LIMIT_PAR, PerJoule, best_of_any, per_joule};
