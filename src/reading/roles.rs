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
    /// Whether a word of this role may play another one beside some words, or may be part of a figure (`settled.rs`).
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
                | Self::Number(_)
        )
    }

    /// The role as a one-element set; words without a role are in no set.
    pub(super) const fn cue(self) -> Cues {
        Cues(match self {
            Self::DrawVerb => 1,
            Self::DrawAdjective => 1 << 1,
            Self::DrawNoun => 1 << 2,
            Self::Input => 1 << 3,
            Self::Wall => 1 << 4,
            Self::Measured => 1 << 5,
            Self::Only => 1 << 6,
            Self::Power => 1 << 7,
            Self::Rating => 1 << 8,
            Self::Equivalent => 1 << 9,
            Self::Replaces => 1 << 10,
            Self::Replacement => 1 << 11,
            Self::Versus => 1 << 12,
            Self::Device => 1 << 13,
            Self::Load => 1 << 14,
            Self::Deny => 1 << 15,
            Self::Like => 1 << 16,
            Self::Save => 1 << 17,
            Self::Dim => 1 << 18,
            Self::Level => 1 << 19,
            Self::Total => 1 << 20,
            Self::Each => 1 << 21,
            Self::Diode => 1 << 22,
            Self::Chip => 1 << 23,
            Self::Led => 1 << 24,
            Self::Cob => 1 << 25,
            Self::Part => 1 << 26,
            Self::Board => 1 << 26 | Cues::BOARD.0,
            Self::Light | Self::Lights => 1 << 27,
            Self::Lamp(_) => 1 << 28,
            Self::Traditional => 1 << 29,
            Self::Ppf => 1 << 30,
            Self::Ppe => 1 << 31,
            Self::Density => 1 << 32,
            Self::Pieces => 1 << 33,
            Self::Choose => 1 << 34,
            Self::Switchable => 1 << 35,
            Self::UpTo => 1 << 36,
            Self::Kind => 1 << 37,
            Self::Quantity => 1 << 38,
            Self::Drive => 1 << 39,
            Self::Breaker => 1 << 40,
            Self::Selected => 1 << 41,
            Self::Pack | Self::PackOf(_) | Self::Pair => 1 << 42,
            Self::Bundle => 1 << 43,
            Self::Dc => 1 << 44,
            Self::Double => 1 << 45,
            Self::Tube => 1 << 46,
            Self::Unit(Unit::Micromole) => 1 << 47,
            Self::Package(_) => 1 << 48,
            Self::Colour(ColourWord::Uv) => 1 << 49 | Cues::ULTRAVIOLET.0,
            Self::Colour(_) => 1 << 49,
            Self::Letter(_) => 1 << 52,
            Self::Unit(Unit::Watt | Unit::Other) => Cues::LETTERED.0,
            Self::Voltage | Self::Current | Self::Unit(Unit::Volt | Unit::Amp) | Self::Ac => 1 << 50,
            Self::Times => 1 << 51,
            Self::With => 1 << 53,
            Self::At => 1 << 54,
            Self::Per => 1 << 55,
            Self::Fake => 1 << 56,
            Self::Rival => 1 << 57,
            _ => 0,
        })
    }
}

/// A set of roles.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Cues(pub u64);

impl Cues {
    /// Figures play no role; these tell their units where rules look for them: watts, no unit, a wavelength or temperature.
    pub const WATTS: Self = Self(1 << 58);
    pub const BARE: Self = Self(1 << 59);
    pub const SHADE: Self = Self(1 << 60);
    /// A figure or a word whose unit may be a colour's letter: "21g", "W 14". Watts that follow a number are not among them.
    pub const LETTERED: Self = Self(1 << 63);
    /// A board, without the other parts of a light; ultraviolet without the other colours.
    pub const BOARD: Self = Self(1 << 61);
    pub const ULTRAVIOLET: Self = Self(1 << 62);

    /// Whether the set has a role of the other set.
    pub(super) const fn any(self, other: Self) -> bool {
        self.0 & other.0 != 0
    }
    /// Both sets together.
    pub(super) const fn and(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }
    /// The set without the roles of the other.
    pub(super) const fn without(self, other: Self) -> Self {
        Self(self.0 & !other.0)
    }
    /// The set of all the roles given.
    pub(super) const fn of(roles: &[Role]) -> Self {
        let mut set = 0;
        let mut i = 0;
        while i < roles.len() {
            set |= roles[i].cue().0;
            i += 1;
        }
        Self(set)
    }
}
