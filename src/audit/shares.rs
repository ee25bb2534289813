//! The median of draw over claim, in constant memory.
//!
//! Up to [`EXACT`] values are kept, and their median is exact. From there on they are counted in steps of equal width, and
//! the median is off by [`HALF_STEP`] at most. Which of the two holds depends on how many values there are, not on their order.

/// The most values that are kept one by one.
pub const EXACT: usize = 400;

/// How far the median of more values may be off, as a share.
pub const HALF_STEP: f64 = 0.0025;

/// Shares from here up are counted together: of a median among them only this lower bound is known.
pub const TOP: f64 = 2.0;

/// Steps from 0 to [`TOP`], and one for all above.
const STEPS: usize = 401;

/// A median.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Median {
    /// Its value.
    pub value: f64,
    /// How far it may be off either way; 0 where it is exact.
    pub error: f64,
    /// It is the value or more, since shares from [`TOP`] up were counted together.
    pub or_more: bool,
}

/// Values of draw over claim.
#[derive(Debug, Clone, PartialEq)]
pub enum Shares {
    /// One by one.
    Each(Vec<f64>),
    /// How many in each step.
    Steps(Box<[u64; STEPS]>),
}

impl Default for Shares {
    fn default() -> Self {
        Self::Each(Vec::new())
    }
}

impl Shares {
    /// Takes in a share, 0 or above. What is not a number is left out.
    pub fn push(&mut self, share: f64) {
        if share.is_nan() {
            return;
        }
        match self {
            Self::Each(values) => {
                values.push(share);
                if values.len() > EXACT {
                    let mut steps = Box::new([0; STEPS]);
                    for value in values {
                        steps[step(*value)] += 1;
                    }
                    *self = Self::Steps(steps);
                }
            }
            Self::Steps(steps) => steps[step(share)] += 1,
        }
    }

    /// Takes in the values of another.
    pub fn add(&mut self, other: Self) {
        match (&mut *self, other) {
            (_, Self::Each(values)) => values.into_iter().for_each(|value| self.push(value)),
            (Self::Steps(own), Self::Steps(others)) => {
                for (own, others) in own.iter_mut().zip(others.iter()) {
                    *own += others;
                }
            }
            (Self::Each(own), Self::Steps(others)) => {
                let own = std::mem::take(own);
                *self = Self::Steps(others);
                self.add(Self::Each(own));
            }
        }
    }

    /// The median: with an even number of values the mean of the two in the middle. Absent without values.
    #[must_use]
    pub fn median(&self) -> Option<Median> {
        match self {
            Self::Each(values) => {
                let mut values = values.clone();
                values.sort_by(f64::total_cmp);
                let upper = *values.get(values.len() / 2)?;
                let lower = values[(values.len() - 1) / 2];
                Some(Median { value: f64::midpoint(lower, upper), error: 0.0, or_more: false })
            }
            Self::Steps(steps) => {
                let n: u64 = steps.iter().sum();
                let (lower, upper) = (holding(steps, (n - 1) / 2), holding(steps, n / 2));
                if upper + 1 == STEPS {
                    let value = f64::midpoint(edge(lower), edge(upper));
                    return Some(Median { value, error: 0.0, or_more: true });
                }
                let value = f64::midpoint(edge(lower), edge(upper)) + HALF_STEP;
                Some(Median { value, error: HALF_STEP, or_more: false })
            }
        }
    }

    /// The values one by one, in no particular order, as long as they are kept so.
    #[must_use]
    pub fn each(&self) -> Option<&[f64]> {
        match self {
            Self::Each(values) => Some(values),
            Self::Steps(_) => None,
        }
    }

    /// The least, the quartiles with the median between them, and the most. Between two values a quartile is interpolated
    /// linearly; of values counted in steps each is off by [`HALF_STEP`] at most, and no more than [`TOP`]. Absent without
    /// values.
    #[must_use]
    pub fn quartiles(&self) -> Option<[f64; 5]> {
        match self {
            Self::Each(values) => {
                let mut values = values.clone();
                values.sort_by(f64::total_cmp);
                let last = values.len().checked_sub(1)?;
                Some([0, 1, 2, 3, 4].map(|quarter| {
                    let (place, over) = (quarter * last / 4, quarter * last % 4);
                    let next = values[(place + 1).min(last)];
                    values[place] + (next - values[place]) * [0.0, 0.25, 0.5, 0.75][over]
                }))
            }
            Self::Steps(steps) => {
                let last = steps.iter().sum::<u64>().checked_sub(1)?;
                Some([0, 1, 2, 3, 4].map(|quarter| {
                    let step = holding(steps, quarter * last / 4);
                    if step + 1 == STEPS { TOP } else { edge(step) + HALF_STEP }
                }))
            }
        }
    }
}

/// The step that a share falls into.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a cast saturates, and is cut")]
fn step(share: f64) -> usize {
    ((share / (2.0 * HALF_STEP)) as usize).min(STEPS - 1)
}

/// Where a step begins.
#[expect(clippy::cast_precision_loss, reason = "at most 400")]
fn edge(step: usize) -> f64 {
    step as f64 * 2.0 * HALF_STEP
}

/// The step that holds the value of that rank, from 0.
fn holding(steps: &[u64; STEPS], rank: u64) -> usize {
    let mut before = 0;
    let place = steps.iter().position(|n| {
        before += n;
        before > rank
    });
    place.unwrap_or(STEPS - 1)
}
