//! The pictures show the figures: positions are read back from the page and compared with the CSV.

use std::collections::HashMap;

use scraper::ElementRef;

use crate::program::{DEMO, all, file, many, numbers, page, rows, text, within};

/// A picture's positions are written to a tenth of its unit.
const FINE: f64 = 0.051;

#[track_caller]
fn close(found: f64, expected: f64, what: &str) {
    assert!((found - expected).abs() <= FINE, "{what}: drawn at {found}, expected {expected}");
}

fn value(row: &HashMap<String, String>, column: &str) -> Option<f64> {
    row[column].parse().ok()
}

/// The 95 % interval as design and GUM give it: 1.96 standard uncertainties either way, never below 0.
fn interval(row: &HashMap<String, String>, middle: &str, u: &str) -> Option<(f64, f64)> {
    let (middle, u) = (value(row, middle)?, value(row, u)?);
    Some(((middle - 1.96 * u).max(0.0), middle + 1.96 * u))
}

/// The x positions of a mark: of a range both ends, of a point one.
fn drawn(picture: &ElementRef<'_>, class: &str) -> Option<Vec<f64>> {
    let mark = within(picture, &format!(".{class}")).into_iter().next()?;
    if let Some(x) = mark.attr("cx") {
        return Some(numbers(x));
    }
    let n = numbers(mark.attr("d").unwrap());
    Some(match class {
        // M x y v m H x ...
        "c" => vec![n[0], n[5]],
        "f" | "k" => vec![n[0], n[3]],
        _ => vec![n[0]],
    })
}

/// What is drawn of a listing: the class of the mark and where its ends should be, in watts.
fn expected(row: &HashMap<String, String>) -> Vec<(&'static str, Vec<f64>)> {
    let mut marks = Vec::new();
    if let (Some(low), Some(high)) = (value(row, "common_low_w"), value(row, "common_high_w")) {
        marks.push(("c", vec![low, high]));
        marks.push(("f", vec![value(row, "wall_low_w").unwrap(), value(row, "wall_high_w").unwrap()]));
    }
    if let Some((low, high)) = interval(row, "ceiling_wall_w", "ceiling_wall_u_w") {
        marks.push(("k", vec![low, high]));
    }
    if let Some(measured) = value(row, "measured_w") {
        marks.push(("r", vec![measured]));
    }
    if let (Some(low), Some(high)) = (value(row, "admitted_low_w"), value(row, "admitted_high_w")) {
        marks.push(("a", vec![f64::midpoint(low, high)]));
    }
    if let Some(claim) = value(row, "claim_w") {
        marks.push(("m", vec![claim]));
    }
    marks
}

#[test]
fn in_the_table_every_mark_is_where_its_share_of_the_claim_puts_it() {
    let (page, rows) = (page(DEMO, &[]), rows(DEMO, &[]));
    let mut seen = 0;
    for (row, tr) in rows.iter().zip(all(&page, "tr.listing")) {
        let Some(picture) = within(&tr, "svg").into_iter().next() else { continue };
        let claim = value(row, "claim_w").unwrap();
        let beyond = expected(row).iter().any(|(_, watts)| watts.iter().any(|w| *w > 2.0 * claim));
        assert_eq!(drawn(&picture, "o").is_some(), beyond, "{}", row["listing"]);
        // What begins beyond the axis is only pointed to.
        for (class, watts) in expected(row).into_iter().filter(|(_, watts)| watts[0] < 2.0 * claim) {
            let at = drawn(&picture, class).unwrap_or_else(|| panic!("{}: no {class}", row["listing"]));
            assert_eq!(at.len(), watts.len());
            for (at, watts) in at.iter().zip(watts) {
                // From nothing to twice the claim is 200; what is beyond ends there.
                close(*at, (100.0 * watts / claim).min(200.0), &format!("{} {class}", row["listing"]));
                seen += 1;
            }
        }
    }
    assert!(seen > 250, "{seen}");
}

#[test]
fn in_the_details_every_mark_is_where_the_axis_says() {
    let (page, rows) = (page(DEMO, &[]), rows(DEMO, &[]));
    let mut pictures = 0;
    for (row, article) in rows.iter().zip(all(&page, "#details article")) {
        let Some(picture) = within(&article, "svg.large").into_iter().next() else { continue };
        pictures += 1;
        // The axis as a reader reads it: from its labels.
        let ticks: Vec<(f64, f64)> = within(&picture, "text.t")
            .iter()
            .filter_map(|label| Some((text(label).parse().ok()?, label.attr("x").unwrap().parse().unwrap())))
            .collect();
        let ((first, start), (last, end)) = (ticks[0], ticks[ticks.len() - 1]);
        let at = |watts: f64| start + (end - start) * (watts - first) / (last - first);
        for (class, watts) in expected(row) {
            let drawn = drawn(&picture, class).unwrap_or_else(|| panic!("{}: no {class}", row["listing"]));
            for (drawn, watts) in drawn.iter().zip(watts) {
                // The ends of the axis are written to a tenth too.
                assert!((drawn - at(watts)).abs() <= 2.0 * FINE, "{} {class}: {drawn}", row["listing"]);
            }
        }
    }
    assert_eq!(pictures, 38);
}

