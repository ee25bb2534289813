//! Chance for the benchmarks, the same on every run.

/// Numbers that look random and are the same on every run: a linear congruential generator with the constants of Knuth's
/// MMIX (from memory); the high bits are the good ones.
pub struct Chance(u64);

impl Chance {
    /// From the start.
    pub fn new() -> Self {
        Self(7)
    }

    /// Below `bound`.
    pub fn below(&mut self, bound: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % bound
    }
}
