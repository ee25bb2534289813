//! What is claimed beside watts against published limits, measured fixtures and certified lights.

mod published;

use plainwatt::comparison::{Assessment, Claimed, Evidence, Figure, Settings, Verdict, assess, assess_watts};
use plainwatt::draw::Model;
use plainwatt::facts::{
    Colour, Count, Group, LampKind, Listing, MeterReading, Replaced, Stated, StatedClass, Supply, Tally,
};
use plainwatt::photons::{LIMIT_PAR, PerJoule, Photons};
use plainwatt::reference::Table;
use plainwatt::reference::lamp::{HPS_1000_DOUBLE_ENDED, LampSource, lamp_flux};
use plainwatt::report::{Light, Run, json, light, style::Style};
use plainwatt::units::Watts;

fn model() -> Model {
    Model::new(Table::built_in()).expect("the built-in table fits its curves")
}

fn listing(class: f64, diodes: &[(Colour, u32)]) -> Listing<'static> {
    let group = |(colour, n): &(Colour, u32)| Group { colour: *colour, count: Count::exact(*n), class: None };
    let groups = diodes.iter().map(group).collect();
    Listing {
        class: Some(StatedClass::plain(class)),
        tally: Some(Tally { groups, lower_bound: false }),
        ..Listing::default()
    }
}

#[expect(clippy::unnecessary_wraps, reason = "a listing states it or not")]
fn stated(value: f64) -> Option<Stated> {
    Some(Stated { value, half_digit: 0.005 })
}

fn only(listing: &Listing<'_>, model: &Model) -> Figure {
    let figures = assess(listing, model, &Settings::default()).figures;
    assert_eq!(figures.len(), 1, "{figures:?}");
    figures[0]
}

fn photons(listing: &Listing<'_>, model: &Model) -> Photons {
    let assessment: Assessment = assess(listing, model, &Settings::default());
    Photons::of(model, assessment.counted.draw.as_ref().expect("a draw"))
}

const WHITE: [(Colour, u32); 1] = [(Colour::White, 600)];
const MIXED: [(Colour, u32); 2] = [(Colour::White, 500), (Colour::DeepRed, 100)];
const RED_BLUE: [(Colour, u32); 2] = [(Colour::DeepRed, 500), (Colour::RoyalBlue, 100)];

/// Certified horticultural fixtures, tested umol/J (public qualified-products list, 1 479 rows, May 2025, own
/// computation): medians 2.57 (mostly white), 2.84 (mixed), 3.24 (red and blue), 95th percentile of mostly white 2.87.
#[test]
fn certified_lights_are_never_convicted() {
    let model = model();
    for class in [0.2, 0.5, 1.0, 3.0] {
        for (mix, efficacies) in
            [(&WHITE[..], &[2.57, 2.87][..]), (&MIXED[..], &[2.84][..]), (&RED_BLUE[..], &[3.24][..])]
        {
            for &efficacy in efficacies {
                let plain = listing(class, mix);
                let ppe = Listing { ppe: stated(efficacy), ..plain.clone() };
                let figure = only(&ppe, &model);
                assert!(!figure.verdict.convicts(), "{efficacy} umol/J in {class} W: {figure:?}");
                // The same light tested at the draw of its class, its flux stated.
                let draw = assess(&plain, &model, &Settings::default()).counted.draw.expect("a draw");
                let ppf = Listing { ppf: stated(efficacy * draw.full.wall.value.0), ..plain };
                let figure = only(&ppf, &model);
                assert!(!figure.verdict.convicts(), "{efficacy} umol/J in {class} W: {figure:?}");
            }
        }
    }
}

/// SI Brochure: one joule of 660 nm has 5.517 umol; of white, CIE LED-B1, 4.649.
#[test]
fn more_photons_than_a_joule_has_is_out_of_reach() {
    let model = model();
    for (mix, limit) in [
        (&WHITE[..], published::row("PPF_LED-B1").values()[0]),
        (&[(Colour::DeepRed, 100)][..], PerJoule::at(670.0).0),
        (&[(Colour::RoyalBlue, 100)][..], PerJoule::at(460.0).0),
    ] {
        let at = |ppe: f64| only(&Listing { ppe: stated(ppe), ..listing(3.0, mix) }, &model);
        let beyond = at(limit / 0.9 + 0.01);
        assert_eq!((beyond.verdict, beyond.evidence), (Verdict::OutOfReach, Evidence::Counted));
        assert_eq!(beyond.reason.code(), "efficacy-limit");
        let under = at(limit / 0.9 - 0.01);
        assert_eq!(
            (under.verdict, under.reason.code()),
            (Verdict::Unsettled, "efficacy-above-best-packages"),
            "packages improve, so only the limit convicts"
        );
        assert_eq!(at(0.5).verdict, Verdict::WithinReach);
    }
}

