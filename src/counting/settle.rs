//! Colours counted one by one against a diode count for the whole light.

use crate::facts::{Colour, Count, Group, Note, Tally};

/// Combines colour groups with the light's stated number of diodes.
///
/// Fewer in the colours than in all: the rest is one group of colour [`Colour::Unstated`] without a class of its own, and a
/// [`Note::ColoursShort`]. More: the colours stand, being the larger, and a [`Note::ColoursExceed`]. No colours at all is
/// no contradiction: every diode is unstated, without a note. The doubt of a count (`60±2`) plays no part in this.
#[must_use]
pub fn settle(colours: impl IntoIterator<Item = Group>, total: u32) -> (Tally, Option<Note>) {
    let mut tally = Tally { groups: colours.into_iter().collect(), lower_bound: false };
    let counted = u32::try_from(tally.total()).unwrap_or(u32::MAX);
    let rest = total.saturating_sub(counted);
    if rest > 0 {
        tally.groups.push(Group { colour: Colour::Unstated, count: Count::exact(rest), class: None });
    }
    let note = match counted {
        0 => None,
        _ if counted < total => Some(Note::ColoursShort { counted, total }),
        _ if counted > total => Some(Note::ColoursExceed { counted, total }),
        _ => None,
    };
    (tally, note)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::counting::{notation, tally};

    fn settled(colours: &str, total: u32) -> (String, Option<Note>) {
        let groups = tally(colours).unwrap().groups;
        let (tally, note) = settle(groups, total);
        (notation(&tally), note)
    }

    #[test]
    fn fewer_colours_than_diodes_leave_the_rest_unstated() {
        let note = Note::ColoursShort { counted: 80, total: 100 };
        assert_eq!(
            settled("60 red @3W + 20 blue", 100),
            ("60 red @3W + 20 blue + 20".to_owned(), Some(note))
        );
    }

    #[test]
    fn more_colours_than_diodes_stand() {
        let note = Note::ColoursExceed { counted: 80, total: 50 };
        assert_eq!(settled("60 red + 20 blue", 50), ("60 red + 20 blue".to_owned(), Some(note)));
    }

    #[test]
    fn agreement_and_silence_need_no_note() {
        assert_eq!(settled("60±2 red + 20 blue", 80), ("60±2 red + 20 blue".to_owned(), None));
        let (all, note) = settle([], 100);
        assert_eq!((notation(&all).as_str(), note), ("100", None));
        assert_eq!(settle([], 0), (Tally::default(), None));
    }

    #[test]
    fn counts_beyond_any_light_do_not_overflow() {
        let group = Group { colour: Colour::Red, count: Count::exact(u32::MAX), class: None };
        let (_, note) = settle([group, group], 5);
        assert_eq!(note, Some(Note::ColoursExceed { counted: u32::MAX, total: 5 }));
    }
}
