//! The headline figure and the admitted draw, chosen among the figures of watts.
//!
//! Title beats body, an unqualified figure beats a ratings row, one lamp's figure beats the pack's total. A ratings row below
//! the headline that is not count times class is an admission. A light that states only its draw claims its draw.

use super::admitted::{admitted, is_product};
use super::array::Arrays;
use super::cues::Cues;
use super::figures::Figure;
use super::page::Page;
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
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

/// What is said of a headline besides that it is one.
const QUALIFIED: Set = Set::of(&[Says::Selected, Says::EachLight, Says::Total, Says::Level]);

/// Fills `advertised_w` and `actual_w`.
pub(super) fn choose(
    page: &Page,
    says: &mut All,
    arrays: &Arrays,
    pack: Option<u32>,
    read: &mut Read,
) -> Chosen {
    let mut chosen = Chosen { variants: variants(page, says), ..Chosen::default() };
    let selected = says.first(Set::SELECTED);
    if chosen.variants && selected.is_none() {
        says.leave(Set::SETTING, LeftWhy::Variant);
        read.notes.push(Note::VariantNotSelected);
    } else if chosen.variants {
        says.leave(Set::BARE, LeftWhy::Variant);
    }
    drop_pack_total(page, says, pack);
    // Most texts say none of these.
    let qualified = says.may_have(1, QUALIFIED);
    let level = if qualified { highest(page, says) } else { None };
    let above = || selected.or_else(|| says.first(Set::EACH_LIGHT)).or_else(|| whole(page, says, pack));
    let below = || says.first(Set::TOTAL).or(level);
    let headline = if qualified { above() } else { None }
        .or_else(|| says.first(Set::UNQUALIFIED))
        .or_else(|| if qualified { below() } else { None });
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
    let claim = headline.and_then(|k| Some((k, top(page, &page.figures[k])?)));
    chosen.headline = claim.map(|(k, _)| k);
    if let Some((k, value)) = claim {
        let f = &page.figures[k];
        // "24W light, pack of 12 (12 x 24W)": the words of the headline, not of its repeat.
        let first = (says[k] == Says::EachLight)
            .then(|| says.that(Set::BARE).find(|&j| j < k && (page.figures[j].high - f.high).abs() < SAME))
            .flatten()
            .map_or(f, |j| &page.figures[j]);
        read.advertised_w = Some(Taken { value: Stated { value, half_digit: f.half }, span: span(first) });
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
fn top(page: &Page, f: &Figure) -> Option<f64> {
    let at = usize::from(f.item);
    if !(f.range | f.list) {
        return Some(f.high);
    }
    let dimmed = page.cues.any(Cues::of(&[Role::Switchable, Role::Dim, Role::Level]))
        || page.left(at).cues.any(Cues::of(&[Role::Power, Role::Rating]));
    dimmed.then_some(f.high)
}

/// In a pack, a figure that is the pack's total beside one light's figure.
fn drop_pack_total(page: &Page, says: &mut All, pack: Option<u32>) {
    let Some(units) = pack else { return };
    let each: Option<f64> = says.first(Set::EACH_LIGHT).map(|k| page.figures[k].high);
    says.leave(Set::TOTAL, LeftWhy::PackTotal);
    let Some(each) = each else { return };
    let mut bare = says.places(Set::BARE);
    while let Some(k) = bare.next(says) {
        if (page.figures[k].high - each * f64::from(units)).abs() < SAME {
            says.set(k, Says::Left(LeftWhy::PackTotal));
        }
    }
}

/// The total of one light's parts: "10W bar (4 bars, 40W total)".
fn whole(page: &Page, says: &All, pack: Option<u32>) -> Option<usize> {
    let total = says.first(Set::TOTAL)?;
    let parts = page.cues.any(Cues::of(&[Role::Part, Role::Board]));
    let high = |k: usize| page.figures[k].high;
    let higher = || says.that(Set::BARE).all(|k| high(k) < high(total) + SAME);
    // "40W in total: red 18W, white 22W"
    let sum = || says.that(Set::BARE).map(high).filter(|w| (w - high(total)).abs() > SAME).sum::<f64>();
    (pack.is_none() && higher() && (parts || (sum() - high(total)).abs() < SAME)).then_some(total)
}

/// The highest of the levels.
pub(super) fn highest(page: &Page, says: &All) -> Option<usize> {
    says.that(Set::LEVEL).max_by(|&a, &b| page.figures[a].high.total_cmp(&page.figures[b].high))
}

/// Notes another unqualified figure that differs from the headline.
fn conflict(page: &Page, says: &All, used: usize, arrays: &Arrays, read: &mut Read) {
    let value = page.figures[used].high;
    let other = says.that(Set::BARE).find(|&k| {
        let f = &page.figures[k];
        k != used
            && f.unit == Unit::Watt
            && (f.high - value).abs() > SAME
            && !is_product(page, arrays, f.high)
    });
    if let Some(k) = other {
        read.notes.push(Note::HeadlinesConflict { used: Watts(value), other: Watts(page.figures[k].high) });
    }
}
