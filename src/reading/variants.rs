//! Whether unqualified figures are variants of which one has to be chosen, settings of one light, or neither.

use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::power::SAME;
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
use super::steps::by_heads;
use crate::facts::LeftWhy;

/// Whether the unqualified figures are variants of which one has to be chosen.
pub(super) fn variants(page: &Page, says: &mut All) -> bool {
    if let Some((open, close)) = bracketed_choice(page) {
        select(page, says, open, close);
    }
    let chosen = says.first(Set::SELECTED).is_some();
    if page.has_mark(Mark::Pipe) && table(page, says) {
        return true;
    }
    // Nearly all texts: not even two figures to choose from.
    if !chosen && !says.may_have(2, Set::SETTING) {
        return page.has_lists() && listed(page, says) && !switchable(page);
    }
    if page.cues.any(Role::Part.cue()) && says.may_have(2, Set::UNQUALIFIED) && by_heads(page, says) {
        return true;
    }
    let mut distinct = 0;
    let mut sized = 0;
    let mut last: Option<f64> = None;
    for k in says.that(Set::UNQUALIFIED) {
        let f = &page.figures[k];
        if last != Some(f.high) {
            distinct += 1;
            let length = page.figure_before(usize::from(f.item)).is_some_and(|l| l.unit == Unit::Length);
            sized += usize::from(length);
            last = Some(f.high);
        }
    }
    if page.has_codes() && models(page, says) || sizes(page, says) {
        return true;
    }
    if distinct >= 2 && other_sizes(page, says) {
        return false;
    }
    if chosen || (distinct >= 2 && chooses(page)) || sized >= 2 {
        return true;
    }
    if switchable(page) {
        if let Some(first) = says.first(Set::SETTING) {
            raise(page, says, first);
        }
        return false;
    }
    // What stands straight after most figures goes on with no other.
    let goes_on = |k: usize| {
        let next = usize::from(page.figures[k].item) + 1;
        let stroke = (page.sign(next) & STROKES != 0) | (page.role(next) == Role::And);
        stroke && slash_list(page, says, k) || page.is_watts(next) && row(page, says, k)
    };
    listed(page, says) || says.that(Set::UNQUALIFIED).any(goes_on)
}

/// Signs straight after a figure that another one may follow, see [`slash_list`].
const STROKES: u32 = Mark::Slash.bit() | Mark::Open.bit();

/// `30/40/50W` without a word about more power.
fn listed(page: &Page, says: &All) -> bool {
    says.that(Set::UNQUALIFIED).any(|k| page.figures[k].list)
}

/// "[Variant: 3 ft, 36W, 108 LEDs]": the items of the brackets around what was chosen.
pub(super) fn bracketed_choice(page: &Page) -> Option<(usize, usize)> {
    /// The most items in such brackets.
    const MOST: usize = 24;
    if !page.has_mark(Mark::Open) || !page.cues.any(Role::Choose.cue().and(Role::Selected.cue())) {
        return None;
    }
    let open = (0..page.items.len()).find(|&i| {
        page.mark(i) == Some(Mark::Open)
            && matches!(page.role(i + 1), Role::Choose | Role::Selected)
            && matches!(page.mark(i + 2), Some(Mark::Colon | Mark::Equal))
    })?;
    (open + 3..open + MOST).find(|&i| page.mark(i) == Some(Mark::Close)).map(|close| (open, close))
}

/// Selects the only unqualified figure between the brackets.
#[cold]
fn select(page: &Page, says: &mut All, open: usize, close: usize) {
    let inside = |k: usize| (open..close).contains(&usize::from(page.figures[k].item));
    let mut watts = (0..says.len()).filter(|&k| inside(k) && page.figures[k].unit == Unit::Watt);
    if let (Some(k), None) = (watts.next(), watts.next())
        && matches!(says[k], Says::Bare | Says::Nameplate)
    {
        says.set(k, Says::Selected);
    }
}

/// "10W 20W 50W flood light": three rising sizes with nothing between them.
#[inline(never)]
fn row(page: &Page, says: &All, k: usize) -> bool {
    let at = usize::from(page.figures[k].item);
    page.is_watts(at + 1)
        && page.is_watts(at + 2)
        && says[k..].iter().take(3).all(|s| Set::UNQUALIFIED.has(*s))
        && page.figures[k..].windows(2).take(2).all(|w| w[0].high < w[1].high)
}

/// Whether the light can be switched between its figures.
#[inline(never)]
fn switchable(page: &Page) -> bool {
    let word = |i: usize| page.role(i) == Role::Level && page.starts(i, const { Letters::of("switch") });
    page.cues.any(Role::Switchable.cue())
        || page.cues.any(Role::Level.cue()) && (0..page.items.len()).any(word)
}

/// Whether a word speaks of a choice: "pick one", but not "pick up only" or "not available".
#[cold]
fn chooses(page: &Page) -> bool {
    let choice = |i: usize| {
        let dash = usize::from(page.mark(i + 1) == Some(Mark::Dash) && !page.breaks(i + 1));
        page.role(i) == Role::Choose
            && page.role(i + 1 + dash) != Role::UpTo
            && page.role_before(i) != Role::Deny
    };
    page.cues.any(Role::Choose.cue()) && (0..page.items.len()).any(choice)
}

/// Words before "sizes" and the like, for what is sold besides.
const OTHER: [Letters; 2] = Letters::all(["other", "also"]);

