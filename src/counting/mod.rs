//! The counting notation: what a person types while looking at a picture of a light, made into a tally.
//!
//! `60 deep-red + 20 royal-blue + 10 white` · `4 x (12 deep-red + 3 royal-blue) + 2 uv-a` · `60±2 red, 20 blue` ·
//! `96 x 3000K @0.2W + 12 x 660nm @3W` · `40R/8B/2W/1UV`.
//!
//! The notation is small, and its errors matter more than its grammar: each names a place in the text, what stands there
//! and what is accepted. So it is read by hand: `token` cuts and folds, `cursor` reads what rules share, `parse` holds
//! the grammar, `group` one group of it, `colours` every word for a colour. What can be read in two ways is an error that asks, because a wrong
//! count accuses an honest maker.

mod classes;
mod colours;
mod cursor;
mod error;
mod group;
mod notation;
mod parse;
mod settle;
mod token;

#[cfg(test)]
mod properties;
#[cfg(test)]
mod rules;

pub use classes::class;
pub use colours::{colour, nearest_colour};
pub use error::Error;
pub use notation::notation;
pub use settle::settle;

use crate::facts::Tally;

/// Reads a tally in the counting notation, in at most 10 000 bytes.
///
/// Groups are kept in the order given, two of the same colour apart; a group of no diodes is dropped. The tally is not a
/// lower bound: only whoever reads the rest of the listing can know that.
///
/// # Errors
///
/// If the text cannot be read, if it can be read in two ways, if it counts no diode at all or more than
/// [`Count::MOST`](crate::facts::Count::MOST).
///
/// ```
/// use plainwatt::counting;
///
/// let tally = counting::tally("4 x (12 deep-red + 3 royal-blue) + 2 uv-a")?;
/// assert_eq!(counting::notation(&tally), "48 deep-red + 12 royal-blue + 2 uv-a");
///
/// let error = counting::tally("60 depred").unwrap_err();
/// assert_eq!(error.suggestion.as_deref(), Some("deep-red"));
/// assert_eq!(error.pointer("60 depred"), "60 depred\n   ^^^^^^");
/// # Ok::<(), counting::Error>(())
/// ```
pub fn tally(text: &str) -> Result<Tally, Error> {
    parse::Parser::over(text)?.tally()
}
