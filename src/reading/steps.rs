//! Watts that are steps, channels or parts of one light whose full power stands beside them.

use super::array::fold_of;
use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::pairs::is_count;
use super::partial::PARTS;
use super::power::SAME;
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
use crate::facts::LeftWhy;

/// Leaves the steps, channels and parts.
pub(super) fn leave(page: &Page, pack: Option<u32>, says: &mut All) {
    if says.may_have(3, Set::ANY) {
        // A headline and three steps, which are figures of watts in a row.
        let rows = page.rows_of_watts();
        if rows & rows << 1 != 0 && (page.has_mark(Mark::Slash) | page.has_mark(Mark::Comma)) {
            levels(page, says);
        }
        if page.has_mark(Mark::Open) {
            bracketed(page, says);
        }
        // Two channels and all of them.
        if says.may_have(2, LOWER) & pack.is_none() {
            channels(page, says);
        }
    }
    if page.cues.any(PARTS) & says.may_have(2, OWN) & page.has_unit(&[Unit::Bare]) & pack.is_none() {
        parts(page, says);
    }
}

/// What the whole light may be called by beside one of its parts.
const OWN: Set = Set::of(&[Says::Bare, Says::Nameplate, Says::Total, Says::Draw(0)]);

/// What channels may say beside a figure for all of them.
const LOWER: Set = Set::of(&[Says::Draw(0), Says::Level, Says::Left(LeftWhy::NotFullPower)]);

/// "400W light, power switch 100W/200W/300W/400W": watts that rise to the light's own are its steps, and none is its draw.
#[inline(never)]
fn levels(page: &Page, says: &mut All) {
    let steps = page.cues.any(Cues::of(&[Role::Switchable, Role::Level]));
    let mut first = 0;
    while first < says.len() {
        let mut last = first;
        while last + 1 < says.len() && next_step(page, last, steps) {
            last += 1;
        }
        let headline = |k: usize| {
            let top = page.figures[last].high;
            Set::UNQUALIFIED.has(says[k]) && (page.figures[k].high - top).abs() < SAME
        };
        let draws = || says[first..=last].iter().any(|s| matches!(s, Says::Draw(_) | Says::Level));
        if last >= first + 2 && (steps || draws()) && (0..first).any(headline) {
            for k in first..last {
                says.set(k, Says::Left(LeftWhy::NotFullPower));
            }
            says.set(last, Says::Left(LeftWhy::Outranked));
        }
        first = last + 1;
    }
}

/// Whether the figure after figure `k` is joined to it by a stroke, or by a comma where steps are spoken of, and higher.
fn next_step(page: &Page, k: usize, steps: bool) -> bool {
    let (f, next) = (&page.figures[k], &page.figures[k + 1]);
    let at = usize::from(f.item);
    f.unit == Unit::Watt
        && next.unit == Unit::Watt
        && usize::from(next.item) == at + 2
        && (page.mark(at + 1) == Some(Mark::Slash) || steps && page.mark(at + 1) == Some(Mark::Comma))
        && next.high > f.high
}

/// "veg 310W, flower 480W, all channels 640W", "red draws 80W, white draws 160W, 240W total": with a figure for all of them,
/// the lower ones are no draws of the whole light.
#[cold]
fn channels(page: &Page, says: &mut All) {
    let mut places = says.places(Set::ANY);
    let (mut last, mut last_but_one) = (None, None);
    while let Some(k) = places.next(says) {
        if page.figures[k].unit != Unit::Watt {
            continue;
        }
        let before = (last_but_one, last);
        (last_but_one, last) = (last, Some(k));
        let (Some(a), Some(b)) = before else { continue };
        let whole = of_all(page, usize::from(page.figures[k].item));
        if !(whole || says[k] == Says::Total) {
            continue;
        }
        let high = |i: usize| page.figures[i].high;
        let stated =
            |i: usize| matches!(says[i], Says::Draw(_) | Says::Level | Says::Left(LeftWhy::NotFullPower));
        let lower = stated(a) && stated(b) && high(a) < high(k) && high(b) < high(k);
        let sum = (high(a) + high(b) - high(k)).abs() < 0.5;
        if !(lower && one_sentence(page, a, k)) || !whole && !sum {
            continue;
        }
        let draw = [says[a], says[b]].into_iter().find(|s| matches!(s, Says::Draw(_))).unwrap_or(Says::Level);
        says.set(a, Says::Left(LeftWhy::NotFullPower));
        says.set(b, Says::Left(LeftWhy::NotFullPower));
        if whole {
            says.set(k, draw);
        }
    }
}

