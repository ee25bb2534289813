//! The headline figure and the admitted draw, chosen among the figures of watts.
//!
//! Title beats body, an unqualified figure beats a ratings row, one lamp's figure beats the pack's total. A ratings row below
//! the headline that is not count times class is an admission. A light that states only its draw claims its draw.

use super::array::Arrays;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::page::Page;
use super::roles::{Cues, Role, Unit};
use super::watts::{All, Says};
use crate::facts::{Admitted, LeftWhy, Note, Read, Span, Stated, Taken};
use crate::units::Watts;

/// Figures closer than this are the same, in watts.
const SAME: f64 = 0.01;

pub(super) fn span(f: &Figure) -> Span {
    Span { start: f.start as usize, end: f.end as usize }
}

/// Where the headline and the draw were found, as indices of figures.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Chosen {
    pub headline: Option<usize>,
    pub draw: Option<usize>,
    pub variants: bool,
}

/// Fills `advertised_w` and `actual_w`.
pub(super) fn choose(page: Page, says: &mut All, arrays: &Arrays, pack: Option<u32>, read: &mut Read) -> Chosen {
    let mut chosen = Chosen { variants: variants(page, says), ..Chosen::default() };
    let selected = says.iter().position(|s| *s == Says::Selected);
    if chosen.variants && selected.is_none() {
        for s in says.iter_mut() {
            if matches!(s, Says::Bare | Says::Nameplate | Says::Level) {
                *s = Says::Left(LeftWhy::Variant);
            }
        }
        read.notes.push(Note::VariantNotSelected);
    } else if chosen.variants {
        for s in says.iter_mut().filter(|s| **s == Says::Bare) {
            *s = Says::Left(LeftWhy::Variant);
        }
    }
    drop_pack_total(page, says, pack);
    let first = |says: &All, wanted: &[Says]| says.iter().position(|s| wanted.contains(s));
    let headline = selected
        .or_else(|| first(says, &[Says::EachLight]))
        .or_else(|| whole(page, says, pack))
        .or_else(|| first(says, &[Says::Bare, Says::Nameplate]))
        .or_else(|| first(says, &[Says::Total]))
        .or_else(|| highest(page, says));
    // "Veg Bloom 1000W ... 110W": a level above the headline is no level.
    let headline = match (headline, highest(page, says)) {
        (Some(h), Some(l)) if says[h] == Says::Bare && l < h && page.figures[l].high > page.figures[h].high => Some(l),
        (h, _) => h,
    };
    let (low, high) = admitted(page, says, arrays, headline, read, &mut chosen);
    chosen.headline = headline.filter(|&k| top(page, &page.figures[k]).is_some());
    if let Some(k) = chosen.headline {
        let f = &page.figures[k];
        read.advertised_w = top(page, f).map(|value| Taken { value: Stated { value, half_digit: f.half }, span: span(f) });
        conflict(page, says, k, arrays, read);
    } else if headline.is_none()
        && let (Some(k), Some(draw)) = (chosen.draw, read.actual_w)
        && !chosen.variants
    {
        let value = Stated { value: draw.value.high.0, half_digit: page.figures[k].half };
        read.advertised_w = Some(Taken { value, span: draw.span });
    }
    let _ = (low, high);
    chosen
}

/// The value of a headline: the top of a dimming range or of a wattage switch; a range without such a word is not sure.
fn top(page: Page, f: &Figure) -> Option<f64> {
    let at = usize::from(f.item);
    if !(f.range || f.list) {
        return Some(f.high);
    }
    let dimmed = page.cues.any(Cues::of(&[Role::Switchable, Role::Dim, Role::Level]))
        || page.left(at).cues.any(Cues::of(&[Role::Power, Role::Rating]));
    dimmed.then_some(f.high)
}

/// In a pack, a figure that is the pack's total beside one light's figure.
fn drop_pack_total(page: Page, says: &mut All, pack: Option<u32>) {
    let Some(units) = pack else { return };
    let each: Option<f64> = says.iter().position(|s| *s == Says::EachLight).map(|k| page.figures[k].high);
    for (k, s) in says.iter_mut().enumerate() {
        let total = *s == Says::Total
            || (*s == Says::Bare
                && each.is_some_and(|e| (page.figures[k].high - e * f64::from(units)).abs() < SAME));
        if total {
            *s = Says::Left(LeftWhy::PackTotal);
        }
    }
}

