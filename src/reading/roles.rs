//! The roles a word can play in a listing. The vocabulary gives each word one; the rules ask for roles, never for words.

use crate::facts::{ColourWord, LampKind, Package};

/// Units that follow (or head) a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(u8)]
pub(super) enum Unit {
    /// No unit.
    Bare,
    Watt,
    Kilowatt,
    Volt,
    VoltAc,
    VoltDc,
    Amp,
    Milliamp,
    Nanometre,
    Kelvin,
    /// A length, which a `×` may chain to a size.
    Length,
    Metre,
    /// Anything else with a unit of its own: hours, hertz, lumens, watt-hours, weight ...
    Other,
    Percent,
    /// The start of a photon unit; the parts after it decide.
    Micromole,
    Millimole,
    PhotonFlux,
    PhotonFluxMilli,
    PhotonEfficacy,
    FluxDensity,
    Second,
    Joule,
    SquareMetre,
    /// A size made of several lengths: `400*215*60mm`.
    Size,
    /// `8:1:1`.
    Ratio,
    Money,
}

/// What a word does in a listing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// A word that the vocabulary does not have.
    None,
    Unit(Unit),
    Colour(ColourWord),
    /// A colour's letter in a list such as `40R/8B`.
    Letter(ColourWord),
    /// `deep`, `hyper`: makes red deep red.
    Deep,
    /// `far`: makes red far red.
    Far,
    Warm,
    Cool,
    /// `all` before a colour.
    All,
    Lamp(LampKind),
    /// `metal`, in front of `halide`.
    Metal,
    /// A tube size (`T5`): a kind of lamp only inside a claim of replacement.
    Tube,
    /// `DE`: a double-ended sodium lamp if a lamp word follows.
    DoubleEnded,
    /// `double`, `twin` ... of chips, bulbs in a pack, heads.
    Double,
    /// "traditional", "conventional".
    Traditional,
    /// LED in the singular: a diode or only a kind of light.
    Led,
    /// A diode word in the plural or beyond doubt.
    Diode,
    /// A diode word in the singular.
    Chip,
    Cob,
    Package(Package),
    Pieces,
    /// `qty`, `number of`.
    Quantity,
    /// `type`, `single`.
    Kind,
    Light,
    Lights,
    /// A part of a light: bar, head, panel, module.
    Part,
    Board,
    Pack,
    /// A word for a pack that says how many: `Doppelpack`.
    PackOf(u16),
    Pair,
    Each,
    Total,
    DrawVerb,
    /// `actual`, `true`: a draw if it stands at a figure or a word for power.
    DrawAdjective,
    DrawNoun,
    Input,
    Wall,
    /// `measured`, `metered`, `tested`.
    Measured,
    Only,
    Power,
    /// `rated`, `nominal`, `output`, `max`.
    Rating,
    Equivalent,
    /// A verb that the lamp's watts follow: `replaces 600W`.
    Replaces,
    /// A noun that follows the lamp's watts: `600W replacement`.
    Replacement,
    Versus,
    /// Another device: fan, pump, driver, cable.
    Device,
    /// Chaining and switching capacity.
    Load,
    Deny,
    /// `fake`, `lie`, `fooled`: the watts beside it are no claim of this light.
    Fake,
    /// `others`, `rivals`, `competitors`.
    Rival,
    /// `like`, `feels`: a comparison that is not a claim.
    Like,
    Save,
    /// Dimmed level, standby.
    Dim,
    /// A mode or switch position: `veg`, `both`, `full`.
    Level,
    Choose,
    /// `size:`, `selected`.
    Selected,
    Switchable,
    Ppf,
    Ppe,
    Density,
    UpTo,
    /// `to` between two numbers.
    To,
    Approx,
    Current,
    Drive,
    Breaker,
    Voltage,
    /// `supply`: a device after "power", else the mains.
    Supply,
    /// `socket`: the wall after "at the", else a device.
    Socket,
    /// `use`, `used`: a draw after a word for power, else nothing.
    Used,
    /// `off`: "off the grid", else a dimmed level.
    Off,
    /// `place`: "in place of", else nothing.
    Place,
    /// A word after a device that the light has or does without: `タイマー付き`, `ファンなし`.
    Has,
    /// `by`: a cross between two numbers, else nothing.
    By,
    Ac,
    Dc,
    Number(u16),
    Of,
    With,
    For,
    And,
    At,
    Per,
    Country,
    /// A word whose full stop ends no sentence.
    Short,
    Times,
    /// `sku`, `item`: a stock number follows.
    Stock,
    /// `bundle`, `kit`: several things, the light among them.
    Bundle,
}

impl Role {
    /// Whether a word of this role may play another one beside some words, may be part of a figure (`settled.rs`), or may label a
    /// stock number.
    pub(super) const fn open(self) -> bool {
        matches!(
            self,
            Self::Supply
                | Self::Socket
                | Self::Used
                | Self::Off
                | Self::Place
                | Self::By
                | Self::Replaces
                | Self::Part
                | Self::Board
                | Self::Number(_)
                | Self::Stock
                | Self::Deny
                | Self::Quantity
        )
    }
}
