//! The compiled-in reference table: ranges, units, sources, completeness, and what is looked up for whom.

use plainwatt::draw::{JUNCTION, Model, Shockley};
use plainwatt::facts::{Colour, Package, StatedClass};
use plainwatt::reference::{Die, Table, diodes_as_csv};
use plainwatt::units::Celsius;

/// Planck constant times speed of light over elementary charge, volt nanometres: exact, SI Brochure, 9th edition (2019).
const HC_OVER_E: f64 = 6.626_070_15e-34 * 299_792_458.0 / 1.602_176_634e-19 * 1e9;

fn name_of(table: &Table, watts: f64, package: Option<Package>) -> Option<String> {
    let found = table.find(&StatedClass { watts: plainwatt::units::Watts(watts), package });
    found.map(|id| table.class(id).name.clone())
}

#[test]
fn every_diode_row_is_in_the_range_of_real_dice_in_si_units() {
    for row in Table::built_in().diodes() {
        let what = format!("{} {}", row.die.name(), row.colour.name());
        let test_ma = match row.die {
            Die::Power if row.colour == Colour::UvA => 500.0,
            Die::Power => 350.0,
            Die::Mid => 120.0,
            Die::Small => 60.0,
        };
        assert!((row.test.ma() - test_ma).abs() < 1e-9, "{what}: test current {} mA", row.test.ma());
        assert!(row.max.0 >= row.test.0 && row.max.0 <= 2.0, "{what}: maximum current {} A", row.max.0);
        assert!((1.0..=4.0).contains(&row.vf.0), "{what}: {} V", row.vf.0);
        assert!(row.vf_min.0 <= row.vf.0 && row.vf.0 <= row.vf_max.0, "{what}: typical outside min to max");
        assert!((0.05..=0.40).contains(&row.u_vf.0), "{what}: u {} V", row.u_vf.0);
        assert!((1.0..=7.0).contains(&row.ideality), "{what}: n {}", row.ideality);
        assert!((0.1..=5.0).contains(&row.rs.0), "{what}: Rs {} ohm", row.rs.0);
        assert!((-0.005..0.0).contains(&row.dvf_dt), "{what}: {} V/K", row.dvf_dt);
        assert!(0.0 < row.eff_low && row.eff_low <= row.eff_high && row.eff_high < 1.0, "{what}: efficiency");
        if let Some(nm) = row.peak_nm {
            assert_eq!(Colour::from_nanometres(nm), row.colour, "{what}: {nm} nm is another colour");
            // A junction cannot emit photons of much more energy than e times its voltage.
            assert!(row.vf.0 > 0.9 * HC_OVER_E / nm, "{what}: {} V under the photon's energy", row.vf.0);
        }
    }
}

#[test]
fn every_row_names_its_source_and_how_far_to_trust_it() {
    let table = Table::built_in();
    let diodes = table.diodes().iter().map(|r| (&r.grade, &r.source));
    let classes = table.classes().iter().map(|r| (&r.grade, &r.source));
    let grades =
        ["datasheet", "inferred", "memory", "mixed", "published", "trade page", "transcribed", "vendor page"];
    for (grade, source) in diodes.chain(classes) {
        assert!(grades.contains(&grade.as_str()), "a new grade '{grade}' needs a meaning");
        assert!(source.trim().len() > 10, "'{source}' is no source");
        assert!(*grade != "memory" || source.contains("memory"), "graded memory, and does not say of what");
    }
}

#[test]
fn no_row_occurs_twice() {
    let table = Table::built_in();
    for (i, row) in table.diodes().iter().enumerate() {
        assert!(table.diodes()[..i].iter().all(|r| (r.die, r.colour) != (row.die, row.colour)), "{row:?}");
    }
    for (i, row) in table.classes().iter().enumerate() {
        assert!(table.classes()[..i].iter().all(|r| r.name != row.name), "{}", row.name);
    }
}

#[test]
fn every_class_has_its_dice_and_its_currents_inside_their_curves() {
    let table = Table::built_in();
    let model = Model::new(table.clone()).expect("every class current is inside every curve");
    for id in table.class_ids() {
        let class = table.class(id);
        assert!(table.diodes().iter().any(|row| row.die == class.die), "no die for {}", class.name);
        assert!(class.die_current.0 <= class.max_die_current.0 && class.max_die_current.0 <= 2.0);
        assert!(class.common_low <= class.common_high && class.common_high <= 1.0, "{}", class.name);
        for colour in Colour::ALL {
            let package = model.package(id, colour);
            let (row, _) = table.diode(class.die, colour);
            let curve = Shockley::of(row);
            for share in [class.common_low, class.common_high, 1.0, 0.5 * class.common_low] {
                let volts = curve.voltage(class.die_current * share, JUNCTION);
                assert!(volts.is_ok(), "{} {} at {share}", class.name, colour.name());
            }
            assert!(package.ceiling.watts.0 >= package.full.watts.0, "{} {}", class.name, colour.name());
            assert!(package.common_low.0 <= package.common_high.0);
            assert!(package.common_high.0 <= package.full.watts.0 * (1.0 + 1e-12));
            // A name promises nothing, but seven times off would be a slip in a unit.
            let share = package.full.watts / class.nominal;
            assert!((0.15..=1.35).contains(&share), "{} {}: {share}", class.name, colour.name());
        }
    }
}

