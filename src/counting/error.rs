//! What could not be read in the notation, where it stands, and what would be accepted there.

use std::borrow::Cow;
use std::fmt;
use std::ops::Range;

use unicode_width::UnicodeWidthChar;

/// A place in the notation that could not be read.
///
/// `Display` gives one line; [`Error::pointer`] shows the place in the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Error {
    /// The place, in bytes of the text, always on character boundaries; empty at the end of the text.
    pub span: Range<usize>,
    /// Where the place begins, in characters from 1.
    pub column: usize,
    /// What stands there, cut short if it is long; empty at the end of the text.
    pub found: String,
    /// What is accepted there.
    pub accepted: Cow<'static, str>,
    /// The nearest word that is accepted, if one is near enough.
    pub suggestion: Option<String>,
}

impl Error {
    /// The most columns of a terminal that a line of [`Error::pointer`] takes.
    pub const COLUMNS: usize = 78;
    const FOUND_CHARS: usize = 40;
    const CUT: &str = "...";

    pub(super) fn new(text: &str, span: Range<usize>, accepted: impl Into<Cow<'static, str>>) -> Self {
        let place = &text[span.clone()];
        let mut found: String = place.chars().take(Self::FOUND_CHARS).collect();
        if found.len() < place.len() {
            found.push_str(Self::CUT);
        }
        let column = text[..span.start].chars().count() + 1;
        Self { span, column, found, accepted: accepted.into(), suggestion: None }
    }

    pub(super) fn suggesting(mut self, suggestion: Option<impl Into<String>>) -> Self {
        self.suggestion = suggestion.map(Into::into);
        self
    }

    /// What is accepted, with the place in `text` it is about; for where the caller already shows the text itself.
    #[must_use]
    pub fn accepted_in(&self, text: &str) -> String {
        let mut accepted = if self.found.is_empty() {
            format!("at the end, {}", self.accepted)
        } else if self.span == (0..text.len()) {
            self.accepted.to_string()
        } else {
            let found = Shown::start_of(&self.found, usize::MAX).text;
            format!("in place of '{found}' at column {}, {}", self.column, self.accepted)
        };
        if let Some(word) = &self.suggestion {
            accepted.push_str("; did you mean '");
            accepted.push_str(word);
            accepted.push_str("'?");
        }
        accepted
    }

    /// Two lines, the text and under it carets that mark the place, for a terminal with fixed-width letters.
    ///
    /// `text` is the text that was read. Control characters and characters that change the direction or hide are
    /// escaped; a text too wide for [`Error::COLUMNS`] is cut around the place, with `...` for what is left out.
    #[must_use]
    pub fn pointer(&self, text: &str) -> String {
        let (Some(before), Some(marked), Some(after)) =
            (text.get(..self.span.start), text.get(self.span.clone()), text.get(self.span.end..))
        else {
            return String::new();
        };
        // The place itself may take what the two cut marks leave; the text before it gets half of the remainder, more
        // where the text after it does not need its half.
        let room = Self::COLUMNS - 2 * Self::CUT.len();
        let marked = Shown::start_of(marked, room);
        let rest = room - marked.width.max(1).min(room);
        let half = Shown::start_of(after, rest / 2);
        let before = Shown::end_of(before, rest - half.width);
        let after = Shown::start_of(after, rest - before.width);
        let after_cut = after.cut || marked.cut;
        let after_text = if marked.cut { "" } else { &after.text };
        let (left, right) = (if before.cut { Self::CUT } else { "" }, if after_cut { Self::CUT } else { "" });
        format!(
            "{left}{}{}{after_text}{right}\n{}{}",
            before.text,
            marked.text,
            " ".repeat(left.len() + before.width),
            "^".repeat(marked.width.max(1)),
        )
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.found.is_empty() {
            write!(f, "found the end of the text")?;
        } else {
            write!(f, "found '{}'", Shown::start_of(&self.found, usize::MAX).text)?;
        }
        write!(f, " at column {}, accepted: {}", self.column, self.accepted)?;
        match &self.suggestion {
            Some(word) => write!(f, "; did you mean '{word}'?"),
            None => Ok(()),
        }
    }
}

impl std::error::Error for Error {}

/// A piece of text made safe for a terminal, with its width in columns.
struct Shown {
    text: String,
    width: usize,
    /// Something did not fit.
    cut: bool,
}

