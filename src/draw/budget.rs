//! Where the uncertainty of a wall draw comes from.

use std::cmp::Ordering;

use super::estimate::{Draw, wall_factor};
use super::model::Model;
use super::sums::{Sums, aux_u, efficiency_u};
use crate::uncertain::Contribution;

impl Draw {
    /// Each contribution to the standard uncertainty of the wall draw at full draw, in watts at the wall, largest first.
    /// Their squares add up to its square.
    #[must_use]
    pub fn budget(&self, model: &Model) -> Vec<Contribution> {
        let mut sums = Sums::<1>::new();
        for part in &self.parts {
            let batch = (model.table().class(part.class).die, part.colour);
            sums.add(batch, part.count, [&self.package_at_full(model, part)]);
        }
        let led = self.full.led.value;
        let factor = wall_factor(self.full.efficiency);

        let mut lines: Vec<Contribution> = sums
            .by_batch(0)
            .map(|((die, colour), u)| Contribution {
                source: format!("forward voltage of {} ({} die)", colour.name(), die.name()),
                u_w: u * factor,
            })
            .collect();
        let mut add = |source: &str, u_w: f64| {
            lines.push(Contribution { source: source.to_owned(), u_w });
        };
        add("drive current, \u{b1}5 %", sums.regulation_u(0) * factor);
        add("junction temperature, \u{b1}20 K", sums.temperature_u(0) * factor);
        if self.parts.iter().any(|p| p.count.half_width.is_some()) {
            add("diode counts", sums.counts_u(0) * factor);
        }
        add("driver efficiency", efficiency_u(led, self.full.efficiency));
        add("fans and controls", aux_u(led));
        lines.sort_by(|a, b| b.u_w.partial_cmp(&a.u_w).unwrap_or(Ordering::Equal));
        lines
    }
}
