//! What each figure of watts says, by the words on both sides of it. The order of the rules is the argument: a figure that
//! another device, a denial or a comparison owns is never looked at as the light's.

use super::admitted::{asked_or_on, at_level, is_product, named_light, under_voltage};
use super::array::{Arrays, Of, denied, heads};
use super::beside::Beside;
use super::class::class;
use super::compared::equivalent;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::foreign::{denied_before, dimension, draws_elsewhere, foreign};
use super::item::Letters;
use super::letters::{LETTER, white_letter};
use super::listed::Listed;
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
pub(super) fn classify(page: Page, arrays: &Arrays, pack: Option<u32>) -> All {
    let mut all = All::nothing(page.figures.len());
    for (index, f) in page.bare() {
        all.set(index, unitless(page, f, arrays, index));
    }
    // What the watts of an array say, unless a denial or another seller owns them.
    for array in arrays {
        all.set(array.watts, of_array(array.of));
    }
    let mut last = None;
    for (index, f) in page.watts() {
        let before = Before { all: &all[..index], last };
        let says = watts(page, f, arrays, pack, &before, all[index]);
        all.set(index, says);
        last = Some(index);
    }
    partial::leave(page, pack, &mut all);
    steps::leave(page, pack, &mut all);
    all
}

/// What the figures before a figure of watts say.
struct Before<'a> {
    all: &'a [Says],
    /// The last of them that is one of watts.
    last: Option<usize>,
}

/// What the watts of an array say.
const fn of_array(of: Of) -> Says {
    match of {
        Of::Diodes | Of::Cobs => Says::Class,
        Of::Parts => Says::Left(LeftWhy::Part),
        Of::Lights => Says::EachLight,
        Of::Device => Says::Left(LeftWhy::OtherDevice),
        Of::Replaced => Says::Equivalent,
    }
}

/// What a figure of watts says; `in_array` is what it says as the watts of an array.
fn watts(
    page: Page,
    f: &Figure,
    arrays: &Arrays,
    pack: Option<u32>,
    before: &Before,
    in_array: Says,
) -> Says {
    let at = usize::from(f.item);
    let beside = &Beside::of(page, at);
    if page.cues.any(LETTER) && white_letter(page, at) || dimension(page, beside) {
        return Says::Left(LeftWhy::Dimension);
    }
    // "15W per tube" in a pack of tubes.
    let of_a_light = f.per && pack.is_some() && page.role(at + 2) == Role::Part;
    if f.per && !of_a_light {
        let part = matches!(page.role(at + 2), Role::Part | Role::Board);
        return Says::Left(if part { LeftWhy::Part } else { LeftWhy::PerArea });
    }
    if page.cues.any(Role::Deny.cue()) && (denied_before(page, at) || denied(page, at)) {
        return Says::Left(LeftWhy::Denied);
    }
    if let Some(why) = rival(page, beside, f.high) {
        return Says::Left(why);
    }
    if in_array != Says::Nothing {
        return in_array;
    }
    let (left, right) = (page.left(at), page.right(at));
    if let Some(why) = foreign(page, beside, (left.cues, left.near), (right.cues, right.near)) {
        return Says::Left(why);
    }
    if equivalent(page, beside, left.cues) {
        return Says::Equivalent;
    }
    // "6 pcs 3W LED chips 18W": what they make together.
    let together = || arrays.iter().any(|a| a.of == Of::Diodes && is_product(page, &[*a], f.high));
    if class(page, f, beside, pack, &left, &right) && !together() {
        return Says::Class;
    }
    let selected = Role::Selected.cue();
    if left.near.and(right.near).any(selected) {
        let one = !(beside.followed_by(Mark::Slash) && page.is_watts(at + 2));
        let before = left.near.any(selected) && beside.before.mark == Some(Mark::Colon);
        let after = right.near.any(selected) && beside.followed_by(Mark::Open);
        if one && (before || after) {
            return Says::Selected;
        }
    }
    draw(page, f, beside, pack, before, (&left, &right))
}

