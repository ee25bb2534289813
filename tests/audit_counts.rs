//! What an audit counts does not depend on the order of the rows, and its medians keep the error that they state.

use plainwatt::audit::{Audit, EXACT, HALF_STEP, Page, Shares, TOP};
use plainwatt::comparison::Verdict;
use plainwatt::units::Watts;
use proptest::prelude::*;

fn median(values: &[f64]) -> f64 {
    let mut values = values.to_vec();
    values.sort_by(f64::total_cmp);
    f64::midpoint(values[(values.len() - 1) / 2], values[values.len() / 2])
}

fn shares(values: &[f64]) -> Shares {
    let mut shares = Shares::default();
    for value in values {
        shares.push(*value);
    }
    shares
}

#[test]
fn the_median_is_exact_up_to_the_stated_number_and_not_said_to_be_beyond() {
    let mut values: Vec<f64> = (0_u16..).take(EXACT).map(|n| 0.1 + f64::from(n) * 0.001_234).collect();
    let exact = shares(&values).median().unwrap();
    assert_eq!((exact.value, exact.error), (median(&values), 0.0));
    values.push(0.3);
    assert!((shares(&values).median().unwrap().error - HALF_STEP).abs() < 1e-12);
    assert_eq!(Shares::default().median(), None);
}

#[test]
fn a_median_above_the_top_is_a_lower_bound() {
    let values = vec![TOP + 1.0; EXACT + 1];
    let bound = shares(&values).median().unwrap();
    assert!(bound.or_more && bound.value >= TOP && bound.value <= median(&values));
}

/// Quantile by linear interpolation between order statistics, at (n - 1) p from the first (Hyndman & Fan 1996, type 7,
/// from memory): of 1 to 5 the quartiles are 2, 3 and 4, of 1 to 4 they are 1.75, 2.5 and 3.25.
#[test]
fn quartiles_are_interpolated_between_values() {
    assert_eq!(shares(&[5.0, 1.0, 4.0, 2.0, 3.0]).quartiles(), Some([1.0, 2.0, 3.0, 4.0, 5.0]));
    assert_eq!(shares(&[4.0, 2.0, 1.0, 3.0]).quartiles(), Some([1.0, 1.75, 2.5, 3.25, 4.0]));
    assert_eq!(shares(&[0.7]).quartiles(), Some([0.7; 5]));
    assert_eq!(Shares::default().quartiles(), None);
}

/// Made-up listings: group, verdict, share.
fn listings() -> impl Strategy<Value = Vec<(u8, usize, f64)>> {
    prop::collection::vec((0_u8..9, 0..Verdict::ALL.len(), 0.05..1.8_f64), 0..700)
}

fn counted(listings: &[(u8, usize, f64)]) -> Audit {
    let mut audit = Audit::with_at_most(4);
    for (group, verdict, share) in listings {
        let (group, verdict) = (format!("seller {group}"), Verdict::ALL[*verdict]);
        audit.count(&group, verdict, Some(*share), || Page {
            listing: format!("L{share}"),
            group: group.clone(),
            claim: Some(Watts(100.0)),
            share: Some(*share),
            verdict,
            label: None,
        });
    }
    audit
}

/// Everything that is shown of it.
fn seen(mut audit: Audit) -> String {
    let pages = audit.pages().to_vec();
    let of = |name: &str, group: &plainwatt::audit::Group| {
        let counts = Verdict::ALL.map(|v| group.counts().of(v));
        format!("{name} {counts:?} {:?} {:?}\n", group.median(), group.worst())
    };
    let groups: String = audit.groups().iter().map(|(name, group)| of(name, group)).collect();
    format!("{groups}{}{pages:?}", of("rest", audit.rest()))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_median_is_within_its_stated_error(values in prop::collection::vec(0.0..1.99_f64, 1..1500)) {
        let found = shares(&values).median().unwrap();
        prop_assert!(!found.or_more);
        prop_assert_eq!(found.error > 0.0, values.len() > EXACT);
        prop_assert!((found.value - median(&values)).abs() <= found.error + 1e-9);
    }

    #[test]
    fn quartiles_of_any_number_of_values_are_within_half_a_step(
        values in prop::collection::vec(0.0..1.99_f64, 1..1500),
    ) {
        let found = shares(&values).quartiles().unwrap();
        let mut sorted = values.clone();
        sorted.sort_by(f64::total_cmp);
        for (quarter, found) in found.into_iter().enumerate() {
            let place = quarter * (sorted.len() - 1) / 4;
            // Between the value at that rank and the next, and half a step where values are counted in steps.
            let (low, high) = (sorted[place], sorted[(place + 1).min(sorted.len() - 1)]);
            prop_assert!((low - HALF_STEP - 1e-9..=high + HALF_STEP + 1e-9).contains(&found), "{quarter}: {found}");
        }
        prop_assert!(found.is_sorted());
    }

    #[test]
    fn neither_order_nor_division_among_threads_changes_anything(
        listings in listings(),
        cut in any::<prop::sample::Index>(),
    ) {
        let whole = seen(counted(&listings));
        let mut turned = listings.clone();
        turned.reverse();
        prop_assert_eq!(&seen(counted(&turned)), &whole);
        let (first, second) = listings.split_at(if listings.is_empty() { 0 } else { cut.index(listings.len()) });
        let mut parts = counted(second);
        parts.add(counted(first));
        prop_assert_eq!(&seen(parts), &whole);
    }

    #[test]
    fn no_listing_is_lost_when_there_are_too_many_groups(listings in listings()) {
        let audit = counted(&listings);
        prop_assert!(audit.groups().len() <= 4);
        for verdict in Verdict::ALL {
            let n = listings.iter().filter(|(_, v, _)| Verdict::ALL[*v] >= verdict).count() as u64;
            prop_assert_eq!(audit.at_least(verdict), n);
        }
        // The groups that are kept are the first by name, with all their listings.
        for (name, group) in audit.groups() {
            let own = listings.iter().filter(|(g, ..)| format!("seller {g}") == name).count() as u64;
            prop_assert_eq!(group.counts().total(), own);
        }
    }
}
