//! One record of the input, as the workers see it.

/// Why a record could not be read as the fields that its writer meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RecordFault {
    /// A quote opens in this line and does not close: within the record limit, before the end of the input, or where a
    /// field ends (see [`RecordReader`](super::RecordReader) for when a quote that runs over lines is not believed).
    UnclosedQuote,
    /// The line is longer than the limit; [`Record::raw`] holds the first `limit` bytes of it.
    TooLong {
        /// The limit that it broke, in bytes.
        limit: usize,
    },
    /// The record has more fields than any table.
    TooManyFields {
        /// The limit that it broke, in fields.
        limit: usize,
    },
}

impl RecordFault {
    /// What was found, in words for a person.
    #[must_use]
    pub fn found(self) -> String {
        match self {
            Self::UnclosedQuote => "a quote that opens and does not close".into(),
            Self::TooLong { limit } => format!("a line of more than {limit} bytes"),
            Self::TooManyFields { limit } => format!("a row of more than {limit} fields"),
        }
    }

    /// What is accepted there, in words for a person.
    #[must_use]
    pub fn accepted(self) -> String {
        match self {
            Self::UnclosedQuote => {
                "a quoted field closed by a quote before the next delimiter or line end, a quote inside it doubled".into()
            }
            Self::TooLong { limit } => format!("a line of at most {limit} bytes"),
            Self::TooManyFields { limit } => format!("a row of at most {limit} fields"),
        }
    }
}

/// Where a field stands in the text of its record, in bytes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Span {
    pub(super) start: usize,
    pub(super) end: usize,
}

/// A view of one record in its [`Batch`](super::Batch).
///
/// The fields are UTF-8 whatever the encoding of the input. A record with a [`fault`](Self::fault) gives the fields that
/// were complete before the faulty one, so that a row about it can still name the listing.
#[derive(Debug, Clone, Copy)]
pub struct Record<'a> {
    pub(super) text: &'a str,
    pub(super) spans: &'a [Span],
    pub(super) raw: &'a [u8],
    pub(super) line: u64,
    pub(super) byte: u64,
    pub(super) fault: Option<RecordFault>,
}

impl<'a> Record<'a> {
    /// The field at `index`, from 0, unquoted; `None` past the last field of a short row.
    #[must_use]
    #[inline]
    pub fn get(&self, index: usize) -> Option<&'a str> {
        let span = self.spans.get(index)?;
        self.text.get(span.start..span.end)
    }

    /// All the fields in order.
    pub fn iter(&self) -> impl Iterator<Item = &'a str> + use<'a> {
        let record = *self;
        (0..record.len()).filter_map(move |index| record.get(index))
    }

    /// How many fields there are. A ragged row has its own number of them: whether that is a fault is for the caller.
    #[must_use]
    pub fn len(&self) -> usize {
        self.spans.len()
    }

    /// Whether there is no field: only a faulty record may have none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.spans.is_empty()
    }

    /// The line of the input on which the record starts, from 1. LF, CR and CRLF each end a line; empty lines count.
    #[must_use]
    pub fn line(&self) -> u64 {
        self.line
    }

    /// Offset of the record's first byte in the input, from 0; of the encoded bytes, where the input is UTF-16.
    #[must_use]
    pub fn byte(&self) -> u64 {
        self.byte
    }

    /// The record as it stood, without its line end. UTF-16 input is given as UTF-8, any other input byte for byte.
    #[must_use]
    pub fn raw(&self) -> &'a [u8] {
        self.raw
    }

    /// Why the record could not be read, if it could not.
    #[must_use]
    pub fn fault(&self) -> Option<RecordFault> {
        self.fault
    }
}
