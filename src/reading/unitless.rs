//! Numbers without a unit that can only be watts: "actual 247", "315 CMH", "Power (W): 240".

use super::array::{Arrays, LARGEST_BEAD};
use super::beside::Beside;
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::hues::letter_first;
use super::item::Letters;
use super::page::Page;
use super::phrase::{DRAW, POWER};
use super::roles::{Role, Unit};
use super::says::Says;
use super::watts::LAMP;
use crate::facts::ColourWord;

/// "is", between a label and its number.
const IS: [Letters; 3] = Letters::all(["is", "ist", "est"]);

/// Letters that count colours.
const RED: Cues = Role::Letter(ColourWord::Red).cue();

/// Signs after a number that is not done with it.
const GOES_ON: u32 = Mark::bits(&[Mark::Times, Mark::Percent, Mark::Degree, Mark::Colon]);

/// What stands straight before a number that can only be watts: one of these signs ...
const LABELS: u32 = Mark::bits(&[
    Mark::Colon,
    Mark::Equal,
    Mark::Compare,
    Mark::Tilde,
    Mark::Current,
    Mark::Close,
    Mark::Open,
    Mark::Slash,
]);
/// ... or one of these words.
const LABEL: Cues = LABELLED.and(Role::Only.cue());

/// Words without one of which on the page no number without a unit says watts: the unit itself, power, draw, another lamp.
pub(super) const LABELLED: Cues = Cues::LETTERED.and(LAMP).and(Cues::of(&[
    Role::Power,
    Role::DrawAdjective,
    Role::DrawNoun,
    Role::DrawVerb,
    Role::Measured,
]));

/// Less from the wall, without a unit, may be amperes.
const LEAST_AT_THE_WALL: f64 = 10.0;

/// A number without a unit that can only be watts: "actual 247", "315 CMH", "Power (W): 240".
pub(super) fn unitless(page: &Page, f: &Figure, arrays: &Arrays, index: usize) -> Says {
    let at = usize::from(f.item);
    let Beside { before, next, .. } = Beside::of(page, at);
    let lamp = next.cue.any(LAMP) & (f.high >= 20.0) & !f.range;
    let (sign, sign_before) = (next.sign, before.sign);
    let ends = (sign != 0) & (sign & GOES_ON == 0) | (at + 1 >= page.items.len());
    let wall = next.cue.any(Role::At.cue()) & (f.high >= LEAST_AT_THE_WALL);
    let labelled_before = (sign_before & LABELS != 0)
        | before.cue.any(LABEL)
        | matches!(before.role, Role::Approx)
        // "W per LED 5"
        | page.plays(at.wrapping_sub(2)).any(Role::Per.cue())
        | IS.iter().fold(false, |is, &word| is | before.is(word));
    // One test of all that follows: one number of ten or so gets further.
    if !(lamp | (ends | wall) & labelled_before) {
        return Says::Nothing;
    }
    // "pulls 96 from the wall"
    if !(lamp | ends) && !at_the_wall(page, at + 1) {
        return Says::Nothing;
    }
    if f.list || f.worded || f.high < 2.0 || arrays.iter().any(|a| a.count == index) {
        return Says::Nothing;
    }
    if lamp {
        return Says::Equivalent;
    }
    if page.cues.any(Role::Wall.cue()) && second_at_the_wall(page, at) && f.high >= LEAST_AT_THE_WALL {
        return Says::Draw(2);
    }
    if f.high <= LARGEST_BEAD && page.cues.any(Role::Per.cue()) && per_bead(page, at) {
        return Says::Class;
    }
    let mut i = at;
    let mut signed = false;
    while let Some(k) = i.checked_sub(1) {
        match page.items[k].what {
            What::Mark(Mark::Colon | Mark::Equal) => signed = true,
            What::Mark(Mark::Compare | Mark::Tilde | Mark::Current | Mark::Close | Mark::Open) => {}
            What::Word(Role::Approx | Role::Only) => {}
            // "Watts (claimed): 1000"
            What::Word(Role::Rating) if signed => {}
            // "whose actual wattage is 103"
            What::Word(Role::None) if IS.iter().any(|&w| page.is(k, w)) => {}
            What::Word(Role::Unit(Unit::Watt)) if page.role_before(k) == Role::DrawAdjective => {
                return Says::Draw(3);
            }
            // "nominal watts 700, measured watts 146", "power in watts 240"
            What::Word(Role::Unit(Unit::Watt)) if k + 1 == at && page.role_before(k) == Role::Measured => {
                return Says::Draw(3);
            }
            What::Word(Role::Unit(Unit::Watt))
                if k + 1 == at && (page.role_before(k) == Role::Rating || power_in(page, k)) =>
            {
                return labelled(page, k);
            }
            // "W:126 R:42": white diodes.
            What::Word(Role::Unit(Unit::Watt)) if page.cues.any(RED) && letter_first(page, k) => {
                return Says::Nothing;
            }
            // "Consumption (W) 186"
            What::Word(Role::Unit(Unit::Watt)) if k + 2 == at && in_brackets(page, k) => {
                return labelled(page, k - 1);
            }
            What::Word(Role::Unit(Unit::Watt)) => {
                // "| W 100 |"
                signed |= k + 1 == at && page.cell(k);
                return if signed { labelled(page, k) } else { Says::Nothing };
            }
            What::Word(Role::Power) if page.role_before(k) == Role::DrawAdjective => return Says::Draw(3),
            What::Word(Role::Power) if signed => return labelled(page, k + 1),
            What::Word(Role::DrawAdjective | Role::DrawNoun | Role::Measured | Role::DrawVerb) => {
                return if page.cue(k).any(DRAW) { Says::Draw(2) } else { Says::Nothing };
            }
            _ => return Says::Nothing,
        }
        i = k;
    }
    Says::Nothing
}

