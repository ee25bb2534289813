//! Whose a figure is: one diode's, a part's, what feeds the light, or of no thing at all but of papers.

mod reading_help;

use plainwatt::facts::LeftWhy;
use plainwatt::reading::read;
use plainwatt::units::Watts;
use reading_help::{claim, left};

#[test]
fn letters_of_mathematics_are_letters() {
    assert_eq!(claim(&read("𝐆𝐫𝐨𝐰 lamp 𝟒𝟓𝟎 𝐖, 𝑎𝑐𝑡𝑢𝑎𝑙 210 𝘞")), Some(450.0));
}

#[test]
fn colours_are_counted_past_a_name_or_a_type() {
    let table = [
        ("Grow light 100W, pink full spectrum: 12pcs, red: 40pcs", vec![12, 40]),
        ("Board 240W, 4000K LM301H+ x 512 and 32 pcs 660nm red", vec![32, 512]),
        ("Bar 320W, 900 diodes, 36 of which red", vec![36]),
        ("Panel 20W red blue 300 SMD LEDs (240R/60B)", vec![60, 240]),
    ];
    for (text, counts) in table {
        let mut found: Vec<u32> = read(text).colours.iter().map(|c| c.value.count).collect();
        found.sort_unstable();
        assert_eq!(found, counts, "{text}");
    }
}

/// A supply's current read as one diode's would let the diodes draw many times what they can.
#[test]
fn milliamps_of_a_supply_drive_no_diode() {
    for text in [
        "Lamp 18W, 18 x 1W, adapter 12V 1500mA",
        "Lamp 30W, 30 x 1W, USB 5V 2000mA",
        "Lamp 90W, 90 x 1W, constant current 600mA driver",
    ] {
        assert!(read(text).drive.is_none(), "{text}");
    }
    assert!(read("Lamp 90W, 90 x 1W, each chip at 350mA").drive.is_some());
}

#[test]
fn what_a_part_is_rated_for_is_not_the_lights() {
    for text in [
        "Grow light 100W, cable rated 10A 250V",
        "Grow light 100W, plug 13A",
        "Kit 480W: 2 drivers 54V 4.4A each",
        "Grow light 100W, the fan is quiet (12V)",
    ] {
        let read = read(text);
        assert!(read.amps.is_none() && read.volts.is_none(), "{text}");
    }
}

#[test]
fn less_than_a_watt_beside_a_diode_is_its_class() {
    for text in ["Grow light 500W. 250 LEDs. LED power: 0.5W", "150W, 340 LED, 0.5W"] {
        let read = read(text);
        assert_eq!(read.class.map(|c| c.value.watts), Some(Watts(0.5)), "{text}");
        assert!(read.actual_w.is_none(), "{text}");
    }
}

#[test]
fn numbers_of_papers_and_models_are_codes() {
    for text in
        ["Grow light 96W, cert no 600W12A", "Model X-600W lamp 96W LED", "Item 300W5730-C | 96W panel"]
    {
        let read = read(text);
        assert_eq!(claim(&read), Some(96.0), "{text}");
        assert!(read.amps.is_none(), "{text}");
    }
}

#[test]
fn a_ratio_in_words_counts_no_diodes() {
    assert!(read("Strip light 60W, 300 leds, 5 red:1 blue, DC12V").colours.is_empty());
}

#[test]
fn counts_are_found_as_sources_and_as_more_than_so_many() {
    let table = [
        ("Number of light sources: 150, plant lamp 60W", Some(150)),
        ("Plant lamp 60W - Light sources: 150 - white", Some(150)),
        ("400+ LEDs grow light 100W", Some(400)),
        ("Grow light 40W 60+20 LEDs", None),
    ];
    for (text, count) in table {
        assert_eq!(read(text).diode_count.map(|c| c.value), count, "{text}");
    }
}

#[test]
fn half_of_a_makers_name_is_no_device() {
    assert_eq!(claim(&read("Trellis&Quill 1000 watt LED lamp")), Some(1000.0));
}

#[test]
fn a_part_in_the_first_words_leaves_the_light_its_watts() {
    let table = [
        ("Socket rated 660W max, grow bulb 36W E27, 36 x 1W", Some(36.0)),
        ("Ceiling hook, timer 15A, lamp 96W, 84 red 12 blue", Some(96.0)),
        ("Duct fan 52W, grow light 100W compatible", None),
    ];
    for (text, watts) in table {
        assert_eq!(claim(&read(text)), watts, "{text}");
    }
}

