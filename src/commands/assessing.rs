//! One record -> one assessed light, or the fault that makes it unreadable; what every command over a catalogue does.

use crate::comparison::Assessment;
use crate::facts::{Fault, Listing, Read};
use crate::intake::{Columns, complete};
use crate::reading;
use crate::report::worth::Money;
use crate::report::{Light, Run, Unreadable};
use crate::stream::Record;
use crate::workbook::{cell_name, row_name};

/// A record's result.
pub(super) enum Graded<'a> {
    Light(Light<'a>),
    Unreadable(Unreadable<'a>),
}

/// Reads texts; its buffers are used again and again.
#[derive(Debug, Default)]
pub(super) struct Texts {
    reader: reading::Reader,
    /// A title with its description, where there is one.
    text: String,
}

impl Texts {
    /// Reads what the listing's own text states; the title speaks first.
    fn read(&mut self, listing: &Listing<'_>) -> Option<&Read> {
        match (listing.title.as_deref(), listing.description.as_deref()) {
            (None, None) => None,
            (Some(text), None) | (None, Some(text)) => Some(self.reader.read(text)),
            (Some(title), Some(description)) => {
                self.text.clear();
                self.text.push_str(title);
                self.text.push('\n');
                self.text.push_str(description);
                Some(self.reader.read(&self.text))
            }
        }
    }
}

/// Everything that does not change from record to record.
#[derive(Clone, Copy)]
pub(super) struct Assessing<'a> {
    pub(super) run: Run<'a>,
    pub(super) columns: &'a Columns,
    /// Whether titles and descriptions are read.
    pub(super) titles: bool,
    /// Whether more is claimed than watts matters: it is not for free.
    pub(super) figures: bool,
    /// What was asked about money.
    pub(super) money: Option<&'a Money>,
    /// The sheet that the records are rows of, if they are.
    pub(super) sheet: Option<&'a str>,
}

impl Assessing<'_> {
    /// Assesses a record and hands the result to `then`.
    pub(super) fn row(&self, texts: &mut Texts, record: &Record<'_>, then: impl FnOnce(Graded<'_>)) {
        let mut listing = Listing::default();
        let outcome = match record.fault() {
            Some(fault) => Err(Fault { column: None, ..Fault::new("", fault.found(), fault.accepted()) }),
            None => self.columns.read(record.len(), |place| record.get(place), &mut listing),
        };
        match outcome {
            Ok(()) => {
                let read = if self.titles { texts.read(&listing) } else { None };
                if let Some(read) = read {
                    complete(&mut listing, read);
                }
                let Run { model, settings } = self.run;
                let mut assessment = Assessment::default();
                assessment.add_watts(&listing, model, settings);
                if self.figures {
                    assessment.add_figures(&listing, model, settings);
                }
                then(Graded::Light(Light {
                    listing: &listing,
                    read,
                    assessment: &assessment,
                    money: self.money,
                    circuit: None,
                    fit_supply: None,
                }));
            }
            Err(mut fault) => {
                fault.line = Some(record.line());
                match self.sheet {
                    Some(sheet) => fault.cell = Some(self.cell(sheet, &fault, record.line()).into()),
                    None => fault.byte = Some(record.byte()),
                }
                let (name, supplier) = self.columns.names(|place| record.get(place));
                then(Graded::Unreadable(Unreadable { name, supplier, fault: &fault }));
            }
        }
    }

    /// The cell of a fault, or the row where it lies in no single cell.
    fn cell(&self, sheet: &str, fault: &Fault, row: u64) -> String {
        match fault.column.as_deref().and_then(|column| self.columns.place(column)) {
            Some(place) => cell_name(sheet, place, row),
            None => row_name(sheet, row),
        }
    }
}
