//! Why a claim beside watts got its verdict, each with a code that stays the same from version to version.

use crate::units::{Amps, PhotonEfficacy, PhotonFlux, Rounded};

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
    /// The most with the best packages of the reference table at full draw.
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
    /// More than the best packages of the reference table.
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
    /// Lumens asked of light that is not known to be white.
    LumensOfColours,
    /// The current at the stated voltage, from the count or from watts that were read.
    Amperes(Current),
    /// A meter read that current.
    AmperesMeasured {
        /// The reading.
        amps: Amps,
    },
    /// More than the light takes, as a rating is.
    AmperesRating(Current),
    /// Less than the counted diodes take at full draw.
    AmperesExceeded(Current),
    /// The amperes are for a voltage that no mains has.
    AmperesOfAdapter,
}

/// The current at a stated voltage, as far as it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Current {
    /// The least, at a power factor of 1.
    pub low: Amps,
    /// The most, at the power factor assumed; the measured current itself where a meter read it.
    pub high: Amps,
    /// The power factor assumed; absent where a meter read the current or the power factor.
    pub factor: Option<f64>,
    /// From a reading, and not from the count.
    pub measured: bool,
}

impl Current {
    /// "these diodes take 1.3 to 2.5 A there at full draw (power factor 0.9 to 1)".
    fn text(&self) -> String {
        let factor = self.factor.map(|f| format!(" (power factor {f} to 1)")).unwrap_or_default();
        let what = if self.measured { "by the reading it takes" } else { "at full draw these diodes take" };
        let (low, high) = (Rounded(self.low.0), Rounded(self.high.0));
        format!("{what} {low} to {high} A there{factor}")
    }
}

impl FigureReason {
    /// Every code, in the order of the variants.
    pub const CODES: [&'static str; 15] = [
        "flux-estimated",
        "flux-of-best-packages",
        "flux-limit",
        "efficacy-estimated",
        "efficacy-above-best-packages",
        "efficacy-limit",
        "nothing-counted",
        "lamp-kind-not-stated",
        "lamp-not-published",
        "lumens-of-colours",
        "amperes-estimated",
        "amperes-measured",
        "amperes-rating",
        "amperes-exceeded",
        "amperes-of-adapter",
    ];

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
            Self::Amperes(_) => "amperes-estimated",
            Self::AmperesMeasured { .. } => "amperes-measured",
            Self::AmperesRating(_) => "amperes-rating",
            Self::AmperesExceeded(_) => "amperes-exceeded",
            Self::AmperesOfAdapter => "amperes-of-adapter",
        }
    }

    /// What was seen, rounded for people.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            Self::Flux { low, high } => format!("these diodes give some {} to {high}", Rounded(low.0)),
            Self::FluxOfBestPackages { most } => format!(
                "these diodes give at most {most} at the current of their class, were each the best \
                 that the reference table has and nothing lost"
            ),
            Self::FluxLimit { most } => format!(
                "these diodes give at most {most} at their published maximum, were all their power light"
            ),
            Self::Efficacy { low, high } => {
                format!("lights of such diodes have some {} to {high}", Rounded(low.0))
            }
            Self::EfficacyAboveBestPackages { best } => format!(
                "the best packages of the reference table have {best} in this mix, before any loss in the light; packages \
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
                "an incandescent lamp is replaced by lumens, and these diodes are not known to be all white"
                    .to_owned()
            }
            Self::Amperes(current) => current.text(),
            Self::AmperesMeasured { amps } => format!("a meter read {} A there", Rounded(amps.0)),
            Self::AmperesRating(current) => {
                format!(
                    "{}; a stated current is mostly a rating, an upper limit: more is no fault",
                    current.text()
                )
            }
            Self::AmperesExceeded(current) => format!(
                "{}, which is more: they are run lower or the figure is too low, so measure before a circuit depends \
                 on it",
                current.text()
            ),
            Self::AmperesOfAdapter => {
                "no mains has that voltage, so it rates an adapter, which a light need not use in full"
                    .to_owned()
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::FigureReason;

    /// The compiler makes [`FigureReason::code`] cover every variant, so its own text has every code.
    #[test]
    fn codes_lists_what_code_gives_and_nothing_else() {
        let source = include_str!("figure_reason.rs");
        let after = source.split_once("pub const fn code").map_or("", |(_, after)| after);
        let body = after.split_once("\n    }\n").map_or("", |(body, _)| body);
        let given: Vec<&str> = body.split('"').skip(1).step_by(2).collect();
        assert_eq!(given, FigureReason::CODES);
    }
}
