//! A tally written in the notation, in its plainest form.

use std::fmt::Write;

use crate::facts::{Colour, Group, Tally};

/// The tally as one line that [`super::tally`] reads back to the same groups: `60±2 deep-red + 96 white @0.2W + 4`.
///
/// [`Tally::lower_bound`] has no sign in the notation and is not carried. A group of no diodes is written, though reading
/// drops it.
#[must_use]
pub fn notation(tally: &Tally) -> String {
    let mut line = String::new();
    for group in &tally.groups {
        if !line.is_empty() {
            line.push_str(" + ");
        }
        // Writing to a string cannot fail.
        let _ = write_group(&mut line, group);
    }
    line
}

fn write_group(line: &mut String, group: &Group) -> std::fmt::Result {
    write!(line, "{}", group.count.number)?;
    if let Some(half_width) = group.count.half_width {
        write!(line, "±{half_width}")?;
    }
    if group.colour != Colour::Unstated {
        write!(line, " {}", group.colour.name())?;
    }
    match group.class {
        Some(class) => write!(line, " @{class}"),
        None => Ok(()),
    }
}