/// "watts per bead: 10": a label for the class before the number at item `at`.
#[cold]
fn per_bead(page: &Page, at: usize) -> bool {
    // A cell of its own needs no sign: "| W per LED 5".
    let sign = usize::from(matches!(page.mark_before(at), Some(Mark::Colon | Mark::Equal)));
    at >= 3 + sign
        && (sign == 1 || page.mark_before(at - 3) == Some(Mark::Pipe))
        && matches!(page.role(at - 1 - sign), Role::Chip | Role::Diode | Role::Led)
        && page.role(at - 2 - sign) == Role::Per
        && matches!(page.role(at - 3 - sign), Role::Unit(Unit::Watt) | Role::Power)
}

/// "power (W)", "Verbrauch (W)": the unit at item `k` alone in brackets after a word for power or draw.
#[inline(never)]
fn in_brackets(page: &Page, k: usize) -> bool {
    page.mark_before(k) == Some(Mark::Open)
        && page.mark(k + 1) == Some(Mark::Close)
        && k >= 2
        && page.plays(k - 2).any(POWER)
}

/// "from the wall", "at your outlet": from the small word at item `i` on.
#[inline(never)]
fn at_the_wall(page: &Page, i: usize) -> bool {
    (i + 1..i + 3).any(|k| page.role(k) == Role::Wall)
}

/// Whether a label that ends before item `k` names a draw or a power.
#[cold]
fn labelled(page: &Page, k: usize) -> Says {
    let left = page.left(k);
    if left.cues.any(DRAW) { Says::Draw(3) } else { Says::Nameplate }
}

/// "Watts: 480 (nameplate) / 231 (at the plug)": the second number of a row of watts, with its place in brackets.
#[cold]
fn second_at_the_wall(page: &Page, at: usize) -> bool {
    let watts = |i: usize| page.role(i) == Role::Unit(Unit::Watt) || page.role(i) == Role::Power;
    page.mark_before(at) == Some(Mark::Slash)
        && page.mark(at + 1) == Some(Mark::Open)
        && at_the_wall(page, at + 2)
        && (at.saturating_sub(8)..at - 1).any(|i| watts(i) && page.mark(i + 1) == Some(Mark::Colon))
}

/// "power in watts", "Leistung in Watt": before the unit at item `k`.
fn power_in(page: &Page, k: usize) -> bool {
    k >= 2
        && matches!(page.role(k - 2), Role::Power | Role::DrawNoun)
        && [const { Letters::of("in") }, const { Letters::of("en") }].iter().any(|&w| page.is(k - 1, w))
}
