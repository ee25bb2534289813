//! Guards against what a listing's text could do where it is shown.
//!
//! A terminal obeys control characters, a spreadsheet runs cells that begin like a formula, a page obeys markup. Each sink
//! has its own guard, and none trusts another's.

use std::borrow::Cow;
use std::fmt::Write as _;

/// Whether a character can change what a reader of a terminal sees without being seen itself: controls, bidirectional
/// marks and overrides, zero-width characters, separators of lines, tags and variation marks that hide.
fn unseen(c: char) -> bool {
    c.is_control()
        || matches!(c,
            '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}'
            | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{3164}' | '\u{feff}' | '\u{ffa0}' | '\u{fff9}'..='\u{fffb}'
            | '\u{e0000}'..='\u{e0fff}')
}

/// Text for a terminal: a character that could act unseen is written as its code, `\u{1b}`; a line break is a space.
#[must_use]
pub fn terminal(text: &str) -> Cow<'_, str> {
    if !text.chars().any(unseen) {
        return Cow::Borrowed(text);
    }
    let mut safe = String::with_capacity(text.len() + 16);
    for c in text.chars() {
        match c {
            '\n' | '\r' | '\t' => safe.push(' '),
            c if unseen(c) => {
                let _ = write!(safe, "\\u{{{:x}}}", u32::from(c));
            }
            c => safe.push(c),
        }
    }
    Cow::Owned(safe)
}

/// Whether a spreadsheet may run a cell that begins so, or whether the guard itself would be taken for text.
#[must_use]
pub fn needs_guard(cell: &[u8]) -> bool {
    matches!(cell.first(), Some(b'=' | b'+' | b'-' | b'@' | b'\t' | b'\r' | b'\''))
}

/// A cell for CSV that is opened in a spreadsheet: one that begins with `= + - @`, a tab, a carriage return or an
/// apostrophe is given a leading apostrophe. Taking one leading apostrophe off each cell that has one gives the text back.
#[must_use]
pub fn spreadsheet(cell: &str) -> Cow<'_, str> {
    if needs_guard(cell.as_bytes()) { Cow::Owned(format!("'{cell}")) } else { Cow::Borrowed(cell) }
}

/// Text for a cell of a Markdown table: what a terminal gets, with the characters that Markdown and HTML act on escaped.
#[must_use]
pub fn markdown(text: &str) -> String {
    let mut safe = String::with_capacity(text.len() + 8);
    for c in terminal(text).chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '|' | '\\' | '`' | '*' | '_' | '[' | ']' | '#' | '!' | '~' | '$' => {
                safe.push('\\');
                safe.push(c);
            }
            c => safe.push(c),
        }
    }
    // A bare address would become a link.
    safe.replace("://", ":\u{2060}//").replace("www.", "www\u{2060}.")
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_acts_unseen_is_shown_as_its_code() {
        assert_eq!(terminal("a\u{1b}[31mb"), "a\\u{1b}[31mb");
        assert_eq!(terminal("300\u{202e}W"), "300\\u{202e}W");
        assert_eq!(terminal("two\nlines"), "two lines");
        assert!(matches!(terminal("plain 300 W – 植物"), Cow::Borrowed(_)));
    }

    #[test]
    fn markup_does_not_survive_a_markdown_cell() {
        assert_eq!(markdown("<b>a|b</b>"), "&lt;b&gt;a\\|b&lt;/b&gt;");
    }

    proptest! {
        #[test]
        fn a_terminal_never_gets_an_unseen_character(text in any::<String>()) {
            prop_assert!(!terminal(&text).chars().any(unseen));
        }

        #[test]
        fn the_spreadsheet_guard_can_be_taken_off(text in any::<String>()) {
            let guarded = spreadsheet(&text);
            prop_assert_eq!(guarded.strip_prefix('\'').unwrap_or(&guarded), &text);
            prop_assert!(!matches!(guarded.chars().next(), Some('=' | '+' | '-' | '@' | '\t' | '\r')));
        }
    }
}
