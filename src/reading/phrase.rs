//! The phrases to the left and to the right of a figure, and the cues in them.
//!
//! A phrase ends at a break (comma, full stop, line, stroke ...) or at another figure in watts. Between two figures with
//! no break ("1000W actual 110W") a word that introduces what follows goes with the second, the others with the first.

use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::page::{MAY_BREAK, Page};
use super::roles::{Role, Unit};
use super::watts::THING;

/// Most items that a phrase reaches.
pub(super) const REACH: usize = 14;

/// Words that say a figure is a draw.
pub(super) const DRAW: Cues =
    Cues::of(&[Role::DrawVerb, Role::DrawAdjective, Role::DrawNoun, Role::Input, Role::Wall, Role::Measured]);

/// Words for a draw that are about the light where its name stands between them and a figure; a verb is about the figure.
const STATES: Cues = DRAW.without(Role::DrawVerb.cue());

/// Words for power and draw, that a figure follows.
pub(super) const POWER: Cues =
    Cues::of(&[Role::Power, Role::DrawNoun, Role::DrawVerb, Role::Rating, Role::Input]);

/// Words that introduce the figure after them.
pub(super) const INTRODUCES: Cues = DRAW.and(Cues::of(&[
    Role::Only,
    Role::Power,
    Role::Rating,
    Role::Replaces,
    Role::Versus,
    Role::Level,
    Role::Dim,
    Role::Device,
    Role::Load,
    Role::Deny,
    Role::Save,
    Role::Kind,
]));

/// Figures that end a phrase, or may.
const NUMBERS: Cues = Cues::WATTS.and(Cues::BARE);

/// Signs that end the phrase after a figure, besides those that end any.
const ENDS: u32 = Mark::LABEL | Mark::bits(&[Mark::Open, Mark::Close]);

/// What stands on one side of a figure.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Phrase {
    /// The roles in it.
    pub cues: Cues,
    /// The role of the nearest word, approximations skipped.
    pub near: Cues,
}

impl<'a> Page<'a> {
    /// The phrase that leads up to item `at`.
    ///
    /// Which kind of item comes next nobody can foretell: whatever may end the phrase is found by one test, and what does not is
    /// taken in without a branch.
    pub(super) fn left(&self, at: usize) -> Phrase {
        let mut near = Cues::default();
        let (mut all, mut introduced, mut seen) = (Cues::default(), Cues::default(), false);
        // The words for a draw, once a word for a light stands between them and the figure.
        let mut behind_a_light = Cues::default();
        let (mut i, from) = (at, at.saturating_sub(REACH));
        while i > from {
            i -= 1;
            let item = &self.items[i];
            let sign = item.sign;
            if (sign & MAY_BREAK != 0) | item.cue.any(NUMBERS) {
                if item.cue.any(Cues::WATTS) {
                    all = introduced;
                    break;
                }
                let ends = if sign == 0 { !self.of_lamps(i) } else { !self.passes(i, at) && self.breaks(i) };
                if ends {
                    break;
                }
            }
            let mut cue = self.cue_of(i, item);
            if cue.any(behind_a_light) && self.beyond(i, at) {
                // "low consumption LED light 45W": the light is between, so the word is about the light.
                cue = cue.without(STATES);
            }
            behind_a_light = if cue.any(THING) { STATES } else { behind_a_light };
            all = all.and(cue);
            let leads = cue.any(Role::Equivalent.cue()) && self.leads(i);
            introduced = if cue.any(INTRODUCES) | leads { all } else { introduced };
            // Nearly always the first item, so this is asked of no more.
            if !seen {
                let small = matches!(item.role, Role::Approx | Role::UpTo | Role::To | Role::At | Role::Of);
                let figure = self.figure(i).is_some_and(|figure| figure.unit != Unit::Percent);
                seen = !((sign != 0) | small | figure);
                near = if seen { cue } else { near };
            }
        }
        Phrase { cues: all, near }
    }

    /// Whether the light itself is named between items `i` and `at`, with no word for power after it, and not each one of several.
    #[inline(never)]
    fn beyond(&self, i: usize, at: usize) -> bool {
        (i + 1..at)
            .rev()
            .take_while(|&k| !(self.cue(k).any(POWER) | (self.sign(k) & Mark::LABEL != 0)))
            .any(|k| self.plays(k).any(THING) && !self.one_of(k))
    }

    /// "a 2-lamp 64W fixture": whether the number at item `i` says how many lamps are in it.
    fn of_lamps(&self, i: usize) -> bool {
        self.mark(i + 1) == Some(Mark::Dash) && self.role(i + 2) == Role::Light
    }

    #[inline(never)]
    /// Whether the word at item `i` leads to what follows: "equivalent to", "equivalent: ".
    pub(super) fn leads(&self, i: usize) -> bool {
        if matches!(self.role(i + 1), Role::To | Role::Of | Role::Lamp(_))
            || matches!(self.mark(i + 1), Some(Mark::Colon | Mark::Equal))
        {
            return true;
        }
        let Some(lamp) = self.compared_with(i) else { return false };
        let mut k = i;
        while k > 0 && self.what(k - 1) == Some(What::Word(Role::None)) {
            k -= 1;
        }
        // "24 W equivalent 200 W": an LED light is compared with a lamp of more watts.
        self.figure_before(k).is_none_or(|own| own.unit != Unit::Watt || lamp.high > own.high)
    }

