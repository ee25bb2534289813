//! What each figure of watts says, by the words on both sides of it. The order of the rules is the argument: a figure that
//! another device, a denial or a comparison owns is never looked at as the light's.

use smallvec::SmallVec;

use super::admitted::{asked_or_on, at_level, is_product, named_light, under_voltage};
use super::array::{Arrays, LARGEST_BEAD, Of, denied, heads};
use super::class::class;
use super::compared::equivalent;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::foreign::{denied_before, dimension, draws_elsewhere, foreign};
use super::item::Letters;
use super::letters::white_letter;
use super::page::Page;
use super::partial;
use super::phrase::{DRAW, Phrase};
use super::rival::rival;
use super::roles::{Cues, Role, Unit};
use super::says::{All, Says};
use super::steps;
use super::unitless::unitless;
use crate::facts::{LampKind, LeftWhy};

pub(super) const LAMP: Cues = Cues::of(&[Role::Lamp(LampKind::Hps)]);
pub(super) const BEAD: Cues = Cues::of(&[Role::Diode, Role::Chip]);
pub(super) const THING: Cues = Cues::of(&[Role::Light, Role::Lights, Role::Led]);

/// Says of every figure what it says, in the order of the figures.
pub(super) fn classify(page: Page, arrays: &Arrays, pack: Option<u32>) -> SmallVec<[Says; 24]> {
    let mut all = SmallVec::with_capacity(page.figures.len());
    for (index, f) in page.figures.iter().enumerate() {
        let says = match f.unit {
            Unit::Watt => watts(page, f, index, arrays, pack, &all),
            Unit::Bare => unitless(page, f, arrays, index),
            _ => Says::Nothing,
        };
        all.push(says);
    }
    partial::leave(page, pack, &mut all);
    steps::leave(page, pack, &mut all);
    all
}

fn watts(page: Page, f: &Figure, index: usize, arrays: &Arrays, pack: Option<u32>, before: &All) -> Says {
    let at = usize::from(f.item);
    if white_letter(page, at) || dimension(page, at) {
        return Says::Left(LeftWhy::Dimension);
    }
    // "15W per tube" in a pack of tubes.
    let of_a_light = f.per && pack.is_some() && page.role(at + 2) == Role::Part;
    if f.per && !of_a_light {
        let part = matches!(page.role(at + 2), Role::Part | Role::Board);
        return Says::Left(if part { LeftWhy::Part } else { LeftWhy::PerArea });
    }
    if page.cues.any(Role::Deny.cue()) && denied_before(page, at) || denied(page, at) {
        return Says::Left(LeftWhy::Denied);
    }
    if let Some(why) = rival(page, at) {
        return Says::Left(why);
    }
    if let Some(array) = arrays.iter().find(|a| a.watts == index) {
        return match array.of {
            Of::Diodes | Of::Cobs => Says::Class,
            Of::Parts => Says::Left(LeftWhy::Part),
            Of::Lights => Says::EachLight,
            Of::Device => Says::Left(LeftWhy::OtherDevice),
            Of::Replaced => Says::Equivalent,
        };
    }
    let (left, right) = (page.left(at), page.right(at));
    if let Some(why) = foreign(page, at, left.cues, left.near, right.cues, right.near) {
        return Says::Left(why);
    }
    if equivalent(page, at, left.cues, right.near) {
        return Says::Equivalent;
    }
    // "old 3W chips are no longer fitted": the diodes of other lights.
    if page.cues.any(Role::Traditional.cue())
        && page.role_before(at) == Role::Traditional
        && f.high <= LARGEST_BEAD
        && page.first_right(at, BEAD.and(THING), 3).any(BEAD)
    {
        return Says::Left(LeftWhy::OtherLight);
    }
    // "6 pcs 3W LED chips 18W": what they make together.
    let together = arrays.iter().any(|a| a.of == Of::Diodes && is_product(page, &[*a], f.high));
    if !together && class(page, f, at, pack, &left, &right) {
        return Says::Class;
    }
    let one = !(page.mark(at + 1) == Some(Mark::Slash) && page.is_watts(at + 2));
    if one && page.mark(at + 1) == Some(Mark::Open) && right.near.any(Role::Selected.cue()) {
        return Says::Selected;
    }
    // "Selected: 2ft 10W", but not "power draw of this size: 318W"
    let sized = || usize::from(page.figure_before(at).is_some_and(|l| l.unit == Unit::Length));
    if one
        && left.near.any(Role::Selected.cue())
        && page.mark_before(at - sized()) == Some(Mark::Colon)
        && !left.cues.any(DRAW)
    {
        return Says::Selected;
    }
    draw(page, f, at, pack, before, (&left, &right))
}

