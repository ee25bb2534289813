//! What a figure of watts can say.

use smallvec::SmallVec;

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

impl Says {
    /// Its place among the sayings, whatever it says further.
    const fn kind(self) -> usize {
        match self {
            Self::Nothing => 0,
            Self::Bare => 1,
            Self::Nameplate => 2,
            Self::EachLight => 3,
            Self::Total => 4,
            Self::Level => 5,
            Self::Draw(_) => 6,
            Self::Equivalent => 7,
            Self::Class => 8,
            Self::Selected => 9,
            Self::Left(_) => 10,
        }
    }
}

/// How many sayings there are.
const KINDS: usize = 11;

/// A set of sayings.
#[derive(Debug, Clone, Copy)]
pub(super) struct Set(u16);

impl Set {
    pub(super) const SELECTED: Self = Self::of(&[Says::Selected]);
    pub(super) const EACH_LIGHT: Self = Self::of(&[Says::EachLight]);
    pub(super) const TOTAL: Self = Self::of(&[Says::Total]);
    pub(super) const LEVEL: Self = Self::of(&[Says::Level]);
    pub(super) const CLASS: Self = Self::of(&[Says::Class]);
    pub(super) const EQUIVALENT: Self = Self::of(&[Says::Equivalent]);
    pub(super) const DRAW: Self = Self::of(&[Says::Draw(0)]);
    pub(super) const BARE: Self = Self::of(&[Says::Bare]);
    pub(super) const NAMEPLATE: Self = Self::of(&[Says::Nameplate]);
    /// What the light itself may be called by.
    pub(super) const UNQUALIFIED: Self = Self::of(&[Says::Bare, Says::Nameplate]);
    /// The same, and the positions of its switch.
    pub(super) const SETTING: Self = Self::of(&[Says::Bare, Says::Nameplate, Says::Level]);
    /// Anything at all.
    pub(super) const ANY: Self = Self((1 << KINDS) - 1 - 1);

    /// The set of all the sayings given; a draw stands for any draw.
    pub(super) const fn of(says: &[Says]) -> Self {
        let (mut set, mut i) = (0, 0);
        while i < says.len() {
            set |= 1 << says[i].kind();
            i += 1;
        }
        Self(set)
    }

    pub(super) const fn has(self, says: Says) -> bool {
        self.0 >> says.kind() & 1 == 1
    }
}

/// What the figures of a page say, in their order. A text has five figures of which two say anything, so which of the first
/// 64 say what is kept beside it, and rules look at those figures alone.
#[derive(Debug)]
pub(super) struct All {
    says: SmallVec<[Says; 24]>,
    /// For each saying a bit for each figure that says it, or said it before it was written over.
    first: [u64; KINDS],
}

impl All {
    /// No figure says anything yet.
    pub(super) fn nothing(figures: usize) -> Self {
        const INLINE: [Says; 24] = [Says::Nothing; 24];
        let mut says = SmallVec::from_buf_and_len(INLINE, figures.min(INLINE.len()));
        says.resize(figures, Says::Nothing);
        Self { says, first: [0; KINDS] }
    }

    /// Lets figure `k` say something else. Rules that look for what it says now will find it, which they may not if it is
    /// written over by its index.
    pub(super) fn set(&mut self, k: usize, says: Says) {
        self.says[k] = says;
        self.note(k, says);
    }

    /// Leaves all figures that say one of the set.
    pub(super) fn leave(&mut self, set: Set, why: LeftWhy) {
        let mut places = self.places(set);
        while let Some(k) = places.next(self) {
            self.set(k, Says::Left(why));
        }
    }

    fn note(&mut self, k: usize, says: Says) {
        self.first[says.kind()] |= u64::from(k < 64) << (k % 64);
    }

    /// Which of the first 64 figures may say one of the set: one may have been written over meanwhile.
    #[inline]
    fn may(&self, set: Set) -> u64 {
        let kinds = self.first.iter().enumerate();
        kinds.fold(0, |all, (kind, bits)| if set.0 >> kind & 1 == 1 { all | bits } else { all })
    }

    /// Whether `n` figures may say one of the set.
    #[inline]
    pub(super) fn may_have(&self, n: usize, set: Set) -> bool {
        // All but the last `n - 1` of them struck out.
        let more = (1..n).fold(self.may(set), |bits, _| bits & bits.wrapping_sub(1));
        more != 0 || self.says.len() > 64
    }

    /// The indices of the figures that say one of the set, where what they say is not changed meanwhile.
    #[inline]
    pub(super) fn that(&self, set: Set) -> impl Iterator<Item = usize> {
        let mut places = self.places(set);
        std::iter::from_fn(move || places.next(self))
    }

    /// The first figure that says one of the set.
    #[inline]
    pub(super) fn first(&self, set: Set) -> Option<usize> {
        self.places(set).next(self)
    }

    /// Where one of the set is said.
    #[inline]
    pub(super) fn places(&self, set: Set) -> Places {
        let left = self.may(set);
        debug_assert!(
            self.says.iter().take(64).enumerate().all(|(k, &s)| !set.has(s) || left >> k & 1 == 1),
            "what is looked for was written over something else by its index"
        );
        Places { set, left, beyond: 64 }
    }
}

impl std::ops::Deref for All {
    type Target = [Says];

    fn deref(&self) -> &[Says] {
        &self.says
    }
}

impl std::ops::DerefMut for All {
    fn deref_mut(&mut self) -> &mut [Says] {
        &mut self.says
    }
}

/// Figures that say one of a set, one after another.
pub(super) struct Places {
    set: Set,
    /// Those of the first 64 that are left.
    left: u64,
    /// Where to look on behind those.
    beyond: usize,
}

impl Places {
    /// The next figure that says one of the set by now.
    #[inline]
    pub(super) fn next(&mut self, all: &All) -> Option<usize> {
        while self.left != 0 {
            let k = self.left.trailing_zeros() as usize;
            self.left &= self.left - 1;
            if self.set.has(all.says[k]) {
                return Some(k);
            }
        }
        while let Some(&says) = all.says.get(self.beyond) {
            self.beyond += 1;
            if self.set.has(says) {
                return Some(self.beyond - 1);
            }
        }
        None
    }
}
