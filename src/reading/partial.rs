//! Draws that are not the whole light's at full power: at a dimmed level, on standby, in one mode, of one part, of another
//! device. Taken for the light's they would convict an honest maker out of the maker's own mouth.

use super::array::heads;
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::levels::{after_draw_words, leave_dimmed, lower_level, one_mode};
use super::page::Page;
use super::phrase::DRAW;
use super::rated::feeds;
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
use super::watts::BEAD;
use crate::facts::{ColourWord, LeftWhy};

/// What a light is put together from, several of each.
pub(super) const PARTS: Cues = Cues::of(&[Role::Part, Role::Board, Role::Cob]);

/// Any colour.
const HUES: Cues = Role::Colour(ColourWord::Red).cue();

/// Leaves the draws that are not the whole light's at full power.
pub(super) fn leave(page: &Page, pack: Option<u32>, says: &mut All) {
    let mut draws = says.places(Set::DRAW);
    while let Some(k) = draws.next(says) {
        if let Some(why) = why(page, &page.figures[k], pack) {
            says.set(k, Says::Left(why));
        }
    }
    if page.cues.any(Role::Device.cue()) & says.may_have(1, Set::NAMEPLATE) {
        fans(page, says);
    }
}

/// Leaves of several figures those that are a total of the pack, or below the full power that a higher one gives.
pub(super) fn leave_beside_others(page: &Page, pack: Option<u32>, says: &mut All) {
    if let Some(pack) = pack {
        pack_total(page, pack, says);
    }
    if page.cues.any(Role::Level.cue()) & says.may_have(1, Set::LEVEL) {
        leave_modes(page, says);
    }
    let dimmed = page.may.any(Role::Dim.cue()) & says.may_have(1, Set::of(&[Says::Nameplate, Says::Level]));
    if page.has_unit(&[Unit::Percent]) | page.may.any(Role::Switchable.cue()) | dimmed {
        leave_dimmed(page, says);
    }
}

/// "600W light, veg: 128W": a level that is named and is not the full one is no draw of the whole light.
#[inline(never)]
fn leave_modes(page: &Page, says: &mut All) {
    let mut levels = says.places(Set::LEVEL);
    while let Some(k) = levels.next(says) {
        let at = usize::from(page.figures[k].item);
        let higher = || says.that(Set::SETTING).any(|j| page.figures[j].high > page.figures[k].high);
        if one_mode(page, at, after_draw_words(page, at)) && higher() {
            says.set(k, Says::Left(LeftWhy::NotFullPower));
        }
    }
}

/// "Fan power: 5W" below the headline is not what the light admits to.
#[inline(never)]
fn fans(page: &Page, says: &mut All) {
    let mut plates = says.places(Set::NAMEPLATE);
    while let Some(k) = plates.next(says) {
        if of_a_device(page, usize::from(page.figures[k].item)) {
            says.set(k, Says::Left(LeftWhy::OtherDevice));
        }
    }
}

/// "one lamp draws 185W, both 370W": the draw of all lights of the pack beside one light's.
#[inline(never)]
fn pack_total(page: &Page, pack: u32, says: &mut All) {
    if says.that(Set::DRAW).nth(1).is_none() {
        return;
    }
    let mut draws = says.places(Set::DRAW);
    while let Some(k) = draws.next(says) {
        let total = page.figures[k].high;
        if says.that(Set::DRAW).any(|j| (page.figures[j].high * f64::from(pack) - total).abs() < 0.5) {
            says.set(k, Says::Left(LeftWhy::PackTotal));
        }
    }
}

