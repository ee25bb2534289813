//! How many lights may be sold together, and numbers that tell of other goods.

use super::figures::What;
use super::item::Letters;
use super::listed::Listed;
use super::page::Page;
use super::roles::{Role, Unit};
use crate::facts::{Span, Taken};

/// Most lights that one listing sells as a pack.
pub(super) const MOST: f64 = 500.0;
/// Most lights that a bare "2 pcs" stands for; more are diodes.
pub(super) const MOST_PIECES: f64 = 10.0;

/// The pack of so many lights, read from byte `start` to `end`; one light is none.
pub(super) fn taken(value: f64, start: u32, end: u32) -> Option<Taken<u32>> {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "checked to be 2 to 500")]
    ((2.0..=MOST).contains(&value) && value.fract() == 0.0)
        .then_some(Taken { value: value as u32, span: Span { start: start as usize, end: end as usize } })
}

/// "730nm x 8pcs": a wavelength, temperature or colour before the cross at item `i`.
pub(super) fn of_a_colour(page: &Page, i: usize) -> bool {
    matches!(page.role_before(i), Role::Colour(_))
        || page.figure_before(i).is_some_and(|f| matches!(f.unit, Unit::Nanometre | Unit::Kelvin))
}

/// "sold in cartons of 10 pcs", "min order 10 pcs", "365nm 6 pcs": how the goods are shipped, or diodes of a colour.
pub(super) fn of_a_carton(page: &Page, i: usize) -> bool {
    const TRADE: [Letters; 5] = Letters::all(["cartons", "boxes", "order", "moq", "kartons"]);
    of_a_colour(page, i) || (i.saturating_sub(3)..i).any(|k| TRADE.iter().any(|&w| page.is(k, w)))
}

/// "three in the box", "drei im Set", "trois dans la boîte": before the word for a pack at item `i`.
pub(super) fn in_the_box(page: &Page, i: usize) -> Option<Taken<u32>> {
    const THE: Listed<3> = Listed::of(["the", "la", "le"]);
    let the = usize::from(i > 0 && page.is_one(i - 1, &THE));
    let within = i.checked_sub(1 + the)?;
    let n = match page.what(within)? {
        // "4 in the box" looks like a length.
        What::Figure(_) if the == 1 && page.words(within).ends_with("in") => page.figure(within)?,
        What::Word(_) if page.is_one(within, &const { Listed::of(["in", "im", "dans"]) }) => {
            page.figure_before(within).filter(|n| n.unit == Unit::Bare)?
        }
        _ => return None,
    };
    if n.range || n.list { None } else { taken(n.high, n.start, page.items[i].end) }
}