/// "Power: 100W | other sizes 200W, 400W available": the figures after the words are of other lights.
#[cold]
fn other_sizes(page: &Page, says: &mut All) -> bool {
    if !page.cues.any(Role::Choose.cue()) {
        return false;
    }
    let choose = (1..page.items.len())
        .find(|&i| page.role(i) == Role::Choose && OTHER.iter().any(|&w| page.is(i - 1, w)));
    let Some(choose) = choose else { return false };
    let before = |k: usize| usize::from(page.figures[k].item) < choose;
    if !says.that(Set::UNQUALIFIED).any(before) {
        return false;
    }
    let mut places = says.places(Set::UNQUALIFIED);
    while let Some(k) = places.next(says) {
        if !before(k) {
            says.set(k, Says::Left(LeftWhy::Variant));
        }
    }
    true
}

/// "100W/200W/300W switchable": the top one stands for the light.
#[inline(never)]
fn raise(page: &Page, says: &mut All, first: usize) {
    let mut top = first;
    let mut k = first;
    while slash_list(page, says, k) || next_position(page, says, k) {
        let Some(next) = page.figure(usize::from(page.figures[k].item) + 2) else { break };
        let Some(index) = page.figures.iter().position(|f| f.item == next.item) else { break };
        let lower = if page.figures[index].high > page.figures[top].high {
            std::mem::replace(&mut top, index)
        } else {
            index
        };
        says.set(lower, Says::Left(LeftWhy::NotFullPower));
        k = index;
    }
    if top != first {
        says.set(top, Says::Bare);
    }
}

/// "60W – 80W – 100W": another position of the switch straight after a dash or a comma.
fn next_position(page: &Page, says: &All, k: usize) -> bool {
    let at = usize::from(page.figures[k].item);
    matches!(page.mark(at + 1), Some(Mark::Dash | Mark::Comma))
        && page.is_watts(at + 2)
        && says.get(k + 1).is_some_and(|s| Set::SETTING.has(*s))
}

/// Another unqualified figure, a different one, straight after a stroke.
#[inline(never)]
fn slash_list(page: &Page, says: &All, k: usize) -> bool {
    let f = &page.figures[k];
    let at = usize::from(f.item);
    let mut i = at + 1;
    if page.mark(i) == Some(Mark::Open) {
        while i < at + 8 && page.mark(i) != Some(Mark::Close) {
            i += 1;
        }
        i += 1;
    }
    let stroke = page.mark(i) == Some(Mark::Slash)
        || page.role(i) == Role::And && page.is(i, const { Letters::of("or") });
    stroke
        && page.figure(i + 1).is_some_and(|next| {
            let index = page.figures.iter().position(|g| g.item == next.item).unwrap_or(k);
            next.unit == Unit::Watt && (next.high - f.high).abs() > SAME && Set::UNQUALIFIED.has(says[index])
        })
}

/// "W-2 | 200 W | 540", "V2: 240W": unqualified figures of different models, each straight after its model.
#[cold]
fn models(page: &Page, says: &All) -> bool {
    let of_model = |k: usize| {
        let at = usize::from(page.figures[k].item);
        if !page.is_watts(at) {
            return None;
        }
        let sign = usize::from(matches!(page.mark_before(at), Some(Mark::Pipe | Mark::Colon | Mark::Equal)));
        let code = at.checked_sub(1 + sign)?;
        let starts = code == 0 || page.mark(code - 1).is_some();
        (page.what(code) == Some(What::Code) && starts).then(|| page.words(code))
    };
    let mut first: Option<(usize, &str)> = None;
    for k in says.that(Set::UNQUALIFIED) {
        let Some(model) = of_model(k) else { continue };
        match first {
            None => first = Some((k, model)),
            Some((j, other)) => {
                if other != model && (page.figures[j].high - page.figures[k].high).abs() > SAME {
                    return true;
                }
            }
        }
    }
    false
}

/// "Small | 100W", "Tall | 200W", a row each: unqualified figures of different sizes, where the title has none.
#[inline(never)]
fn sizes(page: &Page, says: &All) -> bool {
    if !page.has_mark(Mark::Pipe) {
        return false;
    }
    let mut first: Option<f64> = None;
    for f in says.that(Set::BARE).map(|k| &page.figures[k]) {
        let at = usize::from(f.item);
        let row = page.mark_before(at) == Some(Mark::Colon) && page.words(at - 1) == "|";
        match first {
            _ if !row => return false,
            None => first = Some(f.high),
            Some(other) if (f.high - other).abs() > SAME => return true,
            Some(_) => {}
        }
    }
    false
}

/// A table row with a figure for each of two models: "Typical input power | 160W | 250W".
#[inline(never)]
fn table(page: &Page, says: &mut All) -> bool {
    let mut found = false;
    for k in 0..says.len() {
        let at = usize::from(page.figures[k].item);
        if page.is_watts(at)
            && page.mark(at + 1) == Some(Mark::Pipe)
            && page.is_watts(at + 2)
            && !matches!(says[k], Says::Left(_) | Says::Equivalent | Says::Nothing)
            && page.mark(at.wrapping_sub(1)) == Some(Mark::Pipe)
        {
            says.set(k, Says::Left(LeftWhy::Variant));
            if k + 1 < says.len() {
                says.set(k + 1, Says::Left(LeftWhy::Variant));
            }
            found = true;
        }
    }
    found
}
