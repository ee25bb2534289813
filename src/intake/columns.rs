//! Headers: which column holds which field. Resolved once a file; other people's names are mapped, never guessed.

use std::fmt;

use crate::facts::Colour;

/// A field that a column may hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Field {
    /// The listing's own name or number.
    Listing,
    /// Who sells it.
    Supplier,
    /// Its title.
    Title,
    /// Its description.
    Description,
    /// The figure under test, watts.
    ClaimW,
    /// The drive class.
    Class,
    /// Diodes in the counting notation.
    Tally,
    /// All diodes together.
    DiodeCount,
    /// A stated drive current, milliamperes through each diode.
    DriveMa,
    /// A meter's watts.
    MeasuredW,
    /// A meter's volts.
    MeasuredV,
    /// A meter's amperes.
    MeasuredA,
    /// A meter's power factor.
    MeasuredPf,
    /// Lower figure of an admitted draw, watts.
    AdmitsLowW,
    /// Upper figure of an admitted draw, watts.
    AdmitsHighW,
    /// Stated volts.
    SupplyV,
    /// Stated amperes.
    SupplyA,
    /// Photon flux, umol/s.
    Ppf,
    /// Photon efficacy, umol/J.
    Ppe,
    /// Watts of the lamp it is said to replace.
    ReplacesW,
    /// Lights sold together.
    UnitsInPack,
    /// Price.
    Price,
    /// Diodes of one colour.
    Count(Colour),
}

const NAMED: [(&str, Field); 22] = [
    ("listing", Field::Listing),
    ("supplier", Field::Supplier),
    ("title", Field::Title),
    ("description", Field::Description),
    ("claim_w", Field::ClaimW),
    ("class", Field::Class),
    ("tally", Field::Tally),
    ("diode_count", Field::DiodeCount),
    ("drive_ma", Field::DriveMa),
    ("measured_w", Field::MeasuredW),
    ("measured_v", Field::MeasuredV),
    ("measured_a", Field::MeasuredA),
    ("measured_pf", Field::MeasuredPf),
    ("admits_low_w", Field::AdmitsLowW),
    ("admits_high_w", Field::AdmitsHighW),
    ("supply_v", Field::SupplyV),
    ("supply_a", Field::SupplyA),
    ("ppf", Field::Ppf),
    ("ppe", Field::Ppe),
    ("replaces_w", Field::ReplacesW),
    ("units_in_pack", Field::UnitsInPack),
    ("price", Field::Price),
];

impl Field {
    /// The field of that name, written exactly.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        let named = NAMED.iter().find(|(n, _)| *n == name).map(|(_, field)| *field);
        named.or_else(|| Colour::ALL.into_iter().find(|c| column_name(*c) == name).map(Self::Count))
    }

    /// Its name in a header.
    #[must_use]
    pub fn name(self) -> String {
        match self {
            Self::Count(colour) => column_name(colour),
            other => NAMED.iter().find(|(_, field)| *field == other).map_or("", |(name, _)| name).to_owned(),
        }
    }

    /// Every name a header may use.
    pub fn names() -> impl Iterator<Item = String> {
        NAMED.iter().map(|(name, _)| (*name).to_owned()).chain(Colour::ALL.into_iter().map(column_name))
    }
}

fn column_name(colour: Colour) -> String {
    colour.name().replace('-', "_")
}

/// Why a header cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum HeaderError {
    /// A mapping names a field that does not exist.
    NoSuchField {
        /// The name.
        field: String,
        /// The nearest real one.
        nearest: Option<String>,
    },
    /// A mapping names a header that the file does not have.
    NoSuchHeader {
        /// The header sought.
        header: String,
        /// The headers there are.
        present: Vec<String>,
    },
    /// Two columns hold the same field.
    Twice {
        /// The field.
        field: String,
        /// The two places, from 1.
        places: (usize, usize),
    },
    /// No column is one of ours.
    NothingKnown {
        /// The headers there are.
        present: Vec<String>,
    },
}

impl fmt::Display for HeaderError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchField { field, nearest } => {
                write!(f, "no field is called '{field}'")?;
                match nearest {
                    Some(nearest) => write!(f, "; did you mean '{nearest}'?"),
                    None => f.write_str("; 'plainwatt help grade' lists the fields"),
                }
            }
            Self::NoSuchHeader { header, present } => {
                write!(f, "no column is headed '{header}'; the headers are: {}", present.join(", "))
            }
            Self::Twice { field, places } => write!(
                f,
                "columns {} and {} are both headed '{field}'; rename one, or map the one you mean with --column",
                places.0, places.1
            ),
            Self::NothingKnown { present } => write!(
                f,
                "none of the headers is known: {}; accepted are listing, title, claim_w, class, tally and others \
                 ('plainwatt help grade'), or map your own with --column claim_w=\"Power (W)\"",
                present.join(", ")
            ),
        }
    }
}

impl std::error::Error for HeaderError {}

/// The columns of one file.
#[derive(Debug, Clone)]
pub struct Columns {
    /// Field and place, from 0.
    pub(super) fields: Vec<(Field, usize)>,
    /// The header as the file writes it, for faults.
    pub(super) headers: Vec<String>,
    /// The place of the listing's name and of its supplier, for rows that cannot be read.
    listing: Option<usize>,
    supplier: Option<usize>,
    /// Headers that are nearly one of ours: the header and the field.
    near: Vec<(String, String)>,
}

