//! The text of each reason: what was seen, why it matters, what to do.

use super::reason::Reason;
use crate::facts::Note;
use crate::units::{Rounded, Watts};

fn range(low: Watts, high: Watts) -> String {
    if low == high { low.to_string() } else { format!("{} to {high}", Rounded(low.0)) }
}

impl Reason {
    /// The text, rounded for people.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            Self::Noted(note) => note_text(note),
            Self::Measured { watts } => format!("a meter at the wall read {watts}"),
            Self::FullBrightness => "the reading is taken to be at full brightness with all switches on; a dimmed \
                 light draws less than it can, so measure it again if it was not"
                .to_owned(),
            Self::VoltAmpsOnly { most } => format!(
                "volts times amperes without a power factor is {} VA, a ceiling on watts and not a measurement of \
                 them; read the watts or the power factor from the meter",
                Rounded(most.0)
            ),
            Self::CountedDraw { low, high } => {
                format!("the diodes counted draw {} at the wall at full draw", range(*low, *high))
            }
            Self::CountedCeiling { low, high } => format!(
                "the diodes counted draw at most {} at the wall at the published maximum of the largest class of \
                 their package",
                range(*low, *high)
            ),
            Self::AdmittedDraw { low, high } => {
                format!("the listing itself gives {} as the draw", range(*low, *high))
            }
            Self::SupplyCeiling { most } => format!(
                "the stated volts and amperes, each up by half of its last digit, allow at most {} VA, and watts are never \
                 more than volt-amperes",
                Rounded(most.0)
            ),
            Self::ImpliedDraw { low, high } => {
                format!("the stated photon flux over the stated efficacy makes {}", range(*low, *high))
            }
            Self::ImpliedByDoubtful { stated, best } => format!(
                "the stated efficacy of {stated} is above the {best} of the best packages known, so the watts that it \
                 makes with the photon flux are not held against the claim; ask for a test report"
            ),
            Self::ClassNotStated => "diodes are counted but not all have a drive class; without one a count says \
                 nothing about watts; look for '3W' or a drive current in the listing, or ask the seller"
                .to_owned(),
            Self::ClassUnknown { class } => format!(
                "the class {class} has no row in the reference table and is not guessed from its neighbours; \
                 'plainwatt diodes' lists the classes; a drive current or a meter reading would help"
            ),
            Self::PackageOnly { package } => format!(
                "only the package '{}' is named, which is a size and not a power; the ceiling of its largest class is \
                 the only thing that a count can show; ask the seller for the drive current",
                package.word()
            ),
            Self::NoRowForColour { colour, die } => format!(
                "there is no row for {} on {} dice; that kind's row for an unstated colour is used, with its wider \
                 uncertainty",
                colour.name(),
                die.name()
            ),
            Self::DriveStated { drive } => format!(
                "a drive current of {drive} is stated and replaces the current that the class stands for; the result \
                 holds only if that current is true"
            ),
            Self::DriveOutsideCurve(outside) => format!(
                "the stated drive current cannot be used: {outside}; check that it is in milliamperes and per diode"
            ),
            Self::LowerBound => "colours are counted without a total beside a COB or a board, so there may be more \
                 diodes; a count that may be incomplete cannot convict; find the total"
                .to_owned(),
            Self::CeilingFromMemory => "the published maximum of a class here is from memory, so the verdict stops \
                 at overstated; a datasheet or a meter reading would settle more"
                .to_owned(),
            Self::SmallLight { led } => format!(
                "at {led} of LED power too little is known of the driver for a count to convict; a plug-in meter \
                 settles it"
            ),
            Self::NeededOutsideCurve { sought } => format!(
                "the current at which these diodes would draw {sought} is outside 0.05 to 5 times their test current, \
                 where the reference curves hold"
            ),
            Self::ReadingBeyondCeiling { ceiling } => format!(
                "the reading is more than the {ceiling} that these diodes draw at their published maximum; the count \
                 or the class is probably wrong, so check them"
            ),
            Self::ReadingUnderCommon { least } => format!(
                "the reading is under {least}, half of the lowest current that such lights are commonly run at; the \
                 count or the class is probably wrong, or the light was dimmed"
            ),
            Self::AdmittedBeyondCeiling { admitted, ceiling } => format!(
                "the listing gives {admitted} as the draw, more than the {ceiling} that these diodes draw at their \
                 published maximum; one of the two is wrong"
            ),
            Self::OwnWordsAgainstCount => "the listing's other numbers point to more than the claim while the count \
                 allows it; a plug-in meter settles it"
                .to_owned(),
            Self::NoClaim => "no wattage is claimed, so there is nothing to grade; what the class's name would need \
                 is shown instead"
                .to_owned(),
            Self::NothingBesideTheClaim => "there is a claim and nothing to hold it against; look for the number of \
                 diodes and their class (often '100 x 3W'), for 'actual power' in the details, or for the amperes on \
                 the type plate, or measure with a plug-in meter"
                .to_owned(),
            Self::NothingToGoOn => "neither a wattage nor a diode count with its class is known; the details, the \
                 pictures or the type plate often give them"
                .to_owned(),
        }
    }
}

fn note_text(note: &Note) -> String {
    match note {
        Note::ColoursShort { counted, total } => format!(
            "the colours add up to {counted} of {total} diodes; the rest is counted with an unstated colour"
        ),
        Note::ColoursExceed { counted, total } => format!(
            "the colours add up to {counted} but the count given is {total}; the larger is used, and one of them is \
             wrong"
        ),
        Note::CountsDiffer { smaller, larger } => format!(
            "a colour is counted twice, as {smaller} and as {larger}; the larger is used, so check which is right"
        ),
        Note::TitleContradicts { field, given, title } => format!(
            "the column or flag gives {} for {field} and the title {}; the column or flag is used, so check which \
             is right",
            Rounded(*given),
            Rounded(*title)
        ),
        Note::PackDivided { units, total } => {
            format!("{total} is the total of a pack of {units}; the claim is tested for one light")
        }
        Note::HeadlinesConflict { used, other } => format!(
            "the text gives both {used} and {other} as its headline; {used} is tested, so check which one is sold"
        ),
        Note::VariantNotSelected => {
            "the text offers several variants and does not say which is sold, so figures that \
             differ are left out; give the one you mean"
                .to_owned()
        }
        Note::OtherDevice => {
            "the text seems to be about another device than a light, so none of its figures is taken; where it is \
             about a light, give its figures with flags or columns"
                .to_owned()
        }
    }
}
