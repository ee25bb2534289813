//! Whether a bare number counts diodes: by the words after it ("245 white diodes", "80 pcs"), or a label before it ("LED Qty:
//! 96").

use super::array::LARGEST_BEAD;
use super::class::{is_package, package_number};
use super::figures::{Figure, What};
use super::fold::Mark;
use super::label::label_before;
use super::page::Page;
use super::roles::{Cues, Role, Unit};

/// The fewest pieces without a diode word that are taken for diodes; fewer may be lights, fans or hooks.
const FEWEST_PIECES: f64 = 12.0;

/// How sure a count is, by the words beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Rank {
    Pieces,
    Named,
    Total,
}

/// Whether the bare number counts diodes, and how surely.
pub(super) fn counted(page: Page, f: &Figure, pack: bool) -> Option<(Rank, bool)> {
    let at = usize::from(f.item);
    if f.range || f.list || f.decimal || f.high < 1.0 || f.high.fract() != 0.0 {
        return None;
    }
    let package = package_number(f.high).is_some() && !f.worded;
    if page.mark_before(at) == Some(Mark::Times)
        && at >= 2
        && !joined(page, at + 1)
        && is_package(page, at - 2)
    {
        // `3030 SMD x 480`
        return Some((Rank::Named, false));
    }
    let after = noun_after(page, at, pack);
    if after == After::Elsewhere
        || page.mark_before(at) == Some(Mark::Hash)
        || (package && after != After::Pieces)
    {
        return None;
    }
    if part_of_part(page, at, pack) || matches!(page.mark_before(at), Some(Mark::Times | Mark::Money)) {
        return None;
    }
    match after {
        After::Cob => return Some((Rank::Named, true)),
        After::Diodes { total: true } => return Some((Rank::Total, false)),
        After::Diodes { total: false } => return Some((Rank::Named, false)),
        After::Light => return doubtful_light(page, f).then_some((Rank::Named, false)),
        _ => {}
    }
    let label = label_before(page, at);
    if label
        && !matches!(page.role(at + 1), Role::Colour(_) | Role::Letter(_))
        && page.mark(at + 1) != Some(Mark::Times)
    {
        return Some((Rank::Named, false));
    }
    let colour = at > 0 && matches!(page.role(at - 1), Role::Colour(_))
        || matches!(page.mark_before(at), Some(Mark::Times | Mark::Colon)) && nearby_colour(page, at);
    match after {
        After::Total
            if page.cues.any(Cues::of(&[Role::Diode, Role::Chip, Role::Led])) && f.high >= FEWEST_PIECES =>
        {
            Some((Rank::Total, false))
        }
        After::Pieces
            if page.figure(at + 2).is_some_and(|w| matches!(w.unit, Unit::Nanometre | Unit::Kelvin)) =>
        {
            None
        }
        After::Pieces if added(page, at) || one_of_several(page, at) => None,
        After::Pieces if f.high >= FEWEST_PIECES && !colour && !(at + 2..at + 5).any(|k| joined(page, k)) => {
            Some((Rank::Pieces, false))
        }
        _ => None,
    }
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum After {
    Diodes {
        total: bool,
    },
    Cob,
    /// LED in the singular before a word for a light.
    Light,
    Pieces,
    Total,
    /// Something else, or per metre, per bar.
    Elsewhere,
    Nothing,
}

/// What the words after the number at item `at` say it counts.
fn noun_after(page: Page, at: usize, pack: bool) -> After {
    let (mut pieces, mut packaged) = (false, false);
    let mut others = 0;
    let mut i = at + 1;
    while i < at + 8 {
        match page.what(i) {
            Some(What::Word(role)) => match role {
                Role::Diode | Role::Chip if adds_a_colour(page, i) => return After::Elsewhere,
                Role::Diode | Role::Chip => return diodes(page, i, pack),
                Role::Cob => {
                    return if matches!(page.role(i + 1), Role::Led | Role::Light) && !pieces {
                        After::Light
                    } else {
                        After::Cob
                    };
                }
                Role::Led if !pieces && of_a_light(page, i) => return After::Light,
                // "2 unidades tubo LED": a few pieces of something that is LED.
                Role::Led if pieces && others > 0 && few(page, at) => return After::Elsewhere,
                Role::Led => return diodes(page, i, pack),
                Role::Pieces if i == at + 1 => pieces = true,
                Role::Unit(Unit::Length)
                    if i == at + 1 && matches!(page.role(i + 1), Role::Total | Role::All) =>
                {
                    return After::Total;
                }
                // "100 in number"
                Role::Unit(Unit::Length) if i == at + 1 && page.role(i + 1) == Role::Quantity => {
                    return After::Pieces;
                }
                Role::Total => return if i == at + 1 { After::Total } else { After::Nothing },
                Role::Package(_) => packaged = true,
                Role::Of
                | Role::DoubleEnded
                | Role::Double
                | Role::Rating
                | Role::Unit(Unit::Amp)
                | Role::Power => {}
                Role::Colour(_) => {
                    // One colour before the noun; a list of colours counts something else.
                    if !matches!(page.role(i + 1), Role::Diode | Role::Chip | Role::Led | Role::Package(_))
                        && !pieces
                    {
                        return After::Nothing;
                    }
                    // "768 white and 48 red LEDs": the last of a list of colours.
                    let listed = matches!(page.mark_before(at), Some(Mark::Plus | Mark::And | Mark::Comma))
                        || page.role_before(at) == Role::And;
                    if listed && at >= 2 && matches!(page.role(at - 2), Role::Colour(_)) {
                        return After::Elsewhere;
                    }
                    if page.mark(i + 1) == Some(Mark::Slash) || matches!(page.role(i + 1), Role::And) {
                        return After::Elsewhere;
                    }
                }
                Role::None
                | Role::Kind
                | Role::Level
                | Role::Ppe
                | Role::Cool
                | Role::Warm
                | Role::Deep
                | Role::Dim
                    if others < 3 =>
                {
                    others += 1;
                }
                Role::Light if matches!(page.role(i + 1), Role::Diode | Role::Chip) => {}
                Role::Device
                | Role::Part
                | Role::Board
                | Role::Light
                | Role::Lights
                | Role::Pack
                | Role::Each
                | Role::Pair
                | Role::Load
                | Role::Lamp(_) => {
                    return if pieces && matches!(role, Role::Each) {
                        After::Pieces
                    } else {
                        After::Elsewhere
                    };
                }
                _ => break,
            },
            Some(What::Code) if others < 3 => others += 1,
            Some(What::Figure(_)) if i > at + 1 || page.is_watts(i) => {
                let f = page.figure(i).map_or(Unit::Other, |f| f.unit);
                let package = page.figure(i).is_some_and(|f| package_number(f.high).is_some());
                if !(f == Unit::Watt && page.figure(i).is_some_and(|f| f.high <= LARGEST_BEAD) || package) {
                    break;
                }
            }
            Some(What::Figure(_)) if page.figure(i).is_some_and(|f| package_number(f.high).is_some()) => {}
            Some(What::Mark(Mark::Dash)) if !page.breaks(i) => {}
            _ => break,
        }
        i += 1;
    }
    match (pieces, packaged) {
        (true, _) => After::Pieces,
        (false, true) => After::Diodes { total: false },
        _ => After::Nothing,
    }
}

/// Whether the singular "LED" at item `i` belongs to a word for a light: "225 LED panel", "1000 LED grow light".
fn of_a_light(page: Page, i: usize) -> bool {
    match page.role(i + 1) {
        Role::Light | Role::Lights | Role::Part | Role::Board | Role::Device => true,
        Role::Double => !matches!(page.role(i + 2), Role::Diode | Role::Chip),
        Role::None => {
            matches!(page.what(i + 1), Some(What::Word(_)))
                && (i + 2..i + 4).any(|k| matches!(page.role(k), Role::Light | Role::Lights | Role::Part))
        }
        _ => false,
    }
}

/// After a diode word at item `i`: per metre or per bar counts a part, "total" counts all.
fn diodes(page: Page, i: usize, pack: bool) -> After {
    for k in i + 1..i + 4 {
        match page.what(k) {
            Some(What::Word(Role::Per)) => {
                let part = matches!(page.role(k + 1), Role::Unit(_) | Role::Measured | Role::Board)
                    || page.role(k + 1) == Role::Part && !pack && !page.starts(k + 1, "panel");
                return if part { After::Elsewhere } else { After::Diodes { total: false } };
            }
            Some(What::Mark(Mark::Slash))
                if matches!(
                    page.role(k + 1),
                    Role::Unit(Unit::Metre | Unit::Length) | Role::Measured | Role::Part
                ) =>
            {
                return After::Elsewhere;
            }
            Some(What::Word(Role::Total)) => return After::Diodes { total: true },
            // "2 boards with 288 diodes each"
            Some(What::Word(Role::Each)) if !pack && page.cues.any(Role::Part.cue()) => {
                return After::Elsewhere;
            }
            Some(What::Word(_)) => {}
            _ => break,
        }
    }
    After::Diodes { total: false }
}

/// "10 rows of 12 LEDs", "12 modules each with 15": a count inside one part.
fn part_of_part(page: Page, at: usize, pack: bool) -> bool {
    at >= 2
        && matches!(page.role(at - 1), Role::Of | Role::With)
        && (matches!(page.role(at - 2), Role::Part | Role::Board)
            && page.figure(at.wrapping_sub(3)).is_some_and(|n| n.unit == Unit::Bare)
            || page.role(at - 2) == Role::Each && !pack)
}

/// "225 LED panel" under a headline in watts; round numbers may be a model's name.
fn doubtful_light(page: Page, f: &Figure) -> bool {
    let watts = page.figures.iter().any(|w| w.unit == Unit::Watt);
    let same = page.figures.iter().any(|w| w.unit == Unit::Watt && (w.high - f.high).abs() < 0.5);
    watts && !same && f.high >= FEWEST_PIECES && (f.high % 100.0 != 0.0 || f.high < 300.0)
}

fn nearby_colour(page: Page, at: usize) -> bool {
    (at.saturating_sub(4)..at).any(|i| matches!(page.role(i), Role::Colour(_)))
}

/// A plus or "and" at item `i` with another number after it: a sum of kinds, not the total.
fn joined(page: Page, i: usize) -> bool {
    (matches!(page.mark(i), Some(Mark::Plus | Mark::And)) || page.role(i) == Role::And)
        && page.figure(i + 1).is_some()
}

fn few(page: Page, at: usize) -> bool {
    page.figure(at).is_some_and(|n| n.high < FEWEST_PIECES)
}

/// "528 white LEDs & 16 red": another colour is added to the one before the diode word at item `i`.
fn adds_a_colour(page: Page, i: usize) -> bool {
    matches!(page.role_before(i), Role::Colour(_))
        && joined(page, i + 1)
        && matches!(page.role(i + 3), Role::Colour(_))
}

/// "12pcs red 660nm, 4pcs IR": the pieces of one colour among others.
fn one_of_several(page: Page, at: usize) -> bool {
    matches!(page.role(at + 2), Role::Colour(_))
        && !matches!(page.role(at + 3), Role::Diode | Role::Led | Role::Chip)
        && page.items.iter().filter(|i| i.what == What::Word(Role::Pieces)).count() > 1
}

/// "COB 4pcs + SMD 96pcs": a plus shortly before the number at item `at`.
fn added(page: Page, at: usize) -> bool {
    let mut i = at;
    while i > 0 && i + 3 > at && matches!(page.what(i - 1), Some(What::Word(_))) {
        i -= 1;
    }
    matches!(page.mark_before(i), Some(Mark::Plus))
}
