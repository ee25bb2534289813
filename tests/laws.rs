//! Laws that hold whatever the light: properties tried on lights made up by chance, through the one way in, `assess`.

use std::sync::LazyLock;

use plainwatt::comparison::{Assessment, Reason, Settings, assess};
use plainwatt::draw::{Draw, Model};
use plainwatt::facts::{Colour, Count, Group, Listing, Package, StatedClass, Tally};
use plainwatt::reference::{ClassRow, Table};
use plainwatt::units::{Amps, Watts};
use proptest::prelude::*;

static MODEL: LazyLock<Model> =
    LazyLock::new(|| Model::new(Table::built_in()).expect("the built-in table fits its curves"));

/// Every class of the table as a listing states it: every kind of die, dice in series and strings in parallel among them.
const CLASSES: [(f64, Option<Package>); 18] = [
    (0.06, None),
    (0.1, None),
    (0.2, None),
    (0.5, None),
    (1.0, None),
    (2.0, None),
    (3.0, None),
    (5.0, None),
    (10.0, None),
    (15.0, None),
    (1.0, Some(Package::Smd)),
    (3.0, Some(Package::Smd)),
    (1.0, Some(Package::P3030)),
    (3.0, Some(Package::P3030)),
    (20.0, Some(Package::Cob)),
    (30.0, Some(Package::Cob)),
    (50.0, Some(Package::Cob)),
    (100.0, Some(Package::Cob)),
];

fn class() -> impl Strategy<Value = StatedClass> {
    prop::sample::select(CLASSES.to_vec())
        .prop_map(|(watts, package)| StatedClass { watts: Watts(watts), package })
}

/// The table's row for it.
fn row(class: StatedClass) -> &'static ClassRow {
    MODEL.table().class(MODEL.table().find(&class).expect("a class with a row"))
}

fn colour() -> impl Strategy<Value = Colour> {
    prop::sample::select(Colour::ALL.to_vec())
}

fn group() -> impl Strategy<Value = Group> {
    (colour(), 1_u32..400, class()).prop_map(|(colour, n, class)| Group {
        colour,
        count: Count::exact(n),
        class: Some(class),
    })
}

fn groups() -> impl Strategy<Value = Vec<Group>> {
    prop::collection::vec(group(), 1..7)
}

/// Groups that all have the light's one class.
fn one_class() -> impl Strategy<Value = (Vec<Group>, &'static ClassRow)> {
    (groups(), class()).prop_map(|(mut groups, class)| {
        for group in &mut groups {
            group.class = Some(class);
        }
        (groups, row(class))
    })
}

fn listing(groups: &[Group], claim: f64) -> Listing<'static> {
    Listing {
        claim: Some(Watts(claim)),
        tally: Some(Tally { groups: groups.iter().copied().collect(), lower_bound: false }),
        ..Listing::default()
    }
}

fn assessed(groups: &[Group], claim: f64) -> Assessment {
    assess(&listing(groups, claim), &MODEL, &Settings::default())
}

fn draw(assessment: &Assessment) -> &Draw {
    assessment.counted.draw.as_ref().expect("every class has a row")
}

fn close(a: f64, b: f64, relative: f64) -> bool {
    (a - b).abs() <= relative * a.abs().max(b.abs())
}

/// Every number of a draw that a person is shown, and its uncertainties.
fn numbers(assessment: &Assessment) -> Vec<f64> {
    let draw = draw(assessment);
    let mut all = Vec::new();
    for point in [&draw.full, &draw.ceiling] {
        all.extend([point.led.value.0, point.led.u.0, point.wall.value.0, point.wall.u.0]);
    }
    all.extend([draw.common.0.0, draw.common.1.0]);
    all.extend(assessment.needed.map(|n| n.scale));
    all
}

fn probabilities(assessment: &Assessment) -> [f64; 2] {
    [assessment.counted.p_reach.expect("a claim").p(), assessment.counted.p_ceiling.expect("a claim").p()]
}

fn same(one: &Assessment, other: &Assessment) -> bool {
    let (ours, theirs) = (numbers(one), numbers(other));
    let mut odds = probabilities(one).into_iter().zip(probabilities(other));
    ours.len() == theirs.len()
        && ours.iter().zip(&theirs).all(|(a, b)| close(*a, *b, 1e-9))
        && odds.all(|(a, b)| (a - b).abs() < 1e-9)
        && one.class_current.is_some() == other.class_current.is_some()
}