#[test]
fn the_curve_rises_with_current_and_falls_with_temperature_in_every_row() {
    for row in Table::built_in().diodes() {
        let curve = Shockley::of(row);
        let at = |share: f64, celsius| curve.voltage(row.test * share, Celsius(celsius)).expect("inside").0;
        let mut before = at(0.05, 75.0);
        for step in 2..=100 {
            let now = at(0.05 * f64::from(step), 75.0);
            assert!(now > before && now > 0.0, "{} {}", row.die.name(), row.colour.name());
            before = now;
        }
        assert!(at(1.0, 75.0) < at(1.0, 25.0));
    }
}

#[test]
fn a_colour_without_a_row_of_its_own_takes_the_kinds_unstated_row() {
    let table = Table::built_in();
    for die in Die::ALL {
        for colour in Colour::ALL {
            let has_row = table.diodes().iter().any(|r| r.die == die && r.colour == colour);
            let (row, own) = table.diode(die, colour);
            assert_eq!((row.die, own), (die, has_row), "{} {}", die.name(), colour.name());
            assert_eq!(row.colour, if has_row { colour } else { Colour::Unstated });
        }
    }
    let (_, own) = table.diode(Die::Mid, Colour::Green);
    assert!(!own, "no published mid-power green");
}

#[test]
fn a_class_beside_a_package_word_means_that_packages_row_and_is_never_interpolated() {
    let table = Table::built_in();
    let name = |watts, package| name_of(&table, watts, package);
    assert_eq!(name(3.0, None).as_deref(), Some("3W"));
    assert_eq!(name(1.0, Some(Package::P2835)).as_deref(), Some("smd-1W"));
    assert_eq!(name(3.0, Some(Package::Smd)).as_deref(), Some("smd-3W"));
    assert_eq!(name(3.0, Some(Package::P3030)).as_deref(), Some("3030-3W"));
    assert_eq!(name(0.5, Some(Package::P2835)).as_deref(), Some("0.5W"), "plain row, no small-package row");
    assert_eq!(name(50.0, Some(Package::Cob)).as_deref(), Some("cob-50W"));
    assert_eq!(name(10.0, Some(Package::Cob)), None, "a COB's watts name an array, not one package");
    for without_row in [0.25, 1.5, 4.0, 61.0] {
        assert_eq!(name(without_row, None), None, "{without_row} W");
    }
}

#[test]
fn a_package_alone_is_bounded_by_its_largest_class() {
    let table = Table::built_in();
    let model = Model::new(table.clone()).expect("the built-in table fits its curves");
    let ceiling =
        |id| Colour::ALL.map(|c| model.package(id, c).ceiling.watts.0).into_iter().fold(0.0, f64::max);
    for package in [
        Package::Smd,
        Package::P2835,
        Package::P3014,
        Package::P3030,
        Package::P3528,
        Package::P5630,
        Package::P5730,
    ] {
        let largest = table.largest(package).expect("a class of that package");
        for watts in table.classes().iter().map(|c| c.nominal) {
            let Some(other) = table.find(&StatedClass { watts, package: Some(package) }) else { continue };
            // A class of its own for that package must not draw more than the one that bounds it.
            let own =
                table.class(other).name.starts_with("smd") || table.class(other).name.starts_with("3030");
            assert!(!own || ceiling(other) <= ceiling(largest) + 1e-12, "{}", table.class(other).name);
        }
    }
    assert!(table.largest(Package::Cob).is_none() && table.largest(Package::P5050).is_none());
}

#[test]
fn a_table_written_out_is_read_back_the_same() {
    let table = Table::built_in();
    let text = diodes_as_csv(table.diodes()).expect("written");
    let back = Table::with_diodes("copy", &text).expect("read");
    assert_eq!(back.diodes().len(), table.diodes().len());
    for (a, b) in back.diodes().iter().zip(table.diodes()) {
        assert_eq!((a.die, a.colour, &a.source), (b.die, b.colour, &b.source));
        for (x, y) in [(a.vf.0, b.vf.0), (a.test.0, b.test.0), (a.dvf_dt, b.dvf_dt), (a.rs.0, b.rs.0)] {
            assert!((x - y).abs() <= 1e-12 * y.abs(), "{} {}", a.die.name(), a.colour.name());
        }
    }
    assert!(back.name().contains("copy") && back.name() != table.name(), "a result says which table it used");
}

#[test]
fn a_row_out_of_range_is_refused_with_its_line() {
    let table = Table::built_in();
    let good = diodes_as_csv(&table.diodes()[..2]).expect("written");
    for (from, to) in [("far-red", "farred"), ("1.8,1.6,2.4", "2.5,1.6,2.4"), ("350.0,1.8", "0.0,1.8")] {
        assert!(good.contains(from), "{from} in {good}");
        let fault = Table::with_diodes("bad", &good.replacen(from, to, 1)).expect_err(to);
        assert_eq!(fault.line, Some(2), "{fault}");
    }
    assert!(Table::with_diodes("empty", "die,colour\n").is_err());
}
