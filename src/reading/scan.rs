//! Text to tokens: words with their roles, numbers, signs, and codes such as `GL-1000` whose digits are no figure.

use super::codes::joins_digits;
use super::fold::{Fold, Mark, fold, next, past_skips};
use super::item::{Item, What};
use super::number::{self, Printed};
use super::roles::{Role, Unit};
use super::words::{Known, Spelling, eight, letters, look_up, look_up_short};

/// The tokens of a text, and the numbers among them.
#[derive(Debug, Default)]
pub(super) struct Tokens {
    pub all: Vec<Item>,
    pub numbers: Vec<Printed>,
}

/// Where the tokenizer is.
pub(super) struct Scanner<'a> {
    pub text: &'a str,
    pub at: usize,
    /// White space stands before the next token.
    pub spaced: bool,
    pub tokens: &'a mut Tokens,
}

/// What a token starts with, by its first byte.
#[derive(Clone, Copy)]
enum Start {
    Letter,
    Digit,
    /// A sign that is nothing but a sign.
    Mark(Mark),
    /// White space, `&` and `.`, and all that is not ASCII.
    Other,
}

static STARTS: [Start; 256] = {
    let mut table = [Start::Other; 256];
    let mut b = 0u8;
    while b < 0x80 {
        table[b as usize] = match fold(b as char) {
            Fold::Letter(_) => Start::Letter,
            Fold::Digit(_) => Start::Digit,
            Fold::Mark(mark) if b != b'&' && b != b'.' => Start::Mark(mark),
            _ => Start::Other,
        };
        b += 1;
    }
    table
};

/// The bytes with which a word may go on after its first ASCII letters, or turn out to be a code.
static GOES_ON: [bool; 256] = {
    let mut table = [false; 256];
    let mut b = u8::MAX;
    while b > 0 {
        table[b as usize] = b >= 0x80 || b.is_ascii_alphanumeric() || matches!(b, b'-' | b'_' | b'&');
        b -= 1;
    }
    table
};

/// Splits `text` into tokens. Texts are at most 64 KiB, so positions fit.
pub(super) fn scan(text: &str, tokens: &mut Tokens) {
    tokens.all.clear();
    tokens.numbers.clear();
    let mut s = Scanner { text, at: 0, spaced: true, tokens };
    let bytes = text.as_bytes();
    // Kept apart from the scanner, so that plain words, the most of a text, need no memory for them.
    let (mut at, mut spaced) = (0, true);
    loop {
        // Mostly one space stands between tokens, or none: no branch to guess.
        let space = bytes.get(at) == Some(&b' ');
        at += usize::from(space);
        spaced |= space;
        let Some(&b) = bytes.get(at) else { break };
        let start = STARTS[usize::from(b)];
        if matches!(start, Start::Letter) {
            let (letters, length) = letters(eight(bytes, at));
            let end = at + length;
            let after = bytes.get(end).copied().unwrap_or(0);
            if !GOES_ON[usize::from(after)] && letters != u64::from(b'x') {
                // Most words are short, end at white space or a sign and are nothing but words.
                s.tokens.push_word(look_up_short(letters, length), letters, place(at, end), spaced);
                (at, spaced) = (end, false);
                continue;
            }
            let mut word =
                if length < 8 { Spelling::short(letters, length) } else { Spelling::of_ascii(bytes, at) };
            let end = at + word.letters();
            if length == 8 && !GOES_ON[usize::from(s.byte(end))] {
                s.tokens.push_word(look_up(&word), letters, place(at, end), spaced);
                (at, spaced) = (end, false);
                continue;
            }
            (s.at, s.spaced) = (end, spaced);
            let letters = word.letters();
            s.rest_of_word(at, &mut word, letters);
        } else {
            (s.at, s.spaced) = (at, spaced);
            match start {
                Start::Digit => s.number(),
                Start::Mark(mark) => {
                    s.at += 1;
                    s.push(What::Mark(mark), at);
                }
                Start::Letter | Start::Other => s.sign(),
            }
        }
        (at, spaced) = (s.at, s.spaced);
    }
}

impl Tokens {
    #[inline]
    fn push_word(&mut self, word: Known, letters: u64, place: (u32, u32), spaced: bool) {
        self.all.push(Item::word(word, letters, place, spaced));
    }
}

#[expect(clippy::cast_possible_truncation, reason = "texts are cut to 64 KiB before they are scanned")]
const fn place(start: usize, end: usize) -> (u32, u32) {
    (start as u32, end as u32)
}

