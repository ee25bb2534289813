//! One character of a listing as the tokenizer sees it: full-width forms, accents, dashes, signs and white space folded
//! to one form each, in place, so that every position stays a position of the original text.

/// Signs that carry meaning in a listing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(u8)]
pub(super) enum Mark {
    Times,
    Plus,
    Slash,
    Dash,
    Tilde,
    Colon,
    Equal,
    At,
    Open,
    Close,
    Comma,
    Stop,
    Line,
    Pipe,
    And,
    Percent,
    PlusMinus,
    Inch,
    Foot,
    Compare,
    Question,
    Bang,
    Degree,
    Hash,
    Money,
    Dot,
    Arrow,
    Squared,
    Inverse,
    Current,
    /// Any other sign: emoji, stars, box drawing.
    Other,
}

impl Mark {
    /// The signs between a label and what it labels.
    pub(super) const LABEL: u32 = Self::bits(&[Self::Colon, Self::Equal]);

    /// A bit of its own.
    pub(super) const fn bit(self) -> u32 {
        1 << self as u32
    }

    /// The bits of several signs.
    pub(super) const fn bits(marks: &[Self]) -> u32 {
        let (mut set, mut i) = (0, 0);
        while i < marks.len() {
            set |= marks[i].bit();
            i += 1;
        }
        set
    }
}

/// What one character folds to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fold {
    /// A letter, lower-cased and without its accent.
    Letter(u32),
    /// A letter of a script that is written without spaces.
    Ideograph(u32),
    Digit(u8),
    /// White space; `joins` for the no-break and thin spaces that group digits.
    Space {
        joins: bool,
    },
    /// Zero-width and combining characters: as if they were not there.
    Skip,
    Mark(Mark),
}

