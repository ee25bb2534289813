//! How draw over claim is distributed over a catalogue, in constant memory.

use crate::comparison::Verdict;

/// Shares are counted in steps of a tenth up to here, and what is above together.
pub const STEPS: usize = 20;

/// What a verdict says of the claim: it is too high, nothing is decided, or it is not too high.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// `overstated` and `out-of-reach`.
    TooHigh,
    /// `unsettled`.
    Undecided,
    /// The others.
    Stands,
}

impl Side {
    /// The side of a verdict.
    #[must_use]
    pub const fn of(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Overstated | Verdict::OutOfReach => Self::TooHigh,
            Verdict::Unsettled => Self::Undecided,
            Verdict::BorneOut | Verdict::WithinReach | Verdict::Understated => Self::Stands,
        }
    }
}

/// Listings by share and by what their verdict says.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Histogram {
    steps: [[u64; 3]; STEPS + 1],
    without: u64,
}

impl Histogram {
    /// Counts a listing; without a share it is counted apart.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a cast saturates, and is cut"
    )]
    pub fn count(&mut self, verdict: Verdict, share: Option<f64>) {
        match share.filter(|share| !share.is_nan()) {
            // A tenth has no exact binary form: 0.7 / 0.1 is under 7, and 0.7 * 10 is 7.
            Some(share) => self.steps[((share * 10.0) as usize).min(STEPS)][Side::of(verdict) as usize] += 1,
            None => self.without += 1,
        }
    }

    /// Adds the counts of another part of the catalogue.
    pub fn add(&mut self, other: &Self) {
        for (own, others) in self.steps.iter_mut().flatten().zip(other.steps.iter().flatten()) {
            *own += others;
        }
        self.without += other.without;
    }

    /// How many listings have a share in that step, from 0, and a verdict of that side. The last step, [`STEPS`], has no
    /// upper end.
    #[must_use]
    pub fn of(&self, step: usize, side: Side) -> u64 {
        self.steps.get(step).map_or(0, |sides| sides[side as usize])
    }

    /// How many listings of that side have a share.
    #[must_use]
    pub fn all(&self, side: Side) -> u64 {
        self.steps.iter().map(|sides| sides[side as usize]).sum()
    }

    /// How many graded listings have no share.
    #[must_use]
    pub fn without(&self) -> u64 {
        self.without
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_on_the_edge_of_a_step_belongs_to_the_step_that_it_begins() {
        for tenth in 0..STEPS {
            let share: f64 = format!("{}.{}", tenth / 10, tenth % 10).parse().unwrap();
            let mut shares = Histogram::default();
            shares.count(Verdict::Unsettled, Some(share));
            assert_eq!(shares.of(tenth, Side::Undecided), 1, "{share}");
        }
    }

    #[test]
    fn what_has_no_place_on_the_axis_is_counted_all_the_same() {
        let mut shares = Histogram::default();
        shares.count(Verdict::Understated, Some(7.5));
        shares.count(Verdict::Unsettled, None);
        shares.count(Verdict::Overstated, Some(f64::NAN));
        assert_eq!((shares.of(STEPS, Side::Stands), shares.without()), (1, 2));
    }
}
