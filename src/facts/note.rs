//! Things seen while the facts were gathered; the comparison turns them into reasons with their text.

use crate::units::Watts;

/// One thing seen while reading, counting or merging.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Note {
    /// The colours add up to fewer than the diode count; the rest counts as unstated.
    ColoursShort {
        /// Sum of the colours.
        counted: u32,
        /// The stated diode count.
        total: u32,
    },
    /// The colours add up to more than the diode count; the larger is used.
    ColoursExceed {
        /// Sum of the colours.
        counted: u32,
        /// The stated diode count.
        total: u32,
    },
    /// Two places count the same colour differently; the larger is used.
    CountsDiffer {
        /// The smaller.
        smaller: u32,
        /// The larger.
        larger: u32,
    },
    /// A column (or flag) and the title state different figures; the column wins.
    TitleContradicts {
        /// The field, by its name in exports.
        field: &'static str,
        /// What the column or flag says.
        given: f64,
        /// What the title says.
        title: f64,
    },
    /// The claim equals the whole pack's total; it was divided.
    PackDivided {
        /// Lights in the pack.
        units: u32,
        /// The pack's total.
        total: Watts,
    },
    /// The text states two headline figures that conflict.
    HeadlinesConflict {
        /// The figure used.
        used: Watts,
        /// The other.
        other: Watts,
    },
    /// The text offers several variants and none is selected, so the figures that differ were left out.
    VariantNotSelected,
    /// The text is about something sold beside lights, so none of its figures was taken.
    OtherDevice,
}