/// Folds one character.
pub(super) const fn fold(c: char) -> Fold {
    let u = c as u32;
    match c {
        'a'..='z' => Fold::Letter(u),
        'A'..='Z' => Fold::Letter(u | 0x20),
        '0'..='9' => Fold::Digit(c as u8 - b'0'),
        '\n' | '\r' | '\u{b}' | '\u{c}' | '\u{85}' | '\u{2028}' | '\u{2029}' => Fold::Mark(Mark::Line),
        '\u{a0}' | '\u{2007}'..='\u{200a}' | '\u{202f}' | '\u{205f}' => Fold::Space { joins: true },
        '\0'..=' ' | '\u{7f}' | '\u{1680}' | '\u{2000}'..='\u{2006}' | '\u{3000}' => {
            Fold::Space { joins: false }
        }
        '*' | '×' | '✕' | '✖' | '╳' | '∗' | '⨯' | '＊' | '✗' | '✘' | '⨉' | '⋆' => {
            Fold::Mark(Mark::Times)
        }
        '+' | '＋' => Fold::Mark(Mark::Plus),
        '/' | '／' | '∕' | '⁄' => Fold::Mark(Mark::Slash),
        '-' | '\u{2010}'..='\u{2015}' | '−' | '－' | '﹣' => Fold::Mark(Mark::Dash),
        '~' | '〜' | '～' | '∼' => Fold::Mark(Mark::Tilde),
        ':' | '：' | '∶' => Fold::Mark(Mark::Colon),
        '=' | '＝' | '≙' => Fold::Mark(Mark::Equal),
        '@' | '＠' => Fold::Mark(Mark::At),
        '(' | '[' | '{' | '（' | '［' | '【' | '「' | '『' | '｛' | '〔' | '《' => {
            Fold::Mark(Mark::Open)
        }
        ')' | ']' | '}' | '）' | '］' | '】' | '」' | '』' | '｝' | '〕' | '》' => {
            Fold::Mark(Mark::Close)
        }
        ',' | '，' | '、' | '､' => Fold::Mark(Mark::Comma),
        '.' | '。' | '．' | '｡' => Fold::Mark(Mark::Stop),
        ';' | '|' | '；' | '｜' | '∣' | '￨' | '¦' | '•' | '●' | '■' | '▪' | '◆' | '►' | '¶' => {
            Fold::Mark(Mark::Pipe)
        }
        '&' | '＆' => Fold::Mark(Mark::And),
        '%' | '％' | '‰' => Fold::Mark(Mark::Percent),
        '±' => Fold::Mark(Mark::PlusMinus),
        '"' | '“' | '”' | '„' | '″' | '«' | '»' | '＂' => Fold::Mark(Mark::Inch),
        '\'' | '’' | '‘' | '′' | '`' | '´' | '＇' => Fold::Mark(Mark::Foot),
        '<' | '>' | '≤' | '≥' | '＜' | '＞' | '⩽' | '⩾' => Fold::Mark(Mark::Compare),
        '?' | '？' | '¿' => Fold::Mark(Mark::Question),
        '!' | '！' | '¡' | '‼' | '❗' => Fold::Mark(Mark::Bang),
        '°' | '˚' | 'º' | '℃' | '℉' => Fold::Mark(Mark::Degree),
        '#' | '＃' | '№' => Fold::Mark(Mark::Hash),
        '$' | '€' | '£' | '¥' | '￥' | '＄' | '₽' | '₺' => Fold::Mark(Mark::Money),
        '·' | '∙' | '⋅' | '‧' | '・' | '･' => Fold::Mark(Mark::Dot),
        '→' | '⇒' | '➔' | '➜' | '➡' | '←' => Fold::Mark(Mark::Arrow),
        '²' | '³' => Fold::Mark(Mark::Squared),
        '⁻' | '¹' => Fold::Mark(Mark::Inverse),
        '⎓' | '≈' | '≃' | '⌀' | '∅' => Fold::Mark(Mark::Current),
        'µ' | 'μ' => Fold::Letter(b'u' as u32),
        'À'..='Å' | 'à'..='å' | 'ā' | 'ă' | 'ą' | 'Ā' | 'Ă' | 'Ą' | 'Æ' | 'æ' => {
            Fold::Letter(b'a' as u32)
        }
        'Ç' | 'ç' | 'Ć' | 'ć' | 'Č' | 'č' => Fold::Letter(b'c' as u32),
        'È'..='Ë' | 'è'..='ë' | 'Ē' | 'ē' | 'Ę' | 'ę' | 'Ě' | 'ě' => Fold::Letter(b'e' as u32),
        'Ğ' | 'ğ' => Fold::Letter(b'g' as u32),
        'Ì'..='Ï' | 'ì'..='ï' | 'ı' | 'İ' => Fold::Letter(b'i' as u32),
        'Ł' | 'ł' => Fold::Letter(b'l' as u32),
        'Ñ' | 'ñ' | 'Ń' | 'ń' | 'Ň' | 'ň' => Fold::Letter(b'n' as u32),
        'Ò'..='Ö' | 'Ø' | 'ò'..='ö' | 'ø' | 'Ő' | 'ő' | 'Œ' | 'œ' => Fold::Letter(b'o' as u32),
        'Ř' | 'ř' => Fold::Letter(b'r' as u32),
        'ß' | 'Ś' | 'ś' | 'Ş' | 'ş' | 'Š' | 'š' | 'Ș' | 'ș' => Fold::Letter(b's' as u32),
        'Ù'..='Ü' | 'ù'..='ü' | 'Ű' | 'ű' | 'Ů' | 'ů' => Fold::Letter(b'u' as u32),
        'Ý' | 'ý' | 'ÿ' => Fold::Letter(b'y' as u32),
        'Ź' | 'ź' | 'Ż' | 'ż' | 'Ž' | 'ž' => Fold::Letter(b'z' as u32),
        'А'..='Я' => Fold::Letter(u + 0x20),
        'ё' | 'Ё' => Fold::Letter('е' as u32),
        'а'..='я' => Fold::Letter(u),
        'Ａ'..='Ｚ' => Fold::Letter(u - 0xff21 + 0x61),
        'ａ'..='ｚ' => Fold::Letter(u - 0xff41 + 0x61),
        '０'..='９' => Fold::Digit(((u - 0xff10) % 10) as u8),
        // Bold, italic and other mathematical letters: alphabets of 26 capitals and 26 small letters in a row.
        '\u{1d400}'..='\u{1d6a3}' => Fold::Letter((u - 0x1d400) % 26 + 0x61),
        '\u{1d7ce}'..='\u{1d7ff}' => Fold::Digit(((u - 0x1d7ce) % 10) as u8),
        '\u{ad}' | '\u{300}'..='\u{36f}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' => Fold::Skip,
        '\u{2060}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}' => Fold::Skip,
        '®' | '™' | '©' | '\u{180e}' => Fold::Skip,
        '々' | 'ぁ'..='ヿ' | '㐀'..='䶿' | '一'..='鿿' | '豈'..='﫿' | '㎡' => Fold::Ideograph(u),
        '\u{c0}'..='\u{24f}' | '\u{370}'..='\u{5ff}' => Fold::Letter(u),
        _ => Fold::Mark(Mark::Other),
    }
}

/// The characters of one or two bytes, folded.
static SHORT: [Fold; 0x800] = table(0);
/// Punctuation and signs, Japanese signs and kana, and forms of full width.
static SIGNS: [Fold; 0x300] = table(0x2000);
static KANA: [Fold; 0x100] = table(0x3000);
static WIDE: [Fold; 0x100] = table(0xff00);

