//! What is refused in a file of bench readings, word for word, and what is warned of.

use plainwatt::reference::Table;
use plainwatt::sweep;

/// Line, column, found, accepted of the fault.
fn refused(text: &str) -> (Option<u64>, Option<String>, String, String) {
    let table = Table::built_in();
    let fault = sweep::read(text)
        .and_then(|curves| curves.iter().try_for_each(|curve| sweep::fit(curve, &table, "x").map(drop)))
        .expect_err("should be refused");
    (fault.line, fault.column, fault.found, fault.accepted)
}

fn expect(text: &str, line: impl Into<Option<u64>>, column: &str, found: &str, accepted: &str) {
    let column = Some(column.to_owned()).filter(|name| !name.is_empty());
    assert_eq!(refused(text), (line.into(), column, found.to_owned(), accepted.to_owned()), "{text}");
}

const NOTHING: &str =
    "a header line 'colour,volts,amps' and at least one reading under it, such as 'red,2.2,0.7'";

#[test]
fn a_file_without_a_reading_is_refused() {
    expect("", None, "", "an empty file", NOTHING);
    expect("\u{feff}\r\n\r\n# nothing yet\r\n", None, "", "an empty file", NOTHING);
    expect("# mine\ncolour,volts,amps\n", 2, "", "a header without a reading", NOTHING);
    expect("colour,volts,amps\n,,\n", 1, "", "a header without a reading", NOTHING);
}

#[test]
fn a_header_that_is_not_ours_is_refused() {
    let all = "a header line with the columns colour, volts, amps and, if need be, temperature_c and die, separated by \
               commas";
    expect("red,2.2,0.7\n", 1, "colour", "red, 2.2, 0.7", all);
    expect("colour;volts;amps\nred;2,2;0,7\n", 1, "colour", "colour;volts;amps", all);
    expect("colour,volts,ma\nred,2.2,700\n", 1, "amps", "colour, volts, ma", all);
    expect("color,volts,amps\nred,2.2,0.7\n", 1, "color", "color", "'colour', if that column is meant");
    expect(
        "colour,volts,amps,Temp\nred,2.2,0.7,60\n",
        1,
        "Temp",
        "Temp",
        "'temperature_c', if that column is meant",
    );
    expect(
        "colour,volts,amps,temprature_c\nred,2.2,0.7,60\n",
        1,
        "temprature_c",
        "temprature_c",
        "'temperature_c', if that column is meant",
    );
    expect("colour,volts,amps,Volts\nred,2.2,0.7,2\n", 1, "Volts", "the column twice", "each column once");
    expect("colour,volts,amps\nred,2.2\n", 2, "", "2 fields", "3 fields, as in the header");
}

#[test]
fn an_unknown_word_is_refused() {
    let colours = "a colour of the reference table: far-red, deep-red, red, red-orange, amber, green, cyan, blue, \
                   royal-blue, uv-a, white, pink, infrared";
    expect("colour,volts,amps\nmauve,2.2,0.7\n", 2, "colour", "mauve", colours);
    expect("colour,volts,amps\nunstated,2.2,0.7\n", 2, "colour", "unstated", colours);
    expect(
        "colour,volts,amps,die\nred,2.2,0.7,huge\n",
        2,
        "die",
        "huge",
        "power, mid or small; leave it empty for power",
    );
}

#[test]
fn a_number_that_is_not_above_zero_is_refused() {
    let volts = "a bare number of volts above 0, with a decimal point";
    let amps = "a bare number of amperes above 0, with a decimal point";
    for bad in ["-2.2", "0", "-0", "NaN", "inf", "2.2V", "", "\"2,2\""] {
        let text = format!("colour,volts,amps\nred,1.8,0.1\n\nred,{bad},0.7\n");
        expect(&text, 4, "volts", bad.trim_matches('"'), volts);
    }
    for bad in ["-0.7", "0.0", "nan", "-inf", "700 mA"] {
        let text = format!("colour,volts,amps\n# first\n# second\nred,2.2,{bad}\n");
        expect(&text, 4, "amps", bad, amps);
    }
}

