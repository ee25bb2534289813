//! Colour and emphasis, decided in one place. The word is always printed too.

use comfy_table::{LineStyle, TableStyle};

use crate::comparison::Verdict;

/// Tables have a rule under the header and one at the end: lines between rows would be half of what is read.
pub(super) const RULED: TableStyle = TableStyle::new()
    .header_separator(LineStyle::none().fill('\u{2500}').junction('\u{2500}'))
    .bottom_border(LineStyle::none().fill('\u{2500}').junction('\u{2500}'));

/// Whether to write escape sequences.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Style {
    /// Write them.
    pub coloured: bool,
}

impl Style {
    /// Without colour.
    pub const PLAIN: Self = Self { coloured: false };

    fn paint(self, code: &str, text: &str) -> String {
        if self.coloured { format!("\u{1b}[{code}m{text}\u{1b}[0m") } else { text.to_owned() }
    }

    /// Bold text.
    #[must_use]
    pub fn strong(self, text: &str) -> String {
        self.paint("1", text)
    }

    /// Faint text.
    #[must_use]
    pub fn faint(self, text: &str) -> String {
        self.paint("2", text)
    }

    /// Marked text, as for words that were read.
    #[must_use]
    pub fn marked(self, text: &str) -> String {
        self.paint("7", text)
    }

    /// A verdict's word.
    #[must_use]
    pub fn verdict(self, verdict: Verdict) -> String {
        // Blue and orange rather than green and red: most colour-blind readers can tell them apart.
        let code = match verdict {
            Verdict::BorneOut | Verdict::WithinReach => "1;34",
            Verdict::Understated => "1;36",
            Verdict::Unsettled => "1",
            Verdict::Overstated => "1;33",
            Verdict::OutOfReach => "1;7;33",
        };
        self.paint(code, verdict.word())
    }
}