#[test]
fn the_second_number_of_a_row_of_watts_is_drawn_at_the_plug() {
    let read = read("Watts: 500 (nameplate) / 240 (at the plug), LEDs 160");
    assert_eq!(read.actual_w.map(|a| a.value.high), Some(Watts(240.0)));
}

#[test]
fn real_in_brackets_goes_with_its_own_number() {
    let read = read("Clip plant light 50W (real 8), 100 beads");
    assert_eq!(claim(&read), Some(50.0));
    assert_eq!(read.actual_w.map(|a| a.value.high), Some(Watts(8.0)));
}

#[test]
fn a_device_that_the_light_does_without_is_not_what_the_text_is_about() {
    for text in [
        "LED grow light no fan, 100W",
        "LED grow light without fan 100W",
        "Pflanzenlampe ohne Lüfter 100 W",
        "Lampe horticole sans ventilateur 100 W",
        "植物育成ライト ファンなし 100W",
    ] {
        assert_eq!(claim(&read(text)), Some(100.0), "{text}: {:?}", read(text));
    }
    let volts = read("育苗ライト 60W AC100-240V ファンなし").volts.map(|t| t.value.1.value);
    assert_eq!(volts, Some(240.0));
    assert_eq!(claim(&read("Fan without light 100W")), None);
}

#[test]
fn what_a_driver_is_rated_for_is_no_claim_and_no_draw() {
    for text in [
        "Grow light board. Driver: Corvo HD-320, rated 320W. Draws 200W",
        "Grow light board. Driver: Corvo HD-320, rated 320W so it stays cool. Draws 200W",
        "Grow light board. Power supply: Corvo HD, 320W max. Draws 200W",
        "Pflanzenlampe. Netzteil: Corvo HD, 320W max. Verbrauch 200W",
        "Grow light board, driver capable of 320W, draws 200W",
        "Grow light board; the ballast can deliver 320W; draws 200W",
        "Pflanzenlampe, Treiber kann 320W, Verbrauch 200W",
    ] {
        let read = read(text);
        assert_eq!(claim(&read), Some(200.0), "{text}");
        assert_eq!(read.actual_w.map(|a| a.value.high), Some(Watts(200.0)), "{text}");
    }
    assert_eq!(claim(&read("Grow light: quantum board, rated 320W")), Some(320.0));
    // A Portuguese "only".
    let read = read("Luz de cultivo 300W, 120W só");
    assert_eq!(read.actual_w.map(|a| a.value.high), Some(Watts(120.0)));
}

#[test]
fn what_a_chain_of_lights_takes_is_a_limit_and_no_claim() {
    for text in [
        "Grow strip, draws 35W, link up to 8 (290W per run max)",
        "Grow strip, draws 35W, daisy-chain 8 units (290W)",
        "Grow strip, draws 35W, how many in a row? Up to 8 lights, 290W.",
        "Grow strip, draws 35W, 290W per chain",
        "Pflanzenleiste, Verbrauch 35W, bis zu 8 Lampen koppelbar, max. 290W",
    ] {
        assert!(left(text).contains(&("290W", LeftWhy::LoadLimit)), "{text}: {:?}", left(text));
        assert_eq!(claim(&read(text)), Some(35.0), "{text}");
    }
    let table = [
        ("36W linkable grow strip, link up to 8 (290W max)", 36.0),
        ("Grow light, daisy chain up to 4 lights, 1000W, actual 100W", 1000.0),
        ("Replaces up to 4 bulbs, 100W LED light, draws 25W", 100.0),
        ("Grow light for up to 8 plants, 290W, draws 40W", 290.0),
    ];
    for (text, own) in table {
        assert_eq!(claim(&read(text)), Some(own), "{text}");
    }
}

#[test]
fn a_draw_of_each_of_several_parts_is_no_draw_of_the_light() {
    for text in [
        "Each of the eight 3030-type strips in this lamp runs at 40W; the lamp is rated 320W",
        "Each of 8 white LED bars in this lamp draws 40W; 320W in all",
    ] {
        assert!(left(text).contains(&("40W", LeftWhy::Part)), "{text}: {:?}", left(text));
        let read = read(text);
        assert_eq!((claim(&read), read.actual_w.is_none()), (Some(320.0), true), "{text}");
    }
}

