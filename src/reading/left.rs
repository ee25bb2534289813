//! Words that look like a figure and were not taken, each with its reason.

use super::figures::{Figure, What};
use super::fold::{Fold, Mark, next};
use super::item::Letters;
use super::page::Page;
use super::power::{SAME, span};
use super::roles::Unit;
use super::says::{All, Says, Set};
use crate::facts::{Left, LeftWhy, Read, Span};

/// Lists what was left, in the order of the text.
pub(super) fn list(page: &Page, says: &All, read: &mut Read) {
    /// What figures of watts say that fields of watts may hold, or that are left: all but the class of the diodes.
    const LISTED: Set = Set::of(&[
        Says::Bare,
        Says::Nameplate,
        Says::EachLight,
        Says::Total,
        Says::Level,
        Says::Draw(0),
        Says::Equivalent,
        Says::Selected,
        Says::Left(LeftWhy::Part),
    ]);
    let taken = taken(read);
    for k in says.that(LISTED) {
        let f = &page.figures[k];
        let start = f.start as usize;
        // No two figures start at the same place. Which of the four it is does not matter, so they are counted, without a branch each.
        if taken.iter().filter(|&&at| at == start).count() > 0 {
            continue;
        }
        let Some(mut why) = reason(read, says[k], f) else { continue };
        if why == LeftWhy::OtherDevice && read.advertised_w.is_some() && of_a_driver(page, f) {
            why = LeftWhy::Part;
        }
        read.left.push(Left { span: span(f), why });
    }
    if page.has_unit(&[Unit::Ratio]) && read.colours.is_empty() {
        for f in page.others(false).map(|(_, f)| f).filter(|f| f.unit == Unit::Ratio) {
            read.left.push(Left { span: span(f), why: LeftWhy::Ratio });
        }
    }
    if page.has_codes() {
        for item in page.items.iter().filter(|item| matches!(item.what, What::Code)) {
            let span = Span { start: item.start as usize, end: item.end as usize };
            let counts = || read.colours.iter().any(|c| c.span == span);
            if looks_like_a_figure(&page.text[span.start..span.end]) && !counts() {
                read.left.push(Left { span, why: LeftWhy::ModelNumber });
            }
        }
    }
    // One that two rules left keeps the order of the rules.
    read.left.sort_by_key(|l| l.span);
}

/// Everything on the page belongs to another device.
#[cold]
pub(super) fn other_device(page: &Page, read: &mut Read) {
    for (_, f) in page.watts() {
        read.left.push(Left { span: span(f), why: LeftWhy::OtherDevice });
    }
}

/// The letter w.
const WATT: u32 = 0x77;

/// A code with three digits on end, or digits before a W: `GL-1000`, `KB-240W-4C`.
#[inline(never)]
fn looks_like_a_figure(code: &str) -> bool {
    let mut digits = 0;
    let mut at = 0;
    while let Some((folded, length)) = next(code, at) {
        at += length;
        match folded {
            Fold::Digit(_) => digits += 1,
            Fold::Letter(WATT) if digits > 0 => return true,
            Fold::Mark(Mark::Dash) if digits >= 3 => return true,
            Fold::Skip => {}
            _ => digits = 0,
        }
    }
    digits >= 3
}

/// Where the figures start that fields of watts hold.
fn taken(read: &Read) -> [usize; 4] {
    [
        read.advertised_w.map_or(usize::MAX, |t| t.span.start),
        read.actual_w.map_or(usize::MAX, |t| t.span.start),
        read.class.map_or(usize::MAX, |t| t.span.start),
        read.replaces.map_or(usize::MAX, |t| t.span.start),
    ]
}

/// Why a figure that no field of watts holds was not taken, or none if that is as it should be.
fn reason(read: &Read, says: Says, f: &Figure) -> Option<LeftWhy> {
    let at = span(f);
    // "281W @120V, 276W @240V": both ends of the range are used.
    let ends = |low: f64, high: f64| low < high && (same(f, low) || same(f, high));
    if matches!(says, Says::Draw(_)) && read.actual_w.is_some_and(|t| ends(t.value.low.0, t.value.high.0)) {
        return None;
    }
    let repeats = !f.range && !f.list && read.advertised_w.is_some_and(|t| same(f, t.value.value));
    let why = match says {
        Says::Left(why) => why,
        Says::Equivalent => LeftWhy::Equivalence,
        Says::Class | Says::Nothing => return None,
        Says::Total => LeftWhy::PackTotal,
        Says::Level => LeftWhy::NotFullPower,
        Says::Bare | Says::Nameplate | Says::Selected | Says::EachLight if repeats => LeftWhy::Repeat,
        Says::Bare | Says::Nameplate | Says::Draw(_) | Says::Selected | Says::EachLight => LeftWhy::Outranked,
    };
    let counted = read.colours.iter().any(|c| c.span.start <= at.start && at.end <= c.span.end);
    (!counted).then_some(why)
}

fn same(f: &Figure, watts: f64) -> bool {
    (f.high - watts).abs() < SAME
}

/// "2 drivers 160W each", "(120W driver)": the light's own driver is a part of it.
#[cold]
fn of_a_driver(page: &Page, f: &Figure) -> bool {
    const DRIVERS: [Letters; 3] = Letters::all(["driver", "treiber", "psu"]);
    let at = usize::from(f.item);
    (at.saturating_sub(2)..at + 3).any(|i| DRIVERS.iter().any(|&w| page.starts(i, w)))
}
