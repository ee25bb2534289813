//! Whether watts that are the light's are a draw, one light's of a pack, a part's, a total, a level, a nameplate value or
//! unqualified.

use super::admitted::{asked_or_on, at_level, named_light, under_voltage};
use super::array::heads;
use super::beside::Beside;
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::foreign::draws_elsewhere;
use super::item::Letters;
use super::levels::{BRIGHT, named_share};
use super::listed::Listed;
use super::page::Page;
use super::phrase::{DRAW, Phrase};
use super::roles::{Role, Unit};
use super::says::Says;
use super::watts::{BEAD, LAMP};
use crate::facts::LeftWhy;

/// What the figures before a figure of watts say.
pub(super) struct Before<'a> {
    pub all: &'a [Says],
    /// The last of them that is one of watts, if there is one ...
    pub last: usize,
    /// ... and it says a draw.
    pub drawn: bool,
    /// On a page with a noun for a draw, the figures of watts after others; see [`Page::rows_of_watts`].
    pub rows: u64,
}

/// A draw, a level, a nameplate value or an unqualified figure.
pub(super) fn draw(
    page: &Page,
    f: &Figure,
    beside: &Beside,
    pack: Option<u32>,
    before: &Before,
    (left, right): (&Phrase, &Phrase),
) -> Says {
    let at = beside.at;
    if left.cues.and(right.cues).any(DRAW)
        && let Some(says) = stated(page, beside, before, (left, right))
    {
        return says;
    }
    if let Some(says) = before.named(page) {
        return says;
    }
    let only = Role::Only.cue();
    // Dutch "geen 1000 watt, maar 100 watt": after a denial the word is "but".
    let but = || {
        beside.before.is(const { Letters::of("maar") })
            && before.all.iter().rev().find(|s| **s != Says::Nothing) == Some(&Says::Left(LeftWhy::Denied))
    };
    // Portuguese "320W só", but not "320W so it runs cool".
    let so = || {
        beside.next.is(const { Letters::of("so") })
            && !page.words(at + 1).contains(|c: char| c.is_alphabetic() && !c.is_ascii())
            && matches!(page.what(at + 2), Some(What::Word(_)))
    };
    // "I got a 600W bar so this 240W panel has to go"
    let so_this =
        || beside.before.role == Role::At && page.is(at.wrapping_sub(2), const { Letters::of("so") });
    if left.near.and(right.near).any(only)
        && (right.near.any(only) && !so() || left.near.any(only) && !but() && !so_this())
    {
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
    // "two 150W boards in each"
    let part: Cues = Role::Part.cue();
    if page.cues.any(each) & beside.next.cue.any(part)
        && beside.second.role == Role::Unit(Unit::Length)
        && page.role(at + 3) == Role::Each
    {
        return Says::Left(LeftWhy::Part);
    }
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
    let parts = || heads(page).is_some_and(|n| n > 1.0) || page.watts().count() > 1;
    let of_a_total = || {
        left.near.any(each) && left.cues.any(part)
            || pack.is_none() && beside.next.cue.any(part) && !counts_total(page)
    };
    // "500W panel, total draw 100W" is no part of its own draw.
    let below = || page.watts().any(|(_, w)| w.high > 1.5 * f.high);
    // "each bar 55W, 330W all bars"
    let each_part = || pack.is_none() && left.near.any(part) && left.cues.any(each) && below();
    if left.cues.and(right.near).any(each) && (right.near.any(each) && parts() || each_part())
        || page.cues.any(Role::Total.cue()) && of_a_total() && below()
    {
        return Says::Left(LeftWhy::Part);
    }
    if beside.next.cue.any(Role::Per.cue()) & beside.second.cue.any(part) {
        return if pack.is_some() { Says::EachLight } else { Says::Left(LeftWhy::Part) };
    }
    if left.near.and(right.cues).any(Role::Total.cue()) {
        return Says::Total;
    }
    let levels = page.cues.any(Role::Level.cue()) | page.has_unit(&[Unit::Percent]);
    let at_something = beside.followed_by(Mark::At) | beside.next.cue.any(Role::At.cue());
    if levels & behind_a_level(beside) && level(page, at)
        || at_something && one_of_two(page, beside) && before.higher(page, f)
    {
        return Says::Level;
    }
    if left.cues.any(Cues::of(&[Role::Power, Role::Rating])) || f.tolerance.is_some() {
        return Says::Nameplate;
    }
    Says::Bare
}

/// What watts with a word for a draw in the phrases before and after them say.
fn stated(page: &Page, beside: &Beside, before: &Before, (left, right): (&Phrase, &Phrase)) -> Option<Says> {
    if beside.followed_by(Mark::Question) && left.cues.any(DRAW) {
        return Some(Says::Left(LeftWhy::Rhetoric));
    }
    if page.cues.any(LAMP) && left.cues.any(Role::DrawVerb.cue()) && draws_elsewhere(page, beside.at) {
        return Some(Says::Left(LeftWhy::OtherDevice));
    }
    let named = before.named(page);
    if named.is_none() && !right.cues.any(DRAW) && claimed(page, beside.at) {
        return None;
    }
    let label = left.cues.any(Cues::of(&[Role::DrawAdjective, Role::DrawNoun, Role::Input]));
    named.or(Some(Says::Draw(2 + u8::from(label))))
}

/// "LEDs total 248": the one total of the page is a number of diodes.
#[cold]
fn counts_total(page: &Page) -> bool {
    let mut totals = (0..page.items.len()).filter(|&i| page.role(i) == Role::Total);
    let (Some(i), None) = (totals.next(), totals.next()) else { return false };
    let sign = usize::from(matches!(page.mark(i + 1), Some(Mark::Colon | Mark::Equal)));
    i > 0
        && matches!(page.role(i - 1), Role::Diode | Role::Led | Role::Chip)
        && page.figure(i + 1 + sign).is_some_and(|n| n.unit == Unit::Bare)
}

impl Before<'_> {
    /// "power consumption of the 600W panel is 115W": what the figure says as the name of the light, or as the draw after it.
    fn named(&self, page: &Page) -> Option<Says> {
        let index = self.all.len();
        let here = 0b11 << index.min(62);
        if self.rows & here == 0 {
            return None;
        }
        if named_light(page, index + 1) {
            return Some(Says::Bare);
        }
        named_light(page, index).then_some(Says::Draw(3))
    }

    /// Whether one of them is a higher claim.
    fn higher(&self, page: &Page, f: &Figure) -> bool {
        let claim = |says: &Says| matches!(says, Says::Bare | Says::Nameplate);
        self.all.iter().zip(page.figures).any(|(says, other)| claim(says) && other.high > f.high)
    }
}

