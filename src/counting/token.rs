//! The counting notation cut into tokens, each with its place in the text.
//!
//! Characters are folded one by one as they are read, so that what people paste (full-width forms, no-break spaces,
//! typographic signs) needs no second pass and every span stays a span of the text as given.

use std::ops::Range;

use smallvec::SmallVec;

/// A number as written; `whole` is absent where it has a fraction, and saturates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    pub(super) whole: Option<u64>,
    pub(super) value: f64,
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Kind {
    Number(Number),
    /// Letters only; `deep-red` is a word, a hyphen and a word.
    Word,
    /// `x`, `×`, `*`.
    Times,
    /// `+`, `/`, `&`, `and`, `plus`: another group must follow.
    Joiner,
    /// `,` and `;`: another group may follow.
    Comma,
    Newline,
    /// `:` and `=`, between a colour and its count.
    Assign,
    /// `@` and `at`.
    At,
    PlusMinus,
    /// `-` or `_` with something directly on both sides.
    Hyphen,
    Open,
    Close,
    Other,
    End,
}

#[derive(Debug, Clone, PartialEq)]
pub(super) struct Token {
    pub(super) kind: Kind,
    pub(super) span: Range<usize>,
}

pub(super) type Tokens = SmallVec<[Token; 32]>;

/// What a pasted character stands for, in lower case.
pub(super) fn fold(c: char) -> char {
    match c {
        'a'..='z' | '0'..='9' | ' ' => c,
        '\r' | '\n' | '\u{b}' | '\u{c}' | '\u{85}' | '\u{2028}' | '\u{2029}' => '\n',
        '\u{ff01}'..='\u{ff5e}' => {
            char::from_u32(u32::from(c) - 0xfee0).map_or(c, |ascii| fold(ascii.to_ascii_lowercase()))
        }
        '×' | '✕' | '✖' | '⨯' | '∗' => '*',
        // Cyrillic ha, which a Russian keyboard gives for the times sign.
        'х' | 'Х' => 'x',
        '\u{2010}'..='\u{2015}' | '\u{2212}' => '-',
        // The Kelvin sign, and the ideographic comma.
        '\u{212a}' => 'k',
        '、' => ',',
        '\u{200b}' | '\u{2060}' | '\u{feff}' => ' ',
        c if c.is_whitespace() => ' ',
        c => c.to_ascii_lowercase(),
    }
}

/// Cuts the text into tokens; the last is always [`Kind::End`].
pub(super) fn tokens(text: &str) -> Tokens {
    let mut scanner = Scanner { text, at: 0 };
    let mut tokens = Tokens::new();
    loop {
        while scanner.peek() == Some(' ') {
            scanner.bump();
        }
        let start = scanner.at;
        let Some(first) = scanner.peek() else {
            tokens.push(Token { kind: Kind::End, span: start..start });
            return tokens;
        };
        let glued = tokens.last().filter(|t: &&Token| t.span.end == start).map(|t| t.kind);
        let after_at = tokens.last().is_some_and(|t| t.kind == Kind::At);
        let kind = scanner.token(first, glued, after_at);
        tokens.push(Token { kind, span: start..scanner.at });
    }
}

struct Scanner<'t> {
    text: &'t str,
    at: usize,
}

