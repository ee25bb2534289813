//! What a person should be told about how the input was read.

use std::fmt;

/// A guess that was made about the whole input, or damage that belongs to no single row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Notice {
    /// No byte order mark, but the first four bytes look like UTF-16.
    Utf16Guessed {
        /// High byte first.
        big_endian: bool,
    },
    /// The UTF-16 text held half characters, which were replaced by U+FFFD.
    Utf16Damaged,
    /// Records that are not UTF-8 were read as Windows-1252.
    Windows1252Guessed {
        /// Line of the first of them, from 1.
        first_line: u64,
        /// How many there were.
        records: u64,
    },
}

impl Notice {
    /// The notice's name, for machines.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Utf16Guessed { .. } => "utf-16-guessed",
            Self::Utf16Damaged => "utf-16-damaged",
            Self::Windows1252Guessed { .. } => "windows-1252-guessed",
        }
    }
}

impl fmt::Display for Notice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: ", self.name())?;
        match self {
            Self::Utf16Guessed { big_endian } => {
                let order = if *big_endian { "UTF-16BE" } else { "UTF-16LE" };
                write!(
                    f,
                    "no byte order mark, read as {order} for its zero bytes; if that is wrong, save it as UTF-8"
                )
            }
            Self::Utf16Damaged => {
                write!(
                    f,
                    "half characters in the UTF-16 text were replaced by U+FFFD; save the file as UTF-8"
                )
            }
            Self::Windows1252Guessed { first_line, records } => {
                let rows = if *records == 1 { "row that is" } else { "rows that are" };
                write!(
                    f,
                    "{records} {rows} not UTF-8, the first on line {first_line}, read as Windows-1252; if that is wrong, \
                     save the file as UTF-8"
                )
            }
        }
    }
}
