//! Which listings are shown: all of a short list, the two ends of a long one.

use std::cmp::Ordering;
use std::collections::BTreeMap;

use crate::comparison::Verdict;

/// A list up to that long is shown whole; with all that is said of a listing 200 stay under 300 kB.
pub const MOST: usize = 200;

/// Of a longer list so many of each end are shown.
pub const EACH_END: usize = 80;

/// Of a longer list so many rows that could not be read are shown.
pub const MOST_UNREADABLE: usize = 20;

/// What a listing is put in order by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Order {
    /// As given; where not all are shown, by verdict and then by share, the worst first.
    Given,
    /// By a number, the lowest first; what has none comes after.
    By(Option<f64>),
}

/// Where a listing stands: the lower comes first.
#[derive(Debug, Clone, Copy)]
struct Standing {
    class: usize,
    key: f64,
    place: u64,
}

impl PartialEq for Standing {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}
impl Eq for Standing {}
impl PartialOrd for Standing {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Standing {
    fn cmp(&self, other: &Self) -> Ordering {
        (self.class.cmp(&other.class)).then(self.key.total_cmp(&other.key)).then(self.place.cmp(&other.place))
    }
}

/// The listings that may be shown. At most some 600 are held, however many there are.
#[derive(Debug)]
pub(super) struct Kept<T> {
    low: BTreeMap<Standing, T>,
    high: BTreeMap<Standing, T>,
    /// Without a number to be ordered by.
    unkeyed: Vec<(u64, T)>,
    unreadable: Vec<(u64, T)>,
    sorted: bool,
}

impl<T> Default for Kept<T> {
    fn default() -> Self {
        Self {
            low: BTreeMap::new(),
            high: BTreeMap::new(),
            unkeyed: Vec::new(),
            unreadable: Vec::new(),
            sorted: false,
        }
    }
}

/// What is shown, in order.
#[derive(Debug)]
pub(super) struct Shown<T> {
    /// The listings, each with its place in the input, from 1.
    pub(super) rows: Vec<(u64, T)>,
    /// Whether some are left out.
    pub(super) cut: bool,
}

impl<T> Kept<T> {
    /// Takes in a listing that was graded; `make` is called only if it may be shown.
    pub(super) fn take(
        &mut self,
        place: u64,
        order: Order,
        verdict: Verdict,
        share: Option<f64>,
        make: impl FnOnce() -> T,
    ) {
        let standing = match order {
            Order::Given => {
                let class = Verdict::ALL.len() - 1 - verdict as usize;
                Standing { class, key: share.unwrap_or(f64::INFINITY), place }
            }
            Order::By(Some(key)) => Standing { class: 0, key, place },
            Order::By(None) => {
                self.sorted = true;
                if self.unkeyed.len() < MOST {
                    self.unkeyed.push((place, make()));
                }
                return;
            }
        };
        self.sorted |= order != Order::Given;
        if self.may_show(&standing) {
            self.insert(standing, make());
        }
    }

    /// Takes in a row that could not be read.
    pub(super) fn take_unreadable(&mut self, place: u64, make: impl FnOnce() -> T) {
        if self.unreadable.len() < MOST {
            self.unreadable.push((place, make()));
        }
    }

    fn may_show(&self, standing: &Standing) -> bool {
        self.low.len() + self.high.len() < MOST
            || self.low.last_key_value().is_some_and(|(last, _)| standing < last)
            || self.high.first_key_value().is_some_and(|(first, _)| standing > first)
    }

    /// Each end holds half of the most; what is pushed out of the low one may still belong to the high one.
    fn insert(&mut self, standing: Standing, row: T) {
        let full = self.low.len() >= MOST / 2;
        let (standing, row) = if full && self.low.last_key_value().is_some_and(|(last, _)| standing > *last) {
            (standing, row)
        } else {
            self.low.insert(standing, row);
            if !full {
                return;
            }
            let Some(pushed_out) = self.low.pop_last() else { return };
            pushed_out
        };
        self.high.insert(standing, row);
        if self.high.len() > MOST / 2 {
            self.high.pop_first();
        }
    }

