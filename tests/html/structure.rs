//! What the page is made of: headings, roles, names, colours; and that it is the same every time.

use std::collections::{BTreeMap, BTreeSet};

use plainwatt::report::html::STYLE;
use scraper::Html;

use crate::program::{DEMO, all, page, run, text, within};

const PAGES: [&[&str]; 2] = [
    &["grade", DEMO, "--format", "html"],
    &["vet", "--claim", "300", "--class", "3W", "--tally", "60 red + 40 white", "--format", "html"],
];

#[test]
fn a_page_has_one_heading_one_main_part_and_its_language() {
    for arguments in PAGES {
        let page = Html::parse_document(&run(arguments));
        assert_eq!(page.errors, Vec::<String>::new(), "{arguments:?}");
        assert_eq!(all(&page, "html[lang=en]").len(), 1);
        assert_eq!(all(&page, "h1").len(), 1);
        assert_eq!(all(&page, "main").len(), 1);
        assert!(!text(&all(&page, "title")[0]).is_empty());
        for id in ["summary", "listings-section", "method"] {
            assert_eq!(all(&page, &format!("section#{id}")).len(), 1, "{id}");
        }
        let mut ids = BTreeSet::new();
        for element in all(&page, "[id]") {
            assert!(ids.insert(element.attr("id").unwrap().to_owned()), "twice: {:?}", element.attr("id"));
        }
        for link in all(&page, "a[href^='#']") {
            assert!(ids.contains(&link.attr("href").unwrap()[1..]), "{:?}", link.attr("href"));
        }
    }
}

#[test]
fn every_picture_says_in_words_what_it_shows() {
    let page = page(DEMO, &[]);
    let pictures = all(&page, "svg");
    assert!(pictures.len() > 80);
    for picture in pictures {
        if picture.attr("aria-hidden") == Some("true") {
            continue;
        }
        assert_eq!(picture.attr("role"), Some("img"));
        let title = text(&within(&picture, "title")[0]);
        assert!(title.chars().any(|c| c.is_ascii_digit()), "no figure in '{title}'");
    }
}

#[test]
fn tables_keep_their_roles_when_they_are_shown_as_cards() {
    let page = page(DEMO, &[]);
    for table in all(&page, "table.cards") {
        assert_eq!(table.attr("role"), Some("table"));
        for (selector, role) in [
            ("thead", "rowgroup"),
            ("tbody", "rowgroup"),
            ("tr", "row"),
            ("thead th", "columnheader"),
            ("tbody th", "rowheader"),
            ("td", "cell"),
        ] {
            let elements = within(&table, selector);
            assert!(!elements.is_empty());
            assert!(elements.iter().all(|e| e.attr("role") == Some(role)), "{selector}");
        }
        let columns = within(&table, "thead th").len();
        for row in within(&table, "tbody tr") {
            assert_eq!(row.child_elements().count(), columns);
        }
    }
}

#[test]
fn the_list_can_be_filtered_by_every_verdict() {
    let page = page(DEMO, &[]);
    let options: Vec<_> = all(&page, "select#filter-verdict option").iter().map(text).collect();
    assert_eq!(
        options,
        [
            "all",
            "out-of-reach",
            "overstated",
            "unsettled",
            "understated",
            "within-reach",
            "borne-out",
            "unreadable"
        ]
    );
    // Without a script it would do nothing, so that it is not shown.
    assert_eq!(all(&page, "p.tools[hidden] select").len(), 1);
    assert!(all(&page, "table button").is_empty());
}

#[test]
fn the_method_names_settings_table_classes_and_sources() {
    let page = page(DEMO, &["--tolerance", "5", "--confidence", "99"]);
    let method = text(&all(&page, "#method")[0]);
    for said in [
        "Tolerance 5 %, confidence 99 %",
        "built-in 2",
        "less 5 % is at most 1 %",
        "cob-50W",
        "smd-3W",
        "JCGM 106:2012",
        "Kusuma",
        "Okabe and Ito",
        "plainwatt grade listings.csv --tolerance 5 --confidence 99 --format csv -o report.csv",
    ] {
        assert!(method.contains(said), "no '{said}' in: {method}");
    }
    assert!(!method.contains("smd-0.5W") && !method.contains("cob-100W"), "only what was used");
}

#[test]
fn the_same_input_gives_the_same_page() {
    for arguments in PAGES {
        assert_eq!(run(arguments), run(arguments));
    }
}

/// The colours of one scheme, by name.
fn colours(block: &str) -> BTreeMap<String, [f64; 3]> {
    let declared = block.split(';').filter_map(|part| part.trim().strip_prefix("--")?.split_once(':'));
    declared
        .map(|(name, value)| {
            let hex = value.trim().strip_prefix('#').unwrap();
            assert_eq!(hex.len(), 6, "{value}");
            let channel = |at: usize| f64::from(u8::from_str_radix(&hex[at..at + 2], 16).unwrap()) / 255.0;
            (name.trim().to_owned(), [channel(0), channel(2), channel(4)])
        })
        .collect()
}

/// WCAG 2.2, relative luminance and contrast ratio.
fn contrast(one: [f64; 3], other: [f64; 3]) -> f64 {
    let luminance = |colour: [f64; 3]| {
        let [r, g, b] =
            colour.map(|c| if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) });
        0.2126 * r + 0.7152 * g + 0.0722 * b
    };
    let (a, b) = (luminance(one), luminance(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// WCAG 2.2, success criteria 1.4.3 (text, 4.5 to 1) and 1.4.11 (marks, 3 to 1).
#[test]
fn text_and_marks_stand_out_from_the_paper_in_both_schemes_and_in_print() {
    let blocks = STYLE.split(":root {").skip(1).map(|rest| rest.split('}').next().unwrap());
    // Where the system sets the colours, it answers for their contrast.
    let blocks: Vec<_> = blocks.filter(|block| !block.contains("Canvas")).collect();
    let [light, dark, print] = blocks[..] else { panic!("light, dark and print, not {blocks:?}") };
    // What is printed has the light scheme's colours but for those that it sets itself.
    let printed = [colours(light), colours(print)].into_iter().flatten().collect();
    for colours in [colours(light), colours(dark), printed] {
        let paper = colours["paper"];
        for (name, least) in
            [("ink", 4.5), ("soft", 4.5), ("link", 4.5), ("draw", 3.0), ("high", 3.0), ("open", 3.0)]
        {
            let ratio = contrast(colours[name], paper);
            assert!(ratio >= least, "{name}: {ratio:.2}");
        }
    }
}

/// The contrast function itself: black on white is 21 to 1, and WCAG's own threshold grey #767676 is 4.54.
#[test]
fn contrast_is_that_of_the_standard() {
    assert!((contrast([0.0; 3], [1.0; 3]) - 21.0).abs() < 1e-9);
    assert!((contrast([f64::from(0x76) / 255.0; 3], [1.0; 3]) - 4.54).abs() < 0.01);
}