impl Columns {
    /// Resolves a header row. `mapped` holds pairs of field and header for other people's names.
    ///
    /// # Errors
    /// If a mapping names what does not exist, a field has two columns, or no column is known.
    pub fn resolve(headers: Vec<String>, mapped: &[(String, String)]) -> Result<Self, HeaderError> {
        let mut fields: Vec<(Field, usize)> = Vec::new();
        let mut taken: Vec<usize> = Vec::new();
        for (name, header) in mapped {
            let field = Field::named(name)
                .ok_or_else(|| HeaderError::NoSuchField { field: name.clone(), nearest: nearest(name) })?;
            let place = headers.iter().position(|h| h.trim() == header.trim()).ok_or_else(|| {
                HeaderError::NoSuchHeader { header: header.clone(), present: headers.clone() }
            })?;
            fields.push((field, place));
            taken.push(place);
        }
        let mapped_fields: Vec<Field> = fields.iter().map(|(field, _)| *field).collect();
        let mut near = Vec::new();
        for (place, header) in headers.iter().enumerate().filter(|(place, _)| !taken.contains(place)) {
            let name = header.trim();
            match Field::named(name) {
                // A mapping says which column is meant, so the file's own of that name is left alone.
                Some(field) if mapped_fields.contains(&field) => {}
                Some(field) => {
                    if let Some((_, first)) = fields.iter().find(|(f, _)| *f == field) {
                        return Err(HeaderError::Twice {
                            field: name.to_owned(),
                            places: (first + 1, place + 1),
                        });
                    }
                    fields.push((field, place));
                }
                None => {
                    if let Some(field) = nearest(name) {
                        near.push((name.to_owned(), field));
                    }
                }
            }
        }
        if fields.is_empty() {
            return Err(HeaderError::NothingKnown { present: headers });
        }
        let place = |sought| fields.iter().find(|(field, _)| *field == sought).map(|(_, place)| *place);
        let (listing, supplier) = (place(Field::Listing), place(Field::Supplier));
        near.retain(|(_, field)| !fields.iter().any(|(f, _)| f.name() == *field));
        Ok(Self { fields, headers, listing, supplier, near })
    }

    /// Headers that are not ours but nearly so, with the field they resemble: to be suggested, never guessed.
    #[must_use]
    pub fn nearly(&self) -> &[(String, String)] {
        &self.near
    }

    /// The place, from 0, of the column that holds the field of that name, or else of the one that is headed so.
    #[must_use]
    pub fn place(&self, name: &str) -> Option<usize> {
        let name = name.trim();
        let field =
            Field::named(name).and_then(|sought| self.fields.iter().find(|(field, _)| *field == sought));
        field.map(|(_, place)| *place).or_else(|| self.headers.iter().position(|h| h.trim() == name))
    }

    /// The header as the file writes it.
    #[must_use]
    pub fn headers(&self) -> &[String] {
        &self.headers
    }

    /// How many columns the header has.
    #[must_use]
    pub fn width(&self) -> usize {
        self.headers.len()
    }

    /// Whether the file has that field.
    #[must_use]
    pub fn has(&self, field: Field) -> bool {
        self.fields.iter().any(|(f, _)| *f == field)
    }

    /// The listing's name and supplier as they stand, for a row that cannot be read.
    pub fn names<'a>(&self, cell: impl Fn(usize) -> Option<&'a str>) -> (Option<&'a str>, Option<&'a str>) {
        let text = |place: Option<usize>| place.and_then(&cell).map(str::trim).filter(|t| !t.is_empty());
        (text(self.listing), text(self.supplier))
    }
}

/// The field whose name is nearest to `name`, if it is near enough to be a slip.
fn nearest(name: &str) -> Option<String> {
    let simple: String =
        name.trim().to_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '_' }).collect();
    Field::names()
        .map(|field| (strsim::normalized_damerau_levenshtein(&simple, &field), field))
        .filter(|(likeness, _)| *likeness >= 0.7)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, field)| field)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn headers(names: &[&str]) -> Vec<String> {
        names.iter().map(|n| (*n).to_owned()).collect()
    }

    #[test]
    fn a_near_header_is_suggested_and_not_used() {
        let columns = Columns::resolve(headers(&["listing", "Claim W", "clas"]), &[]).unwrap();
        assert!(!columns.has(Field::ClaimW));
        assert_eq!(
            columns.nearly(),
            [("Claim W".to_owned(), "claim_w".to_owned()), ("clas".to_owned(), "class".to_owned())]
        );
    }

    #[test]
    fn a_mapping_outranks_a_column_of_that_name() {
        let mapped = [("claim_w".to_owned(), "Power (W)".to_owned())];
        let columns = Columns::resolve(headers(&["claim_w", "Power (W)"]), &mapped).unwrap();
        assert_eq!(columns.fields, [(Field::ClaimW, 1)]);
    }

    #[test]
    fn a_header_twice_is_named_with_both_places() {
        let error = Columns::resolve(headers(&["class", "title", "class"]), &[]).unwrap_err();
        assert_eq!(
            error.to_string(),
            "columns 1 and 3 are both headed 'class'; rename one, or map the one you mean with --column"
        );
    }

    #[test]
    fn every_field_is_found_by_its_own_name() {
        for name in Field::names() {
            assert_eq!(Field::named(&name).map(Field::name), Some(name));
        }
    }
}
