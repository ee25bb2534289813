//! An invented catalogue of any length: no listing in it is real.

use std::fs::File;
use std::io::{self, BufWriter, Write as _};
use std::path::Path;

use crate::chance::Chance;

/// Where the facts stand.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// In columns, and again in the title.
    Structured,
    /// In the title alone.
    TitlesOnly,
}

const COLOURS: [&str; 6] = ["far_red", "deep_red", "red", "royal_blue", "uv_a", "white"];
const CLASSES: [u64; 4] = [1, 3, 5, 10];

/// Writes `rows` listings: six in ten claim what their classes add up to, the others less or more; one title in a thousand
/// holds inch marks, and every title a comma.
pub fn write(path: &Path, rows: u64, kind: Kind) -> io::Result<()> {
    let mut out = BufWriter::with_capacity(1 << 20, File::create(path)?);
    writeln!(out, "listing,supplier,title,claim_w,class,tally,{}", COLOURS.join(","))?;
    let mut chance = Chance::new();
    for row in 0..rows {
        let class = CLASSES[usize::try_from(chance.below(4)).unwrap_or(0)];
        let counts = COLOURS.map(|_| chance.below(60));
        let diodes: u64 = counts.iter().sum();
        let class_sum = diodes * class;
        let claim =
            if chance.below(10) < 6 { class_sum } else { class_sum * (30 + chance.below(110)) / 100 }.max(1);
        let size = if chance.below(1000) == 0 { "24\"\" x 12\"\" " } else { "" };
        write!(
            out,
            "L{row:08},supplier {},\"{claim}W LED Grow Light ({diodes}x{class}W) {size}Full Spectrum Panel for Indoor \
             Plants, Veg and Bloom\",",
            chance.below(400)
        )?;
        match kind {
            Kind::Structured => {
                write!(out, "{claim},{class}W,")?;
                for count in counts {
                    write!(out, ",{count}")?;
                }
                writeln!(out)?;
            }
            Kind::TitlesOnly => writeln!(out, ",,,,,,,,")?,
        }
    }
    out.into_inner().map_err(io::IntoInnerError::into_error)?.sync_all()
}