/// "all channels 640W", "both: 164W", "les deux 312W".
fn of_all(page: &Page, at: usize) -> bool {
    let colon = usize::from(page.mark_before(at) == Some(Mark::Colon));
    (1..=2).filter_map(|d| at.checked_sub(d + colon)).any(|i| {
        page.role(i) == Role::All
            || page.is(i, const { Letters::of("both") })
            || i > 0 && page.is(i - 1, const { Letters::of("les") })
    })
}

/// Whether no sentence or line ends between the figures.
fn one_sentence(page: &Page, from: usize, to: usize) -> bool {
    let items = usize::from(page.figures[from].item)..usize::from(page.figures[to].item);
    !items.into_iter().any(|i| matches!(page.mark(i), Some(Mark::Stop | Mark::Line | Mark::Pipe)))
}

/// "450 W, 4 barras de 112 W", "4 Leisten à 60 W", "4 belki po 80 W": a number of parts and one short word or `@` before the
/// watts, below the light's own.
#[inline(never)]
fn parts(page: &Page, says: &mut All) {
    let mut bare = says.places(Set::BARE);
    while let Some(k) = bare.next(says) {
        let f = &page.figures[k];
        let at = usize::from(f.item);
        if at < 3 || !page.may_be(at - 2, PARTS) {
            continue;
        }
        let word = matches!(page.what(at - 1), Some(What::Word(_)));
        let short = page.mark(at - 1) == Some(Mark::At) || word && page.letters(at - 1) <= 2;
        let number = page.figure(at - 3).is_some_and(|n| n.unit == Unit::Bare && n.high >= 2.0);
        let own = says.that(OWN).any(|j| page.figures[j].high > f.high);
        if short && number && own {
            says.set(k, Says::Left(LeftWhy::Part));
        }
    }
}

/// "20W 50W 100W [100W]": the size of a list that is repeated in brackets is the one that is sold.
#[inline(never)]
fn bracketed(page: &Page, says: &mut All) {
    let mut bare = says.places(Set::BARE);
    while let Some(k) = bare.next(says) {
        let f = &page.figures[k];
        let at = usize::from(f.item);
        let brackets = page.mark_before(at) == Some(Mark::Open) && page.mark(at + 1) == Some(Mark::Close);
        if brackets && at > 3 && page.is_watts(at - 2) && page.is_watts(at - 3) {
            let listed =
                page.figures[..k].iter().any(|g| g.unit == Unit::Watt && (g.high - f.high).abs() < SAME);
            if listed {
                says.set(k, Says::Selected);
            }
        }
    }
}

/// "1 head 10W / 2 heads 20W / 3 heads 30W", "单头10W 双头20W": watts that rise with the number of heads are those of several
/// lights. A light that is first called by its watts has been chosen.
#[inline(never)]
pub(super) fn by_heads(page: &Page, says: &All) -> bool {
    let mut last: Option<(f64, f64, usize)> = None;
    for f in says.that(Set::UNQUALIFIED).map(|k| &page.figures[k]) {
        let Some((n, part)) = heads_before(page, usize::from(f.item)) else {
            if last.is_none() {
                return false;
            }
            continue;
        };
        if last.is_some_and(|(fewer, lower, other)| n > fewer && f.high > lower && alike(page, part, other)) {
            return true;
        }
        last = Some((n, f.high, part));
    }
    false
}

/// "2-head", "dual head:", "三头": how many heads the words straight before item `at` say, and the item of their noun.
fn heads_before(page: &Page, at: usize) -> Option<(f64, usize)> {
    let part = at.checked_sub(1 + usize::from(page.mark_before(at) == Some(Mark::Colon)))?;
    if page.role(part) != Role::Part {
        return None;
    }
    let i = part.checked_sub(1 + usize::from(page.mark_before(part) == Some(Mark::Dash)))?;
    let n = match page.what(i)? {
        What::Figure(_) => page.figure(i).filter(|n| is_count(n))?.high,
        What::Word(Role::Double) => fold_of(page, i),
        What::Word(Role::Kind) => 1.0,
        What::Word(_) => match page.words(i) {
            "单" | "單" | "一" => 1.0,
            "三" => 3.0,
            "四" => 4.0,
            _ => return None,
        },
        _ => return None,
    };
    Some((n, part))
}

/// Whether the words begin alike: "head", "heads"; "Kopf", "Köpfe".
fn alike(page: &Page, one: usize, other: usize) -> bool {
    const BEGIN: u64 = 0xff_ffff;
    page.items[one].letters & BEGIN == page.items[other].letters & BEGIN
}
