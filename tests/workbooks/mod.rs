//! Workbooks, all invented, made by a writer that knows nothing of plainwatt; and parts of them changed by hand.
#![allow(dead_code, reason = "each test file uses its own part of it")]

use rust_xlsxwriter::{Workbook, Worksheet};
use std::io::{Cursor, Read as _, Write as _};
use zip::write::SimpleFileOptions;
use zip::{ZipArchive, ZipWriter};

/// A workbook with one sheet, `Lights`, filled by `fill`.
pub fn workbook(fill: impl FnOnce(&mut Worksheet)) -> Vec<u8> {
    let mut book = Workbook::new();
    fill(book.add_worksheet().set_name("Lights").expect("a name"));
    book.save_to_buffer().expect("a workbook")
}

/// A workbook whose sheet `Lights` holds these rows as text; an empty text is no cell.
pub fn of_text(rows: &[&[&str]]) -> Vec<u8> {
    workbook(|sheet| {
        for (row, cells) in (0..).zip(rows) {
            for (column, text) in (0..).zip(*cells).filter(|(_, text)| !text.is_empty()) {
                sheet.write(row, column, *text).expect("a cell");
            }
        }
    })
}

/// The workbook that somebody would make of a CSV: what looks like a number is one.
pub fn of_csv(csv: &str) -> Vec<u8> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(csv.as_bytes());
    workbook(|sheet| {
        for (row, record) in (0..).zip(reader.records()) {
            for (column, text) in
                (0..).zip(record.expect("a row").iter()).filter(|(_, text)| !text.is_empty())
            {
                match text.parse::<f64>() {
                    Ok(number) => sheet.write(row, column, number).expect("a cell"),
                    Err(_) => sheet.write(row, column, text).expect("a cell"),
                };
            }
        }
    })
}

/// The archive with each part changed by `change`; a part for which that gives `None` is left out.
pub fn repacked(archive: &[u8], change: impl Fn(&str, Vec<u8>) -> Option<Vec<u8>>) -> Vec<u8> {
    let mut from = ZipArchive::new(Cursor::new(archive)).expect("an archive");
    let mut to = ZipWriter::new(Cursor::new(Vec::new()));
    for index in 0..from.len() {
        let mut part = from.by_index(index).expect("a part");
        let name = part.name().expect("a name").into_owned();
        let mut bytes = Vec::new();
        part.read_to_end(&mut bytes).expect("its bytes");
        if let Some(bytes) = change(&name, bytes) {
            to.start_file(name, SimpleFileOptions::default()).expect("a part");
            to.write_all(&bytes).expect("its bytes");
        }
    }
    to.finish().expect("an archive").into_inner()
}

/// The workbook with a text of its first sheet replaced, which has to be there.
pub fn edited(archive: &[u8], from: &str, to: &str) -> Vec<u8> {
    in_part(archive, "xl/worksheets/sheet1.xml", from, to)
}

/// The workbook with a text of a part replaced, which has to be there.
pub fn in_part(archive: &[u8], part: &str, from: &str, to: &str) -> Vec<u8> {
    repacked(archive, |name, bytes| {
        if name != part {
            return Some(bytes);
        }
        let text = String::from_utf8(bytes).expect("text");
        assert!(text.contains(from), "{part} holds {text}");
        Some(text.replace(from, to).into_bytes())
    })
}

/// An archive of these parts.
pub fn archive(parts: &[(&str, &[u8])]) -> Vec<u8> {
    let mut to = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in parts {
        to.start_file(*name, SimpleFileOptions::default()).expect("a part");
        to.write_all(bytes).expect("its bytes");
    }
    to.finish().expect("an archive").into_inner()
}