#[test]
fn marks_stand_in_the_order_of_their_watts() {
    let (page, rows) = (page(DEMO, &[]), rows(DEMO, &[]));
    for (row, tr) in rows.iter().zip(all(&page, "tr.listing")) {
        let Some(picture) = within(&tr, "svg").into_iter().next() else { continue };
        let mut marks: Vec<(f64, f64)> = expected(row)
            .into_iter()
            .filter_map(|(class, watts)| Some(watts.into_iter().zip(drawn(&picture, class)?)))
            .flatten()
            .collect();
        assert!(marks.len() >= 5, "{}", row["listing"]);
        marks.sort_by(|a, b| a.0.total_cmp(&b.0));
        assert!(marks.is_sorted_by(|a, b| a.1 <= b.1), "{}: {marks:?}", row["listing"]);
    }
}

#[test]
fn the_histogram_counts_what_the_csv_holds() {
    let (page, rows) = (page(DEMO, &[]), rows(DEMO, &[]));
    let picture = all(&page, "#shares svg")[0];
    // Heights as a reader reads them: from the labels, which count upwards and downwards from 0.
    let labels: Vec<(f64, f64)> = within(&picture, "text.e")
        .iter()
        .filter_map(|label| Some((text(label).parse().ok()?, label.attr("y").unwrap().parse().unwrap())))
        .collect();
    let zero = labels.iter().find(|(n, _)| *n == 0.0).unwrap().1;
    let top = labels.iter().filter(|(_, y)| *y < zero).min_by(|a, b| a.1.total_cmp(&b.1)).unwrap();
    let one = (zero - top.1) / top.0;
    let mut drawn: HashMap<(usize, &str), f64> = HashMap::new();
    for class in ["s", "u", "h"] {
        for bar in within(&picture, &format!(".{class}")) {
            let n = numbers(bar.attr("d").unwrap());
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small position")]
            let step = ((n[0] - 34.0) / 13.0) as usize;
            drawn.insert((step, class), (n[1] - n[2]).abs() / one);
        }
    }
    let mut counted: HashMap<(usize, &str), f64> = HashMap::new();
    for row in rows.iter().filter(|row| !row["share"].is_empty()) {
        let class = match row["verdict"].as_str() {
            "overstated" | "out-of-reach" => "h",
            "unsettled" => "u",
            _ => "s",
        };
        let share: f64 = row["share"].parse().unwrap();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share below 2")]
        let step = (share * 10.0) as usize;
        *counted.entry((step, class)).or_default() += 1.0;
    }
    assert_eq!(drawn.len(), counted.len());
    for (bar, count) in counted {
        assert!((drawn[&bar] - count).abs() < 0.02, "{bar:?}: {} for {count}", drawn[&bar]);
    }
}

#[test]
fn a_suppliers_ticks_are_its_shares() {
    let (page, rows) = (page(DEMO, &[]), rows(DEMO, &[]));
    for line in all(&page, "#suppliers tbody tr") {
        let name = text(&within(&line, "th")[0]);
        let mut shares: Vec<f64> =
            rows.iter().filter(|row| row["supplier"] == name).filter_map(|row| value(row, "share")).collect();
        shares.sort_by(f64::total_cmp);
        let ticks = numbers(within(&line, "svg .d")[0].attr("d").unwrap());
        let ticks: Vec<f64> = ticks.chunks(3).map(|tick| tick[0]).collect();
        assert_eq!(ticks.len(), shares.len(), "{name}");
        for (tick, share) in ticks.iter().zip(shares) {
            close(*tick, (100.0 * share).min(200.0), &name);
        }
    }
}

#[test]
fn of_many_listings_the_box_holds_the_middle_half() {
    let (_folder, path) = file("many.csv", &many(400));
    let path = path.to_str().unwrap();
    let (page, rows) = (page(path, &[]), rows(path, &[]));
    for line in &all(&page, "#suppliers tbody tr") {
        let name = text(&within(line, "th")[0]);
        let shares: Vec<f64> =
            rows.iter().filter(|row| row["supplier"] == name).filter_map(|row| value(row, "share")).collect();
        let picture = within(line, "svg")[0];
        let [line, ends] =
            ["c", "k"].map(|class| numbers(within(&picture, &format!(".{class}"))[0].attr("d").unwrap()));
        let (lower, upper) = (ends[0] - FINE, ends[3] + FINE);
        let inside = shares.iter().filter(|s| (lower..=upper).contains(&(100.0 * **s).min(200.0))).count();
        assert!(2 * inside >= shares.len(), "{name}: {inside} of {}", shares.len());
        let (least, most) =
            (shares.iter().copied().fold(f64::MAX, f64::min), shares.iter().copied().fold(0.0, f64::max));
        close(line[0], 100.0 * least, &name);
        close(line[2], (100.0 * most).min(200.0), &name);
    }
}
