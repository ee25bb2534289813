//! What the words after a number say it counts: diodes, COBs, pieces, or something that is no diode.

use super::array::{DIODE, LARGEST_BEAD, heads};
use super::by_colour::by_colour;
use super::class::package_number;
use super::counted::{FEWEST_PIECES, ends};
use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::roles::{Role, Unit};
use crate::facts::ColourWord;

#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum After {
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
pub(super) fn noun_after(page: &Page, at: usize, pack: bool) -> After {
    if ends(page, at) {
        return After::Nothing;
    }
    let (mut pieces, mut packaged) = (false, false);
    let mut others = 0;
    let mut i = at + 1;
    while i < at + 8 {
        let cue = page.plays(i);
        // The words that most numbers count come first, by their cues.
        if cue.any(DIODE) {
            // "2 unidades tubo LED": a few pieces of something that is LED.
            let other_pieces = pieces && others > 0 && few(page, at);
            return diode_word(page, at, i, (pieces, other_pieces), pack);
        }
        if cue.any(Role::Pieces.cue()) && i == at + 1 {
            pieces = true;
            i += 1;
            continue;
        }
        match page.what(i) {
            Some(What::Word(role)) => match role {
                Role::Cob => {
                    return if matches!(page.role(i + 1), Role::Led | Role::Light) && !pieces {
                        After::Light
                    } else {
                        After::Cob
                    };
                }
                _ if i == at + 1 && of_number(page, i).is_some() => {
                    return of_number(page, i).unwrap_or(After::Nothing);
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
                    if one_of_a_list(page, at, i) {
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
                Role::Light | Role::Part if before_noun(page, i) => {}
                // "80 bulbs (LEDs)"
                Role::Light | Role::Lights if explained(page, i) => return diodes(page, i + 2, pack),
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
            // "468 LM281B+ diodes"
            Some(What::Mark(Mark::Plus)) if page.what(i - 1) == Some(What::Code) && !page.spaced(i) => {}
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

/// What the diode word at item `i` says of the number at item `at`; `pieces` stand between them, and perhaps some of
/// something `other`.
fn diode_word(page: &Page, at: usize, i: usize, (pieces, other): (bool, bool), pack: bool) -> After {
    if no_total(page, at, i) {
        return After::Elsewhere;
    }
    if page.role(i) == Role::Led {
        if !pieces && of_a_light(page, i) {
            return After::Light;
        }
        if other {
            return After::Elsewhere;
        }
    }
    diodes(page, i, pack)
}

/// Whether the number at item `at` counts one colour of a list, that at item `i`.
fn one_of_a_list(page: &Page, at: usize, i: usize) -> bool {
    // "768 white and 48 red LEDs": the last of them.
    let listed = matches!(page.mark_before(at), Some(Mark::Plus | Mark::And | Mark::Comma))
        || page.role_before(at) == Role::And;
    listed && at >= 2 && matches!(page.role(at - 2), Role::Colour(_))
        || page.mark(i + 1) == Some(Mark::Slash)
        || page.role(i + 1) == Role::And
}

/// "90 in total", "100 in number", "200 count": straight after the number.
fn of_number(page: &Page, i: usize) -> Option<After> {
    match (page.role(i), page.role(i + 1)) {
        (Role::Unit(Unit::Length), Role::Total | Role::All) => Some(After::Total),
        (Role::Unit(Unit::Length), Role::Quantity) | (Role::Quantity, _) => Some(After::Pieces),
        _ => None,
    }
}

/// Whether the singular "LED" at item `i` belongs to a word for a light: "225 LED panel", "1000 LED grow light".
fn of_a_light(page: &Page, mut i: usize) -> bool {
    // German "zwei LED-Leuchten"
    i += usize::from(page.mark(i + 1) == Some(Mark::Dash) && !page.breaks(i + 1));
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
fn diodes(page: &Page, i: usize, pack: bool) -> After {
    for k in i + 1..i + 4 {
        match page.what(k) {
            Some(What::Word(Role::Per)) => {
                let part = matches!(page.role(k + 1), Role::Unit(_) | Role::Measured | Role::Board)
                    || page.role(k + 1) == Role::Part
                        && !pack
                        && !page.starts(k + 1, const { Letters::of("panel") });
                return if part { After::Elsewhere } else { After::Diodes { total: false } };
            }
            Some(What::Mark(Mark::Slash))
                if matches!(page.role(k + 1), Role::Unit(Unit::Metre | Unit::Length) | Role::Measured)
                    || page.role(k + 1) == Role::Part && !(pack && heads(page).is_none()) =>
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

/// "lamp beads", "modules COB": a word at item `i` that goes with the diode word after it.
fn before_noun(page: &Page, i: usize) -> bool {
    matches!(
        (page.role(i), page.role(i + 1)),
        (Role::Light, Role::Diode | Role::Chip) | (Role::Part, Role::Cob)
    )
}

fn few(page: &Page, at: usize) -> bool {
    page.figure(at).is_some_and(|n| n.high < FEWEST_PIECES)
}

/// Whether the number at item `at` with the diode word at item `i` counts one colour of several, or lights.
fn no_total(page: &Page, at: usize, i: usize) -> bool {
    if page.role(i) == Role::Led && sold(page, i) {
        return true;
    }
    page.cues.any(Role::Colour(ColourWord::Red).cue()) && by_colour(page, at, i)
}

/// "24 LED bulbs", "15 LED-Lampen", "12 LED grow lights": things to buy; "225 LED lights" may be diodes.
fn sold(page: &Page, i: usize) -> bool {
    let dash = usize::from(page.mark(i + 1) == Some(Mark::Dash) && !page.breaks(i + 1));
    let mut k = i + 1 + dash;
    while k < i + 4 && page.role(k) == Role::None && matches!(page.what(k), Some(What::Word(_))) {
        k += 1;
    }
    page.role(k) == Role::Lights && (k > i + 1 || !page.is(k, const { Letters::of("lights") }))
}

/// "bulbs (LEDs)": brackets after the word at item `i` say that it means diodes.
fn explained(page: &Page, i: usize) -> bool {
    page.mark(i + 1) == Some(Mark::Open)
        && matches!(page.role(i + 2), Role::Diode | Role::Chip)
        && page.mark(i + 3) == Some(Mark::Close)
}
