//! The headline figure and the admitted draw, chosen among the figures of watts.
//!
//! Title beats body, an unqualified figure beats a ratings row, one lamp's figure beats the pack's total. A ratings row below
//! the headline that is not count times class is an admission. A light that states only its draw claims its draw.

use super::admitted::{admitted, is_product};
use super::array::Arrays;
use super::figures::Figure;
use super::page::Page;
use super::roles::{Cues, Role, Unit};
use super::says::{All, Said, Says};
use super::variants::variants;
use crate::facts::{LeftWhy, Note, Read, Span, Stated, Taken};
use crate::units::Watts;

/// Figures closer than this are the same, in watts.
pub(super) const SAME: f64 = 0.01;

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
pub(super) fn choose(
    page: Page,
    says: &mut All,
    arrays: &Arrays,
    pack: Option<u32>,
    read: &mut Read,
) -> Chosen {
    let mut chosen = Chosen { variants: variants(page, says), ..Chosen::default() };
    let said = Said::of(says);
    let first = |says: &All, wanted: &[Says]| {
        let any = wanted.iter().any(|w| said.has(*w));
        if any { says.iter().position(|s| wanted.contains(s)) } else { None }
    };
    let selected = first(says, &[Says::Selected]);
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
    let level = if said.has(Says::Level) { highest(page, says) } else { None };
    let headline = selected
        .or_else(|| first(says, &[Says::EachLight]))
        .or_else(|| whole(page, says, pack))
        .or_else(|| first(says, &[Says::Bare, Says::Nameplate]))
        .or_else(|| first(says, &[Says::Total]))
        .or(level);
    // "Veg Bloom 1000W ... 110W": a level above the headline is no level.
    let headline = match (headline, level) {
        (Some(h), Some(l))
            if says[h] == Says::Bare && l < h && page.figures[l].high > page.figures[h].high =>
        {
            Some(l)
        }
        (h, _) => h,
    };
    admitted(page, says, arrays, headline, read, &mut chosen);
    chosen.headline = headline.filter(|&k| top(page, &page.figures[k]).is_some());
    if let Some(k) = chosen.headline {
        let f = &page.figures[k];
        // "24W light, pack of 12 (12 x 24W)": the words of the headline, not of its repeat.
        let first = (says[k] == Says::EachLight)
            .then(|| (0..k).find(|&j| says[j] == Says::Bare && (page.figures[j].high - f.high).abs() < SAME))
            .flatten()
            .map_or(f, |j| &page.figures[j]);
        read.advertised_w = top(page, f)
            .map(|value| Taken { value: Stated { value, half_digit: f.half }, span: span(first) });
        conflict(page, says, k, arrays, read);
    } else if headline.is_none()
        && let (Some(k), Some(draw)) = (chosen.draw, read.actual_w)
        && !chosen.variants
    {
        let value = Stated { value: draw.value.high.0, half_digit: page.figures[k].half };
        read.advertised_w = Some(Taken { value, span: draw.span });
    }
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
pub(super) fn highest(page: Page, says: &All) -> Option<usize> {
    (0..says.len())
        .filter(|&k| says[k] == Says::Level)
        .max_by(|&a, &b| page.figures[a].high.total_cmp(&page.figures[b].high))
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