    /// The figure of watts straight after the word for a comparison at item `i`, small words skipped.
    pub(super) fn compared_with(&self, mut i: usize) -> Option<&'a Figure> {
        i += 1;
        while matches!(
            self.role(i),
            Role::To
                | Role::Of
                | Role::For
                | Role::At
                | Role::Approx
                | Role::DoubleEnded
                | Role::Unit(Unit::Amp)
        ) {
            i += 1;
        }
        self.figure(i).filter(|f| f.unit == Unit::Watt)
    }

    /// "Power draw - 150W": a hyphen straight between the word and the figure; "i.e." after a comma.
    pub(super) fn passes(&self, i: usize, at: usize) -> bool {
        // One test of what all three have, which is rare.
        let straight = (i + 1 == at) & (self.sign(i) == Mark::Dash.bit());
        (straight | matches!(self.role(i + 1), Role::Short | Role::Lamp(_))) && self.joins_on(i, at)
    }

    /// The same of a sign before one of the words that it may join on, or of a hyphen before the figure.
    #[inline(never)]
    fn joins_on(&self, i: usize, at: usize) -> bool {
        let (mark, next) = (self.mark(i), self.role(i + 1));
        let lamp = |word: Role| matches!(word, Role::Lamp(_));
        next == Role::Short
            && mark == Some(Mark::Comma)
            && i + 1 < at
            && (i + 2..at).all(|k| self.role(k) == Role::Short)
            || i + 1 == at && mark == Some(Mark::Dash) && self.cue(i.wrapping_sub(1)).any(INTRODUCES)
            || lamp(next) && mark == Some(Mark::Slash) && lamp(self.role_before(i))
    }

    /// The phrase that follows item `at`.
    pub(super) fn right(&self, at: usize) -> Phrase {
        let mut near = Cues::default();
        let (mut all, mut own, mut introduced) = (Cues::default(), Cues::default(), false);
        let (mut seen, mut inside, mut beyond) = (false, false, false);
        let (mut i, end) = (at, self.items.len().min(at + 1 + REACH));
        while i + 1 < end {
            i += 1;
            let item = &self.items[i];
            let sign = item.sign;
            if (sign & (MAY_BREAK | ENDS) != 0) | item.cue.any(NUMBERS) {
                if item.cue.any(Cues::WATTS) {
                    // "800W (nur 150W", "100W (each head 20W)": the words between are about the second.
                    all = if inside { Cues::default() } else { own };
                    near = if all.any(near) { near } else { Cues::default() };
                    break;
                }
                if item.cue.any(Cues::BARE) {
                    // "600W draws about 240"
                    let about = usize::from(self.role(i - 1) == Role::Approx);
                    let straight =
                        self.cue(i - 1 - about).any(INTRODUCES) || self.mark(i - 1) == Some(Mark::Colon);
                    if straight && !self.counts_something(i) {
                        // "60W (real 9)": the words in brackets are about the second.
                        all = if inside { Cues::default() } else { own };
                        near = if inside { Cues::default() } else { near };
                    }
                    break;
                }
                if i == at + 1 && sign & Mark::Open.bit() != 0 {
                    inside = true;
                } else if sign & ENDS != 0 {
                    // The words before a colon label what follows.
                    all = if sign & Mark::LABEL != 0 { own } else { all };
                    break;
                } else if !self.passes(i, usize::MAX) && self.breaks(i) {
                    break;
                }
            }
            if item.is_figure() && self.figure(i).is_some_and(|figure| figure.unit == Unit::Ratio) {
                break;
            }
            let cue = self.cue_of(i, item);
            introduced |= cue.any(INTRODUCES.without(Role::Rating.cue()));
            beyond |= cue.any(Role::Light.cue());
            let cue = if beyond { cue.without(DRAW) } else { cue };
            all = all.and(cue);
            own = if introduced { own } else { all };
            near = if seen | (sign != 0) { near } else { cue };
            seen |= sign == 0;
        }
        Phrase { cues: all, near }
    }

    /// The first role of the set in the phrase that follows item `at`, as far as `reach` items; empty if there is none.
    pub(super) fn first_right(&self, at: usize, set: Cues, reach: usize) -> Cues {
        /// Signs that a phrase goes on behind, the hyphen if it is none with white space on both sides.
        const PASSED: u32 = Mark::bits(&[Mark::Inch, Mark::Foot, Mark::Dash, Mark::Current]);
        let (mut i, end) = (at, self.items.len().min(at + 1 + reach));
        // An opening bracket straight behind the figure is passed.
        let mut passed = PASSED | Mark::Open.bit();
        while i + 1 < end {
            i += 1;
            let item = &self.items[i];
            let (sign, found) = (item.sign, item.cue.any(set));
            if (sign & !passed != 0) | item.cue.any(NUMBERS.and(set)) {
                return if found { item.cue } else { Cues::default() };
            }
            if sign & MAY_BREAK != 0 && self.breaks(i) {
                break;
            }
            passed = PASSED;
        }
        Cues::default()
    }
}
