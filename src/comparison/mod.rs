//! The claim against the draw: the decision, its basis, the reasons, and what could honestly be printed instead.
//!
//! [`assess`] is the one way in; every command and every format goes through it or its two halves ([`assess_watts`] is what
//! a lean table needs, [`assess_figures`] the rest). The decision rules are those of JCGM 106:2012: a claim is overstated only when the probability that the
//! draw reaches it, less the tolerance, is below one minus the confidence.

mod amperes;
mod assess;
mod basis;
mod counted;
mod counts;
mod figure_reason;
mod figures;
mod label;
pub mod meaning;
mod measured;
mod own_words;
mod reason;
mod reason_text;
mod sentence;
mod settings;
mod verdict;

pub use assess::{Assessment, Backwards, Finding, assess, assess_figures, assess_watts};
pub use counted::Counted;
pub use counts::Counts;
pub use figure_reason::{Current, FigureReason};
pub use figures::{Claimed, Figure};
pub use label::honest_label;
pub use reason::Reason;
pub use sentence::sentence;
pub use settings::{MeterAccuracy, Settings};
pub use verdict::{Basis, Evidence, Verdict};
