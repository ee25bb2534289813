//! Text to tokens: words with their roles, numbers, signs, and codes such as `GL-1000` whose digits are no figure.

use super::codes::joins_digits;
use super::fold::{ASCII, Fold, Mark, next, past_skips};
use super::number::{self, Printed};
use super::roles::{Role, Unit};
use super::words::{LONGEST_IDEOGRAPHS, SEED, role, step};

/// What a token is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Kind {
    /// A word.
    Word(Role),
    /// A number.
    Number(Printed),
    /// A sign.
    Mark(Mark),
    /// Letters and digits joined: a model, item or type number.
    Code,
}

/// One token.
#[derive(Debug, Clone, Copy)]
pub(super) struct Token {
    pub kind: Kind,
    pub start: u32,
    pub end: u32,
    /// White space stands before it.
    pub spaced: bool,
}

/// Where the tokenizer is.
pub(super) struct Scanner<'a> {
    pub text: &'a str,
    pub at: usize,
    spaced: bool,
    tokens: &'a mut Vec<Token>,
}

/// Splits `text` into tokens. Texts are at most 64 KiB, so positions fit.
pub(super) fn scan(text: &str, tokens: &mut Vec<Token>) {
    tokens.clear();
    let mut s = Scanner { text, at: 0, spaced: true, tokens };
    let bytes = text.as_bytes();
    while s.at < bytes.len() {
        let b = bytes[s.at];
        if b == b' ' {
            s.at += 1;
            s.spaced = true;
        } else if b.is_ascii_alphabetic() {
            s.word();
        } else if b.is_ascii_digit() {
            s.number();
        } else {
            s.sign();
        }
    }
}

