//! Names of cells, as spreadsheets write them.

/// The name of a cell: `Lights!C7`; `place` is its column from 0, `row` counts from 1.
#[must_use]
pub fn cell_name(sheet: &str, place: usize, row: u64) -> String {
    format!("{}!{}{row}", quoted(sheet), letters(place))
}

/// The name of a whole row: `Lights!7:7`.
#[must_use]
pub fn row_name(sheet: &str, row: u64) -> String {
    format!("{}!{row}:{row}", quoted(sheet))
}

/// A sheet's name; in apostrophes unless it can be told without, an apostrophe in it doubled.
fn quoted(sheet: &str) -> String {
    let plain = sheet.chars().all(|c| c.is_alphanumeric() || c == '_')
        && sheet.chars().next().is_some_and(|c| !c.is_numeric());
    if plain { sheet.to_owned() } else { format!("'{}'", sheet.replace('\'', "''")) }
}

/// The letters of a column: A to Z, AA, AB, ...
fn letters(place: usize) -> String {
    let mut letters = Vec::new();
    let mut left = place + 1;
    while left > 0 {
        left -= 1;
        #[expect(clippy::cast_possible_truncation, reason = "below 26")]
        letters.push(char::from(b'A' + (left % 26) as u8));
        left /= 26;
    }
    letters.iter().rev().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_named_as_spreadsheets_name_them() {
        for (place, name) in [(0, "A"), (25, "Z"), (26, "AA"), (701, "ZZ"), (702, "AAA"), (16_383, "XFD")] {
            assert_eq!(letters(place), name);
        }
        assert_eq!(cell_name("Lights", 2, 7), "Lights!C7");
        assert_eq!(cell_name("Bob's list", 0, 1), "'Bob''s list'!A1");
        assert_eq!(cell_name("2026", 0, 1), "'2026'!A1");
        assert_eq!(row_name("Leuchten_ä", 12), "Leuchten_ä!12:12");
    }
}