impl Scanner<'_> {
    pub(super) fn push(&mut self, what: What, start: usize) {
        self.tokens.all.push(Item::other(what, place(start, self.at), self.spaced));
        self.spaced = false;
    }

    pub(super) fn push_word(&mut self, word: Known, letters: u64, start: usize) {
        self.push_word_to(word, letters, start, self.at);
    }

    fn push_word_to(&mut self, word: Known, letters: u64, start: usize, end: usize) {
        self.tokens.push_word(word, letters, place(start, end), self.spaced);
        self.spaced = false;
    }

    #[expect(clippy::cast_possible_truncation, reason = "64 KiB of text hold at most 32 Ki numbers")]
    fn push_number(&mut self, number: Printed, start: usize) {
        let index = self.tokens.numbers.len() as u16;
        self.tokens.numbers.push(number);
        self.push(What::Figure(index), start);
    }

    pub(super) fn byte(&self, at: usize) -> u8 {
        self.text.as_bytes().get(at).copied().unwrap_or(0)
    }

    fn last(&self) -> Option<What> {
        self.tokens.all.last().map(|t| t.what)
    }

    fn after_number(&self) -> bool {
        !self.spaced && matches!(self.last(), Some(What::Figure(_)))
    }

    /// The word whose first `letters` letters are read, with its digits if it turns out to be a code.
    fn rest_of_word(&mut self, start: usize, word: &mut Spelling, mut letters: usize) {
        let mut last = u32::from(if letters > 0 { self.byte(self.at - 1) | 0x20 } else { 0 });
        loop {
            let b = self.byte(self.at);
            // Beyond ASCII, or written as an entity: `&micro;mol`, `f&uuml;r`.
            if !(b >= 0x80 || b.is_ascii_alphabetic() || b == b'&') {
                break;
            }
            let Some((folded, n)) = next(self.text, self.at) else { break };
            match folded {
                Fold::Letter(u) => {
                    word.push(u);
                    letters += 1;
                    last = u;
                }
                Fold::Skip => {}
                _ => break,
            }
            self.at += n;
        }
        let mut known = look_up(word);
        let found = known.role;
        let times = last == u32::from(b'x') || last == 'х' as u32;
        let digit_next = self.digit_follows();
        if letters == 1 && times {
            self.times(start, digit_next);
            return;
        }
        if digit_next && times {
            // `3Wx100`, `200pcsx5W`: the cross is not part of the word.
            let mut shorter = *word;
            shorter.pop();
            let letters = shorter.first();
            let shorter = look_up(&shorter);
            if self.after_number() || shorter.role != Role::None {
                let cross = self.text[start..self.at].char_indices().next_back().map_or(0, |(i, _)| i);
                self.push_word_to(shorter, letters, start, start + cross);
                self.push(What::Mark(Mark::Times), start + cross);
                return;
            }
        }
        if !self.after_number()
            && (digit_next && !joins_digits(found, letters) || self.code_follows(found, letters))
        {
            self.code(start, word);
            return;
        }
        if letters == 1 && found == Role::Unit(Unit::Amp) && self.byte(start) >= 0xc0 && last < 0x80 {
            // French "à", as in "100 LED à 10W".
            known = Known::of(Role::Of);
        }
        self.push_word(known, word.first(), start);
    }

    fn digit_follows(&self) -> bool {
        self.digit_at(self.at)
    }

    pub(super) fn digit_at(&self, at: usize) -> bool {
        let at = past_skips(self.text, at);
        let b = self.byte(at);
        b.is_ascii_digit() || (b >= 0x80 && matches!(next(self.text, at), Some((Fold::Digit(_), _))))
    }

    /// A lone `x`: a times sign between a number and what it counts, else a letter of a name.
    fn times(&mut self, start: usize, digit_next: bool) {
        let counts = matches!(
            self.last(),
            Some(What::Figure(_) | What::Mark(Mark::Close | Mark::Inch | Mark::Foot) | What::Code)
        );
        let lower = self.text.as_bytes()[start] != b'X';
        let known = matches!(self.last(), Some(What::Word(r)) if r != Role::None);
        let glued = known && !self.spaced;
        // "model X-600W"
        let model = !(counts || lower || glued) && self.byte(self.at) == b'-' && self.digit_at(self.at + 1);
        if model || digit_next && !(counts || lower || glued) {
            let mut nothing = Spelling::EMPTY;
            self.code(start, &mut nothing);
        } else if counts || lower || known {
            self.push(What::Mark(Mark::Times), start);
        } else {
            self.push_word(Known::of(Role::None), u64::from(b'x'), start);
        }
    }

    #[inline(always)]
    #[expect(
        clippy::inline_always,
        reason = "every fourth token is a number, and a call costs a tenth of reading it"
    )]
    fn number(&mut self) {
        let start = self.at;
        let (printed, end) = number::read(self.text, start);
        self.at = end;
        self.push_number(printed, start);
    }

    /// Anything that starts with neither an ASCII letter nor an ASCII digit.
    fn sign(&mut self) {
        let start = self.at;
        let Some((folded, length)) = next(self.text, start) else {
            self.at = self.text.len();
            return;
        };
        match folded {
            Fold::Letter(_) => {
                let mut word = Spelling::EMPTY;
                self.rest_of_word(start, &mut word, 0);
            }
            Fold::Digit(_) => self.number(),
            Fold::Ideograph(_) => self.ideographs(),
            Fold::Space { .. } => {
                self.at += length;
                self.spaced = true;
            }
            Fold::Skip => self.at += length,
            Fold::Mark(Mark::Stop) if self.byte(start) == b'.' && self.spaced && self.digit_at(start + 1) => {
                // `.5W`
                let (mut printed, end) = number::read(self.text, start + 1);
                let scale = 10f64.powi(i32::from(printed.digits));
                printed.value /= scale;
                printed.half /= scale;
                printed.decimal = true;
                self.at = end;
                self.push_number(printed, start);
            }
            Fold::Mark(mark) => {
                self.at += length;
                self.push(What::Mark(mark), start);
            }
        }
    }
}
