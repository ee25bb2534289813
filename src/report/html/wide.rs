//! A plain table that may be wider than a narrow screen.

use maud::{Markup, html};

use super::safe;

/// The table; it scrolls for itself, also from the keyboard, so that the page need not.
pub(super) fn wide(label: &str, heads: &[&str], cells: &[Vec<String>]) -> Markup {
    html! {
        div.wide tabindex="0" role="region" aria-label=(label) {
            table {
                thead { tr { @for head in heads { th scope="col" { (head) } } } }
                tbody {
                    @for row in cells {
                        tr {
                            @for (place, cell) in row.iter().enumerate() {
                                @if place == 0 { th scope="row" { (safe(cell)) } } @else { td { (safe(cell)) } }
                            }
                        }
                    }
                }
            }
        }
    }
}