    /// Takes in what another part of the run kept, whose places come after `before` of this one.
    pub(super) fn add(&mut self, other: Self, before: u64) {
        self.sorted |= other.sorted;
        for (standing, row) in other.low.into_iter().chain(other.high) {
            let standing = Standing { place: before + standing.place, ..standing };
            if self.may_show(&standing) {
                self.insert(standing, row);
            }
        }
        let shifted = |rows: Vec<(u64, T)>| rows.into_iter().map(move |(place, row)| (before + place, row));
        self.unkeyed.extend(shifted(other.unkeyed));
        self.unkeyed.truncate(MOST);
        self.unreadable.extend(shifted(other.unreadable));
        self.unreadable.truncate(MOST);
    }

    /// What is shown of `total` rows, in order.
    pub(super) fn shown(mut self, total: u64) -> Shown<T> {
        let cut = total > MOST as u64;
        if cut {
            while self.low.len() > EACH_END && !self.high.is_empty() {
                self.low.pop_last();
            }
            while self.high.len() > EACH_END {
                self.high.pop_first();
            }
            self.unkeyed.truncate((2 * EACH_END).saturating_sub(self.low.len() + self.high.len()));
            self.unreadable.truncate(MOST_UNREADABLE);
        }
        let ordered = self.low.into_iter().chain(self.high).map(|(standing, row)| (standing.place, row));
        let mut rows: Vec<_> = ordered.chain(self.unkeyed).chain(self.unreadable).collect();
        if !cut && !self.sorted {
            rows.sort_by_key(|(place, _)| *place);
        }
        Shown { rows, cut }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kept(total: u64, order: impl Fn(u64) -> Order) -> Vec<u64> {
        let mut kept = Kept::default();
        for place in 1..=total {
            // Shares jump about, so that the ends come at any time.
            let share = f64::from(u32::try_from(place * 7919 % 1009).unwrap());
            kept.take(place, order(place), Verdict::Overstated, Some(share), || share);
        }
        let shown = kept.shown(total);
        assert_eq!(shown.cut, total > 200);
        shown.rows.iter().map(|(place, _)| *place).collect()
    }

    #[test]
    fn a_short_list_is_shown_whole_and_as_given() {
        assert_eq!(kept(200, |_| Order::Given), (1..=200).collect::<Vec<_>>());
    }

    #[test]
    fn of_a_long_list_both_ends_are_shown() {
        for total in [201, 1000] {
            let mut all: Vec<u64> = (1..=total).collect();
            all.sort_by_key(|place| place * 7919 % 1009);
            let ends = [&all[..EACH_END], &all[all.len() - EACH_END..]].concat();
            assert_eq!(kept(total, |_| Order::Given), ends, "{total}");
        }
    }

    #[test]
    fn what_has_no_key_gives_way_to_what_has_one() {
        let by =
            |place: u64| Order::By(place.is_multiple_of(2).then(|| f64::from(u32::try_from(place).unwrap())));
        let shown = kept(1000, by);
        assert_eq!(shown.len(), 2 * EACH_END);
        assert!(shown.iter().all(|place| place % 2 == 0));
        let few = kept(100, by);
        assert_eq!(few[..50], (1..=50).map(|n| 2 * n).collect::<Vec<_>>());
        assert_eq!(few.len(), 100);
    }

    #[test]
    fn shared_out_among_parts_the_same_are_shown() {
        let whole = kept(1000, |_| Order::Given);
        let (mut first, mut second) = (Kept::default(), Kept::default());
        for place in 1..=1000_u64 {
            let share = f64::from(u32::try_from(place * 7919 % 1009).unwrap());
            let (part, before) = if place <= 300 { (&mut first, 0) } else { (&mut second, 300) };
            part.take(place - before, Order::Given, Verdict::Overstated, Some(share), || share);
        }
        first.add(second, 300);
        assert_eq!(first.shown(1000).rows.iter().map(|(place, _)| *place).collect::<Vec<_>>(), whole);
    }
}