#[inline(never)]
fn why(page: &Page, f: &Figure, pack: Option<u32>) -> Option<LeftWhy> {
    let at = usize::from(f.item);
    let after = after_draw_words(page, at);
    if lower_level(page, at, after)
        || (page.cues.any(Role::Level.cue()) || page.cues.any(Role::Only.cue()) && page.cues.any(HUES))
            && one_mode(page, at, after)
    {
        return Some(LeftWhy::NotFullPower);
    }
    if page.cues.any(Role::Device.cue()) && of_a_device(page, at) {
        return Some(LeftWhy::OtherDevice);
    }
    if pack.is_some() && of_all(page, at) {
        return Some(LeftWhy::PackTotal);
    }
    if pack.is_some() && page.cues.any(PARTS.and(BEAD)) && each_panel(page, at) {
        return None;
    }
    // The only figure of a pack is said of its lights, whatever they are called.
    let alone = || page.watts().count() == 1;
    let part = page.may.any(PARTS) && numbered_part(page, at)
        || (per_part(page, at) || per_part_before(page, at)) && !(pack.is_some() && alone());
    (part || page.has_mark(Mark::Times) && times(page, after) || of_each(page, at, pack))
        .then_some(LeftWhy::Part)
}

/// "fan power consumption 38W", "timer uses 3W": the subject of the draw is another device, and none that feeds the light.
/// "LED with dimmer, actual power 110W" is about the light.
#[inline(never)]
fn of_a_device(page: &Page, at: usize) -> bool {
    let mut i = at;
    let mut draws = false;
    while let Some(before) = i.checked_sub(1) {
        i = before;
        match page.what(i) {
            Some(What::Word(Role::Device)) => {
                return draws && !feeds(page, i) && !page.starts(i, const { Letters::of("dimmer") });
            }
            Some(What::Word(Role::DrawNoun | Role::DrawVerb | Role::Input)) => draws = true,
            Some(What::Word(Role::Power)) => draws = true,
            Some(What::Word(Role::Rating | Role::Approx | Role::UpTo | Role::Only)) => {}
            Some(What::Word(Role::None)) if page.is(i, const { Letters::of("is") }) => {}
            Some(What::Mark(Mark::Colon | Mark::Equal)) => {}
            _ => return false,
        }
    }
    false
}

/// "true draw 44W for both lamps", "consumption 44W total" of a pack: what all its lights draw.
#[cold]
fn of_all(page: &Page, at: usize) -> bool {
    let all = |i: usize| {
        matches!(page.role(i), Role::Total | Role::All) || page.is(i, const { Letters::of("both") })
    };
    let open = usize::from(page.mark(at + 1) == Some(Mark::Open));
    (at + 1 + open..at + 5).take_while(|&i| matches!(page.what(i), Some(What::Word(_)))).any(all)
        || at > 0 && page.is(at - 1, const { Letters::of("both") })
}

/// "2 pack ... each panel consumes 43W", "110W per panel": where no number of panels is given, the panels are the lights of the pack.
#[cold]
fn each_panel(page: &Page, at: usize) -> bool {
    let panel = |i: usize| page.starts(i, const { Letters::of("panel") }) && page.role(i - 1) == Role::Each;
    let end = after_draw_words(page, at);
    let after = per(page, end) && page.starts(end + 1, const { Letters::of("panel") });
    (after || (at.saturating_sub(4).max(1)..at).any(panel)) && heads(page).is_none()
}

fn per(page: &Page, i: usize) -> bool {
    page.may_be(i, Role::Per.cue())
}

fn is_part(page: &Page, i: usize) -> bool {
    page.may_be(i, PARTS.and(BEAD))
}

/// "95W par barre", "120W per driver", "75W per LED bar": per part, straight after item `at`.
pub(super) fn per_part(page: &Page, at: usize) -> bool {
    let said = page.may.any(PARTS.and(BEAD)) & (page.may.any(Role::Per.cue()) | page.has_mark(Mark::Slash));
    if !said {
        return false;
    }
    let slash = page.mark(at + 1) == Some(Mark::Slash);
    (1..=3).any(|d| {
        let words = (at + 1..at + d).all(|i| {
            page.cue(i).any(DRAW) || matches!(page.role(i), Role::Power) || page.mark(i) == Some(Mark::Open)
        });
        words && (per(page, at + d) || d == 1 && slash) && named_part(page, at + d + 1)
    })
}

