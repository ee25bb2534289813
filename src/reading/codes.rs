//! Letters and digits joined into a code (`GL-1000`, `LM301B`, `T8`), as against a word with a figure behind it (`AC85`).

use super::fold::{Fold, Mark, next, past_skips};
use super::item::What;
use super::number;
use super::roles::Role;
use super::scan::Scanner;
use super::words::{Spelling, look_up};

impl Scanner<'_> {
    /// A hyphen and a digit after letters that are no word: `KX-6`.
    pub(super) fn code_follows(&self, found: Role, letters: usize) -> bool {
        let no_word = match found {
            Role::None | Role::Unit(_) | Role::Letter(_) | Role::DoubleEnded | Role::Short | Role::Stock => {
                true
            }
            // `FR-18` is a model, `IR-730nm` a wavelength.
            Role::Colour(_) if letters == 2 => {
                self.digit_at(self.at + 1) && self.byte(number::read(self.text, self.at + 1).1) | 0x20 != b'n'
            }
            _ => false,
        };
        no_word && matches!(self.byte(self.at), b'-' | b'_') && self.digit_at(self.at + 1)
    }

    /// Takes letters, digits and inner hyphens as one code.
    pub(super) fn code(&mut self, start: usize, word: &mut Spelling) {
        let mut pure = true;
        while let Some((folded, n)) = next(self.text, self.at) {
            match folded {
                Fold::Digit(d) => word.push(u32::from(d) + 0x30),
                Fold::Letter(u) => word.push(u),
                Fold::Skip => {}
                // "T8-Röhren"
                Fold::Mark(Mark::Dash) if self.tube_word(word, self.at + n) => break,
                Fold::Mark(Mark::Dash) if self.joins(self.at + n) => pure &= self.letters_between(start) <= 1,
                Fold::Mark(Mark::Other) if self.byte(self.at) == b'_' && self.joins(self.at + n) => {
                    pure = false;
                }
                _ => break,
            }
            self.at += n;
        }
        let known = look_up(word);
        if pure && known.role != Role::None {
            self.push_word(known, word.first(), start);
        } else {
            self.push(What::Code, start);
        }
    }

    /// Whether the letters before a hyphen are a tube's size and a word follows at `at`.
    fn tube_word(&self, word: &Spelling, at: usize) -> bool {
        word.letters() <= 3
            && matches!(next(self.text, past_skips(self.text, at)), Some((Fold::Letter(_), _)))
            && look_up(word).role == Role::Tube
    }

    /// Whether a letter or digit stands at `at`, so that the sign before it is inside a code.
    pub(super) fn joins(&self, at: usize) -> bool {
        matches!(next(self.text, past_skips(self.text, at)), Some((Fold::Letter(_) | Fold::Digit(_), _)))
    }

    /// Letters from `start` to here, zero-width characters not counted.
    pub(super) fn letters_between(&self, start: usize) -> usize {
        let (mut at, mut count) = (start, 0);
        while at < self.at {
            let Some((folded, n)) = next(self.text, at) else { break };
            count += usize::from(folded != Fold::Skip);
            at += n;
        }
        count
    }
}

/// Whether digits may follow the word directly without making it a code: `AC85`, `LED100`, `IR730nm`.
pub(super) fn joins_digits(role: Role, letters: usize) -> bool {
    letters >= 2
        && matches!(
            role,
            Role::Ac
                | Role::Dc
                | Role::Package(_)
                | Role::Cob
                | Role::Led
                | Role::Diode
                | Role::Chip
                | Role::Colour(_)
                | Role::DrawAdjective
                | Role::DrawNoun
                | Role::DrawVerb
                | Role::Power
                | Role::Rating
                | Role::Only
                | Role::Ppf
                | Role::Ppe
                | Role::Input
                | Role::Voltage
                | Role::Current
                | Role::Lamp(_)
                | Role::Equivalent
                | Role::Replaces
                | Role::Each
                | Role::Approx
                | Role::Times
                | Role::UpTo
        )
}
