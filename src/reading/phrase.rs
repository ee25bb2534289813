//! The phrases to the left and to the right of a figure, and the cues in them.
//!
//! A phrase ends at a break (comma, full stop, line, stroke ...) or at another figure in watts. Between two figures with
//! no break ("1000W actual 110W") a word that introduces what follows goes with the second, the others with the first.

use super::figures::{Figure, What};
use super::fold::Mark;
use super::page::Page;
use super::roles::{Cues, Role, Unit};

/// Most items that a phrase reaches.
pub(super) const REACH: usize = 14;

/// Words that say a figure is a draw.
pub(super) const DRAW: Cues =
    Cues::of(&[Role::DrawVerb, Role::DrawAdjective, Role::DrawNoun, Role::Input, Role::Wall, Role::Measured]);

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
    pub(super) fn left(&self, at: usize) -> Phrase {
        let mut phrase = Phrase::default();
        let (mut all, mut introduced, mut seen) = (Cues::default(), Cues::default(), false);
        let (mut power, mut beyond) = (false, false);
        let mut i = at;
        for _ in 0..REACH {
            let Some(before) = i.checked_sub(1) else { break };
            i = before;
            match self.items[i].what {
                What::Word(role) => {
                    let mut cue = self.cue(i);
                    power |= cue.any(POWER);
                    beyond |=
                        !power && matches!(role, Role::Light | Role::Lights | Role::Led) && !self.one_of(i);
                    if beyond && role != Role::DrawVerb {
                        // "low consumption LED light 45W": the light is between, so the word is about the light.
                        cue = cue.without(DRAW);
                    }
                    all = all.and(cue);
                    if cue.any(INTRODUCES) || (role == Role::Equivalent && self.leads(i)) {
                        introduced = all;
                    }
                    if !seen && !matches!(role, Role::Approx | Role::UpTo | Role::To | Role::At | Role::Of) {
                        phrase.near = cue;
                        seen = true;
                    }
                }
                What::Figure(_) => {
                    let unit = self.figure(i).map(|f| f.unit);
                    if unit == Some(Unit::Watt) {
                        all = introduced;
                        break;
                    }
                    // "a 2-lamp 64W fixture"
                    let lamps = || self.mark(i + 1) == Some(Mark::Dash) && self.role(i + 2) == Role::Light;
                    if unit == Some(Unit::Bare) && !lamps() {
                        break;
                    }
                    seen |= unit == Some(Unit::Percent);
                }
                What::Code => seen = true,
                What::Mark(_) if self.breaks(i) && !self.passes(i, at) => break,
                What::Mark(Mark::Colon | Mark::Equal) => power = true,
                What::Mark(_) => {}
            }
        }
        phrase.cues = all;
        phrase
    }

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
        match self.mark(i) {
            Some(Mark::Dash) => i + 1 == at && self.cue(i.wrapping_sub(1)).any(INTRODUCES),
            Some(Mark::Comma) => i + 1 < at && (i + 1..at).all(|k| self.role(k) == Role::Short),
            Some(Mark::Slash) => {
                matches!(self.role(i + 1), Role::Lamp(_)) && matches!(self.role_before(i), Role::Lamp(_))
            }
            _ => false,
        }
    }

    /// The phrase that follows item `at`.
    pub(super) fn right(&self, at: usize) -> Phrase {
        let mut phrase = Phrase::default();
        let (mut all, mut own, mut introduced) = (Cues::default(), Cues::default(), false);
        let (mut seen, mut inside, mut beyond) = (false, false, false);
        for i in at + 1..self.items.len().min(at + 1 + REACH) {
            match self.items[i].what {
                What::Word(role) => {
                    let mut cue = self.cue(i);
                    beyond |= matches!(role, Role::Light | Role::Lights);
                    introduced |= cue.any(INTRODUCES) && role != Role::Rating;
                    if beyond {
                        cue = cue.without(DRAW);
                    }
                    all = all.and(cue);
                    if !introduced {
                        own = all;
                    }
                    if !seen {
                        phrase.near = cue;
                        seen = true;
                    }
                }
                What::Figure(_) => {
                    let figure = self.figure(i);
                    let unit = figure.map(|f| f.unit);
                    if unit == Some(Unit::Watt) {
                        // "800W (nur 150W", "100W (each head 20W)": the words between are about the second.
                        all = if inside { Cues::default() } else { own };
                        if !all.any(phrase.near) {
                            phrase.near = Cues::default();
                        }
                        break;
                    }
                    if unit == Some(Unit::Ratio) {
                        break;
                    }
                    if unit == Some(Unit::Bare) {
                        // "600W draws about 240"
                        let about = usize::from(self.role(i - 1) == Role::Approx);
                        let straight =
                            self.cue(i - 1 - about).any(INTRODUCES) || self.mark(i - 1) == Some(Mark::Colon);
                        if straight && !self.counts_something(i) {
                            // "60W (real 9)": the words in brackets are about the second.
                            all = if inside { Cues::default() } else { own };
                            if inside {
                                phrase.near = Cues::default();
                            }
                        }
                        break;
                    }
                    seen = true;
                }
                What::Code => seen = true,
                What::Mark(Mark::Open) if i == at + 1 => inside = true,
                What::Mark(Mark::Close) if i > at + 1 || !inside => break,
                What::Mark(Mark::Colon | Mark::Equal) => {
                    // The words before a colon label what follows.
                    all = own;
                    break;
                }
                What::Mark(Mark::Open) => break,
                What::Mark(_) if self.breaks(i) && !self.passes(i, usize::MAX) => break,
                What::Mark(_) => {}
            }
        }
        phrase.cues = all;
        phrase
    }

    /// The first role of the set in the phrase that follows item `at`, as far as `reach` items; empty if there is none.
    pub(super) fn first_right(&self, at: usize, set: Cues, reach: usize) -> Cues {
        for i in at + 1..=at + reach {
            match self.what(i) {
                Some(What::Word(_)) if self.items[i].cue.any(set) => return self.items[i].cue,
                Some(What::Word(_) | What::Code) => {}
                Some(What::Mark(Mark::Open)) if i == at + 1 => {}
                Some(What::Mark(Mark::Inch | Mark::Foot | Mark::Dash | Mark::Current)) if !self.breaks(i) => {
                }
                Some(What::Figure(_))
                    if !self.is_watts(i) && self.figure(i).is_some_and(|f| f.unit != Unit::Bare) => {}
                _ => break,
            }
        }
        Cues::default()
    }
}
