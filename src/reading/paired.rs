//! Rows that name two things with a stroke between them and then give both: "wattage (nameplate/actual): 300W/131W".

use super::beside::Beside;
use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::page::Page;
use super::phrase::DRAW;
use super::roles::Role;
use super::says::Says;

/// What is printed on a light.
const PLATE: Cues = Cues::of(&[Role::Rating, Role::Power]);

/// Whether a stroke joins the watts to others.
pub(super) fn stroke_beside(beside: &Beside) -> bool {
    (beside.next.sign | beside.before.sign) & Mark::Slash.bit() != 0
}

/// "(nameplate/actual): 300W/131W", "actual / rated power: 131 W / 300 W", "rated vs real: 300W/131W": what a row of two labels
/// says of the watts, if one label names a draw and the other what is printed. A draw above that is no such row.
#[inline(never)]
pub(super) fn paired(page: &Page, beside: &Beside) -> Option<Says> {
    /// The most words of a label.
    const LONGEST: usize = 6;
    let at = beside.at;
    let second = beside.before.mark == Some(Mark::Slash);
    let first = if second { at.checked_sub(2)? } else { at };
    let (a, b) = (page.figure(first)?, page.figure(first + 2)?);
    if !(page.is_watts(first) && page.is_watts(first + 2) && page.mark(first + 1) == Some(Mark::Slash)) {
        return None;
    }
    let colon = first.checked_sub(1).filter(|&i| matches!(page.mark(i), Some(Mark::Colon | Mark::Equal)))?;
    let end = colon - usize::from(page.mark_before(colon) == Some(Mark::Close));
    let label = end.saturating_sub(LONGEST)..end;
    let stroke =
        label.rev().find(|&i| !matches!(page.what(i), Some(What::Word(role)) if role != Role::Versus))?;
    if stroke == 0 || !(page.mark(stroke) == Some(Mark::Slash) || page.role(stroke) == Role::Versus) {
        return None;
    }
    let left = page.plays(stroke - 1);
    let right = page.items[stroke + 1..end].iter().fold(Cues::default(), |all, item| all.and(item.cue));
    let draws = match (left.any(DRAW), right.any(DRAW)) {
        (false, true) if left.any(PLATE) && b.high <= a.high => second,
        (true, false) if right.any(PLATE) && a.high <= b.high => !second,
        _ => return None,
    };
    Some(if draws { Says::Draw(3) } else { Says::Nameplate })
}