/// The total of one light's parts: "10W bar (4 bars, 40W total)".
fn whole(page: Page, says: &All, pack: Option<u32>) -> Option<usize> {
    let total = says.iter().position(|s| *s == Says::Total)?;
    let parts = page.cues.any(Cues::of(&[Role::Part, Role::Board]));
    let higher = says
        .iter()
        .enumerate()
        .filter(|(_, s)| **s == Says::Bare)
        .all(|(k, _)| page.figures[k].high < page.figures[total].high);
    (pack.is_none() && parts && higher).then_some(total)
}

/// The highest of the levels.
fn highest(page: Page, says: &All) -> Option<usize> {
    (0..says.len())
        .filter(|&k| says[k] == Says::Level)
        .max_by(|&a, &b| page.figures[a].high.total_cmp(&page.figures[b].high))
}

/// Whether the unqualified figures are variants of which one has to be chosen.
fn variants(page: Page, says: &mut All) -> bool {
    let bare = |s: &Says| matches!(s, Says::Bare | Says::Nameplate);
    let mut distinct = 0;
    let mut sized = 0;
    let mut last: Option<f64> = None;
    for (k, f) in page.figures.iter().enumerate() {
        if !bare(&says[k]) {
            continue;
        }
        if last != Some(f.high) {
            distinct += 1;
            let length = page.figure_before(usize::from(f.item)).is_some_and(|l| l.unit == Unit::Length);
            sized += usize::from(length);
            last = Some(f.high);
        }
    }
    let switch = page.cues.any(Cues::of(&[Role::Switchable])) || words_switch(page);
    if table(page, says) {
        return true;
    }
    if says.contains(&Says::Selected) || (page.cues.any(Role::Choose.cue()) && distinct >= 2) || sized >= 2 {
        return true;
    }
    if switch {
        let first = says.iter().position(bare);
        if let Some(first) = first {
            raise(page, says, first);
        }
        return false;
    }
    let listed = page.figures.iter().enumerate().any(|(k, f)| f.list && bare(&says[k]));
    listed || says.iter().enumerate().any(|(k, s)| bare(s) && slash_list(page, says, k))
}

fn words_switch(page: Page) -> bool {
    page.cues.any(Role::Level.cue()) && (0..page.items.len()).any(|i| page.role(i) == Role::Level && page.starts(i, "switch"))
}

/// "100W/200W/300W switchable": the top one stands for the light.
fn raise(page: Page, says: &mut All, first: usize) {
    let mut top = first;
    let mut k = first;
    while slash_list(page, says, k) {
        let Some(next) = page.figure(usize::from(page.figures[k].item) + 2) else { break };
        let Some(index) = page.figures.iter().position(|f| f.item == next.item) else { break };
        let lower = if page.figures[index].high > page.figures[top].high { std::mem::replace(&mut top, index) } else { index };
        says[lower] = Says::Left(LeftWhy::NotFullPower);
        k = index;
    }
}

/// Another unqualified figure, a different one, straight after a stroke.
fn slash_list(page: Page, says: &All, k: usize) -> bool {
    let f = &page.figures[k];
    let at = usize::from(f.item);
    let mut i = at + 1;
    if page.mark(i) == Some(Mark::Open) {
        while i < at + 8 && page.mark(i) != Some(Mark::Close) {
            i += 1;
        }
        i += 1;
    }
    let stroke = page.mark(i) == Some(Mark::Slash) || page.role(i) == Role::And && page.is(i, "or");
    stroke
        && page.figure(i + 1).is_some_and(|next| {
            let index = page.figures.iter().position(|g| g.item == next.item).unwrap_or(k);
            next.unit == Unit::Watt && (next.high - f.high).abs() > SAME && matches!(says[index], Says::Bare | Says::Nameplate)
        })
}

/// A table row with a figure for each of two models: "Typical input power | 160W | 250W".
fn table(page: Page, says: &mut All) -> bool {
    let mut found = false;
    for k in 0..says.len() {
        let at = usize::from(page.figures[k].item);
        if page.is_watts(at)
            && page.mark(at + 1) == Some(Mark::Pipe)
            && page.is_watts(at + 2)
            && !matches!(says[k], Says::Left(_) | Says::Equivalent | Says::Nothing)
            && page.mark(at.wrapping_sub(1)) == Some(Mark::Pipe)
        {
            says[k] = Says::Left(LeftWhy::Variant);
            if let Some(n) = says.get_mut(k + 1) {
                *n = Says::Left(LeftWhy::Variant);
            }
            found = true;
        }
    }
    found
}

