//! Draws at a level below the full one: dimmed, on standby, in one mode.

use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::listed::Listed;
use super::page::Page;
use super::phrase::DRAW;
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
use crate::facts::LeftWhy;

/// "240W at full power (at 50 %: 121W)", "100W, dimmable to 12W": beside a higher figure, without a word for draw.
#[inline(never)]
pub(super) fn leave_dimmed(page: &Page, says: &mut All) {
    const OWN: Set = Set::of(&[Says::Bare, Says::Nameplate, Says::Level, Says::Draw(0)]);
    let highest = says.that(OWN).map(|k| page.figures[k].high).fold(0.0, f64::max);
    let mut places = says.places(OWN);
    while let Some(k) = places.next(says) {
        let f = &page.figures[k];
        let at = usize::from(f.item);
        if f.high < highest && (lower_level(page, at, after_draw_words(page, at)) || dims_to(page, at)) {
            says.set(k, Says::Left(LeftWhy::NotFullPower));
        }
    }
}

/// "dimmable down to 12W", "dimmer down to 10W", "dimmbar bis 12 W".
fn dims_to(page: &Page, at: usize) -> bool {
    at >= 2
        && matches!(page.role(at - 1), Role::UpTo | Role::To)
        && (at.saturating_sub(3)..at - 1).any(|i| page.may_be(i, Role::Switchable.cue()))
}

/// "50W at 25 %", "0.5W in standby", "(1.2W when off)", "at 25 % it draws 50W", "50 %: 98W"; at item `after` the words for power
/// and draw behind the figure have ended.
pub(super) fn lower_level(page: &Page, at: usize, after: usize) -> bool {
    if joins(page, after)
        && let Some(lower) = level_after(page, after)
    {
        return lower;
    }
    (page.has_unit(&[Unit::Percent]) || page.may.any(Role::Dim.cue()) || near_word(page, at))
        && level_before(page, at)
}

/// Whether a word for a lower level that the vocabulary does not have stands shortly before item `at`.
fn near_word(page: &Page, at: usize) -> bool {
    page.items[at.saturating_sub(5)..at]
        .iter()
        .fold(false, |any, item| any | item.is(ECO) | item.is(STAND) | item.starts(LEAST))
}

/// Whether what stands behind the word at item `start`, which joins it to the figure before, is a lower level. None if nothing
/// there is a level or a figure.
fn level_after(page: &Page, start: usize) -> Option<bool> {
    for i in start + 1..start + 4 {
        match page.what(i) {
            // "60W @ 220V" holds at any level, "60W @ 220V at 50 %" at one.
            Some(What::Figure(_)) if joins(page, i + 1) && is_volts(page, i) => {}
            // "60W @ 220V (50 % dimmed)"
            Some(What::Figure(_)) if is_volts(page, i) && page.mark(i + 1) == Some(Mark::Open) => {
                let dims = page.mark(i + 3) == Some(Mark::Close) || page.may_be(i + 3, Role::Dim.cue());
                return (dims && below_full(page, i + 2)).then_some(true);
            }
            Some(What::Figure(_)) if is_volts(page, i) => return None,
            Some(What::Figure(_)) => return Some(below_full(page, i)),
            Some(What::Word(_)) if lower(page, i) => return Some(true),
            Some(What::Word(_)) => {}
            _ => break,
        }
    }
    None
}

fn is_volts(page: &Page, i: usize) -> bool {
    page.figure(i).is_some_and(|f| matches!(f.unit, Unit::Volt | Unit::VoltAc))
}

/// The level first: straight before the figure at item `at`, or after "at" and a few words before.
fn level_before(page: &Page, at: usize) -> bool {
    let colon = usize::from(matches!(page.mark_before(at), Some(Mark::Colon | Mark::Equal | Mark::Dash)));
    let mut i = at - colon;
    for _ in 0..4 {
        let Some(before) = i.checked_sub(1) else { return false };
        i = before;
        match page.what(i) {
            Some(What::Figure(_)) => {
                let led = i > 0 && joins(page, i - 1);
                // "10%時6W"
                let when = usize::from(page.role(i + 1) == Role::At);
                let named = named_share(page, at) == Some(i);
                return (led || named || i + 1 + when + colon == at) && below_full(page, i);
            }
            Some(What::Word(_)) => {
                let led = i > 0 && joins(page, i - 1);
                let half = page.is(i, const { Letters::of("half") }) && page.role(i + 1) == Role::Power;
                let least = page.starts(i, LEAST) && i + 1 + colon == at;
                if half || least || led && lower(page, i) {
                    return true;
                }
            }
            _ => return false,
        }
    }
    false
}

