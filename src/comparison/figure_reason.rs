//! Why a claim beside watts got its verdict, each with a code that stays the same from version to version.

use crate::units::{PhotonEfficacy, PhotonFlux, Rounded};

/// One such reason.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FigureReason {
    /// The estimated PPF.
    Flux {
        /// Lower end of the 95 % interval.
        low: PhotonFlux,
        /// Upper end.
        high: PhotonFlux,
    },
    /// The most with the best published packages at full draw.
    FluxOfBestPackages {
        /// Upper end of the 95 % interval.
        most: PhotonFlux,
    },
    /// The most with all power turned into light at the published maximum current.
    FluxLimit {
        /// Upper end of the 95 % interval.
        most: PhotonFlux,
    },
    /// The estimated PPE.
    Efficacy {
        /// Lower end of the 95 % interval.
        low: PhotonEfficacy,
        /// Upper end.
        high: PhotonEfficacy,
    },
    /// More than the best packages published in 2020.
    EfficacyAboveBestPackages {
        /// Theirs, for this mix.
        best: PhotonEfficacy,
    },
    /// More photons than a joule of light has.
    EfficacyLimit {
        /// What it has.
        limit: PhotonEfficacy,
        /// For this mix of colours; else for any light within 400-700 nm.
        of_mix: bool,
    },
    /// No diode count with a class.
    NothingCounted,
    /// A replaced lamp of unstated kind.
    LampKindNotStated,
    /// No published flux for a lamp of that kind and size.
    LampNotPublished,
    /// Lumens asked of coloured light.
    LumensOfColours,
}

impl FigureReason {
    /// The code.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Flux { .. } => "flux-estimated",
            Self::FluxOfBestPackages { .. } => "flux-of-best-packages",
            Self::FluxLimit { .. } => "flux-limit",
            Self::Efficacy { .. } => "efficacy-estimated",
            Self::EfficacyAboveBestPackages { .. } => "efficacy-above-best-packages",
            Self::EfficacyLimit { .. } => "efficacy-limit",
            Self::NothingCounted => "nothing-counted",
            Self::LampKindNotStated => "lamp-kind-not-stated",
            Self::LampNotPublished => "lamp-not-published",
            Self::LumensOfColours => "lumens-of-colours",
        }
    }

    /// What was seen, rounded for people.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            Self::Flux { low, high } => format!("these diodes give some {} to {high}", Rounded(low.0)),
            Self::FluxOfBestPackages { most } => format!(
                "these diodes give at most {most} at the current of their class, were each as good as the best \
                 published in 2020 and nothing lost"
            ),
            Self::FluxLimit { most } => format!(
                "these diodes give at most {most} at their published maximum, were all their power light"
            ),
            Self::Efficacy { low, high } => {
                format!("lights of such diodes have some {} to {high}", Rounded(low.0))
            }
            Self::EfficacyAboveBestPackages { best } => format!(
                "the best packages published in 2020 have {best} in this mix, before any loss in the light; packages \
                 improve, and certified lights of mostly white diodes reach 2.87 umol/J: ask for a test report"
            ),
            Self::EfficacyLimit { limit, of_mix } => {
                let what = if *of_mix { "light of this mix" } else { "light within 400-700 nm" };
                format!("a joule of {what} has at most {limit}, were all the power light")
            }
            Self::NothingCounted => "no diode count with a class to hold it against".to_owned(),
            Self::LampKindNotStated => {
                "it does not say what kind of lamp; photons of a sodium and of an incandescent lamp differ"
                    .to_owned()
            }
            Self::LampNotPublished => "no published photon flux for a lamp of that kind and size".to_owned(),
            Self::LumensOfColours => {
                "an incandescent lamp is replaced by lumens, which coloured diodes hardly give".to_owned()
            }
        }
    }
}
