//! What a listing's own text states, each fact with the words it was read from.

use smallvec::SmallVec;

use super::{Admitted, Colour, ColourWord, Note, Package, Replaced, Stated, StatedClass, Supply};
use crate::units::Amps;

/// A range of bytes of the text, on character boundaries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

/// A fact and the words it was taken from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Taken<T> {
    /// The fact.
    pub value: T,
    /// The words.
    pub span: Span,
}

/// A count of diodes of one colour, as the text words it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ColourCount {
    /// The listing's word.
    pub word: ColourWord,
    /// The colour of the reference table: by wavelength where one is given, else by the word.
    pub colour: Colour,
    /// How many.
    pub count: u32,
}

/// Why words that look like a figure were not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LeftWhy {
    /// Digits of a model, item or stock number.
    ModelNumber,
    /// A length, width, weight or other dimension.
    Dimension,
    /// The watts of another device: fan, pump, driver, cable, timer ...
    OtherDevice,
    /// How much may be chained or plugged in.
    LoadLimit,
    /// A photon flux density (per square metre), not the light's flux.
    FluxDensity,
    /// The watts of a lamp that the light is compared with.
    Equivalence,
    /// The watts of another LED light: a rival's, a former model's.
    OtherLight,
    /// Denied by the text itself ("NOT 200W").
    Denied,
    /// Said as a joke or a comparison, not as a figure.
    Rhetoric,
    /// One of several variants, none of them selected.
    Variant,
    /// A dimmed level or standby.
    NotFullPower,
    /// A ratio or a percentage, not a count.
    Ratio,
    /// A part of the light: one bar, head or half-chip.
    Part,
    /// The total of a pack of lights.
    PackTotal,
    /// The watts of the claim once more.
    Repeat,
    /// Watts per length or area.
    PerArea,
    /// Conflicts with a figure that takes precedence.
    Outranked,
    /// Nothing says what it is.
    Unclear,
    /// Beyond the part of the text that is read.
    BeyondLimit,
}

/// Words that look like a figure and were deliberately not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Left {
    /// The words.
    pub span: Span,
    /// Why not.
    pub why: LeftWhy,
}

/// Everything read from one text. Absent is `None`: the text does not state it, or not surely.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Read {
    /// The headline watts, per light.
    pub advertised_w: Option<Taken<Stated>>,
    /// How many diodes (or COBs).
    pub diode_count: Option<Taken<u32>>,
    /// The class of the diodes, with its package word where one stands beside it.
    pub class: Option<Taken<StatedClass>>,
    /// A draw that the seller admits.
    pub actual_w: Option<Taken<Admitted>>,
    /// The lamp it is said to replace.
    pub replaces: Option<Taken<Replaced>>,
    /// Photon flux, umol/s.
    pub ppf: Option<Taken<Stated>>,
    /// Photon efficacy, umol/J.
    pub ppe: Option<Taken<Stated>>,
    /// The efficacy is worded "up to", or as that of the diodes: no draw may be implied from it.
    pub ppe_is_bound: bool,
    /// Lowest and highest voltage.
    pub volts: Option<Taken<(Stated, Stated)>>,
    /// Current, amperes.
    pub amps: Option<Taken<Stated>>,
    /// The voltage that the current belongs to and the current: paired by the text, else the highest voltage.
    pub supply: Option<Taken<Supply>>,
    /// Lights in the pack, where the text states a pack.
    pub units_in_pack: Option<Taken<u32>>,
    /// Counts by colour.
    pub colours: SmallVec<[Taken<ColourCount>; 4]>,
    /// The current that each diode is driven at, if the text says so.
    pub drive: Option<Taken<Amps>>,
    /// A package word anywhere in the text.
    pub package: Option<Taken<Package>>,
    /// The text speaks of a COB or a board, so that colour counts without a total may leave out the main source.
    pub beside_board: bool,
    /// The text names ultraviolet, counted or not.
    pub ultraviolet: bool,
    /// Figures not taken, with the reason.
    pub left: SmallVec<[Left; 4]>,
    /// What a reader of the result should know.
    pub notes: SmallVec<[Note; 2]>,
}
