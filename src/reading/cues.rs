//! Sets of roles, in one machine word, so that rules ask for many at once.

use super::roles::{Role, Unit};
use crate::facts::ColourWord;

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

impl Role {
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
