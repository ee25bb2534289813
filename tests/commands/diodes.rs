//! `diodes`: the reference table with its sources.

use crate::program::run;

#[test]
fn the_whole_table_names_a_source_for_every_row() {
    run(&["diodes"]).printed("diodes.txt", "");
}

#[test]
fn one_colour_of_one_class_at_a_current() {
    run(&["diodes", "deep-red", "--class", "3W", "--ma", "700"]).printed("diodes_deep_red.txt", "");
}

#[test]
fn a_wavelength_finds_its_colour() {
    let by_name = run(&["diodes", "deep-red"]);
    assert_eq!(by_name.code, 0);
    assert!(by_name.out.contains("deep-red (power die, 660 nm)"));
    assert_eq!(run(&["diodes", "660nm"]).out, by_name.out);
}

#[test]
fn a_current_over_the_published_maximum_is_pointed_out() {
    let ran = run(&["diodes", "red", "--class", "3W", "--ma", "1200"]);
    assert_eq!(ran.code, 0);
    assert!(ran.out.contains("exceeded"), "{}", ran.out);
    let ran = run(&["diodes", "red", "--class", "3W", "--ma", "1000"]);
    assert!(!ran.out.contains("exceeded"), "{}", ran.out);
}

#[test]
fn mistakes_say_what_is_accepted() {
    run(&["diodes", "red", "--ma", "-1"]).refused(
        "plainwatt: --ma: found '-1', accepted: milliamperes above 0 through each diode, such as 700\n",
    );
    run(&["diodes", "--class", "9W"]).refused(
        "plainwatt: --class: no row for 9W; the classes are: 0.06W, 0.1W, 0.2W, 0.5W, 1W, 2W, 3W, 5W, 10W, 15W, smd-1W, \
         smd-3W, 3030-1W, 3030-3W, cob-20W, cob-30W, cob-50W, cob-100W\n",
    );
    run(&["diodes", "mauve"]).refused(
        "plainwatt: found 'mauve', accepted: a wavelength such as 660nm, a colour temperature such as 3000K, or one of \
         far-red, deep-red, red, red-orange, amber, green, cyan, blue, royal-blue, uv-a, white, pink, infrared, \
         unstated\n",
    );
}