/// Chooses the draw.
fn admitted(
    page: Page, says: &mut All, arrays: &Arrays, headline: Option<usize>, read: &mut Read, chosen: &mut Chosen,
) -> (f64, f64) {
    let rank = |s: &Says| if let Says::Draw(r) = s { Some(*r) } else { None };
    let best = says.iter().filter_map(rank).max();
    let mut found: Option<(usize, f64, f64)> = None;
    let mut several = false;
    if let Some(best) = best {
        for k in (0..says.len()).filter(|&k| rank(&says[k]) == Some(best)) {
            let f = &page.figures[k];
            found = Some(match found {
                None => (k, f.low, f.high),
                Some((first, low, high)) => {
                    several |= (f.high - high).abs() > SAME;
                    let at = |k: usize| usize::from(page.figures[k].item);
                    if under_voltage(page, at(first)) && under_voltage(page, at(k)) {
                        (first, low.min(f.low), high.max(f.high))
                    } else if at_level(page, at(k)) && f.high > high {
                        (k, f.low, f.high)
                    } else {
                        (first, low, high)
                    }
                }
            });
        }
    } else if let Some(h) = headline {
        let claim = page.figures[h].high;
        let level = highest(page, says).filter(|&k| k != h && page.figures[k].high < claim);
        let lower = (0..says.len()).find(|&k| {
            let f = &page.figures[k];
            k != h && says[k] == Says::Nameplate && f.high < claim - SAME && !is_product(page, arrays, f.high)
        });
        found = level.or(lower).map(|k| (k, page.figures[k].low, page.figures[k].high));
        if let Some((k, low, high)) = found {
            let paired = |k: usize| says[k] == Says::Level && under_voltage(page, usize::from(page.figures[k].item));
            if paired(k) {
                let lowest = (0..says.len()).filter(|&k| paired(k)).map(|k| page.figures[k].low).fold(low, f64::min);
                found = Some((k, lowest, high));
            }
        }
    }
    let Some((k, low, high)) = found else { return (0.0, 0.0) };
    let f = &page.figures[k];
    let list = f.list || (several && chosen.variants);
    if list && chosen.variants {
        for s in says.iter_mut().filter(|s| matches!(s, Says::Draw(_))) {
            *s = Says::Left(LeftWhy::Variant);
        }
        return (0.0, 0.0);
    }
    let low = if f.list { high } else { low };
    chosen.draw = Some(k);
    let value = Admitted { low: Watts(low), high: Watts(high), tolerance: f.tolerance };
    read.actual_w = Some(Taken { value, span: span(f) });
    (low, high)
}

/// Whether the figure is count times class.
fn is_product(page: Page, arrays: &Arrays, watts: f64) -> bool {
    arrays.iter().any(|a| (page.figures[a.count].high * page.figures[a.watts].high - watts).abs() < SAME)
}

/// Whether the draw at item `at` holds at one mains voltage: "(110V)", "@ 220V", "(220V): ".
fn under_voltage(page: Page, at: usize) -> bool {
    let volts = |i: usize| page.figure(i).is_some_and(|f| matches!(f.unit, Unit::Volt | Unit::VoltAc));
    (1..=3).any(|d| volts(at + d) && (at + 1..at + d).all(|i| glue(page, i)))
        || (1..=4).any(|d| at >= d && volts(at - d) && (at - d + 1..at).all(|i| glue(page, i)))
}

fn glue(page: Page, i: usize) -> bool {
    match page.what(i) {
        Some(What::Mark(Mark::Open | Mark::Close | Mark::At | Mark::Colon | Mark::Equal)) => true,
        Some(What::Word(role)) => matches!(role, Role::At | Role::Ac | Role::For | Role::Of | Role::Power),
        _ => false,
    }
}

/// Whether the figure at item `at` belongs to a level.
fn at_level(page: Page, at: usize) -> bool {
    (1..=2).any(|d| {
        at >= d
            && (page.role(at - d) == Role::Level || page.figure(at - d).is_some_and(|f| f.unit == Unit::Percent))
    })
}

/// Notes another unqualified figure that differs from the headline.
fn conflict(page: Page, says: &All, used: usize, arrays: &Arrays, read: &mut Read) {
    let value = page.figures[used].high;
    let other = (0..says.len()).find(|&k| {
        let f = &page.figures[k];
        says[k] == Says::Bare
            && k != used
            && f.unit == Unit::Watt
            && (f.high - value).abs() > SAME
            && !is_product(page, arrays, f.high)
    });
    if let Some(k) = other {
        read.notes.push(Note::HeadlinesConflict { used: Watts(value), other: Watts(page.figures[k].high) });
    }
}
