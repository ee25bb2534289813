//! A small source of chance, the same on every run: `SplitMix64` (Steele, Lea & Flood, OOPSLA 2014) for uniform numbers,
//! Box and Muller's transform (Ann. Math. Stat. 29, 1958) for normal ones.

pub struct Chance {
    state: u64,
}

impl Chance {
    pub fn seeded(seed: u64) -> Self {
        Self { state: seed }
    }

    fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Uniform above 0 and below 1.
    fn unit(&mut self) -> f64 {
        let high = u32::try_from(self.bits() >> 32).expect("32 bits are left");
        (f64::from(high) + 0.5) / 4_294_967_296.0
    }

    /// Uniform between two bounds.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// Normal with mean 0 and standard deviation 1.
    pub fn normal(&mut self) -> f64 {
        (-2.0 * self.unit().ln()).sqrt() * (std::f64::consts::TAU * self.unit()).cos()
    }
}