#[test]
fn without_a_count_only_the_limit_of_all_light_convicts() {
    let model = model();
    let of = |ppe| only(&Listing { ppe: stated(ppe), ..Listing::default() }, &model);
    let beyond = of(LIMIT_PAR.0 / 0.9 + 0.01);
    assert_eq!((beyond.verdict, beyond.evidence), (Verdict::OutOfReach, Evidence::OwnWords));
    let under = of(LIMIT_PAR.0 / 0.9 - 0.01);
    assert_eq!((under.verdict, under.evidence), (Verdict::Unsettled, Evidence::None));
}

#[test]
fn a_photon_flux_is_graded_like_watts() {
    let model = model();
    let plain = listing(3.0, &[(Colour::DeepRed, 80), (Colour::RoyalBlue, 20)]);
    let known = photons(&plain, &model);
    let draw = assess(&plain, &model, &Settings::default()).counted.draw.expect("a draw");
    let at = |ppf: f64| only(&Listing { ppf: stated(ppf), ..plain.clone() }, &model).verdict;
    let (low, _) = known.par_interval();
    assert_eq!(at(low.0), Verdict::WithinReach);
    assert_eq!(at(known.par.value.0 * 1.2), Verdict::Unsettled);
    let best = (known.best_packages * draw.full.led.value).0;
    assert_eq!(at(best), Verdict::Unsettled);
    assert_eq!(at(best * 1.4), Verdict::Overstated);
    assert_eq!(at((known.limit * draw.ceiling.led.value).0 * 1.4), Verdict::OutOfReach);
    // The verdict only gets worse with the claim.
    let mut before = Verdict::WithinReach;
    for step in 1..200 {
        let now = at(f64::from(step) * 20.0);
        assert!(now >= before, "{now:?} after {before:?} at {}", step * 20);
        before = now;
    }
}

#[test]
fn a_count_that_may_be_incomplete_convicts_no_photons() {
    let model = model();
    let mut light = listing(3.0, &WHITE);
    light.tally.as_mut().expect("a tally").lower_bound = true;
    for (ppf, ppe) in [(stated(1e6), None), (None, stated(5.5))] {
        let figure = only(&Listing { ppf, ppe, ..light.clone() }, &model);
        assert_eq!(figure.verdict, Verdict::Unsettled);
    }
}

#[test]
fn a_reading_takes_the_place_of_full_draw() {
    let model = model();
    let plain = listing(3.0, &[(Colour::DeepRed, 100)]);
    let best = photons(&plain, &model).best_packages.0;
    let read = |watts: f64, ppf: f64| {
        let reading = Some(MeterReading::Watts(Watts(watts)));
        only(&Listing { reading, ppf: stated(ppf), ..plain.clone() }, &model)
    };
    let figure = read(100.0, best * 100.0 * 1.5);
    assert_eq!((figure.verdict, figure.evidence), (Verdict::OutOfReach, Evidence::Measured));
    assert_eq!(
        read(200.0, best * 100.0 * 1.5).verdict,
        Verdict::Unsettled,
        "twice the draw, twice the light"
    );
}

fn supply(volts: f64, amps: f64) -> Supply {
    let stated = |value| Stated { value, half_digit: 0.05 };
    Supply { volts: stated(volts), amps: stated(amps) }
}

fn lamp(watts: f64, kind: LampKind) -> Replaced {
    Replaced { watts: Watts(watts), kind: Some(kind) }
}

/// Nelson & Bugbee 2014, `PLoS ONE` 9(6): e99010: watts in, umol/s out.
#[test]
fn replaced_lamps_give_what_was_measured() {
    for (id, watts, kind) in [
        ("hps_400", 400.0, LampKind::Hps),
        ("hps_1000", 1000.0, LampKind::Hps),
        ("cmh_315", 315.0, LampKind::Mh),
    ] {
        let row = published::row(id);
        let input: f64 = row.inputs.split(' ').next().expect("watts").parse().expect("a number");
        let lamp = lamp_flux(&lamp(watts, kind)).expect("a measured lamp");
        let ceramic = kind == LampKind::Mh;
        assert_eq!(lamp.source, if ceramic { LampSource::Ceramic } else { LampSource::Measured });
        row.agrees(lamp.flux.0 / input);
        assert!(row.inputs.contains(&format!("{} umol/s", lamp.flux.0)), "{}", row.inputs);
    }
    let double = published::row("hps_1000de");
    double.agrees(HPS_1000_DOUBLE_ENDED.0 / 1033.0);
    let mut before = 0.0;
    for watts in [150.0, 250.0, 400.0, 600.0, 1000.0] {
        let lamp = lamp_flux(&lamp(watts, LampKind::Hps)).expect("a sodium lamp");
        assert!(lamp.flux.0 > before, "{watts} W");
        let measured = [400.0, 1000.0].iter().any(|m: &f64| (m - watts).abs() < 0.5);
        assert_eq!(lamp.source == LampSource::Scaled, !measured, "what is scaled says so");
        before = lamp.flux.0;
    }
    assert_eq!(lamp_flux(&lamp(2000.0, LampKind::Hps)), None, "nothing beyond the largest");
    assert_eq!(lamp_flux(&lamp(400.0, LampKind::Mh)), None);
    assert_eq!(lamp_flux(&lamp(36.0, LampKind::Fluorescent)), None);
}