/// A draw, a level, a nameplate value or an unqualified figure.
fn draw(
    page: Page,
    f: &Figure,
    at: usize,
    pack: Option<u32>,
    before: &All,
    (left, right): (&Phrase, &Phrase),
) -> Says {
    let index = before.len();
    if page.mark(at + 1) == Some(Mark::Question) && left.cues.any(DRAW) {
        return Says::Left(LeftWhy::Rhetoric);
    }
    if left.cues.any(Role::DrawVerb.cue()) && draws_elsewhere(page, at) {
        return Says::Left(LeftWhy::OtherDevice);
    }
    if page.cues.any(Role::DrawNoun.cue()) {
        if named_light(page, at) {
            return Says::Bare;
        }
        if last_watts(page, index).is_some_and(|k| named_light(page, usize::from(page.figures[k].item))) {
            return Says::Draw(3);
        }
    }
    // "we tested it: 1000W label, 178W on the meter"
    let claim = |i: usize| page.role(i) == Role::Rating && CLAIMED.iter().any(|&w| page.starts(i, w));
    let colon = usize::from(page.mark_before(at) == Some(Mark::Colon));
    let claimed = claim(at + 1) || at > colon && claim(at - 1 - colon);
    if left.cues.any(DRAW) && !claimed || right.cues.any(DRAW) {
        let label = left.cues.any(Cues::of(&[Role::DrawAdjective, Role::DrawNoun, Role::Input]));
        return Says::Draw(2 + u8::from(label));
    }
    let only = Role::Only.cue();
    // Dutch "geen 1000 watt, maar 100 watt": after a denial the word is "but".
    let but = page.is(at.wrapping_sub(1), const { Letters::of("maar") })
        && before.iter().rev().find(|s| **s != Says::Nothing) == Some(&Says::Left(LeftWhy::Denied));
    if (left.near.any(only) && !but) || right.near.any(only) {
        return Says::Draw(2);
    }
    if !claimed && goes_on(page, at, before, index) {
        return before[..index]
            .iter()
            .rev()
            .find(|s| matches!(s, Says::Draw(_)))
            .copied()
            .unwrap_or(Says::Draw(2));
    }
    if asked_or_on(page, at) {
        return Says::Draw(3);
    }
    let each = Role::Each.cue();
    // "two 150W boards in each"
    if page.cues.any(each)
        && matches!(page.role(at + 1), Role::Part | Role::Board)
        && page.role(at + 2) == Role::Unit(Unit::Length)
        && page.role(at + 3) == Role::Each
    {
        return Says::Left(LeftWhy::Part);
    }
    let per_light = page.mark(at + 1) == Some(Mark::Slash)
        && matches!(page.role(at + 2), Role::Each | Role::Pieces | Role::Light);
    if pack.is_some()
        && (f.per
            || per_light
            || left.near.any(each)
            || right.near.any(each)
            || right.cues.any(each) && !right.cues.any(BEAD))
    {
        return Says::EachLight;
    }
    let parts = || {
        heads(page).is_some_and(|n| n > 1.0)
            || page.figures.iter().filter(|w| w.unit == Unit::Watt).count() > 1
    };
    if right.near.any(each) && parts()
        || left.near.any(each) && left.cues.any(Role::Part.cue()) && page.cues.any(Role::Total.cue())
        || pack.is_none()
            && page.cues.any(Role::Total.cue())
            && page.first_right(at, Cues::of(&[Role::Per, Role::Light, Role::Part]), 1).any(Role::Part.cue())
            && !counts_total(page)
    {
        return Says::Left(LeftWhy::Part);
    }
    if page.role(at + 1) == Role::Per && matches!(page.role(at + 2), Role::Part | Role::Board) {
        return if pack.is_some() { Says::EachLight } else { Says::Left(LeftWhy::Part) };
    }
    if left.near.any(Role::Total.cue()) || right.cues.any(Role::Total.cue()) {
        return Says::Total;
    }
    // "both on 180W", but not "for seedlings 100W"
    let position = at - usize::from(page.role_before(at) == Role::At);
    let level = page.role_before(position) == Role::Level && page.role_before(position - 1) != Role::For
        || page.figure_before(at).is_some_and(|p| p.unit == Unit::Percent)
        || (matches!(page.mark_before(at), Some(Mark::Colon | Mark::Equal))
            && at >= 2
            && (page.role(at - 2) == Role::Level
                || page.figure(at - 2).is_some_and(|p| p.unit == Unit::Percent)));
    let higher = || {
        (0..index).any(|k| matches!(before[k], Says::Bare | Says::Nameplate) && page.figures[k].high > f.high)
    };
    let under_voltage = page.mark(at + 1) == Some(Mark::At)
        && page.figure(at + 2).is_some_and(|v| matches!(v.unit, Unit::Volt | Unit::VoltAc))
        && higher();
    let at_full = page.role(at + 1) == Role::At && page.role(at + 2) == Role::Level && higher();
    if level || under_voltage || at_full {
        return Says::Level;
    }
    if left.cues.any(Cues::of(&[Role::Power, Role::Rating])) || f.tolerance.is_some() {
        return Says::Nameplate;
    }
    Says::Bare
}

