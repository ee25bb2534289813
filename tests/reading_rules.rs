//! The rules of reading, each from a small table: what a text states beyond its labelled fields, and why figures are left.

mod reading_help;

use plainwatt::facts::{LeftWhy, Note, Package, Tolerance};
use plainwatt::reading::read;
use plainwatt::units::Watts;
use reading_help::{claim, left};

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

#[test]
fn a_figure_that_is_not_the_lights_is_left_with_its_reason() {
    let table = [
        ("GL-1000 grow light, 100W", "GL-1000", LeftWhy::ModelNumber),
        ("KB-240W-4C board, 240W", "KB-240W-4C", LeftWhy::ModelNumber),
        ("LED grow light 200W, 18 W x 9 D carton", "18 W", LeftWhy::Dimension),
        ("LED grow light 200W with 5W fan", "5W", LeftWhy::OtherDevice),
        ("300W LED, daisy chain up to 1500W", "1500W", LeftWhy::LoadLimit),
        ("300W LED, PPFD 985 µmol/m²/s", "985 µmol/m²/s", LeftWhy::FluxDensity),
        ("2000W light (NOT 200W!)", "200W", LeftWhy::Denied),
        ("1800W light, looks like 900W", "900W", LeftWhy::Rhetoric),
        ("100W light, dims down to 15W", "15W", LeftWhy::NotFullPower),
        ("Grow lamp 120W, dimmable down to 12W, draws 118W", "12W", LeftWhy::NotFullPower),
        ("植物育成ライト 消費電力48W 待機時0.3W", "0.3W", LeftWhy::NotFullPower),
        ("植物灯 实际功率65W 不虚标1000W", "1000W", LeftWhy::Denied),
        ("40W lamp (4 heads x 10W)", "10W", LeftWhy::Part),
        ("Flood grow light 20W 30W 80W garden LED", "30W", LeftWhy::Variant),
        ("Panneau LED 90W, consommation minimale 9 W", "9 W", LeftWhy::NotFullPower),
        ("Lampada 330W, 3 barre da 110W", "110W", LeftWhy::Part),
        ("Pflanzenlampe 180 W, 3 Leisten à 60 W", "60 W", LeftWhy::Part),
        ("300W grow light, adjustable power 75W/150W/300W", "75W", LeftWhy::NotFullPower),
        ("500W light. Consumption: veg 200W, bloom 350W, both channels 460W", "350W", LeftWhy::NotFullPower),
        ("2-Pack 45W lamps, 90W total", "90W", LeftWhy::PackTotal),
        ("300W/600W grow light, please choose", "600W", LeftWhy::Variant),
        ("80W bulb - Power: 50W - Real power: 15W", "50W", LeftWhy::Outranked),
        ("45W panel, R:B 8:1", "8:1", LeftWhy::Ratio),
        ("Mechanical timer 1875W for grow lights", "1875W", LeftWhy::OtherDevice),
        ("Air-cooled hood for 600W lamps", "600W", LeftWhy::OtherDevice),
    ];
    for (text, words, why) in table {
        assert!(left(text).contains(&(words, why)), "{text}: {:?}", left(text));
    }
}

#[test]
fn a_current_is_paired_with_the_voltage_the_text_gives_it() {
    let table = [
        ("100W, 5.4A @120V, 2.7A @240V", 120.0, 5.4),
        ("100W, 120V: 2.67A, 240V: 1.33A", 120.0, 2.67),
        ("100W, AC85-265V, 1.6A (110V)", 110.0, 1.6),
        ("100W, AC100-240V, 0.9A", 240.0, 0.9),
        ("10W lamp USB 5V/2A", 5.0, 2.0),
    ];
    for (text, volts, amps) in table {
        let supply = read(text).supply.unwrap_or_else(|| panic!("no supply in {text}")).value;
        assert!(near(supply.volts.value, volts) && near(supply.amps.value, amps), "{text}: {supply:?}");
    }
}

#[test]
fn the_volts_and_amperes_of_a_part_or_another_device_are_not_the_lights_supply() {
    for text in [
        "Lampada LED coltivazione indoor 300W, 312 LED SMD 3030, 5V 2A USB timer",
        "LED grow light 50W, 24V 1A per strip, 2 strips",
        "Grow Light 200W dual 100W drivers, 120V 0.9A per driver",
        "LED Grow Light 300W 24V 2A (each of 8 bars)",
        "Grow light 1000W, fan 12V 0.2A, 100 x 10W",
        "Grow light 480W (96x5W), 2 cooling fans (12V 0.2A)",
        "Kit 2x4\nLight: 220W LED\nTimer: 15A, 1800W max",
    ] {
        let read = read(text);
        assert!(read.supply.is_none() && read.amps.is_none(), "{text}: {:?} {:?}", read.supply, read.amps);
    }
    for text in
        ["LED lamp 10W, 5V 2A USB cable", "LED lamp 10W, adapter 5V 2A", "LED lamp 10W, 5V 2A USB adapter"]
    {
        assert!(read(text).supply.is_some(), "{text}");
    }
}

