//! The electrical estimate: from a tally to LED power and wall draw, each with its uncertainty.
//!
//! One die's voltage ([`forward_voltage`]), a package of dice at an operating point ([`OperatingPoint`]), all packages of
//! a light through its driver ([`Draw`]), and the way back from watts to the current that they would need.

mod backwards;
mod budget;
mod estimate;
mod fitting;
mod forward_voltage;
mod model;
mod package;
mod sums;

pub use estimate::{Draw, Efficiency, Part, PointDraw};
pub use fitting::{Fit, NoFit, STEP, Steep};
pub use forward_voltage::{OutsideCurve, Shockley, T_REF_K, forward_voltage};
pub use model::{BENCH, JUNCTION, Model};
pub use package::{OperatingPoint, PackageDraw, ScaledPower};
