//! The table as a whole: reading it, checking it, looking things up in it.

use std::fmt;

use super::{ClassRow, Die, DiodeRow, class, diode};
use crate::facts::{Colour, Package, StatedClass};

const DIODES: &str = include_str!("diodes.csv");
const CLASSES: &str = include_str!("classes.csv");

/// The name under which results quote the built-in table. Raised whenever a row changes.
const BUILT_IN: &str = "built-in 2";

/// A class row of one table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct ClassId(pub(crate) u8);

/// The reference table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    name: String,
    diodes: Vec<DiodeRow>,
    classes: Vec<ClassRow>,
    /// What a listing would state to mean each class, in the same order.
    stated: Vec<StatedClass>,
    /// For each kind of die and colour, the row to use: its own, else the kind's `unstated` row.
    rows: [[u8; Colour::ALL.len()]; Die::ALL.len()],
}

/// Why a table cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TableError {
    /// Line of the file, from 1, where the fault is in one row.
    pub line: Option<u64>,
    /// What is wrong.
    pub what: String,
}

impl fmt::Display for TableError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            Some(line) => write!(f, "line {line}: {}", self.what),
            None => f.write_str(&self.what),
        }
    }
}

impl std::error::Error for TableError {}

impl Table {
    /// The built-in table.
    ///
    /// # Panics
    /// Never: the built-in rows are checked by the tests.
    #[must_use]
    pub fn built_in() -> Self {
        let classes = class_rows(CLASSES).expect("the built-in classes are valid");
        let diodes = diode_rows(DIODES).expect("the built-in diodes are valid");
        Self::new(BUILT_IN.to_owned(), diodes, classes).expect("the built-in table is complete")
    }

    /// The built-in table with rows of `text` (in the form of diodes.csv) in place of its own.
    ///
    /// # Errors
    /// If a row cannot be read or is out of range.
    pub fn with_diodes(name: &str, text: &str) -> Result<Self, TableError> {
        let mut table = Self::built_in();
        let own = diode_rows(text)?;
        if own.is_empty() {
            return Err(TableError { line: None, what: "a reference table without a row".to_owned() });
        }
        for row in own {
            match table.diodes.iter_mut().find(|r| r.die == row.die && r.colour == row.colour) {
                Some(place) => *place = row,
                None => table.diodes.push(row),
            }
        }
        Self::new(format!("{name} over {BUILT_IN}"), table.diodes, table.classes)
    }

    fn new(name: String, diodes: Vec<DiodeRow>, classes: Vec<ClassRow>) -> Result<Self, TableError> {
        let find = |die, colour| {
            let place = diodes.iter().position(|r: &DiodeRow| r.die == die && r.colour == colour)?;
            u8::try_from(place).ok()
        };
        let mut rows = [[0; Colour::ALL.len()]; Die::ALL.len()];
        for die in Die::ALL {
            let unstated = find(die, Colour::Unstated).ok_or_else(|| TableError {
                line: None,
                what: format!("no row for {} dice of unstated colour", die.name()),
            })?;
            for colour in Colour::ALL {
                rows[die as usize][colour as usize] = find(die, colour).unwrap_or(unstated);
            }
        }
        let stated = classes.iter().map(ClassRow::stated).collect();
        Ok(Self { name, diodes, classes, stated, rows })
    }

    /// What a result calls this table.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The row for a die of that kind and colour, and whether it is the colour's own (else it is the kind's `unstated`).
    #[must_use]
    pub fn diode(&self, die: Die, colour: Colour) -> (&DiodeRow, bool) {
        let row = &self.diodes[usize::from(self.rows[die as usize][colour as usize])];
        (row, row.colour == colour)
    }

    /// Every diode row.
    #[must_use]
    pub fn diodes(&self) -> &[DiodeRow] {
        &self.diodes
    }

    /// Every class row.
    #[must_use]
    pub fn classes(&self) -> &[ClassRow] {
        &self.classes
    }

    /// The ids of every class row, in the order of [`Table::classes`].
    pub fn class_ids(&self) -> impl Iterator<Item = ClassId> + use<> {
        (0..u8::try_from(self.classes.len()).unwrap_or(u8::MAX)).map(ClassId)
    }

    /// The row of that id.
    #[must_use]
    pub fn class(&self, id: ClassId) -> &ClassRow {
        &self.classes[usize::from(id.0)]
    }

    /// The row that a stated class means, if there is one; nothing is interpolated between rows.
    ///
    /// `1 W` and `3 W` beside a word for a small package mean that package's rows. Any other class beside a package word
    /// means the plain row: where in doubt, the row that draws more.
    #[must_use]
    pub fn find(&self, stated: &StatedClass) -> Option<ClassId> {
        let sought = match stated.package {
            Some(Package::P2835) => Some(Package::Smd),
            other => other,
        };
        let named = |package| {
            self.stated
                .iter()
                .position(|own| own.package == package && (own.watts.0 - stated.watts.0).abs() < 1e-9)
        };
        let place = named(sought).or_else(|| match sought {
            // A COB's watts name the whole array; no single diode's row stands for it.
            Some(Package::Cob) => None,
            _ => named(None),
        })?;
        u8::try_from(place).ok().map(ClassId)
    }

    /// The class of that package which can draw most, for a listing that names the package and no class.
    #[must_use]
    pub fn largest(&self, package: Package) -> Option<ClassId> {
        // Which classes are sold in which package: the sources of classes.csv name them. Plain "SMD" may be any of them,
        // so the largest of all stands for it.
        let name = match package {
            Package::P3528 => "0.06W",
            Package::P3014 => "0.1W",
            Package::P5630 | Package::P5730 => "0.5W",
            Package::P2835 => "smd-3W",
            Package::Smd | Package::P3030 => "3030-3W",
            Package::P5050 | Package::Cob => return None,
        };
        let place = self.classes.iter().position(|row| row.name == name)?;
        u8::try_from(place).ok().map(ClassId)
    }
}

fn rows<R: serde::de::DeserializeOwned, T>(
    text: &str,
    row: impl Fn(R) -> Result<T, String>,
) -> Result<Vec<T>, TableError> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let mut records = reader.deserialize::<R>();
    let mut all = Vec::new();
    while let Some(record) = records.next() {
        let record = record
            .map_err(|e| TableError { line: e.position().map(csv::Position::line), what: e.to_string() })?;
        let line = Some(records.reader().position().line().saturating_sub(1));
        all.push(row(record).map_err(|what| TableError { line, what })?);
    }
    Ok(all)
}

fn diode_rows(text: &str) -> Result<Vec<DiodeRow>, TableError> {
    rows(text, diode::Record::row)
}

fn class_rows(text: &str) -> Result<Vec<ClassRow>, TableError> {
    rows(text, class::Record::row)
}

/// Rows in the form of diodes.csv, as [`Table::with_diodes`] reads them.
///
/// # Errors
/// If a row cannot be written, which memory alone can cause.
pub fn diodes_as_csv(rows: &[DiodeRow]) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    for row in rows {
        writer.serialize(diode::Record::from(row))?;
    }
    let bytes = writer.into_inner().map_err(|e| csv::Error::from(e.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}
