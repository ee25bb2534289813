//! Several figures of one kind: which of them is the light's, or that none is sure to be. All texts are invented.

mod reading_help;

use plainwatt::reading::read;
use reading_help::claim;

/// The higher end of the admitted draw.
fn draw(text: &str) -> Option<f64> {
    read(text).actual_w.map(|t| t.value.high.0)
}

fn count(text: &str) -> Option<u32> {
    read(text).diode_count.map(|t| t.value)
}

#[test]
fn a_count_is_of_all_diodes_and_not_of_one_colour_or_one_of_two_lights() {
    assert_eq!(count("植物育成パネル 60W 赤140個 青40個 LED180個 消費電力32W"), Some(180));
    assert_eq!(count("Panel 300W, not 3W but 5W diodes, 60 of them, uses 140W"), Some(60));
    assert_eq!(count("Lampe 90W, 3-Watt-Dioden, 30 davon"), Some(30));
    assert_eq!(count("Lamp 90W, 3W diodes, 10 of them red"), None);
    assert_eq!(count("Panels 20W, 2 pack, 96 LEDs/panel"), Some(96));
    for text in ["Board 240W, LEDs: 960 / 1920", "Panel with 240 or 480 LEDs", "Panel mit 240 oder 480 LEDs"]
    {
        assert_eq!(count(text), None, "{text}");
    }
}

#[test]
fn watts_by_the_number_of_heads_are_of_lights_none_of_which_is_chosen() {
    for text in [
        "Clip lamp 1 head 12W / 2 heads 24W / 3 heads 36W, DC 5V",
        "Klemmlampe 1 Kopf 10W / 2 Köpfe 20W",
        "夹子灯 单头10W 双头20W",
    ] {
        assert_eq!(claim(&read(text)), None, "{text}");
    }
}

#[test]
fn what_a_run_of_lights_may_take_and_what_an_owner_has_now_are_no_claims() {
    assert_eq!(claim(&read("Strip light, chain up to 6 lights (max 250W per run), clips included")), None);
    let sold = read("Selling my 320W bar since I moved up to a 640W fixture, 1,200 diodes");
    assert_eq!(claim(&sold), Some(320.0));
}

#[test]
fn the_draw_is_the_one_with_everything_on() {
    assert_eq!(draw("Lamp 200W, full brightness 118W, night mode 8W, standby 0.5W"), Some(118.0));
    assert_eq!(draw("Light 60 W, 52 W on-mode power"), Some(52.0));
    assert_eq!(claim(&read("VEG on: 80W, BLOOM on: 95W, both on: 170W")), Some(170.0));
}

#[test]
fn rows_of_two_labels_give_two_figures_in_their_order() {
    for text in ["Dexora panel, wattage (nameplate/actual): 240W/104W", "Actual / rated power: 104 W / 240 W"]
    {
        assert_eq!((claim(&read(text)), draw(text)), (Some(240.0), Some(104.0)), "{text}");
    }
    let classed = read("Dexora 300W, diodes (qty/type): 60/5W");
    assert_eq!(classed.diode_count.map(|t| t.value), Some(60));
    assert_eq!(classed.class.map(|t| t.value.watts.0), Some(5.0));
    let row = "Dexora | Wattage (W) 300 | Consumption (W) 140 | LED count 60 | W per LED 5";
    assert_eq!((claim(&read(row)), draw(row), count(row)), (Some(300.0), Some(140.0), Some(60)));
    assert_eq!(read(row).class.map(|t| t.value.watts.0), Some(5.0));
}

#[test]
fn parts_and_panels_have_watts_of_their_own() {
    let modules = read("Light 400W, 2 chip-on-board modules 200W each");
    assert_eq!(modules.class.map(|t| t.value.watts.0), Some(200.0));
    assert_eq!(claim(&read("Dexora Leuchte, Treiber kann 480 W, läuft mit 300 W")), Some(300.0));
    assert_eq!(claim(&read("Solar grow light 6W panel, 4W LED")), Some(4.0));
    assert_eq!(claim(&read("植物灯 200W 无风扇")), Some(200.0));
    assert_eq!(claim(&read("Say no to 600W HPS: our 240W LED light")), Some(240.0));
    let box_of = read("LED tubes 18W, three in the box");
    assert_eq!(box_of.units_in_pack.map(|t| t.value), Some(3));
}
