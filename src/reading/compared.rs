//! Whether watts are those of a lamp that the light is compared with: "replaces 600W", "600W equivalent", "400W HPS slayer".

use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::phrase::DRAW;
use super::roles::{Cues, Role, Unit};
use super::watts::{LAMP, THING};

/// Words after which the replaced lamp comes.
const CLAIM: Cues = Cues::of(&[Role::Replaces, Role::Versus]);

pub(super) const EQUAL: Cues = Cues::of(&[Role::Equivalent, Role::Replacement]);

/// Whether the watts are those of a lamp that the light is compared with.
pub(super) fn equivalent(page: Page, at: usize, left: Cues, next: Cues) -> bool {
    if left.any(CLAIM.and(Role::Equivalent.cue())) {
        return true;
    }
    if page.role_before(at) == Role::Replacement && page.mark_before(at) == Some(Mark::Colon)
        || left.any(Role::Replacement.cue())
            && (page.role_before(at) == Role::For || page.mark_before(at) == Some(Mark::Colon))
    {
        return true;
    }
    if before_another_lamp(page, at, left) {
        return false;
    }
    if lamp_leads(page, at) {
        return true;
    }
    if next.any(Role::Metal.cue()) || matches!(page.role(at + 1), Role::Lamp(_)) {
        return true;
    }
    let double_ended = page.role(at + 1) == Role::DoubleEnded
        && page.is(at + 1, const { Letters::of("de") })
        && page.capitals(at + 1)
        && matches!(page.role(at + 2), Role::Lamp(_) | Role::Light | Role::Lights);
    let word = at + 1 + usize::from(page.mark(at + 1) == Some(Mark::Open));
    let smaller = matches!(page.role(word), Role::Equivalent | Role::Replacement)
        && page
            .compared_with(word)
            .is_some_and(|lamp| page.figure(at).is_some_and(|own| own.high < lamp.high));
    if smaller {
        return false;
    }
    // "100W (not equivalent)": the denial comes first.
    let ends = THING.and(DRAW).and(CLAIM).and(Role::Deny.cue());
    double_ended
        || page.cues.any(EQUAL.and(LAMP))
            && page.first_right(at, EQUAL.and(LAMP).and(ends), 3).any(EQUAL.and(LAMP))
        || spelled_lamp(page, at)
}

/// "draws 110W HPS 400W equivalent": the lamp straight after the draw has watts of its own.
fn before_another_lamp(page: Page, at: usize, left: Cues) -> bool {
    matches!(page.role(at + 1), Role::Lamp(_))
        && page.is_watts(at + 2)
        && (left.any(DRAW.and(Role::Power.cue())) || matches!(page.role(at + 3), Role::Equivalent))
}

/// "replaces 2 HPS lamps of 600 W", "than an HPS 400W": the lamp, and before it the word that compares.
fn lamp_leads(page: Page, at: usize) -> bool {
    if !page.cues.any(LAMP) || matches!(page.role(at + 1), Role::Led) {
        return false;
    }
    let Some(mut i) = at.checked_sub(1) else { return false };
    if matches!(page.role(i), Role::Of | Role::DoubleEnded | Role::At) {
        i = i.saturating_sub(1);
    }
    if !matches!(page.role(i), Role::Lamp(_)) {
        return false;
    }
    (i.saturating_sub(5)..i).rev().find_map(|k| match page.what(k) {
        Some(What::Word(_)) if page.may_be(k, CLAIM) => Some(true),
        Some(What::Figure(_)) if page.is_watts(k) => Some(false),
        Some(What::Word(_) | What::Figure(_) | What::Mark(Mark::Foot | Mark::Times)) => None,
        _ => Some(false),
    }) == Some(true)
}

/// What sellers call their own lights.
pub(super) const OUR: [Letters; 9] =
    Letters::all(["our", "unser", "unsere", "notre", "nuestra", "nuestro", "ons", "onze", "nostro"]);

/// "less heat than our V-6 330W": a comparison with another light of the seller.
pub(super) fn with_own(page: Page, at: usize) -> bool {
    page.cues.any(Role::Versus.cue())
        && !matches!(page.role(at + 1), Role::Lamp(_))
        && (at.saturating_sub(4).max(1)..at)
            .any(|i| OUR.iter().any(|&w| page.is(i, w)) && page.role(i - 1) == Role::Versus)
}

/// "600W lamp equivalent", "60W light bulb equivalent", "1000W double-ended HPS", "30W = 250W".
fn spelled_lamp(page: Page, at: usize) -> bool {
    let mut i = at + 1;
    while matches!(page.role(i), Role::Light | Role::Double | Role::Traditional | Role::Tube)
        || page.mark(i) == Some(Mark::Dash) && !page.breaks(i)
    {
        i += 1;
    }
    if page.is(i, const { Letters::of("ended") }) {
        i += 1;
    }
    if i > at + 1 && matches!(page.role(i), Role::Equivalent | Role::Replacement | Role::Lamp(_)) {
        return true;
    }
    // A larger figure straight after "=" or "≈" and the light's own.
    let sign = matches!(page.mark_before(at), Some(Mark::Equal | Mark::Current));
    let open = usize::from(at >= 2 && page.mark(at - 2) == Some(Mark::Open));
    sign && at >= 2 + open
        && page.figure(at - 2 - open).is_some_and(|own| {
            own.unit == Unit::Watt
                && page.figure(at).is_some_and(|f| f.high > own.high)
                && page.mark_before(at - 2 - open) != Some(Mark::Times)
        })
}