#[test]
fn the_laws_are_tried_on_every_class_of_the_table() {
    let tried =
        CLASSES.map(|(watts, package)| row(StatedClass { watts: Watts(watts), package }).name.as_str());
    assert!(MODEL.table().classes().iter().all(|class| tried.contains(&class.name.as_str())));
}

proptest! {
    // A failing case is printed; keeping it in a file would put one beside the tests.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_diode_more_never_lowers_the_draw(groups in groups(), more in group(), at in any::<prop::sample::Index>()) {
        let before = assessed(&groups, 100.0);
        let mut larger = groups.clone();
        larger[at.index(groups.len())].count.number += 1;
        let mut longer = groups;
        longer.push(Group { count: Count::exact(1), ..more });
        for groups in [larger, longer] {
            let after = assessed(&groups, 100.0);
            let (before, after) = (draw(&before), draw(&after));
            prop_assert!(after.full.led.value.0 > before.full.led.value.0);
            prop_assert!(after.full.wall.value.0 > before.full.wall.value.0);
            prop_assert!(after.ceiling.wall.value.0 > before.ceiling.wall.value.0);
            prop_assert!(after.common.0.0 > before.common.0.0 && after.common.1.0 > before.common.1.0);
        }
    }

    #[test]
    fn a_higher_claim_never_gets_a_better_counted_verdict(groups in groups(), shares in prop::collection::vec(0.1_f64..6.0, 2..12)) {
        let full = draw(&assessed(&groups, 1.0)).full.wall.value.0;
        let mut claims: Vec<f64> = shares.iter().map(|share| share * full).collect();
        claims.sort_by(f64::total_cmp);
        let verdicts: Vec<_> = claims.iter().map(|claim| assessed(&groups, *claim).counted.verdict).collect();
        prop_assert!(verdicts.iter().all(Option::is_some));
        prop_assert!(verdicts.is_sorted(), "{claims:?} {verdicts:?}");
    }

    #[test]
    fn a_group_split_in_two_changes_nothing(mut groups in groups(), at in any::<prop::sample::Index>(), share in 0.0_f64..1.0, claim in 1.0_f64..5000.0) {
        let at = at.index(groups.len());
        groups[at].count.number += 1;
        let whole = assessed(&groups, claim);
        let n = groups[at].count.number;
        let part = (1..n).min_by_key(|k| (f64::from(*k) - share * f64::from(n)).abs().to_bits()).expect("two at least");
        groups[at].count.number = part;
        groups.push(Group { count: Count::exact(n - part), ..groups[at] });
        let split = assessed(&groups, claim);
        prop_assert!(same(&whole, &split), "{:?}\n{:?}", numbers(&whole), numbers(&split));
        prop_assert_eq!(whole.verdict, split.verdict);
        prop_assert_eq!(whole.basis, split.basis);
        let codes = |a: &Assessment| a.reasons.iter().map(Reason::code).collect::<Vec<_>>();
        prop_assert_eq!(codes(&whole), codes(&split));
    }

    #[test]
    fn the_order_of_groups_does_not_matter(groups in groups(), turned in any::<prop::sample::Index>(), claim in 1.0_f64..5000.0) {
        let one = assessed(&groups, claim);
        let mut other = groups.clone();
        other.rotate_left(turned.index(groups.len()));
        other.reverse();
        prop_assert!(same(&one, &assessed(&other, claim)));
        prop_assert_eq!(one.verdict, assessed(&other, claim).verdict);
    }

    #[test]
    fn k_times_the_diodes_is_k_times_the_led_power(groups in groups(), k in 2_u32..50) {
        let one = assessed(&groups, 100.0);
        let mut many = groups;
        for group in &mut many {
            group.count.number *= k;
        }
        let many = assessed(&many, 100.0);
        let (one, many, k) = (draw(&one), draw(&many), f64::from(k));
        for (one, many) in [(&one.full, &many.full), (&one.ceiling, &many.ceiling)] {
            prop_assert!(close(one.led.value.0 * k, many.led.value.0, 1e-12));
            // One batch: what is not known of it does not average out.
            prop_assert!(close(one.led.u.0 * k, many.led.u.0, 1e-12));
            // A larger driver is more efficient, never less.
            prop_assert!(many.wall.value.0 <= one.wall.value.0 * k * (1.0 + 1e-12));
        }
    }

    #[test]
    fn stating_the_class_current_as_drive_current_changes_no_number((groups, class) in one_class(), claim in 1.0_f64..5000.0) {
        let unstated = listing(&groups, claim);
        let drive = class.die_current * f64::from(class.parallel);
        let stated = Listing { drive: Some(drive), ..unstated.clone() };
        let settings = Settings::default();
        let (a, b) = (assess(&unstated, &MODEL, &settings), assess(&stated, &MODEL, &settings));
        prop_assert!(same(&a, &b), "{:?}\n{:?}", numbers(&a), numbers(&b));
        prop_assert_eq!(a.verdict, b.verdict);
    }

    #[test]
    fn shares_and_probabilities_are_what_they_are_called(groups in groups(), claim in 0.1_f64..50_000.0) {
        let assessment = assessed(&groups, claim);
        let [p_reach, p_ceiling] = probabilities(&assessment);
        prop_assert!((0.0..=1.0).contains(&p_reach) && (0.0..=1.0).contains(&p_ceiling));
        let full = draw(&assessment).full.wall;
        prop_assert!(close(assessment.share.expect("a claim"), full.value.0 / claim, 1e-12));
        prop_assert!(draw(&assessment).ceiling.wall.value.0 >= full.value.0 * (1.0 - 1e-12));
        let (low, high) = draw(&assessment).full.wall_interval();
        prop_assert!(0.0 <= low.0 && low.0 <= full.value.0 && full.value.0 <= high.0);
        prop_assert!(full.u.0 > 0.0 && draw(&assessment).full.led.u.0 > 0.0, "nothing is known exactly");
        // Even odds at the draw itself.
        let even = assessed(&groups, full.value.0 / 0.9).counted.p_reach.expect("a claim").p();
        prop_assert!((even - 0.5).abs() < 1e-9);
    }

    #[test]
    fn what_the_claim_needs_makes_the_claim((groups, class) in one_class(), share in 0.2_f64..3.0) {
        let claim = share * draw(&assessed(&groups, 1.0)).full.wall.value.0;
        let assessment = assessed(&groups, claim);
        let Some(needed) = assessment.needed else {
            // Every curve reaches from a quarter of the class current to one and a half times it.
            prop_assert!(!(0.25..1.5).contains(&share), "no current for {share} of the full draw");
            return Ok(());
        };
        let current = needed.current.expect("one class");
        prop_assert!(close(current.0, class.die_current.0 * needed.scale, 1e-12));
        let drive: Amps = current * f64::from(class.parallel);
        let driven = Listing { drive: Some(drive), ..listing(&groups, claim) };
        let driven = assess(&driven, &MODEL, &Settings::default());
        prop_assert!(close(draw(&driven).full.wall.value.0, claim, 1e-8), "{:?} instead of {claim}", draw(&driven).full.wall);
        prop_assert!(close(driven.share.expect("a claim"), 1.0, 1e-8));
        // Driven so, the claim needs what flows already: the same current through each die.
        let again = driven.needed.expect("full draw is on the curve").current.expect("one class");
        prop_assert!(close(again.0, current.0, 1e-7));
    }

    #[test]
    fn the_full_draw_needs_exactly_the_class_current(groups in groups()) {
        let full = draw(&assessed(&groups, 1.0)).full.wall.value.0;
        let needed = assessed(&groups, full).needed.expect("full draw is on the curve");
        prop_assert!((needed.scale - 1.0).abs() < 1e-8, "{}", needed.scale);
    }

    #[test]
    fn a_higher_claim_needs_more_current(groups in groups(), share in 0.5_f64..1.5, more in 1.001_f64..1.3) {
        let full = draw(&assessed(&groups, 1.0)).full.wall.value.0;
        let needed = |claim: f64| assessed(&groups, claim).needed.map(|n| n.scale);
        if let (Some(less), Some(more)) = (needed(share * full), needed(share * more * full)) {
            prop_assert!(more > less);
        }
    }

    #[test]
    fn the_budget_adds_up_to_the_uncertainty(groups in groups(), doubt in 0_u32..5) {
        let mut groups = groups;
        groups[0].count.half_width = (doubt > 0).then_some(doubt);
        let assessment = assessed(&groups, 100.0);
        let draw = draw(&assessment);
        let lines = draw.budget(&MODEL);
        let total = lines.iter().map(|line| line.u_w.powi(2)).sum::<f64>().sqrt();
        prop_assert!(close(total, draw.full.wall.u.0, 1e-9));
        prop_assert!(lines.is_sorted_by(|a, b| a.u_w >= b.u_w), "largest first");
        // A count that is not in doubt has no line: absent, not zero.
        prop_assert_eq!(lines.iter().any(|line| line.source.contains("counts")), doubt > 0);
    }
}
