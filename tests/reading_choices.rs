//! Counts, draws, packs and watts in layouts where the next figure is another light's, another head's or another row's. The texts
//! are invented.

mod reading_help;

use plainwatt::facts::{LeftWhy, Read};
use plainwatt::reading::read;
use reading_help::{claim, left};

fn draw(read: &Read) -> Option<f64> {
    read.actual_w.map(|t| t.value.high.0)
}

fn count(read: &Read) -> Option<u32> {
    read.diode_count.map(|t| t.value)
}

fn class(read: &Read) -> Option<f64> {
    read.class.map(|t| t.value.watts.0)
}

fn replaced(read: &Read) -> Option<f64> {
    read.replaces.map(|t| t.value.watts.0)
}

fn units(read: &Read) -> Option<u32> {
    read.units_in_pack.map(|t| t.value)
}

#[test]
fn a_diode_word_between_two_counts_of_pieces_belongs_to_the_second() {
    for text in [
        "植物ライト 40W 赤100個 青50個 LED150個",
        "植物灯 40W 红光100颗 蓝光50颗 灯珠150颗",
        "Pflanzenlampe 40W rot 100 Stück blau 50 Stück LED 150 Stück",
    ] {
        assert_eq!(count(&read(text)), Some(150), "{text}");
    }
    assert_eq!(count(&read("Grow lamp 50W, 72 pcs LED, 2 pcs hooks")), Some(72));
}

#[test]
fn watts_that_rise_with_the_number_of_heads_are_of_several_lights() {
    for text in [
        "Clip lamp 1 head 8W / 2 heads 16W / 3 heads 24W",
        "Clip lamp: single head 8W, dual head 16W",
        "Klemmlampe 1 Kopf 8W, 2 Köpfe 16W",
        "Lampe 1 tête 8W / 2 têtes 16W",
        "植物灯 单头8W 双头16W 三头24W",
    ] {
        assert_eq!(claim(&read(text)), None, "{text}");
    }
    assert_eq!(claim(&read("Four head clip lamp 32W, 1 head 8W")), Some(32.0));
}

#[test]
fn what_a_run_of_lights_may_take_is_no_headline() {
    for text in [
        "Shelf bar 3ft, linkable up to 6 units (max 250W per run)",
        "Shelf bar, daisy chain up to 6, 250W max per run",
    ] {
        assert_eq!(claim(&read(text)), None, "{text}");
    }
    assert_eq!(claim(&read("Shelf bar 30W, linkable up to 6 units")), Some(30.0));
}

#[test]
fn the_light_that_an_owner_has_now_is_not_the_one_for_sale() {
    let text =
        "For sale: 320 watt bar light. My meter shows 311 watts. I moved up to a 640 W unit. Pick-up only";
    assert_eq!((claim(&read(text)), draw(&read(text))), (Some(320.0), Some(311.0)));
    assert!(left(text).contains(&("640 W", LeftWhy::OtherLight)));
    assert_eq!(claim(&read("Went bigger, replaced it with a 640W bar. This is a 320W light")), Some(320.0));
    assert_eq!(claim(&read("I switched to a 300W LED from a 600W HPS")), Some(300.0));
}

#[test]
fn watts_at_full_brightness_below_the_headline_are_the_draw() {
    for text in [
        "Plant lamp 300W, full brightness 140W, night mode 8W, standby 0.4W",
        "Plant lamp 300W: at full brightness 140W, dimmed 30W",
        "Pflanzenlampe 300W, volle Helligkeit: 140W, Standby 0,4W",
    ] {
        assert_eq!((claim(&read(text)), draw(&read(text))), (Some(300.0), Some(140.0)), "{text}");
    }
    let alone = read("Plant lamp, full brightness 140W");
    assert_eq!((claim(&alone), draw(&alone)), (Some(140.0), None));
}

#[test]
fn a_number_of_them_counts_the_diodes_before_it() {
    for text in ["300W panel, 3W diodes, 100 of them", "300W Panel mit 3-Watt-Dioden, 100 davon"] {
        assert_eq!(count(&read(text)), Some(100), "{text}");
    }
    assert_eq!(count(&read("300W panel, 3W diodes, 20 of them red")), None);
    assert_eq!(count(&read("300W panel, 100 diodes, 20 of them")), Some(100));
}

#[test]
fn diodes_of_each_panel_of_a_pack_are_one_lights() {
    let pack = read("Panel 20W, 4 Pack, 96 LEDs/panel");
    assert_eq!((count(&pack), units(&pack)), (Some(96), Some(4)));
    assert_eq!(count(&read("Light of 4 bars 100W, 2 Pack, 96 LEDs/bar")), None);
}

