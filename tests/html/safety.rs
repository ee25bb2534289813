//! A listing's text stays text, and the page loads and runs nothing but its own.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use plainwatt::report::html::{SCRIPT, SCRIPT_HASH, STYLE, STYLE_HASH};
use scraper::Html;
use sha2::{Digest as _, Sha256};

use crate::program::{DEMO, all, file, page, program, run, text};

fn hash(text: &str) -> String {
    STANDARD.encode(Sha256::digest(text.as_bytes()))
}

#[test]
fn the_policy_allows_the_pages_own_style_and_script_and_nothing_else() {
    assert_eq!(STYLE_HASH, hash(STYLE), "put this hash of style.css in page.rs");
    assert_eq!(SCRIPT_HASH, hash(SCRIPT), "put this hash of script.js in page.rs");
    let page = page(DEMO, &[]);
    let policy = all(&page, "meta[http-equiv=Content-Security-Policy]")[0].attr("content").unwrap();
    assert_eq!(
        policy,
        format!(
            "default-src 'none'; style-src 'sha256-{STYLE_HASH}'; script-src 'sha256-{SCRIPT_HASH}'; base-uri 'none'; \
             form-action 'none'"
        )
    );
    // As a browser hashes them: the text between the tags.
    assert_eq!(all(&page, "style")[0].text().collect::<String>(), STYLE);
    assert_eq!(all(&page, "script")[0].text().collect::<String>(), SCRIPT);
}

fn loads_nothing(page: &Html) {
    assert_eq!((all(page, "style").len(), all(page, "script").len()), (1, 1));
    for loading in
        ["link", "img", "iframe", "object", "embed", "video", "audio", "image", "use", "form", "base"]
    {
        assert!(all(page, loading).is_empty(), "{loading}");
    }
    for element in all(page, "*") {
        for (name, value) in element.value().attrs() {
            assert!(!name.starts_with("on") && name != "style" && name != "src", "{name}={value}");
            let local = value.starts_with('#') || value.starts_with("./");
            assert!(!name.ends_with("href") || local, "{name}={value}");
        }
    }
}

#[test]
fn nothing_is_loaded() {
    let html = run(&["grade", DEMO, "--format", "html"]);
    loads_nothing(&Html::parse_document(&html));
    for word in ["http:", "https:", "@import", "url(", "//cdn"] {
        assert!(!html.contains(word), "{word}");
    }
}

const MARKUP: &str = "<script>alert(1)</script><img src=x onerror=alert(2)>\"'&lt;";

#[test]
fn markup_in_a_listing_is_text() {
    let quoted = MARKUP.replace('"', "\"\"");
    let input = format!(
        "listing,supplier,title,claim_w,class,tally\n\
         \"{quoted}\",\"</title></style>{quoted}\",\"{quoted} 300W LED 100x3W\",300,3W,60 red + 40 white\n\
         \"{quoted}\",\"{quoted}\",,\"{quoted}\",3W,60 red\n\
         ,,\"{quoted} 300W LED\",300,,\n"
    );
    let (_folder, path) = file("<b>&.csv", &input);
    let page = page(path.to_str().unwrap(), &[]);
    loads_nothing(&page);
    let shown = text(&all(&page, "main")[0]);
    assert!(shown.matches(MARKUP).count() >= 6, "{shown}");
    assert!(text(&all(&page, "title")[0]).ends_with("<b>&.csv"));
    assert_eq!(all(&page, "tr.listing").len(), 3);

    let vetted =
        Html::parse_document(&run(&["vet", &format!("{MARKUP} 300W LED 100x3W"), "--format", "html"]));
    loads_nothing(&vetted);
    assert!(text(&all(&vetted, "main")[0]).contains(MARKUP));
}

#[test]
fn what_acts_unseen_is_made_visible() {
    let input = "listing,supplier,claim_w,class,tally\nA\u{202e}B\u{200b},C\u{1b}[31m,300,3W,60 red\n";
    let (_folder, path) = file("unseen.csv", input);
    let html = run(&["grade", path.to_str().unwrap(), "--format", "html"]);
    assert!(!html.contains(['\u{202e}', '\u{200b}', '\u{1b}']));
    assert!(html.contains("A\\u{202e}B\\u{200b}") && html.contains("C\\u{1b}[31m"));
}

#[test]
fn only_rows_of_our_own_are_linked_to() {
    let (folder, path) = file("lights.csv", "listing,claim_w,class,tally\nA,300,3W,60 red\n");
    let report = folder.path().join("my report.html");
    let rows = folder.path().join("my report.csv");
    let link = |content: Option<&str>| {
        if let Some(content) = content {
            std::fs::write(&rows, content).unwrap();
        }
        run(&["grade", path.to_str().unwrap(), "--format", "html", "-o", report.to_str().unwrap()]);
        let page = Html::parse_document(&std::fs::read_to_string(&report).unwrap());
        loads_nothing(&page);
        assert!(text(&all(&page, "#method")[0]).contains("--format csv -o 'my report.csv'"));
        all(&page, "#method a").first().and_then(|a| a.attr("href").map(str::to_owned))
    };
    assert_eq!(link(None), None);
    assert_eq!(link(Some("a,b\n1,2\n")), None);
    let graded = run(&["grade", path.to_str().unwrap(), "--format", "csv"]);
    assert_eq!(link(Some(&graded)).as_deref(), Some("./my%20report.csv"));
    // A page beside the file that was graded does not link to that file.
    let page = folder.path().join("lights.html");
    run(&["grade", path.to_str().unwrap(), "--format", "html", "-o", page.to_str().unwrap()]);
    assert!(!std::fs::read_to_string(&page).unwrap().contains("href=\"./"));
}

/// `script` gives a program a terminal of its own.
#[test]
#[cfg(unix)]
fn a_page_is_not_written_to_a_terminal() {
    let program_path = program().get_program().to_string_lossy().into_owned();
    for arguments in [format!("grade {DEMO}"), "vet --claim 300".to_owned()] {
        let command = format!("{program_path} {arguments} --format html");
        let output = std::process::Command::new("script")
            .args(["-qec", &command, "/dev/null"])
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .stdin(std::process::Stdio::null())
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&output.stdout).into_owned();
        assert_eq!(output.status.code(), Some(2), "{said}");
        assert!(said.contains("-o report.html") && !said.contains("<html"), "{said}");
    }
}