/// Whether what stands straight before the figure may lead to a level.
fn behind_a_level(beside: &Beside) -> bool {
    let words = Cues::of(&[Role::Level, Role::At]);
    beside.before.cue.any(words)
        | beside.before.is_figure()
        | (beside.before.sign & Mark::LABEL != 0)
        | BRIGHT.begins(beside.before)
}

/// "both on 180W", but not "for seedlings 100W"
#[inline(never)]
fn level(page: &Page, at: usize) -> bool {
    let position = at - usize::from(page.role_before(at) == Role::At);
    page.role_before(position) == Role::Level && page.role_before(position - 1) != Role::For
        || page.figure_before(at).is_some_and(|p| p.unit == Unit::Percent)
        || named_share(page, at).is_some()
        || page.plays(at.wrapping_sub(1)) == Cues::default() && full_brightness(page, at)
        || (matches!(page.mark_before(at), Some(Mark::Colon | Mark::Equal))
            && at >= 2
            && (page.role(at - 2) == Role::Level
                || switched_on(page, at - 2)
                || page.figure(at - 2).is_some_and(|p| p.unit == Unit::Percent)))
}

/// "both on: 180W", "all on: 180W", "Blüte an: 95W": before the colon at item `on` + 1.
fn switched_on(page: &Page, on: usize) -> bool {
    page.role(on) == Role::At
        && page.is_one(on, &const { Listed::of(["on", "an"]) })
        && matches!(page.role_before(on), Role::Level | Role::All)
}

/// "full brightness 132W", "volle Helligkeit: 132 W"
#[inline(never)]
fn full_brightness(page: &Page, at: usize) -> bool {
    let colon = usize::from(matches!(page.mark_before(at), Some(Mark::Colon | Mark::Equal)));
    at >= 2 + colon
        && page.begins(at - 1 - colon, &BRIGHT)
        && matches!(page.role(at - 2 - colon), Role::Level | Role::Rating)
}

/// "560W @220V", "180W at full": of a light with a higher figure, one of its two.
#[cold]
#[inline(never)]
fn one_of_two(page: &Page, beside: &Beside) -> bool {
    let (sign, word) = (beside.followed_by(Mark::At), beside.next.cue.any(Role::At.cue()));
    sign && page.figure(beside.at + 2).is_some_and(|v| matches!(v.unit, Unit::Volt | Unit::VoltAc))
        || word & beside.second.cue.any(Role::Level.cue())
}

/// "we tested it: 1000W label, 178W on the meter"
fn claimed(page: &Page, at: usize) -> bool {
    let claim = |i: usize| page.role(i) == Role::Rating && page.begins(i, &CLAIMED);
    let colon = usize::from(page.mark_before(at) == Some(Mark::Colon));
    claim(at + 1) || at > colon && claim(at - 1 - colon)
}

/// How words for what is printed on a light begin.
const CLAIMED: Listed<6> = Listed::of(["claim", "label", "adverti", "namepl", "sticker", "stated"]);

/// Whether the figure carries on a list of draws: "588W (110V), 570W (220V)", "50% 98W, 100% 196W", "110W/60W".
fn goes_on(page: &Page, at: usize, before: &Before) -> bool {
    before.drawn && carries_on(page, at, before.last)
}

/// Whether nothing but volts, levels and signs stands between figure `last` and item `at`.
#[inline(never)]
fn carries_on(page: &Page, at: usize, last: usize) -> bool {
    let from = usize::from(page.figures[last].item);
    let (mut volts, mut level, mut plain) = (false, false, true);
    for i in from + 1..at {
        match page.items[i].what {
            What::Word(Role::Level | Role::And | Role::At | Role::Ac | Role::For) => {
                level |= page.role(i) == Role::Level;
            }
            // "192W a 110V y 185W a 220V"
            What::Word(_) if volts && page.lone_and(i) => {}
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
