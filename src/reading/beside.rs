//! The items straight beside a figure. Most rules for a figure of watts begin with one of them, so they are looked up once.

use super::fold::Mark;
use super::item::Item;
use super::page::Page;
use super::roles::Role;

/// A figure's place, and what stands there. Where the text ends there is a blank item.
#[derive(Debug, Clone, Copy)]
pub(super) struct Beside<'a> {
    /// The figure's item.
    pub at: usize,
    pub before: &'a Item,
    pub next: &'a Item,
    /// The item after the next one.
    pub second: &'a Item,
}

impl<'a> Beside<'a> {
    pub(super) fn of(page: &Page<'a>, at: usize) -> Self {
        let item = |i: usize| page.items.get(i).unwrap_or(&Item::BLANK);
        Self { at, before: item(at.wrapping_sub(1)), next: item(at + 1), second: item(at + 2) }
    }

    /// Whether the sign follows.
    pub(super) fn followed_by(&self, mark: Mark) -> bool {
        // Not by comparing what may be none: whether there is a sign at all nobody can foretell.
        self.next.sign & mark.bit() != 0
    }

    /// Whether a word in the role follows.
    pub(super) fn next_is(&self, role: Role) -> bool {
        self.next.role == role
    }

    /// Whether another kind of lamp follows.
    pub(super) fn before_a_lamp(&self) -> bool {
        matches!(self.next.role, Role::Lamp(_))
    }
}
