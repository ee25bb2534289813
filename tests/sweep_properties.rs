//! Bench files of every kind: refused, or turned into rows that hold.

use std::fmt::Write;

use plainwatt::facts::Colour;
use plainwatt::reference::{Table, diodes_as_csv};
use plainwatt::sweep;
use proptest::prelude::*;

/// Whatever is accepted comes out whole: in bounds, readable as a table, drawn and told.
fn comes_out_whole(text: &str) -> Result<(), TestCaseError> {
    let table = Table::built_in();
    for curve in sweep::read(text).unwrap_or_default() {
        let Ok(fit) = sweep::fit(&curve, &table, "any") else { continue };
        let row = &fit.row;
        prop_assert!(row.ideality >= 1.0 && row.rs.0 >= 0.0, "{row:?}");
        prop_assert!(row.u_vf.0 >= sweep::BIN_HALF_WIDTH.0 / 3.0_f64.sqrt());
        let written = diodes_as_csv(&sweep::rows(std::slice::from_ref(&fit))).expect("writes");
        prop_assert!(Table::with_diodes("own", &written).is_ok(), "{written}");
        prop_assert!(!sweep::svg(&fit).contains("NaN"));
        prop_assert!(sweep::summary(&[fit]).lines().all(|line| line.chars().count() <= 80));
    }
    Ok(())
}

/// Found by chance: uncertainties that no column has room for.
#[test]
fn a_fit_that_hardly_anything_holds_fits_the_screen() {
    let text = "colour,volts,amps\nfar-red,0.963,0.0397\nfar-red,1.029,0.1366\nfar-red,1.124,0.4080\n\
                far-red,1.409,1.5839\n";
    comes_out_whole(text).unwrap();
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused(
        header in "(colour,volts,amps|colour,volts,amps,temperature_c|\\PC{0,20})",
        lines in prop::collection::vec(
            "(red|white|uv-a|x)?,([0-4](\\.[0-9]{0,3})?|\\PC{0,3}),([01]?\\.[0-9]{1,4}|-?[0-9e]{1,4})(,|,85)?",
            0..9,
        ),
    ) {
        comes_out_whole(&format!("{header}\n{}", lines.join("\r\n")))?;
    }

    #[test]
    fn any_rising_readings_are_fitted_or_refused(
        colour in prop::sample::select(&Colour::ALL[..13]),
        start in 0.5_f64..3.0,
        steps in prop::collection::vec((0.001_f64..0.5, 1.001_f64..4.0), 1..10),
    ) {
        let (mut volts, mut amps) = (start, 0.01);
        let mut text = "colour,volts,amps\n".to_owned();
        for (rise, factor) in steps {
            (volts, amps) = (volts + rise, amps * factor);
            writeln!(text, "{},{volts:.3},{amps:.4}", colour.name()).expect("a string takes it");
        }
        comes_out_whole(&text)?;
    }
}
