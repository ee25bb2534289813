//! Why a workbook cannot be read.

use std::fmt;
use std::io;

/// Why a workbook, or the rest of a sheet, cannot be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WorkbookError {
    /// It is something else; the words say what.
    NotAWorkbook(&'static str),
    /// It is protected with a password.
    Password,
    /// It is damaged; the words say how.
    Damaged(String),
    /// A part of it has a piece (a text, a tag) that is too long.
    LongPiece {
        /// The part's name.
        part: String,
    },
    /// What is held in memory is too large.
    TooLarge,
    /// No sheet has that name.
    NoSuchSheet {
        /// The name sought.
        name: String,
        /// The names of the worksheets.
        sheets: Vec<String>,
    },
    /// That sheet has no cells, as a sheet that is a chart.
    NotCells {
        /// The name of the sheet.
        name: String,
        /// The names of the worksheets.
        sheets: Vec<String>,
    },
    /// All worksheets are hidden, and none was asked for.
    AllHidden {
        /// The names of the worksheets.
        sheets: Vec<String>,
    },
    /// A cell's error value is none that is known, so that the cell cannot be told.
    UnknownErrorValue {
        /// What stands there.
        value: String,
        /// The last cell before it.
        after: Option<String>,
    },
    /// The rows are not in order.
    RowsOutOfOrder {
        /// The cell that came too late.
        cell: String,
    },
}

/// What to do about a kind of file that is not read.
const SAVE_AS: &str = "accepted: an Excel workbook (.xlsx, .xlsm) or a CSV; save it as one of them";

impl fmt::Display for WorkbookError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAWorkbook(what) => write!(f, "found {what}; {SAVE_AS}"),
            Self::Password => {
                write!(
                    f,
                    "found a workbook with a password; accepted: one without; save it without the password"
                )
            }
            Self::Damaged(how) => {
                write!(
                    f,
                    "found a damaged workbook ({how}); open it in a spreadsheet and save it anew, or as CSV"
                )
            }
            Self::LongPiece { part } => write!(
                f,
                "found a piece of more than {} bytes in the part {part} of the workbook; no spreadsheet writes such; save it \
                 anew, or as CSV",
                super::LONGEST_PIECE
            ),
            Self::TooLarge => write!(
                f,
                "found a workbook whose texts and styles take more than {} MiB; accepted: at most that; save the sheet \
                 as CSV, which has no limit",
                super::MOST_BESIDE_SHEETS >> 20
            ),
            Self::NoSuchSheet { name, sheets } => {
                write!(f, "no sheet is called '{name}'; the worksheets are: {}", listed(sheets))
            }
            Self::NotCells { name, sheets } => {
                write!(f, "sheet '{name}' is a chart or dialog; the worksheets are: {}", listed(sheets))
            }
            Self::AllHidden { sheets } if sheets.is_empty() => {
                write!(f, "found no worksheet; accepted: a workbook with one")
            }
            Self::AllHidden { sheets } => {
                write!(f, "every worksheet is hidden; say --sheet with one of: {}", listed(sheets))
            }
            Self::UnknownErrorValue { value, after } => {
                write!(f, "found the error value '{value}' ")?;
                match after {
                    Some(cell) => write!(f, "in a cell after {cell}")?,
                    None => write!(f, "in the first cell")?,
                }
                write!(f, "; mend or clear that cell, or save the sheet as CSV")
            }
            Self::RowsOutOfOrder { cell } => {
                write!(
                    f,
                    "found a damaged workbook ({cell} stands after a later row); save it anew, or as CSV"
                )
            }
        }
    }
}

impl std::error::Error for WorkbookError {}

impl From<calamine::XlsxError> for WorkbookError {
    fn from(error: calamine::XlsxError) -> Self {
        use calamine::XlsxError as E;
        match error {
            E::Password => Self::Password,
            E::FileNotFound(_) | E::RelationshipNotFound => {
                Self::NotAWorkbook("a zip archive without a workbook")
            }
            error => Self::Damaged(error.to_string()),
        }
    }
}

impl From<zip::result::ZipError> for WorkbookError {
    fn from(error: zip::result::ZipError) -> Self {
        Self::Damaged(error.to_string())
    }
}

impl From<io::Error> for WorkbookError {
    fn from(error: io::Error) -> Self {
        Self::Damaged(error.to_string())
    }
}

fn listed(sheets: &[String]) -> String {
    let quoted: Vec<_> = sheets.iter().map(|name| format!("'{name}'")).collect();
    quoted.join(", ")
}