#[test]
fn one_unit_mistaken_for_another_is_refused_with_what_to_write() {
    let amps = "the amperes through one die, above 0 and at most 5";
    let volts = "the volts of one die, 0.5 to 6";
    expect("colour,volts,amps\nred,2.2,700\n", 2, "amps", "700", &format!("{amps}; for 700 mA write 0.7"));
    expect(
        "colour,volts,amps\nred,1.8,0.096\nred,1.9,222\n",
        3,
        "amps",
        "222",
        &format!("{amps}; for 222 mA write 0.222"),
    );
    expect(
        "colour,volts,amps\nred,2.2,700000\n",
        2,
        "amps",
        "700000",
        &format!("{amps}; for dice in parallel write the amperes divided by their number"),
    );
    expect(
        "colour,volts,amps\nred,2200,0.7\n",
        2,
        "volts",
        "2200",
        &format!("{volts}; for 2200 mV write 2.2"),
    );
    expect(
        "colour,volts,amps\nwhite,9.2,0.06\n",
        2,
        "volts",
        "9.2",
        &format!("{volts}; for dice in series write the volts divided by their number"),
    );
    expect(
        "colour,amps,volts\nred,2.0,0.346\n",
        2,
        "volts",
        "0.346",
        &format!("{volts}; see that volts and amps are not swapped"),
    );
    let celsius = "degrees Celsius, -40 to 150";
    let header = "colour,volts,amps,temperature_c\n";
    expect(
        &format!("{header}red,2.2,0.7,298.15\n"),
        2,
        "temperature_c",
        "298.15",
        &format!("{celsius}; for 298.15 K write 25.00"),
    );
    for bad in ["warm", "NaN", "200", "inf"] {
        let text = format!("{header}red,2.2,0.7,{bad}\n");
        expect(&text, 2, "temperature_c", bad, &format!("{celsius}; leave it empty for 25"));
    }
    // Milliamperes low enough to pass for amperes are beyond the curve of the die.
    expect(
        "colour,volts,amps,die\nwhite,2.6,3,small\nwhite,2.7,5,small\n",
        2,
        "amps",
        "3 A",
        "at least one reading of a small white die from 0.003 to 0.3 A, where its curve holds; if the currents are right, \
         see that column die names the right kind",
    );
}

#[test]
fn volts_that_do_not_rise_with_amps_are_refused() {
    let again = "measure the red die again, one die at a time";
    expect(
        "colour,volts,amps\nred,1.8,0.096\nred,2.1,0.222\nred,2.0,0.346\n",
        4,
        "volts",
        "2 V at 0.346 A",
        &format!("volts that rise with amps: line 3 has 2.1 V at 0.222 A; {again}"),
    );
    // Whatever order the lines are in, the later one is named.
    expect(
        "colour,volts,amps\nred,2.0,0.346\nred,1.8,0.096\nred,2.1,0.222\n",
        4,
        "volts",
        "2.1 V at 0.222 A",
        &format!("volts that rise with amps: line 2 has 2 V at 0.346 A; {again}"),
    );
    // 1 mV digits cannot hide the 24 mV that even an ideal die gains.
    expect(
        "colour,volts,amps\nred,2.000,0.2\nred,2.000,0.5\n",
        3,
        "volts",
        "2 V at 0.5 A",
        &format!("volts that rise with amps: line 2 has 2 V at 0.2 A; {again}"),
    );
}

#[test]
fn a_curve_that_no_diode_has_is_refused() {
    expect(
        "colour,volts,amps\nred,1.0,1.00\nred,2.0,1.10\nred,3.0,1.20\nred,4.0,1.30\n",
        2,
        "volts",
        "a curve that would be at -8.91 V at 0.0175 A",
        "readings of a diode, which is above 0 V there; see that volts and amps of the red die are in volts and amperes, and \
         measure again",
    );
}