#[test]
fn a_panel_is_no_part_of_its_own_total_draw() {
    for text in ["500W panel, total power draw 110W", "Grow light 500W board, 110W total draw"] {
        let read = read(text);
        assert_eq!(claim(&read), Some(500.0), "{text}");
        assert_eq!(read.actual_w.map(|a| a.value.high), Some(Watts(110.0)), "{text}");
    }
    assert_eq!(claim(&read("Grow light, 80W bar, total 320W")), Some(320.0));
}

#[test]
fn the_total_of_parts_or_modes_is_the_claim() {
    let table = [
        ("Clip lamp with 3 arms, 36W in total, 12W per arm, modes: red 16W, white 20W, all on 36W", 36.0),
        ("Clip lamp, 36W total: red 16W, white 20W", 36.0),
        ("Rack light, each bar 45W, 270W all bars", 270.0),
        ("Board, 3W diodes driven at 1.5W, total input power 140W", 140.0),
        ("Фитосветильник 4 линейки по 15 Вт, всего 60 Вт", 60.0),
    ];
    for (text, own) in table {
        assert_eq!(claim(&read(text)), Some(own), "{text}");
    }
    assert_eq!(claim(&read("Grow light 80W, total coverage 4 ft, 60W driven softly")), Some(80.0));
}

#[test]
fn what_a_french_meter_shows_at_the_plug_is_a_draw() {
    let draw = |text| read(text).actual_w.map(|a| a.value.high);
    assert_eq!(draw("Lampe LED 900 W, 130 W à la prise"), Some(Watts(130.0)));
    assert_eq!(draw("LED lamp 130W with a standard plug"), None);
}

#[test]
fn fans_and_fuses_have_volts_and_amperes_of_their_own() {
    assert!(read("Panel 600W, 3 fans, 12V each").volts.is_none());
    assert!(read("Panel 600W, 120 LEDs, two 8A fuses").amps.is_none());
    assert!(read("Panel 600W, 2.5A, for 16A breakers").amps.is_some());
}

#[test]
fn a_hood_of_leds_and_a_meters_reading_are_of_a_light() {
    let draw = |text: &str| read(text).actual_w.map(|t| t.value.high);
    let tank = "Nano tank set: 10 gal tank, 25W LED hood (draws 23W), 50W heater, 6W pump";
    assert_eq!((claim(&read(tank)), draw(tank)), (Some(25.0), Some(Watts(23.0))));
    let meter = "The wall meter reads 92W with the dimmer open on the 100W board";
    assert_eq!((claim(&read(meter)), draw(meter)), (Some(100.0), Some(Watts(92.0))));
    assert_eq!(claim(&read("Plug-in wall meter shows 3680W max")), None);
}

#[test]
fn a_reel_has_the_watts_of_the_whole_and_no_draw() {
    for text in [
        "Strip reel, 50 W for the full reel (10 W per metre), cut every 10 cm (1 W)",
        "LED-Streifen 50 W, teilbar alle 10 cm (1 W)",
        "Grow strip 50W, 1 W every 10 cm",
    ] {
        assert_eq!(claim(&read(text)), Some(50.0), "{text}");
        assert!(read(text).actual_w.is_none(), "{text}");
    }
}

#[test]
fn a_light_for_a_tent_keeps_its_watts_and_a_kit_for_lights_has_none() {
    for text in [
        "Dexora panel light 600W for grow tent, draws 105W",
        "LED 600W for a 4x4 ft tent",
        "Pflanzenleuchte 600W für Growzelt, Verbrauch 105W",
        "Lampe horticole 600W pour tente de culture, consommation 105W",
        "Kweeklamp 600W voor kweektent, verbruik 105W",
        "Tent kit with fan, filter and 600W LED grow light",
    ] {
        assert_eq!(claim(&read(text)), Some(600.0), "{text}");
    }
    for text in ["Steel wire hanging kit for 600W LED panels, holds 12 kg", "Exhaust fan 30W for grow tent"] {
        assert_eq!(claim(&read(text)), None, "{text}");
    }
}
