//! The items of one text, and how rules look around on it: the phrase to the left and to the right of a figure.
//!
//! A phrase ends at a break (comma, full stop, line, stroke ...) or at another figure in watts. Between two figures with
//! no break ("1000W actual 110W") a word that introduces what follows goes with the second, the others with the first.

use super::figures::{Figure, Item, What};
use super::fold::{Fold, Mark, next};
use super::roles::{Cues, Role, Unit};

/// Most items that a phrase reaches.
const REACH: usize = 14;

/// Words that say a figure is a draw.
pub(super) const DRAW: Cues = Cues::of(&[
    Role::DrawVerb,
    Role::DrawAdjective,
    Role::DrawNoun,
    Role::Input,
    Role::Wall,
    Role::Measured,
]);

/// Words for power and draw, that a figure follows.
const POWER: Cues = Cues::of(&[Role::Power, Role::DrawNoun, Role::DrawVerb, Role::Rating, Role::Input]);

/// Words that introduce the figure after them.
const INTRODUCES: Cues = DRAW.and(Cues::of(&[
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

/// Words whose cue depends on their neighbours.
const IN_COMPANY: Cues =
    Cues::of(&[Role::DrawAdjective, Role::Measured, Role::Wall, Role::Deny, Role::Input]);

/// What stands on one side of a figure.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Phrase {
    /// The roles in it.
    pub cues: Cues,
    /// The role of the nearest word, approximations skipped.
    pub near: Cues,
    /// Item of the farthest word looked at.
    pub far: usize,
}

/// The page.
#[derive(Clone, Copy)]
pub(super) struct Page<'a> {
    pub text: &'a str,
    pub items: &'a [Item],
    pub figures: &'a [Figure],
    /// All roles on the page.
    pub cues: Cues,
    /// All units on the page, a bit each.
    units: u32,
}

impl<'a> Page<'a> {
    pub(super) fn new(text: &'a str, items: &'a [Item], figures: &'a [Figure]) -> Self {
        let cues = items.iter().fold(Cues::default(), |all, i| all.and(i.cue));
        let units = figures.iter().fold(0, |all, f| all | 1 << f.unit as u32);
        Self { text, items, figures, cues, units }
    }

    /// Whether a figure on the page has one of the units.
    pub(super) fn has_unit(&self, units: &[Unit]) -> bool {
        units.iter().any(|&u| self.units >> u as u32 & 1 == 1)
    }

    pub(super) fn what(&self, i: usize) -> Option<What> {
        self.items.get(i).map(|i| i.what)
    }

    /// The role at item `i`; `None` for anything but a known word.
    pub(super) fn role(&self, i: usize) -> Role {
        match self.items.get(i) {
            Some(Item { what: What::Word(role), .. }) => *role,
            _ => Role::None,
        }
    }

    /// The role of the item before item `i`.
    pub(super) fn role_before(&self, i: usize) -> Role {
        i.checked_sub(1).map_or(Role::None, |i| self.role(i))
    }

    pub(super) fn mark(&self, i: usize) -> Option<Mark> {
        match self.items.get(i) {
            Some(Item { what: What::Mark(mark), .. }) => Some(*mark),
            _ => None,
        }
    }

    pub(super) fn mark_before(&self, i: usize) -> Option<Mark> {
        i.checked_sub(1).and_then(|i| self.mark(i))
    }

    pub(super) fn figure(&self, i: usize) -> Option<&'a Figure> {
        match self.items.get(i) {
            Some(Item { what: What::Figure(f), .. }) => self.figures.get(usize::from(*f)),
            _ => None,
        }
    }

    pub(super) fn figure_before(&self, i: usize) -> Option<&'a Figure> {
        i.checked_sub(1).and_then(|i| self.figure(i))
    }

    pub(super) fn spaced(&self, i: usize) -> bool {
        self.items.get(i).is_none_or(|i| i.spaced)
    }

    /// The words of item `i`.
    pub(super) fn words(&self, i: usize) -> &'a str {
        self.items.get(i).map_or("", |i| &self.text[i.start as usize..i.end as usize])
    }

    /// Whether item `i` is the word, or starts with it, in any case, accents and zero-width characters aside.
    fn spells(&self, i: usize, word: &str, whole: bool) -> bool {
        let text = self.words(i);
        let mut at = 0;
        let mut letters = word.bytes();
        while let Some((folded, length)) = next(text, at) {
            at += length;
            match folded {
                Fold::Skip => {}
                Fold::Letter(u) => match letters.next() {
                    Some(b) if u32::from(b) == u => {}
                    Some(_) => return false,
                    None => return !whole,
                },
                _ => return false,
            }
        }
        letters.next().is_none() && !text.is_empty()
    }

    /// Whether item `i` is the word.
    pub(super) fn is(&self, i: usize, word: &str) -> bool {
        self.spells(i, word, true)
    }

    /// Whether item `i` starts with the letters.
    pub(super) fn starts(&self, i: usize, letters: &str) -> bool {
        self.spells(i, letters, false)
    }

    /// Whether item `i` is written in capitals.
    pub(super) fn capitals(&self, i: usize) -> bool {
        !self.words(i).chars().any(char::is_lowercase)
    }

    /// Whether the sign at item `i` ends a phrase. A hyphen does with white space on both sides.
    pub(super) fn breaks(&self, i: usize) -> bool {
        match self.mark(i) {
            Some(Mark::Dash | Mark::Dot | Mark::Tilde) => self.spaced(i) && self.spaced(i + 1),
            Some(
                Mark::Comma
                | Mark::Stop
                | Mark::Line
                | Mark::Pipe
                | Mark::Question
                | Mark::Bang
                | Mark::Arrow
                | Mark::Slash
                | Mark::Plus
                | Mark::And
                | Mark::Other,
            ) => true,
            _ => false,
        }
    }

    /// Whether the sign at item `i` ends a sentence or a row.
    pub(super) fn ends_row(&self, i: usize) -> bool {
        matches!(self.mark(i), Some(Mark::Stop | Mark::Line | Mark::Pipe | Mark::Question | Mark::Bang))
    }

    /// The cue of the word at item `i`: words that mean something else in most company count only in the right one.
    pub(super) fn cue(&self, i: usize) -> Cues {
        let Some(item) = self.items.get(i) else { return Cues::default() };
        if !item.cue.any(IN_COMPANY) {
            return item.cue;
        }
        let role = self.role(i);
        let live = match role {
            Role::DrawAdjective => self.speaks_of_power(i + 1),
            Role::Measured => self.role_before(i) != Role::Per,
            Role::Wall => {
                let announces = match self.what(i + 1) {
                    Some(What::Word(Role::Power | Role::DrawNoun)) => true,
                    Some(What::Figure(_)) => self.figure(i + 1).is_some_and(|f| f.unit == Unit::Watt),
                    Some(What::Mark(Mark::Colon)) => self.role_before(i) != Role::Country,
                    _ => false,
                };
                let country = self.role_before(i) == Role::Country || self.before_code_word(i);
                self.role_before(i) == Role::At || (announces && !country)
            }
            Role::Deny => !matches!(self.mark(i + 1), Some(Mark::Colon | Mark::Comma)),
            Role::Input => self.role(i + 1) != Role::Voltage && self.role(i + 1) != Role::Current,
            _ => true,
        };
        if live { item.cue } else { Cues::default() }
    }

    /// A two-letter capital word before item `i`, such as a country's plug.
    fn before_code_word(&self, i: usize) -> bool {
        i.checked_sub(1).is_some_and(|i| {
            let letters = self.words(i).chars().filter(|c| c.is_ascii_uppercase()).count();
            letters == 2 && self.capitals(i)
        })
    }

    /// Whether a draw adjective before item `i` speaks of power: a power word, a figure of watts or the end follows.
    fn speaks_of_power(&self, mut i: usize) -> bool {
        for _ in 0..4 {
            match self.what(i) {
                None => return true,
                Some(What::Code) => return false,
                Some(What::Mark(Mark::Compare | Mark::Tilde | Mark::Current | Mark::Inch | Mark::Foot | Mark::Open)) => {}
                Some(What::Mark(_)) => return true,
                Some(What::Figure(_)) => {
                    let unit = self.figure(i).map(|f| f.unit);
                    return matches!(unit, Some(Unit::Watt | Unit::Bare | Unit::Volt | Unit::VoltAc));
                }
                Some(What::Word(role)) => match role {
                    Role::Power
                    | Role::DrawNoun
                    | Role::DrawVerb
                    | Role::Input
                    | Role::Wall
                    | Role::Rating
                    | Role::Measured
                    | Role::Each
                    | Role::Per
                    | Role::Unit(Unit::Watt)
                    | Role::DrawAdjective => return true,
                    Role::Approx | Role::Led | Role::Light | Role::Of | Role::Only | Role::At => {}
                    _ => return false,
                },
            }
            i += 1;
        }
        false
    }

    /// Whether item `i` is a figure of watts.
    pub(super) fn is_watts(&self, i: usize) -> bool {
        self.figure(i).is_some_and(|f| f.unit == Unit::Watt)
    }

    /// The phrase that leads up to item `at`.
    pub(super) fn left(&self, at: usize) -> Phrase {
        let mut phrase = Phrase { far: at, ..Phrase::default() };
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
                    beyond |= !power && matches!(role, Role::Light | Role::Lights | Role::Led);
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
                    phrase.far = i;
                }
                What::Figure(_) => {
                    let unit = self.figure(i).map(|f| f.unit);
                    if unit == Some(Unit::Watt) {
                        all = introduced;
                        break;
                    }
                    if unit == Some(Unit::Bare) {
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
    fn leads(&self, i: usize) -> bool {
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
        while matches!(self.role(i), Role::To | Role::Of | Role::At | Role::Approx | Role::DoubleEnded | Role::Unit(Unit::Amp)) {
            i += 1;
        }
        self.figure(i).filter(|f| f.unit == Unit::Watt)
    }

    /// "Power draw - 150W": a hyphen straight between the word and the figure; "i.e." after a comma.
    fn passes(&self, i: usize, at: usize) -> bool {
        match self.mark(i) {
            Some(Mark::Dash) => i + 1 == at && self.cue(i.wrapping_sub(1)).any(INTRODUCES),
            Some(Mark::Comma) => {
                i + 1 < at && (i + 1..at).all(|k| self.role(k) == Role::Short)
            }
            Some(Mark::Slash) => {
                matches!(self.role(i + 1), Role::Lamp(_)) && matches!(self.role_before(i), Role::Lamp(_))
            }
            _ => false,
        }
    }

    /// The phrase that follows item `at`.
    pub(super) fn right(&self, at: usize) -> Phrase {
        let mut phrase = Phrase { far: at, ..Phrase::default() };
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
                    phrase.far = i;
                }
                What::Figure(_) => {
                    let figure = self.figure(i);
                    let unit = figure.map(|f| f.unit);
                    if unit == Some(Unit::Watt) && !inside {
                        all = own;
                        break;
                    }
                    if unit == Some(Unit::Watt) || unit == Some(Unit::Ratio) {
                        break;
                    }
                    if unit == Some(Unit::Bare) {
                        let straight = self.cue(i - 1).any(INTRODUCES) || self.mark(i - 1) == Some(Mark::Colon);
                        if straight && !inside && !self.counts_something(i) {
                            all = own;
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

    /// Whether a word for things that are counted follows the number at item `i`.
    pub(super) fn counts_something(&self, i: usize) -> bool {
        matches!(
            self.role(i + 1),
            Role::Diode | Role::Led | Role::Chip | Role::Pieces | Role::Cob | Role::Part | Role::Board | Role::Colour(_)
                | Role::Light | Role::Lights | Role::Package(_) | Role::Pack | Role::Device | Role::Letter(_)
        ) || self.mark(i + 1) == Some(Mark::Times)
    }

    /// The first role of the set in the phrase that follows item `at`, as far as `reach` items; empty if there is none.
    pub(super) fn first_right(&self, at: usize, set: Cues, reach: usize) -> Cues {
        for i in at + 1..=at + reach {
            match self.what(i) {
                Some(What::Word(_)) if self.items[i].cue.any(set) => return self.items[i].cue,
                Some(What::Word(_) | What::Code) => {}
                Some(What::Mark(Mark::Open)) if i == at + 1 => {}
                Some(What::Mark(Mark::Inch | Mark::Foot | Mark::Dash | Mark::Current)) if !self.breaks(i) => {}
                Some(What::Figure(_)) if !self.is_watts(i) && self.figure(i).is_some_and(|f| f.unit != Unit::Bare) => {}
                _ => break,
            }
        }
        Cues::default()
    }

    /// The first item of the row (line, sentence, cell) that item `i` is in.
    pub(super) fn row_start(&self, i: usize) -> usize {
        (0..i).rev().take(60).find(|&k| self.ends_row(k)).map_or(0, |k| k + 1)
    }
}