/// The last figure of watts before figure `index`.
fn last_watts(page: Page, index: usize) -> Option<usize> {
    page.figures[..index].iter().rposition(|f| f.unit == Unit::Watt)
}

/// "LEDs total 248": the one total of the page is a number of diodes.
fn counts_total(page: Page) -> bool {
    let mut totals = (0..page.items.len()).filter(|&i| page.role(i) == Role::Total);
    let (Some(i), None) = (totals.next(), totals.next()) else { return false };
    let sign = usize::from(matches!(page.mark(i + 1), Some(Mark::Colon | Mark::Equal)));
    i > 0
        && matches!(page.role(i - 1), Role::Diode | Role::Led | Role::Chip)
        && page.figure(i + 1 + sign).is_some_and(|n| n.unit == Unit::Bare)
}

/// How words for what is printed on a light begin.
const CLAIMED: [Letters; 6] = Letters::all(["claim", "label", "adverti", "namepl", "sticker", "stated"]);

/// "and" where it is a single letter, which the vocabulary has for something else.
const AND: [Letters; 3] = Letters::all(["y", "e", "i"]);

/// Whether the figure carries on a list of draws: "588W (110V), 570W (220V)", "50% 98W, 100% 196W", "110W/60W".
fn goes_on(page: Page, at: usize, before: &All, index: usize) -> bool {
    let Some(last) = last_watts(page, index) else { return false };
    if !matches!(before[last], Says::Draw(_)) {
        return false;
    }
    let from = usize::from(page.figures[last].item);
    let (mut volts, mut level, mut plain) = (false, false, true);
    for i in from + 1..at {
        match page.items[i].what {
            What::Word(Role::Level | Role::And | Role::At | Role::Ac | Role::For) => {
                level |= page.role(i) == Role::Level;
            }
            // "192W a 110V y 185W a 220V"
            What::Word(_) if volts && AND.iter().any(|&w| page.is(i, w)) => {}
            What::Word(_) if page.may_be(i, Role::At.cue()) => {}
            What::Figure(_) => match page.figure(i).map(|f| f.unit) {
                Some(Unit::Volt | Unit::VoltAc) => volts = true,
                Some(Unit::Percent) => level = true,
                _ => return false,
            },
            // "50%: 98W", a line each.
            What::Mark(Mark::Line) if under_voltage(page, at) || at_level(page, at) => plain = false,
            What::Mark(Mark::Line | Mark::Stop) => return false,
            What::Mark(Mark::Slash) => {}
            What::Mark(_) => plain = false,
            _ => return false,
        }
    }
    volts || level || plain
}