/// The characters from one on, folded.
const fn table<const N: usize>(first: u32) -> [Fold; N] {
    let mut table = [Fold::Skip; N];
    let mut i = 0;
    while i < N {
        #[expect(clippy::cast_possible_truncation, reason = "a few thousand characters")]
        if let Some(c) = char::from_u32(first + i as u32) {
            table[i] = fold(c);
        }
        i += 1;
    }
    table
}

/// The folded character at `at`, with the number of bytes it takes; an HTML entity counts as the character it names.
pub(super) fn next(text: &str, at: usize) -> Option<(Fold, usize)> {
    let bytes = text.as_bytes();
    match *bytes.get(at)? {
        b'&' => Some(match entity(&bytes[at..]) {
            Some((c, length)) => (fold(c), length),
            None => (SHORT[usize::from(b'&')], 1),
        }),
        b @ 0..0x80 => Some((SHORT[usize::from(b)], 1)),
        b @ 0xc0..0xe0 => {
            let low = bytes.get(at + 1)? & 0x3f;
            Some((SHORT[usize::from(b & 0x1f) << 6 | usize::from(low)], 2))
        }
        b @ 0xe0..0xf0 => {
            let [second, third] = *bytes.get(at + 1..)?.first_chunk()?;
            let u = u32::from(b & 0xf) << 12 | u32::from(second & 0x3f) << 6 | u32::from(third & 0x3f);
            let low = u as usize & 0xff;
            Some((
                match u {
                    0x2000..0x2300 => SIGNS[u as usize - 0x2000],
                    0x3000..0x3100 => KANA[low],
                    0x4e00..0xa000 => Fold::Ideograph(u),
                    0xff00.. => WIDE[low],
                    _ => fold(char::from_u32(u)?),
                },
                3,
            ))
        }
        _ => {
            let c = text.get(at..)?.chars().next()?;
            Some((fold(c), c.len_utf8()))
        }
    }
}

/// The first place from `at` on that is not a zero-width character.
#[inline]
pub(super) fn past_skips(text: &str, mut at: usize) -> usize {
    while text.as_bytes().get(at).is_some_and(|&b| b >= 0x80) {
        match next(text, at) {
            Some((Fold::Skip, length)) => at += length,
            _ => break,
        }
    }
    at
}

/// The character that an HTML entity at the start of `bytes` stands for, and the entity's length.
fn entity(bytes: &[u8]) -> Option<(char, usize)> {
    const LONGEST: usize = 10;
    let end = bytes.iter().take(LONGEST).position(|&b| b == b';')?;
    let name = &bytes[1..end];
    let c = match name {
        b"amp" => '&',
        b"quot" | b"ldquo" | b"rdquo" | b"Prime" => '"',
        b"lt" | b"le" => '<',
        b"gt" | b"ge" => '>',
        b"nbsp" => '\u{a0}',
        b"thinsp" => '\u{2009}',
        b"ensp" | b"emsp" => ' ',
        b"apos" | b"lsquo" | b"rsquo" | b"prime" => '\'',
        b"times" => '×',
        b"micro" | b"mu" => 'µ',
        b"plusmn" | b"pm" => '±',
        b"deg" => '°',
        b"ndash" | b"mdash" | b"minus" => '-',
        b"middot" | b"sdot" => '·',
        b"sup2" => '²',
        b"sup1" => '¹',
        b"rarr" => '→',
        b"asymp" => '≈',
        b"hellip" => '…',
        b"bull" => '•',
        b"trade" | b"reg" => '®',
        [b'#', b'x' | b'X', hex @ ..] => number(hex, 16)?,
        [b'#', decimal @ ..] => number(decimal, 10)?,
        b"szlig" => 'ß',
        // `&eacute;`, `&uuml;`: accents fold away.
        [letter, accent @ ..] if letter.is_ascii_alphabetic() && is_accent(accent) => char::from(*letter),
        _ => return None,
    };
    Some((c, end + 1))
}

/// The second half of a name such as `eacute` or `uuml`.
fn is_accent(name: &[u8]) -> bool {
    matches!(name, b"acute" | b"grave" | b"circ" | b"uml" | b"tilde" | b"cedil" | b"ring" | b"slash")
}

fn number(digits: &[u8], radix: u32) -> Option<char> {
    let digits = std::str::from_utf8(digits).ok()?;
    char::from_u32(u32::from_str_radix(digits, radix).ok()?)
}

#[cfg(test)]
mod tests {
    #[test]
    fn a_character_is_folded_alike_from_the_tables() {
        for c in (1..=u32::from(char::MAX)).filter_map(char::from_u32).filter(|&c| c != '&') {
            let text = c.to_string();
            assert_eq!(super::next(&text, 0), Some((super::fold(c), text.len())), "{c:?}");
        }
    }
}