#[test]
fn a_chip_on_board_is_a_cob() {
    for text in [
        "600W COB light, 3 chip-on-board modules 200W each",
        "600W light, three chip on board emitters at 200W each",
        "Lampe COB 600W, 3 modules COB de 200W chacun",
    ] {
        assert_eq!((count(&read(text)), class(&read(text))), (Some(3), Some(200.0)), "{text}");
    }
}

#[test]
fn a_row_with_two_labels_gives_both() {
    for text in [
        "Lamp, wattage (nameplate/actual): 400W/180W, emitters (qty/type): 80/5W",
        "Lamp, power (measured / claimed): 180W / 400W, LEDs (type/qty): 5W/80",
        "Lampe, Leistung (nominal/tatsächlich): 400W/180W, LEDs (Anzahl/Typ): 80/5W",
    ] {
        let read = read(text);
        assert_eq!((claim(&read), draw(&read)), (Some(400.0), Some(180.0)), "{text}");
        assert_eq!((count(&read), class(&read)), (Some(80), Some(5.0)), "{text}");
    }
    assert_eq!(draw(&read("Lamp, power (veg/bloom): 100W/200W")), None);
}

#[test]
fn lights_that_lie_in_one_box_are_a_pack() {
    for text in
        ["Clip lamp 10W, three in the box", "Clip lamp 10W, 3 in the box", "Lampe 10W, drei im Karton"]
    {
        assert_eq!(units(&read(text)), Some(3), "{text}");
    }
    assert_eq!(units(&read("Lamp 100W, 2 hooks in the box")), None);
}

#[test]
fn both_switches_on_are_the_draw() {
    for text in [
        "Lamp 1200W\nVEG on: 95W, BLOOM on: 110W, both on: 203W",
        "Lampe 1200W, Blüte an: 110W, beide an: 203W",
        "Lamp 1200W: all on: 203W, veg on: 95W",
    ] {
        assert_eq!(draw(&read(text)), Some(203.0), "{text}");
    }
    assert_eq!(draw(&read("Lamp 1200W, both fans on: 10W")), None);
}

#[test]
fn on_mode_power_behind_the_figure_is_a_draw() {
    assert_eq!(draw(&read("Bar | 62 W on-mode power | 48 VDC")), Some(62.0));
    let text = "Nominal: 400 W\nOn-mode power: 396 W\nBoost would be 450 W, not available here";
    assert_eq!((claim(&read(text)), draw(&read(text))), (Some(400.0), Some(396.0)));
}

#[test]
fn counts_of_two_models_are_none() {
    for text in [
        "Rated power: 200W / 400W\nLEDs: 480 / 960",
        "Panel 100W or 200W, 240 or 480 LEDs",
        "LEDs: 480 / 960",
    ] {
        assert_eq!(count(&read(text)), None, "{text}");
    }
    assert_eq!(count(&read("100W panel, LEDs: 288 / 3000K")), Some(288));
}

#[test]
fn a_unit_in_brackets_belongs_to_the_number_after_it() {
    for text in [
        "Wattage (W) 500 | Consumption (W) 230 | LEDs 100 | W per LED 5",
        "Leistung (W) 500; Verbrauch (W) 230; Dioden 100",
        "功率(W) 500 | 实际功率(W) 230 | LEDs 100",
    ] {
        let read = read(text);
        assert_eq!(
            (claim(&read), draw(&read), count(&read)),
            (Some(500.0), Some(230.0), Some(100)),
            "{text}"
        );
    }
}

#[test]
fn a_text_that_goes_on_with_the_lights_own_driver_is_about_the_light() {
    for text in [
        "300W Quantum-Board-Set: Treiber kann 400 W, Verbrauch 298 W",
        "300W grow set: driver can do 400 W, consumption 298 W",
    ] {
        assert_eq!((claim(&read(text)), draw(&read(text))), (Some(300.0), Some(298.0)), "{text}");
    }
    assert_eq!(claim(&read("For 300W LED boards: driver 400W")), None);
}

#[test]
fn a_solar_panel_is_another_device() {
    assert_eq!(claim(&read("Solar plant light 8W panel, 4W LED, 40 LEDs")), Some(4.0));
    assert_eq!(claim(&read("LED grow panel 45W, solar spectrum")), Some(45.0));
}

#[test]
fn a_lamp_that_is_turned_down_is_the_one_replaced() {
    let text = read("Say no to 600W HPS - 300W LED bar");
    assert_eq!((claim(&text), replaced(&text)), (Some(300.0), Some(600.0)));
    assert_eq!(replaced(&read("Say no to 1000W power bills: 300W LED bar")), None);
}

#[test]
fn a_light_without_a_fan_has_its_own_watts_in_chinese_too() {
    for text in
        ["植物灯 150W 无风扇 静音", "植物燈 無風扇 150W", "植物灯 150W 不带定时器", "植物灯150W 免风扇"]
    {
        assert_eq!(claim(&read(text)), Some(150.0), "{text}");
    }
}