/// How words for brightness begin.
pub(super) const BRIGHT: Listed<5> = Listed::of(["bright", "hellig", "intens", "lumino", "brillo"]);

/// "50 % brightness: 98W", "100% dim = 201W": the share of full power in the row of the watts at item `at`.
#[inline(never)]
pub(super) fn named_share(page: &Page, at: usize) -> Option<usize> {
    const DIMMED: Letters = Letters::of("dimm");
    const KINDS: Cues = Cues::of(&[Role::Dim, Role::Power, Role::Level]);
    if at < 3 || !matches!(page.mark(at - 1), Some(Mark::Colon | Mark::Equal)) {
        return None;
    }
    let named = page.cue(at - 2).any(KINDS) || page.begins(at - 2, &BRIGHT) || page.starts(at - 2, DIMMED);
    page.figure(at - 3).filter(|p| named && p.unit == Unit::Percent).map(|_| at - 3)
}

/// The first item after the figure at item `at` that is no word for power or draw, an opening bracket skipped too.
pub(super) fn after_draw_words(page: &Page, at: usize) -> usize {
    let mut i = at + 1;
    while page.cue(i).any(DRAW) || matches!(page.role(i), Role::Power) {
        i += 1;
    }
    i + usize::from(page.mark(i) == Some(Mark::Open))
}

/// "eco mode"
const ECO: Letters = Letters::of("eco");
/// "stand-by"
const STAND: Letters = Letters::of("stand");
/// "minimum", "minimal"
const LEAST: Letters = Letters::of("minim");

/// Whether the word at item `i` joins a level to a figure.
fn joins(page: &Page, i: usize) -> bool {
    page.may_be(i, Role::At.cue()) || page.mark(i) == Some(Mark::At)
}

/// Whether the word at item `i` names a lower level or standby.
fn lower(page: &Page, i: usize) -> bool {
    page.may_be(i, Role::Dim.cue())
        || page.is(i, ECO)
        || page.is(i, STAND) && page.is(i + 2, const { Letters::of("by") })
}

/// Whether the figure at item `i` is a share of full power: below 100 %, and of nothing else such as efficiency.
fn below_full(page: &Page, i: usize) -> bool {
    let other = matches!(page.role(i + 1), Role::Ppe | Role::Approx)
        || page.is(i + 1, const { Letters::of("pf") })
        || page.is(i + 1, const { Letters::of("humidity") })
        // "200W at 50 % off"
        || page.is(i + 1, const { Letters::of("off") })
        || page.is(i + 2, const { Letters::of("factor") });
    page.figure(i).is_some_and(|p| p.unit == Unit::Percent && p.high < 99.5) && !other
}

/// How levels below the full one begin.
const YOUNG: [Letters; 2] = Letters::all(["veg", "seedl"]);

/// "red mode 30W", "30W in veg mode": a level that is named and is not the full one.
#[cold]
pub(super) fn one_mode(page: &Page, at: usize, after: usize) -> bool {
    let partly = |i: usize| {
        page.role(i) == Role::Level
            && (YOUNG.iter().any(|&w| page.starts(i, w))
                || (page.starts(i, const { Letters::of("mod") })
                    && i > 0
                    && matches!(page.role(i - 1), Role::Colour(_))))
    };
    let mut i = at - usize::from(matches!(page.mark_before(at), Some(Mark::Colon | Mark::Equal)));
    let figure = i;
    // "veg only 128W"
    while i > 0 && (page.cue(i - 1).any(DRAW) || matches!(page.role(i - 1), Role::Power | Role::Only)) {
        i -= 1;
    }
    let before = i.checked_sub(1);
    let after = joins(page, after) && (after + 1..after + 4).any(partly);
    after
        || before.is_some_and(|b| only_colour(page, b, figure, at))
        || before
            .is_some_and(|i| partly(i) || page.is(i, const { Letters::of("mode") }) && i > 0 && partly(i - 1))
}

/// "blue only 128W" below a higher figure: the word at item `colour` is one, and only "only" stands before item `figure`.
#[inline(never)]
fn only_colour(page: &Page, colour: usize, figure: usize, at: usize) -> bool {
    colour + 2 == figure
        && page.role(colour + 1) == Role::Only
        && matches!(page.role(colour), Role::Colour(_))
        && page.figure(at).is_some_and(|f| page.watts().any(|(_, w)| w.high > 1.2 * f.high))
}
