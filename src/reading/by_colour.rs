//! Numbers with a diode word each that count the colours of one light: "96 LED white and 24 red", "48 LED rouges + 32 LED bleues".

use super::counted::joined;
use super::cues::Cues;
use super::fold::Mark;
use super::hues::modifies;
use super::page::Page;
use super::roles::{Role, Unit};

/// Whether the number at item `at`, with the diode word at item `i`, counts one colour of several.
pub(super) fn by_colour(page: &Page, at: usize, i: usize) -> bool {
    page.role(i) != Role::Led && adds_a_colour(page, i)
        || first_of_colours(page, i)
        || next_of_colours(page, at, i)
}

/// "528 white LEDs & 16 red": another colour is added to the one before the diode word at item `i`.
fn adds_a_colour(page: &Page, i: usize) -> bool {
    let added = joined(page, i + 1) || page.mark(i + 1) == Some(Mark::Comma) && page.figure(i + 2).is_some();
    // "1,152 white LEDs + 96 x 660nm"
    let shade = || page.mark(i + 3) == Some(Mark::Times) && page.plays(i + 4).any(Cues::SHADE);
    matches!(page.role_before(i), Role::Colour(_))
        && added
        && (matches!(page.role(i + 3), Role::Colour(_)) || shade())
}

/// "96 LED white and 24 red", "48 LED rouges + 32 LED bleues": the colour after the diode word at item `i` is the first of several,
/// each with its own number.
fn first_of_colours(page: &Page, i: usize) -> bool {
    let Some(mut k) = coloured(page, i + 1) else { return false };
    let sign = page.mark(k);
    k += usize::from(sign == Some(Mark::Comma));
    let and = page.role(k) == Role::And || page.lone_and(k);
    // A line of its own counts diodes only where it says so.
    let apart = matches!(sign, Some(Mark::Line | Mark::Pipe | Mark::Stop | Mark::Other));
    let joined = matches!(sign, Some(Mark::Plus | Mark::And | Mark::Comma | Mark::Slash));
    k += usize::from(and || apart || joined && sign != Some(Mark::Comma));
    let noun = matches!(page.role(k + 1), Role::Diode | Role::Chip | Role::Led | Role::Pieces);
    (and || joined || apart && noun)
        && page.figure(k).is_some_and(|n| matches!(n.unit, Unit::Bare | Unit::Length))
        && coloured(page, k + 1 + usize::from(noun)).is_some()
}

/// The item after the colour at item `k`, which may stand in brackets, after "in", or with its wavelength.
fn coloured(page: &Page, mut k: usize) -> Option<usize> {
    let open = page.mark(k) == Some(Mark::Open);
    k += usize::from(open || page.role(k) == Role::Unit(Unit::Length));
    k += usize::from(modifies(page, k));
    if !matches!(page.role(k), Role::Colour(_)) {
        return None;
    }
    k += 1 + usize::from(modifies(page, k + 1));
    k += usize::from(page.figure(k).is_some_and(|f| matches!(f.unit, Unit::Nanometre | Unit::Kelvin)));
    (!open || page.mark(k) == Some(Mark::Close)).then_some(k + usize::from(open))
}

/// "... + 32 LED bleues": the number at item `at`, with the diode word at item `i`, goes on such a list.
fn next_of_colours(page: &Page, at: usize, i: usize) -> bool {
    let noun = |k: usize| matches!(page.role(k), Role::Diode | Role::Chip | Role::Led);
    coloured(page, i + 1).is_some()
        && (at.saturating_sub(9)..at)
            .rev()
            .find(|&k| noun(k))
            .is_some_and(|k| page.figure_before(k).is_some() && first_of_colours(page, k))
}