#[test]
fn honest_readings_that_do_not_quite_rise_are_taken() {
    // Rounding hides the rise; a repeat scatters; a warm die drops less; another colour is another curve.
    for text in [
        "colour,volts,amps\nred,2.1,0.35\nred,2.1,0.40\n",
        "colour,volts,amps\nred,2.11,0.35\nred,2.09,0.35\nred,2.30,0.7\n",
        "colour,volts,amps,temperature_c\nred,2.10,0.35,25\nred,2.08,0.40,85\n",
        "colour,volts,amps\nred,2.10,0.35\nfar_red,2.00,0.7\n",
        "Colour , VOLTS, Amps,Temperature C,note\nDeep Red, 2.10 ,0.35,,by hand\n",
        "colour,volts,amps,colour temperature\nwhite,3.0,0.7,3000\n",
        "\u{feff}amps,colour,volts,die\r\n0.06,white,3.0,Small\r\n",
    ] {
        assert!(sweep::read(text).is_ok(), "{text}: {:?}", sweep::read(text));
    }
}

fn warned(text: &str) -> Vec<String> {
    let curves = sweep::read(text).unwrap_or_else(|fault| panic!("{fault:?}"));
    let fit = sweep::fit(&curves[0], &Table::built_in(), "x").unwrap_or_else(|fault| panic!("{fault:?}"));
    fit.warnings.iter().map(ToString::to_string).collect()
}

#[test]
fn readings_that_are_odd_but_usable_are_warned_of() {
    assert_eq!(warned("colour,volts,amps\nred,2.2,0.7\n"), [""; 0]);
    assert_eq!(
        warned("colour,volts,amps\nred,2.2,0.7\nred,2.5,1.1\nred,2.6,1.2\n"),
        [
            "line 4 and 1 more: 1200 mA is above the published maximum of 1050 mA; heat lowers the voltage and can kill \
          the die; keep to the maximum or see that the colour and the die are right"
        ]
    );
    // 1239.84/450 = 2.755 eV; three quarters of it 2.066 V. A white die is a royal-blue one under a phosphor.
    for colour in ["royal-blue", "white", "pink"] {
        assert_eq!(
            warned(&format!("colour,volts,amps\n{colour},2.06,0.02\n{colour},2.07,0.03\n"))[0],
            "line 2: 2.06 V is under 2.07 V, three quarters of the energy of a 450 nm photon; a die of this colour hardly \
             lights there; see that the colour is right and that the meter sits at the die"
        );
    }
    assert_eq!(
        warned("colour,volts,amps\nred,1.6,0.002\nred,1.7,0.01\nred,2.2,0.7\n"),
        [
            "line 2 and 1 more are outside 17.5 to 1750 mA, where the curve holds, and left out; sweep within that range"
        ]
    );
    assert_eq!(
        warned("colour,volts,amps\nred,3.2,0.7\n"),
        [
            "V0 of 2.90 V is outside 1.8 to 2.8 V, which makers publish; see that the colour is right and that there is one \
          die, not several in series"
        ]
    );
    assert_eq!(
        warned("colour,volts,amps\nred,2.10,0.35\nred,2.11,0.35\nred,2.30,0.7\nred,2.31,0.7\n"),
        [
            "4 readings at 2 currents cannot show the slope, so n and Rs are the table's; sweep at three currents or more"
        ]
    );
    assert_eq!(
        warned("colour,volts,amps,die\ngreen,2.9,0.12,mid\n"),
        [
            "the table has no mid green die: what a sweep does not show is taken from its row for dice of unstated colour; put \
          limits and efficiencies of your own into the new row if you know them"
        ]
    );
    assert_eq!(
        warned("colour,volts,amps\nred,2.301,0.70\nred,2.309,0.71\nred,2.311,0.72\nred,2.322,0.73\n"),
        [
            "a sweep from 700 to 730 mA says little of the curve beyond; sweep over at least a factor of 2 in current, the one \
          that lights are driven at among them"
        ]
    );
    assert_eq!(
        warned("colour,volts,amps\nred,1.8,0.1\nred,2.0,0.3\nred,2.1,0.4\nred,2.50,0.5\nred,2.55,0.8\n"),
        [
            "the curve misses the readings by 107 mV rms, line 5 most (+199 mV); a reading is wrong or the die warmed up on the \
          way; measure that one again, in short runs"
        ]
    );
}