impl Scanner<'_> {
    pub(super) fn push(&mut self, kind: Kind, start: usize) {
        self.push_to(kind, start, self.at);
    }

    #[expect(clippy::cast_possible_truncation, reason = "texts are cut to 64 KiB before they are scanned")]
    fn push_to(&mut self, kind: Kind, start: usize, end: usize) {
        self.tokens.push(Token { kind, start: start as u32, end: end as u32, spaced: self.spaced });
        self.spaced = false;
    }

    pub(super) fn byte(&self, at: usize) -> u8 {
        self.text.as_bytes().get(at).copied().unwrap_or(0)
    }

    fn after_number(&self) -> bool {
        !self.spaced && matches!(self.tokens.last(), Some(Token { kind: Kind::Number(_), .. }))
    }

    /// The word that starts here, with its digits if it turns out to be a code.
    fn word(&mut self) {
        let start = self.at;
        let (mut hash, mut before, mut letters, mut last) = (SEED, SEED, 0u32, 0u32);
        for &b in &self.text.as_bytes()[start..] {
            let lower = b | 0x20;
            if !lower.is_ascii_lowercase() {
                break;
            }
            before = hash;
            last = u32::from(lower);
            hash = step(hash, last);
            letters += 1;
        }
        self.at += letters as usize;
        loop {
            let b = self.byte(self.at);
            let letter = if b.is_ascii_alphabetic() {
                self.at += 1;
                u32::from(b | 0x20)
            } else if b < 0x80 && b != b'&' {
                break;
            } else {
                // A letter beyond ASCII, or one written as an entity: `&micro;mol`, `f&uuml;r`.
                match next(self.text, self.at) {
                    Some((Fold::Letter(u), n)) => {
                        self.at += n;
                        u
                    }
                    Some((Fold::Skip, n)) => {
                        self.at += n;
                        continue;
                    }
                    _ => break,
                }
            };
            before = hash;
            hash = step(hash, letter);
            letters += 1;
            last = letter;
        }
        let mut found = role(hash);
        let times = last == u32::from(b'x') || last == 'х' as u32;
        let digit_next = self.digit_follows();
        if letters == 1 && times {
            self.times(start, digit_next);
            return;
        }
        if digit_next && times && (self.after_number() || role(before) != Role::None) {
            // `3Wx100`, `200pcsx5W`: the cross is not part of the word.
            let cross = self.text[start..self.at].char_indices().next_back().map_or(0, |(i, _)| i);
            self.push_to(Kind::Word(role(before)), start, start + cross);
            self.push(Kind::Mark(Mark::Times), start + cross);
            return;
        }
        if !self.after_number()
            && (digit_next && !joins_digits(found, letters) || self.code_follows(found, letters))
        {
            self.code(start, hash);
            return;
        }
        if letters == 1 && found == Role::Unit(Unit::Amp) && self.byte(start) >= 0xc0 && last < 0x80 {
            // French "à", as in "100 LED à 10W".
            found = Role::Of;
        }
        self.push(Kind::Word(found), start);
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
            self.tokens.last().map(|t| t.kind),
            Some(Kind::Number(_) | Kind::Mark(Mark::Close | Mark::Inch | Mark::Foot) | Kind::Code)
        );
        let lower = self.text.as_bytes()[start] != b'X';
        let known = matches!(self.tokens.last().map(|t| t.kind), Some(Kind::Word(r)) if r != Role::None);
        let glued = known && !self.spaced;
        if digit_next && !(counts || lower || glued) {
            self.code(start, SEED);
        } else if counts || lower || known {
            self.push(Kind::Mark(Mark::Times), start);
        } else {
            self.push(Kind::Word(Role::None), start);
        }
    }

    fn number(&mut self) {
        let start = self.at;
        let printed = number::read(self.text, start);
        self.at = printed.end;
        self.push(Kind::Number(printed), start);
    }

    /// Anything that starts with neither an ASCII letter nor an ASCII digit.
    fn sign(&mut self) {
        let start = self.at;
        let b = self.byte(start);
        let (folded, length) = if b < 0x80 && b != b'&' {
            (ASCII[usize::from(b)], 1)
        } else {
            let Some(found) = next(self.text, start) else {
                self.at = self.text.len();
                return;
            };
            found
        };
        match folded {
            Fold::Letter(_) => self.word(),
            Fold::Digit(_) => self.number(),
            Fold::Ideograph(_) => self.ideographs(),
            Fold::Space { .. } => {
                self.at += length;
                self.spaced = true;
            }
            Fold::Skip => self.at += length,
            Fold::Mark(Mark::Stop) if b == b'.' && self.spaced && self.digit_at(start + 1) => {
                // `.5W`
                let mut printed = number::read(self.text, start + 1);
                let scale = 10f64.powi(i32::from(printed.digits));
                printed.value /= scale;
                printed.half /= scale;
                printed.decimal = true;
                self.at = printed.end;
                self.push(Kind::Number(printed), start);
            }
            Fold::Mark(mark) => {
                self.at += length;
                self.push(Kind::Mark(mark), start);
            }
        }
    }

    /// A run of a script without spaces: the longest known word at each place; characters between known words are skipped.
    fn ideographs(&mut self) {
        let start = self.at;
        let (mut hash, mut at, mut best) = (SEED, start, None);
        let mut first_end = start;
        for i in 0..LONGEST_IDEOGRAPHS {
            let from = past_skips(self.text, at);
            let Some((Fold::Ideograph(u), n)) = next(self.text, from) else { break };
            at = from;
            hash = step(hash, u);
            at += n;
            if i == 0 {
                first_end = at;
            }
            let found = role(hash);
            if found != Role::None {
                best = Some((found, at));
            }
        }
        let (found, end) = best.unwrap_or((Role::None, first_end));
        self.at = end;
        if found == Role::None
            && !self.spaced
            && let Some(last) = self.tokens.last_mut()
            && last.kind == Kind::Word(Role::None)
        {
            last.end = u32::try_from(end).unwrap_or(u32::MAX);
            return;
        }
        self.push(Kind::Word(found), start);
    }
}
