//! The zip archive around a workbook: checked as a whole before any of it is used.

use std::io::{Read, Seek};

use zip::ZipArchive;

use super::WorkbookError;
use super::pieces::Pieces;

/// The longest text or tag of a part, in bytes. A cell holds at most 32 767 characters (common practice, no source).
pub const LONGEST_PIECE: usize = 1 << 20;

/// The most that the XML parts beside the sheets may hold together, unpacked, in bytes: the texts of the cells above all.
pub const MOST_BESIDE_SHEETS: u64 = 256 << 20;

/// Unpacks every part once, to see that it is whole and that nothing in it is too large to be held.
pub(super) fn check<RS: Read + Seek>(archive: &mut ZipArchive<RS>) -> Result<(), WorkbookError> {
    recognise(archive)?;
    let mut beside_sheets = 0;
    let mut buffer = vec![0; 64 * 1024];
    for index in 0..archive.len() {
        let mut part = archive.by_index(index)?;
        let name = part.name()?.into_owned();
        let lower = name.to_lowercase();
        let texts = lower.ends_with("sharedstrings.xml");
        let streamed = !texts && lower.contains("worksheets/");
        let mut pieces = Pieces::new(LONGEST_PIECE);
        let (mut length, mut xml) = (0, false);
        loop {
            let read = part.read(&mut buffer)?;
            if read == 0 {
                break;
            }
            if length == 0 {
                xml = is_xml(&buffer[..read]);
            }
            length += read as u64;
            if xml {
                pieces.feed(&buffer[..read]).map_err(|_| WorkbookError::LongPiece { part: name.clone() })?;
            }
            if !streamed && beside_sheets + length > MOST_BESIDE_SHEETS {
                return Err(WorkbookError::TooLarge);
            }
        }
        if texts {
            check_texts(&pieces, length)?;
        }
        // Pictures are not read: none may be too large, but together they may.
        if xml && !streamed {
            beside_sheets += length;
        }
    }
    Ok(())
}

/// Refuses what is another kind of archive.
fn recognise<RS: Read + Seek>(archive: &ZipArchive<RS>) -> Result<(), WorkbookError> {
    let has = |end: &str| {
        archive.file_names().any(|name| name.is_ok_and(|name| name.to_lowercase().ends_with(end)))
    };
    if has("workbook.bin") {
        return Err(WorkbookError::NotAWorkbook("a binary workbook (.xlsb)"));
    }
    if has("meta-inf/manifest.xml") && has("content.xml") {
        return Err(WorkbookError::NotAWorkbook("an OpenDocument file (.ods)"));
    }
    if !has("_rels/.rels") {
        return Err(WorkbookError::NotAWorkbook("a zip archive without a workbook"));
    }
    Ok(())
}

fn is_xml(head: &[u8]) -> bool {
    let head = head.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(head);
    head.trim_ascii_start().starts_with(b"<")
}

/// The shortest text of the table.
const SHORTEST: &str = "<si/>";

/// The table of texts says how many there are, and room for so many is made: that must not be more than can be there.
fn check_texts(pieces: &Pieces, length: u64) -> Result<(), WorkbookError> {
    let damaged = |how: &str| Err(WorkbookError::Damaged(format!("its table of texts {how}")));
    let Some(tag) = pieces.first_tag() else { return damaged("has no beginning") };
    let name = tag.split(|b| b.is_ascii_whitespace() || b"/>".contains(b)).next().unwrap_or_default();
    if name.rsplit(|b| *b == b':').next() != Some(b"sst") {
        return damaged("begins as something else");
    }
    let declared = memchr::memmem::find_iter(tag, b"uniqueCount").map(|at| {
        let digits = tag[at..].iter().skip_while(|b| !b.is_ascii_digit()).take_while(|b| b.is_ascii_digit());
        digits.fold(0_u64, |n, digit| n.saturating_mul(10).saturating_add(u64::from(digit - b'0')))
    });
    match declared.max() {
        Some(declared) if declared > length / SHORTEST.len() as u64 => {
            damaged(&format!("declares {declared} texts in {length} bytes"))
        }
        _ => Ok(()),
    }
}
