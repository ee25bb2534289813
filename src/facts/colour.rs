//! The colours of the reference table, and the colour words that a listing's own text is labelled with.

/// A colour of the reference table. `Unstated` stands for a diode whose colour the listing does not give.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[repr(u8)]
pub enum Colour {
    /// 700 to 779 nm.
    FarRed,
    /// 640 to 699 nm.
    DeepRed,
    /// 620 to 639 nm.
    Red,
    /// 605 to 619 nm.
    RedOrange,
    /// 570 to 604 nm.
    Amber,
    /// 515 to 569 nm.
    Green,
    /// 490 to 514 nm.
    Cyan,
    /// 460 to 489 nm.
    Blue,
    /// 400 to 459 nm.
    RoyalBlue,
    /// Under 400 nm.
    UvA,
    /// Any colour temperature.
    White,
    /// A blue die under a phosphor that gives pink or purple light, sold as full spectrum.
    Pink,
    /// 780 nm and up.
    Infrared,
    /// Not given.
    Unstated,
}

impl Colour {
    /// Every colour, in the order of the reference table.
    pub const ALL: [Self; 14] = [
        Self::FarRed,
        Self::DeepRed,
        Self::Red,
        Self::RedOrange,
        Self::Amber,
        Self::Green,
        Self::Cyan,
        Self::Blue,
        Self::RoyalBlue,
        Self::UvA,
        Self::White,
        Self::Pink,
        Self::Infrared,
        Self::Unstated,
    ];

    /// The name as the reference table and every report write it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::FarRed => "far-red",
            Self::DeepRed => "deep-red",
            Self::Red => "red",
            Self::RedOrange => "red-orange",
            Self::Amber => "amber",
            Self::Green => "green",
            Self::Cyan => "cyan",
            Self::Blue => "blue",
            Self::RoyalBlue => "royal-blue",
            Self::UvA => "uv-a",
            Self::White => "white",
            Self::Pink => "pink",
            Self::Infrared => "infrared",
            Self::Unstated => "unstated",
        }
    }

    /// The colour of that name, written as [`Colour::name`] writes it.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|c| c.name() == name)
    }

    /// The colour of light of that wavelength, in nanometres, by the ranges on each variant.
    #[must_use]
    pub fn from_nanometres(nm: f64) -> Self {
        match nm {
            x if x < 400.0 => Self::UvA,
            x if x < 460.0 => Self::RoyalBlue,
            x if x < 490.0 => Self::Blue,
            x if x < 515.0 => Self::Cyan,
            x if x < 570.0 => Self::Green,
            x if x < 605.0 => Self::Amber,
            x if x < 620.0 => Self::RedOrange,
            x if x < 640.0 => Self::Red,
            x if x < 700.0 => Self::DeepRed,
            x if x < 780.0 => Self::FarRed,
            _ => Self::Infrared,
        }
    }
}

/// The colour word that a listing itself uses; coarser than [`Colour`], and kept because it is what was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum ColourWord {
    /// Red.
    Red,
    /// Deep red.
    DeepRed,
    /// Far red.
    FarRed,
    /// Infrared, as sellers use the word (often 730 nm).
    Ir,
    /// Ultraviolet.
    Uv,
    /// Blue, royal blue included.
    Blue,
    /// White without a tint.
    White,
    /// Warm white.
    WarmWhite,
    /// Cool white.
    CoolWhite,
    /// Green.
    Green,
    /// Orange, yellow and amber.
    Orange,
    /// Pink, purple or full-spectrum phosphor.
    Pink,
}

impl ColourWord {
    /// The key that the label uses in exports.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Red => "red",
            Self::DeepRed => "deep_red",
            Self::FarRed => "far_red",
            Self::Ir => "ir",
            Self::Uv => "uv",
            Self::Blue => "blue",
            Self::White => "white",
            Self::WarmWhite => "warm_white",
            Self::CoolWhite => "cool_white",
            Self::Green => "green",
            Self::Orange => "orange",
            Self::Pink => "pink",
        }
    }

    /// The colour of the reference table that the bare word, without a wavelength, stands for.
    #[must_use]
    pub const fn colour(self) -> Colour {
        match self {
            Self::Red => Colour::Red,
            Self::DeepRed => Colour::DeepRed,
            Self::FarRed => Colour::FarRed,
            Self::Ir => Colour::Infrared,
            Self::Uv => Colour::UvA,
            Self::Blue => Colour::Blue,
            Self::White | Self::WarmWhite | Self::CoolWhite => Colour::White,
            Self::Green => Colour::Green,
            Self::Orange => Colour::Amber,
            Self::Pink => Colour::Pink,
        }
    }
}
