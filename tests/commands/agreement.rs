//! `vet` and `grade` give the same result for the same facts.

use std::fmt::Write as _;

use crate::program::{run, run_with_input};

const CLAIMS: [&str; 4] = ["", "60", "135", "300"];
const CLASSES: [&str; 5] = ["", "1W", "3W", "smd-3W", "10W"];
const TALLIES: [&str; 4] =
    ["", "100", "60 deep-red + 20 royal-blue + 20 white", "4 x (12±1 red) + 2 uv-a @1W"];

/// Columns of a row but its first two, which hold the names that only `grade` knows.
fn result(row: &str) -> &str {
    row.splitn(3, ',').nth(2).unwrap()
}

fn agree(columns: &str, rows: &[(String, Vec<String>)]) {
    let mut input = format!("{columns}\n");
    for (cells, _) in rows {
        let _ = writeln!(input, "{cells}");
    }
    let graded = run_with_input(&["grade", "-", "--format", "csv", "--wide"], input.as_bytes());
    assert_eq!(graded.code, 0);
    assert_eq!(graded.out.lines().count(), rows.len() + 1);
    for ((cells, flags), row) in rows.iter().zip(graded.out.lines().skip(1)) {
        let mut arguments = vec!["vet", "--format", "csv"];
        arguments.extend(flags.iter().map(String::as_str));
        let vetted = run(&arguments);
        assert_eq!(vetted.code, 0, "{cells}: {}", vetted.err);
        assert_eq!(vetted.out.lines().next(), graded.out.lines().next());
        assert_eq!(result(vetted.out.lines().nth(1).unwrap()), result(row), "{cells}");
    }
}

#[test]
fn they_agree_on_claim_class_and_tally() {
    let mut rows = Vec::new();
    for claim in CLAIMS {
        for class in CLASSES {
            for tally in TALLIES {
                let mut flags = Vec::new();
                for (flag, value) in [("--claim", claim), ("--class", class), ("--tally", tally)] {
                    if !value.is_empty() {
                        flags.extend([flag.to_owned(), value.to_owned()]);
                    }
                }
                // With nothing at all vet asks for something; grade has a row to answer for.
                if !flags.is_empty() {
                    rows.push((format!("{claim},{class},{tally}"), flags));
                }
            }
        }
    }
    agree("claim_w,class,tally", &rows);
}

#[test]
fn they_agree_on_every_other_kind_of_evidence() {
    let light = "300,3W,60 deep-red + 40 white";
    let cases = [
        ("900,,,,,,,,,,", "--drive-ma 900"),
        (",135,,,,,,,,,", "--measured 135"),
        (",,120.4,1.18,0.97,,,,,,", "--measured 120.4V,1.18A,pf0.97"),
        (",,230,0.6,,,,,,,", "--measured 230V,0.6A"),
        (",,,,,110,120,,,,", "--admits 110-120W"),
        (",,,,,,,120,0.60,,", "--supply 120V,0.60A"),
        (",,,,,,,,,300,1.5", "--ppf 300 --ppe 1.5"),
    ];
    let rows: Vec<_> = cases
        .iter()
        .map(|(cells, flags)| {
            let light_flags = ["--claim", "300", "--class", "3W", "--tally", "60 deep-red + 40 white"];
            let flags = light_flags.into_iter().chain(flags.split(' ')).map(str::to_owned).collect();
            (format!("{light},{cells}"), flags)
        })
        .collect();
    agree(
        "claim_w,class,tally,drive_ma,measured_w,measured_v,measured_a,measured_pf,admits_low_w,admits_high_w,\
         supply_v,supply_a,ppf,ppe",
        &rows,
    );
}
