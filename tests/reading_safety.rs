//! What is read, or left, because else an honest maker would be accused or somebody not warned. All texts are invented.

mod reading_help;

use plainwatt::facts::{LeftWhy, Note};
use plainwatt::reading::read;
use plainwatt::units::Watts;
use reading_help::{claim, left};

/// Sellers have to state standby, and a language may have a word for it that the vocabulary has not.
#[test]
fn watts_that_can_only_be_standby_are_no_draw_in_any_language() {
    for text in [
        "植物灯 240W 待机功率 0.5W",
        "植物育成ライト 240W 待機時消費電力 0.5W",
        "Фитолампа 240 Вт, потребляемая мощность в режиме ожидания 0,5 Вт",
        "Bitki lambası 240W, bekleme güç tüketimi 0.5W",
        "Lámpara 240W, consumo en espera 0,5 W",
        "Lampa 240W, pobór mocy w trybie czuwania 0,5 W",
        "Painel 240W, consumo em espera 0,5 W",
        "Växtlampa 240W, effektförbrukning i viloläge 0,5 W",
        "Kweeklamp 240W, verbruik in stand-by <1 W",
        "Pflanzenlampe 240W, Leistungsaufnahme im Bereitschaftsbetrieb 0,5 W",
    ] {
        let found = read(text);
        assert_eq!(claim(&found), Some(240.0), "{text}");
        assert!(found.actual_w.is_none(), "{text}");
    }
    // A small light's own draw.
    let small = read("USB plant light 5W, actual power 1.8W");
    assert_eq!(small.actual_w.map(|t| t.value.high.0), Some(1.8));
}

/// A caution depends on it.
#[test]
fn ultraviolet_is_noticed_without_a_count() {
    for text in ["UVB supplemental bar 20W, 24 x 1W", "Grow bar 395nm 20W", "UV-A strip 30W", "UVC lamp 36W"]
    {
        assert!(read(text).ultraviolet, "{text}");
    }
    for text in ["LED grow light 100W 380-800nm", "Red 660nm bar 20W", "300W LED grow light"] {
        assert!(!read(text).ultraviolet, "{text}");
    }
}

/// A shopper who pasted the wrong text is told so.
#[test]
fn a_text_about_another_device_says_so() {
    for text in ["Smart plug 16A 1800W max with energy meter", "6 inch duct fan 52W for grow tents"] {
        assert!(read(text).notes.contains(&Note::OtherDevice), "{text}");
    }
    assert!(!read("LED grow light 100W with timer").notes.contains(&Note::OtherDevice));
}

/// The lowest step of a switch, or the watts of one diode, would convict as the light's own draw.
#[test]
fn steps_of_a_switch_and_the_watts_of_a_diode_are_no_admission() {
    for text in [
        "400W LED grow light with power switch 100W/200W/300W/400W",
        "Grow light 240W, adjustable power 60W/120W/240W",
        "Lampe horticole 240W, puissance réglable: 60W / 120W / 240W",
        "Lampada 240W, potenza regolabile 60W/120W/240W",
        "Grow light 600W. 225 LEDs. LED power: 0.2W",
    ] {
        assert!(read(text).actual_w.is_none(), "{text}: {:?}", read(text).actual_w);
    }
    let class = read("Grow light 600W. 225 LEDs. LED power: 0.2W").class.map(|c| c.value.watts.0);
    assert_eq!(class, Some(0.2));
    let draw = |text| read(text).actual_w.map(|t| t.value.high.0);
    assert_eq!(draw("Clip-on plant light 60W (real 9), 120 beads"), Some(9.0));
    assert_eq!(draw("Clip-on plant light 60W, LED power: 10W"), Some(10.0), "a nameplate below the headline");
}

/// Letters that look like letters are letters (Unicode NFKC).
#[test]
fn mathematical_letters_are_read() {
    let found = read("Tamsel 𝟑𝟎𝟎𝐖 grow light, 100pcs*3𝗪, 𝑎𝑐𝑡𝑢𝑎𝑙 power 135W");
    assert_eq!(claim(&found), Some(300.0));
    assert_eq!(found.class.map(|c| c.value.watts.0), Some(3.0));
    assert_eq!(found.actual_w.map(|t| t.value.high.0), Some(135.0));
}

