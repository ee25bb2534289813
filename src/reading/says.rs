//! What a figure of watts can say.

use crate::facts::LeftWhy;

/// What a figure of watts says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Says {
    /// Not watts.
    Nothing,
    /// Unqualified.
    Bare,
    /// Under a word for power, without a word for draw.
    Nameplate,
    /// Of one light, in a pack.
    EachLight,
    /// All parts or all lights together.
    Total,
    /// At a level or switch position.
    Level,
    /// A draw; the labelled ones weigh more.
    Draw(u8),
    /// A lamp that is replaced.
    Equivalent,
    /// The class of the diodes.
    Class,
    /// Chosen among variants.
    Selected,
    /// Not the light's figure.
    Left(LeftWhy),
}

/// What the figures of a page say, in their order.
pub(super) type All = [Says];

/// What is said at all, a bit each, so that rules for other sayings need not look.
#[derive(Debug, Clone, Copy)]
pub(super) struct Said(u16);

impl Said {
    pub(super) fn of(says: &All) -> Self {
        Self(says.iter().fold(0, |all, s| all | Self::bit(*s)))
    }

    /// Whether something may say this. (A figure may have been left meanwhile.)
    pub(super) fn has(self, says: Says) -> bool {
        self.0 & Self::bit(says) != 0
    }

    const fn bit(says: Says) -> u16 {
        1 << match says {
            Says::Nothing => 0,
            Says::Bare => 1,
            Says::Nameplate => 2,
            Says::EachLight => 3,
            Says::Total => 4,
            Says::Level => 5,
            Says::Draw(_) => 6,
            Says::Equivalent => 7,
            Says::Class => 8,
            Says::Selected => 9,
            Says::Left(_) => 10,
        }
    }
}
