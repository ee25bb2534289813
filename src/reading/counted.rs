//! Whether a bare number counts diodes: by the words after it ("245 white diodes", "80 pcs"), or a label before it ("LED Qty:
//! 96").

use super::array::LARGEST_BEAD;
use super::class::{is_package, package_number};
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::hues::{class_of_pieces, ends_list, modifies};
use super::item::Letters;
use super::label::{label_before, may_be_labelled};
use super::listed::Listed;
use super::noun::{After, noun_after};
use super::page::Page;
use super::roles::{Role, Unit};
use crate::facts::ColourWord;

/// The fewest pieces without a diode word that are taken for diodes; fewer may be lights, fans or hooks.
pub(super) const FEWEST_PIECES: f64 = 12.0;

/// How sure a count is, by the words beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Rank {
    Pieces,
    Named,
    Total,
}

const COLOUR: Cues = Role::Colour(ColourWord::Red).cue();

/// Whether the bare number counts diodes, and how surely.
pub(super) fn counted(page: &Page, f: &Figure, pack: bool) -> Option<(Rank, bool)> {
    let at = usize::from(f.item);
    // One number without decimals is whole, unless it has so many digits that it is infinite.
    let (whole, small) = (!f.decimal && f.high.is_finite(), f.high < 1.0);
    let sign = page.sign_before(at);
    // Most numbers that count nothing show it by what stands beside them: a sign after them, and no label or cross before.
    let labelled = may_be_labelled(page, at);
    let (ended, crossed) = (ends(page, at), (sign == Mark::Times.bit()) & (at >= 2));
    let alone = ended && !(labelled | crossed);
    if !whole | f.range | f.list | small | alone {
        return None;
    }
    debug_assert!(f.high.fract() == 0.0, "{f:?}");
    let package = package_number(f.high).is_some() && !f.worded;
    // `3030 SMD x 480`, "LEDs*768"
    if crossed && (is_package(page, at - 2) && !joined(page, at + 1) || crossed_noun(page, at)) {
        return Some((Rank::Named, false));
    }
    // "COBs: 4", "COB: 4 pcs"
    if page.cues.any(Role::Cob.cue()) && page.role(at.wrapping_sub(2)) == Role::Cob && cob_row(page, at) {
        return Some((Rank::Named, true));
    }
    // "500+ LEDs"
    if page.mark(at + 1) == Some(Mark::Plus)
        && !page.spaced(at + 1)
        && page.role(at + 2) == Role::Diode
        && f.high >= FEWEST_PIECES
    {
        return Some((Rank::Named, false));
    }
    // "72+24 LEDs": one of two counts that only together are the light's.
    if sign == Mark::Plus.bit()
        && !page.spaced(at)
        && page.figure(at.wrapping_sub(2)).is_some_and(|n| n.unit == Unit::Bare && n.high >= FEWEST_PIECES)
    {
        return None;
    }
    if sign & (Mark::Hash.bit() | Mark::Times.bit() | Mark::Money.bit()) != 0 {
        return None;
    }
    let after = noun_after(page, at, pack);
    if after == After::Elsewhere || (package && after != After::Pieces) {
        return None;
    }
    let label =
        labelled & matches!(after, After::Nothing | After::Total | After::Pieces) && label_before(page, at);
    // Most numbers count nothing that is said before or after them.
    if after == After::Nothing && !label {
        const STARTS: u32 = Mark::bits(&[Mark::Comma, Mark::Open, Mark::Dash]);
        return (sign & STARTS != 0 && of_them(page, at)).then_some((Rank::Named, false));
    }
    if beside_or(page, at, sign) && one_of_two(page, at) {
        return None;
    }
    let after = if names_next(page, at + 2) { After::Pieces } else { after };
    let before = if at > 0 { page.plays(at - 1) } else { Cues::default() };
    let colour = before.any(COLOUR);
    // "40 red LEDs, 20 blue LEDs": the second of two colours.
    let second = sign & (Mark::Comma.bit() | Mark::Plus.bit() | Mark::And.bit()) != 0
        && at >= 3
        && page.plays(at + 1).any(COLOUR)
        && matches!(page.role(at - 2), Role::Diode)
        && page.plays(at - 3).any(COLOUR);
    // "red 64 + blue 16 + white 80 beads"
    let last = colour && ends_list(page, at - 1);
    if second || last || part_of_part(page, at, pack) {
        return None;
    }
    match after {
        After::Cob => return Some((Rank::Named, true)),
        After::Diodes { total: true } => return Some((Rank::Total, false)),
        // "totally 90 LED"
        After::Diodes { total: false } if page.role_before(at) == Role::Total => {
            return Some((Rank::Total, false));
        }
        After::Diodes { total: false } => return Some((Rank::Named, false)),
        After::Light => return doubtful_light(page, f).then_some((Rank::Named, false)),
        _ => {}
    }
    if label
        && !matches!(page.role(at + 1), Role::Colour(_) | Role::Letter(_))
        && page.mark(at + 1) != Some(Mark::Times)
        && !joined(page, at + 1)
    {
        return Some((Rank::Named, false));
    }
    // Most often nothing else follows that could be counted.
    if matches!(after, After::Total | After::Pieces) { pieces(page, f, after, colour) } else { None }
}