/// The draw of all modes together, and not of the one that stands before it.
#[test]
fn all_modes_together_are_the_draw() {
    for (text, draw) in [
        ("Quorim 8-Bar 700W Grow Light\nConsumption: veg 310W, flower 480W, all channels 640W", 640.0),
        ("UFO 180 watts / 60*3w / veg 74W, bloom 98W, both channels 164W / 220V", 164.0),
        ("Rampe 4 barres 320W, consommation : croissance 150W, floraison 220W, les deux 312W", 312.0),
    ] {
        assert_eq!(read(text).actual_w.map(|t| t.value.high.0), Some(draw), "{text}");
    }
}

/// Taken for one diode's, an adapter's current would bear out any claim.
#[test]
fn the_current_of_a_supply_is_no_drive_current() {
    for text in [
        "Plant lamp 20W 20 x 1W, DC 12V, adapter 12V 1500mA",
        "USB grow light 36W, 36 x 1W LEDs, USB 5V 2000mA",
        "Grow light 30W 30 x 1W, 12V 3000mA power supply included",
        "Grow light 120W, 240 x 0.5W LEDs, constant current 700mA driver",
    ] {
        assert!(read(text).drive.is_none(), "{text}");
    }
    let usb = read("USB grow light 36W, 36 x 1W LEDs, USB 5V 2000mA");
    assert_eq!(usb.supply.map(|t| (t.value.volts.value, t.value.amps.value)), Some((5.0, 2.0)));
    for diode in [
        "300W grow light 100 x 3W, LEDs driven at 700mA",
        "100 x 3W LEDs, 3.2V 700mA each, 300W",
        "1000W, 100 pcs 10W, 9-12V 700mA",
    ] {
        assert_eq!(read(diode).drive.map(|t| t.value.ma()), Some(700.0), "{diode}");
        assert!(read(diode).amps.is_none(), "{diode}");
    }
}

/// A part's draw or a dimmed level's is not the light's.
#[test]
fn a_numbered_parts_or_dimmed_draw_is_not_the_lights() {
    for text in ["Grow light with four 100W (actual) boards, 400W", "Grow light 400W, 4 100W actual boards"] {
        assert!(read(text).actual_w.is_none(), "{text}");
    }
    let strips =
        read("Each of the six strips in this new fixture runs at 40 W; the whole lamp is rated 240 W");
    assert!(strips.actual_w.is_none());
    let dimmed = read("植物育成ライト 消費電力60W(50%時31W)");
    assert_eq!(claim(&dimmed), Some(60.0));
    let dimmed = read("Фитолампа: потребление 120 Вт, при яркости 50% — 61 Вт");
    assert_eq!(claim(&dimmed), Some(120.0));
}

/// Read as the light's draw these would convict an honest maker.
#[test]
fn a_draw_that_is_not_the_whole_lights_at_full_power_is_left() {
    let table = [
        ("LED Grow Light 200W, consumes 0.5W in standby", "0.5W", LeftWhy::NotFullPower),
        ("Панель 400 Вт, потребление 100 Вт на панель", "100 Вт", LeftWhy::Part),
        ("LED grow light 300W, uses 1.2W when off", "1.2W", LeftWhy::NotFullPower),
        ("LED grow light 200W dimmable, draws 50W at 25%", "50W", LeftWhy::NotFullPower),
        ("Pflanzenlampe 200W dimmbar, Verbrauch 20W bei 10%", "20W", LeftWhy::NotFullPower),
        ("Lampada 400W, consumo 40W al 10% dimmer", "40W", LeftWhy::NotFullPower),
        ("LED Grow Light 320W, draws 32W at minimum dimming", "32W", LeftWhy::NotFullPower),
        ("LED grow light 320W, 160W power consumption at half brightness", "160W", LeftWhy::NotFullPower),
        (
            "Grow light 100W actual power: red mode 30W, blue mode 25W, full 100W",
            "30W",
            LeftWhy::NotFullPower,
        ),
        ("LED Grow Light 480W, 4 boards of 120W actual power each", "120W", LeftWhy::Part),
        ("LED Grow Light 480W, 4 drivers, actual power 120W per driver", "120W", LeftWhy::Part),
        ("Lampe LED 400W, consommation réelle 95W par barre, 4 barres", "95W", LeftWhy::Part),
        ("Lámpara 400W consumo por barra 100W, 4 barras", "100W", LeftWhy::Part),
        ("Pflanzenlampe 100W, Leistungsaufnahme pro Modul 25W, 4 Module", "25W", LeftWhy::Part),
        ("LED Grow Light 400W power consumption 200W per side", "200W", LeftWhy::Part),
        ("LED grow light 600W two channels each consuming 300W", "300W", LeftWhy::Part),
        ("LED grow light 240W, 60W actual power x 4", "60W", LeftWhy::Part),
        ("2 Pack LED Grow Light 150W each actual power 75W per bar", "75W", LeftWhy::Part),
        ("Grow tent kit 480W LED with inline fan power consumption 38W", "38W", LeftWhy::OtherDevice),
        ("LED Grow light 200W, timer consumption 3W", "3W", LeftWhy::OtherDevice),
    ];
    for (text, words, why) in table {
        assert!(read(text).actual_w.is_none(), "{text}");
        assert!(left(text).contains(&(words, why)), "{text}: {:?}", left(text));
    }
    for (text, watts) in [
        ("1000W LED, draws 200W at 100%", 200.0),
        ("1000W LED, actual power 185W at 95% efficiency", 185.0),
        ("2x 300W lights, actual power 120W each", 120.0),
        ("1000W LED with dimmer, actual power 110W", 110.0),
        ("1000W LED, consumes 50% 98W, 100% 196W", 196.0),
    ] {
        assert_eq!(read(text).actual_w.map(|a| a.value.high), Some(Watts(watts)), "{text}");
    }
}

