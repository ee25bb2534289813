//! Whether watts are those of a lamp that the light is compared with: "replaces 600W", "600W equivalent", "400W HPS slayer".

use super::beside::Beside;
use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::listed::Listed;
use super::page::Page;
use super::phrase::DRAW;
use super::roles::{Role, Unit};
use super::watts::{LAMP, THING};

/// Words after which the replaced lamp comes.
const CLAIM: Cues = Cues::of(&[Role::Replaces, Role::Versus]);

pub(super) const EQUAL: Cues = Cues::of(&[Role::Equivalent, Role::Replacement]);

/// Whether the watts are those of a lamp that the light is compared with.
pub(super) fn equivalent(page: &Page, beside: &Beside, left: Cues) -> bool {
    if left.any(CLAIM.and(Role::Equivalent.cue())) {
        return true;
    }
    if page.cues.any(EQUAL.and(LAMP)) {
        beside_words(page, beside, left)
    } else {
        double_ended(page, beside) || above_own(page, beside)
    }
}

/// The same on a page with a word for a lamp of another kind or for a comparison, which may stand on either side.
#[inline(never)]
fn beside_words(page: &Page, beside: &Beside, left: Cues) -> bool {
    let at = beside.at;
    if left.any(Role::Replacement.cue())
        && (beside.before.role == Role::For || beside.before.mark == Some(Mark::Colon))
    {
        return true;
    }
    if beside.before_a_lamp() && before_another_lamp(page, at, left) {
        return false;
    }
    if beside.before_a_lamp() || lamp_leads(page, at) {
        return true;
    }
    let word = at + 1 + usize::from(beside.followed_by(Mark::Open));
    let smaller = matches!(page.role(word), Role::Equivalent | Role::Replacement)
        && page
            .compared_with(word)
            .is_some_and(|lamp| page.figure(at).is_some_and(|own| own.high < lamp.high));
    if smaller {
        return false;
    }
    // "100W (not equivalent)": the denial comes first.
    let ends = THING.and(DRAW).and(CLAIM).and(Role::Deny.cue());
    stopped(page, at)
        || double_ended(page, beside)
        || page.first_right(at, EQUAL.and(LAMP).and(ends), 3).any(EQUAL.and(LAMP))
        || spelled_lamp(page, at)
        || above_own(page, beside)
}

/// "Stop burning 400 watts: your MH lamp", "quit paying for 600W": what the lamp takes that a reader should give up.
#[inline(never)]
fn stopped(page: &Page, at: usize) -> bool {
    const STOP: Listed<3> = Listed::of(["stop", "quit", "schluss"]);
    const WASTE: Listed<7> = Listed::of(["burn", "wast", "pay", "feed", "using", "run", "mit"]);
    page.cues.any(LAMP)
        && (1..=4)
            .take_while(|&d| at >= d && matches!(page.what(at - d), Some(What::Word(_))))
            .any(|d| page.is_one(at - d, &STOP) && page.begins(at - d + 1, &WASTE))
}

/// "1000W DE HPS", "600W DE light": sodium lamps with a cap at both ends.
fn double_ended(page: &Page, beside: &Beside) -> bool {
    beside.next_is(Role::DoubleEnded)
        && beside.next.is(const { Letters::of("de") })
        && page.capitals(beside.at + 1)
        && matches!(beside.second.role, Role::Lamp(_) | Role::Light | Role::Lights)
}

/// "draws 110W HPS 400W equivalent": the lamp straight after the draw has watts of its own.
#[cold]
fn before_another_lamp(page: &Page, at: usize, left: Cues) -> bool {
    page.is_watts(at + 2)
        && (left.any(DRAW.and(Role::Power.cue())) || matches!(page.role(at + 3), Role::Equivalent))
}

/// "replaces 2 HPS lamps of 600 W", "than an HPS 400W": the lamp, and before it the word that compares.
#[inline(never)]
fn lamp_leads(page: &Page, at: usize) -> bool {
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
pub(super) const OUR: Listed<13> = Listed::of([
    "our", "unser", "unsere", "unserer", "unserem", "unseren", "notre", "nuestra", "nuestro", "ons", "onze",
    "nostro", "nostra",
]);

/// "less heat than our V-6 330W": a comparison with another light of the seller.
pub(super) fn with_own(page: &Page, beside: &Beside) -> bool {
    page.cues.any(Role::Versus.cue())
        && !beside.before_a_lamp()
        && (beside.at.saturating_sub(4).max(1)..beside.at)
            .any(|i| page.is_one(i, &OUR) && page.role(i - 1) == Role::Versus)
}

/// "600W lamp equivalent", "60W light bulb equivalent", "1000W double-ended HPS".
#[inline(never)]
fn spelled_lamp(page: &Page, at: usize) -> bool {
    let mut i = at + 1;
    while matches!(page.role(i), Role::Light | Role::Double | Role::Traditional | Role::Tube)
        || page.mark(i) == Some(Mark::Dash) && !page.breaks(i)
    {
        i += 1;
    }
    if page.is(i, const { Letters::of("ended") }) {
        i += 1;
    }
    i > at + 1 && matches!(page.role(i), Role::Equivalent | Role::Replacement | Role::Lamp(_))
}

/// "30W = 250W": a larger figure straight after "=" or "≈" and the light's own.
fn above_own(page: &Page, beside: &Beside) -> bool {
    if !matches!(beside.before.mark, Some(Mark::Equal | Mark::Current)) {
        return false;
    }
    let at = beside.at;
    let open = usize::from(at >= 2 && page.mark(at - 2) == Some(Mark::Open));
    at >= 2 + open
        && page.figure(at - 2 - open).is_some_and(|own| {
            own.unit == Unit::Watt
                && page.figure(at).is_some_and(|f| f.high > own.high)
                && page.mark_before(at - 2 - open) != Some(Mark::Times)
        })
}
