//! Words of scripts that are written without spaces.

use super::fold::{Fold, next, past_skips};
use super::item::What;
use super::roles::Role;
use super::scan::Scanner;
use super::words::{Known, LONGEST_IDEOGRAPHS, Spelling, look_up};

impl Scanner<'_> {
    /// A run of a script without spaces: the longest known word at each place; characters between known words are skipped.
    pub(super) fn ideographs(&mut self) {
        let start = self.at;
        let (mut word, mut at, mut best) = (Spelling::EMPTY, start, None);
        let mut first_end = start;
        for i in 0..LONGEST_IDEOGRAPHS {
            let from = past_skips(self.text, at);
            let Some((Fold::Ideograph(u), n)) = next(self.text, from) else { break };
            at = from;
            word.push(u);
            at += n;
            if i == 0 {
                first_end = at;
            }
            let known = look_up(&word);
            if known.role != Role::None {
                best = Some((known, word.first(), at));
            }
        }
        let (known, letters, end) = best.unwrap_or((Known::of(Role::None), word.first(), first_end));
        self.at = end;
        if known.role == Role::None
            && !self.spaced
            && let Some(last) = self.tokens.all.last_mut()
            && last.what == What::Word(Role::None)
        {
            last.end = u32::try_from(end).unwrap_or(u32::MAX);
            return;
        }
        self.push_word(known, letters, start);
    }
}