impl Scanner<'_> {
    fn rest(&self) -> impl Iterator<Item = char> + '_ {
        self.text[self.at..].chars().map(fold)
    }

    fn peek(&self) -> Option<char> {
        match self.text.as_bytes().get(self.at) {
            Some(plain @ (b'a'..=b'z' | b'0'..=b'9' | b' ')) => Some(char::from(*plain)),
            _ => self.rest().next(),
        }
    }

    fn bump(&mut self) {
        self.at += match self.text.as_bytes().get(self.at) {
            Some(byte) if byte.is_ascii() => 1,
            _ => self.text[self.at..].chars().next().map_or(0, char::len_utf8),
        };
    }

    fn starts(&self, ahead: &str) -> bool {
        let mut rest = self.rest();
        ahead.chars().all(|c| rest.next() == Some(c))
    }

    fn token(&mut self, first: char, glued: Option<Kind>, after_at: bool) -> Kind {
        let fraction_first = first == '.' && self.rest().nth(1).is_some_and(|c| c.is_ascii_digit());
        if first.is_ascii_digit() || fraction_first {
            return self.number(after_at);
        }
        if first.is_alphabetic() {
            return self.word(matches!(glued, Some(Kind::Number(_))));
        }
        if first == '+' {
            let signs = if self.starts("+/-") { 3 } else { usize::from(self.starts("+-")) * 2 };
            (0..signs.max(1)).for_each(|_| self.bump());
            return if signs == 0 { Kind::Joiner } else { Kind::PlusMinus };
        }
        self.bump();
        match first {
            '*' => Kind::Times,
            '/' | '&' => Kind::Joiner,
            ',' | ';' => Kind::Comma,
            '\n' => Kind::Newline,
            ':' | '=' => Kind::Assign,
            '@' => Kind::At,
            '±' => Kind::PlusMinus,
            '(' => Kind::Open,
            ')' => Kind::Close,
            '-' | '_'
                if matches!(glued, Some(Kind::Word | Kind::Number(_)))
                    && self.peek().is_some_and(char::is_alphanumeric) =>
            {
                Kind::Hyphen
            }
            _ => Kind::Other,
        }
    }

    /// A comma before exactly three digits groups thousands. After a lone zero, and in a class after `@`, any other
    /// comma before a digit is a decimal comma: `0,2W`.
    fn number(&mut self, after_at: bool) -> Kind {
        let mut digits: SmallVec<[u8; 32]> = SmallVec::new();
        self.digits(&mut digits);
        let lone_zero = digits.as_slice() == b"0";
        let may_group = digits.len() <= 3 && !lone_zero;
        while may_group && self.peek() == Some(',') && self.digits_after_comma() == 3 {
            self.bump();
            self.digits(&mut digits);
        }
        let point = match self.peek() {
            Some('.') => true,
            Some(',') => lone_zero || after_at,
            _ => false,
        };
        let mut whole = true;
        if point && self.rest().nth(1).is_some_and(|c| c.is_ascii_digit()) {
            whole = false;
            self.bump();
            digits.push(b'.');
            self.digits(&mut digits);
        }
        let written = std::str::from_utf8(&digits).unwrap_or_default();
        Kind::Number(Number {
            whole: whole.then(|| written.parse().unwrap_or(u64::MAX)),
            value: written.parse().unwrap_or(f64::INFINITY),
        })
    }

    /// How many digits follow the comma here, counted up to four.
    fn digits_after_comma(&self) -> usize {
        self.rest().skip(1).take(4).take_while(char::is_ascii_digit).count()
    }

    fn digits(&mut self, into: &mut SmallVec<[u8; 32]>) {
        while let Some(digit) = self.peek().filter(char::is_ascii_digit) {
            into.extend(u8::try_from(digit));
            self.bump();
        }
    }

    /// `x` directly after a number is a times sign even before letters (`60xred`), and at the end of letters before a
    /// number (`3Wx100`): no colour and no unit begins or ends with an x.
    fn word(&mut self, after_number: bool) -> Kind {
        let start = self.at;
        if after_number && self.peek() == Some('x') {
            self.bump();
            return Kind::Times;
        }
        let mut last = self.at;
        while self.peek().is_some_and(char::is_alphabetic) {
            last = self.at;
            self.bump();
        }
        let before_number = self.peek().is_some_and(|c| c.is_ascii_digit());
        if last > start && before_number && self.text[last..].chars().next().map(fold) == Some('x') {
            self.at = last;
        }
        match Key::of(&self.text[start..self.at]).as_str() {
            "x" => Kind::Times,
            "and" | "plus" => Kind::Joiner,
            "at" => Kind::At,
            _ => Kind::Word,
        }
    }
}

/// A word folded for comparison: lower case, without spaces, hyphens and underscores. A word longer than any that is
/// known keeps only its beginning, long enough to match nothing.
#[derive(Clone, Copy, Default)]
pub(super) struct Key {
    bytes: [u8; Self::ROOM],
    len: usize,
}

impl Key {
    const ROOM: usize = 32;

    pub(super) fn of(word: &str) -> Self {
        let mut key = Self::default();
        key.add(word);
        key
    }

    pub(super) fn add(&mut self, word: &str) {
        for c in word.chars().map(fold).filter(|c| !matches!(c, ' ' | '-' | '_' | '\n')) {
            let end = self.len + c.len_utf8();
            let Some(room) = self.bytes.get_mut(self.len..end) else { return };
            c.encode_utf8(room);
            self.len = end;
        }
    }

    pub(super) fn as_str(&self) -> &str {
        std::str::from_utf8(&self.bytes[..self.len]).unwrap_or_default()
    }
}