/// What might have been claimed is no claim.
#[test]
fn a_supposed_claim_is_none() {
    let text = "We could have printed 3W x 100 = 300W on the box. We print what it draws: 135 W. 100 LEDs";
    assert_eq!(claim(&read(text)), Some(135.0));
}

/// A long description has dozens of sizes and times before its last row.
#[test]
fn a_claim_and_a_draw_behind_many_other_figures_are_read() {
    for others in [0, 30, 62, 63, 64, 65, 200] {
        let sizes: String = (0..others).map(|_| "Cable 5 cm, ").collect();
        let text = format!("LED grow light. {sizes}led light 1000W, 200 diodes, actual power 110W");
        let found = read(&text);
        assert_eq!(claim(&found), Some(1000.0), "behind {others}");
        assert_eq!(found.actual_w.map(|t| t.value.high.0), Some(110.0), "behind {others}");
        assert_eq!(found.diode_count.map(|t| t.value), Some(200), "behind {others}");
    }
}

/// The lower of two draws would convict, and the words for a level stand on either side of volts.
#[test]
fn one_mode_and_a_share_of_full_power_are_no_full_draw() {
    for text in [
        "Grow panel 500W, at 40% 55W @ 230V",
        "Grow panel 500W, at 40% 55W at 230V",
        "Grow panel 500W, draws 55W @ 230V at 40%",
        "Grow panel 500W, seedling mode only 55W",
        "Grow panel 500W, VEG just 55W",
        "Grow panel 500W, only veg: 55W",
        "Grow panel 500W, blue only 55W",
        "Grow panel 500W, half power 55W @ 120V",
        "Grow panel 500W draws 55W @ 120V (40% dimmed)",
        "Grow panel 500W, 40% brightness: 55W @ 120V",
        "Grow panel 500W, 40% dim = 55W",
    ] {
        assert!(left(text).contains(&("55W", LeftWhy::NotFullPower)), "{text}: {:?}", left(text));
        assert!(read(text).actual_w.is_none(), "{text}");
    }
    let draw = |text| read(text).actual_w.map(|t| t.value.high.0);
    assert_eq!(draw("Grow panel 500W, both switches ON 210W, VEG only 110W"), Some(210.0));
    assert_eq!(draw("Grow panel 500W, draws 210W @ 230V at 100%"), Some(210.0));
    assert_eq!(draw("Grow panel 500W, draws 210W @ 230V"), Some(210.0));
    assert_eq!(draw("Grow panel 500W, 100% dim = 210W, 50% dim = 110W"), Some(210.0));
    assert_eq!(draw("Grow panel 500W, only 210W @ 230V (95% efficient)"), Some(210.0));
    assert_eq!(draw("White grow light, only 55W"), Some(55.0));
}

#[test]
fn what_a_dimmer_goes_down_to_is_no_claim() {
    for text in [
        "board pulls 130W from the wall, dimmer down to 10W",
        "board pulls 130W from the wall, dimmable down to 10W",
        "Platine 130 W, dimmbar bis 10 W",
    ] {
        assert_eq!(claim(&read(text)), Some(130.0), "{text}");
    }
}