#[test]
fn the_printed_precision_is_half_a_unit_of_the_last_digit() {
    let table = [
        ("300W panel", 300.0, 0.5),
        ("10.8W lamp", 10.8, 0.05),
        ("1.2KW light", 1200.0, 50.0),
        ("1,200W light", 1200.0, 0.5),
    ];
    for (text, value, half) in table {
        let stated = read(text).advertised_w.unwrap().value;
        assert!(near(stated.value, value) && near(stated.half_digit, half), "{text}: {stated:?}");
    }
    let amps = read("60W light 230V 0.6A").amps.unwrap().value;
    assert!(near(amps.half_digit, 0.05));
    let ppe = read("240W, 2.75 µmol/J").ppe.unwrap().value;
    assert!(near(ppe.half_digit, 0.005));
}

#[test]
fn a_tolerance_belongs_to_the_draw_it_is_printed_with() {
    let tolerance = |text: &str| read(text).actual_w.unwrap().value.tolerance;
    assert_eq!(tolerance("300W, actual power: 135W±5%"), Some(Tolerance::Share(0.05)));
    assert_eq!(tolerance("300W, draw 128W(±5%)"), Some(Tolerance::Share(0.05)));
    assert_eq!(tolerance("300W, actual 135W +/-10%"), Some(Tolerance::Share(0.1)));
    assert_eq!(tolerance("65W ±2W true wattage"), Some(Tolerance::Watts(Watts(2.0))));
    assert_eq!(tolerance("300W, actual 135W"), None);
}

#[test]
fn a_drive_current_is_the_diodes_not_the_mains() {
    let read = read("300W light 100x3W, drive current: 560mA, AC 100-240V 1.2A");
    assert!(near(read.drive.unwrap().value.0, 0.56));
    assert!(near(read.amps.unwrap().value.value, 1.2));
}

#[test]
fn an_efficacy_up_to_or_of_the_diodes_is_a_bound() {
    assert!(read("300W, efficacy up to 3.1 µmol/J").ppe_is_bound);
    assert!(read("240W light, diodes with 3.1 umol/J efficacy").ppe_is_bound);
    assert!(!read("240W light, 2.7 umol/J").ppe_is_bound);
}

#[test]
fn a_package_number_is_no_count_and_goes_with_the_class() {
    let read = read("200W grow lamp with 0.5W SMD2835, 400 pcs");
    let class = read.class.unwrap().value;
    assert_eq!(class.package, Some(Package::P2835));
    assert!(near(class.watts.0, 0.5));
    assert_eq!(read.diode_count.unwrap().value, 400);
    assert_eq!(plainwatt::reading::read("100W, 2835 diodes").diode_count, None);
}

#[test]
fn a_type_of_diode_is_no_count_of_blue_letters() {
    for (text, watts) in [
        ("Grow light 110W 281B+", 110.0),
        ("Grow light 240W 288B", 240.0),
        ("Grow light 240W/288B", 240.0),
        ("Grow light 1000W 281B", 1000.0),
        ("Grow light 1000W 3000B 0.2W", 1000.0),
        ("Grow light 240W 281B pro 0.5W", 240.0),
    ] {
        let read = read(text);
        assert_eq!(claim(&read), Some(watts), "{text}");
        assert!(read.colours.is_empty(), "{text}: {:?}", read.colours);
    }
    for (text, colours) in [("40R/8B/2W grow lamp", 3), ("60R+20B+10W", 3), ("96 W, 24 R, 8 B", 3)] {
        assert_eq!(read(text).colours.len(), colours, "{text}");
    }
}

#[test]
fn a_ratio_of_colours_counts_none_of_them() {
    for text in ["Tubes 24W, red 4 : blue 1", "Tubes 24W, 4 red : 1 blue", "Röhre 24 W, rot 5: blau 2"] {
        let read = read(text);
        assert!(read.colours.is_empty(), "{text}");
        assert!(read.left.iter().any(|l| l.why == LeftWhy::Ratio), "{text}");
    }
    assert_eq!(read("Tubes 24W, red 40, blue 10").colours.len(), 2);
}

#[test]
fn the_volts_of_an_adapter_leave_the_lights_watts_to_the_light() {
    assert_eq!(claim(&read("Grow light 30W DC 12V 1A adapter, 60 LEDs")), Some(30.0));
}

#[test]
fn cobs_keep_their_package_and_make_colour_counts_partial() {
    let read = read("COB 600W: 4 COB×150W, UV 2pcs IR 2pcs");
    assert_eq!(read.class.unwrap().value.package, Some(Package::Cob));
    assert!(read.beside_board);
    assert!(!plainwatt::reading::read("300W 100x3W panel, 70 red, 30 blue").beside_board);
}

#[test]
fn two_headlines_that_differ_are_noted() {
    let read = read("1000W LED Grow Light 100W full spectrum");
    assert_eq!(claim(&read), Some(1000.0));
    assert_eq!(read.notes.as_slice(), [Note::HeadlinesConflict { used: Watts(1000.0), other: Watts(100.0) }]);
}

