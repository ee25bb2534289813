//! Reasons: what was seen that bears on a result, each with a code that stays the same from version to version.

use crate::draw::OutsideCurve;
use crate::facts::{Colour, Note, Package, StatedClass};
use crate::reference::Die;
use crate::units::{Amps, PhotonEfficacy, Watts};

/// One reason. Its text ([`Reason::text`]) says what was seen, why it matters and what to do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reason {
    /// Seen while the facts were gathered.
    Noted(Note),
    /// A meter read that much.
    Measured {
        /// The reading.
        watts: Watts,
    },
    /// A reading counts at full brightness only.
    FullBrightness,
    /// The meter gave volts and amperes but no power factor.
    VoltAmpsOnly {
        /// Their product.
        most: Watts,
    },
    /// The diodes draw that much at full.
    CountedDraw {
        /// Lower end of the 95 % interval.
        low: Watts,
        /// Upper end.
        high: Watts,
    },
    /// The diodes draw no more than that at the published maximum of the package's largest class.
    CountedCeiling {
        /// Lower end of the 95 % interval.
        low: Watts,
        /// Upper end.
        high: Watts,
    },
    /// The listing admits that draw.
    AdmittedDraw {
        /// Lower figure.
        low: Watts,
        /// Upper figure.
        high: Watts,
    },
    /// The stated volts and amperes allow no more.
    SupplyCeiling {
        /// Their product, rounding allowed for.
        most: Watts,
    },
    /// The stated photon flux over the stated efficacy.
    ImpliedDraw {
        /// Lower end, rounding allowed for.
        low: Watts,
        /// Upper end.
        high: Watts,
    },
    /// The stated efficacy is above the best packages', so the watts that it implies say nothing.
    ImpliedByDoubtful {
        /// What is stated.
        stated: PhotonEfficacy,
        /// Of the best packages of the mix; without a count of the best of any colour.
        best: PhotonEfficacy,
    },
    /// There are diodes without a class.
    ClassNotStated,
    /// A stated class has no row.
    ClassUnknown {
        /// The class.
        class: StatedClass,
    },
    /// Only a package is named.
    PackageOnly {
        /// The package.
        package: Package,
    },
    /// A colour has no row for that kind of die.
    NoRowForColour {
        /// The colour.
        colour: Colour,
        /// The kind of die.
        die: Die,
    },
    /// A drive current is stated.
    DriveStated {
        /// Through each package.
        drive: Amps,
    },
    /// The stated drive current is outside a curve.
    DriveOutsideCurve(OutsideCurve),
    /// There may be more diodes than were counted.
    LowerBound,
    /// The ceiling rests on a row from memory.
    CeilingFromMemory,
    /// The light is too small for a first-order interval to convict.
    SmallLight {
        /// Its LED power.
        led: Watts,
    },
    /// What the claim would need is outside the curves.
    NeededOutsideCurve {
        /// The watts sought.
        sought: Watts,
    },
    /// The reading is over what the diodes can draw.
    ReadingBeyondCeiling {
        /// The ceiling draw.
        ceiling: Watts,
    },
    /// The reading is far under what such diodes are run at.
    ReadingUnderCommon {
        /// The wall draw at half of the lowest common current.
        least: Watts,
    },
    /// The admitted draw is over what the diodes can draw.
    AdmittedBeyondCeiling {
        /// What is admitted.
        admitted: Watts,
        /// The ceiling draw.
        ceiling: Watts,
    },
    /// The listing's own numbers point to more than the claim, the count does not.
    OwnWordsAgainstCount,
    /// No figure is claimed.
    NoClaim,
    /// A claim and nothing to hold it against.
    NothingBesideTheClaim,
    /// Neither a claim nor a count.
    NothingToGoOn,
}

impl Reason {
    /// Every code, in the order of the variants.
    pub const CODES: [&'static str; 34] = [
        "colours-short",
        "colours-exceed",
        "counts-differ",
        "title-contradicts",
        "pack-divided",
        "headlines-conflict",
        "variant-not-selected",
        "other-device",
        "measured",
        "full-brightness",
        "volt-amps-only",
        "counted-draw",
        "counted-ceiling",
        "admitted-draw",
        "supply-ceiling",
        "implied-draw",
        "implied-by-doubtful",
        "class-not-stated",
        "class-unknown",
        "package-only",
        "no-row-for-colour",
        "drive-stated",
        "drive-outside-curve",
        "lower-bound",
        "ceiling-from-memory",
        "small-light",
        "needed-outside-curve",
        "reading-beyond-ceiling",
        "reading-under-common",
        "admitted-beyond-ceiling",
        "own-words-against-count",
        "no-claim",
        "nothing-beside-the-claim",
        "nothing-to-go-on",
    ];

    /// The code.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Noted(note) => match note {
                Note::ColoursShort { .. } => "colours-short",
                Note::ColoursExceed { .. } => "colours-exceed",
                Note::CountsDiffer { .. } => "counts-differ",
                Note::TitleContradicts { .. } => "title-contradicts",
                Note::PackDivided { .. } => "pack-divided",
                Note::HeadlinesConflict { .. } => "headlines-conflict",
                Note::VariantNotSelected => "variant-not-selected",
                Note::OtherDevice => "other-device",
            },
            Self::Measured { .. } => "measured",
            Self::FullBrightness => "full-brightness",
            Self::VoltAmpsOnly { .. } => "volt-amps-only",
            Self::CountedDraw { .. } => "counted-draw",
            Self::CountedCeiling { .. } => "counted-ceiling",
            Self::AdmittedDraw { .. } => "admitted-draw",
            Self::SupplyCeiling { .. } => "supply-ceiling",
            Self::ImpliedDraw { .. } => "implied-draw",
            Self::ImpliedByDoubtful { .. } => "implied-by-doubtful",
            Self::ClassNotStated => "class-not-stated",
            Self::ClassUnknown { .. } => "class-unknown",
            Self::PackageOnly { .. } => "package-only",
            Self::NoRowForColour { .. } => "no-row-for-colour",
            Self::DriveStated { .. } => "drive-stated",
            Self::DriveOutsideCurve(_) => "drive-outside-curve",
            Self::LowerBound => "lower-bound",
            Self::CeilingFromMemory => "ceiling-from-memory",
            Self::SmallLight { .. } => "small-light",
            Self::NeededOutsideCurve { .. } => "needed-outside-curve",
            Self::ReadingBeyondCeiling { .. } => "reading-beyond-ceiling",
            Self::ReadingUnderCommon { .. } => "reading-under-common",
            Self::AdmittedBeyondCeiling { .. } => "admitted-beyond-ceiling",
            Self::OwnWordsAgainstCount => "own-words-against-count",
            Self::NoClaim => "no-claim",
            Self::NothingBesideTheClaim => "nothing-beside-the-claim",
            Self::NothingToGoOn => "nothing-to-go-on",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Reason;

    /// The compiler makes [`Reason::code`] cover every variant, so its own text has every code.
    #[test]
    fn codes_lists_what_code_gives_and_nothing_else() {
        let source = include_str!("reason.rs");
        let after = source.split_once("pub const fn code").map_or("", |(_, after)| after);
        let body = after.split_once("\n    }\n").map_or("", |(body, _)| body);
        let given: Vec<&str> = body.split('"').skip(1).step_by(2).collect();
        assert_eq!(given, Reason::CODES);
    }
}