/// Regulation (EU) 2019/2015, Annex V: 806 lm stands for a 60 W incandescent lamp.
#[test]
fn an_incandescent_lamp_is_replaced_by_its_lumens() {
    let row = published::row("eu_flux_60");
    let sixty = lamp_flux(&lamp(row.values()[0], LampKind::Incandescent)).expect("the published row");
    assert_eq!(sixty.source, LampSource::Lumens);
    let lumens_a_watt = published::row("LER_LED-B5").values()[0];
    let flux_a_watt = published::row("PPF_LED-B5").values()[0];
    assert!((sixty.flux.0 * lumens_a_watt / flux_a_watt - 806.0).abs() < 0.1);
    let hundred = lamp_flux(&lamp(100.0, LampKind::Incandescent)).expect("a row");
    assert_eq!(hundred.source, LampSource::LumensFromMemory, "what is from memory says so");

    let model = model();
    let white = Listing {
        replaces: Some(lamp(60.0, LampKind::Incandescent)),
        ..listing(0.5, &[(Colour::White, 40)])
    };
    assert_eq!(only(&white, &model).verdict, Verdict::WithinReach);
    let red = Listing { tally: listing(0.5, &[(Colour::Red, 40)]).tally, ..white };
    assert_eq!(only(&red, &model).reason.code(), "lumens-of-colours");
}

#[test]
fn a_replacement_is_held_against_the_lamps_photons_not_its_watts() {
    let model = model();
    let light = |n, replaces| Listing {
        replaces: Some(replaces),
        ..listing(3.0, &[(Colour::DeepRed, n * 4), (Colour::RoyalBlue, n)])
    };
    let thousand = lamp(1000.0, LampKind::Hps);
    assert_eq!(only(&light(20, thousand), &model).verdict, Verdict::Overstated);
    assert_eq!(only(&light(5, thousand), &model).verdict, Verdict::OutOfReach);
    assert_eq!(only(&light(200, thousand), &model).verdict, Verdict::WithinReach);
    let unknown = Replaced { watts: Watts(600.0), kind: None };
    assert_eq!(only(&light(5, unknown), &model).reason.code(), "lamp-kind-not-stated");
}

#[test]
fn the_claim_in_watts_keeps_its_verdict_and_each_claim_is_one_row() {
    let model = model();
    let settings = Settings::default();
    let plain = Listing { claim: Some(Watts(300.0)), ..listing(3.0, &[(Colour::White, 100)]) };
    let full = Listing {
        ppf: stated(3000.0),
        ppe: stated(9.0),
        replaces: Some(lamp(600.0, LampKind::Hps)),
        supply: Some(supply(120.0, 5.0)),
        ..plain.clone()
    };
    let before = assess(&Listing { ppf: None, ppe: None, ..full.clone() }, &model, &settings);
    let after = assess(&Listing { ppe: None, ..full.clone() }, &model, &settings);
    assert_eq!((before.verdict, before.evidence), (after.verdict, after.evidence));

    let assessment = assess(&full, &model, &settings);
    let run = Run { model: &model, settings: &settings };
    let result = Light {
        listing: &full,
        read: None,
        assessment: &assessment,
        money: None,
        circuit: None,
        fit_supply: None,
    };
    let layout = light::Layout { width: 80, style: Style::PLAIN, working: true };
    let text = light::light(run, result, layout);
    for row in [
        "- photon flux 3000 umol/s: ",
        "- photon efficacy 9 umol/J: out-of-reach",
        "- replaces 600 W HPS: ",
        "- 5 A at 120 V: ",
    ] {
        assert_eq!(text.matches(row).count(), 1, "{row} in\n{text}");
    }
    let mut out = Vec::new();
    json::light(&mut out, run, result);
    let value: serde_json::Value = serde_json::from_slice(&out).expect("JSON");
    let claims = value["claims"].as_array().expect("claims");
    assert_eq!(claims.len(), 4);
    for (claim, figure) in claims.iter().zip(&assessment.figures) {
        assert_eq!(claim["verdict"], figure.verdict.word());
        let what = match figure.claimed {
            Claimed::Flux(_) => "ppf",
            Claimed::Efficacy(_) => "ppe",
            Claimed::Replaces(_) => "replaces",
            Claimed::Amperes { .. } => "amps",
        };
        assert_eq!(claim["what"], what);
    }
}

#[test]
fn a_lean_table_gets_the_same_watts_without_the_other_figures() {
    let model = model();
    let settings = Settings::default();
    let light =
        Listing { claim: Some(Watts(300.0)), ppf: stated(500.0), ..listing(3.0, &[(Colour::White, 100)]) };
    let (lean, mut all) = (assess_watts(&light, &model, &settings), assess(&light, &model, &settings));
    assert_eq!((lean.figures.len(), all.figures.len()), (0, 1));
    all.figures.clear();
    assert_eq!(lean, all);
}