/// A draw, a level, a nameplate value or an unqualified figure.
fn draw(
    page: Page,
    f: &Figure,
    beside: &Beside,
    pack: Option<u32>,
    before: &Before,
    (left, right): (&Phrase, &Phrase),
) -> Says {
    let at = beside.at;
    if beside.followed_by(Mark::Question) && left.cues.any(DRAW) {
        return Says::Left(LeftWhy::Rhetoric);
    }
    if left.cues.any(Role::DrawVerb.cue()) && page.cues.any(LAMP) && draws_elsewhere(page, at) {
        return Says::Left(LeftWhy::OtherDevice);
    }
    if page.cues.any(Role::DrawNoun.cue()) {
        if named_light(page, at) {
            return Says::Bare;
        }
        if before.last.is_some_and(|k| named_light(page, usize::from(page.figures[k].item))) {
            return Says::Draw(3);
        }
    }
    if right.cues.any(DRAW) || left.cues.any(DRAW) && !claimed(page, at) {
        let label = left.cues.any(Cues::of(&[Role::DrawAdjective, Role::DrawNoun, Role::Input]));
        return Says::Draw(2 + u8::from(label));
    }
    let only = Role::Only.cue();
    // Dutch "geen 1000 watt, maar 100 watt": after a denial the word is "but".
    let but = || {
        beside.before.is(const { Letters::of("maar") })
            && before.all.iter().rev().find(|s| **s != Says::Nothing) == Some(&Says::Left(LeftWhy::Denied))
    };
    if right.near.any(only) || left.near.any(only) && !but() {
        return Says::Draw(2);
    }
    if goes_on(page, at, before) && !claimed(page, at) {
        return before
            .all
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
    let per_light = || {
        beside.followed_by(Mark::Slash)
            && matches!(beside.second.role, Role::Each | Role::Pieces | Role::Light)
    };
    if pack.is_some()
        && (f.per
            || per_light()
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
    let of_a_total = || {
        left.near.any(each) && left.cues.any(Role::Part.cue())
            || pack.is_none()
                && page
                    .first_right(at, Cues::of(&[Role::Per, Role::Light, Role::Part]), 1)
                    .any(Role::Part.cue())
    };
    if right.near.any(each) && parts() || page.cues.any(Role::Total.cue()) && of_a_total() {
        return Says::Left(LeftWhy::Part);
    }
    if beside.next_is(Role::Per) && matches!(beside.second.role, Role::Part | Role::Board) {
        return if pack.is_some() { Says::EachLight } else { Says::Left(LeftWhy::Part) };
    }
    if left.near.any(Role::Total.cue()) || right.cues.any(Role::Total.cue()) {
        return Says::Total;
    }
    if (page.cues.any(Role::Level.cue()) | page.has_unit(&[Unit::Percent])) && level(page, at)
        || one_of_two(page, beside) && before.higher(page, f)
    {
        return Says::Level;
    }
    if left.cues.any(Cues::of(&[Role::Power, Role::Rating])) || f.tolerance.is_some() {
        return Says::Nameplate;
    }
    Says::Bare
}

impl Before<'_> {
    /// Whether one of them is a higher claim.
    fn higher(&self, page: Page, f: &Figure) -> bool {
        let claim = |says: &Says| matches!(says, Says::Bare | Says::Nameplate);
        self.all.iter().zip(page.figures).any(|(says, other)| claim(says) && other.high > f.high)
    }
}

/// "both on 180W", but not "for seedlings 100W"
fn level(page: Page, at: usize) -> bool {
    let position = at - usize::from(page.role_before(at) == Role::At);
    page.role_before(position) == Role::Level && page.role_before(position - 1) != Role::For
        || page.figure_before(at).is_some_and(|p| p.unit == Unit::Percent)
        || (matches!(page.mark_before(at), Some(Mark::Colon | Mark::Equal))
            && at >= 2
            && (page.role(at - 2) == Role::Level
                || page.figure(at - 2).is_some_and(|p| p.unit == Unit::Percent)))
}

/// "560W @220V", "180W at full": of a light with a higher figure, one of its two.
fn one_of_two(page: Page, beside: &Beside) -> bool {
    beside.followed_by(Mark::At)
        && page.figure(beside.at + 2).is_some_and(|v| matches!(v.unit, Unit::Volt | Unit::VoltAc))
        || beside.next_is(Role::At) && beside.second.role == Role::Level
}

/// "we tested it: 1000W label, 178W on the meter"
fn claimed(page: Page, at: usize) -> bool {
    let claim = |i: usize| page.role(i) == Role::Rating && page.begins(i, &CLAIMED);
    let colon = usize::from(page.mark_before(at) == Some(Mark::Colon));
    claim(at + 1) || at > colon && claim(at - 1 - colon)
}

/// How words for what is printed on a light begin.
const CLAIMED: Listed<6> = Listed::of(["claim", "label", "adverti", "namepl", "sticker", "stated"]);

/// "and" where it is a single letter, which the vocabulary has for something else.
const AND: [Letters; 3] = Letters::all(["y", "e", "i"]);

/// Whether the figure carries on a list of draws: "588W (110V), 570W (220V)", "50% 98W, 100% 196W", "110W/60W".
fn goes_on(page: Page, at: usize, before: &Before) -> bool {
    let Some(last) = before.last else { return false };
    if !matches!(before.all[last], Says::Draw(_)) {
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
