//! What each figure of watts says, by the words on both sides of it. The order of the rules is the argument: a figure that
//! another device, a denial or a comparison owns is never looked at as the light's.

use super::admitted::is_product;
use super::array::{Array, Arrays, LARGEST_BEAD, Of, denied};
use super::beside::Beside;
use super::class::class;
use super::compared::equivalent;
use super::cues::Cues;
use super::drawn::{Before, draw};
use super::figures::Figure;
use super::fold::Mark;
use super::foreign::{denied_before, dimension, every_length, foreign};
use super::letters::{LETTER, white_letter};
use super::page::Page;
use super::paired::{paired, stroke_beside};
use super::partial;
use super::phrase::{DRAW, Phrase};
use super::rival::{moved_on, rival};
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
use super::steps;
use super::unitless::{LABELLED, unitless};
use crate::facts::{LampKind, LeftWhy};

pub(super) const LAMP: Cues = Cues::of(&[Role::Lamp(LampKind::Hps)]);
pub(super) const BEAD: Cues = Cues::of(&[Role::Diode, Role::Chip]);
pub(super) const THING: Cues = Cues::of(&[Role::Light, Role::Lights, Role::Led]);

/// What the rules ask the phrase after a figure for; on a page with none of it, nobody reads that phrase. What is asked for
/// only beside one of these need not be here.
const AFTER: Cues = DRAW.and(Cues::of(&[
    Role::Load,
    Role::Dim,
    Role::Each,
    Role::Double,
    Role::Selected,
    Role::Only,
    Role::Total,
]));

/// Says of every figure what it says, in the order of the figures.
pub(super) fn classify(page: &Page, arrays: &Arrays, pack: Option<u32>) -> All {
    let mut all = All::nothing(page.figures.len());
    if page.cues.any(LABELLED) {
        for (index, f) in page.bare() {
            let says = unitless(page, f, arrays, index);
            // Nearly all numbers say no watts, which is what a figure says before anything is set.
            if says != Says::Nothing {
                all.set(index, says);
            }
        }
    }
    // What the watts of an array say, unless a denial or another seller owns them.
    for array in arrays {
        all.set(array.watts, of_array(array.of));
    }
    let (mut last, mut drawn) = (0, false);
    let rows = if page.cues.any(Role::DrawNoun.cue()) { page.rows_of_watts() } else { 0 };
    for (index, f) in page.watts() {
        let before = Before { all: &all[..index], last, drawn, rows };
        let says = watts(page, f, arrays, pack, &before, all[index]);
        all.set(index, says);
        (last, drawn) = (index, matches!(says, Says::Draw(_)));
    }
    partial::leave(page, pack, &mut all);
    if all.may_have(2, Set::ANY) {
        partial::leave_beside_others(page, pack, &mut all);
        steps::leave(page, pack, &mut all);
    }
    all
}

/// What the watts of an array say.
const fn of_array(of: Of) -> Says {
    match of {
        Of::Diodes | Of::Cobs => Says::Class,
        Of::Parts => Says::Left(LeftWhy::Part),
        Of::Lights => Says::EachLight,
        Of::Device => Says::Left(LeftWhy::OtherDevice),
        Of::Rivals => Says::Left(LeftWhy::OtherLight),
        Of::Replaced => Says::Equivalent,
    }
}

/// "a", which is also read as ampere, and "an", which is also German for "at".
const ARTICLE: Cues = Cues::of(&[Role::Unit(Unit::Amp), Role::At]);