impl Shown {
    fn start_of(text: &str, room: usize) -> Self {
        let (pieces, width, cut) = Self::fit(text.chars(), room);
        Self { text: pieces.concat(), width, cut }
    }

    fn end_of(text: &str, room: usize) -> Self {
        let (mut pieces, width, cut) = Self::fit(text.chars().rev(), room);
        pieces.reverse();
        Self { text: pieces.concat(), width, cut }
    }

    fn fit(chars: impl Iterator<Item = char>, room: usize) -> (Vec<String>, usize, bool) {
        // Characters without a width (accents) take no room, so their number needs a bound of its own.
        const MOST_PIECES: usize = 1000;
        let (mut pieces, mut width) = (Vec::new(), 0);
        for c in chars {
            let piece = escaped(c);
            let more: usize = piece.chars().map(|p| p.width().unwrap_or(0)).sum();
            if width + more > room || pieces.len() == MOST_PIECES {
                return (pieces, width, true);
            }
            width += more;
            pieces.push(piece);
        }
        (pieces, width, false)
    }
}

fn escaped(c: char) -> String {
    match c {
        '\n' | '\r' | '\t' => c.escape_default().to_string(),
        c if c.is_control() || hides(c) => c.escape_unicode().to_string(),
        c => c.to_string(),
    }
}

/// Characters that draw nothing or turn the direction of the text, which could hide what was really typed.
fn hides(c: char) -> bool {
    matches!(c, '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str, place: &str) -> Error {
        let start = text.find(place).unwrap();
        Error::new(text, start..start + place.len(), "a colour")
    }

    #[test]
    fn one_line_names_the_place_and_what_is_accepted() {
        let error = at("60 depred", "depred").suggesting(Some("deep-red"));
        assert_eq!(
            error.to_string(),
            "found 'depred' at column 4, accepted: a colour; did you mean 'deep-red'?"
        );
        let end = Error::new("60 red +", 8..8, "a group");
        assert_eq!(end.to_string(), "found the end of the text at column 9, accepted: a group");
    }

    #[test]
    fn carets_stand_under_the_place_whatever_the_width_of_what_is_before_it() {
        for (text, place, carets) in [
            ("60 depred + 1 red", "depred", "   ^^^^^^"),
            // Full-width digits and letters take two columns each.
            ("６０ depred", "depred", "     ^^^^^^"),
            ("60 赤", "赤", "   ^^"),
            // A combining accent takes none.
            ("e\u{301} depred", "depred", "  ^^^^^^"),
            // An escaped character takes as many as its escape.
            ("\t\u{1b} depred", "depred", "         ^^^^^^"),
        ] {
            let pointer = at(text, place).pointer(text);
            assert_eq!(pointer.lines().nth(1), Some(carets), "{pointer}");
        }
        assert_eq!(Error::new("1 +", 3..3, "").pointer("1 +"), "1 +\n   ^");
    }

    #[test]
    fn nothing_that_moves_or_hides_text_reaches_the_terminal() {
        let text = "60 \u{1b}[31mred\u{202e}\u{200b}\r\n";
        let error = at(text, "\u{1b}");
        for shown in [error.pointer(text), error.to_string()] {
            assert!(shown.chars().all(|c| c == '\n' || !(c.is_control() || hides(c))), "{shown:?}");
        }
        assert_eq!(error.pointer(text).lines().count(), 2);
    }

    #[test]
    fn long_texts_are_cut_around_the_place_to_fit() {
        let long = format!("{}oops{}", "12 red + ".repeat(40), " + 12 赤".repeat(40));
        let lines = at(&long, "oops").pointer(&long);
        let (text, carets) = lines.split_once('\n').unwrap();
        assert!(text.starts_with("...") && text.ends_with("..."), "{text}");
        let width: usize = text.chars().map(|c| c.width().unwrap_or(0)).sum();
        assert!((Error::COLUMNS - 1..=Error::COLUMNS).contains(&width), "{width}");
        assert_eq!(carets.find('^'), text.find("oops"));
        let all = "x".repeat(500);
        let whole = Error::new(&all, 0..500, "less").pointer(&all);
        assert!(whole.lines().all(|line| line.len() <= Error::COLUMNS), "{whole}");
    }

    #[test]
    fn another_text_than_the_one_read_is_no_panic() {
        assert_eq!(at("60 depred", "depred").pointer("６"), "");
    }
}
