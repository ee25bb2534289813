//! How large a page gets, and what a large run leaves out.

use std::fmt::Write as _;

use plainwatt::report::html::{EACH_END, MOST, MOST_UNREADABLE};
use scraper::Html;

use crate::program::{all, file, many, rows, run, text};

const MOST_BYTES: usize = 300_000;

#[track_caller]
fn page_of(input: &str, more: &[&str]) -> (Html, Vec<std::collections::HashMap<String, String>>) {
    let (_folder, path) = file("many.csv", input);
    let path = path.to_str().unwrap();
    let html = run(&[&["grade", path, "--format", "html"], more].concat());
    assert!(html.len() < MOST_BYTES, "{} bytes", html.len());
    (Html::parse_document(&html), rows(path, &[]))
}

#[test]
fn two_hundred_listings_are_shown_whole_in_under_300_kb() {
    let (page, _) = page_of(&many(MOST), &[]);
    assert_eq!(all(&page, "tr.listing").len(), MOST);
    assert_eq!(all(&page, "#details article").len(), MOST);
    assert!(!text(&all(&page, "#details")[0]).contains("have no details here"));
}

#[test]
fn of_a_longer_list_the_worst_and_the_best_are_shown_and_all_are_counted() {
    let (page, rows) = page_of(&many(1000), &[]);
    let shown = all(&page, "tr.listing");
    let unreadable = rows.iter().filter(|row| row["verdict"] == "unreadable").count().min(MOST_UNREADABLE);
    assert_eq!(shown.len(), 2 * EACH_END + unreadable);
    let verdicts: Vec<_> = shown.iter().map(|row| row.attr("data-verdict").unwrap()).collect();
    assert_eq!(verdicts[0], "out-of-reach");
    assert_eq!(verdicts[2 * EACH_END - 1], "borne-out");
    assert!(verdicts[2 * EACH_END..].iter().all(|verdict| *verdict == "unreadable"));
    // Nothing that is left out is worse than what is shown at the bad end.
    let shares = |verdict: &str| {
        let mut shares: Vec<f64> = rows
            .iter()
            .filter(|row| row["verdict"] == verdict)
            .map(|row| row["share"].parse().unwrap())
            .collect();
        shares.sort_by(f64::total_cmp);
        shares
    };
    let expected = [shares("out-of-reach"), shares("overstated")].concat();
    for (row, share) in shown.iter().zip(&expected).take(EACH_END) {
        let cell = row.select(&scraper::Selector::parse("td.share").unwrap()).next().unwrap();
        assert_eq!(cell.attr("data-sort").unwrap().parse::<f64>().unwrap().to_bits(), share.to_bits());
    }
    let said = text(&all(&page, "#listings-section")[0]);
    assert!(said.contains(&format!("Of 1000 rows {} are shown", shown.len())), "{said}");
    assert!(said.contains("plainwatt grade many.csv --format csv -o report.csv"), "{said}");
    assert_eq!(text(&all(&page, "#verdicts tfoot .count")[0]), "1000");
}

#[test]
fn sorted_by_price_the_cheapest_and_the_dearest_are_shown() {
    let (page, rows) = page_of(&many(1000), &["--sort", "price-per-watt"]);
    let mut prices: Vec<f64> = rows
        .iter()
        .filter(|row| !row["price_per_w"].is_empty())
        .map(|row| row["price_per_w"].parse().unwrap())
        .collect();
    prices.sort_by(f64::total_cmp);
    let shown: Vec<String> = all(&page, "tr.listing td small").iter().map(text).collect();
    assert_eq!(shown.len(), 2 * EACH_END);
    for (said, price) in shown.iter().zip(prices[..EACH_END].iter().chain(&prices[prices.len() - EACH_END..]))
    {
        assert_eq!(*said, format!("price a W {price:.2}"));
    }
}

#[test]
fn long_texts_and_many_suppliers_do_not_make_it_larger() {
    let mut input = "listing,supplier,title,claim_w,class,tally\n".to_owned();
    let long = "\u{1f331}".repeat(400);
    for row in 0..600 {
        let _ = writeln!(
            input,
            "{row} {long},supplier {row} {long},{long} {row},300,3W,60 red + 20 blue + 20 white"
        );
    }
    let (page, _) = page_of(&input, &[]);
    let said = text(&all(&page, "#details")[0]);
    assert!(said.contains("of the listings shown have no details here"), "it says what it leaves out");
    assert_eq!(all(&page, "tr.listing").len(), 2 * EACH_END);
    assert!(text(&all(&page, "#suppliers")[0]).contains("570 more suppliers"));
}

/// A quote takes six bytes of markup, so that a short text may be long.
#[test]
fn texts_of_quotes_do_not_make_it_larger_either() {
    let quotes = "\"\"".repeat(120);
    for tally in ["60 red + 40 white", "60 of no colour"] {
        let mut input = "listing,supplier,title,claim_w,class,tally,measured_w\n".to_owned();
        for row in 0..MOST {
            let _ = writeln!(
                input,
                "\"{row}{quotes}\",\"{row}{quotes}\",\"{quotes}\",123456.789,3W,\"{tally}{}\",98.765",
                if tally.contains("of") { &quotes } else { "" }
            );
        }
        let (page, rows) = page_of(&input, &[]);
        assert_eq!(rows.iter().all(|row| row["verdict"] == "unreadable"), tally.contains("of"));
        assert_eq!(all(&page, "tr.listing").len(), MOST);
    }
}

#[test]
fn an_empty_catalogue_has_a_page_too() {
    let (page, _) = page_of("listing,claim_w,class,tally\n", &[]);
    assert_eq!(text(&all(&page, "#verdicts tfoot .count")[0]), "0");
    assert!(all(&page, "tr.listing").is_empty());
}