/// What a figure of watts says; `in_array` is what it says as the watts of an array.
fn watts(
    page: &Page,
    f: &Figure,
    arrays: &Arrays,
    pack: Option<u32>,
    before: &Before,
    in_array: Says,
) -> Says {
    let at = usize::from(f.item);
    let beside = &Beside::of(page, at);
    if page.cues.any(LETTER) && white_letter(page, at) || dimension(page, beside) {
        return Says::Left(LeftWhy::Dimension);
    }
    if stroke_beside(beside)
        && page.has_mark(Mark::Colon)
        && let Some(says) = paired(page, beside)
    {
        return says;
    }
    // "15W per tube" in a pack of tubes.
    let of_a_light = f.per && pack.is_some() && page.role(at + 2) == Role::Part;
    if f.per && !of_a_light {
        let part = matches!(page.role(at + 2), Role::Part | Role::Board);
        return Says::Left(if part { LeftWhy::Part } else { LeftWhy::PerArea });
    }
    if page.has_unit(&[Unit::Length, Unit::Metre]) && every_length(page, at) {
        return Says::Left(LeftWhy::PerArea);
    }
    if page.cues.any(Role::Deny.cue()) && (denied_before(page, at) || denied(page, at)) {
        // "Say no to 400W HPS" turns down another lamp, as "no more 400W HPS" does.
        let lamp = beside.before_a_lamp() && beside.before.role == Role::To;
        return if lamp { Says::Equivalent } else { Says::Left(LeftWhy::Denied) };
    }
    if let Some(why) = rival(page, beside, f.high) {
        return Says::Left(why);
    }
    if beside.before.cue.any(ARTICLE) && moved_on(page, at, before) {
        return Says::Left(LeftWhy::OtherLight);
    }
    // "others count 200 x 5W and call it 1000W"
    let multiplied = |a: &Array| {
        a.of == Of::Rivals && page.figures[a.watts].item < f.item && is_product(page, &[*a], f.high)
    };
    if page.cues.any(Role::Rival.cue()) && arrays.iter().any(multiplied) {
        return Says::Left(LeftWhy::OtherLight);
    }
    if in_array != Says::Nothing {
        return in_array;
    }
    let left = page.left(at);
    let right = if page.cues.any(AFTER) { page.right(at) } else { Phrase::default() };
    let says = in_phrases(page, f, beside, arrays, pack, before, (&left, &right));
    debug_assert!(
        says == in_phrases(page, f, beside, arrays, pack, before, (&left, &page.right(at))),
        "a rule asks the phrase after a figure for a role that AFTER does not name"
    );
    says
}

/// What a figure of watts that no array has says by the phrases before and after it.
fn in_phrases(
    page: &Page,
    f: &Figure,
    beside: &Beside,
    arrays: &Arrays,
    pack: Option<u32>,
    before: &Before,
    (left, right): (&Phrase, &Phrase),
) -> Says {
    if let Some(why) = foreign(page, beside, (left.cues, left.near), (right.cues, right.near)) {
        return Says::Left(why);
    }
    if equivalent(page, beside, left.cues) {
        return Says::Equivalent;
    }
    // "old 3W chips are no longer fitted": the diodes of other lights.
    if page.cues.any(Role::Traditional.cue())
        && beside.before.role == Role::Traditional
        && f.high <= LARGEST_BEAD
        && page.first_right(beside.at, BEAD.and(THING), 3).any(BEAD)
    {
        return Says::Left(LeftWhy::OtherLight);
    }
    // "6 pcs 3W LED chips 18W": what they make together.
    let together = || arrays.iter().any(|a| a.of == Of::Diodes && is_product(page, &[*a], f.high));
    if class(page, f, beside, pack, left, right) && !together() {
        return Says::Class;
    }
    // "LED type: 3W driven at a gentle 1.4W": what each diode is given.
    if page.cues.any(Role::Drive.cue())
        && f.high <= LARGEST_BEAD
        && (beside.at.saturating_sub(4)..beside.at).any(|i| page.role(i) == Role::Drive)
        && page.watts().any(|(_, w)| w.high > LARGEST_BEAD.max(5.0 * f.high))
    {
        return Says::Left(LeftWhy::Part);
    }
    if left.near.and(right.near).any(Role::Selected.cue()) && selected(page, beside, left, right) {
        return Says::Selected;
    }
    draw(page, f, beside, pack, before, (left, right))
}

/// Whether the watts are those of the variant that was chosen.
#[cold]
fn selected(page: &Page, beside: &Beside, left: &Phrase, right: &Phrase) -> bool {
    let selected = Role::Selected.cue();
    let one = !(beside.followed_by(Mark::Slash) && page.is_watts(beside.at + 2));
    // "Selected: 2ft 10W", but not "power draw of this size: 318W"
    let sized = usize::from(page.figure_before(beside.at).is_some_and(|l| l.unit == Unit::Length));
    // "pick your size: 25W (78 LED) / 45W" leaves the choice to the reader.
    let before = left.near.any(selected)
        && page.mark_before(beside.at - sized) == Some(Mark::Colon)
        && !left.cues.any(DRAW.and(Role::Choose.cue()));
    let after = right.near.any(selected) && beside.followed_by(Mark::Open);
    one && (before || after)
}