/// "80 pcs", "60 in total": things that a colour, a shade or another number beside them may show to be a part; `colour` if a
/// colour stands straight before the number.
fn pieces(page: &Page, f: &Figure, after: After, colour: bool) -> Option<(Rank, bool)> {
    let at = usize::from(f.item);
    let sign = page.sign_before(at);
    let colour = colour
        || sign == Mark::Colon.bit() && nearby_colour(page, at)
        // "B: 20pcs R: 60pcs"
        || sign & Mark::LABEL != 0
            && at >= 2
            && matches!(page.role(at - 2), Role::Letter(_));
    match after {
        After::Total
            if page.cues.any(Cues::of(&[Role::Diode, Role::Chip, Role::Led, Role::Pieces]))
                && f.high >= FEWEST_PIECES =>
        {
            Some((Rank::Total, false))
        }
        After::Pieces
            if page.figure(at + 2).is_some_and(|w| matches!(w.unit, Unit::Nanometre | Unit::Kelvin)) =>
        {
            None
        }
        After::Pieces if one_of_shades(page, at) => None,
        After::Pieces if added(page, at) || one_of_several(page, at) => None,
        After::Pieces if f.high >= FEWEST_PIECES && !colour && !(at + 2..at + 5).any(|k| joined(page, k)) => {
            Some((Rank::Pieces, false))
        }
        _ => None,
    }
}

/// "60 pcs LED 225 pcs": the diode word at item `i` is about the pieces after it.
fn names_next(page: &Page, i: usize) -> bool {
    page.role(i + 2) == Role::Pieces
        && page.role(i - 1) == Role::Pieces
        && matches!(page.role(i), Role::Led | Role::Diode | Role::Chip)
        && page.figure(i + 1).is_some_and(|n| n.unit == Unit::Bare)
}

/// Whether a stroke or a word such as "or" stands beside item `at`, with `sign` before it.
fn beside_or(page: &Page, at: usize, sign: u32) -> bool {
    (sign | page.sign(at + 1)) & Mark::Slash.bit() != 0
        || page.role_before(at) == Role::And
        || page.role(at + 1) == Role::And
}

/// "LEDs: 1296 / 2592", "240 or 480 LEDs": the number at item `at` is that of one of two lights.
#[inline(never)]
fn one_of_two(page: &Page, at: usize) -> bool {
    const OR: Listed<3> = Listed::of(["or", "oder", "ou"]);
    let count = |i: usize| {
        page.figure(i).is_some_and(|n| {
            let single = !(n.range | n.list | n.decimal) && package_number(n.high).is_none();
            n.unit == Unit::Bare && single && n.high >= FEWEST_PIECES
        })
    };
    let joins = |i: usize| page.mark(i) == Some(Mark::Slash) || page.is_one(i, &OR);
    // "Orvane 600 / 240 LEDs": a model's name.
    let named = |i: usize| matches!(page.what(i), Some(What::Word(Role::None) | What::Code));
    joins(at + 1) && count(at + 2) || at >= 2 && joins(at - 1) && count(at - 2) && !named(at.wrapping_sub(3))
}

/// German "of them", in one word.
const DAVON: Letters = Letters::of("davon");

/// "5W diodes, 80 of them", "3-Watt-Dioden, 100 davon": the number at item `at` counts the diodes of the phrase before it, which
/// have no number of their own; "300 diodes, 60 of them red" and "5W diodes, 20 of them red" count a part.
#[inline(never)]
fn of_them(page: &Page, at: usize) -> bool {
    const THEM: Listed<2> = Listed::of(["them", "these"]);
    if !(page.role(at + 1) == Role::Of && page.is_one(at + 2, &THEM) || page.is(at + 1, DAVON)) {
        return false;
    }
    let end = at + 2 + usize::from(page.role(at + 1) == Role::Of);
    let ends = end >= page.items.len() || page.breaks(end) || page.mark(end) == Some(Mark::Close);
    let Some(last) = at.checked_sub(2).filter(|_| ends) else { return false };
    let mut noun = false;
    for i in (last.saturating_sub(5)..=last).rev() {
        match page.what(i) {
            Some(What::Word(Role::Diode | Role::Chip)) => noun = true,
            Some(What::Word(_)) => {}
            Some(What::Mark(Mark::Dash)) if !page.breaks(i) => {}
            Some(What::Figure(_)) if page.figure(i).is_some_and(|w| w.unit != Unit::Bare) => {}
            Some(What::Figure(_)) => return false,
            _ => break,
        }
    }
    noun
}

