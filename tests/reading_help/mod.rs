//! What was read of a text, in short.
#![allow(dead_code, reason = "each test file uses its own part of it")]

use plainwatt::facts::{LeftWhy, Read};
use plainwatt::reading::read;

/// The headline watts.
pub fn claim(read: &Read) -> Option<f64> {
    read.advertised_w.map(|t| t.value.value)
}

/// The words that were left, with their reasons.
pub fn left(text: &str) -> Vec<(&str, LeftWhy)> {
    read(text).left.iter().map(|l| (&text[l.span.start..l.span.end], l.why)).collect()
}
