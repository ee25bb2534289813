//! Why a row, or a typed value, could not be read.

use serde::Serialize;

/// Where something was, what it was, and what is accepted there.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Fault {
    /// Line of the input on which the row starts, from 1; absent for a typed value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line: Option<u64>,
    /// Offset of the row's first byte in the input, from 0.
    #[serde(skip)]
    pub byte: Option<u64>,
    /// The column's or flag's name.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub column: Option<String>,
    /// The cell, or the row, as spreadsheets name it, where the input is a sheet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cell: Option<Box<str>>,
    /// What stood there.
    pub found: String,
    /// What is accepted there.
    pub accepted: String,
}

impl Fault {
    /// A fault in a named column or flag, its line yet unknown.
    #[must_use]
    pub fn new(column: impl Into<String>, found: impl Into<String>, accepted: impl Into<String>) -> Self {
        Self {
            line: None,
            byte: None,
            column: Some(column.into()),
            cell: None,
            found: found.into(),
            accepted: accepted.into(),
        }
    }
}
