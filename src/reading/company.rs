//! Words that are a cue only in the right company: "actual" before watts, "input" not before "voltage", "wall" after "at the".

use super::cues::Cues;
use super::figures::{Item, What};
use super::fold::Mark;
use super::item::Letters;
use super::listed::Listed;
use super::page::Page;
use super::roles::{Role, Unit};

/// Words whose cue depends on their neighbours.
pub(super) const IN_COMPANY: Cues = Cues::of(&[
    Role::DrawAdjective,
    Role::Measured,
    Role::Wall,
    Role::Deny,
    Role::Input,
    Role::Versus,
    Role::Dim,
]);

/// "one" of several lamps.
const ONE: Listed<5> = Listed::of(["one", "una", "une", "einer", "jednej"]);

/// What "low" says no level of.
const COSTS: Listed<7> = Listed::of(["bill", "bills", "cost", "costs", "heat", "noise", "energy"]);

impl Page<'_> {
    /// The cue of the word at item `i`: words that mean something else in most company count only in the right one.
    #[inline]
    pub(super) fn cue(&self, i: usize) -> Cues {
        self.items.get(i).map_or(Cues::default(), |item| self.cue_of(i, item))
    }

    /// The cue of `item`, which is item `i`.
    #[inline]
    pub(super) fn cue_of(&self, i: usize, item: &Item) -> Cues {
        if item.cue.any(IN_COMPANY) && !self.counts(i) { Cues::default() } else { item.cue }
    }

    /// Whether the word at item `i`, one [`IN_COMPANY`], is in the right one.
    #[inline(never)]
    fn counts(&self, i: usize) -> bool {
        match self.role(i) {
            // "60W per reel", "5m reel"; "réel" is folded to the same letters.
            Role::DrawAdjective => {
                let coil = self.role_before(i) == Role::Per
                    || self.is(i, const { Letters::of("reel") })
                        && matches!(self.role_before(i), Role::Level | Role::At)
                    || self.figure_before(i).is_some_and(|f| matches!(f.unit, Unit::Metre | Unit::Length));
                // "120W true 3500K"
                let behind = i > 0 && self.is_watts(i - 1) && self.figure(i + 1).is_some();
                !coil && (behind || self.speaks_of_power(i + 1))
            }
            Role::Measured => self.role_before(i) != Role::Per,
            Role::Wall => {
                let announces = match self.what(i + 1) {
                    Some(What::Word(Role::Power | Role::DrawNoun)) => true,
                    Some(What::Figure(_)) => self.figure(i + 1).is_some_and(|f| f.unit == Unit::Watt),
                    Some(What::Mark(Mark::Colon)) => self.role_before(i) != Role::Country,
                    _ => false,
                };
                let country = self.role_before(i) == Role::Country || self.before_code_word(i);
                // "at the plug", "an der Steckdose"
                let article = i >= 2 && self.what(i - 1) == Some(What::Word(Role::None));
                // French "à la prise": "à" is the German for "of each" too. "A standard plug" is no place.
                let french = article
                    && self.is(i - 1, const { Letters::of("la") })
                    && matches!(self.role(i - 2), Role::Of);
                let at = french || self.role_before(i - usize::from(article)) == Role::At;
                at || (announces && !country)
            }
            // "less than 50W" is no comparison.
            Role::Versus => {
                // "ne consomme que 215 W": only that.
                i == 0
                    || !(matches!(self.role(i - 1), Role::Approx | Role::DrawVerb)
                        || self.is(i - 1, const { Letters::of("more") }))
            }
            // "low bill", "low power consumption"
            Role::Dim => {
                let power = usize::from(self.role(i + 1) == Role::Power);
                !(self.is(i, const { Letters::of("low") })
                    && (self.is_one(i + 1, &COSTS) || self.role(i + 1 + power) == Role::DrawNoun))
            }
            Role::Deny => !matches!(self.mark(i + 1), Some(Mark::Colon | Mark::Comma)),
            Role::Input => self.role(i + 1) != Role::Voltage && self.role(i + 1) != Role::Current,
            _ => true,
        }
    }

    /// "true wattage of one lamp 185W", "consumption per lamp": whether the light at item `i` is each one of several.
    pub(super) fn one_of(&self, i: usize) -> bool {
        i > 0
            && (self.role(i - 1) == Role::Each
                || self.may_be(i - 1, Role::Per.cue())
                || self.is_one(i - 1, &ONE))
    }

    /// "and" at item `i` where it is a single letter, which the vocabulary has for something else.
    pub(super) fn lone_and(&self, i: usize) -> bool {
        const AND: [Letters; 3] = Letters::all(["y", "e", "i"]);
        AND.iter().any(|&word| self.is(i, word))
    }

    /// A two-letter capital word before item `i`, such as a country's plug.
    pub(super) fn before_code_word(&self, i: usize) -> bool {
        i.checked_sub(1).is_some_and(|i| {
            let letters = self.words(i).chars().filter(char::is_ascii_uppercase).count();
            letters == 2 && self.capitals(i)
        })
    }

    /// Whether a draw adjective before item `i` speaks of power: a power word, a figure of watts or the end follows.
    pub(super) fn speaks_of_power(&self, mut i: usize) -> bool {
        for _ in 0..4 {
            match self.what(i) {
                None => return true,
                Some(What::Code) => return false,
                Some(What::Mark(
                    Mark::Compare | Mark::Tilde | Mark::Current | Mark::Inch | Mark::Foot | Mark::Open,
                )) => {}
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
}