#[test]
fn variants_without_a_choice_claim_nothing() {
    for text in [
        "1000W/600W LED grow light (pls choose)",
        "tube 2ft 10W | 3ft 14W",
        "LED light (45W/65W/85W)",
        "panel, pick your size: 25W (78 LED) / 45W (144 LED) / 65W (256 LED)",
    ] {
        let read = read(text);
        assert_eq!(claim(&read), None, "{text}");
        assert_eq!(read.notes.as_slice(), [Note::VariantNotSelected], "{text}");
    }
}

#[test]
fn the_chosen_variant_is_the_one_in_the_brackets_or_after_the_word() {
    for (text, watts, drawn, diodes) in [
        ("Bar [Variant: 3 ft, 36W, 108 LEDs] also sold as 2 ft 24W 72 LEDs", 36.0, None, Some(108)),
        ("T5 bar 1ft 5W / 2ft 10W / 3ft 15W. Selected: 2ft 10W. 48 LEDs", 10.0, None, Some(48)),
        ("Bar [Selected: 320W], 200W. Power draw of this size: 318W", 320.0, Some(318.0), None),
    ] {
        let read = read(text);
        let drawn_as_read = read.actual_w.map(|a| a.value.high.0);
        let diodes_as_read = read.diode_count.map(|c| c.value);
        assert_eq!((claim(&read), drawn_as_read, diodes_as_read), (Some(watts), drawn, diodes), "{text}");
    }
}

#[test]
fn a_wattage_switch_claims_its_top_setting() {
    assert_eq!(claim(&read("vapor tight, selectable by switch 30/40/50W")), Some(50.0));
    assert_eq!(claim(&read("Power 150-720 Watts (dimmable)")), Some(720.0));
}

#[test]
fn a_few_pieces_of_some_watts_are_lamps_and_not_diodes() {
    for (text, claims, units) in [
        ("Grow Light 6PCS T5 2FT 60W total, 10W each", 10.0, 6),
        ("2x 600W LED grow lights", 600.0, 2),
        ("2x 45w grow panel 225led", 45.0, 2),
        ("Grow tubes, four in a box, 15W per tube", 15.0, 4),
    ] {
        let read = read(text);
        assert_eq!(claim(&read), Some(claims), "{text}");
        assert_eq!(read.units_in_pack.map(|t| t.value), Some(units), "{text}");
        assert!(read.class.is_none(), "{text}: {:?}", read.class);
    }
    assert!(read("Grow bar set, 4 x 5W = 20W").class.is_none());
}

#[test]
fn the_lamp_that_is_replaced_is_the_one_after_for() {
    for text in ["LED 300W replacement for 600W HPS", "300W LED, 600W HPS substitute"] {
        let read = read(text);
        assert_eq!(claim(&read), Some(300.0), "{text}");
        assert_eq!(read.replaces.map(|t| t.value.watts), Some(Watts(600.0)), "{text}");
    }
    let bare = read("Board: 100W (not equivalent), 256 diodes");
    assert_eq!((claim(&bare), bare.replaces.is_none()), (Some(100.0), true));
}

#[test]
fn thousands_and_decimals_are_told_apart() {
    let table = [
        ("1.000W Grow Light", 1000.0),
        ("1'000W LED", 1000.0),
        ("1\u{a0}000 W lampe", 1000.0),
        ("1 200 W grow light", 1200.0),
        ("0,12 kW light", 120.0),
        ("1.250 kW light", 1250.0),
        ("28,5 W lamp", 28.5),
        ("１０００Ｗ light", 1000.0),
        ("2 300W lights", 300.0),
    ];
    for (text, watts) in table {
        assert_eq!(claim(&read(text)), Some(watts), "{text}");
    }
    for text in ["Barre 480 W, 1 250-1 300 µmol/s", "Barre 480 W, 1 100 to 1 300 µmol/s"] {
        assert_eq!(read(text).ppf.map(|t| t.value.value), Some(1300.0), "{text}");
    }
}

#[test]
fn a_light_in_every_language_states_its_draw() {
    let table = [
        "Lampe 300W, Leistungsaufnahme 130 W",
        "lampe 300W, consommation réelle 130 W",
        "lámpara 300W, consumo real 130W",
        "lampada 300W, assorbimento 130W",
        "kweeklamp 300W, werkelijk verbruik 130 watt",
        "lâmpada 300W, consumo 130W",
        "lampa 300W, pobór mocy 130 W",
        "växtlampa 300W, faktisk förbrukning 130 W",
        "bitki lambası 300W, gerçek tüketim 130W",
        "лампа 300 Вт, реальная мощность 130 Вт",
        "植物ライト 300W 実消費電力130W",
        "植物灯 300W 实际功率130W",
    ];
    for text in table {
        let read = read(text);
        assert_eq!(claim(&read), Some(300.0), "{text}");
        assert_eq!(read.actual_w.map(|a| a.value.high), Some(Watts(130.0)), "{text}");
    }
}
