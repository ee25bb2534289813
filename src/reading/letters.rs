//! Watts that are white diodes: the letter W in a list of colour letters.

use super::cues::Cues;
use super::fold::Mark;
use super::hues::green_count;
use super::page::Page;
use super::roles::{Role, Unit};
use crate::facts::ColourWord;

/// Letters that count colours; where none is on the page, no watts are white diodes.
pub(super) const LETTER: Cues = Role::Letter(ColourWord::Red).cue();

/// `60R+20B+10W`, `96 W, 24 R`: white diodes in a list of colour letters.
pub(super) fn white_letter(page: &Page, at: usize) -> bool {
    let letter = |i: usize| {
        page.figure(i).is_some_and(|f| f.unit == Unit::Bare) && matches!(page.role(i + 1), Role::Letter(_))
            || green_count(page, i)
    };
    let sign = |m: Option<Mark>| {
        matches!(
            m,
            Some(
                Mark::Plus
                    | Mark::Slash
                    | Mark::Comma
                    | Mark::And
                    | Mark::Dash
                    | Mark::Pipe
                    | Mark::Dot
                    | Mark::Line
            )
        )
    };
    let single = || matches!(page.last_letter(at), Some('W' | 'w' | 'Ｗ'));
    let after = if sign(page.mark(at + 1)) { at + 2 } else { at + 1 };
    let before = match page.mark_before(at) {
        m if sign(m) && green_count(page, at.wrapping_sub(2)) => at.checked_sub(2),
        m if sign(m) => at.checked_sub(3),
        _ => at.checked_sub(2),
    };
    // "45W 60R/20B": the list, which has strokes, begins after the watts.
    let apart =
        after == at + 1 && matches!(page.mark(at + 3), Some(Mark::Slash | Mark::Plus)) && letter(at + 4);
    (letter(after) && !apart || before.is_some_and(letter) || completes_letters(page, at))
        && single()
        && grouped(page, at)
}

/// Whether the watts at item `at` may be one of a group of colour letters: with two more colours on the page, or joined by a
/// plus or a stroke to one that is not blue. "110W 281B+" is watts and a type of diode.
fn grouped(page: &Page, at: usize) -> bool {
    let joined = [Some(at + 1), at.checked_sub(1)]
        .into_iter()
        .flatten()
        .any(|i| matches!(page.mark(i), Some(Mark::Plus | Mark::Slash | Mark::And)));
    let mut first = None;
    for i in 0..page.items.len() {
        let role = page.role(i);
        let short =
            matches!(role, Role::Letter(_)) || matches!(role, Role::Colour(_)) && page.letters(i) <= 2;
        if !short || page.figure_before(i).is_none() && page.figure(i + 1).is_none() {
            continue;
        }
        if first.is_some_and(|first| first != role) {
            return true;
        }
        first = Some(role);
    }
    joined && first != Some(Role::Letter(ColourWord::Blue))
}

/// "96 W | 128 LEDs | 24 R | 8 B": apart from the other letters, but with them the whole count.
fn completes_letters(page: &Page, at: usize) -> bool {
    let (mut letters, mut sum) = (0, page.figure(at).map_or(0.0, |f| f.high));
    for (_, n) in page.bare() {
        if matches!(page.role(usize::from(n.item) + 1), Role::Letter(_)) {
            letters += 1;
            sum += n.high;
        }
    }
    letters >= 2
        && page.figures.iter().any(|n| {
            n.unit == Unit::Bare
                && (n.high - sum).abs() < 0.5
                && matches!(page.role(usize::from(n.item) + 1), Role::Diode | Role::Led | Role::Chip)
        })
}