/// Whether a sign straight after the number at item `at`, or the end of the text, ends what it counts.
pub(super) fn ends(page: &Page, at: usize) -> bool {
    const JOINS: u32 = Mark::Dash.bit() | Mark::Plus.bit();
    (page.sign(at + 1) & !JOINS != 0) | (at + 1 >= page.items.len())
}

/// "LEDs*768"
fn crossed_noun(page: &Page, at: usize) -> bool {
    page.mark_before(at) == Some(Mark::Times)
        && at >= 2
        && page.role(at - 2) == Role::Diode
        && !(at >= 3
            && (matches!(page.role(at - 3), Role::Colour(_))
                || page.figure(at - 3).is_some_and(|w| w.unit != Unit::Watt || w.high <= LARGEST_BEAD)))
        && (at + 1 == page.items.len() || page.breaks(at + 1))
        && !joined(page, at + 1)
}

/// "COBs: 4", "COB = 4 pcs": a row that ends with the number at item `at`, or with its pieces.
fn cob_row(page: &Page, at: usize) -> bool {
    let end = at + 1 + usize::from(page.role(at + 1) == Role::Pieces);
    matches!(page.mark_before(at), Some(Mark::Colon | Mark::Equal))
        && (end >= page.items.len() || page.breaks(end) && !joined(page, end))
}

/// "10 rows of 12 LEDs", "12 modules each with 15": a count inside one part.
fn part_of_part(page: &Page, at: usize, pack: bool) -> bool {
    at >= 2
        && matches!(page.role(at - 1), Role::Of | Role::With)
        && (matches!(page.role(at - 2), Role::Part | Role::Board)
            && page.figure(at.wrapping_sub(3)).is_some_and(|n| n.unit == Unit::Bare)
            || page.role(at - 2) == Role::Each && !pack)
}

/// "225 LED panel" under a headline in watts; round numbers may be a model's name.
fn doubtful_light(page: &Page, f: &Figure) -> bool {
    let watts = page.has_unit(&[Unit::Watt]);
    let same = page.watts().any(|(_, w)| (w.high - f.high).abs() < 0.5);
    watts && !same && f.high >= FEWEST_PIECES && (f.high % 100.0 != 0.0 || f.high < 300.0)
}

fn nearby_colour(page: &Page, at: usize) -> bool {
    (at.saturating_sub(4)..at).any(|i| matches!(page.role(i), Role::Colour(_)))
}

/// A plus or "and" at item `i` with another number after it: a sum of kinds, not the total.
pub(super) fn joined(page: &Page, i: usize) -> bool {
    (matches!(page.mark(i), Some(Mark::Plus | Mark::And)) || page.role(i) == Role::And)
        && page.figure(i + 1).is_some()
}

/// "12pcs red 660nm, 4pcs IR", "40 pcs deep red": the pieces of one colour among others.
pub(super) fn one_of_several(page: &Page, at: usize) -> bool {
    let colour = |pieces: usize| {
        let mut i = pieces + 1;
        // "84 pcs 0.5W red"
        i += usize::from(page.figure(i).is_some_and(|w| class_of_pieces(page, i, w)));
        i += usize::from(modifies(page, i));
        matches!(page.role(i), Role::Colour(_)).then_some(i)
    };
    let Some(own) = colour(at + 1).filter(|_| page.role(at + 1) == Role::Pieces) else { return false };
    let noun = matches!(page.role(own + 1), Role::Diode | Role::Led | Role::Chip);
    // "30 pcs red LEDs, 2 pcs hooks" has one colour.
    (0..page.items.len())
        .filter(|&i| page.role(i) == Role::Pieces && i != at + 1)
        .any(|i| !noun || colour(i).is_some())
}

/// "3000K 80pcs, 5000K 80pcs": the pieces of one shade among others.
fn one_of_shades(page: &Page, at: usize) -> bool {
    let shade = |f: &Figure| {
        matches!(f.unit, Unit::Nanometre | Unit::Kelvin)
            && page.figure(usize::from(f.item) + 1).is_some_and(|n| n.unit == Unit::Bare)
    };
    page.figure_before(at).is_some_and(shade) && page.figures.iter().filter(|f| shade(f)).count() > 1
}

/// "COB 4pcs + SMD 96pcs": a plus shortly before the number at item `at`.
fn added(page: &Page, at: usize) -> bool {
    let mut i = at;
    while i > 0 && i + 3 > at && matches!(page.what(i - 1), Some(What::Word(_))) {
        i -= 1;
    }
    matches!(page.mark_before(i), Some(Mark::Plus))
}
