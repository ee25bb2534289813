//! The page says what the CSV says.

use std::collections::HashMap;

use plainwatt::units::Rounded;
use scraper::{ElementRef, Html};

use crate::program::{DEMO, all, file, many, page, rows, text, within};

fn number(row: &HashMap<String, String>, column: &str) -> Option<f64> {
    Some(&row[column]).filter(|cell| !cell.is_empty()).map(|cell| cell.parse().unwrap())
}

fn rounded(value: f64) -> String {
    Rounded(value).to_string()
}

/// Everything that the CSV says of a light is in its row of the table and in its details.
fn agree(row: &HashMap<String, String>, tr: &ElementRef<'_>, article: &ElementRef<'_>) {
    let name = &row["listing"];
    let cell = |class: &str| text(&within(tr, class)[0]);
    let sort = |class: &str| within(tr, class)[0].attr("data-sort").unwrap().to_owned();
    let (line, details) = (text(tr), text(article));
    let says = |whole: &str, what: &str| assert!(whole.contains(what), "{name}: no '{what}' in: {whole}");

    assert_eq!(tr.attr("data-verdict"), Some(row["verdict"].as_str()), "{name}");
    assert_eq!(cell("td.verdict"), row["verdict"], "{name}");
    says(&details, &row["verdict"]);
    says(&line, &row["supplier"]);
    says(&line, &row["evidence"]);
    says(&details, &row["basis"]);
    assert_eq!(sort("td.claim"), row["claim_w"], "{name}");
    assert_eq!(sort("td.share"), row["share"], "{name}");
    match number(row, "claim_w") {
        Some(claim) => assert_eq!(cell("td.claim"), format!("{} W", rounded(claim)), "{name}"),
        None => assert_eq!(cell("td.claim"), "", "{name}"),
    }
    match number(row, "share") {
        Some(share) => assert_eq!(cell("td.share"), format!("{:.0} %", share * 100.0), "{name}"),
        None => assert_eq!(cell("td.share"), "", "{name}"),
    }
    if let (Some(led), Some(wall)) = (number(row, "led_w"), number(row, "wall_w")) {
        let (low, high) = (number(row, "wall_low_w").unwrap(), number(row, "wall_high_w").unwrap());
        let interval = format!("{} to {} W", rounded(low), rounded(high));
        says(&details, &format!("LED power {}", rounded(led)));
        says(&details, &format!("wall draw {} W ({interval})", rounded(wall)));
        let (low, high) = (number(row, "common_low_w").unwrap(), number(row, "common_high_w").unwrap());
        says(&details, &format!("commonly {} to {} W", rounded(low), rounded(high)));
        if number(row, "measured_w").is_none() {
            says(&line, &interval);
        }
    } else {
        assert!(!details.contains("LED power") && !details.contains("wall draw"), "{name}: {details}");
    }
    if let Some(needed) = number(row, "needed_ma") {
        says(&details, &format!("needs {needed:.0} mA a die"));
    }
    if let Some(measured) = number(row, "measured_w") {
        says(&line, &format!("{} W", rounded(measured)));
        says(&details, &format!("measured {}", rounded(measured)));
    }
    for code in row["reasons"].split(' ').filter(|code| !code.starts_with("fault:")) {
        says(&details, code);
    }
    if let Some(column) = row["reasons"].strip_prefix("fault:") {
        says(&line, &format!("{column}: found"));
        says(&details, &format!("{column}: found"));
    }
}

#[track_caller]
fn whole(page: &Html, rows: &[HashMap<String, String>]) {
    let lines = all(page, "table#listings tbody tr.listing");
    assert_eq!(lines.len(), rows.len());
    for (row, tr) in rows.iter().zip(&lines) {
        let link = within(tr, "th a")[0];
        assert_eq!(text(&link), row["listing"]);
        let details = all(page, &format!("article{}", link.attr("href").unwrap()));
        agree(row, tr, &details[0]);
    }
}

#[test]
fn every_verdict_and_figure_of_the_demo_is_in_the_page() {
    whole(&page(DEMO, &[]), &rows(DEMO, &[]));
}

#[test]
fn every_verdict_and_figure_of_two_hundred_listings_is_in_the_page() {
    let (_folder, path) = file("many.csv", &many(200));
    let path = path.to_str().unwrap();
    whole(&page(path, &[]), &rows(path, &[]));
}

#[test]
fn the_list_is_sorted_as_the_table_is() {
    for sort in ["share", "price-per-watt"] {
        let more = ["--sort", sort];
        whole(&page(DEMO, &more), &rows(DEMO, &more));
    }
}

#[test]
fn the_summary_adds_up_to_the_rows_of_the_input() {
    let (_folder, path) = file("many.csv", &many(500));
    for path in [DEMO, path.to_str().unwrap()] {
        let (page, rows) = (page(path, &[]), rows(path, &[]));
        let mut sum = 0;
        let lines = all(&page, "#verdicts tbody tr");
        assert_eq!(lines.len(), 7);
        for line in lines {
            let word = line.attr("data-verdict").unwrap();
            let n: usize = text(&within(&line, ".count")[0]).parse().unwrap();
            assert_eq!(n, rows.iter().filter(|row| row["verdict"] == word).count(), "{word}");
            sum += n;
        }
        assert_eq!(sum, rows.len());
        assert_eq!(text(&all(&page, "#verdicts tfoot .count")[0]), rows.len().to_string());
    }
}

#[test]
fn a_supplier_has_all_its_listings() {
    let (page, rows) = (page(DEMO, &[]), rows(DEMO, &[]));
    let lines = all(&page, "#suppliers tbody tr");
    assert_eq!(lines.len(), 9);
    for line in lines {
        let name = text(&within(&line, "th")[0]);
        let own: Vec<_> = rows.iter().filter(|row| row["supplier"] == name).collect();
        assert_eq!(text(&within(&line, ".lights")[0]), own.len().to_string(), "{name}");
        for word in ["overstated", "out-of-reach", "unsettled", "unreadable"] {
            let n = own.iter().filter(|row| row["verdict"] == word).count();
            assert_eq!(text(&line).contains(&format!("{n} {word}")), n > 0, "{name} {word}");
        }
    }
}

#[test]
fn one_light_vetted_has_its_whole_working() {
    let title = "Example 300W LED grow light 100x3W";
    let page =
        Html::parse_document(&crate::program::run(&["vet", title, "--measured", "135W", "--format", "html"]));
    let all_text = text(&all(&page, "main")[0]);
    for said in [
        "overstated",
        "135 ± 3.62 W",
        "Read from the title",
        "class 3W, from",
        "Uncertainty budget",
        "photons",
        "heat",
        "draws 135 W at the wall (measured)",
        "never open the light",
    ] {
        assert!(all_text.contains(said), "no '{said}' in: {all_text}");
    }
    assert_eq!(all(&page, "table#listings tr.listing").len(), 1);
}
