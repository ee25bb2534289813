//! The words of a result.

/// The grade of a claim, from best to worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Verdict {
    /// Measured, and consistent with the claim.
    BorneOut,
    /// The diodes can draw it; only a meter shows that they do.
    WithinReach,
    /// The light draws more than it claims.
    Understated,
    /// What is known does not decide.
    Unsettled,
    /// The light draws less than it claims.
    Overstated,
    /// Less than it claims even at the diodes' published maximum.
    OutOfReach,
}

impl Verdict {
    /// Every verdict, best first.
    pub const ALL: [Self; 6] = [
        Self::BorneOut,
        Self::WithinReach,
        Self::Understated,
        Self::Unsettled,
        Self::Overstated,
        Self::OutOfReach,
    ];

    /// The word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::BorneOut => "borne-out",
            Self::WithinReach => "within-reach",
            Self::Understated => "understated",
            Self::Unsettled => "unsettled",
            Self::Overstated => "overstated",
            Self::OutOfReach => "out-of-reach",
        }
    }

    /// Whether it says that the claim is too high.
    #[must_use]
    pub const fn convicts(self) -> bool {
        matches!(self, Self::Overstated | Self::OutOfReach)
    }
}

/// What a verdict rests on, strongest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Evidence {
    /// A meter reading.
    Measured,
    /// The diode count with its class.
    Counted,
    /// The listing's other numbers.
    OwnWords,
    /// Nothing.
    None,
}

impl Evidence {
    /// Every kind of evidence, strongest first.
    pub const ALL: [Self; 4] = [Self::Measured, Self::Counted, Self::OwnWords, Self::None];

    /// The word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Measured => "measured",
            Self::Counted => "counted",
            Self::OwnWords => "own-words",
            Self::None => "none",
        }
    }
}

/// How the claimed figure seems to have been made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Basis {
    /// The count times the name of the class.
    ClassSum,
    /// What the light draws.
    Draw,
    /// The lamp it is said to replace.
    Replacement,
    /// None of these.
    Unexplained,
}

impl Basis {
    /// Every basis.
    pub const ALL: [Self; 4] = [Self::ClassSum, Self::Draw, Self::Replacement, Self::Unexplained];

    /// The word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::ClassSum => "class-sum",
            Self::Draw => "draw",
            Self::Replacement => "replacement",
            Self::Unexplained => "unexplained",
        }
    }
}
