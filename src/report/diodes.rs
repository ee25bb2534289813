//! The reference table with its sources.

use std::fmt::Write as _;

use comfy_table::{CellAlignment, ContentArrangement, Table};

use super::style::RULED;
use crate::draw::{BENCH, JUNCTION, OperatingPoint};
use crate::reference::{ClassRow, DiodeRow, Table as Reference};
use crate::units::Amps;

/// The classes: what current each name stands for.
#[must_use]
pub fn classes(classes: &[&ClassRow], width: u16) -> String {
    let mut table = Table::new();
    table
        .load_style(RULED)
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(width)
        .set_header(["class", "die", "dice", "mA a die", "most", "common", "grade", "source"]);
    for class in classes {
        table.add_row([
            class.name.clone(),
            class.die.name().to_owned(),
            format!("{}s{}p", class.series, class.parallel),
            format!("{:.0}", class.die_current.ma()),
            format!("{:.0}", class.max_die_current.ma()),
            format!("{:.0}-{:.0} %", class.common_low * 100.0, class.common_high * 100.0),
            class.grade.clone(),
            class.source.clone(),
        ]);
    }
    right(&mut table, &[3, 4]);
    table.trim_fmt() + "\n"
}

/// Diode rows, each on the line of its numbers with its source below.
#[must_use]
pub fn rows(rows: &[&DiodeRow], width: usize) -> String {
    let mut text = String::new();
    for row in rows {
        let nm = row.peak_nm.map(|nm| format!(", {nm} nm")).unwrap_or_default();
        let _ = writeln!(
            text,
            "{} ({} die{nm}): {:.2} V at {} and 25 C, {:.2} to {:.2} V published, u {:.2} V",
            row.colour.name(),
            row.die.name(),
            row.vf.0,
            row.test,
            row.vf_min.0,
            row.vf_max.0,
            row.u_vf.0
        );
        let _ = writeln!(
            text,
            "  n {:.3}, Rs {:.3} ohm, {:+.1} mV/K, at most {}, efficiency {:.0} to {:.0} %, grade {}",
            row.ideality,
            row.rs.0,
            row.dvf_dt * 1000.0,
            row.max,
            row.eff_low * 100.0,
            row.eff_high * 100.0,
            row.grade
        );
        let options = textwrap::Options::new(width).initial_indent("  ").subsequent_indent("  ");
        text.push_str(&textwrap::fill(&row.source, options));
        text.push('\n');
    }
    text
}

/// What one package of each row takes at a current through the package, on a bench and in a running light.
///
/// A current outside a curve is said so in its row.
#[must_use]
pub fn at_current(
    reference: &Reference,
    class: &ClassRow,
    rows: &[&DiodeRow],
    current: Amps,
    width: u16,
) -> String {
    let mut table = Table::new();
    table.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(width);
    table.set_header([
        "colour",
        "V at 25 C",
        "W at 25 C",
        "V at 75 C",
        "W at 75 C",
        "u(V)",
        "published maximum",
    ]);
    let die_current = current / f64::from(class.parallel);
    for row in rows.iter().filter(|r| r.die == class.die) {
        let (row, _) = reference.diode(row.die, row.colour);
        let most = row.max.min(class.max_die_current) * f64::from(class.parallel);
        let mut cells = vec![row.colour.name().to_owned()];
        let points = [BENCH, JUNCTION].map(|t| OperatingPoint::at(class, row, die_current, t));
        match points {
            [Ok(bench), Ok(running)] => {
                for point in [&bench, &running] {
                    cells.push(format!("{:.2}", point.die_voltage.0 * f64::from(class.series)));
                    cells.push(format!("{:.2}", point.watts.0));
                }
                cells.push(format!("{:.2}", bench.u_voltage.0 / current.0));
                let over = if current.0 > most.0 { ", exceeded" } else { "" };
                cells.push(format!("{most}{over}"));
            }
            [Err(outside), _] | [_, Err(outside)] => cells.push(outside.to_string()),
        }
        table.add_row(cells);
    }
    right(&mut table, &[1, 2, 3, 4, 5]);
    table.trim_fmt() + "\n"
}

fn right(table: &mut Table, columns: &[usize]) {
    for index in columns {
        if let Some(column) = table.column_mut(*index) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
}
