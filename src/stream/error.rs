//! What stops a run: the input, or an output.

use std::{fmt, io};

/// Why a run ended before the input did.
#[derive(Debug)]
pub enum StreamError {
    /// The input could not be read on.
    Read(io::Error),
    /// The rows could not be written.
    Write(io::Error),
    /// The rejects could not be written.
    WriteRejects(io::Error),
}

impl StreamError {
    /// The reader of the output has gone, which is no error to report.
    #[must_use]
    pub fn is_broken_pipe(&self) -> bool {
        match self {
            Self::Read(_) => false,
            Self::Write(error) | Self::WriteRejects(error) => error.kind() == io::ErrorKind::BrokenPipe,
        }
    }
}

impl fmt::Display for StreamError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Read(_) => "the input could not be read to its end",
            Self::Write(_) => "the output could not be written",
            Self::WriteRejects(_) => "the rejects could not be written",
        })
    }
}

impl std::error::Error for StreamError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Read(error) | Self::Write(error) | Self::WriteRejects(error) => Some(error),
        }
    }
}
