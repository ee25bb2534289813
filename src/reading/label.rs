//! Labels before a number that counts diodes: "LED Qty: 96", "Diodes: 576".

use super::array::DIODE;
use super::counted::FEWEST_PIECES;
use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::roles::{Role, Unit};
use super::watts::BEAD;

const SOURCE: Letters = Letters::of("source");

/// Whether a label may end straight before the number at item `at`: before most numbers stands another sign, a figure or another
/// word.
pub(super) fn may_be_labelled(page: &Page, at: usize) -> bool {
    /// The signs that may stand between a label and its number.
    const SIGNS: u32 = Mark::bits(&[
        Mark::Colon,
        Mark::Equal,
        Mark::Question,
        Mark::Pipe,
        Mark::Dash,
        Mark::Compare,
        Mark::Tilde,
        Mark::Open,
        Mark::Close,
        Mark::Foot,
    ]);
    /// What the last word of a label may be, as far as it has a cue.
    const WORDS: Cues = THINGS.and(Cues::of(&[Role::Total, Role::Kind]));
    let last = at.wrapping_sub(1);
    let small =
        matches!(page.role(last), Role::Of | Role::DoubleEnded | Role::Approx | Role::Unit(Unit::Second));
    (page.sign(last) & SIGNS != 0) | page.plays(last).any(WORDS) | small | page.starts(last, SOURCE)
}

/// What a label names, as far as it has a cue.
const THINGS: Cues = DIODE.and(Cues::of(&[Role::Quantity, Role::Pieces]));

/// "LED Qty: 96", "Number of LEDs: 150", "Diodes: 576", "Chips 60": the same where [`may_be_labelled`] says that there may be one.
pub(super) fn label_before(page: &Page, at: usize) -> bool {
    // None of the words before may name diodes, or a quantity.
    let from = at.saturating_sub(5);
    let words = &page.items[from..at];
    let names = words.iter().fold(false, |any, item| any | item.cue.any(THINGS) | item.starts(SOURCE));
    if !names {
        return false;
    }
    let (mut i, mut signed, mut quantity, mut diode) = (at, false, false, false);
    let (mut chip, mut starts, mut classed) = (false, true, false);
    let ends = |m: Option<Mark>| matches!(m, Some(Mark::Pipe | Mark::Line));
    // "| LEDs | 1152 |"
    let cell = ends(page.mark_before(at)) && (at + 1 == page.items.len() || ends(page.mark(at + 1)));
    // "Quantity: 2" may be lamps.
    let many = page.figure(at).is_some_and(|n| n.high >= FEWEST_PIECES);
    for _ in 0..5 {
        let Some(k) = i.checked_sub(1) else { break };
        i = k;
        match page.items[i].what {
            What::Mark(Mark::Colon | Mark::Equal | Mark::Question) if i + 1 == at => signed = true,
            What::Mark(Mark::Pipe) if cell && i + 1 == at => signed = true,
            What::Mark(Mark::Pipe | Mark::Line) if cell => return diode || quantity && signed && many,
            What::Mark(Mark::Dash)
                if i + 1 == at
                    && page.breaks(i)
                    && page.what(at + 1).is_none_or(|w| matches!(w, What::Mark(_))) =>
            {
                signed = true;
            }
            What::Mark(Mark::Compare | Mark::Tilde | Mark::Open | Mark::Close) => {}
            // "LEDs (3W) 100"
            What::Figure(_)
                if page.mark(k + 1) == Some(Mark::Close) && page.mark_before(k) == Some(Mark::Open) =>
            {
                classed = page.is_watts(k);
            }
            // "LED's: 100"
            What::Mark(Mark::Foot) => {}
            What::Word(Role::Unit(Unit::Second)) if page.mark_before(i) == Some(Mark::Foot) => {}
            // "Number of light sources: 225"
            What::Word(_) if many && page.starts(i, SOURCE) && page.role_before(i) == Role::Light => {
                diode = true;
                i -= 1;
            }
            What::Word(Role::Quantity) => quantity = true,
            What::Word(Role::Pieces) if i + 1 == at || signed => quantity = true,
            What::Word(Role::Of | Role::DoubleEnded | Role::Approx | Role::Total | Role::Kind) => {}
            // "watts per LED: 3"
            What::Word(Role::Diode | Role::Chip | Role::Led) if page.role_before(i) == Role::Per => {
                return false;
            }
            What::Word(Role::Diode) => {
                diode = true;
                // "LEDs (100)"
                let bracketed = page.mark(at + 1) == Some(Mark::Close) && i + 2 == at;
                let total = i + 2 == at && page.role(i + 1) == Role::Total;
                signed |= i + 1 == at || bracketed || classed || total;
            }
            What::Word(Role::Chip | Role::Led) => {
                diode = true;
                chip |= page.role(i) == Role::Chip;
                signed |= i + 1 == at && page.role(at + 1) == Role::Pieces;
            }
            _ => {
                starts = page.breaks(i);
                break;
            }
        }
    }
    // "Model number: 1000" is no quantity.
    if quantity && (diode || signed && many && starts) || diode && signed {
        return true;
    }
    // "QTY 80!!", "LED bead 96": a statement by itself, from one break to the next.
    let alone = starts && (at + 1 == page.items.len() || page.breaks(at + 1));
    alone && (chip || quantity && many && page.cues.any(BEAD))
}
