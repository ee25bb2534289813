//! The quantities that cross from one room to another, so that a watt is never passed where a volt is meant.
//!
//! SI inside: watts, volts, amperes, degrees Celsius for temperatures. Only the products that physics allows are
//! defined; anything else needs an explicit `.0`.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Div, Mul, Sub};

use serde::{Deserialize, Serialize};

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub f64);

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl Mul<$name> for f64 {
            type Output = $name;
            fn mul(self, quantity: $name) -> $name {
                $name(self * quantity.0)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        /// The quotient of two like quantities is a bare number.
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(terms: I) -> Self {
                terms.fold(Self(0.0), Add::add)
            }
        }
        impl $name {
            /// The larger of two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }
            /// The smaller of two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }
        }
    };
}

quantity! {
    /// Power in watts.
    Watts
}
quantity! {
    /// Electric potential in volts.
    Volts
}
quantity! {
    /// Electric current in amperes.
    Amps
}
quantity! {
    /// Resistance in ohms.
    Ohms
}
quantity! {
    /// Photon flux in micromoles per second (PPF where it counts 400-700 nm).
    PhotonFlux
}
quantity! {
    /// Photons per joule, in micromoles per joule: of radiation, of a package's input, or of a light's wall draw.
    PhotonEfficacy
}
quantity! {
    /// Temperature in degrees Celsius; a difference of two is in kelvins.
    Celsius
}

impl Mul<Amps> for Volts {
    type Output = Watts;
    fn mul(self, current: Amps) -> Watts {
        Watts(self.0 * current.0)
    }
}
impl Mul<Volts> for Amps {
    type Output = Watts;
    fn mul(self, voltage: Volts) -> Watts {
        voltage * self
    }
}
impl Mul<Watts> for PhotonEfficacy {
    type Output = PhotonFlux;
    fn mul(self, power: Watts) -> PhotonFlux {
        PhotonFlux(self.0 * power.0)
    }
}
impl Mul<Amps> for Ohms {
    type Output = Volts;
    fn mul(self, current: Amps) -> Volts {
        Volts(self.0 * current.0)
    }
}

impl Amps {
    /// A current written in milliamperes, as tables and listings print it.
    #[must_use]
    pub fn from_ma(milliamperes: f64) -> Self {
        Self(milliamperes / 1000.0)
    }
    /// The current in milliamperes.
    #[must_use]
    pub fn ma(self) -> f64 {
        self.0 * 1000.0
    }
}

/// Three significant digits, or all of the whole number: what a person can use of an estimate.
fn rounded(value: f64, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let decimals = match value.abs() {
        x if x >= 99.95 => 0,
        x if x >= 9.995 => 1,
        _ => 2,
    };
    let text = format!("{value:.decimals$}");
    // 185 W stated is 185, 28.5 is 28.5, and 0.20 is 0.2: trailing zeros promise a precision that is not there.
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    f.write_str(text)
}

impl fmt::Display for Watts {
    /// Rounded for people, with the unit.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        rounded(self.0, f)?;
        f.write_str(" W")
    }
}

impl fmt::Display for PhotonFlux {
    /// Rounded for people, with the unit.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        rounded(self.0, f)?;
        f.write_str(" umol/s")
    }
}

impl fmt::Display for PhotonEfficacy {
    /// Rounded for people, with the unit.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        rounded(self.0, f)?;
        f.write_str(" umol/J")
    }
}

/// A number rounded for people as [`Watts`] are, without a unit: for ranges such as `113 to 201 W`.
#[derive(Debug, Clone, Copy)]
pub struct Rounded(pub f64);

impl fmt::Display for Rounded {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        rounded(self.0, f)
    }
}

impl fmt::Display for Amps {
    /// In whole milliamperes.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.0} mA", self.ma())
    }
}
