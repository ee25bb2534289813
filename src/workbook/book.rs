//! A workbook and its sheets.

use std::io::{BufReader, Read, Seek};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;
use std::sync::atomic::AtomicU64;

use calamine::{Reader as _, SheetType, SheetVisible, Xlsx};
use zip::ZipArchive;

use super::followed::Followed;
use super::rows::Rows;
use super::{WorkbookError, package};

/// A sheet of a workbook.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sheet {
    /// Its name.
    pub name: String,
    /// Whether it has cells; else it is a chart or a dialog.
    pub cells: bool,
    /// Whether its tab is shown.
    pub visible: bool,
}

/// A workbook whose parts have been checked.
pub struct Workbook<RS> {
    book: Xlsx<BufReader<Followed<RS>>>,
    position: Arc<AtomicU64>,
    sheets: Vec<Sheet>,
}

impl<RS: Read + Seek + Send + 'static> Workbook<RS> {
    /// Opens a workbook.
    ///
    /// # Errors
    /// If it is something else, damaged or too large.
    pub fn open(mut file: RS) -> Result<Self, WorkbookError> {
        let mut archive = ZipArchive::new(BufReader::new(&mut file))?;
        package::check(&mut archive)?;
        drop(archive);
        file.rewind()?;
        let position = Arc::new(AtomicU64::new(0));
        let reader = BufReader::new(Followed::new(file, Arc::clone(&position)));
        // Overflows of references panic in the parser where they are checked.
        let book = catch_unwind(AssertUnwindSafe(|| Xlsx::new(reader)))
            .map_err(|_| WorkbookError::Damaged("its parts do not fit together".to_owned()))??;
        let sheets = book.sheets_metadata().iter().map(|sheet| Sheet {
            name: sheet.name.clone(),
            cells: sheet.typ == SheetType::WorkSheet,
            visible: sheet.visible == SheetVisible::Visible,
        });
        let sheets = sheets.collect();
        Ok(Self { book, position, sheets })
    }

    /// Its sheets in the order of their tabs.
    #[must_use]
    pub fn sheets(&self) -> &[Sheet] {
        &self.sheets
    }

    /// The worksheet of that name, whatever its case (a workbook has no two that differ in that alone); without a name the
    /// first one that is not hidden.
    ///
    /// # Errors
    /// If there is none, with the names of those there are.
    pub fn choose(&self, name: Option<&str>) -> Result<Sheet, WorkbookError> {
        let names = || self.sheets.iter().filter(|s| s.cells).map(|s| s.name.clone()).collect();
        let Some(name) = name else {
            let first = self.sheets.iter().find(|sheet| sheet.cells && sheet.visible);
            return first.cloned().ok_or_else(|| WorkbookError::AllHidden { sheets: names() });
        };
        let folded = name.to_lowercase();
        let found = self.sheets.iter().find(|sheet| sheet.name == name);
        match found.or_else(|| self.sheets.iter().find(|sheet| sheet.name.to_lowercase() == folded)) {
            None => Err(WorkbookError::NoSuchSheet { name: name.to_owned(), sheets: names() }),
            Some(sheet) if !sheet.cells => {
                Err(WorkbookError::NotCells { name: sheet.name.clone(), sheets: names() })
            }
            Some(sheet) => Ok(sheet.clone()),
        }
    }

    /// The rows of a sheet that [`choose`](Self::choose) has given.
    ///
    /// # Errors
    /// If no thread can be started to read them.
    pub fn rows(self, sheet: &Sheet) -> std::io::Result<Rows> {
        Rows::start(self.book, sheet.name.clone(), self.position)
    }
}
