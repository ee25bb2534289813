//! The picture of a supplier: its listings' draw over claim, on the axis of the listings' own pictures.

use std::fmt::Write as _;

use maud::{Markup, PreEscaped, html};

use super::axis::n;
use super::percent;
use crate::audit::Group;

/// Up to so many listings each has a tick; more would run into one another.
pub(super) const MOST_TICKS: usize = 24;

/// A share's place: from nothing to twice the claim is 200 wide.
fn at(share: f64) -> String {
    n((share * 100.0).min(200.0))
}

/// A tick each, or a box over the middle half with a tick at the median and a line from the least to the most. Nothing
/// where no listing has a share.
pub(super) fn spread(group: &Group) -> Markup {
    let Some([least, lower, median, upper, most]) = group.shares().quartiles() else {
        return html! { "no listing has a share" };
    };
    let mut shapes = String::from("<path class=m d=\"M100 0v20\"/>");
    let each = group.shares().each().filter(|each| each.len() <= MOST_TICKS);
    let words = match each {
        Some([share]) => format!("one listing at {}", percent(*share)),
        Some(each) => format!(
            "{} listings from {} to {}, median {}",
            each.len(),
            percent(least),
            percent(most),
            percent(median)
        ),
        None => format!(
            "from {} to {}, the middle half from {} to {}, median {}",
            percent(least),
            percent(most),
            percent(lower),
            percent(upper),
            percent(median)
        ),
    };
    if let Some(each) = each {
        let mut each = each.to_vec();
        each.sort_by(f64::total_cmp);
        shapes.push_str("<path class=d d=\"");
        for share in each {
            let _ = write!(shapes, "M{} 5v10", at(share));
        }
        shapes.push_str("\"/>");
    } else {
        let _ = write!(
            shapes,
            "<path class=c d=\"M{} 10H{}\"/><path class=k d=\"M{} 5v10H{}v-10z\"/><path class=q d=\"M{} 3v14\"/>",
            at(least),
            at(most),
            at(lower),
            at(upper),
            at(median)
        );
    }
    if most > 2.0 {
        shapes.push_str("<path class=o d=\"M201 6l6 4-6 4z\"/>");
    }
    html! {
        svg role="img" viewBox="-2 0 210 20" { title { (words) } (PreEscaped(shapes)) }
    }
}
