//! What is read, or left, because else an honest maker would be accused or somebody not warned. All texts are invented.

use plainwatt::facts::Note;
use plainwatt::reading::read;

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
        assert_eq!(found.advertised_w.map(|t| t.value.value), Some(240.0), "{text}");
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
    assert_eq!(found.advertised_w.map(|t| t.value.value), Some(300.0));
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
    assert_eq!(dimmed.advertised_w.map(|t| t.value.value), Some(60.0));
    let dimmed = read("Фитолампа: потребление 120 Вт, при яркости 50% — 61 Вт");
    assert_eq!(dimmed.advertised_w.map(|t| t.value.value), Some(120.0));
}
