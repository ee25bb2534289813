//! Rows in, rows out, in constant memory, whatever the file holds; knows nothing of lights.
//!
//! [`RecordReader`] turns bytes into [`Batch`]es of [`Record`]s: it finds out the encoding and the delimiter, bounds a quote
//! that never closes, and loses no line. [`run`] hands the batches to worker threads and writes what they make of them in
//! the order of the input; rows from elsewhere, such as a spreadsheet, come by the same [`Supply`]. [`AtomicFile`] is an output file that is either the old one or the whole new one.
//!
//! Nothing here prints: what a person should know comes back as [`Notice`]s and through a progress callback.
//!
//! ```
//! use plainwatt::stream::{Batch, Merge, ReadOptions, RecordReader, Run, Sinks, run};
//! use std::io::Write as _;
//!
//! #[derive(Default)]
//! struct Counts {
//!     good: u64,
//!     faulty: u64,
//! }
//! impl Merge for Counts {
//!     fn merge(&mut self, other: Self) {
//!         self.good += other.good;
//!         self.faulty += other.faulty;
//!     }
//! }
//!
//! let input: &[u8] = b"lamp;claim\nA;300\nB;1\"000\nC;\"40\n";
//! let mut reader = RecordReader::new(input, ReadOptions::default());
//! let mut header = Batch::default();
//! assert!(reader.read_one(&mut header)?);
//! assert_eq!(header.get(0).and_then(|names| names.get(1)), Some("claim"));
//!
//! let (mut rows, mut rejects) = (Vec::new(), Vec::new());
//! let outcome = run(
//!     reader,
//!     Run { threads: 2, ..Run::default() },
//!     |counts: &mut Counts, record, out| {
//!         match record.fault() {
//!             None => counts.good += 1,
//!             Some(fault) => {
//!                 counts.faulty += 1;
//!                 let _ = writeln!(out.rejects, "line {}: {}", record.line(), fault.found());
//!             }
//!         }
//!         let _ = writeln!(out.rows, "{}", record.get(0).unwrap_or("?"));
//!     },
//!     Sinks { rows: &mut rows, rejects: Some(&mut rejects) },
//! )?;
//! assert_eq!(rows, b"A\nB\nC\n");
//! assert_eq!((outcome.summary.good, outcome.summary.faulty), (2, 1));
//! assert_eq!(rejects, b"line 4: a quote that opens and does not close\n");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod atomic_file;
mod batch;
mod delimiter;
mod error;
mod filling;
mod notice;
mod options;
mod parser;
mod plain;
mod quoting;
mod reader;
mod record;
mod run;
mod settling;
mod source;
mod supply;
mod text;
mod workers;

pub use atomic_file::AtomicFile;
pub use batch::Batch;
pub use error::StreamError;
pub use notice::Notice;
pub use options::ReadOptions;
pub use reader::RecordReader;
pub use record::{Record, RecordFault};
pub use run::{Merge, Outcome, Output, Progress, Run, Sinks, run};
pub use source::Encoding;
pub use supply::Supply;
