//! Where the quotes of a record open and close: the slow, careful look at a record that spans lines.

/// How far the quotes have been followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Reached {
    /// The bytes are used up, and no quote is open.
    Bare,
    /// The bytes are used up, and a quote is open.
    Open,
    /// The line end that ends the record.
    End,
    /// A field that had run over a line end was closed in the middle of text: that quote was meant to open a field, or is
    /// an inch mark, so the one before it was never closed.
    Stray,
}

/// Follows the quotes of a record by the rules of the parser, and goes on where it stopped for want of bytes.
#[derive(Debug, Default)]
pub(super) struct Follower {
    state: State,
    /// The open field has run over a line end.
    crossed: bool,
    /// Bytes of the record that have been followed.
    pub(super) seen: usize,
    /// Start of the last line that was reached: after [`Reached::Stray`], of the line with the stray quote.
    pub(super) last_line: usize,
}

#[derive(Debug, Default, Clone, Copy)]
enum State {
    #[default]
    FieldStart,
    Bare,
    Quoted,
    QuoteInQuoted,
}

impl Follower {
    /// Follows on through `record`, which starts where the record does.
    pub(super) fn follow(&mut self, record: &[u8], delimiter: u8) -> Reached {
        for &byte in record.get(self.seen..).unwrap_or_default() {
            self.seen += 1;
            let line_end = byte == b'\r' || byte == b'\n';
            self.state = match self.state {
                State::Quoted => {
                    if line_end {
                        self.crossed = true;
                        self.last_line = self.seen;
                    }
                    if byte == b'"' { State::QuoteInQuoted } else { State::Quoted }
                }
                State::QuoteInQuoted if byte == b'"' => State::Quoted,
                _ if line_end => return Reached::End,
                _ if byte == delimiter => State::FieldStart,
                State::FieldStart if byte == b'"' => {
                    self.crossed = false;
                    State::Quoted
                }
                State::QuoteInQuoted if self.crossed => return Reached::Stray,
                _ => State::Bare,
            };
        }
        if matches!(self.state, State::Quoted) { Reached::Open } else { Reached::Bare }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn followed(record: &str) -> (Reached, usize) {
        let mut at_once = Follower::default();
        let reached = at_once.follow(record.as_bytes(), b',');
        let mut by_bytes = Follower::default();
        let mut steps = (0..=record.len()).map(|len| by_bytes.follow(&record.as_bytes()[..len], b','));
        let last = steps.find(|step| matches!(step, Reached::End | Reached::Stray));
        assert_eq!(last.is_some(), matches!(reached, Reached::End | Reached::Stray));
        assert_eq!((by_bytes.seen, by_bytes.last_line), (at_once.seen, at_once.last_line));
        (reached, at_once.last_line)
    }

    #[test]
    fn a_quoted_line_end_closed_at_a_delimiter_is_sound() {
        assert_eq!(followed("a,\"b\nc\",d"), (Reached::Bare, 5));
        assert_eq!(followed("a,\"b\nc\"\nd"), (Reached::End, 5));
        assert_eq!(followed("a,\"b \"\"c\"\"\r\nd\",\"e\""), (Reached::Bare, 12));
    }

    #[test]
    fn a_quote_closed_in_the_middle_of_text_after_a_line_end_is_stray() {
        assert_eq!(followed("a,\"b\nc,\"d\",e"), (Reached::Stray, 5));
        assert_eq!(followed("a,\"b\nc\n24\" x"), (Reached::Stray, 7));
    }

    #[test]
    fn a_quote_closed_in_the_middle_of_text_on_its_own_line_is_text() {
        assert_eq!(followed("a,\"24\" panel,5\n"), (Reached::End, 0));
    }

    #[test]
    fn an_open_quote_is_seen_at_the_end() {
        assert_eq!(followed("a,\"b"), (Reached::Open, 0));
        assert_eq!(followed("a,\"b\nc"), (Reached::Open, 5));
        assert_eq!(followed("a,b\"c"), (Reached::Bare, 0));
    }
}
