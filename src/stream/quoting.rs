//! Where the quotes of a record open and close: the slow, careful look at a record that spans lines.

/// What following the quotes through some lines showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Quoting {
    /// A quote is open at the end.
    pub(super) open: bool,
    /// A field that had run over a line end was closed in the middle of text: that quote was meant to open a field, or is
    /// an inch mark, so the one before it was never closed.
    pub(super) stray: bool,
    /// Start of the last line that was reached, which is where the stray quote stands if there is one.
    pub(super) last_line: usize,
}

enum State {
    FieldStart,
    Bare,
    Quoted,
    QuoteInQuoted,
}

/// Follows the quotes of `record`, which starts at the start of a record and holds no unquoted line end but perhaps a last
/// one, by the rules of the parser; stops at a stray quote.
pub(super) fn follow(record: &[u8], delimiter: u8) -> Quoting {
    let mut state = State::FieldStart;
    let mut seen = Quoting { open: false, stray: false, last_line: 0 };
    // Whether the open field has run over a line end.
    let mut crossed = false;
    for (at, &byte) in record.iter().enumerate() {
        state = match state {
            State::Quoted => {
                if byte == b'\r' || byte == b'\n' {
                    crossed = true;
                    seen.last_line = at + 1;
                }
                if byte == b'"' { State::QuoteInQuoted } else { State::Quoted }
            }
            State::QuoteInQuoted if byte == b'"' => State::Quoted,
            _ if byte == delimiter => State::FieldStart,
            State::FieldStart if byte == b'"' => {
                crossed = false;
                State::Quoted
            }
            State::QuoteInQuoted if byte != b'\r' && byte != b'\n' && crossed => {
                seen.stray = true;
                return seen;
            }
            _ => State::Bare,
        };
    }
    seen.open = matches!(state, State::Quoted);
    seen
}

#[cfg(test)]
mod tests {
    use super::*;

    fn followed(record: &str) -> (bool, bool, usize) {
        let Quoting { open, stray, last_line } = follow(record.as_bytes(), b',');
        (open, stray, last_line)
    }

    #[test]
    fn a_quoted_line_end_closed_at_a_delimiter_is_sound() {
        assert_eq!(followed("a,\"b\nc\",d"), (false, false, 5));
        assert_eq!(followed("a,\"b\nc\""), (false, false, 5));
        assert_eq!(followed("a,\"b \"\"c\"\"\r\nd\",\"e\""), (false, false, 12));
    }

    #[test]
    fn a_quote_closed_in_the_middle_of_text_after_a_line_end_is_stray() {
        assert_eq!(followed("a,\"b\nc,\"d\",e"), (false, true, 5));
        assert_eq!(followed("a,\"b\nc\n24\" x"), (false, true, 7));
    }

    #[test]
    fn a_quote_closed_in_the_middle_of_text_on_its_own_line_is_text() {
        assert_eq!(followed("a,\"24\" panel,5"), (false, false, 0));
    }

    #[test]
    fn an_open_quote_is_seen_at_the_end() {
        assert_eq!(followed("a,\"b"), (true, false, 0));
        assert_eq!(followed("a,\"b\nc"), (true, false, 5));
        assert_eq!(followed("a,b\"c"), (false, false, 0));
    }
}