/// A part at item `i` or after one word.
fn named_part(page: &Page, i: usize) -> bool {
    is_part(page, i) || page.role(i) == Role::Led && is_part(page, i + 1)
}

/// "consumo por barra 100W", "Leistungsaufnahme pro Modul: 25W", "each bar draws 80W".
#[inline(never)]
fn per_part_before(page: &Page, at: usize) -> bool {
    if !(page.may.any(PARTS.and(BEAD)) & page.may.any(Cues::of(&[Role::Per, Role::Each]))) {
        return false;
    }
    let mut i = at;
    for _ in 0..8 {
        let Some(before) = i.checked_sub(1) else { return false };
        i = before;
        match page.what(i) {
            Some(What::Word(_)) if is_part(page, i) => return distributed(page, i),
            Some(What::Word(_) | What::Mark(Mark::Colon | Mark::Equal | Mark::Open | Mark::Close)) => {}
            _ => return false,
        }
    }
    false
}

/// "per bar", "per-bar", "each LED bar", "each of the 4 boards": whether the part at item `i` stands for every part.
#[inline(never)]
fn distributed(page: &Page, mut i: usize) -> bool {
    for _ in 0..7 {
        let Some(before) = i.checked_sub(1) else { return false };
        i = before;
        if per(page, i) || page.role(i) == Role::Each {
            return true;
        }
        let passes = matches!(page.role(i), Role::Led | Role::Of | Role::At | Role::Kind | Role::Colour(_))
            || page.what(i) == Some(What::Code)
            || page.mark(i) == Some(Mark::Dash) && !page.breaks(i)
            || page.figure(i).is_some_and(|n| n.unit == Unit::Bare);
        if !passes {
            return false;
        }
    }
    false
}

/// "four 100W (actual) boards": the draw of each of the parts that a number before and their name after enclose.
#[inline(never)]
fn numbered_part(page: &Page, at: usize) -> bool {
    let several = at > 0 && page.figure(at - 1).is_some_and(|n| n.unit == Unit::Bare && n.high >= 2.0);
    let between = |i: &usize| {
        page.cue(*i).any(DRAW)
            || page.role(*i) == Role::Power
            || matches!(page.mark(*i), Some(Mark::Open | Mark::Close))
    };
    several && page.may_be((at + 1..at + 5).take_while(between).count() + at + 1, PARTS)
}

/// "60W actual power x 4": a number of them, of which the sign stands at item `i`.
fn times(page: &Page, i: usize) -> bool {
    page.mark(i) == Some(Mark::Times)
        && page.mark(i + 2) != Some(Mark::Times)
        && page.figure(i + 1).is_some_and(|n| n.unit == Unit::Bare && n.high >= 2.0)
}

/// "4 boards of 120W actual power each", "two channels each consuming 300W": each of the parts; in a pack, only where parts
/// are named, for each of the lights draws it otherwise.
#[inline(never)]
fn of_each(page: &Page, at: usize, pack: Option<u32>) -> bool {
    if !page.cues.any(Role::Each.cue()) {
        return false;
    }
    let whole = |i: usize| matches!(page.role(i + 1), Role::Light | Role::Lights);
    let after = at + 1..at + 5;
    let ends = |i: &usize| matches!(page.what(*i), Some(What::Word(_)));
    let after = after.take_while(ends).find(|&i| page.role(i) == Role::Each && !whole(i));
    let before = (at.saturating_sub(4)..at)
        .rev()
        .take_while(|&i| ends(&i) || matches!(page.mark(i), Some(Mark::Colon | Mark::Equal)))
        .find(|&i| page.role(i) == Role::Each && !whole(i));
    if after.is_none() && before.is_none() {
        return false;
    }
    let parts: Cues = Role::Part.cue();
    pack.is_none() || page.left(at).cues.any(parts) || page.right(at).cues.any(parts)
}
